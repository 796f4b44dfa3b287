//! Supports along lines and at points.

use super::line::Line;
use crate::error::{PanelError, not_negative, positive};
use crate::geometry::point::Point;

/// How one freedom is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hold {
    /// Not at all.
    Free,
    /// Rigidly.
    Fixed,
    /// By a spring: N/m or N·m/rad at a point, per metre of length along a line.
    Elastic(f64),
}

impl Hold {
    pub(crate) fn check(self, name: String) -> Result<(), PanelError> {
        match self {
            Self::Elastic(stiffness) => positive(name, stiffness).map(|_| ()),
            Self::Free | Self::Fixed => Ok(()),
        }
    }
}

/// A support along a line.
#[derive(Debug, Clone, PartialEq)]
pub struct LineSupport {
    /// Where.
    pub line: Line,
    /// How the deflection is held. `Fixed` holds the slope along the line too, as a knife edge does.
    pub deflection: Hold,
    /// How the slope across the line is held.
    pub slope_across: Hold,
    /// Whether displacements in the plane along the line are held (in every layer).
    pub in_plane_along: bool,
    /// Whether displacements in the plane across the line are held (in every layer).
    pub in_plane_across: bool,
    /// Whether the line may move across itself in the plane only as one, straight and parallel to where it was, as an edge that a stiff
    /// frame bar guides (straight lines only; in every layer). What is held across is not also kept straight.
    pub in_plane_straight: bool,
}

impl LineSupport {
    fn new(line: Line, deflection: Hold, slope_across: Hold) -> Self {
        Self {
            line,
            deflection,
            slope_across,
            in_plane_along: false,
            in_plane_across: false,
            in_plane_straight: false,
        }
    }

    /// Held at its height, free to turn: a simple support.
    pub fn supported(line: Line) -> Self {
        Self::new(line, Hold::Fixed, Hold::Free)
    }

    /// Held at its height and against turning.
    pub fn clamped(line: Line) -> Self {
        Self::new(line, Hold::Fixed, Hold::Fixed)
    }

    /// Free to move, held against turning: a line of symmetry.
    pub fn guided(line: Line) -> Self {
        Self::new(line, Hold::Free, Hold::Fixed)
    }

    /// Held by springs, per metre of length.
    pub fn elastic(line: Line, deflection_stiffness: f64, turning_stiffness: f64) -> Self {
        let hold = |k: f64| if k == 0.0 { Hold::Free } else { Hold::Elastic(k) };
        Self::new(line, hold(deflection_stiffness), hold(turning_stiffness))
    }

    /// The same, held in the plane as well.
    #[must_use]
    pub fn held_in_plane(self) -> Self {
        Self { in_plane_along: true, in_plane_across: true, ..self }
    }

    /// The same, straight in the plane but free to move across itself.
    #[must_use]
    pub fn straight_in_plane(self) -> Self {
        Self { in_plane_straight: true, ..self }
    }
}

/// A support at a point.
#[derive(Debug, Clone, PartialEq)]
pub struct PointSupport {
    /// Where.
    pub at: Point,
    /// Radius of the washer under which all points are held; 0 for a bare point. A spring acts at the centre.
    pub washer_radius: f64,
    /// How the deflection is held.
    pub deflection: Hold,
    /// How both slopes are held.
    pub slopes: Hold,
    /// Whether displacements in the plane are held (in every layer).
    pub in_plane: bool,
}

impl PointSupport {
    /// A point held at its height.
    pub fn held(at: Point) -> Self {
        Self { at, washer_radius: 0.0, deflection: Hold::Fixed, slopes: Hold::Free, in_plane: false }
    }

    /// A spring at a point, N/m.
    pub fn spring(at: Point, stiffness: f64) -> Self {
        Self {
            at,
            washer_radius: 0.0,
            deflection: Hold::Elastic(stiffness),
            slopes: Hold::Free,
            in_plane: false,
        }
    }

    /// Clamped flat under a washer.
    pub fn washer(at: Point, radius: f64) -> Self {
        Self { at, washer_radius: radius, deflection: Hold::Fixed, slopes: Hold::Fixed, in_plane: false }
    }

    /// The same, held in the plane as well.
    #[must_use]
    pub fn held_in_plane(self) -> Self {
        Self { in_plane: true, ..self }
    }

    pub(crate) fn check(&self, name: &str) -> Result<(), PanelError> {
        not_negative(format!("{name}: washer_radius"), self.washer_radius)?;
        self.deflection.check(format!("{name}: deflection stiffness"))?;
        self.slopes.check(format!("{name}: turning stiffness"))
    }
}
