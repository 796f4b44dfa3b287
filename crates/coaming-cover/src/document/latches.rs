//! The latches.

use super::outline::Point;
use coaming::prelude::*;

/// How a latch or its keeper is fastened to its sheet.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Fixing {
    /// Name of the layer that it is fastened to; absent where that is no layer of the cover.
    pub layer: Option<String>,
    /// Name of the material that it is fastened to, where that is no layer of the cover.
    pub material: Option<String>,
    /// Thickness of what it is fastened to, where that is no layer of the cover.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Option<Length>,
    /// How many screws, rivets or nuts hold it.
    #[possible(1.0..)]
    pub fasteners: Option<u32>,
    /// Diameter of their heads or flanges on the sheet.
    #[possible(f64::MIN_POSITIVE..)]
    pub head_diameter: Option<Length>,
    /// Force at which one of them pulls out of this sheet: the maker's figure, or a test's.
    #[possible(f64::MIN_POSITIVE..)]
    pub pull_out: Option<Force>,
}

/// The latches, all alike.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Latches {
    /// How many there are.
    #[possible(1.0..)]
    pub count: Option<u32>,
    /// Where they draw.
    pub positions: Option<Vec<Point>>,
    /// How far a latch draws from touching to closed.
    #[possible(f64::MIN_POSITIVE..)]
    pub travel: Option<Length>,
    /// How far its grip can be adjusted either way.
    #[possible(0.0..)]
    pub adjustment: Option<Length>,
    /// Force at the hook over force at the handle.
    #[possible(f64::MIN_POSITIVE..)]
    pub lever_ratio: Option<f64>,
    /// Share of the handle's work that reaches the hook.
    #[possible(f64::MIN_POSITIVE..=1.0)]
    pub efficiency: Option<f64>,
    /// How many one hand works at once.
    #[possible(1.0..)]
    pub worked_at_once: Option<u32>,
    /// Distance between lid and frame beyond the gasket that the latch must take up.
    #[possible(0.0..)]
    pub stand_off: Option<Length>,
    /// Bow of the lid that the latch must take up.
    #[possible(0.0..)]
    pub bow: Option<Length>,
    /// Deviation of the mounting that the latch must take up.
    #[possible(0.0..)]
    pub mounting_tolerance: Option<Length>,
    /// Clearance that it needs to let go.
    #[possible(0.0..)]
    pub release_clearance: Option<Length>,
    /// The maker's working load.
    #[possible(f64::MIN_POSITIVE..)]
    pub working_load: Option<Force>,
    /// How each latch is fastened to the cover.
    pub fixing: Option<Fixing>,
    /// How each keeper is fastened to the surround.
    pub keeper_fixing: Option<Fixing>,
    /// Mass of one latch with its keeper.
    #[possible(0.0..)]
    pub mass: Option<Mass>,
}
