use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::phrases::{Phrases, key};
use crate::screens::{ORDER_EFFORT, amounts_of_document};
use crate::views::{Context, Problem};

const ITEM: &[FigureField] = &[
    FigureField::new("name", FigureShape::Text),
    FigureField::new("amount", FigureShape::Number),
    FigureField::new("unit", FigureShape::Choice(&["each", "ft", "m", "sq ft", "m2", "fl oz", "mL", "gal", "L"])),
    FigureField::new("net", FigureShape::Number),
    FigureField::new("waste", FigureShape::Number),
    FigureField::new("packs", FigureShape::Whole),
    FigureField::new("pack", FigureShape::Text),
    FigureField::new("from", FigureShape::Text),
];

/// Everything to order for a house.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "amounts",
    request: &[FigureField::new("job", FigureShape::Document), FigureField::optional("effort", FigureShape::Whole)],
    reply: &[FigureField::new("items", FigureShape::List(&FigureShape::Object(ITEM)))],
    example: r#"{"job": {"lapwright": 1, "name": "Shed", "board-height": "8 1/4 in", "lap": "1 1/4 in", "nail-line": "3/4 in",
 "stock": [{"length": "12 ft"}],
 "pole": {"from": "0 in", "to": "56 in", "mode": "fixed", "reveal": "7 in", "reveal-max": "7 in", "reveal-min": "1 in",
  "lines": ["0 in", "7 in", "14 in", "21 in", "28 in", "35 in", "42 in", "49 in", "56 in"]},
 "walls": [{"name": "Front", "width": "12 ft", "left-height": "56 in", "right-height": "56 in", "base": "0 in",
  "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "3 1/2 in", "trim-right": "3 1/2 in"}]}}"#,
    help: key("amounts-help"),
    answer,
};

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let common = request.common;
    let division = request.division()?;
    let job = request.object("job")?;
    let effort = match request.get("effort") {
        Some(node) => u64::try_from(node.whole(0, 1_000_000)?).unwrap_or_default(),
        None => ORDER_EFFORT,
    };
    let context = Context {
        now_ms: 0,
        utc_offset_minutes: 0,
        // Changed rules of a document are in somebody's name; here nothing is kept.
        signer: "figure".to_owned(),
        language: common.language.code().to_owned(),
        show: common.show.code().to_owned(),
        division: crate::measure::Show::Inches(64).text(division.length()),
        entropy: Vec::new(),
    };
    let items = amounts_of_document(&context, &job.document()?, effort).map_err(|problem| fault(request, &problem))?;
    let phrases = Phrases::for_language(common.language);
    let mut reply = Reply::default();
    reply.set("items", items.iter().map(|item| item.json(phrases, common.show)).collect::<Vec<_>>());
    Ok(reply)
}

/// What is wrong with the document, with its path in the request.
fn fault(request: &Node<'_>, problem: &Problem) -> Fault {
    let code = match problem.code.as_str() {
        "missing" | "first" => FaultCode::MissingField,
        "length" => FaultCode::Length,
        "order" => FaultCode::Order,
        "choice" => FaultCode::Choice,
        "too-big" => FaultCode::TooBig,
        "unknown" => FaultCode::UnknownField,
        "infeasible" => FaultCode::Infeasible,
        _ => FaultCode::Range,
    };
    let path = request.path_of("job");
    let path = if problem.field.is_empty() { path } else { format!("{path}.{}", problem.field) };
    Fault::new(code, path, Say::new(key("figure-document")).with("why", problem.text.clone()))
}
