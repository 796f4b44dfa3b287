//! The seal: its compression, nominal and at the extremes, all round, and after a season.

mod all_round;
pub(super) mod leaks;
pub(super) mod loads;
pub(super) mod recovery;
pub(super) mod sliding;
pub(super) mod warm;

use coaming::gasket::{
    ClosedBy, DeflectionGrade, GapContribution, GasketGap, GasketGapOutcome, PublishedLimits, SpongeClass,
    SpongeCurve, SpongeGrade, SpongePoint,
};
use coaming::prelude::*;

use crate::amount::{Amount, Measure};
use crate::checks::screws::spacing;
use crate::checks::{Check, Subject, whole};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::{LoadKind, Seal, SealKind};
use crate::limits::LimitOrigin;
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// The seal's checks.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "seal_all_round",
        title: "Compression at the worst place of the seal",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: all_round::least,
    },
    Check {
        key: "seal_all_round_most",
        title: "Compression at the tightest place of the seal",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: all_round::most,
    },
    Check {
        key: "seal_spacing",
        title: "Pitch of the latches along the seal",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: spacing::spacing,
    },
    Check {
        key: "seal_nominal",
        title: "Nominal compression of the gasket",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: nominal,
    },
    Check {
        key: "seal_gap_least",
        title: "Least compression over the tolerances",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: |prepared, _| extreme(prepared, true),
    },
    Check {
        key: "seal_gap_most",
        title: "Most compression over the tolerances",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: |prepared, _| extreme(prepared, false),
    },
    Check {
        key: "seal_recovery",
        title: "Recovered height after a season",
        case: Some(LoadKind::ClosedAfterSeason),
        subjects: whole,
        demand: recovery::recovery,
    },
    Check {
        key: "seal_after_season",
        title: "Seal after a season, lid and gasket together",
        case: Some(LoadKind::ClosedAfterSeason),
        subjects: whole,
        demand: loads::after_season,
    },
    Check {
        key: "seal_wind_out",
        title: "Contact left along the seal",
        case: Some(LoadKind::WindOut),
        subjects: whole,
        demand: loads::wind_out,
    },
    Check {
        key: "seal_wind_in",
        title: "Compression at the tightest place of the seal",
        case: Some(LoadKind::WindIn),
        subjects: whole,
        demand: loads::wind_in,
    },
    Check {
        key: "seal_acceleration_z",
        title: "Contact left along the seal",
        case: Some(LoadKind::AccelerationZ),
        subjects: whole,
        demand: loads::acceleration,
    },
    Check {
        key: "seal_latch_missing",
        title: "Contact left with one latch missing",
        case: Some(LoadKind::ClosedNew),
        subjects: whole,
        demand: loads::latch_missing,
    },
];

/// The window of a kind of gasket: nominal low and high, least and most, each with its limit's origin.
pub(super) struct Window {
    nominal: (f64, f64),
    pub(super) least: (f64, Origin),
    pub(super) most: (f64, Origin),
    origin: Origin,
}

pub(super) fn window(prepared: &Prepared<'_>, kind: SealKind) -> Window {
    let limits = prepared.limits;
    let ((nominal_low, origin), nominal_high, least, most) = match kind {
        SealKind::ClosedCell => (
            practice(limits.closed_cell_nominal_least()),
            limits.closed_cell_nominal_most().0,
            limits.closed_cell_least(),
            limits.closed_cell_most(),
        ),
        SealKind::OpenCell => (
            practice(limits.open_cell_least()),
            limits.open_cell_most().0,
            limits.open_cell_least(),
            limits.open_cell_most(),
        ),
        SealKind::Solid => {
            (practice(limits.solid_least()), limits.solid_most().0, limits.solid_least(), limits.solid_most())
        }
    };
    Window { nominal: (nominal_low, nominal_high), least: practice(least), most: practice(most), origin }
}

/// Least and most compression of a kind of gasket at the extremes, each with its limit's origin.
pub(crate) fn extremes(prepared: &Prepared<'_>, kind: SealKind) -> [(f64, LimitOrigin); 2] {
    let limits = prepared.limits;
    match kind {
        SealKind::ClosedCell => [limits.closed_cell_least(), limits.closed_cell_most()],
        SealKind::OpenCell => [limits.open_cell_least(), limits.open_cell_most()],
        SealKind::Solid => [limits.solid_least(), limits.solid_most()],
    }
}

