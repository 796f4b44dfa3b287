//! What each latch pulls, with lid, gasket and latches together.

use super::all_round::noted;
use super::crossing::with_limit;
use super::*;
use crate::checks::latch_forces;
use crate::demand::Demand;
use crate::worksheet::Worksheet;

fn found(review: &Reviewed, key: &str) -> Demand {
    review.row(key).unwrap().outcome.unwrap()
}

fn pulls(demand: &Demand, limit: &str) -> Vec<f64> {
    (1..=6).flat_map(|nth| noted(demand, &format!("pull of latch {nth}, {limit}"))).collect()
}

/// Six latches of a maker who allows so much.
fn allowed(load: &str) -> String {
    REVISED.replace("travel = \"12 mm\"", &format!("travel = \"12 mm\"\nworking_load = \"{load}\""))
}

/// What the gasket pushes with, the latches pull: stops push nothing while the latches hold the lid at their height.
#[test]
fn latches_pull_what_the_gasket_pushes() {
    let review = reviewed(REVISED);
    let demand = found(&review, "latch_hand_force");
    for limit in ["sheet alone", "one piece"] {
        let sum: f64 = pulls(&demand, limit).iter().sum();
        close(sum, noted(&demand, &format!("push of the gasket, {limit}"))[0], 1e-6 * sum);
    }
    // L1 by hand: the most loaded latch over a lever of 5.8 at 0.9.
    let most =
        ["sheet alone", "one piece"].iter().flat_map(|limit| pulls(&demand, limit)).fold(0.0, f64::max);
    let (low, high) = super::demand(&review, "latch_hand_force");
    assert!(low <= most / 5.22 && most / 5.22 <= high && high < 1.03 * low, "{low} {most} {high}");
}

#[test]
fn the_hand_is_judged_on_the_most_loaded_latch() {
    let (low, high) = demand(&reviewed(REVISED), "latch_hand_force");
    let cover = reviewed(REVISED).0;
    let at = |limit: f64| with_limit(&cover, "hand_force", limit).row("latch_hand_force").unwrap().verdict;
    assert_eq!(at(1.2 * high), Verdict::Pass);
    assert_eq!(at(1.01 * high), Verdict::Marginal);
    assert_eq!(at(0.5 * (low + high)), Verdict::NeedsTest);
    assert_eq!(at(0.99 * low), Verdict::Fail);
    let places = "positions = [{ x = \"-180";
    needs(&changed(REVISED, places, &format!("# {places}")), "latch_hand_force", "latches.positions");
}

/// A lid about ten times as thick stays flat: the latches together pull what the closed form says, and so do those that are
/// left when one is missing, for the stops do nothing to a gasket that is compressed alike all round.
#[test]
fn a_lid_that_cannot_bow_leaves_the_closed_form() {
    let thick = allowed("1 kN").replace("thickness = \"2.5 mm\"", "thickness = \"24 mm\"");
    let review = reviewed(&thick);
    let forces = latch_forces(&Prepared::new(&review.0).unwrap(), &mut Worksheet::new()).unwrap();
    let expected = 6.0 * forces[0].latch_force.value;
    for key in ["latch_working_load", "latch_missing"] {
        let sum: f64 = pulls(&found(&review, key), "sheet alone").iter().sum();
        close(sum / expected, 1.0, 3e-3);
    }
}

#[test]
fn a_missing_latch_loads_its_neighbours() {
    let review = reviewed(&allowed("1 kN"));
    let demand = found(&review, "latch_missing");
    let closed = found(&review, "latch_working_load");
    let nth = noted(&demand, "latch that is missing")[0] as usize;
    let (left, all) = (pulls(&demand, "sheet alone"), pulls(&closed, "sheet alone"));
    close(left[nth - 1], 0.0, 1e-12);
    let strongest = left.iter().copied().fold(0.0, f64::max);
    assert!(strongest > 1.2 * all.iter().copied().fold(0.0, f64::max), "{left:?} {all:?}");
    // A rigid lid would share evenly among the others; and none pulls more than all of the gasket.
    let (even, all) =
        (noted(&demand, "even share of the others")[0], noted(&demand, "push of the gasket")[0]);
    assert!(strongest > even && strongest < all, "{even} {strongest} {all}");
    close(left.iter().sum::<f64>(), noted(&demand, "push of the gasket, sheet alone")[0], 1e-6 * all);
    let (low, high) = super::demand(&review, "latch_missing");
    for (load, expected) in
        [(1.2 * high, Verdict::Pass), (0.5 * (low + high), Verdict::NeedsTest), (0.99 * low, Verdict::Fail)]
    {
        assert_eq!(verdict(&reviewed(&allowed(&format!("{load} N"))), "latch_missing"), expected, "{load}");
    }
    needs(&reviewed(REVISED), "latch_missing", "latches.working_load");
}

/// Wind that lifts adds to the pulls what it lifts with, less what the gasket then pushes less.
#[test]
fn wind_adds_to_the_pulls() {
    let review = reviewed(&allowed("400 N"));
    let (closed, blown) = (found(&review, "latch_working_load"), found(&review, "latch_working_load_wind"));
    for limit in ["sheet alone", "one piece"] {
        let gasket = |demand: &Demand| noted(demand, &format!("push of the gasket, {limit}"))[0];
        let sum = |demand: &Demand| pulls(demand, limit).iter().sum::<f64>();
        // By hand: 1 kPa on 580 by 440 mm, and on what closes the aperture.
        let lift = 1000.0 * 0.58 * 0.44;
        let aperture = if limit == "one piece" { 0.0 } else { 1e-6 * sum(&blown) };
        close(sum(&blown), gasket(&blown) + lift, 2e-3 * lift + aperture);
        assert!(gasket(&blown) <= gasket(&closed), "{limit}");
    }
    assert_eq!(verdict(&review, "latch_working_load_wind"), Verdict::Pass);
    assert_eq!(verdict(&reviewed(&allowed("100 N")), "latch_working_load_wind"), Verdict::Fail);
    needs(&reviewed(REVISED), "latch_working_load_wind", "latches.working_load");
    let calm = allowed("400 N").replace("kind = \"wind_out\"\npressure = \"1.0 kPa\"", "kind = \"wind_out\"");
    needs(&reviewed(&calm), "latch_working_load_wind", "load_cases.wind_out.pressure");
}

/// By hand: let go, the gasket lifts the lid at each latch by the 3.0 mm that it was compressed by, and the hook needs 1.5 mm
/// to pass its keeper; a thousandth of the force is left in the gasket.
#[test]
fn a_lid_springs_back_by_what_the_gasket_was_compressed_by() {
    let (low, high) = demand(&reviewed(REVISED), "latch_release");
    assert!(low > 4.4e-3 && low <= 4.5e-3 && high < 4.6e-3, "{low} {high}");
    let at = |travel: f64| {
        let travel = format!("travel = \"{} mm\"", travel * 1e3);
        verdict(&changed(REVISED, "travel = \"12 mm\"", &travel), "latch_release")
    };
    assert_eq!(at(1.12 * high), Verdict::Pass);
    assert_eq!(at(1.02 * high), Verdict::Marginal);
    assert_eq!(at(0.5 * (low + high)), Verdict::NeedsTest);
    assert_eq!(at(0.99 * low), Verdict::Fail);
    let without = |from: &str| changed(REVISED, from, &format!("# {from}"));
    needs(&without("release_clearance"), "latch_release", "latches.release_clearance");
    needs(&without("positions = [{ x = \"-180"), "latch_release", "latches.positions");
}
