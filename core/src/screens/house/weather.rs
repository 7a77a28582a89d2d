use crate::phrases::key;
use crate::screens::context::Terms;
use crate::screens::signing::is_signed;
use crate::screens::trouble::Kept;
use crate::store::Store;
use crate::views::{OpenToWeather, Place, WeatherKind};

use super::state::{BoardStands, HoleState, House};

/// The steps that close a patch.
const PATCH: [&str; 4] = ["patch-lap", "patch-roll", "patch-top", "patch-cover"];

pub(super) fn open(store: &Store, terms: &Terms<'_>, house: &House) -> Kept<Vec<OpenToWeather>> {
    let mut open = Vec::new();
    for state in &house.walls {
        let wall = state.wall.name();
        for hole in &state.holes {
            let what = terms.phrase(&format!("wall-kind-{}", hole.penetration.kind.code()), &[]);
            let place = Place::Penetration { penetration: hole.penetration.id().to_string() };
            for kind in missing(hole, state.boarded(hole)) {
                let args = [("what", what.as_str().into()), ("wall", wall.into())];
                open.push(OpenToWeather { kind, text: terms.phrase(kind.phrase(), &args), place: place.clone() });
            }
        }
        let mut bare = Vec::new();
        for board in state.boards.iter().filter(|board| board.stands != BoardStands::Planned) {
            if !is_signed(store, board.id, "board-prime")? {
                bare.push(board);
            }
        }
        // One line a wall, at its lowest board: a house has too many boards for a line each.
        if let Some(lowest) = bare.first() {
            let args = [("wall", wall.into()), ("count", bare.len().into()), ("course", lowest.course.into())];
            let place = Place::Board { board: lowest.id.to_string() };
            let text = terms.phrase("house-boards-not-primed", &args);
            open.push(OpenToWeather { kind: WeatherKind::EdgeNotPrimed, text, place });
        }
    }
    Ok(open)
}

/// What is missing at a penetration; `boarded` where every board round it is fixed.
fn missing(hole: &HoleState, boarded: bool) -> Vec<WeatherKind> {
    let patched = PATCH.iter().any(|code| hole.is_signed(code)) || hole.is_signed("patch-hole");
    let mut kinds = Vec::new();
    if patched && PATCH.iter().any(|code| hole.is_open(code)) {
        kinds.push(WeatherKind::PatchNotLapped);
    }
    let cut = [("block-split", "block-prime"), ("boards-cut", "boards-prime"), ("trim-bottom", "trim-prime")];
    if cut.iter().any(|(cut, prime)| hole.is_signed(cut) && hole.is_open(prime)) {
        kinds.push(WeatherKind::EdgeNotPrimed);
    }
    if (boarded && hole.is_open("sealant")) || (hole.is_signed("block-upper") && hole.is_open("block-bead")) {
        kinds.push(WeatherKind::BeadMissing);
    }
    kinds
}

impl WeatherKind {
    const fn phrase(self) -> &'static str {
        match self {
            Self::PatchNotLapped => key("house-patch-not-lapped"),
            Self::EdgeNotPrimed => key("house-edge-not-primed"),
            Self::BeadMissing => key("house-bead-missing"),
        }
    }
}
