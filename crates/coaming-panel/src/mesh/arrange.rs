//! Cuts all features at their crossings, so that the mesh can follow every one of them.

use super::edge::EdgeUse;
use super::feature::Feature;
use crate::geometry::check::apart;
use crate::geometry::point::Point;
use crate::geometry::polygon::{crossing, nearest};
use std::collections::HashMap;

/// A straight piece between two points of the arrangement, with the features along it.
#[derive(Debug, Clone)]
pub(crate) struct Piece {
    /// Indices of its ends, the lower first.
    pub ends: [usize; 2],
    /// The features along it, `from` at the first end.
    pub uses: Vec<EdgeUse>,
}

/// Points and pieces that meet only at their ends.
#[derive(Debug, Clone, Default)]
pub(crate) struct Arrangement {
    /// All points.
    pub points: Vec<Point>,
    /// All pieces, sorted by their ends.
    pub pieces: Vec<Piece>,
    /// The polygon through each feature.
    pub polygons: Vec<Vec<Point>>,
    /// The point at each mark.
    pub marks: Vec<usize>,
}

struct Chord {
    a: Point,
    b: Point,
    feature: usize,
    curve: usize,
    from: f64,
    to: f64,
    cuts: Vec<f64>,
}

/// Cuts all features at their crossings. `divide` gives the fractions at which a curve is divided.
pub(crate) fn arrange(
    features: &[Feature],
    marks: &[Point],
    tolerance: f64,
    divide: impl Fn(&Feature, usize) -> Vec<f64>,
) -> Arrangement {
    let mut chords = Vec::new();
    let mut polygons = Vec::with_capacity(features.len());
    for (f, feature) in features.iter().enumerate() {
        let mut polygon = Vec::new();
        for (c, curve) in feature.curves.iter().enumerate() {
            let fractions = divide(feature, c);
            let (start, length) = (feature.starts[c], feature.starts[c + 1] - feature.starts[c]);
            for pair in fractions.windows(2) {
                let (a, b) = (curve.point(pair[0]), curve.point(pair[1]));
                polygon.push(a);
                let (from, to) = (start + pair[0] * length, start + pair[1] * length);
                chords.push(Chord { a, b, feature: f, curve: c, from, to, cuts: vec![0.0, 1.0] });
            }
        }
        if let Some(last) = feature.curves.last().filter(|_| !feature.closed) {
            polygon.push(last.to());
        }
        polygons.push(polygon);
    }
    cut_at_crossings(&mut chords, marks, tolerance);
    collect(chords, polygons, marks, tolerance)
}

fn cut_at_crossings(chords: &mut [Chord], marks: &[Point], tolerance: f64) {
    // By their left ends: whatever meets a chord starts before that ends.
    let left = |c: &Chord| c.a.x.min(c.b.x);
    let mut order: Vec<usize> = (0..chords.len()).collect();
    order.sort_by(|&i, &j| left(&chords[i]).total_cmp(&left(&chords[j])).then(i.cmp(&j)));
    let mut cuts: Vec<(usize, f64)> = Vec::new();
    for (k, &i) in order.iter().enumerate() {
        let this = &chords[i];
        let end = this.a.x.max(this.b.x) + tolerance;
        for &j in order[k + 1..].iter().take_while(|&&j| left(&chords[j]) <= end) {
            let other = &chords[j];
            if apart(this.a, this.b, other.a, other.b, tolerance) {
                continue;
            }
            let mut met = false;
            for (index, chord, points) in [(i, this, [other.a, other.b]), (j, other, [this.a, this.b])] {
                for p in points {
                    let (f, d) = nearest(chord.a, chord.b, p);
                    if d <= tolerance {
                        cuts.push((index, f));
                        met = true;
                    }
                }
            }
            if let (false, Some((t, u))) = (met, crossing(this.a, this.b, other.a, other.b)) {
                cuts.extend([(i, t), (j, u)]);
            }
        }
        for &p in marks {
            let (f, d) = nearest(this.a, this.b, p);
            if d <= tolerance {
                cuts.push((i, f));
            }
        }
    }
    for (i, f) in cuts {
        chords[i].cuts.push(f);
    }
}

/// Points that are one within a tolerance, found by the cell of a grid.
struct Snapping {
    points: Vec<Point>,
    cells: HashMap<(i64, i64), Vec<usize>>,
    reach: f64,
}

impl Snapping {
    /// The number of a point: that of the first within reach, or a new one.
    fn number(&mut self, p: Point) -> usize {
        let cell = |v: f64| (v / self.reach).floor() as i64;
        let (x, y) = (cell(p.x), cell(p.y));
        let near = |q: &Point| (q.x - p.x).abs() <= self.reach && (q.y - p.y).abs() <= self.reach;
        // Places too far away for a cell of their own share the last one.
        let found = (-1..=1)
            .flat_map(|i| (-1..=1).map(move |j| (x.saturating_add(i), y.saturating_add(j))))
            .filter_map(|key| self.cells.get(&key))
            .flatten()
            .copied()
            .filter(|&k| near(&self.points[k]))
            .min();
        found.unwrap_or_else(|| {
            self.points.push(p);
            self.cells.entry((x, y)).or_default().push(self.points.len() - 1);
            self.points.len() - 1
        })
    }
}

fn collect(chords: Vec<Chord>, polygons: Vec<Vec<Point>>, marks: &[Point], tolerance: f64) -> Arrangement {
    let mut snapping = Snapping { points: Vec::new(), cells: HashMap::new(), reach: 2.0 * tolerance };
    let mark_points = marks.iter().map(|&p| snapping.number(p)).collect();
    let mut pieces: Vec<Piece> = Vec::new();
    for mut chord in chords {
        chord.cuts.sort_by(f64::total_cmp);
        let nodes: Vec<(usize, f64)> =
            chord.cuts.iter().map(|&f| (snapping.number(chord.a.toward(chord.b, f)), f)).collect();
        for pair in nodes.windows(2) {
            let ((i, f), (j, g)) = (pair[0], pair[1]);
            if i == j {
                continue;
            }
            let at = |fraction: f64| chord.from + (chord.to - chord.from) * fraction;
            let (from, to) = if i < j { (at(f), at(g)) } else { (at(g), at(f)) };
            let along = EdgeUse { feature: chord.feature, curve: chord.curve, from, to };
            pieces.push(Piece { ends: [i.min(j), i.max(j)], uses: vec![along] });
        }
    }
    pieces.sort_by_key(|a| a.ends);
    let mut merged: Vec<Piece> = Vec::with_capacity(pieces.len());
    for piece in pieces {
        match merged.last_mut() {
            Some(last) if last.ends == piece.ends => last.uses.extend(piece.uses),
            _ => merged.push(piece),
        }
    }
    Arrangement { points: snapping.points, pieces: merged, polygons, marks: mark_points }
}
