//! The details of a wall: what every house has, derived from what the wall holds.

use std::sync::Arc;

use crate::amounts::siding_nail;
use crate::book::{Field, Kind, Record};
use crate::flashing::{Detail, DetailAssembly, DetailBoard, DetailRequest, Layer, WallRectangle};
use crate::measure::Length;
use crate::rules::keys;
use crate::steps::{Canonical, DetailSteps};
use crate::store::{Hash, Id};
use crate::wall::{CornerKind, DetailPlace, Opening, OpeningKind};

use super::against::Against;
use super::error::{Result, WorkError};
use super::head_flashing::over_opening;
use super::{WallSite, Work};

/// A detail of a wall. It is no thing of the book: it follows from the wall, or from an opening or an abutment of it, on
/// which its steps are signed.
#[derive(Clone, Debug)]
pub struct WallDetail {
    /// What its steps are signed on.
    pub record: Arc<Record>,
    /// What its steps are made from.
    pub steps: DetailSteps,
    /// Its sizes and layers.
    pub detail: Detail,
    /// How high on the wall the boards meet it.
    pub meets: Length,
}

/// How the siding ends at an end of a wall: as was said, else by its trim.
fn corner(wall: &Record, said: Field, trim: Field) -> (CornerKind, Option<Length>) {
    let width = wall.length(trim).filter(|width| width.is_positive());
    let said = wall.text(said).and_then(CornerKind::from_code);
    (said.unwrap_or(if width.is_some() { CornerKind::Outside } else { CornerKind::Mitred }), width)
}

/// What the details of one wall have in common.
struct OnWall<'a> {
    work: &'a Work,
    wall: &'a WallSite,
    board: DetailBoard,
    area: WallRectangle,
    nail: Length,
    all: Vec<WallDetail>,
}

impl WallSite {
    /// The details of the wall in the order in which a crew comes to them.
    ///
    /// # Errors
    /// [`WorkError`] where the wall is not measured yet, or the boards' height is not known.
    pub fn details(&self, work: &Work) -> Result<Vec<WallDetail>> {
        let outline = self.outline()?;
        let (rules, thickness) = (work.rules(), work.board_thickness()?);
        let board = DetailBoard { height: work.board_height()?, thickness, lap: work.lap()? };
        let area =
            WallRectangle { left: Length::ZERO, right: outline.width(), bottom: outline.bottom(), top: outline.top() };
        let nail = siding_nail(rules, thickness)?;
        let mut on = OnWall { work, wall: self, board, area, nail, all: Vec::new() };
        on.plain(DetailPlace::Barrier)?;
        on.plain(DetailPlace::Base)?;
        if rules.get_length(keys::FURRING_THICKNESS)?.is_positive() {
            on.plain(DetailPlace::Furring)?;
        }
        on.corner(DetailPlace::CornerLeft, Field::CornerLeft, Field::TrimLeft)?;
        on.corner(DetailPlace::CornerRight, Field::CornerRight, Field::TrimRight)?;
        for (id, opening) in &self.openings {
            on.opening(*id, opening)?;
        }
        for record in work.house().under(self.id(), Kind::Abutment) {
            on.abutment(record)?;
        }
        let level = outline.sides().any(|(a, b)| b.x < a.x && a.y == b.y);
        if level {
            on.plain(DetailPlace::Eave)?;
        }
        if outline.sides().any(|(a, b)| b.x < a.x && a.y != b.y) {
            on.plain(DetailPlace::Rake)?;
        }
        Ok(on.all)
    }

    /// The detail of this place on a thing of the wall, or on the wall itself.
    ///
    /// # Errors
    /// As [`WallSite::details`].
    pub fn detail(&self, work: &Work, id: Id, place: DetailPlace) -> Result<Option<WallDetail>> {
        Ok(self.details(work)?.into_iter().find(|detail| detail.is(id, place)))
    }
}

