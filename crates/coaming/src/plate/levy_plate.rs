//! Rectangular plate under a linearly varying pressure, two opposite edges supported, the other two held in any way.

use super::PlateEdge;
use super::field::Field;
use super::isotropic::{check_small, check_thin, face_stress, flexural_rigidity};
use super::levy_linear::{Along, Levy, Load, Tabulated};
use crate::prelude::*;

/// Direction in the plane of a plate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum PlateDirection {
    /// Along the length.
    Length,
    /// Along the width.
    Width,
}

/// Rectangular plate under an even or linearly varying pressure, such as standing water: the two edges that run along the
/// width are supported, each of the other two is free, supported or clamped.
///
/// # Formula
/// D ∇⁴w = q, D = E t³/(12 (1 − ν²)). Lévy: w = Σ Y_m(y) sin(m π x/a), Y_m = q_m/(D k⁴) + (A + B k y) e^(−k y) +
/// (C + E k (b − y)) e^(−k (b − y)), k = m π/a, the four constants from two conditions at each edge: supported w = 0,
/// w_yy = 0; clamped w = 0, w_y = 0; free w_yy + ν w_xx = 0, w_yyy + (2 − ν) w_xxy = 0. What falls only as a power of 1/m is
/// summed in closed form. Reaction −D (w_nnn + (2 − ν) w_nss), corner force 2 (1 − ν) D w_xy, σ = 6 M/t².
///
/// # Validity
/// Thin, flat, isotropic, elastic; small deflection; supported edges held down at their corners. Deflections to 1e-8, moments
/// and reactions at the named places to 1e-6 of the value for widths of 1/20 of the length and more; the largest deflection
/// to 1e-6, the largest stress, searched on a grid of 33 by 33 places, to 1e-2. Caveats: deflection past t/2; t over 1/20 of
/// the shorter side.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), art. 30, 38, 46 to 48.
///
/// # Example
/// Square, three edges supported and one free, 1 kPa, D = 10 kN·m: the middle of the free edge deflects by 0.012852 q a⁴/D
/// = 1.2852 mm (tests/independent/plate_levy.py; art. 48 prints 0.01286, from memory).
/// ```
/// use coaming::plate::{LevyPlate, PlateDirection, PlateEdge};
/// use coaming::prelude::*;
///
/// let plate = LevyPlate {
///     length: m(1.0),
///     width: m(1.0),
///     thickness: mm(10.0),
///     youngs_modulus: gigapascal(109.2),
///     poissons_ratio: 0.3,
///     first_length_edge: PlateEdge::Supported,
///     second_length_edge: PlateEdge::Free,
///     first_pressure: kilopascal(1.0),
///     second_pressure: kilopascal(1.0),
///     pressure_varies_along: PlateDirection::Width,
/// };
/// let (outcome, _) = plate.calculate()?;
/// assert!((outcome.second_length_edge_deflection - mm(-1.2852)).abs() < mm(0.0001));
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct LevyPlate {
    /// Length of the plate between its two supported edges, a.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Width of the plate between the other two edges, b; it may be the longer side.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Thickness, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Young's modulus, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Poisson's ratio, ν.
    #[possible(-0.99..=0.5)]
    #[tested(0.0..=0.5)]
    pub poissons_ratio: f64,
    /// How the first of the edges that run along the length is held.
    pub first_length_edge: PlateEdge,
    /// How the edge opposite to it is held.
    pub second_length_edge: PlateEdge,
    /// Pressure at the first edge across which it varies: positive pushes the plate inward.
    pub first_pressure: Pressure,
    /// Pressure at the edge opposite to it; the same for an even pressure.
    pub second_pressure: Pressure,
    /// Along which side the pressure varies: along the width, from the first to the second length edge, or along the length.
    pub pressure_varies_along: PlateDirection,
}

