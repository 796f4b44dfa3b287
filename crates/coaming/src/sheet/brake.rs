//! The press brake as a record, and one bend as it asks for a brake.

use crate::prelude::*;

/// A press brake: what it can take.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Brake {
    /// Largest force of the ram.
    #[shown_in("kN")]
    #[possible(f64::MIN_POSITIVE..)]
    pub force_limit: Force,
    /// Length of the bed: the longest bend.
    #[possible(f64::MIN_POSITIVE..)]
    pub bed_length: Length,
    /// Clear distance between the two side columns.
    #[possible(f64::MIN_POSITIVE..)]
    pub distance_between_columns: Length,
    /// Depth of the throat, from the bend line back to the column.
    #[possible(0.0..)]
    pub throat_depth: Length,
    /// Daylight: open distance between ram and bed, without tools, ram up.
    #[possible(f64::MIN_POSITIVE..)]
    pub daylight: Length,
    /// Height of punch, die and their holders together.
    #[possible(0.0..)]
    pub tool_height: Length,
    /// Largest force for each length that the tools may bear; not checked if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub tool_load_limit: Option<ForcePerLength>,
    /// Die openings at hand, in any order; at least one.
    #[possible(f64::MIN_POSITIVE..)]
    pub die_openings: Vec<Length>,
}

/// One bend of a part, as a press brake sees it.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BrakeBend {
    /// Length of the bend, along the bend line.
    #[possible(f64::MIN_POSITIVE..)]
    pub bend_length: Length,
    /// Bend angle: the angle the sheet is turned through.
    #[possible(f64::MIN_POSITIVE..PI)]
    #[tested(f64::MIN_POSITIVE..=FRAC_PI_2)]
    #[also(included_angle, super::supplement)]
    pub bend_angle: Angle,
    /// The shorter of the two sides of the bend, outside to the virtual sharp.
    #[possible(f64::MIN_POSITIVE..)]
    pub flange: Length,
    /// Die opening to use; the most fitting one at hand if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub die_opening: Option<Length>,
    /// Width of the part along the bend line, past the ends of the bend too; the length of the bend if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub part_width: Option<Length>,
    /// How far the part reaches behind the bend line, into the throat; the flange goes behind if absent.
    #[possible(f64::MIN_POSITIVE..)]
    pub reach_behind: Option<Length>,
    /// Height of what is folded already and must pass between punch and die; a flat part if absent.
    #[possible(0.0..)]
    pub folded_height: Option<Length>,
}

/// Which limit of the brake is used most, or broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
#[non_exhaustive]
pub enum BrakeLimit {
    /// The length of the bed.
    BedLength,
    /// The force of the ram.
    Force,
    /// The force for each length that the tools bear.
    ToolLoad,
    /// The smallest flange that bridges the die.
    Flange,
    /// The depth of the throat.
    Throat,
    /// The daylight above the tools.
    Daylight,
    /// The die openings at hand: the one that is asked for is not among them.
    DieOpening,
}
