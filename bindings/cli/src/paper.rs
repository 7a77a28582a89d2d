//! Text on a terminal: lines, a little colour where there is a terminal, and the pieces that several views share.

use std::fmt::Write as _;
use std::io::IsTerminal;

use lapwright::phrases::{Arg, Phrases};
use lapwright::views::{Note, Question, Reading, Size, Source, StepLine, StepState};

/// A page of text in the making.
pub(crate) struct Paper {
    text: String,
    colour: bool,
    phrases: &'static Phrases,
}

/// How a piece of text is set off. Colour never carries a meaning alone.
#[derive(Clone, Copy)]
pub(crate) enum Ink {
    /// The answer: bold.
    Strong,
    /// Marks to transfer, the next action: blue.
    Chalk,
    /// A warning: red, behind a triangle.
    Warning,
    /// Done: green, behind a tick.
    Done,
    /// Hints.
    Faint,
}

impl Paper {
    /// An empty page; coloured only on a terminal that did not ask for none.
    pub(crate) fn new(phrases: &'static Phrases) -> Self {
        let colour = std::io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none();
        Self { text: String::new(), colour, phrases }
    }

    /// The page's text.
    pub(crate) fn into_text(self) -> String {
        self.text
    }

    /// A text with its values put in.
    pub(crate) fn phrase(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.phrases.phrase(key, args)
    }

    /// A piece of text set off.
    pub(crate) fn set(&self, ink: Ink, text: &str) -> String {
        let code = match ink {
            Ink::Strong => "1",
            Ink::Chalk => "34",
            Ink::Warning => "31",
            Ink::Done => "32",
            Ink::Faint => "2",
        };
        if self.colour { format!("\u{1b}[{code}m{text}\u{1b}[0m") } else { text.to_owned() }
    }

    /// One line.
    pub(crate) fn line(&mut self, text: &str) {
        // Writing into a String cannot fail.
        let _ = writeln!(self.text, "{text}");
    }

    /// An empty line.
    pub(crate) fn gap(&mut self) {
        self.line("");
    }

    /// A heading.
    pub(crate) fn title(&mut self, text: &str) {
        let set = self.set(Ink::Strong, text);
        self.line(&set);
    }

    /// A heading of a part.
    pub(crate) fn heading(&mut self, key: &str) {
        let text = self.phrase(key, &[]);
        self.title(&text);
    }

    /// Several lines, indented.
    pub(crate) fn block(&mut self, text: &str) {
        for line in text.lines() {
            self.line(&format!("  {line}"));
        }
    }

    /// Where a length comes from: T taped, P planned, R by a rule.
    pub(crate) fn reading(&self, reading: &Reading) -> String {
        let letter = match reading.source {
            Source::Taped => "T",
            Source::Planned => "P",
            Source::Ruled => "R",
        };
        format!("{} [{letter}]", reading.text)
    }

    /// Named lengths, one a line.
    pub(crate) fn sizes(&mut self, sizes: &[Size]) {
        let width = sizes.iter().map(|size| size.label.chars().count()).max().unwrap_or(0);
        for size in sizes {
            let pad = " ".repeat(width - size.label.chars().count());
            let reading = self.reading(&size.reading);
            self.line(&format!("  {}{pad}  {reading}", size.label));
        }
    }

    /// What needs attention.
    pub(crate) fn notes(&mut self, notes: &[Note]) {
        for note in notes {
            let set = self.set(Ink::Warning, &format!("▲ {}", note.text));
            self.line(&format!("  {set}"));
        }
    }

    /// Questions with their answers; the open ones with their field's name, so that they can be answered.
    pub(crate) fn questions(&mut self, questions: &[Question]) {
        for question in questions {
            let answer = match (&question.reading, question.answer.is_empty()) {
                (Some(reading), _) => self.reading(reading),
                (None, false) => question.answer.clone(),
                (None, true) if question.optional => continue,
                (None, true) => "?".to_owned(),
            };
            let field = self.set(Ink::Faint, &format!("({})", question.field));
            self.line(&format!("  {} {answer}  {field}", question.title));
            if !question.draft.is_empty() {
                let draft = self.phrase("cli-draft", &[("draft", question.draft.as_str().into())]);
                self.line(&format!("    {draft}"));
            }
        }
    }

    /// Steps in their order.
    pub(crate) fn steps(&mut self, steps: &[StepLine]) {
        for step in steps {
            let (box_, ink) = match step.state {
                StepState::Done => ("[✓]", Some(Ink::Done)),
                StepState::Skipped => ("[–]", Some(Ink::Warning)),
                StepState::Open => ("[ ]", None),
            };
            let set = ink.map_or_else(|| box_.to_owned(), |ink| self.set(ink, box_));
            let code = self.set(Ink::Faint, &format!("({})", step.code));
            self.line(&format!("  {set} {}  {code}", step.text));
            if step.state == StepState::Open {
                let reason = self.set(Ink::Faint, &step.reason);
                self.line(&format!("      {reason}"));
            } else {
                let mut said = step.signer.clone();
                if let Some(measured) = &step.measured {
                    said = format!("{said}  {}", measured.text);
                }
                if !step.note.is_empty() {
                    said = format!("{said}  {}", step.note);
                }
                if !said.trim().is_empty() {
                    self.line(&format!("      {}", said.trim()));
                }
            }
            if step.differs {
                let differs = self.phrase("cli-differs", &[]);
                let differs = self.set(Ink::Warning, &format!("▲ {differs}"));
                self.line(&format!("      {differs}"));
            }
        }
    }

    /// Cautions of the open steps, each once.
    pub(crate) fn cautions(&mut self, steps: &[StepLine]) {
        let mut said: Vec<&str> = Vec::new();
        let mut texts: Vec<Note> = Vec::new();
        for caution in steps.iter().filter(|step| step.state == StepState::Open).flat_map(|step| &step.cautions) {
            if !said.contains(&caution.code.as_str()) {
                said.push(&caution.code);
                texts.push(caution.clone());
            }
        }
        self.notes(&texts);
    }
}
