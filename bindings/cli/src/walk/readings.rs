//! What the tape reads at the blocks of the demo house, from its document.

use lapwright::handover::DEMO_HOUSE;
use lapwright::measure::{Length, Reader, Show};
use lapwright::views::Rectangle;
use serde_json::Value;

/// The name of the demo house, as its document says it.
pub(super) fn house() -> String {
    let document: Value = serde_json::from_str(DEMO_HOUSE).unwrap_or_default();
    document.get("name").and_then(Value::as_str).unwrap_or_default().to_owned()
}

/// What the tape reads at one block, as the document says it: across from the wall's left corner, up from the bottom
/// edge of the board.
pub(super) struct Reading(Value);

/// The readings at the blocks that a board meets, from left to right.
pub(super) fn of_board(wall: &str, course: i64, board: &Rectangle) -> Vec<Reading> {
    let document: Value = serde_json::from_str(DEMO_HOUSE).unwrap_or_default();
    let all = document.get("readings").and_then(Value::as_array).cloned().unwrap_or_default();
    let is_here = |value: &Value| {
        let across = |name: &str| length(value, name).map(|length| length.nm());
        value.get("wall").and_then(Value::as_str) == Some(wall)
            && value.get("course").and_then(Value::as_i64) == Some(course)
            && across("left").is_some_and(|left| left < board.right)
            && across("right").is_some_and(|right| right > board.left)
    };
    let mut here: Vec<Reading> = all.into_iter().filter(is_here).map(Reading).collect();
    here.sort_by_key(|reading| length(&reading.0, "left"));
    here
}

impl Reading {
    /// Whether this is the block that the plan has here: their left sides lie within an inch.
    pub(super) fn is_at(&self, planned: i64, board: &Rectangle) -> bool {
        let near = Length::from_inches_64(1, 0).nm();
        length(&self.0, "left").is_some_and(|left| (left.nm() - board.left - planned).abs() < near)
    }

    /// The answer to a question of a notch: across from the left end of the board, where its question hooks the tape.
    pub(super) fn answer(&self, field: &str, board: &Rectangle) -> Option<String> {
        let read = length(&self.0, field)?;
        let from = match field {
            "left" | "right" => Length::from_nm(board.left),
            _ => Length::ZERO,
        };
        // A tape is read to the sixteenth.
        Some(Show::from_code("in/16")?.text(read - from))
    }
}

fn length(value: &Value, name: &str) -> Option<Length> {
    Reader::default().read(value.get(name)?.as_str()?).ok()?.exact.to_length()
}
