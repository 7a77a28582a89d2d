use std::env;
use std::ffi::OsString;
use std::path::Path;

use crate::{Done, bindings, project, shell};

/// Runs the phone's screens on this computer, with the arguments of `android/desk`.
pub(crate) fn run(args: &[&str]) -> Done {
    needs("java", "-version", "a JDK of version 17 or later (on Debian: apt install openjdk-17-jdk)")?;
    needs("mvn", "--version", "Maven (on Debian: apt install maven)")?;
    bindings::kotlin()?;
    let android = project::root().join("android");
    let class_path = class_path(&android)?;
    let displays = ["DISPLAY", "WAYLAND_DISPLAY"].iter().filter_map(env::var_os).any(|name| !name.is_empty());
    let mut java = shell::command("java", &["-Dskiko.renderApi=SOFTWARE"]);
    java.arg(format!("-Djava.awt.headless={}", env::consts::OS == "linux" && !displays));
    java.arg(format!("-Djna.library.path={}", android.join("bindings/target/generated/library").display()));
    java.arg("-cp").arg(class_path).arg("lapwright.desk.MainKt").current_dir(&android);
    let here = env::current_dir().map_err(|error| error.to_string())?;
    let mut words = args.iter();
    while let Some(word) = words.next() {
        java.arg(word);
        // Paths are those of who calls.
        if matches!(*word, "--book" | "--pictures")
            && let Some(path) = words.next()
        {
            java.arg(here.join(path));
        }
    }
    // It has said itself what is wrong; its command line is as long as its class path.
    shell::run(java).map_err(|_| "the app ended with an error".to_owned())
}

/// Compiles the screens, and says where their classes and those that they need are.
fn class_path(android: &Path) -> Done<OsString> {
    let list = android.join("desk/target/classpath.txt");
    let mut maven = shell::command("mvn", &["--batch-mode", "--quiet", "--no-transfer-progress"]);
    maven.args(["--projects", "desk", "--also-make", "compile"]);
    maven.arg("org.apache.maven.plugins:maven-dependency-plugin:3.8.1:build-classpath");
    maven.args(["-Dmdep.includeScope=runtime", &format!("-Dmdep.outputFile={}", list.display())]);
    // Maven reads `.mvn` of the folder that it is started in.
    shell::run({
        maven.current_dir(android);
        maven
    })?;
    let others = std::fs::read_to_string(&list).map_err(|error| format!("{}: {error}", list.display()))?;
    let own = android.join("desk/target/classes");
    let all = std::iter::once(own).chain(env::split_paths(others.trim()));
    env::join_paths(all).map_err(|error| error.to_string())
}

fn needs(program: &str, question: &str, what: &str) -> Done {
    match shell::answer(shell::command(program, &[question])) {
        Some(_) => Ok(()),
        None => Err(format!("{what} is needed: `{program} {question}` does not run")),
    }
}
