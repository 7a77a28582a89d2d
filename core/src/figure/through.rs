use serde_json::{Map, Value, json};

use super::{Common, Fault, Field, Node, Shape};
use crate::wall;

/// The size of something round.
pub(super) const ROUND: Field = Field::new("diameter", Shape::Length);
/// The sizes of a rectangle.
pub(super) const WIDTH: Field = Field::new("width", Shape::Length);
pub(super) const HEIGHT: Field = Field::new("height", Shape::Length);

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
