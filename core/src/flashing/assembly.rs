use crate::wall::{Finish, Mounting, coded};

coded! {
    /// One layer of an assembly. Those of a penetration come first, in their order from the wall outward; the others belong
    /// to the details that every house has, each of which lists its own.
    Layer {
        /// The water barrier of the wall, opened above.
        Barrier = "barrier",
        /// The membrane patch.
        Patch = "patch",
        /// The second piece of membrane, over the slit in the patch.
        Cover = "cover",
        /// A mounting block in one piece.
        Block = "block",
        /// The lower piece of a split block.
        BlockLower = "block-lower",
        /// The upper piece of a split block.
        BlockUpper = "block-upper",
        /// The lowest piece of trim.
        TrimBottom = "trim-bottom",
        /// The trim at both sides.
        TrimSides = "trim-sides",
        /// The uppermost piece of trim.
        TrimTop = "trim-top",
        /// The sloped head flashing.
        HeadFlashing = "head-flashing",
        /// The barrier's own edge, folded down over all that went before.
        BarrierFlap = "barrier-flap",
        /// The siding.
        Boards = "boards",
        /// The sealed collar, over the boards.
        Collar = "collar",
        /// The sealant joints.
        Sealant = "sealant",
        /// A course of the barrier over the one below it.
        BarrierCourse = "barrier-course",
        /// The tape on the barrier's upright seams.
        BarrierTape = "barrier-tape",
        /// The flashing at the foot of the siding.
        BaseFlashing = "base-flashing",
        /// The starter strip.
        Starter = "starter",
        /// The barrier, carried on round a corner.
        CornerWrap = "corner-wrap",
        /// A strip of membrane in or over a corner.
        CornerFlashing = "corner-flashing",
        /// The corner boards of an outside corner.
        CornerBoards = "corner-boards",
        /// The post of an inside corner.
        CornerPost = "corner-post",
        /// The membrane under a window.
        SillFlashing = "sill-flashing",
        /// The membrane at both sides of an opening.
        JambFlashing = "jamb-flashing",
        /// The membrane over an opening.
        HeadMembrane = "head-membrane",
        /// The soffit.
        Soffit = "soffit",
        /// The frieze board under it.
        Frieze = "frieze",
        /// The trim along a rake.
        RakeTrim = "rake-trim",
        /// The flashing that throws a roof's water off the wall at its foot.
        KickOut = "kick-out",
        /// The pieces of flashing up a sloped roof, one a course of the roofing.
        StepFlashing = "step-flashing",
        /// The flashing along the level upper edge of a roof.
        Apron = "apron",
        /// The flashing over a deck's ledger.
        LedgerFlashing = "ledger-flashing",
        /// The flashing over a ledge of masonry.
        LedgeFlashing = "ledge-flashing",
        /// The screen that lets air in and keeps insects out, at the foot and the top of the furring.
        VentStrip = "vent-strip",
        /// The furring strips.
        Furring = "furring",
    }
}

coded! {
    /// What holds a layer in place.
    Fastening {
        /// Nails or screws into framing.
        Nails = "nails",
        /// Staples or cap nails, few and high, where the next layer covers them.
        Staples = "staples",
        /// It sticks by itself, rolled down.
        Adhesive = "adhesive",
        /// Nothing of its own below: it is fixed at its top and hangs.
        Top = "top",
        /// It is tooled into its joint.
        Joint = "joint",
    }
}

impl Layer {
    /// What holds it in place.
    pub const fn fastening(self) -> Fastening {
        match self {
            Self::Barrier | Self::BarrierCourse | Self::CornerWrap | Self::VentStrip => Fastening::Staples,
            Self::Patch
            | Self::Cover
            | Self::BarrierTape
            | Self::CornerFlashing
            | Self::SillFlashing
            | Self::JambFlashing
            | Self::HeadMembrane => Fastening::Adhesive,
            Self::HeadFlashing
            | Self::BarrierFlap
            | Self::BaseFlashing
            | Self::KickOut
            | Self::StepFlashing
            | Self::Apron
            | Self::LedgerFlashing
            | Self::LedgeFlashing => Fastening::Top,
            Self::Sealant => Fastening::Joint,
            Self::Block
            | Self::BlockLower
            | Self::BlockUpper
            | Self::TrimBottom
            | Self::TrimSides
            | Self::TrimTop
            | Self::Boards
            | Self::Collar
            | Self::Starter
            | Self::CornerBoards
            | Self::CornerPost
            | Self::Soffit
            | Self::Frieze
            | Self::RakeTrim
            | Self::Furring => Fastening::Nails,
        }
    }

