//! Fasteners: threads, heads, holes, tightening and screw lengths.
