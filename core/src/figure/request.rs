use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Pow, Signed, ToPrimitive};

use super::shape::{COMMON, FigureField, FigureShape};
use super::{Fault, FaultCode, Json, Say};
use crate::measure::{Division, Exact, Length, ParseErrorKind, Reader, Show, Unit};
use crate::phrases::{Language, key, misread};

/// The most of anything in a request.
pub(super) const MOST: usize = 10_000;
/// The longest text in a request, in characters.
pub(super) const LONGEST: usize = 200;

/// Tells the time since any fixed moment: the core itself has no clock. One that stands still never stops anything.
pub type Clock = fn() -> std::time::Duration;

/// What every request carries: how lengths are read and shown.
#[derive(Clone, Copy, Debug)]
pub(super) struct Common {
    pub(super) reader: Reader,
    pub(super) show: Show,
    pub(super) language: Language,
    pub(super) clock: Clock,
}

impl Common {
    /// A length in an answer.
    pub(super) fn shown(&self, length: Length) -> serde_json::Value {
        self.shown_as(length, self.show)
    }

    /// A length in an answer whose text is shown in a way of its own.
    pub(super) fn shown_as(&self, length: Length, show: Show) -> serde_json::Value {
        serde_json::json!({"nm": length.nm(), "text": show.text(length)})
    }
}

/// One value of a request with its path.
#[derive(Clone, Debug)]
pub(super) struct Node<'a> {
    json: &'a Json,
    path: String,
    pub(super) common: &'a Common,
}

/// A JSON number: exact, and as a float for trigonometry.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct JsonNumber {
    pub(super) exact: BigRational,
    pub(super) float: f64,
}

impl<'a> Node<'a> {
    /// The whole request.
    pub(super) fn root(json: &'a Json, common: &'a Common) -> Self {
        Self { json, path: String::new(), common }
    }

    /// The path of this value.
    pub(super) fn path(&self) -> &str {
        &self.path
    }

    /// The path of a field of this value.
    pub(super) fn path_of(&self, name: &str) -> String {
        join(&self.path, name)
    }

    /// A fault at this value.
    pub(super) fn fault(&self, code: FaultCode, say: Say) -> Fault {
        Fault::new(code, self.path.clone(), say)
    }

    /// A value outside what `say` allows.
    pub(super) fn range(&self, say: Say) -> Fault {
        self.fault(FaultCode::Range, say)
    }

    /// This value and an earlier one, `other`, are the wrong way round.
    pub(super) fn order(&self, other: &str) -> Fault {
        self.fault(FaultCode::Order, Say::new("figure-order").with("other", other))
    }

    fn wrong_type(&self, expected: &'static str) -> Fault {
        self.fault(FaultCode::Type, Say::new(expected))
    }

