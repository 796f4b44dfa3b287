use crate::prelude::*;

/// Pressure and line force of a sponge gasket known by its ASTM D1056 grade alone: an estimate, as a band.
///
/// # Formula
/// The grade gives a band of pressure at 25 % compression, p25. It is carried to other compressions c by one
/// stated shape:
/// ```text
/// f(c) = 3 c / (1 − c)             f(0.25) = 1
/// p    = p25 f(c)                  pressure
/// q    = p w                       line force, w the width
/// k    = 3 p25 w / ((1 − c)² H)    line stiffness: change of line force with closing, H the free height
/// ```
/// The shape is that of the air in closed cells, pressed at constant temperature without bulging: p0 c / (1 −
/// c − φ) with a small solid fraction φ, scaled through the point at 25 %. The middle of the band is the mean
/// of its limits.
///
/// # Validity
/// The band at 25 % is the grade's; the shape is an **estimate**, and says so by a caveat. Tested range 15 %
/// to 50 % compression. Real sponge is stiffer at the start and, open-celled, flatter in the middle. Slow
/// closing at room temperature; no set, no ageing. A maker's measured points (`sponge_curve`) are better.
///
/// # Source
/// ASTM D1056-14: grades 0 to 5 at 25 %, types 1 and 2, classes A, B, C; class D has its own grades 3 to 5.
/// The psi and kPa limits are rounded separately there: say which are meant. No kPa limits are held for class
/// D, grades 3 to 5. L. J. Gibson and M. F. Ashby, Cellular Solids, 2nd ed. 1997, ch. 5: gas in closed cells.
///
/// # Example
/// Grade 1 by its kPa limits, 15 to 35, at 25 %: middle 25 kPa; on a strip 12 mm wide 0.3 N/mm.
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{DeflectionGrade, PublishedLimits, SpongeClass, SpongeGrade};
///
/// let (outcome, _) = SpongeGrade {
///     grade: DeflectionGrade::Grade1,
///     sponge_class: SpongeClass::A,
///     published_limits: PublishedLimits::Kilopascal,
///     quarter_pressure: None,
///     compression: 0.25,
///     width: mm(12.0),
///     free_height: mm(10.0),
/// }
/// .calculate()?;
/// assert!((outcome.line_force.value - 300.0).abs() < 1e-9);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SpongeGrade {
    /// Grade: third character of the designation (2A1 is type 2, class A, grade 1).
    pub grade: DeflectionGrade,
    /// Class: letter of the designation.
    pub sponge_class: SpongeClass,
    /// Which of the standard's two columns of limits is meant.
    pub published_limits: PublishedLimits,
    /// A maker's pressure at 25 %, p25; takes the place of the whole band.
    #[possible(f64::MIN_POSITIVE..)]
    pub quarter_pressure: Option<Pressure>,
    /// Compression, c: closed part of the free height.
    #[possible(0.0..=0.95)]
    #[tested(0.15..=0.50)]
    pub compression: f64,
    /// Width of the strip, w.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Length,
    /// Free height of the strip, H.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Length,
}

/// Compression-deflection grade of ASTM D1056.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum DeflectionGrade {
    /// Grade 0: under 2 psi, 15 kPa.
    #[option("0")]
    Grade0,
    /// Grade 1: 2 to 5 psi, 15 to 35 kPa.
    #[option("1")]
    Grade1,
    /// Grade 2: 5 to 9 psi, 35 to 63 kPa.
    #[option("2")]
    Grade2,
    /// Grade 3: 9 to 13 psi, 63 to 91 kPa; class D 9 to 15 psi.
    #[option("3")]
    Grade3,
    /// Grade 4: 13 to 17 psi, 91 to 119 kPa; class D 15 to 22 psi.
    #[option("4")]
    Grade4,
    /// Grade 5: 17 to 25 psi, 119 to 168 kPa; class D 22 to 30 psi.
    #[option("5")]
    Grade5,
}

/// Class of ASTM D1056: what the rubber stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum SpongeClass {
    /// Class A: not for oil (for example EPDM).
    #[option("A")]
    A,
    /// Class B: oil, low swell (for example nitrile).
    #[option("B")]
    B,
    /// Class C: oil, medium swell (for example neoprene).
    #[option("C")]
    C,
    /// Class D: extreme temperature (for example silicone).
    #[option("D")]
    D,
}

/// The two columns of limits, rounded separately in the standard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum PublishedLimits {
    /// The limits in kPa.
    #[option("kPa")]
    Kilopascal,
    /// The limits in psi.
    #[option("psi")]
    Psi,
}