pub(super) fn kind(seal: &Seal, sheet: &mut Worksheet) -> Result<SealKind, NotChecked> {
    let kind = seal.kind.need(|| "seal.kind".to_owned())?;
    sheet.note_words("kind of gasket", Choice::name(kind).replace('_', " "));
    Ok(kind)
}

/// The height that the gasket is closed to: stops, or what the latches set.
fn closed_height(seal: &Seal, sheet: &mut Worksheet) -> Result<Length, NotChecked> {
    match (seal.stop_height, seal.closed_height) {
        (Some(stop), _) => sheet.given("height of the stops", "seal.stop_height", Some(stop)),
        (None, closed) => {
            sheet.given("height that the latches set", "seal.stop_height or seal.closed_height", closed)
        }
    }
}

/// The compression in the middle of all tolerances, of a document's seal; for other checks too.
pub(super) fn nominal_compression(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
) -> Result<(Length, Length, f64), NotChecked> {
    let seal = prepared.seal()?;
    let free = sheet.given("free height", "seal.free_height", seal.free_height)?;
    let closed = closed_height(seal, sheet)?;
    let compressed: Length = free - closed;
    Ok((free, compressed, compressed.value / free.value))
}

fn nominal(prepared: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let seal = prepared.seal()?;
    let kind = kind(seal, &mut sheet)?;
    let (free, compressed, compression) = nominal_compression(prepared, &mut sheet)?;
    sheet.note("compressed by", compressed.value, Measure::LENGTH);
    sheet.reckon("compression = (free height − closed height)/free height");
    let window = window(prepared, kind);
    let (low, high) = window.nominal;
    if compression < low || compression > high {
        let lever = if seal.stop_height.is_some() { "seal.stop_height" } else { "seal.closed_height" };
        let now = free.value - compressed.value;
        let to = free.value * (1.0 - (low + high) / 2.0);
        let amount = |si| Amount { si, measure: Measure::LENGTH };
        sheet.cure(lever, amount(now), amount(to), "stops at the middle of the window");
    }
    let bound = Bound::Within { low, high };
    let finding = Finding::Number { low: compression, high: compression, measure: Measure::Percent, bound };
    Ok(sheet.finish(finding, window.origin))
}

/// The gap with all its contributions.
pub(super) fn gap(
    prepared: &Prepared<'_>,
    sheet: &mut Worksheet,
    window: &Window,
) -> Result<GasketGapOutcome, NotChecked> {
    let seal = prepared.seal()?;
    let free_height = sheet.given("free height", "seal.free_height", seal.free_height)?;
    let free_height_tolerance =
        sheet.given("free height, deviation", "seal.height_tolerance", seal.height_tolerance)?;
    let closed = closed_height(seal, sheet)?;
    let mut contributions = Vec::new();
    let mut add = |sheet: &mut Worksheet, name: &str, half_band: Length| {
        sheet.note(&format!("{name}, deviation"), half_band.value, Measure::LENGTH);
        contributions.push(GapContribution { name: name.to_owned(), shift: mm(0.0), half_band });
    };
    let flatness = prepared.cover.opening.flatness.need(|| "opening.flatness".to_owned())?;
    add(sheet, "flatness of the opening", flatness);
    if seal.stop_height.is_some() {
        add(sheet, "stops", seal.stop_tolerance.need(|| "seal.stop_tolerance".to_owned())?);
    }
    for layer in &prepared.cover.layers {
        if let (crate::document::LayerRole::Skin, Some(flatness)) = (layer.role, layer.flatness) {
            add(sheet, &format!("flatness of {}", layer.name), flatness);
        }
    }
    for contribution in seal.gap_contributions.iter().flatten() {
        add(sheet, &contribution.name, contribution.deviation);
    }
    let (inflation, _) = prepared.limits.root_sum_square_inflation();
    sheet.note("inflation of the root-sum-square", inflation, Measure::Number);
    sheet.run(&GasketGap {
        free_height,
        free_height_tolerance,
        closed_by: ClosedBy::Stops,
        stop_height: Some(closed),
        open_gap: None,
        latch_travel: None,
        contributions,
        inflation_factor: inflation,
        nominal_lowest: window.nominal.0,
        nominal_highest: window.nominal.1,
        extreme_lowest: window.least.0,
        extreme_highest: window.most.0,
    })
}

