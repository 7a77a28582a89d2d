use thiserror::Error;

use super::shed::{ShedError, ShedFault, ShedKind, ShedLayer, ShedRequest, Slit, shed_faults};
use super::{Assembly, HeadFlashing, Layer, Patch, PatchEnd, Pipe, WallRectangle};
use crate::measure::Length;
use crate::wall::Shape;

/// What a layer round a penetration is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LayerKind {
    /// The flashing under the first course, over which the barrier ends.
    Base,
    /// The water barrier, up to where it is cut in an inverted U over the patch.
    Barrier,
    /// A course's board; courses count from one.
    Board {
        /// The course.
        course: usize,
    },
    /// The membrane patch.
    Patch,
    /// The second piece, over the slit.
    Cover,
    /// A mounting block.
    Block,
    /// A sealed collar.
    Collar,
    /// Trim all round.
    Trim,
    /// The head flashing.
    HeadFlashing,
    /// The barrier above the cut, turned down again over the patch.
    BarrierFlap,
    /// Another layer of a detail that every house has.
    Detail {
        /// Which.
        layer: Layer,
    },
}

impl LayerKind {
    /// Its stable code; all boards have one.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Base => "base",
            Self::Barrier => "barrier",
            Self::Board { .. } => "board",
            Self::Patch => "patch",
            Self::Cover => "cover",
            Self::Block => "block",
            Self::Collar => "collar",
            Self::Trim => "trim",
            Self::HeadFlashing => "head-flashing",
            Self::BarrierFlap => "barrier-flap",
            Self::Detail { layer } => layer.code(),
        }
    }
}

/// How a layer stands in a section through the wall, measured outward from the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Profile {
    /// From the wall to its back, at its lower edge.
    pub lower: Length,
    /// From the wall to its back, at its upper edge.
    pub upper: Length,
    /// Its thickness; zero for a film or a sheet.
    pub thickness: Length,
    /// The heights, lower and upper, between which a bent sheet runs outward: above it lies as at its upper edge, below it
    /// hangs as at its lower one. None for what slants all the way.
    pub bends: Option<(Length, Length)>,
}

impl Profile {
    /// A sheet that lies flat on the wall above the upper of two heights and hangs out from it below the lower one.
    pub const fn bent(out: Length, bends: (Length, Length)) -> Self {
        Self { lower: out, upper: Length::ZERO, thickness: Length::ZERO, bends: Some(bends) }
    }
}

/// One layer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WallLayer {
    /// What it is.
    pub kind: LayerKind,
    /// Where it lies on the wall, seen from outside; its pieces meet and do not overlap.
    pub pieces: Vec<WallRectangle>,
    /// The hole in it, round what goes through.
    pub hole: Option<Shape>,
    /// The slit in it.
    pub slit: Option<Slit>,
    /// How it stands in a section.
    pub profile: Profile,
    /// Whether weather may reach it.
    pub exposed: bool,
    /// The least lap of its lower edge, where it is not the common one.
    pub lap_min: Option<Length>,
}

/// A course's board before anything is cut out of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LayerBoard {
    /// Its bottom edge above the base line.
    pub bottom: Length,
    /// From bottom edge to top edge.
    pub height: Length,
}

/// What the boards end at: the block, the trim, or the collar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Outer {
    /// Where it lies on the wall.
    pub area: WallRectangle,
    /// From the wall outward.
    pub thickness: Length,
}

/// A penetration's detail.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayersRequest {
    /// What goes round the penetration.
    pub assembly: Assembly,
    /// The courses of the wall from the bottom, as the patch was cut for.
    pub boards: Vec<LayerBoard>,
    /// The thickness of a board.
    pub board_thickness: Length,
    /// The least lap of the boards.
    pub lap: Length,
    /// The patch, slit where the assembly has a cover.
    pub patch: Patch,
    /// What goes through the wall.
    pub pipe: Pipe,
    /// What the boards end at.
    pub outer: Outer,
    /// The flashing on top of it; where the assembly has one, it must be told.
    pub head: Option<HeadFlashing>,
    /// The gap of the boards round it; above a head flashing the flashing's own counts.
    pub gap: Length,
    /// The least lap of the barrier over the patch.
    pub barrier_lap: Length,
    /// The least that the head flashing laps down and up, of its own rules.
    pub head_laps: (Length, Length),
    /// How far the patch must lie over the board, or the starter, below.
    pub patch_lap: Length,
    /// An opening narrower than this between exposed layers lies in their shadow.
    pub shadow: Length,
}

