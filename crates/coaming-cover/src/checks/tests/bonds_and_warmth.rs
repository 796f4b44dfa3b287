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
    // Past half the thickness a solid plate on a rigid seal line is no bound for a lid that its gasket lets sink.
    not_calculated(&reviewed(&solid), "lid_wind_in(lid)");
    let storm = changed(&solid, "pressure = \"1.0 kPa\"", "pressure = \"6.0 kPa\"");
    assert_eq!(verdict(&storm, "lid_wind_in(lid)"), Verdict::Fail);
    needs(&without(&solid, "pressure = \"1.0 kPa\"\n"), "lid_wind_in(lid)", "load_cases.wind_in.pressure");
}
