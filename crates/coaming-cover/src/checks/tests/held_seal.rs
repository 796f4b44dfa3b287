//! Contact left along the seal after a season, under wind, under acceleration and with a latch missing.

use super::all_round::noted;
use super::*;
use crate::demand::Demand;

fn found(review: &Reviewed, key: &str) -> Demand {
    review.row(key).unwrap().outcome.unwrap()
}

const CONTACT: [&str; 3] = ["seal_wind_out", "seal_acceleration_z", "seal_latch_missing"];

#[test]
fn a_flat_lid_loses_contact_and_a_flanged_one_keeps_it() {
    let (flat, revised) = (reviewed(FIRST_GUESS), reviewed(REVISED));
    for key in CONTACT.into_iter().chain(["seal_after_season"]) {
        assert_eq!(verdict(&flat, key), Verdict::Fail, "{key}");
        assert!(verdict(&revised, key) >= Verdict::NeedsTest, "{key}: {:?}", verdict(&revised, key));
    }
}

/// The gap may deviate by as much as is left of the compression, and by no more.
#[test]
fn contact_is_judged_against_the_deviations_of_the_gap() {
    for key in CONTACT {
        let (low, high) = demand(&reviewed(REVISED), key);
        // Root-sum-square of one deviation with those that are there already, inflated by 1.2 (limits of common practice).
        let at = |gap: f64| {
            let others = 0.5e-3 * 0.5e-3 + 2.0 * 0.2e-3 * 0.2e-3;
            let flatness = (gap / 1.2 * (gap / 1.2) - others).sqrt() * 1e3;
            verdict(&changed(REVISED, "flatness = \"0.5 mm\"", &format!("flatness = \"{flatness} mm\"")), key)
        };
        assert!(at(0.9 * low) >= Verdict::Marginal, "{key}");
        assert_eq!(at(0.5 * (low + high)), Verdict::NeedsTest, "{key}");
        assert_eq!(at(1.01 * high), Verdict::Fail, "{key}");
    }
}

#[test]
fn what_is_missing_is_named() {
    let without = |from: &str| changed(REVISED, from, &format!("# {from}"));
    needs(&without("flatness = \"0.5 mm\""), "seal_wind_out", "opening.flatness");
    needs(
        &without("acceleration = \"3 gn\""),
        "seal_acceleration_z",
        "load_cases.acceleration_z.acceleration",
    );
    needs(&without("pressure = \"1.0 kPa\""), "seal_wind_in", "load_cases.wind_in.pressure");
    needs(&without("pressure = \"1.0 kPa\""), "seal_wind_out", "load_cases.wind_out.pressure");
    needs(&without("set_of_deflection"), "seal_after_season", "seal.set_of_deflection");
    needs(&without("positions = [{ x = \"-180"), "seal_latch_missing", "latches.positions");
}

/// By hand: a set of 0.5 leaves 1.5 of 3.0 mm at the latches; between them the lid bows by what it bowed when new, and less,
/// for the gasket presses less.
#[test]
fn a_season_takes_half_of_the_compression() {
    let review = reviewed(REVISED);
    let new = found(&review, "seal_all_round");
    let old = found(&review, "seal_after_season");
    for limit in ["sheet alone", "one piece"] {
        let least = |demand: &Demand| noted(demand, &format!("least compression, {limit}"))[0];
        let bow = 3e-3 - least(&new);
        assert!(least(&old) < 1.5e-3 && least(&old) > 1.5e-3 - bow, "{} {bow}", least(&old));
    }
    // 1.5 times flatness and half the deviation of the free height: 0.5 + 0.25 mm.
    close(limit(&review, "seal_after_season"), 1.125e-3, 1e-9);
    assert_eq!(verdict(&review, "seal_after_season"), Verdict::Pass);
    let rough =
        |flatness: &str| changed(REVISED, "flatness = \"0.5 mm\"", &format!("flatness = \"{flatness}\""));
    assert_eq!(verdict(&rough("0.68 mm"), "seal_after_season"), Verdict::Marginal);
    assert_eq!(verdict(&rough("0.76 mm"), "seal_after_season"), Verdict::Fail);
}

/// Inertia by hand: with its mass thrown outward at 3 g, the latches pull that much more than the gasket pushes.
#[test]
fn inertia_is_mass_times_acceleration() {
    let review = reviewed(REVISED);
    let demand = found(&review, "seal_acceleration_z");
    let mass = super::demand(&review, "mass").0 - 6.0 * 0.06;
    let thrown = 3.0 * 9.80665 * mass;
    for limit in ["sheet alone", "one piece"] {
        let pulls: f64 = (1..=6).map(|nth| noted(&demand, &format!("pull of latch {nth}, {limit}"))[0]).sum();
        let gasket = noted(&demand, &format!("push of the gasket, {limit}"))[0];
        // The review's mass counts flanges at their outside height, the beams from under the sheet on: 2 % of the whole.
        close((pulls - gasket) / thrown, 1.0, 0.025);
    }
}

#[test]
fn the_tightest_place_is_judged_against_the_extreme() {
    for key in ["seal_all_round_most", "seal_wind_in"] {
        let review = reviewed(REVISED);
        let (low, high) = demand(&review, key);
        // Stops stand at the latches: there the gasket is compressed by 30 %, and elsewhere by hardly more.
        assert!(low > 0.29 && high < 0.36, "{key} {low} {high}");
        let at = |most: f64| {
            let limits = format!("[limits]\nclosed_cell_most = {most}\n\n[service]");
            verdict(&changed(REVISED, "[service]", &limits), key)
        };
        assert_eq!(at(1.2 * high), Verdict::Pass, "{key}");
        assert_eq!(at(1.01 * high), Verdict::Marginal, "{key}");
        assert_eq!(at(0.99 * low), Verdict::Fail, "{key}");
    }
}
