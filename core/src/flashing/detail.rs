use super::assembly::Layer;
use super::fixed::Fixed;
use super::layers::{flat, sheet};
use super::{HeadFlashing, JointSection, LayerKind, Profile, WallLayer, WallLayers, WallRectangle, square_to};
use crate::measure::Length;
use crate::rules::{RuleError, RuleSet, keys};
use crate::wall::{CornerKind, DetailPlace};

/// What is put at a place that every house has, told once: from it follow the layers, their sizes, how they shed, the
/// steps of the work and what is ordered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DetailAssembly {
    place: DetailPlace,
    corner: CornerKind,
}

impl DetailAssembly {
    /// What is put at a place; how a corner is made matters at a corner only.
    pub const fn new(place: DetailPlace, corner: CornerKind) -> Self {
        Self { place, corner }
    }

    /// Where it lies.
    pub const fn place(self) -> DetailPlace {
        self.place
    }

    /// How a corner is made; at another place it says nothing.
    pub const fn corner(self) -> Option<CornerKind> {
        match self.place {
            DetailPlace::CornerLeft | DetailPlace::CornerRight => Some(self.corner),
            _ => None,
        }
    }

    /// Its layers from the wall outward, which is the order of the work: each later one laps over the one below it.
    pub const fn layers(self) -> &'static [Layer] {
        use Layer::{
            Apron, BarrierCourse, BarrierFlap, BarrierTape, BaseFlashing, Boards, CornerBoards, CornerFlashing,
            CornerPost, CornerWrap, Frieze, Furring, HeadFlashing, HeadMembrane, JambFlashing, KickOut, LedgeFlashing,
            LedgerFlashing, RakeTrim, Sealant, SillFlashing, Soffit, Starter, StepFlashing, TrimBottom, TrimSides,
            TrimTop, VentStrip,
        };
        match self.place {
            DetailPlace::Barrier => &[Layer::Barrier, BarrierCourse, BarrierTape],
            DetailPlace::Base => &[BaseFlashing, BarrierFlap, Starter, Boards],
            DetailPlace::CornerLeft | DetailPlace::CornerRight => match self.corner {
                CornerKind::Outside => &[Layer::Barrier, CornerWrap, CornerFlashing, CornerBoards, Boards, Sealant],
                CornerKind::Inside => &[Layer::Barrier, CornerWrap, CornerFlashing, CornerPost, Boards, Sealant],
                CornerKind::Mitred => &[Layer::Barrier, CornerWrap, CornerFlashing, Boards],
            },
            DetailPlace::Window => &[
                Layer::Barrier,
                SillFlashing,
                JambFlashing,
                HeadMembrane,
                TrimBottom,
                TrimSides,
                TrimTop,
                HeadFlashing,
                BarrierFlap,
                Boards,
                Sealant,
            ],
            DetailPlace::Door => &[
                Layer::Barrier,
                JambFlashing,
                HeadMembrane,
                TrimSides,
                TrimTop,
                HeadFlashing,
                BarrierFlap,
                Boards,
                Sealant,
            ],
            DetailPlace::Eave => &[Layer::Barrier, Soffit, Frieze, Boards, Sealant],
            DetailPlace::Rake => &[Layer::Barrier, RakeTrim, Boards, Sealant],
            DetailPlace::RoofSide => &[KickOut, StepFlashing, BarrierFlap, Boards],
            DetailPlace::RoofHead => &[Apron, BarrierFlap, Boards],
            DetailPlace::Ledger => &[LedgerFlashing, BarrierFlap, Boards],
            DetailPlace::Ledge => &[LedgeFlashing, BarrierFlap, Starter, Boards],
            DetailPlace::Furring => &[Layer::Barrier, VentStrip, Furring, Boards],
        }
    }

    /// The layer that hides one of its layers once it is put; the boards may be those of the wall, put later. None for
    /// what stays in sight.
    pub fn hidden_by(self, layer: Layer) -> Option<Layer> {
        if !layer.is_hidden_later() {
            return None;
        }
        let over: &[Layer] = match layer {
            Layer::Barrier | Layer::BarrierCourse => &[Layer::BarrierTape, Layer::CornerWrap, Layer::JambFlashing],
            Layer::SillFlashing => &[Layer::TrimBottom],
            Layer::JambFlashing => &[Layer::TrimSides],
            Layer::CornerWrap => &[Layer::CornerFlashing],
            Layer::CornerFlashing => &[Layer::CornerBoards, Layer::CornerPost],
            Layer::BarrierTape | Layer::BarrierFlap | Layer::Starter | Layer::VentStrip | Layer::Furring => &[],
            _ => &[Layer::BarrierFlap],
        };
        let own = over.iter().copied().find(|over| self.layers().contains(over));
        Some(own.unwrap_or(Layer::Boards))
    }
}

