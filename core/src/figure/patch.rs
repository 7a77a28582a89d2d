use serde_json::json;

use super::shape::{Field, Shape};
use super::{Code, Fault, Node, Question, Reply, Say, through};
use crate::flashing::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest, Pipe, Rectangle};
use crate::measure::Length;
use crate::phrases::key;

/// A membrane patch round a pipe.
pub(super) const QUESTION: Question = Question {
    name: "patch",
    request: &[
        Field::new("board", Shape::Object(BOARD)),
        Field::new("bottoms", Shape::List(&Shape::Length)),
        Field::new("block", Shape::Object(BLOCK)),
        Field::new("pipe", Shape::Either(&[Shape::Object(PIPE), Shape::Object(RECTANGLE)])),
        Field::new("beyond", Shape::Object(BEYOND)),
        Field::optional("snug", Shape::Length),
        Field::optional("under_barrier", Shape::Flag),
        Field::optional("slit", Shape::Flag),
    ],
    reply: &[
        Field::new("course", Shape::Whole),
        Field::new("left", Shape::Shown),
        Field::new("right", Shape::Shown),
        Field::new("bottom", Shape::Shown),
        Field::new("top", Shape::Shown),
        Field::new("width", Shape::Shown),
        Field::new("height", Shape::Shown),
        Field::new("hole", Shape::Either(&[Shape::Object(HOLE), Shape::Object(OPENING)])),
        Field::optional("slit", Shape::Object(SLIT)),
        Field::optional("cover", Shape::Object(COVER)),
        Field::optional("over_board", Shape::Shown),
        Field::optional("hidden_by", Shape::Shown),
    ],
    example: r#"{"board": {"height": "7 1/4\"", "lap": "1 1/4\"", "nail_line": "3/4\""},
 "bottoms": ["0\"", "6\"", "12\"", "18\""],
 "block": {"left": "30\"", "right": "36\"", "bottom": "15\"", "top": "22 1/2\""},
 "pipe": {"diameter": "1\"", "x": "33\"", "y": "18 3/4\""}, "beyond": {"side": "4\"", "top": "4\""}, "snug": "1/8\""}"#,
    help: key("flashing-patch-help"),
    answer,
};

const BOARD: &[Field] =
    &[Field::new("height", Shape::Length), Field::new("lap", Shape::Length), Field::new("nail_line", Shape::Length)];
const BLOCK: &[Field] = &[
    Field::new("left", Shape::Length),
    Field::new("right", Shape::Length),
    Field::new("bottom", Shape::Length),
    Field::new("top", Shape::Length),
];
const PIPE: &[Field] = &[through::ROUND, Field::new("x", Shape::Length), Field::new("y", Shape::Length)];
const RECTANGLE: &[Field] =
    &[through::WIDTH, through::HEIGHT, Field::new("x", Shape::Length), Field::new("y", Shape::Length)];
const BEYOND: &[Field] = &[Field::new("side", Shape::Length), Field::new("top", Shape::Length)];
const HOLE: &[Field] = &[
    Field::new("diameter", Shape::Shown),
    Field::new("from_left", Shape::Shown),
    Field::new("from_bottom", Shape::Shown),
];
const OPENING: &[Field] = &[
    Field::new("width", Shape::Shown),
    Field::new("height", Shape::Shown),
    Field::new("from_left", Shape::Shown),
    Field::new("from_bottom", Shape::Shown),
];
const SLIT: &[Field] = &[
    Field::new("from_bottom", Shape::Shown),
    Field::new("length", Shape::Shown),
    Field::new("direction", Shape::Choice(&["up"])),
];
const COVER: &[Field] =
    &[Field::new("width", Shape::Shown), Field::new("height", Shape::Shown), Field::new("from_bottom", Shape::Shown)];

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
    let across = Rectangle { left, right, bottom: Length::ZERO, top: Length::from_nm(1) };
    across.check().map_err(fault)?;
    let block = Rectangle { bottom: side("bottom")?, top: side("top")?, ..across };
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
        PatchError::Lap => (Code::Range, "board.lap".to_owned(), key("flashing-patch-lap")),
        PatchError::NailLine => (Code::Range, "board.nail_line".to_owned(), key("flashing-patch-nail-line")),
        PatchError::NoCourse => (Code::Range, "bottoms".to_owned(), key("flashing-patch-no-course")),
        PatchError::CourseOrder { index } => {
            (Code::Order, format!("bottoms[{index}]"), key("flashing-patch-course-order"))
        }
        PatchError::CourseGap { index } => (Code::Range, format!("bottoms[{index}]"), key("flashing-patch-course-gap")),
        PatchError::BlockWidth => (Code::Order, "block.right".to_owned(), key("flashing-patch-block-width")),
        PatchError::BlockHeight => (Code::Order, "block.top".to_owned(), key("flashing-patch-block-height")),
        PatchError::PipeOutside | PatchError::HoleLow => (Code::Range, "pipe".to_owned(), key("flashing-patch-pipe")),
        PatchError::Snug => (Code::Range, "snug".to_owned(), key("flashing-patch-snug")),
        PatchError::Shows { .. } => (Code::PatchShows, "bottoms".to_owned(), key("flashing-patch-shows")),
        // The rest of what can be wrong was found field by field.
        PatchError::NotPositive => (Code::Range, String::new(), key("figure-range-positive")),
    };
    Fault::new(code, field, Say::new(phrase))
}
