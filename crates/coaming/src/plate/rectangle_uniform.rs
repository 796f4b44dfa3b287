//! Kernel: rectangle under uniform pressure. Plain numbers for unit flexural rigidity and unit pressure.

use super::clamped_ritz::Clamped;
use super::legendre_bubble::Parity;
use super::levy_patch::Patch;
use super::levy_terms::Decay;
use core::f64::consts::PI;

/// Σ 1/m³ over odd m: 7 ζ(3)/8.
const ODD_CUBES: f64 = 1.051_799_790_264_645;
/// Of a supported plate longer than this many short sides the middle is a strip, to the last digit.
const LONGEST_SUPPORTED: f64 = 25.0;
/// The ends of a clamped plate longer than this many short sides no longer feel each other: to 1e-9 of the
/// largest moment the middle is a strip. The series is then taken at this ratio.
const LONGEST: f64 = 10.0;

/// What the plate does, with "long" and "short" naming the pair of edges.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Uniform {
    pub centre_deflection: f64,
    pub largest_deflection: f64,
    /// Moments at the centre that bend the short and the long span.
    pub short_span_moment: f64,
    pub long_span_moment: f64,
    /// Moments across the edges, at their middle; and the largest along the long edges.
    pub long_edge_moment: f64,
    pub short_edge_moment: f64,
    pub largest_edge_moment: f64,
    /// Force per length at the middle of the edges; force at each corner, in the direction of the pressure.
    pub long_edge_reaction: f64,
    pub short_edge_reaction: f64,
    pub corner_force: f64,
}

/// Supported all round.
pub(crate) fn supported(short: f64, long: f64, poissons_ratio: f64) -> Uniform {
    let long = long.min(LONGEST_SUPPORTED * short);
    let plate = Patch::whole(short, long);
    let centre = plate.along_x(0.5 * short, 0.5 * long);
    let (short_span_moment, long_span_moment) = centre.bending().moments(poissons_ratio);
    let twist = corner_twist(short, long);
    Uniform {
        centre_deflection: centre.w,
        largest_deflection: centre.w,
        short_span_moment,
        long_span_moment,
        long_edge_reaction: plate.along_x(0.0, 0.5 * long).reaction(poissons_ratio),
        short_edge_reaction: plate.turned().along_x(0.0, 0.5 * short).reaction(poissons_ratio),
        corner_force: 2.0 * (1.0 - poissons_ratio) * twist,
        ..Uniform::default()
    }
}

/// ∂²w/∂x∂y at a corner of the supported rectangle.
fn corner_twist(short: f64, long: f64) -> f64 {
    // (2 a²/π³) Σ (1/m³) (tanh α − α/cosh² α), m odd, α = m π b/(2 a); with e = e^(−2 α) the bracket is
    // 1 − 2 e/(1 + e) − 4 α e/(1 + e)².
    let mut decay = Decay::new(PI * long / short);
    let mut missing = 0.0;
    let mut m = 1.0;
    loop {
        let (twice_alpha, e) = decay.next();
        let whole = 1.0 + e;
        let term = (2.0 * e / whole + 2.0 * twice_alpha * e / (whole * whole)) / (m * m * m);
        missing += term;
        if term < 1e-17 {
            break;
        }
        decay.next();
        m += 2.0;
    }
    2.0 * short * short / (PI * PI * PI) * (ODD_CUBES - missing)
}

/// Clamped all round.
pub(crate) fn clamped(short: f64, long: f64, poissons_ratio: f64) -> Uniform {
    let long = long.min(LONGEST * short);
    let (across, along) = counts(short, long);
    let plate = Clamped::new((short, Parity::Even, across), (long, Parity::Even, along));
    let c = plate.uniform();
    let centre = plate.field(&c, 0.0, 0.0);
    let (short_span_moment, long_span_moment) = centre.bending().moments(poissons_ratio);
    let long_edge = plate.field(&c, -0.5 * short, 0.0);
    let (long_edge_moment, _) = long_edge.bending().moments(poissons_ratio);
    let long_edge_reaction = long_edge.reaction(poissons_ratio);
    let (largest_deflection, largest_edge_moment) = if long > 1.2 * short {
        let deflection = plate.peak(&plate.line(&c, 0.0, |v| v.value));
        let curvature = plate.peak(&plate.line(&c, 1.0, |v| v.second));
        (deflection, -curvature * 4.0 / (short * short))
    } else {
        (centre.w, long_edge_moment)
    };
    let (short_edge_moment, short_edge_reaction) = if long == short {
        (long_edge_moment, long_edge_reaction)
    } else {
        // The moment at an edge settles fastest with half as many functions across it as along it.
        let (across, along) = counts_at_short_edge(short, long);
        let edge = if across <= along {
            let plate = Clamped::new((long, Parity::Even, across), (short, Parity::Even, along));
            plate.field(&plate.uniform(), -0.5 * long, 0.0)
        } else {
            let plate = Clamped::new((short, Parity::Even, along), (long, Parity::Even, across));
            plate.field(&plate.uniform(), 0.0, -0.5 * long).turned()
        };
        (edge.bending().moments(poissons_ratio).0, edge.reaction(poissons_ratio))
    };
    Uniform {
        centre_deflection: centre.w,
        largest_deflection,
        short_span_moment,
        long_span_moment,
        long_edge_moment,
        short_edge_moment,
        largest_edge_moment,
        long_edge_reaction,
        short_edge_reaction,
        corner_force: 0.0,
    }
}

/// Even functions across the long edges and along them, for moments to 1e-6.
fn counts(short: f64, long: f64) -> (usize, usize) {
    let ratio = (long / short).sqrt();
    (if long > 1.5 * short { 10 } else { 8 }, (17.0 * ratio).ceil() as usize)
}

/// The same for the short edges.
fn counts_at_short_edge(short: f64, long: f64) -> (usize, usize) {
    let ratio = (long / short).sqrt();
    ((9.0 * ratio).ceil() as usize, if long > 5.0 * short { 24 } else { 17 })
}
