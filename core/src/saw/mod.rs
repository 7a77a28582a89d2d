//! Pieces to boards: cutting plans with bound and proof.
