//! From a command to an action or a view, and back to text or JSON.

mod board;
mod document;
mod draw;
pub(crate) mod exchange;
mod house;
mod materials;
mod thing;
mod wall;

use std::collections::BTreeSet;
use std::io::Write as _;
use std::process::ExitCode;
use std::slice;

use lapwright::phrases::{Language, Phrases, nearest};
use lapwright::screens;
use lapwright::views::{
    Action, BoardAction, DifferencesAction, DoneListAction, DoneListView, HouseAction, JobsAction, Outcome,
    PenetrationAction, Place, RulesAction, SettingsAction, StepHow, View,
};

use crate::book::Book;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::locale;
use crate::options::{Answers, Options, Task};
use crate::paper::Paper;
use crate::show;
use crate::walk;

use self::thing::Said;

/// Prints what the command says of itself.
pub(crate) fn printed(text: std::io::Result<String>) -> ExitCode {
    let why = |error: std::io::Error| Fault::output(&error);
    ended_with(text.map_err(why).and_then(|text| out(text.trim_end())))
}

/// How a run ends that wrote to standard output. A closed pipe is the reader's own wish and worth no message.
pub(crate) fn ended(written: std::io::Result<()>) -> ExitCode {
    match written {
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::FAILURE,
        written => ended_with(written.map_err(|error| Fault::output(&error))),
    }
}

fn ended_with(done: Result<(), Fault>) -> ExitCode {
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            fault.say(false);
            ExitCode::from(2)
        }
    }
}

/// Carries out a command on its book.
pub(crate) fn run(options: &Options, task: &Task, name: Option<&str>) -> ExitCode {
    // Also what cannot be opened is told of in it.
    if let Some(language) = options.language.as_deref().and_then(Language::from_code) {
        locale::choose(language);
    }
    let done = match task {
        Task::Demo { anew } => walk::run(options, *anew),
        Task::Repair => Book::repair(options).and_then(|book| Session { book, options }.repaired()),
        task => Book::open(options).and_then(|book| Session { book, options }.task(task)),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            match name {
                Some(name) => fault.with_call(name).say(options.json),
                None => fault.say(options.json),
            }
            ExitCode::from(2)
        }
    }
}

/// A command at work on an open book.
struct Session<'a> {
    book: Book,
    options: &'a Options,
}

