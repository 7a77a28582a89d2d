use crate::flashing::{WallRectangle, duct_narrow, way_between};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::phrases::key;
use crate::rules::keys;
use crate::views::Note;
use crate::wall::PenetrationKind;
use crate::work::PenetrationSite;

/// What is doubtful about a hood where a dryer blows through it: too narrow a duct, or an opening too near.
pub(crate) fn notes(terms: &Terms<'_>, site: &PenetrationSite) -> Result<Vec<Note>> {
    let mut notes = Vec::new();
    if site.penetration.kind != PenetrationKind::VentHood {
        return Ok(notes);
    }
    let rules = site.work.rules();
    let note = Note::check;
    if duct_narrow(rules, site.penetration.shape)? {
        let area = rules.get(keys::DRYER_OPEN_AREA)?.text_in(terms.phrases.language());
        notes.push(note("duct-narrow", terms.phrase(key("penetration-duct-narrow"), &[("area", area.into())])));
    }
    let least = rules.get_length(keys::DRYER_FROM_OPENINGS)?;
    let duct = site.pipe().area();
    let ways = site.wall.openings.iter().map(|(_, opening)| {
        let across = opening.across();
        let area = WallRectangle { left: across.from, right: across.to, bottom: opening.bottom, top: opening.top };
        way_between(duct, area)
    });
    if let Some(way) = ways.min().filter(|way| *way < least) {
        let args = [("way", terms.shown(way).into()), ("least", terms.shown(least).into())];
        notes.push(note("hood-near-opening", terms.phrase(key("penetration-hood-near-opening"), &args)));
    }
    Ok(notes)
}
