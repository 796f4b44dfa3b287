//! Layers that their screws hold.

use super::*;

const BUSH: &str = "[screws.bush]\nlayer = \"pane\"\noutside_diameter = \"6 mm\"\nbore = \"3.2 mm\" # chosen here\nmaterial = \"stainless_304\" # chosen here\nlength = \"5.4 mm\" # from the play that its own check asks for\nlength_tolerance = \"0.05 mm\" # chosen here\n";

#[test]
fn a_clamped_pane_bows_before_it_slides() {
    let key = "clamp_friction(pane_screws, pane)";
    let review = reviewed(FIRST_GUESS);
    assert_eq!(verdict(&review, key), Verdict::Fail);
    // By hand: 1.6 N m/(0.2 x 4 mm) = 2 kN; five screws to a side, two faces, friction of 0.15 to 0.3.
    let (low, high) = demand(&review, key);
    close(low, 3000.0, 1e-6);
    close(high, 6000.0, 1e-6);
    // By hand: (1 + (180/260)^2) pi^2 E/(12 (1 - 0.38^2)) (3/180)^2 = 0.90850 MPa with E = 2.3 GPa, on 220 x 3 mm.
    close(limit(&review, key), 599.612, 0.01);
    let soft = changed(FIRST_GUESS, "torque = \"1.6 N·m\"", "torque = \"0.1 N·m\"");
    assert_eq!(verdict(&soft, key), Verdict::Pass);
    let between = changed(FIRST_GUESS, "torque = \"1.6 N·m\"", "torque = \"0.2 N·m\"");
    assert_eq!(verdict(&between, key), Verdict::NeedsTest);
    needs(&without(FIRST_GUESS, "nut_factor = 0.2 # chosen here\n"), key, "screws.pane_screws.nut_factor");
    needs(&changed(FIRST_GUESS, "friction_low", "# friction_low"), key, "screws.pane_screws.friction_low");
}

#[test]
fn a_pane_floats_on_bushes_longer_than_itself() {
    let key = "clamp_friction(pane_screws, pane)";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    let friction = |review: &Reviewed| matches!(review.row(key).unwrap().outcome, Ok(ref demand) if matches!(demand.finding, Finding::Number { .. }));
    assert!(!friction(&reviewed(REVISED)));
    // A bush too short, and none at all, leave it to friction.
    assert!(friction(&changed(REVISED, "length = \"5.4 mm\"", "length = \"5.2 mm\"")));
    assert!(friction(&without(REVISED, BUSH)));
    needs(&without(REVISED, "length_tolerance = \"0.05 mm\" # chosen here\n"), key, "bush.length_tolerance");
    needs(&changed(REVISED, "length = \"5.4 mm\"", "# "), "bush_length(pane_screws)", "bush.length");
}

#[test]
fn a_pane_bows_past_its_critical_rise() {
    let key = "critical_rise(pane_screws, pane)";
    let review = reviewed(FIRST_GUESS);
    assert_eq!(verdict(&review, key), Verdict::Fail);
    // By hand: growth of 0.001902 over what polycarbonate expands more than aluminium.
    let apart = 65e-6 - 23.8e-6;
    close(limit(&review, key), 0.001_902 / apart, 0.01);
    // By hand: (1 + (180/260)^2) pi^2/(12 x 1.38) (3/180)^2 = 2.4490e-4 of strain over the same for a plate held all along its edge.
    let all_along = input(&review, key, "plate held all along a supported edge, rise that bows it");
    close(all_along, 2.449_008e-4 / apart, 1e-5);
    // Ten screws hold it less than an edge would, and no clearance is left by the tolerance.
    let (low, high) = demand(&review, key);
    assert!(low > all_along && high > 1.5 * low, "{low} {high}");
    let tight = |hole: &str| changed(REVISED, "hole = \"8.0 mm\"", &format!("hole = \"{hole}\""));
    for (hole, expected) in
        [("8.0 mm", Verdict::Pass), ("6.8 mm", Verdict::Marginal), ("6.6 mm", Verdict::NeedsTest)]
    {
        assert_eq!(verdict(&tight(hole), key), expected, "{hole}");
    }
    needs(&without(REVISED, "free_width = \"260 mm\"\n"), key, "layers.pane.free_width");
}
