//! What follows from a house, pure, each told in one place.
//!
//! [`Work`] is made from a [`House`](crate::book::House) and handed to whatever answers one tap: the action, the view and
//! the drawings. It is remembered by the content that it was made from, wall by wall: a wall whose measures did not change
//! since the last tap is taken over as it was. A board, a penetration, progress and the saw list are derived where they are
//! asked for.

mod against;
mod around;
mod block_advice;
mod board;
mod course;
mod cross_check;
mod cut_list;
mod detail;
mod earlier_penetration;
mod error;
mod follow;
mod head_flashing;
mod house;
mod house_plan;
mod joints;
mod laid_out;
mod materials;
mod misfits;
mod mounting_block;
mod next;
mod notch;
mod patch;
mod penetration;
mod penetration_site;
mod placement;
mod plan_error;
mod planned_board;
mod progress;
mod ripped;
mod saw_boards;
mod signed;
mod signed_penetration;
mod uncovered;
mod wall_board;
mod wall_layers;
mod wall_plan;
mod wall_shapes;
mod wall_site;
mod weather;

pub use against::Against;
pub use around::{Around, clearance_over};
pub use board::{Board, Met};
pub use course::{AsBuiltEntry, Course, as_built_line, merge_as_built};
pub use cross_check::cross_check;
pub use detail::WallDetail;
pub use error::{Result, WorkError};
pub use follow::follow;
pub use house::{StockCount, Work, rules};
pub use house_plan::HousePlan;
pub use laid_out::{LaidNotch, LaidOut};
pub use materials::materials;
pub use misfits::Misfits;
pub use mounting_block::MadeBlock;
pub use next::NextInHouse;
pub use notch::{BoardNotch, READINGS, Tools};
pub use patch::patch_lengths;
pub use penetration::{MountingBlock, Penetration};
pub use penetration_site::PenetrationSite;
pub use placement::Placement;
pub use plan_error::PlanError;
pub use planned_board::{BoardLayout, CutFrom, PlannedBoard, is_of_strip, planned};
pub use progress::{DetailProgress, PenetrationProgress, ProgressOnWall, open_field};
pub use ripped::ripped_to;
pub use saw_boards::{Leftover, SawBoard, SawBoards, SawPiece, least_with_offcut};
pub use signed::{open_steps, sign_offs};
pub use wall_board::WallBoard;
pub use wall_plan::WallPlan;
pub use wall_shapes::{Neighbours, TapedAround, WallShapes};
pub use wall_site::{WallSite, course_lines, head_of, outline_with};
pub use weather::{LetsWaterIn, WeatherGap, open_to_weather};
