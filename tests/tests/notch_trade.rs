//! Outside checks of the notch: facts of the trade, and a simulation of saw and tape.

use lapwright::measure::{Division, Length};
use lapwright::notch::{
    Block, BoardInHand, EIGHTH, Edge, FittedGap, Gap, GapRule, Notch, NotchRequest, Overcut, Sides, learned_overcut,
};
use lapwright_tests::random::Random;

fn inch(whole: i64, sixteenths: i64) -> Length {
    Length::from_inches_64(whole, 4 * sixteenths)
}

fn request(bottom: Length, top: Length) -> NotchRequest {
    NotchRequest {
        board: BoardInHand { height: inch(7, 4), length: inch(118, 8), lap: Some(inch(1, 4)) },
        block: Block { left: inch(40, 0), right: inch(46, 0), bottom: Sides::both(bottom), top: Sides::both(top) },
        gap: GapRule::One(Gap { min: inch(0, 1), max: inch(0, 2) }),
        overcut: Overcut { min: Length::ZERO, max: inch(0, 1) },
        tape: Length::from_inches_64(0, 1),
        division: Division::SIXTEENTH,
        leg_min: inch(2, 0),
        level: EIGHTH,
        below: true,
        open_above: false,
    }
}

/// Common practice, no source: a 1 in notch in the lower board's top and a 6 1/16 in notch in the upper board's bottom
/// close over a block 5 13/16 in high at a lap of 1 1/4 in.
#[test]
fn two_notches_over_one_block_close() {
    let (lap, block) = (inch(1, 4), inch(5, 13));
    let lower = request(inch(6, 4), inch(6, 4) + block);
    let upper = request(inch(6, 1) - block, inch(6, 1));
    let (under, over) = (Notch::lay_out(&lower).unwrap(), Notch::lay_out(&upper).unwrap());
    let GapRule::One(offset) = over.offset else { panic!("one gap, one offset") };
    assert_eq!(under.depth(&lower.board).unwrap().left - offset, inch(1, 0));
    assert_eq!(over.depth(&upper.board).unwrap().left - offset, inch(6, 1));
    assert_eq!(over.cross_check(&upper.board, &upper.block, inch(1, 0), lap, Length::ZERO), Some(Length::ZERO));
    let miss = over.cross_check(&upper.board, &upper.block, inch(1, 3), lap, Length::ZERO).unwrap();
    assert_eq!(miss, inch(0, 3));
    assert!(Notch::is_off(miss) && !Notch::is_off(inch(0, 2)));
}

/// Common practice, no source: cutting on a line drawn tight to the block with a saw that takes 1/16 to 1/8 in more
/// yields the wanted gap of 1/16 to 1/8 in.
#[test]
fn a_saw_that_takes_the_gap_is_led_along_the_block() {
    let saw = Overcut { min: inch(0, 1), max: inch(0, 2) };
    let asked = NotchRequest { overcut: saw, tape: Length::ZERO, ..request(-inch(1, 0), inch(4, 0)) };
    let notch = Notch::lay_out(&asked).unwrap();
    assert_eq!(notch.offset.at(Edge::Top), Length::ZERO);
    assert_eq!(notch.gap.at(Edge::Top), Gap { min: inch(0, 1), max: inch(0, 2) });
    assert!(notch.warnings.is_empty());
}

/// A simulation: 100,000 cuts with random overcut and tape error land in the predicted gap, reach near both its ends,
/// and teach the overcut back.
#[test]
fn simulated_cuts_land_in_the_predicted_gap() {
    let asked = request(-inch(1, 0), inch(4, 0));
    let notch = Notch::lay_out(&asked).unwrap();
    let (predicted, cut) = (notch.gap.at(Edge::Sides), notch.cut.unwrap());
    let mut random = Random::new(2_026);
    let (mut least, mut most) = (predicted.max, predicted.min);
    let mut fitted = Vec::new();
    for _ in 0..100_000 {
        let over = random.length(asked.overcut.min, asked.overcut.max);
        let tape = random.length(-asked.tape, asked.tape);
        let edge_of_board = cut.left - over + tape;
        let gap = asked.block.left - edge_of_board;
        assert!(predicted.min <= gap && gap <= predicted.max, "{gap:?} {predicted:?}");
        (least, most) = (least.min(gap), most.max(gap));
        fitted.push(FittedGap { gap: gap + tape, offset: notch.offset.at(Edge::Sides) });
    }
    let near = Length::from_inches_64(0, 1).half().half();
    assert!(least - predicted.min < near && predicted.max - most < near, "{least:?} {most:?} {predicted:?}");
    let habit = learned_overcut(&fitted).unwrap();
    assert!(habit.overcut.min >= asked.overcut.min && habit.overcut.max <= asked.overcut.max);
    assert!(habit.overcut.max - habit.overcut.min > asked.overcut.max - near);
}
