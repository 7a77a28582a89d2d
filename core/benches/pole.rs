//! How long the best story pole takes.
//!
//! The aim: a three-storey pole, 30 ft in sixteenths with forty marks, in under 20 ms.

use criterion::{Criterion, criterion_group, criterion_main};
use lapwright::measure::{Division, Length};
use lapwright::siding::{Mark, Mode, Pole, PoleRequest, Want};

/// Thirty feet with forty marks, spread without a pattern: every third one to stay clear of.
fn three_storeys(reveal_min: Option<Length>, reveal_max: Length, change_max: Option<Length>) -> PoleRequest {
    let mark = |k: i64| Mark {
        name: format!("mark {k}"),
        at: Length::from_inches_64(k * 9, (k * k * 37) % 128),
        want: if k % 3 == 0 { Want::Clear(Length::from_inches(1)) } else { Want::Land },
        weight: u16::try_from(1 + k % 5).unwrap_or(1),
    };
    PoleRequest {
        from: Length::ZERO,
        to: Length::from_inches(360),
        mode: Mode::Fit { change_max },
        reveal_max,
        reveal_min,
        marks: (0..40).map(mark).collect(),
        division: Division::SIXTEENTH,
    }
}

fn poles(criterion: &mut Criterion) {
    let eighth = Some(Length::from_inches_64(0, 8));
    let cases = [
        ("5-to-7-in-change-1/8", three_storeys(Some(Length::from_inches(5)), Length::from_inches(7), eighth)),
        ("1/16-to-7-in-change-1/8", three_storeys(None, Length::from_inches(7), eighth)),
        ("1/16-to-12-in-any-change", three_storeys(None, Length::from_inches(12), None)),
        ("1/16-in-to-30-ft-any-change", three_storeys(None, Length::from_inches(360), None)),
    ];
    let mut group = criterion.benchmark_group("fit-30-ft");
    group.sample_size(10);
    for (name, request) in &cases {
        group.bench_function(*name, |bencher| bencher.iter(|| Pole::lay_out(request)));
    }
    group.finish();
}

criterion_group!(benches, poles);
criterion_main!(benches);