/// The boards of a wall, as its details meet them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DetailBoard {
    /// From bottom edge to top edge.
    pub height: Length,
    /// From face to back.
    pub thickness: Length,
    /// The least lap.
    pub lap: Length,
}

/// What the sizes of a detail follow from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DetailRequest {
    /// What is put there.
    pub assembly: DetailAssembly,
    /// The boards.
    pub board: DetailBoard,
    /// The wall's siding, from end to end and from its base line to its top.
    pub wall: WallRectangle,
    /// What it is at: the opening with its casing, the trim of a corner, what stands against the wall up to its surface;
    /// else the wall.
    pub area: WallRectangle,
    /// How far the casing stands out from the wall.
    pub casing: Length,
    /// The head flashing over an opening; without one the casing's own top sheds.
    pub head: Option<HeadFlashing>,
    /// How a roof that runs up along the wall rises over its run; level where nothing is said.
    pub slope: Option<(Length, Length)>,
}

/// A size of a layer, by its stable code.
pub type DetailSize = (&'static str, Length);

/// A detail with its sizes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Detail {
    request: DetailRequest,
    measures: Measures,
}

/// What the rules of the house say about it.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Measures {
    barrier_width: Length,
    barrier_lap: Length,
    barrier_end_lap: Length,
    /// How far a strip of membrane reaches past what covers it.
    past: Length,
    /// How far the membrane round an opening reaches from its frame.
    round_opening: Length,
    casing_width: Length,
    gap: Length,
    joint_gap: Length,
    joint: JointSection,
    head_gap: Length,
    head_laps: (Length, Length),
    drip: Length,
    shadow: Length,
    /// How far the boards stay above a roof or a deck.
    clearance: Length,
    /// What the leg of a flashing behind the boards measures at the least, by its own rule.
    leg: Length,
    step_out: Length,
    step_thickness: Length,
    ledger_beyond: Length,
    ledger_down: Length,
    /// How far flashing laps flashing, where the house's own rules say.
    flashing_lap: Option<Length>,
    /// The least thickness of sheet by metal, where the house's own rules say.
    sheets: Vec<DetailSize>,
    furring: Length,
    soffit: Length,
    stud_spacing: Length,
    nail: Length,
}

/// The height of a vent strip as it is drawn.
const VENT: Length = Length::from_inches(2);
/// How deep a ledge is drawn: nobody is asked.
const LEDGE: Length = Length::from_inches(3);
/// The width of a furring strip (a 1x2, common practice, no source).
const FURRING_WIDTH: Length = Length::from_inches_64(1, 32);

