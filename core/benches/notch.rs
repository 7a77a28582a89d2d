//! How long the notch for the board in hand takes: it is laid out anew at every key.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use lapwright::measure::{Division, Length};
use lapwright::notch::{Block, BoardInHand, Gap, GapRule, Notch, NotchRequest, Overcut, Sides, marks};

fn notch(criterion: &mut Criterion) {
    let inch = Length::from_inches_64;
    let request = NotchRequest {
        board: BoardInHand { height: inch(7, 16), length: inch(118, 32), lap: Some(inch(1, 16)) },
        block: Block {
            left: inch(52, 24),
            right: inch(59, 56),
            bottom: Sides::both(inch(-1, -32)),
            top: Sides::new(inch(4, 8), inch(4, 12)),
        },
        gap: GapRule::One(Gap { min: inch(0, 4), max: inch(0, 8) }),
        overcut: Overcut { min: Length::ZERO, max: inch(0, 4) },
        tape: inch(0, 1),
        division: Division::SIXTEENTH,
        leg_min: inch(2, 0),
        below: true,
        open_above: false,
        level: inch(0, 8),
    };
    criterion.bench_function("notch-and-marks", |bencher| {
        bencher.iter(|| Notch::lay_out(black_box(&request)).map(|notch| marks(&notch, &request.board, true)));
    });
}

criterion_group!(benches, notch);
criterion_main!(benches);
