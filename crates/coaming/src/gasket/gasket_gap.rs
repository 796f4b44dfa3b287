use crate::prelude::*;

/// Compression of a gasket between its tolerance extremes, against the window its kind allows.
///
/// # Formula
/// Closed height h at the middle of all tolerances, H the free height:
/// ```text
/// stops         h = stop height + Σ shift
/// latch travel  h = open gap − latch travel + Σ shift
/// δ = H − h,  c = δ / H
/// ```
/// Worst case, tH the free height's tolerance and t the sum of the others:
/// ```text
/// δ: H − h ± (tH + t)
/// c: 1 − (h + t)/(H − tH)   to   1 − (h − t)/(H + tH)
/// ```
/// Root-sum-square, inflated by k, to first order:
/// ```text
/// δ: ± k sqrt(tH² + Σ t²)
/// c: ± k sqrt((h tH / H)² + Σ t²) / H
/// ```
/// A compression below zero is an open gap of that size.
///
/// # Validity
/// Tolerances are half bands about the middle. Stops carry the lid, so that the gasket does not set the gap;
/// without stops the height follows the latches and the lid's bow. Bow under load is no tolerance: add it as
/// a contribution of its own, or take it from the panel. Root-sum-square needs independent contributions of
/// like size; inflate it.
///
/// # Source
/// Geometry. Worst case and inflated root-sum-square: common practice, factor 1.2 to 1.5. The window is the
/// caller's.
///
/// # Example
/// A 10 mm sponge on 7 mm stops, gap ±0.6 and ±0.8 mm, factor 1: nominal 30 %, root-sum-square 20 % to 40 %.
/// ```
/// use coaming::prelude::*;
/// use coaming::gasket::{ClosedBy, GapContribution, GasketGap};
///
/// let contribution = |name: &str, half_band| GapContribution {
///     name: name.to_string(),
///     shift: mm(0.0),
///     half_band: mm(half_band),
/// };
/// let (outcome, _) = GasketGap {
///     free_height: mm(10.0),
///     free_height_tolerance: mm(0.0),
///     closed_by: ClosedBy::Stops,
///     stop_height: Some(mm(7.0)),
///     open_gap: None,
///     latch_travel: None,
///     contributions: vec![contribution("flatness", 0.6), contribution("stops", 0.8)],
///     inflation_factor: 1.0,
///     nominal_lowest: 0.20,
///     nominal_highest: 0.35,
///     extreme_lowest: 0.15,
///     extreme_highest: 0.45,
/// }
/// .calculate()?;
/// assert!((outcome.compression - 0.30).abs() < 1e-12);
/// assert!((outcome.compression_max - 0.40).abs() < 1e-12);
/// assert!((outcome.worst_case_compression_max - 0.44).abs() < 1e-12);
/// # Ok::<(), Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GasketGap {
    /// Free height of the gasket, H.
    #[possible(f64::MIN_POSITIVE..)]
    pub free_height: Length,
    /// Tolerance of the free height, tH: half of its band.
    #[possible(0.0..)]
    pub free_height_tolerance: Length,
    /// What sets the closed height.
    pub closed_by: ClosedBy,
    /// Height of the stops; when stops set the closed height.
    #[possible(f64::MIN_POSITIVE..)]
    pub stop_height: Option<Length>,
    /// Gap at the gasket where the latches begin to pull; when latch travel sets the closed height.
    #[possible(f64::MIN_POSITIVE..)]
    pub open_gap: Option<Length>,
    /// Travel by which the latches close the gap; when latch travel sets the closed height.
    #[possible(0.0..)]
    pub latch_travel: Option<Length>,
    /// What else moves the gap: flatness, coating, stop settlement, ...
    pub contributions: Vec<GapContribution>,
    /// Inflation factor of the root-sum-square, k; 1 adds nothing.
    #[possible(1.0..=3.0)]
    pub inflation_factor: f64,
    /// Lowest compression allowed at the middle of all tolerances.
    #[possible(0.0..=1.0)]
    pub nominal_lowest: f64,
    /// Highest compression allowed at the middle of all tolerances.
    #[possible(0.0..=1.0)]
    pub nominal_highest: f64,
    /// Lowest compression allowed at the extremes.
    #[possible(0.0..=1.0)]
    pub extreme_lowest: f64,
    /// Highest compression allowed at the extremes.
    #[possible(0.0..=1.0)]
    pub extreme_highest: f64,
}

/// What sets the closed height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Choice)]
pub enum ClosedBy {
    /// Solid stops beside the gasket.
    Stops,
    /// The latches alone: the open gap less their travel.
    LatchTravel,
}

/// One contribution to the closed height.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct GapContribution {
    /// What it is.
    pub name: String,
    /// Shift of the closed height at its middle, positive if it opens the gap; stop settlement is negative.
    pub shift: Length,
    /// Half of its band about the middle.
    #[possible(0.0..)]
    pub half_band: Length,
}

