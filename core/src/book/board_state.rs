/// How far a board is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum BoardState {
    /// It is in the plan, or on its way to the saw.
    #[default]
    Planned,
    /// It is cut.
    Cut,
    /// It is nailed up.
    Fixed,
}

impl BoardState {
    /// The code that stands in every book.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Planned => "planned",
            Self::Cut => "cut",
            Self::Fixed => "fixed",
        }
    }

    /// The state of a code; a board without one, or with a newer program's, is planned.
    pub fn of(code: Option<&str>) -> Self {
        match code {
            Some("cut") => Self::Cut,
            Some("fixed") => Self::Fixed,
            _ => Self::Planned,
        }
    }
}
