use serde_json::{Map, Value, json};

use super::{Common, Fault, FaultCode, FigureField, FigureQuestion, FigureShape, Node, Reply, Say, request};
use crate::measure::{Length, Show};
use crate::notch::{
    Block, BoardInHand, Cut, CutKind, EIGHTH, Edge, Gap, GapRule, Notch, NotchError, NotchRequest, Overcut, Sides,
    Warning,
};
use crate::phrases::key;

const GAP: &[FigureField] =
    &[FigureField::new("min", FigureShape::Length), FigureField::new("max", FigureShape::Length)];
const GAPS: &[FigureField] = &[
    FigureField::new("sides", FigureShape::Object(GAP)),
    FigureField::new("top", FigureShape::Object(GAP)),
    FigureField::new("bottom", FigureShape::Object(GAP)),
];
const BOARD: &[FigureField] = &[
    FigureField::new("height", FigureShape::Length),
    FigureField::new("length", FigureShape::Length),
    FigureField::optional("lap", FigureShape::Length),
    FigureField::optional("thickness", FigureShape::Length),
];
const BLOCK: &[FigureField] = &[
    FigureField::new("left", FigureShape::Length),
    FigureField::new("right", FigureShape::Length),
    FigureField::new("bottom", FigureShape::LengthPair),
    FigureField::new("top", FigureShape::LengthPair),
];
const SAW: &[FigureField] =
    &[FigureField::new("over_min", FigureShape::Length), FigureField::new("over_max", FigureShape::Length)];
const CUT: &[FigureField] = &[
    FigureField::new("left", FigureShape::Shown),
    FigureField::new("right", FigureShape::Shown),
    FigureField::new("bottom", FigureShape::ShownPair),
    FigureField::new("top", FigureShape::ShownPair),
    FigureField::optional("depth", FigureShape::ShownPair),
];
const SHOWN_GAP: &[FigureField] =
    &[FigureField::new("min", FigureShape::Shown), FigureField::new("max", FigureShape::Shown)];
const SHOWN_GAPS: &[FigureField] = &[
    FigureField::new("sides", FigureShape::Object(SHOWN_GAP)),
    FigureField::new("top", FigureShape::Object(SHOWN_GAP)),
    FigureField::new("bottom", FigureShape::Object(SHOWN_GAP)),
];
const OFFSETS: &[FigureField] = &[
    FigureField::new("sides", FigureShape::Shown),
    FigureField::new("top", FigureShape::Shown),
    FigureField::new("bottom", FigureShape::Shown),
];
const LEGS: &[FigureField] = &[
    FigureField::optional("above", FigureShape::Shown),
    FigureField::optional("below", FigureShape::Shown),
    FigureField::optional("left", FigureShape::Shown),
    FigureField::optional("right", FigureShape::Shown),
];

/// `notch`: the cut for a block in the board in hand.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "notch",
    request: &[
        FigureField::new("board", FigureShape::Object(BOARD)),
        FigureField::new("block", FigureShape::Object(BLOCK)),
        FigureField::new("gap", FigureShape::Either(&[FigureShape::Object(GAP), FigureShape::Object(GAPS)])),
        FigureField::optional("saw", FigureShape::Object(SAW)),
        FigureField::optional("tape", FigureShape::Length),
        FigureField::optional("division", FigureShape::Division),
        FigureField::optional("leg_min", FigureShape::Length),
        FigureField::optional("below", FigureShape::Flag),
        FigureField::optional("other_depth", FigureShape::Length),
        FigureField::optional("between", FigureShape::Whole),
        FigureField::optional("reveal", FigureShape::Length),
    ],
    reply: &[
        FigureField::new("cut", FigureShape::Choice(&CutKind::CODES)),
        FigureField::new("offset", FigureShape::Either(&[FigureShape::Shown, FigureShape::Object(OFFSETS)])),
        FigureField::optional("face", FigureShape::Object(CUT)),
        FigureField::optional("back", FigureShape::Object(CUT)),
        FigureField::new(
            "gap",
            FigureShape::Either(&[FigureShape::Object(SHOWN_GAP), FigureShape::Object(SHOWN_GAPS)]),
        ),
        FigureField::optional("legs", FigureShape::Object(LEGS)),
    ],
    example: r#"{"board": {"height": "8 1/4\"", "length": "96\"", "lap": "1 1/4\""},
 "block": {"left": "40\"", "right": "46 1/2\"", "bottom": "-2\"", "top": ["3\"", "3 1/16\""]},
 "gap": {"min": "1/16\"", "max": "1/8\""}, "saw": {"over_min": "0\"", "over_max": "1/32\""}}"#,
    help: key("notch-help"),
    answer,
};

/// The other board's depth, with what it is checked by.
struct Other {
    depth: Length,
    lap: Length,
    through: Length,
}

