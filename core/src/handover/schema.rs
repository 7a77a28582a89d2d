use serde_json::{Map, Value as Json, json};

use crate::book::{Allowed, Field, FieldSpec, Kind, fields_of, taped_code};

use super::shape::{FURTHER_PIECES, fields, is_length, is_named, keeps_lines, parts};

/// The JSON Schema (draft 2020-12) of a job document.
pub fn job_document_schema() -> String {
    let mut schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Job document",
        "description": "A house as `lapwright` passes it on. A length is a text with its unit, as it was typed."
    });
    let mut root = thing(Kind::Job);
    if let Some(properties) = root.get_mut("properties").and_then(Json::as_object_mut) {
        properties.insert("lapwright".to_owned(), json!({ "const": 1 }));
        properties.insert("rules-changed".to_owned(), rules());
        let report = "Who signed what: for reading; nobody signs for somebody else.";
        properties.insert("report".to_owned(), json!({ "type": "object", "description": report }));
        properties.insert("readings".to_owned(), readings());
    }
    root.insert("required".to_owned(), json!(["lapwright", "name"]));
    if let Some(schema) = schema.as_object_mut() {
        schema.extend(root);
        schema.insert("$defs".to_owned(), json!({ "length": length() }));
    }
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

fn thing(kind: Kind) -> Map<String, Json> {
    let mut properties = Map::new();
    for spec in fields(kind) {
        properties.insert(spec.field.code().to_owned(), field(spec));
        if is_length(spec) {
            properties.insert(taped_code(spec.field), field(spec));
        }
    }
    let name = || json!({ "type": "string", "minLength": 1 });
    match kind {
        kind if keeps_lines(kind) => {
            let lines = json!({ "type": "array", "items": { "type": "string", "maxLength": 200 } });
            properties.insert(Field::Lines.code().to_owned(), lines);
        }
        kind if is_named(kind) => {
            properties.insert("id".to_owned(), name());
        }
        Kind::Board => {
            properties.insert(Field::Offcut.code().to_owned(), name());
            properties.extend(board_shape());
        }
        Kind::Notch => {
            properties.insert(Field::Penetration.code().to_owned(), name());
        }
        _ => {}
    }
    for part in parts(kind) {
        let one = thing(part.kind);
        let one = if part.one { one.into() } else { json!({ "type": "array", "items": one }) };
        properties.insert(part.name.to_owned(), one);
    }
    let mut schema = Map::new();
    schema.insert("type".to_owned(), "object".into());
    schema.insert("properties".to_owned(), properties.into());
    if kind == Kind::Wall {
        schema.insert("required".to_owned(), json!(["name"]));
    }
    schema.insert("additionalProperties".to_owned(), false.into());
    schema
}

/// The true shape of a board, in whole nanometres: for reading, as it follows from the rest.
fn board_shape() -> Map<String, Json> {
    let whole = || json!({ "type": "integer" });
    let corner = || {
        let properties = json!({ "x": whole(), "y": whole() });
        json!({ "type": "object", "properties": properties, "required": ["x", "y"], "additionalProperties": false })
    };
    let corners = || json!({ "type": "array", "items": corner() });
    let edges = json!({ "type": "array", "items": { "enum": ["left", "right", "bottom", "top"] } });
    let cut = json!({
        "type": "object",
        "properties": {
            "name": { "type": "string" }, "edges": edges,
            "left": whole(), "right": whole(), "bottom": whole(), "top": whole()
        },
        "additionalProperties": false
    });
    let rip = json!({ "top": whole(), "bottom": whole() });
    let shape = json!({
        "at": corner(),
        "shape": corners(),
        "holes": { "type": "array", "items": corners() },
        "rip": { "type": "object", "properties": rip, "additionalProperties": false },
        "cuts": { "type": "array", "items": cut }
    });
    let Json::Object(mut own) = shape.clone() else { return Map::new() };
    let piece = json!({ "type": "object", "properties": shape, "additionalProperties": false });
    own.insert(FURTHER_PIECES.to_owned(), json!({ "type": "array", "items": piece }));
    own
}

fn field(spec: &FieldSpec) -> Json {
    match spec.allowed {
        Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength => json!({ "$ref": "#/$defs/length" }),
        Allowed::OneOf(choices) => json!({ "enum": choices.iter().map(|(code, _)| *code).collect::<Vec<_>>() }),
        Allowed::Whole(least, most) => json!({ "type": "integer", "minimum": least, "maximum": most }),
        Allowed::Text => json!({ "type": "string", "minLength": 1, "maxLength": 200 }),
        Allowed::AnyText => json!({ "type": "string", "maxLength": 200 }),
    }
}

fn length() -> Json {
    json!({
        "description": "As typed, with its unit; `planned` where it was computed.",
        "oneOf": [
            { "type": "string", "minLength": 1, "maxLength": 200 },
            {
                "type": "object",
                "properties": { "planned": { "type": "string", "minLength": 1, "maxLength": 200 } },
                "required": ["planned"],
                "additionalProperties": false
            }
        ]
    })
}

fn rules() -> Json {
    let text = json!({ "type": "string", "minLength": 1, "maxLength": 200 });
    json!({
        "type": "array",
        "items": {
            "type": "object",
            "properties": { "key": text.clone(), "value": text.clone(), "reason": text },
            "required": ["key", "value", "reason"],
            "additionalProperties": false
        }
    })
}

/// What the tape reads at a block, from the wall's left corner and from the course line below it.
fn readings() -> Json {
    let mut properties = Map::new();
    for name in ["wall", "penetration"] {
        properties.insert(name.to_owned(), json!({ "type": "string", "minLength": 1 }));
    }
    properties.insert("course".to_owned(), json!({ "type": "integer", "minimum": 1 }));
    let text = |spec: &FieldSpec| (spec.field.code().to_owned(), json!({ "type": "string", "minLength": 1 }));
    properties.extend(fields_of(Kind::Notch).iter().map(text));
    let required: Vec<&String> = properties.keys().collect();
    let required = json!(required);
    json!({
        "description": "For a demonstration: what the tape reads at each block. `left` and `right` are from the wall's left corner, the others from the course line where the board's bottom will lie.",
        "type": "array",
        "items": { "type": "object", "properties": properties, "required": required, "additionalProperties": false }
    })
}