/// The layers of a penetration in their order from the wall outward.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WallLayers {
    /// The layers; the later one lies further out.
    pub layers: Vec<WallLayer>,
    /// The part of the wall that they show.
    pub frame: WallRectangle,
    pub(super) lap_min: Length,
    pub(super) shadow: Length,
    pub(super) pipe_y: Length,
    /// The lower edge of the board over a head flashing.
    pub(super) open_to: Option<Length>,
    /// Whether every hidden layer leads out what falls on it, down the barrier to the foot of the wall. Round a penetration
    /// only patch and cover do, which must end over the face of a board.
    pub(super) drained: bool,
}

/// One place where the layers do not shed; `upper` and `lower` count the layers from zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LapFault {
    /// What is wrong.
    pub kind: ShedKind,
    /// The layer that sheds wrongly.
    pub upper: usize,
    /// The layer that takes its water, or should.
    pub lower: Option<usize>,
    /// Where, from the wall's left datum.
    pub x: Length,
    /// Where, above the base line.
    pub y: Length,
}

/// Why layers cannot be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum LayersError {
    /// There is no course.
    #[error("there is no course")]
    NoCourse,
    /// The assembly has a head flashing that is not told, or none that is.
    #[error("the assembly and the sizes differ about the head flashing")]
    Head,
    /// The assembly has a cover and the patch no slit, or the other way round.
    #[error("the assembly and the patch differ about the slit")]
    Slit,
}

impl WallLayers {
    /// The layers of a penetration's assembly, in its order, with the boards below among them.
    ///
    /// # Errors
    /// [`LayersError`].
    pub fn build(request: &LayersRequest) -> Result<Self, LayersError> {
        let LayersRequest { assembly, boards, patch, outer, head, .. } = request;
        if assembly.has_head_flashing() != head.is_some() {
            return Err(LayersError::Head);
        }
        if assembly.patch_is_slit() != patch.slit.is_some() {
            return Err(LayersError::Slit);
        }
        let base = boards.first().ok_or(LayersError::NoCourse)?.bottom;
        let top = boards.iter().map(|board| board.bottom + board.height).max().ok_or(LayersError::NoCourse)?;
        let beside = request.lap + request.lap;
        let frame = WallRectangle {
            left: patch.outline.left - beside,
            right: patch.outline.right + beside,
            bottom: base - request.lap,
            top,
        };
        let below = match patch.end {
            PatchEnd::Course { course, .. } => course,
            PatchEnd::Starter => 0,
        };
        let board = |(at, board): (usize, &LayerBoard)| cut_board(request, frame, at, *board);
        let mut numbered = boards.iter().enumerate();
        let mut layers = Vec::new();
        for layer in assembly.layers() {
            match layer {
                Layer::Barrier => {
                    layers.push(base_flashing(request, frame, base));
                    layers.extend(barrier(request, frame, base));
                    layers.extend(numbered.by_ref().take(below).filter_map(board));
                }
                Layer::Patch => layers.push(patch_layer(request, top)),
                Layer::Cover => layers.extend(cover(request, top)),
                // The pieces of a block or of the trim stand on one another: together they are one sheet.
                Layer::Block | Layer::BlockLower => layers.push(outer_layer(request, LayerKind::Block)),
                Layer::TrimBottom => layers.push(outer_layer(request, LayerKind::Trim)),
                Layer::BlockUpper | Layer::TrimSides | Layer::TrimTop => {}
                Layer::HeadFlashing => layers.extend(head.as_ref().map(|head| head_layer(request, head))),
                Layer::BarrierFlap => layers.extend(flap(request, top)),
                Layer::Boards => layers.extend(numbered.by_ref().filter_map(board)),
                Layer::Collar => {
                    layers.push(sheet(LayerKind::Collar, vec![outer.area], flat(outer.thickness), true));
                }
                // A bead takes no water over another layer; what it must leave open is told at its step. A penetration
                // has none of the others.
                _ => {}
            }
        }
        let open_to = head.map(|head| head.open_to);
        Ok(Self {
            layers,
            frame,
            lap_min: request.lap,
            shadow: request.shadow,
            pipe_y: request.pipe.y,
            open_to,
            drained: false,
        })
    }

