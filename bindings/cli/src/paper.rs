//! Text on a terminal: lines, a little colour where there is a terminal, and the pieces that several views share.

use std::fmt::Write as _;

use anstream::{AutoStream, ColorChoice};
use anstyle::{AnsiColor, Style};
use lapwright::phrases::{Arg, Phrases};
use lapwright::views::{Note, NoteLevel, Question, Reading, Size, Source, StepLine, StepState};
use textwrap::core::Word;
use textwrap::{WordSeparator, WordSplitter, WrapAlgorithm};

/// A page of text in the making.
pub(crate) struct Paper {
    text: String,
    screen: Screen,
    phrases: &'static Phrases,
}

/// What the page is shown on.
#[derive(Clone, Copy)]
struct Screen {
    colour: bool,
    /// Characters a line; `None` where lines have no end, as in a file.
    width: Option<usize>,
}

impl Screen {
    /// Standard output as it is, coloured unless it or the user forbids it (`NO_COLOR`, `CLICOLOR`).
    fn of_output() -> Self {
        let output = std::io::stdout();
        Self {
            colour: AutoStream::choice(&output) != ColorChoice::Never,
            width: terminal_size::terminal_size_of(&output).map(|(width, _)| width.0.into()),
        }
    }
}

/// The words of a line with the spaces behind them. A length such as 7 1/4" is one word.
fn words(line: &str) -> Box<dyn Iterator<Item = Word<'_>> + '_> {
    let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    let ends = line.match_indices(' ').map(|(at, _)| at + 1).filter(move |end| {
        let (before, after) = line.split_at(*end);
        let in_number = digit(before.trim_end_matches(' ').chars().last()) && digit(after.chars().next());
        !after.starts_with(' ') && !in_number
    });
    let mut start = 0;
    Box::new(ends.chain(std::iter::once(line.len())).map(move |end| {
        let word = line.get(start..end).unwrap_or_default();
        start = end;
        Word::from(word)
    }))
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

impl Ink {
    fn style(self) -> Style {
        match self {
            Self::Strong => Style::new().bold(),
            Self::Chalk => AnsiColor::Blue.on_default(),
            Self::Warning => AnsiColor::Red.on_default(),
            Self::Done => AnsiColor::Green.on_default(),
            Self::Faint => Style::new().dimmed(),
        }
    }
}

impl Paper {
    /// An empty page for standard output.
    pub(crate) fn new(phrases: &'static Phrases) -> Self {
        Self { text: String::new(), screen: Screen::of_output(), phrases }
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
        let style = ink.style();
        if self.screen.colour { format!("{style}{text}{style:#}") } else { text.to_owned() }
    }

    /// A text, in as many lines as it takes; the further ones are indented a little more than the first.
    pub(crate) fn line(&mut self, text: &str) {
        let wrapped = self.wrapped(text);
        self.row(&wrapped);
    }

    /// A row of a drawing or table, which would fall apart in two lines.
    pub(crate) fn row(&mut self, text: &str) {
        // Writing into a String cannot fail.
        let _ = writeln!(self.text, "{text}");
    }

    /// A text with line ends where words end, so that a terminal does not break it inside one.
    pub(crate) fn wrapped(&self, text: &str) -> String {
        let Some(width) = self.screen.width else { return text.to_owned() };
        let indent = text.len() - text.trim_start_matches(' ').len();
        // A narrow terminal needs the room.
        let hang = " ".repeat(if indent + 2 < width / 2 { indent + 2 } else { 0 });
        let options = textwrap::Options::new(width)
            .wrap_algorithm(WrapAlgorithm::FirstFit)
            .word_separator(WordSeparator::Custom(words))
            .word_splitter(WordSplitter::NoHyphenation)
            .break_words(false)
            .subsequent_indent(&hang);
        textwrap::fill(text, options)
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

    /// A call of the program, where there is one: it stands in one line, to be copied.
    pub(crate) fn call(&mut self, call: Option<&str>) {
        if let Some(call) = call {
            let set = self.set(Ink::Faint, &format!("lapwright {call}"));
            self.row(&format!("    {set}"));
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
            let (ink, sign) = match note.level {
                NoteLevel::Stop => (Ink::Warning, "■"),
                NoteLevel::Check => (Ink::Warning, "▲"),
                NoteLevel::Know => (Ink::Faint, "i"),
            };
            let set = self.set(ink, &format!("{sign} {}", note.text));
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
            // Who has not answered yet wants to know how; who has does not.
            if question.answer.is_empty() && !question.hint.is_empty() {
                let hint = self.set(Ink::Faint, &question.hint);
                self.line(&format!("    {hint}"));
            }
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

#[cfg(test)]
mod tests {
    use lapwright::phrases::Language;

    use super::*;

    fn paper(width: usize, colour: bool) -> Paper {
        let phrases = Phrases::for_language(Language::Spanish);
        Paper { text: String::new(), screen: Screen { colour, width: Some(width) }, phrases }
    }

    const LONG: &str = "      Corte 7 1/4\" x 118 1/2\" a la izquierda, sin fibrocemento astillado, y pruébelo antes";

    #[test]
    fn a_line_ends_where_a_word_or_a_length_ends() {
        for width in 20..100 {
            let mut page = paper(width, false);
            page.line(LONG);
            let lines: Vec<&str> = page.text.lines().collect();
            assert!(lines.iter().all(|line| line.chars().count() <= width), "{width}: {lines:#?}");
            let words = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
            assert_eq!(words(&page.text), words(LONG));
            assert!(!lines.iter().any(|line| line.ends_with(" 7") || line.ends_with("118")), "{lines:#?}");
            assert!(lines.iter().skip(1).all(|line| line.starts_with("        ")), "{lines:#?}");
        }
    }

    #[test]
    fn colour_takes_no_room() {
        let coloured = paper(40, true);
        let text = format!("  {}", coloured.set(Ink::Faint, LONG.trim()));
        assert!(text.contains('\u{1b}'));
        let lines = |text: String| text.lines().count();
        assert_eq!(lines(coloured.wrapped(&text)), lines(paper(40, false).wrapped(&format!("  {}", LONG.trim()))));
    }

    #[test]
    fn a_drawing_stays_whole_and_a_file_has_lines_of_any_length() {
        let mut page = paper(20, false);
        page.row(LONG);
        page.screen.width = None;
        page.line(LONG);
        assert_eq!(page.text, format!("{LONG}\n{LONG}\n"));
    }
}
