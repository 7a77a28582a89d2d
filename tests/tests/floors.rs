//! The rooms of the core stand on floors: a room imports from its own floor and those below, and never in a circle.
//!
//! Imports are read from the parsed sources, so that comments, texts and what is compiled for tests alone do not count.
//! A path counts for the file that holds what it names: what another file only passes on is followed to its home.
//! A method that is called on a value is no path: in which file it was written does not count.

use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::fs;
use std::path::{Path, PathBuf};
use std::slice;
use std::sync::LazyLock;

use proc_macro2::{TokenStream, TokenTree};
use syn::visit::{self, Visit};
use syn::{Attribute, ImplItem, Item, ItemMod, ItemUse, Macro, UseTree, Visibility};

/// The rooms of `core/src`, from the ground up.
const FLOORS: &[&[&str]] = &[
    &["measure"],
    &["phrases", "saw", "store", "wall"],
    &["board", "notch", "rules", "siding"],
    &["amounts", "flashing", "steps"],
    &["book"],
    &["drawing", "views", "work"],
    &["forms"],
    &["exchange", "handover"],
    &["figure", "screens"],
];

/// No room has more of the lines of code than this.
const LARGEST_ROOM_PERCENT: usize = 12;
/// No room has more circles of files than this.
const MOST_CIRCLES: usize = 2;
/// No more files than this stand in one circle.
const LARGEST_CIRCLE: usize = 3;

/// What does not hold yet, as the test words it. What holds by now must leave this list.
const NOT_YET: &[&str] = &[];

type Names = Vec<String>;

/// A path as it is written.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Import {
    /// The module that it is written in.
    module: Names,
    path: Names,
    /// Whether it is passed on under this module's name, and not needed here.
    passed_on: bool,
}

/// A module: a file, or a `mod` with a body.
#[derive(Default)]
struct Module {
    file: String,
    /// What `use` brings in: where it is from, by the name that it has here.
    brought: BTreeMap<String, Names>,
}

/// The core's modules and what they import.
#[derive(Default)]
struct Core {
    modules: BTreeMap<Names, Module>,
    imports: BTreeSet<Import>,
    /// Lines of code by room: no blank ones, no comments, no files of tests.
    lines: BTreeMap<String, usize>,
}

static CORE: LazyLock<Core> = LazyLock::new(Core::read);

/// Reads one file.
struct Reader<'a> {
    core: &'a mut Core,
    file: &'a str,
    module: Names,
}

fn names(path: &str) -> Names {
    path.split("::").map(str::to_owned).collect()
}

/// Whether an item is compiled for tests alone.
fn for_tests(attributes: &[Attribute]) -> bool {
    let condition = |attribute: &Attribute| attribute.meta.require_list().ok().map(|list| list.tokens.to_string());
    attributes
        .iter()
        .any(|attribute| attribute.path().is_ident("cfg") && condition(attribute).as_deref() == Some("test"))
}

fn attributes(item: &Item) -> &[Attribute] {
    match item {
        Item::Const(item) => &item.attrs,
        Item::Enum(item) => &item.attrs,
        Item::Fn(item) => &item.attrs,
        Item::Impl(item) => &item.attrs,
        Item::Macro(item) => &item.attrs,
        Item::Mod(item) => &item.attrs,
        Item::Static(item) => &item.attrs,
        Item::Struct(item) => &item.attrs,
        Item::Trait(item) => &item.attrs,
        Item::Type(item) => &item.attrs,
        Item::Use(item) => &item.attrs,
        _ => &[],
    }
}

/// The ends of a `use`: where each is from, and the name that it has here; `*` for all names.
fn ends(tree: &UseTree, before: &Names, all: &mut Vec<(Names, String)>) {
    let joined = |name: &syn::Ident| {
        let own = (name != "self").then(|| name.to_string());
        before.iter().cloned().chain(own).collect::<Names>()
    };
    match tree {
        UseTree::Path(path) if path.ident == "self" && before.is_empty() => ends(&path.tree, &names("self"), all),
        UseTree::Path(path) => ends(&path.tree, &joined(&path.ident), all),
        UseTree::Name(name) => {
            let path = joined(&name.ident);
            all.push((path.clone(), path.last().cloned().unwrap_or_default()));
        }
        UseTree::Rename(name) => all.push((joined(&name.ident), name.rename.to_string())),
        UseTree::Glob(_) => all.push((before.iter().cloned().chain(["*".to_owned()]).collect(), "*".to_owned())),
        UseTree::Group(group) => group.items.iter().for_each(|tree| ends(tree, before, all)),
    }
}

