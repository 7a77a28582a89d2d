use serde_json::json;

use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say, through};
use crate::flashing::{ANGLES, BlockError, BlockLimits, BlockWarning, CutHeights, SplitBlock, SplitRequest, WayOut};
use crate::measure::Division;
use crate::phrases::key;
use crate::wall;

/// A split mounting block.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "block",
    request: &[
        FigureField::new("width", FigureShape::Length),
        FigureField::new("height", FigureShape::Length),
        FigureField::new("thickness", FigureShape::Length),
        FigureField::new("pipe", FigureShape::Either(&[FigureShape::Length, FigureShape::Object(PIPE)])),
        FigureField::new("center", FigureShape::Length),
        FigureField::optional("angle", FigureShape::Number),
        FigureField::new("kerf", FigureShape::Length),
        FigureField::new("gap", FigureShape::Length),
        FigureField::optional("bits", FigureShape::List(&FigureShape::Length)).not_beside("pipe"),
        FigureField::optional("board_thickness", FigureShape::Length),
        FigureField::optional("division", FigureShape::Division),
    ],
    reply: &[
        FigureField::new("kerf_up", FigureShape::Shown),
        FigureField::new("blank_height", FigureShape::Shown),
        FigureField::new("drill_at", FigureShape::Shown),
        FigureField::optional("bit", FigureShape::Shown),
        FigureField::optional("opening", FigureShape::Object(OPENING)),
        FigureField::new("climb", FigureShape::Shown),
        FigureField::new("lower", FigureShape::Object(HEIGHTS)),
        FigureField::new("upper", FigureShape::Object(HEIGHTS)),
        FigureField::new("mouth", FigureShape::Shown),
    ],
    example: r#"{"width": "6\"", "height": "7 1/2\"", "thickness": "1\"", "pipe": "1\"", "center": "3 3/4\"",
 "kerf": "3/32\"", "gap": "1/8\""}"#,
    help: key("flashing-block-help"),
    answer,
};

const PIPE: &[FigureField] = &[through::WIDTH, through::HEIGHT];
const OPENING: &[FigureField] =
    &[FigureField::new("width", FigureShape::Shown), FigureField::new("height", FigureShape::Shown)];
const HEIGHTS: &[FigureField] =
    &[FigureField::new("face", FigureShape::Shown), FigureField::new("back", FigureShape::Shown)];

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let mut asked = read(request)?;
    let board_thickness = request.get("board_thickness").map(|node| node.positive()).transpose();
    match request.division() {
        Ok(division) => asked.division = division,
        Err(error) => return Err(board_thickness.err().unwrap_or(error)),
    }
    // What is wrong with the block is said before what is wrong with the boards beside it, which have no part in it.
    asked.board_thickness = board_thickness.as_ref().ok().copied().flatten();
    let block = SplitBlock::lay_out(&asked).map_err(|error| fault(request, &error))?;
    board_thickness?;
    let shown = |length| request.common.shown(length);
    let heights = |own: CutHeights| json!({"face": shown(own.face), "back": shown(own.back)});
    let mut reply = Reply::default();
    reply.set("kerf_up", shown(block.kerf_up));
    reply.set("blank_height", shown(block.blank_height));
    reply.set("drill_at", shown(block.drill_at));
    let hole = match block.hole {
        wall::Shape::Round { diameter } => {
            reply.set("bit", shown(diameter));
            "bit"
        }
        rectangle @ wall::Shape::Rectangle { .. } => {
            reply.set("opening", through::shown(rectangle, request.common));
            "opening"
        }
    };
    reply.set("climb", shown(block.climb));
    reply.set("lower", heights(block.lower));
    reply.set("upper", heights(block.upper));
    reply.set("mouth", shown(block.mouth));
    for warning in &block.warnings {
        let (code, at, phrase) = match warning {
            BlockWarning::MouthTight => ("mouth-tight", "mouth", key("flashing-block-mouth-tight")),
            BlockWarning::ThinSide => ("thin-side", hole, key("flashing-block-thin-side")),
            BlockWarning::Shallow => ("block-shallow", "thickness", key("flashing-block-shallow")),
        };
        reply.warn(code, at, Say::new(phrase));
    }
    Ok(reply)
}

fn read(request: &Node<'_>) -> Result<SplitRequest, Fault> {
    let positive = |name| request.field(name)?.positive();
    Ok(SplitRequest {
        width: positive("width")?,
        height: positive("height")?,
        thickness: positive("thickness")?,
        through: pipe(&request.field("pipe")?)?,
        center: request.field("center")?.length()?,
        angle: match request.get("angle") {
            None => num_rational::BigRational::from_integer(45.into()),
            Some(node) => {
                let exact = node.number()?.exact;
                let whole = |degrees: i64| num_rational::BigRational::from_integer(degrees.into());
                if exact < whole(ANGLES.0) || exact > whole(ANGLES.1) {
                    return Err(node.between(&ANGLES.0.to_string(), &ANGLES.1.to_string()));
                }
                exact
            }
        },
        kerf: request.field("kerf")?.not_negative()?,
        gap: request.field("gap")?.not_negative()?,
        bits: match request.get("bits") {
            None => None,
            Some(node) => Some(node.items()?.iter().map(Node::positive).collect::<Result<_, Fault>>()?),
        },
        board_thickness: None,
        division: Division::SIXTEENTH,
        limits: BlockLimits::default(),
    })
}

/// A diameter, or the sizes of a rectangle.
fn pipe(node: &Node<'_>) -> Result<wall::Shape, Fault> {
    if node.is_object() { through::read(node) } else { Ok(wall::Shape::Round { diameter: node.positive()? }) }
}

fn fault(request: &Node<'_>, error: &BlockError) -> Fault {
    let show = request.common.show;
    let at = |code, field: &str, say| Fault::new(code, request.path_of(field), say);
    let round = request.get("pipe").is_none_or(|pipe| !pipe.is_object());
    let goes_on = |code, out: &WayOut| {
        let say = match (out.hole, round) {
            (Some(bit), true) => Say::new(key("flashing-block-goes-on")).with("bit", show.text(bit)),
            (None, true) => Say::new(key("flashing-block-goes-on-angle")),
            (Some(high), false) => Say::new(key("flashing-block-goes-on-opening")).with("height", show.text(high)),
            (None, false) => Say::new(key("flashing-block-goes-on-opening-angle")),
        };
        at(code, "angle", say.with("angle", out.angle_text()))
    };
    match error {
        BlockError::HoleTooWide { width } => {
            at(FaultCode::Range, "width", Say::new(key("flashing-block-hole-wide")).with("hole", show.text(*width)))
        }
        BlockError::HoleTooHigh { height } => {
            at(FaultCode::Range, "height", Say::new(key("flashing-block-hole-high")).with("hole", show.text(*height)))
        }
        BlockError::CutLeaves { face, back } => {
            let say = Say::new(key("flashing-block-cut-leaves"));
            at(FaultCode::Range, "center", say.with("face", show.text(*face)).with("back", show.text(*back)))
        }
        BlockError::NoBit { least } => {
            at(FaultCode::Infeasible, "bits", Say::new(key("flashing-block-no-bit")).with("bit", show.text(*least)))
        }
        BlockError::RingClosed(out) => goes_on(FaultCode::RingClosed, out),
        BlockError::MouthNarrow { way_out, .. } => goes_on(FaultCode::MouthNarrow, way_out),
        // The rest of what can be wrong was found field by field.
        BlockError::TooBig | BlockError::NotPositive | BlockError::Angle => {
            request.fault(FaultCode::TooBig, Say::new(key("figure-too-far")))
        }
    }
}
