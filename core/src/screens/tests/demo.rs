//! The demo house holds together: its pole meets its marks, and every penetration's patch and block can be made.

use num_rational::BigRational;

use crate::book::{Field, Kind};
use crate::flashing::{
    BlockLimits, Patch, PatchBoard, PatchEnd, PatchRequest, Pipe, SlipBlock, SlipRequest, SplitBlock, SplitRequest,
    WallRectangle,
};
use crate::forms::context::Terms;
use crate::handover::DEMO_HOUSE;
use crate::measure::{Division, Length};
use crate::rules::keys;
use crate::siding::{CourseLine, Mark, Mode, Pole, PoleRequest, WallLine, Want};
use crate::wall::{Finish, Mounting};
use crate::work::{Penetration, WallSite, Work, course_lines};

/// The pole as it is laid out from what the book holds: its lines with the start.
fn lines(work: &Work) -> Vec<Length> {
    let pole = work.pole().unwrap();
    let length = |field| pole.length(field).unwrap();
    let marks = work.house().under(pole.id(), Kind::Mark).iter().map(|mark| Mark {
        name: mark.text(Field::Name).unwrap().to_owned(),
        at: mark.length(Field::At).unwrap(),
        want: match mark.text(Field::Want) {
            Some("land") => Want::Land,
            _ => Want::Clear(mark.length(Field::Clear).unwrap()),
        },
        weight: mark.whole(Field::Weight).unwrap().try_into().unwrap(),
    });
    let request = PoleRequest {
        from: length(Field::From),
        to: length(Field::To),
        mode: Mode::Fit { change_max: pole.length(Field::ChangeMax) },
        reveal_max: length(Field::RevealMax),
        reveal_min: pole.length(Field::RevealMin),
        marks: marks.collect(),
        division: Division::SIXTEENTH,
    };
    let pole = Pole::lay_out(&request).unwrap();
    for mark in &pole.marks {
        assert!(mark.ok(), "{mark:?}");
    }
    std::iter::once(request.from).chain(pole.lines.iter().map(|line| request.from + *line)).collect()
}

pub(super) fn check(work: &Work, terms: &Terms<'_>) {
    let lines: Vec<WallLine> = lines(work).into_iter().map(WallLine::level).collect();
    let (mut crossed, mut read) = (Vec::new(), 0);
    for wall in work.walls() {
        let courses = course_lines(work, &wall.record, &lines, wall.outline().unwrap()).unwrap();
        let courses: Vec<CourseLine> = courses.into_iter().map(|course| course.middle).collect();
        let base = wall.base().unwrap();
        for hole in &wall.penetrations {
            let block = hole.block.unwrap();
            let bottoms: Vec<Length> = courses.iter().map(|course| course.bottom).collect();
            let (least, most) = (Length::from_inches_64(0, 48), Length::from_inches_64(1, 0));
            for line in &bottoms {
                for edge in [block.y.from, block.y.to] {
                    let off = (edge - *line).nm().abs();
                    assert!(off >= least.nm(), "{:?}: an edge only {off} nm from a line", hole.kind);
                }
            }
            crossed.push(bottoms.iter().filter(|line| **line > block.y.from && **line < block.y.to).count());
            read += readings(terms, wall, hole, &courses);
            patch(work, hole, bottoms);
            made(work, hole);
            assert!(hole.centre.y + base > most, "{:?} lies above the first line", hole.kind);
        }
    }
    crossed.sort_unstable();
    assert_eq!(crossed, [1, 1, 1, 1, 2], "blocks cross one or two lines");
    let document: serde_json::Value = serde_json::from_str(DEMO_HOUSE).unwrap();
    assert_eq!(document["readings"].as_array().unwrap().len(), read);
}

