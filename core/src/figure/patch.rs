use serde_json::json;

use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say, through};
use crate::flashing::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest, Pipe, WallRectangle};
use crate::measure::Length;
use crate::phrases::key;

/// A membrane patch round a pipe.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "patch",
    request: &[
        FigureField::new("board", FigureShape::Object(BOARD)),
        FigureField::new("bottoms", FigureShape::List(&FigureShape::Length)),
        FigureField::new("block", FigureShape::Object(BLOCK)),
        FigureField::new("pipe", FigureShape::Either(&[FigureShape::Object(PIPE), FigureShape::Object(RECTANGLE)])),
        FigureField::new("beyond", FigureShape::Object(BEYOND)),
        FigureField::optional("snug", FigureShape::Length),
        FigureField::optional("under_barrier", FigureShape::Flag),
        FigureField::optional("slit", FigureShape::Flag),
    ],
    reply: &[
        FigureField::new("course", FigureShape::Whole),
        FigureField::new("left", FigureShape::Shown),
        FigureField::new("right", FigureShape::Shown),
        FigureField::new("bottom", FigureShape::Shown),
        FigureField::new("top", FigureShape::Shown),
        FigureField::new("width", FigureShape::Shown),
        FigureField::new("height", FigureShape::Shown),
        FigureField::new("hole", FigureShape::Either(&[FigureShape::Object(HOLE), FigureShape::Object(OPENING)])),
        FigureField::optional("slit", FigureShape::Object(SLIT)),
        FigureField::optional("cover", FigureShape::Object(COVER)),
        FigureField::optional("over_board", FigureShape::Shown),
        FigureField::optional("hidden_by", FigureShape::Shown),
    ],
    example: r#"{"board": {"height": "7 1/4\"", "lap": "1 1/4\"", "nail_line": "3/4\""},
 "bottoms": ["0\"", "6\"", "12\"", "18\""],
 "block": {"left": "30\"", "right": "36\"", "bottom": "15\"", "top": "22 1/2\""},
 "pipe": {"diameter": "1\"", "x": "33\"", "y": "18 3/4\""}, "beyond": {"side": "4\"", "top": "4\""}, "snug": "1/8\""}"#,
    help: key("flashing-patch-help"),
    answer,
};

const BOARD: &[FigureField] = &[
    FigureField::new("height", FigureShape::Length),
    FigureField::new("lap", FigureShape::Length),
    FigureField::new("nail_line", FigureShape::Length),
];
const BLOCK: &[FigureField] = &[
    FigureField::new("left", FigureShape::Length),
    FigureField::new("right", FigureShape::Length),
    FigureField::new("bottom", FigureShape::Length),
    FigureField::new("top", FigureShape::Length),
];
const PIPE: &[FigureField] =
    &[through::ROUND, FigureField::new("x", FigureShape::Length), FigureField::new("y", FigureShape::Length)];
const RECTANGLE: &[FigureField] = &[
    through::WIDTH,
    through::HEIGHT,
    FigureField::new("x", FigureShape::Length),
    FigureField::new("y", FigureShape::Length),
];
const BEYOND: &[FigureField] =
    &[FigureField::new("side", FigureShape::Length), FigureField::new("top", FigureShape::Length)];
const HOLE: &[FigureField] = &[
    FigureField::new("diameter", FigureShape::Shown),
    FigureField::new("from_left", FigureShape::Shown),
    FigureField::new("from_bottom", FigureShape::Shown),
];
const OPENING: &[FigureField] = &[
    FigureField::new("width", FigureShape::Shown),
    FigureField::new("height", FigureShape::Shown),
    FigureField::new("from_left", FigureShape::Shown),
    FigureField::new("from_bottom", FigureShape::Shown),
];
const SLIT: &[FigureField] = &[
    FigureField::new("from_bottom", FigureShape::Shown),
    FigureField::new("length", FigureShape::Shown),
    FigureField::new("direction", FigureShape::Choice(&["up"])),
];
const COVER: &[FigureField] = &[
    FigureField::new("width", FigureShape::Shown),
    FigureField::new("height", FigureShape::Shown),
    FigureField::new("from_bottom", FigureShape::Shown),
];

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let (asked, under_barrier) = read(request)?;
    let patch = Patch::cut(&asked).map_err(fault)?;
    let shown = |length: Length| request.common.shown(length);
    let mut reply = Reply::default();
    let course = match patch.end {
        PatchEnd::Course { course, .. } => course,
        PatchEnd::Starter => 0,
    };
    reply.set("course", course);
    reply.set("left", shown(patch.outline.left));
    reply.set("right", shown(patch.outline.right));
    reply.set("bottom", shown(patch.outline.bottom));
    reply.set("top", shown(patch.outline.top));
    reply.set("width", shown(patch.outline.width()));
    reply.set("height", shown(patch.outline.height()));
    let mut hole = through::shown(patch.hole, request.common);
    hole.insert("from_left".to_owned(), shown(patch.hole_from_left));
    hole.insert("from_bottom".to_owned(), shown(patch.hole_from_bottom));
    reply.set("hole", hole);
    if let Some(slit) = patch.slit {
        let up = json!({"from_bottom": shown(slit.from_bottom), "length": shown(slit.length), "direction": "up"});
        reply.set("slit", up);
        let cover = json!({"width": shown(slit.cover_width), "height": shown(slit.cover_height),
            "from_bottom": shown(slit.cover_from_bottom)});
        reply.set("cover", cover);
    }
    match patch.end {
        PatchEnd::Course { over_board, hidden_by, .. } => {
            reply.set("over_board", shown(over_board));
            reply.set("hidden_by", shown(hidden_by));
        }
        PatchEnd::Starter => reply.warn("laps-starter", "bottom", Say::new(key("flashing-patch-laps-starter"))),
    }
    if !under_barrier {
        reply.warn("top-open", "top", Say::new(key("flashing-patch-top-open")));
    }
    Ok(reply)
}

