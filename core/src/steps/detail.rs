use super::{Canonical, Caution, Step};
use crate::flashing::{DetailAssembly, Layer};
use crate::phrases::key;
use crate::wall::{CornerKind, DetailPlace};

/// What the steps at a detail are made from, that every house has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DetailSteps {
    /// What is put there.
    pub assembly: DetailAssembly,
    /// Whether a head flashing goes on top of an opening's casing; elsewhere it says nothing.
    pub head_flashing: bool,
    /// Whether the house may carry lead paint or old cladding.
    pub old_house: bool,
    /// Whether the work is done from a ladder or a scaffold.
    pub above_reach: bool,
}

/// A code of a place: one wall carries several details, and their steps are signed on the wall.
macro_rules! at {
    ($place:expr, $code:literal) => {
        match $place {
            DetailPlace::Barrier => concat!("barrier/", $code),
            DetailPlace::Base => concat!("base/", $code),
            DetailPlace::CornerLeft => concat!("corner-left/", $code),
            DetailPlace::CornerRight => concat!("corner-right/", $code),
            DetailPlace::Window => concat!("window/", $code),
            DetailPlace::Door => concat!("door/", $code),
            DetailPlace::Eave => concat!("eave/", $code),
            DetailPlace::Rake => concat!("rake/", $code),
            DetailPlace::RoofSide => concat!("roof-side/", $code),
            DetailPlace::RoofHead => concat!("roof-head/", $code),
            DetailPlace::Ledger => concat!("ledger/", $code),
            DetailPlace::Ledge => concat!("ledge/", $code),
            DetailPlace::Furring => concat!("furring/", $code),
        }
    };
}

/// A step of a place; its text and its reason are named after its code, or are variants of their own.
macro_rules! step_at {
    ($place:expr, $code:literal) => {
        step_at!($place, $code, $code, $code)
    };
    ($place:expr, $code:literal, $text:literal, $reason:literal) => {
        Step::new(at!($place, $code), concat!("step-", $text), concat!("step-", $reason, "-why"))
    };
}

const SAW: [Caution; 2] = [Caution::Silica, Caution::Saw];

impl DetailSteps {
    /// The canonical form of the detail, to which the caller adds its sizes.
    pub fn canonical(&self) -> Canonical {
        let canonical = Canonical::new("detail")
            .text("place", self.assembly.place().code())
            .flag("head-flashing", self.head_flashing)
            .flag("old-house", self.old_house)
            .flag("above-reach", self.above_reach);
        match self.assembly.corner() {
            Some(corner) => canonical.text("corner", corner.code()),
            None => canonical,
        }
    }

