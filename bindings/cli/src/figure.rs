//! `lapwright figure QUESTION`: one JSON object in, one out.

use std::io::{Read, Write};
use std::process::ExitCode;
use std::sync::OnceLock;
use std::time::{Duration, Instant};

use lapwright::figure::{self, QUESTIONS};
use lapwright::phrases::Phrases;

use crate::fault::Fault;
use crate::locale;

/// The most that is read from standard input.
const MOST_BYTES: u64 = 64 << 20;

/// Names the questions.
pub(crate) fn list() -> ExitCode {
    let names: Vec<&str> = QUESTIONS.iter().map(|question| question.name).collect();
    print(&names.join("\n"))
}

/// Shows a question with its answer.
pub(crate) fn help(name: &str) -> ExitCode {
    match figure::question(name) {
        Some(question) => print(&page(question)),
        None => reply(&figure::answer_timed(name, b"{}", locale::chosen(), clock)),
    }
}

/// Answers a question.
pub(crate) fn answer(name: &str) -> ExitCode {
    let mut request = Vec::new();
    if let Err(error) = std::io::stdin().lock().take(MOST_BYTES).read_to_end(&mut request) {
        Fault::input(&error).say(true);
        return ExitCode::from(2);
    }
    reply(&figure::answer_timed(name, &request, locale::chosen(), clock))
}

/// The time since it was first asked for.
fn clock() -> Duration {
    static START: OnceLock<Instant> = OnceLock::new();
    START.get_or_init(Instant::now).elapsed()
}

fn page(question: &figure::FigureQuestion) -> String {
    let answer = figure::answer(question.name, question.example);
    let help = Phrases::for_language(locale::chosen()).phrase(question.help, &[]);
    format!(
        "lapwright figure {}\n\n{help}\n\nrequest:\n{}\n\nanswer:\n{}",
        question.name, question.example, answer.json
    )
}

fn reply(answered: &figure::Answered) -> ExitCode {
    let printed = print(&answered.json);
    if answered.is_error { ExitCode::from(2) } else { printed }
}

fn print(text: &str) -> ExitCode {
    crate::run::ended(writeln!(std::io::stdout(), "{text}"))
}
