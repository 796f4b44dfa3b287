//! Cuts all features at their crossings, so that the mesh can follow every one of them.

use super::edge::EdgeUse;
use super::feature::Feature;
use crate::geometry::check::apart;
use crate::geometry::point::Point;
use crate::geometry::polygon::{crossing, nearest};

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
    for i in 0..chords.len() {
        let (before, rest) = chords.split_at_mut(i);
        let Some(this) = rest.first_mut() else { continue };
        for other in before {
            if apart(this.a, this.b, other.a, other.b, tolerance) {
                continue;
            }
            let mut met = false;
            for p in [other.a, other.b] {
                let (f, d) = nearest(this.a, this.b, p);
                if d <= tolerance {
                    this.cuts.push(f);
                    met = true;
                }
            }
            for p in [this.a, this.b] {
                let (f, d) = nearest(other.a, other.b, p);
                if d <= tolerance {
                    other.cuts.push(f);
                    met = true;
                }
            }
            if let (false, Some((t, u))) = (met, crossing(this.a, this.b, other.a, other.b)) {
                this.cuts.push(t);
                other.cuts.push(u);
            }
        }
        for &p in marks {
            let (f, d) = nearest(this.a, this.b, p);
            if d <= tolerance {
                this.cuts.push(f);
            }
        }
    }
}

fn collect(chords: Vec<Chord>, polygons: Vec<Vec<Point>>, marks: &[Point], tolerance: f64) -> Arrangement {
    let mut points: Vec<Point> = Vec::new();
    let snap = |p: Point, points: &mut Vec<Point>| {
        let found = points
            .iter()
            .position(|q| (q.x - p.x).abs() <= 2.0 * tolerance && (q.y - p.y).abs() <= 2.0 * tolerance);
        found.unwrap_or_else(|| {
            points.push(p);
            points.len() - 1
        })
    };
    let mark_points = marks.iter().map(|&p| snap(p, &mut points)).collect();
    let mut pieces: Vec<Piece> = Vec::new();
    for mut chord in chords {
        chord.cuts.sort_by(f64::total_cmp);
        let nodes: Vec<(usize, f64)> =
            chord.cuts.iter().map(|&f| (snap(chord.a.toward(chord.b, f), &mut points), f)).collect();
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
    Arrangement { points, pieces: merged, polygons, marks: mark_points }
}
