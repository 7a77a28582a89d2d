use super::*;
use crate::drawing::tape_place;
use crate::phrases::{Language, Phrases};

/// Every picture, written to look at where `LAPWRIGHT_PICTURES` names a folder, in both languages, in a strip and a large frame, at usual and at large text.
#[test]
fn every_picture_is_well_laid_and_has_one_tape_in_it() {
    for language in Language::ALL {
        let phrases = Phrases::for_language(*language);
        for question in tape_place::questions() {
            let place = TapePlace::of(phrases, question).unwrap();
            for (width, height, text) in [(344.0, 130.0, 1.0), (344.0, 130.0, 2.0), (700.0, 300.0, 1.0)] {
                let page = Page::new([width, height, 18.0 * text, 16.0 * text], false);
                let (strokes, high) = place.draw(&page);
                assert!(high as f32 <= height, "{question}");
                assert_well_laid(&strokes, width, high as f32);
                let is_tape = |stroke: &&Stroke| {
                    matches!(stroke, Stroke::Line { role: Role::Chalk, .. } | Stroke::Fill { role: Role::Chalk, .. })
                };
                // The tape, the bar it hooks on, the arrow.
                assert_eq!(strokes.iter().filter(is_tape).count(), 3, "{question}");
                if let Some(folder) = std::env::var_os("LAPWRIGHT_PICTURES").filter(|_| *language == Language::English)
                {
                    let text = svg(&strokes, (width, high as f32), Theme::Sun, question);
                    let name = format!("{question}-{width}-{text:.0}.svg", text = page.small);
                    std::fs::write(std::path::Path::new(&folder).join(name), text).unwrap();
                }
                if text < 2.0 {
                    assert_eq!(texts(&strokes).len(), 2, "{question} {width}: hook and read");
                }
            }
            assert!(place.spoken(phrases).contains(&phrases.phrase(question, &[])));
        }
    }
}
