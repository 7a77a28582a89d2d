/// The kind of value that a field takes or gives.
#[derive(Clone, Copy, Debug)]
pub(super) enum Shape {
    /// A length: text with a unit, or text or number in the request's unit.
    Length,
    /// One length for both sides, or `[left, right]`.
    LengthPair,
    /// A tape division: a length over zero.
    Division,
    /// Any text.
    Text,
    /// A number.
    Number,
    /// A whole number.
    Whole,
    /// True or false.
    Flag,
    /// One of these texts.
    Choice(&'static [&'static str]),
    /// A list of such values.
    List(&'static Shape),
    /// An object with these fields.
    Object(&'static [Field]),
    /// Any one of these; an object is taken for the first of which it has a field that not all of them have.
    Either(&'static [Shape]),
    /// A job document.
    Document,
    /// A length in an answer: `{"nm", "text"}`.
    Shown,
    /// `[left, right]` in an answer.
    ShownPair,
}

/// A field of a request or an answer.
#[derive(Clone, Copy, Debug)]
pub(super) struct Field {
    pub(super) name: &'static str,
    pub(super) shape: Shape,
    pub(super) required: bool,
    /// Another field beside which, where it is an object, this one is unknown.
    pub(super) not_beside: Option<&'static str>,
}

impl Field {
    /// A field that must be there.
    pub(super) const fn new(name: &'static str, shape: Shape) -> Self {
        Self { name, shape, required: true, not_beside: None }
    }

    /// A field that may be left out.
    pub(super) const fn optional(name: &'static str, shape: Shape) -> Self {
        Self { name, shape, required: false, not_beside: None }
    }

    /// A field that is unknown where another one, `object`, is an object.
    pub(super) const fn not_beside(self, object: &'static str) -> Self {
        Self { not_beside: Some(object), ..self }
    }
}

/// What every request may carry besides its own fields.
pub(super) const COMMON: &[Field] = &[
    Field::optional("unit", Shape::Choice(&["in", "ft", "mm", "cm", "m"])),
    Field::optional("show", Shape::Choice(&crate::measure::Show::CODES)),
    Field::optional("language", Shape::Choice(&["en", "es"])),
    Field::optional("division", Shape::Division),
];
