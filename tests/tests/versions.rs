//! Several build files name the same versions; none of them can read another.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use regex::Regex;

fn text(path: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(path);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// What stands in the first group of a pattern, everywhere in these files.
fn all(files: &[&str], pattern: &str) -> BTreeSet<String> {
    let pattern = Regex::new(pattern).unwrap();
    let of = |file: &&str| {
        let text = text(file);
        let found: Vec<String> = pattern.captures_iter(&text).map(|found| found[1].to_owned()).collect();
        assert!(!found.is_empty(), "nothing in {file} looks like {pattern}");
        found
    };
    files.iter().flat_map(of).collect()
}

fn one(name: &str) -> BTreeSet<String> {
    BTreeSet::from([name.to_owned()])
}

const POMS: [&str; 5] = [
    "android/pom.xml",
    "android/bindings/pom.xml",
    "android/screens/pom.xml",
    "android/app/pom.xml",
    "android/desk/pom.xml",
];

#[test]
fn the_program_has_one_version() {
    let version = env!("CARGO_PKG_VERSION");
    // The first `version` of a pom is its own or its parent's, and stands right behind their name.
    assert_eq!(all(&POMS, r"<artifactId>android</artifactId>\s*<version>([^<]+)</version>"), one(version));
    assert_eq!(all(&["android/app/build.gradle.kts"], r#"versionName = "([^"]+)""#), one(version));
    assert_eq!(all(&["ios/App/Lapwright.xcodeproj/project.pbxproj"], r"MARKETING_VERSION = ([^;]+);"), one(version));
}

#[test]
fn maven_and_gradle_take_the_same_libraries() {
    let read = |file: &str, pattern: &str| -> BTreeMap<String, String> {
        let text = text(file);
        let pattern = Regex::new(pattern).unwrap();
        pattern.captures_iter(&text).map(|found| (found[1].to_owned(), found[2].to_owned())).collect()
    };
    let gradle = read("android/gradle/libs.versions.toml", r#"(?m)^([\w-]+) = "([^"]+)""#);
    let maven = read("android/pom.xml", r"<([\w-]+)\.version>([^<]+)</");
    let both: Vec<&String> = gradle.keys().filter(|name| maven.contains_key(*name)).collect();
    assert_eq!(both, ["compose", "coroutines", "jna", "kotlin"]);
    for name in both {
        assert_eq!(gradle[name], maven[name], "{name}");
    }
}

#[test]
fn every_part_of_the_android_app_is_for_the_same_phones() {
    const GRADLE: [&str; 3] =
        ["android/bindings/build.gradle.kts", "android/screens/build.gradle.kts", "android/app/build.gradle.kts"];
    let least = all(&GRADLE, r"minSdk = (\d+)");
    assert_eq!(least.len(), 1, "{least:?}");
    assert_eq!(all(&["bindings/tasks/src/android.rs"], r"LEAST_API: u32 = (\d+)"), least);
    assert_eq!(all(&["android/app/pom.xml"], r"--min-sdk-version (\d+)"), least);
    let built = all(&GRADLE, r"compileSdk = (\d+)");
    assert_eq!(built.len(), 1, "{built:?}");
    assert_eq!(all(&["android/app/pom.xml"], r"--target-sdk-version (\d+)"), built);
    let java = all(&GRADLE, r"jvmToolchain\((\d+)\)");
    assert_eq!(java.len(), 1, "{java:?}");
    assert_eq!(all(&["android/pom.xml"], r"<jvmTarget>(\d+)<"), java);
}
