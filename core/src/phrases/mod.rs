//! Every text that a person reads or hears, in English and Spanish.
