//! The bindings generator, in a crate of its own so that the core is not built twice.
fn main() {
    uniffi::uniffi_bindgen_main();
}
