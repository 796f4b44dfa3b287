//! What keeps the closed cover in its place along its plane.

use super::outline::Point;
use coaming::prelude::*;

/// The directions along which a locator holds the cover.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum LocatorDirection {
    /// Along x, to both sides.
    AlongX,
    /// Along y, to both sides.
    AlongY,
    /// Along x and along y, as a pin in a hole.
    EitherWay,
}

/// A pin, a ledge, the shoulder of a stop or a latch's hook that keeps the closed cover from sliding on its seal.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Locator {
    /// Its name.
    pub name: String,
    /// Where it bears on the cover.
    pub at: Option<Point>,
    /// Along which directions it holds.
    pub direction: Option<LocatorDirection>,
    /// The force along the cover's plane that it bears: its maker's figure, or a test's.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
}
