//! Rule sets: value, unit, source, edition, edited by whom and why.
