use crate::measure::Length;
use crate::wall::{OpeningKind, PenetrationKind};

/// What a person measures or sets on a house: each has bounds of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measurand {
    /// The mean height of the roof above the ground.
    RoofHeight,
    /// The height of a board, edge to edge.
    BoardHeight,
    /// The thickness of a board.
    BoardThickness,
    /// How far a board laps over the one below.
    Lap,
    /// The nail line below the board's top edge.
    NailLine,
    /// The length of a board as it is bought.
    StockLength,
    /// The length of a board left over from before.
    Offcut,
    /// What is left of a board that was spoiled.
    SpoiledLeft,
    /// The length of a loose board.
    BoardLength,
    /// The first board's bottom edge on the pole.
    PoleFrom,
    /// The end of the courses on the pole.
    PoleTo,
    /// The largest reveal.
    RevealMost,
    /// The smallest reveal.
    RevealLeast,
    /// The one reveal of a pole of fixed reveals.
    Reveal,
    /// How much neighbouring reveals may differ.
    RevealChange,
    /// The height of a mark on the pole.
    MarkHeight,
    /// How far lines stay away from a mark.
    MarkClear,
    /// The width of a wall along its base line.
    WallWidth,
    /// The height of a wall's left or right end.
    WallHeight,
    /// The wall's diagonal from bottom left to top right.
    DiagonalUp,
    /// The wall's diagonal from top left to bottom right.
    DiagonalDown,
    /// The foot of a gable's peak, from the left corner.
    PeakFromLeft,
    /// The height of a gable's peak above the base line.
    PeakHeight,
    /// The wall's base line on the pole.
    Base,
    /// Where the base line steps, from the left corner.
    StepFromLeft,
    /// How far the base line steps up.
    StepRise,
    /// The centre of the first stud, from the left corner.
    FirstStud,
    /// The centre of a stud that was measured, from the left corner.
    StudCentre,
    /// From the centre of a stud to the next.
    StudSpacing,
    /// The width of the trim at a corner; zero for none.
    TrimWidth,
    /// The left side of an opening, from the left corner.
    OpeningFromLeft,
    /// The width of an opening.
    OpeningWidth(OpeningKind),
    /// The bottom of an opening above the base line.
    OpeningFromBase(OpeningKind),
    /// The height of an opening.
    OpeningHeight(OpeningKind),
    /// The width of an opening's head, where a side of it leans.
    HeadWidth,
    /// The left side of ground, paving, roof or deck, from the left corner.
    AbutmentFromLeft,
    /// Its width.
    AbutmentWidth,
    /// Its top above the base line.
    AbutmentTop,
    /// How much higher its right end is, where it slopes.
    AbutmentRise,
    /// The width of what goes through the wall; the diameter of what is round.
    PenetrationWidth(PenetrationKind),
    /// Its height, where it is a rectangle.
    PenetrationHeight(PenetrationKind),
    /// Its centre, from the left corner.
    PenetrationFromLeft,
    /// Its centre above the base line.
    PenetrationFromBase,
    /// The width of a mounting block.
    BlockWidth,
    /// The height of a mounting block.
    BlockHeight,
    /// The thickness of a mounting block.
    BlockThickness,
    /// The centre of the hole above the block's bottom edge.
    HoleFromBottom,
    /// A side of a block, from the board's left end.
    NotchAcross,
    /// The bottom or top of a block, above the board's bottom edge.
    NotchUp,
    /// The gap that came out at a block.
    Gap,
    /// The bottom edge of a course as it hangs, on the pole.
    AsBuiltLine,
}

/// A range on both sides; what a side does not say is open.
pub(super) type Range = (Option<Length>, Option<Length>);

/// What is possible at all and what is usual, from jobsite habit: common practice, no source.
pub(super) struct Habit {
    pub(super) possible: Range,
    pub(super) usual: Range,
    /// Up to how many whole inches the value reads like one in feet: `9` where the wall is 9 ft high.
    pub(super) feet_up_to: i64,
}

const fn range(least: (i64, i64), most: (i64, i64)) -> Range {
    (Some(Length::from_inches_64(least.0, least.1)), Some(Length::from_inches_64(most.0, most.1)))
}

const fn inches(least: i64, most: i64) -> Range {
    range((least, 0), (most, 0))
}

const fn habit(possible: Range, usual: Range) -> Habit {
    Habit { possible, usual, feet_up_to: 0 }
}

const fn in_feet(possible: Range, usual: Range, feet_up_to: i64) -> Habit {
    Habit { possible, usual, feet_up_to }
}

impl Measurand {
    /// Sixty feet: higher than any house that is clad from a ladder or a scaffold of planks.
    const HIGHEST: i64 = 720;
    /// Three hundred feet.
    const WIDEST: i64 = 3_600;

