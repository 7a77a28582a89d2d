use serde_json::{Value, json};

use super::{
    Clock, Common, Fault, FaultCode, FigureQuestion, Json, Node, Say, amounts, assembly, bead, block, board, detail,
    gable, length, movement, notch, patch, pieces, pole, request, shed,
};
use crate::phrases::{Arg, Language, Phrases};

/// Every question.
pub const QUESTIONS: &[&FigureQuestion] = &[
    &length::QUESTION,
    &pole::QUESTION,
    &board::QUESTION,
    &gable::QUESTION,
    &notch::QUESTION,
    &pieces::QUESTION,
    &assembly::QUESTION,
    &detail::QUESTION,
    &block::QUESTION,
    &patch::QUESTION,
    &bead::QUESTION,
    &movement::QUESTION,
    &shed::QUESTION,
    &amounts::QUESTION,
];

/// What was answered: JSON, and whether it is an error.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answered {
    /// The answer, or `{"error": {"code", "field", "text"}}`.
    pub json: String,
    /// Whether `json` is an error.
    pub is_error: bool,
}

/// The question of a name.
pub fn question(name: &str) -> Option<&'static FigureQuestion> {
    QUESTIONS.iter().find(|question| question.name == name).copied()
}

/// Answers `request`, one JSON object, to the question of this name. It never panics and opens nothing.
pub fn answer(name: &str, request: &str) -> Answered {
    answer_bytes(name, request.as_bytes())
}

/// Answers a request with a clock at hand, for questions that may be told to stop after some seconds. Where the request
/// names no language, or cannot be read, its texts are in the one that is `spoken`; it is read alike whichever that is.
pub fn answer_timed(name: &str, request: &[u8], spoken: Language, clock: Clock) -> Answered {
    // U+FFFE is in no JSON text, so bytes that are not UTF-8 are refused as not JSON.
    let request = std::str::from_utf8(request).unwrap_or("\u{fffe}");
    let mut language = spoken;
    match answered(name, request, clock, &mut language) {
        Ok(value) => Answered { json: pretty(&value), is_error: false },
        Err(fault) => {
            let text = text(&fault.say, language);
            let error = json!({"error": {"code": fault.code.text(), "field": fault.field, "text": text}});
            Answered { json: pretty(&error), is_error: true }
        }
    }
}

/// Answers a request as it comes from outside: bytes that should be UTF-8.
pub fn answer_bytes(name: &str, request: &[u8]) -> Answered {
    answer_timed(name, request, Language::English, || std::time::Duration::ZERO)
}

fn answered(name: &str, request: &str, clock: Clock, language: &mut Language) -> Result<Value, Fault> {
    let question = question(name).ok_or_else(|| {
        let names: Vec<&str> = QUESTIONS.iter().map(|question| question.name).collect();
        Fault::new(FaultCode::Choice, "question", Say::new("figure-choice").with("choices", names.join(", ")))
    })?;
    let json = Json::read(request)?;
    // The language is looked at first, so that whatever else is wrong is said in it.
    if let Some(Json::Text(code)) = json.get("language") {
        *language = Language::from_code(code).unwrap_or(*language);
    }
    request::check_fields(&json, question.request)?;
    let common: Common = request::common(&json, question.request, clock)?;
    let root = Node::root(&json, &common);
    if !request::has(question.request, "division") {
        root.division()?;
    }
    let reply = (question.answer)(&root)?;
    Ok(reply.into_json(|say| text(say, *language)))
}

fn text(say: &Say, language: Language) -> String {
    let args: Vec<(&str, Arg<'_>)> = say.places.iter().map(|(name, text)| (*name, text.into())).collect();
    Phrases::for_language(language).phrase(say.key, &args)
}

fn pretty(value: &Value) -> String {
    // A tree of maps, lists, texts and finite numbers always serialises.
    serde_json::to_string_pretty(value).unwrap_or_default()
}
