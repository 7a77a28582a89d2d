use super::font::CAPITAL;
use super::page::Page;
use super::role::{Dash, Role};
use super::sheet::{Area, PLAIN, Sheet, THIN};
use super::stroke::Anchor;

/// A letter or a number in a box of its own, as near to `area` as there is room, with a line that leads there. It never
/// covers what it is to `avoid`, and what it would `rather` leave only where there is no other room.
pub(super) fn put(sheet: &mut Sheet, page: &Page, text: &str, area: &Area, (avoid, rather): (&[Area], &[Area])) {
    if !put_clear(sheet, page, text, area, &[avoid, rather].concat()) && !rather.is_empty() {
        put_clear(sheet, page, text, area, avoid);
    }
}

/// The same clear of all of `avoid`; says whether it found room.
fn put_clear(sheet: &mut Sheet, page: &Page, text: &str, area: &Area, avoid: &[Area]) -> bool {
    let label = page.small(text, Role::Ink);
    let (half, tall) = (label.width().max(label.em * 0.7) / 2.0 + 3.0, label.em * CAPITAL + 7.0);
    let (x, y) = ((area.left + area.right) / 2.0, (area.top + area.bottom) / 2.0);
    for (dx, dy) in places(area, half, tall) {
        let (middle, height) = (x + dx, y + dy);
        let flag =
            Area { left: middle - half, top: height - tall / 2.0, right: middle + half, bottom: height + tall / 2.0 };
        let base = (middle, height + label.em * CAPITAL / 2.0);
        let room = sheet.room(&label, Anchor::Middle, base);
        if !sheet.is_free(&flag) || !sheet.is_free(&room) || avoid.iter().any(|other| other.meets(&flag)) {
            continue;
        }
        let (wide, high) = (area.width() / 2.0, area.height() / 2.0);
        let near = (x + dx.max(-wide).min(wide), y + dy.max(-high).min(high));
        sheet.line(Role::Chalk, Dash::Solid, THIN, &[near, (middle, height)]);
        sheet.fill(Role::Ground, &flag.corners());
        sheet.outline(Role::Chalk, Dash::Solid, PLAIN, &flag.corners());
        sheet.text(&label, Anchor::Middle, base);
        sheet.take(flag);
        return true;
    }
    false
}

/// Where a flag may stand, from the middle of what it belongs to: round it, the nearest first.
fn places(area: &Area, half: f64, tall: f64) -> Vec<(f64, f64)> {
    let ways = [(1.0, 0.0), (-1.0, 0.0), (0.0, -1.0), (0.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
    let ring = |n: u32| {
        let away = 4.0 + f64::from(n) * 10.0;
        let (x, y) = (area.width() / 2.0 + half + away, area.height() / 2.0 + tall / 2.0 + away);
        ways.map(|(right, down)| (right * x, down * y))
    };
    (0..12).flat_map(ring).collect()
}
