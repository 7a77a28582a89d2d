//! What the file system says, in the reader's language.

use std::io::{self, ErrorKind};

use super::{Phrases, key};

impl Phrases {
    /// Why a file could not be read or written; what the system says of an error without a text of ours stands behind it.
    pub fn io_error(&self, error: &io::Error) -> String {
        match text(error.kind()) {
            Some(key) => self.phrase(key, &[]),
            None => self.phrase("file-other", &[("why", error.to_string().into())]),
        }
    }
}

const fn text(kind: ErrorKind) -> Option<&'static str> {
    Some(match kind {
        ErrorKind::NotFound => key("file-not-found"),
        ErrorKind::PermissionDenied => key("file-permission"),
        ErrorKind::AlreadyExists => key("file-exists"),
        ErrorKind::IsADirectory => key("file-folder"),
        ErrorKind::NotADirectory => key("file-no-folder"),
        ErrorKind::DirectoryNotEmpty => key("file-folder-full"),
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => key("file-full"),
        ErrorKind::FileTooLarge => key("file-too-large"),
        ErrorKind::ReadOnlyFilesystem => key("file-read-only"),
        ErrorKind::InvalidFilename => key("file-name"),
        ErrorKind::InvalidInput => key("file-name"),
        ErrorKind::InvalidData => key("file-not-text"),
        ErrorKind::UnexpectedEof => key("file-ends"),
        ErrorKind::ResourceBusy | ErrorKind::ExecutableFileBusy | ErrorKind::WouldBlock => key("file-busy"),
        ErrorKind::OutOfMemory => key("file-memory"),
        ErrorKind::BrokenPipe | ErrorKind::WriteZero => key("file-taken-no-more"),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phrases::Language;

    #[test]
    fn a_kind_is_said_in_words_and_any_other_error_keeps_what_the_system_says() {
        let spanish = Phrases::for_language(Language::Spanish);
        assert_eq!(spanish.io_error(&ErrorKind::NotFound.into()), "no hay tal archivo ni carpeta");
        let strange = io::Error::other("the tape drive is out of tape");
        for language in Language::ALL {
            let said = Phrases::for_language(*language).io_error(&strange);
            assert!(
                said.ends_with("the tape drive is out of tape") && said.len() > strange.to_string().len(),
                "{said}"
            );
        }
    }

    #[test]
    fn what_a_file_system_really_says_has_a_text() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("file");
        std::fs::write(&file, [0xff, 0xfe]).unwrap();
        for error in [
            std::fs::read(folder.path().join("nowhere")).unwrap_err(),
            std::fs::read(folder.path()).unwrap_err(),
            std::fs::read_to_string(&file).unwrap_err(),
            std::fs::create_dir(folder.path()).unwrap_err(),
            std::fs::write(file.join("inside"), "").unwrap_err(),
            std::fs::write(folder.path().join("n".repeat(300)), "").unwrap_err(),
            std::fs::remove_dir(folder.path()).unwrap_err(),
        ] {
            assert!(text(error.kind()).is_some(), "{error:?}");
        }
    }
}
