//! Limits of size of a thread pair of the medium class.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use super::thread_tolerance::Limits;
use crate::prelude::*;

/// Limits of size of a screw's and a nut's thread of the medium class: 6g and 6H, or 2A and 2B.
///
/// # Formula
/// ISO 965-1: d max = d − es, d min = d max − Td; d2 max = d2 − es, d2 min = d2 max − Td2; D2 max = d2 + TD2; D1 max = d1 + TD1,
/// with d2 and d1 rounded to 0.001 mm as ISO 724 prints them.
/// ASME B1.1, in inches, with P = 1/n: Td2 = 0.0015 (∛d + √d + 10 ∛P²), allowance es = 0.3 Td2, Td = 0.06 ∛P², TD2 = 1.3 Td2;
/// TD1 = 0.25 P − 0.4 P² from 1/4 in, and 0.05 ∛P² + 0.03 P/d − 0.002 below, within 0.25 P − 0.4 P² and 0.394 P.
///
/// # Validity
/// Bare threads: a coating comes on top, up to the basic size. Normal length of engagement. Metric pitches that ISO 965-1
/// has no grade 6 for (M1.6 × 0.2, M2 × 0.25) are refused.
///
/// # Source
/// ISO 965-1 (tables of tolerances and of the deviation g) and ASME B1.1 (class 2A and 2B formulas). Recalled, thus with a
/// caveat; M5, M6, M8 and M10 are confirmed by printed strip areas (Bickford) that use them.
///
/// # Example
/// M5: the largest D1 is 4.334 mm, the smallest d2 4.361 mm, which give the printed strip areas.
/// ```
/// use coaming::fastener::{ThreadDesignation, ThreadLimits};
/// use coaming::prelude::*;
///
/// let (limits, _) = ThreadLimits { thread: ThreadDesignation::M5 }.calculate()?;
/// assert!((limits.internal_minor_largest - mm(4.334)).abs() < mm(0.0005));
/// assert!((limits.external_pitch_smallest - mm(4.361)).abs() < mm(0.0005));
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ThreadLimits {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
}

/// Outcome of [`ThreadLimits`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct ThreadLimitsOutcome {
    /// Smallest major diameter of the screw.
    pub external_major_smallest: Length,
    /// Largest major diameter of the screw.
    pub external_major_largest: Length,
    /// Smallest pitch diameter of the screw.
    pub external_pitch_smallest: Length,
    /// Largest pitch diameter of the screw.
    pub external_pitch_largest: Length,
    /// Smallest pitch diameter of the nut.
    pub internal_pitch_smallest: Length,
    /// Largest pitch diameter of the nut.
    pub internal_pitch_largest: Length,
    /// Smallest minor diameter of the nut.
    pub internal_minor_smallest: Length,
    /// Largest minor diameter of the nut.
    pub internal_minor_largest: Length,
}

impl Calculation for ThreadLimits {
    const NAME: &'static str = "thread_limits";
    const SOURCE: &'static [Source] = &[
        Source { title: "ISO 965-1", edition: "2013", locator: "6H and 6g", standing: Standing::Memory },
        Source {
            title: "ASME B1.1",
            edition: "2003",
            locator: "classes 2A and 2B",
            standing: Standing::Memory,
        },
    ];
    type Outcome = ThreadLimitsOutcome;

    fn formula(&self, caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let limits = medium_limits(self.thread)?;
        if !limits.confirmed {
            caveats.add(Caveat::UnverifiedDimension);
        }
        let [external_major_smallest, external_major_largest] = limits.external_major;
        let [external_pitch_smallest, external_pitch_largest] = limits.external_pitch;
        let [internal_pitch_smallest, internal_pitch_largest] = limits.internal_pitch;
        let [internal_minor_smallest, internal_minor_largest] = limits.internal_minor;
        Ok(ThreadLimitsOutcome {
            external_major_smallest: si(external_major_smallest),
            external_major_largest: si(external_major_largest),
            external_pitch_smallest: si(external_pitch_smallest),
            external_pitch_largest: si(external_pitch_largest),
            internal_pitch_smallest: si(internal_pitch_smallest),
            internal_pitch_largest: si(internal_pitch_largest),
            internal_minor_smallest: si(internal_minor_smallest),
            internal_minor_largest: si(internal_minor_largest),
        })
    }
}

/// Limits of the medium class, or why there are none.
pub(crate) fn medium_limits(thread: ThreadDesignation) -> Result<Limits, Error> {
    Limits::medium(&ThreadGeometry::of(thread)).ok_or_else(|| {
        Error::inconsistent("thread", "ISO 965-1 has no grade 6 for so fine a pitch; take a coarser thread")
    })
}
