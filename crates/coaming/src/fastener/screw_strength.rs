//! Strength classes of screws, and the loads of a size.

use super::designation::ThreadDesignation;
use super::thread::{ThreadForm, ThreadGeometry};
use crate::prelude::*;

/// Strength class of a screw: ISO 898-1, ISO 3506-1 or SAE J429.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum StrengthClass {
    /// ISO 898-1, class 4.6.
    #[option("4.6")]
    Class4_6,
    /// ISO 898-1, class 4.8.
    #[option("4.8")]
    Class4_8,
    /// ISO 898-1, class 5.6.
    #[option("5.6")]
    Class5_6,
    /// ISO 898-1, class 5.8.
    #[option("5.8")]
    Class5_8,
    /// ISO 898-1, class 6.8.
    #[option("6.8")]
    Class6_8,
    /// ISO 898-1, class 8.8.
    #[option("8.8")]
    Class8_8,
    /// ISO 898-1, class 9.8.
    #[option("9.8")]
    Class9_8,
    /// ISO 898-1, class 10.9.
    #[option("10.9")]
    Class10_9,
    /// ISO 898-1, class 12.9.
    #[option("12.9")]
    Class12_9,
    /// ISO 3506-1, A2-50.
    #[option("A2-50")]
    A2_50,
    /// ISO 3506-1, A2-70.
    #[option("A2-70")]
    A2_70,
    /// ISO 3506-1, A2-80.
    #[option("A2-80")]
    A2_80,
    /// ISO 3506-1, A4-50.
    #[option("A4-50")]
    A4_50,
    /// ISO 3506-1, A4-70.
    #[option("A4-70")]
    A4_70,
    /// ISO 3506-1, A4-80.
    #[option("A4-80")]
    A4_80,
    /// SAE J429, grade 1.
    #[option("SAE 1")]
    SaeGrade1,
    /// SAE J429, grade 2.
    #[option("SAE 2")]
    SaeGrade2,
    /// SAE J429, grade 5.
    #[option("SAE 5")]
    SaeGrade5,
    /// SAE J429, grade 8.
    #[option("SAE 8")]
    SaeGrade8,
}

/// What the head carries beside the thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum HeadLoadability {
    /// The head carries what the thread carries.
    Full,
    /// Reduced loadability: a countersunk socket head of ISO 10642 carries 80 % of the thread's tensile load.
    Reduced,
}

/// Strength of a screw of a standard class: stresses, and the loads that its stress area carries.
///
/// # Formula
/// Load = stress × As. Reduced loadability: tensile load × 0.8.
///
/// # Validity
/// ISO 898-1: coarse M1.6 to M39 and fine from M8 × 1 (here to M24); class 9.8 to M16. ISO 3506-1: metric to M24.
/// SAE J429: from 1/4 in. A size outside its standard is refused, never extrapolated. Room temperature.
/// ISO 3506-1 gives a 0.2 % stress and no proof stress; older editions end classes 70 and 80 at M20.
///
/// # Source
/// ISO 898-1 (2013), tables 3 to 7; ISO 3506-1 (2020); SAE J429; ISO 10642 (2019) for the reduced loadability.
/// Classes 4.6, 8.8, 10.9, 12.9, A2-50, A2-70 and A4-80 are held by the project's check values; the others are unverified
/// and carry a caveat.
///
/// # Example
/// ISO 898-1: M4 of class 8.8 has a proof load of 5100 N (second-hand).
/// ```
/// use coaming::fastener::{HeadLoadability, ScrewStrength, StrengthClass, ThreadDesignation};
/// use coaming::prelude::*;
///
/// let (strength, _) = ScrewStrength {
///     strength_class: StrengthClass::Class8_8,
///     thread: ThreadDesignation::M4,
///     head_loadability: HeadLoadability::Full,
/// }
/// .calculate()?;
/// assert!(strength.proof_load.is_some_and(|load| (load.value - 5100.0).abs() < 25.0));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ScrewStrength {
    /// Strength class.
    pub strength_class: StrengthClass,
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// What the head carries beside the thread.
    pub head_loadability: HeadLoadability,
}

/// Outcome of [`ScrewStrength`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ScrewStrengthOutcome {
    /// Smallest tensile strength, Rm.
    #[shown_in("MPa")]
    pub tensile_strength: Pressure,
    /// Smallest yield strength or 0.2 % stress, Rp.
    #[shown_in("MPa")]
    pub yield_strength: Pressure,
    /// Proof stress, Sp; absent where the standard has none.
    #[shown_in("MPa")]
    pub proof_stress: Option<Pressure>,
    /// Stress area, As.
    pub stress_area: Area,
    /// Smallest tensile load, reduced where the head's loadability is.
    pub tensile_load: Force,
    /// Load at the yield strength.
    pub yield_load: Force,
    /// Proof load; absent where the standard has none.
    pub proof_load: Option<Force>,
}

/// Tensile strength, yield strength and proof stress in Pa, and whether the project's check values hold them.
struct Row(f64, f64, Option<f64>, bool);

