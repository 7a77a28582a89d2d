use crate::measure::Length;

/// Builds an enum of plain data with one stable text code a variant, as it is kept in the book.
macro_rules! coded {
    ($(#[$meta:meta])* $name:ident { $($(#[$doc:meta])* $variant:ident = $code:literal,)+ }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$doc])* $variant,)+ }

        impl $name {
            /// Every variant, in the order in which they are offered.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// The codes of all variants, in the same order.
            pub const CODES: &'static [&'static str] = &[$($code,)+];

            /// The stable text code, as it is kept in the book and in exchange files.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code,)+ }
            }

            /// The variant of a code; `None` for a code that this program does not know.
            pub fn from_code(code: &str) -> Option<Self> {
                match code { $($code => Some(Self::$variant),)+ _ => None }
            }
        }
    };
}
pub(crate) use coded;

coded! {
    /// What goes through the wall.
    PenetrationKind {
        /// An outside tap.
        HoseBib = "hose-bib",
        /// A water, drain or gas pipe.
        Pipe = "pipe",
        /// A conduit with cables in it.
        Conduit = "conduit",
        /// A bare cable.
        Cable = "cable",
        /// An outlet or junction box.
        ElectricalBox = "electrical-box",
        /// A light on its box.
        Light = "light",
        /// The hood of a dryer or a fan.
        VentHood = "vent-hood",
        /// The base of an electricity meter.
        MeterBase = "meter-base",
        /// The refrigerant lines of an air conditioner.
        LineSet = "line-set",
    }
}

coded! {
    /// How the cladding ends at the penetration.
    Finish {
        /// A mounting block that the boards are notched round.
        Block = "block",
        /// A sealed collar alone; the boards are cut to the pipe.
        Collar = "collar",
        /// Trim on all four sides.
        Trim = "trim",
    }
}

coded! {
    /// How the block, collar or trim gets round the fixture.
    Mounting {
        /// The fixture comes off: one piece slips over.
        SlipOver = "slip-over",
        /// The fixture cannot come off: the piece is split.
        Split = "split",
    }
}

/// The outline of what goes through the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Shape {
    /// A pipe, a cable, a round box.
    Round {
        /// The outer diameter.
        diameter: Length,
    },
    /// A box, a hood, a meter base.
    Rectangle {
        /// From left to right.
        width: Length,
        /// From bottom to top.
        height: Length,
    },
}

impl Shape {
    /// The stable text code of the kind of shape: `round` or `rectangle`.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Round { .. } => "round",
            Self::Rectangle { .. } => "rectangle",
        }
    }

    /// From left to right.
    pub const fn width(self) -> Length {
        match self {
            Self::Round { diameter } => diameter,
            Self::Rectangle { width, .. } => width,
        }
    }

    /// From bottom to top.
    pub const fn height(self) -> Length {
        match self {
            Self::Round { diameter } => diameter,
            Self::Rectangle { height, .. } => height,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_come_back() {
        for kind in PenetrationKind::ALL {
            assert_eq!(PenetrationKind::from_code(kind.code()), Some(*kind));
        }
        for finish in Finish::ALL {
            assert_eq!(Finish::from_code(finish.code()), Some(*finish));
        }
        for mounting in Mounting::ALL {
            assert_eq!(Mounting::from_code(mounting.code()), Some(*mounting));
        }
        assert_eq!(PenetrationKind::from_code("Hose-Bib"), None);
        assert_eq!(PenetrationKind::ALL.len(), 9);
    }

    #[test]
    fn a_round_is_as_high_as_wide() {
        let shape = Shape::Round { diameter: Length::from_mm(22) };
        assert_eq!(shape.width(), shape.height());
        let shape = Shape::Rectangle { width: Length::from_mm(100), height: Length::from_mm(50) };
        assert_eq!((shape.width(), shape.height()), (Length::from_mm(100), Length::from_mm(50)));
    }
}
