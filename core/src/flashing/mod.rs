//! What makes a penetration weathertight: membrane patch, mounting block, sealant joint, laps that shed.
//!
//! Pure functions over plain data. Sizes that come from an angle are computed to 192 binary places and rounded to the
//! nearest nanometre once, so that no decision rests on a float.

mod assembly;
mod bead;
mod block;
mod clearance;
mod detail;
mod fixed;
mod head;
mod hood;
mod joint;
mod layers;
mod patch;
mod shed;
mod slip_block;
mod stock;

pub use assembly::{Assembly, Fastening, Layer};
pub use bead::{Bead, BeadError, BeadRequest, BeadShape, BeadWarning, Cartridge};
pub use block::{ANGLES, BlockError, BlockLimits, BlockWarning, CutHeights, SplitBlock, SplitRequest, WayOut};
pub use clearance::{fall, square_to, too_near};
pub use detail::{Detail, DetailAssembly, DetailBoard, DetailRequest, DetailSize};
pub use head::{HeadError, HeadFlashing, HeadRequest, head_gap, head_needed};
pub use hood::{duct_narrow, way_between};
pub use joint::{Joint, JointPlace, JointSection, JointsRequest, drains_below};
pub use layers::{LapFault, LayerBoard, LayerKind, LayersError, LayersRequest, Outer, Profile, WallLayer, WallLayers};
pub use patch::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest, PatchSlit, Pipe, WallRectangle};
pub use shed::{ShedError, ShedFault, ShedKind, ShedLayer, ShedRequest, Slit, shed_faults};
pub use slip_block::{SlipBlock, SlipError, SlipRequest};
pub use stock::stock_thickness;
