use super::*;
use crate::store::OpenOptions;

fn made(book: &mut Book, action: SettingsAction) -> Result<SettingsView, Problem> {
    let outcome = tap(book, 2, action)?;
    assert_eq!((outcome.place, outcome.group.as_str()), (Place::Settings, ""));
    Ok(OfScreen::of(outcome.view))
}

fn set(book: &mut Book, field: &str, text: &str) -> Result<SettingsView, Problem> {
    made(book, SettingsAction::Answer { field: field.to_owned(), text: text.to_owned() })
}

#[test]
fn a_new_phone_has_settings_that_a_context_can_be_made_from() {
    let book = Book::in_memory().unwrap();
    let first = remembered(&book);
    assert_eq!((first.signer.as_str(), first.gloves, &first.place), ("", false, &Place::Jobs));
    let made = Context { show: first.show, division: first.division, language: first.language, ..context("en", 1) };
    assert!(view(&book, &made, &Place::Settings).is_ok());
}

#[test]
fn every_choice_is_taken_and_can_be_spoken_in() {
    let mut book = Book::in_memory().unwrap();
    let first: SettingsView = shown(&book, "en", Place::Settings);
    let mut count = 0;
    for language in ["es", "en"] {
        for question in &first.settings {
            for choice in &question.choices {
                set(&mut book, &question.field, &choice.code).unwrap();
                let now = remembered(&book);
                let (show, division) = (now.show, now.division);
                let made = Context { show, division, language: language.to_owned(), ..context("en", 1) };
                assert!(view(&book, &made, &Place::Settings).is_ok(), "{} {}", question.field, choice.code);
                count += 1;
            }
        }
    }
    assert_eq!(count, 2 * (2 + 6 + 5 + 2 + 2 + 2));
}

#[test]
fn the_phone_changes_hands_in_one_tap_and_each_keeps_their_place() {
    let (mut book, job) = house();
    let take = |signer: &str| SettingsAction::TakePhone { signer: signer.to_owned() };
    made(&mut book, take(" Ines  Marlow ")).unwrap();
    let own = Context { signer: "Ines Marlow".to_owned(), ..context("en", 1) };
    remember_place(&mut book, &own, &Place::Pole { job: job.clone() }).unwrap();
    made(&mut book, take("Tobias")).unwrap();
    assert_eq!((remembered(&book).signer.as_str(), remembered(&book).place), ("Tobias", Place::Jobs));
    let shown = made(&mut book, take("Ines Marlow")).unwrap();
    assert_eq!(remembered(&book).place, Place::Pole { job });
    let names: Vec<_> = shown.signers.iter().map(|line| (line.name.as_str(), line.current)).collect();
    assert_eq!(names, [("Ines Marlow", true), ("Tobias", false)]);
    made(&mut book, SettingsAction::DropSigner { signer: "Ines Marlow".to_owned() }).unwrap();
    assert_eq!(remembered(&book).signer, "");
}

/// Whoever hands the phone over in Settings comes back to their board; a stop in Settings comes back to Settings.
#[test]
fn settings_are_no_place_to_come_back_to_when_the_phone_is_handed_over() {
    let mut book = Book::in_memory().unwrap();
    let by = |signer: &str| Context { signer: signer.to_owned(), ..context("en", 1) };
    let take = |book: &mut Book, signer: &str| {
        made(book, SettingsAction::TakePhone { signer: signer.to_owned() }).unwrap();
        remembered(book).place
    };
    let board = Place::Board { board: "0a".repeat(16) };
    take(&mut book, "Ines");
    for place in [&board, &Place::Settings] {
        remember_place(&mut book, &by("Ines"), place).unwrap();
    }
    assert_eq!(remembered(&book).place, Place::Settings);
    assert_eq!(take(&mut book, "Lea"), Place::Jobs);
    assert_eq!(take(&mut book, "Ines"), board);
}

