//! Tests of the panel solver against independent theory, one file per subject.
// Tests compute their expectations with the platform's functions and index freely.
#![allow(clippy::disallowed_methods)]

mod bad_input;
mod buckling;
mod common;
mod cover;
mod estimates;
mod first_mesh;
mod flange;
mod gasket;
mod growth;
mod in_plane;
mod known;
mod large;
mod layers;
mod modes;
mod patch;
mod plates;
mod progress;
mod properties;
mod reference;
mod rivals;
mod skew;
mod spread_mass;
mod update;