fn extreme(prepared: &Prepared<'_>, least: bool) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let kind = kind(prepared.seal()?, &mut sheet)?;
    let window = window(prepared, kind);
    let outcome = gap(prepared, &mut sheet, &window)?;
    sheet.note("gap, root-sum-square either way", outcome.half_band.value, Measure::LENGTH);
    sheet.note("gap, worst case either way", outcome.worst_case_half_band.value, Measure::LENGTH);
    sheet.note("compression, least worst case", outcome.worst_case_compression_min, Measure::Percent);
    sheet.note("compression, most worst case", outcome.worst_case_compression_max, Measure::Percent);
    let advice = if prepared.seal()?.stop_height.is_some() {
        "flatter seat, closer stops, or a higher gasket"
    } else {
        "stops, a flatter seat, or a higher gasket"
    };
    sheet.advise("seal.stop_height", advice);
    Ok(if least {
        sheet.at_least(outcome.compression_min, Measure::Percent, window.least.0, window.least.1)
    } else {
        sheet.at_most(outcome.compression_max, Measure::Percent, window.most.0, window.most.1)
    })
}

/// What a gasket presses with in the middle of all tolerances; bands where only its grade is known.
pub(super) struct Gasket {
    /// How much it is compressed.
    pub(super) compressed: Length,
    /// Line force, low and high, in newtons per metre.
    pub(super) line_force: (f64, f64),
    /// Slope of the line force, low and high, in pascals.
    pub(super) line_stiffness: (f64, f64),
}

/// The gasket in the middle of all tolerances.
pub(super) fn gasket(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<Gasket, NotChecked> {
    let seal = prepared.seal()?;
    let (free_height, compressed, compression) = nominal_compression(prepared, sheet)?;
    let width = sheet.given("gasket width", "seal.width", seal.width)?;
    if let Some(curve) = &seal.curve {
        let points: Vec<SpongePoint> = curve
            .iter()
            .map(|point| SpongePoint { compression: point.compression, pressure: point.pressure })
            .collect();
        sheet.note_words("gasket", "measured curve");
        let outcome = sheet.run(&SpongeCurve { points, compression, width, free_height })?;
        let (force, stiffness) = (outcome.line_force.value, outcome.line_stiffness.value);
        return Ok(Gasket { compressed, line_force: (force, force), line_stiffness: (stiffness, stiffness) });
    }
    let name =
        seal.material.need(|| "seal.curve, seal.pressure_at_25_percent or seal.material".to_owned())?;
    let material = prepared.material(&name, "seal.material")?;
    let (grade, sponge_class) =
        grade(&name).ok_or_else(|| NotChecked::needs("seal.curve or seal.pressure_at_25_percent"))?;
    if let Some(quarter) = seal.pressure_at_25_percent {
        sheet.note("pressure at 25 %", quarter.value, Measure::PRESSURE);
    } else {
        sheet.note_words("gasket", material.name.to_string());
    }
    let outcome = sheet.run(&SpongeGrade {
        grade,
        sponge_class,
        published_limits: PublishedLimits::Psi,
        quarter_pressure: seal.pressure_at_25_percent,
        compression,
        width,
        free_height,
    })?;
    Ok(Gasket {
        compressed,
        line_force: (outcome.line_force_min.value, outcome.line_force_max.value),
        line_stiffness: (outcome.line_stiffness_min.value, outcome.line_stiffness_max.value),
    })
}

/// Line force of the gasket in the middle of all tolerances, as a band where only its grade is known.
pub(crate) fn line_force(prepared: &Prepared<'_>, sheet: &mut Worksheet) -> Result<(f64, f64), NotChecked> {
    gasket(prepared, sheet).map(|gasket| gasket.line_force)
}

/// Grade and class from the key of a sponge, such as `epdm_sponge_2a1`.
pub(crate) fn grade(material: &str) -> Option<(DeflectionGrade, SpongeClass)> {
    let mut tail = material.rsplit_once("_2")?.1.chars();
    let class = SpongeClass::from_name(&tail.next()?.to_uppercase().to_string())?;
    Some((DeflectionGrade::from_name(tail.as_str())?, class))
}
