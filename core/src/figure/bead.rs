use num_traits::ToPrimitive;

use super::shape::{FigureField, FigureShape};
use super::{Fault, FaultCode, FigureQuestion, Node, Reply, Say};
use crate::flashing::{BeadError, BeadRequest, BeadShape, BeadWarning, Cartridge};
use crate::phrases::key;
use crate::rules::{RuleSet, keys};

const SHAPES: &[&str] = &["square", "fillet"];

/// How much sealant a joint takes.
pub(super) const QUESTION: FigureQuestion = FigureQuestion {
    name: "bead",
    request: &[
        FigureField::new("width", FigureShape::Length),
        FigureField::new("depth", FigureShape::Length),
        FigureField::new("length", FigureShape::Length),
        FigureField::new("shape", FigureShape::Choice(SHAPES)),
        FigureField::new("cartridge", FigureShape::Text),
        FigureField::optional("waste", FigureShape::Number),
    ],
    reply: &[
        FigureField::new("volume_ml", FigureShape::Number),
        FigureField::new("per_cartridge", FigureShape::Shown),
        FigureField::new("cartridges", FigureShape::Whole),
    ],
    example: r#"{"width": "1/8\"", "depth": "1/8\"", "length": "62'", "shape": "square", "cartridge": "10.1 fl oz",
 "waste": 0.15}"#,
    help: key("flashing-bead-help"),
    answer,
};

fn answer(request: &Node<'_>) -> Result<Reply, Fault> {
    let asked = read(request)?;
    let bead = asked.amounts().map_err(|error| fault(request, error))?;
    let mut reply = Reply::default();
    reply.set("volume_ml", bead.volume_ml.to_f64().unwrap_or_default());
    reply.set("per_cartridge", request.common.shown(bead.per_cartridge));
    reply.set("cartridges", bead.cartridges);
    for warning in &bead.warnings {
        match warning {
            BeadWarning::Narrow => reply.warn("joint-narrow", "width", Say::new(key("flashing-bead-narrow"))),
            BeadWarning::Deep => reply.warn("joint-deep", "depth", Say::new(key("flashing-bead-deep"))),
        }
    }
    Ok(reply)
}

fn read(request: &Node<'_>) -> Result<BeadRequest, Fault> {
    Ok(BeadRequest {
        width: request.field("width")?.positive()?,
        depth: request.field("depth")?.positive()?,
        length: request.field("length")?.positive()?,
        shape: request.field("shape")?.choice(&[("square", BeadShape::Square), ("fillet", BeadShape::Fillet)])?,
        cartridge: cartridge(&request.field("cartridge")?)?,
        waste: match request.get("waste") {
            None => num_rational::BigRational::from_integer(0.into()),
            Some(node) => {
                let share = node.number()?.exact;
                let whole = |count: i64| num_rational::BigRational::from_integer(count.into());
                if share < whole(0) || share > whole(1) {
                    return Err(node.between("0", "1"));
                }
                share
            }
        },
        width_least: RuleSet::standard().get_length(keys::SEALANT_WIDTH_LEAST).unwrap_or_default(),
    })
}

/// A number with `fl oz` or `mL`, with or without a space between.
fn cartridge(node: &Node<'_>) -> Result<Cartridge, Fault> {
    let text = node.text()?.trim();
    let wrong = |code| node.fault(code, Say::new(key("flashing-bead-cartridge")));
    let amount = |number: &str| node.common.reader.number(number).ok();
    let (number, ounces) = match (text.strip_suffix("fl oz"), text.strip_suffix("mL")) {
        (Some(number), _) => (number, true),
        (_, Some(number)) => (number, false),
        _ if amount(text).is_some() => return Err(wrong(FaultCode::UnitMissing)),
        _ => return Err(wrong(FaultCode::Choice)),
    };
    let amount = amount(number).ok_or_else(|| wrong(FaultCode::Choice))?;
    let cartridge = if ounces { Cartridge::fluid_ounces(amount) } else { Cartridge::millilitres(amount) };
    cartridge.ok_or_else(|| node.range(Say::new("figure-range-positive")))
}

fn fault(request: &Node<'_>, error: BeadError) -> Fault {
    let field = match error {
        BeadError::TooManyCartridges => "length",
        BeadError::ReachTooBig | BeadError::NotPositive | BeadError::Waste => "cartridge",
    };
    Fault::new(FaultCode::TooBig, request.path_of(field), Say::new(key("figure-number-too-big")))
}
