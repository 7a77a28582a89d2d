//! The story pole: a stick with the lines to transfer, and the marks that they meet or miss.

use crate::phrases::{Phrases, key};
use crate::views::{MarkLine, PoleLine, PoleView};

use super::clip::Dp;
use super::font::CAPITAL;
use super::page::{MARGIN, Page, row};
use super::role::{Dash, Role};
use super::sheet::{Area, HEAVY, Label, PLAIN, Sheet, THIN};
use super::stroke::{Anchor, Stroke};

/// What is drawn of a pole.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(crate) struct Stick {
    /// From the lowest up.
    pub(super) lines: Vec<StickLine>,
    pub(super) marks: Vec<StickMark>,
    /// What stands at the lowest line.
    pub(super) datum: String,
}

/// A line of the pole.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct StickLine {
    pub(super) nm: i64,
    pub(super) text: String,
}

/// A height that lines should meet or stay clear of.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct StickMark {
    pub(super) nm: i64,
    /// Its name, and by how much it is missed.
    pub(super) text: String,
    /// Absent until there is a layout.
    pub(super) met: Option<bool>,
}

/// How wide the stick is, in dp.
const WIDE: f64 = 26.0;
/// From the stick to the texts, in dp.
const LEAD: f64 = 26.0;

/// Which marks are left out first: those that are met.
const MET: u8 = 9;
/// How full of texts the stick's side may be before marks that are met are left out.
const FULL: f64 = 0.8;

/// What stands beside the stick, by how much it may be left out: what is missed never first.
struct Beside {
    rank: u8,
    y: f64,
    text: String,
    role: Role,
}

impl Stick {
    /// What is drawn of a pole, from what its view holds.
    pub(crate) fn of(phrases: &Phrases, view: &PoleView) -> Self {
        let line = |line: &PoleLine| StickLine {
            nm: line.height.nm,
            text: phrases
                .phrase("drawing-pole-line", &[("course", line.course.into()), ("height", (&line.height.text).into())]),
        };
        let mark = |mark: &MarkLine| {
            let missed = mark.miss.as_ref().filter(|miss| miss.nm != 0);
            let text = match (missed, mark.want.as_str()) {
                (None, _) => mark.name.clone(),
                (Some(miss), want) => {
                    let args = [("name", (&mark.name).into()), ("miss", (&miss.text).into())];
                    let key = if want == "clear" { key("drawing-pole-near") } else { key("drawing-pole-missed") };
                    phrases.phrase(key, &args)
                }
            };
            StickMark { nm: mark.at.nm, text, met: mark.miss.as_ref().map(|miss| miss.nm == 0) }
        };
        Self {
            lines: view.lines.iter().map(line).collect(),
            marks: view.marks.iter().map(mark).collect(),
            datum: phrases.phrase("drawing-pole-datum", &[]),
        }
    }

    /// What a screen reader says of it.
    pub(crate) fn spoken(&self, phrases: &Phrases) -> String {
        let missed = self.marks.iter().filter(|mark| mark.met == Some(false)).count();
        let args = [
            ("lines", self.lines.len().into()),
            ("top", self.lines.last().map_or("", |line| line.text.as_str()).into()),
            ("marks", self.marks.len().into()),
            ("missed", missed.into()),
        ];
        phrases.phrase("drawing-pole-spoken", &args)
    }

    /// The marks; those of one height that came out alike stand once, with how many more there are.
    fn grouped(&self) -> Vec<(&StickMark, usize)> {
        let mut grouped: Vec<(&StickMark, usize)> = Vec::new();
        for mark in &self.marks {
            let alike = |(other, _): &&mut (&StickMark, usize)| other.nm == mark.nm && other.met == mark.met;
            match grouped.iter_mut().find(alike) {
                Some((_, more)) if mark.met != Some(false) => *more += 1,
                _ => grouped.push((mark, 0)),
            }
        }
        grouped
    }

    /// Draws the stick, away from the hand that holds the phone; also how high it came out.
    pub(crate) fn draw(&self, page: &Page) -> (Vec<Stroke>, f64) {
        let heights = || self.lines.iter().map(|line| line.nm).chain(self.marks.iter().map(|mark| mark.nm));
        let from = heights().min().unwrap_or(0).min(0) as f64;
        let to = heights().max().unwrap_or(1) as f64;
        let every = (self.lines.len() + self.marks.len() + 1) as f64 * row(page.small);
        let height = ((every * 1.4).max(360.0) + 2.0 * MARGIN).min(page.height);
        let mut sheet = Sheet::new(page.width, height);
        let (top, bottom) = (MARGIN + row(page.small) / 2.0, height - MARGIN - row(page.small) / 2.0);
        let dp = (bottom - top) / (to - from).max(1.0);
        let y = |nm: i64| bottom - (nm as f64 - from) * dp;
        self.stick(&mut sheet, page, (top, bottom), &y);
        let mut beside: Vec<Beside> = Vec::new();
        let lines = self.lines.len();
        for (at, line) in self.lines.iter().enumerate() {
            // Which numbers stay where not all have room: the ends, then every tenth, fifth, second.
            let rank = match at {
                0 => 0,
                at if at + 1 == lines => 0,
                at if (at + 1) % 10 == 0 => 2,
                at if (at + 1) % 5 == 0 => 3,
                at if (at + 1) % 2 == 0 => 5,
                _ => 6,
            };
            beside.push(Beside { rank, y: y(line.nm), text: line.text.clone(), role: Role::Ink });
        }
        for (mark, more) in self.grouped() {
            let (sign, rank, role) = match mark.met {
                Some(true) => ("✓ ", MET, Role::Done),
                Some(false) => ("▲ ", 1, Role::Warning),
                None => ("", MET, Role::Ink),
            };
            let more = if more == 0 { String::new() } else { format!(" +{more}") };
            beside.push(Beside { rank, y: y(mark.nm), text: format!("{sign}{}{more}", mark.text), role });
        }
        if self.lines.first().is_none_or(|line| line.nm != 0) {
            beside.push(Beside { rank: 0, y: y(0), text: self.datum.clone(), role: Role::Planned });
        }
        texts(&mut sheet, page, beside, (MARGIN, height - MARGIN));
        (sheet.into_strokes(), height)
    }

