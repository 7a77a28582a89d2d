//! How the board in hand is cut, in words.

use super::context::Terms;
use crate::board::{BoardCorner, BoardEnd, BoxSide, Instruction, Instructions, LongEdge, SawCut};
use crate::book::Field;
use crate::measure::Length;
use crate::phrases::{Arg, key};
use crate::views::{InstructionLine, NotchView};
use crate::work::{Board, is_of_strip};

/// The cuts of a board in their order. What it goes round is cut at the marks of its notch.
pub(crate) fn lines(terms: &Terms<'_>, board: &Board, notches: &[NotchView]) -> Vec<InstructionLine> {
    let mut lines = Vec::new();
    if let [first, more @ ..] = board.shapes.as_slice()
        && !more.is_empty()
    {
        let round = first.cuts.iter().chain(more.iter().flat_map(|own| &own.cuts)).next();
        let name =
            round.and_then(|cut| board.names.get(cut.around)).map(|name| terms.phrase(name, &[])).unwrap_or_default();
        let lengths: Vec<String> = board.shapes.iter().map(|own| terms.shown_finely(own.length)).collect();
        let args = [
            ("count", i64::try_from(lengths.len()).unwrap_or(i64::MAX).into()),
            ("what", name.into()),
            ("lengths", lengths.join(", ").into()),
        ];
        lines.push(plain("pieces", terms.phrase(key("board-cut-pieces"), &args)));
    }
    for (shape, own) in board.shapes.iter().zip(board.instructions()) {
        let told = Told { terms, board, notches, instructions: &own, height: shape.height, length: shape.length };
        lines.extend(own.cuts.iter().filter_map(|cut| told.line(cut)));
        if board.shapes.len() > 1 {
            continue;
        }
        let length = board.record.length(Field::Length).unwrap_or(shape.length);
        lines.insert(0, InstructionLine { marks: vec![length.nm()], ..told.length(length) });
    }
    if let Some(number) = board.record.whole(Field::CutFrom).filter(|_| is_of_strip(&board.record)) {
        let text = match board.record.cut_from_offcut() {
            Some(_) => key("board-cut-strip-kept"),
            None => key("board-cut-strip"),
        };
        lines.insert(0, plain("strip", terms.phrase(text, &[("number", number.into())])));
    }
    lines
}

fn plain(code: &str, text: String) -> InstructionLine {
    InstructionLine { code: code.to_owned(), text, marks: Vec::new(), marks_behind: Vec::new() }
}

/// What the words of a cut are made of.
struct Told<'a> {
    terms: &'a Terms<'a>,
    board: &'a Board,
    notches: &'a [NotchView],
    instructions: &'a Instructions,
    length: Length,
    height: Length,
}

