//! Caveats: the number stands, but an assumption behind it is strained.

/// Declares [`Caveat`]: each with its permanent bit, the sentence that words it and what would cure it.
macro_rules! caveats {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $bit:literal, $name:literal, $text:literal, cure $cure:literal; )+) => {
        /// One strained assumption. Bits are permanent: 0–7 general, 8–15 sheet, 16–23 plate, 24–31 thermal,
        /// 32–39 fastener, 40–47 gasket, 48–55 latch.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        #[non_exhaustive]
        pub enum Caveat { $( $(#[doc = $doc])+ $variant, )+ }

        impl Caveat {
            /// Every caveat, in the order of its bit.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// The permanent bit, 0–63.
            pub const fn bit(self) -> u32 { match self { $( Self::$variant => $bit, )+ } }
            /// The name in snake case, as documents and Python give it.
            pub const fn name(self) -> &'static str { match self { $( Self::$variant => $name, )+ } }
            /// What is strained, in one sentence.
            pub const fn text(self) -> &'static str { match self { $( Self::$variant => $text, )+ } }
            /// What would cure it.
            pub const fn cure(self) -> &'static str { match self { $( Self::$variant => $cure, )+ } }
        }
    };
}

caveats! {
    /// An input lies outside the range that the formula was tested in.
    OutsideTested = 0, "outside_tested",
        "An input lies outside the range that the formula was tested in.",
        cure "Bring the input into the tested range, or confirm the result by a test.";
    /// A dimension behind the result was not confirmed against its standard.
    UnverifiedDimension = 1, "unverified_dimension",
        "A dimension behind this result was not confirmed against its standard.",
        cure "Measure the part, or read the dimension in the standard.";
    /// The result is an estimate that no maker's figure backs.
    Estimate = 2, "estimate",
        "The result is an estimate that no maker's figure or test backs.",
        cure "Give the maker's figure, or test a sample.";

    /// The correction of DIN 6935 was made for steel.
    NotSteel = 8, "not_steel",
        "DIN 6935 gives its correction for steel; for another metal it is an estimate.",
        cure "Bend a test strip and use the K-factor measured from it.";
    /// A bend sharper than half the thickness.
    SharpBend = 9, "sharp_bend",
        "The inside radius is below half the thickness: the neutral axis is poorly known there.",
        cure "Use a larger inside radius, or bend a test strip.";
    /// A punch with a nose wider than the natural radius of the air bend.
    PunchSetsRadius = 10, "punch_sets_radius",
        "The nose of the punch is wider than the radius that the die opening gives: the punch sets the inside radius.",
        cure "Take a sharper punch, or use the radius that is given here in the flat pattern.";
    /// A flange below the smallest one of common practice.
    ShortFlange = 11, "short_flange",
        "A leg is shorter than the smallest flange of common practice for this thickness.",
        cure "Make the leg longer, take a narrower die, or check the bend against the press brake.";
    /// A die opening below 5 or above 12 thicknesses.
    UnusualDieOpening = 12, "unusual_die_opening",
        "The die opening is below 5 or above 12 thicknesses: radius and force follow it less well there.",
        cure "Take a die opening of 6 to 10 thicknesses, or bend a test strip.";
    /// A measured neutral axis outside the usual band.
    UnusualKFactor = 13, "unusual_k_factor",
        "The measured K-factor lies outside 0.25 to 0.50: more likely a reading is off than the neutral axis.",
        cure "Measure flat length, legs, radius and thickness again, on more than one strip.";
    /// A tabulated bend radius, which is a guide and no limit.
    GuideRadius = 14, "guide_radius",
        "A tabulated bend radius is a guide for a cold bend of 90 deg across the grain, not a limit.",
        cure "Bend a test strip of the same sheet, along the same direction.";

    /// A deflection past half the thickness by small-deflection theory.
    LargeDeflection = 16, "large_deflection",
        "The deflection passes half the thickness: the plate's middle surface stretches, and small-deflection theory overrates deflection and bending stress.",
        cure "Use the large-deflection calculation, with the in-plane edge condition stated.";
    /// A plate too thick for its span.
    ThickPlate = 17, "thick_plate",
        "The thickness is over 1/20 of the smallest span: shear deflection, which thin-plate theory leaves out, passes about 1 %.",
        cure "Use a shear-flexible plate theory, or the panel solver.";
    /// A loaded patch smaller than the thickness.
    PatchWithinThickness = 18, "patch_within_thickness",
        "The loaded patch is smaller than the thickness: thin-plate theory overrates the bending stress beneath it.",
        cure "Spread the load over at least the thickness, or take the stress as an upper bound.";
    /// A series that has not settled to its stated accuracy.
    SeriesUnsettled = 19, "series_unsettled",
        "Two resolutions of the series differ by more than 1e-8 in deflection or 1e-6 in moment; the estimated errors are in the outcome.",
        cure "Use the estimated errors, move the patch away from the corner, or use the panel solver.";
    /// A sustained stress past the limit, where creep is no longer proportional to stress.
    CreepNotLinear = 20, "creep_not_linear",
        "The sustained stress passes its limit: creep grows faster than stress there, and the creep modulus underrates it.",
        cure "Lower the stress below the sustained limit.";

    /// A hole that places the layer stands where the layer moves.
    FixedHoleMoves = 24, "fixed_hole_moves",
        "A close hole stands off the fixed point: growth is held back there and loads the hole.",
        cure "Move the fixed point to this hole, or make the hole a slot or oversize.";
    /// A plate that bows past its thickness.
    BowPastThickness = 25, "bow_past_thickness",
        "The plate bows by more than its thickness: it tends to roll in one direction, with a smaller bow across.",
        cure "Stiffen it, let the layers slide, or take the result as an upper bound.";
    /// A bond too short for the formula of its ends.
    ShortBond = 26, "short_bond",
        "The bond is short against its transfer length: the two ends meet, and peel or buckling is off.",
        cure "Take the number as an order of size, or test a sample.";
    /// A burn threshold from memory.
    UnverifiedThreshold = 27, "unverified_threshold",
        "The burn threshold was not confirmed against its standard.",
        cure "Read it in ISO 13732-1.";

    /// The scatter of the tightening method is recalled from its source.
    UnverifiedScatter = 32, "unverified_scatter",
        "The scatter of the tightening method is recalled from its source, not read there.",
        cure "Measure the scatter of your own method, or give it from its source.";
    /// The length is in no standard series.
    NotStandardLength = 33, "not_standard_length",
        "The screw's length is not in the series.",
        cure "Choose a length of the series, or shorten a longer screw.";
    /// A strength that no check value holds.
    UnverifiedStrength = 34, "unverified_strength",
        "The strength of this class is not among the figures that were confirmed against the standard.",
        cure "Read the strength in the standard or on the maker's certificate.";
    /// A boss in printed layers.
    PrintedLayers = 35, "printed_layers",
        "The boss is printed in layers, which part long before a moulded boss fails.",
        cure "Pull-test a printed sample, or turn the part so that the layers do not cross the pull.";
    /// A joint that VDI 2230 does not cover.
    OutsideVdi2230 = 36, "outside_vdi_2230",
        "A soft layer, aluminium or a stainless screw is in the load path: outside VDI 2230, the springs are an estimate.",
        cure "Put a shoulder bush through the soft layer, or measure the clamp force over time.";

    /// The shape of the sponge's curve is an estimate.
    SpongeShapeEstimated = 40, "sponge_shape_estimated",
        "Only the pressure at 25 % comes from the grade; its course over compression is an estimate.",
        cure "Use a maker's measured points.";
    /// A measured pressure that the stated grade does not allow.
    SpongeOutsideGrade = 41, "sponge_outside_grade",
        "The given pressure at 25 % lies outside the band of the stated grade.",
        cure "Check grade and figure against the maker's sheet.";
    /// A rubber layer so thin that its own volume change counts.
    RubberVolumeChange = 42, "rubber_volume_change",
        "The rubber is so thin against its area that its own volume change softens it; the formula keeps it constant.",
        cure "Use a thicker or narrower rubber, or the maker's measured curve.";
    /// A service harder than the measurement of the set.
    SetBeyondTest = 43, "set_beyond_test",
        "The service is hotter, longer or more compressed than the measurement of the set: it takes more.",
        cure "Ask for the set at the temperature, time and compression of the service.";
    /// A gap that opens faster than the gasket was given to recover.
    OpensFaster = 44, "opens_faster",
        "The gap opens faster than the sample of the set had time to recover: the gasket follows by less.",
        cure "Ask for the height right after release, or leave more compression.";
    /// A gasket that lets go between the latches.
    GasketLetsGo = 45, "gasket_lets_go",
        "Between the latches the gasket lets go; the formula keeps it attached there.",
        cure "Use a stiffer edge, more latches or a softer gasket.";

    /// Pressure pushes the lid on so hard that the latches are slack.
    LatchSlack = 48, "latch_slack",
        "The pressure holds the lid and the latches are slack: they can rattle.",
        cure "Stiffen or raise the gasket, or check the latches by their force without the pressure.";
}

/// A set of caveats: one bit each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Caveats(u64);

impl Caveats {
    /// No caveat.
    pub const NONE: Self = Self(0);

    /// The set with these bits; bits that no caveat has are kept, so that a newer set survives an older reader.
    pub const fn from_bits(bits: u64) -> Self {
        Self(bits)
    }

    /// The set as bits, one permanent bit for each caveat.
    pub const fn bits(self) -> u64 {
        self.0
    }

    /// Adds one caveat.
    pub const fn add(&mut self, caveat: Caveat) {
        self.0 |= 1 << caveat.bit();
    }

    /// Adds every caveat of another set.
    pub const fn merge(&mut self, other: Self) {
        self.0 |= other.0;
    }

    /// True where the caveat is in the set.
    pub const fn has(self, caveat: Caveat) -> bool {
        self.0 >> caveat.bit() & 1 == 1
    }

    /// True where there is none.
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// The caveats of the set, in the order of their bits.
    pub fn iter(self) -> impl Iterator<Item = Caveat> {
        Caveat::ALL.iter().copied().filter(move |caveat| self.has(*caveat))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bits_are_distinct_and_ascending() {
        let bits: Vec<u32> = Caveat::ALL.iter().map(|caveat| caveat.bit()).collect();
        assert!(bits.windows(2).all(|pair| pair[0] < pair[1]), "{bits:?}");
        assert!(bits.iter().all(|bit| *bit < 64));
    }

    #[test]
    fn a_set_gives_back_what_was_added() {
        let mut set = Caveats::NONE;
        set.add(Caveat::NotSteel);
        set.add(Caveat::OutsideTested);
        assert_eq!(set.iter().collect::<Vec<_>>(), [Caveat::OutsideTested, Caveat::NotSteel]);
    }
}
