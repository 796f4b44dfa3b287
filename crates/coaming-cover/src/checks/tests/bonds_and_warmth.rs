//! Bond lines in the sun, faces to the touch, dew, wind on a sheet without a cut-out.

use super::*;

#[test]
fn a_bond_line_in_the_sun_shears_further() {
    let key = "bond_shear_sun(strip_bond)";
    let review = reviewed(REVISED);
    assert_eq!(verdict(&review, key), Verdict::Pass);
    assert!(demand(&review, key).0 > demand(&review, "bond_shear(strip_bond)").0);
    let thin = changed(REVISED, "thickness = \"1.0 mm\"", "thickness = \"0.7 mm\"");
    assert_eq!(verdict(&thin, key), Verdict::Fail);
    // The thickness that the cure names is where the row comes to its limit.
    let (_, to) = thin.row(key).unwrap().outcome.unwrap().cure.unwrap().change.unwrap();
    let cured = changed(REVISED, "thickness = \"1.0 mm\"", &format!("thickness = \"{} m\"", to.si));
    close(demand(&cured, key).0, limit(&cured, key), 1e-9);
    needs(&changed(REVISED, "thickness = \"1.0 mm\"\n", ""), key, "bonds.strip_bond.thickness");
    let sun = "    { layer = \"strip\", temperature = \"75 degC\", humidity = 0.5 },\n]\n\n[[load_cases]]\nkind = \"opening\"";
    let shaded = changed(REVISED, sun, "]\n\n[[load_cases]]\nkind = \"opening\"");
    needs(&shaded, key, "load_cases.sun.states.strip.temperature");
}

#[test]
fn a_rigid_bond_line_never_passes() {
    let review = reviewed(FIRST_GUESS);
    assert_eq!(verdict(&review, "bond_shear_sun(strip_bond)"), Verdict::NeedsTest);
    let thin = changed(FIRST_GUESS, "thickness = \"0.15 mm\"", "thickness = \"0.02 mm\"");
    assert_eq!(verdict(&thin, "bond_shear_sun(strip_bond)"), Verdict::Fail);
}

#[test]
fn touch_is_a_flag_in_sun_and_shade() {
    assert_eq!(verdict(&reviewed(REVISED), "touch"), Verdict::NeedsTest);
    let shade = changed(REVISED, "sun = \"900 W/m^2\"", "sun = \"0 W/m^2\"");
    assert_eq!(verdict(&shade, "touch"), Verdict::NeedsTest);
    needs(&without(REVISED, "sun = \"900 W/m^2\"\n"), "touch", "service.ambient.sun");
}

#[test]
fn a_dry_bay_stays_without_dew() {
    assert_eq!(verdict(&changed(REVISED, "humidity = 0.9", "humidity = 0.1"), "dew"), Verdict::Pass);
    needs(&without(REVISED, "dew_ambient = \"5 degC\"\n"), "dew", "service.bay.dew_ambient");
}

#[test]
fn a_backing_bears_its_service_temperature_and_no_more() {
    let rubber = changed(REVISED, "adhesive_backing_acrylic", "adhesive_backing_rubber");
    assert_eq!(verdict(&rubber, "backing_temperature"), Verdict::Fail);
    needs(
        &without(REVISED, "solar_absorptance = 0.5 # grey paint, chosen here\n"),
        "backing_temperature",
        "solar_absorptance",
    );
}

#[test]
fn wind_is_judged_on_a_sheet_without_a_cut_out() {
    let cut = "cut_outs = [{ outline = { rectangle = { width = \"244 mm\", height = \"164 mm\", corner_radius = \"20 mm\" } }, sealed_by = \"sealant\" }] # radius and sealing chosen here\n";
    let solid = without_text(REVISED, cut);
    // Past half the thickness it is judged by large deflection on its seal and latches.
    assert_eq!(verdict(&reviewed(&solid), "lid_wind_in(lid)"), Verdict::Pass);
    let storm = changed(&solid, "pressure = \"1.0 kPa\"", "pressure = \"6.0 kPa\"");
    assert_eq!(verdict(&storm, "lid_wind_in(lid)"), Verdict::Fail);
    needs(&without(&solid, "pressure = \"1.0 kPa\"\n"), "lid_wind_in(lid)", "load_cases.wind_in.pressure");
}

#[test]
fn a_liner_warms_the_face_that_it_covers_and_no_other() {
    let review = reviewed(REVISED);
    // By hand: of 35 K the inner film takes 1/6 over 1/6 + 2.5 mm/138 + 1/15 bare, and over 6 mm/0.036 more where lined:
    // 15.0 and 25.4 degC; the dew point of 90 % at 40 degC is 38.0 degC.
    let face = |resistance: f64| 40.0 - 35.0 / 6.0 / resistance;
    let (bare, lined) = (face(1.0 / 6.0 + 0.0025 / 138.0 + 1.0 / 15.0), face(0.4 + 0.0025 / 138.0));
    close(input(&review, "dew", "inner face") - 273.15, bare, 1e-6);
    close(input(&review, "dew", "inner face, lined") - 273.15, lined, 1e-6);
    close(lined, 25.4, 0.05);
    let (low, high) = demand(&review, "dew");
    close(high - low, lined - bare, 1e-9);
    close(high, lined - 38.0, 0.1);
    assert_eq!(verdict(&review, "dew"), Verdict::Fail);
    // Where it covers the face the dew is kept off at 40 %, and not beside it.
    assert_eq!(
        verdict(&changed(REVISED, "humidity = 0.9\nfilm", "humidity = 0.4\nfilm"), "dew"),
        Verdict::NeedsTest
    );
    // The pane by itself: 5 mm of 0.21 W/(m K).
    let pane = face(1.0 / 6.0 + 0.005 / 0.21 + 1.0 / 15.0);
    close(input(&review, "dew_pane(pane)", "inner face") - 273.15, pane, 1e-6);
    assert_eq!(verdict(&review, "dew_pane(pane)"), Verdict::Fail);
    assert_eq!(
        verdict(&changed(REVISED, "humidity = 0.9\nfilm", "humidity = 0.1\nfilm"), "dew_pane(pane)"),
        Verdict::Pass
    );
    needs(
        &without(REVISED, "dew_temperature = \"40 degC\"\n"),
        "dew_pane(pane)",
        "service.bay.dew_temperature",
    );
}
