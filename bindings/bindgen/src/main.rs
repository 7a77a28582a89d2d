//! The bindings generator, in a crate of its own so that the core is not built twice.
//!
//! `bindgen kotlin LIBRARY FOLDER` writes packages; `bindgen swift LIBRARY FOLDER` writes the folders `LapwrightCore`
//! (Swift) and `LapwrightFFI` (the C header and its module map).

use std::process::ExitCode;

use uniffi::{GenerateOptions, SwiftBindingsOptions, TargetLanguage, generate, generate_swift_bindings};

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = args.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["kotlin", library, folder] => generate(GenerateOptions {
            languages: vec![TargetLanguage::Kotlin],
            source: (*library).into(),
            out_dir: (*folder).into(),
            ..GenerateOptions::default()
        }),
        ["swift", library, folder] => generate_swift_bindings(SwiftBindingsOptions {
            generate_swift_sources: true,
            source: (*library).into(),
            out_dir: format!("{folder}/LapwrightCore").into(),
            ..SwiftBindingsOptions::default()
        })
        .and_then(|()| {
            generate_swift_bindings(SwiftBindingsOptions {
                generate_headers: true,
                generate_modulemap: true,
                source: (*library).into(),
                out_dir: format!("{folder}/LapwrightFFI").into(),
                module_name: Some("LapwrightFFI".to_owned()),
                modulemap_filename: Some("module.modulemap".to_owned()),
                ..SwiftBindingsOptions::default()
            })
        }),
        _ => {
            eprintln!("usage: bindgen kotlin|swift LIBRARY FOLDER");
            return ExitCode::from(2);
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("bindgen: {error:?}");
            ExitCode::FAILURE
        }
    }
}
