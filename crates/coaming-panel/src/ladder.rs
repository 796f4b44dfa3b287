//! The meshes of one panel, each refined from the one before where the answers asked for err most.

use crate::error::PanelError;
use crate::geometry::curve::Curve;
use crate::mesh::Mesh;
use crate::mesh::edge::NONE;
use crate::mesh::refine::refine_marked;
use crate::model::prepare::Prepared;
use crate::result::indicator::worst;
use crate::system::level::Level;

/// Share of all squared indicators that the triangles to be divided hold together.
const SHARE: f64 = 0.7;
/// A level that there is serves for another answer where that errs by no more than this of all its squared indicators in what it would
/// have divided and the level did not.
const MISSED: f64 = 0.02;
/// A chord that cuts off more than this of the panel's area, times the tolerance, is divided.
const SEGMENT: f64 = 2e-3;

/// The meshes, from coarse to fine.
#[derive(Debug)]
pub(crate) struct Ladder {
    pub levels: Vec<Level>,
    /// Which triangles of each level but the last were to be divided.
    divided: Vec<Vec<bool>>,
    area: f64,
    /// When levels that there are serve for another answer than they were refined for.
    pub kept: Keep,
}

/// When levels that there are serve for another answer than they were refined for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Keep {
    /// Never.
    No,
    /// Where they divided what that errs by most.
    WhereTheyServe,
    /// Whatever errs most.
    Always,
}

impl Ladder {
    /// A ladder of one mesh.
    pub(crate) fn new(first: Level) -> Self {
        let area = (0..first.mesh.triangles.len()).map(|t| first.mesh.area(t)).sum();
        Self { levels: vec![first], divided: Vec::new(), area, kept: Keep::No }
    }

    /// Makes sure that the level after `level` is the one refined by these squared indicators; tells whether it may be.
    ///
    /// A level made for the same triangles is used again; others are dropped, so that no answer depends on what was solved before.
    pub(crate) fn climb(
        &mut self,
        level: usize,
        squares: &[f64],
        prepared: &Prepared,
        tolerance: f64,
        most: usize,
    ) -> Result<bool, PanelError> {
        if let Some(next) = self.levels.get(level + 1).filter(|_| self.kept == Keep::Always) {
            return Ok(next.mesh.triangles.len() <= most);
        }
        let Some(last) = self.levels.get(level) else { return Ok(false) };
        if last.mesh.triangles.len() >= most {
            return Ok(false);
        }
        let mut marked = worst(squares, SHARE);
        mark_arcs(&last.mesh, prepared, SEGMENT * tolerance * self.area, &mut marked);
        if let Some(next) = self.levels.get(level + 1).filter(|_| self.serves(level, squares, &marked)) {
            return Ok(next.mesh.triangles.len() <= most);
        }
        let finer = refine_marked(&last.mesh, &prepared.features, &marked);
        if finer.triangles.len() > most {
            return Ok(false);
        }
        let finer = match last.every_group {
            true => Level::in_plane(finer, prepared)?,
            false => Level::new(finer, prepared)?,
        };
        self.levels.truncate(level + 1);
        self.divided.truncate(level);
        self.levels.push(finer);
        self.divided.push(marked);
        Ok(true)
    }
}

impl Ladder {
    /// Whether the level after `level` serves an answer with these squared indicators, which would divide the marked triangles.
    fn serves(&self, level: usize, squares: &[f64], marked: &[bool]) -> bool {
        let Some(divided) = self.divided.get(level) else { return false };
        if self.kept == Keep::No {
            return divided == marked;
        }
        let missed =
            squares.iter().zip(marked).zip(divided).filter(|((_, marked), done)| **marked && !**done);
        missed.map(|((square, _), _)| square).sum::<f64>() <= MISSED * squares.iter().sum::<f64>()
    }
}

/// Marks the triangles at chords that cut too much off their arcs: no recovered field shows that.
fn mark_arcs(mesh: &Mesh, prepared: &Prepared, largest: f64, marked: &mut [bool]) {
    for edge in &mesh.edges {
        let cuts =
            edge.uses.iter().any(|along| match prepared.features[along.feature].curves.get(along.curve) {
                Some(Curve::Arc { radius, .. }) => {
                    let length = (along.to - along.from).abs();
                    length * length * length > 12.0 * radius * largest
                }
                _ => false,
            });
        if cuts {
            for t in edge.triangles.into_iter().filter(|&t| t != NONE) {
                marked[t] = true;
            }
        }
    }
}
