//! Materials to order.
