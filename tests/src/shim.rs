//! Programs whose files fail: see `tests/shim/faults.rs`, which is compiled here, once a run of the tests.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

/// The compiled shim; `None` where there is no dynamic linker that loads it.
///
/// # Panics
/// Where it does not compile.
#[allow(clippy::panic, reason = "a check that cannot put its faults in must fail")]
pub fn shim() -> Option<&'static Path> {
    static SHIM: OnceLock<Option<PathBuf>> = OnceLock::new();
    SHIM.get_or_init(|| {
        if !cfg!(target_os = "linux") {
            return None;
        }
        let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("shim/faults.rs");
        let made = std::env::temp_dir().join(format!("lapwright-faults-{}.so", std::process::id()));
        let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
        let mut command = Command::new(rustc);
        command.args(["--edition", "2024", "--crate-type", "cdylib", "-O", "-o"]).arg(&made).arg(&source);
        match command.output() {
            Ok(output) if output.status.success() => Some(made),
            Ok(output) => panic!("{}", String::from_utf8_lossy(&output.stderr)),
            Err(error) => panic!("rustc: {error}"),
        }
    })
    .as_deref()
}

/// The one fault of a run.
#[derive(Clone, Copy, Debug)]
pub struct Fault<'a> {
    /// The sort of call: `open`, `read`, `write`, `sync`, `name` or `any`.
    pub sort: &'a str,
    /// Its number, from one.
    pub at: usize,
    /// An error number, `short` or `kill`.
    pub what: &'a str,
}

/// Runs a program with a fault in its calls that touch a folder; gives what it printed and how many such calls it made.
///
/// # Panics
/// Where it cannot be started.
#[allow(clippy::panic, reason = "a check that cannot put its faults in must fail")]
pub fn run(program: &str, args: &[&Path], folder: &Path, fault: Fault<'_>) -> (Output, usize) {
    let count = folder.with_extension("count");
    let mut command = Command::new(program);
    command.args(args).env("FAULT_FOLDER", folder).env("FAULT_SORT", fault.sort).env("FAULT_COUNT", &count);
    command.env("FAULT_AT", fault.at.to_string()).env("FAULT_WHAT", fault.what).env("TZ", "UTC");
    command.env("LD_PRELOAD", shim().unwrap_or(Path::new("")));
    let output = command.output().unwrap_or_else(|error| panic!("{program}: {error}"));
    let calls = std::fs::read_to_string(&count).ok().and_then(|text| text.parse().ok()).unwrap_or(0);
    let _ = std::fs::remove_file(count);
    (output, calls)
}
