use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::{Done, bindings, files, project, shell};

/// The oldest Android that the app runs on; the same in `android/app/build.gradle.kts`.
const LEAST_API: u32 = 26;

/// Phones from Android 15 on may have memory pages of this size, and load no library that is laid out for smaller ones.
const PAGE: u32 = 16 * 1024;

/// How cargo builds for a phone: the profile of the root `Cargo.toml`.
const PROFILE: &str = "phone";

/// A kind of processor that Android runs on.
struct Processor {
    /// Its folder in the app.
    folder: &'static str,
    /// What Rust calls it.
    target: &'static str,
    /// What the compiler's name begins with in the NDK.
    clang: &'static str,
}

const PROCESSORS: [Processor; 3] = [
    Processor { folder: "arm64-v8a", target: "aarch64-linux-android", clang: "aarch64-linux-android" },
    Processor { folder: "armeabi-v7a", target: "armv7-linux-androideabi", clang: "armv7a-linux-androideabi" },
    Processor { folder: "x86_64", target: "x86_64-linux-android", clang: "x86_64-linux-android" },
];

/// Builds the library for every kind of processor and puts it, with the generated Kotlin, where Gradle looks for it.
///
/// # Errors
/// Where the NDK or a Rust target is missing, with how to get it.
pub(crate) fn build() -> Done {
    let tools = tools()?;
    let missing: Vec<&str> = PROCESSORS.iter().map(|one| one.target).filter(|target| !has_target(target)).collect();
    if !missing.is_empty() {
        let targets = missing.join(" ");
        return Err(format!("Rust cannot build for {targets} yet: `rustup target add {targets}`"));
    }
    bindings::kotlin()?;
    for processor in &PROCESSORS {
        shell::run(processor.build(&tools))?;
        let library = project::root().join("target").join(processor.target).join(PROFILE).join("liblapwright_ffi.so");
        let folder = project::root().join("android/app/target/jni").join(processor.folder);
        files::copy(&library, &folder.join("liblapwright_ffi.so"))?;
    }
    Ok(())
}

impl Processor {
    fn build(&self, tools: &Path) -> Command {
        let mut command = shell::cargo(&[
            "build",
            "--profile",
            PROFILE,
            "--package",
            "lapwright-ffi",
            "--target",
            self.target,
            "--target-dir",
            "target",
        ]);
        let clang = tools.join(format!("{}{LEAST_API}-clang", self.clang));
        let (lower, upper) = (self.target.replace('-', "_"), self.target.replace('-', "_").to_uppercase());
        command
            .env(format!("CARGO_TARGET_{upper}_LINKER"), &clang)
            .env(format!("CARGO_TARGET_{upper}_RUSTFLAGS"), format!("-C link-arg=-Wl,-z,max-page-size={PAGE}"))
            // SQLite is compiled from C.
            .env(format!("CC_{lower}"), &clang)
            .env(format!("AR_{lower}"), tools.join("llvm-ar"));
        command
    }
}

/// The folder of the NDK's compilers.
fn tools() -> Done<PathBuf> {
    let named = ["ANDROID_NDK_HOME", "ANDROID_NDK_ROOT"].iter().filter_map(std::env::var_os).map(PathBuf::from).next();
    let ndk = named.or_else(newest).ok_or(
        "no Android NDK: set ANDROID_NDK_HOME to its folder, or ANDROID_HOME to an SDK with one in `ndk/`; it comes with \
         Android's command line tools: `sdkmanager \"ndk;28.0.13004108\"`",
    )?;
    let prebuilt = ndk.join("toolchains/llvm/prebuilt");
    let hosts = fs::read_dir(&prebuilt).map_err(|error| format!("{} is no NDK: {error}", ndk.display()))?;
    let host = hosts.flatten().map(|host| host.path().join("bin")).find(|bin| bin.is_dir());
    host.ok_or_else(|| format!("{} has no compilers", prebuilt.display()))
}

/// The newest NDK of the SDK, by its name.
fn newest() -> Option<PathBuf> {
    let sdk = ["ANDROID_HOME", "ANDROID_SDK_ROOT"].iter().filter_map(std::env::var_os).map(PathBuf::from).next()?;
    let version = |path: &PathBuf| -> Vec<u64> {
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        name.split('.').map(|part| part.parse().unwrap_or(0)).collect()
    };
    fs::read_dir(sdk.join("ndk")).ok()?.flatten().map(|ndk| ndk.path()).max_by_key(version)
}

fn has_target(target: &str) -> bool {
    let printed = shell::answer(shell::command("rustc", &["--print", "target-libdir", "--target", target]));
    printed.is_some_and(|folder| Path::new(folder.trim()).is_dir())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_library_is_laid_out_for_large_pages_and_linked_by_the_ndk() {
        for processor in &PROCESSORS {
            let command = processor.build(Path::new("ndk/bin"));
            let variables: Vec<(String, String)> = command
                .get_envs()
                .map(|(key, value)| {
                    (key.to_string_lossy().into_owned(), value.unwrap_or_default().to_string_lossy().into_owned())
                })
                .collect();
            let of =
                |tail: &str| variables.iter().find(|(key, _)| key.ends_with(tail)).map(|(_, value)| value.as_str());
            assert_eq!(of("_RUSTFLAGS"), Some("-C link-arg=-Wl,-z,max-page-size=16384"));
            assert_eq!(of("_LINKER"), Some(format!("ndk/bin/{}26-clang", processor.clang).as_str()));
        }
    }

    #[test]
    fn a_target_that_nobody_has_is_missing() {
        assert!(!has_target("no-such-target"));
    }
}
