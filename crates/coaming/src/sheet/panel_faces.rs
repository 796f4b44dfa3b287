//! Kernel: a flat outline parted into faces by its bends, and where each face goes when they are bent.

use crate::math;

/// A point on the flat.
pub(super) type Flat = [f64; 2];
/// A point or direction in space.
pub(super) type Space = [f64; 3];

/// A bend on the flat.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    /// Middle of the bend line.
    pub middle: Flat,
    /// Unit direction along the line.
    pub along: Flat,
    /// Half of the bend allowance: what the bend takes on each side of its line.
    pub half: f64,
    /// Bend angle.
    pub angle: f64,
    /// Radius of the good face within the bend.
    pub radius: f64,
    /// 1 where the bend goes up, towards the good face; −1 where it goes down.
    pub sign: f64,
}

impl Line {
    fn across(&self) -> Flat {
        let [x, y] = self.along;
        [-y, x]
    }

    /// Distance of a point from the line, and its place along it.
    fn coordinates(&self, [x, y]: Flat) -> (f64, f64) {
        let ([mx, my], [ax, ay], [nx, ny]) = (self.middle, self.along, self.across());
        ((x - mx) * nx + (y - my) * ny, (x - mx) * ax + (y - my) * ay)
    }
}

/// What an edge of a face is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Edge {
    /// Cut.
    Outline,
    /// Where the bend of this number begins; true on the side that its line has to its left.
    Bend(usize, bool),
}

/// A closed line of corners, each with what its edge to the next one is.
#[derive(Debug, Clone)]
pub(super) struct Ring {
    pub corners: Vec<(Flat, Edge)>,
}

/// Why an outline cannot be parted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fault {
    /// The middle of the bend line lies on no face, or the bend does not fit on it.
    NoFace,
    /// The bend runs into another one.
    IntoBend,
    /// The bend does not run straight from edge to edge.
    NotAcross,
}