/// Outcome of [`LevyPlate`]. Moments and stresses are those of the inner face, positive where it is in tension.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct LevyPlateOutcome {
    /// Flexural rigidity, D.
    pub flexural_rigidity: Torque,
    /// Deflection of the centre, outward positive.
    pub centre_deflection: Length,
    /// Deflection of the middle of the first length edge, outward positive; zero where held.
    pub first_length_edge_deflection: Length,
    /// Deflection of the middle of the second length edge.
    pub second_length_edge_deflection: Length,
    /// Deflection of the largest size, outward positive.
    pub largest_deflection: Length,
    /// Size of the largest deflection over the thickness.
    pub deflection_ratio: f64,
    /// Moment per length that bends along the length, at the centre.
    pub centre_moment_along_length: Force,
    /// Moment per length that bends along the width, at the centre.
    pub centre_moment_along_width: Force,
    /// Moment per length across the first length edge at its middle; zero unless clamped.
    pub first_length_edge_moment: Force,
    /// Moment per length across the second length edge at its middle.
    pub second_length_edge_moment: Force,
    /// Moment per length that bends along the first length edge, at its middle.
    pub first_length_edge_moment_along: Force,
    /// Moment per length that bends along the second length edge, at its middle.
    pub second_length_edge_moment_along: Force,
    /// Size of the largest stress, by principal moments.
    #[shown_in("MPa")]
    pub largest_stress: Pressure,
    /// Reaction per length in the middle of the first length edge, outward positive; zero where free.
    pub first_length_edge_reaction: ForcePerLength,
    /// Reaction per length in the middle of the second length edge.
    pub second_length_edge_reaction: ForcePerLength,
    /// Reaction per length in the middle of the first width edge, where the first pressure acts if it varies along the length.
    pub first_width_edge_reaction: ForcePerLength,
    /// Reaction per length in the middle of the second width edge.
    pub second_width_edge_reaction: ForcePerLength,
    /// Forces at the corners, outward positive: the first width edge with the first and the second length edge, then the
    /// second width edge with them.
    pub corner_reactions: Vec<Force>,
}

/// The parts of the load on a plate 1 × b.
fn parts(plate: &LevyPlate, b: f64) -> Vec<Load> {
    let (first, second) = (plate.first_pressure.value, plate.second_pressure.value);
    match plate.pressure_varies_along {
        PlateDirection::Width => vec![Load { odd: true, start: first, slope: (second - first) / b }],
        PlateDirection::Length => vec![
            Load { odd: true, start: 0.5 * (first + second), slope: 0.0 },
            Load { odd: false, start: 0.5 * (first - second), slope: 0.0 },
        ],
    }
}

/// Places in each direction at which the largest values are looked for.
const PLACES: u32 = 32;

/// The largest size of a value over the plate by a grid, with its place.
fn largest(b: f64, value: impl Fn(f64, f64) -> f64) -> (f64, f64, f64) {
    let mut best = (0.0, 0.5, 0.5 * b);
    for i in 0..=PLACES {
        for j in 0..=PLACES {
            let (x, y) = (f64::from(i) / f64::from(PLACES), b * f64::from(j) / f64::from(PLACES));
            let here = value(x, y);
            if here.abs() > f64::abs(best.0) {
                best = (here, x, y);
            }
        }
    }
    best
}

/// Improves a place by parabolas along each direction in turn, within the plate.
fn refined((mut best, mut x, mut y): (f64, f64, f64), b: f64, value: impl Fn(f64, f64) -> f64) -> f64 {
    let mut step = 1.0 / f64::from(PLACES);
    for _ in 0..24 {
        for along_x in [true, false] {
            let at = |s: f64| {
                if along_x { value((x + s).clamp(0.0, 1.0), y) } else { value(x, (y + s * b).clamp(0.0, b)) }
            };
            let (before, here, after) = (at(-step), at(0.0), at(step));
            let bend = before - 2.0 * here + after;
            let move_by =
                if bend == 0.0 { 0.0 } else { (0.5 * step * (before - after) / bend).clamp(-step, step) };
            let there = at(move_by);
            if there.abs() > f64::abs(best) {
                best = there;
                if along_x {
                    x = (x + move_by).clamp(0.0, 1.0);
                } else {
                    y = (y + move_by * b).clamp(0.0, b);
                }
            }
        }
        step *= 0.7;
    }
    best
}

