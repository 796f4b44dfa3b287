//! Leak paths, drains, and the lap of a pane.

use super::*;

#[test]
fn a_hole_within_the_seal_line_is_sealed_or_leaks() {
    let key = "leak_path_screws(pane_screws, lid)";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    let sealed = "countersunk = true\nsealed_by = \"sealant\"";
    let open = changed(REVISED, sealed, "countersunk = true\nsealed_by = \"nothing\"");
    assert_eq!(verdict(&open, key), Verdict::Fail);
    needs(&changed(REVISED, sealed, "countersunk = true"), key, "screws.pane_screws.passes.lid.sealed_by");
    needs(
        &without(
            REVISED,
            "path = { rectangle = { width = \"540 mm\", height = \"400 mm\", corner_radius = \"40 mm\" } }\n",
        ),
        key,
        "seal.path",
    );
    // Beyond the line of 540 x 400 mm nothing has to be sealed; with one side within it, some screws have.
    let at = |to: &str| {
        let text = REVISED.replace(sealed, "countersunk = true");
        changed(&text, "positions = { rectangle = { width = \"276 mm\", height = \"196 mm\" } }", to)
    };
    assert_eq!(
        verdict(&at("positions = { rectangle = { width = \"560 mm\", height = \"420 mm\" } }"), key),
        Verdict::Pass
    );
    needs(&at("positions = { rectangle = { width = \"560 mm\", height = \"390 mm\" } }"), key, "sealed_by");
    let outside = "positions = { points = { points = [{ x = \"275 mm\", y = \"0 mm\" }, { x = \"0 mm\", y = \"-205 mm\" }] } }";
    assert_eq!(verdict(&at(outside), key), Verdict::Pass);
    let inside = "positions = { points = { points = [{ x = \"275 mm\", y = \"0 mm\" }, { x = \"0 mm\", y = \"-195 mm\" }] } }";
    needs(&at(inside), key, "sealed_by");
}

#[test]
fn an_aperture_is_sealed_against_its_pane() {
    let key = "leak_path_cut_out(lid, 1)";
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Pass);
    let open = changed(REVISED, "} }, sealed_by = \"sealant\" }]", "} }, sealed_by = \"nothing\" }]");
    assert_eq!(verdict(&open, key), Verdict::Fail);
    needs(&changed(REVISED, ", sealed_by = \"sealant\" }]", " }]"), key, "layers.lid.cut_outs[0].sealed_by");
}

#[test]
fn a_drain_lies_at_the_low_point() {
    let review = reviewed(REVISED);
    assert_eq!(verdict(&review, "drain"), Verdict::Pass);
    // By hand: the opening reaches 180 mm down, the weep holes 175 mm.
    close(demand(&review, "drain").0, 5e-3, 1e-9);
    let high = changed(REVISED, "y = \"-175 mm\"", "y = \"-154 mm\"");
    assert_eq!(verdict(&high, "drain"), Verdict::Fail);
    close(demand(&high, "drain").0, 26e-3, 1e-9);
    assert_eq!(verdict(&changed(REVISED, "y = \"-175 mm\"", "y = \"-156 mm\""), "drain"), Verdict::Marginal);
    assert_eq!(verdict(&reviewed(FIRST_GUESS), "drain"), Verdict::Fail);
    // Turned on its side, the low point is the right edge: 250 mm, and the weep hole at 200.
    let turned = changed(REVISED, "gravity = { x = 0, y = -1, z = 0 }", "gravity = { x = 2, y = 0, z = 0 }");
    close(demand(&turned, "drain").0, 50e-3, 1e-9);
    let flat = changed(REVISED, "gravity = { x = 0, y = -1, z = 0 }", "gravity = { x = 0, y = 0, z = -1 }");
    assert_eq!(verdict(&flat, "drain"), Verdict::NeedsTest);
    needs(
        &without(REVISED, "gravity = { x = 0, y = -1, z = 0 } # a vertical side panel\n"),
        "drain",
        "service.gravity",
    );
    let nowhere = REVISED.replace("gravity = { x = 0, y = -1, z = 0 }", "gravity = { x = 0, y = 0, z = 0 }");
    assert!(read(&nowhere, Form::Toml).unwrap_err().to_string().contains("service.gravity"));
}

#[test]
fn a_pane_stays_in_its_lap() {
    let key = "pane_engagement(pane)";
    let review = reviewed(REVISED);
    assert_eq!(verdict(&review, key), Verdict::Pass);
    // By hand, over 180 mm: 20 mm of lap less 4 w^2/(3 x 180 mm) for the linear bow w of the hand's own row, less
    // (65 x 30 - 23.8 x 35) 1e-6 x 110 mm of shrinkage, 1 mm of play and 1 mm of tolerance.
    let bow = input(&review, "pane_hand(pane)", "supported plate, hand at its centre, deflection, linear");
    close(demand(&review, key).0, 18e-3 - 4.0 * bow * bow / 0.54 - 0.001_117 * 0.110, 1e-7);
    let narrow = changed(
        REVISED,
        "width = \"300 mm\", height = \"220 mm\"",
        "width = \"295 mm\", height = \"215 mm\"",
    );
    assert_eq!(verdict(&narrow, key), Verdict::Marginal);
    let short = changed(
        REVISED,
        "width = \"300 mm\", height = \"220 mm\"",
        "width = \"290 mm\", height = \"210 mm\"",
    );
    assert_eq!(verdict(&short, key), Verdict::Fail);
    needs(&without(REVISED, "edge_tolerance = \"1 mm\" # chosen here\n"), key, "layers.pane.edge_tolerance");
}

#[test]
fn a_pane_behind_the_sheet_is_held_by_its_lap() {
    let key = "pane_retention(pane)";
    let review = reviewed(REVISED);
    assert_eq!(verdict(&review, key), Verdict::Pass);
    // By hand: (300 - 244)/2 and (220 - 164)/2.
    close(demand(&review, key).0, 28e-3, 1e-9);
    let wide = changed(
        REVISED,
        "width = \"244 mm\", height = \"164 mm\"",
        "width = \"244 mm\", height = \"192 mm\"",
    );
    assert_eq!(verdict(&wide, key), Verdict::Fail);
    let before = "name = \"pane\"\nrole = \"pane\"\nface = \"inner\"";
    not_calculated(&changed(REVISED, before, "name = \"pane\"\nrole = \"pane\"\nface = \"outer\""), key);
    needs(&changed(REVISED, before, "name = \"pane\"\nrole = \"pane\""), key, "layers.pane.face");
}