fn answer(root: &Node<'_>) -> Result<Reply, Fault> {
    missing_for_cross_check(root)?;
    let board = board(&root.object("board")?)?;
    let block = block(&root.object("block")?)?;
    let gap = gaps(&root.object("gap")?)?;
    let overcut = root.object_if("saw")?.map_or(Ok(Overcut::default()), |saw| {
        let (min, max) = interval(&saw, "over_min", "over_max", Node::length)?;
        Ok(Overcut { min, max })
    })?;
    let or = |name: &str, default| root.get(name).map_or(Ok(default), |node| node.not_negative());
    let tape = or("tape", Length::ZERO)?;
    let division = root.division()?;
    let leg_min = or("leg_min", Length::from_inches(2))?;
    let below = root.get("below").map_or(Ok(true), |node| node.flag())?;
    let other = other(root, &board)?;
    let open_above = false;
    let request =
        NotchRequest { board, block, gap, overcut, tape, division, leg_min, level: EIGHTH, below, open_above };
    let notch = Notch::lay_out(&request).map_err(|error| fault(root, error))?;

    let common = root.common;
    let fine = common.show.finer(division.half());
    let mut reply = Reply::default();
    reply.set("cut", notch.kind.code());
    reply.set("offset", by_edge(&notch.offset, |offset| common.shown_as(offset, fine)));
    if let Some(cut) = notch.cut {
        let depth = notch.depth(&board);
        reply.set("face", shown_cut(&cut, depth, common, fine));
        let back = notch.behind(&board).unwrap_or(cut);
        reply.set("back", shown_cut(&back, depth.map(Sides::swapped), common, fine));
    }
    reply.set("gap", by_edge(&notch.gap, |gap| json!({"min": common.shown(gap.min), "max": common.shown(gap.max)})));
    if notch.cut.is_some() {
        let legs: Map<String, Value> =
            notch.legs.named().map(|(name, leg)| (name.to_owned(), common.shown(leg))).collect();
        reply.set("legs", legs);
    }
    for warning in &notch.warnings {
        warn(&mut reply, &notch, &request, warning, fine);
    }
    let miss = other.and_then(|other| notch.cross_check(&board, &block, other.depth, other.lap, other.through));
    if let Some(miss) = miss.filter(|miss| Notch::is_off(*miss)) {
        reply.warn("cross-check", "face.depth", Say::new("notch-cross-check").with("by", fine.text(miss.abs())));
    }
    Ok(reply)
}

/// What a given `other_depth` asks for besides: missing fields are told before wrong ones.
fn missing_for_cross_check(root: &Node<'_>) -> Result<(), Fault> {
    if root.get("other_depth").is_none() {
        return Ok(());
    }
    if let Some(board) = root.get("board").filter(|board| board.is_object() && board.get("lap").is_none()) {
        return Err(request::missing(&board.path_of("lap")));
    }
    let between = root.get("between").and_then(|node| node.number().ok());
    if between.is_some_and(|number| number.is_positive()) && root.get("reveal").is_none() {
        return Err(request::missing("reveal"));
    }
    Ok(())
}

fn board(node: &Node<'_>) -> Result<BoardInHand, Fault> {
    let height = node.field("height")?.positive()?;
    let length = node.field("length")?.positive()?;
    let mut lap = None;
    if let Some(node) = node.get("lap") {
        let value = node.not_negative()?;
        if value >= height {
            return Err(node.fault(FaultCode::Order, Say::new("notch-lap")));
        }
        lap = Some(value);
    }
    node.get("thickness").map(|node| node.positive()).transpose()?;
    Ok(BoardInHand { height, length, lap })
}

