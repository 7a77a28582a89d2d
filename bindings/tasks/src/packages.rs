use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Package};
use spdx::{Expression, ParseMode};

use crate::{Done, files, project};

/// The licences (by their names in the SPDX list) under which others' packages may be built into what is given out. All let
/// a program be passed on with a notice; MPL-2.0 also asks for the source of what was changed in the package itself.
const LICENCES: [&str; 11] = [
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "MPL-2.0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Packages of which others' packages ask for two versions.
const TWICE: [&str; 7] = ["cpufeatures", "getrandom", "hashbrown", "itertools", "r-efi", "rand_core", "syn"];

/// Packages that speak to a network, or that whoever does so stands on: what is in a book stays on its phone.
const NETWORK: [&str; 24] = [
    "async-io",
    "async-net",
    "async-std",
    "attohttpc",
    "curl",
    "h2",
    "hyper",
    "isahc",
    "mio",
    "native-tls",
    "net2",
    "openssl",
    "quinn",
    "reqwest",
    "rustls",
    "schannel",
    "smol",
    "socket2",
    "surf",
    "tokio",
    "tonic",
    "trust-dns-resolver",
    "tungstenite",
    "ureq",
];

/// What of the standard library does.
const SOCKETS: [&str; 4] = ["TcpListener", "TcpStream", "UdpSocket", "ToSocketAddrs"];

/// All packages that the project is built from, on every system.
pub(crate) fn all() -> Done<Metadata> {
    let manifest = project::root().join("Cargo.toml");
    let mut command = MetadataCommand::new();
    command.manifest_path(manifest).other_options(["--locked".to_owned()]);
    command.exec().map_err(|error| format!("cargo does not say what the project is built from: {error}"))
}

/// What is wrong with the packages: a licence, a source, a version too many, a dependency that nothing uses.
pub(crate) fn faults(metadata: &Metadata) -> Done<Vec<String>> {
    let others = metadata.packages.iter().filter(|package| !metadata.workspace_members.contains(&package.id));
    let mut faults: Vec<String> = others.clone().filter_map(licence).collect();
    faults.extend(others.clone().filter_map(source));
    faults.extend(others.clone().filter_map(network));
    faults.extend(twice(others));
    for package in metadata.workspace_packages() {
        faults.extend(unused(metadata, package)?);
        faults.extend(sockets(package)?);
    }
    Ok(faults)
}

fn licence(package: &Package) -> Option<String> {
    let said = package.license.as_deref().unwrap_or_default();
    let allowed = Expression::parse_mode(said, ParseMode::LAX).is_ok_and(|expression| allows(&expression));
    let (name, version) = (&package.name, &package.version);
    (!allowed).then(|| format!("{name} {version} has the licence `{said}`; allowed are {}", LICENCES.join(", ")))
}

fn allows(expression: &Expression) -> bool {
    expression.evaluate(|asked| asked.license.id().is_some_and(|id| LICENCES.contains(&id.name)))
}

fn source(package: &Package) -> Option<String> {
    let good = package.source.as_ref().is_some_and(|source| source.is_crates_io());
    let (name, version) = (&package.name, &package.version);
    (!good).then(|| format!("{name} {version} does not come from cargo's own registry"))
}

fn network(package: &Package) -> Option<String> {
    let (name, version) = (&package.name, &package.version);
    NETWORK.contains(&name.as_str()).then(|| format!("{name} {version} speaks to a network; nothing here may"))
}

/// Sockets in a package's own sources.
fn sockets(package: &Package) -> Done<Vec<String>> {
    let folder = package.manifest_path.parent().map(|folder| folder.as_std_path().to_owned()).unwrap_or_default();
    // This list of them is the one place where they may be named.
    if package.name.as_str() == env!("CARGO_PKG_NAME") {
        return Ok(Vec::new());
    }
    let words = words(&folder.join("src"))?;
    let found = SOCKETS.into_iter().filter(|socket| words.contains(*socket));
    Ok(found.map(|socket| format!("{} uses {socket}; nothing here speaks to a network", package.name)).collect())
}

fn twice<'a>(packages: impl Iterator<Item = &'a Package>) -> Vec<String> {
    let mut versions: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    for package in packages {
        versions.entry(package.name.as_str()).or_default().insert(package.version.to_string());
    }
    let said = |(name, versions): (&str, BTreeSet<String>)| {
        let versions: Vec<String> = versions.into_iter().collect();
        let all = versions.join(" and ");
        match (versions.len(), TWICE.contains(&name)) {
            (1, true) => {
                Some(format!("{name} is there once ({all}): take it off the list of those that may be there twice"))
            }
            (1, false) | (2, true) => None,
            _ => Some(format!("{name} is there as {all}: agree on one version")),
        }
    };
    versions.into_iter().filter_map(said).collect()
}

/// Dependencies whose names do not stand in the sources that may use them.
fn unused(metadata: &Metadata, package: &Package) -> Done<Vec<String>> {
    let nodes = metadata.resolve.iter().flat_map(|resolve| &resolve.nodes);
    let Some(node) = nodes.into_iter().find(|node| node.id == package.id) else { return Ok(Vec::new()) };
    let folder = package.manifest_path.parent().map(|folder| folder.as_std_path().to_owned()).unwrap_or_default();
    let own = words(&folder.join("src"))?;
    let mut tests = own.clone();
    for further in ["tests", "benches"] {
        tests.extend(words(&folder.join(further))?);
    }
    let is_unused = |dependency: &&cargo_metadata::NodeDep| {
        let only_tests = dependency.dep_kinds.iter().all(|kind| kind.kind == DependencyKind::Development);
        !(if only_tests { &tests } else { &own }).contains(&dependency.name)
    };
    let said = |dependency: &cargo_metadata::NodeDep| format!("{} does not use {}", package.name, dependency.name);
    Ok(node.deps.iter().filter(is_unused).map(said).collect())
}

/// The words of the Rust sources of a folder and those below it.
fn words(folder: &Path) -> Done<BTreeSet<String>> {
    let mut words = BTreeSet::new();
    for path in files::of_folder(folder)? {
        if path.is_dir() {
            words.extend(self::words(&path)?);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            let text = files::text(&path)?;
            words.extend(text.split(|c: char| !c.is_alphanumeric() && c != '_').map(str::to_owned));
        }
    }
    Ok(words)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_licence_that_asks_for_more_than_a_notice_is_refused() {
        for (said, allowed) in [
            ("MIT/Apache-2.0", true),
            ("GPL-3.0-only OR MIT", true),
            ("MIT AND GPL-3.0-only", false),
            ("Apache-2.0 WITH LLVM-exception", true),
            ("AGPL-3.0-or-later", false),
            ("SSPL-1.0", false),
        ] {
            assert_eq!(allows(&Expression::parse_mode(said, ParseMode::LAX).unwrap()), allowed, "{said}");
        }
    }
}
