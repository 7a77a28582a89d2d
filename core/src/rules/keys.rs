//! The keys of the rules that the program computes with. The lists say how each is read.

/// Least lap of the boards.
pub const LAP_LEAST: &str = "lap.least";
/// Widest board that the lap rule covers.
pub const BOARD_HEIGHT_MOST: &str = "board.height.most";
/// Stud spacing, center to center.
pub const STUD_SPACING: &str = "stud.spacing";
/// Nail line below the top edge, least.
pub const NAIL_LINE_LEAST: &str = "nail.line.least";
/// Nail line below the top edge, most.
pub const NAIL_LINE_MOST: &str = "nail.line.most";
/// Nail from the end of the board.
pub const NAIL_FROM_END: &str = "nail.from-end";
/// Nail into the stud.
pub const NAIL_INTO_STUD: &str = "nail.into-stud";
/// Gap at the trim.
pub const GAP_TRIM: &str = "gap.trim";
/// Gap round a block, least.
pub const GAP_BLOCK_LEAST: &str = "gap.block.least";
/// Gap round a block, most.
pub const GAP_BLOCK_MOST: &str = "gap.block.most";
/// Gap above a head flashing, left open.
pub const GAP_HEAD_FLASHING: &str = "gap.head-flashing";
/// Gap at a butt joint, least.
pub const JOINT_GAP_LEAST: &str = "joint.gap.least";
/// Gap at a butt joint, most.
pub const JOINT_GAP_MOST: &str = "joint.gap.most";
/// Width of the strip behind a joint.
pub const JOINT_BACKING_WIDTH: &str = "joint.backing.width";
/// Narrowest leg beside a notch.
pub const LEG_LEAST: &str = "leg.least";
/// Membrane past the block at each side.
pub const PATCH_BEYOND_SIDE: &str = "patch.beyond.side";
/// Membrane past the block at the top.
pub const PATCH_BEYOND_TOP: &str = "patch.beyond.top";
/// Cover piece past the slit.
pub const PATCH_COVER_BEYOND: &str = "patch.cover.beyond";
/// Hole in the membrane smaller than the pipe by.
pub const PATCH_SNUG: &str = "patch.snug";
/// Narrowest sealant joint.
pub const SEALANT_WIDTH_LEAST: &str = "sealant.width.least";
/// Least depth of a sealant joint.
pub const SEALANT_DEPTH_LEAST: &str = "sealant.depth.least";
/// Greatest depth of a sealant joint.
pub const SEALANT_DEPTH_MOST: &str = "sealant.depth.most";
/// Siding above the ground.
pub const CLEARANCE_GROUND: &str = "clearance.ground";
/// Siding above paving.
pub const CLEARANCE_GROUND_PAVED: &str = "clearance.ground.paved";
/// Siding above a roof.
pub const CLEARANCE_ROOF: &str = "clearance.roof";
/// Siding above a head flashing.
pub const CLEARANCE_HEAD_FLASHING: &str = "clearance.head-flashing";
/// Saw takes past the line, least.
pub const SAW_OVER_LEAST: &str = "saw.over.least";
/// Saw takes past the line, most.
pub const SAW_OVER_MOST: &str = "saw.over.most";
/// Width of the saw cut.
pub const SAW_KERF: &str = "saw.kerf";
/// Tape reads true to within.
pub const TAPE_ERROR: &str = "tape.error";
/// Tape and plan may differ by.
pub const TAPE_PLAN_TOLERANCE: &str = "tape.plan-tolerance";
/// Out of level before it is reported.
pub const LEVEL_TOLERANCE: &str = "level.tolerance";
/// Two boards at one block may miss by.
pub const CROSS_CHECK_TOLERANCE: &str = "cross-check.tolerance";
/// Block past its fixture at each side, where nobody gives its size.
pub const BLOCK_BEYOND: &str = "block.beyond";
/// Block thicker than two boards by.
pub const BLOCK_THICKNESS_MARGIN: &str = "block.thickness.margin";
/// Wood left beside the hole in a block.
pub const BLOCK_SIDE_LEAST: &str = "block.side.least";
/// Steps of drill bit sizes.
pub const BLOCK_BIT_STEP: &str = "block.bit-step";
/// Opening too narrow to show what is behind.
pub const SHADOW_MOST: &str = "shadow.most";
/// Lap of the barrier, horizontal joints.
pub const BARRIER_LAP_HORIZONTAL: &str = "barrier.lap.horizontal";
/// Lap of the barrier, vertical joints.
pub const BARRIER_LAP_VERTICAL: &str = "barrier.lap.vertical";
/// Boards that one board gives over its height.
pub const RIPS_PER_BOARD: &str = "rips.per-board";
/// Shortest offcut worth keeping.
pub const OFFCUT_KEEP_LEAST: &str = "offcut.keep.least";
/// Least thickness of the board.
pub const BOARD_THICKNESS: &str = "board.thickness";
/// A block wider than this gets a head flashing.
pub const HEAD_FLASHING_OVER_BLOCK: &str = "head-flashing.over-block";
/// Trim wider than this gets a head flashing.
pub const HEAD_FLASHING_OVER_TRIM: &str = "head-flashing.over-trim";
/// Head flashing, leg up the wall.
pub const HEAD_FLASHING_UP_LEG: &str = "head-flashing.up-leg";
/// Head flashing, height of the end dams.
pub const HEAD_FLASHING_END_DAM: &str = "head-flashing.end-dam";
/// Head flashing, lap down over what is below.
pub const HEAD_FLASHING_DOWN_LAP: &str = "head-flashing.down-lap";
/// Head flashing, drip out from the face.
pub const HEAD_FLASHING_DRIP: &str = "head-flashing.drip";
/// Change of length of a board, between the two humidities of its test.
pub const MOVEMENT_STRAIN: &str = "movement.strain";
/// Waste allowance, boards.
pub const WASTE_BOARDS: &str = "waste.boards";
/// Waste allowance, sealant.
pub const WASTE_SEALANT: &str = "waste.sealant";
/// Depth of a sealant joint, share of its width.
pub const SEALANT_DEPTH_SHARE: &str = "sealant.depth.share";
/// Head flashing, slope outward.
pub const HEAD_FLASHING_SLOPE: &str = "head-flashing.slope";
/// Upper part of a flange that is sealed, bottom left open.
pub const FLANGE_SEALED_SHARE: &str = "flange.sealed-share";
/// Stud bays between joints of neighboring courses, least.
pub const JOINT_STAGGER_LEAST: &str = "joint.stagger.least";
/// Nails per stud and course.
pub const NAILS_PER_STUD: &str = "nails.per-stud";
/// Nails at a joint.
pub const NAILS_AT_JOINT: &str = "nails.at-joint";
/// Angle of the cut through a split block.
pub const BLOCK_ANGLE: &str = "block.angle";
/// Waste allowance, starter strip, trim and flashing.
pub const WASTE_LENGTHS: &str = "waste.lengths";
/// Waste allowance, membrane.
pub const WASTE_MEMBRANE: &str = "waste.membrane";
/// Waste allowance, primer and paint.
pub const WASTE_COATING: &str = "waste.coating";
/// Waste allowance, nails, screws and strips behind joints.
pub const WASTE_FASTENERS: &str = "waste.fasteners";
/// Width of a roll of water barrier.
pub const BARRIER_ROLL_WIDTH: &str = "barrier.roll.width";
/// Length of a roll of water barrier.
pub const BARRIER_ROLL_LENGTH: &str = "barrier.roll.length";
/// Length of a roll of tape for the barrier's seams.
pub const BARRIER_TAPE_LENGTH: &str = "barrier.tape.length";
/// Length of a vent strip as it is sold.
pub const VENT_STRIP_LENGTH: &str = "vent-strip.length";
/// Length of a starter strip.
pub const STARTER_LENGTH: &str = "starter.length";
/// Width of the trim round windows, doors and fixtures.
pub const TRIM_WIDTH: &str = "trim.width";
/// Length of a trim board.
pub const TRIM_LENGTH: &str = "trim.length";
/// Length of a head flashing as it is sold.
pub const FLASHING_LENGTH: &str = "head-flashing.length";
/// Width of a roll of membrane.
pub const MEMBRANE_ROLL_WIDTH: &str = "membrane.roll.width";
/// Length of a roll of membrane.
pub const MEMBRANE_ROLL_LENGTH: &str = "membrane.roll.length";
/// What a gallon of primer covers.
pub const PRIMER_COVERAGE: &str = "primer.coverage";
/// Coats of primer on cut edges.
pub const PRIMER_COATS: &str = "primer.coats";
/// A can of primer.
pub const PRIMER_CAN: &str = "primer.can";
/// What a gallon of paint covers.
pub const PAINT_COVERAGE: &str = "paint.coverage";
/// Coats of paint; none where boards come painted.
pub const PAINT_COATS: &str = "paint.coats";
/// A can of paint.
pub const PAINT_CAN: &str = "paint.can";
/// Siding nails in a box.
pub const NAILS_PACK: &str = "nails.pack";
/// Nails along a trim board, from pair to pair.
pub const TRIM_NAIL_SPACING: &str = "trim.nail-spacing";
/// Nails side by side in a trim board.
pub const TRIM_NAILS_AT_STUD: &str = "trim.nails-at-stud";
/// Trim nails in a box.
pub const TRIM_NAILS_PACK: &str = "trim.nails-pack";
/// Screws in a mounting block.
pub const SCREWS_PER_BLOCK: &str = "screws.per-block";
/// Screws in a box.
pub const SCREWS_PACK: &str = "screws.pack";
/// A cartridge of sealant in fluid ounces.
pub const CARTRIDGE_OUNCES: &str = "cartridge.ounces";
/// A cartridge of sealant in millilitres.
pub const CARTRIDGE_MILLILITRES: &str = "cartridge.millilitres";

