use std::collections::BTreeSet;

use thiserror::Error;

use super::WallRectangle;
use crate::measure::Length;

/// A slit in a layer, through which it goes round a pipe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slit {
    /// Where it runs up.
    pub x: Length,
    /// The lower end.
    pub from: Length,
    /// The upper end.
    pub to: Length,
}

/// One piece of a layer of the wall. Pieces of one name and depth are one sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShedLayer {
    /// What it is called.
    pub name: String,
    /// Its place from the wall outward.
    pub depth: i64,
    /// Where it lies on the wall.
    pub area: WallRectangle,
    /// Whether weather may reach it.
    pub exposed: bool,
    /// The least lap of its lower edge, where it is not the common one.
    pub lap_min: Option<Length>,
    /// A slit in it.
    pub slit: Option<Slit>,
}

/// The layers whose laps are checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShedRequest {
    /// The pieces in any order.
    pub layers: Vec<ShedLayer>,
    /// The common least lap.
    pub lap_min: Length,
    /// An opening narrower than this between exposed layers lies in their shadow.
    pub shadow: Length,
    /// The height of the pipe's centre.
    pub pipe_y: Option<Length>,
    /// The names of hidden layers that lead out what falls on them, so that another hidden layer may end on them behind
    /// an exposed one; with none, every such edge is a fault. See the decision on the readings of the shedding check.
    pub drains: Vec<String>,
}

/// What lets water behind a layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ShedKind {
    /// The lap is less than the least.
    ShortLap,
    /// The layer ends over nothing that takes its water, or short of a layer that should go under it.
    StopsShort,
    /// The lower edge lies behind the layer below instead of over it.
    Behind,
    /// A layer that should be covered is open to the weather.
    Shows,
    /// The slit runs down from the pipe.
    SlitDown,
}

/// One place where the wall does not shed water.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShedFault {
    /// What is wrong.
    pub kind: ShedKind,
    /// The name of the layer that sheds wrongly.
    pub upper: String,
    /// The name of the layer below, empty where there is none.
    pub lower: String,
    /// The middle of the first strip where it is wrong.
    pub x: Length,
    /// The upper layer's bottom there.
    pub y: Length,
}

/// Why layers cannot be checked. `index` counts the pieces from zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum ShedError {
    /// Two pieces of one depth overlap.
    #[error("pieces {other} and {index} of one depth overlap")]
    Overlap {
        /// The later piece.
        index: usize,
        /// The earlier piece.
        other: usize,
    },
    /// One sheet is both exposed and not.
    #[error("piece {index} is of a sheet whose first piece differs in being exposed")]
    Exposed {
        /// The later piece.
        index: usize,
    },
    /// One sheet has two least laps.
    #[error("piece {index} is of a sheet whose first piece has another least lap")]
    LapMin {
        /// The later piece.
        index: usize,
    },
    /// More work than is done for one answer.
    #[error("too many layers lie over one another")]
    TooBig,
}

/// The most steps for one answer; a wall with everything on it takes some ten thousand.
const WORK: usize = 50_000_000;

/// A sheet between two neighbouring left or right edges.
#[derive(Clone, Copy)]
struct SheetSpan<'a> {
    layer: &'a ShedLayer,
    bottom: i64,
    top: i64,
}

/// Where the layers do not shed, strip by strip from the left; each kind, upper and lower layer once.
pub fn shed_faults(request: &ShedRequest) -> Result<Vec<ShedFault>, ShedError> {
    check(&request.layers)?;
    let sides = |layer: &ShedLayer| [layer.area.left.nm(), layer.area.right.nm()];
    let cuts: BTreeSet<i64> = request.layers.iter().flat_map(sides).collect();
    let mut work = Effort(WORK);
    let mut found = ShedFindings::default();
    for (left, right) in cuts.iter().zip(cuts.iter().skip(1)) {
        work.spend(request.layers.len())?;
        strip(request, *left, *right, &mut found, &mut work)?;
    }
    for layer in &request.layers {
        if let (Some(slit), Some(pipe)) = (layer.slit, request.pipe_y)
            && slit.from < pipe
        {
            found.add(ShedKind::SlitDown, &layer.name, "", slit.x, slit.from);
        }
    }
    Ok(found.faults)
}

