//! Chemicals, service temperatures and metals of gasket, adhesives and screws; what burns.

use super::*;

#[test]
fn an_agent_is_held_against_the_gasket_too() {
    let key = "gasket_agent(hypochlorite)";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    let neoprene = changed(REVISED, "epdm_sponge_2a1", "neoprene_sponge_2c1");
    assert_eq!(verdict(&neoprene, key), Verdict::Fail);
    needs(&without(REVISED, "material = \"epdm_sponge_2a1\"\n"), key, "seal.material");
    let fuel = changed(REVISED, "\"neutral_detergent\", \"hypochlorite\"", "\"ketones\"");
    not_calculated(&fuel, "gasket_agent(ketones)");
    assert_eq!(verdict(&reviewed(REVISED), "adhesive_agent(strip_bond, neutral_detergent)"), Verdict::Pass);
    assert_eq!(verdict(&reviewed(REVISED), "adhesive_agent(strip_bond, hypochlorite)"), Verdict::NeedsTest);
    assert_eq!(verdict(&fuel, "adhesive_agent(strip_bond, ketones)"), Verdict::Fail);
}

#[test]
fn a_backing_must_suit_its_gasket() {
    assert_eq!(verdict(&reviewed(REVISED), "backing_neighbour"), Verdict::Pass);
    assert_eq!(verdict(&reviewed(FIRST_GUESS), "backing_neighbour"), Verdict::Fail);
    needs(&without(REVISED, "backing = \"adhesive_backing_acrylic\"\n"), "backing_neighbour", "seal.backing");
}

#[test]
fn sun_and_ozone_are_held_against_what_they_reach() {
    let key = "weather(pane)";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::NeedsTest);
    let acrylic = changed(REVISED, "\"polycarbonate\"", "\"acrylic_cast\"");
    assert_eq!(verdict(&acrylic, key), Verdict::Pass);
    needs(&changed(REVISED, "material = \"polycarbonate\"", "# "), key, "layers.pane.material");
    assert_eq!(verdict(&reviewed(REVISED), "gasket_weather"), Verdict::Pass);
    let nitrile = changed(REVISED, "epdm_sponge_2a1", "nitrile_sponge_2b1");
    assert_eq!(verdict(&nitrile, "gasket_weather"), Verdict::Fail);
}

#[test]
fn gasket_and_adhesive_have_service_temperatures() {
    let review = reviewed(REVISED);
    for key in ["gasket_temperature", "adhesive_temperature(strip_bond)", "adhesive_cold(strip_bond)"] {
        assert!(verdict(&review, key) >= Verdict::Marginal, "{key}");
    }
    let hot = changed(REVISED, "highest = \"40 degC\"", "highest = \"90 degC\"");
    assert_eq!(verdict(&hot, "gasket_temperature"), Verdict::Fail);
    // By hand: the warmer layer of the bond stands 75 - 20 K above assembly.
    close(demand(&review, "adhesive_temperature(strip_bond)").0, 55.0, 1e-9);
    let bond = changed(
        REVISED,
        "layer = \"strip\", temperature = \"75 degC\"",
        "layer = \"strip\", temperature = \"175 degC\"",
    );
    assert_eq!(verdict(&bond, "adhesive_temperature(strip_bond)"), Verdict::Fail);
    needs(&without(REVISED, "highest = \"40 degC\"\n"), "gasket_temperature", "service.ambient.highest");
    needs(&without(REVISED, "lowest = \"-15 degC\"\n"), "gasket_cold", "service.ambient.lowest");
}

#[test]
fn what_stiffens_in_the_cold_is_named() {
    let key = "layer_cold(pane)";
    let review = reviewed(REVISED);
    assert_eq!(verdict(&review, key), Verdict::Pass);
    // By hand: 20 + 10 K below assembly, against 20 + 40 K.
    close(demand(&review, key).0, 30.0, 1e-9);
    close(limit(&review, key), 60.0, 1e-9);
    let arctic = changed(
        REVISED,
        "layer = \"pane\", temperature = \"-10 degC\"",
        "layer = \"pane\", temperature = \"-41 degC\"",
    );
    assert_eq!(verdict(&arctic, key), Verdict::Fail);
    // By hand: 20 + 15 K below assembly, against 20 + 40 K.
    close(demand(&review, "gasket_cold").0, 35.0, 1e-9);
    close(limit(&review, "gasket_cold"), 60.0, 1e-9);
    let nitrile = changed(REVISED, "epdm_sponge_2a1", "nitrile_sponge_2b1");
    needs(&nitrile, "gasket_cold", "materials.nitrile_sponge_2b1.lowest_temperature");
}

#[test]
fn a_screw_corrodes_the_sheet_unless_they_are_kept_apart() {
    let key = "screw_galvanic(pane_screws, lid)";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    assert_eq!(verdict(&reviewed(FIRST_GUESS), key), Verdict::Fail);
    needs(&changed(REVISED, "insulated = true # set", "# "), key, "screws.pane_screws.passes.lid.insulated");
    needs(&changed(REVISED, "material = \"stainless_a2_screw\"", "# "), key, "screws.pane_screws.material");
    // Zinc-plated or aluminium-coloured makes no odds here: aluminium on aluminium is one group.
    let like = changed(REVISED, "material = \"stainless_a2_screw\"", "material = \"aluminium_6061_t6\"");
    let like = like.row(key).unwrap();
    assert_eq!(like.verdict, Verdict::Pass);
    assert_eq!(verdict(&reviewed(FIRST_GUESS), "screw_galvanic(pane_screws, pane)"), Verdict::Pass);
}

#[test]
fn a_closed_bay_pulls_at_its_latches() {
    let key = "closed_bay_latch";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    needs(&reviewed(FIRST_GUESS), key, "latches.working_load");
    let held = |load: &str| {
        changed(FIRST_GUESS, "travel = \"6 mm\"", &format!("travel = \"6 mm\"\nworking_load = \"{load}\""))
    };
    // Four latches: beside the gasket some 22.7 kPa on 0.2146 m2 pull with 1.2 kN at each.
    assert_eq!(verdict(&held("1.2 kN"), key), Verdict::Fail);
    assert_eq!(verdict(&held("3 kN"), key), Verdict::Pass);
}

#[test]
fn what_burns_is_referred_and_never_passes() {
    assert_eq!(verdict(&reviewed(REVISED), "flammability"), Verdict::NeedsTest);
    needs(&changed(REVISED, "material = \"polycarbonate\"", "# "), "flammability", "layers.pane.material");
    assert_eq!(verdict(&reviewed(REVISED), "touch_inner"), Verdict::NeedsTest);
}