impl OnWall<'_> {
    fn push(
        &mut self,
        record: &Arc<Record>,
        assembly: DetailAssembly,
        with: impl FnOnce(DetailRequest) -> DetailRequest,
    ) -> Result<()> {
        let request = with(DetailRequest {
            assembly,
            board: self.board,
            wall: self.area,
            area: self.area,
            casing: self.work.block_thickness()?,
            head: None,
            slope: None,
        });
        // What is at the foot of the wall is worked at from the ground.
        let foot = matches!(assembly.place(), DetailPlace::Base | DetailPlace::Ledge);
        let steps = DetailSteps {
            assembly,
            head_flashing: request.head.is_some(),
            old_house: self.work.old_house(),
            above_reach: !foot && self.work.above_reach(request.area.top),
        };
        let meets = self.meets(&request)?;
        let detail = Detail::of(self.work.rules(), request, self.nail).map_err(WorkError::from)?;
        self.all.push(WallDetail { record: Arc::clone(record), steps, detail, meets });
        Ok(())
    }

    /// How high the boards meet what a request is for: what is at the top of the wall, a board's height under it.
    fn meets(&self, request: &DetailRequest) -> Result<Length> {
        let area = request.area;
        Ok(match request.assembly.place() {
            DetailPlace::Eave => area.top - self.board.height,
            DetailPlace::Rake => {
                let rakes = self.wall.outline()?.sides().filter(|(a, b)| b.x < a.x && a.y != b.y);
                rakes.map(|(a, b)| a.y.min(b.y)).min().unwrap_or(area.top) - self.board.height
            }
            // A roof's foot and a ledger are met from below.
            DetailPlace::RoofSide | DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge => {
                request.slope.map_or(area.top, |(rise, _)| area.top.min(area.top + rise))
            }
            _ => area.bottom,
        })
    }

    fn plain(&mut self, place: DetailPlace) -> Result<()> {
        let wall = Arc::clone(&self.wall.record);
        self.push(&wall, DetailAssembly::new(place, CornerKind::Outside), |request| request)
    }

    fn corner(&mut self, place: DetailPlace, said: Field, trim: Field) -> Result<()> {
        let wall = Arc::clone(&self.wall.record);
        let (corner, width) = corner(&wall, said, trim);
        let width = match (corner, width) {
            (CornerKind::Mitred, _) => Length::ZERO,
            (_, Some(width)) => width,
            (_, None) => self.work.rules().get_length(keys::TRIM_WIDTH)?,
        };
        let area = match place {
            DetailPlace::CornerLeft => WallRectangle { right: self.area.left + width, ..self.area },
            _ => WallRectangle { left: self.area.right - width, ..self.area },
        };
        self.push(&wall, DetailAssembly::new(place, corner), |request| DetailRequest { area, ..request })
    }

    fn opening(&mut self, id: Id, opening: &Opening) -> Result<()> {
        let Some(record) = self.work.house().any(id) else { return Ok(()) };
        let place = match opening.kind {
            OpeningKind::Window => DetailPlace::Window,
            OpeningKind::Door => DetailPlace::Door,
        };
        let (x, head) = (opening.head(), over_opening(self.work.rules(), opening, self.work.block_thickness()?)?);
        let area = WallRectangle { left: x.from, right: x.to, bottom: opening.bottom, top: opening.top };
        let record = Arc::clone(record);
        self.push(&record, DetailAssembly::new(place, CornerKind::Outside), |request| DetailRequest {
            area,
            head,
            ..request
        })
    }

    fn abutment(&mut self, record: &Arc<Record>) -> Result<()> {
        let Some(against) = Against::of(record) else { return Ok(()) };
        let place = match record.text(Field::What) {
            Some("roof") if against.is_sloped() => DetailPlace::RoofSide,
            Some("roof") => DetailPlace::RoofHead,
            Some("deck") => DetailPlace::Ledger,
            Some("ledge") => DetailPlace::Ledge,
            // Ground and paving have a clearance and no flashing.
            _ => return Ok(()),
        };
        let Against { from: left, to: right, surface, rise } = against;
        let area = WallRectangle { left, right, bottom: self.area.bottom.min(surface), top: surface };
        let slope = against.is_sloped().then(|| (rise, right - left));
        self.push(record, DetailAssembly::new(place, CornerKind::Outside), |request| DetailRequest {
            area,
            slope,
            ..request
        })
    }
}

impl WallDetail {
    /// Whether it is the detail of this place on this thing.
    pub fn is(&self, id: Id, place: DetailPlace) -> bool {
        self.record.id() == id && self.place() == place
    }

    /// Where it lies.
    pub const fn place(&self) -> DetailPlace {
        self.steps.assembly.place()
    }

    /// The layers that are put, from the wall outward.
    pub fn layers(&self) -> impl Iterator<Item = Layer> + '_ {
        self.steps.layers()
    }

    /// What the sign-offs are made under: the detail and its sizes.
    pub fn canonical(&self) -> Canonical {
        let sizes = self.layers().flat_map(|layer| {
            let named = move |(code, length)| (format!("{}.{code}", layer.code()), length);
            self.detail.sizes(layer).into_iter().map(named)
        });
        sizes.fold(self.steps.canonical(), |canonical, (name, length)| canonical.length(&name, length))
    }

    /// The hash of [`WallDetail::canonical`].
    pub fn hash(&self) -> Hash {
        Hash::of(self.canonical().detail_text())
    }
}
