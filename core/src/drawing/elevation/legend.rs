use super::letters::letter;
use super::{Through, look};
use crate::drawing::page::{MARGIN, Page, base, row};
use crate::drawing::role::Role;
use crate::drawing::sheet::{Area, PLAIN, Sheet};
use crate::drawing::stroke::Anchor;

/// One thing of the legend: a board's state, or the name of a penetration.
pub(super) struct LegendEntry {
    state: Option<&'static str>,
    text: String,
    /// From the left edge of the drawing, in dp.
    left: f64,
}

/// How wide the sample of a state is, in dp.
const SAMPLE: f64 = 30.0;
/// From one thing to the next, in dp.
const APART: f64 = 14.0;

/// The legend in rows: how boards of each state are drawn, then what the letters stand for.
pub(super) fn rows(page: &Page, words: &[String; 3], penetrations: &[Through]) -> Vec<Vec<LegendEntry>> {
    let states = ["planned", "cut", "fixed"].into_iter().zip(words).map(|(state, word)| (Some(state), word.clone()));
    let letters = penetrations.iter().enumerate().map(|(n, through)| (None, format!("{} {}", letter(n), through.name)));
    let mut rows: Vec<Vec<LegendEntry>> = Vec::new();
    let mut left = f64::INFINITY;
    for (state, text) in states.chain(letters) {
        let sample = if state.is_some() { SAMPLE + 6.0 } else { 0.0 };
        let width = sample + page.small(&text, Role::Ink).width();
        if left + width > page.width - MARGIN {
            rows.push(Vec::new());
            left = MARGIN;
        }
        if let Some(row) = rows.last_mut() {
            row.push(LegendEntry { state, text, left });
        }
        left += width + APART;
    }
    rows
}

pub(super) fn draw(sheet: &mut Sheet, page: &Page, rows: &[Vec<LegendEntry>], top: f64) {
    for (at, entries) in rows.iter().enumerate() {
        let top = top + row(page.small) * at as f64;
        for entry in entries {
            let mut left = entry.left;
            if let Some(state) = entry.state {
                let sample = Area { left, top: top + 5.0, right: left + SAMPLE, bottom: top + row(page.small) - 5.0 };
                let (fill, role, pattern) = look(state);
                sheet.fill(fill, &sample.corners());
                sheet.outline(role, pattern, PLAIN, &sample.corners());
                left += SAMPLE + 6.0;
            }
            let mut label = page.small(&entry.text, Role::Ink);
            let room = page.width - left - 0.5;
            if label.width() > room {
                label.em *= room / label.width();
            }
            sheet.text(&label, Anchor::Start, (left, top + base(page.small)));
        }
    }
}