    /// Where these layers do not shed water: by [`shed_faults`], where patch and cover lead out what falls on
    /// them. A board that stands right on the block has no gap, of which its notch warns; a lap it is not meant to have. One that
    /// is cut to where a head flashing opens has the flashing's leg behind it, which has its own height.
    ///
    /// # Errors
    /// [`ShedError`]: only where the layers were changed, or are far too many.
    pub fn faults(&self) -> Result<Vec<LapFault>, ShedError> {
        let mut layers = Vec::new();
        for (depth, layer) in (0..).zip(&self.layers) {
            let name = format!("{depth}");
            layers.extend(layer.pieces.iter().enumerate().map(|(at, area)| ShedLayer {
                name: name.clone(),
                depth,
                area: *area,
                exposed: layer.exposed,
                lap_min: layer.lap_min,
                slit: layer.slit.filter(|_| at == 0),
            }));
        }
        let drains = |(_, layer): &(i64, &WallLayer)| {
            matches!(layer.kind, LayerKind::Patch | LayerKind::Cover) || (self.drained && !layer.exposed)
        };
        let request = ShedRequest {
            layers,
            lap_min: self.lap_min,
            shadow: self.shadow,
            pipe_y: Some(self.pipe_y),
            drains: (0..).zip(&self.layers).filter(drains).map(|(depth, _)| depth.to_string()).collect(),
        };
        let place = |fault: &ShedFault| {
            let upper = fault.upper.parse().ok()?;
            Some(LapFault { kind: fault.kind, upper, lower: fault.lower.parse().ok(), x: fault.x, y: fault.y })
        };
        let faults = shed_faults(&request)?;
        Ok(faults.iter().filter_map(place).filter(|fault| !self.stands_on_outer(fault)).collect())
    }

    fn stands_on_outer(&self, fault: &LapFault) -> bool {
        let board = self.layers.get(fault.upper).is_some_and(|upper| matches!(upper.kind, LayerKind::Board { .. }));
        let lower = fault.lower.and_then(|lower| self.layers.get(lower));
        // Over a head flashing its leg takes the water, as high as the flashing's own rule has it.
        let meets = |lower: &WallLayer| match lower.kind {
            LayerKind::Block | LayerKind::Collar | LayerKind::Trim => {
                lower.pieces.iter().any(|piece| piece.top == fault.y)
            }
            LayerKind::HeadFlashing => self.open_to == Some(fault.y),
            _ => false,
        };
        fault.kind == ShedKind::ShortLap && board && lower.is_some_and(meets)
    }
}

pub(super) fn sheet(kind: LayerKind, pieces: Vec<WallRectangle>, profile: Profile, exposed: bool) -> WallLayer {
    WallLayer { kind, pieces, hole: None, slit: None, profile, exposed, lap_min: None }
}

pub(super) fn flat(thickness: Length) -> Profile {
    Profile { lower: Length::ZERO, upper: Length::ZERO, thickness, bends: None }
}

/// The strip under the first course, as high as the boards lap.
fn base_flashing(request: &LayersRequest, frame: WallRectangle, base: Length) -> WallLayer {
    let area = WallRectangle { bottom: frame.bottom, top: base + request.lap, ..frame };
    sheet(LayerKind::Base, vec![area], flat(request.board_thickness), true)
}

/// Where the barrier is cut over the patch: so that nothing of it shows in the gap under the board above.
fn cut_line(request: &LayersRequest) -> Length {
    match &request.head {
        Some(head) => head.open_to,
        None => (request.outer.area.top + request.gap).max(request.patch.outline.top - request.barrier_lap),
    }
}

fn barrier(request: &LayersRequest, frame: WallRectangle, base: Length) -> Option<WallLayer> {
    let WallRectangle { left, right, .. } = request.patch.outline;
    let cut = cut_line(request).min(frame.top);
    let piece = |left, right, top| WallRectangle { left, right, bottom: base, top };
    let pieces =
        vec![piece(left, right, cut), piece(frame.left, left, frame.top), piece(right, frame.right, frame.top)];
    (base < cut).then(|| sheet(LayerKind::Barrier, pieces, flat(Length::ZERO), false))
}