    /// The ranges that jobsite habit gives.
    pub(super) const fn habit(self) -> Habit {
        const WALL: i64 = Measurand::WIDEST;
        const UP: i64 = Measurand::HIGHEST;
        match self {
            // A shed's, and twice the highest wall that is clad from planks.
            Self::RoofHeight => in_feet(inches(36, 2 * UP), inches(84, UP), 60),
            Self::BoardHeight => habit(inches(2, 24), inches(5, 12)),
            Self::BoardThickness => habit(range((0, 12), (1, 32)), range((0, 16), (0, 48))),
            Self::Lap => habit(range((0, 0), (12, 0)), range((0, 48), (3, 0))),
            Self::NailLine => habit(range((0, 16), (6, 0)), range((0, 24), (1, 32))),
            Self::StockLength => in_feet(inches(12, 480), inches(72, 240), 20),
            Self::Offcut | Self::SpoiledLeft => habit(range((0, 32), (480, 0)), inches(6, 240)),
            Self::BoardLength => habit(range((0, 32), (480, 0)), inches(2, 240)),
            Self::PoleFrom => habit(inches(-UP, UP), inches(-120, 120)),
            Self::PoleTo => in_feet(inches(-UP, UP), inches(24, 480), 24),
            Self::RevealMost | Self::Reveal => habit(inches(1, 24), inches(3, 12)),
            Self::RevealLeast => habit(range((0, 32), (24, 0)), inches(2, 12)),
            Self::RevealChange => habit(inches(0, 12), range((0, 0), (0, 32))),
            Self::MarkHeight => habit(inches(-UP, UP), inches(-120, 480)),
            Self::MarkClear => habit(inches(0, 24), inches(0, 4)),
            Self::WallWidth => in_feet(inches(2, WALL), inches(12, 960), 47),
            // A cheek runs out to nothing, and a triangle under a gable begins with it.
            Self::WallHeight => in_feet(inches(0, UP), range((0, 1), (480, 0)), 30),
            Self::DiagonalUp | Self::DiagonalDown => habit(inches(2, WALL), inches(12, 1_200)),
            Self::PeakFromLeft => in_feet(inches(1, WALL), inches(12, 960), 30),
            Self::PeakHeight => in_feet(inches(2, UP), inches(24, 600), 30),
            // A wall over a lower roof begins a storey or two up.
            Self::Base => habit(inches(-UP, UP), inches(-120, 240)),
            Self::StepFromLeft => habit(inches(0, WALL), inches(4, 960)),
            Self::StepRise => habit(inches(-UP, UP), inches(-60, 60)),
            Self::FirstStud => habit(inches(0, WALL), inches(0, 32)),
            Self::StudCentre => habit(inches(0, WALL), inches(0, 960)),
            // 19.2 in and 600 mm are used, too.
            Self::StudSpacing => habit(inches(6, 48), range((11, 32), (24, 32))),
            Self::TrimWidth => habit(inches(0, 24), inches(0, 12)),
            Self::OpeningFromLeft | Self::AbutmentFromLeft => habit(inches(0, WALL), inches(0, 960)),
            Self::OpeningWidth(OpeningKind::Window) => in_feet(inches(4, 480), inches(12, 144), 11),
            Self::OpeningWidth(OpeningKind::Door) => in_feet(inches(12, 480), inches(24, 216), 18),
            Self::OpeningFromBase(OpeningKind::Window) => habit(inches(0, UP), inches(0, 360)),
            // A door to a deck stands some steps up; one upstairs, over a balcony, a storey.
            Self::OpeningFromBase(OpeningKind::Door) => habit(inches(0, UP), inches(0, 144)),
            Self::OpeningHeight(OpeningKind::Window) => in_feet(inches(4, 480), inches(12, 120), 11),
            Self::OpeningHeight(OpeningKind::Door) => in_feet(inches(24, 480), inches(72, 120), 10),
            // The head of a triangle is all but nothing.
            Self::HeadWidth => habit(range((0, 1), (480, 0)), range((0, 16), (216, 0))),
            Self::AbutmentWidth => in_feet(inches(0, WALL), inches(6, 960), 5),
            Self::AbutmentTop => habit(inches(-UP, UP), inches(-120, 360)),
            Self::AbutmentRise => habit(inches(-UP, UP), inches(-240, 240)),
            Self::PenetrationWidth(kind) | Self::PenetrationHeight(kind) => penetration(kind),
            Self::PenetrationFromLeft => habit(inches(0, WALL), inches(1, 960)),
            Self::PenetrationFromBase => habit(inches(-UP, UP), inches(-24, 480)),
            Self::BlockWidth | Self::BlockHeight => habit(range((0, 32), (60, 0)), inches(3, 24)),
            Self::BlockThickness => habit(range((0, 16), (6, 0)), range((0, 40), (2, 0))),
            Self::HoleFromBottom => habit(range((0, 1), (60, 0)), range((1, 0), (20, 0))),
            Self::NotchAcross => habit(inches(-480, 540), inches(-24, 240)),
            // A board may go round a window that is as high as the wall.
            Self::NotchUp => habit(inches(-UP, UP), inches(-24, 24)),
            Self::Gap => habit(range((0, 0), (1, 0)), range((0, 0), (0, 16))),
            Self::AsBuiltLine => habit(inches(-UP, UP), inches(-120, 480)),
        }
    }
}

/// The size of what goes through a wall, which is never that of its hood, flange or plate.
const fn penetration(kind: PenetrationKind) -> Habit {
    let usual = match kind {
        PenetrationKind::HoseBib => range((0, 32), (2, 0)),
        PenetrationKind::Pipe => range((0, 24), (6, 0)),
        PenetrationKind::Conduit => range((0, 32), (5, 0)),
        PenetrationKind::Cable => range((0, 8), (2, 0)),
        PenetrationKind::ElectricalBox => range((2, 0), (12, 0)),
        PenetrationKind::Light => range((0, 32), (8, 0)),
        PenetrationKind::VentHood => range((3, 0), (14, 0)),
        PenetrationKind::MeterBase => range((4, 0), (20, 0)),
        PenetrationKind::LineSet => range((1, 0), (6, 0)),
    };
    habit(range((0, 4), (48, 0)), usual)
}
