//! The words of the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};

use crate::run::exchange::TakingIn;

/// Lap siding at penetrations: measure, notch, flash, tick off.
///
/// With no command it opens the demo house and walks through the main job. `lapwright figure QUESTION` answers single
/// questions; see `lapwright figure --list`. HOUSE, WALL, BOARD and PENETRATION are names, or the beginning of an id.
#[derive(Clone, Debug, Parser)]
#[command(name = "lapwright", version, disable_help_subcommand = true)]
pub(crate) struct Command {
    #[command(flatten)]
    pub(crate) options: Options,
    #[command(subcommand)]
    pub(crate) task: Option<Task>,
}

/// What every command takes.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct Options {
    /// The book; else the user's own.
    #[arg(long, global = true, value_name = "FILE")]
    pub(crate) book: Option<PathBuf>,
    /// Answer in JSON.
    #[arg(long, global = true)]
    pub(crate) json: bool,
    /// en or es; else as remembered, else from the locale.
    #[arg(long, global = true, value_name = "LANGUAGE", value_parser = ["en", "es"])]
    pub(crate) language: Option<String>,
    /// How lengths are shown: in/16, in/32, in/64, ft-in/16, mm or mm/0.5.
    #[arg(long, global = true, value_name = "UNIT")]
    pub(crate) show: Option<String>,
    /// The smallest mark that cutting uses, such as 1/16".
    #[arg(long, global = true, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) division: Option<String>,
    /// Who signs.
    #[arg(long, global = true, value_name = "NAME")]
    pub(crate) signer: Option<String>,
}

/// Answers as FIELD=ANSWER.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct Answers {
    /// Answers, such as width="31' 4\"" or mode=fit.
    #[arg(value_name = "FIELD=ANSWER", value_parser = pair)]
    pub(crate) given: Vec<(String, String)>,
}

fn pair(text: &str) -> Result<(String, String), String> {
    match text.split_once('=') {
        Some((field, answer)) if !field.is_empty() => Ok((field.to_owned(), answer.to_owned())),
        _ => Err("write FIELD=ANSWER, such as width=24ft or base=-14in".to_owned()),
    }
}

/// What is asked of the saw list.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct SawOptions {
    /// Plan everything that is not cut yet.
    #[arg(long)]
    pub(crate) plan: bool,
    /// Look longer for a better plan.
    #[arg(long)]
    pub(crate) improve: bool,
    /// Mark a board as cut, by its number.
    #[arg(long, value_name = "NUMBER")]
    pub(crate) cut: Vec<i64>,
    /// An offcut that lies about.
    #[arg(long, value_name = "LENGTH")]
    pub(crate) offcut: Option<String>,
    /// Throw an offcut away.
    #[arg(long, value_name = "OFFCUT")]
    pub(crate) drop: Option<String>,
    /// Keep an offcut after all.
    #[arg(long, value_name = "OFFCUT")]
    pub(crate) keep: Option<String>,
    /// How many boards of a stock length there are; nothing after the sign for as many as are wanted.
    #[arg(long, value_name = "STOCK=COUNT", value_parser = pair)]
    pub(crate) have: Option<(String, String)>,
}

/// How an order is given.
#[derive(Clone, Debug, Default, Args)]
pub(crate) struct OrderOptions {
    /// Comma-separated values.
    #[arg(long, conflicts_with = "text")]
    pub(crate) csv: bool,
    /// A message to send.
    #[arg(long)]
    pub(crate) text: bool,
}

