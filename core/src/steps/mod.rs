//! Ordered steps made from a penetration's or a board's own detail.
