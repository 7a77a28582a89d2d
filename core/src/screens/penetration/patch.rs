use crate::flashing::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest};
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::trouble::Kept;
use crate::views::{Note, Size, Source};

use super::Round;

/// The sizes of the patch and where it ends; empty, with a note, where they cannot be told.
pub(super) fn sizes(terms: &Terms<'_>, round: &Round, notes: &mut Vec<Note>) -> Kept<(Vec<Size>, String)> {
    match cut(terms, round)? {
        Some(Ok(patch)) => return Ok((lines(terms, &patch), ends(terms, round, &patch))),
        Some(Err(error)) => notes.push(note(terms, "patch", trouble(error))),
        None => notes.push(note(terms, "pole-missing", key("penetration-pole-missing"))),
    }
    Ok((Vec::new(), String::new()))
}

/// The patch, or why it cannot be cut; `None` where there are no courses to lap over.
pub(super) fn cut(terms: &Terms<'_>, round: &Round) -> Kept<Option<Result<Patch, PatchError>>> {
    // A penetration is there before the boards are: without their height there are no courses either.
    let (Some(first), Ok(height)) = (round.courses.first(), round.job.board_height(terms)) else { return Ok(None) };
    let mut request = request(round, height)?;
    let patch = Patch::cut(&request);
    // A first course that is ripped starts at the base line, and so does a patch that laps over the starter.
    if let (Ok(Patch { end: PatchEnd::Starter, .. }), Some(bottom)) = (&patch, request.bottoms.first_mut())
        && *bottom != first.bottom
    {
        *bottom = first.bottom;
        return Ok(Some(Patch::cut(&request)));
    }
    Ok(Some(patch))
}

fn request(round: &Round, height: Length) -> Kept<PatchRequest> {
    let job = &round.job;
    Ok(PatchRequest {
        board: PatchBoard { height, lap: job.lap()?, nail_line: job.nail_line()? },
        // Where the courses would start at their full height.
        bottoms: round.courses.iter().map(|course| course.bottom + course.height - height).collect(),
        block: round.outer(),
        pipe: round.pipe(),
        beyond_side: job.rules.get_length(keys::PATCH_BEYOND_SIDE)?,
        beyond_top: job.rules.get_length(keys::PATCH_BEYOND_TOP)?,
        snug: job.rules.get_length(keys::PATCH_SNUG)?,
        cover_beyond: job.rules.get_length(keys::PATCH_COVER_BEYOND)?,
    })
}

fn lines(terms: &Terms<'_>, patch: &Patch) -> Vec<Size> {
    let size = |code: &str, label: &str, length: Length| Size {
        code: code.to_owned(),
        label: terms.phrase(label, &[]),
        reading: terms.reading(length, Source::Planned, None),
    };
    let mut sizes = vec![
        size("width", key("patch-width"), patch.outline.width()),
        size("height", key("patch-height"), patch.outline.height()),
        size("hole", key("patch-hole"), patch.hole),
        size("hole-from-left", key("patch-hole-from-left"), patch.hole_from_left),
        size("hole-from-bottom", key("patch-hole-from-bottom"), patch.hole_from_bottom),
        size("slit", key("patch-slit"), patch.slit_length),
        size("cover-width", key("patch-cover-width"), patch.cover_width),
        size("cover-height", key("patch-cover-height"), patch.cover_height),
        size("cover-from-bottom", key("patch-cover-from-bottom"), patch.cover_from_bottom),
    ];
    if let PatchEnd::Course { over_board, hidden_by, .. } = patch.end {
        sizes.push(size("over-board", key("patch-over-board"), over_board));
        sizes.push(size("hidden-by", key("patch-hidden-by"), hidden_by));
    }
    sizes
}

fn ends(terms: &Terms<'_>, round: &Round, patch: &Patch) -> String {
    match patch.end {
        PatchEnd::Course { course, .. } => {
            terms.phrase("patch-ends-on-course", &[("course", round.course_number(course).into())])
        }
        PatchEnd::Starter => terms.phrase("patch-ends-on-starter", &[]),
    }
}

fn note(terms: &Terms<'_>, code: &str, text: &str) -> Note {
    Note { code: code.to_owned(), text: terms.phrase(text, &[]) }
}

fn trouble(error: PatchError) -> &'static str {
    match error {
        PatchError::NailLine | PatchError::Lap => key("penetration-patch-nail-line"),
        PatchError::PipeAcross | PatchError::PipeUp => key("penetration-patch-pipe"),
        PatchError::CourseOrder { .. } | PatchError::CourseGap { .. } => key("penetration-patch-courses"),
        _ => key("penetration-patch-trouble"),
    }
}
