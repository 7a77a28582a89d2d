use super::step::step;
use super::{Canonical, Caution, Step};
use crate::phrases::key;

/// What the steps at a board are made from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BoardDetail {
    /// Whether the board is notched, drilled or cut round something.
    pub notched: bool,
    /// Whether it is of the first course, on the starter strip.
    pub first_course: bool,
    /// Whether it ends at a butt joint with another board.
    pub joint: bool,
    /// Whether an end is cut to a rake or out of plumb.
    pub bevelled: bool,
    /// Whether its outline has more than square ends: a corner that is cut off, a step, a rake.
    pub shaped: bool,
    /// Whether something is ripped off it along its length.
    pub ripped: bool,
    /// Whether its nail line is cut away, at least in part, so that it is nailed through the face there.
    pub face_nailed: bool,
    /// Whether the face is painted after it is up.
    pub painted: bool,
    /// Whether the house may carry lead paint or old cladding.
    pub old_house: bool,
    /// Whether the work is done from a ladder or a scaffold.
    pub above_reach: bool,
}

impl BoardDetail {
    /// The canonical form of the detail, to which the caller adds lengths, cuts, rules and readings.
    pub fn canonical(&self) -> Canonical {
        let mut canonical = Canonical::new("board")
            .flag("notched", self.notched)
            .flag("first-course", self.first_course)
            .flag("joint", self.joint)
            .flag("bevelled", self.bevelled)
            .flag("painted", self.painted)
            .flag("old-house", self.old_house)
            .flag("above-reach", self.above_reach);
        // A board of its full height keeps the text that it was signed with.
        for (name, flag) in [("shaped", self.shaped), ("ripped", self.ripped), ("face-nailed", self.face_nailed)] {
            if flag {
                canonical = canonical.flag(name, true);
            }
        }
        canonical
    }

    /// The canonical text of the detail, for hashing.
    pub fn detail_text(&self) -> String {
        self.canonical().detail_text()
    }

    /// The steps in their order.
    pub fn steps(&self) -> Vec<Step> {
        let saw = [Caution::Silica, Caution::Saw];
        let mut steps = Vec::new();
        if self.old_house {
            steps.push(step!("old-house").safe().cautions(&[Caution::Lead, Caution::Asbestos]));
        }
        if self.first_course {
            steps.push(step!("board-starter").hidden());
        }
        steps.push(step!("board-measure").length(key("step-measured-run")));
        if self.notched {
            steps.push(step!("board-measure-notch"));
        }
        steps.push(if self.bevelled { step!("board-mark", "board-mark-bevel") } else { step!("board-mark") });
        let cut = if self.shaped { step!("board-cut", "board-cut-shaped") } else { step!("board-cut") };
        steps.push(cut.length(key("step-measured-length")).cautions(&saw));
        if self.ripped {
            steps.push(step!("board-rip").length(key("step-measured-height")).cautions(&saw));
        }
        if self.notched {
            steps.push(step!("board-notch").cautions(&saw));
            steps.push(step!("board-try"));
        }
        let prime =
            if self.ripped { step!("board-prime", "board-prime-rip", "board-prime-rip") } else { step!("board-prime") };
        steps.push(prime.hidden().photo().cautions(&[Caution::Label]));
        if self.joint {
            let backing = if self.first_course {
                step!("board-backing", "board-backing-first", "board-backing-first")
            } else {
                step!("board-backing")
            };
            steps.push(backing.hidden().photo());
        }
        let place = if self.first_course { step!("board-set", "board-set-first") } else { step!("board-set") };
        let place = if self.first_course { place } else { place.length(key("step-measured-lap")) };
        let height: &[Caution] =
            if self.above_reach { &[Caution::Ladder, Caution::Fall, Caution::PowerLine] } else { &[] };
        steps.push(place.cautions(height).cautions(&[Caution::Lifting]));
        // The next course covers the nails, so that nobody can see later whether each found its stud.
        let nail = match (self.face_nailed, self.joint) {
            (true, _) => step!("board-nail", "board-nail-face", "board-nail-face"),
            (false, true) => step!("board-nail", "board-nail-joint").hidden(),
            (false, false) => step!("board-nail").hidden(),
        };
        steps.push(nail.cautions(&[Caution::Nailer]));
        if self.notched {
            steps.push(step!("board-gap").photo().length(key("step-measured-gap")));
        }
        if self.painted {
            steps.push(step!("board-touch-up").cautions(&[Caution::Label]));
        }
        steps
    }
}