impl Measures {
    fn of(rules: &RuleSet, request: &DetailRequest, nail: Length) -> Result<Self, RuleError> {
        let rule = |key: &str| rules.get_length(key);
        let own = |key: &str| rules.get_own_length(key);
        let place = request.assembly.place;
        let clearance = match place {
            DetailPlace::RoofSide => rule(keys::CLEARANCE_ROOF_STEP_FLASHED)?,
            DetailPlace::Ledge => super::head_gap(rules)?,
            _ => rule(keys::CLEARANCE_ROOF)?,
        };
        let leg = match place {
            DetailPlace::Ledger => rule(keys::LEDGER_FLASHING_ABOVE)?,
            DetailPlace::Ledge => rule(keys::HEAD_FLASHING_UP_LEG)?,
            _ => rule(keys::STEP_FLASHING_LEG)?,
        };
        let (gap, casing_width) = (rule(keys::GAP_TRIM)?, rule(keys::TRIM_WIDTH)?);
        // Past the casing the membrane still lies under the boards, where the house's own rules say how far.
        let under = own(keys::FLASHING_UNDER_CLADDING)?.map_or(Length::ZERO, |under| casing_width + gap + under);
        let round_opening = own(keys::FLASHING_BEYOND_OPENING)?.unwrap_or(rule(keys::PATCH_BEYOND_SIDE)?);
        let mut sheets = Vec::new();
        for (code, key) in keys::SHEETS {
            sheets.extend(own(key)?.map(|least| (*code, least)));
        }
        Ok(Self {
            barrier_width: rule(keys::BARRIER_ROLL_WIDTH)?,
            barrier_lap: rule(keys::BARRIER_LAP_HORIZONTAL)?,
            barrier_end_lap: rule(keys::BARRIER_LAP_VERTICAL)?,
            past: rule(keys::PATCH_COVER_BEYOND)?,
            round_opening: round_opening.max(under),
            casing_width,
            gap,
            joint_gap: rule(keys::JOINT_GAP_MOST)?,
            joint: JointSection::of(rules, gap, request.board.thickness)?,
            head_gap: super::head_gap(rules)?,
            head_laps: (rule(keys::HEAD_FLASHING_DOWN_LAP)?, rule(keys::HEAD_FLASHING_UP_LEG)?),
            drip: rule(keys::HEAD_FLASHING_DRIP)?,
            shadow: rule(keys::SHADOW_MOST)?,
            clearance,
            leg,
            step_out: rule(keys::STEP_FLASHING_LEG)?,
            step_thickness: rule(keys::STEP_FLASHING_THICKNESS)?,
            ledger_beyond: rule(keys::LEDGER_FLASHING_BEYOND)?,
            ledger_down: rule(keys::LEDGER_FLASHING_DOWN)?,
            flashing_lap: own(keys::FLASHING_LAP)?,
            sheets,
            furring: rule(keys::FURRING_THICKNESS)?,
            soffit: rule(keys::SOFFIT_WIDTH)?,
            stud_spacing: rule(keys::STUD_SPACING)?,
            nail,
        })
    }
}

impl Detail {
    /// A detail by the rules of a house; `nail` is the siding nail that its layers take.
    ///
    /// # Errors
    /// A rule that is missing or of another kind.
    pub fn of(rules: &RuleSet, request: DetailRequest, nail: Length) -> Result<Self, RuleError> {
        let measures = Measures::of(rules, &request, nail)?;
        Ok(Self { request, measures })
    }

    /// What is put there.
    pub const fn assembly(&self) -> DetailAssembly {
        self.request.assembly
    }

    /// From end to end of what it is at.
    pub fn width(&self) -> Length {
        self.request.area.width()
    }

    /// How far the leg of a flashing behind the boards stands up from the surface that it keeps dry: by its own rule, and
    /// no less than the boards stay clear of it and what comes down over it laps.
    pub fn leg(&self) -> Length {
        let Measures { leg, barrier_lap, .. } = self.measures;
        leg.max(self.clearance_plumb() + barrier_lap.max(self.request.board.lap))
    }

    /// How far the boards stay clear of a surface, measured straight up: along a slope the rule is square to it.
    pub fn clearance_plumb(&self) -> Length {
        let clear = self.measures.clearance;
        self.request.slope.map_or(clear, |slope| square_to(clear, slope))
    }

    /// How many step flashings a sloped roof takes: one for each part of `each` along it.
    pub fn step_flashings(&self, each: Length) -> i64 {
        let Some((rise, run)) = self.request.slope.filter(|_| each.is_positive()) else { return 0 };
        let along = Fixed::from(run).hypotenuse(&Fixed::from(rise)).round().unwrap_or(run);
        i64::try_from((along.wide() + each.wide() - 1) / each.wide()).unwrap_or(i64::MAX)
    }

