//! `lapwright figure QUESTION`: one JSON object in, one out.

use std::io::{Read, Write};
use std::process::ExitCode;
use std::sync::OnceLock;
use std::time::{Duration, Instant};

use lapwright::figure::{self, QUESTIONS};
use lapwright::phrases::Phrases;

use crate::locale::language;

/// The most that is read from standard input.
const MOST_BYTES: u64 = 64 << 20;

/// Answers a question, names them all (`--list`) or shows one with its answer (`QUESTION --help`).
pub(crate) fn run(args: &[String]) -> ExitCode {
    let words: Vec<&str> = args.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["--list"] => {
            let names: Vec<&str> = QUESTIONS.iter().map(|question| question.name).collect();
            print(&names.join("\n"))
        }
        [name, "--help"] | ["--help", name] => match figure::question(name) {
            Some(question) => print(&help(question)),
            None => reply(&figure::answer(name, "{}")),
        },
        [name] if !name.starts_with('-') => {
            let mut request = Vec::new();
            if let Err(error) = std::io::stdin().lock().take(MOST_BYTES).read_to_end(&mut request) {
                eprintln!("lapwright: standard input: {error}");
                return ExitCode::from(2);
            }
            reply(&figure::answer_timed(name, &request, clock))
        }
        _ => {
            eprintln!("usage: lapwright figure QUESTION [--help] | --list");
            ExitCode::from(2)
        }
    }
}

/// The time since it was first asked for.
fn clock() -> Duration {
    static START: OnceLock<Instant> = OnceLock::new();
    START.get_or_init(Instant::now).elapsed()
}

fn help(question: &figure::Question) -> String {
    let answer = figure::answer(question.name, question.example);
    let help = Phrases::for_language(language()).phrase(question.help, &[]);
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
    // A closed pipe is not an error worth a message: the reader has had enough.
    match writeln!(std::io::stdout(), "{text}") {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("lapwright: standard output: {error}");
            ExitCode::from(2)
        }
    }
}
