//! The tool radius and angle that leave a wanted bend after springback.

use super::springback::{GARDINER, KALPAKJIAN, TESTED_RADIUS};
use crate::prelude::*;

/// Tool radius and over-bend angle that spring back to a wanted radius and angle.
///
/// # Formula
///
/// The inverse of `springback`. With the wanted radius R_f and angle α_f, thickness t, yield strength Y, Young's modulus E:
///
/// - g = R_f Y / (E t) and q = 3 + 1/g; x is the root of 4 x³ − q x + 1 = 0 between 0 and 1/2:
///   x = √(q/3) sin(⅓ arcsin((3/q)^(3/2)))
/// - tool radius Rᵢ = x E t / Y
/// - angle under the tool αᵢ = α_f (R_f + t/2) / (Rᵢ + t/2); over-bend αᵢ − α_f
///
/// # Validity
///
/// As `springback`. Every radius has a tool radius. An angle under the tool above 180° cannot be made and is an error. In air bending the
/// die opening sets the radius: only the angle is then at hand.
///
/// # Source
///
/// As `springback`; the root by the trigonometric solution of the cubic.
///
/// # Example
///
/// Back from Kalpakjian and Schmid's 0.531 in to the 0.5 in under the tool (B024, from memory).
///
/// ```
/// use coaming::prelude::*;
/// use coaming::sheet::*;
///
/// let (outcome, _) = OverBend {
///     wanted_radius: inch(0.531),
///     thickness: inch(0.0359),
///     yield_strength: psi(40_000.0),
///     youngs_modulus: psi(29e6),
///     wanted_bend_angle: deg(90.0),
/// }
/// .calculate()?;
/// assert!((outcome.tool_radius.value / 0.0254 - 0.5).abs() < 0.001);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct OverBend {
    /// Wanted inside radius, R_f.
    #[possible(f64::MIN_POSITIVE..)]
    pub wanted_radius: Length,
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
    /// Wanted bend angle, α_f: the angle the sheet is turned through.
    #[possible(0.0..=PI)]
    #[also(wanted_included_angle, super::supplement)]
    pub wanted_bend_angle: Angle,
}

/// The tool that leaves the wanted bend.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct OverBendOutcome {
    /// Inside radius under the tool, Rᵢ.
    pub tool_radius: Length,
    /// Bend angle under the tool, αᵢ.
    pub tool_bend_angle: Angle,
    /// Angle to bend past the wanted one, αᵢ − α_f.
    pub over_bend_angle: Angle,
    /// Radius under the tool over wanted radius, Rᵢ/R_f.
    pub springback_ratio: f64,
    /// Yield number, x: 0.5 is where the sheet no longer takes a set.
    pub yield_number: f64,
}

impl Calculation for OverBend {
    const NAME: &'static str = "over_bend";
    const SOURCE: &'static [Source] = &[GARDINER, KALPAKJIAN];
    type Outcome = OverBendOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (rf, t, y, e) = (
            self.wanted_radius.value,
            self.thickness.value,
            self.yield_strength.value,
            self.youngs_modulus.value,
        );
        let g = rf * y / (e * t);
        let q = 3.0 + 1.0 / g;
        let third = 3.0 / q;
        let x = (q / 3.0).sqrt() * math::sin(math::asin(third * third.sqrt()) / 3.0);
        let ri = x * e * t / y;
        if ri < TESTED_RADIUS * t {
            caveats.add(Caveat::OutsideTested);
        }
        let wanted = self.wanted_bend_angle.value;
        let under_tool = wanted * ((rf + t / 2.0) / (ri + t / 2.0));
        if under_tool > PI {
            return Err(self.impossible(
                "wanted_bend_angle",
                format!(
                    "at most {:.3} deg at this radius, or the angle under the tool would pass 180 deg",
                    (PI * (ri + t / 2.0) / (rf + t / 2.0)).to_degrees()
                ),
            ));
        }
        Ok(OverBendOutcome {
            tool_radius: si(ri),
            tool_bend_angle: si(under_tool),
            over_bend_angle: si(under_tool - wanted),
            springback_ratio: ri / rf,
            yield_number: x,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::Springback;

    #[test]
    fn what_is_over_bent_springs_back_to_what_was_wanted() {
        for wanted_mm in [0.5, 2.0, 8.0, 40.0, 150.0, 900.0, 20_000.0] {
            let over_bend = OverBend {
                wanted_radius: mm(wanted_mm),
                thickness: mm(1.6),
                yield_strength: megapascal(195.0),
                youngs_modulus: gigapascal(69.6),
                wanted_bend_angle: deg(0.5),
            };
            let (tool, _) = over_bend.calculate().unwrap();
            let springback = Springback {
                tool_radius: tool.tool_radius,
                thickness: over_bend.thickness,
                yield_strength: over_bend.yield_strength,
                youngs_modulus: over_bend.youngs_modulus,
                tool_bend_angle: tool.tool_bend_angle,
            };
            let (back, _) = springback.calculate().unwrap();
            assert!((back.final_radius / over_bend.wanted_radius).value - 1.0 < 1e-9, "{wanted_mm} mm");
            assert!((over_bend.wanted_radius / back.final_radius).value - 1.0 < 1e-9, "{wanted_mm} mm");
            assert!(
                (back.final_bend_angle - over_bend.wanted_bend_angle).abs() < deg(1e-9),
                "{wanted_mm} mm"
            );
        }
    }
}
