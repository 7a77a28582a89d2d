use super::DeviceId;

/// A moment of the hybrid logical clock: totally ordered, later on every device than anything its maker had seen that was
/// not made by a clock more than a day ahead. What was written over what is told by the writes themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Milliseconds since 1970 UTC.
    pub ms: i64,
    /// Counts answers within, or behind, the same millisecond.
    pub counter: i64,
    /// Breaks ties.
    pub device: DeviceId,
}

/// The caller's clock: the store has none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Now {
    /// Milliseconds since 1970 UTC.
    pub ms: i64,
    /// Minutes that local time is ahead of UTC.
    pub utc_offset_minutes: i32,
}
