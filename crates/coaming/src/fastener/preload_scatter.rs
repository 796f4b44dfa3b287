//! Band of preload by the published uncertainty of the method.

use crate::prelude::*;

/// How the preload is controlled, with the published uncertainty of the method.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum TighteningMethod {
    /// By feel: ±35 % (NASA RP-1228).
    ByFeel,
    /// Torque wrench: ±25 % (NASA RP-1228).
    TorqueWrench,
    /// Torque wrench, unlubricated: ±35 % (NSTS 08307).
    TorqueUnlubricated,
    /// Torque wrench, lubricated: ±25 % (NSTS 08307).
    TorqueLubricated,
    /// Turn of the nut: ±15 % (NASA RP-1228).
    TurnOfNut,
    /// Load-indicating washer: ±10 % (NASA RP-1228).
    LoadIndicatingWasher,
    /// The uncertainty that is given beside it.
    Stated,
}

/// Smallest and largest preload by the uncertainty of the tightening method.
///
/// # Formula
/// Fmin = (1 − u) F, Fmax = (1 + u) F; tightening factor αA = Fmax/Fmin.
///
/// # Validity
/// Steel screws in steel joints, from published tests; a locking thread, a soft joint or a plated part may scatter more.
/// The figures of the methods are unverified: state your own where you have it.
///
/// # Source
/// NASA RP-1228, Fastener Design Manual (1990), and NSTS 08307 rev. A (1998), tables of preload uncertainty.
///
/// # Example
/// A torque wrench scatters by 25 % (NASA RP-1228, unverified): 10 kN may be 7.5 kN to 12.5 kN.
/// ```
/// use coaming::fastener::{PreloadScatter, TighteningMethod};
/// use coaming::prelude::*;
///
/// let (scatter, _) = PreloadScatter {
///     nominal_preload: kilonewton(10.0),
///     method: TighteningMethod::TorqueWrench,
///     uncertainty: None,
/// }
/// .calculate()?;
/// assert_eq!(scatter.smallest_preload, kilonewton(7.5));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct PreloadScatter {
    /// Nominal preload, F.
    #[possible(f64::MIN_POSITIVE..)]
    pub nominal_preload: Force,
    /// How the preload is controlled.
    pub method: TighteningMethod,
    /// Uncertainty as a part of the nominal preload, u; for the method `stated` only.
    #[possible(0.0..1.0)]
    pub uncertainty: Option<f64>,
}

/// Outcome of [`PreloadScatter`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct PreloadScatterOutcome {
    /// Smallest preload, Fmin.
    pub smallest_preload: Force,
    /// Largest preload, Fmax.
    pub largest_preload: Force,
    /// Uncertainty that was used, u.
    pub uncertainty: f64,
    /// Tightening factor, αA = Fmax/Fmin.
    pub tightening_factor: f64,
}

impl Calculation for PreloadScatter {
    const NAME: &'static str = "preload_scatter";
    const SOURCE: &'static [Source] = &[
        Source {
            title: "NASA RP-1228",
            edition: "1990",
            locator: "table of preload uncertainty",
            standing: Standing::Memory,
        },
        Source {
            title: "NSTS 08307",
            edition: "rev. A, 1998",
            locator: "table of preload uncertainty",
            standing: Standing::Memory,
        },
    ];
    type Outcome = PreloadScatterOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let published = match self.method {
            TighteningMethod::ByFeel | TighteningMethod::TorqueUnlubricated => Some(0.35),
            TighteningMethod::TorqueWrench | TighteningMethod::TorqueLubricated => Some(0.25),
            TighteningMethod::TurnOfNut => Some(0.15),
            TighteningMethod::LoadIndicatingWasher => Some(0.10),
            TighteningMethod::Stated => None,
        };
        let u = match (published, self.uncertainty) {
            (Some(u), None) => {
                caveats.add(Caveat::UnverifiedScatter);
                u
            }
            (None, Some(u)) => u,
            (Some(_), Some(_)) => {
                return Err(Error::inconsistent(
                    "method, uncertainty",
                    "an uncertainty goes with the method `stated` only",
                ));
            }
            (None, None) => {
                return Err(Error::inconsistent(
                    "method, uncertainty",
                    "the method `stated` needs an uncertainty",
                ));
            }
        };
        let nominal = self.nominal_preload.value;
        Ok(PreloadScatterOutcome {
            smallest_preload: si((1.0 - u) * nominal),
            largest_preload: si((1.0 + u) * nominal),
            uncertainty: u,
            tightening_factor: (1.0 + u) / (1.0 - u),
        })
    }
}
