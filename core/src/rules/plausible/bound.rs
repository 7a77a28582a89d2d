use super::super::keys;
use super::measurand::Range;
use super::{Ground, Measurand, Reason, Surroundings, Why};
use crate::measure::Length;

/// How sure it is that a value outside a bound is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Certainty {
    Unlikely,
    Impossible,
}

/// A range that a value should lie in, both ends allowed, and why.
#[derive(Clone, Debug)]
pub(super) struct Bound {
    pub(super) weight: Certainty,
    pub(super) range: Range,
    pub(super) why: Why,
}

impl Bound {
    pub(super) fn allows(&self, value: Length) -> bool {
        self.range.0.is_none_or(|least| least <= value) && self.range.1.is_none_or(|most| value <= most)
    }
}

/// The bounds of one measurand, as they are gathered.
struct Gathered(Vec<Bound>);

const JUST: Length = Length::from_nm(1);
/// A pole is laid out with a little to spare.
const FOOT: Length = Length::from_inches(12);

impl Gathered {
    fn within(&mut self, weight: Certainty, range: Range, why: Why) {
        self.0.push(Bound { weight, range, why });
    }

    /// Not over `most`, where it is known.
    fn most(&mut self, weight: Certainty, most: Option<Length>, reason: Reason) {
        if let Some(most) = most {
            self.within(weight, (None, Some(most)), Why::geometry(reason, most));
        }
    }

    /// Not under `least`, where it is known.
    fn least(&mut self, weight: Certainty, least: Option<Length>, reason: Reason) {
        if let Some(least) = least {
            self.within(weight, (Some(least), None), Why::geometry(reason, least));
        }
    }

    /// Less than `bound`, where it is known.
    fn under(&mut self, weight: Certainty, bound: Option<Length>, reason: Reason) {
        if let Some(bound) = bound {
            self.within(weight, (None, Some(bound - JUST)), Why::geometry(reason, bound));
        }
    }

    /// More than `bound`, where it is known.
    fn over(&mut self, weight: Certainty, bound: Option<Length>, reason: Reason) {
        if let Some(bound) = bound {
            self.within(weight, (Some(bound + JUST), None), Why::geometry(reason, bound));
        }
    }

    /// A rule's value as the least or the most.
    fn rule(&mut self, around: &Surroundings, least: Option<&'static str>, most: Option<&'static str>) {
        if let Some((key, value)) = least.and_then(|key| Some((key, around.rule(key)?))) {
            self.within(Certainty::Unlikely, (Some(value), None), Why::rule(Reason::UnderRule, value, key));
        }
        if let Some((key, value)) = most.and_then(|key| Some((key, around.rule(key)?))) {
            self.within(Certainty::Unlikely, (None, Some(value)), Why::rule(Reason::OverRule, value, key));
        }
    }
}

/// Every bound of a measurand, the most telling first.
pub(super) fn bounds(measurand: Measurand, around: &Surroundings) -> Vec<Bound> {
    let mut all = Gathered(Vec::new());
    geometry(&mut all, measurand, around);
    rules(&mut all, measurand, around);
    let habit = measurand.habit();
    all.within(Certainty::Impossible, habit.possible, Why::habit(Reason::Absurd, habit.possible));
    // What is planned is usual here, whatever it is elsewhere.
    if around.planned.is_none() {
        all.within(Certainty::Unlikely, habit.usual, Why::habit(Reason::Unusual, habit.usual));
    }
    if let Some(planned) = around.planned.filter(|_| measurand != Measurand::Gap) {
        let tolerance = around.tolerance(measurand, planned);
        let range = (Some(planned - tolerance), Some(planned + tolerance));
        all.within(Certainty::Unlikely, range, Why::geometry(Reason::OffPlan, planned));
    }
    all.0
}

/// What published rules and the house's own changes of them say.
fn rules(all: &mut Gathered, measurand: Measurand, around: &Surroundings) {
    match measurand {
        Measurand::BoardHeight => all.rule(around, None, Some(keys::BOARD_HEIGHT_MOST)),
        Measurand::BoardThickness => all.rule(around, Some(keys::BOARD_THICKNESS), None),
        Measurand::Lap => all.rule(around, Some(keys::LAP_LEAST), None),
        Measurand::NailLine => all.rule(around, Some(keys::NAIL_LINE_LEAST), Some(keys::NAIL_LINE_MOST)),
        Measurand::StudSpacing => all.rule(around, None, Some(keys::STUD_SPACING)),
        Measurand::Reveal | Measurand::RevealMost => {
            if let (Some(height), Some(lap)) = (around.board_height, around.rule(keys::LAP_LEAST)) {
                let most = height - lap;
                all.within(Certainty::Unlikely, (None, Some(most)), Why::rule(Reason::LapShort, most, keys::LAP_LEAST));
            }
        }
        Measurand::BlockThickness => {
            if let Some(least) = around.block_thickness_least() {
                let why = Why::rule(Reason::BlockShallow, least, keys::BLOCK_THICKNESS_MARGIN);
                all.within(Certainty::Unlikely, (Some(least), None), why);
            }
        }
        _ => {}
    }
}

