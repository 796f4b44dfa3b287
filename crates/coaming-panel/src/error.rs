//! Every way in which the solver can decline to give a number.

use crate::geometry::point::Point;
use std::fmt;

/// A motion that nothing resists, in words and numbers.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum FreeMotion {
    /// The whole panel moves along its normal.
    Lift,
    /// The panel turns about a line through `through` along `direction`.
    Turn {
        /// A point of the axis.
        through: Point,
        /// Unit vector along the axis.
        direction: Point,
    },
    /// The panel, or a layer of it, slides in its plane along `direction`, where what pulls it so is not balanced.
    Slide {
        /// Unit vector.
        direction: Point,
    },
    /// The panel, or a layer of it, turns in its plane about a point, where what turns it so is not balanced.
    TurnInPlane {
        /// The point.
        about: Point,
    },
    /// A point of the sheet moves though the panel as a whole does not.
    Local {
        /// Where.
        at: Point,
    },
}

impl fmt::Display for FreeMotion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Lift => write!(f, "it moves freely along its normal"),
            Self::Turn { through, direction } => {
                write!(f, "it turns freely about the line through {through} along {direction}")
            }
            Self::Slide { direction } => write!(f, "it slides freely in its plane along {direction}"),
            Self::TurnInPlane { about } => write!(f, "it turns freely in its plane about {about}"),
            Self::Local { at } => write!(f, "it moves freely near {at}"),
        }
    }
}

/// Why no answer can be given. Places are in the caller's coordinates.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PanelError {
    /// A number is not possible for what it stands for.
    #[error("{name} is {value}; accepted is {accepted}")]
    Impossible {
        /// Which input.
        name: String,
        /// The value given.
        value: f64,
        /// What is accepted.
        accepted: &'static str,
    },
    /// A list that must not be empty is empty, or an index points past the end of a list.
    #[error("{name}: {reason}")]
    Missing {
        /// Which input.
        name: String,
        /// What is missing.
        reason: String,
    },
    /// More than is accepted, lest a solve take hours.
    #[error("{name}: {found}; accepted are {accepted} at most")]
    TooLarge {
        /// Which input.
        name: String,
        /// How many there are.
        found: usize,
        /// How many are accepted.
        accepted: usize,
    },
    /// Two points that follow each other are the same.
    #[error("{part}: two points that follow each other coincide at {at}")]
    DuplicatePoint {
        /// Which outline or path.
        part: String,
        /// Where.
        at: Point,
    },
    /// The three points of an arc lie on a line.
    #[error("{part}: the three points of the arc near {at} lie on a line; give a straight segment")]
    StraightArc {
        /// Which outline or path.
        part: String,
        /// Where.
        at: Point,
    },
    /// Two boundaries cross, or one crosses itself.
    #[error("{part} crosses {other} at {at}")]
    Crossing {
        /// Which outline or path.
        part: String,
        /// The other, or "itself".
        other: String,
        /// Where.
        at: Point,
    },
    /// Two boundaries touch, or come closer than can be meshed.
    #[error("{part} touches {other} at {at}; keep them apart by more than {least} m, or join them")]
    Touching {
        /// Which outline or path.
        part: String,
        /// The other, or "itself".
        other: String,
        /// Where.
        at: Point,
        /// The smallest distance accepted.
        least: f64,
    },
    /// A part lies off the panel.
    #[error("{part} lies outside {of} at {at}")]
    Outside {
        /// Which part.
        part: String,
        /// What it must lie in.
        of: String,
        /// Where.
        at: Point,
    },
    /// A corner too sharp or a width too small to mesh.
    #[error("{part}: {reason} at {at}")]
    Sliver {
        /// Which outline.
        part: String,
        /// Where.
        at: Point,
        /// What is too thin.
        reason: &'static str,
    },
    /// Two demands on the same place contradict each other.
    #[error("{part}: {reason} at {at}")]
    Contradiction {
        /// Which part.
        part: String,
        /// What contradicts.
        reason: &'static str,
        /// Where.
        at: Point,
    },
    /// Something is attached where no layer is.
    #[error("{part} has no material under it at {at}")]
    NoMaterial {
        /// Which part.
        part: String,
        /// Where.
        at: Point,
    },
    /// Two layers claim the same space.
    #[error("layers {lower} and {upper} overlap through the thickness at {at}")]
    LayersOverlap {
        /// Index of one layer.
        lower: usize,
        /// Index of the other.
        upper: usize,
        /// Where.
        at: Point,
    },
    /// A compression law whose force falls as the compression grows.
    #[error("{part}: the force falls at a compression of {compression} m; it must grow or stay")]
    LawFalls {
        /// Which law.
        part: String,
        /// Where in the law.
        compression: f64,
    },
    /// The mesh could not be made.
    #[error("the outline could not be meshed: {reason} near {at}")]
    NotMeshed {
        /// What went wrong.
        reason: &'static str,
        /// Where.
        at: Point,
    },
    /// Too few supports.
    #[error("the panel is a mechanism: {motion}")]
    Mechanism {
        /// The motion that nothing resists.
        motion: FreeMotion,
    },
    /// All contact is lost and the loads carry the panel away.
    #[error("all contact is lost: {motion}")]
    ContactLost {
        /// The motion that nothing resists.
        motion: FreeMotion,
    },
    /// The iteration did not converge.
    #[error(
        "no equilibrium found after {steps} steps; the last out-of-balance force is {residual} of the applied"
    )]
    NotConverged {
        /// Steps taken.
        steps: usize,
        /// Last residual over the reference force.
        residual: f64,
    },
    /// A panel that was to take the place of another differs from it by more than numbers.
    #[error("{part}: more than numbers differs from the panel that was meshed; make a new solver")]
    OtherShape {
        /// The first part that differs.
        part: &'static str,
    },
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
    /// A number that is not finite arose.
    #[error("{name} is not finite")]
    NotFinite {
        /// Which result.
        name: &'static str,
    },
}

/// Accepts a finite number that `accept` approves of.
pub(crate) fn checked(
    name: impl Into<String>,
    value: f64,
    accepted: &'static str,
    accept: impl Fn(f64) -> bool,
) -> Result<f64, PanelError> {
    if value.is_finite() && accept(value) {
        Ok(value)
    } else {
        Err(PanelError::Impossible { name: name.into(), value, accepted })
    }
}

/// Accepts any finite number.
pub(crate) fn finite(name: impl Into<String>, value: f64) -> Result<f64, PanelError> {
    checked(name, value, "a finite number", |_| true)
}

/// Accepts a finite number above zero.
pub(crate) fn positive(name: impl Into<String>, value: f64) -> Result<f64, PanelError> {
    checked(name, value, "greater than 0", |v| v > 0.0)
}

/// Accepts a finite number of zero or more.
pub(crate) fn not_negative(name: impl Into<String>, value: f64) -> Result<f64, PanelError> {
    checked(name, value, "0 or more", |v| v >= 0.0)
}
