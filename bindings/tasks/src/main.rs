//! `cargo xtask`: the chores of the project.
fn main() {}
