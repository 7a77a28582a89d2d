//! A drawing as SVG 1.1: colours of the theme, hatches as patterns, broken lines as dashes, so that it also reads in
//! black and white.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::font::Weight;
use super::role::Role;
use super::stroke::{Anchor, Spot, Stroke};

/// The light that a drawing is looked at in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Dark lines on pale stock: outdoors and on paper.
    Sun,
    /// Pale lines on a dark ground: indoors.
    Dark,
}

impl Theme {
    /// The colour of a role.
    pub const fn colour(self, role: Role) -> &'static str {
        match (self, role) {
            (Self::Sun, Role::Ground) => "#FAF8F3",
            (Self::Sun, Role::Board) => "#E9E4D8",
            (Self::Sun, Role::Ink | Role::Cut | Role::Taped) => "#161A1D",
            (Self::Sun, Role::Chalk) => "#0A4A86",
            (Self::Sun, Role::Warning) => "#8A2B0E",
            (Self::Sun, Role::Done) => "#1F5A33",
            (Self::Sun, Role::Planned) => "#4A5157",
            (Self::Sun, Role::Ruled) => "#6B4A00",
            (Self::Dark, Role::Ground) => "#15191C",
            (Self::Dark, Role::Board) => "#262C31",
            (Self::Dark, Role::Ink | Role::Cut | Role::Taped) => "#F1EEE6",
            (Self::Dark, Role::Chalk) => "#9CC7F2",
            (Self::Dark, Role::Warning) => "#FFB199",
            (Self::Dark, Role::Done) => "#A6DDB4",
            (Self::Dark, Role::Planned) => "#B9C0C5",
            (Self::Dark, Role::Ruled) => "#F2CE7B",
        }
    }
}

/// The SVG of strokes on a ground of this width and height in dp; `title` is what a screen reader says.
pub fn svg(strokes: &[Stroke], (width, height): (f32, f32), theme: Theme, title: &str) -> String {
    let mut writer = Writer { theme, body: String::new(), patterns: BTreeMap::new() };
    for stroke in strokes {
        writer.stroke(stroke);
    }
    let Writer { body, patterns, .. } = writer;
    let (width, height) = (number(width), number(height));
    let patterns: String = patterns.into_values().collect();
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" role=\"img\">\n\
         <title>{}</title>\n<defs>\n{patterns}</defs>\n\
         <rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>\n\
         <g font-family=\"'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif\" font-kerning=\"none\">\n{body}</g>\n</svg>\n",
        escaped(title),
        theme.colour(Role::Ground),
    )
}

struct Writer {
    theme: Theme,
    body: String,
    /// The patterns of the hatches, by their names.
    patterns: BTreeMap<String, String>,
}

impl Writer {
    fn stroke(&mut self, stroke: &Stroke) {
        // Writing into a String cannot fail.
        let _ = match stroke {
            Stroke::Fill { role, corners } => {
                let (points, colour) = (points(corners), self.theme.colour(*role));
                writeln!(self.body, "<polygon class=\"{}\" points=\"{points}\" fill=\"{colour}\"/>", role.name())
            }
            Stroke::Line { role, pattern, thickness, closed, points: through } => {
                let shape = if *closed { "polygon" } else { "polyline" };
                let dashes = pattern.dashes();
                let dashes = dashes.map(|(on, off)| format!(" stroke-dasharray=\"{on} {off}\"")).unwrap_or_default();
                writeln!(
                    self.body,
                    "<{shape} class=\"{}\" points=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"{dashes}/>",
                    role.name(),
                    points(through),
                    self.theme.colour(*role),
                    number(*thickness),
                )
            }
            Stroke::Hatch { role, spacing, thickness, corners } => {
                let name = self.pattern(*role, *spacing, *thickness);
                let points = points(corners);
                writeln!(self.body, "<polygon class=\"{}\" points=\"{points}\" fill=\"url(#{name})\"/>", role.name())
            }
            Stroke::Text { role, weight, anchor, at, em, turn, width, text } => {
                let anchor = match anchor {
                    Anchor::Start => "start",
                    Anchor::Middle => "middle",
                    Anchor::End => "end",
                };
                let (x, y) = (number(at.x), number(at.y));
                let bold = if *weight == Weight::Bold { " font-weight=\"bold\"" } else { "" };
                // SVG turns clockwise.
                let turn =
                    if *turn == 0.0 { String::new() } else { format!(" transform=\"rotate({} {x} {y})\"", -turn) };
                writeln!(
                    self.body,
                    "<text x=\"{x}\" y=\"{y}\" fill=\"{}\" font-size=\"{}\"{bold} text-anchor=\"{anchor}\" \
                     textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\"{turn}>{}</text>",
                    self.theme.colour(*role),
                    number(*em),
                    number(*width),
                    escaped(text),
                )
            }
        };
    }

    /// The name of a hatch's pattern: a square tile of `spacing * sqrt(2)` whose lines run on in the next.
    fn pattern(&mut self, role: Role, spacing: f32, thickness: f32) -> String {
        let name = format!("hatch-{}-{}", role.name(), number(spacing)).replace('.', "-");
        let tile = f64::from(spacing) * std::f64::consts::SQRT_2;
        let far = tile * 2.0;
        let text = format!(
            "<pattern id=\"{name}\" patternUnits=\"userSpaceOnUse\" width=\"{tile:.4}\" height=\"{tile:.4}\">\
             <path d=\"M -{tile:.4} {tile:.4} L {tile:.4} -{tile:.4} M 0 {tile:.4} L {tile:.4} 0 \
             M 0 {far:.4} L {far:.4} 0\" stroke=\"{}\" stroke-width=\"{}\"/></pattern>\n",
            self.theme.colour(role),
            number(thickness),
        );
        self.patterns.insert(name.clone(), text);
        name
    }
}

/// To a thousandth of a dp, without zeros at the end.
fn number(value: f32) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn points(spots: &[Spot]) -> String {
    spots.iter().map(|spot| format!("{},{}", number(spot.x), number(spot.y))).collect::<Vec<_>>().join(" ")
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
