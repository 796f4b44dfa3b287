//! Compression all round the seal, with lid, gasket and latches together.

use super::edge::STRAIGHT;
use super::*;
use crate::checks::latch_forces;
use crate::demand::{Demand, InputValue};
use crate::worksheet::Worksheet;

const KEY: &str = "seal_all_round";

fn found(review: &Reviewed) -> (Verdict, Demand) {
    let row = review.row(KEY).unwrap();
    (row.verdict, row.outcome.unwrap())
}

/// The inputs whose label begins so, in SI units.
pub(super) fn noted(demand: &Demand, label: &str) -> Vec<f64> {
    let inputs = demand.inputs.iter().filter(|input| input.label.starts_with(label));
    inputs
        .map(|input| match &input.value {
            InputValue::Amount(amount) => amount.si,
            InputValue::Words(words) => panic!("{words}"),
        })
        .collect()
}

#[test]
fn a_flat_lid_opens_and_a_flanged_one_follows_its_seal() {
    let (verdict, flat) = found(&reviewed(FIRST_GUESS));
    assert_eq!(verdict, Verdict::Fail);
    assert!(noted(&flat, "least compression, sheet alone")[0] < 0.0);
    assert!(noted(&flat, "seal line without contact")[0] > 0.1);
    let (verdict, revised) = found(&reviewed(REVISED));
    assert_eq!(verdict, Verdict::Pass);
    // The gasket can be no more compressed between latches than at them: 3 mm of 10.
    let (low, high) = demand(&reviewed(REVISED), KEY);
    assert!(low > 0.25 && low < high && high < 0.3001, "{low} {high}");
    // All latches together pull what the gasket pushes: no more than the closed form's gasket at 3 mm everywhere, and not
    // much less, for it is compressed by almost as much between them.
    let forces = latch_forces(&Prepared::new(&reviewed(REVISED).0).unwrap(), &mut Worksheet::new()).unwrap();
    let closed: Vec<f64> = forces.iter().map(|force| 6.0 * force.latch_force.value).collect();
    for limit in ["sheet alone", "one piece"] {
        let pulls: Vec<f64> =
            (1..=6).map(|n| noted(&revised, &format!("pull of latch {n}, {limit}"))[0]).collect();
        let sum: f64 = pulls.iter().sum();
        let most = closed.iter().copied().fold(0.0, f64::max);
        assert!(sum < most * 1.001 && sum > 0.85 * most, "{sum} {closed:?}");
        // The document's cover is the same turned about both axes: so are the latches, to the error of an uneven mesh.
        close(pulls[0] / pulls[1], 1.0, 0.01);
        close(pulls[0] / pulls[3], 1.0, 0.01);
        close(pulls[4] / pulls[5], 1.0, 0.01);
    }
    assert!(noted(&revised, "balance left over").iter().all(|left| left.abs() < 1e-8));
}

/// A lid about ten times as thick, a thousand times as stiff, stays flat: the gasket is compressed alike all round, and the latches share what
/// the closed form says.
#[test]
fn a_lid_that_cannot_bow_leaves_the_closed_form() {
    let thick = REVISED.replace("thickness = \"2.5 mm\"", "thickness = \"24 mm\"");
    let straight = changed(&thick, "pressure_at_25_percent = \"24 kPa\"", STRAIGHT);
    let (low, high) = demand(&straight, KEY);
    close(low, 0.3, 1e-3);
    close(high, 0.3, 1e-3);
    let (_, demand) = found(&straight);
    let sum: f64 = (1..=6).map(|n| noted(&demand, &format!("pull of latch {n}, sheet alone"))[0]).sum();
    // By hand: 30 kPa on 12 mm is 360 N/m, on 1811.327 mm of line.
    close(sum / (360.0 * 1.811_327), 1.0, 2e-3);
}

#[test]
fn the_limit_lies_between() {
    let at = |limit: &str| {
        verdict(
            &changed(REVISED, "[service]", &format!("[limits]\nclosed_cell_least = {limit}\n\n[service]")),
            KEY,
        )
    };
    let (low, high) = demand(&reviewed(REVISED), KEY);
    assert_eq!(at(&format!("{}", low / 1.05)), Verdict::Marginal);
    assert_eq!(at(&format!("{}", (low + high) / 2.0)), Verdict::NeedsTest);
    assert_eq!(at(&format!("{}", high + 0.001)), Verdict::Fail);
}

#[test]
fn what_is_missing_is_named() {
    let without = |from: &str| changed(REVISED, from, &format!("# {from}"));
    needs(&without("positions = [{ x = \"-180"), KEY, "latches.positions");
    needs(&without("good_face"), KEY, "good_face");
    needs(&without("stop_height"), KEY, "seal.stop_height");
    needs(&without("free_height = \"10 mm\""), KEY, "seal.free_height");
    needs(&without("thickness = \"2.5 mm\""), KEY, "layers.lid.thickness");
    needs(&without("bend_direction"), KEY, "layers.lid.bends.bend_direction");
}

/// A latch beside the lid is refused with its place, and nothing panics.
#[test]
fn a_latch_off_the_lid_is_refused() {
    let off = changed(REVISED, "{ x = \"270 mm\", y = \"0 mm\" }", "{ x = \"700 mm\", y = \"0 mm\" }");
    match off.row(KEY).unwrap().outcome {
        Err(NotChecked::Refused(coaming::error::Error::Geometry { reason, .. })) => {
            assert!(reason.contains("latch 4"), "{reason}")
        }
        other => panic!("{other:?}"),
    }
}
