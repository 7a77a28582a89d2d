use std::path::PathBuf;

use serde_json::{Value, json};

use super::*;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../fixtures/drawings")
}

fn points(spots: &[Spot]) -> Value {
    spots.iter().map(|spot| json!([spot.x, spot.y])).collect()
}

/// A stroke as the page of the format describes it.
fn stroke_json(stroke: &Stroke) -> Value {
    match stroke {
        Stroke::Fill { role, corners } => json!({"kind": "fill", "role": role.name(), "points": points(corners)}),
        Stroke::Line { role, pattern, thickness, closed, points: through } => json!({
            "kind": "line",
            "role": role.name(),
            "pattern": match pattern {
                Dash::Solid => "solid",
                Dash::Dashed => "dashed",
                Dash::Dotted => "dotted",
            },
            "closed": closed,
            "thickness": thickness,
            "points": points(through),
        }),
        Stroke::Hatch { role, spacing, thickness, corners } => json!({
            "kind": "hatch",
            "role": role.name(),
            "spacing": spacing,
            "thickness": thickness,
            "points": points(corners),
        }),
        Stroke::Text { role, weight, anchor, at, em, turn, width, text } => json!({
            "kind": "text",
            "role": role.name(),
            "weight": if *weight == Weight::Bold { "bold" } else { "regular" },
            "anchor": match anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            },
            "x": at.x,
            "y": at.y,
            "em": em,
            "turn": turn,
            "width": width,
            "text": text,
        }),
    }
}

fn json_of(strokes: &[Stroke], (width, height): (f32, f32), texts: &[String]) -> Value {
    let strokes: Vec<Value> = strokes.iter().map(stroke_json).collect();
    json!({"width": width, "height": height, "texts": texts, "strokes": strokes})
}

/// The drawings that the shells' decoders are tried on.
fn drawings() -> Vec<Golden> {
    let mut all = super::board::golden();
    all.extend([super::elevation::golden(), super::pole::golden(), super::block::golden()]);
    all.extend(super::layers::golden());
    all
}

/// `every-stroke` was written from the page of the format by a program of its own, so the page, these bytes and the core
/// agree.
#[test]
fn the_page_and_the_core_agree_on_every_stroke() {
    let bytes = std::fs::read(folder().join("every-stroke.bin")).unwrap();
    let said: Value = serde_json::from_slice(&std::fs::read(folder().join("every-stroke.json")).unwrap()).unwrap();
    let texts: Vec<String> = serde_json::from_value(said["texts"].clone()).unwrap();
    let strokes = unpack(&bytes, &texts).unwrap();
    assert_eq!(json_of(&strokes, (64.0, 48.0), &texts).to_string(), said.to_string());
    assert_eq!(pack(&strokes), Packed { bytes, texts });
}

/// The drawings that the shells' decoders are tried on; `LAPWRIGHT_WRITE=1` writes them anew.
#[test]
fn the_golden_drawings_are_those_of_the_core() {
    for (name, (strokes, height), width) in drawings() {
        let packed = pack(&strokes);
        let said = json_of(&strokes, (width, height as f32), &packed.texts);
        let text = format!("{:#}\n", said);
        let [bin, json] = ["bin", "json"].map(|end| folder().join(format!("{name}.{end}")));
        if std::env::var_os("LAPWRIGHT_WRITE").is_some() {
            std::fs::write(&bin, &packed.bytes).unwrap();
            std::fs::write(&json, &text).unwrap();
        }
        assert!(std::fs::read(&bin).unwrap() == packed.bytes, "{}", bin.display());
        assert!(std::fs::read_to_string(&json).unwrap() == text, "{}", json.display());
    }
}

/// Writes pictures to look at where `LAPWRIGHT_PICTURES` names a folder.
#[test]
fn pictures_are_svg() {
    for (name, (strokes, height), width) in drawings() {
        let text = svg(&strokes, (width, height as f32), Theme::Sun, name);
        assert!(text.starts_with("<svg ") && text.ends_with("</svg>\n"));
        if let Some(folder) = std::env::var_os("LAPWRIGHT_PICTURES") {
            std::fs::write(std::path::Path::new(&folder).join(format!("{name}.svg")), text).unwrap();
        }
    }
}
