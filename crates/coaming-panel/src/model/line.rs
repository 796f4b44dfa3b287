//! A line on the panel to which something is attached.

use crate::error::PanelError;
use crate::geometry::check::Loop;
use crate::geometry::curve::Curve;
use crate::geometry::path::Path;

/// A line on the panel. Edges are numbered from 0 in the order in which the outline was drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Line {
    /// The whole outline.
    Outline,
    /// One edge of the outline.
    OutlineEdge(usize),
    /// The whole edge of a hole.
    Hole(usize),
    /// One edge of a hole.
    HoleEdge {
        /// Index of the hole.
        hole: usize,
        /// Index of the edge.
        edge: usize,
    },
    /// Any path on the panel.
    Path(Path),
}

impl Line {
    /// The curves of the line on a panel with this outline and these holes.
    pub(crate) fn curves(
        &self,
        part: &str,
        outline: &Loop,
        holes: &[Loop],
    ) -> Result<Vec<Curve>, PanelError> {
        let missing = |what: &str| PanelError::Missing {
            name: part.into(),
            reason: format!("there is no such {what}"),
        };
        let edge_of = |boundary: &Loop, edge: usize| {
            boundary.curves.get(edge).map(|&c| vec![c]).ok_or_else(|| missing("edge"))
        };
        match self {
            Self::Outline => Ok(outline.curves.clone()),
            Self::OutlineEdge(edge) => edge_of(outline, *edge),
            Self::Hole(hole) => holes.get(*hole).map(|h| h.curves.clone()).ok_or_else(|| missing("hole")),
            Self::HoleEdge { hole, edge } => edge_of(holes.get(*hole).ok_or_else(|| missing("hole"))?, *edge),
            Self::Path(path) => path.curves(part),
        }
    }
}
