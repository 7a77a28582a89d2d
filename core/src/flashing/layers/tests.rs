use proptest::prelude::*;

use super::*;
use crate::flashing::{HeadRequest, PatchBoard, PatchRequest};
use crate::wall::{Finish, Mounting};

fn inches(whole: i64, sixty_fourths: i64) -> Length {
    Length::from_inches_64(whole, sixty_fourths)
}

/// Boards of 8 1/4 in lapped by 1 1/4 in round a block whose bottom and height are in sixty-fourths of an inch.
fn detail(bottom: i64, height: i64, head: bool) -> LayersRequest {
    let boards: Vec<LayerBoard> =
        (0..13).map(|at| LayerBoard { bottom: inches(7 * at, 0), height: inches(8, 16) }).collect();
    let area = WallRectangle {
        left: inches(57, 32),
        right: inches(62, 32),
        bottom: inches(0, bottom),
        top: inches(0, bottom + height),
    };
    let shape = Shape::Round { diameter: inches(1, 0) };
    let pipe = Pipe { shape, x: inches(60, 0), y: inches(0, bottom + height / 2) };
    let patch = Patch::cut(&PatchRequest {
        board: PatchBoard { height: inches(8, 16), lap: inches(1, 16), nail_line: inches(0, 48) },
        bottoms: boards.iter().map(|board| board.bottom).collect(),
        block: area,
        pipe,
        beyond_side: inches(4, 0),
        beyond_top: inches(4, 0),
        snug: inches(0, 8),
        slit: true,
        cover_beyond: inches(2, 0),
    })
    .unwrap();
    let bent = HeadFlashing::bend(&HeadRequest {
        block: area,
        thickness: inches(0, 56),
        up_leg: Length::from_mm(50),
        gap: inches(0, 16),
        slope: (6, 100),
        end_dam: Length::from_mm(25),
        down_lap: Length::from_mm(10),
        drip: Length::from_mm(5),
    })
    .unwrap();
    LayersRequest {
        assembly: Assembly::new(Mounting::Split, Finish::Block, head),
        boards,
        board_thickness: inches(0, 20),
        lap: inches(1, 16),
        patch,
        pipe,
        outer: Outer { area, thickness: inches(0, 56) },
        head: head.then_some(bent),
        gap: inches(0, 8),
        barrier_lap: inches(2, 0),
        head_laps: (Length::from_mm(10), Length::from_mm(50)),
        patch_lap: inches(0, 48),
        shadow: inches(0, 12),
    }
}

fn block() -> LayersRequest {
    detail(21 * 64, 6 * 64, false)
}

fn at(layers: &WallLayers, kind: LayerKind) -> usize {
    layers.layers.iter().position(|layer| layer.kind == kind).unwrap()
}

/// The kinds and the layers of the faults.
fn faults(layers: &WallLayers) -> Vec<(ShedKind, LayerKind, Option<LayerKind>)> {
    let kind = |at: usize| layers.layers[at].kind;
    layers.faults().unwrap().iter().map(|fault| (fault.kind, kind(fault.upper), fault.lower.map(kind))).collect()
}

#[test]
fn the_layers_stand_in_the_order_of_the_work() {
    let layers = WallLayers::build(&detail(21 * 64, 6 * 64, true)).unwrap();
    let kinds: Vec<LayerKind> = layers.layers.iter().map(|layer| layer.kind).collect();
    let board = |course| LayerKind::Board { course };
    use LayerKind::{Barrier, BarrierFlap, Base, Block, Cover, HeadFlashing, Patch};
    assert_eq!(kinds[..9], [Base, Barrier, board(1), board(2), Patch, Cover, Block, HeadFlashing, BarrierFlap]);
    assert_eq!(kinds[9..], (3..=13).map(board).collect::<Vec<_>>());
}

/// By hand: the block stands from 21 to 27 in, so board 3, from 14 to 22 1/4 in, is open at the top by 1 1/4 and 1/8 in;
/// board 4, from 21 in on, has no strip left under the block.
#[test]
fn boards_are_cut_out_round_the_block() {
    let layers = WallLayers::build(&block()).unwrap();
    let pieces = |course| layers.layers[at(&layers, LayerKind::Board { course })].pieces.clone();
    let third = pieces(3);
    assert_eq!(third.len(), 3);
    assert_eq!((third[2].bottom, third[2].top), (inches(14, 0), inches(20, 56)));
    assert_eq!((third[2].left, third[2].right), (inches(57, 24), inches(62, 40)));
    let fourth = pieces(4);
    assert_eq!(fourth.len(), 3);
    assert_eq!((fourth[2].bottom, fourth[2].top), (inches(27, 8), inches(29, 16)));
    assert_eq!((pieces(2).len(), pieces(5).len()), (1, 1));
}

