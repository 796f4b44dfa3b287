//! Thermal and moisture mismatch: what grows, what it is held by, and how warm each layer gets.
