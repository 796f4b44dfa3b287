//! Stiffness of a screw: head, stepped shank, free thread, engaged thread and nut.

use super::designation::ThreadDesignation;
use super::thread::ThreadGeometry;
use crate::prelude::*;

/// How the screw is held at its far end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum JointKind {
    /// Through-bolted, with a nut.
    ThroughBolted,
    /// Screwed into a tapped part or an insert.
    Tapped,
}

/// Form of the head, for its own compliance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum HeadStiffness {
    /// Hexagon head: 0.5 d.
    Hexagon,
    /// Socket head: 0.4 d.
    Socket,
}

/// One piece of the screw's shank.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct ShankSegment {
    /// Length of the piece.
    #[possible(f64::MIN_POSITIVE..)]
    pub length: Length,
    /// Diameter of the piece.
    #[possible(f64::MIN_POSITIVE..)]
    pub diameter: Length,
}

/// Axial stiffness of a screw from head to nut.
///
/// # Formula
/// δS = δhead + Σ li/(E Ai) + lfree/(E A3) + δG + δM, k = 1/δS. With AN = π d²/4 and A3 = π d3²/4:
/// δhead = 0.5 d/(E AN) for a hexagon, 0.4 d/(E AN) for a socket head; δG = 0.5 d/(E A3);
/// δM = 0.4 d/(EM AN) for a nut, 0.33 d/(EM AN) for a tapped part, EM the modulus of nut or part.
///
/// # Validity
/// Axial load, screws of ISO proportions. A plastic part with the thread in it (no insert) is far softer than δM says at its
/// modulus: the factors were made for metal.
///
/// # Source
/// VDI 2230-1 (2015), section 5.1.1 (recalled, unverified).
///
/// # Example
/// M8, 20 mm shank of 8 mm and 10 mm of free thread, hexagon, nut, steel throughout: 4.719e-6 mm/N by hand, 211.9 kN/mm.
/// ```
/// use coaming::fastener::{BoltStiffness, HeadStiffness, JointKind, ShankSegment, ThreadDesignation};
/// use coaming::prelude::*;
///
/// let (bolt, _) = BoltStiffness {
///     thread: ThreadDesignation::M8,
///     youngs_modulus: gigapascal(205.0),
///     head: HeadStiffness::Hexagon,
///     shank: vec![ShankSegment { length: mm(20.0), diameter: mm(8.0) }],
///     free_thread_length: mm(10.0),
///     joint_kind: JointKind::ThroughBolted,
///     nut_youngs_modulus: gigapascal(205.0),
/// }
/// .calculate()?;
/// assert!((bolt.stiffness.value / 1e6 - 211.9).abs() < 0.05);
/// # Ok::<(), coaming::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct BoltStiffness {
    /// Designation of the thread.
    pub thread: ThreadDesignation,
    /// Young's modulus of the screw, E.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub youngs_modulus: Pressure,
    /// Form of the head.
    pub head: HeadStiffness,
    /// Unthreaded pieces of the shank within the grip; none for a fully threaded screw.
    pub shank: Vec<ShankSegment>,
    /// Length of thread within the grip that is not engaged.
    #[possible(0.0..)]
    pub free_thread_length: Length,
    /// How the screw is held.
    pub joint_kind: JointKind,
    /// Young's modulus of nut, insert or tapped part, EM.
    #[shown_in("GPa")]
    #[possible(f64::MIN_POSITIVE..)]
    pub nut_youngs_modulus: Pressure,
}

/// Outcome of [`BoltStiffness`].
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct BoltStiffnessOutcome {
    /// Stiffness of the screw, k.
    #[shown_in("kN/mm")]
    pub stiffness: ForcePerLength,
    /// Stiffness of the shank and free thread alone, without head, engaged thread and nut.
    #[shown_in("kN/mm")]
    pub shank_stiffness: ForcePerLength,
    /// Length within the grip: shank and free thread.
    pub clamped_length: Length,
}

impl Calculation for BoltStiffness {
    const NAME: &'static str = "bolt_stiffness";
    const SOURCE: &'static [Source] = &[Source {
        title: "VDI 2230-1",
        edition: "2015",
        locator: "section 5.1.1",
        standing: Standing::Memory,
    }];
    type Outcome = BoltStiffnessOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let thread = ThreadGeometry::of(self.thread);
        let (d, e) = (thread.diameter, self.youngs_modulus.value);
        let circle = |diameter: f64| PI / 4.0 * diameter * diameter;
        let (nominal, root) = (circle(d), circle(thread.root_diameter));
        let head = match self.head {
            HeadStiffness::Hexagon => 0.5,
            HeadStiffness::Socket => 0.4,
        } * d
            / (e * nominal);
        let mut length = self.free_thread_length.value;
        let mut shank = self.free_thread_length.value / (e * root);
        for segment in &self.shank {
            length += segment.length.value;
            shank += segment.length.value / (e * circle(segment.diameter.value));
        }
        if length <= 0.0 {
            return Err(Error::inconsistent(
                "shank, free_thread_length",
                "the grip has no length: give a piece of shank or of free thread",
            ));
        }
        let engaged = 0.5 * d / (e * root);
        let nut = match self.joint_kind {
            JointKind::ThroughBolted => 0.4,
            JointKind::Tapped => 0.33,
        } * d
            / (self.nut_youngs_modulus.value * nominal);
        Ok(BoltStiffnessOutcome {
            stiffness: si(1.0 / (head + shank + engaged + nut)),
            shank_stiffness: si(1.0 / shank),
            clamped_length: si(length),
        })
    }
}
