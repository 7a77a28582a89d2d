use super::{Fault, FigureField, Node, Reply};

/// A question: the shape of its request and of its answer, and how it is answered.
pub struct FigureQuestion {
    /// The name by which it is asked.
    pub name: &'static str,
    /// The fields of its request in the order in which they are checked.
    pub(super) request: &'static [FigureField],
    /// The fields of its answer, without the warnings.
    pub(super) reply: &'static [FigureField],
    /// A request that shows it at work.
    pub example: &'static str,
    /// The key of the phrase that says what it answers and how it is read where more than one reading is possible.
    pub help: &'static str,
    /// The answer to a request whose fields are known and complete.
    pub(super) answer: fn(&Node<'_>) -> Result<Reply, Fault>,
}
