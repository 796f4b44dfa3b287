//! Share of a load on each screw of a pattern.

use crate::prelude::*;

/// One screw of a pattern.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PatternFastener {
    /// Position along x.
    pub x: Length,
    /// Position along y.
    pub y: Length,
    /// Stiffness relative to the others: 1 for equal screws.
    #[possible(f64::MIN_POSITIVE..)]
    pub relative_stiffness: f64,
}

/// What one screw of a pattern carries.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct PatternLoad {
    /// Shear along x on the part that the load acts on.
    pub shear_x: Force,
    /// Shear along y.
    pub shear_y: Force,
    /// Resultant shear.
    pub shear: Force,
    /// Tension; negative where the part is pressed on its seat.
    pub tension: Force,
}

/// Share of an in-plane force, moments and a lift on each screw of a pattern, between rigid parts.
///
/// # Formula
/// Weights w, centroid (x̄, ȳ), X = x − x̄, Y = y − ȳ. In plane: M = Mz + (xp − x̄) Fy − (yp − ȳ) Fx, J = Σ w (X² + Y²);
/// shear = (w Fx/Σw − M w Y/J, w Fy/Σw + M w X/J). Out of plane: Σ Y t = Mx + (yp − ȳ) Fz, −Σ X t = My − (xp − x̄) Fz;
/// along the principal axes u, v of the pattern t = w (Fz/Σw + u Σut/Σwu² + v Σvt/Σwv²).
///
/// # Validity
/// Rigid parts, equal fit of every screw, no friction, and no seat: a screw is pressed as stiffly as it is pulled. A seat that
/// bears moves the pivot to the edge and lowers the tension; a soft plate or prying raises it. One row of screws carries no
/// moment about its own line, one screw no moment at all: such a load is refused.
///
/// # Source
/// Elastic centre of a group of springs (Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 8-12).
///
/// # Example
/// Four screws on a square of 100 mm, a moment of 40 N·m in plane: each carries 40/(4 × 0.0707 m) = 141.4 N (by hand).
/// ```
/// use coaming::fastener::{FastenerPattern, PatternFastener};
/// use coaming::prelude::*;
///
/// let at = |x, y| PatternFastener { x: mm(x), y: mm(y), relative_stiffness: 1.0 };
/// let (pattern, _) = FastenerPattern {
///     fasteners: vec![at(0.0, 0.0), at(100.0, 0.0), at(100.0, 100.0), at(0.0, 100.0)],
///     load_x: mm(50.0),
///     load_y: mm(50.0),
///     force_x: newton(0.0),
///     force_y: newton(0.0),
///     force_z: newton(0.0),
///     moment_x: newton_meter(0.0),
///     moment_y: newton_meter(0.0),
///     moment_z: newton_meter(40.0),
/// }
/// .calculate()?;
/// assert!((pattern.largest_shear.value - 141.4).abs() < 0.05);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct FastenerPattern {
    /// Screws of the pattern.
    pub fasteners: Vec<PatternFastener>,
    /// Point that the forces act on, along x, xp.
    pub load_x: Length,
    /// Point that the forces act on, along y, yp.
    pub load_y: Length,
    /// Force along x, Fx.
    pub force_x: Force,
    /// Force along y, Fy.
    pub force_y: Force,
    /// Lift away from the seat, Fz.
    pub force_z: Force,
    /// Moment about x, Mx.
    pub moment_x: Torque,
    /// Moment about y, My.
    pub moment_y: Torque,
    /// Moment in the plane, Mz; positive from x to y.
    pub moment_z: Torque,
}

/// Outcome of [`FastenerPattern`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct FastenerPatternOutcome {
    /// Elastic centre along x.
    pub centre_x: Length,
    /// Elastic centre along y.
    pub centre_y: Length,
    /// Moment in the plane about the elastic centre.
    pub moment_at_centre: Torque,
    /// What each screw carries, in the order given.
    pub loads: Vec<PatternLoad>,
    /// Largest resultant shear.
    pub largest_shear: Force,
    /// Largest tension.
    pub largest_tension: Force,
}

/// What is smaller than this part of its like is rounding.
const ROUNDING: f64 = 1e-12;

