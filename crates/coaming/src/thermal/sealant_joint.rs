use crate::prelude::*;

/// Width of a sealant joint from its movement and the movement class of the sealant.
///
/// # Formula
/// ```text
/// W ≥ opening / extension           what the class lets it stretch
/// W ≥ closing / compression         what the class lets it be squeezed
/// width needed = the greater + tolerance
/// ```
///
/// # Validity
/// Movement across the joint, counted from its width when the sealant cured. Shear along it is not counted
/// here. The sealant adheres to its two faces only (bond breaker at the back). Depth and primer as the maker
/// says.
///
/// # Source
/// ISO 11600:2002, classes 25, 20, 12.5, 7.5 (± %); ASTM C920, classes 25 and 50 (± %), 100/50 (+100 % −50
/// %). Unverified.
///
/// # Example
/// 1.0 mm of opening and 0.5 of closing in class 25: 4 mm, and 0.5 of tolerance: 4.5 mm (by hand).
/// ```
/// use coaming::prelude::*;
/// use coaming::thermal::{MovementClass, SealantJoint};
///
/// let (outcome, _) = SealantJoint {
///     movement_class: MovementClass::Class25,
///     opening: mm(1.0),
///     closing: mm(0.5),
///     width_tolerance: mm(0.5),
///     width: None,
/// }
/// .calculate()?;
/// assert!((outcome.needed_width.value - 4.5e-3).abs() < 1e-12);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct SealantJoint {
    /// Movement class of the sealant.
    pub movement_class: MovementClass,
    /// Movement that opens the joint.
    #[possible(0.0..)]
    pub opening: Length,
    /// Movement that closes the joint.
    #[possible(0.0..)]
    pub closing: Length,
    /// Tolerance of the joint's width: how much narrower it may turn out.
    #[possible(0.0..)]
    pub width_tolerance: Length,
    /// Width of the joint, to be judged.
    #[possible(f64::MIN_POSITIVE..)]
    pub width: Option<Length>,
}

/// Movement class of a sealant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum MovementClass {
    /// 7.5 % each way (ISO 11600).
    #[option("7.5")]
    Class7p5,
    /// 12.5 % each way (ISO 11600).
    #[option("12.5")]
    Class12p5,
    /// 20 % each way (ISO 11600).
    #[option("20")]
    Class20,
    /// 25 % each way (ISO 11600, ASTM C920).
    #[option("25")]
    Class25,
    /// 50 % each way (ASTM C920).
    #[option("50")]
    Class50,
    /// 100 % opening, 50 % closing (ASTM C920).
    #[option("100/50")]
    Class100By50,
}

/// Width of the joint.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct SealantJointOutcome {
    /// Allowed stretch, part of the width.
    pub extension: f64,
    /// Allowed squeeze, part of the width.
    pub compression: f64,
    /// Width needed, tolerance included.
    pub needed_width: Length,
    /// Stretch at the given width less its tolerance.
    pub stretch: Option<f64>,
    /// Squeeze at the given width less its tolerance.
    pub squeeze: Option<f64>,
}

impl Calculation for SealantJoint {
    const NAME: &'static str = "sealant_joint";
    const SOURCE: &'static [Source] = &[
        Source { title: "ISO 11600", edition: "2002", locator: "table 1", standing: Standing::Memory },
        Source { title: "ASTM C920", edition: "", locator: "class definition", standing: Standing::Memory },
    ];
    type Outcome = SealantJointOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        let (extension, compression) = match self.movement_class {
            MovementClass::Class7p5 => (0.075, 0.075),
            MovementClass::Class12p5 => (0.125, 0.125),
            MovementClass::Class20 => (0.20, 0.20),
            MovementClass::Class25 => (0.25, 0.25),
            MovementClass::Class50 => (0.50, 0.50),
            MovementClass::Class100By50 => (1.00, 0.50),
        };
        let (opening, closing, tolerance) =
            (self.opening.value, self.closing.value, self.width_tolerance.value);
        let needed = (opening / extension).max(closing / compression) + tolerance;
        let least = self.width.map(|width| width.value - tolerance);
        if least.is_some_and(|least| least <= 0.0) {
            return Err(Error::inconsistent(
                "width, width_tolerance",
                "the width must be more than its tolerance",
            ));
        }
        Ok(SealantJointOutcome {
            extension,
            compression,
            needed_width: si(needed),
            stretch: least.map(|least| opening / least),
            squeeze: least.map(|least| closing / least),
        })
    }
}
