use super::run::Run;
use crate::measure::Length;

/// What the joints of a wall's runs keep to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JointRules {
    /// The stud centres that a joint may lie on, ascending.
    pub studs: Vec<Length>,
    /// The longest piece: the length of the stock.
    pub stock: Length,
    /// The gap at each end of a run.
    pub end_gap: Length,
    /// The gap at a joint, centred on its stud.
    pub joint_gap: Length,
    /// The least distance from the joints of the courses right above and below.
    pub stagger: Length,
    /// The shortest piece beside a joint.
    pub piece_min: Length,
    /// Where no joint lies: open intervals at openings' corners and penetrations.
    pub avoid: Vec<Avoid>,
}

/// An interval without joints; a joint may lie on its ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Avoid {
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// The courses that it holds for; empty for all.
    pub courses: Vec<u32>,
}

impl JointRules {
    pub(super) fn make_sense(&self) -> bool {
        let sizes = [self.end_gap, self.joint_gap, self.stagger, self.piece_min];
        self.stock.is_positive() && !sizes.into_iter().any(Length::is_negative)
    }

    fn avoids(&self, course: u32, at: Length) -> bool {
        self.avoid.iter().any(|avoid| {
            avoid.from < at && at < avoid.to && (avoid.courses.is_empty() || avoid.courses.contains(&course))
        })
    }

    /// Whether one piece may reach over this clear length, at a joint or whole.
    fn piece_fits(&self, length: Length) -> bool {
        length <= self.stock && length >= self.piece_min && length.is_positive()
    }
}

