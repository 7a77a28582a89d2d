use super::step::step;
use super::{Canonical, Caution, Step};
use crate::flashing::{Assembly, Layer};
use crate::phrases::key;
use crate::wall::{Finish, Mounting, PenetrationKind, Shape};

const SAW: [Caution; 2] = [Caution::Silica, Caution::Saw];

/// What the steps at a penetration are made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PenetrationDetail {
    /// What goes through the wall.
    pub kind: PenetrationKind,
    /// Its outline.
    pub shape: Shape,
    /// How the cladding ends at it.
    pub finish: Finish,
    /// Whether the fixture comes off.
    pub mounting: Mounting,
    /// Whether a head flashing goes on top of the block or the trim; a collar has none.
    pub head_flashing: bool,
    /// Whether the joint is painted over.
    pub painted: bool,
    /// Whether the patch starts at the first course, with no board below it to lap over.
    pub first_course: bool,
    /// Whether the sealant leaves the bottom open, so that water drains.
    pub bottom_open: bool,
    /// Whether the house may carry lead paint or old cladding.
    pub old_house: bool,
    /// Whether the work is done from a ladder or a scaffold.
    pub above_reach: bool,
}

impl PenetrationDetail {
    /// A detail with everything but these four left plain: no head flashing, painted, not at the first course, sealed all
    /// round, a new house, from the ground.
    pub const fn plain(kind: PenetrationKind, shape: Shape, finish: Finish, mounting: Mounting) -> Self {
        Self {
            kind,
            shape,
            finish,
            mounting,
            head_flashing: false,
            painted: true,
            first_course: false,
            bottom_open: false,
            old_house: false,
            above_reach: false,
        }
    }

    /// The canonical form of the detail, to which the caller adds sizes, rules and readings.
    pub fn canonical(&self) -> Canonical {
        Canonical::new("penetration")
            .text("kind", self.kind.code())
            .text("shape", self.shape.code())
            .length("shape.width", self.shape.width())
            .length("shape.height", self.shape.height())
            .text("finish", self.finish.code())
            .text("mounting", self.mounting.code())
            .flag("head-flashing", self.has_head_flashing())
            .flag("painted", self.painted)
            .flag("first-course", self.first_course)
            .flag("bottom-open", self.bottom_open)
            .flag("old-house", self.old_house)
            .flag("above-reach", self.above_reach)
    }

    /// The canonical text of the detail, for hashing.
    pub fn detail_text(&self) -> String {
        self.canonical().detail_text()
    }

    /// What goes round it.
    pub const fn assembly(&self) -> Assembly {
        Assembly::new(self.mounting, self.finish, self.head_flashing)
    }

    /// Whether a head flashing goes on top: a collar has none.
    pub const fn has_head_flashing(&self) -> bool {
        self.assembly().has_head_flashing()
    }

    /// The steps in their order: what makes it safe, what the work stands on, each layer of the assembly with what it
    /// takes to put it, and what is tried and looked over at the end.
    pub fn steps(&self) -> Vec<Step> {
        let mut steps = Vec::from_iter(self.booked());
        steps.extend(self.made_safe());
        steps.extend(self.made_ready());
        steps.extend(self.assembly().layers().flat_map(|layer| self.put(layer)));
        steps.extend(self.tried());
        steps
    }

    /// Whether what goes through stays in the wall.
    fn stays(&self) -> bool {
        self.mounting == Mounting::Split
    }

