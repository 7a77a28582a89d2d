use serde_json::{Map, Value, json};

use super::{Common, Fault, FigureField, FigureShape, Node};
use crate::wall;

/// The size of something round.
pub(super) const ROUND: FigureField = FigureField::new("diameter", FigureShape::Length);
/// The sizes of a rectangle.
pub(super) const WIDTH: FigureField = FigureField::new("width", FigureShape::Length);
pub(super) const HEIGHT: FigureField = FigureField::new("height", FigureShape::Length);

/// What goes through a wall: `{"diameter"}` or `{"width", "height"}`, all over zero.
pub(super) fn read(node: &Node<'_>) -> Result<wall::Shape, Fault> {
    let size = |name: &str| node.field(name)?.positive();
    if node.get("width").is_some() {
        return Ok(wall::Shape::Rectangle { width: size("width")?, height: size("height")? });
    }
    Ok(wall::Shape::Round { diameter: size("diameter")? })
}

/// The same fields in an answer.
pub(super) fn shown(shape: wall::Shape, common: &Common) -> Map<String, Value> {
    let fields = match shape {
        wall::Shape::Round { diameter } => json!({"diameter": common.shown(diameter)}),
        wall::Shape::Rectangle { width, height } => {
            json!({"width": common.shown(width), "height": common.shown(height)})
        }
    };
    fields.as_object().cloned().unwrap_or_default()
}