/// Compression at the middle and at the extremes, and where it stands in the window.
#[derive(Debug, Clone, PartialEq, Fields)]
#[non_exhaustive]
pub struct GasketGapOutcome {
    /// Closed height at the middle of all tolerances, h.
    pub closed_height: Length,
    /// Half band of the closed height and the free height together, worst case.
    pub worst_case_half_band: Length,
    /// Half band of the closed height and the free height together, inflated root-sum-square.
    pub half_band: Length,
    /// Compressed length at the middle, δ.
    pub compressed: Length,
    /// Least compressed length, root-sum-square; below zero: open gap.
    pub compressed_min: Length,
    /// Greatest compressed length, root-sum-square.
    pub compressed_max: Length,
    /// Least compressed length, worst case; below zero: open gap.
    pub worst_case_compressed_min: Length,
    /// Greatest compressed length, worst case.
    pub worst_case_compressed_max: Length,
    /// Compression at the middle, c.
    pub compression: f64,
    /// Least compression, root-sum-square.
    pub compression_min: f64,
    /// Greatest compression, root-sum-square.
    pub compression_max: f64,
    /// Least compression, worst case.
    pub worst_case_compression_min: f64,
    /// Greatest compression, worst case.
    pub worst_case_compression_max: f64,
    /// True if the middle lies in the window.
    pub nominal_in_window: bool,
    /// True if both extremes by root-sum-square lie in the window.
    pub extremes_in_window: bool,
    /// True if both worst-case extremes lie in the window.
    pub worst_case_in_window: bool,
}

impl GasketGap {
    /// Height between the faces before any contribution shifts it.
    fn set_height(&self) -> Result<f64, Error> {
        match (self.closed_by, self.stop_height, self.open_gap, self.latch_travel) {
            (ClosedBy::Stops, Some(stop), None, None) => Ok(stop.value),
            (ClosedBy::Stops, ..) => Err(Error::inconsistent(
                "closed_by, stop_height, open_gap, latch_travel",
                "stops need the stop height, and no open gap or latch travel",
            )),
            (ClosedBy::LatchTravel, None, Some(gap), Some(travel)) => Ok(gap.value - travel.value),
            (ClosedBy::LatchTravel, ..) => Err(Error::inconsistent(
                "closed_by, stop_height, open_gap, latch_travel",
                "latch travel needs the open gap and the travel, and no stop height",
            )),
        }
    }

    fn check_window(&self) -> Result<(), Error> {
        if self.nominal_lowest > self.nominal_highest {
            return Err(Error::inconsistent(
                "nominal_lowest, nominal_highest",
                "the lowest is not above the highest",
            ));
        }
        if self.extreme_lowest > self.extreme_highest {
            return Err(Error::inconsistent(
                "extreme_lowest, extreme_highest",
                "the lowest is not above the highest",
            ));
        }
        Ok(())
    }
}

impl Calculation for GasketGap {
    const NAME: &'static str = "gasket_gap";
    const SOURCE: &'static [Source] = &[Source {
        title: "common practice",
        edition: "",
        locator: "tolerance stack, worst case and inflated root-sum-square",
        standing: Standing::CommonPractice,
    }];
    type Outcome = GasketGapOutcome;

    fn formula(&self, _caveats: &mut Caveats) -> Result<Self::Outcome, Error> {
        self.check_window()?;
        let (mut shift, mut sum, mut squares) = (0.0, 0.0, 0.0);
        for contribution in &self.contributions {
            let t = contribution.half_band.value;
            shift += contribution.shift.value;
            sum += t;
            squares += t * t;
        }
        let (height, tolerance) = (self.free_height.value, self.free_height_tolerance.value);
        let closed = self.set_height()? + shift;
        if closed <= 0.0 {
            return Err(Error::inconsistent(
                "closed_by, contributions",
                "the closed height must stay greater than 0 at the middle of all tolerances",
            ));
        }
        if tolerance >= height {
            return Err(self.impossible("free_height_tolerance", "less than the free height"));
        }
        let compressed = height - closed;
        let compression = compressed / height;
        let worst = tolerance + sum;
        let likely = self.inflation_factor * (tolerance * tolerance + squares).sqrt();
        let scaled = closed * tolerance / height;
        let likely_ratio = self.inflation_factor * (scaled * scaled + squares).sqrt() / height;
        let worst_min = 1.0 - (closed + sum) / (height - tolerance);
        let worst_max = 1.0 - (closed - sum) / (height + tolerance);
        let (likely_min, likely_max) = (compression - likely_ratio, compression + likely_ratio);
        let in_window = |c: f64| (self.extreme_lowest..=self.extreme_highest).contains(&c);
        Ok(GasketGapOutcome {
            closed_height: si(closed),
            worst_case_half_band: si(worst),
            half_band: si(likely),
            compressed: si(compressed),
            compressed_min: si(compressed - likely),
            compressed_max: si(compressed + likely),
            worst_case_compressed_min: si(compressed - worst),
            worst_case_compressed_max: si(compressed + worst),
            compression,
            compression_min: likely_min,
            compression_max: likely_max,
            worst_case_compression_min: worst_min,
            worst_case_compression_max: worst_max,
            nominal_in_window: (self.nominal_lowest..=self.nominal_highest).contains(&compression),
            extremes_in_window: in_window(likely_min) && in_window(likely_max),
            worst_case_in_window: in_window(worst_min) && in_window(worst_max),
        })
    }
}