/// What follows from the other values of the house, whatever anybody's habit or code.
fn geometry(all: &mut Gathered, measurand: Measurand, around: &Surroundings) {
    use Certainty::{Impossible, Unlikely};
    let zero = Some(Length::ZERO);
    let rest = |whole: Option<Length>, part: Option<Length>| Some(whole? - part.unwrap_or_default());
    match measurand {
        Measurand::BoardHeight => all.over(Impossible, around.lap, Reason::LapOfBoard),
        Measurand::Lap => {
            all.under(Impossible, around.board_height, Reason::LapOfBoard);
            all.over(Impossible, around.nail_line, Reason::NailsHidden);
        }
        Measurand::NailLine => all.under(Impossible, around.lap, Reason::NailsHidden),
        Measurand::Offcut | Measurand::BoardLength => {
            all.most(Unlikely, around.longest_stock, Reason::LongerThanStock);
        }
        Measurand::SpoiledLeft => all.most(Impossible, around.board_length, Reason::LongerThanBoard),
        Measurand::PoleFrom => {
            all.under(Impossible, around.pole_to, Reason::PoleOrder);
            all.most(Unlikely, around.house_bottom.map(|bottom| bottom + FOOT), Reason::OffHouse);
        }
        Measurand::PoleTo => {
            all.over(Impossible, around.pole_from, Reason::PoleOrder);
            all.most(Unlikely, around.house_top.map(|top| top + FOOT), Reason::OffHouse);
        }
        Measurand::RevealMost => {
            all.under(Impossible, around.board_height, Reason::RevealOfBoard);
            all.least(Impossible, around.reveal_least, Reason::RevealOrder);
        }
        Measurand::Reveal => all.under(Impossible, around.board_height, Reason::RevealOfBoard),
        Measurand::RevealLeast => {
            all.most(Impossible, around.reveal_most, Reason::RevealOrder);
            // Reveals from half to whole are no siding that anybody takes for even.
            all.least(Unlikely, around.reveal_most.map(Length::half), Reason::RevealsUneven);
        }
        Measurand::RevealChange => all.under(Impossible, around.reveal_most, Reason::RevealOrder),
        Measurand::MarkHeight => {
            all.least(Unlikely, around.pole_from, Reason::OffPole);
            all.most(Unlikely, around.pole_to, Reason::OffPole);
        }
        Measurand::AsBuiltLine => {
            all.least(Unlikely, around.pole_from, Reason::OffPole);
            all.most(Unlikely, around.pole_to, Reason::OffPole);
            // A whole reveal off is another course.
            let reveal = around.reveal_least.unwrap_or(Length::ZERO).half();
            if let Some(planned) = around.planned.filter(|_| reveal.is_positive()) {
                let range = (Some(planned - reveal), Some(planned + reveal));
                all.within(Unlikely, range, Why::geometry(Reason::AnotherCourse, planned));
            }
        }
        Measurand::PeakFromLeft | Measurand::StepFromLeft => {
            all.over(Impossible, zero, Reason::OnWall);
            all.under(Impossible, around.wall_width, Reason::OnWall);
        }
        Measurand::StudCentre | Measurand::PenetrationFromLeft => {
            all.most(Impossible, around.wall_width, Reason::OnWall);
        }
        Measurand::FirstStud => {
            all.most(Impossible, around.wall_width, Reason::OnWall);
            all.most(Unlikely, around.stud_spacing, Reason::StudBefore);
        }
        Measurand::PeakHeight => {
            let (left, right) = (around.left_height, around.right_height);
            let lower = left.zip(right).map(|(left, right)| left.min(right));
            let higher = left.zip(right).map(|(left, right)| left.max(right));
            all.over(Impossible, lower, Reason::PeakOverEaves);
            all.over(Unlikely, higher, Reason::PeakOverEaves);
            // Two in one is steeper than roofs are framed.
            let steep = higher.zip(around.peak_run).and_then(|(eave, run)| run.checked_mul(2)?.checked_add(eave));
            all.most(Unlikely, steep, Reason::Steep);
        }
        Measurand::StepRise => {
            let top = around.wall_top();
            all.under(Impossible, top, Reason::OnWall);
            all.over(Impossible, top.map(|top| -top), Reason::OnWall);
        }
        Measurand::TrimWidth => all.under(Impossible, around.wall_width.map(Length::half), Reason::OnWall),
        Measurand::DiagonalUp => diagonal(all, around.wall_width, around.right_height),
        Measurand::DiagonalDown => diagonal(all, around.wall_width, around.left_height),
        Measurand::OpeningFromLeft | Measurand::AbutmentFromLeft => {
            all.most(Impossible, rest(around.wall_width, around.own_width), Reason::OnWall);
        }
        Measurand::OpeningWidth(_) | Measurand::HeadWidth | Measurand::AbutmentWidth => {
            all.most(Impossible, rest(around.wall_width, around.own_from_left), Reason::OnWall);
        }
        Measurand::OpeningFromBase(_) => {
            all.most(Impossible, rest(around.wall_top(), around.own_height), Reason::OnWall);
        }
        Measurand::OpeningHeight(_) => {
            all.most(Impossible, rest(around.wall_top(), around.own_from_base), Reason::OnWall);
        }
        Measurand::PenetrationWidth(_) => {
            all.most(Impossible, around.wall_width, Reason::OnWall);
        }
        Measurand::PenetrationHeight(_) | Measurand::PenetrationFromBase => {
            all.most(Impossible, around.wall_top(), Reason::OnWall);
        }
        Measurand::AbutmentTop => all.most(Unlikely, around.wall_top(), Reason::OnWall),
        Measurand::BlockWidth => all.over(Impossible, around.through_width, Reason::BlockOverPipe),
        Measurand::BlockHeight => {
            all.over(Impossible, around.through_height.or(around.through_width), Reason::BlockOverPipe);
        }
        Measurand::HoleFromBottom => all.under(Impossible, around.own_height, Reason::HoleInBlock),
        // A block may run past the end of the board, but not lie beyond it.
        Measurand::NotchAcross => {
            let past = Some(Length::from_inches(-60));
            let board = around.board_length.filter(|_| around.planned.is_none());
            all.most(Impossible, rest(board, past), Reason::OffBoard);
            all.under(Impossible, around.less_than, Reason::SidesOrder);
            all.over(Impossible, around.more_than, Reason::SidesOrder);
        }
        Measurand::NotchUp => {
            all.under(Impossible, around.less_than, Reason::EdgesOrder);
            all.over(Impossible, around.more_than, Reason::EdgesOrder);
        }
        // A saw and the hands that lead it stray by little: a sixteenth beside all that was seen is another saw, or a slip.
        Measurand::Gap => {
            if let Some((least, most)) = around.learned_gap {
                let stray = Length::from_inches_64(0, 4);
                let range = (least.map(|least| least - stray), most.map(|most| most + stray));
                let why = Why::with(Reason::FarFromLearned, (least, most).into(), Ground::Geometry);
                all.within(Unlikely, range, why);
            }
        }
        Measurand::RoofHeight
        | Measurand::BoardThickness
        | Measurand::AbutmentRise
        | Measurand::StockLength
        | Measurand::WallWidth
        | Measurand::WallHeight
        | Measurand::MarkClear
        | Measurand::Base
        | Measurand::StudSpacing
        | Measurand::BlockThickness => {}
    }
}

/// A diagonal is longer than either side and shorter than both together; on a wall out of square by no more than a
/// fiftieth of its height it is that of a rectangle, nearly.
fn diagonal(all: &mut Gathered, width: Option<Length>, height: Option<Length>) {
    let (Some(width), Some(height)) = (width, height) else { return };
    let range = (Some(width.max(height) - width.min(height) + JUST), Some(width + height - JUST));
    all.within(Certainty::Impossible, range, Why::geometry(Reason::Triangle, width + height));
    // Leaning by d changes the diagonal of w by h by d w / sqrt(w^2 + h^2) at most: never by more than d.
    let squares = width.wide() * width.wide() + height.wide() * height.wide();
    let Some(square) = Length::from_wide(squares.isqrt()) else { return };
    let lean = Length::from_inches(1).max(height.scaled(2, 100).unwrap_or_default());
    let range = (Some(square - lean), Some(square + lean));
    all.within(Certainty::Unlikely, range, Why::geometry(Reason::OutOfSquare, square));
}
