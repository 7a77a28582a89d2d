use super::{AllowedLengths, Reason, Verdict, Why};
use crate::measure::Length;

/// A rectangle of a wall, in the wall's axes: an opening, what goes through the wall, or its block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its left side.
    pub left: Length,
    /// Its right side.
    pub right: Length,
    /// Its bottom edge.
    pub bottom: Length,
    /// Its top edge.
    pub top: Length,
}

impl Placed<'_> {
    /// Whether both take up some of the same room; touching is none.
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.bottom < other.top && other.bottom < self.top
    }
}

/// Judges where something stands by what else stands on the wall: two things cannot be in one place. Touching is allowed.
pub fn judge_place(placed: &Placed<'_>, others: &[Placed<'_>]) -> Verdict {
    match others.iter().find(|other| placed.meets(other)) {
        Some(other) => impossible(Why::named(Reason::Overlaps, other.name)),
        None => Verdict::Fine,
    }
}

/// Judges where a block lies by what else stands on the wall: boards and trim leave no room for both.
pub fn judge_block(block: &Placed<'_>, others: &[Placed<'_>]) -> Verdict {
    match others.iter().find(|other| block.meets(other)) {
        Some(other) => Verdict::Unlikely { why: Why::named(Reason::BlockOverlaps, other.name), suggestion: None },
        None => Verdict::Fine,
    }
}

/// What is said of something that stands beside or over its wall, whose highest point is `top`.
pub fn off_wall(top: Length) -> Verdict {
    impossible(Why::geometry(Reason::OnWall, top))
}

/// Judges a name by those that other things of the kind have: `East` and ` east ` call the same wall.
pub fn judge_name(name: &str, taken: &[&str]) -> Verdict {
    match taken.iter().find(|other| plain_name(other) == plain_name(name)) {
        Some(other) => impossible(Why::named(Reason::NameTaken, other)),
        None => Verdict::Fine,
    }
}

/// A name as it is compared: two that are alike in this call one thing.
pub fn plain_name(name: &str) -> String {
    name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

fn impossible(why: Why) -> Verdict {
    Verdict::Impossible { why, allowed: AllowedLengths::default(), suggestion: None }
}
