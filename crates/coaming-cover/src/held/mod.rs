//! The cover as the panel solver takes it: plain metres in the document's own coordinates, z outward.
//!
//! How firmly window, frame and stiffeners join in is not known where they are merely screwed or glued in pieces. So the
//! lid is solved at both limits: the sheet alone with its cut-outs open, which is softer than any real lid, and every
//! layer as one piece with the sheet, which is stiffer.

mod lid;
mod outline;
mod refusal;

pub(crate) use lid::{Joined, Latched, lid};
pub(crate) use refusal::refusal;