    /// The layers that are put, from the wall outward.
    pub fn layers(&self) -> impl Iterator<Item = Layer> + '_ {
        let told = |layer: &Layer| *layer != Layer::HeadFlashing || self.head_flashing;
        self.assembly.layers().iter().copied().filter(told)
    }

    /// The steps in their order: each layer with what it takes to put it, and the last look.
    pub fn steps(&self) -> Vec<Step> {
        let place = self.assembly.place();
        let mut steps = Vec::new();
        if self.old_house {
            let step = step_at!(place, "old-house", "old-house", "old-house");
            steps.push(step.safe().cautions(&[Caution::Lead, Caution::Asbestos]));
        }
        steps.extend(self.layers().flat_map(|layer| self.put(layer)));
        steps.push(step_at!(place, "look-over", "look-over", "look-over").photo());
        if self.works_at_height()
            && let Some(first) = steps.first_mut()
        {
            first.cautions.extend([Caution::Ladder, Caution::Fall, Caution::PowerLine]);
        }
        steps
    }

    /// From a roof there is always a fall.
    fn works_at_height(&self) -> bool {
        self.above_reach || matches!(self.assembly.place(), DetailPlace::RoofSide | DetailPlace::RoofHead)
    }

    /// What it takes to put a layer; the barrier of the wall is there before, but at its own detail.
    fn put(&self, layer: Layer) -> Vec<Step> {
        let place = self.assembly.place();
        let mut before = Vec::new();
        let step = match layer {
            Layer::Barrier => return before,
            Layer::BarrierCourse => step_at!(place, "barrier-course").length(key("step-measured-barrier-lap")),
            Layer::BarrierTape => step_at!(place, "barrier-tape").cautions(&[Caution::WetSurface]),
            Layer::BaseFlashing => step_at!(place, "base-flashing"),
            Layer::Starter if place == DetailPlace::Ledge => {
                step_at!(place, "starter", "starter-ledge", "board-starter")
            }
            Layer::Starter => step_at!(place, "starter", "starter", "board-starter"),
            Layer::CornerWrap => step_at!(place, "corner-wrap"),
            Layer::CornerFlashing => step_at!(place, "corner-flashing").cautions(&[Caution::WetSurface]),
            Layer::CornerBoards => step_at!(place, "corner-boards").cautions(&SAW).cautions(&[Caution::Nailer]),
            Layer::CornerPost => step_at!(place, "corner-post", "corner-post", "corner-boards")
                .cautions(&SAW)
                .cautions(&[Caution::Nailer]),
            Layer::SillFlashing => step_at!(place, "sill-flashing").cautions(&[Caution::WetSurface]),
            Layer::JambFlashing => match place {
                DetailPlace::Door => step_at!(place, "jamb-flashing", "jamb-flashing-door", "jamb-flashing"),
                _ => step_at!(place, "jamb-flashing"),
            },
            Layer::HeadMembrane => step_at!(place, "head-membrane"),
            Layer::TrimBottom | Layer::TrimSides | Layer::TrimTop => {
                if self.layers().find(|own| is_trim(*own)) == Some(layer) {
                    let prime = step_at!(place, "trim-prime", "trim-prime", "trim-prime").hidden();
                    before.push(prime.cautions(&SAW).cautions(&[Caution::Label]));
                }
                self.trim(layer).cautions(&[Caution::Nailer])
            }
            Layer::HeadFlashing => step_at!(place, "head-flashing", "head-flashing", "head-flashing"),
            Layer::BarrierFlap => self.barrier_down(),
            Layer::Soffit => step_at!(place, "soffit").cautions(&[Caution::Nailer]),
            Layer::Frieze => step_at!(place, "frieze").cautions(&SAW).cautions(&[Caution::Nailer]),
            Layer::RakeTrim => step_at!(place, "rake-trim").cautions(&SAW).cautions(&[Caution::Nailer]),
            Layer::KickOut => step_at!(place, "kick-out"),
            Layer::StepFlashing => step_at!(place, "step-flashing"),
            Layer::Apron => step_at!(place, "apron"),
            Layer::LedgerFlashing => step_at!(place, "ledger-flashing"),
            Layer::LedgeFlashing => step_at!(place, "ledge-flashing"),
            Layer::VentStrip => step_at!(place, "vent-strip"),
            Layer::Furring => step_at!(place, "furring").cautions(&[Caution::Nailer]),
            Layer::Boards => self.boards().cautions(&SAW).cautions(&[Caution::Nailer, Caution::Lifting]),
            Layer::Sealant => self.sealant().cautions(&[Caution::WetSurface, Caution::Label]),
            // What is round a penetration alone.
            Layer::Patch | Layer::Cover | Layer::Block | Layer::BlockLower | Layer::BlockUpper | Layer::Collar => {
                return before;
            }
        };
        let step = step.puts(layer);
        before.push(if layer.is_hidden_later() { step.hidden().photo() } else { step });
        before
    }

    fn trim(&self, layer: Layer) -> Step {
        let place = self.assembly.place();
        match (layer, place) {
            (Layer::TrimBottom, _) => step_at!(place, "trim-bottom", "trim-bottom", "trim-bottom"),
            (Layer::TrimSides, DetailPlace::Door) => {
                step_at!(place, "trim-sides", "trim-sides-door", "trim-sides-door")
            }
            (Layer::TrimSides, _) => step_at!(place, "trim-sides", "trim-sides", "trim-sides"),
            _ => step_at!(place, "trim-top", "trim-top", "trim-top"),
        }
    }

    fn barrier_down(&self) -> Step {
        let place = self.assembly.place();
        match place {
            DetailPlace::Base => step_at!(place, "barrier-down", "barrier-over-base", "barrier-down"),
            DetailPlace::Window | DetailPlace::Door if self.head_flashing => {
                step_at!(place, "barrier-down", "barrier-over-head-flashing", "barrier-down")
            }
            DetailPlace::Window | DetailPlace::Door => {
                step_at!(place, "barrier-down", "barrier-over-head", "barrier-down")
            }
            _ => step_at!(place, "barrier-down", "barrier-over-leg", "barrier-down"),
        }
    }

    fn boards(&self) -> Step {
        let place = self.assembly.place();
        let gap = key("step-measured-gap");
        match (place, self.assembly.corner()) {
            (DetailPlace::Base, _) => step_at!(place, "boards", "boards-first", "boards-first"),
            (DetailPlace::Window | DetailPlace::Door, _) if self.head_flashing => {
                step_at!(place, "boards", "boards-casing-flashing", "boards-gap").length(gap)
            }
            (DetailPlace::Window | DetailPlace::Door, _) => {
                step_at!(place, "boards", "boards-casing", "boards-gap").length(gap)
            }
            (DetailPlace::Eave, _) => step_at!(place, "boards", "boards-eave", "boards-eave"),
            (DetailPlace::Rake, _) => step_at!(place, "boards", "boards-rake", "boards-gap").length(gap),
            (DetailPlace::RoofSide, _) => {
                step_at!(place, "boards", "boards-clear-slope", "boards-clear").length(key("step-measured-clear"))
            }
            (DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge, _) => {
                step_at!(place, "boards", "boards-clear", "boards-clear").length(key("step-measured-clear"))
            }
            (DetailPlace::Furring, _) => step_at!(place, "boards", "boards-furring", "boards-furring"),
            (_, Some(CornerKind::Mitred)) => step_at!(place, "boards", "boards-mitre", "boards-mitre"),
            _ => step_at!(place, "boards", "boards-corner", "boards-gap").length(gap),
        }
    }

    fn sealant(&self) -> Step {
        let place = self.assembly.place();
        let step = match place {
            DetailPlace::Window | DetailPlace::Door if self.head_flashing => {
                step_at!(place, "sealant", "sealant-casing-flashing", "sealant-joint")
            }
            DetailPlace::Window | DetailPlace::Door => step_at!(place, "sealant", "sealant-casing", "sealant-joint"),
            DetailPlace::Eave | DetailPlace::Rake => step_at!(place, "sealant", "sealant-top", "sealant-joint"),
            _ => step_at!(place, "sealant", "sealant-corner", "sealant-joint"),
        };
        step.photo().length(key("step-measured-bead"))
    }
}

