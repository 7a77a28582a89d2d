use serde_json::{Map, Value, json};

use super::shape::COMMON;
use super::{Field, Question, Shape, request};

/// The JSON Schema (draft 2020-12) of a question's request.
pub fn request_schema(question: &Question) -> Value {
    let common = COMMON.iter().filter(|field| !request::has(question.request, field.name));
    let fields: Vec<Field> = question.request.iter().chain(common).copied().collect();
    titled(&format!("Request of `lapwright figure {}`", question.name), object(&fields))
}

/// The JSON Schema (draft 2020-12) of a question's answer.
pub fn answer_schema(question: &Question) -> Value {
    const WARNING: &[Field] =
        &[Field::new("code", Shape::Text), Field::new("at", Shape::Text), Field::new("text", Shape::Text)];
    const WARNINGS: Field = Field::new("warnings", Shape::List(&Shape::Object(WARNING)));
    let fields: Vec<Field> = question.reply.iter().copied().chain([WARNINGS]).collect();
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

fn object(fields: &[Field]) -> Value {
    let properties: Map<String, Value> =
        fields.iter().map(|field| (field.name.to_owned(), shape(field.shape))).collect();
    let required: Vec<&str> = fields.iter().filter(|field| field.required).map(|field| field.name).collect();
    json!({"type": "object", "properties": properties, "required": required, "additionalProperties": false})
}

fn shape(of: Shape) -> Value {
    match of {
        Shape::Length | Shape::Division => json!({"type": ["string", "number"], "maxLength": request::LONGEST}),
        Shape::LengthPair => json!({"anyOf": [
            shape(Shape::Length),
            {"type": "array", "items": shape(Shape::Length), "minItems": 2, "maxItems": 2},
        ]}),
        Shape::Document => json!({"type": "object", "description": "A job document: see job-document.json."}),
        Shape::Text => json!({"type": "string", "maxLength": request::LONGEST}),
        Shape::Number => json!({"type": "number"}),
        Shape::Whole => json!({"type": "integer"}),
        Shape::Flag => json!({"type": "boolean"}),
        Shape::Choice(choices) => json!({"enum": choices}),
        Shape::List(item) => json!({"type": "array", "items": shape(*item), "maxItems": request::MOST}),
        Shape::Object(fields) => object(fields),
        Shape::Either(shapes) => json!({"anyOf": shapes.iter().copied().map(shape).collect::<Vec<_>>()}),
        Shape::Shown => json!({
            "type": "object",
            "properties": {"nm": {"type": "integer"}, "text": {"type": "string"}},
            "required": ["nm", "text"],
            "additionalProperties": false,
        }),
        Shape::ShownPair => json!({"type": "array", "items": shape(Shape::Shown), "minItems": 2, "maxItems": 2}),
    }
}
