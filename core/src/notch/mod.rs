//! The board in hand: cut, offset, gap interval and legs.