struct Effort(usize);

impl Effort {
    fn spend(&mut self, steps: usize) -> Result<(), ShedError> {
        self.0 = self.0.checked_sub(steps).ok_or(ShedError::TooBig)?;
        Ok(())
    }
}

#[derive(Default)]
struct ShedFindings {
    seen: BTreeSet<(ShedKind, String, String)>,
    faults: Vec<ShedFault>,
}

impl ShedFindings {
    fn add(&mut self, kind: ShedKind, upper: &str, lower: &str, x: Length, y: Length) {
        if self.seen.insert((kind, upper.to_owned(), lower.to_owned())) {
            self.faults.push(ShedFault { kind, upper: upper.to_owned(), lower: lower.to_owned(), x, y });
        }
    }
}

fn check(layers: &[ShedLayer]) -> Result<(), ShedError> {
    for (index, layer) in layers.iter().enumerate() {
        for (other, earlier) in layers.iter().enumerate().take(index) {
            if earlier.depth != layer.depth {
                continue;
            }
            let (a, b) = (&earlier.area, &layer.area);
            if a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top {
                return Err(ShedError::Overlap { index, other });
            }
            if earlier.name == layer.name {
                if earlier.exposed != layer.exposed {
                    return Err(ShedError::Exposed { index });
                }
                if earlier.lap_min != layer.lap_min {
                    return Err(ShedError::LapMin { index });
                }
            }
        }
    }
    Ok(())
}

/// The sheets of a strip; pieces of one sheet that meet are one span.
fn spans(layers: &[ShedLayer], left: i64, right: i64) -> Vec<SheetSpan<'_>> {
    let across = |layer: &&ShedLayer| layer.area.left.nm() <= left && right <= layer.area.right.nm();
    let span =
        |layer| -> SheetSpan<'_> { SheetSpan { layer, bottom: layer.area.bottom.nm(), top: layer.area.top.nm() } };
    let mut pieces: Vec<SheetSpan<'_>> = layers.iter().filter(across).map(span).collect();
    pieces.sort_by(|a, b| (a.layer.depth, &a.layer.name, a.bottom).cmp(&(b.layer.depth, &b.layer.name, b.bottom)));
    let mut merged: Vec<SheetSpan<'_>> = Vec::new();
    for piece in pieces {
        match merged.last_mut() {
            Some(last)
                if last.layer.depth == piece.layer.depth
                    && last.layer.name == piece.layer.name
                    && last.top == piece.bottom =>
            {
                last.top = piece.top;
            }
            _ => merged.push(piece),
        }
    }
    merged
}

fn strip(
    request: &ShedRequest,
    left: i64,
    right: i64,
    found: &mut ShedFindings,
    work: &mut Effort,
) -> Result<(), ShedError> {
    let spans = spans(&request.layers, left, right);
    work.spend(spans.len().saturating_mul(spans.len()))?;
    let middle = Length::from_nm(left.saturating_add(right)).half();
    let mut upward: Vec<&SheetSpan<'_>> = spans.iter().collect();
    upward.sort_by_key(|span| (span.bottom, span.layer.depth));
    for upper in upward {
        let mut add = |kind, lower: &str| {
            found.add(kind, &upper.layer.name, lower, middle, Length::from_nm(upper.bottom));
        };
        let inner = || spans.iter().filter(|span| span.layer.depth < upper.layer.depth);
        let receiver = receiver_of(&spans, upper);
        if let Some(receiver) = receiver {
            let least = upper.layer.lap_min.unwrap_or(request.lap_min).nm();
            if receiver.top < upper.top && receiver.top.saturating_sub(upper.bottom) < least {
                add(ShedKind::ShortLap, &receiver.layer.name);
            }
        }
        let short = inner()
            .filter(|span| span.top < upper.bottom)
            .filter(|span| {
                receiver
                    .is_none_or(|own| own.layer.exposed && own.layer.depth < span.layer.depth && own.bottom < span.top)
            })
            .min_by_key(|span| (span.top, span.bottom));
        match (short, receiver) {
            (Some(short), _) => add(ShedKind::StopsShort, &short.layer.name),
            (None, None) if !upper.layer.exposed => add(ShedKind::StopsShort, ""),
            (None, _) => {}
        }
        let outer = || spans.iter().filter(|span| span.layer.depth > upper.layer.depth);
        for front in outer() {
            let falls_behind = front.bottom < upper.bottom && upper.bottom < front.top && front.top < upper.top;
            if falls_behind && !led_out(request, &spans, upper, receiver, front) {
                add(ShedKind::Behind, &front.layer.name);
            }
        }
        if !upper.layer.exposed {
            for (bottom, top) in uncovered(upper, outer()) {
                let cell = WallRectangle {
                    left: Length::from_nm(left),
                    right: Length::from_nm(right),
                    bottom: Length::from_nm(bottom),
                    top: Length::from_nm(top),
                };
                if open(request, upper.layer.depth, cell, work)? {
                    add(ShedKind::Shows, "");
                    break;
                }
            }
        }
    }
    Ok(())
}