/// Out of level that is taken out in one course, most.
pub const LEVEL_CHANGE_MOST: &str = "level.change.most";

/// What is higher above the base line is worked at from a ladder or a scaffold.
pub const REACH_MOST: &str = "reach.most";

/// Flashing past each side of an opening.
pub const FLASHING_BEYOND_OPENING: &str = "flashing.beyond-opening";
/// Flashing under the siding at an opening.
pub const FLASHING_UNDER_CLADDING: &str = "flashing.under-cladding";
/// Nail spacing along a board, most.
pub const NAIL_SPACING_MOST: &str = "nail.spacing.most";
/// How far what goes through slopes outward.
pub const PIPE_SLOPE: &str = "pipe.slope";
/// Lap of flashing over flashing.
pub const FLASHING_LAP: &str = "flashing.lap";
/// Dryer hood away from doors and windows.
pub const DRYER_FROM_OPENINGS: &str = "dryer.from-openings";
/// Open area of a dryer hood.
pub const DRYER_OPEN_AREA: &str = "dryer.open-area";
/// Nail into framing over foam sheathing.
pub const NAIL_OVER_FOAM: &str = "nail.over-foam";
/// Shortest nail.
pub const NAIL_LENGTH_LEAST: &str = "nail.length.least";
/// Shortest nail through a sheathing of any kind.
pub const NAIL_LENGTH_OVER_SHEATHING: &str = "nail.length.over-sheathing";
/// Steps of nail lengths.
pub const NAIL_LENGTH_STEP: &str = "nail.length-step";
/// Thickness of the sheathing.
pub const SHEATHING_THICKNESS: &str = "sheathing.thickness";
/// Thickness of the foam over the sheathing; zero for none.
pub const FOAM_THICKNESS: &str = "foam.thickness";