/// The fewest joints for a run that keep to the rules, each on the last stud that allows so few; `None` where there are
/// none. `near` are the joints of the courses right above and below.
pub(super) fn place(run: &Run, rules: &JointRules, near: &[Length]) -> Option<Vec<Length>> {
    let (from, to) = (run.from() + rules.end_gap, run.to() - rules.end_gap);
    if to - from <= rules.stock {
        return Some(Vec::new());
    }
    let before = Length::from_nm(rules.joint_gap.nm() / 2);
    let after = rules.joint_gap - before;
    // Open to a joint: the studs that this run may use, from the right, each with its number of joints to the right
    // (itself included) and the next of them.
    let mut open: Vec<(Length, usize, Option<Length>)> = Vec::new();
    let legal = rules.studs.iter().rev().copied().filter(|&stud| {
        from < stud
            && stud < to
            && !rules.avoids(run.course, stud)
            && near.iter().all(|&other| (other - stud).abs() >= rules.stagger && other != stud)
    });
    for stud in legal {
        let start = stud + after;
        if rules.piece_fits(to - start) {
            open.push((stud, 1, None));
            continue;
        }
        // The studs already open ascend from the back; `min_by_key` keeps the first, hence the last stud, on a tie.
        let next = open.iter().filter(|(other, ..)| rules.piece_fits(*other - before - start)).min_by_key(|o| o.1);
        if let Some(&(other, joints, _)) = next {
            open.push((stud, joints + 1, Some(other)));
        }
    }
    let first = open.iter().filter(|(stud, ..)| rules.piece_fits(*stud - before - from)).min_by_key(|o| o.1)?;
    let mut joints = vec![first.0];
    let mut next = first.2;
    while let Some(stud) = next {
        joints.push(stud);
        next = open.iter().find(|(other, ..)| *other == stud).and_then(|found| found.2);
    }
    Some(joints)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::run::{End, Run};
    use super::super::{CoursePlan, PieceError};
    use super::*;
    use crate::measure::Division;

    fn inch(x: i64) -> Length {
        Length::from_inches(x)
    }

    fn rules(stock: i64) -> JointRules {
        JointRules {
            studs: (0..40).map(|k| inch(16 * k)).collect(),
            stock: inch(stock),
            end_gap: Length::from_inches_64(0, 8),
            joint_gap: Length::ZERO,
            stagger: inch(16),
            piece_min: inch(16),
            avoid: Vec::new(),
        }
    }

    fn run(course: u32, from: i64, to: i64) -> Run {
        Run { course, left: End::plumb(inch(from)), right: End::plumb(inch(to)) }
    }

    fn joints(plan: &CoursePlan, run: usize) -> Vec<Length> {
        let ends: Vec<Length> = plan.pieces.iter().filter(|piece| piece.run == run).map(|piece| piece.to).collect();
        ends.split_last().map(|(_, inner)| inner.to_vec()).unwrap_or_default()
    }

    #[test]
    fn a_run_that_fits_one_board_stays_whole() {
        let plan = CoursePlan::from_the_left(&[run(1, 0, 144)], &rules(144), Division::SIXTEENTH).unwrap();
        assert_eq!(plan.pieces.len(), 1);
        assert_eq!(plan.pieces[0].length, Length::from_inches_64(143, 48));
        assert!(!plan.proved && plan.bound.is_none());
    }

    #[test]
    fn the_first_board_reaches_the_last_legal_stud_and_courses_are_staggered() {
        // 20 ft in 12 ft stock: the last stud within 144 1/8 in is at 144; one bay less in the next course.
        let runs = [run(1, 0, 240), run(2, 0, 240), run(3, 0, 240)];
        let plan = CoursePlan::from_the_left(&runs, &rules(144), Division::SIXTEENTH).unwrap();
        assert_eq!(joints(&plan, 0), [inch(144)]);
        assert_eq!(joints(&plan, 1), [inch(128)]);
        assert_eq!(joints(&plan, 2), [inch(144)]);
    }

    #[test]
    fn joints_keep_out_of_what_is_to_be_avoided_and_may_lie_on_its_ends() {
        let mut rules = rules(144);
        rules.avoid = vec![Avoid { from: inch(112), to: inch(150), courses: vec![1] }];
        let plan = CoursePlan::from_the_left(&[run(1, 0, 240), run(3, 0, 240)], &rules, Division::SIXTEENTH).unwrap();
        assert_eq!(joints(&plan, 0), [inch(112)]);
        assert_eq!(joints(&plan, 1), [inch(144)]);
    }

    #[test]
    fn a_greedy_first_joint_that_leaves_too_little_is_not_taken() {
        // Two boards of 12 ft over 13 ft: a joint at 144 would leave 12 in, under the least piece of 16 in.
        let plan = CoursePlan::from_the_left(&[run(1, 0, 156)], &rules(144), Division::SIXTEENTH).unwrap();
        assert_eq!(joints(&plan, 0), [inch(128)]);
    }

    #[test]
    fn the_joint_gap_is_centred_on_the_stud() {
        let mut rules = rules(144);
        rules.joint_gap = Length::from_inches_64(0, 8);
        let plan = CoursePlan::from_the_left(&[run(1, 0, 240)], &rules, Division::SIXTEENTH).unwrap();
        assert_eq!(plan.pieces[0].to, Length::from_inches_64(143, 60));
        assert_eq!(plan.pieces[1].from, Length::from_inches_64(144, 4));
    }

    #[test]
    fn a_run_without_studs_is_named() {
        let mut rules = rules(144);
        rules.studs = vec![inch(8)];
        let found = CoursePlan::from_the_left(&[run(1, 0, 100), run(2, 0, 240)], &rules, Division::SIXTEENTH);
        assert_eq!(found, Err(PieceError::NoJoints { run: 1 }));
    }

    proptest! {
        #[test]
        fn every_plan_keeps_to_the_rules(
            spans in proptest::collection::vec((0_i64..60, 100_i64..500), 1..6),
            stock in 96_i64..200,
            avoid in 0_i64..400,
        ) {
            let runs: Vec<Run> =
                spans.iter().enumerate().map(|(k, &(l, w))| run(k as u32 + 1, l, l + w)).collect();
            let mut rules = rules(stock);
            rules.avoid = vec![Avoid { from: inch(avoid), to: inch(avoid + 20), courses: Vec::new() }];
            let Ok(plan) = CoursePlan::from_the_left(&runs, &rules, Division::SIXTEENTH) else { return Ok(()) };
            for (index, run) in runs.iter().enumerate() {
                let own: Vec<_> = plan.pieces.iter().filter(|piece| piece.run == index).collect();
                prop_assert_eq!(own[0].from, run.from() + rules.end_gap);
                prop_assert_eq!(own[own.len() - 1].to, run.to() - rules.end_gap);
                prop_assert!(own.windows(2).all(|pair| pair[0].to == pair[1].from));
                for piece in &own {
                    prop_assert!(piece.length <= rules.stock && piece.to > piece.from);
                    prop_assert!(own.len() == 1 || piece.to - piece.from >= rules.piece_min);
                }
                for joint in joints(&plan, index) {
                    prop_assert!(rules.studs.contains(&joint));
                    prop_assert!(joint <= inch(avoid) || joint >= inch(avoid + 20));
                    if index > 0 {
                        let below = joints(&plan, index - 1);
                        prop_assert!(below.iter().all(|&other| (other - joint).abs() >= rules.stagger));
                    }
                }
            }
        }
    }
}
