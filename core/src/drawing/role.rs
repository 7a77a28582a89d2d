/// What a stroke or a fill stands for; the shell or the writer of SVG gives it the colour of its theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// What everything lies on.
    Ground,
    /// The face of a board.
    Board,
    /// Outlines and texts.
    Ink,
    /// Marks to transfer, and the next action.
    Chalk,
    /// What is cut away.
    Cut,
    /// What needs attention.
    Warning,
    /// What is done or met.
    Done,
    /// Read on the tape.
    Taped,
    /// Planned or computed.
    Planned,
    /// Given by a rule.
    Ruled,
}

impl Role {
    /// All roles; the place of each is its byte.
    pub const ALL: [Self; 10] = [
        Self::Ground,
        Self::Board,
        Self::Ink,
        Self::Chalk,
        Self::Cut,
        Self::Warning,
        Self::Done,
        Self::Taped,
        Self::Planned,
        Self::Ruled,
    ];

    /// A stable name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ground => "ground",
            Self::Board => "board",
            Self::Ink => "ink",
            Self::Chalk => "chalk",
            Self::Cut => "cut",
            Self::Warning => "warning",
            Self::Done => "done",
            Self::Taped => "taped",
            Self::Planned => "planned",
            Self::Ruled => "ruled",
        }
    }
}

/// How a stroke is broken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dash {
    /// Unbroken.
    Solid,
    /// 8 dp drawn, 5 dp left out.
    Dashed,
    /// 2 dp drawn, 3 dp left out.
    Dotted,
}

impl Dash {
    /// All patterns; the place of each is its byte.
    pub const ALL: [Self; 3] = [Self::Solid, Self::Dashed, Self::Dotted];

    /// What is drawn and what is left out in turn, in dp; nothing for an unbroken line.
    pub const fn dashes(self) -> Option<(u8, u8)> {
        match self {
            Self::Solid => None,
            Self::Dashed => Some((8, 5)),
            Self::Dotted => Some((2, 3)),
        }
    }
}
