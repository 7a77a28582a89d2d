//! The call that does what comes next, as it is typed.

use lapwright::views::{AnswerKind, NextWork, Question};

use super::jobs::short;
use crate::paper::Paper;

/// The call that does it, behind the program's own name; none where nothing is left. `house` is its name and id.
pub(crate) fn of_next(paper: &Paper, (name, id): (&str, &str), next: &NextWork) -> Option<String> {
    let house = word(name, id);
    Some(match next {
        NextWork::AnswerJob { question } => format!("house {house} {}", answer(paper, question)),
        NextWork::AddStock => format!("stock {house} {}", paper.phrase("command-value-length", &[])),
        NextWork::AddWall => format!("add-wall {house} {}", paper.phrase("command-value-name", &[])),
        NextWork::MeasureWall { wall, name, question } => of_wall(paper, (name, wall), question),
        NextWork::LayOutPole => format!("pole {house}"),
        NextWork::PlanWall { wall, name } => format!("plan {}", word(name, wall)),
        NextWork::MakeTight { penetration, step, .. } => format!("tick {} {step}", whole(penetration)),
        NextWork::HangBoard { board, cut, .. } => {
            format!("{} {}", if *cut { "tick" } else { "board" }, short(board)) + if *cut { " up" } else { "" }
        }
        NextWork::NothingLeft => return None,
    })
}

/// The call that answers a question of a wall; `wall` is its name and id.
pub(super) fn of_wall(paper: &Paper, (name, id): (&str, &str), question: &Question) -> String {
    format!("measure {} {}", word(name, id), answer(paper, question))
}

/// The call that answers a question of the pole.
pub(super) fn of_pole(paper: &Paper, job: &str, question: &Question) -> String {
    format!("pole {} {}", short(job), answer(paper, question))
}

/// An answer as it is typed, with a word in its place: what to choose from stands as the first choice.
fn answer(paper: &Paper, question: &Question) -> String {
    let choice = question.choices.first().filter(|_| question.kind == AnswerKind::ChoiceKind);
    let value = match question.kind {
        AnswerKind::LengthKind => "command-value-length",
        _ => "command-value-value",
    };
    let said = choice.map_or_else(|| paper.phrase(value, &[]), |choice| choice.code.clone());
    format!("{}={said}", question.field)
}

/// A name as a shell takes it for one word, in quotes where it has blanks; the id where the name holds what shells read.
fn word(name: &str, id: &str) -> String {
    let plain = |sign: char| sign.is_alphanumeric() || "-_.".contains(sign);
    let quoted = |sign: char| plain(sign) || " ,:;()&/#'".contains(sign);
    if !name.is_empty() && !name.starts_with('-') && name.chars().all(plain) {
        name.to_owned()
    } else if !name.trim().is_empty() && !name.starts_with('-') && name.chars().all(quoted) {
        format!("\"{name}\"")
    } else {
        short(id).to_owned()
    }
}

/// The beginning of an id, with its place behind it where it has one.
fn whole(id: &str) -> String {
    match id.split_once('/') {
        Some((id, place)) => format!("{}/{place}", short(id)),
        None => short(id).to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shell_takes_a_name_for_one_word_and_reads_nothing_in_it() {
        for (name, typed) in [
            ("Front", "Front"),
            ("Lot 12", "\"Lot 12\""),
            ("Año-Nuevo", "Año-Nuevo"),
            ("O'Leary & co", "\"O'Leary & co\""),
            ("$(rm)", "0123abcd"),
            ("a\"b", "0123abcd"),
            ("`x`", "0123abcd"),
            ("--yes", "0123abcd"),
            ("wow!", "0123abcd"),
            ("", "0123abcd"),
            (" ", "0123abcd"),
        ] {
            assert_eq!(word(name, "0123abcdef"), typed, "{name}");
        }
    }
}
