//! Cautions are shown where they matter once a day and house; whoever ticks their step has read them.

use crate::steps::Step;
use crate::store::{Id, Store};

use super::context::Terms;
use super::moment;
use super::trouble::Kept;

/// Whether everything there is to mind at a step was read today on this phone.
pub(super) fn read(store: &Store, terms: &Terms<'_>, job: Option<Id>, step: &Step) -> Kept<bool> {
    Ok(unread(store, terms, job, step)?.is_empty())
}

/// Keeps that what there is to mind at a step was read today.
pub(super) fn keep_read(store: &mut Store, terms: &Terms<'_>, job: Option<Id>, step: &Step) -> Kept<()> {
    for key in unread(store, terms, job, step)? {
        store.setting_put(&key, &today(terms))?;
    }
    Ok(())
}

/// The settings of those that were not read today.
fn unread(store: &Store, terms: &Terms<'_>, job: Option<Id>, step: &Step) -> Kept<Vec<String>> {
    let (job, today) = (job.map(|job| job.to_string()).unwrap_or_default(), today(terms));
    let mut unread = Vec::new();
    for caution in &step.cautions {
        let key = format!("caution/{job}/{}", caution.code());
        if store.setting_get(&key)?.is_none_or(|day| day != today) {
            unread.push(key);
        }
    }
    Ok(unread)
}

fn today(terms: &Terms<'_>) -> String {
    moment::day(terms.context.now_ms, terms.context.utc_offset_minutes)
}