fn read(request: &Node<'_>) -> Result<(PatchRequest, bool), Fault> {
    let node = request.object("board")?;
    let board = PatchBoard {
        height: node.field("height")?.positive()?,
        lap: node.field("lap")?.positive()?,
        nail_line: node.field("nail_line")?.positive()?,
    };
    board.check().map_err(fault)?;
    let items = request.field("bottoms")?.items()?;
    // What is wrong with a course is said before what is wrong with the next one.
    let mut bottoms: Vec<Length> = Vec::with_capacity(items.len());
    for (index, item) in items.iter().enumerate() {
        let bottom = item.length()?;
        if let Some(below) = bottoms.last() {
            board.check_course(index, *below, bottom).map_err(fault)?;
        }
        bottoms.push(bottom);
    }
    if bottoms.is_empty() {
        return Err(fault(PatchError::NoCourse));
    }
    // What is wrong with the courses is said before what is wrong with the block, even where it takes the block to see.
    if let Some(Ok(bottom)) = request.object("block")?.get("bottom").map(|node| node.length()) {
        board.ending(&bottoms, bottom).map_err(fault)?;
    }
    let node = request.object("block")?;
    let side = |name| node.field(name)?.length();
    let (left, right) = (side("left")?, side("right")?);
    let across = WallRectangle { left, right, bottom: Length::ZERO, top: Length::from_nm(1) };
    across.check().map_err(fault)?;
    let block = WallRectangle { bottom: side("bottom")?, top: side("top")?, ..across };
    block.check().map_err(fault)?;
    let node = request.object("pipe")?;
    let shape = through::read(&node)?;
    let pipe = Pipe { shape, x: node.field("x")?.length()?, y: node.field("y")?.length()? };
    block.check_pipe(pipe).map_err(fault)?;
    let node = request.object("beyond")?;
    let (beyond_side, beyond_top) = (node.field("side")?.not_negative()?, node.field("top")?.not_negative()?);
    let snug = request.get("snug").map(|node| node.not_negative()).transpose()?.unwrap_or(Length::ZERO);
    pipe.check_snug(snug).map_err(fault)?;
    let under_barrier = request.get("under_barrier").map(|node| node.flag()).transpose()?.unwrap_or(true);
    let slit = request.get("slit").map(|node| node.flag()).transpose()?.unwrap_or(true);
    let cover_beyond = Length::from_inches(2);
    let asked = PatchRequest { board, bottoms, block, pipe, beyond_side, beyond_top, snug, slit, cover_beyond };
    Ok((asked, under_barrier))
}

fn fault(error: PatchError) -> Fault {
    let (code, field, phrase) = match error {
        PatchError::Lap => (FaultCode::Range, "board.lap".to_owned(), key("flashing-patch-lap")),
        PatchError::NailLine => (FaultCode::Range, "board.nail_line".to_owned(), key("flashing-patch-nail-line")),
        PatchError::NoCourse => (FaultCode::Range, "bottoms".to_owned(), key("flashing-patch-no-course")),
        PatchError::CourseOrder { index } => {
            (FaultCode::Order, format!("bottoms[{index}]"), key("flashing-patch-course-order"))
        }
        PatchError::CourseGap { index } => {
            (FaultCode::Range, format!("bottoms[{index}]"), key("flashing-patch-course-gap"))
        }
        PatchError::BlockWidth => (FaultCode::Order, "block.right".to_owned(), key("flashing-patch-block-width")),
        PatchError::BlockHeight => (FaultCode::Order, "block.top".to_owned(), key("flashing-patch-block-height")),
        PatchError::PipeOutside | PatchError::HoleLow => {
            (FaultCode::Range, "pipe".to_owned(), key("flashing-patch-pipe"))
        }
        PatchError::Snug => (FaultCode::Range, "snug".to_owned(), key("flashing-patch-snug")),
        PatchError::Shows { .. } => (FaultCode::PatchShows, "bottoms".to_owned(), key("flashing-patch-shows")),
        // The rest of what can be wrong was found field by field.
        PatchError::NotPositive => (FaultCode::Range, String::new(), key("figure-range-positive")),
    };
    Fault::new(code, field, Say::new(phrase))
}