    /// The sizes of a layer, in the order in which they are marked; empty where it has none of its own.
    pub fn sizes(&self, layer: Layer) -> Vec<DetailSize> {
        let (of, request) = (&self.measures, &self.request);
        let area = request.area;
        let metal = |mut sizes: Vec<DetailSize>| {
            sizes.extend(of.flashing_lap.map(|lap| ("flashing-lap", lap)));
            sizes.extend(of.sheets.iter().copied());
            sizes
        };
        let surface = self.request.assembly.place;
        match layer {
            Layer::BarrierCourse => vec![("lap-level", of.barrier_lap)],
            Layer::BarrierTape => vec![("lap-upright", of.barrier_end_lap)],
            Layer::CornerWrap => vec![("wrap", of.barrier_end_lap)],
            Layer::CornerFlashing => vec![("strip-each-way", self.corner_strip())],
            Layer::CornerBoards | Layer::CornerPost => vec![("casing-width", area.width())],
            Layer::BaseFlashing => metal(vec![("leg", of.barrier_lap)]),
            Layer::Starter => vec![("starter-thickness", request.board.thickness)],
            Layer::SillFlashing => {
                vec![("membrane-length", self.frame_of_opening().width() + of.round_opening + of.round_opening)]
            }
            Layer::JambFlashing => vec![("membrane-past", of.round_opening)],
            Layer::HeadMembrane => vec![
                ("membrane-length", self.frame_of_opening().width() + of.round_opening + of.round_opening),
                ("membrane-height", self.membrane_top() - self.frame_of_opening().top),
            ],
            Layer::TrimBottom | Layer::TrimTop => {
                vec![("casing-across", area.width()), ("casing-width", of.casing_width)]
            }
            Layer::TrimSides => {
                vec![("casing-upright", self.frame_of_opening().height()), ("casing-width", of.casing_width)]
            }
            Layer::HeadFlashing => metal(request.head.map_or_else(Vec::new, |head| {
                vec![
                    ("head-cut", head.cut_length),
                    ("head-strip", head.strip),
                    ("head-leg", head.area.top - head.bend),
                    ("head-out", head.out),
                    ("head-fall", head.fall),
                ]
            })),
            Layer::BarrierFlap => vec![("lap-level", of.barrier_lap)],
            Layer::KickOut => vec![("leg", self.leg()), ("out", of.step_out)],
            Layer::StepFlashing => {
                metal(vec![("leg", self.leg()), ("out", of.step_out), ("sheet-least", of.step_thickness)])
            }
            Layer::Apron => metal(vec![("leg", self.leg()), ("out", of.step_out)]),
            Layer::LedgerFlashing => {
                metal(vec![("leg", self.leg()), ("beyond", of.ledger_beyond), ("down", of.ledger_down)])
            }
            Layer::LedgeFlashing => metal(vec![("leg", self.leg()), ("down", of.head_laps.0), ("drip", of.drip)]),
            Layer::Soffit if of.soffit.is_positive() => vec![("soffit-width", of.soffit)],
            Layer::Frieze | Layer::RakeTrim => vec![("casing-width", of.casing_width)],
            Layer::VentStrip => vec![("air-gap", of.furring)],
            Layer::Furring => vec![("furring", of.furring), ("stud-spacing", of.stud_spacing)],
            Layer::Boards => match surface {
                DetailPlace::RoofSide => self.rake_sizes(),
                DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge => vec![("clear", of.clearance)],
                DetailPlace::Window | DetailPlace::Door => {
                    vec![
                        ("gap", of.gap),
                        ("gap-over-head", request.head.map_or(of.gap, |head| head.open_to - area.top)),
                    ]
                }
                DetailPlace::Furring => vec![("nail", of.nail)],
                DetailPlace::Base => Vec::new(),
                _ if self.assembly().corner() == Some(CornerKind::Mitred) => self.mitre_sizes(),
                _ => vec![("gap", of.gap)],
            },
            Layer::Sealant => vec![("joint-width", of.joint.width), ("joint-depth", of.joint.depth)],
            _ => Vec::new(),
        }
    }

    /// What the boards keep clear of a roof that they are cut along: square to it, straight up, and how much shorter a
    /// board's top edge starts than its bottom edge.
    fn rake_sizes(&self) -> Vec<DetailSize> {
        let mut sizes = vec![("clear", self.measures.clearance), ("clear-plumb", self.clearance_plumb())];
        if let Some((rise, run)) = self.request.slope.filter(|(rise, _)| *rise != Length::ZERO) {
            let (over, under) = (self.request.board.height.wide() * run.wide(), rise.wide().abs());
            sizes.extend(i64::try_from(over / under).ok().map(|nm| ("edges-differ", Length::from_nm(nm))));
        }
        sizes
    }

    /// How far a mitred board runs past the sheathing's corner: a lapped board stands out one thickness at its top edge and
    /// two at its bottom edge, and so does the one round the corner.
    fn mitre_sizes(&self) -> Vec<DetailSize> {
        let (thickness, furring) = (self.request.board.thickness, self.measures.furring);
        let past = furring + thickness;
        vec![
            ("past-corner-top", past),
            ("past-corner-bottom", past + thickness),
            ("joint-gap", self.measures.joint_gap),
        ]
    }

    /// How far the strip in or over a corner reaches each way.
    fn corner_strip(&self) -> Length {
        match self.assembly().corner() {
            Some(CornerKind::Mitred) | None => self.measures.barrier_end_lap,
            Some(CornerKind::Outside | CornerKind::Inside) => self.request.area.width() + self.measures.past,
        }
    }

