//! What the tables are written with: a figure, a curve, a creep line.

use std::borrow::Cow;

use super::curve::{Curve, Point};
use super::figure::{Basis, Figure};
use super::record::CreepLine;
use super::sources::{place, practice};
use crate::prelude::*;

/// A figure that a standard guarantees.
pub(super) fn minimum<Q>(value: Q, source: Source, condition: &'static str) -> Option<Figure<Q>> {
    Some(Figure { value, basis: Basis::Minimum, source, condition: Cow::Borrowed(condition) })
}

/// A usual figure.
pub(super) fn typical<Q>(value: Q, source: Source, condition: &'static str) -> Option<Figure<Q>> {
    Some(Figure { value, basis: Basis::Typical, source, condition: Cow::Borrowed(condition) })
}

/// An estimated figure.
pub(super) fn estimate<Q>(value: Q, source: Source, condition: &'static str) -> Option<Figure<Q>> {
    Some(Figure { value, basis: Basis::Estimate, source, condition: Cow::Borrowed(condition) })
}

/// A straight curve of the figures that are there.
pub(super) fn curve<X: Value + Copy, Y: Value + Copy>(
    points: Vec<(X, Option<Figure<Y>>)>,
) -> Option<Curve<X, Y>> {
    Some(Curve::of_table(present(points), false))
}

/// Creep at one temperature. Time in hours; the first point, 10 s, is the short-time test itself.
pub(super) fn creep(temperature: f64, points: Vec<(f64, Option<Figure<f64>>)>) -> CreepLine {
    let short =
        typical(1.0, place(practice("short-time modulus by definition"), "10 s, as in a tensile test"), "");
    let all =
        std::iter::once((second(10.0), short)).chain(points.into_iter().map(|(time, f)| (hour(time), f)));
    CreepLine { temperature: celsius(temperature), factor: Curve::of_table(present(all.collect()), true) }
}

fn present<X, Y>(points: Vec<(X, Option<Figure<Y>>)>) -> Vec<Point<X, Y>> {
    points.into_iter().filter_map(|(at, figure)| Some(Point { at, figure: figure? })).collect()
}