const MPA: f64 = 1e6;
/// One kilopound per square inch in Pa.
const KSI: f64 = 4.448_221_615_260_5e3 / (0.0254 * 0.0254);

impl ScrewStrength {
    fn row(&self, thread: &ThreadGeometry) -> Result<Row, Error> {
        let iso = |rm: f64, rp: f64, sp: f64, checked| {
            let coarse = thread.form == ThreadForm::MetricCoarse;
            let fine =
                thread.form == ThreadForm::MetricFine && thread.diameter >= 8e-3 && thread.pitch >= 1e-3;
            if coarse || fine {
                Ok(Row(rm * MPA, rp * MPA, Some(sp * MPA), checked))
            } else {
                Err(self.outside("ISO 898-1 covers metric coarse threads, and fine ones from M8 x 1"))
            }
        };
        let stainless = |rm: f64, rp: f64, checked| {
            if thread.form.is_unified() {
                Err(self.outside("ISO 3506-1 covers metric threads"))
            } else {
                Ok(Row(rm * MPA, rp * MPA, None, checked))
            }
        };
        let sae = |rm: f64, rp: f64, sp: f64| {
            // A tenth of a millimetre below 1/4 in, so that no rounding decides.
            if thread.form.is_unified() && thread.diameter > 6.25e-3 {
                Ok(Row(rm * KSI, rp * KSI, Some(sp * KSI), false))
            } else {
                Err(self.outside("SAE J429 covers unified threads from 1/4 in"))
            }
        };
        let to_m16 = thread.diameter < 16.5e-3;
        match self.strength_class {
            StrengthClass::Class4_6 => iso(400.0, 240.0, 225.0, true),
            StrengthClass::Class4_8 => iso(420.0, 340.0, 310.0, false),
            StrengthClass::Class5_6 => iso(500.0, 300.0, 280.0, false),
            StrengthClass::Class5_8 => iso(520.0, 420.0, 380.0, false),
            StrengthClass::Class6_8 => iso(600.0, 480.0, 440.0, false),
            StrengthClass::Class8_8 if to_m16 => iso(800.0, 640.0, 580.0, true),
            StrengthClass::Class8_8 => iso(830.0, 660.0, 600.0, false),
            StrengthClass::Class9_8 if to_m16 => iso(900.0, 720.0, 650.0, false),
            StrengthClass::Class9_8 => Err(self.outside("class 9.8 ends at M16")),
            StrengthClass::Class10_9 => iso(1040.0, 940.0, 830.0, true),
            StrengthClass::Class12_9 => iso(1220.0, 1100.0, 970.0, true),
            StrengthClass::A2_50 => stainless(500.0, 210.0, true),
            StrengthClass::A2_70 => stainless(700.0, 450.0, true),
            StrengthClass::A2_80 => stainless(800.0, 600.0, false),
            StrengthClass::A4_50 => stainless(500.0, 210.0, false),
            StrengthClass::A4_70 => stainless(700.0, 450.0, false),
            StrengthClass::A4_80 => stainless(800.0, 600.0, true),
            StrengthClass::SaeGrade1 => sae(60.0, 36.0, 33.0),
            StrengthClass::SaeGrade2 if thread.diameter < 19.1e-3 => sae(74.0, 57.0, 55.0),
            StrengthClass::SaeGrade2 => sae(60.0, 36.0, 33.0),
            StrengthClass::SaeGrade5 => sae(120.0, 92.0, 85.0),
            StrengthClass::SaeGrade8 => sae(150.0, 130.0, 120.0),
        }
    }

    fn outside(&self, why: &str) -> Error {
        Error::inconsistent(
            "strength_class, thread",
            format!("the size is outside the standard of the class: {why}"),
        )
    }
}

impl Calculation for ScrewStrength {
    const NAME: &'static str = "screw_strength";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "ISO 898-1",
            edition: "2013",
            locator: "tables 3 to 7",
            standing: Standing::SecondHand,
        },
        Source {
            title: "ISO 3506-1",
            edition: "2020",
            locator: "mechanical properties table",
            standing: Standing::SecondHand,
        },
        Source { title: "SAE J429", edition: "", locator: "table 1", standing: Standing::Memory },
        Source {
            title: "ISO 10642",
            edition: "2019",
            locator: "reduced loadability, 80 %",
            standing: Standing::SecondHand,
        },
    ];
    type Outcome = ScrewStrengthOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let thread = ThreadGeometry::of(self.thread);
        let Row(rm, rp, sp, checked) = self.row(&thread)?;
        if !checked {
            caveats.add(Caveat::UnverifiedStrength);
        }
        let area = thread.stress_area;
        let loadability = match self.head_loadability {
            HeadLoadability::Full => 1.0,
            HeadLoadability::Reduced => 0.8,
        };
        Ok(ScrewStrengthOutcome {
            tensile_strength: si(rm),
            yield_strength: si(rp),
            proof_stress: sp.map(si),
            stress_area: si(area),
            tensile_load: si(loadability * rm * area),
            yield_load: si(rp * area),
            proof_load: sp.map(|stress| si(stress * area)),
        })
    }
}
