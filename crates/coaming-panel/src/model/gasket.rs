//! A gasket along a line: it pushes where it is compressed and never pulls.

use super::law::Law;
use super::line::Line;
use crate::error::{PanelError, finite, positive};

/// A gasket along a line, between the panel and its seat.
#[derive(Debug, Clone, PartialEq)]
pub struct Gasket {
    /// Where it runs.
    pub line: Line,
    /// Force per length against compression.
    pub law: Law,
    /// Height without load, m.
    pub free_height: f64,
    /// Distance from seat to panel where the panel has not deflected, m.
    pub closed_gap: f64,
    /// Extra gap along the path (distance along it m, extra gap m), joined by straight lines; constant past the ends. Empty: none.
    pub gap_error: Vec<(f64, f64)>,
}

impl Gasket {
    /// Extra gap at a distance along the path.
    pub(crate) fn error_at(&self, along: f64) -> f64 {
        let points = &self.gap_error;
        let after = points.partition_point(|p| p.0 < along);
        match (after.checked_sub(1).and_then(|i| points.get(i)), points.get(after)) {
            (Some(a), Some(b)) => a.1 + (b.1 - a.1) * ((along - a.0) / (b.0 - a.0)),
            (Some(only), None) | (None, Some(only)) => only.1,
            (None, None) => 0.0,
        }
    }

    /// Compression at a distance along the path where the panel has moved outward by `deflection`.
    pub(crate) fn compression(&self, along: f64, deflection: f64) -> f64 {
        self.free_height - self.closed_gap - self.error_at(along) - deflection
    }

    pub(crate) fn check(&self, name: &str) -> Result<(), PanelError> {
        positive(format!("{name}: free_height"), self.free_height)?;
        finite(format!("{name}: closed_gap"), self.closed_gap)?;
        for (i, &(along, error)) in self.gap_error.iter().enumerate() {
            finite(format!("{name}: gap_error {i}"), along)?;
            finite(format!("{name}: gap_error {i}"), error)?;
            let before = if i == 0 { f64::NEG_INFINITY } else { self.gap_error[i - 1].0 };
            crate::error::checked(
                format!("{name}: gap_error {i}, distance along the path"),
                along,
                "greater than the one before",
                |v| v > before,
            )?;
        }
        Ok(())
    }
}
