//! One type name for one thing: a name that is seen beyond its file stands for no other type anywhere in the core.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use proc_macro2::{Delimiter, Ident, TokenStream, TokenTree};
use syn::visit::{self, Visit};
use syn::{Attribute, Visibility};

/// Each room has its own errors, and its own alias for what they come with, as the standard library's modules have.
const A_ROOMS_OWN: [&str; 1] = ["Result"];

/// The types of a file outside its tests, and whether others see them.
#[derive(Default)]
struct Types(Vec<(String, bool)>);

impl Types {
    fn add(&mut self, name: &Ident, seen: &Visibility) {
        self.0.push((name.to_string(), !matches!(seen, Visibility::Inherited)));
    }

    /// Types that a macro makes are written as tokens: by their keyword in its rules, or by the name before the braces where
    /// it is called (`coded! { Layer { … } }`). They are taken for seen, as all of them are today.
    fn made(&mut self, tokens: TokenStream, in_rules: bool) {
        let tokens: Vec<TokenTree> = tokens.into_iter().collect();
        for pair in tokens.windows(2) {
            match pair {
                [TokenTree::Ident(word), TokenTree::Ident(name)]
                    if in_rules && ["struct", "enum", "trait"].iter().any(|keyword| word == keyword) =>
                {
                    self.0.push((name.to_string(), true));
                }
                [TokenTree::Ident(name), TokenTree::Group(braces)]
                    if !in_rules
                        && braces.delimiter() == Delimiter::Brace
                        && name.to_string().starts_with(char::is_uppercase) =>
                {
                    self.0.push((name.to_string(), true));
                }
                _ => {}
            }
        }
        if in_rules {
            for token in tokens {
                if let TokenTree::Group(group) = token {
                    self.made(group.stream(), true);
                }
            }
        }
    }
}

fn is_for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        attribute.path().is_ident("cfg") && attribute.parse_args::<syn::Path>().is_ok_and(|path| path.is_ident("test"))
    })
}

impl<'ast> Visit<'ast> for Types {
    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        if !is_for_tests(&item.attrs) {
            visit::visit_item_mod(self, item);
        }
    }

    fn visit_item_macro(&mut self, item: &'ast syn::ItemMacro) {
        if !is_for_tests(&item.attrs) {
            self.made(item.mac.tokens.clone(), item.mac.path.is_ident("macro_rules"));
        }
    }

    fn visit_item_struct(&mut self, item: &'ast syn::ItemStruct) {
        self.add(&item.ident, &item.vis);
    }

    fn visit_item_enum(&mut self, item: &'ast syn::ItemEnum) {
        self.add(&item.ident, &item.vis);
    }

    fn visit_item_trait(&mut self, item: &'ast syn::ItemTrait) {
        self.add(&item.ident, &item.vis);
    }

    fn visit_item_type(&mut self, item: &'ast syn::ItemType) {
        self.add(&item.ident, &item.vis);
    }
}

fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() && !path.ends_with("tests") {
            files(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") && !path.ends_with("tests.rs") {
            found.push(path);
        }
    }
}

/// Every name with more than one meaning: where each is, and whether it is seen beyond its file.
fn twice<'a>(types: impl Iterator<Item = (&'a str, &'a str)>) -> BTreeSet<String> {
    let mut by_name: BTreeMap<String, BTreeMap<&str, bool>> = BTreeMap::new();
    for (file, text) in types {
        let mut found = Types::default();
        found.visit_file(&syn::parse_file(text).unwrap());
        for (name, seen) in found.0 {
            // Of one name in one file there is one for each system.
            *by_name.entry(name).or_default().entry(file).or_default() |= seen;
        }
    }
    let several = by_name.into_iter().filter(|(name, places)| {
        places.len() > 1 && places.values().any(|seen| *seen) && !A_ROOMS_OWN.contains(&name.as_str())
    });
    several.map(|(name, places)| format!("{name}: {}", places.into_keys().collect::<Vec<_>>().join(", "))).collect()
}

#[test]
fn a_type_name_means_one_thing() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    let mut all = Vec::new();
    files(&root, &mut all);
    assert!(all.len() > 300, "{}", all.len());
    let texts: Vec<(String, String)> = all
        .iter()
        .map(|path| (path.strip_prefix(&root).unwrap().display().to_string(), fs::read_to_string(path).unwrap()))
        .collect();
    let twice = twice(texts.iter().map(|(file, text)| (file.as_str(), text.as_str())));
    assert!(twice.is_empty(), "{twice:#?}");
}

#[test]
fn a_name_with_two_meanings_is_found() {
    let files = [
        ("a.rs", "pub struct Board; struct Own; type Result = (); enum Once {}"),
        ("b.rs", "struct Board; struct Own; pub type Result = (); mod deep { pub(super) enum Once {} }"),
        (
            "c.rs",
            "#[cfg(test)] mod tests { pub struct Board; } #[cfg(unix)] pub struct Place; #[cfg(not(unix))] pub struct Place;",
        ),
        (
            "d.rs",
            "pub struct Layer; pub struct Field; pub struct Corner;
             coded! { /// Of an assembly.
                Layer { Patch = \"patch\", } }",
        ),
        (
            "e.rs",
            "macro_rules! fields { ($($name:ident,)+) => { pub enum Field { $($name,)+ } }; } fields! { Corner, }",
        ),
        ("f.rs", "coded! { #[derive(Default)] Layer { Boards = \"boards\", } }"),
    ];
    let want = ["Board: a.rs, b.rs", "Field: d.rs, e.rs", "Layer: d.rs, f.rs", "Once: a.rs, b.rs"];
    assert_eq!(twice(files.into_iter()), want.map(str::to_owned).into());
}
