//! Broken inputs by the hundred thousand into what is read from outside: lengths, documents, entries. None may panic, hang,
//! or be taken for something else than it says.
//!
//! The inputs come from a generator with a fixed start, so a failure comes again.

use std::time::{Duration, Instant};

use lapwright::book::Book;
use lapwright::handover::DEMO_HOUSE;
use lapwright::measure::{Language, Reader, Unit};
use lapwright::screens::take_in_document;
use lapwright::store::{Entry, Store};
use lapwright_tests::book::{count, entries, fill, tell};
use lapwright_tests::context;
use lapwright_tests::random::Random;

/// Far beyond what any single input takes, so that only a hang reaches it on a busy machine.
const HANG: Duration = Duration::from_secs(20);

/// The bytes with up to four places replaced, taken out, doubled or moved.
fn mutate(random: &mut Random, bytes: &[u8], nasty: &[&[u8]]) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    for _ in 0..1 + random.below(4) {
        let from = random.below(bytes.len() + 1);
        let to = (from + random.below(6)).min(bytes.len());
        let new: Vec<u8> = match random.below(4) {
            0 => Vec::new(),
            1 => bytes[from..to].repeat(2),
            2 => vec![random.below(256) as u8],
            _ => nasty[random.below(nasty.len())].to_vec(),
        };
        bytes.splice(from..to, new);
    }
    bytes
}

fn in_time(what: &str, work: impl FnOnce()) {
    let start = Instant::now();
    work();
    assert!(start.elapsed() < HANG, "took {:?}: {what}", start.elapsed());
}

#[test]
fn lengths_are_read_or_refused() {
    let valid: [&[u8]; 6] = [b"6 1/16\"", b"7' 3 1/2\"", b"-5/16\"", b"154 mm", b"1,54 m", "6⅝″".as_bytes()];
    let nasty: [&[u8]; 7] = [b"/0", b"1e999", "½".as_bytes(), b"\0", b"99999999999999999999", b"'", b" "];
    let (mut random, mut read) = (Random::new(41), 0);
    let inputs = count(50_000, 4_000_000);
    for _ in 0..inputs {
        let valid = valid[random.below(valid.len())];
        let text = mutate(&mut random, valid, &nasty);
        let text = String::from_utf8_lossy(&text);
        let unit = [None, Some(Unit::Inch), Some(Unit::Millimetre)][random.below(3)];
        let reader = Reader { unit, language: Language::ALL[random.below(2)] };
        in_time(&text, || read += usize::from(reader.length(&text).is_ok()));
    }
    assert!((inputs / 20..inputs).contains(&read), "{read} of {inputs}");
    tell("lengths with broken places", inputs, &format!("{read} read, the others refused"));
}

#[test]
fn documents_are_taken_in_whole_or_not_at_all() {
    let nasty: [&[u8]; 9] =
        [b"\"", b"{", b"}", b"[", b"null", b"1e999", b"\\u0000", b"\"name\": \"x\", ", b"99999999999999999999"];
    let (mut random, mut taken) = (Random::new(43), 0);
    let inputs = count(150, 30_000);
    let mut book = Book::in_memory().unwrap();
    for number in 0..inputs {
        if number % 100 == 0 {
            book = Book::in_memory().unwrap();
        }
        let text = String::from_utf8_lossy(&mutate(&mut random, DEMO_HOUSE.as_bytes(), &nasty)).into_owned();
        let before = book.store().content_hash().unwrap();
        in_time("a document", || {
            // Each call has chance of its own, as a phone gives it.
            let mut context = context(1);
            context.entropy = number.to_be_bytes().to_vec();
            match take_in_document(&mut book, &context, &text) {
                Ok(_) => taken += 1,
                Err(_) => assert_eq!(book.store().content_hash().unwrap(), before, "{text}"),
            }
        });
    }
    assert!(taken > 0 && taken < inputs, "{taken} of {inputs}");
    tell("documents with broken places", inputs, &format!("{taken} taken in, nothing of the others"));
}

#[test]
fn an_entry_is_what_its_hash_says_or_none() {
    let mut store = Store::in_memory().unwrap();
    fill(&mut store, 30).unwrap();
    let entries = entries(&store).unwrap();
    let texts: Vec<String> = entries.iter().map(Entry::to_text).collect();
    let nasty: [&[u8]; 6] = [b"\"", b"{", b"}", b"null", b"99999999999999999999", b"\\u0000"];
    let (mut random, mut read, mut true_ones) = (Random::new(47), 0, 0);
    let inputs = count(5_000, 970_000);
    for _ in 0..inputs {
        let text = &texts[random.below(texts.len())];
        let text = String::from_utf8_lossy(&mutate(&mut random, text.as_bytes(), &nasty)).into_owned();
        in_time(&text, || {
            if let Some(entry) = Entry::from_text(&text) {
                read += 1;
                assert_eq!(entry.to_text(), text, "one content has one text");
                if entry.hash == entry.true_hash() {
                    true_ones += 1;
                    let same = |one: &Entry| Entry { signature: entry.signature.clone(), ..one.clone() } == entry;
                    assert!(entries.iter().any(same), "{text}");
                }
            }
        });
    }
    tell(
        "entries with broken places",
        inputs,
        &format!("{read} are entries still, {true_ones} fit their hash as made"),
    );
}
