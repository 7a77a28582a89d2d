use super::step::step;
use super::{Canonical, Caution, Step};
use crate::phrases::key;
use crate::wall::{Finish, Mounting, PenetrationKind, Shape};

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

    fn split(&self) -> bool {
        self.mounting == Mounting::Split
    }

    fn electric(&self) -> bool {
        matches!(
            self.kind,
            PenetrationKind::ElectricalBox
                | PenetrationKind::Light
                | PenetrationKind::Conduit
                | PenetrationKind::Cable
                | PenetrationKind::MeterBase
        )
    }

    /// Whether a head flashing goes on top: a collar has none.
    pub fn has_head_flashing(&self) -> bool {
        self.head_flashing && self.finish != Finish::Collar
    }

    /// The steps in their order: from the wall outward, each later layer over the one before.
    pub fn steps(&self) -> Vec<Step> {
        let mut steps = self.before_the_work();
        steps.extend(self.patch());
        match self.finish {
            Finish::Block => steps.extend(self.block()),
            Finish::Trim => steps.extend(trim()),
            Finish::Collar => {}
        }
        if self.has_head_flashing() {
            steps.push(step!("head-flashing").hidden().photo());
        }
        steps.extend(boards());
        if self.finish == Finish::Collar {
            steps.extend(self.collar());
        }
        steps.extend(self.fixture_back());
        steps.push(self.sealant());
        if self.painted {
            steps.push(step!("paint").cautions(&[Caution::Label]));
        }
        steps.push(step!("look-over").photo());
        if self.above_reach
            && let Some(first) = steps.first_mut()
        {
            first.cautions.extend([Caution::Ladder, Caution::PowerLine]);
        }
        steps
    }

    fn before_the_work(&self) -> Vec<Step> {
        let mut steps = Vec::new();
        if self.old_house {
            steps.push(step!("old-house").safe().cautions(&[Caution::Lead, Caution::Asbestos]));
        }
        steps.push(match self.kind {
            PenetrationKind::ElectricalBox
            | PenetrationKind::Light
            | PenetrationKind::Conduit
            | PenetrationKind::Cable => step!("dead-and-tested").safe().cautions(&[Caution::Electricity]),
            PenetrationKind::MeterBase => step!("meter").safe().cautions(&[Caution::Meter, Caution::Electricity]),
            PenetrationKind::HoseBib => step!("water-line").safe().cautions(&[Caution::WaterLine]),
            PenetrationKind::Pipe => step!("what-it-carries").safe().cautions(&[Caution::Gas, Caution::WaterLine]),
            PenetrationKind::LineSet => step!("line-set").safe().cautions(&[Caution::Refrigerant]),
            PenetrationKind::VentHood => step!("what-it-vents").safe().cautions(&[Caution::Gas, Caution::Electricity]),
        });
        if !self.split() {
            steps.push(if self.electric() {
                step!("fixture-off", "fixture-off-electric").cautions(&[Caution::Electricity])
            } else {
                step!("fixture-off")
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
        steps
    }

    fn patch(&self) -> Vec<Step> {
        let mut steps = vec![
            step!("barrier-flap").hidden(),
            step!("clean-and-dry").hidden().cautions(&[Caution::WetSurface]),
            step!("patch-hole").length(key("step-measured-patch-width")).cautions(&[Caution::Label]),
        ];
        if self.split() {
            steps.push(step!("patch-slit"));
        }
        let lap = if self.first_course { step!("patch-lap", "patch-lap-first") } else { step!("patch-lap") };
        steps.push(lap.hidden().photo().length(key("step-measured-patch-over")));
        steps.push(step!("patch-roll").hidden());
        steps.push(step!("patch-top").hidden().photo());
        if self.split() {
            steps.push(step!("patch-cover").hidden().photo());
        }
        steps
    }

    fn block(&self) -> Vec<Step> {
        let saw = [Caution::Silica, Caution::Saw];
        let mut steps = vec![match self.shape {
            Shape::Round { .. } => step!("block-hole").length(key("step-measured-bit")).cautions(&saw),
            Shape::Rectangle { .. } => {
                step!("block-hole", "block-hole-rectangle").length(key("step-measured-opening")).cautions(&saw)
            }
        }];
        if self.split() {
            steps.push(step!("block-split").angle(key("step-measured-cut")).cautions(&saw));
            steps.push(step!("block-prime").hidden().cautions(&[Caution::Label]));
            steps.push(step!("block-lower"));
            steps.push(step!("block-bead").hidden().photo().cautions(&[Caution::WetSurface]));
            steps.push(step!("block-upper"));
        } else {
            steps.push(step!("block-prime").hidden().cautions(&[Caution::Label]));
            steps.push(step!("block-slip"));
        }
        steps
    }

    fn collar(&self) -> Vec<Step> {
        let bed = step!("collar-bed").hidden().cautions(&[Caution::WetSurface, Caution::Label]);
        let fix = if self.split() { step!("collar-fix", "collar-fix-split") } else { step!("collar-fix") };
        vec![bed, fix.photo()]
    }

    fn fixture_back(&self) -> Vec<Step> {
        let mut steps = Vec::new();
        if !self.split() {
            steps.push(if self.electric() {
                step!("fixture-on", "fixture-on-electric").cautions(&[Caution::Electricity])
            } else {
                step!("fixture-on")
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
            (_, false, false) => step!("sealant"),
            (_, true, false) => step!("sealant", "sealant-not-top"),
            (_, false, true) => step!("sealant", "sealant-not-bottom"),
            (_, true, true) => step!("sealant", "sealant-sides"),
        };
        step.photo().length(key("step-measured-bead")).cautions(&[Caution::WetSurface, Caution::Label])
    }
}

/// The bottom piece carries the sides, the sides carry the head: each sheds over the one below.
fn trim() -> Vec<Step> {
    vec![
        step!("trim-prime").hidden().cautions(&[Caution::Silica, Caution::Saw, Caution::Label]),
        step!("trim-bottom"),
        step!("trim-sides"),
        step!("trim-top"),
    ]
}

fn boards() -> Vec<Step> {
    vec![
        step!("boards-cut").cautions(&[Caution::Silica, Caution::Saw]),
        step!("boards-prime").hidden().photo().cautions(&[Caution::Label]),
        step!("boards-gap").photo().length(key("step-measured-gap")),
    ]
}