    fn made_safe(&self) -> Vec<Step> {
        let kind = match self.kind {
            PenetrationKind::ElectricalBox | PenetrationKind::Light | PenetrationKind::Conduit => {
                step!("dead-and-tested").cautions(&[Caution::Electricity])
            }
            PenetrationKind::Cable => {
                step!("dead-and-tested", "dead-and-tested-cable").cautions(&[Caution::Electricity])
            }
            PenetrationKind::MeterBase => step!("meter").cautions(&[Caution::Meter, Caution::Electricity]),
            PenetrationKind::HoseBib => step!("water-line").cautions(&[Caution::WaterLine]),
            PenetrationKind::Pipe => step!("what-it-carries").cautions(&[Caution::Gas, Caution::WaterLine]),
            PenetrationKind::LineSet => step!("line-set").cautions(&[Caution::Refrigerant]),
            PenetrationKind::VentHood => step!("what-it-vents").cautions(&[Caution::Gas, Caution::Electricity]),
        };
        let paint = self.old_house.then(|| step!("old-house").cautions(&[Caution::Lead, Caution::Asbestos]));
        let mut steps: Vec<Step> = paint.into_iter().chain([kind]).map(Step::safe).collect();
        if self.above_reach
            && let Some(first) = steps.first_mut()
        {
            first.cautions.extend([Caution::Ladder, Caution::Fall, Caution::PowerLine]);
        }
        steps
    }

    /// Whom to call long before the boards get here.
    fn booked(&self) -> Option<Step> {
        let licensed = matches!(
            self.kind,
            PenetrationKind::ElectricalBox
                | PenetrationKind::Light
                | PenetrationKind::Conduit
                | PenetrationKind::MeterBase
        );
        licensed.then(|| step!("trade-booked"))
    }

    fn made_ready(&self) -> Vec<Step> {
        let mut steps = Vec::new();
        if !self.stays() {
            steps.push(match self.kind {
                PenetrationKind::ElectricalBox | PenetrationKind::Light | PenetrationKind::Conduit => {
                    step!("fixture-off", "fixture-off-electric").cautions(&[Caution::Electricity])
                }
                PenetrationKind::Cable => step!("fixture-off", "fixture-off-cable").cautions(&[Caution::Electricity]),
                PenetrationKind::MeterBase => step!("fixture-off", "fixture-off-meter").cautions(&[Caution::Meter]),
                PenetrationKind::HoseBib => step!("fixture-off", "fixture-off-tap").cautions(&[Caution::WaterLine]),
                PenetrationKind::LineSet => {
                    step!("fixture-off", "fixture-off-line-set").cautions(&[Caution::Refrigerant])
                }
                PenetrationKind::Pipe | PenetrationKind::VentHood => step!("fixture-off"),
            });
        }
        match self.kind {
            PenetrationKind::Pipe
            | PenetrationKind::Conduit
            | PenetrationKind::LineSet
            | PenetrationKind::VentHood
            | PenetrationKind::HoseBib => steps.push(step!("slope-out").angle(key("step-measured-slope"))),
            PenetrationKind::Cable => steps.push(step!("drip-loop")),
            PenetrationKind::ElectricalBox | PenetrationKind::Light | PenetrationKind::MeterBase => {}
        }
        if self.kind == PenetrationKind::HoseBib && self.stays() {
            steps.push(match self.finish {
                Finish::Block => step!("stands-off"),
                Finish::Trim => step!("stands-off", "stands-off-trim"),
                Finish::Collar => step!("stands-off", "stands-off-collar"),
            });
        }
        steps.push(if self.first_course {
            step!("courses-below", "courses-below-first")
        } else {
            step!("courses-below")
        });
        steps
    }