/// The thinner stock that blocks and trim are made from.
pub const BLOCK_STOCK_LEAST: &str = "block.stock.least";
/// The thicker one.
pub const BLOCK_STOCK_MOST: &str = "block.stock.most";
/// Width of the soffit; zero where it is not ordered with the siding.
pub const SOFFIT_WIDTH: &str = "soffit.width";
/// Length of a piece of soffit as it is sold.
pub const SOFFIT_LENGTH: &str = "soffit.length";
/// How much wall a kit for touching up boards that come painted is for.
pub const TOUCH_UP_KIT: &str = "touch-up.kit";
/// Thickness of the furring strips behind the boards; zero for none.
pub const FURRING_THICKNESS: &str = "furring.thickness";
/// Length of a furring strip as it is sold.
pub const FURRING_LENGTH: &str = "furring.length";
/// Siding above a roof with step flashing.
pub const CLEARANCE_ROOF_STEP_FLASHED: &str = "clearance.roof.step-flashed";
/// Step flashing, up the wall and out on the roof.
pub const STEP_FLASHING_LEG: &str = "step-flashing.leg";
/// Step flashing, thickness of the sheet.
pub const STEP_FLASHING_THICKNESS: &str = "step-flashing.thickness";
/// A step flashing for so much of the roof, measured along its slope: a course of roofing.
pub const STEP_FLASHING_EACH: &str = "step-flashing.each";
/// Flashing over a ledger, up the wall.
pub const LEDGER_FLASHING_ABOVE: &str = "ledger-flashing.above";
/// Flashing over a ledger, past its face.
pub const LEDGER_FLASHING_BEYOND: &str = "ledger-flashing.beyond";
/// Flashing over a ledger, down over its face.
pub const LEDGER_FLASHING_DOWN: &str = "ledger-flashing.down";
/// The least thickness of sheet, by the code of its size and its key.
pub const SHEETS: &[(&str, &str)] = &[
    ("sheet-galvanised", "sheet.galvanised"),
    ("sheet-aluminium", "sheet.aluminium"),
    ("sheet-copper", "sheet.copper"),
    ("sheet-zinc", "sheet.zinc"),
    ("sheet-vinyl", "sheet.vinyl"),
];

/// Narrowest strip of board that shows over or under a block.
pub const STRIP_LEAST: &str = "strip.least";

