/// What became of an offcut, or of a piece that was cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum OffcutState {
    /// It lies ready.
    #[default]
    AtHand,
    /// Boards were cut from it.
    CutUp,
    /// It was put away.
    Dropped,
    /// It was cut for a board and spoiled.
    Spoiled,
}

impl OffcutState {
    /// The code that stands in every book; what is at hand has none.
    pub const fn code(self) -> Option<&'static str> {
        match self {
            Self::AtHand => None,
            Self::CutUp => Some("cut"),
            Self::Dropped => Some("dropped"),
            Self::Spoiled => Some("spoiled"),
        }
    }

    /// The state of a code. Whatever a newer program's code says, the offcut is not at hand.
    pub fn of(code: Option<&str>) -> Self {
        match code {
            None => Self::AtHand,
            Some("cut") => Self::CutUp,
            Some("spoiled") => Self::Spoiled,
            Some(_) => Self::Dropped,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_read_as_what_wrote_it_and_a_newer_one_as_not_at_hand() {
        for state in [OffcutState::AtHand, OffcutState::CutUp, OffcutState::Dropped, OffcutState::Spoiled] {
            assert_eq!(OffcutState::of(state.code()), state);
        }
        assert_ne!(OffcutState::of(Some("lent")), OffcutState::AtHand);
    }
}