    /// What it takes to put a layer in place. All but the barrier, which is there before, are put by one of the steps.
    fn put(&self, layer: Layer) -> Vec<Step> {
        match layer {
            Layer::Barrier => self.barrier_opened(),
            Layer::Patch => self.patch(),
            Layer::Cover => vec![step!("patch-cover").puts(layer).hidden().photo()],
            Layer::Block => {
                let mut steps = vec![self.block_hole(step!("block-hole", "block-hole", "block-hole-slip"))];
                steps.extend(block_ready());
                steps.push(step!("block-slip").puts(layer));
                steps
            }
            Layer::BlockLower => {
                let mut steps = vec![self.block_hole(step!("block-hole"))];
                steps.push(step!("block-split").angle(key("step-measured-cut")).cautions(&SAW));
                steps.extend(block_ready());
                steps.push(step!("block-lower").puts(layer));
                steps
            }
            Layer::BlockUpper => vec![
                step!("block-bead").hidden().photo().cautions(&[Caution::WetSurface]),
                step!("block-upper").puts(layer),
            ],
            // The bottom piece carries the sides, the sides carry the top: each sheds over the one below.
            Layer::TrimBottom => vec![
                step!("trim-prime").hidden().cautions(&[Caution::Silica, Caution::Saw, Caution::Label]),
                step!("trim-bottom").puts(layer).cautions(&[Caution::Nailer]),
            ],
            Layer::TrimSides => vec![step!("trim-sides").puts(layer)],
            Layer::TrimTop => vec![step!("trim-top").puts(layer)],
            Layer::HeadFlashing => vec![step!("head-flashing").puts(layer).hidden().photo()],
            Layer::BarrierFlap => vec![self.barrier_down()],
            Layer::Boards => vec![
                step!("boards-cut").cautions(&SAW),
                step!("boards-prime").hidden().photo().cautions(&[Caution::Label]),
                self.boards_gap(),
            ],
            Layer::Collar => self.collar(),
            Layer::Sealant => {
                let mut steps = self.put_back();
                steps.push(self.sealant());
                steps
            }
            // The details that every house has put these.
            _ => Vec::new(),
        }
    }

    fn barrier_opened(&self) -> Vec<Step> {
        let clean =
            if self.first_course { step!("clean-and-dry", "clean-and-dry-first") } else { step!("clean-and-dry") };
        vec![step!("barrier-flap").hidden(), clean.hidden().cautions(&[Caution::WetSurface])]
    }

    fn patch(&self) -> Vec<Step> {
        let hole = match self.shape {
            Shape::Round { .. } => step!("patch-hole"),
            Shape::Rectangle { .. } => step!("patch-hole", "patch-hole-rectangle"),
        };
        let mut steps = vec![hole.length(key("step-measured-patch-width")).cautions(&[Caution::Label])];
        if self.assembly().patch_is_slit() {
            steps.push(step!("patch-slit"));
        }
        let (lap, roll) = if self.first_course {
            (step!("patch-lap", "patch-lap-first", "patch-lap-first"), step!("patch-roll", "patch-roll-first"))
        } else {
            (step!("patch-lap"), step!("patch-roll"))
        };
        steps.push(lap.puts(Layer::Patch).hidden().photo().length(key("step-measured-patch-over")));
        steps.push(roll.hidden());
        steps
    }

    /// The barrier comes down last of all that the siding hides.
    fn barrier_down(&self) -> Step {
        let step = match (self.assembly().patch_is_slit(), self.has_head_flashing()) {
            (false, false) => step!("barrier-down"),
            (true, false) => step!("barrier-down", "barrier-down-cover"),
            (false, true) => step!("barrier-down", "barrier-down-flashing"),
            (true, true) => step!("barrier-down", "barrier-down-cover-flashing"),
        };
        step.puts(Layer::BarrierFlap).hidden().photo()
    }

    /// The hole in the block, by its shape; `round` is the step for a round one.
    fn block_hole(&self, round: Step) -> Step {
        let step = match self.shape {
            Shape::Round { .. } => round.length(key("step-measured-bit")),
            Shape::Rectangle { .. } => {
                Step { text: key("step-block-hole-rectangle"), ..round }.length(key("step-measured-opening"))
            }
        };
        step.cautions(&SAW)
    }

    fn boards_gap(&self) -> Step {
        let step = match (self.finish, self.has_head_flashing()) {
            (Finish::Collar, _) => step!("boards-gap", "boards-gap-pipe"),
            (_, true) => step!("boards-gap", "boards-gap-flashing"),
            (_, false) => step!("boards-gap"),
        };
        let cautions = [Caution::Nailer, Caution::Lifting];
        step.puts(Layer::Boards).photo().length(key("step-measured-gap")).cautions(&cautions)
    }

    fn collar(&self) -> Vec<Step> {
        let bed = step!("collar-bed").hidden().cautions(&[Caution::WetSurface, Caution::Label]);
        let fix = if self.stays() { step!("collar-fix", "collar-fix-split") } else { step!("collar-fix") };
        vec![bed, fix.puts(Layer::Collar).photo()]
    }

