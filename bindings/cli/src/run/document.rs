//! A house out to a file, and in from one.

use std::path::Path;

use lapwright::handover::job_document;
use lapwright::screens::{sign_off_sheet, take_in_document};
use lapwright::store::{Overwrite, write_file};

use super::{Session, out};
use crate::fault::Fault;

/// The most bytes that are read of a document; the core refuses less than that.
const MOST_BYTES: u64 = 32 << 20;

impl Session<'_> {
    /// A house as a job document: to a file, which is whole or not there, or to standard output.
    pub(super) fn export(&mut self, house: &str, file: Option<&Path>, force: bool) -> Result<(), Fault> {
        let job = self.job(house)?;
        let text = job_document(&self.book.inner, &self.book.context()?, &job)?;
        self.write("cli-exported", file, force, &text)
    }

    /// The sign-offs of a house for an inspector, written as a document is.
    pub(super) fn sheet(&mut self, house: &str, file: Option<&Path>, force: bool) -> Result<(), Fault> {
        let job = self.job(house)?;
        let text = sign_off_sheet(&self.book.inner, &self.book.context()?, &job)?;
        if self.options.json && file.is_none() {
            return out(&format!("{:#}", serde_json::json!({ "sheet": text })));
        }
        self.write("cli-exported", file, force, &text)
    }

    /// Writes a text to a file, which is whole or not there, and says so, or to standard output.
    pub(super) fn write(&self, said: &str, file: Option<&Path>, force: bool, text: &str) -> Result<(), Fault> {
        let Some(file) = file else { return out(text.trim_end()) };
        let overwrite = if force { Overwrite::PlainFiles } else { Overwrite::Never };
        write_file(file, text.as_bytes(), overwrite).map_err(|error| error.at(file))?;
        self.say(said, &file.display().to_string(), "path")
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
