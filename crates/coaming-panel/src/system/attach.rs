//! What is attached to the mesh: gasket, elastic and beam edges, latches, stops, springs and masses at vertices.

use crate::element::hermite::EdgeLine;
use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::mesh::Mesh;
use crate::mesh::edge::{EdgeUse, NONE};
use crate::model::prepare::{Prepared, Role};
use crate::model::support::Hold;

/// One edge of a gasket.
#[derive(Debug, Clone)]
pub(crate) struct GasketEdge {
    pub gasket: usize,
    pub ends: [usize; 2],
    pub line: EdgeLine,
    /// Distance along the path at both ends.
    pub from: f64,
    pub to: f64,
}

/// One edge of an elastic support; stiffness per length.
#[derive(Debug, Clone)]
pub(crate) struct SpringEdge {
    pub ends: [usize; 2],
    pub line: EdgeLine,
    pub length: f64,
    pub support: usize,
    pub deflection: f64,
    pub turning: f64,
}

/// One edge of a beam.
#[derive(Debug, Clone)]
pub(crate) struct BeamEdge {
    pub beam: usize,
    pub edge: usize,
    pub ends: [usize; 2],
    pub line: EdgeLine,
    pub length: f64,
}

/// A spring at a vertex.
#[derive(Debug, Clone)]
pub(crate) struct PointSpring {
    pub vertex: usize,
    pub support: usize,
    pub deflection: f64,
    pub turning: f64,
}

/// All that is attached.
#[derive(Debug, Clone, Default)]
pub(crate) struct Attachments {
    pub gaskets: Vec<GasketEdge>,
    pub springs: Vec<SpringEdge>,
    pub beams: Vec<BeamEdge>,
    pub point_springs: Vec<PointSpring>,
    /// Vertex of each latch, stop and mass.
    pub latches: Vec<usize>,
    pub stops: Vec<usize>,
    pub masses: Vec<usize>,
    /// Spread mass per area of every triangle; empty where there is none.
    pub spread: Vec<f64>,
}

impl Attachments {
    /// Spread mass per area of a triangle.
    pub(crate) fn spread_over(&self, triangle: usize) -> f64 {
        self.spread.get(triangle).copied().unwrap_or(0.0)
    }
}

impl GasketEdge {
    /// Length along the path.
    pub(crate) fn length(&self) -> f64 {
        (self.to - self.from).abs()
    }

    /// Distance along the path at a fraction of the edge.
    pub(crate) fn along(&self, fraction: f64) -> f64 {
        self.from + (self.to - self.from) * fraction
    }
}

/// Finds all that is attached; a line or point off the material is an error that names the place.
pub(crate) fn attach(mesh: &Mesh, prepared: &Prepared) -> Result<Attachments, PanelError> {
    check_features_lie_on_material(mesh, prepared)?;
    let mut found = Attachments::default();
    for (e, edge) in mesh.edges.iter().enumerate() {
        let [a, b] = edge.ends.map(|v| mesh.vertices[v]);
        let line = EdgeLine::new(a, b);
        for along in &edge.uses {
            let length = (along.to - along.from).abs();
            match prepared.roles[along.feature] {
                Role::Gasket(gasket) => {
                    found.gaskets.push(GasketEdge {
                        gasket,
                        ends: edge.ends,
                        line,
                        from: along.from,
                        to: along.to,
                    });
                }
                Role::Support(support) => {
                    let held = &prepared.panel.line_supports[support];
                    let (deflection, turning) = (elastic(held.deflection), elastic(held.slope_across));
                    if deflection > 0.0 || turning > 0.0 {
                        found.springs.push(SpringEdge {
                            ends: edge.ends,
                            line,
                            length,
                            support,
                            deflection,
                            turning,
                        });
                    }
                }
                Role::Beam(beam) => {
                    check_beam_layer(mesh, prepared, beam, e, along)?;
                    found.beams.push(BeamEdge { beam, edge: e, ends: edge.ends, line, length });
                }
                Role::Boundary(_) | Role::LayerBoundary | Role::Washer => {}
            }
        }
    }
    found.gaskets.sort_by(|p, q| p.gasket.cmp(&q.gasket).then(p.from.min(p.to).total_cmp(&q.from.min(q.to))));
    attach_points(mesh, prepared, &mut found)?;
    if !prepared.spread.is_empty() {
        let over = |t: usize| prepared.spread.iter().map(|mass| mass.over(&mesh.corners(t))).sum();
        found.spread = (0..mesh.triangles.len()).map(over).collect();
    }
    Ok(found)
}

