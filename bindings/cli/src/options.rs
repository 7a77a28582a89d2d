//! The words of the command line. What each of them means stands in the phrases `command-…`, in every language.

use std::path::PathBuf;

use clap::{ArgAction, Args, Parser, Subcommand};

use crate::fault::Fault;
use crate::run::exchange::TakingIn;

/// A call of the program.
#[derive(Clone, Debug, Parser)]
#[command(name = "lapwright", version, disable_help_subcommand = true)]
#[command(disable_help_flag = true, disable_version_flag = true)]
pub(crate) struct Command {
    #[command(flatten)]
    pub(crate) options: Options,
    #[arg(long, short = 'V', action = ArgAction::Version)]
    version: Option<bool>,
    #[command(subcommand)]
    pub(crate) task: Option<Task>,
}

/// What every command takes.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct Options {
    #[arg(long, global = true, value_name = "FILE")]
    pub(crate) book: Option<PathBuf>,
    #[arg(long, global = true)]
    pub(crate) json: bool,
    #[arg(long, global = true, value_name = "LANGUAGE", value_parser = ["en", "es"])]
    pub(crate) language: Option<String>,
    #[arg(long, global = true, value_name = "UNIT")]
    pub(crate) show: Option<String>,
    #[arg(long, global = true, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) division: Option<String>,
    #[arg(long, global = true, value_name = "NAME")]
    pub(crate) signer: Option<String>,
    #[arg(long, short, global = true, action = ArgAction::Help)]
    help: Option<bool>,
}

/// Answers as FIELD=ANSWER.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct Answers {
    #[arg(value_name = "FIELD=ANSWER", value_parser = pair)]
    pub(crate) given: Vec<(String, String)>,
}

impl Answers {
    /// # Errors
    /// Names an answer that is to none of these questions.
    pub(crate) fn only(&self, asked: &[String]) -> Result<(), Fault> {
        match self.given.iter().find(|(field, _)| !asked.contains(field)) {
            Some((field, _)) => Err(Fault::not_asked(field, asked.to_vec())),
            None => Ok(()),
        }
    }
}

/// Why a value is not taken. In words it is said where the language is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum BadValue {
    /// Not two texts with the sign of equality between them.
    #[error("not a pair")]
    Pair,
    /// Not a whole number between these two.
    #[error("not a whole number from {least} to {most}")]
    Whole { least: i64, most: i64 },
}

fn pair(text: &str) -> Result<(String, String), BadValue> {
    match text.split_once('=') {
        Some((field, answer)) if !field.is_empty() => Ok((field.to_owned(), answer.to_owned())),
        _ => Err(BadValue::Pair),
    }
}

/// Reads whole numbers between two others.
fn whole<N: TryFrom<i64>>(least: i64, most: i64) -> impl Fn(&str) -> Result<N, BadValue> + Clone + Send + Sync {
    move |text| {
        let number = text.parse().ok().filter(|number| (least..=most).contains(number));
        number.and_then(|number| N::try_from(number).ok()).ok_or(BadValue::Whole { least, most })
    }
}

/// What is asked of the saw list.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct SawOptions {
    #[arg(long)]
    pub(crate) plan: bool,
    #[arg(long)]
    pub(crate) improve: bool,
    #[arg(long, value_name = "NUMBER", value_parser = whole::<i64>(1, 1_000_000))]
    pub(crate) cut: Vec<i64>,
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) offcut: Option<String>,
    #[arg(long, value_name = "OFFCUT")]
    pub(crate) drop: Option<String>,
    #[arg(long, value_name = "OFFCUT")]
    pub(crate) keep: Option<String>,
    #[arg(long, value_name = "STOCK=COUNT", value_parser = pair, allow_hyphen_values = true)]
    pub(crate) have: Option<(String, String)>,
}

/// How an order is given.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct OrderOptions {
    #[arg(long, conflicts_with = "text")]
    pub(crate) csv: bool,
    #[arg(long)]
    pub(crate) text: bool,
}

/// What can be added to a wall.
const PARTS: [&str; 5] = ["opening", "abutment", "base-step", "stud", PENETRATION];

/// The one of them that is no part of the wall itself.
pub(crate) const PENETRATION: &str = "penetration";

