//! What a lid that warmth and damp bow adds to a latch's pull, and to its travel.

use crate::amount::{Amount, Measure};
use crate::checks::bow::{self, bowed};
use crate::checks::latches::latches;
use crate::checks::latches::pulls::against_working_load;
use crate::checks::{Check, solved, whole};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::LoadKind;
use crate::held::{self, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;
use coaming::prelude::*;
use coaming_panel::Load;

/// The checks of the latches on a bowed lid.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "latch_working_load_hot",
        title: "Latch against the maker's working load",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: |prepared, _| working_load(prepared, LoadKind::Hot),
    },
    Check {
        key: "latch_working_load_cold",
        title: "Latch against the maker's working load",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: |prepared, _| working_load(prepared, LoadKind::Cold),
    },
    Check {
        key: "latch_working_load_sun",
        title: "Latch against the maker's working load",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| working_load(prepared, LoadKind::Sun),
    },
    Check {
        key: "latch_travel_hot",
        title: "Travel to close, the lid bowed",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: |prepared, _| travel(prepared, LoadKind::Hot),
    },
    Check {
        key: "latch_travel_cold",
        title: "Travel to close, the lid bowed",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: |prepared, _| travel(prepared, LoadKind::Cold),
    },
    Check {
        key: "latch_travel_sun",
        title: "Travel to close, the lid bowed",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| travel(prepared, LoadKind::Sun),
    },
];

/// Pull of the most loaded latch of the bowed lid against the maker's working load.
fn working_load(prepared: &Prepared<'_>, kind: LoadKind) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    latches(prepared)?.working_load.need(|| "latches.working_load".to_owned())?;
    let states = bowed(prepared, kind, &mut sheet)?;
    against_working_load(prepared, sheet, states)
}

/// The lids let go, flat and bowed, that the rows of the travel ask about, where their latches are given.
pub(in crate::checks) fn all_travels(prepared: &Prepared<'_>) -> Vec<(Setup, Load)> {
    let given = latches(prepared).is_ok_and(|latches| {
        let all = [latches.stand_off, latches.mounting_tolerance, latches.release_clearance, latches.travel];
        all.iter().all(Option::is_some)
    });
    let kinds = [LoadKind::Hot, LoadKind::Cold, LoadKind::Sun].into_iter().filter(|_| given);
    let limits = kinds.flat_map(|kind| bow::limits(prepared, kind, &mut Worksheet::new())).flatten();
    limits.flat_map(|(_, setup, load)| [(setup, Load::default()), (setup, load)]).collect()
}

/// Travel that closes a bowed lid: from where it lies free on its gasket, with stand-off, mounting and clearance on top.
fn travel(prepared: &Prepared<'_>, kind: LoadKind) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let latches = latches(prepared)?;
    let stand_off = sheet.given("stand-off", "latches.stand_off", latches.stand_off)?;
    let tolerance = sheet.given("tolerance", "latches.mounting_tolerance", latches.mounting_tolerance)?;
    let clearance =
        sheet.given("release clearance", "latches.release_clearance", latches.release_clearance)?;
    let given = sheet.given("travel of the latch", "latches.travel", latches.travel)?;
    let further = stand_off.value + tolerance.value + clearance.value;
    let (_, thickness) = held::skin(prepared)?;
    let (mut low, mut high, mut bow) = (f64::INFINITY, 0.0_f64, 0.0_f64);
    for (name, setup, load) in bow::limits(prepared, kind, &mut sheet)? {
        let (flat, _) = held::rebound(prepared, setup, &Load::default(), None)?;
        let (rise, error) = held::rebound(prepared, setup, &load, None)?;
        let name = format!("{name}, {}", setup.firmness_name());
        sheet.note(&format!("rebound at the latches, {name}"), rise, Measure::LENGTH);
        bow = bow.max((rise - flat).abs());
        low = low.min(rise - error + further);
        high = high.max(rise + error + further);
    }
    sheet.solved(held::PANEL_SOLVER);
    bow::tell(&mut sheet);
    sheet.note("most that the bow adds", bow, Measure::LENGTH);
    sheet.say("All latches are let go together, until the gasket pushes with a thousandth of what it did; the lid then lies on it as it is bowed, and a latch has to draw it down from there.");
    solved::tell_model(prepared, &mut sheet);
    if high > given.value {
        let to = Amount { si: high, measure: Measure::LENGTH };
        sheet.cure("latches.travel", Amount::of(given), to, "a latch with more travel");
    }
    let bound = Bound::AtMost { limit: given.value, marginal_above: None };
    let origin = Origin::Design("latches.travel".to_owned());
    let demand = sheet.finish(Finding::Number { low, high, measure: Measure::LENGTH, bound }, origin);
    if bow > 0.5 * thickness {
        return Err(NotChecked::NotCalculated {
            what: format!(
                "needs large deflection of the lid let go: bow/t = {}; linear",
                rounded(bow / thickness, 3)
            ),
            shown: Some(Box::new(demand)),
        });
    }
    Ok(demand)
}