/// What the tape reads in the demonstration is there for every board round every block, and near what was planned.
fn readings(terms: &Terms<'_>, wall: &WallSite, hole: &Penetration, courses: &[CourseLine]) -> usize {
    let document: serde_json::Value = serde_json::from_str(DEMO_HOUSE).unwrap();
    let walls = document["walls"].as_array().unwrap();
    let holes = walls.iter().flat_map(|wall| wall["penetrations"].as_array().unwrap());
    let name = &holes.into_iter().find(|one| one["what"] == hole.kind.code()).unwrap()["id"];
    let block = hole.block.unwrap();
    let mut found = 0;
    for course in courses {
        if block.y.from >= course.bottom + course.height || block.y.to <= course.bottom {
            continue;
        }
        let own = |one: &&serde_json::Value| one["penetration"] == *name && one["course"] == course.course;
        let one = document["readings"].as_array().unwrap().iter().find(own).unwrap();
        assert_eq!(one["wall"], wall.name());
        for (field, planned) in [
            ("left", block.x.from),
            ("right", block.x.to),
            ("bottom-left", block.y.from - course.bottom),
            ("bottom-right", block.y.from - course.bottom),
            ("top-left", block.y.to - course.bottom),
            ("top-right", block.y.to - course.bottom),
        ] {
            let (read, _) = terms.typed(field, one[field].as_str().unwrap()).unwrap();
            let off = (read - planned).nm().abs();
            assert!(off <= Length::from_inches_64(0, 8).nm(), "{name} {field}: {off} nm off");
        }
        found += 1;
    }
    found
}

/// The patch laps over the board below it, so that it sheds.
fn patch(work: &Work, hole: &Penetration, bottoms: Vec<Length>) {
    let rule = |key| work.rules().get_length(key).unwrap();
    let block = hole.block.unwrap();
    let request = PatchRequest {
        board: PatchBoard {
            height: work.board_height().unwrap(),
            lap: work.lap().unwrap(),
            nail_line: work.nail_line().unwrap(),
        },
        bottoms,
        block: WallRectangle { left: block.x.from, right: block.x.to, bottom: block.y.from, top: block.y.to },
        pipe: Pipe { shape: hole.shape, x: hole.centre.x, y: hole.centre.y },
        beyond_side: rule(keys::PATCH_BEYOND_SIDE),
        beyond_top: rule(keys::PATCH_BEYOND_TOP),
        snug: rule(keys::PATCH_SNUG),
        slit: hole.mounting == Mounting::Split,
        cover_beyond: rule(keys::PATCH_COVER_BEYOND),
    };
    let patch = Patch::cut(&request).unwrap();
    let PatchEnd::Course { hidden_by, .. } = patch.end else { panic!("{:?}: {patch:?}", hole.kind) };
    assert!(hidden_by > Length::ZERO);
}

/// The block can be sawn, and its pieces go over what it goes round.
fn made(work: &Work, hole: &Penetration) {
    let rule = |key| work.rules().get_length(key).unwrap();
    let block = hole.block.unwrap();
    let limits = BlockLimits {
        bit_step: rule(keys::BLOCK_BIT_STEP),
        side_least: rule(keys::BLOCK_SIDE_LEAST),
        thickness_margin: rule(keys::BLOCK_THICKNESS_MARGIN),
    };
    let (width, height) = (block.x.to - block.x.from, block.y.to - block.y.from);
    let board_thickness = work.board_thickness().unwrap();
    let (thickness, center, gap) = (block.thickness, block.hole, rule(keys::GAP_BLOCK_MOST));
    match (hole.mounting, hole.finish) {
        (Mounting::Split, Finish::Block) => {
            let made = SplitBlock::lay_out(&SplitRequest {
                width,
                height,
                thickness,
                through: hole.shape,
                center,
                angle: BigRational::from_integer(work.rules().get_whole(keys::BLOCK_ANGLE).unwrap().into()),
                kerf: rule(keys::SAW_KERF),
                gap,
                bits: None,
                board_thickness: Some(board_thickness),
                division: Division::SIXTEENTH,
                limits,
            });
            assert_eq!(made.unwrap().warnings, [], "{:?}", hole.kind);
        }
        // Trim in four pieces goes round a box that stays; a one-piece block goes over what comes off.
        _ => {
            let through = hole.shape;
            let request = SlipRequest { width, height, thickness, through, center, gap, board_thickness, limits };
            let made = SlipBlock::lay_out(&request).unwrap();
            assert!(!made.thin_side && !made.shallow, "{:?}: {made:?}", hole.kind);
        }
    }
}
