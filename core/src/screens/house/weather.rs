use crate::forms::context::Terms;
use crate::phrases::key;
use crate::views::{self, Place, WeatherKind};
use crate::work::{LetsWaterIn, Penetration, WeatherGap};

/// What is open to the weather, in words, and where to mend it.
pub(super) fn line(terms: &Terms<'_>, open: &LetsWaterIn<'_>) -> views::OpenToWeather {
    let wall = open.wall.name();
    let at = |one: &Penetration, kind, text: &str| {
        let what = terms.phrase(&format!("wall-kind-{}", one.kind.code()), &[]);
        let text = terms.phrase(text, &[("what", what.into()), ("wall", wall.into())]);
        views::OpenToWeather { kind, text, place: Place::Penetration { penetration: one.id().to_string() } }
    };
    match open.gap {
        WeatherGap::PatchNotLapped(one) => at(one, WeatherKind::PatchNotLapped, key("house-patch-not-lapped")),
        WeatherGap::EdgeNotPrimed(one) => at(one, WeatherKind::EdgeNotPrimed, key("house-edge-not-primed")),
        WeatherGap::BeadMissing(one) => at(one, WeatherKind::BeadMissing, key("house-bead-missing")),
        WeatherGap::BoardsMissing(one) => at(one, WeatherKind::BoardsMissing, key("house-boards-missing")),
        WeatherGap::BoardsNotPrimed(lowest, count) => {
            let args = [("wall", wall.into()), ("count", count.into()), ("course", lowest.course.into())];
            views::OpenToWeather {
                kind: WeatherKind::EdgeNotPrimed,
                text: terms.phrase("house-boards-not-primed", &args),
                place: Place::Board { board: lowest.id().to_string() },
            }
        }
    }
}