/// A phone asks for this after every tap: a look around must not cost a write.
#[test]
fn where_nobody_moved_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book.lapwright");
    let open = || Book::open(&path, &OpenOptions::default()).unwrap().0;
    let (mut book, other) = (open(), open());
    let mut writes = |place: &Place| {
        let before = other.store().foreign_writes().unwrap();
        remember_place(&mut book, &context("en", 1), place).unwrap();
        other.store().foreign_writes().unwrap() != before
    };
    let board = Place::Board { board: "0a".repeat(16) };
    assert!(writes(&board));
    assert!(!writes(&board));
    assert!(writes(&Place::Jobs));
}

#[test]
fn what_is_no_choice_changes_nothing() {
    let mut book = Book::in_memory().unwrap();
    set(&mut book, "show", "mm").unwrap();
    for (field, text, code) in [
        ("show", "cubits", "choice"),
        ("division", "1/7\"", "choice"),
        ("hand", "", "missing"),
        ("tape-error", "-1/16\"", "range"),
        ("tape-error", "soon", "length"),
        ("colour", "red", "unknown"),
    ] {
        assert_eq!(set(&mut book, field, text).unwrap_err().code, code, "{field} {text}");
    }
    let bad = SettingsAction::TakePhone { signer: "  ".to_owned() };
    assert_eq!(made(&mut book, bad).unwrap_err().field, "signer");
    assert_eq!((remembered(&book).show.as_str(), remembered(&book).division.as_str()), ("mm", "1/16\""));
}

#[test]
fn a_tape_error_stays_the_same_length_in_another_unit() {
    let mut book = Book::in_memory().unwrap();
    set(&mut book, "tape-error", "1/16").unwrap();
    let metric = Context { show: "mm".to_owned(), ..context("es", 3) };
    let View::SettingsKind { view } = view(&book, &metric, &Place::Settings).unwrap() else { panic!("settings") };
    let tape = view.settings.iter().find(|question| question.field == "tape-error").unwrap();
    assert_eq!(tape.reading.as_ref().unwrap().nm, 1_587_500);
}

#[test]
fn shows_what_it_showed() {
    let (mut book, _) = house();
    made(&mut book, SettingsAction::TakePhone { signer: "Ines".to_owned() }).unwrap();
    let shown = view(&book, &context("en", 4), &Place::Settings).unwrap();
    insta::assert_json_snapshot!("settings", shown);
}

#[test]
fn keys_of_a_setting_and_of_a_new_name_are_kept_until_they_are_accepted() {
    let mut book = Book::in_memory().unwrap();
    let keep = |field: &str, text: &str| SettingsAction::KeepDraft { field: field.to_owned(), text: text.to_owned() };
    let asked = |view: SettingsView| view.asked.map(|question| (question.field, question.draft));
    let typed = made(&mut book, keep("saw", "Table")).unwrap();
    assert_eq!(asked(typed), Some(("saw".to_owned(), "Table".to_owned())));
    assert_eq!(asked(set(&mut book, "saw", "Table saw").unwrap()), None);
    let typed = made(&mut book, keep("signer", "Le")).unwrap();
    assert_eq!(asked(typed), Some(("signer".to_owned(), "Le".to_owned())));
    let taken = made(&mut book, SettingsAction::TakePhone { signer: "Lea".to_owned() }).unwrap();
    assert_eq!(asked(taken), None);
    assert_eq!(made(&mut book, keep("no-such", "1")).unwrap_err().code, "unknown");
}

/// The phone's own language, until somebody chooses: not over what was chosen, and none that the program does not speak.
#[test]
fn before_a_language_is_chosen_the_one_that_is_spoken_is_shown() {
    let mut book = Book::in_memory().unwrap();
    for (language, name) in [("en", "English"), ("es", "Español")] {
        let view: SettingsView = shown(&book, language, Place::Settings);
        assert_eq!(view.settings[0].answer, name);
    }
    set(&mut book, "language", "en").unwrap();
    assert_eq!(shown::<SettingsView>(&book, "es", Place::Settings).settings[0].answer, "English");
}

#[test]
fn a_new_book_speaks_the_language_of_its_phone() {
    let (mut book, _) = house();
    speak_first(&mut book, "fr").unwrap();
    assert_eq!(remembered(&book).language, "en");
    speak_first(&mut book, "es").unwrap();
    assert_eq!(remembered(&book).language, "es");
    speak_first(&mut book, "en").unwrap();
    assert_eq!(remembered(&book).language, "es");
}
