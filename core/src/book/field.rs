use std::fmt;

macro_rules! fields {
    ($($(#[doc = $doc:literal])+ $name:ident = $code:literal,)+) => {
        /// A field of a thing of the book. A code is never given a second meaning; a field belongs to each kind that
        /// [`fields_of`](super::fields_of) names it for, and to those that only the program writes.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Field {
            $($(#[doc = $doc])+ $name,)+
        }

        impl Field {
            /// Every field.
            pub const ALL: &[Self] = &[$(Self::$name,)+];

            /// The code that stands in every book, and names the field to whoever answers it.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$name => $code,)+
                }
            }

            /// The field of a code; none for one that a newer program wrote.
            pub fn from_code(code: &str) -> Option<Self> {
                match code {
                    $($code => Some(Self::$name),)+
                    _ => None,
                }
            }
        }
    };
}

fields! {
    /// What the crew calls it.
    Name = "name",
    /// How high a board is.
    BoardHeight = "board-height",
    /// How thick a board is.
    BoardThickness = "board-thickness",
    /// How far a board laps over the one below.
    Lap = "lap",
    /// How far the nail line lies below a board's top edge.
    NailLine = "nail-line",
    /// Whether the house may have lead paint: yes or no.
    OldHouse = "old-house",
    /// How the siding ends at the left end of a wall, by its code.
    CornerLeft = "corner-left",
    /// How it ends at the right end.
    CornerRight = "corner-right",
    /// The greatest wind that the local code counts with, in miles an hour.
    WindSpeed = "wind-speed",
    /// How open to the wind the ground lies, by its code.
    Exposure = "exposure",
    /// The mean height of the roof over the ground.
    RoofHeight = "roof-height",
    /// The family of rules, by its code.
    Rules = "rules",
    /// Whether it is out of the way: yes or no.
    Archived = "archived",
    /// The house that a document told of, by its id in the book that it was first written down in.
    House = "house",
    /// The length of all new boards of the plan in force.
    PlanUsed = "plan-used",
    /// The length that no plan undercuts.
    PlanLeast = "plan-least",
    /// How long it is.
    Length = "length",
    /// How many there are.
    Count = "count",
    /// Why an offcut is no longer at hand.
    Used = "used",
    /// Where it begins: on the pole, or along the wall.
    From = "from",
    /// Where it ends: on the pole, or along the wall.
    To = "to",
    /// How the pole is laid out.
    Mode = "mode",
    /// The greatest reveal.
    RevealMax = "reveal-max",
    /// The least reveal.
    RevealMin = "reveal-min",
    /// The fixed reveal.
    Reveal = "reveal",
    /// How much neighbouring reveals may differ.
    ChangeMax = "change-max",
    /// Course lines, in nanometres, with commas.
    Lines = "lines",
    /// Where it is: a height of a mark, a stud's centre.
    At = "at",
    /// What a mark wants of the lines.
    Want = "want",
    /// How far the lines stay clear of a mark.
    Clear = "clear",
    /// How much a mark counts.
    Weight = "weight",
    /// From left to right.
    Width = "width",
    /// Height of the siding at the left end.
    LeftHeight = "left-height",
    /// Height of the siding at the right end.
    RightHeight = "right-height",
    /// Height of the base line on the pole.
    Base = "base",
    /// The first stud's centre from the left corner.
    FirstStud = "first-stud",
    /// From stud to stud.
    StudSpacing = "stud-spacing",
    /// Width of the trim at the left end.
    TrimLeft = "trim-left",
    /// Width of the trim at the right end.
    TrimRight = "trim-right",
    /// The diagonal from the lower left corner.
    DiagonalUp = "diagonal-up",
    /// The diagonal from the upper left corner.
    DiagonalDown = "diagonal-down",
    /// The peak's place from the left corner.
    PeakFromLeft = "peak-from-left",
    /// The peak's height.
    PeakHeight = "peak-height",
    /// From the wall's left corner.
    FromLeft = "from-left",
    /// How much the base line steps up.
    Rise = "rise",
    /// What it is, by its code.
    What = "what",
    /// Above the wall's base line.
    FromBase = "from-base",
    /// From bottom to top.
    Height = "height",
    /// The left side at the head, from the wall's left corner.
    HeadFromLeft = "head-from-left",
    /// The width at the head.
    HeadWidth = "head-width",
    /// Height of the surface.
    Top = "top",
    /// How a block goes on, by its code.
    Mounting = "mounting",
    /// How a penetration is finished, by its code.
    Finish = "finish",
    /// The block's width.
    BlockWidth = "block-width",
    /// The block's height.
    BlockHeight = "block-height",
    /// The block's thickness.
    BlockThickness = "block-thickness",
    /// The hole's centre above the block's bottom.
    HoleFromBottom = "hole-from-bottom",
    /// Whether the sealant is painted over: yes or no.
    Painted = "painted",
    /// Whether there is a head flashing: yes or no.
    HeadFlashing = "head-flashing",
    /// Whether the bottom joint stays open: yes or no.
    BottomOpen = "bottom-open",
    /// The course, counted on the pole from one.
    Course = "course",
    /// A board's bottom edge at its left end.
    Bottom = "bottom",
    /// A board's bottom edge at its right end, where it is another; the block's at its right side.
    BottomRight = "bottom-right",
    /// How far the top edge ends to the right of the bottom edge, at the left end.
    BevelLeft = "bevel-left",
    /// The same at the right end.
    BevelRight = "bevel-right",
    /// Whether a board has a bevel: yes or no. Documents that were written before bevels were read off the ends say so.
    Bevelled = "bevelled",
    /// Whether a joint meets it: yes.
    Joint = "joint",
    /// How far a board is, by its code.
    State = "state",
    /// The length of the board that it is cut from.
    Stock = "stock",
    /// The number of the board that it is cut from.
    CutFrom = "cut-from",
    /// The offcut that it is cut from.
    Offcut = "offcut",
    /// Whether it is cut out of the strip that is ripped off others out of the same board: yes.
    Strip = "strip",
    /// How many times it was spoiled.
    Spoiled = "spoiled",
    /// The wall that a loose board was attached to.
    Wall = "wall",
    /// The block's left edge from the board's left end; a course's bottom edge at the left.
    Left = "left",
    /// The block's right edge from the board's left end; a course's bottom edge at the right.
    Right = "right",
    /// The block's bottom edge at its left side.
    BottomLeft = "bottom-left",
    /// The block's top edge at its left side.
    TopLeft = "top-left",
    /// The block's top edge at its right side.
    TopRight = "top-right",
    /// The penetration or opening that a notch is of.
    Penetration = "penetration",
    /// The gap that came out.
    Gap = "gap",
    /// Who measured it.
    Signer = "signer",
    /// The saw it was cut with.
    Saw = "saw",
    /// The offset that it was marked with.
    Offset = "offset",
    /// The board it was measured on.
    Board = "board",
    /// The notch it was measured at.
    Notch = "notch",
    /// The cut that it was measured after.
    Cut = "cut",
    /// A course's bottom edge in the middle.
    Middle = "middle",
    /// A rule's key.
    Key = "key",
    /// A value's numerator.
    Numerator = "numerator",
    /// A value's denominator.
    Denominator = "denominator",
    /// A value's unit, by its code.
    Unit = "unit",
    /// How many courses a correction takes.
    Courses = "courses",
    /// The change of reveals that a correction would need.
    NeedChange = "need-change",
    /// The least reveal that a correction would need.
    NeedRevealMin = "need-reveal-min",
    /// The greatest reveal that a correction would need.
    NeedRevealMax = "need-reveal-max",
    /// The outline and the holes that a board was cut to, in nanometres.
    Shape = "shape",
    /// The length that a board was sawn to.
    SawnLength = "sawn-length",
    /// Why.
    Reason = "reason",
    /// The least gap that the rules wanted when a board was cut.
    GapLeast = "gap-least",
    /// The greatest gap that the rules allowed when a board was cut.
    GapMost = "gap-most",
    /// The gap that the rules wanted over a head flashing when a board was cut, its fall included.
    GapHead = "gap-head",
    /// The least that the rules reckoned a saw to take beyond its line when a board was cut.
    OvercutLeast = "overcut-least",
    /// The most that the rules reckoned a saw to take beyond its line when a board was cut.
    OvercutMost = "overcut-most",
}

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}