fn cross([ax, ay]: Flat, [bx, by]: Flat, [cx, cy]: Flat) -> f64 {
    (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
}

impl Ring {
    /// Each edge: its two ends and what it is.
    pub(super) fn edges(&self) -> impl Iterator<Item = (Flat, Flat, Edge)> + '_ {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(next).map(|((from, edge), (to, _))| (*from, *to, *edge))
    }

    /// Area, positive where the corners run against the clock.
    pub(super) fn area(&self) -> f64 {
        0.5 * self.edges().map(|([ax, ay], [bx, by], _)| ax * by - bx * ay).sum::<f64>()
    }

    /// Length of the line.
    pub(super) fn length(&self) -> f64 {
        self.edges().map(|([ax, ay], [bx, by], _)| math::hypot(bx - ax, by - ay)).sum()
    }

    /// True where the point lies within.
    pub(super) fn holds(&self, point: Flat) -> bool {
        let [x, y] = point;
        let mut inside = false;
        for ([ax, ay], [bx, by], _) in self.edges() {
            if (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax) {
                inside = !inside;
            }
        }
        inside
    }

    /// Distance of a point from the line, and what the nearest edge is.
    pub(super) fn nearest(&self, [x, y]: Flat) -> (f64, Edge) {
        self.edges()
            .map(|([ax, ay], [bx, by], edge)| {
                let (dx, dy) = (bx - ax, by - ay);
                let square = dx * dx + dy * dy;
                let s = if square > 0.0 {
                    (((x - ax) * dx + (y - ay) * dy) / square).clamp(0.0, 1.0)
                } else {
                    0.0
                };
                (math::hypot(x - ax - s * dx, y - ay - s * dy), edge)
            })
            .fold((f64::INFINITY, Edge::Outline), |best, here| if here.0 < best.0 { here } else { best })
    }

    /// The places of two edges that cross each other, if any do.
    pub(super) fn crossing(&self) -> Option<(usize, usize)> {
        let edges: Vec<(Flat, Flat, Edge)> = self.edges().collect();
        for (i, (a, b, _)) in edges.iter().enumerate() {
            for (j, (c, d, _)) in edges.iter().enumerate().skip(i + 2) {
                if i == 0 && j + 1 == edges.len() {
                    continue;
                }
                let (u, v) = (cross(*a, *b, *c), cross(*a, *b, *d));
                let (s, t) = (cross(*c, *d, *a), cross(*c, *d, *b));
                if (u > 0.0) != (v > 0.0) && (s > 0.0) != (t > 0.0) {
                    return Some((i, j));
                }
            }
        }
        None
    }

    /// Parts the ring along the line at a distance from a bend's own, where the middle lies within: the part to the left
    /// of the line, then the one to its right. None where the middle lies outside.
    fn parted(
        &self,
        line: &Line,
        distance: f64,
        label: impl Fn(bool) -> Edge,
    ) -> Result<Option<(Self, Self)>, Fault> {
        // Crossings: place of the edge, place along the line, point, and whether the edge goes to the left.
        let mut crossings: Vec<(usize, f64, Flat, bool)> = Vec::new();
        for (place, (from, to, _)) in self.edges().enumerate() {
            let ((f, u), (g, v)) = (line.coordinates(from), line.coordinates(to));
            let (f, g) = (f - distance, g - distance);
            if (f >= 0.0) != (g >= 0.0) {
                let s = f / (f - g);
                let ([ax, ay], [bx, by]) = (from, to);
                crossings.push((place, u + s * (v - u), [ax + s * (bx - ax), ay + s * (by - ay)], g >= 0.0));
            }
        }
        let ahead = crossings.iter().filter(|crossing| crossing.1 > 0.0);
        if ahead.clone().count() % 2 == 0 {
            return Ok(None);
        }
        let end = ahead.min_by(|a, b| a.1.total_cmp(&b.1));
        let start = crossings.iter().filter(|crossing| crossing.1 <= 0.0).max_by(|a, b| a.1.total_cmp(&b.1));
        let (Some(start), Some(end)) = (start, end) else { return Ok(None) };
        let kind = |place: usize| self.corners.get(place).map(|corner| corner.1);
        if kind(start.0) != Some(Edge::Outline) || kind(end.0) != Some(Edge::Outline) {
            return Err(Fault::IntoBend);
        }
        // From one crossing along the ring to the other, and back along the line.
        let way = |from: &(usize, f64, Flat, bool), to: &(usize, f64, Flat, bool)| {
            let mut corners = vec![(from.2, Edge::Outline)];
            let count = self.corners.len();
            let steps = (to.0 + count - from.0) % count;
            let steps = if steps == 0 { count } else { steps };
            corners.extend(self.corners.iter().cycle().skip(from.0 + 1).take(steps).copied());
            corners.push((to.2, label(from.3)));
            Self { corners }
        };
        let (one, other) = (way(start, end), way(end, start));
        Ok(Some(if start.3 { (one, other) } else { (other, one) }))
    }

    /// Parts the ring by a bend: the faces to its left and to its right. None where the bend lies on another ring.
    fn bent(&self, number: usize, line: &Line) -> Result<Option<(Self, Self)>, Fault> {
        let label = |left: bool| Edge::Bend(number, left);
        let Some((left, rest)) = self.parted(line, line.half, label)? else { return Ok(None) };
        let Some((strip, right)) = rest.parted(line, -line.half, label)? else { return Ok(None) };
        let room = 1e-9 * line.half;
        let within = |(corner, _): &(Flat, Edge)| line.coordinates(*corner).0.abs() <= line.half + room;
        if strip.corners.iter().all(within) { Ok(Some((left, right))) } else { Err(Fault::NotAcross) }
    }
}

/// Parts an outline by all of its bends; the number of the bend that does not fit, with the reason.
pub(super) fn faces(outline: Ring, lines: &[Line]) -> Result<Vec<Ring>, (usize, Fault)> {
    let mut faces = vec![outline];
    for (number, line) in lines.iter().enumerate() {
        let mut found = None;
        for (place, ring) in faces.iter().enumerate() {
            if let Some(parts) = ring.bent(number, line).map_err(|fault| (number, fault))? {
                found = Some((place, parts));
                break;
            }
        }
        let Some((place, (left, right))) = found else { return Err((number, Fault::NoFace)) };
        if let Some(face) = faces.get_mut(place) {
            *face = left;
        }
        faces.push(right);
    }
    Ok(faces)
}

/// A rotation and what is added to it: from the flat (z = 0 its good face) to space.
#[derive(Debug, Clone, Copy)]
pub(super) struct Motion {
    /// Where the axes x, y, z go.
    axes: [Space; 3],
    shift: Space,
}