fn block(node: &Node<'_>) -> Result<Block, Fault> {
    let left = node.field("left")?.length()?;
    let right_node = node.field("right")?;
    let right = right_node.length()?;
    if right <= left {
        return Err(right_node.order(&node.path_of("left")));
    }
    let bottom = node.field("bottom")?.length_pair()?;
    let top = node.field("top")?.length_pair()?;
    for ((low, low_node), (high, high_node)) in bottom.iter().zip(&top) {
        if high <= low {
            return Err(high_node.order(low_node.path()));
        }
    }
    let sides = |[(left, _), (right, _)]: [(Length, Node<'_>); 2]| Sides::new(left, right);
    Ok(Block { left, right, bottom: sides(bottom), top: sides(top) })
}

fn interval<'a>(
    node: &Node<'a>,
    least: &str,
    most: &str,
    read: impl Fn(&Node<'a>) -> Result<Length, Fault>,
) -> Result<(Length, Length), Fault> {
    let min = read(&node.field(least)?)?;
    let most = node.field(most)?;
    let max = read(&most)?;
    if max < min { Err(most.order(&node.path_of(least))) } else { Ok((min, max)) }
}

fn gaps(node: &Node<'_>) -> Result<GapRule<Gap>, Fault> {
    let gap = |node: &Node<'_>| -> Result<Gap, Fault> {
        let (min, max) = interval(node, "min", "max", Node::not_negative)?;
        Ok(Gap { min, max })
    };
    if node.get("min").is_some() {
        return Ok(GapRule::One(gap(node)?));
    }
    let (sides, top, bottom) =
        (gap(&node.object("sides")?)?, gap(&node.object("top")?)?, gap(&node.object("bottom")?)?);
    Ok(GapRule::Edges { sides, top, bottom })
}

fn other(root: &Node<'_>, board: &BoardInHand) -> Result<Option<Other>, Fault> {
    let depth = root.get("other_depth").map(|node| node.not_negative()).transpose()?;
    let between = root.get("between").map_or(Ok(0), |node| node.whole(0, 10_000))?;
    let reveal = root.get("reveal").map(|node| node.positive()).transpose()?.unwrap_or(Length::ZERO);
    let Some(depth) = depth else { return Ok(None) };
    let lap = board.lap.ok_or_else(|| request::missing("board.lap"))?;
    // 10,000 times the longest reveal does not fit; such a check misses by more than anything either way.
    let through = reveal.checked_mul(between).unwrap_or(Length::from_nm(i64::MAX));
    Ok(Some(Other { depth, lap, through }))
}

/// The room's own checks, which the reading above has already made field by field.
fn fault(root: &Node<'_>, error: NotchError) -> Fault {
    let (code, field, say) = match error {
        NotchError::Board => (FaultCode::Range, "board.height", Say::new("figure-range-positive")),
        NotchError::Lap => (FaultCode::Order, "board.lap", Say::new("notch-lap")),
        NotchError::BlockWidth => {
            (FaultCode::Order, "block.right", Say::new("figure-order").with("other", "block.left"))
        }
        NotchError::BlockHeight => {
            (FaultCode::Order, "block.top", Say::new("figure-order").with("other", "block.bottom"))
        }
        NotchError::Gap => (FaultCode::Order, "gap", Say::new("figure-range-not-negative")),
        NotchError::Overcut => {
            (FaultCode::Order, "saw.over_max", Say::new("figure-order").with("other", "saw.over_min"))
        }
        NotchError::Negative => (FaultCode::Range, "tape", Say::new("figure-range-not-negative")),
    };
    Fault::new(code, root.path_of(field), say)
}

fn by_edge<T: Copy>(rule: &GapRule<T>, show: impl Fn(T) -> Value) -> Value {
    match rule.map(&show) {
        GapRule::One(value) => value,
        GapRule::Edges { sides, top, bottom } => json!({"sides": sides, "top": top, "bottom": bottom}),
    }
}

fn shown_cut(cut: &Cut, depth: Option<Sides<Length>>, common: &Common, show: Show) -> Value {
    let shown = |length: Length| common.shown_as(length, show);
    let pair = |sides: Sides<Length>| json!([shown(sides.left), shown(sides.right)]);
    let mut fields = Map::new();
    fields.insert("left".to_owned(), shown(cut.left));
    fields.insert("right".to_owned(), shown(cut.right));
    fields.insert("bottom".to_owned(), pair(cut.bottom));
    fields.insert("top".to_owned(), pair(cut.top));
    if let Some(depth) = depth {
        fields.insert("depth".to_owned(), pair(depth));
    }
    Value::Object(fields)
}

/// Warnings' texts show lengths finely: they are about differences that the tape's marks would hide.
fn warn(reply: &mut Reply, notch: &Notch, request: &NotchRequest, warning: &Warning, show: Show) {
    let gap = |edge: Edge, end: &str| match (&request.gap, edge) {
        (GapRule::One(_), _) => format!("gap.{end}"),
        (GapRule::Edges { .. }, Edge::Sides) => format!("gap.sides.{end}"),
        (GapRule::Edges { .. }, Edge::Top) => format!("gap.top.{end}"),
        (GapRule::Edges { .. }, Edge::Bottom) => format!("gap.bottom.{end}"),
    };
    let fine = match show {
        Show::Inches(parts) => Show::Inches(parts.max(64)),
        Show::FeetInches(parts) => Show::FeetInches(parts.max(64)),
        Show::Millimetres(parts) => Show::Millimetres(parts.max(10)),
    };
    match *warning {
        Warning::GapTight { edge, least, wanted } => {
            let say = if notch.cut.is_some() { Say::new("notch-gap-tight") } else { Say::new("notch-gap-near") };
            let say = say.with("least", fine.text(least)).with("wanted", fine.text(wanted));
            reply.warn("gap-tight", gap(edge, "min"), say);
        }
        Warning::GapWide { edge, most, wanted } => {
            let say = Say::new("notch-gap-wide").with("most", fine.text(most)).with("wanted", fine.text(wanted));
            reply.warn("gap-wide", gap(edge, "max"), say);
        }
        Warning::ThinLeg { leg, width } => {
            let say =
                Say::new("notch-thin-leg").with("width", fine.text(width)).with("least", fine.text(request.leg_min));
            reply.warn("thin-leg", format!("legs.{leg}"), say);
        }
        Warning::OutOfLevel { edge, by } => {
            let at = if edge == Edge::Bottom { "face.bottom" } else { "face.top" };
            reply.warn("out-of-level", at, Say::new("notch-out-of-level").with("by", fine.text(by)));
        }
    }
}