const fn is_trim(layer: Layer) -> bool {
    matches!(layer, Layer::TrimBottom | Layer::TrimSides | Layer::TrimTop)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    fn all() -> Vec<DetailSteps> {
        let mut all = Vec::new();
        for place in DetailPlace::ALL {
            for corner in CornerKind::ALL {
                for flags in 0..8_u8 {
                    all.push(DetailSteps {
                        assembly: DetailAssembly::new(*place, *corner),
                        head_flashing: flags & 1 > 0,
                        old_house: flags & 2 > 0,
                        above_reach: flags & 4 > 0,
                    });
                }
            }
        }
        all
    }

    /// Each layer but the barrier is put by one step, in the layers' order.
    #[test]
    fn every_layer_is_put_once_and_in_its_order() {
        for detail in all() {
            let steps = detail.steps();
            let put: Vec<Layer> = steps.iter().filter_map(|step| step.puts).collect();
            let layers: Vec<Layer> = detail.layers().filter(|layer| *layer != Layer::Barrier).collect();
            assert_eq!(put, layers, "{detail:?}");
            for step in &steps {
                if let Some(layer) = step.puts {
                    assert_eq!(step.hidden_by_later, layer.is_hidden_later(), "{detail:?} {layer:?}");
                }
            }
        }
    }

    /// Several details are signed on one wall: no two of them share a code.
    #[test]
    fn no_two_places_share_a_code() {
        let mut codes = BTreeSet::new();
        for place in DetailPlace::ALL {
            let assembly = DetailAssembly::new(*place, CornerKind::Outside);
            let detail = DetailSteps { assembly, head_flashing: true, old_house: true, above_reach: true };
            for step in detail.steps() {
                assert!(codes.insert(step.code), "{} stands twice", step.code);
            }
        }
    }

    #[test]
    fn what_is_safe_comes_before_every_layer() {
        for detail in all() {
            let steps = detail.steps();
            let first = steps.iter().position(|step| step.puts.is_some()).unwrap();
            assert_eq!(steps.iter().filter(|step| step.keeps_safe).count(), usize::from(detail.old_house));
            assert!(steps.iter().skip(first).all(|step| !step.keeps_safe), "{detail:?}");
            let roof = matches!(detail.assembly.place(), DetailPlace::RoofSide | DetailPlace::RoofHead);
            let fall = steps.first().unwrap().cautions.contains(&Caution::Fall);
            assert_eq!(fall, detail.above_reach || roof, "{detail:?}");
        }
    }

    /// ASTM E2112 (its principle, in public text: sill, then jambs, then head, each over the one before); the barrier comes
    /// down over the head last of all.
    #[test]
    fn an_opening_is_flashed_from_the_sill_up() {
        let assembly = DetailAssembly::new(DetailPlace::Window, CornerKind::Outside);
        let detail = DetailSteps { assembly, head_flashing: true, old_house: false, above_reach: false };
        let put: Vec<Layer> = detail.steps().iter().filter_map(|step| step.puts).collect();
        let at = |layer| put.iter().position(|own| *own == layer).unwrap();
        let order = [Layer::SillFlashing, Layer::JambFlashing, Layer::HeadMembrane, Layer::HeadFlashing];
        assert!(order.windows(2).all(|pair| at(pair[0]) < at(pair[1])));
        assert!(at(Layer::HeadFlashing) < at(Layer::BarrierFlap) && at(Layer::BarrierFlap) < at(Layer::Boards));
    }
}
