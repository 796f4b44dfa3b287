//! What a gasket still follows after a season.

use coaming::gasket::{GasketSet, GasketSetOutcome, SetBasis};
use coaming::prelude::*;

use crate::amount::Measure;
use crate::checks::Subject;
use crate::checks::seal::nominal_compression;
use crate::demand::{Demand, NotChecked, Origin};
use crate::document::LoadKind;
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// A gasket after a season, with what it must then follow.
pub(in crate::checks) struct Season {
    /// Its recovered height and travel.
    pub(in crate::checks) outcome: GasketSetOutcome,
    /// What it must follow, in metres, with the factor of common practice.
    pub(super) due: f64,
    /// Where that factor comes from.
    pub(super) origin: Origin,
}

/// What a gasket still follows after a season, against what it has to follow.
///
/// With the free height H, its deviation t, the closed height h and the set s of the deflection, a strip that is low by t
/// recovers to h + (1 - s)(H - t - h): its travel is (1 - s)(H - h) less (1 - s) t. With a set of the thickness it recovers to
/// (1 - s)(H - t), less by (1 - s) t again. The deviation belongs to the strip and stays where it is, so that the set takes
/// its share of it; counted whole, that share would be counted twice. Bow and flatness count whole: a lid that was off is
/// not put back to the hair, and a place that set over a hollow may meet a rise.
pub(super) fn recovery(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    prepared.seal()?;
    let bow = prepared.cover.latches.as_ref().and_then(|latches| latches.bow);
    let bow = sheet.given("bow of the lid", "latches.bow", bow)?;
    let season = season(prepared, &mut sheet, Some(bow))?;
    sheet.at("travel that the gasket still follows");
    sheet.say("It must follow the bow of the lid and the flatness of the opening, which it may meet at another place each time it closes, and what its own deviation still lacks after the set, all added.");
    sheet.advise("seal.free_height", "a higher gasket or one of less set, a stiffer lid, a flatter seat");
    Ok(sheet.at_least(season.outcome.recovered_travel.value, Measure::LENGTH, season.due, season.origin))
}

/// The gasket after a season; without a bow where the lid's is solved for.
pub(in crate::checks) fn season(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    bow: Option<Length>,
) -> Result<Season, NotChecked> {
    let seal = prepared.seal()?;
    let (free_height, compressed, _) = nominal_compression(prepared, sheet)?;
    let (set, set_basis) = match (seal.set_of_deflection, seal.set_of_thickness) {
        (Some(set), _) => (set, SetBasis::OfDeflection),
        (None, Some(set)) => (set, SetBasis::OfThickness),
        (None, None) => return Err(NotChecked::needs("seal.set_of_deflection or seal.set_of_thickness")),
    };
    sheet.note(&format!("set, {}", Choice::name(set_basis).replace('_', " ")), set, Measure::Number);
    let flatness =
        sheet.given("flatness of the opening", "opening.flatness", prepared.cover.opening.flatness)?;
    let tolerance = sheet.given("free height, deviation", "seal.height_tolerance", seal.height_tolerance)?;
    let season = prepared.load_case(LoadKind::ClosedAfterSeason)?.duration;
    let bay = prepared.cover.service.as_ref().and_then(|service| service.bay.as_ref());
    // A strip that is low was compressed less all along, and its set took its share of that too: of the deviation of the
    // free height, which stays with the strip, only what comes back of a compression is lacking when it recovers.
    let lacking = (1.0 - set) * tolerance;
    sheet.note("of its deviation lacking after the set", lacking.value, Measure::LENGTH);
    let opening = flatness + lacking + bow.unwrap_or(mm(0.0));
    let situation = GasketSet {
        free_height,
        closed_height: free_height - compressed,
        set,
        set_basis,
        test_temperature: sheet.given("set measured at", "seal.set_temperature", seal.set_temperature)?,
        test_time: sheet.given("set measured over", "seal.set_time", seal.set_time)?,
        test_compression: sheet.number(
            "set measured at a compression of",
            "seal.set_compression",
            seal.set_compression,
        )?,
        recovery_time: sheet.given(
            "recovery before measuring",
            "seal.set_recovery_time",
            seal.set_recovery_time,
        )?,
        service_temperature: sheet.given(
            "bay in operation",
            "service.bay.temperature",
            bay.and_then(|bay| bay.temperature),
        )?,
        service_time: sheet.given("season", "load_cases.closed_after_season.duration", season)?,
        opening,
        opening_time: None,
    };
    let outcome = sheet.run(&situation)?;
    let (share, origin) = practice(prepared.limits.recovery());
    Ok(Season { outcome, due: share * opening.value, origin })
}