impl Session<'_> {
    fn task(&mut self, task: &Task) -> Result<(), Fault> {
        if !matches!(task, Task::Acknowledge) {
            self.say_accounts()?;
        }
        match task {
            Task::Jobs => self.show(&Place::Jobs),
            Task::NewJob { name, like } => {
                let like = like.as_deref().map(|like| self.job(like)).transpose()?;
                self.act(Action::JobsKind { action: JobsAction::Create { name: name.clone(), like } })
            }
            Task::Rename { house, name } => {
                let action = JobsAction::Rename { job: self.job(house)?, name: name.clone() };
                self.act(Action::JobsKind { action })
            }
            Task::Archive { house } => {
                let job = self.job(house)?;
                self.act(Action::JobsKind { action: JobsAction::Archive { job } })
            }
            Task::BringBack { house } => {
                let job = self.job(house)?;
                self.act(Action::JobsKind { action: JobsAction::BringBack { job } })
            }
            Task::Settings { answers } => self.settings(answers),
            Task::Done { house, count } => self.done(house.as_deref(), *count),
            Task::Undo { group, yes } => self.undo(group.as_deref(), *yes),
            Task::Copy { file } => {
                let now_ms = self.book.context()?.now_ms;
                screens::copy(&mut self.book.inner, now_ms, file).map_err(|error| error.at(file))?;
                self.say("cli-copied", &file.display().to_string(), "path")
            }
            Task::Backup { file, force } => self.pack(file, *force),
            Task::Backups => self.backups(),
            Task::Restore { file, yes: true } => self.restore(file),
            Task::Restore { file, yes: false } => self.preview_restore(file),
            Task::Words => self.words(),
            Task::HandOver { house, file, new, force } => self.hand_over(house, file, *new, *force),
            Task::TakeIn { file, how } => self.take_in(file, how),
            Task::Differences { looked_at: false } => self.show(&Place::Differences),
            Task::Differences { looked_at: true } => {
                let View::DifferencesKind { view } = self.book.view(&Place::Differences)? else { return Ok(()) };
                let differences = view.differences.into_iter().map(|line| line.difference).collect();
                self.act(Action::DifferencesKind { action: DifferencesAction::LookedAt { differences } })
            }
            Task::Check => self.check(),
            Task::Rules { house } => self.show(&Place::Rules { job: self.job(house)? }),
            Task::Rule { house, key, value, reason } => {
                let job = self.job(house)?;
                let (key, value, reason) = (self.rule_key(&job, key)?, value.clone(), reason.clone());
                let action = RulesAction::Change { job, key, value, reason };
                self.act(Action::RulesKind { action })
            }
            Task::RuleDefault { house, key } => {
                let job = self.job(house)?;
                let action = RulesAction::BackToDefault { key: self.rule_key(&job, key)?, job };
                self.act(Action::RulesKind { action })
            }
            Task::House { house, answers } => self.house(house, answers),
            Task::Stock { house, length, count } => self.stock(house, length, count.as_deref().unwrap_or_default()),
            Task::AddWall { house, name } => {
                let action = HouseAction::AddWall { job: self.job(house)?, name: name.clone() };
                self.act(Action::HouseKind { action })
            }
            Task::Pole { house, as_built: Some(wall), answers, .. } => self.as_built(house, wall, answers),
            Task::Pole { house, not_built: Some(entry), .. } => self.not_built(house, entry),
            Task::Pole { house, lay_out, answers, .. } => self.pole(house, *lay_out, answers),
            Task::Mark { house, answers } => self.mark(house, answers),
            Task::Next { house } => self.next(house),
            Task::SameBoard { house } => {
                let job = house.as_deref().map(|house| self.job(house)).transpose()?;
                self.act(Action::BoardKind { action: BoardAction::CreateSameAsLast { job } })
            }
            Task::Spoiled { board, left } => {
                let (board, left) = (self.board_id(board)?, left.clone().unwrap_or_default());
                self.act(Action::BoardKind { action: BoardAction::SayItIsSpoiled { board, left } })
            }
            Task::BlockSize { house, width, height } => {
                let (width, height) = (width.clone(), height.clone());
                let action = HouseAction::AddBlockSize { job: self.job(house)?, width, height };
                self.act(Action::HouseKind { action })
            }
            Task::Penetration { penetration, advised: true, .. } => {
                let action = PenetrationAction::TakeAdvice { penetration: self.penetration_id(penetration)? };
                self.act(Action::PenetrationKind { action })
            }
            Task::Penetration { penetration, answers, .. } => self.penetration(penetration, answers),
            Task::Tick { thing, steps, note, measured, photo } => {
                let said = Said { how: StepHow::Tick, note, measured, photo: photo.as_deref() };
                self.sign(thing, steps, &said)
            }
            Task::Skip { reason, .. } if reason.trim().is_empty() => {
                Err(Fault::said("missing", "reason", "screen-empty", &[]))
            }
            Task::Skip { thing, step, reason } => {
                let said = Said { how: StepHow::Skip, note: reason, measured: "", photo: None };
                self.sign(thing, slice::from_ref(step), &said)
            }
            Task::Untick { thing, step, note } => {
                let said = Said { how: StepHow::TakeBack, note, measured: "", photo: None };
                self.sign(thing, slice::from_ref(step), &said)
            }
            Task::Wall { wall } => self.wall(wall),
            Task::Measure { wall, answers } => self.measure(wall, answers),
            Task::Add { wall, kind, answers } => self.add(wall, kind, answers),
            Task::Change { wall, part, answers } => self.change(wall, part, answers),
            Task::Remove { wall, part } => self.remove(wall, part),
            Task::Plan { wall } => self.plan(wall),
            Task::Loose { length, house, answers } => self.loose(length, house.as_deref(), answers),
            Task::Board { board, notch, answers } => self.board(board, notch.as_deref(), answers),
            Task::Attach { board, wall } => self.attach(board, wall),
            Task::Gap { board, gap, notch } => self.gap(board, gap, notch.as_deref()),
            Task::Saw { house, asked } => self.saw(house, asked),
            Task::Order { house, asked } => self.order(house, asked),
            Task::Export { house, file, force } => self.export(house, file.as_deref(), *force),
            Task::Sheet { house, file, force } => self.sheet(house, file.as_deref(), *force),
            Task::Import { file } => self.import(file),
            Task::Draw { what, thing, svg, force, width, dark } => {
                let text = self.draw(what, thing, *width, *dark)?;
                self.write("cli-drawn", svg.as_deref(), *force, &text)
            }
            Task::Acknowledge => {
                self.book.inner.store_mut().acknowledge()?;
                self.say("cli-acknowledged", "", "why")
            }
            // The demo has a book of its own, and what is repaired is not open.
            Task::Demo { .. } | Task::Repair | Task::Figure { .. } | Task::Completions { .. } | Task::Man => Ok(()),
        }
    }

    fn phrases(&self) -> Result<&'static Phrases, Fault> {
        self.book.phrases()
    }

    /// What was found wrong with the book and nobody has acknowledged: at every command, as long as nobody has.
    fn say_accounts(&self) -> Result<(), Fault> {
        let phrases = self.phrases()?;
        let accounts = self.book.inner.store().accounts()?;
        let mut lines: Vec<String> = accounts.iter().flat_map(|account| account.lines(phrases)).collect();
        if !lines.is_empty() {
            lines.push(phrases.phrase("cli-account", &[]));
            // Where nobody can be told, the account stays in the book.
            let _ = writeln!(std::io::stderr(), "{}", lines.join("\n"));
        }
        Ok(())
    }

    fn repaired(&mut self) -> Result<(), Fault> {
        self.say_accounts()?;
        if self.book.inner.store().accounts()?.is_empty() {
            return self.say("cli-repaired-nothing", "", "why");
        }
        Ok(())
    }

    fn show(&self, place: &Place) -> Result<(), Fault> {
        self.print(&self.book.view(place)?)
    }

    fn act(&mut self, action: Action) -> Result<(), Fault> {
        let outcome = self.book.act(&action)?;
        self.print_outcome(&outcome)
    }

    fn print_outcome(&self, outcome: &Outcome) -> Result<(), Fault> {
        if self.options.json {
            let text = serde_json::to_string_pretty(outcome).map_err(|error| Fault::other(error.to_string()))?;
            return out(&text);
        }
        self.print(&outcome.view)
    }

    fn print(&self, view: &View) -> Result<(), Fault> {
        if self.options.json {
            let text = serde_json::to_string_pretty(view).map_err(|error| Fault::other(error.to_string()))?;
            return out(&text);
        }
        let mut paper = Paper::new(self.phrases()?);
        show::view(&mut paper, view);
        out(paper.into_text().trim_end())
    }

    /// One sentence, or the same as JSON.
    fn say(&self, key: &str, value: &str, name: &str) -> Result<(), Fault> {
        if self.options.json {
            return out(&format!("{:#}", serde_json::json!({ name: value })));
        }
        out(&self.phrases()?.phrase(key, &[(name, value.into())]))
    }

    /// The id of a house.
    fn job(&self, text: &str) -> Result<String, Fault> {
        let View::JobsKind { view } = self.book.view(&Place::Jobs)? else {
            return Err(Fault::unknown("house", text, &[]));
        };
        let named = |job: lapwright::views::JobLine| Named::new(job.job, job.name);
        one("house", text, &view.jobs.into_iter().map(named).collect::<Vec<_>>())
    }

    /// The key of a rule, where there is such a rule.
    fn rule_key(&self, job: &str, key: &str) -> Result<String, Fault> {
        let View::RulesKind { view } = self.book.view(&Place::Rules { job: job.to_owned() })? else {
            return Err(Fault::unknown("key", key, &[]));
        };
        let (_, known) = nearest(key, view.rules.into_iter().map(|rule| rule.key).collect());
        if known.iter().any(|known| known == key) {
            return Ok(key.to_owned());
        }
        let near = known.into_iter().take(8).chain(["…".to_owned()]);
        Err(Fault::unknown("key", key, &near.collect::<Vec<_>>()))
    }

    fn settings(&mut self, answers: &Answers) -> Result<(), Fault> {
        let View::SettingsKind { view } = self.book.view(&Place::Settings)? else { return Ok(()) };
        let mut asked: Vec<String> = ["signer", "drop-signer"].map(str::to_owned).to_vec();
        asked.extend(view.settings.into_iter().map(|question| question.field));
        answers.only(&asked)?;
        let signers: Vec<String> = view.signers.into_iter().map(|signer| signer.name).collect();
        let dropped = answers.given.iter().filter(|(field, _)| field == "drop-signer");
        if let Some((field, name)) = dropped.into_iter().find(|(_, name)| !signers.contains(name)) {
            return Err(Fault::unknown(field, name, &signers));
        }
        self.book.together(|book| {
            answers.given.iter().try_for_each(|(field, text)| {
                let action = match field.as_str() {
                    "signer" => SettingsAction::TakePhone { signer: text.clone() },
                    "drop-signer" => SettingsAction::DropSigner { signer: text.clone() },
                    _ => SettingsAction::Answer { field: field.clone(), text: text.clone() },
                };
                book.act(&Action::SettingsKind { action }).map(|_| ())
            })
        })?;
        self.show(&Place::Settings)
    }

    fn done_list(&self, job: Option<String>) -> Result<DoneListView, Fault> {
        match self.book.view(&Place::DoneList { job })? {
            View::DoneListKind { view } => Ok(view),
            _ => Err(Fault::unknown("house", "", &[])),
        }
    }

    fn done(&mut self, house: Option<&str>, count: u32) -> Result<(), Fault> {
        let job = house.map(|house| self.job(house)).transpose()?;
        let mut view = self.done_list(job.clone())?;
        let count = usize::try_from(count).unwrap_or(usize::MAX);
        while view.lines.len() < count
            && let Some(from) = view.older.take()
        {
            let action = DoneListAction::Older { job: job.clone(), from };
            let View::DoneListKind { view: older } = self.book.act(&Action::DoneListKind { action })?.view else {
                break;
            };
            view.lines.extend(older.lines);
            view.older = older.older;
        }
        view.lines.truncate(count);
        self.print(&View::DoneListKind { view })
    }

    /// Takes an answer back; where later ones depend on it, shows them first and asks for `--yes`.
    fn undo(&mut self, group: Option<&str>, yes: bool) -> Result<(), Fault> {
        let lines = self.done_list(None)?.lines;
        let group = match group {
            Some(group) => {
                let named = |line: lapwright::views::DoneLine| Named::new(line.group, "").told(line.text);
                one("group", group, &lines.into_iter().map(named).collect::<Vec<_>>())?
            }
            None => {
                let last = lines.into_iter().find(|line| !line.undone && !line.is_undo);
                last.ok_or_else(|| Fault::said("nothing", "group", "cli-nothing-to-undo", &[]))?.group
            }
        };
        let look = DoneListAction::LookAt { job: None, group: group.clone() };
        let looked = self.book.act(&Action::DoneListKind { action: look })?;
        let depends = matches!(&looked.view, View::DoneListKind { view } if !view.depends.is_empty());
        if depends && !yes {
            return self.print_outcome(&looked);
        }
        // On a phone the keys that were taken back are there again to be mended; here the next command says the answer anew.
        let typed: BTreeSet<String> = self.drafts()?;
        let undone = self.book.act(&Action::DoneListKind { action: DoneListAction::Undo { job: None, group } })?;
        for key in self.drafts()?.difference(&typed) {
            self.book.inner.store_mut().draft_clear(key)?;
        }
        self.print_outcome(&undone)
    }

    /// The keys of everything that is typed and not accepted.
    fn drafts(&self) -> Result<BTreeSet<String>, Fault> {
        Ok(self.book.inner.store().drafts()?.into_iter().map(|(key, _)| key).collect())
    }

    fn check(&mut self) -> Result<(), Fault> {
        let report = self.book.inner.store().check()?;
        if report.is_good() {
            // A book that is sound because the half of it is gone is not what was asked about.
            if !self.book.inner.store().accounts()?.is_empty() {
                return Err(Fault::said("account", "book", "cli-check-told", &[]));
            }
            return self.say("cli-check-good", "", "why");
        }
        let why: Vec<&str> = report.lines().take(10).collect();
        Err(Fault::said("damaged", "book", "cli-check-bad", &[("why", why.join("; ").into())]))
    }
}