/// The outermost layer further in that takes the water of a layer's lower edge.
fn receiver_of<'a>(spans: &'a [SheetSpan<'a>], upper: &SheetSpan<'_>) -> Option<&'a SheetSpan<'a>> {
    let takes = |span: &&SheetSpan<'_>| {
        span.layer.depth < upper.layer.depth && span.bottom < upper.bottom && upper.bottom <= span.top
    };
    spans.iter().filter(takes).max_by_key(|span| span.layer.depth)
}

/// Whether the water that falls from a layer behind another comes out over an exposed face below that one.
fn led_out(
    request: &ShedRequest,
    spans: &[SheetSpan<'_>],
    upper: &SheetSpan<'_>,
    receiver: Option<&SheetSpan<'_>>,
    front: &SheetSpan<'_>,
) -> bool {
    let hidden = !upper.layer.exposed && front.layer.exposed;
    // Each receiver starts lower than the one before it, so the walk ends.
    let mut next = receiver;
    while let Some(own) = next {
        if own.layer.exposed {
            return own.bottom < front.bottom;
        }
        next = if hidden && request.drains.contains(&own.layer.name) { receiver_of(spans, own) } else { None };
    }
    false
}

/// What the outer spans leave of a span.
fn uncovered<'a>(span: &SheetSpan<'_>, outer: impl Iterator<Item = &'a SheetSpan<'a>>) -> Vec<(i64, i64)> {
    let mut covers: Vec<(i64, i64)> = outer.map(|cover| (cover.bottom, cover.top)).collect();
    covers.sort_unstable();
    let (mut from, mut left_over) = (span.bottom, Vec::new());
    for (bottom, top) in covers {
        if bottom.min(span.top) > from {
            left_over.push((from, bottom.min(span.top)));
        }
        from = from.max(top);
    }
    if from < span.top {
        left_over.push((from, span.top));
    }
    left_over
}

