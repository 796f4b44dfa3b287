use crate::prelude::*;

/// Strip bonded to a stiff sheet and pressed along its length: the force at which it buckles on its bond line.
///
/// # Formula
/// For each width of the strip, with D = E t³/12 and the bond line as a foundation of stiffness k = Ep/η:
/// ```text
/// Nm = D (π m/L)² + k (L/(π m))²       m half waves over the length, the smallest of all m
/// N∞ = 2 √(k D)                        what Nm tends to for long strips; half wave π (D/k)^¼
/// Nf = √(k D)                          a long strip whose end is free and bears the full force there
/// ```
/// Nf is where a decaying wave at the end of a half-infinite strip needs neither moment nor shear to hold it:
/// D r1 r2 = N with the two decaying roots r of D r⁴ + N r² + k = 0.
///
/// # Validity
/// Elastic, straight; a sheet so stiff that the strip alone bends; a bond line thin against the half wave and held across, pulled
/// as much as pressed. Shear lag lets the force at a free end grow from nothing over 1/β: the end then bears more than Nf, and
/// the strip no more than Nm. Length over 12 (D/k)^¼; a shorter strip gets a caveat, its ends meet.
///
/// # Source
/// Timoshenko & Gere, Theory of Elastic Stability, 2nd ed. (1961), art. 2.10, bar on an elastic foundation (from memory,
/// unverified; finite differences agree); M. Hetényi, Beams on Elastic Foundation (1946), chapter on axial force, free ends
/// (from memory, unverified; finite differences agree).
///
/// # Example
/// 1 mm of carbon laminate on 1 mm of flexible adhesive, 240 mm long: 2 √(3e9 N/m³ × 5 N·m) = 245 kN/m (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::BondedStripBuckling;
///
/// let (outcome, _) = BondedStripBuckling {
///     strip_length: mm(240.0),
///     strip_thickness: mm(1.0),
///     strip_youngs_modulus: gigapascal(60.0),
///     bond_thickness: mm(1.0),
///     bond_modulus: megapascal(3.0),
///     compression: newton_per_mm(45.8),
/// }
/// .calculate()?;
/// assert!((outcome.critical_force.value - 245e3).abs() < 245e3 * 0.005);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BondedStripBuckling {
    /// Length of the strip, L.
    #[possible(f64::MIN_POSITIVE..)]
    pub strip_length: Length,
    /// Thickness of the strip, t.
    #[possible(f64::MIN_POSITIVE..)]
    pub strip_thickness: Length,
    /// Young's modulus of the strip along it, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub strip_youngs_modulus: Pressure,
    /// Thickness of the bond line, η.
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_thickness: Length,
    /// Modulus of the bond line across its thickness, Ep: between Young's and that of a layer that cannot draw in.
    #[shown_in("MPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub bond_modulus: Pressure,
    /// Compression of the strip for each width, N: nothing where it is pulled.
    #[possible(0.0..)]
    pub compression: ForcePerLength,
}

/// Forces for each width of the strip.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BondedStripBucklingOutcome {
    /// Stiffness of the bond line across, k: pressure for each opening.
    pub foundation_stiffness: ForcePerVolume,
    /// Compression at which the strip buckles between its ends, Nm.
    pub critical_force: ForcePerLength,
    /// Compression at which a free end buckles that bears it in full, Nf.
    pub critical_force_free_end: ForcePerLength,
    /// Half wave of a long strip, π (D/k)^¼.
    pub half_wave: Length,
    /// Compression over the critical force between the ends.
    pub utilisation: f64,
    /// Compression over the critical force of a free end.
    pub utilisation_free_end: f64,
}

impl Calculation for BondedStripBuckling {
    const NAME: &'static str = "bonded_strip_buckling";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "Timoshenko & Gere, Theory of Elastic Stability",
            edition: "2nd ed., 1961",
            locator: "art. 2.10, bar on an elastic foundation",
            standing: Standing::Memory,
        },
        Source {
            title: "Hetényi, Beams on Elastic Foundation",
            edition: "1946",
            locator: "axial force, free ends",
            standing: Standing::Memory,
        },
    ];
    type Outcome = BondedStripBucklingOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (l, t, eta) = (self.strip_length.value, self.strip_thickness.value, self.bond_thickness.value);
        let d = self.strip_youngs_modulus.value * t * t * t / 12.0;
        let k = self.bond_modulus.value / eta;
        let n = self.compression.value;
        let characteristic = (d / k).sqrt().sqrt();
        let at = |m: f64| {
            let wave = PI * m / l;
            d * wave * wave + k / (wave * wave)
        };
        // The smallest is at one of the two whole numbers about L/(π (D/k)^¼).
        let m = (l / (PI * characteristic)).floor();
        let critical = at(m.max(1.0)).min(at(m + 1.0));
        let free_end = (k * d).sqrt();
        if l < 12.0 * characteristic {
            caveats.add(Caveat::ShortBond);
        }
        Ok(BondedStripBucklingOutcome {
            foundation_stiffness: si(k),
            critical_force: si(critical),
            critical_force_free_end: si(free_end),
            half_wave: si(PI * characteristic),
            utilisation: n / critical,
            utilisation_free_end: n / free_end,
        })
    }
}
