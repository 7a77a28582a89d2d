//! The board in hand: cut, offset, gap interval and legs.
//!
//! Everything is in the board's own frame, seen from its face: `x` from the board's left end, `y` above its bottom edge.
//! [`Notch::lay_out`] decides the kind of cut and sets out the marks; the back is [`Cut::mirrored`].

mod advisor;
mod block;
mod cut;
mod exact;
mod gap;
mod kind;
mod learned_overcut;
mod legs;
mod marks;
mod pipe;
mod readings;
mod several;

pub use advisor::{Advice, AdviceRequest, BlockSize, PlacedBlock, Seat};
pub use block::{Block, BoardInHand, Sides};
pub use cut::{EIGHTH, Notch, NotchError, NotchRequest, Touch, Warning};
pub use gap::{Edge, Gap, GapRule, Overcut};
pub use kind::CutKind;
pub use learned_overcut::{FittedGap, LEAST_CUTS, LearnedOvercut, learned_overcut};
pub use legs::Legs;
pub use marks::{BoardPoint, Cut, EdgeName, FaceMarks, NotchMark, marks};
pub use pipe::{PipeCut, RoundPipe, round_pipe};
pub use readings::{HeightLine, ReadingError, Readings, WidthLine, block_from_tape};
pub use several::{Several, several};

#[cfg(test)]
mod tests;