fn elastic(hold: Hold) -> f64 {
    match hold {
        Hold::Elastic(stiffness) => stiffness,
        Hold::Free | Hold::Fixed => 0.0,
    }
}

fn attach_points(mesh: &Mesh, prepared: &Prepared, found: &mut Attachments) -> Result<(), PanelError> {
    let panel = &prepared.panel;
    for (&vertex, (name, at)) in mesh.marks.iter().zip(panel.marked_points()) {
        if vertex == usize::MAX {
            return Err(PanelError::NoMaterial { part: name, at });
        }
    }
    let mut marks = mesh.marks.iter().copied();
    for (i, support) in panel.point_supports.iter().enumerate() {
        let Some(vertex) = marks.next() else { break };
        let (deflection, turning) = (elastic(support.deflection), elastic(support.slopes));
        if deflection > 0.0 || turning > 0.0 {
            found.point_springs.push(PointSpring { vertex, support: i, deflection, turning });
        }
    }
    found.latches = marks.by_ref().take(panel.latches.len()).collect();
    found.stops = marks.by_ref().take(panel.stops.len()).collect();
    found.masses = marks.take(panel.masses.len()).collect();
    Ok(())
}

fn check_beam_layer(
    mesh: &Mesh,
    prepared: &Prepared,
    beam: usize,
    edge: usize,
    along: &EdgeUse,
) -> Result<(), PanelError> {
    let layer = prepared.panel.beams[beam].layer;
    let covered = mesh.edges[edge].triangles.iter().any(|&t| t != NONE && mesh.cover[t] >> layer & 1 == 1);
    if covered {
        return Ok(());
    }
    let at = prepared.features[along.feature].point(along.curve, 0.5 * (along.from + along.to));
    Err(PanelError::NoMaterial { part: format!("beam {beam}, attached to layer {layer},"), at })
}

/// Every feature must be followed by mesh edges over its whole length.
fn check_features_lie_on_material(mesh: &Mesh, prepared: &Prepared) -> Result<(), PanelError> {
    let mut covered: Vec<Vec<(f64, f64, usize)>> = vec![Vec::new(); prepared.features.len()];
    for along in mesh.edges.iter().flat_map(|e| &e.uses) {
        covered[along.feature].push((along.from.min(along.to), along.from.max(along.to), along.curve));
    }
    for (f, spans) in covered.iter_mut().enumerate() {
        let feature = &prepared.features[f];
        spans.sort_by(|a, b| a.0.total_cmp(&b.0));
        let whole = feature.starts.last().copied().unwrap_or(0.0);
        let slack = 1e-5 * mesh.size.max(whole);
        let mut reached = 0.0_f64;
        let mut gap: Option<f64> = None;
        for &(from, to, _) in spans.iter() {
            if from > reached + slack && gap.is_none() {
                gap = Some(0.5 * (reached + from));
            }
            reached = reached.max(to);
        }
        if reached < whole - slack && gap.is_none() {
            gap = Some(0.5 * (reached + whole));
        }
        if let Some(along) = gap {
            let curve = feature
                .starts
                .partition_point(|&s| s <= along)
                .saturating_sub(1)
                .min(feature.curves.len() - 1);
            let at: Point = feature.point(curve, along);
            return Err(PanelError::NoMaterial { part: feature.name.clone(), at });
        }
    }
    Ok(())
}
