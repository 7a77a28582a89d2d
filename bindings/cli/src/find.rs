//! Things by the words of a person: a name, or the beginning of an id.

use crate::fault::Fault;

/// A thing that can be named.
pub(crate) struct Named {
    /// Its id.
    pub(crate) id: String,
    /// Its name.
    pub(crate) name: String,
}

/// The least characters of an id that name a thing.
const LEAST: usize = 4;

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
/// A fault that lists what there is, where nothing or more than one thing is meant.
pub(crate) fn one(field: &str, text: &str, things: &[Named]) -> Result<String, Fault> {
    let lower = text.to_lowercase();
    let by_name: Vec<&Named> = things.iter().filter(|thing| thing.name.to_lowercase() == lower).collect();
    let by_id = || things.iter().filter(|thing| text.len() >= LEAST && begins(&thing.id, text)).collect();
    let found: Vec<&Named> = if by_name.is_empty() { by_id() } else { by_name };
    match found.as_slice() {
        [thing] => Ok(thing.id.clone()),
        [] if text.len() == 32 => Ok(text.to_owned()),
        _ => {
            let known = |thing: &Named| format!("{} ({})", thing.name, thing.id.chars().take(8).collect::<String>());
            Err(Fault::unknown(field, text, &things.iter().take(12).map(known).collect::<Vec<_>>()))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_or_the_beginning_of_an_id() {
        let thing = |id: &str, name: &str| Named { id: id.to_owned(), name: name.to_owned() };
        let things = [thing("aaaa1111", "North"), thing("aaaa2222", "South"), thing("bbbb3333", "South")];
        assert_eq!(one("wall", "north", &things).ok().as_deref(), Some("aaaa1111"));
        assert_eq!(one("wall", "bbbb", &things).ok().as_deref(), Some("bbbb3333"));
        for text in ["south", "aaaa", "bbb", "", "west"] {
            assert!(one("wall", text, &things).is_err(), "{text}");
        }
    }
}
