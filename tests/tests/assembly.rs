//! Every assembly that can be asked for, checked from outside by the trade's order of layers ("each later layer laps over
//! the one below it", common practice, no source), told here a second time from the wall outward.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a check without its answer must fail")]

use std::collections::BTreeSet;

use lapwright::figure;
use serde_json::{Value, json};

const KINDS: [&str; 9] =
    ["hose-bib", "pipe", "conduit", "cable", "electrical-box", "light", "vent-hood", "meter-base", "line-set"];
const FLAGS: [&str; 5] = ["head_flashing", "first_course", "painted", "old_house", "above_reach"];

/// Every request: kind, shape, whether it comes off, finish, and each of the five flags left out, or set either way.
fn requests() -> Vec<Value> {
    let mut all = Vec::new();
    for kind in KINDS {
        for through in [json!({"diameter": "1\""}), json!({"width": "4\"", "height": "3\""})] {
            for finish in ["block", "trim", "collar"] {
                for flags in 0..64_u8 {
                    let mut request = json!({"kind": kind, "through": through, "finish": finish});
                    request["comes_off"] = json!(flags & 1 != 0);
                    for (at, flag) in FLAGS.iter().enumerate() {
                        if flags & (2 << at) != 0 || at % 2 == 0 {
                            request[*flag] = json!(flags & (2 << at) != 0);
                        }
                    }
                    all.push(request);
                }
            }
        }
    }
    all
}

fn asked(request: &Value) -> Value {
    let given = figure::answer("assembly", &request.to_string());
    assert!(!given.is_error, "{request}: {}", given.json);
    serde_json::from_str(&given.json).unwrap()
}

/// What goes on a wall, piece by piece, as it is told on a jobsite.
fn told(request: &Value) -> Vec<&'static str> {
    let stays = request["comes_off"] == false;
    let mut layers = vec!["barrier", "patch"];
    if stays {
        layers.push("cover");
    }
    match request["finish"].as_str().unwrap() {
        "block" if stays => layers.extend(["block-lower", "block-upper"]),
        "block" => layers.push("block"),
        "trim" => layers.extend(["trim-bottom", "trim-sides", "trim-top"]),
        _ => {}
    }
    if request["head_flashing"] == true && request["finish"] != "collar" {
        layers.push("head-flashing");
    }
    layers.extend(["barrier-flap", "boards"]);
    if request["finish"] == "collar" {
        layers.push("collar");
    }
    layers.push("sealant");
    layers
}

#[test]
fn every_assembly_is_the_one_that_is_told() {
    let all = requests();
    assert_eq!(all.len(), 9 * 2 * 3 * 64);
    for request in &all {
        let answer = asked(request);
        let layers: Vec<&str> =
            answer["layers"].as_array().unwrap().iter().map(|code| code.as_str().unwrap()).collect();
        assert_eq!(layers, told(request), "{request}");

        let steps = answer["steps"].as_array().unwrap();
        let codes: Vec<&str> = steps.iter().map(|step| step["code"].as_str().unwrap()).collect();
        assert_eq!(codes.iter().collect::<BTreeSet<_>>().len(), codes.len(), "{codes:?}");
        let put: Vec<&str> = steps.iter().filter_map(|step| step.get("puts")?.as_str()).collect();
        assert_eq!(put, layers[1..], "{request}");

        let at = |layer: &str| steps.iter().position(|step| step["puts"] == layer);
        for layer in ["patch", "cover", "barrier-flap"] {
            assert!(at(layer).is_none_or(|at| steps[at]["hidden"] == true), "{layer} {request}");
        }
        assert!(steps[at("sealant").unwrap()..].iter().all(|step| step["hidden"] == false), "{request}");

        let safe: Vec<usize> = (0..steps.len()).filter(|at| steps[*at]["safe"] == true).collect();
        assert!(safe.iter().all(|safe| *safe < at("patch").unwrap()), "{request}");
        let least = usize::from(request["kind"] != "vent-hood") + usize::from(request["old_house"] == true);
        assert!(safe.len() >= least, "{request}");

        if request["comes_off"] == true {
            assert!(codes.iter().all(|code| !code.contains("slit") && !code.contains("patch-cover")), "{codes:?}");
        }
    }
}

/// An old house asks for one more step that makes it safe, and for nothing else.
#[test]
fn old_paint_adds_one_step_and_moves_none() {
    for mut request in requests() {
        request["old_house"] = json!(false);
        let new = asked(&request);
        request["old_house"] = json!(true);
        let old = asked(&request);
        assert_eq!(old["layers"], new["layers"]);
        let (old, new) = (old["steps"].as_array().unwrap(), new["steps"].as_array().unwrap());
        let added: Vec<&Value> = old.iter().filter(|step| !new.contains(step)).collect();
        assert_eq!((old.len(), added.len()), (new.len() + 1, 1), "{request}");
        assert_eq!(added[0]["safe"], true);
    }
}
