use serde_json::{Map, Value, json};

use super::shape::COMMON;
use super::{FigureField, FigureQuestion, FigureShape, request};

/// The JSON Schema (draft 2020-12) of a question's request.
pub fn request_schema(question: &FigureQuestion) -> Value {
    let common = COMMON.iter().filter(|field| !request::has(question.request, field.name));
    let fields: Vec<FigureField> = question.request.iter().chain(common).copied().collect();
    titled(&format!("Request of `lapwright figure {}`", question.name), object(&fields))
}

/// The JSON Schema (draft 2020-12) of a question's answer.
pub fn answer_schema(question: &FigureQuestion) -> Value {
    const WARNING: &[FigureField] = &[
        FigureField::new("code", FigureShape::Text),
        FigureField::new("at", FigureShape::Text),
        FigureField::new("text", FigureShape::Text),
    ];
    const WARNINGS: FigureField = FigureField::new("warnings", FigureShape::List(&FigureShape::Object(WARNING)));
    let fields: Vec<FigureField> = question.reply.iter().copied().chain([WARNINGS]).collect();
    titled(&format!("Answer of `lapwright figure {}`", question.name), object(&fields))
}

fn titled(title: &str, schema: Value) -> Value {
    let mut whole = Map::new();
    whole.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
    whole.insert("title".to_owned(), json!(title));
    if let Value::Object(fields) = schema {
        whole.extend(fields);
    }
    Value::Object(whole)
}

fn object(fields: &[FigureField]) -> Value {
    let properties: Map<String, Value> =
        fields.iter().map(|field| (field.name.to_owned(), shape(field.shape))).collect();
    let required: Vec<&str> = fields.iter().filter(|field| field.required).map(|field| field.name).collect();
    json!({"type": "object", "properties": properties, "required": required, "additionalProperties": false})
}

fn shape(of: FigureShape) -> Value {
    match of {
        FigureShape::Length | FigureShape::Division => {
            json!({"type": ["string", "number"], "maxLength": request::LONGEST})
        }
        FigureShape::LengthPair => json!({"anyOf": [
            shape(FigureShape::Length),
            {"type": "array", "items": shape(FigureShape::Length), "minItems": 2, "maxItems": 2},
        ]}),
        FigureShape::Document => json!({"type": "object", "description": "A job document: see job-document.json."}),
        FigureShape::Text => json!({"type": "string", "maxLength": request::LONGEST}),
        FigureShape::Number => json!({"type": "number"}),
        FigureShape::Whole => json!({"type": "integer"}),
        FigureShape::Flag => json!({"type": "boolean"}),
        FigureShape::Choice(choices) => json!({"enum": choices}),
        FigureShape::List(item) => json!({"type": "array", "items": shape(*item), "maxItems": request::MOST}),
        FigureShape::Object(fields) => object(fields),
        FigureShape::Either(shapes) => json!({"anyOf": shapes.iter().copied().map(shape).collect::<Vec<_>>()}),
        FigureShape::Shown => json!({
            "type": "object",
            "properties": {"nm": {"type": "integer"}, "text": {"type": "string"}},
            "required": ["nm", "text"],
            "additionalProperties": false,
        }),
        FigureShape::ShownPair => {
            json!({"type": "array", "items": shape(FigureShape::Shown), "minItems": 2, "maxItems": 2})
        }
    }
}