    /// A field, if it is there.
    pub(super) fn get(&self, name: &str) -> Option<Node<'a>> {
        let json = self.json.get(name)?;
        Some(Node { json, path: self.path_of(name), common: self.common })
    }

    /// A field that must be there, of what must be an object.
    pub(super) fn field(&self, name: &str) -> Result<Node<'a>, Fault> {
        if !self.is_object() {
            return Err(self.wrong_type(key("figure-type-object")));
        }
        self.get(name).ok_or_else(|| missing(&self.path_of(name)))
    }

    /// A field that must be there and be an object.
    pub(super) fn object(&self, name: &str) -> Result<Node<'a>, Fault> {
        let node = self.field(name)?;
        if node.is_object() { Ok(node) } else { Err(node.wrong_type(key("figure-type-object"))) }
    }

    /// A field that is an object, if it is there.
    pub(super) fn object_if(&self, name: &str) -> Result<Option<Node<'a>>, Fault> {
        if self.get(name).is_some() { self.object(name).map(Some) } else { Ok(None) }
    }

    pub(super) fn is_object(&self) -> bool {
        matches!(self.json, Json::Object(_))
    }

    /// An object as JSON text, for a reader of its own.
    pub(super) fn document(&self) -> Result<String, Fault> {
        if self.is_object() { Ok(self.json.to_string()) } else { Err(self.wrong_type(key("figure-type-object"))) }
    }

    pub(super) fn is_list(&self) -> bool {
        matches!(self.json, Json::List(_))
    }

    /// The items of a list, at most 10,000.
    pub(super) fn items(&self) -> Result<Vec<Node<'a>>, Fault> {
        let Json::List(items) = self.json else { return Err(self.wrong_type(key("figure-type-list"))) };
        if items.len() > MOST {
            return Err(self.fault(FaultCode::TooBig, Say::new("figure-too-many").with("limit", MOST.to_string())));
        }
        let node = |(at, json)| Node { json, path: format!("{}[{at}]", self.path), common: self.common };
        Ok(items.iter().enumerate().map(node).collect())
    }

    /// The items of a list field, none where it is left out.
    pub(super) fn items_of(&self, name: &str) -> Result<Vec<Node<'a>>, Fault> {
        self.get(name).map_or_else(|| Ok(Vec::new()), |node| node.items())
    }

    /// A text of at most 200 characters.
    pub(super) fn text(&self) -> Result<&'a str, Fault> {
        let Json::Text(text) = self.json else { return Err(self.wrong_type(key("figure-type-text"))) };
        if text.chars().count() > LONGEST {
            return Err(self.fault(FaultCode::TooBig, Say::new("figure-too-long").with("limit", LONGEST.to_string())));
        }
        Ok(text)
    }

    /// True or false.
    pub(super) fn flag(&self) -> Result<bool, Fault> {
        match self.json {
            Json::Flag(flag) => Ok(*flag),
            _ => Err(self.wrong_type(key("figure-type-flag"))),
        }
    }

    /// One of a few texts.
    pub(super) fn choice<T: Copy>(&self, choices: &[(&str, T)]) -> Result<T, Fault> {
        let text = self.text()?;
        choices.iter().find_map(|(name, value)| (*name == text).then_some(*value)).ok_or_else(|| {
            let names: Vec<&str> = choices.iter().map(|(name, _)| *name).collect();
            self.fault(FaultCode::Choice, Say::new("figure-choice").with("choices", names.join(", ")))
        })
    }

    /// A length as it is written, exactly.
    pub(super) fn exact(&self) -> Result<Exact, Fault> {
        let (reader, text) = match self.json {
            Json::Text(_) => (self.common.reader, self.text()?),
            // JSON has one decimal point in every language, so that no number of its own may be meant in thousands.
            Json::Number(raw) => (Reader { language: Language::English, ..self.common.reader }, raw.as_str()),
            _ => return Err(self.wrong_type(key("figure-type-length"))),
        };
        reader.read(text).map(|written| written.exact).map_err(|error| {
            let code = match error.kind {
                ParseErrorKind::UnitMissing => FaultCode::UnitMissing,
                ParseErrorKind::TooBig => FaultCode::TooBig,
                _ => FaultCode::Length,
            };
            let place = (error.position + 1).to_string();
            self.fault(code, Say::new(misread(error.kind)).with("text", text).with("position", place))
        })
    }

    /// A length to the nearest nanometre.
    pub(super) fn length(&self) -> Result<Length, Fault> {
        let exact = self.exact()?;
        exact.to_length().ok_or_else(|| self.fault(FaultCode::TooBig, Say::new("figure-too-far")))
    }

    /// A length over zero.
    pub(super) fn positive(&self) -> Result<Length, Fault> {
        let length = self.length()?;
        if length.is_positive() { Ok(length) } else { Err(self.range(Say::new("figure-range-positive"))) }
    }

    /// A length of at least zero.
    pub(super) fn not_negative(&self) -> Result<Length, Fault> {
        let length = self.length()?;
        if length.is_negative() { Err(self.range(Say::new("figure-range-not-negative"))) } else { Ok(length) }
    }

    /// One length for both sides, or `[left, right]`, with the node of each.
    pub(super) fn length_pair(&self) -> Result<[(Length, Node<'a>); 2], Fault> {
        if !self.is_list() {
            let length = self.length()?;
            return Ok([(length, self.clone()), (length, self.clone())]);
        }
        match self.items()?.as_slice() {
            [left, right] => Ok([(left.length()?, left.clone()), (right.length()?, right.clone())]),
            _ => Err(self.wrong_type(key("figure-type-pair"))),
        }
    }

    /// The request's tape division, a sixteenth of an inch where it is left out. Read where the question lists it.
    pub(super) fn division(&self) -> Result<Division, Fault> {
        let Some(node) = self.get("division") else { return Ok(Division::default()) };
        node.positive()?;
        let exact = node.exact()?;
        Division::from_exact(&exact).ok_or_else(|| node.fault(FaultCode::TooBig, Say::new("figure-division")))
    }

    /// A number in any JSON form.
    pub(super) fn number(&self) -> Result<JsonNumber, Fault> {
        let Json::Number(raw) = self.json else { return Err(self.wrong_type(key("figure-type-number"))) };
        let too_big = || self.fault(FaultCode::TooBig, Say::new("figure-number-too-big"));
        let exact = decimal(raw).ok_or_else(too_big)?;
        let float: f64 = raw.parse().map_err(|_| too_big())?;
        // A negative zero is zero.
        Ok(JsonNumber { exact, float: float + 0.0 })
    }

    /// A whole number within bounds; `4.0` and `4e0` are whole.
    pub(super) fn whole(&self, least: i64, most: i64) -> Result<i64, Fault> {
        let number = self.number()?;
        if !number.exact.is_integer() {
            return Err(self.wrong_type(key("figure-type-whole")));
        }
        let whole = number.exact.to_integer().to_i64().filter(|whole| (least..=most).contains(whole));
        whole.ok_or_else(|| self.between(&least.to_string(), &most.to_string()))
    }

    /// A value that must lie between two others.
    pub(super) fn between(&self, least: &str, most: &str) -> Fault {
        self.range(Say::new("figure-range-between").with("least", least).with("most", most))
    }
}

