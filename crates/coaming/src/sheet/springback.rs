//! Springback of a bend after the tool has let go.

use crate::prelude::*;

/// Radius and angle that a bend springs back to.
///
/// # Formula
///
/// With the radius Rᵢ and angle αᵢ under the tool, thickness t, yield strength Y and Young's modulus E:
///
/// - x = Rᵢ Y / (E t)
/// - Rᵢ / R_f = 4 x³ − 3 x + 1
/// - α_f (R_f + t/2) = αᵢ (Rᵢ + t/2): the middle line keeps its length
///
/// # Validity
///
/// Pure bending of an elastic, ideally plastic sheet whose radius is large against its thickness: tested for Rᵢ/t of 5 and more,
/// with a caveat below. x is below 0.5: from there on the sheet only flexes and goes back flat. Hardening, friction and the
/// straight shoulders of an air bend are not in it: expect the right size, not the last degree, and bend a test strip.
///
/// # Source
///
/// F. J. Gardiner, The springback of metals, Trans. ASME 79 (1957) 1–9, as given by Kalpakjian and Schmid, Manufacturing
/// Processes for Engineering Materials, sheet-metal forming.
///
/// # Example
///
/// Kalpakjian and Schmid's example, from memory: 0.5 in under the tool, 0.0359 in thick, 40 000 psi, 29 × 10⁶ psi gives a ratio of
/// 0.942 and a radius of 0.531 in (B023, B024).
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = Springback {
///     tool_radius: inch(0.5),
///     thickness: inch(0.0359),
///     yield_strength: psi(40_000.0),
///     youngs_modulus: psi(29e6),
///     tool_bend_angle: deg(90.0),
/// }
/// .calculate()?;
/// assert!((outcome.springback_ratio - 0.942).abs() < 0.001);
/// assert!((outcome.final_radius.value / 0.0254 - 0.531).abs() < 0.001);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct Springback {
    /// Inside radius under the tool, Rᵢ.
    #[possible(f64::MIN_POSITIVE..)]
    pub tool_radius: Length,
    /// Thickness of the bare sheet, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub thickness: Length,
    /// Yield strength, Y.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub yield_strength: Pressure,
    /// Young's modulus, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Bend angle under the tool, αᵢ: the angle the sheet is turned through.
    #[possible(0.0..=PI)]
    #[also(tool_included_angle, super::supplement)]
    pub tool_bend_angle: Angle,
}

/// What a bend springs back to.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SpringbackOutcome {
    /// Radius under the tool over final radius, Rᵢ/R_f.
    pub springback_ratio: f64,
    /// Inside radius after springback, R_f.
    pub final_radius: Length,
    /// Bend angle after springback, α_f.
    pub final_bend_angle: Angle,
    /// Angle that the bend opens by, αᵢ − α_f.
    pub springback_angle: Angle,
    /// Yield number, x: 0.5 is where the sheet no longer takes a set.
    pub yield_number: f64,
}

/// The radius under the tool, in thicknesses, from which the formula was tested.
pub(super) const TESTED_RADIUS: f64 = 5.0;

impl Calculation for Springback {
    const NAME: &'static str = "springback";
    const SOURCE: &'static [Source] = &[GARDINER, KALPAKJIAN];
    type Outcome = SpringbackOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (ri, t, y, e) = (
            self.tool_radius.value,
            self.thickness.value,
            self.yield_strength.value,
            self.youngs_modulus.value,
        );
        let x = ri * y / (e * t);
        if x >= 0.5 {
            return Err(self.impossible(
                "tool_radius",
                format!("below {:.4} mm, or the sheet only flexes and springs back flat", 0.5e3 * e * t / y),
            ));
        }
        if ri < TESTED_RADIUS * t {
            caveats.add(Caveat::OutsideTested);
        }
        // 4x³ − 3x + 1 in its factors, so that it does not cancel near x = 1/2.
        let ratio = math::square(1.0 - 2.0 * x) * (1.0 + x);
        let rf = ri / ratio;
        let final_angle = self.tool_bend_angle.value * ((ri + t / 2.0) / (rf + t / 2.0));
        Ok(SpringbackOutcome {
            springback_ratio: ratio,
            final_radius: si(rf),
            final_bend_angle: si(final_angle),
            springback_angle: si(self.tool_bend_angle.value - final_angle),
            yield_number: x,
        })
    }
}

/// The formula's author.
pub(super) const GARDINER: Source = Source {
    title: "F. J. Gardiner, The springback of metals, Trans. ASME 79",
    edition: "1957",
    locator: "pp. 1-9",
    standing: Standing::SecondHand,
};

/// The textbook that gives it with an example.
pub(super) const KALPAKJIAN: Source = Source {
    title: "Kalpakjian & Schmid, Manufacturing Processes for Engineering Materials",
    edition: "",
    locator: "sheet-metal forming, example on springback",
    standing: Standing::Memory,
};