    /// What is fixed to the block, the trim or the boards before the last joint is sealed.
    fn put_back(&self) -> Vec<Step> {
        let mut steps = Vec::new();
        match self.kind {
            PenetrationKind::ElectricalBox | PenetrationKind::Light => {
                steps.push(step!("extension-ring").cautions(&[Caution::Electricity]));
            }
            PenetrationKind::VentHood => steps.push(step!("duct-through").cautions(&[Caution::Gas])),
            PenetrationKind::LineSet => steps.push(step!("sleeve-fill").cautions(&[Caution::Label])),
            PenetrationKind::HoseBib if self.stays() => steps.push(step!("flange-fix")),
            _ => {}
        }
        if !self.stays() {
            steps.push(match self.kind {
                PenetrationKind::ElectricalBox | PenetrationKind::Light | PenetrationKind::Conduit => {
                    step!("fixture-on", "fixture-on-electric").cautions(&[Caution::Electricity])
                }
                PenetrationKind::Cable => step!("fixture-on", "fixture-on-cable", "fixture-on-cable"),
                PenetrationKind::MeterBase => step!("fixture-on", "fixture-on-meter").cautions(&[Caution::Meter]),
                PenetrationKind::LineSet => {
                    step!("fixture-on", "fixture-on-line-set").cautions(&[Caution::Refrigerant])
                }
                PenetrationKind::Pipe | PenetrationKind::HoseBib | PenetrationKind::VentHood => step!("fixture-on"),
            });
        }
        if self.kind == PenetrationKind::VentHood {
            steps.push(step!("hood-free"));
        }
        steps
    }

    fn sealant(&self) -> Step {
        let step = match (self.finish, self.has_head_flashing(), self.bottom_open) {
            (Finish::Collar, _, _) => step!("sealant", "sealant-collar"),
            (Finish::Block, false, false) => step!("sealant"),
            (Finish::Block, true, false) => step!("sealant", "sealant-not-top"),
            (Finish::Block, false, true) => step!("sealant", "sealant-not-bottom"),
            (Finish::Block, true, true) => step!("sealant", "sealant-sides"),
            (Finish::Trim, false, false) => step!("sealant", "sealant-trim"),
            (Finish::Trim, true, false) => step!("sealant", "sealant-trim-not-top"),
            (Finish::Trim, false, true) => step!("sealant", "sealant-trim-not-bottom"),
            (Finish::Trim, true, true) => step!("sealant", "sealant-trim-sides"),
        };
        let cautions = [Caution::WetSurface, Caution::Label];
        step.puts(Layer::Sealant).photo().length(key("step-measured-bead")).cautions(&cautions)
    }

    /// What is painted, tried and looked over once all stands.
    fn tried(&self) -> Vec<Step> {
        let mut steps = Vec::new();
        if self.painted {
            steps.push(step!("paint").cautions(&[Caution::Label]));
        }
        steps.extend(match self.kind {
            PenetrationKind::HoseBib => Some(step!("water-on")),
            PenetrationKind::Pipe => Some(step!("leak-test").cautions(&[Caution::Gas])),
            PenetrationKind::LineSet => Some(step!("condensate")),
            PenetrationKind::MeterBase => Some(step!("power-on", "power-on-meter").cautions(&[Caution::Meter])),
            PenetrationKind::Cable => Some(step!("power-on", "power-on-cable").cautions(&[Caution::Electricity])),
            PenetrationKind::ElectricalBox | PenetrationKind::Light | PenetrationKind::Conduit => {
                Some(step!("power-on").cautions(&[Caution::Electricity]))
            }
            // Its damper was tried before the last joint was sealed.
            PenetrationKind::VentHood => None,
        });
        let look = if self.has_head_flashing() { step!("look-over", "look-over-flashing") } else { step!("look-over") };
        steps.push(look.photo());
        steps
    }
}

/// A block's cut faces primed, and the bead that it is set in.
fn block_ready() -> [Step; 2] {
    [
        step!("block-prime").hidden().cautions(&[Caution::Label]),
        step!("block-bed").hidden().cautions(&[Caution::WetSurface, Caution::Label]),
    ]
}