/// Prints; a closed pipe is the reader's own wish. What a colleague's text says to a terminal is not passed on to it.
pub(crate) fn out(text: &str) -> Result<(), Fault> {
    let text = printable(text);
    let mut stdout = std::io::stdout().lock();
    match writeln!(stdout, "{text}").and_then(|()| stdout.flush()) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => Err(Fault::output(&error)),
        _ => Ok(()),
    }
}

/// The text without control characters and signs that turn the direction of writing, but for ends of lines and the colours
/// that we put in.
pub(crate) fn printable(text: &str) -> String {
    let mut printed = String::with_capacity(text.len());
    let mut rest = text.chars();
    while let Some(sign) = rest.next() {
        let colour = || {
            let (number, _) = rest.as_str().strip_prefix('[')?.split_once('m')?;
            number.bytes().all(|byte| byte.is_ascii_digit() || byte == b';').then_some(())
        };
        let passes = !(sign.is_control() || turns(sign)) || sign == '\n' || (sign == '\u{1b}' && colour().is_some());
        printed.push(if passes { sign } else { '\u{fffd}' });
    }
    printed
}

/// Whether a sign turns the direction of writing (Unicode Standard Annex 9, section 2).
const fn turns(sign: char) -> bool {
    matches!(sign, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::printable;

    #[test]
    fn a_text_moves_no_cursor_and_sets_no_title() {
        let ours = "\u{1b}[1;32mNorth\u{1b}[0m\n";
        assert_eq!(printable(ours), ours);
        assert_eq!(printable("24 ft \u{202e}tf 42"), "24 ft \u{fffd}tf 42");
        assert_eq!(
            printable("a\u{1b}[2Jb\u{1b}]0;x\u{7}\r\u{9b}"),
            "a\u{fffd}[2Jb\u{fffd}]0;x\u{fffd}\u{fffd}\u{fffd}"
        );
    }
}
