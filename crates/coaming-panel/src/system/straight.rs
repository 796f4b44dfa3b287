//! Lines that may move across themselves in the plane only as one: all their nodes share one freedom.

use super::freedoms::Freedoms;
use crate::error::PanelError;
use crate::geometry::point::Point;
use crate::mesh::Mesh;

/// Two directions closer than this are one, or at right angles (rad).
const SAME: f64 = 1e-6;

/// One line of one group.
#[derive(Debug, Clone)]
struct StraightLine {
    part: String,
    key: [usize; 3],
    normal: Point,
    nodes: Vec<(usize, Point)>,
}

/// All lines that stay straight.
#[derive(Debug, Clone, Default)]
pub(crate) struct StraightLines {
    lines: Vec<StraightLine>,
    /// Freedoms that follow another: (follower, leader).
    pub followers: Vec<(usize, usize)>,
}

impl StraightLines {
    /// Adds a node, its pair and place, to the line `key` (support, curve, group) with this normal.
    pub(crate) fn add(&mut self, key: [usize; 3], normal: Point, pair: usize, at: Point) {
        let at_line = match self.lines.iter().position(|l| l.key == key) {
            Some(known) => known,
            None => {
                let part = format!("line support {}, straight in the plane,", key[0]);
                self.lines.push(StraightLine { part, key, normal, nodes: Vec::new() });
                self.lines.len() - 1
            }
        };
        let nodes = &mut self.lines[at_line].nodes;
        if nodes.iter().all(|(known, _)| *known != pair) {
            nodes.push((pair, at));
        }
    }

    /// Whether a pair lies on a straight line.
    pub(crate) fn holds(&self, pair: usize) -> bool {
        self.lines.iter().any(|l| l.nodes.iter().any(|(p, _)| *p == pair))
    }

    /// Whether a line keeps this group from turning in the plane.
    pub(crate) fn guides(&self, group: usize) -> bool {
        self.lines.iter().any(|l| l.key[2] == group && l.nodes.len() > 1)
    }
}

/// Gives the nodes of every line one freedom across it, once all that is held is known. A line of which a node is held across is held
/// as a whole.
pub(crate) fn settle(freedoms: &mut Freedoms) -> Result<(), PanelError> {
    let lines = freedoms.straight.lines.clone();
    let along = |a: Point, b: Point| a.cross(b).abs() <= SAME;
    let mut leaders: Vec<Option<usize>> = vec![None; lines.len()];
    let mut is_held: Vec<bool> = (lines.iter())
        .map(|l| {
            l.nodes
                .iter()
                .any(|(pair, _)| freedoms.held_directions(*pair).iter().any(|&d| along(d, l.normal)))
        })
        .collect();
    for (line, held) in lines.iter().zip(&mut is_held) {
        let fixed = |pair: usize| freedoms.pair(pair).iter().all(|&d| freedoms.held[d]);
        *held |= line.nodes.iter().any(|(pair, _)| fixed(*pair));
    }
    let mut pairs: Vec<(usize, Point)> = lines.iter().flat_map(|l| l.nodes.iter().copied()).collect();
    pairs.sort_by_key(|(pair, _)| *pair);
    pairs.dedup_by_key(|(pair, _)| *pair);
    for (pair, at) in pairs {
        let here: Vec<usize> =
            (0..lines.len()).filter(|&l| lines[l].nodes.iter().any(|(p, _)| *p == pair)).collect();
        let other: Vec<Point> = (freedoms.held_directions(pair).iter().copied())
            .filter(|&d| here.iter().all(|&l| !along(d, lines[l].normal)))
            .collect();
        let Some(&first) = here.first() else { continue };
        if freedoms.pair(pair).iter().all(|&d| freedoms.held[d]) {
            continue;
        }
        let normal = lines[first].normal;
        let square = |d: Point| d.dot(normal).abs() <= SAME;
        let crossing = here.get(1).map(|&l| lines[l].normal);
        if here.len() > 2 || !crossing.into_iter().chain(other.iter().copied()).all(square) {
            return Err(PanelError::Contradiction {
                part: lines[first].part.clone(),
                reason: "lines that stay straight meet others at right angles only",
                at,
            });
        }
        // The second axis is the first turned left: of two lines, the one whose normal is to the left of the other's comes second.
        let second = here.get(1).copied();
        let (first, second) = match second {
            Some(s) if normal.left().dot(lines[s].normal) < 0.0 => (s, Some(first)),
            _ => (first, second),
        };
        freedoms.axes[pair] = lines[first].normal;
        let numbers = freedoms.pair(pair);
        freedoms.held[numbers[0]] = false;
        freedoms.held[numbers[1]] = second.is_none() && !other.is_empty();
        for (line, number) in std::iter::once(first).chain(second).zip(numbers) {
            if is_held[line] {
                freedoms.held[number] = true;
            } else if let Some(leader) = leaders[line] {
                freedoms.target[number] = leader;
                freedoms.used[number] = false;
                freedoms.straight.followers.push((number, leader));
            } else {
                leaders[line] = Some(number);
            }
        }
    }
    Ok(())
}

/// Adds the nodes of one mesh edge to a straight line.
pub(crate) fn keep_straight(
    freedoms: &mut Freedoms,
    mesh: &Mesh,
    key: [usize; 3],
    normal: Point,
    edge: usize,
) {
    let [a, b] = mesh.edges[edge].ends;
    let (from, to) = (mesh.vertices[a], mesh.vertices[b]);
    let group = key[2];
    let nodes = [
        (freedoms.at_vertex(group, a), from),
        (freedoms.at_vertex(group, b), to),
        (freedoms.at_edge(group, edge), (from + to) * 0.5),
    ];
    for (pair, at) in nodes {
        if let Some(pair) = pair.filter(|&p| freedoms.is_used(p)) {
            freedoms.straight.add(key, normal, pair, at);
        }
    }
}