    /// The opening inside its casing.
    fn frame_of_opening(&self) -> WallRectangle {
        let (area, width) = (self.request.area, self.measures.casing_width);
        // A casing as wide as half its opening leaves none: then the area itself stands for it.
        if area.width() <= width + width || area.height() <= width + width {
            return area;
        }
        let bottom = if self.assembly().place == DetailPlace::Door { area.bottom } else { area.bottom + width };
        WallRectangle { left: area.left + width, right: area.right - width, bottom, top: area.top - width }
    }

    /// Where the barrier comes down over an opening.
    fn cut(&self) -> Length {
        let area = self.request.area;
        self.request.head.map_or(area.top + self.measures.head_gap, |head| head.open_to)
    }

    /// How high the membrane over an opening reaches: as far under the barrier as that laps.
    fn membrane_top(&self) -> Length {
        self.cut() + self.measures.barrier_lap
    }

    /// The part of the wall that shows how it is made; the rest is like it.
    fn shown(&self) -> Self {
        let DetailRequest { assembly, wall, area, slope, .. } = self.request;
        let from_left = |of: WallRectangle, inches: i64| WallRectangle {
            right: of.right.min(of.left + Length::from_inches(inches)),
            ..of
        };
        let from_right = |of: WallRectangle, inches: i64| WallRectangle {
            left: of.left.max(of.right - Length::from_inches(inches)),
            ..of
        };
        let (wall, area) = match assembly.place {
            DetailPlace::Base => (from_left(wall, 12), area),
            DetailPlace::Eave | DetailPlace::Rake => (from_left(wall, 18), area),
            DetailPlace::Barrier | DetailPlace::Furring => (from_left(wall, 48), area),
            DetailPlace::CornerLeft => (from_left(wall, 30), area),
            DetailPlace::CornerRight => (from_right(wall, 30), area),
            DetailPlace::Window | DetailPlace::Door => {
                let beside = self.measures.round_opening + Length::from_inches(8);
                let (left, right) = (wall.left.max(area.left - beside), wall.right.min(area.right + beside));
                (WallRectangle { left, right, ..wall }, area)
            }
            // Its foot tells most: there the kick-out stands.
            DetailPlace::RoofSide if slope.is_some_and(|(rise, _)| rise.is_negative()) => (wall, from_right(area, 24)),
            DetailPlace::RoofSide | DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge => {
                (wall, from_left(area, 24))
            }
        };
        Self { request: DetailRequest { wall, area, ..self.request.clone() }, measures: self.measures.clone() }
    }

    /// Where a section through it shows the most of its layers.
    pub fn section_at(&self) -> Length {
        let Self { request: DetailRequest { assembly, wall, area, slope, .. }, .. } = self.shown();
        let middle = |of: WallRectangle| of.left + of.width().half();
        match assembly.place {
            DetailPlace::Furring => wall.left + FURRING_WIDTH.half(),
            DetailPlace::CornerLeft => wall.left + area.width().half(),
            DetailPlace::CornerRight => wall.right - area.width().half() - Length::from_nm(1),
            DetailPlace::RoofSide => {
                let quarter = area.width().half().half();
                let falls = slope.is_some_and(|(rise, _)| rise.is_negative());
                if falls { area.left + quarter } else { area.right - quarter }
            }
            DetailPlace::Window
            | DetailPlace::Door
            | DetailPlace::RoofHead
            | DetailPlace::Ledger
            | DetailPlace::Ledge => middle(area),
            DetailPlace::Barrier | DetailPlace::Base | DetailPlace::Eave | DetailPlace::Rake => middle(wall),
        }
    }