impl Reader<'_> {
    fn import(&mut self, path: Names, passed_on: bool) {
        self.core.imports.insert(Import { module: self.module.clone(), path, passed_on });
    }

    /// The paths among tokens that nothing parses: those of a macro.
    fn tokens(&mut self, tokens: TokenStream) {
        let mut path = Names::new();
        let mut colons = 0;
        for token in tokens {
            match token {
                TokenTree::Punct(sign) if sign.as_char() == ':' && !path.is_empty() => colons += 1,
                TokenTree::Ident(name) if colons == 2 => {
                    path.push(name.to_string());
                    colons = 0;
                }
                token => {
                    self.import(std::mem::take(&mut path), false);
                    colons = 0;
                    match token {
                        TokenTree::Ident(name) => path.push(name.to_string()),
                        TokenTree::Group(group) => self.tokens(group.stream()),
                        _ => {}
                    }
                }
            }
        }
        self.import(path, false);
    }
}

impl<'ast> Visit<'ast> for Reader<'_> {
    fn visit_item(&mut self, item: &'ast Item) {
        if !for_tests(attributes(item)) {
            visit::visit_item(self, item);
        }
    }

    fn visit_impl_item(&mut self, item: &'ast ImplItem) {
        if !matches!(item, ImplItem::Fn(function) if for_tests(&function.attrs)) {
            visit::visit_impl_item(self, item);
        }
    }

    fn visit_item_mod(&mut self, item: &'ast ItemMod) {
        self.module.push(item.ident.to_string());
        if item.content.is_some() {
            self.core.modules.insert(self.module.clone(), Module { file: self.file.to_owned(), ..Module::default() });
        }
        visit::visit_item_mod(self, item);
        self.module.pop();
    }

    fn visit_item_use(&mut self, item: &'ast ItemUse) {
        let mut all = Vec::new();
        ends(&item.tree, &Names::new(), &mut all);
        for (path, name) in all {
            let module = self.core.modules.entry(self.module.clone()).or_default();
            module.brought.insert(name, path.clone());
            self.import(path, !matches!(item.vis, Visibility::Inherited));
        }
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        if path.leading_colon.is_none() {
            self.import(path.segments.iter().map(|segment| segment.ident.to_string()).collect(), false);
        }
        visit::visit_path(self, path);
    }

    // `pub(super)` names who may look in, and imports nothing.
    fn visit_visibility(&mut self, _: &'ast Visibility) {}

    fn visit_macro(&mut self, item: &'ast Macro) {
        self.tokens(item.tokens.clone());
    }
}

impl Core {
    fn read() -> Self {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
        let mut files = BTreeMap::new();
        sources(&root, &root, &mut files);
        let mut core = Self::default();
        for file in files.keys() {
            core.modules.insert(module_of(file), Module { file: file.clone(), ..Module::default() });
        }
        for (file, text) in &files {
            let parsed = syn::parse_file(text).unwrap_or_else(|error| panic!("{file}: {error}"));
            Reader { core: &mut core, file, module: module_of(file) }.visit_file(&parsed);
            let code = text.lines().filter(|line| !line.trim().is_empty() && !line.trim().starts_with("//")).count();
            *core.lines.entry(room(file).to_owned()).or_default() += code;
        }
        core
    }

    /// The path from the root of the crate; none for one of another crate, or of nothing but a name.
    fn rooted(&self, module: &Names, path: &[String]) -> Option<Names> {
        let (first, rest) = path.split_first()?;
        let child = [module.as_slice(), slice::from_ref(first)].concat();
        match first.as_str() {
            "crate" => Some(rest.to_vec()),
            "self" => Some([module, rest].concat()),
            "super" => {
                let parent = module.split_last()?.1.to_vec();
                match rest.first().map(String::as_str) {
                    Some("super") => self.rooted(&parent, rest),
                    _ => Some([&parent, rest].concat()),
                }
            }
            _ if self.modules.contains_key(&child) => Some([module, path].concat()),
            _ => None,
        }
    }

    /// The file that holds what a path from the root names; none where that is of another crate.
    fn home(&self, path: &[String], hops: u8) -> Option<&str> {
        let mut at = Names::new();
        for (depth, name) in path.iter().enumerate() {
            let child = [at.as_slice(), slice::from_ref(name)].concat();
            if self.modules.contains_key(&child) {
                at = child;
                continue;
            }
            let Some(from) = self.modules.get(&at)?.brought.get(name) else { break };
            let rest = path.get(depth + 1..).unwrap_or_default();
            let whole = self.rooted(&at, &[from, rest].concat())?;
            return self.home(&whole, hops.checked_sub(1)?);
        }
        self.modules.get(&at).map(|module| module.file.as_str())
    }