/// A missing field.
pub(super) fn missing(path: &str) -> Fault {
    Fault::new(FaultCode::MissingField, path, Say::new("figure-missing"))
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
}

/// A JSON number as an exact fraction; `None` beyond a thousand digits or powers of ten.
pub(super) fn decimal(raw: &str) -> Option<BigRational> {
    const MOST_DIGITS: usize = 1_000;
    let (mantissa, exponent) = match raw.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, exponent.parse::<i32>().ok()?),
        None => (raw, 0),
    };
    let (whole, decimals) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    if raw.len() > MOST_DIGITS || exponent.unsigned_abs() as usize > MOST_DIGITS {
        return None;
    }
    let digits = BigInt::parse_bytes(format!("{whole}{decimals}").as_bytes(), 10)?;
    let power = exponent - i32::try_from(decimals.len()).ok()?;
    let scale = BigInt::from(10).pow(power.unsigned_abs());
    Some(if power < 0 { BigRational::new(digits, scale) } else { BigRational::from_integer(digits * scale) })
}

impl JsonNumber {
    pub(super) fn is_positive(&self) -> bool {
        self.exact.is_positive()
    }

    pub(super) fn is_negative(&self) -> bool {
        self.exact.is_negative()
    }
}

/// Finds fields that stand twice, then those the question does not have, then those it misses.
pub(super) fn check_fields(json: &Json, fields: &[FigureField]) -> Result<(), Fault> {
    twice(json, "")?;
    if !matches!(json, Json::Object(_)) {
        return Err(Fault::new(FaultCode::Type, "", Say::new("figure-not-object")));
    }
    let all: Vec<FigureField> =
        fields.iter().chain(COMMON.iter().filter(|common| !has(fields, common.name))).copied().collect();
    unknown(json, &all, "")?;
    lacking(json, &all, "")
}

/// Whether a list of fields has one of this name.
pub(super) fn has(fields: &[FigureField], name: &str) -> bool {
    fields.iter().any(|field| field.name == name)
}

fn twice(json: &Json, path: &str) -> Result<(), Fault> {
    match json {
        Json::Object(fields) => {
            let mut seen = std::collections::BTreeSet::new();
            for (name, value) in fields {
                let own = join(path, name);
                if !seen.insert(name) {
                    return Err(Fault::new(FaultCode::DuplicateField, own, Say::new("figure-twice")));
                }
                twice(value, &own)?;
            }
            Ok(())
        }
        Json::List(items) => items.iter().enumerate().try_for_each(|(at, item)| twice(item, &format!("{path}[{at}]"))),
        _ => Ok(()),
    }
}

/// What is asked of an object with its fields, at its path.
type Check = dyn Fn(&Json, &[FigureField], &str) -> Result<(), Fault>;

