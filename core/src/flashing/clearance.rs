use crate::measure::Length;

/// By how much the bottom edge of the siding stands too near to the surface under it: ground, paving, a roof or a deck;
/// `None` where it keeps clear. All heights are on one scale.
///
/// The clearance itself is a rule: IRC, NBC 9.27.2.4, NCC 7.5.7 and the makers differ.
pub fn too_near(bottom_edge: Length, surface: Length, clearance: Length) -> Option<Length> {
    let short = clearance - (bottom_edge - surface);
    short.is_positive().then_some(short)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn just_clear_is_clear() {
        // NAVEDTRA 14044: 2 in above a roof.
        let n = Length::from_inches;
        assert_eq!(too_near(n(0), n(-2), n(2)), None);
        assert_eq!(too_near(n(0), n(-1), n(2)), Some(n(1)));
        assert_eq!(too_near(n(0), n(3), n(2)), Some(n(5)));
    }
}