impl Told<'_> {
    fn fine(&self, length: Length) -> Arg<'static> {
        self.terms.shown_finely(length).into()
    }

    /// Square to its length, with both edges where they differ.
    fn length(&self, length: Length) -> InstructionLine {
        let edges = self.instructions.edges;
        let slants = edges.bottom != edges.top && edges.bottom.is_positive();
        let text = if slants { key("board-cut-length-edges") } else { key("board-cut-length") };
        let args = [
            ("length", self.terms.shown_finely(length).into()),
            ("bottom", self.fine(edges.bottom)),
            ("top", self.fine(edges.top)),
            ("end", end(self.instructions.measured_from).into()),
        ];
        plain("length", self.terms.phrase(text, &args))
    }

    /// None for the cut to length, which is told by the board's own.
    fn line(&self, own: &Instruction) -> Option<InstructionLine> {
        let (code, text) = match &own.cut {
            SawCut::Length(_) => return None,
            SawCut::Rip { edge, left, right } => ("rip", self.rip(*edge, *left, *right)),
            _ if !own.around.is_empty() => return Some(self.round(own)),
            SawCut::Bevel { end: at, bottom, top } => ("bevel", self.bevel(&own.cut, *at, *bottom, *top)),
            SawCut::Clip { corner, along, up } => ("clip", self.corner(key("board-cut-clip"), *corner, *along, *up)),
            SawCut::Step { corner, along, up } => ("step", self.corner(key("board-cut-step"), *corner, *along, *up)),
            SawCut::Notch { side, from, to, depth: [one, other] } => {
                ("notch", self.notch(*side, (*from, *to), (*one).max(*other)))
            }
            SawCut::Hole { .. } => ("hole", self.terms.phrase(key("board-cut-hole"), &[])),
            SawCut::Contour { .. } => ("contour", self.terms.phrase(key("board-cut-contour"), &[])),
        };
        let nm = |marks: Vec<Length>| marks.into_iter().map(Length::nm).collect();
        Some(InstructionLine {
            code: code.to_owned(),
            text,
            marks: nm(own.cut.marks(BoardEnd::Left, self.length)),
            marks_behind: nm(own.cut.from_behind(self.length).marks(BoardEnd::Left, self.length)),
        })
    }

    /// A cut round something: its notch has the marks, as the saw wants them.
    fn round(&self, own: &Instruction) -> InstructionLine {
        let names: Vec<String> = own
            .around
            .iter()
            .filter_map(|around| self.board.names.get(*around))
            .map(|name| self.terms.phrase(name, &[]))
            .collect();
        let code = match own.cut {
            SawCut::Hole { .. } | SawCut::Contour { is_closed: true, .. } => "hole",
            _ => "notch",
        };
        let text = if code == "hole" { key("board-cut-hole-round") } else { key("board-cut-round") };
        let text = self.terms.phrase(text, &[("what", names.join(", ").into())]);
        let same = self.notches.iter().filter(|notch| names.contains(&notch.name));
        let marks = |side: fn(&NotchView) -> &Option<crate::views::MarksView>| {
            let marks = same.clone().filter_map(|notch| side(notch).as_ref());
            let mut all: Vec<i64> = marks.flat_map(|marks| marks.uprights.iter().map(|mark| mark.nm)).collect();
            all.sort_unstable();
            all
        };
        InstructionLine {
            code: code.to_owned(),
            text,
            marks: marks(|notch| &notch.face),
            marks_behind: marks(|notch| &notch.back),
        }
    }

    fn rip(&self, edge: LongEdge, left: Length, right: Length) -> String {
        let text = match (edge, left == right) {
            // How much comes off depends on the strip.
            (LongEdge::Top, true) if is_of_strip(&self.board.record) => key("board-cut-rip-strip"),
            (LongEdge::Top, true) => key("board-cut-rip-top"),
            (LongEdge::Bottom, true) => key("board-cut-rip-bottom"),
            (LongEdge::Top, false) => key("board-cut-taper-top"),
            (LongEdge::Bottom, false) => key("board-cut-taper-bottom"),
        };
        let args = [
            ("by", self.fine(left)),
            ("left", self.fine(left)),
            ("right", self.fine(right)),
            ("height", self.fine(self.height)),
        ];
        self.terms.phrase(text, &args)
    }

    fn bevel(&self, cut: &SawCut, at: BoardEnd, bottom: Length, top: Length) -> String {
        let way = if bottom > top { "bottom" } else { "top" };
        let args = [
            ("end", end(at).into()),
            ("edge", way.into()),
            ("by", self.fine((bottom - top).abs())),
            ("degrees", degrees(cut, self.height).into()),
        ];
        self.terms.phrase(key("board-cut-bevel"), &args)
    }

    fn corner(&self, text: &str, corner: BoardCorner, along: Length, up: Length) -> String {
        let edge = match corner.edge {
            LongEdge::Bottom => "bottom",
            LongEdge::Top => "top",
        };
        let args = [
            ("end", end(corner.end).into()),
            ("edge", edge.into()),
            ("along", self.fine(along)),
            ("up", self.fine(up)),
        ];
        self.terms.phrase(text, &args)
    }

    fn notch(&self, side: BoxSide, (from, to): (Length, Length), depth: Length) -> String {
        let side = match side {
            BoxSide::Left => "left",
            BoxSide::Right => "right",
            BoxSide::Bottom => "bottom",
            BoxSide::Top => "top",
        };
        let args =
            [("side", side.into()), ("from", self.fine(from)), ("to", self.fine(to)), ("depth", self.fine(depth))];
        self.terms.phrase(key("board-cut-notch"), &args)
    }
}

fn end(end: BoardEnd) -> &'static str {
    match end {
        BoardEnd::Left => "left",
        BoardEnd::Right => "right",
    }
}

/// An angle as a saw is set to it, to a tenth.
fn degrees(cut: &SawCut, height: Length) -> String {
    cut.degrees(height).map(|degrees| format!("{degrees:.1}°")).unwrap_or_default()
}
