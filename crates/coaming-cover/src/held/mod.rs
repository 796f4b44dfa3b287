//! The cover as the panel solver takes it: plain metres in the document's own coordinates, z outward.
//!
//! How firmly window, frame and stiffeners join in is not known where they are merely screwed or glued in pieces. So the
//! lid is solved at both limits: the sheet alone with its cut-outs open, which is softer than any real lid, and every
//! layer as one piece with the sheet, which is stiffer. Where only the grade of a gasket is known, each is solved on the
//! softest and on the firmest gasket of that grade.

mod bowed;
mod even;
mod found;
mod gasket;
mod growth;
mod kept;
mod large;
mod lid;
mod lids;
mod lines;
mod loads;
mod masses;
mod moments;
mod outline;
mod pane;
mod places;
mod plates;
mod refusal;
mod setup;
mod solutions;
mod stacking;
mod tilt;
mod unseen;

pub(crate) use bowed::{Grip, pane_bows, sheet_bows};
pub(crate) use even::{even_about, latches_apart};
pub(crate) use found::{Found, Place};
pub(crate) use growth::{Grows, growing};
pub(crate) use large::{Stretched, roughly_stretched, stretched};
pub(crate) use lid::skin;
pub(crate) use lids::Lids;
pub(crate) use lines::Lines;
pub(crate) use loads::{lean, wind};
pub(crate) use pane::{
    Rest, centre, pane, pane_mode, pane_on_first_mesh, pane_roughly_stretched, pane_stretched, pane_under,
    places, pressed, span_size,
};
pub(crate) use places::{beside_cut_outs, overlap, reach, room_for};
pub(crate) use setup::{Firmness, Joined, Setup};
pub(crate) use solutions::{
    Solutions, find_all, first_mode, on_first_mesh, rebound, stress_on_first_mesh, under,
};
pub(crate) use tilt::{Along, tilted};
pub(crate) use unseen::FOOT;

use coaming::prelude::*;

/// The panel solver as a row names it: by one word, like a calculation, with the theory that it follows.
pub(crate) const PANEL_SOLVER: (&str, &[Source]) = (
    "panel_solver",
    &[Source {
        title: "Batoz, Bathe and Ho, A study of three-node triangular plate bending elements",
        edition: "Int. J. Numer. Meth. Eng. 15 (1980)",
        locator: "discrete-Kirchhoff triangle, on a mesh that is refined until the estimated error is small enough",
        standing: Standing::Computed,
    }],
);

/// The same where the deflection stretches the panel.
pub(crate) const LARGE_DEFLECTION: (&str, &[Source]) = (
    "panel_solver_large",
    &[Source {
        title: "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed. (1959)",
        locator: "arts. 96 to 101, on the mesh of the panel solver",
        standing: Standing::Computed,
    }],
);
