use crate::store::Id;
use crate::views::{Place, View};

/// What an action of a screen did.
pub(super) struct ActionResult {
    /// Where to go.
    pub(super) place: Place,
    /// The answer that was accepted, if one was.
    pub(super) group: Option<Id>,
    /// What to show there, where it says more than the place alone does.
    pub(super) view: Option<View>,
}

impl ActionResult {
    /// An accepted answer, and where to go.
    pub(super) const fn at(place: Place, group: Id) -> Self {
        Self { place, group: Some(group), view: None }
    }

    /// No answer was accepted, and more is to be shown than the place alone does, where it could be made.
    pub(super) const fn showing(place: Place, view: Option<View>) -> Self {
        Self { place, group: None, view }
    }

    /// Nothing of the book changed: a draft, a setting, a look.
    pub(super) const fn without_answer(place: Place) -> Self {
        Self { place, group: None, view: None }
    }
}
