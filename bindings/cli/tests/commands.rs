//! The command as a person or a script meets it: a program that is started, and what it says.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test fails where one of these does")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::thread::sleep;
use std::time::Duration;

use serde_json::Value;
use tempfile::TempDir;

const HOUSE: &str = "Demo: Plover Cottage";

/// A folder of its own for every test.
struct Place {
    folder: TempDir,
}

impl Place {
    fn new() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    /// With the demo house taken in as a house like any other.
    fn with_house() -> Self {
        let place = Self::new();
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/demo/house.json");
        place.good(&["import", file.to_str().unwrap()]);
        place
    }

    fn book(&self) -> PathBuf {
        self.folder.path().join("book.lapwright")
    }

    fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lapwright"));
        command.arg("--book").arg(self.book()).args(args).stdin(Stdio::null());
        command.env_clear().env("HOME", self.folder.path()).env("LANG", "en_US.UTF-8");
        command
    }

    fn run(&self, args: &[&str]) -> Output {
        self.command(args).output().unwrap()
    }

    /// What is printed where all goes well.
    fn good(&self, args: &[&str]) -> String {
        let output = self.run(args);
        assert!(output.status.success(), "{args:?}: {}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    }

    fn json(&self, args: &[&str]) -> Value {
        let mut all = vec!["--json"];
        all.extend(args);
        serde_json::from_str(&self.good(&all)).unwrap()
    }

    /// What is said where the command is refused with exit code 2, and nothing is printed as an answer.
    fn refused(&self, args: &[&str]) -> String {
        let output = self.run(args);
        assert_eq!(output.status.code(), Some(2), "{args:?}");
        assert!(output.stdout.is_empty(), "{args:?}");
        String::from_utf8(output.stderr).unwrap()
    }

    fn done(&self) -> Value {
        self.json(&["done", "--count", "100000"])
    }

    /// The boards that are up on all walls, as the house counts them.
    fn boards_up(&self) -> u64 {
        let house = self.json(&["house", HOUSE]);
        let walls = house["house-kind"]["view"]["walls"].as_array().unwrap();
        walls.iter().map(|wall| wall["fixed"].as_u64().unwrap()).sum()
    }

    /// A wall with its boards planned.
    fn planned(&self, wall: &str) -> Value {
        self.good(&["pole", HOUSE, "--lay-out", "--signer", "Wren"]);
        self.good(&["plan", wall, "--signer", "Wren"]);
        self.json(&["wall", wall])["wall-kind"]["view"].clone()
    }
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}

#[test]
fn the_demo_goes_on_where_it_stopped_until_nothing_is_left() {
    let place = Place::new();
    let first = place.good(&[]);
    for said in ["course 1:", "FACE", "BACK", "[T]", "again"] {
        assert!(first.contains(said), "{said}: {first}");
    }
    let up = place.boards_up();
    assert!(up > 0);
    let second = place.good(&["demo"]);
    assert!(second.contains("Going on"), "{second}");
    assert!(!second.contains("course 1:"), "what is up is not hung again: {second}");
    assert!(place.boards_up() > up);
    walk_to_the_end(&place);
    let book = std::fs::read(place.book()).unwrap();
    let anew = place.good(&["demo", "--anew"]);
    let aside = place.folder.path().join("book.1.lapwright");
    assert!(anew.contains(aside.to_str().unwrap()), "{anew}");
    assert_eq!(std::fs::read(aside).unwrap(), book, "the old book is there as it was");
    assert_eq!(place.boards_up(), up);
}

/// Runs the demo until it says that nothing is left, and looks whether that is so.
fn walk_to_the_end(place: &Place) {
    let mut walked = String::new();
    let ends = (0..30).any(|_| {
        walked += &place.good(&["demo"]);
        walked.contains("Nothing is left")
    });
    assert!(ends, "thirty runs are not enough");
    let house = place.json(&["house", HOUSE]);
    let view = &house["house-kind"]["view"];
    assert_eq!(text(&view["next"]), "nothing-left");
    assert!(view["open-to-weather"].as_array().or_else(|| view["open_to_weather"].as_array()).unwrap().is_empty());
    let mut notches = 0;
    for wall in view["walls"].as_array().unwrap() {
        let count = |name: &str| wall[name].as_u64().unwrap();
        assert_eq!((count("planned"), count("cut"), count("penetrations_open")), (0, 0, 0), "{wall}");
        let drawn = place.json(&["wall", text(&wall["name"])]);
        for board in drawn["wall-kind"]["view"]["boards"].as_array().unwrap().iter().filter(|b| b["notched"] == true) {
            let board = place.json(&["board", text(&board["board"])]);
            let view = &board["board-kind"]["view"];
            let steps = view["steps"].as_array().unwrap();
            assert!(steps.iter().all(|step| step["state"] == "done"), "{board}");
            for notch in view["notches"].as_array().unwrap() {
                notches += 1;
                let questions = notch["questions"].as_array().unwrap();
                assert!(questions.iter().all(|question| question["reading"]["source"] == "taped"), "{notch}");
                assert!(!notch["notes"].to_string().contains("off-plan"), "the demo's tape and plan agree: {notch}");
                assert!(notch["face"]["corners"].as_array().unwrap().len() >= 4, "{notch}");
            }
        }
    }
    assert!(notches >= 11, "every reading of the demo's document belongs to a notch: {notches}");
}

#[test]
fn a_kill_at_any_moment_loses_nothing_that_was_said() {
    use std::io::{BufRead, BufReader};
    let place = Place::new();
    let mut up = 0;
    for (lines, wait) in [(0, 3), (40, 0), (70, 1), (95, 2), (100, 0), (130, 5), (12, 0), (40, 3), (25, 1)] {
        let mut child = place.command(&["demo"]).stdout(Stdio::piped()).spawn().unwrap();
        let mut said = 0;
        for line in BufReader::new(child.stdout.take().unwrap()).lines().take(lines) {
            said += u64::from(line.unwrap().starts_with('═'));
        }
        sleep(Duration::from_millis(wait));
        // SIGKILL: the program is not asked.
        child.kill().unwrap();
        child.wait().unwrap();
        if place.json(&["jobs"])["jobs-kind"]["view"]["jobs"].as_array().unwrap().is_empty() {
            continue;
        }
        let now = place.boards_up();
        assert!(now >= up + said, "{now} boards are up; {up} were before, {said} were said since");
        assert_eq!(place.good(&["check"]).trim(), "The data is sound.");
        up = now;
    }
    walk_to_the_end(&place);
}

#[test]
fn every_command_answers_in_json() {
    let place = Place::with_house();
    let demo =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/demo/house.json").to_str().unwrap().to_owned();
    let wall = place.planned("Street gable");
    let notched = wall["boards"].as_array().unwrap().iter().find(|board| board["notched"] == true).unwrap();
    let board = text(&notched["board"]).to_owned();
    let view = place.json(&["board", &board]);
    let questions = view["board-kind"]["view"]["notches"][0]["questions"].as_array().unwrap().clone();
    let planned = questions.iter().find(|question| question["field"] == "left").unwrap();
    let left = format!("left={}", text(&planned["reading"]["text"]).trim_start_matches("≈ "));
    let copy = place.folder.path().join("copy.lapwright").to_str().unwrap().to_owned();
    let file = place.folder.path().join("house.json").to_str().unwrap().to_owned();
    let commands: &[(&[&str], &str)] = &[
        (&["jobs"], "jobs-kind"),
        (&["new-job", "Lot 7", "--like", HOUSE], "view"),
        (&["rename", "Lot 7", "Lot 8"], "view"),
        (&["archive", "Lot 8"], "view"),
        (&["bring-back", "Lot 8"], "view"),
        (&["house", HOUSE], "house-kind"),
        (&["house", HOUSE, "lap=1 1/2 in"], "view"),
        (&["stock", HOUSE, "10 ft", "20"], "view"),
        (&["add-wall", "Lot 8", "Shed end"], "view"),
        (&["measure", "Shed end", "width=10 ft"], "view"),
        (&["wall", "Street gable"], "wall-kind"),
        (
            &[
                "add",
                "Shed end",
                "opening",
                "what=door",
                "from-left=1 ft",
                "width=3 ft",
                "from-base=0 in",
                "height=80 in",
            ],
            "view",
        ),
        (&["remove", "Shed end", "opening"], "view"),
        (
            &[
                "add",
                "Yard side",
                "opening",
                "what=window",
                "from-left=150 in",
                "width=20 in",
                "from-base=30 in",
                "height=24 in",
                "head-from-left=150 1/4 in",
                "head-width=20 1/8 in",
            ],
            "view",
        ),
        (&["pole", HOUSE], "pole-kind"),
        (&["mark", HOUSE, "name=Beam", "at=150 in", "want=land"], "view"),
        (&["plan", "Yard side"], "view"),
        (&["next", HOUSE], "penetration-kind"),
        (&["penetration", "Light"], "penetration-kind"),
        (&["penetration", "Street gable Light", "painted=no"], "view"),
        (&["tick", "Light", "dead-and-tested", "--signer", "Wren"], "view"),
        (&["untick", "Light", "dead-and-tested", "--signer", "Wren", "--note", "too early"], "view"),
        (&["skip", "Light", "dead-and-tested", "--signer", "Wren", "--reason", "not wired"], "view"),
        (&["board", &board], "board-kind"),
        (&["board", &board, &left], "view"),
        (&["tick", &board, "board-measure", "--signer", "Wren", "--measured", "89 3/4 in"], "view"),
        (&["tick", &board, "board-mark", "board-notch", "--signer", "Wren"], "view"),
        (&["gap", &board, "1/8", "--signer", "Wren"], "view"),
        (
            &["loose", "6 ft", "height=8 in", "lap=1 1/4 in", "left=20", "right=26", "bottom-left=4", "top-left=12"],
            "view",
        ),
        (&["rules", HOUSE], "rules-kind"),
        (&["settings", "signer=Wren"], "settings-kind"),
        (&["done"], "done-list-kind"),
        (&["undo"], "view"),
        (&["copy", &copy], "path"),
        (&["check"], "why"),
        (&["export", HOUSE, &file], "path"),
        (&["export", HOUSE], "lapwright"),
        (&["sheet", HOUSE], "sheet"),
        (&["import", &demo], "view"),
    ];
    for (args, key) in commands {
        let answer = place.json(args);
        assert!(answer.get(key).is_some(), "{args:?}: {answer}");
    }
    let output = place.run(&["--json", "house", "Nowhere"]);
    assert_eq!(output.status.code(), Some(2));
    let error: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(text(&error["error"]["field"]), "house");
}

#[test]
fn after_a_copy_the_house_says_how_old_it_is() {
    let place = Place::with_house();
    assert!(place.good(&["house", HOUSE]).contains("Never copied off this device"));
    place.good(&["copy", place.folder.path().join("copy.lapwright").to_str().unwrap()]);
    assert!(place.good(&["house", HOUSE]).contains("Copied today"));
}

#[test]
fn bad_input_says_the_field_and_what_is_allowed_and_changes_nothing() {
    let place = Place::with_house();
    let before = place.done();
    for (args, said) in [
        (&["house", HOUSE, "color=red"] as &[&str], &["color", "lap"] as &[&str]),
        (&["house", HOUSE, "lap=2 bananas"], &["lap", "154 mm"]),
        (&["house", HOUSE, "lap=-1 in"], &["lap"]),
        (&["house", HOUSE, "rules=moon"], &["rules", "us (United States), ca (Canada)"]),
        (&["house", "Nowhere"], &["house", HOUSE]),
        (&["wall", "West"], &["wall", "Street gable"]),
        (&["add", "Yard side", "hatch"], &["kind", "base-step", "penetration"]),
        (&["penetration", "Tub"], &["penetration", "Hose bib"]),
        (&["tick", "Light", "dance", "--signer", "Wren"], &["step"]),
        (&["tick", "Light", "dead-and-tested"], &["signer"]),
        (&["plan", "Yard side"], &["lines", "Story pole"]),
        (&["loose", "6 ft"], &["height"]),
        (&["import", "/nowhere/house.json"], &["/nowhere/house.json"]),
        (&["demo", "--show", "ells"], &["show", "in/16"]),
    ] {
        let text = place.refused(args);
        assert!(said.iter().all(|said| text.contains(said)), "{args:?}: {text}");
        assert_eq!(place.done(), before, "{args:?}");
    }
}

#[test]
fn what_is_no_book_or_a_newer_one_is_left_as_it_is() {
    let place = Place::with_house();
    let book = place.book();
    let newer = rusqlite::Connection::open(&book).unwrap();
    newer.execute_batch("PRAGMA user_version = 99; UPDATE book SET least_reader = 99").unwrap();
    newer.close().unwrap();
    let bytes = std::fs::read(&book).unwrap();
    assert!(place.refused(&["jobs"]).contains("99"));
    assert_eq!(std::fs::read(&book).unwrap(), bytes);
    assert!(place.refused(&["--language", "es", "jobs"]).contains("versión más nueva"));
    // With nothing beside it that says that it was one.
    let place = Place::new();
    let book = place.book();
    std::fs::write(&book, "a shopping list\n".repeat(100)).unwrap();
    assert!(place.refused(&["jobs"]).contains("not a book"));
    assert_eq!(std::fs::read(&book).unwrap(), b"a shopping list\n".repeat(100));
}

#[test]
fn what_was_saved_of_a_damaged_book_is_told_until_somebody_has_read_it() {
    let place = Place::with_house();
    place.good(&["rename", HOUSE, "Wren House", "--signer", "Wren"]);
    let mut bytes = std::fs::read(place.book()).unwrap();
    let half = bytes.len() / 2;
    bytes[4096..half].fill(b'x');
    std::fs::write(place.book(), &bytes).unwrap();
    for args in [&["jobs"] as &[&str], &["done"]] {
        let output = place.run(args);
        assert!(output.status.success());
        let said = String::from_utf8(output.stderr).unwrap();
        assert!(["damaged", "kept", "lost", "acknowledge"].iter().all(|word| said.contains(word)), "{said}");
    }
    let aside = place.folder.path().join("book.lapwright.damaged-1");
    assert_eq!(std::fs::read(aside).unwrap()[4096..half], bytes[4096..half]);
    assert!(place.refused(&["check"]).contains("acknowledge"), "half a book is not said to be sound");
    assert!(place.refused(&["--language", "es", "check"]).contains("perdi"));
    place.good(&["acknowledge"]);
    let output = place.run(&["check"]);
    assert!(output.status.success() && output.stderr.is_empty(), "{output:?}");
}

#[test]
fn a_number_that_the_log_does_not_say_is_found_and_put_right() {
    let place = Place::with_house();
    let book = rusqlite::Connection::open(place.book()).unwrap();
    let changed = "UPDATE field SET value = replace(value, 'Plover', 'Plower') WHERE value LIKE '%Plover%'";
    assert!(book.execute(changed, []).unwrap() > 0);
    drop(book);
    assert!(place.good(&["jobs"]).contains("Plower"));
    let copy = place.folder.path().join("copy.lapwright");
    assert!(place.refused(&["check"]).contains("repair"));
    assert!(place.refused(&["copy", copy.to_str().unwrap()]).contains("damaged"));
    assert!(!copy.exists(), "what is wrong is not copied on");
    let output = place.run(&["repair"]);
    assert!(output.status.success());
    assert!(String::from_utf8(output.stderr).unwrap().contains("No accepted answer is known to be lost"));
    place.good(&["acknowledge"]);
    assert!(place.good(&["jobs"]).contains("Plover"));
    place.good(&["check"]);
    place.good(&["copy", copy.to_str().unwrap()]);
    assert!(place.good(&["repair"]).contains("nothing to repair"));
}

#[test]
fn a_file_is_written_over_only_where_that_is_asked_and_a_book_never() {
    let place = Place::with_house();
    let path = |name: &str| place.folder.path().join(name).to_str().unwrap().to_owned();
    let (copy, own, mine) = (path("copy.lapwright"), path("book.lapwright"), path("mine.json"));
    let (part, device) = (path("mine.json.part"), path("book.lapwright.device"));
    place.good(&["copy", &copy]);
    let bytes = |file: &str| std::fs::read(file).unwrap();
    std::fs::write(&mine, "mine").unwrap();
    std::fs::write(&part, "mine too").unwrap();
    for (file, force) in [(&own, true), (&copy, true), (&device, true), (&mine, false)] {
        let before = bytes(file);
        let mut commands = [vec!["export", HOUSE, file], vec!["draw", "pole", HOUSE, "--svg", file]];
        for command in &mut commands {
            if force {
                command.push("--force");
            }
            assert!(place.refused(command).contains(file.as_str()), "{command:?}");
            assert_eq!(bytes(file), before, "{command:?}");
        }
    }
    place.good(&["export", HOUSE, &mine, "--force"]);
    assert!(bytes(&mine).starts_with(b"{"));
    assert_eq!(bytes(&part), b"mine too");
    place.good(&["check"]);
}

#[test]
fn two_phones_are_put_together_by_a_file_and_taken_apart_again() {
    let (one, two) = (Place::with_house(), Place::new());
    two.good(&["new-job", "Lot 9"]);
    let file = one.folder.path().join("house.exchange");
    let file = file.to_str().unwrap();
    one.good(&["hand-over", HOUSE, file]);
    let before = two.done();
    let looked = two.good(&["take-in", file]);
    let words = one.good(&["words"]);
    let words = words.trim().strip_prefix("The words of this device: ").unwrap();
    assert!(looked.contains("--yes") && looked.contains(words), "{looked}");
    assert!(two.refused(&["take-in", file, "--yes"]).contains(words));
    assert!(two.refused(&["take-in", file, "--trust", "lusab babad gutih tugad"]).contains(words));
    assert_eq!(two.done(), before);
    two.good(&["take-in", file, "--trust", words]);
    assert!(two.good(&["take-in", file, "--yes"]).contains("hold the same of this house"));
    assert!(two.good(&["jobs"]).contains(HOUSE));
    let copies = two.good(&["backups"]);
    let copy = copies.lines().last().unwrap();
    assert!(two.good(&["restore", copy]).contains("--yes"));
    assert!(two.good(&["jobs"]).contains(HOUSE), "a look changes nothing");
    two.good(&["restore", copy, "--yes"]);
    assert!(!two.good(&["jobs"]).contains(HOUSE) && two.good(&["jobs"]).contains("Lot 9"));
    two.good(&["check"]);
}

#[test]
fn a_backup_made_by_hand_becomes_the_book_of_a_new_device() {
    let (one, two) = (Place::with_house(), Place::new());
    let file = one.folder.path().join("by-hand.zip");
    let file = file.to_str().unwrap();
    assert!(one.good(&["backup", file]).contains("Checked"));
    assert!(one.refused(&["backup", file]).contains(file));
    two.good(&["restore", file, "--yes"]);
    assert_eq!(two.done(), one.done());
    let mut bytes = std::fs::read(file).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    std::fs::write(file, bytes).unwrap();
    two.good(&["settings", "language=es"]);
    for refused in [two.refused(&["restore", file]), two.refused(&["restore", file, "--yes"])] {
        assert!(refused.contains(file) && refused.contains("está dañado"), "{refused}");
    }
    two.good(&["settings", "language=en"]);
    assert_eq!(two.done(), one.done());
}

#[test]
fn an_older_version_of_a_house_is_no_second_house() {
    let place = Place::with_house();
    let file = place.folder.path().join("house.json");
    let file = file.to_str().unwrap();
    place.good(&["export", HOUSE, file]);
    place.good(&["rename", HOUSE, "Plover"]);
    let before = place.done();
    assert!(place.refused(&["import", file]).contains("Plover"));
    assert_eq!(place.done(), before);
}

#[test]
fn of_several_answers_all_are_kept_or_none() {
    let place = Place::with_house();
    let before = place.done();
    for args in [
        &["house", HOUSE, "lap=1 1/2 in", "color=red"] as &[&str],
        &["measure", "Yard side", "width=20 ft", "height=2 bananas"],
        &["pole", HOUSE, "mode=level", "from=moon", "--lay-out"],
        &["loose", "6 ft", "height=8 1/4 in", "lap=1 1/4 in", "left=12 in"],
        &["loose", "6 ft", "height=8 1/4 in", "lap=1 1/4 in", "left=12 in", "right=moon"],
        &["settings", "language=es", "division=bananas"],
    ] {
        place.refused(args);
        assert_eq!(place.done(), before, "{args:?}");
    }
    assert!(place.good(&["settings"]).contains("Language"), "the first of two settings was taken back, too");
    place.good(&["house", HOUSE, "lap=1 1/2 in", "board-height=8 1/4 in"]);
    assert_ne!(place.done(), before);
}

#[cfg(target_os = "linux")]
#[test]
fn what_cannot_all_be_printed_is_no_success() {
    let place = Place::with_house();
    for args in [&["export", HOUSE] as &[&str], &["jobs"], &["--json", "jobs"]] {
        let full = std::fs::File::options().write(true).open("/dev/full").unwrap();
        let output = place.command(args).stdout(full).output().unwrap();
        assert_eq!(output.status.code(), Some(2), "{args:?}: {output:?}");
        assert!(!output.stderr.is_empty(), "{args:?}");
    }
}

#[test]
fn speaks_spanish_where_the_locale_or_an_option_says_so() {
    let place = Place::new();
    let spanish = |args: &[&str]| {
        let output = place.command(args).env("LANG", "es_MX.UTF-8").output().unwrap();
        (output.status.code(), String::from_utf8(output.stdout).unwrap(), String::from_utf8(output.stderr).unwrap())
    };
    let (code, demo, _) = spanish(&[]);
    assert_eq!(code, Some(0));
    for said in ["CARA", "REVERSO", "hilada 1", "otra vez"] {
        assert!(demo.contains(said), "{said}: {demo}");
    }
    for word in [" course ", "[T]ap", "Next", "gap", "board"] {
        assert!(!demo.contains(word), "{word}: {demo}");
    }
    let (code, _, said) = spanish(&["house", "Nada"]);
    assert_eq!(code, Some(2));
    assert!(said.contains("se llama «Nada»"), "{said}");
    assert!(place.good(&["--language", "es", "jobs"]).contains("Trabajos"));
    assert!(place.refused(&["--language", "es", "house", "Nada"]).contains("se llama"));
}

#[test]
fn no_colour_codes_where_there_is_no_terminal() {
    let place = Place::new();
    assert!(!place.good(&[]).contains('\u{1b}'));
    for args in [&["house", HOUSE] as &[&str], &["wall", "Street gable"], &["penetration", "Light"], &["done"]] {
        assert!(!place.good(args).contains('\u{1b}'), "{args:?}");
    }
}

/// A course of the demo house that hangs out of level, by the command: the lines above it follow, and go back.
#[test]
fn a_course_as_it_hangs_changes_the_lines_above_it() {
    let place = Place::with_house();
    place.good(&["pole", HOUSE, "--lay-out", "--signer", "Wren"]);
    let house = place.json(&["house", HOUSE]);
    let wall = text(&house["house-kind"]["view"]["walls"][0]["wall"]).to_owned();
    let pole = place.json(&["pole", HOUSE])["pole-kind"]["view"].clone();
    let nm = pole["lines"][3]["height"]["nm"].as_i64().unwrap();
    let (left, right) = (format!("left={} mm", (nm + 3_175_000) as f64 / 1e6), format!("right={} mm", nm as f64 / 1e6));
    let said = place.good(&["pole", HOUSE, "--as-built", &wall, "course=4", &left, &right]);
    assert!(said.contains("Course 4 hangs"), "{said}");
    let view = place.json(&["pole", HOUSE])["pole-kind"]["view"].clone();
    let entry = text(&view["as_built"][0]["as_built"]).to_owned();
    assert_eq!(view["as_built"][0]["courses"], 1);
    place.good(&["pole", HOUSE, "--not-built", &entry]);
    assert_eq!(place.json(&["pole", HOUSE])["pole-kind"]["view"], pole);
}

/// By hand: the demo's courses stand about 7 in apart, so that 1/2 in out of level leaves no doubt which course it is.
#[test]
fn courses_that_hang_out_of_level_keep_their_numbers() {
    let place = Place::with_house();
    let view = place.planned("Street gable");
    let wall = text(&view["wall"]).to_owned();
    let numbers = |place: &Place| {
        let said = place.good(&["wall", "Street gable"]);
        let number = |line: &str| line.get(..3)?.trim().parse::<u32>().ok();
        said.lines().filter_map(number).collect::<Vec<_>>()
    };
    let level = numbers(&place);
    assert!(level.contains(&5) && level.contains(&6), "{level:?}");
    let pole = place.json(&["pole", HOUSE])["pole-kind"]["view"].clone();
    let nm = pole["lines"][4]["height"]["nm"].as_i64().unwrap();
    let (left, right) =
        (format!("left={} mm", (nm + 12_700_000) as f64 / 1e6), format!("right={} mm", nm as f64 / 1e6));
    place.good(&["pole", HOUSE, "--as-built", &wall, "course=5", &left, &right]);
    place.good(&["plan", "Street gable", "--signer", "Wren"]);
    assert_eq!(numbers(&place), level);
}

#[test]
fn a_drawing_goes_to_a_file_or_to_the_screen_in_either_language() {
    let place = Place::with_house();
    let view = place.planned("Street gable");
    let board = view["boards"].as_array().unwrap().iter().find(|board| board["notched"] == true).unwrap();
    let board = board["board"].as_str().unwrap();
    let file = place.folder.path().join("face.svg");
    let said = place.good(&["draw", "face", board, "--svg", file.to_str().unwrap()]);
    assert!(said.contains("face.svg"), "{said}");
    let face = std::fs::read_to_string(&file).unwrap();
    assert!(face.starts_with("<svg ") && face.contains(">FACE</text>") && face.contains(">cut</text>"), "{face}");
    let back = place.good(&["--language", "es", "draw", "back", board]);
    assert!(back.contains(">REVERSO</text>") && back.contains(">cortar</text>"), "{back}");
    for (what, thing) in [("wall", "Street gable"), ("pole", HOUSE)] {
        let drawn = place.good(&["draw", what, thing, "--dark"]);
        assert!(drawn.contains("<svg ") && drawn.contains("#15191C"), "{drawn}");
    }
    assert!(place.refused(&["draw", "wall", "nowhere"]).contains("nowhere"));
}

#[test]
fn what_goes_through_a_wall_that_is_not_measured_is_found_and_has_nothing_to_draw_yet() {
    let place = Place::new();
    place.good(&["new-job", "Lot 7"]);
    place.good(&["add-wall", "Lot 7", "North"]);
    place.good(&["add", "North", "penetration", "what=hose-bib", "width=1in", "from-left=5ft", "from-base=20in"]);
    assert!(place.good(&["penetration", "North hose bib"]).contains("Hose bib"));
    for (language, word) in [("en", "Nothing of"), ("es", "no se puede dibujar")] {
        let name = if language == "en" { "hose bib" } else { "Llave de manguera" };
        let refused = place.refused(&["--language", language, "draw", "layers", name]);
        assert!(refused.contains(word) && refused.contains("next"), "{refused}");
    }
}

#[test]
fn the_saw_list_is_planned_cut_and_ordered() {
    let place = Place::with_house();
    place.good(&["pole", HOUSE, "--lay-out"]);
    let planned = place.json(&["saw", HOUSE, "--plan"])["view"]["saw-list-kind"]["view"].clone();
    assert!(planned["least"]["nm"].as_i64() <= planned["used"]["nm"].as_i64());
    let number = planned["next"].as_i64().unwrap().to_string();
    let text = place.good(&["saw", HOUSE, "--cut", &number]);
    assert!(text.contains("[✓]") && text.to_lowercase().contains("no plan takes"), "{text}");
    // A stock length is the same however it is written.
    for (have, count) in [("144=150", 150), ("12'=151", 151), ("144 inches=152", 152), ("12 ft=140", 140)] {
        let view = place.json(&["saw", HOUSE, "--have", have])["view"]["saw-list-kind"]["view"].clone();
        assert_eq!(view["stock"][0]["have"].as_i64(), Some(count), "{have}");
    }
    let spanish = place.good(&["saw", HOUSE, "--language", "es"]);
    assert!(spanish.contains("hilada") && !spanish.contains("course"), "{spanish}");

    let order: Value = serde_json::from_str(&place.good(&["--json", "order", HOUSE])).unwrap();
    let items = order["items"].as_array().unwrap();
    assert!(items[0]["packs"].as_i64() < Some(140));
    assert_eq!((items[0]["have"].as_i64(), items[0]["buy"].as_i64()), (Some(140), Some(0)));
    let csv = place.good(&["order", HOUSE, "--csv"]);
    assert_eq!(csv.lines().count(), 1 + items.len());
    let message = place.good(&["order", HOUSE, "--text"]);
    assert!(message.contains("cartridge"), "{message}");
    let again = place.refused(&["saw", HOUSE, "--cut", &number]);
    assert!(again.contains("cut already"), "{again}");
    assert!(place.refused(&["saw", HOUSE, "--offcut", "long"]).contains("long"));
}

const LOOSE: [&str; 8] = [
    "loose",
    "118.5in",
    "height=7.25in",
    "lap=1.25in",
    "left=52in",
    "right=60in",
    "bottom-left=-1.5in",
    "top-left=4in",
];

#[test]
fn the_first_thing_that_is_offered_is_a_notch_and_it_works_as_it_is_printed() {
    let place = Place::new();
    for (language, word) in [("en", "notch"), ("es", "muesca")] {
        let offered = place.good(&["--language", language, "jobs"]);
        let line = offered.lines().find(|line| line.contains("lapwright ")).unwrap();
        assert!(line.contains(word) && line.contains(" loose "), "{offered}");
        let (_, command) = line.split_once("lapwright ").unwrap();
        let args: Vec<&str> = command.split_whitespace().collect();
        let notch = place.good(&args);
        assert!(notch.contains("4\"") && notch.contains("T]"), "{notch}");
    }
}

#[test]
fn an_option_behind_the_answers_is_an_option() {
    let place = Place::new();
    let mut args = LOOSE.to_vec();
    args.push("--json");
    let told: Value = serde_json::from_str(&place.good(&args)).unwrap();
    assert!(told.to_string().contains("bottom-left"), "{told}");
    // A field is named, and so is how an answer is written.
    let output = place.run(&["loose", "118.5in", "height"]);
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(!output.status.success() && said.contains("width=24ft"), "{said}");
    // A fraction that a shell took for a word of its own.
    assert!(place.refused(&["board", "3f2a", "left=25", "15/16"]).contains("\"left=25 15/16in\""));
}

#[test]
fn an_opening_is_changed_and_a_pitch_gives_the_peak() {
    let place = Place::with_house();
    let wall = "Yard side";
    let changed = place.good(&["change", wall, "opening", "width=38in", "height=50in"]);
    assert!(changed.contains("38\"") && changed.contains("50\""), "{changed}");
    let outside = place.refused(&["change", wall, "opening", "width=40ft"]);
    assert!(outside.contains("width"), "{outside}");
    assert!(place.refused(&["change", wall, "chimney"]).contains("opening"));
    place.good(&["new-job", "Gabled"]);
    place.good(&["add-wall", "Gabled", "Front"]);
    let peak = place.good(&["measure", "Front", "width=24ft", "left-height=9ft", "right-height=9ft", "pitch=6/12"]);
    assert!(peak.contains("180\"") && peak.contains("144\""), "{peak}");
}

#[test]
fn an_open_question_says_how_it_is_answered() {
    let place = Place::new();
    place.good(&["new-job", "Shed"]);
    place.good(&["add-wall", "Shed", "Front"]);
    let asked = place.json(&["measure", "Front"]);
    let questions = asked["measure-kind"]["view"]["questions"].as_array().unwrap().clone();
    let printed = place.good(&["measure", "Front"]);
    let printed: String = printed.split_whitespace().collect::<Vec<_>>().join(" ");
    let open = questions.iter().filter(|question| question["optional"] == false && question["answer"] == "");
    let hints: Vec<String> = open.map(|question| text(&question["hint"]).to_owned()).collect();
    assert!(hints.len() > 5);
    for hint in hints {
        assert!(printed.contains(&hint.split_whitespace().collect::<Vec<_>>().join(" ")), "{hint}: {printed}");
    }
}

#[test]
fn who_signs_is_asked_for_with_how_it_is_said() {
    let place = Place::with_house();
    place.planned("Street gable");
    let wall = place.json(&["wall", "Street gable"]);
    let light = text(&wall["wall-kind"]["view"]["penetrations"][0]["penetration"]).to_owned();
    let said = place.refused(&["tick", &light, "dead-and-tested"]);
    assert!(said.contains("lapwright settings signer="), "{said}");
    let spanish = place.refused(&["--language", "es", "tick", &light, "dead-and-tested"]);
    assert!(spanish.contains("lapwright settings signer="), "{spanish}");
}

#[test]
fn several_steps_are_ticked_at_once_and_a_sawn_board_is_ticked_by_itself() {
    let place = Place::with_house();
    place.good(&["settings", "signer=Wren"]);
    let view = place.planned("Street gable");
    place.planned("Yard side");
    let is_plain = |board: &&Value| board["notched"] == false && board["course"].as_i64() > Some(1);
    let plain = view["boards"].as_array().unwrap().iter().find(is_plain).unwrap().clone();
    let state = |board: &str, step: &str| {
        let view = place.json(&["board", board]);
        let steps = view["board-kind"]["view"]["steps"].as_array().unwrap().clone();
        steps.into_iter().find(|own| own["code"] == step).unwrap()["state"].clone()
    };
    let board = text(&plain["board"]);
    place.good(&["tick", board, "board-measure", "board-mark"]);
    assert_eq!((state(board, "board-measure"), state(board, "board-mark")), ("done".into(), "done".into()));
    place.good(&["saw", HOUSE, "--plan"]);
    place.good(&["saw", HOUSE, "--cut", "1"]);
    let list = place.json(&["saw", HOUSE]);
    let boards = list["saw-list-kind"]["view"]["boards"].as_array().unwrap().clone();
    let first = boards.iter().find(|board| board["number"] == 1).unwrap();
    let pieces: Vec<&str> = first["pieces"].as_array().unwrap().iter().map(|piece| text(&piece["board"])).collect();
    assert!(!pieces.is_empty());
    for piece in pieces {
        // The starter strip of the first course comes before anything that is cut for it.
        let view = place.json(&["board", piece]);
        let waits = view.to_string().contains("board-starter");
        assert_eq!(state(piece, "board-cut"), if waits { "open" } else { "done" }, "{piece}");
    }
}

/// The book that was put aside is no book that was lost.
#[test]
fn a_demo_that_begins_anew_has_lost_nothing() {
    let place = Place::new();
    place.good(&["new-job", "Shed"]);
    assert!(place.good(&["demo", "--anew"]).contains("put aside"));
    assert!(place.good(&["check"]).starts_with("The data is sound"));
    for file in ["book.1.lapwright", "book.1.lapwright.device"] {
        assert!(place.folder.path().join(file).exists(), "{file}");
    }
}

/// The shortest file that has the frame of a JPEG: tables, one scan, an end.
const JPEG: &[u8] = b"\xFF\xD8\xFF\xDB\0\x03\0\xFF\xDA\0\x03\0\x12\xFF\xD9";

#[test]
fn a_photo_is_named_by_its_file_and_kept_with_the_tick() {
    let place = Place::with_house();
    place.good(&["settings", "signer=Wren"]);
    place.planned("Street gable");
    let file = place.folder.path().join("light.jpg");
    std::fs::write(&file, JPEG).unwrap();
    let step = |place: &Place| {
        let view = place.json(&["penetration", "Light"]);
        view["penetration-kind"]["view"]["steps"][0].clone()
    };
    let code = text(&step(&place)["code"]).to_owned();
    place.good(&["tick", "Light", &code, "--photo", file.to_str().unwrap()]);
    let signed = step(&place);
    assert_eq!((text(&signed["state"]), text(&signed["photo"]["place"])), ("done", "here"), "{signed}");
    assert_eq!(std::fs::read(text(&signed["photo"]["file"])).unwrap(), JPEG, "a copy of its own");
    // What is no photo, is not there, or is of several steps leaves the step as it was.
    let done = place.done();
    std::fs::write(&file, "a letter").unwrap();
    for (args, said) in [
        (vec![file.to_str().unwrap()], "photo"),
        (vec!["nowhere.jpg"], "nowhere.jpg"),
        (vec![place.folder.path().to_str().unwrap()], "folder"),
    ] {
        let refused = place.refused(&[&["tick", "Light", &code, "--photo"], args.as_slice()].concat());
        assert!(refused.contains(said), "{refused}");
    }
    let both = place.refused(&["tick", "Light", &code, &code, "--photo", file.to_str().unwrap()]);
    assert!(both.contains("one step"), "{both}");
    assert_eq!(place.done(), done);
}

#[test]
fn boards_at_hand_are_said_without_quotes() {
    let place = Place::with_house();
    for (show, stock) in [("in/16", "144=50"), ("ft-in/16", "144=51"), ("in/16", "12ft=52"), ("ft-in/16", "144in=53")] {
        let list = place.good(&["--show", show, "saw", HOUSE, "--have", stock]);
        let (_, count) = stock.split_once('=').unwrap();
        assert!(list.contains(count), "{show} {stock}: {list}");
    }
}

#[test]
fn how_many_there_are_of_a_length_is_said_where_it_is_bought() {
    let place = Place::new();
    place.good(&["new-job", "Shed"]);
    place.good(&["stock", "Shed", "12ft", "60"]);
    assert!(place.good(&["stock", "Shed", "144", "70"]).contains("70 boards"));
    let stock = place.json(&["house", "Shed"])["house-kind"]["view"]["stock"].clone();
    assert_eq!(stock.as_array().unwrap().len(), 1, "{stock}");
    let twice = place.refused(&["stock", "Shed", "12ft"]);
    assert!(twice.contains("length") && twice.contains("already"), "{twice}");
}

/// A minus belongs to the length, wherever a length stands: it is refused as one.
#[test]
fn a_minus_is_no_option() {
    let place = Place::with_house();
    place.good(&["settings", "signer=Wren"]);
    let view = place.planned("Street gable");
    let notched = view["boards"].as_array().unwrap().iter().find(|board| board["notched"] == true).unwrap().clone();
    let board = text(&notched["board"]);
    let notch = text(&place.json(&["board", board])["board-kind"]["view"]["notches"][0]["notch"]).to_owned();
    for (args, field) in [
        (&["gap", board, "-1/8", "--notch", &notch] as &[&str], "gap: "),
        (&["gap", "--notch", &notch, board, "-1/8in"], "gap: "),
        (&["stock", HOUSE, "-12ft"], "length: "),
        (&["loose", "-12ft", "height=7.25in"], "length: "),
        (&["block-size", HOUSE, "-8in", "10in"], "width: "),
        (&["block-size", HOUSE, "8in", "-10in"], "height: "),
        (&["saw", HOUSE, "--offcut", "-40in"], "length: "),
        (&["rule", HOUSE, "gap.trim", "-1/8in", "--reason", "so"], "rule-range: "),
    ] {
        let said = place.refused(args);
        assert!(said.contains(field) && !said.contains("option"), "{args:?}: {said}");
    }
    // What is an option stays one.
    assert!(place.good(&["gap", "--help"]).contains("--notch"));
    assert!(place.refused(&["gap", board, "--nothing"]).contains("--nothing"));
}

/// A new user copies what stands there, with the value put in, from an empty book to boards on a wall.
#[test]
fn what_comes_next_is_said_with_the_call_that_does_it() {
    let place = Place::new();
    let mut values = vec![
        ("house \"Lot 12\" board-height=", "8.25in"),
        ("house \"Lot 12\" board-thickness=", "5/16in"),
        ("house \"Lot 12\" lap=", "1.25in"),
        ("house \"Lot 12\" nail-line=", "1in"),
        ("stock \"Lot 12\" ", "12ft"),
        ("add-wall \"Lot 12\" ", "Front"),
        ("measure Front width=", "24ft"),
        ("measure Front left-height=", "9ft"),
        ("measure Front right-height=", "9ft"),
        ("measure Front base=", "0in"),
        ("measure Front first-stud=", "16in"),
        ("measure Front stud-spacing=", "16in"),
        ("measure Front trim-left=", "3.5in"),
        ("measure Front trim-right=", "3.5in"),
        ("pole \"Lot 12\"", ""),
    ]
    .into_iter();
    let mut said = place.good(&["new-job", "Lot 12"]);
    let call = |said: &str| {
        let line = said.lines().find_map(|line| line.strip_prefix("    lapwright ")).map(str::to_owned);
        line.unwrap_or_else(|| said.to_owned())
    };
    for (asked, value) in values.by_ref() {
        let typed = call(&said);
        assert!(typed.starts_with(asked), "{asked}: {said}");
        let (command, rest) = asked.split_once(' ').unwrap();
        let (name, field) = match rest.strip_prefix('"') {
            Some(rest) => rest.split_once('"').unwrap(),
            None => rest.split_once(' ').unwrap(),
        };
        let last = format!("{}{value}", field.trim_start());
        let args = [command, name, &last];
        said = place.good(if last.is_empty() { &args[..2] } else { &args });
    }
    for field in ["from=0in", "to=9ft", "mode=fit", "reveal-max=7in", "reveal-min=6in"] {
        let (name, _) = field.split_once('=').unwrap();
        let typed = call(&said);
        let (before, _) = typed.rsplit_once('=').unwrap();
        let id = typed.split(' ').nth(1).unwrap();
        assert_eq!(before, format!("pole {id} {name}"), "{said}");
        said = place.good(&["pole", id, field]);
    }
    place.good(&["pole", "Lot 12", "--lay-out"]);
    assert_eq!(call(&place.good(&["next", "Lot 12"])), "plan Front");
    let step = call(&place.good(&["plan", "Front"]));
    let words: Vec<&str> = step.split(' ').collect();
    assert_eq!(words[0], "tick", "{step}");
    place.good(&[&words[..], &["--signer", "Wren"]].concat());
}

#[test]
fn what_is_taken_back_is_not_asked_again() {
    let place = Place::with_house();
    place.good(&["measure", "Yard side", "width=18ft 1in"]);
    place.good(&["undo"]);
    let view = place.json(&["measure", "Yard side"]);
    assert!(view["measure-kind"]["view"]["asked"].is_null(), "{view}");
    assert!(!place.good(&["measure", "Yard side"]).contains("not yet accepted"));
}

#[test]
fn a_course_that_was_said_to_hang_is_named_as_the_done_list_shows_it() {
    let place = Place::with_house();
    place.planned("Street gable");
    place.good(&["pole", HOUSE, "--as-built", "Street gable", "course=2", "left=7in", "right=6 15/16in"]);
    let done = place.done();
    let lines = done["done-list-kind"]["view"]["lines"].as_array().unwrap().clone();
    let group = text(&lines[0]["group"])[..8].to_owned();
    place.good(&["pole", HOUSE, "--not-built", &group]);
    let pole = place.json(&["pole", HOUSE]);
    assert_eq!(pole["pole-kind"]["view"]["as_built"].as_array().unwrap().len(), 0);
}

#[test]
fn a_gap_is_of_the_notch_that_is_named_and_which_is_right_can_be_said() {
    let place = Place::with_house();
    place.good(&["settings", "signer=Wren"]);
    let view = place.planned("Street gable");
    let notched = view["boards"].as_array().unwrap().iter().find(|board| board["notched"] == true).unwrap().clone();
    let board = text(&notched["board"]);
    let notches =
        |place: &Place| place.json(&["board", board])["board-kind"]["view"]["notches"].as_array().unwrap().clone();
    let notch = text(&notches(&place)[0]["notch"]).to_owned();
    let uncut = place.refused(&["gap", board, "1/8in", "--notch", &notch]);
    assert!(uncut.contains("gap") && uncut.contains("cut"), "{uncut}");
    let question = |field: &str| {
        let all: Vec<Value> =
            notches(&place).iter().flat_map(|notch| notch["questions"].as_array().unwrap().clone()).collect();
        all.into_iter().find(|question| question["field"] == field)
    };
    let planned = question("left").unwrap()["reading"]["nm"].as_i64().unwrap();
    let moved = format!("left={}mm", (planned + 19_000_000) / 1_000_000);
    place.good(&["board", board, "--notch", &notch, &moved]);
    assert!(question("which-is-right").is_some());
    let own = text(&notches(&place)[0]["notch"]).to_owned();
    place.good(&["board", board, "--notch", &own, "which-is-right=plan"]);
    assert!(question("which-is-right").is_none());
    assert_eq!(question("left").unwrap()["reading"]["nm"], planned);
}

#[test]
fn what_hardly_can_be_is_asked_about_once_with_what_was_meant() {
    let place = Place::new();
    place.good(&["new-job", "Shed"]);
    place.good(&["add-wall", "Shed", "Front"]);
    let asked = place.refused(&["measure", "Front", "width=24in"]);
    assert!(asked.contains("width") && asked.contains("24' 0\""), "{asked}");
    place.good(&["measure", "Front", "width=24in"]);
    let spanish = place.refused(&["--language", "es", "measure", "Front", "left-height=9in"]);
    assert!(spanish.contains("9' 0\"") && spanish.contains("otra vez"), "{spanish}");
    assert!(place.refused(&["new-job", "shed"]).contains("name"));
}

#[test]
fn a_shell_and_man_are_told_of_every_command() {
    let place = Place::new();
    let man = place.good(&["man"]);
    assert!(man.starts_with(".ie") || man.contains(".TH"), "{}", man.chars().take(80).collect::<String>());
    for shell in ["bash", "zsh", "fish"] {
        let completions = place.good(&["completions", shell]);
        for command in ["loose", "measure", "change", "completions"] {
            assert!(completions.contains(command), "{shell} {command}");
            assert!(man.contains(command), "{command}");
        }
    }
    assert!(!place.book().exists(), "no book is needed for that");
}

/// What is said of a call in a language, on standard error, with exit code 2.
fn said_in(place: &Place, language: &str, args: &[&str]) -> String {
    let output = place.command(args).env("LANG", language).output().unwrap();
    assert_eq!(output.status.code(), Some(2), "{args:?}: {}", String::from_utf8_lossy(&output.stdout));
    String::from_utf8(output.stderr).unwrap()
}

#[test]
fn help_is_in_the_language_of_the_call_of_the_book_or_of_the_locale() {
    let place = Place::new();
    let spanish = place.good(&["--language", "es", "change", "--help"]);
    assert!(spanish.contains("Uso: lapwright change") && spanish.contains("<PARED>"), "{spanish}");
    assert!(place.good(&["change", "-h"]).contains("Usage: lapwright change"));
    let output = place.command(&["--help"]).env("LANG", "es_MX.UTF-8").output().unwrap();
    assert!(String::from_utf8(output.stdout).unwrap().contains("Órdenes:"));
    assert!(!place.book().exists(), "help makes no book");
    place.good(&["settings", "language=es"]);
    assert!(place.good(&["--help"]).contains("Uso: lapwright [OPCIONES] [ORDEN]"));
    assert!(place.refused(&["measur"]).contains("No hay ninguna orden"));
    assert!(place.good(&["man"]).contains(".SH NOMBRE"));
    assert!(place.good(&["completions", "fish"]).contains("Las casas del libro"));
    assert!(place.good(&["--language", "en", "man"]).contains(".SH NAME"));
}

/// Each call with what must be said of it in English and in Spanish; every one of them with a right call.
#[test]
fn a_call_that_cannot_be_read_says_why_and_how_it_is_right() {
    let place = Place::new();
    for (args, english, spanish) in [
        (&["measur"] as &[&str], &["“measur”", "measure"] as &[&str], &["«measur»", "measure"] as &[&str]),
        (&["house"], &["Missing", "<HOUSE>"], &["falta", "<CASA>"]),
        (&["skip", "a", "b"], &["--reason <REASON>"], &["--reason <MOTIVO>"]),
        (&["jobs", "--lang", "es"], &["“--lang”", "Near: --language"], &["«--lang»", "Parecido: --language"]),
        (&["jobs", "Lot", "7"], &["“Lot”", "quotes"], &["«Lot»", "comillas"]),
        (&["jobs", "--language"], &["--language <LANGUAGE>", "needs a value"], &["necesita un valor"]),
        (&["jobs", "--json=yes"], &["takes no value"], &["no lleva valor"]),
        (&["draw", "wal", "x"], &["“wal”", "wall, ", "Near: wall."], &["«wal»", "Parecido: wall."]),
        (&["done", "--count", "x"], &["“x”", "1 to 1000000"], &["«x»", "1 a 1000000"]),
        (&["saw", "x", "--have", "144"], &["STOCK=COUNT", "--have 12ft=140"], &["LARGO=CANTIDAD"]),
        (&["order", "x", "--csv", "--text"], &["do not go together"], &["no van juntas"]),
        (&["jobs", "--show", "mm", "--show", "mm"], &["--show", "twice"], &["--show", "dos veces"]),
        (&["add", "North", "door"], &["opening", "penetration"], &["opening", "penetration"]),
        (&["house", "x", "lap"], &["“lap”", "[FIELD=ANSWER]"], &["«lap»", "[CAMPO=RESPUESTA]"]),
        (&["loose", "lenght=100in", "height=8in"], &["Did you mean length?"], &["¿Quiso decir length?"]),
        (&["loose", "6ft", "height=8in", "height=9in"], &["height", "twice", "8in, 9in"], &["dos veces"]),
        (&["loose", "6ft", "length=7ft"], &["length", "twice"], &["dos veces"]),
    ] {
        for (language, said, example) in
            [("en_US.UTF-8", english, "\nExample: lapwright "), ("es_MX.UTF-8", spanish, "\nEjemplo: lapwright ")]
        {
            let text = said_in(&place, language, args);
            assert!(said.iter().all(|said| text.contains(said)), "{args:?}: {text}");
            assert!(text.contains(example), "{args:?}: {text}");
        }
    }
    assert!(!place.book().exists() || place.done()["done-list-kind"]["view"]["lines"].as_array().unwrap().is_empty());
    let said = place.run(&["--json", "measur"]);
    let told: Value = serde_json::from_slice(&said.stdout).unwrap();
    assert_eq!(text(&told["error"]["code"]), "unknown");
}

#[test]
fn a_question_takes_the_flags_of_every_call() {
    let place = Place::new();
    let mut answers = Vec::new();
    for args in [&["figure", "length"] as &[&str], &["--json", "figure", "length"], &["figure", "length", "--json"]] {
        let mut child = place.command(args).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
        std::io::Write::write_all(&mut child.stdin.take().unwrap(), br#"{"text": "6 1/16 in"}"#).unwrap();
        let output = child.wait_with_output().unwrap();
        assert!(output.status.success(), "{args:?}");
        answers.push(output.stdout);
    }
    assert!(!answers[0].is_empty() && answers.iter().all(|answer| *answer == answers[0]));
    let output = place.run(&["--language", "es", "figure", "length"]);
    let told: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert!(text(&told["error"]["text"]).contains("La entrada termina"), "{told}");
    for args in [&["figure", "length", "--help"] as &[&str], &["figure", "--help", "length"]] {
        let page = place.good(args);
        assert!(page.starts_with("lapwright figure length") && page.contains("request:"), "{page}");
    }
    let output = place.run(&["figure", "length", "--round"]);
    assert_eq!(output.status.code(), Some(2));
    let told: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert!(text(&told["error"]["text"]).contains("“--round”"), "{told}");
}

#[test]
fn what_the_file_system_says_is_said_in_the_language_with_the_path() {
    let place = Place::with_house();
    let folder = place.folder.path().join("folder");
    std::fs::create_dir(&folder).unwrap();
    let binary = place.folder.path().join("binary");
    std::fs::write(&binary, [0xff, 0xfe]).unwrap();
    let (folder, binary) = (folder.to_str().unwrap(), binary.to_str().unwrap());
    let inside = format!("{binary}/inside");
    let nowhere = "/nowhere/file";
    for (args, path, english, spanish) in [
        (&["import", nowhere] as &[&str], nowhere, "no such file", "no hay tal archivo"),
        (&["import", folder], folder, "is a folder", "es una carpeta"),
        (&["import", binary], binary, "not text", "no es texto"),
        (&["import", &inside], &inside, "no folder", "no una carpeta"),
        (&["export", HOUSE, nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["export", HOUSE, folder], folder, "is a folder", "es una carpeta"),
        (&["draw", "pole", HOUSE, "--svg", nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["copy", nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["copy", folder], folder, "is a folder", "es una carpeta"),
        (&["backup", nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["hand-over", HOUSE, nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["take-in", nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["restore", nowhere], nowhere, "no such file", "no hay tal archivo"),
        (&["restore", nowhere, "--yes"], nowhere, "no such file", "no hay tal archivo"),
    ] {
        for (language, said) in [("en_US.UTF-8", english), ("es_MX.UTF-8", spanish)] {
            let text = said_in(&place, language, args);
            assert!(text.contains(said) && text.contains(path) && !text.contains("os error"), "{args:?}: {text}");
        }
    }
}

#[test]
fn a_name_of_several_things_says_how_to_tell_them_apart_and_one_of_none_what_there_is() {
    let place = Place::new();
    for (args, said) in [
        (&["house", "Lot 7"] as &[&str], "lapwright new-job"),
        (&["wall", "North"], "lapwright add-wall"),
        (&["board", "North 3"], "lapwright plan"),
        (&["penetration", "Light"], "lapwright add North penetration"),
        (&["undo"], "nothing to take back"),
    ] {
        assert!(place.refused(args).contains(said), "{args:?}");
    }
    place.good(&["new-job", "Lot 7"]);
    place.good(&["add-wall", "Lot 7", "East"]);
    place.good(&["measure", "East", "width=24ft", "left-height=9ft", "right-height=9ft"]);
    let add = |left: &str| {
        let left = format!("from-left={left}");
        place.good(&["add", "East", "opening", "what=door", &left, "width=38in", "from-base=0in", "height=82in"]);
    };
    add("4ft");
    place.good(&["change", "East", "door", "width=37in"]);
    add("12ft");
    let said = place.refused(&["change", "East", "door", "width=36in"]);
    assert!(said.contains("48\"") && said.contains("144\""), "{said}");
    let (_, rest) = said.split_once("144\" (").unwrap();
    place.good(&["change", "East", rest.split_once(')').unwrap().0, "width=36in"]);
    let nothing = place.refused(&["change", "East", "window", "width=36in"]);
    assert!(nothing.contains("Door"), "{nothing}");
    let rule = place.refused(&["rule", "Lot 7", "gap.trimm", "1/4in", "--reason", "sheet", "--signer", "Wren"]);
    assert!(rule.contains("There is: gap.trim;"), "{rule}");
}

#[test]
fn where_there_are_no_copies_that_is_said() {
    let place = Place::new();
    for (language, said) in [("en", "No copy is kept yet"), ("es", "Aún no se guarda ninguna copia")] {
        assert!(place.good(&["--language", language, "backups"]).starts_with(said));
    }
    assert_eq!(place.json(&["backups"])["lines"].as_array().unwrap().len(), 0);
}

#[test]
fn what_comes_first_is_said_with_the_call_that_says_it() {
    let place = Place::new();
    place.good(&["new-job", "Lot 7"]);
    place.good(&["add-wall", "Lot 7", "North"]);
    for (args, call) in [
        (&["wall", "North"] as &[&str], "lapwright measure"),
        (&["plan", "North"], "lapwright pole \"Lot 7\" --lay-out"),
        (&["order", "Lot 7"], "lapwright pole \"Lot 7\" --lay-out"),
        (&["add", "North", "penetration", "what=light"], "lapwright add North penetration"),
        (&["mark", "Lot 7", "name=Beam"], "lapwright mark"),
        (&["same-board"], "lapwright loose"),
        (&["loose", "6ft"], "height=7.25in"),
    ] {
        let said = place.refused(args);
        assert!(said.contains("Example: lapwright ") && said.contains(call), "{args:?}: {said}");
    }
}
