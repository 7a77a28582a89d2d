//! Things by the words of a person: a name, or the beginning of an id.

use lapwright::phrases::nearest;

use crate::fault::Fault;

/// A thing that can be named.
pub(crate) struct Named {
    /// Its id.
    pub(crate) id: String,
    /// Its name.
    name: String,
    /// What else it is called.
    also: Vec<String>,
    /// What tells it from others of the same name.
    told: String,
}

impl Named {
    /// A thing with its name.
    pub(crate) fn new(id: impl Into<String>, name: impl Into<String>) -> Self {
        Self { id: id.into(), name: name.into(), also: Vec::new(), told: String::new() }
    }

    /// The same with another name, too.
    pub(crate) fn also(mut self, name: &str) -> Self {
        self.also.push(name.to_owned());
        self
    }

    /// The same with what tells it from others of its name.
    pub(crate) fn told(self, told: impl Into<String>) -> Self {
        Self { told: told.into(), ..self }
    }

    fn is_called(&self, lower: &str) -> bool {
        std::iter::once(&self.name).chain(&self.also).any(|name| name.to_lowercase() == lower)
    }

    /// Its name, what tells it apart, and a beginning of its id that names it.
    fn shown(&self) -> String {
        let (id, place) = self.id.split_once('/').map_or((&*self.id, None), |(id, place)| (id, Some(place)));
        let id: String =
            id.chars().take(SHOWN).chain(place.map(|place| format!("/{place}")).unwrap_or_default().chars()).collect();
        let said = [self.name.as_str(), self.told.as_str()];
        let said: Vec<&str> = said.into_iter().filter(|said| !said.is_empty() && *said != id).collect();
        if said.is_empty() { id } else { format!("{} ({id})", said.join(", ")) }
    }
}

/// The least characters of an id that name a thing.
const LEAST: usize = 4;

/// The characters of an id that are shown, and the things of a list.
const SHOWN: usize = 8;
const LISTED: usize = 12;

/// Whether a text is the beginning of an id. A detail's id has its place behind a slash, and only what says the place names it.
fn begins(id: &str, text: &str) -> bool {
    match (id.split_once('/'), text.split_once('/')) {
        (Some((id, place)), Some((text, said))) => place == said && id.starts_with(text),
        (None, None) => id.starts_with(text),
        _ => false,
    }
}

/// The one thing that `text` names; a name in any case, else the beginning of an id.
///
/// # Errors
/// A fault that lists what there is where nothing is meant, the nearest first, and what tells them apart where more than
/// one thing is.
pub(crate) fn one(field: &str, text: &str, things: &[Named]) -> Result<String, Fault> {
    let lower = text.to_lowercase();
    let by_name: Vec<&Named> = things.iter().filter(|thing| thing.is_called(&lower)).collect();
    let by_id = || things.iter().filter(|thing| text.len() >= LEAST && begins(&thing.id, text)).collect();
    let found: Vec<&Named> = if by_name.is_empty() { by_id() } else { by_name };
    match found.as_slice() {
        [thing] => Ok(thing.id.clone()),
        [] if text.len() == 32 => Ok(text.to_owned()),
        [] => Err(Fault::unknown(field, text, &listed(&sorted(text, things)))),
        several => Err(Fault::several(field, text, &listed(several))),
    }
}

/// The things, those whose names are nearest to a text first.
fn sorted<'a>(text: &str, things: &'a [Named]) -> Vec<&'a Named> {
    let (_, names) = nearest(text, things.iter().map(|thing| thing.name.clone()).collect());
    let mut sorted: Vec<&Named> = things.iter().collect();
    sorted.sort_by_key(|thing| names.iter().position(|name| *name == thing.name));
    sorted
}

fn listed(things: &[&Named]) -> Vec<String> {
    let mut listed: Vec<String> = things.iter().take(LISTED).map(|thing| thing.shown()).collect();
    if things.len() > LISTED {
        listed.push("…".to_owned());
    }
    listed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_or_the_beginning_of_an_id() {
        let things = [
            Named::new("aaaa1111", "North"),
            Named::new("aaaa2222", "South"),
            Named::new("bbbb3333", "South"),
            Named::new("cccc4444/sill", "Sill").also("Ledge"),
        ];
        assert_eq!(one("wall", "north", &things).ok().as_deref(), Some("aaaa1111"));
        assert_eq!(one("wall", "bbbb", &things).ok().as_deref(), Some("bbbb3333"));
        assert_eq!(one("wall", "LEDGE", &things).ok().as_deref(), Some("cccc4444/sill"));
        assert_eq!(one("wall", "cccc/sill", &things).ok().as_deref(), Some("cccc4444/sill"));
        for text in ["south", "aaaa", "bbb", "", "west", "cccc"] {
            assert!(one("wall", text, &things).is_err(), "{text}");
        }
    }

    #[test]
    fn what_is_shown_names_the_thing_again() {
        let ids = ["0123456789abcdef0123456789abcdef", "fedcba9876543210fedcba9876543210/head"];
        let things = ids.map(|id| Named::new(id, "Door").told("36\" wide"));
        for thing in &things {
            let shown = thing.shown();
            let (_, id) = shown.rsplit_once('(').unwrap();
            assert_eq!(one("part", id.trim_end_matches(')'), &things).ok().as_deref(), Some(&*thing.id), "{shown}");
            assert!(shown.starts_with("Door, 36\" wide ("), "{shown}");
        }
    }
}