    /// Which file imports from which; a room's door that passes on what is in the room needs nothing of it.
    fn edges(&self) -> Edges<'_> {
        let edge = |import: &Import| {
            let from = self.modules.get(&import.module)?.file.as_str();
            let to = self.home(&self.rooted(&import.module, &import.path)?, 9)?;
            let door = import.passed_on && room(from) == room(to);
            (from != to && !door && to != "lib.rs" && from != "lib.rs").then_some((from, to))
        };
        self.imports.iter().filter_map(edge).collect()
    }
}

/// The sources under a folder that are no tests, by their path from `root`.
fn sources(folder: &Path, root: &Path, all: &mut BTreeMap<String, String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path: PathBuf = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap();
        if path.is_dir() && name != "tests" {
            sources(&path, root, all);
        } else if name.ends_with(".rs") && name != "tests.rs" {
            let file = path.strip_prefix(root).unwrap().to_str().unwrap().to_owned();
            all.insert(file, fs::read_to_string(&path).unwrap());
        }
    }
}

fn module_of(file: &str) -> Names {
    let path = file.trim_end_matches(".rs").split('/').map(str::to_owned);
    path.filter(|name| name != "mod" && name != "lib").collect()
}

fn room(file: &str) -> &str {
    file.split('/').next().unwrap_or(file)
}

fn floor(room: &str) -> Option<usize> {
    FLOORS.iter().position(|rooms| rooms.contains(&room))
}

type Edges<'a> = BTreeSet<(&'a str, &'a str)>;

/// The shortest way from a file or room back to itself, without it at the end; none where there is none.
fn way_round<'a>(from: &'a str, next: &BTreeMap<&'a str, Vec<&'a str>>) -> Option<Vec<&'a str>> {
    let mut ways = VecDeque::from([vec![from]]);
    let mut seen = BTreeSet::new();
    while let Some(way) = ways.pop_front() {
        for to in next.get(way.last()?).into_iter().flatten().copied() {
            if to == from {
                return Some(way);
            }
            if seen.insert(to) {
                ways.push_back([way.as_slice(), &[to]].concat());
            }
        }
    }
    None
}

/// Sets of more than one that can all be reached from each other, each with its shortest way round.
fn circles<'a>(edges: &Edges<'a>) -> BTreeMap<BTreeSet<&'a str>, Vec<&'a str>> {
    let mut next: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    edges.iter().for_each(|(from, to)| next.entry(from).or_default().push(to));
    let reached = |from: &'a str| {
        let (mut seen, mut open) = (BTreeSet::new(), vec![from]);
        while let Some(at) = open.pop() {
            open.extend(next.get(at).into_iter().flatten().copied().filter(|to| seen.insert(*to)));
        }
        seen
    };
    let reach: BTreeMap<&str, BTreeSet<&str>> = next.keys().map(|from| (*from, reached(from))).collect();
    let mut circles: BTreeMap<BTreeSet<&str>, Vec<&str>> = BTreeMap::new();
    for (at, there) in &reach {
        let back = |other: &&str| reach.get(other).is_some_and(|back| back.contains(at));
        let circle: BTreeSet<&str> = there.iter().copied().filter(back).collect();
        let Some(way) = way_round(at, &next).filter(|_| circle.len() > 1) else { continue };
        let shortest = circles.entry(circle).or_insert_with(|| way.clone());
        if way.len() < shortest.len() {
            *shortest = way;
        }
    }
    circles
}

/// A circle as a reader wants it: who is in it, and one way round.
fn told(circle: &BTreeSet<&str>, way: &[&str]) -> String {
    let all = circle.iter().copied().collect::<Vec<_>>().join(", ");
    format!("\n    {all}\n    {}", [way, &way[..1]].concat().join(" imports "))
}