fn flap(request: &LayersRequest, top: Length) -> Option<WallLayer> {
    let bottom = cut_line(request);
    let area = WallRectangle { bottom, top, ..request.patch.outline };
    let lap_min = Some(request.head.map_or(request.barrier_lap, |_| request.head_laps.1));
    let layer = sheet(LayerKind::BarrierFlap, vec![area], flat(Length::ZERO), false);
    (bottom < top).then_some(WallLayer { lap_min, ..layer })
}

fn patch_layer(request: &LayersRequest, top: Length) -> WallLayer {
    let Patch { outline, hole, slit, .. } = request.patch;
    let area = WallRectangle { top: outline.top.min(top), ..outline };
    // Over the face of the board below, whose top edge touches the wall, or over the starter.
    let thickness = Length::ZERO;
    let profile = Profile { lower: request.board_thickness, upper: Length::ZERO, thickness, bends: None };
    WallLayer {
        hole: Some(hole),
        slit: slit.map(|slit| Slit { x: request.pipe.x, from: outline.bottom + slit.from_bottom, to: area.top }),
        lap_min: Some(request.patch_lap),
        ..sheet(LayerKind::Patch, vec![area], profile, false)
    }
}

fn cover(request: &LayersRequest, top: Length) -> Option<WallLayer> {
    let slit = request.patch.slit?;
    let left = request.pipe.x - slit.cover_width.half();
    let bottom = request.patch.outline.bottom + slit.cover_from_bottom;
    let area =
        WallRectangle { left, right: left + slit.cover_width, bottom, top: (bottom + slit.cover_height).min(top) };
    (area.bottom < area.top && area.left < area.right)
        .then(|| sheet(LayerKind::Cover, vec![area], flat(Length::ZERO), false))
}

fn outer_layer(request: &LayersRequest, kind: LayerKind) -> WallLayer {
    let Outer { area, thickness } = request.outer;
    WallLayer { hole: Some(request.pipe.shape), ..sheet(kind, vec![area], flat(thickness), true) }
}

fn head_layer(request: &LayersRequest, head: &HeadFlashing) -> WallLayer {
    let sheet = sheet(LayerKind::HeadFlashing, vec![head.area], head.profile(), true);
    WallLayer { lap_min: Some(request.head_laps.0), ..sheet }
}

/// A board with what is cut out of it. A strip under the block that is no higher than the lap is not left: it would lie
/// over the board below, which carries its own notch; only the first course keeps it.
fn cut_board(request: &LayersRequest, frame: WallRectangle, at: usize, board: LayerBoard) -> Option<WallLayer> {
    let top = board.bottom + board.height;
    let area = request.outer.area;
    let hole = WallRectangle {
        left: area.left - request.gap,
        right: area.right + request.gap,
        bottom: area.bottom - request.gap,
        top: request.head.map_or(area.top + request.gap, |head| head.open_to),
    };
    let whole = WallRectangle { bottom: board.bottom, top, ..frame };
    // As at the saw: the block itself decides what is cut, the gap only how far.
    let reach = request.head.map_or(area.top, |head| head.open_to);
    let pieces = if top <= area.bottom || reach <= board.bottom {
        vec![whole]
    } else {
        let under = at == 0 || area.bottom - board.bottom >= request.lap;
        let middle = |bottom, top| WallRectangle { left: hole.left, right: hole.right, bottom, top };
        [
            Some(WallRectangle { right: hole.left, ..whole }),
            Some(WallRectangle { left: hole.right, ..whole }),
            under.then(|| middle(board.bottom, hole.bottom)),
            Some(middle(hole.top, top)),
        ]
        .into_iter()
        .flatten()
        .filter(|piece| piece.left < piece.right && piece.bottom < piece.top)
        .collect()
    };
    let thickness = request.board_thickness;
    let profile = Profile { lower: thickness, upper: Length::ZERO, thickness, bends: None };
    let kind = LayerKind::Board { course: at + 1 };
    (!pieces.is_empty()).then(|| sheet(kind, pieces, profile, true))
}

#[cfg(test)]
mod tests;