#[test]
fn a_layer_in_the_wrong_order_is_named() {
    let good = WallLayers::build(&block()).unwrap();
    assert_eq!(faults(&good), []);
    let swapped = |a, b| {
        let mut layers = good.clone();
        let (a, b) = (at(&layers, a), at(&layers, b));
        layers.layers.swap(a, b);
        faults(&layers)
    };
    let board = |course| LayerKind::Board { course };
    let behind_board = swapped(LayerKind::Patch, board(2));
    assert!(behind_board.contains(&(ShedKind::Behind, LayerKind::Patch, Some(board(2)))), "{behind_board:?}");
    let over_flap = swapped(LayerKind::Patch, LayerKind::BarrierFlap);
    assert!(over_flap.iter().any(|(_, upper, _)| *upper == LayerKind::BarrierFlap), "{over_flap:?}");
    let boards = swapped(board(5), board(6));
    assert!(boards.iter().any(|(kind, upper, _)| *kind == ShedKind::Behind && *upper == board(6)), "{boards:?}");
}

#[test]
fn a_slit_down_and_a_patch_that_hardly_goes_under_the_barrier_are_found() {
    let mut down = WallLayers::build(&block()).unwrap();
    let patch = at(&down, LayerKind::Patch);
    down.layers[patch].slit = Some(Slit { x: inches(60, 0), from: inches(20, 0), to: inches(24, 0) });
    assert_eq!(faults(&down), [(ShedKind::SlitDown, LayerKind::Patch, None)]);
    let mut short = block();
    short.patch.outline.top = short.outer.area.top + inches(1, 0);
    let found = faults(&WallLayers::build(&short).unwrap());
    let onto_patch = |upper| (ShedKind::ShortLap, upper, Some(LayerKind::Patch));
    assert_eq!(found, [LayerKind::BarrierFlap, LayerKind::Board { course: 4 }].map(onto_patch));
}

/// The block ends where board 12 begins, at 77 in.
#[test]
fn a_board_that_stands_on_the_block_has_no_lap_to_miss() {
    let request = detail(4254, 674, false);
    let layers = WallLayers::build(&request).unwrap();
    assert_eq!(request.boards[11].bottom, request.outer.area.top);
    assert_eq!(layers.layers[at(&layers, LayerKind::Board { course: 12 })].pieces.len(), 1);
    assert_eq!(faults(&layers), []);
}

/// A flashing's leg of 50 mm takes the water of the board over it, though boards lap over each other by 2 in.
#[test]
fn the_boards_lap_is_not_asked_of_a_flashings_leg() {
    let request = LayersRequest { lap: inches(2, 0), ..detail(21 * 64, 6 * 64, true) };
    let found = faults(&WallLayers::build(&request).unwrap());
    assert!(found.iter().all(|(.., lower)| *lower != Some(LayerKind::HeadFlashing)), "{found:?}");
    assert!(!found.is_empty(), "boards that really lap by 1 1/4 in are told");
}

#[test]
fn no_courses_no_layers() {
    assert_eq!(WallLayers::build(&LayersRequest { boards: Vec::new(), ..block() }), Err(LayersError::NoCourse));
}

#[test]
fn sizes_that_the_assembly_does_not_have_are_refused() {
    let request = LayersRequest { head: detail(21 * 64, 6 * 64, true).head, ..block() };
    assert_eq!(WallLayers::build(&request), Err(LayersError::Head));
    let request = LayersRequest { head: None, ..detail(21 * 64, 6 * 64, true) };
    assert_eq!(WallLayers::build(&request), Err(LayersError::Head));
    let slips = Assembly::new(Mounting::SlipOver, Finish::Block, false);
    assert_eq!(WallLayers::build(&LayersRequest { assembly: slips, ..block() }), Err(LayersError::Slit));
}

/// Whatever the finish, and with or without a slit, the layers follow the assembly, the collar over the boards.
#[test]
fn every_assembly_sheds_in_its_own_order() {
    for finish in Finish::ALL {
        for mounting in Mounting::ALL {
            for head in [false, true] {
                let assembly = Assembly::new(*mounting, *finish, head);
                let mut request = LayersRequest { assembly, ..detail(21 * 64, 6 * 64, assembly.has_head_flashing()) };
                request.patch.slit = request.patch.slit.filter(|_| *mounting == Mounting::Split);
                let layers = WallLayers::build(&request).unwrap();
                assert_eq!(faults(&layers), [], "{assembly:?}");
                let boards = at(&layers, LayerKind::Board { course: 13 });
                let found = |kind: LayerKind| layers.layers.iter().position(|layer| layer.kind == kind);
                assert_eq!(found(LayerKind::Cover).is_some(), *mounting == Mounting::Split);
                assert_eq!(found(LayerKind::HeadFlashing).is_some(), head && *finish != Finish::Collar);
                let outer = [LayerKind::Block, LayerKind::Trim, LayerKind::Collar].map(found);
                assert_eq!(
                    outer.map(|at| at.is_some()),
                    [Finish::Block, Finish::Trim, Finish::Collar].map(|f| f == *finish)
                );
                let over_boards = outer.iter().flatten().all(|at| (*at > boards) == (*finish == Finish::Collar));
                assert!(over_boards, "{assembly:?}");
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]
    /// Wherever a block stands on the wall, and with or without a head flashing, its own detail sheds.
    #[test]
    fn the_detail_of_the_rules_sheds(bottom in 64_i64..70 * 64, height in 128_i64..12 * 64, head: bool) {
        let layers = WallLayers::build(&detail(bottom, height, head)).unwrap();
        prop_assert_eq!(faults(&layers), vec![]);
    }
}