/// Read with `get_length`.
pub const LENGTHS: &[&str] = &[
    LAP_LEAST,
    BOARD_HEIGHT_MOST,
    STUD_SPACING,
    NAIL_LINE_LEAST,
    NAIL_LINE_MOST,
    NAIL_FROM_END,
    NAIL_INTO_STUD,
    GAP_TRIM,
    GAP_BLOCK_LEAST,
    GAP_BLOCK_MOST,
    GAP_HEAD_FLASHING,
    JOINT_GAP_LEAST,
    JOINT_GAP_MOST,
    JOINT_BACKING_WIDTH,
    LEG_LEAST,
    PATCH_BEYOND_SIDE,
    PATCH_BEYOND_TOP,
    PATCH_COVER_BEYOND,
    PATCH_SNUG,
    SEALANT_WIDTH_LEAST,
    SEALANT_DEPTH_LEAST,
    SEALANT_DEPTH_MOST,
    CLEARANCE_GROUND,
    CLEARANCE_GROUND_PAVED,
    CLEARANCE_ROOF,
    CLEARANCE_HEAD_FLASHING,
    SAW_OVER_LEAST,
    SAW_OVER_MOST,
    SAW_KERF,
    TAPE_ERROR,
    TAPE_PLAN_TOLERANCE,
    LEVEL_TOLERANCE,
    LEVEL_CHANGE_MOST,
    STRIP_LEAST,
    CROSS_CHECK_TOLERANCE,
    BLOCK_THICKNESS_MARGIN,
    BLOCK_SIDE_LEAST,
    BLOCK_BIT_STEP,
    SHADOW_MOST,
    BARRIER_LAP_HORIZONTAL,
    BARRIER_LAP_VERTICAL,
    OFFCUT_KEEP_LEAST,
    BOARD_THICKNESS,
    HEAD_FLASHING_OVER_BLOCK,
    HEAD_FLASHING_OVER_TRIM,
    HEAD_FLASHING_UP_LEG,
    HEAD_FLASHING_END_DAM,
    HEAD_FLASHING_DOWN_LAP,
    HEAD_FLASHING_DRIP,
    BARRIER_ROLL_WIDTH,
    BARRIER_ROLL_LENGTH,
    BARRIER_TAPE_LENGTH,
    VENT_STRIP_LENGTH,
    STARTER_LENGTH,
    TRIM_LENGTH,
    FLASHING_LENGTH,
    MEMBRANE_ROLL_WIDTH,
    MEMBRANE_ROLL_LENGTH,
    TRIM_NAIL_SPACING,
    BLOCK_BEYOND,
    REACH_MOST,
    FLASHING_BEYOND_OPENING,
    FLASHING_LAP,
    FLASHING_UNDER_CLADDING,
    NAIL_SPACING_MOST,
    DRYER_FROM_OPENINGS,
    NAIL_OVER_FOAM,
    NAIL_LENGTH_LEAST,
    NAIL_LENGTH_OVER_SHEATHING,
    NAIL_LENGTH_STEP,
    BLOCK_STOCK_LEAST,
    BLOCK_STOCK_MOST,
    SOFFIT_WIDTH,
    SOFFIT_LENGTH,
    SHEATHING_THICKNESS,
    FOAM_THICKNESS,
    FURRING_THICKNESS,
    FURRING_LENGTH,
    CLEARANCE_ROOF_STEP_FLASHED,
    STEP_FLASHING_LEG,
    STEP_FLASHING_THICKNESS,
    STEP_FLASHING_EACH,
    LEDGER_FLASHING_ABOVE,
    LEDGER_FLASHING_BEYOND,
    LEDGER_FLASHING_DOWN,
];

/// Read with `get_share`.
pub const SHARES: &[&str] = &[
    MOVEMENT_STRAIN,
    WASTE_BOARDS,
    WASTE_SEALANT,
    SEALANT_DEPTH_SHARE,
    HEAD_FLASHING_SLOPE,
    FLANGE_SEALED_SHARE,
    WASTE_LENGTHS,
    WASTE_MEMBRANE,
    WASTE_COATING,
    WASTE_FASTENERS,
];

/// Read with `get_whole`: counts, and the angle in whole degrees.
pub const WHOLES: &[&str] = &[
    JOINT_STAGGER_LEAST,
    RIPS_PER_BOARD,
    NAILS_PER_STUD,
    NAILS_AT_JOINT,
    BLOCK_ANGLE,
    PRIMER_COATS,
    PAINT_COATS,
    NAILS_PACK,
    TRIM_NAILS_AT_STUD,
    TRIM_NAILS_PACK,
    SCREWS_PER_BLOCK,
    SCREWS_PACK,
];

/// Read with `get`: volumes and what a volume covers.
pub const VOLUMES: &[&str] =
    &[PRIMER_COVERAGE, PRIMER_CAN, PAINT_COVERAGE, PAINT_CAN, CARTRIDGE_OUNCES, CARTRIDGE_MILLILITRES];
