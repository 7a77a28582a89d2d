//! The two apps held to each other: what one says, does and shows, the other does too, and each screen in the same order.
//!
//! Compose and SwiftUI cannot be run side by side here. Both are thin over one core, so their sources name the same words,
//! actions and fields of the core; these names are what is compared.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use regex::Regex;

/// Screens that both apps have a file of.
const SCREENS: [&str; 18] = [
    "Backups",
    "Board",
    "Differences",
    "DoneList",
    "HandOver",
    "House",
    "Jobs",
    "Measure",
    "New",
    "Order",
    "Penetration",
    "Pole",
    "Restore",
    "Rules",
    "SawList",
    "Settings",
    "TakeIn",
    "Wall",
];

/// Fields that cannot be told from other names of Swift: a list's `count`, a singleton's `default`, the case `notch` of a new thing.
const ALSO_OF_SWIFT: [&str; 3] = ["count", "default", "notch"];

fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}

fn compose() -> PathBuf {
    project().join("android/screens/src/main/kotlin/lapwright/shell")
}

fn swift() -> PathBuf {
    project().join("ios/Lapwright/Sources")
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|trouble| panic!("{}: {trouble}", path.display()))
}

/// All sources of one language under a folder.
fn sources(folder: &Path, ending: &str) -> String {
    let mut all = String::new();
    let mut open = vec![folder.to_owned()];
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                open.push(path);
            } else if path.extension().is_some_and(|found| found == ending) {
                all.push_str(&read(&path));
            }
        }
    }
    assert!(!all.is_empty(), "no .{ending} under {}", folder.display());
    all
}

fn matches(text: &str, pattern: &str) -> Vec<String> {
    let pattern = Regex::new(pattern).unwrap();
    pattern
        .captures_iter(text)
        .map(|found| found.iter().skip(1).flatten().map(|part| part.as_str()).collect())
        .collect()
}

/// Each word once, where it comes first.
fn words_in_order(text: &str) -> Vec<String> {
    let mut seen = BTreeSet::new();
    matches(text, r"\bwords\.(\w+)").into_iter().filter(|word| seen.insert(word.clone())).collect()
}

fn words(text: &str) -> BTreeSet<String> {
    words_in_order(text).into_iter().collect()
}

/// `kind/action` of every action of the core that Kotlin makes.
fn compose_actions(text: &str) -> BTreeSet<String> {
    let core = sources(&project().join("core/src/views"), "rs");
    let kinds = matches(&core, r"\bpub enum (\w+)Action\b").join("|");
    let actions = Regex::new(&format!(r"\b({kinds})Action\.([A-Z]\w*)\b")).unwrap();
    actions.captures_iter(text).map(|found| format!("{}/{}", lower(&found[1]), lower(&found[2]))).collect()
}

/// `kind/action` of every action that Swift makes.
fn swift_actions(text: &str) -> BTreeSet<String> {
    let actions = Regex::new(r"\.(\w+)Kind\(\s*action:\s*\.(\w+)").unwrap();
    actions.captures_iter(text).map(|found| format!("{}/{}", &found[1], &found[2])).collect()
}

fn lower(name: &str) -> String {
    let mut rest = name.chars();
    rest.next().map(|first| first.to_ascii_lowercase().to_string() + rest.as_str()).unwrap_or_default()
}

/// A name of the core as both apps have it.
fn camel(name: &str) -> String {
    let mut parts = name.split('_');
    let mut camel = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        camel.extend(part.chars().next().map(|first| first.to_ascii_uppercase()));
        camel.push_str(part.get(1..).unwrap_or_default());
    }
    camel
}