fn combined(parts: [(f64, Space); 3]) -> Space {
    let mut sum = [0.0; 3];
    for (weight, vector) in parts {
        sum.iter_mut().zip(vector).for_each(|(entry, value)| *entry += weight * value);
    }
    sum
}

impl Motion {
    pub(super) const REST: Self =
        Self { axes: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]], shift: [0.0; 3] };

    fn turned(&self, [x, y, z]: Space) -> Space {
        let [i, j, k] = self.axes;
        combined([(x, i), (y, j), (z, k)])
    }

    /// Where a point goes.
    pub(super) fn of(&self, point: Space) -> Space {
        let mut moved = self.turned(point);
        moved.iter_mut().zip(self.shift).for_each(|(entry, shift)| *entry += shift);
        moved
    }

    /// The good face's outward direction.
    pub(super) fn normal(&self) -> Space {
        let [_, _, k] = self.axes;
        k
    }

    /// Where a point came from.
    pub(super) fn back(&self, point: Space) -> Space {
        let ([x, y, z], [sx, sy, sz]) = (point, self.shift);
        let from = [x - sx, y - sy, z - sz];
        let dot = |axis: Space| axis.iter().zip(from).map(|(a, b)| a * b).sum::<f64>();
        let [i, j, k] = self.axes;
        [dot(i), dot(j), dot(k)]
    }

    fn then(&self, first: &Self) -> Self {
        Self { axes: first.axes.map(|axis| self.turned(axis)), shift: self.of(first.shift) }
    }

    /// What the part past a bend does; `left` where it is the left part that moves.
    fn of_bend(line: &Line, left: bool) -> Self {
        let side = if left { 1.0 } else { -1.0 };
        let ([nx, ny], [ax, ay], [mx, my]) = (line.across(), line.along, line.middle);
        let n = [side * nx, side * ny, 0.0];
        let (sine, cosine) = (math::sin(line.angle), math::cos(line.angle));
        let up = [0.0, 0.0, 1.0];
        // n goes to n', z to z'.
        let n_to = combined([(cosine, n), (line.sign * sine, up), (0.0, up)]);
        let z_to = combined([(cosine, up), (-line.sign * sine, n), (0.0, up)]);
        let along = [ax, ay, 0.0];
        let axis = |on_n: f64, on_along: f64| combined([(on_n, n_to), (on_along, along), (0.0, up)]);
        let axes = [axis(side * nx, ax), axis(side * ny, ay), z_to];
        let turn = Self { axes, shift: [0.0; 3] };
        let middle = [mx, my, 0.0];
        let from = combined([(1.0, middle), (line.half, n), (0.0, up)]);
        let to = combined([
            (1.0, middle),
            (line.radius * sine - line.half, n),
            (line.sign * line.radius * (1.0 - cosine), up),
        ]);
        let turned = turn.turned(from);
        Self { axes, shift: combined([(1.0, to), (-1.0, turned), (0.0, up)]) }
    }
}

/// The motion of each face, the base at rest.
pub(super) fn motions(faces: &[Ring], lines: &[Line], base: usize) -> Vec<Motion> {
    let mut motions: Vec<Option<Motion>> = vec![None; faces.len()];
    if let Some(first) = motions.get_mut(base) {
        *first = Some(Motion::REST);
    }
    let face_of =
        |edge: Edge| faces.iter().position(|ring| ring.corners.iter().any(|corner| corner.1 == edge));
    // Each round reaches the faces one bend further out.
    for _ in 0..lines.len() {
        for (number, line) in lines.iter().enumerate() {
            let (Some(left), Some(right)) =
                (face_of(Edge::Bend(number, true)), face_of(Edge::Bend(number, false)))
            else {
                continue;
            };
            let at = |place: usize| motions.get(place).copied().flatten();
            let (place, motion) = match (at(left), at(right)) {
                (Some(known), None) => (right, known.then(&Motion::of_bend(line, false))),
                (None, Some(known)) => (left, known.then(&Motion::of_bend(line, true))),
                _ => continue,
            };
            if let Some(entry) = motions.get_mut(place) {
                *entry = Some(motion);
            }
        }
    }
    motions.into_iter().map(|motion| motion.unwrap_or(Motion::REST)).collect()
}