/// Whether a square of the shadow's size that reaches into the cell fits between the exposed layers outside `depth`.
///
/// A square that fits can be pushed left and then down until it stands against a layer or only just reaches the cell,
/// so these places are all that need to be tried.
fn open(request: &ShedRequest, depth: i64, cell: WallRectangle, work: &mut Effort) -> Result<bool, ShedError> {
    let side = request.shadow.nm();
    if side <= 0 {
        return Ok(true);
    }
    let first = |edge: Length| edge.nm().saturating_sub(side).saturating_add(1);
    let (least_x, least_y) = (first(cell.left), first(cell.bottom));
    let (past_x, past_y) = (cell.right.nm(), cell.top.nm());
    let reach = |area: &WallRectangle| {
        area.left.nm() < past_x.saturating_add(side)
            && least_x <= area.right.nm()
            && area.bottom.nm() < past_y.saturating_add(side)
            && least_y <= area.top.nm()
    };
    let near: Vec<WallRectangle> = request
        .layers
        .iter()
        .filter(|layer| layer.exposed && layer.depth > depth && reach(&layer.area))
        .map(|layer| layer.area)
        .collect();
    work.spend(request.layers.len())?;
    let places = |least: i64, past: i64, edge: fn(&WallRectangle) -> i64| -> BTreeSet<i64> {
        near.iter().map(edge).filter(|at| least <= *at && *at < past).chain([least]).collect()
    };
    let across = places(least_x, past_x, |area| area.right.nm());
    let up = places(least_y, past_y, |area| area.top.nm());
    for x in &across {
        for y in &up {
            work.spend(near.len() + 1)?;
            let (right, top) = (x.saturating_add(side), y.saturating_add(side));
            let clear = |area: &WallRectangle| {
                area.right.nm() <= *x || right <= area.left.nm() || area.top.nm() <= *y || top <= area.bottom.nm()
            };
            if near.iter().all(clear) {
                return Ok(true);
            }
        }
    }
    Ok(false)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOARDS: [i64; 5] = [0, 96, 192, 288, 384];
    const BOARD: i64 = 116;

    /// Everything in sixteenths of an inch.
    fn length(sixteenths: i64) -> Length {
        Length::from_inches_64(0, sixteenths * 4)
    }

    fn piece(name: &str, depth: i64, across: (i64, i64), up: (i64, i64), exposed: bool) -> ShedLayer {
        let area =
            WallRectangle { left: length(across.0), right: length(across.1), bottom: length(up.0), top: length(up.1) };
        ShedLayer { name: name.to_owned(), depth, area, exposed, lap_min: None, slit: None }
    }

    /// Five courses with a block from 15 to 25 in over the third to the fifth.
    fn wall(sides: i64, top: i64, bottom: i64) -> ShedRequest {
        let (left, right) = (480 - sides, 576 + sides);
        let mut patch = piece("patch", 30, (416, 640), (200, 464), false);
        patch.lap_min = Some(length(12));
        patch.slit = Some(Slit { x: length(528), from: length(330), to: length(464) });
        let mut layers = vec![
            piece("flashing", -1, (0, 1280), (-32, 48), true),
            piece("barrier", 0, (0, 1280), (16, 500), false),
            patch,
            piece("block", 40, (480, 576), (240, 400), true),
        ];
        for (at, own) in BOARDS.into_iter().enumerate() {
            let name = format!("board {}", at + 1);
            let depth = [10, 20, 50, 60, 70][at];
            let mut add = |across, up| layers.push(piece(&name, depth, across, up, true));
            if at < 2 {
                add((0, 1280), (own, own + BOARD));
                continue;
            }
            add((0, left), (own, own + BOARD));
            add((right, 1280), (own, own + BOARD));
            match at {
                2 => add((left, right), (own, 240 - bottom)),
                4 => add((left, right), (400 + top, own + BOARD)),
                _ => {}
            }
        }
        ShedRequest { layers, lap_min: length(20), shadow: length(3), pipe_y: Some(length(320)), drains: Vec::new() }
    }

    fn kinds(request: &ShedRequest) -> Vec<(ShedKind, String, String)> {
        let faults = shed_faults(request).unwrap();
        faults.into_iter().map(|fault| (fault.kind, fault.upper, fault.lower)).collect()
    }

    fn has(request: &ShedRequest, kind: ShedKind, upper: &str, lower: &str) -> bool {
        kinds(request).contains(&(kind, upper.to_owned(), lower.to_owned()))
    }

    fn named<'a>(request: &'a mut ShedRequest, name: &'a str) -> impl Iterator<Item = &'a mut ShedLayer> {
        request.layers.iter_mut().filter(move |layer| layer.name == name)
    }

    /// A gap of 1/8 in all round, and one gap per edge with the block standing on the board below.
    const GAPS: [(i64, i64, i64); 2] = [(2, 2, 2), (2, 1, 0)];

    #[test]
    fn a_block_over_three_courses_sheds() {
        for (sides, top, bottom) in GAPS {
            assert_eq!(kinds(&wall(sides, top, bottom)), vec![]);
        }
    }

    #[test]
    fn a_slit_down_does_not_shed() {
        for (sides, top, bottom) in GAPS {
            let mut wall = wall(sides, top, bottom);
            for patch in named(&mut wall, "patch") {
                patch.slit = Some(Slit { x: length(528), from: length(200), to: length(320) });
            }
            assert_eq!(kinds(&wall), vec![(ShedKind::SlitDown, "patch".to_owned(), String::new())]);
        }
    }

    #[test]
    fn a_patch_behind_the_course_below_does_not_shed() {
        for (sides, top, bottom) in GAPS {
            let mut wall = wall(sides, top, bottom);
            named(&mut wall, "patch").for_each(|patch| patch.depth = 15);
            assert!(has(&wall, ShedKind::Behind, "patch", "board 2"));
        }
    }

    #[test]
    fn a_board_above_behind_the_block_does_not_shed() {
        for (sides, top, bottom) in GAPS {
            let mut wall = wall(sides, top, bottom);
            named(&mut wall, "board 5").for_each(|board| {
                board.depth = 35;
                board.area.bottom = length(384);
            });
            assert!(has(&wall, ShedKind::Behind, "board 5", "block"));
        }
    }

    /// The second piece over the slit ends on the patch, behind the block: the patch leads its water out. An exposed
    /// board behind the block stays a fault in either reading.
    #[test]
    fn a_cover_may_drain_over_the_patch() {
        let mut wall = wall(2, 2, 2);
        wall.layers.push(piece("cover", 31, (496, 560), (328, 496), false));
        assert_eq!(kinds(&wall), vec![(ShedKind::Behind, "cover".to_owned(), "block".to_owned())]);
        wall.drains = vec!["patch".to_owned()];
        assert_eq!(kinds(&wall), vec![]);
        named(&mut wall, "board 5").for_each(|board| {
            board.depth = 35;
            board.area.bottom = length(384);
        });
        assert!(has(&wall, ShedKind::Behind, "board 5", "block"));
        named(&mut wall, "patch").for_each(|patch| patch.depth = 15);
        assert!(has(&wall, ShedKind::Behind, "cover", "block"));
    }

    #[test]
    fn an_opening_as_wide_as_the_shadow_shows() {
        assert!(has(&wall(3, 2, 2), ShedKind::Shows, "patch", ""));
        assert!(has(&wall(2, 3, 2), ShedKind::Shows, "patch", ""));
        // Of the barrier only what the patch leaves would show, and the boards cover that.
        assert!(!has(&wall(3, 3, 3), ShedKind::Shows, "barrier", ""));
    }

    #[test]
    fn short_laps_and_layers_that_stop_short_are_found() {
        let mut short = wall(2, 2, 2);
        short.lap_min = length(21);
        assert!(has(&short, ShedKind::ShortLap, "board 2", "board 1"));
        assert!(!has(&short, ShedKind::ShortLap, "patch", "board 2"));
        let layers = vec![
            piece("board", 1, (0, 100), (0, 100), true),
            piece("strip", 2, (0, 100), (10, 60), false),
            piece("trim", 3, (0, 100), (70, 120), true),
        ];
        let request = ShedRequest { layers, ..wall(2, 2, 2) };
        let fault = shed_faults(&request).unwrap().into_iter().find(|fault| fault.kind == ShedKind::StopsShort);
        let fault = fault.unwrap();
        assert_eq!((fault.upper.as_str(), fault.lower.as_str()), ("trim", "strip"));
        assert_eq!((fault.x, fault.y), (length(50), length(70)));
    }

    #[test]
    fn pieces_of_a_sheet_that_meet_have_no_edge_between() {
        let mut request = wall(2, 2, 2);
        request.layers.retain(|layer| layer.name == "board 1");
        let both = request.layers.remove(0);
        request.layers = vec![both.clone(), both];
        request.layers[0].area.top = length(50);
        request.layers[1].area.bottom = length(50);
        assert_eq!(kinds(&request), vec![]);
        request.layers[1].area.bottom = length(49);
        assert_eq!(shed_faults(&request), Err(ShedError::Overlap { index: 1, other: 0 }));
        request.layers[1].area.bottom = length(50);
        request.layers[1].exposed = false;
        assert_eq!(shed_faults(&request), Err(ShedError::Exposed { index: 1 }));
    }

    #[test]
    fn too_many_layers_are_refused() {
        let layers = (0..9_000).map(|at| piece("sheet", at, (at, at + 9_000), (0, 100), true)).collect();
        let request = ShedRequest { layers, ..wall(2, 2, 2) };
        assert_eq!(shed_faults(&request), Err(ShedError::TooBig));
    }
}
