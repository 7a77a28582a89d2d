//! What is wrong with a file that an earlier day or a colleague left, told of that file by the name that a person knows it
//! by.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use crate::forms::context::Terms;
use crate::forms::error::FormError;
use crate::phrases::key;
use crate::store::StoreError;
use crate::views::{Code, Problem};

/// The refusal of a file that is called `name`; `damaged` is the key of what is told of one that does not pass its check.
pub(super) fn of_file(
    terms: &Terms<'_>,
    (file, name): (&Path, String),
    damaged: &'static str,
    error: StoreError,
) -> FormError {
    match error {
        StoreError::DamagedFile { path, .. } if path == file => said(terms, damaged, name),
        StoreError::Io(error) if error.kind() == ErrorKind::NotFound && !file.exists() => {
            said(terms, key("exchange-file-gone"), name)
        }
        StoreError::NotABook(path) if path == file => StoreError::NotABook(PathBuf::from(name)).into(),
        StoreError::Itself(path) if path == file => StoreError::Itself(PathBuf::from(name)).into(),
        StoreError::OtherBook(path) if path == file => StoreError::OtherBook(PathBuf::from(name)).into(),
        other => other.into(),
    }
}

fn said(terms: &Terms<'_>, key: &'static str, name: String) -> FormError {
    Problem::new(Code::Book, "", terms.phrase(key, &[("name", name.into())])).into()
}

/// What a file is called where nothing else is known of it.
pub(super) fn file_name(file: &Path) -> String {
    file.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default()
}
