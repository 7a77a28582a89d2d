use super::wall::Corner;

/// The true shape of a board, seen from its face; in nanometres, all but `at` from the lower left corner of its box.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ShapeView {
    /// The lower left corner of its box, from the wall's left corner and base line.
    pub at: Corner,
    /// Its corners counter-clockwise, from the lowest, then leftmost one.
    pub shape: Vec<Corner>,
    /// The corners of its holes, clockwise.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub holes: Vec<Vec<Corner>>,
    /// What its full height loses over its whole length; absent where it loses nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rip: Option<RipView>,
    /// What it goes round.
    pub cuts: Vec<ShapeCutView>,
}

/// What the full height of a board loses over its whole length, in nanometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RipView {
    /// At its top edge; absent where nothing is lost there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top: Option<i64>,
    /// At its bottom edge; absent where nothing is lost there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bottom: Option<i64>,
}

/// What a board goes round, grown by its gaps and clipped to the board's box.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ShapeCutView {
    /// What it is.
    pub name: String,
    /// The sides of the box that it reaches or passes, of `left`, `right`, `bottom` and `top`; none for a hole.
    pub edges: Vec<String>,
    /// Its left edge.
    pub left: i64,
    /// Its right edge.
    pub right: i64,
    /// Its lower edge; where the course hangs out of level the lower one of its ends.
    pub bottom: i64,
    /// Its upper edge; where the course hangs out of level the higher one of its ends.
    pub top: i64,
}

impl ShapeView {
    /// Its outline and its holes on the wall, where its right end hangs so much higher than its left one.
    pub fn on_wall(&self, rise: i64) -> Vec<Vec<Corner>> {
        let length = self.shape.iter().map(|corner| corner.x).max().unwrap_or(0).max(1);
        let higher = |x: i64| i64::try_from(i128::from(rise) * i128::from(x) / i128::from(length)).unwrap_or(0);
        let placed = |corner: &Corner| Corner { x: self.at.x + corner.x, y: self.at.y + corner.y + higher(corner.x) };
        std::iter::once(&self.shape).chain(&self.holes).map(|ring| ring.iter().map(placed).collect()).collect()
    }
}
