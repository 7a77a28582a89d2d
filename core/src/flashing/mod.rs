//! What makes a penetration weathertight: membrane patch, mounting block, sealant joint, laps that shed.
//!
//! Pure functions over plain data. Sizes that come from an angle are computed to 192 binary places and rounded to the
//! nearest nanometre once, so that no decision rests on a float.

mod bead;
mod block;
mod clearance;
mod fixed;
mod head;
mod layers;
mod patch;
mod shed;
mod slip_block;

pub use bead::{Bead, BeadError, BeadRequest, BeadShape, BeadWarning, Cartridge};
pub use block::{ANGLES, BlockError, BlockLimits, BlockWarning, CutHeights, SplitBlock, SplitRequest, WayOut};
pub use clearance::too_near;
pub use head::{HeadError, HeadFlashing, HeadRequest, head_needed, open_under_eave};
pub use layers::{LapFault, LayerBoard, LayerKind, LayersError, LayersRequest, Outer, Profile, WallLayer, WallLayers};
pub use patch::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest, Pipe, Rectangle};
pub use shed::{Layer, ShedError, ShedFault, ShedKind, ShedRequest, Slit, shed_faults};
pub use slip_block::{SlipBlock, SlipError, SlipRequest};
