use super::clip::Dp;
use super::role::{Dash, Role};
use super::sheet::{HEAVY, PLAIN, Sheet, THIN};

/// How a line of measure begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Begins {
    /// At an end of the board that the tape is hooked on.
    Hook,
    /// Further away than is drawn.
    Beyond,
}

/// How long an arrow head is at most, in dp.
const HEAD: f64 = 9.0;

/// A line of measure along `y` from `from` to an arrow at `to`.
pub(super) fn across(sheet: &mut Sheet, (from, to): (f64, f64), y: f64, begins: Begins) {
    chalk(sheet, &[(from, y), (to, y)]);
    match begins {
        Begins::Hook => sheet.line(Role::Chalk, Dash::Solid, PLAIN, &[(from, y - 6.0), (from, y + 6.0)]),
        Begins::Beyond => {
            let slash = |x: f64| [(x - 3.0, y + 6.0), (x + 3.0, y - 6.0)];
            sheet.line(Role::Chalk, Dash::Solid, PLAIN, &slash(from + 5.0));
            sheet.line(Role::Chalk, Dash::Solid, PLAIN, &slash(from + 10.0));
        }
    }
    let long = HEAD.min((to - from).abs());
    head(sheet, (to, y), (if to < from { long } else { -long }, 0.0));
}

/// An upright line of measure between two heights, with an arrow at both.
pub(super) fn upright(sheet: &mut Sheet, x: f64, (from, to): (f64, f64)) {
    chalk(sheet, &[(x, from), (x, to)]);
    let long = HEAD.min((to - from).abs() / 2.0);
    let down = if to < from { -long } else { long };
    head(sheet, (x, from), (0.0, down));
    head(sheet, (x, to), (0.0, -down));
}

/// A level line of measure between two places, with an arrow at both.
pub(super) fn level(sheet: &mut Sheet, (from, to): (f64, f64), y: f64) {
    chalk(sheet, &[(from, y), (to, y)]);
    let long = HEAD.min((to - from).abs() / 2.0);
    let right = if to < from { -long } else { long };
    head(sheet, (from, y), (right, 0.0));
    head(sheet, (to, y), (-right, 0.0));
}

/// A tape from the hook to an arrow where it is read, in any direction: the one line of a drawing that counts.
pub(super) fn tape(sheet: &mut Sheet, hook: Dp, read: Dp) {
    let (x, y) = (read.0 - hook.0, read.1 - hook.1);
    let long = x.hypot(y).max(1.0);
    let (along, aside) = ((x / long, y / long), (-y / long, x / long));
    let foot = (HEAD * 1.4).min(long / 2.0);
    let end = (read.0 - along.0 * foot, read.1 - along.1 * foot);
    sheet.line(Role::Chalk, Dash::Solid, HEAVY, &[hook, end]);
    let bar = [-10.0, 10.0].map(|side| (hook.0 + aside.0 * side, hook.1 + aside.1 * side));
    sheet.line(Role::Chalk, Dash::Solid, HEAVY, &bar);
    head(sheet, read, (-along.0 * foot, -along.1 * foot));
}

/// A thin line that leads from what is measured to its line of measure.
pub(super) fn leader(sheet: &mut Sheet, points: &[Dp]) {
    sheet.line(Role::Chalk, Dash::Solid, THIN, points);
}

fn chalk(sheet: &mut Sheet, points: &[Dp]) {
    sheet.line(Role::Chalk, Dash::Solid, PLAIN, points);
}

/// An arrow head with its tip at `tip`; `back` leads from the tip to its foot.
fn head(sheet: &mut Sheet, tip: Dp, back: Dp) {
    let foot = (tip.0 + back.0, tip.1 + back.1);
    let aside = (-back.1 * 0.4, back.0 * 0.4);
    let corners = [tip, (foot.0 + aside.0, foot.1 + aside.1), (foot.0 - aside.0, foot.1 - aside.1)];
    sheet.fill(Role::Chalk, &corners);
}
