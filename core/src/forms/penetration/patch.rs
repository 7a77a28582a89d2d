use crate::flashing::{Patch, PatchEnd, PatchError};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::key;
use crate::views::{Note, Size, Source};
use crate::work::{PenetrationSite, patch_lengths};

/// The sizes of the patch and where it ends; empty, with a note, where they cannot be told.
pub(crate) fn sizes(terms: &Terms<'_>, site: &PenetrationSite, notes: &mut Vec<Note>) -> Result<(Vec<Size>, String)> {
    match site.patch()? {
        Some(Ok(patch)) => {
            let size = |(code, length): (&str, Length)| Size {
                code: code.to_owned(),
                label: terms.phrase(&format!("patch-{code}"), &[]),
                reading: terms.reading(length, Source::Planned, None),
            };
            return Ok((patch_lengths(&patch).into_iter().map(size).collect(), ends(terms, site, &patch)));
        }
        Some(Err(error)) => notes.push(note(terms, "patch", trouble(error))),
        None => notes.push(Note::check("pole-missing", terms.phrase(key("penetration-pole-missing"), &[]))),
    }
    Ok((Vec::new(), String::new()))
}

fn ends(terms: &Terms<'_>, site: &PenetrationSite, patch: &Patch) -> String {
    match patch.end {
        PatchEnd::Course { course, .. } => {
            terms.phrase("patch-ends-on-course", &[("course", site.course_number(course).into())])
        }
        PatchEnd::Starter => terms.phrase("patch-ends-on-starter", &[]),
    }
}

fn note(terms: &Terms<'_>, code: &str, text: &str) -> Note {
    Note::stop(code, terms.phrase(text, &[]))
}

fn trouble(error: PatchError) -> &'static str {
    match error {
        PatchError::NailLine | PatchError::Lap => key("penetration-patch-nail-line"),
        PatchError::PipeOutside | PatchError::HoleLow => key("penetration-patch-pipe"),
        PatchError::CourseOrder { .. } | PatchError::CourseGap { .. } => key("penetration-patch-courses"),
        _ => key("penetration-patch-trouble"),
    }
}
