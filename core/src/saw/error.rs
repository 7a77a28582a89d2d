use thiserror::Error;

/// Why there is no plan. Indices count from zero, in the order of the cut list.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum SawError {
    /// More than 10,000 of something.
    #[error("more than 10,000 of `{what}`")]
    TooMany {
        /// The list, or `pieces`.
        what: &'static str,
    },
    /// A gap, the kerf, the stagger or the least piece is under zero or beyond 1,000 km.
    #[error("`{what}` must lie between zero and 1,000 km")]
    Negative {
        /// The field.
        what: &'static str,
    },
    /// The studs' spacing is not over zero.
    #[error("the stud spacing must be over zero")]
    Spacing,
    /// A board without length.
    #[error("stock {stock} must have a length over zero, at most 1,000 km")]
    StockLength {
        /// Which.
        stock: usize,
    },
    /// A price beyond a million.
    #[error("stock {stock} must not cost more than a million")]
    StockCost {
        /// Which.
        stock: usize,
    },
    /// An offcut without length.
    #[error("offcut {offcut} must have a length over zero, at most 1,000 km")]
    OffcutLength {
        /// Which.
        offcut: usize,
    },
    /// A run that ends left of where it starts.
    #[error("run {run} must end to the right of its start, within 1,000 km")]
    RunOrder {
        /// Which.
        run: usize,
    },
    /// Nothing is left of a run after its end gaps.
    #[error("run {run} is not longer than its end gaps")]
    RunShort {
        /// Which.
        run: usize,
    },
    /// There is no board at all.
    #[error("there is no board to cut from")]
    NoBoard,
    /// A run is longer than every board and is not to be jointed.
    #[error("run {run} is longer than every board")]
    TooLong {
        /// Which.
        run: usize,
    },
    /// A run is longer than every board and no stud lies inside it.
    #[error("run {run} is longer than every board and has no stud for a joint")]
    NoStud {
        /// Which.
        run: usize,
    },
    /// The studs inside a run allow no joints that leave pieces between the least and the longest.
    #[error("run {run} cannot be pieced: studs, avoided stretches and the least piece leave no joints")]
    NoJoints {
        /// Which.
        run: usize,
    },
    /// Neighbouring courses cannot keep their stagger.
    #[error("the joints of run {run} and its neighbours cannot keep their stagger")]
    NoStagger {
        /// A run of the group of neighbours.
        run: usize,
    },
    /// The boards do not suffice.
    #[error("the boards do not suffice for all pieces")]
    NotEnough,
}
