use std::fmt;

/// What a thing of the book is. A code is never given a second meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A house to be clad.
    Job,
    /// A stock length of boards that a job has.
    Stock,
    /// A board left over from before that is at hand for a job.
    Offcut,
    /// A size of mounting block that a job has.
    BlockSize,
    /// A rule of a job that was changed.
    Rule,
    /// The story pole of a job.
    Pole,
    /// A height that the pole's lines should meet or stay clear of.
    Mark,
    /// A wall of a job.
    Wall,
    /// A step of a wall's base line.
    BaseStep,
    /// A stud whose centre was measured.
    Stud,
    /// A window or a door.
    Opening,
    /// What the siding must keep clear of.
    Abutment,
    /// What goes through a wall.
    Penetration,
    /// The bottom edge of a course as it hangs on a wall: what the tape read, and the lines planned from there.
    AsBuilt,
    /// A board: of a wall's plan, or loose.
    Board,
    /// A block as it was measured on a board.
    Notch,
    /// What a board was cut to: one a cut.
    Cut,
    /// What a board was cut round, of a cut.
    CutNotch,
    /// A gap that was measured after fitting: what a saw and a pair of hands did.
    Gap,
}

impl Kind {
    const CODES: [(Self, &'static str); 19] = [
        (Self::Job, "job"),
        (Self::Stock, "stock"),
        (Self::Offcut, "offcut"),
        (Self::BlockSize, "block-size"),
        (Self::Rule, "rule"),
        (Self::Pole, "pole"),
        (Self::Mark, "mark"),
        (Self::Wall, "wall"),
        (Self::BaseStep, "base-step"),
        (Self::Stud, "stud"),
        (Self::Opening, "opening"),
        (Self::Abutment, "abutment"),
        (Self::Penetration, "penetration"),
        (Self::AsBuilt, "as-built"),
        (Self::Board, "board"),
        (Self::Notch, "notch"),
        (Self::Cut, "cut"),
        (Self::CutNotch, "cut-notch"),
        (Self::Gap, "fitted"),
    ];

    /// Every kind.
    pub fn all() -> impl Iterator<Item = Self> {
        Self::CODES.into_iter().map(|(kind, _)| kind)
    }

    /// The code that stands in every book.
    pub fn code(self) -> &'static str {
        Self::CODES.iter().find_map(|(kind, code)| (*kind == self).then_some(*code)).unwrap_or_default()
    }

    /// The kind of a code; none for one that a newer program wrote.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::CODES.iter().find_map(|(kind, own)| (*own == code).then_some(*kind))
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}
