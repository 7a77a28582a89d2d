use super::coded;

coded! {
    /// Where on a wall a detail lies, that every house has.
    DetailPlace {
        /// The water barrier as a whole, before the first board.
        Barrier = "barrier",
        /// The foot of the siding: base flashing and starter strip.
        Base = "base",
        /// The wall's left end.
        CornerLeft = "corner-left",
        /// The wall's right end.
        CornerRight = "corner-right",
        /// A window with its casing.
        Window = "window",
        /// A door with its casing.
        Door = "door",
        /// The level top edge, under a soffit.
        Eave = "eave",
        /// A sloped top edge, under a gable's overhang.
        Rake = "rake",
        /// A sloped roof that runs up along the wall.
        RoofSide = "roof-side",
        /// A roof whose upper edge lies level against the wall.
        RoofHead = "roof-head",
        /// A deck's ledger.
        Ledger = "ledger",
        /// A ledge of stone or masonry below the siding.
        Ledge = "ledge",
        /// Furring strips behind the boards, with their vents.
        Furring = "furring",
    }
}

coded! {
    /// How the siding ends at an end of a wall.
    CornerKind {
        /// Corner boards on an outside corner.
        Outside = "outside",
        /// A post in an inside corner.
        Inside = "inside",
        /// Boards that are mitred to those of the next wall.
        Mitred = "mitred",
    }
}