/// Walks a value along its shape and hands each object with its fields to `check`.
fn walk(json: &Json, shape: FigureShape, path: &str, check: &Check) -> Result<(), Fault> {
    match (json, shape) {
        (Json::Object(_), FigureShape::Object(fields)) => check(json, fields, path),
        (Json::Object(own), FigureShape::Either(shapes)) => {
            let objects = || {
                shapes
                    .iter()
                    .filter_map(|shape| if let FigureShape::Object(fields) = shape { Some(*fields) } else { None })
            };
            let common = |name: &str| objects().all(|fields| has(fields, name));
            let tells = |fields: &[FigureField]| own.iter().any(|(name, _)| has(fields, name) && !common(name));
            let best = objects().find(|fields| tells(fields)).or_else(|| objects().next());
            best.map_or(Ok(()), |fields| check(json, fields, path))
        }
        (Json::List(items), FigureShape::List(item)) => {
            let mut numbered = items.iter().take(MOST).enumerate();
            numbered.try_for_each(|(at, json)| walk(json, *item, &format!("{path}[{at}]"), check))
        }
        (Json::List(_), FigureShape::Either(shapes)) => {
            let list = shapes.iter().find(|shape| matches!(shape, FigureShape::List(_)));
            list.map_or(Ok(()), |shape| walk(json, *shape, path, check))
        }
        _ => Ok(()),
    }
}

fn unknown(json: &Json, fields: &[FigureField], path: &str) -> Result<(), Fault> {
    let Json::Object(own) = json else { return Ok(()) };
    let beside =
        |field: &&FigureField| field.not_beside.is_none_or(|name| !matches!(json.get(name), Some(Json::Object(_))));
    let fields: Vec<FigureField> = fields.iter().filter(beside).copied().collect();
    for (name, _) in own {
        if !has(&fields, name) {
            let names: Vec<&str> = fields.iter().map(|field| field.name).collect();
            let say = Say::new("figure-unknown").with("fields", names.join(", "));
            // The path is shown back, so an absurdly long name is cut.
            return Err(Fault::new(
                FaultCode::UnknownField,
                join(path, &name.chars().take(LONGEST).collect::<String>()),
                say,
            ));
        }
    }
    for field in fields {
        if let Some(value) = json.get(field.name) {
            walk(value, field.shape, &join(path, field.name), &unknown)?;
        }
    }
    Ok(())
}

fn lacking(json: &Json, fields: &[FigureField], path: &str) -> Result<(), Fault> {
    for field in fields {
        match json.get(field.name) {
            Some(value) => walk(value, field.shape, &join(path, field.name), &lacking)?,
            None if field.required => return Err(missing(&join(path, field.name))),
            None => {}
        }
    }
    Ok(())
}

/// Reads unit, way of showing and language. A way of showing that is among the question's own `fields` is refused in its
/// turn there, not here.
pub(super) fn common(json: &Json, fields: &[FigureField], clock: Clock) -> Result<Common, Fault> {
    let plain = Common { reader: Reader::default(), show: Show::Inches(16), language: Language::English, clock };
    let root = Node::root(json, &plain);
    let units = Unit::ALL.map(|unit| (unit.code(), unit));
    let unit = root.get("unit").map(|node| node.choice(&units)).transpose()?;
    let shown = show(&root);
    let show = if has(fields, "show") { shown.unwrap_or(None) } else { shown? }.unwrap_or(plain.show);
    let languages = [("en", Language::English), ("es", Language::Spanish)];
    let language = root.get("language").map(|node| node.choice(&languages)).transpose()?.unwrap_or(plain.language);
    Ok(Common { reader: Reader { unit, language }, show, language, clock })
}

/// The way of showing that a request asks for.
pub(super) fn show(root: &Node<'_>) -> Result<Option<Show>, Fault> {
    let shows: Vec<(&str, Show)> = Show::CODES.into_iter().zip(Show::ALL).collect();
    root.get("show").map(|node| node.choice(&shows)).transpose()
}

#[cfg(test)]
mod tests {
    use num_traits::Zero;

    use super::*;

    #[test]
    fn numbers_in_any_json_form_are_exact() {
        let fraction = |n: i64, d: i64| BigRational::new(BigInt::from(n), BigInt::from(d));
        for (raw, want) in [
            ("0.1", fraction(1, 10)),
            ("1e1", fraction(10, 1)),
            ("-2.50E-1", fraction(-1, 4)),
            ("-0", BigRational::zero()),
        ] {
            assert_eq!(decimal(raw), Some(want), "{raw}");
        }
        assert_eq!(decimal("1e999999999999"), None);
        assert_eq!(decimal("1e99999"), None);
    }
}
