//! A house out to a file, and in from one.

use std::path::Path;

use lapwright::handover::{job_document, take_in_document};

use super::{Session, out};
use crate::fault::Fault;

/// The most bytes that are read of a document; the core refuses less than that.
const MOST_BYTES: u64 = 32 << 20;

impl Session<'_> {
    /// A house as a job document: to a file, which is whole or not there, or to standard output.
    pub(super) fn export(&mut self, house: &str, file: Option<&Path>) -> Result<(), Fault> {
        let job = self.job(house)?;
        let text = job_document(&self.book.inner, &self.book.context()?, &job)?;
        let Some(file) = file else { return out(text.trim_end()) };
        write_whole(file, &text)?;
        self.say("cli-exported", &file.display().to_string(), "path")
    }

    /// Takes in a job document as a house of its own.
    pub(super) fn import(&mut self, file: &Path) -> Result<(), Fault> {
        let fault = |error: std::io::Error| Fault::file(file, &error);
        let mut text = String::new();
        let read = std::io::Read::take(std::fs::File::open(file).map_err(fault)?, MOST_BYTES);
        std::io::Read::read_to_string(&mut { read }, &mut text).map_err(fault)?;
        let context = self.book.context()?;
        let outcome = take_in_document(&mut self.book.inner, &context, &text)?;
        self.print_outcome(&outcome)
    }
}

/// Writes a file that is whole or not there.
pub(super) fn write_whole(file: &Path, text: &str) -> Result<(), Fault> {
    let mut part = file.as_os_str().to_owned();
    part.push(".part");
    std::fs::write(&part, text).map_err(|error| Fault::file(Path::new(&part), &error))?;
    std::fs::rename(&part, file).map_err(|error| Fault::file(file, &error))
}
