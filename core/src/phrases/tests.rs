use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use fluent_bundle::FluentResource;
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};

use super::files::FILES;
use super::*;

/// Key to variables, of one file.
type Texts = BTreeMap<String, BTreeSet<String>>;

fn texts(file: &str, source: &str) -> Texts {
    let resource = match FluentResource::try_new(source.to_owned()) {
        Ok(resource) => resource,
        Err((_, faults)) => panic!("{file}: {faults:?}"),
    };
    let mut texts = Texts::new();
    for entry in resource.entries() {
        match entry {
            Entry::Message(message) => {
                let name = message.id.name.to_owned();
                let value = message.value.as_ref().unwrap_or_else(|| panic!("{file}: {name} has no text"));
                let mut variables = BTreeSet::new();
                pattern(value, &mut variables);
                assert!(texts.insert(name.clone(), variables).is_none(), "{file}: {name} stands twice");
            }
            Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => {}
            other => panic!("{file}: {other:?}"),
        }
    }
    texts
}

fn pattern(pattern: &Pattern<&str>, variables: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression: found } = element {
            expression(found, variables);
        }
    }
}

fn expression(found: &Expression<&str>, variables: &mut BTreeSet<String>) {
    match found {
        Expression::Inline(part) => inline(part, variables),
        Expression::Select { selector, variants } => {
            inline(selector, variables);
            for variant in variants {
                pattern(&variant.value, variables);
            }
        }
    }
}

fn inline(part: &InlineExpression<&str>, variables: &mut BTreeSet<String>) {
    match part {
        InlineExpression::VariableReference { id } => {
            variables.insert(id.name.to_owned());
        }
        InlineExpression::Placeable { expression: found } => expression(found, variables),
        InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
        other => panic!("only variables and literals are used in the texts, not {other:?}"),
    }
}

#[test]
fn both_languages_have_the_same_texts_with_the_same_variables() {
    let mut all = BTreeSet::new();
    for file in FILES {
        let english = texts(file.name, file.text(Language::English));
        let spanish = texts(file.name, file.text(Language::Spanish));
        assert_eq!(english, spanish, "{}.ftl: keys and variables, English left, Spanish right", file.name);
        for name in english.into_keys() {
            assert!(all.insert(name.clone()), "{name} stands in two files");
        }
    }
    assert!(all.len() > 100, "only {} texts", all.len());
}

#[test]
fn every_file_in_the_folders_is_listed() {
    for language in Language::ALL {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/phrases").join(language.code());
        let found: BTreeSet<_> =
            fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        let listed: BTreeSet<_> = FILES.iter().map(|file| format!("{}.ftl", file.name)).collect();
        assert_eq!(found, listed);
    }
}

#[test]
fn no_text_is_left_in_the_other_language() {
    let same: BTreeSet<&str> = ["spoken-minus"].into();
    for file in FILES {
        for name in texts(file.name, file.text(Language::English)).into_keys() {
            let value = |language| {
                let bundle = &Phrases::for_language(language).bundle;
                let mut faults = Vec::new();
                bundle
                    .format_pattern(bundle.get_message(&name).unwrap().value().unwrap(), None, &mut faults)
                    .into_owned()
            };
            let (english, spanish) = (value(Language::English), value(Language::Spanish));
            // A text of several words that is equal in both was most likely never translated.
            // A call is typed alike in every language, where no name is in it.
            let typed = name.starts_with("command-call");
            if english == spanish
                && !typed
                && english.split_whitespace().filter(|word| !word.contains(['{', '$'])).count() > 2
            {
                assert!(same.contains(name.as_str()), "{name}: {english}");
            }
        }
    }
}

/// Words that crews stumbled over and that gave way to those of the trade: one word calls one thing, in each language.
#[test]
fn a_word_that_was_given_up_does_not_come_back() {
    const ENGLISH: [&str; 7] = [
        "put away",
        "take it off",
        "lock against",
        "farthest nails",
        "relieve it",
        "on the house",
        "its flange covers",
    ];
    const SPANISH: [&str; 13] = [
        "retazo",
        "solape",
        "imprimador",
        "hastial",
        "botaguas",
        "tapajuntas de dintel",
        "regla de hiladas",
        "recorte nuevo",
        "prevista",
        "colocada",
        "sólo",
        "drenes",
        "envase",
    ];
    for (language, given_up) in [("en", ENGLISH.as_slice()), ("es", SPANISH.as_slice())] {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/phrases").join(language);
        for file in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
            for line in std::fs::read_to_string(&file).unwrap().lines().filter(|line| !line.starts_with('#')) {
                let line = line.to_lowercase();
                let back = given_up.iter().find(|word| line.contains(**word));
                assert_eq!(back, None, "{}: {line}", file.display());
            }
        }
    }
}

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            if !path.ends_with("target") {
                sources(&path, found);
            }
        } else if path.extension().is_some_and(|end| end == "rs") && !path.ends_with("phrases/tests.rs") {
            found.push(path);
        }
    }
}

/// The texts that stand right after `call(` in a source.
fn keys_after<'a>(source: &'a str, call: &str) -> Vec<&'a str> {
    let mut found = Vec::new();
    for (at, _) in source.match_indices(call) {
        let before = source[..at].chars().next_back().unwrap_or(' ');
        let line = source[..at].rsplit('\n').next().unwrap_or("").trim_start();
        let part_of_a_name = before.is_alphanumeric() || before == '_' || (call == "key(" && before == '.');
        let Some(text) = source[at + call.len()..].trim_start().strip_prefix('"') else { continue };
        let Some((name, _)) = text.split_once('"') else { continue };
        if !part_of_a_name && !line.contains("//") {
            found.push(name);
        }
    }
    found
}

#[test]
fn every_key_in_the_sources_has_a_text() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap();
    let mut files = Vec::new();
    sources(&root.join("core/src"), &mut files);
    sources(&root.join("bindings"), &mut files);
    let phrases = Phrases::for_language(Language::English);
    let mut count = 0;
    for file in files {
        let source = fs::read_to_string(&file).unwrap();
        for call in ["phrase(", "key("] {
            for name in keys_after(&source, call) {
                assert!(phrases.has(name), "{}: no text for {name:?}", file.display());
                count += 1;
            }
        }
    }
    assert!(count > 10, "only {count} keys found in the sources");
}

#[test]
fn finds_keys_in_a_source() {
    let source =
        "p.phrase(\n \"a-b\", &[]); key(\"c\"); from_key(\"no\"); map.key(\"no\"); // key(\"no\")\nphrases::key(\"d\")";
    assert_eq!(keys_after(source, "phrase("), ["a-b"]);
    assert_eq!(keys_after(source, "key("), ["c", "d"]);
}

#[test]
fn values_go_in_without_marks() {
    let phrases = Phrases::for_language(Language::English);
    assert_eq!(phrases.phrase("spoken-minus", &[("rest", "two".into())]), "minus two");
    let one = [("count", 1.into()), ("words", "one".into())];
    assert_eq!(phrases.phrase("spoken-inches", &one), "one inch");
    assert_eq!(phrases.phrase("no-such-text", &[]), "no-such-text");
    assert!(!phrases.has("no-such-text"));
}
