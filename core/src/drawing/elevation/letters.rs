use super::{Through, WallScale};
use crate::drawing::clip::Dp;
use crate::drawing::flag;
use crate::drawing::page::Page;
use crate::drawing::role::{Dash, Role};
use crate::drawing::sheet::{Area, HEAVY, Sheet};

/// How small a penetration is drawn at least, in dp.
const LEAST: f64 = 8.0;

/// The letter of the `n`th penetration.
pub(crate) fn letter(n: usize) -> String {
    let sign = char::from(b'A' + u8::try_from(n % 26).unwrap_or(0));
    if n < 26 { sign.to_string() } else { format!("{sign}{}", n / 26) }
}

/// The penetrations, and the letter of each in a box of its own as near to it as there is room; over a joint only where
/// there is no other.
pub(super) fn draw(sheet: &mut Sheet, page: &Page, scale: &WallScale, penetrations: &[Through], joints: &[[Dp; 2]]) {
    let areas: Vec<Area> = penetrations.iter().map(|through| grown(scale.area(&through.at))).collect();
    let joint = |[(x, bottom), (_, top)]: &[Dp; 2]| Area { left: *x, top: *top, right: *x, bottom: *bottom };
    let joints: Vec<Area> = joints.iter().map(joint).collect();
    for area in &areas {
        sheet.fill(Role::Ground, &area.corners());
        sheet.outline(Role::Chalk, Dash::Solid, HEAVY, &area.corners());
    }
    for (n, area) in areas.iter().enumerate() {
        flag::put(sheet, page, &letter(n), area, (&areas, &joints));
    }
}

/// A penetration is drawn large enough to be seen.
fn grown(area: Area) -> Area {
    let (wide, high) = ((LEAST - area.width()).max(0.0) / 2.0, (LEAST - area.height()).max(0.0) / 2.0);
    Area { left: area.left - wide, top: area.top - high, right: area.right + wide, bottom: area.bottom + high }
}