/// What does not hold, each with the imports that make it so.
fn faults(core: &Core) -> BTreeMap<String, String> {
    let edges = core.edges();
    let mut faults = BTreeMap::new();
    for (from, to) in edges.iter().filter(|(from, to)| floor(room(from)) < floor(room(to))) {
        faults.insert(format!("{from} imports {to} from a floor above"), String::new());
    }
    let between: Edges<'_> =
        edges.iter().map(|(from, to)| (room(from), room(to))).filter(|(from, to)| from != to).collect();
    for (circle, _) in circles(&between) {
        let names = circle.iter().copied().collect::<Vec<_>>().join(", ");
        let crosses = |(from, to): &&(&str, &str)| {
            room(from) != room(to) && circle.contains(room(from)) && circle.contains(room(to))
        };
        let imports = edges.iter().filter(crosses).map(|(from, to)| format!("\n    {from} imports {to}")).collect();
        faults.insert(format!("{names}: rooms in a circle"), imports);
    }
    for name in core.lines.keys() {
        let inside = edges.iter().copied().filter(|(from, to)| room(from) == name && room(to) == name).collect();
        let circles = circles(&inside);
        if circles.len() > MOST_CIRCLES {
            let all = circles.iter().map(|(circle, way)| told(circle, way)).collect();
            faults.insert(format!("{name}: more than {MOST_CIRCLES} circles of files"), all);
        }
        for (circle, way) in circles.iter().filter(|(circle, _)| circle.len() > LARGEST_CIRCLE) {
            faults.insert(format!("{name}: more than {LARGEST_CIRCLE} files in a circle"), told(circle, way));
        }
    }
    let all: usize = core.lines.values().sum();
    for (name, lines) in &core.lines {
        if lines * 100 > all * LARGEST_ROOM_PERCENT {
            let size = format!("\n    {lines} of {all} lines of code");
            faults.insert(format!("{name}: more than {LARGEST_ROOM_PERCENT} % of the core"), size);
        }
    }
    faults
}

#[test]
fn every_room_stands_on_a_floor() {
    let homeless: Vec<&String> = CORE.lines.keys().filter(|room| *room != "lib.rs" && floor(room).is_none()).collect();
    assert!(homeless.is_empty(), "no floor in FLOORS: {homeless:?}");
}

/// A newcomer reads the map before the code.
#[test]
fn the_map_for_developers_has_every_room_once_and_no_other() {
    let project = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let map = fs::read_to_string(project.join("DEVELOPERS.md")).unwrap();
    let rows = map.lines().filter_map(|line| line.strip_prefix("| `")?.split_once("` |"));
    let mut drawn: Vec<&str> = rows.map(|(room, _)| room.trim_end_matches('/')).collect();
    drawn.sort_unstable();
    let mut there = Vec::new();
    for (folder, belongs) in [("core/src", ""), ("bindings", "Cargo.toml"), ("android", "pom.xml")] {
        for entry in fs::read_dir(project.join(folder)).unwrap() {
            let entry = entry.unwrap();
            if entry.path().is_dir() && entry.path().join(belongs).exists() {
                there.push(format!("{folder}/{}", entry.file_name().to_string_lossy()));
            }
        }
    }
    there.sort_unstable();
    let rooms = |path: &&str| ["core/src/", "bindings/", "android/"].iter().any(|folder| path.starts_with(folder));
    assert_eq!(drawn.into_iter().filter(rooms).collect::<Vec<_>>(), there);
}

#[test]
fn no_room_imports_from_above_or_in_a_circle() {
    let faults = faults(&CORE);
    let new = faults.iter().filter(|(fault, _)| !NOT_YET.contains(&fault.as_str()));
    let new = new.map(|(fault, imports)| format!("{fault}{imports}"));
    let mended = NOT_YET.iter().filter(|fault| !faults.contains_key(**fault));
    let mended = mended.map(|fault| format!("holds by now, so that it leaves NOT_YET: {fault}"));
    let all: Vec<String> = new.chain(mended).collect();
    assert!(all.is_empty(), "in core/src:\n{}", all.join("\n"));
}

/// The imports that the sources are known to have are found, and nothing else is.
#[test]
fn imports_are_read_as_the_compiler_reads_them() {
    let edges = CORE.edges();
    assert!(edges.len() > 500, "{}", edges.len());
    for (from, to) in [
        // `use crate::views::{…}`, passed on by the room's door
        ("drawing/pole.rs", "views/pole.rs"),
        // `use super::…`
        ("views/view.rs", "views/board.rs"),
        // only in an expression
        ("screens/mod.rs", "screens/jobs.rs"),
    ] {
        assert!(edges.contains(&(from, to)), "{from} imports {to}");
    }
    // It only passes these on.
    assert!(!edges.iter().any(|(from, _)| *from == "views/mod.rs"));
}