    /// Its layers with their extents, as far as they show how it is made; the later one lies further out.
    pub fn wall_layers(&self) -> WallLayers {
        let shown = self.shown();
        let wall = shown.request.wall;
        let mut stack = Stack { of: &shown, layers: Vec::new() };
        match self.assembly().place {
            DetailPlace::Barrier => stack.barrier(),
            DetailPlace::Base => stack.base(),
            DetailPlace::CornerLeft | DetailPlace::CornerRight => stack.corner(),
            DetailPlace::Window | DetailPlace::Door => stack.opening(),
            DetailPlace::Eave => stack.top(Layer::Frieze),
            DetailPlace::Rake => stack.top(Layer::RakeTrim),
            DetailPlace::RoofSide | DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge => stack.over(),
            DetailPlace::Furring => stack.furring(),
        }
        let pieces = || stack.layers.iter().flat_map(|layer| layer.pieces.iter().copied());
        let round = |one: WallRectangle, other: WallRectangle| WallRectangle {
            left: one.left.min(other.left),
            right: one.right.max(other.right),
            bottom: one.bottom.min(other.bottom),
            top: one.top.max(other.top),
        };
        WallLayers {
            frame: pieces().reduce(round).unwrap_or(wall),
            layers: stack.layers,
            lap_min: self.request.board.lap,
            shadow: self.measures.shadow,
            pipe_y: wall.bottom,
            open_to: Some(self.cut()),
            drained: true,
        }
    }
}

/// The layers of a detail as they are put, one on the other.
struct Stack<'a> {
    of: &'a Detail,
    layers: Vec<WallLayer>,
}

