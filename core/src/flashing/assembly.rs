use crate::wall::{Finish, Mounting, coded};

coded! {
    /// One layer of what goes round a penetration, in its order from the wall outward.
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