impl Calculation for FastenerPattern {
    const NAME: &'static str = "fastener_pattern";
    const SOURCE: &'static [Source] = &[Source {
        title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design",
        edition: "10th edition",
        locator: "section 8-12",
        standing: Standing::Memory,
    }];
    type Outcome = FastenerPatternOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        if self.fasteners.is_empty() {
            return Err(Error::inconsistent("fasteners", "at least one screw is needed: the list is empty"));
        }
        let sum = |of: &dyn Fn(f64, f64, f64) -> f64| {
            self.fasteners
                .iter()
                .fold(0.0, |sum, screw| sum + of(screw.relative_stiffness, screw.x.value, screw.y.value))
        };
        let weight = sum(&|w, _, _| w);
        let (cx, cy) = (sum(&|w, x, _| w * x) / weight, sum(&|w, _, y| w * y) / weight);
        let (xx, yy) = (sum(&|w, x, _| w * (x - cx) * (x - cx)), sum(&|w, _, y| w * (y - cy) * (y - cy)));
        let xy = sum(&|w, x, y| w * (x - cx) * (y - cy));
        let polar = xx + yy;
        let (arm_x, arm_y) = (self.load_x.value - cx, self.load_y.value - cy);
        let (fx, fy, fz) = (self.force_x.value, self.force_y.value, self.force_z.value);
        let moment = self.moment_z.value + arm_x * fy - arm_y * fx;
        // Σ u t and Σ v t along the principal axes, from Σ X t = −My' and Σ Y t = Mx'.
        let (along_x, along_y) = (arm_x * fz - self.moment_y.value, arm_y * fz + self.moment_x.value);
        let turn = 0.5 * math::atan2(2.0 * xy, xx - yy);
        let (cosine, sine) = (math::cos(turn), math::sin(turn));
        let major = sum(&|w, x, y| w * math::square(cosine * (x - cx) + sine * (y - cy)));
        let minor = sum(&|w, x, y| w * math::square(cosine * (y - cy) - sine * (x - cx)));
        let (along_u, along_v) = (cosine * along_x + sine * along_y, cosine * along_y - sine * along_x);
        let size = self
            .fasteners
            .iter()
            .fold(0.0_f64, |size, screw| size.max(screw.x.value.abs()).max(screw.y.value.abs()));
        let force_size = fx.abs() + fy.abs() + fz.abs();
        let reach = size + self.load_x.value.abs() + self.load_y.value.abs();
        let moments = self.moment_x.value.abs() + self.moment_y.value.abs() + self.moment_z.value.abs();
        let noise = ROUNDING * (moments + force_size * reach);
        let flat = |inertia: f64| inertia <= math::square(ROUNDING * size) * weight;
        // A gradient for a moment; none where the pattern has no arm and the moment is nothing but rounding.
        let gradient = |moment: f64, inertia: f64, motion: &str| {
            if !flat(inertia) {
                Ok(moment / inertia)
            } else if moment.abs() <= noise {
                Ok(0.0)
            } else {
                Err(Error::Singular { motion: motion.to_owned() })
            }
        };
        let spin = gradient(moment, polar, "turning in the plane about a single screw")?;
        let slope_u = gradient(along_u, major, "tilting about a single screw")?;
        let slope_v = gradient(along_v, minor, "tilting about the line of the screws")?;
        let (mut largest_shear, mut largest_tension) = (0.0_f64, f64::NEG_INFINITY);
        let mut loads = Vec::with_capacity(self.fasteners.len());
        for screw in &self.fasteners {
            let (w, x, y) = (screw.relative_stiffness, screw.x.value - cx, screw.y.value - cy);
            let (shear_x, shear_y) = (w * (fx / weight - spin * y), w * (fy / weight + spin * x));
            let shear = math::hypot(shear_x, shear_y);
            let (u, v) = (cosine * x + sine * y, cosine * y - sine * x);
            let tension = w * (fz / weight + slope_u * u + slope_v * v);
            largest_shear = largest_shear.max(shear);
            largest_tension = largest_tension.max(tension);
            loads.push(PatternLoad {
                shear_x: si(shear_x),
                shear_y: si(shear_y),
                shear: si(shear),
                tension: si(tension),
            });
        }
        Ok(FastenerPatternOutcome {
            centre_x: si(cx),
            centre_y: si(cy),
            moment_at_centre: si(moment),
            loads,
            largest_shear: si(largest_shear),
            largest_tension: si(largest_tension),
        })
    }
}