impl Stack<'_> {
    fn put(
        &mut self,
        kind: LayerKind,
        pieces: Vec<WallRectangle>,
        profile: Profile,
        exposed: bool,
        lap: Option<Length>,
    ) {
        let pieces: Vec<WallRectangle> =
            pieces.into_iter().filter(|piece| piece.left < piece.right && piece.bottom < piece.top).collect();
        if !pieces.is_empty() {
            self.layers.push(WallLayer { lap_min: lap, ..sheet(kind, pieces, profile, exposed) });
        }
    }

    fn film(&mut self, kind: LayerKind, pieces: Vec<WallRectangle>, lap: Length) {
        self.put(kind, pieces, flat(Length::ZERO), false, Some(lap));
    }

    /// A flashing whose leg stands up from a surface, and which runs out over that.
    fn metal(&mut self, layer: Layer, pieces: Vec<WallRectangle>, out: Length) {
        let surface = self.of.request.area.top;
        self.put(LayerKind::Detail { layer }, pieces, Profile::bent(out, (surface, surface)), true, None);
    }

    fn solid(&mut self, layer: Layer, pieces: Vec<WallRectangle>, thickness: Length) {
        self.put(LayerKind::Detail { layer }, pieces, flat(thickness), true, None);
    }

    fn boards(&mut self, pieces: Vec<WallRectangle>, behind: Length) {
        let thickness = self.of.request.board.thickness;
        let profile = Profile { lower: behind + thickness, upper: behind, thickness, bends: None };
        self.put(LayerKind::Board { course: 1 }, pieces, profile, true, None);
    }

    /// The flashing at the foot of the wall, over which the barrier ends.
    fn foot(&mut self, kind: LayerKind) {
        let (wall, of) = (self.of.request.wall, &self.of.measures);
        let leg = of.barrier_lap.max(self.of.request.board.lap);
        let area = WallRectangle { bottom: wall.bottom - of.drip, top: wall.bottom + leg, ..wall };
        // Its lower edge is turned out, so that it drips.
        let drip = Profile::bent(of.drip, (area.bottom, wall.bottom));
        self.put(kind, vec![area], drip, true, None);
    }

    /// The flashing at the foot and the barrier over the whole wall.
    fn wall(&mut self) {
        self.foot(LayerKind::Base);
        let (wall, lap) = (self.of.request.wall, self.of.measures.barrier_lap);
        self.film(LayerKind::Barrier, vec![wall], lap);
    }

    fn barrier(&mut self) {
        let (wall, of) = (self.of.request.wall, &self.of.measures);
        self.foot(LayerKind::Base);
        let half = (wall.top - wall.bottom).half();
        let lower = WallRectangle { top: wall.bottom + of.barrier_width.min(half + of.barrier_lap), ..wall };
        self.film(LayerKind::Barrier, vec![lower], of.barrier_lap);
        let upper = WallRectangle { bottom: lower.top - of.barrier_lap, ..wall };
        self.film(LayerKind::Detail { layer: Layer::BarrierCourse }, vec![upper], of.barrier_lap);
        let middle = wall.left + wall.width().half();
        let seam = WallRectangle { left: middle, right: middle + of.barrier_end_lap.half(), ..wall };
        self.film(LayerKind::Detail { layer: Layer::BarrierTape }, vec![seam], of.barrier_lap);
        self.boards(vec![wall], Length::ZERO);
    }

    fn base(&mut self) {
        let (wall, of) = (self.of.request.wall, &self.of.measures);
        let board = self.of.request.board;
        self.foot(LayerKind::Detail { layer: Layer::BaseFlashing });
        self.film(LayerKind::BarrierFlap, vec![wall], of.barrier_lap);
        let starter = WallRectangle { top: wall.bottom + board.lap, ..wall };
        let kind = LayerKind::Detail { layer: Layer::Starter };
        self.put(kind, vec![starter], flat(board.thickness), false, Some(of.barrier_lap));
        self.boards(vec![wall], Length::ZERO);
    }

    fn corner(&mut self) {
        let (wall, area, of) = (self.of.request.wall, self.of.request.area, &self.of.measures);
        let left = self.of.assembly().place == DetailPlace::CornerLeft;
        // A strip of the wall from the corner on, at whichever end it is.
        let strip = |width: Length| match left {
            true => WallRectangle { right: wall.left + width.min(wall.width()), ..wall },
            false => WallRectangle { left: wall.right - width.min(wall.width()), ..wall },
        };
        self.wall();
        self.film(LayerKind::Detail { layer: Layer::CornerWrap }, vec![strip(of.barrier_end_lap)], of.barrier_lap);
        let flashing = strip(self.of.corner_strip());
        self.film(LayerKind::Detail { layer: Layer::CornerFlashing }, vec![flashing], of.barrier_lap);
        let trim = match self.of.assembly().corner() {
            Some(CornerKind::Outside) => Some(Layer::CornerBoards),
            Some(CornerKind::Inside) => Some(Layer::CornerPost),
            Some(CornerKind::Mitred) | None => None,
        };
        let Some(layer) = trim else { return self.boards(vec![wall], Length::ZERO) };
        self.solid(layer, vec![strip(area.width())], self.of.request.casing);
        let taken = area.width() + of.gap;
        let boards = match left {
            true => WallRectangle { left: wall.left + taken, ..wall },
            false => WallRectangle { right: wall.right - taken, ..wall },
        };
        self.boards(vec![boards], Length::ZERO);
    }

    fn opening(&mut self) {
        let detail = self.of;
        let (wall, area, of) = (detail.request.wall, detail.request.area, &detail.measures);
        let (frame, past) = (detail.frame_of_opening(), of.round_opening);
        let (out_left, out_right) = (frame.left - past, frame.right + past);
        let (cut, lap) = (detail.cut(), of.barrier_lap);
        let film = |layer| LayerKind::Detail { layer };
        self.foot(LayerKind::Base);
        // Cut open above: the flap over the head comes down last.
        let barrier = vec![
            WallRectangle { right: out_left, ..wall },
            WallRectangle { left: out_left, right: out_right, top: cut.min(wall.top), ..wall },
            WallRectangle { left: out_right, ..wall },
        ];
        self.film(LayerKind::Barrier, barrier, lap);
        let door = detail.assembly().place == DetailPlace::Door;
        if !door {
            let sill = WallRectangle {
                left: out_left,
                right: out_right,
                bottom: frame.bottom - past.max(lap + lap),
                top: frame.bottom,
            };
            self.film(film(Layer::SillFlashing), vec![sill], lap);
        }
        let bottom = if door { area.bottom.max(wall.bottom) } else { frame.bottom - lap };
        let jamb = |left, right| WallRectangle { left, right, bottom, top: frame.top + lap };
        self.film(film(Layer::JambFlashing), vec![jamb(out_left, frame.left), jamb(frame.right, out_right)], lap);
        let head = WallRectangle { left: out_left, right: out_right, bottom: frame.top, top: detail.membrane_top() };
        // Under a narrow casing it laps the frame's own flange, and the barrier beside it less.
        self.film(film(Layer::HeadMembrane), vec![head], lap.min(cut - frame.top));
        // The pieces of the casing stand on one another: together they are one sheet.
        let casing_lap = of.casing_width.min(detail.request.board.lap);
        self.put(LayerKind::Trim, vec![area], flat(detail.request.casing), true, Some(casing_lap));
        if let Some(head) = detail.request.head {
            self.put(LayerKind::HeadFlashing, vec![head.area], head.profile(), true, Some(of.head_laps.0));
        }
        let flap = WallRectangle { left: out_left, right: out_right, bottom: cut, top: wall.top };
        let flap_lap = if detail.request.head.is_some() { of.head_laps.1.min(lap) } else { lap };
        self.film(LayerKind::BarrierFlap, vec![flap], flap_lap);
        let hole = WallRectangle {
            left: area.left - of.gap,
            right: area.right + of.gap,
            bottom: area.bottom - of.gap,
            top: cut,
        };
        self.boards(
            vec![
                WallRectangle { right: hole.left, ..wall },
                WallRectangle { left: hole.right, ..wall },
                WallRectangle { left: hole.left, right: hole.right, top: hole.bottom, ..wall },
                WallRectangle { left: hole.left, right: hole.right, bottom: hole.top, ..wall },
            ],
            Length::ZERO,
        );
    }

    /// A trim along the top of the boards.
    fn top(&mut self, layer: Layer) {
        let (wall, of) = (self.of.request.wall, &self.of.measures);
        let top = wall.top + of.casing_width;
        self.foot(LayerKind::Base);
        self.film(LayerKind::Barrier, vec![WallRectangle { top, ..wall }], of.barrier_lap);
        self.solid(layer, vec![WallRectangle { bottom: wall.top, top, ..wall }], self.of.request.casing);
        self.boards(vec![WallRectangle { top: wall.top - of.gap, ..wall }], Length::ZERO);
    }

    /// The boards over a roof, a ledger or a ledge.
    fn over(&mut self) {
        let (wall, area, of) = (self.of.request.wall, self.of.request.area, &self.of.measures);
        let (surface, leg, clear) = (area.top, self.of.leg(), self.of.clearance_plumb());
        let above = |bottom: Length, top: Length| WallRectangle { left: area.left, right: area.right, bottom, top };
        let down = match self.of.assembly().place {
            DetailPlace::Ledger => of.ledger_down,
            DetailPlace::Ledge => of.head_laps.0,
            _ => Length::ZERO,
        };
        match self.of.assembly().place {
            DetailPlace::RoofSide => {
                // At the roof's foot stands the kick-out, the step pieces above it.
                let (whole, width) = (above(surface, surface + leg), leg.min(area.width().half()));
                let falls = self.of.request.slope.is_some_and(|(rise, _)| rise.is_negative());
                let foot = if falls { area.right - width } else { area.left + width };
                let (left, right) = (WallRectangle { right: foot, ..whole }, WallRectangle { left: foot, ..whole });
                let (kick, steps) = if falls { (right, left) } else { (left, right) };
                self.metal(Layer::KickOut, vec![kick], of.step_out);
                self.metal(Layer::StepFlashing, vec![steps], of.step_out);
            }
            DetailPlace::Ledger => {
                self.metal(Layer::LedgerFlashing, vec![above(surface - down, surface + leg)], of.ledger_beyond);
            }
            DetailPlace::Ledge => {
                let out = LEDGE + of.drip;
                self.metal(Layer::LedgeFlashing, vec![above(surface - down, surface + leg)], out);
            }
            _ => self.metal(Layer::Apron, vec![above(surface, surface + leg)], of.step_out),
        }
        let top = wall.top.max(surface + leg + leg);
        self.film(LayerKind::BarrierFlap, vec![above(surface + clear, top)], of.barrier_lap);
        if self.of.assembly().place == DetailPlace::Ledge {
            let starter = above(surface + clear, surface + clear + self.of.request.board.lap);
            let kind = LayerKind::Detail { layer: Layer::Starter };
            self.put(kind, vec![starter], flat(self.of.request.board.thickness), false, Some(of.barrier_lap));
        }
        self.boards(vec![above(surface + clear, top)], Length::ZERO);
    }

    fn furring(&mut self) {
        let (wall, of) = (self.of.request.wall, &self.of.measures);
        self.wall();
        let spacing = of.stud_spacing.max(FURRING_WIDTH + FURRING_WIDTH);
        let mut strips = Vec::new();
        let mut at = wall.left;
        // As many as are seen side by side: the others are like them.
        while at + FURRING_WIDTH <= wall.right && strips.len() < 64 {
            strips.push(WallRectangle { left: at, right: at + FURRING_WIDTH, ..wall });
            at = at + spacing;
        }
        let vent = WallRectangle { top: wall.bottom + VENT, ..wall };
        let kind = LayerKind::Detail { layer: Layer::VentStrip };
        self.put(kind, vec![vent], flat(of.furring), false, Some(of.barrier_lap));
        let kind = LayerKind::Detail { layer: Layer::Furring };
        self.put(kind, strips, flat(of.furring), false, Some(of.barrier_lap));
        self.boards(vec![wall], of.furring);
    }
}

#[cfg(test)]
mod tests;
