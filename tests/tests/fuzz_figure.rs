//! A million inputs, mostly broken ones, into the length reader and the figure questions: none may panic or hang.
//!
//! The inputs come from a generator with a fixed seed, so a failure comes again.

use std::time::{Duration, Instant};

use lapwright::figure::{self, QUESTIONS};
use lapwright::measure::{Language, Reader, Unit};
use lapwright_tests::random::Random;
use lapwright_tests::{fixtures, golden, json_files};

/// Far beyond what any single answer takes, so that only a hang reaches it on a busy machine.
const HANG: Duration = Duration::from_secs(5);

/// The text with one place, or up to four, replaced, taken out, doubled or filled with something nasty.
fn mutate(random: &mut Random, text: &str, nasty: &[&str]) -> String {
    let mut characters: Vec<char> = text.chars().collect();
    let places = [1, 1, 1, 1 + random.below(4)][random.below(4)];
    for _ in 0..places {
        let from = random.below(characters.len() + 1);
        let to = (from + random.below(3)).min(characters.len());
        let new: Vec<char> = match random.below(4) {
            0 => Vec::new(),
            1 => characters[from..to].repeat(2),
            2 => char::from_u32(random.below(0x11_0000) as u32).into_iter().collect(),
            _ => random.of(nasty).chars().collect(),
        };
        characters.splice(from..to, new);
    }
    characters.into_iter().collect()
}

fn in_time(input: &str, work: impl FnOnce()) {
    let start = Instant::now();
    work();
    assert!(start.elapsed() < HANG, "took {:?}: {input}", start.elapsed());
}

#[test]
fn half_a_million_texts_are_read_or_refused() {
    let valid = ["6 1/16\"", "7' 3 1/2\"", "9'-4 3/8\"", "-5/16\"", "154 mm", "15.4 cm", "1,54 m", "6⅝″", "3''"];
    let long = "9".repeat(300);
    let nasty = ["/0", "-", "\u{2212}", "1e999", "½", "'", "\"", ".", ",", " ", "\0", "99999999999999999999", &long];
    let (mut random, mut read) = (Random::new(0x1e55_0f7e_57ed_0001), 0);
    for _ in 0..500_000 {
        let valid = random.of(&valid);
        let text = mutate(&mut random, valid, &nasty);
        let unit = [None, Some(Unit::Inch), Some(Unit::Foot)][random.below(3)];
        let reader = Reader { unit, language: Language::ALL[random.below(2)] };
        in_time(&text, || read += usize::from(reader.length(&text).is_ok()));
    }
    assert!((50_000..450_000).contains(&read), "the mutations must reach both ends: {read} were read");
}

#[test]
fn half_a_million_requests_are_answered_or_refused() {
    let mut requests: Vec<(String, String)> =
        QUESTIONS.iter().map(|question| (question.name.to_owned(), question.example.to_owned())).collect();
    for kind in ["valid", "invalid"] {
        let cases = json_files(&fixtures().join("answers").join(kind));
        requests.extend(
            cases
                .iter()
                .map(|(_, case)| (case["question"].as_str().unwrap_or_default().to_owned(), golden::request(case))),
        );
    }
    // The planner works as long as it is let: a few of its steps are enough to see whether a list breaks it.
    for (_, request) in requests.iter_mut().filter(|(question, _)| question == "pieces" || question == "amounts") {
        if !request.contains("\"effort\"") {
            *request = request.replacen('{', "{\"effort\": 20,", 1);
        }
    }
    let deep = "[".repeat(2_000);
    let nasty = [
        "null",
        "{}",
        "[]",
        "-1",
        "0",
        "1e308",
        "1e-999",
        "999999999999 m",
        "0\"",
        "\\ud800",
        "\"\"",
        "es",
        ",",
        ":",
        "}",
        "99999999999999999999999999",
        "-0.0",
        &deep,
    ];
    let (mut random, mut answered) = (Random::new(0x1e55_0f7e_57ed_0002), 0);
    for turn in 0..500_000 {
        let (question, request) = &requests[random.below(requests.len())];
        // A house is taken into a book for it, which takes as long as a hundred other questions.
        if question == "amounts" && turn % 16 > 0 {
            continue;
        }
        let bytes = match turn % 8 {
            0 => (0..random.below(64)).map(|_| random.below(256) as u8).collect(),
            _ => mutate(&mut random, request, &nasty).into_bytes(),
        };
        in_time(&format!("{question} {}", String::from_utf8_lossy(&bytes)), || {
            answered += usize::from(!figure::answer_bytes(question, &bytes).is_error);
        });
    }
    assert!((5_000..450_000).contains(&answered), "the mutations must reach both ends: {answered} were answered");
}