impl Calculation for LevyPlate {
    const NAME: &'static str = "levy_plate";
    const SOURCE: &'static [Source] = &[Source {
        title: "Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells",
        edition: "2nd ed., 1959",
        locator: "art. 30, 38, 46 to 48",
        standing: Standing::Memory,
    }];
    type Outcome = LevyPlateOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (a, t, nu) = (self.length.value, self.thickness.value, self.poissons_ratio);
        let b = self.width.value / a;
        if b < 0.05 {
            return Err(self.impossible(
                "width",
                "at least 1/20 of the length; a narrower plate bends as a strip across",
            ));
        }
        let d = flexural_rigidity(self.youngs_modulus.value, t, nu);
        let ends = [self.first_length_edge, self.second_length_edge];
        let plates: Vec<Levy> = parts(self, b)
            .into_iter()
            .map(|load| Levy { b, nu, ends, load })
            .filter(|plate| !plate.is_idle())
            .collect();
        let sum = |y: f64, n: usize, across: usize, along: Along| -> f64 {
            plates.iter().map(|plate| plate.sum(y, n, across, along)).sum()
        };
        // At the second width edge the even terms have the other sign.
        let at_end = |y: f64, n: usize, across: usize, second: bool| -> f64 {
            let sign = |plate: &Levy| if second && !plate.load.odd { -1.0 } else { 1.0 };
            plates.iter().map(|plate| sign(plate) * plate.sum(y, n, across, Along::Start)).sum()
        };
        let middle = |y: f64, n: usize, across: usize| sum(y, n, across, Along::Middle);
        let moments = |y: f64| {
            let (wxx, wyy) = (-middle(y, 0, 2), middle(y, 2, 0));
            (-(wxx + nu * wyy), -(wyy + nu * wxx))
        };
        let edge_moments = |y: f64, end: PlateEdge| {
            let (along, across) = moments(y);
            match end {
                PlateEdge::Free => (along, 0.0),
                PlateEdge::Supported => (0.0, 0.0),
                PlateEdge::Clamped => (along, across),
            }
        };
        let edge_deflection =
            |y: f64, end: PlateEdge| if end == PlateEdge::Free { middle(y, 0, 0) } else { 0.0 };
        let edge_reaction = |y: f64, end: PlateEdge| {
            if end == PlateEdge::Free { 0.0 } else { -(middle(y, 3, 0) - (2.0 - nu) * middle(y, 1, 2)) }
        };
        let width_reaction = |second: bool| {
            let y = 0.5 * b;
            at_end(y, 0, 3, second) - (2.0 - nu) * at_end(y, 2, 1, second)
        };
        let corner = |y: f64, end: PlateEdge, second: bool| {
            // The slope along a clamped edge is zero all along: so is the twist at its end.
            let sign = if y > 0.0 { 1.0 } else { -1.0 };
            if end == PlateEdge::Clamped { 0.0 } else { sign * 2.0 * (1.0 - nu) * at_end(y, 1, 1, second) }
        };
        let [first, second] = ends;
        let tables: Vec<Tabulated> = plates.iter().map(|plate| plate.tabulated(60)).collect();
        let field = |x: f64, y: f64| {
            let mut field = Field::default();
            tables.iter().for_each(|table| table.add(x, y, &mut field));
            field
        };
        let deflection = |x: f64, y: f64| field(x, y).w;
        let largest_deflection = refined(largest(b, deflection), b, deflection);
        let (largest_moment, ..) = largest(b, |x, y| field(x, y).bending().principal_moment(nu));
        let (w1, w2) = (edge_deflection(0.0, first), edge_deflection(b, second));
        let centre = middle(0.5 * b, 0, 0);
        // The named places are summed further than the search.
        let worst = [centre, w1, w2]
            .into_iter()
            .fold(largest_deflection, |worst: f64, w| if w.abs() > worst.abs() { w } else { worst });
        let ((along_1, across_1), (along_2, across_2)) = (edge_moments(0.0, first), edge_moments(b, second));
        let (centre_x, centre_y) = moments(0.5 * b);
        let moment = [along_1, across_1, along_2, across_2, centre_x, centre_y]
            .into_iter()
            .fold(largest_moment.abs(), |worst: f64, moment| worst.max(moment.abs()));
        let (length_unit, moment_unit) = (a * a * a * a / d, a * a);
        let down = |w: f64| si(if w == 0.0 { 0.0 } else { -w * length_unit });
        check_thin(t, a.min(self.width.value), caveats);
        check_small(worst * length_unit, t, caveats);
        Ok(LevyPlateOutcome {
            flexural_rigidity: si(d),
            centre_deflection: down(centre),
            first_length_edge_deflection: down(w1),
            second_length_edge_deflection: down(w2),
            largest_deflection: down(worst),
            deflection_ratio: (worst * length_unit / t).abs(),
            centre_moment_along_length: si(centre_x * moment_unit),
            centre_moment_along_width: si(centre_y * moment_unit),
            first_length_edge_moment: si(across_1 * moment_unit),
            second_length_edge_moment: si(across_2 * moment_unit),
            first_length_edge_moment_along: si(along_1 * moment_unit),
            second_length_edge_moment_along: si(along_2 * moment_unit),
            largest_stress: si(face_stress(moment * moment_unit, t)),
            first_length_edge_reaction: si(edge_reaction(0.0, first) * a),
            second_length_edge_reaction: si(if second == PlateEdge::Free {
                0.0
            } else {
                -edge_reaction(b, second)
            } * a),
            first_width_edge_reaction: si(width_reaction(false) * a),
            second_width_edge_reaction: si(width_reaction(true) * a),
            corner_reactions: vec![
                si(corner(0.0, first, false) * moment_unit),
                si(corner(b, second, false) * moment_unit),
                si(corner(0.0, first, true) * moment_unit),
                si(corner(b, second, true) * moment_unit),
            ],
        })
    }
}