/// What to do.
#[derive(Clone, Debug, Subcommand)]
pub(crate) enum Task {
    Jobs,
    NewJob {
        name: String,
        #[arg(long, value_name = "HOUSE")]
        like: Option<String>,
    },
    Rename {
        house: String,
        name: String,
    },
    Archive {
        house: String,
    },
    BringBack {
        house: String,
    },
    House {
        house: String,
        #[command(flatten)]
        answers: Answers,
    },
    Stock {
        house: String,
        #[arg(allow_hyphen_values = true)]
        length: String,
        #[arg(allow_hyphen_values = true)]
        count: Option<String>,
    },
    AddWall {
        house: String,
        name: String,
    },
    Wall {
        wall: String,
    },
    Measure {
        wall: String,
        #[command(flatten)]
        answers: Answers,
    },
    Add {
        wall: String,
        #[arg(value_parser = PARTS)]
        kind: String,
        #[command(flatten)]
        answers: Answers,
    },
    Change {
        wall: String,
        part: String,
        #[command(flatten)]
        answers: Answers,
    },
    Remove {
        wall: String,
        part: String,
    },
    Plan {
        wall: String,
    },
    Pole {
        house: String,
        #[arg(long)]
        lay_out: bool,
        #[arg(long, value_name = "WALL", conflicts_with = "lay_out")]
        as_built: Option<String>,
        #[arg(long, value_name = "ENTRY", conflicts_with_all = ["lay_out", "as_built"])]
        not_built: Option<String>,
        #[command(flatten)]
        answers: Answers,
    },
    Mark {
        house: String,
        #[command(flatten)]
        answers: Answers,
    },
    Next {
        house: String,
    },
    Loose {
        #[arg(allow_hyphen_values = true)]
        length: String,
        #[arg(long, value_name = "HOUSE")]
        house: Option<String>,
        #[command(flatten)]
        answers: Answers,
    },
    Board {
        board: String,
        #[arg(long, value_name = "NOTCH")]
        notch: Option<String>,
        #[command(flatten)]
        answers: Answers,
    },
    Attach {
        board: String,
        wall: String,
    },
    Gap {
        board: String,
        #[arg(allow_hyphen_values = true)]
        gap: String,
        #[arg(long, value_name = "NOTCH")]
        notch: Option<String>,
    },
    SameBoard {
        #[arg(long, value_name = "HOUSE")]
        house: Option<String>,
    },
    Spoiled {
        board: String,
        #[arg(allow_hyphen_values = true)]
        left: Option<String>,
    },
    BlockSize {
        house: String,
        #[arg(allow_hyphen_values = true)]
        width: String,
        #[arg(allow_hyphen_values = true)]
        height: String,
    },
    Penetration {
        penetration: String,
        #[arg(long)]
        advised: bool,
        #[command(flatten)]
        answers: Answers,
    },
    Tick {
        thing: String,
        #[arg(required = true, value_name = "STEP")]
        steps: Vec<String>,
        #[arg(long, default_value = "")]
        note: String,
        #[arg(long, default_value = "", allow_hyphen_values = true)]
        measured: String,
        #[arg(long, value_name = "FILE")]
        photo: Option<PathBuf>,
    },
    Skip {
        thing: String,
        step: String,
        #[arg(long)]
        reason: String,
    },
    Untick {
        thing: String,
        step: String,
        #[arg(long, default_value = "")]
        note: String,
    },
    Saw {
        house: String,
        #[command(flatten)]
        asked: SawOptions,
    },
    Order {
        house: String,
        #[command(flatten)]
        asked: OrderOptions,
    },
    Rules {
        house: String,
    },
    Rule {
        house: String,
        key: String,
        #[arg(allow_hyphen_values = true)]
        value: String,
        #[arg(long)]
        reason: String,
    },
    RuleDefault {
        house: String,
        key: String,
    },
    Done {
        house: Option<String>,
        #[arg(long, default_value_t = 20, value_parser = whole::<u32>(1, 1_000_000))]
        count: u32,
    },
    Undo {
        group: Option<String>,
        #[arg(long)]
        yes: bool,
    },
    Settings {
        #[command(flatten)]
        answers: Answers,
    },
    Copy {
        file: PathBuf,
    },
    Backup {
        file: PathBuf,
        #[arg(long)]
        force: bool,
    },
    Backups,
    Restore {
        file: PathBuf,
        #[arg(long)]
        yes: bool,
    },
    Words,
    HandOver {
        house: String,
        file: PathBuf,
        #[arg(long)]
        new: bool,
        #[arg(long)]
        force: bool,
    },
    TakeIn {
        file: PathBuf,
        #[command(flatten)]
        how: TakingIn,
    },
    Differences {
        #[arg(long)]
        looked_at: bool,
    },
    Check,
    Repair,
    Acknowledge,
    Export {
        house: String,
        file: Option<PathBuf>,
        #[arg(long)]
        force: bool,
    },
    Sheet {
        house: String,
        file: Option<PathBuf>,
        #[arg(long)]
        force: bool,
    },
    Import {
        file: PathBuf,
    },
    Draw {
        #[arg(value_parser = ["face", "back", "wall", "pole", "block", "layers", "section"])]
        what: String,
        thing: String,
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
        #[arg(long)]
        force: bool,
        #[arg(long, value_name = "PIXELS", default_value_t = 720, value_parser = whole::<u16>(120, 65_535))]
        width: u16,
        #[arg(long)]
        dark: bool,
    },
    Figure {
        question: Option<String>,
        #[arg(long, conflicts_with = "question")]
        list: bool,
    },
    Completions {
        shell: clap_complete::Shell,
    },
    Man,
    Demo {
        #[arg(long)]
        anew: bool,
    },
}
