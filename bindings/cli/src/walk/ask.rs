//! Questions on a terminal; without one the demo's own answers.

use std::io::{BufRead as _, IsTerminal as _, Write as _};

use lapwright::views::Question;

use crate::paper::{Ink, Paper};

/// Whether somebody sits at the terminal.
pub(super) fn somebody() -> bool {
    std::io::stdin().is_terminal() && std::io::stdout().is_terminal()
}

/// What a person said.
pub(super) enum Said {
    /// An answer, or the planned one where it is empty.
    Answer(String),
    /// Leave: everything answered is kept.
    Leave,
}

/// Asks one question; Enter takes what is in brackets.
pub(super) fn question(paper: &Paper, question: &Question, planned: &str) -> Said {
    let mut asked = format!("{}\n", paper.wrapped(&format!("  {}", question.title)));
    if !question.hint.is_empty() {
        asked.push_str(&paper.wrapped(&format!("  {}", paper.set(Ink::Faint, &question.hint))));
        asked.push('\n');
    }
    match line(&format!("{asked}  [{planned}] > ")) {
        Some(text) if text.is_empty() => Said::Answer(planned.to_owned()),
        Some(text) if text.eq_ignore_ascii_case("q") => Said::Leave,
        Some(text) => Said::Answer(text),
        None => Said::Leave,
    }
}

/// Waits for Enter; whether to go on.
pub(super) fn go_on(prompt: &str) -> bool {
    line(&format!("{prompt} > ")).is_some_and(|text| !text.eq_ignore_ascii_case("q"))
}

fn line(prompt: &str) -> Option<String> {
    // Nobody answers what cannot be asked.
    let mut stdout = std::io::stdout().lock();
    stdout.write_all(prompt.as_bytes()).and_then(|()| stdout.flush()).ok()?;
    drop(stdout);
    let mut line = String::new();
    match std::io::stdin().lock().read_line(&mut line) {
        Ok(count) if count > 0 => Some(line.trim().to_owned()),
        _ => None,
    }
}

/// What is typed; Enter takes what is in brackets, and nothing comes at the end of the input.
pub(super) fn typed(planned: &str) -> Option<String> {
    let text = line(&format!("  [{planned}] > "))?;
    Some(if text.is_empty() { planned.to_owned() } else { text })
}
