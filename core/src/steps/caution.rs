use crate::phrases::key;

/// Something that can hurt, shown at the step where it matters.
///
/// The program informs; local code and licensed trades decide (phrase `caution-who-decides`).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Caution {
    /// Dust of fibre cement.
    Silica,
    /// Saw blades.
    Saw,
    /// Ladders and scaffolds.
    Ladder,
    /// Falling from a height.
    Fall,
    /// Power lines near a ladder or a scaffold.
    PowerLine,
    /// Boxes, cables and lights.
    Electricity,
    /// Meters, which belong to the utility.
    Meter,
    /// A pipe that may carry gas.
    Gas,
    /// A water line under pressure.
    WaterLine,
    /// Refrigerant under pressure.
    Refrigerant,
    /// Lead paint on an old house.
    Lead,
    /// Asbestos in old cladding.
    Asbestos,
    /// Membrane or sealant on a wet surface.
    WetSurface,
    /// What the label of a membrane, primer or sealant says.
    Label,
    /// Nails driven by air or powder, and what lies behind the sheathing.
    Nailer,
    /// Long boards and heavy bundles.
    Lifting,
}

impl Caution {
    /// Every caution.
    pub const ALL: &'static [Self] = &[
        Self::Silica,
        Self::Saw,
        Self::Ladder,
        Self::Fall,
        Self::PowerLine,
        Self::Electricity,
        Self::Meter,
        Self::Gas,
        Self::WaterLine,
        Self::Refrigerant,
        Self::Lead,
        Self::Asbestos,
        Self::WetSurface,
        Self::Label,
        Self::Nailer,
        Self::Lifting,
    ];

    /// The stable text code, by which a caution is shown once a day and job.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Silica => "silica",
            Self::Saw => "saw",
            Self::Ladder => "ladder",
            Self::Fall => "fall",
            Self::PowerLine => "power-line",
            Self::Electricity => "electricity",
            Self::Meter => "meter",
            Self::Gas => "gas",
            Self::WaterLine => "water-line",
            Self::Refrigerant => "refrigerant",
            Self::Lead => "lead",
            Self::Asbestos => "asbestos",
            Self::WetSurface => "wet-surface",
            Self::Label => "label",
            Self::Nailer => "nailer",
            Self::Lifting => "lifting",
        }
    }

    /// The caution of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|caution| caution.code() == code)
    }

    /// The key of the phrase that says it.
    pub const fn phrase(self) -> &'static str {
        match self {
            Self::Silica => key("caution-silica"),
            Self::Saw => key("caution-saw"),
            Self::Ladder => key("caution-ladder"),
            Self::Fall => key("caution-fall"),
            Self::PowerLine => key("caution-power-line"),
            Self::Electricity => key("caution-electricity"),
            Self::Meter => key("caution-meter"),
            Self::Gas => key("caution-gas"),
            Self::WaterLine => key("caution-water-line"),
            Self::Refrigerant => key("caution-refrigerant"),
            Self::Lead => key("caution-lead"),
            Self::Asbestos => key("caution-asbestos"),
            Self::WetSurface => key("caution-wet-surface"),
            Self::Label => key("caution-label"),
            Self::Nailer => key("caution-nailer"),
            Self::Lifting => key("caution-lifting"),
        }
    }

    /// The published source, where there is one.
    pub const fn source(self) -> Option<&'static str> {
        match self {
            Self::Silica => Some("29 CFR 1926.1153 Table 1; NIOSH 2015-185"),
            Self::Ladder => Some("29 CFR 1926.1053; 29 CFR 1926.451"),
            Self::Fall => Some("29 CFR 1926.501(b); 29 CFR 1926.451(g)"),
            Self::PowerLine => Some("29 CFR 1926.451(f)(6)"),
            Self::Lead => Some("40 CFR 745"),
            _ => None,
        }
    }
}