/// The fields of all that the core shows, as both apps name them.
fn fields_of_the_core() -> BTreeSet<String> {
    let core = sources(&project().join("core/src/views"), "rs");
    let records = Regex::new(r"(?ms)uniffi::Record\)\)\]\n(?:#\[[^\n]*\n)*pub struct (\w+) \{(.*?)^\}").unwrap();
    // A context is what an app says, not what it shows.
    let shown = records.captures_iter(&core).filter(|record| &record[1] != "Context");
    let fields = shown.flat_map(|record| matches(&record[2], r"(?m)^    pub (\w+):"));
    fields.map(|field| camel(&field)).filter(|field| !ALSO_OF_SWIFT.contains(&field.as_str())).collect()
}

/// The fields that a source reads; what a list is told apart by is not shown.
fn fields_read(text: &str, all: &BTreeSet<String>) -> BTreeSet<String> {
    // What names a thing of a list, and what is imported, is read of no view.
    let text = Regex::new(r"(?m)id: \\\.\w+|^import .*$").unwrap().replace_all(text, "");
    matches(&text, r"\.(\w+)\b").into_iter().filter(|name| all.contains(name)).collect()
}

/// What is only in the one and what is only in the other.
fn differences(compose: &BTreeSet<String>, swift: &BTreeSet<String>) -> Vec<String> {
    let only = |name: &str, these: &BTreeSet<String>, those: &BTreeSet<String>| -> Vec<String> {
        these.difference(those).map(|one| format!("{one} only in {name}")).collect()
    };
    [only("Compose", compose, swift), only("SwiftUI", swift, compose)].concat()
}

#[test]
fn each_screen_says_the_same_words_in_the_same_order() {
    let mut wrong = Vec::new();
    for screen in SCREENS {
        let compose = words_in_order(&read(&compose().join(format!("screens/{screen}.kt"))));
        let swift = words_in_order(&read(&swift().join(format!("LapwrightScreens/Screens/{screen}.swift"))));
        if compose != swift {
            wrong.push(format!("{screen}:\n  Compose {compose:?}\n  SwiftUI {swift:?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_screen_of_an_app_is_compared() {
    for (folder, ending) in [(compose().join("screens"), "kt"), (swift().join("LapwrightScreens/Screens"), "swift")] {
        let names = fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let found: BTreeSet<String> = names.collect();
        let wanted: BTreeSet<String> = SCREENS.iter().map(|screen| format!("{screen}.{ending}")).collect();
        assert_eq!(found, wanted, "{}", folder.display());
    }
}

#[test]
fn no_word_is_said_by_one_app_alone() {
    let (kotlin, swift) = (words(&sources(&compose(), "kt")), words(&sources(&swift(), "swift")));
    assert_eq!(differences(&kotlin, &swift), [""; 0]);
    assert!(kotlin.len() > 60, "{kotlin:?}");
}

#[test]
fn no_word_of_the_core_is_left_unsaid() {
    let frame = read(&project().join("core/src/views/frame.rs"));
    let listed = Regex::new(r"(?ms)^words! \{(.*?)^\}").unwrap();
    let listed = listed.captures(&frame).unwrap();
    let all: BTreeSet<String> = matches(&listed[1], r"(?m)^    (\w+) =").iter().map(|word| camel(word)).collect();
    let said = words(&sources(&compose(), "kt"));
    assert_eq!(all.difference(&said).collect::<Vec<_>>(), [""; 0]);
}

#[test]
fn no_action_is_made_by_one_app_alone() {
    let (kotlin, swift) = (compose_actions(&sources(&compose(), "kt")), swift_actions(&sources(&swift(), "swift")));
    assert_eq!(differences(&kotlin, &swift), [""; 0]);
    assert!(kotlin.len() > 40, "{kotlin:?}");
}

#[test]
fn no_field_is_shown_by_one_app_alone() {
    let all = fields_of_the_core();
    let kotlin = fields_read(&sources(&compose(), "kt"), &all);
    let swift = fields_read(&sources(&swift(), "swift"), &all);
    assert_eq!(differences(&kotlin, &swift), [""; 0]);
    assert!(kotlin.len() > 100, "{kotlin:?}");
}
