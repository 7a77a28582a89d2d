/// The kind of value that a field takes or gives.
#[derive(Clone, Copy, Debug)]
pub(super) enum FigureShape {
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
    List(&'static FigureShape),
    /// An object with these fields.
    Object(&'static [FigureField]),
    /// Any one of these; an object is taken for the first of which it has a field that not all of them have.
    Either(&'static [FigureShape]),
    /// A job document.
    Document,
    /// A length in an answer: `{"nm", "text"}`.
    Shown,
    /// `[left, right]` in an answer.
    ShownPair,
}

/// A field of a request or an answer.
#[derive(Clone, Copy, Debug)]
pub(super) struct FigureField {
    pub(super) name: &'static str,
    pub(super) shape: FigureShape,
    pub(super) required: bool,
    /// Another field beside which, where it is an object, this one is unknown.
    pub(super) not_beside: Option<&'static str>,
}

impl FigureField {
    /// A field that must be there.
    pub(super) const fn new(name: &'static str, shape: FigureShape) -> Self {
        Self { name, shape, required: true, not_beside: None }
    }

    /// A field that may be left out.
    pub(super) const fn optional(name: &'static str, shape: FigureShape) -> Self {
        Self { name, shape, required: false, not_beside: None }
    }

    /// A field that is unknown where another one, `object`, is an object.
    pub(super) const fn not_beside(self, object: &'static str) -> Self {
        Self { not_beside: Some(object), ..self }
    }
}

/// What every request may carry besides its own fields.
pub(super) const COMMON: &[FigureField] = &[
    FigureField::optional("unit", FigureShape::Choice(&["in", "ft", "mm", "cm", "m"])),
    FigureField::optional("show", FigureShape::Choice(&crate::measure::Show::CODES)),
    FigureField::optional("language", FigureShape::Choice(&["en", "es"])),
    FigureField::optional("division", FigureShape::Division),
];
