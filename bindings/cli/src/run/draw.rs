//! Drawings as SVG files.

use lapwright::drawing::{Theme, svg, unpack};
use lapwright::screens;
use lapwright::views::{Frame, Subject};

use super::Session;
use crate::fault::Fault;

/// How high a drawing on paper or on a desk's screen may come out, and the sizes of its texts.
const HEIGHT: f32 = 4_000.0;
const LABEL: f32 = 18.0;
const SMALL: f32 = 16.0;
const ANSWER: f32 = 44.0;

impl Session<'_> {
    /// A drawing of a thing as SVG.
    pub(super) fn draw(&self, what: &str, thing: &str, width: u16, dark: bool) -> Result<String, Fault> {
        let subject = self.drawn(what, thing)?;
        let frame = Frame {
            width_dp: f32::from(width),
            height_dp: if what == "pole" { HEIGHT / 4.0 } else { HEIGHT },
            answer_dp: ANSWER,
            label_dp: LABEL,
            small_dp: SMALL,
            left_hand: true,
        };
        let drawing = screens::drawing(&self.book.inner, &self.book.context()?, &subject, &frame)?;
        let strokes = unpack(&drawing.bytes, &drawing.texts).map_err(|error| Fault::other(error.to_string()))?;
        if strokes.is_empty() {
            return Err(Fault::said("nothing", "thing", "cli-nothing-drawn", &[("thing", thing.into())]));
        }
        let theme = if dark { Theme::Dark } else { Theme::Sun };
        Ok(svg(&strokes, (drawing.width_dp, drawing.height_dp), theme, &drawing.spoken))
    }

    fn drawn(&self, what: &str, thing: &str) -> Result<Subject, Fault> {
        Ok(match what {
            "face" => Subject::BoardFace { board: self.board_id(thing)? },
            "back" => Subject::BoardBack { board: self.board_id(thing)? },
            "pole" => Subject::PoleStick { job: self.job(thing)? },
            "layers" => Subject::LayersFront { penetration: self.penetration_id(thing)?, layer: String::new() },
            "section" => Subject::LayersSection { penetration: self.penetration_id(thing)?, layer: String::new() },
            "block" => Subject::BlockSplit { penetration: self.penetration_id(thing)? },
            _ => Subject::Elevation { wall: self.wall_id(thing)? },
        })
    }
}