    /// Whether a later layer hides what was done to put it in place, so that nobody can look at it again.
    pub const fn is_hidden_later(self) -> bool {
        match self {
            Self::Block
            | Self::BlockLower
            | Self::BlockUpper
            | Self::TrimBottom
            | Self::TrimSides
            | Self::TrimTop
            | Self::Boards
            | Self::Collar
            | Self::Sealant
            | Self::CornerBoards
            | Self::CornerPost
            | Self::Soffit
            | Self::Frieze
            | Self::RakeTrim => false,
            Self::Barrier
            | Self::Patch
            | Self::Cover
            | Self::HeadFlashing
            | Self::BarrierFlap
            | Self::BarrierCourse
            | Self::BarrierTape
            | Self::BaseFlashing
            | Self::Starter
            | Self::CornerWrap
            | Self::CornerFlashing
            | Self::SillFlashing
            | Self::JambFlashing
            | Self::HeadMembrane
            | Self::KickOut
            | Self::StepFlashing
            | Self::Apron
            | Self::LedgerFlashing
            | Self::LedgeFlashing
            | Self::VentStrip
            | Self::Furring => true,
        }
    }
}

/// What goes round a penetration, told once: from it follow the layers, their sizes, how they shed, the steps of the
/// work and what is ordered.
///
/// The order is that of the work, and each later layer laps over the one below it: the patch goes under the barrier
/// that was opened above it, the block or the trim stands on the patch, the head flashing stands on those, and only then
/// does the barrier come down over patch, cover and flashing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Assembly {
    mounting: Mounting,
    finish: Finish,
    head_flashing: bool,
}

impl Assembly {
    /// What goes round a fixture of this mounting and finish. A collar has no top to throw water off, so that a head
    /// flashing asked for at one is left out.
    pub const fn new(mounting: Mounting, finish: Finish, head_flashing: bool) -> Self {
        Self { mounting, finish, head_flashing: head_flashing && !matches!(finish, Finish::Collar) }
    }

    /// How the siding ends at it.
    pub const fn finish(self) -> Finish {
        self.finish
    }

    /// Whether the patch is slit to get round what stays in the wall, whatever the finish.
    pub const fn patch_is_slit(self) -> bool {
        matches!(self.mounting, Mounting::Split)
    }

    /// Whether a mounting block is split. Trim never is.
    pub const fn block_is_split(self) -> bool {
        matches!((self.mounting, self.finish), (Mounting::Split, Finish::Block))
    }

    /// Whether a head flashing goes on top.
    pub const fn has_head_flashing(self) -> bool {
        self.head_flashing
    }

    /// Whether it has a layer.
    pub const fn has(self, layer: Layer) -> bool {
        match layer {
            Layer::Barrier | Layer::Patch | Layer::BarrierFlap | Layer::Boards | Layer::Sealant => true,
            Layer::Cover => self.patch_is_slit(),
            Layer::Block => matches!(self.finish, Finish::Block) && !self.block_is_split(),
            Layer::BlockLower | Layer::BlockUpper => self.block_is_split(),
            Layer::TrimBottom | Layer::TrimSides | Layer::TrimTop => matches!(self.finish, Finish::Trim),
            Layer::HeadFlashing => self.head_flashing,
            Layer::Collar => matches!(self.finish, Finish::Collar),
            _ => false,
        }
    }

    /// Its layers, from the wall outward.
    pub fn layers(self) -> impl Iterator<Item = Layer> {
        Layer::ALL.iter().copied().filter(move |layer| self.has(*layer))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn codes(mounting: Mounting, finish: Finish, head_flashing: bool) -> Vec<&'static str> {
        Assembly::new(mounting, finish, head_flashing).layers().map(Layer::code).collect()
    }

    #[test]
    fn a_split_block_has_a_cover_and_two_pieces() {
        let got = codes(Mounting::Split, Finish::Block, true);
        let want = ["barrier", "patch", "cover", "block-lower", "block-upper", "head-flashing", "barrier-flap"];
        assert_eq!(got[..7], want);
        assert_eq!(got[7..], ["boards", "sealant"]);
        let got = codes(Mounting::SlipOver, Finish::Block, false);
        assert_eq!(got, ["barrier", "patch", "block", "barrier-flap", "boards", "sealant"]);
    }

    /// What stays in the wall slits the patch, but trim is put together round it.
    #[test]
    fn trim_is_never_split() {
        let pieces = ["trim-bottom", "trim-sides", "trim-top", "barrier-flap", "boards", "sealant"];
        let got = codes(Mounting::Split, Finish::Trim, false);
        assert_eq!((&got[..3], &got[3..]), (&["barrier", "patch", "cover"][..], &pieces[..]));
        let got = codes(Mounting::SlipOver, Finish::Trim, false);
        assert_eq!((&got[..2], &got[2..]), (&["barrier", "patch"][..], &pieces[..]));
    }

    #[test]
    fn a_collar_lies_over_the_boards_and_has_no_head_flashing() {
        let got = codes(Mounting::Split, Finish::Collar, true);
        assert_eq!(got, ["barrier", "patch", "cover", "barrier-flap", "boards", "collar", "sealant"]);
    }
}