/// Pressure, line force and stiffness of the strip, as a band.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SpongeGradeOutcome {
    /// Pressure at 25 %, softest of the grade.
    pub quarter_pressure_min: Pressure,
    /// Pressure at 25 %, middle of the grade.
    pub quarter_pressure: Pressure,
    /// Pressure at 25 %, firmest of the grade.
    pub quarter_pressure_max: Pressure,
    /// Shape: pressure over that at 25 %, f.
    pub shape: f64,
    /// Pressure of the softest.
    pub pressure_min: Pressure,
    /// Pressure of the middle, p.
    pub pressure: Pressure,
    /// Pressure of the firmest.
    pub pressure_max: Pressure,
    /// Line force of the softest.
    pub line_force_min: ForcePerLength,
    /// Line force of the middle, q.
    pub line_force: ForcePerLength,
    /// Line force of the firmest.
    pub line_force_max: ForcePerLength,
    /// Line stiffness of the softest: change of line force with closing (N/m for each m).
    #[shown_in("N/mm^2")]
    pub line_stiffness_min: Pressure,
    /// Line stiffness of the middle, k.
    #[shown_in("N/mm^2")]
    pub line_stiffness: Pressure,
    /// Line stiffness of the firmest.
    #[shown_in("N/mm^2")]
    pub line_stiffness_max: Pressure,
}

/// One pound-force for each square inch, in pascal: 4.4482216152605 / 0.0254².
const PSI: f64 = 6_894.757_293_168_361;

impl SpongeGrade {
    /// Limits at 25 % in pascal; none where the standard's kPa limits are not held.
    fn limits(&self) -> Option<(f64, f64)> {
        use DeflectionGrade as G;
        let wide = self.sponge_class == SpongeClass::D;
        let in_psi = match self.grade {
            G::Grade0 => (0.0, 2.0),
            G::Grade1 => (2.0, 5.0),
            G::Grade2 => (5.0, 9.0),
            G::Grade3 if wide => (9.0, 15.0),
            G::Grade3 => (9.0, 13.0),
            G::Grade4 if wide => (15.0, 22.0),
            G::Grade4 => (13.0, 17.0),
            G::Grade5 if wide => (22.0, 30.0),
            G::Grade5 => (17.0, 25.0),
        };
        let in_kilopascal = match self.grade {
            G::Grade0 => Some((0.0, 15.0)),
            G::Grade1 => Some((15.0, 35.0)),
            G::Grade2 => Some((35.0, 63.0)),
            _ if wide => None,
            G::Grade3 => Some((63.0, 91.0)),
            G::Grade4 => Some((91.0, 119.0)),
            G::Grade5 => Some((119.0, 168.0)),
        };
        match self.published_limits {
            PublishedLimits::Psi => Some((in_psi.0 * PSI, in_psi.1 * PSI)),
            PublishedLimits::Kilopascal => in_kilopascal.map(|(low, high)| (low * 1e3, high * 1e3)),
        }
    }
}

impl Calculation for SpongeGrade {
    const NAME: &'static str = "sponge_grade";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "ASTM D1056",
            edition: "2014",
            locator: "grade designation; table of basic requirements",
            standing: Standing::SecondHand,
        },
        Source {
            title: "Gibson and Ashby, Cellular Solids",
            edition: "2nd ed. 1997",
            locator: "ch. 5, gas in closed cells",
            standing: Standing::Memory,
        },
    ];
    type Outcome = SpongeGradeOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        caveats.add(Caveat::SpongeShapeEstimated);
        let Some((low, high)) = self.limits() else {
            return Err(Error::inconsistent(
                "grade, sponge_class, published_limits",
                "no kPa limits are held for class D, grades 3 to 5; use the psi limits",
            ));
        };
        let (low, middle, high) = match self.quarter_pressure {
            Some(measured) => {
                let measured = measured.value;
                if !(low..=high).contains(&measured) {
                    caveats.add(Caveat::SpongeOutsideGrade);
                }
                (measured, measured, measured)
            }
            None => (low, 0.5 * (low + high), high),
        };
        let c = self.compression;
        let f = 3.0 * c / (1.0 - c);
        let w = self.width.value;
        let stiffness = |p25: f64| si(3.0 * p25 * w / ((1.0 - c) * (1.0 - c) * self.free_height.value));
        Ok(SpongeGradeOutcome {
            quarter_pressure_min: si(low),
            quarter_pressure: si(middle),
            quarter_pressure_max: si(high),
            shape: f,
            pressure_min: si(low * f),
            pressure: si(middle * f),
            pressure_max: si(high * f),
            line_force_min: si(low * f * w),
            line_force: si(middle * f * w),
            line_force_max: si(high * f * w),
            line_stiffness_min: stiffness(low),
            line_stiffness: stiffness(middle),
            line_stiffness_max: stiffness(high),
        })
    }
}