/// What to do.
#[derive(Clone, Debug, Subcommand)]
pub(crate) enum Task {
    /// The houses of the book.
    Jobs,
    /// A new house, also with boards, rules and stock of another.
    NewJob {
        name: String,
        /// The house to take boards, rules and stock from.
        #[arg(long, value_name = "HOUSE")]
        like: Option<String>,
    },
    /// Another name for a house.
    Rename { house: String, name: String },
    /// Put a house out of the way; its data stays.
    Archive { house: String },
    /// Bring an archived house back.
    BringBack { house: String },
    /// How far a house is and what is next; answers set its boards.
    House {
        house: String,
        #[command(flatten)]
        answers: Answers,
    },
    /// Add a stock length to a house.
    Stock { house: String, length: String, count: Option<String> },
    /// Add a wall to a house.
    AddWall { house: String, name: String },
    /// What is where on a wall.
    Wall { wall: String },
    /// Set up a wall from measurements.
    Measure {
        wall: String,
        #[command(flatten)]
        answers: Answers,
    },
    /// Add to a wall: opening, abutment, base-step, stud or penetration.
    Add {
        wall: String,
        kind: String,
        #[command(flatten)]
        answers: Answers,
    },
    /// Change a part of a wall, such as a window's width; without answers, show the wall's questions.
    Change {
        wall: String,
        /// The opening, abutment, base-step or stud: its kind where there is one alone, else the beginning of its id.
        part: String,
        #[command(flatten)]
        answers: Answers,
    },
    /// Remove a part of a wall; it stays in the done list.
    Remove { wall: String, part: String },
    /// Plan the boards of a wall from the pole.
    Plan { wall: String },
    /// The story pole of a house; answers change it.
    Pole {
        house: String,
        /// Keep the lines as laid out.
        #[arg(long)]
        lay_out: bool,
        /// A course hangs on this wall: course=, left=, right= and, where it was taped, middle= say where.
        #[arg(long, value_name = "WALL", conflicts_with = "lay_out")]
        as_built: Option<String>,
        /// What was said of a course as it hangs no longer holds.
        #[arg(long, value_name = "ENTRY", conflicts_with_all = ["lay_out", "as_built"])]
        not_built: Option<String>,
        #[command(flatten)]
        answers: Answers,
    },
    /// Add a height that lines should meet or stay clear of.
    Mark {
        house: String,
        #[command(flatten)]
        answers: Answers,
    },
    /// What is next on a house: the board in hand and its notch, or the penetration's next step.
    Next { house: String },
    /// A loose board: left, right, bottom-left and top-left give the notch; no house is needed.
    Loose {
        /// How long the board is.
        length: String,
        /// The house whose rules apply.
        #[arg(long, value_name = "HOUSE")]
        house: Option<String>,
        #[command(flatten)]
        answers: Answers,
    },
    /// The board in hand, its marks on face and back; answers correct a reading of its notch.
    Board {
        board: String,
        /// Which notch the answers are for, where there is more than one.
        #[arg(long, value_name = "NOTCH")]
        notch: Option<String>,
        #[command(flatten)]
        answers: Answers,
    },
    /// Attach a loose board to a wall.
    Attach { board: String, wall: String },
    /// A gap that was measured after fitting: the saw and the hands are learned from it.
    Gap {
        board: String,
        gap: String,
        /// Which notch it was measured at, where there is more than one.
        #[arg(long, value_name = "NOTCH")]
        notch: Option<String>,
    },
    /// A loose board like the last loose one, with its blocks.
    SameBoard {
        /// The house whose loose boards are meant; else those of none.
        #[arg(long, value_name = "HOUSE")]
        house: Option<String>,
    },
    /// A board that was cut is spoiled: it is planned again; LEFT is what remains of the piece.
    Spoiled { board: String, left: Option<String> },
    /// Add a size of mounting block to a house: advice chooses among them.
    BlockSize { house: String, width: String, height: String },
    /// A penetration: its layers, sizes and steps; answers change it.
    Penetration {
        penetration: String,
        /// Take the advised block.
        #[arg(long)]
        advised: bool,
        #[command(flatten)]
        answers: Answers,
    },
    /// Tick steps of a board or a penetration, one after the other.
    Tick {
        thing: String,
        #[arg(required = true, value_name = "STEP")]
        steps: Vec<String>,
        #[arg(long, default_value = "")]
        note: String,
        #[arg(long, default_value = "", allow_hyphen_values = true)]
        measured: String,
    },
    /// Leave a step out, with a reason.
    Skip {
        thing: String,
        step: String,
        #[arg(long)]
        reason: String,
    },
    /// Take a tick back: the step is open again.
    Untick {
        thing: String,
        step: String,
        #[arg(long, default_value = "")]
        note: String,
    },
    /// The saw list of a house: what to cut from what, against the least possible.
    Saw {
        house: String,
        #[command(flatten)]
        asked: SawOptions,
    },
    /// What to buy for a house: amounts, waste and packs.
    Order {
        house: String,
        #[command(flatten)]
        asked: OrderOptions,
    },
    /// The rules of a house.
    Rules { house: String },
    /// Change a rule, with a reason.
    Rule {
        house: String,
        key: String,
        value: String,
        #[arg(long)]
        reason: String,
    },
    /// Back to a rule's default.
    RuleDefault { house: String, key: String },
    /// What happened, newest first.
    Done {
        house: Option<String>,
        /// How many lines.
        #[arg(long, default_value_t = 20)]
        count: u32,
    },
    /// Take an answer back; shows first what depends on it.
    Undo {
        /// The answer, as the done list names it; else the last one.
        group: Option<String>,
        /// Do it although later answers depend on it.
        #[arg(long)]
        yes: bool,
    },
    /// Who holds this device, and how it speaks.
    Settings {
        #[command(flatten)]
        answers: Answers,
    },
    /// A checked copy of the book.
    Copy { file: PathBuf },
    /// The book and its photos as one file, checked.
    Backup {
        file: PathBuf,
        /// Write over a file that is there. A book is never written over.
        #[arg(long)]
        force: bool,
    },
    /// The copies that the book keeps of itself, newest first.
    Backups,
    /// What going back to a copy or backup would do; with --yes, do it. Later sign-offs stay.
    Restore {
        file: PathBuf,
        /// Do it; a copy of the book as it is is made before.
        #[arg(long)]
        yes: bool,
    },
    /// The four words of this device, for a colleague to compare.
    Words,
    /// Write the answers of a house for a colleague's phone. Photos go apart.
    HandOver {
        house: String,
        file: PathBuf,
        /// Only what came since the last such file of this house.
        #[arg(long)]
        new: bool,
        /// Write over a file that is there. A book is never written over.
        #[arg(long)]
        force: bool,
    },
    /// What taking in a colleague's file, a copy of a book or a house, would do; with --yes, do it.
    TakeIn {
        file: PathBuf,
        #[command(flatten)]
        how: TakingIn,
    },
    /// Check the data.
    Check,
    /// Check the data and put it right from the book's own log and its copies; the file as it was is kept.
    Repair,
    /// Clear the notice of what was saved and what was lost.
    Acknowledge,
    /// A house as a job document, to a file or standard output.
    Export {
        house: String,
        file: Option<PathBuf>,
        /// Write over a file that is there. A book is never written over.
        #[arg(long)]
        force: bool,
    },
    /// Take in a job document.
    Import { file: PathBuf },
    /// A drawing as SVG: face, back, wall, pole, block, layers or section, of the thing that is named.
    Draw {
        #[arg(value_parser = ["face", "back", "wall", "pole", "block", "layers", "section"])]
        what: String,
        /// A board, a wall, a house or a penetration.
        thing: String,
        /// The file; else standard output.
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
        /// Write over a file that is there. A book is never written over.
        #[arg(long)]
        force: bool,
        /// How wide, in pixels.
        #[arg(long, default_value_t = 720, value_parser = clap::value_parser!(u16).range(120..))]
        width: u16,
        /// Pale lines on a dark ground.
        #[arg(long)]
        dark: bool,
    },
    /// What a shell completes commands and options by: to be sourced, or put where the shell looks for it.
    Completions { shell: clap_complete::Shell },
    /// The manual page, for man.
    Man,
    /// The demo house and its walk through the main job.
    Demo {
        /// Put the demo's book aside and begin anew.
        #[arg(long)]
        anew: bool,
    },
}
