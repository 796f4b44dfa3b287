use crate::prelude::*;

/// Compression of a gasket between latches against that at the latches: an edge beam on an elastic
/// foundation.
///
/// # Formula
/// ```text
/// β = (k / (4 E I))^¼,  λ = β s
/// ratio = y between / y at latch = 2 (cosh(λ/2) sin(λ/2) + sinh(λ/2) cos(λ/2)) / (sinh λ + sin λ)
/// y at latch / mean y            = (λ/2) (sinh λ + sin λ) / (cosh λ − cos λ)
/// F = k s (mean y)               force of each latch
/// lift-off between the latches beyond λ = 4.730
/// ```
/// For a wanted ratio λ* follows by halving the interval; then pitch λ*/β, bending stiffness k s⁴/(4 λ*⁴),
/// line stiffness 4 E I (λ*/s)⁴.
///
/// # Validity
/// A long straight edge with equal latches at an equal pitch that push at points, on a gasket whose line
/// force is k times its compressed length. A sponge stiffens: give k once as line force over compressed
/// length, which gives the force, and once as the slope at the mean compression, which gives the lower ratio;
/// the truth lies between. The panel behind the edge is not counted: it stiffens the edge against twist, and
/// its own load bows it. Below zero the formula keeps pulling where a gasket lets go: past lift-off a caveat
/// says so.
///
/// # Source
/// M. Hetényi, Beams on Elastic Foundation, 1946, ch. III (equal loads at an equal pitch), by superposition.
///
/// # Example
/// λ = 1, 2, 3, 4 give 0.990, 0.852, 0.492, 0.144; here λ = 2.
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::GasketSpacing;
///
/// let (outcome, _) = GasketSpacing {
///     youngs_modulus: gigapascal(1.0),
///     second_moment: si(0.25e-9),
///     line_stiffness: pascal(1.0),
///     pitch: m(2.0),
///     mean_compressed: mm(3.0),
///     wanted_ratio: 0.9,
/// }
/// .calculate()?;
/// assert!((outcome.pitch_parameter - 2.0).abs() < 1e-12);
/// assert!((outcome.compression_ratio - 0.852).abs() < 0.0005);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketSpacing {
    /// Young's modulus of the edge, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Second moment of area of the edge beam that bends over the seal, I.
    #[possible(f64::MIN_POSITIVE..)]
    pub second_moment: SecondMomentOfArea,
    /// Line stiffness of the gasket, k: line force for each length of closing (N/m for each m).
    #[shown_in("N/mm^2")]
    #[possible(f64::MIN_POSITIVE..)]
    pub line_stiffness: Pressure,
    /// Pitch of the latches, s.
    #[possible(f64::MIN_POSITIVE..)]
    pub pitch: Length,
    /// Mean compressed length of the gasket.
    #[possible(0.0..)]
    pub mean_compressed: Length,
    /// Wanted ratio of compression between the latches to that at them.
    #[possible(0.0..0.9999)]
    pub wanted_ratio: f64,
}

/// Compression along the edge, and what would bring the wanted ratio.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct GasketSpacingOutcome {
    /// Foundation parameter, β.
    pub foundation_parameter: Curvature,
    /// Pitch parameter, λ = β s.
    pub pitch_parameter: f64,
    /// Compression between the latches over that at them; below zero the gasket lets go.
    pub compression_ratio: f64,
    /// Compressed length at the latches.
    pub compressed_at_latch: Length,
    /// Compressed length between the latches; below zero: open.
    pub compressed_between: Length,
    /// Force of each latch, F.
    pub latch_force: Force,
    /// Pitch parameter of the wanted ratio, λ*.
    pub wanted_pitch_parameter: f64,
    /// Largest pitch for the wanted ratio.
    pub needed_pitch: Length,
    /// Smallest second moment of area for the wanted ratio at the given pitch.
    pub needed_second_moment: SecondMomentOfArea,
    /// Largest line stiffness for the wanted ratio at the given pitch.
    #[shown_in("N/mm^2")]
    pub needed_line_stiffness: Pressure,
}

/// Pitch parameter at which the gasket lets go between the latches: tan(λ/2) = −tanh(λ/2).
const LIFT_OFF: f64 = 4.730_040_744_862_704;

/// Past this, hyperbolic functions overflow and the latches stand alone.
const ALONE: f64 = 600.0;

/// Ratio of compression between the latches to that at them.
fn ratio(lambda: f64) -> f64 {
    let a = 0.5 * lambda.min(ALONE);
    2.0 * (math::cosh(a) * math::sin(a) + math::sinh(a) * math::cos(a))
        / (math::sinh(2.0 * a) + math::sin(2.0 * a))
}

/// Compression at a latch over the mean.
fn at_latch(lambda: f64) -> f64 {
    if lambda > ALONE {
        return 0.5 * lambda;
    }
    // cosh λ − cos λ, written so that nothing cancels for close latches.
    let below = 2.0 * (math::square(math::sinh(0.5 * lambda)) + math::square(math::sin(0.5 * lambda)));
    0.5 * lambda * (math::sinh(lambda) + math::sin(lambda)) / below
}

impl Calculation for GasketSpacing {
    const NAME: &'static str = "gasket_spacing";
    const SOURCE: &'static [Source] = &[Source {
        title: "Hetényi, Beams on Elastic Foundation",
        edition: "1946",
        locator: "infinite beam with equal concentrated loads at an equal pitch",
        standing: Standing::Computed,
    }];
    type Outcome = GasketSpacingOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (k, s) = (self.line_stiffness.value, self.pitch.value);
        let bending = self.youngs_modulus.value * self.second_moment.value;
        let beta = (k / (4.0 * bending)).sqrt().sqrt();
        let lambda = beta * s;
        if lambda > LIFT_OFF {
            caveats.add(Caveat::GasketLetsGo);
        }
        let mean = self.mean_compressed.value;
        let latch = mean * at_latch(lambda);
        let (mut low, mut high) = (1e-3, LIFT_OFF);
        for _ in 0..100 {
            let middle = 0.5 * (low + high);
            if ratio(middle) > self.wanted_ratio {
                low = middle;
            } else {
                high = middle;
            }
        }
        let wanted = low;
        let over = wanted / s;
        Ok(GasketSpacingOutcome {
            foundation_parameter: si(beta),
            pitch_parameter: lambda,
            compression_ratio: ratio(lambda),
            compressed_at_latch: si(latch),
            compressed_between: si(latch * ratio(lambda)),
            latch_force: si(k * s * mean),
            wanted_pitch_parameter: wanted,
            needed_pitch: si(wanted / beta),
            needed_second_moment: si(k / (4.0 * over * over * over * over * self.youngs_modulus.value)),
            needed_line_stiffness: si(4.0 * bending * over * over * over * over),
        })
    }
}