    /// The stick with its lines; a mark is a dotted line where it is met and a dashed one where it is missed.
    fn stick(&self, sheet: &mut Sheet, page: &Page, (top, bottom): Dp, y: &dyn Fn(i64) -> f64) {
        let (near, far) = (flip(page, MARGIN), flip(page, MARGIN + WIDE));
        let stick = Area { left: near.min(far), top: top - 4.0, right: near.max(far), bottom: bottom + 4.0 };
        sheet.fill(Role::Board, &stick.corners());
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &stick.corners());
        for line in &self.lines {
            sheet.line(Role::Chalk, Dash::Solid, HEAVY, &[(near, y(line.nm)), (far, y(line.nm))]);
        }
        for mark in &self.marks {
            let (role, pattern) = match mark.met {
                Some(true) => (Role::Done, Dash::Dotted),
                Some(false) => (Role::Warning, Dash::Dashed),
                None => (Role::Ink, Dash::Dotted),
            };
            sheet.line(role, pattern, PLAIN, &[(near, y(mark.nm)), (flip(page, MARGIN + WIDE + 8.0), y(mark.nm))]);
        }
    }
}

/// The hand that holds the phone covers its own side: the stick stands there, the texts on the other.
fn flip(page: &Page, x: f64) -> f64 {
    if page.left_hand { x } else { page.width - x }
}

/// The texts, spread so that none lies over another; where not all have room the least weighty are left out.
fn texts(sheet: &mut Sheet, page: &Page, mut beside: Vec<Beside>, (top, bottom): Dp) {
    let line = row(page.small);
    let room = ((bottom - top) / line).max(0.0) as usize;
    beside.sort_by(|a, b| (a.rank, a.y).partial_cmp(&(b.rank, b.y)).unwrap_or(std::cmp::Ordering::Equal));
    let mut count = 0;
    beside.retain(|beside| {
        count += 1;
        count <= if beside.rank == MET { (room as f64 * FULL) as usize } else { room }
    });
    beside.sort_by(|a, b| a.y.total_cmp(&b.y));
    let middles = spread(&beside.iter().map(|beside| beside.y).collect::<Vec<_>>(), line, (top, bottom));
    let anchor = if page.left_hand { Anchor::Start } else { Anchor::End };
    let text_at = flip(page, MARGIN + WIDE + LEAD + 4.0);
    let width = page.width - 2.0 * MARGIN - WIDE - LEAD - 4.0;
    for (beside, middle) in beside.iter().zip(middles) {
        let leader = [
            (flip(page, MARGIN + WIDE), beside.y),
            (flip(page, MARGIN + WIDE + 8.0), beside.y),
            (flip(page, MARGIN + WIDE + LEAD - 6.0), middle),
            (flip(page, MARGIN + WIDE + LEAD), middle),
        ];
        sheet.line(beside.role, Dash::Solid, THIN, &leader);
        let text = shortened(page, &beside.text, beside.role, width);
        let label = page.small(&text, beside.role);
        let label = Label { em: label.em.min(label.em * width / label.width().max(1.0)), ..label };
        sheet.text(&label, anchor, (text_at, middle + label.em * CAPITAL / 2.0));
    }
}

/// A text cut off at the end where it is too wide: the name of a mark is anybody's, its miss stands before it.
fn shortened(page: &Page, text: &str, role: Role, width: f64) -> String {
    let mut kept = text.to_owned();
    let mut shown = text.to_owned();
    while page.small(&shown, role).em >= page.small && page.small(&shown, role).width() > width
        || page.small(&shown, role).em < page.small
    {
        if kept.pop().is_none() {
            break;
        }
        shown = format!("{}…", kept.trim_end());
    }
    shown
}

/// Middles `line` apart, each as near to its own as the others allow, between `top` and `bottom`; they come in order.
fn spread(wanted: &[f64], line: f64, (top, bottom): Dp) -> Vec<f64> {
    // A hair more than a line apart, so that rounding to single precision keeps them so.
    let line = line + 0.001;
    let mut middles = Vec::with_capacity(wanted.len());
    let mut least = top + line / 2.0;
    for y in wanted {
        let middle = y.max(least);
        middles.push(middle);
        least = middle + line;
    }
    let mut most = bottom - line / 2.0;
    for middle in middles.iter_mut().rev() {
        *middle = middle.min(most);
        most = *middle - line;
    }
    middles
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn spread_middles_keep_their_order_and_distance(mut wanted in proptest::collection::vec(0.0..1000.0_f64, 1..40)) {
            wanted.sort_by(f64::total_cmp);
            let middles = spread(&wanted, 20.0, (0.0, 1000.0));
            prop_assert!(middles.windows(2).all(|pair| pair[1] - pair[0] >= 20.0));
            prop_assert!(middles[0] >= 10.0 && middles[middles.len() - 1] <= 990.0);
            if wanted.windows(2).all(|pair| pair[1] - pair[0] > 20.1) && wanted[0] > 11.0 && wanted[wanted.len() - 1] < 989.0 {
                prop_assert!(middles == wanted, "what has room stays where it is");
            }
        }
    }
}
