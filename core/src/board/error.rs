use thiserror::Error;

/// The most boards of a course, and the most corners and holes of a board.
pub(super) const BOARDS_MOST: usize = 10_000;
/// The most knots of a course that hangs.
pub(super) const KNOTS_MOST: usize = 1_000;

/// Why there are no shapes of boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum BoardError {
    /// A gap or a limit is under zero.
    #[error("a gap or a least width must be at least zero")]
    Negative,
    /// The boards have no height.
    #[error("the height of the boards must be over zero")]
    Height,
    /// A rectangle has no width.
    #[error("the right edge of rectangle {0} must lie to the right of its left edge")]
    Width(usize),
    /// A rectangle has no height.
    #[error("the top of rectangle {0} must lie above its bottom")]
    Top(usize),
    /// A course that hangs has no knots, too many, or such that do not go to the right.
    #[error("the knots of a hanging course must go from left to right, 1 to {limit} of them", limit = KNOTS_MOST)]
    Knots,
    /// A length is beyond what is taken in.
    #[error("a length is over 1,000 km")]
    TooFar,
    /// An edge of the outline would shrink to nothing or turn round, or the moved outline would cross or touch itself.
    #[error("the gaps leave no outline: an edge vanishes or turns round, or the outline crosses or touches itself")]
    Gaps,
    /// More than is worked through.
    #[error("more than {limit} boards, corners or holes", limit = BOARDS_MOST)]
    TooMany,
}
