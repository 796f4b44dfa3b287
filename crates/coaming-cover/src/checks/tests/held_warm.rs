//! Lids that growth bows: the seal's contact, the latches' pull and their travel.

use super::all_round::noted;
use super::*;
use crate::demand::Demand;

pub(super) const PLATE: &str = include_str!("plate.toml");

fn found(review: &Reviewed, key: &str) -> Demand {
    review.row(key).unwrap().outcome.unwrap_or_else(|why| panic!("{key}: {why:?}"))
}

/// Curvature of two strips that grow apart by a strain, m and n the ratios of their thicknesses and moduli (Timoshenko, Analysis of
/// bi-metal thermostats, J. Opt. Soc. Am. 11 (1925), eq. 4); two plates of one Poisson ratio bow alike along every line.
fn bimetal(strain: f64, (first, second): (f64, f64), n: f64) -> f64 {
    let (m, h) = (first / second, first + second);
    let square = (1.0 + m) * (1.0 + m);
    6.0 * strain * square / (h * (3.0 * square + (1.0 + m * n) * (m * m + 1.0 / (m * n))))
}

/// How far the middle of a long side lies from the plane of the corners: 200 mm along x, on a paraboloid.
fn sagitta(curvature: f64) -> f64 {
    0.5 * curvature * 0.2 * 0.2
}

const ALL: &str = "bonded layers as one piece, all that grows";

/// Warm, the light outer plate grows more: the lid bows outward, and the seal lacks at the middle of the long sides what a
/// bi-metal of the same plates rises by. Cold, it bows inward, and the seal is squeezed there by as much.
#[test]
fn two_plates_bow_as_a_bimetal_does() {
    let review = reviewed(PLATE);
    let rise = sagitta(bimetal(12e-6 * 20.0, (4e-3, 2e-3), 70.0 / 200.0));
    assert!(rise > 1e-3, "{rise}");
    let (hot, cold) = (found(&review, "seal_hot"), found(&review, "seal_cold"));
    close(noted(&hot, &format!("least compression, {ALL}"))[0], 3e-3 - rise, 2e-3 * rise);
    close(noted(&cold, &format!("largest compression, {ALL}"))[0], 3e-3 + rise, 2e-3 * rise);
    // The band reaches to the lid whose plates are not joined at all, flat on its soft gasket.
    let (low, high) = demand(&review, "seal_hot");
    assert!(low <= 3e-3 - rise && low > 2.95e-3 - rise, "{low}");
    close(high, 3e-3, 2e-5);
    assert_eq!(demand(&review, "seal_sun"), (low, high));
}

/// By hand: 40 K across films of 10 and 20 W/m²K and 6 mm of 0.2 W/mK leave 40 × 0.03/0.18 K between the faces, and a free sheet of
/// which one face is longer bows by that strain over its thickness. It is as stiff as metal, so that the gasket does nothing to it.
#[test]
fn a_sheet_with_one_face_warmer_bows_freely() {
    let layer = PLATE.split("[[layers]]").nth(2).unwrap().split("[seal]").next().unwrap();
    let text = PLATE.replace(&format!("[[layers]]{layer}"), "");
    let text = text.replace(", { layer = \"back\", temperature = \"0 degC\" }", "");
    let text = text.replace(", { layer = \"back\", temperature = \"40 degC\" }", "");
    let text = text.replace("material = \"light\"", "material = \"plastic\"").replace("\"4 mm\"", "\"6 mm\"");
    let text = text.replace("lowest = \"20 degC\"", "lowest = \"0 degC\"");
    let text = text.replace("bay = { temperature = \"20 degC\"", "bay = { temperature = \"40 degC\"");
    let plastic = "\n[[materials]]\nname = \"plastic\"\nlike = \"aluminium_5052_h32\"\nbasis = \"measured\"\nthermal_conductivity = \"0.2 W/(m K)\"\nexpansion = \"65e-6 1/K\"\n";
    let review = reviewed(&format!("{text}{plastic}"));
    let cold = found(&review, "seal_cold");
    let rise = sagitta(65e-6 * 40.0 * 0.03 / 0.18 / 6e-3);
    assert!(rise > 1e-3, "{rise}");
    let most = noted(&cold, "largest compression, sheet alone, its own faces")[0];
    // The gasket, softer than the sheet by far, gives a little way.
    close(most, 3e-3 + rise, 1e-2 * rise);
    close(noted(&cold, "largest compression, sheet alone, nothing grows apart")[0], 3e-3, 2e-5);
}

#[test]
fn contact_is_judged_where_the_lid_is_bowed() {
    for (key, low) in [("seal_hot", 1.8e-3), ("seal_sun", 1.8e-3), ("seal_cold", 2.9e-3)] {
        let (least, most) = demand(&reviewed(PLATE), key);
        assert!(least > low && most < 3.1e-3, "{key}: {least} {most}");
        // The gap deviates by the flatness alone, inflated by 1.2.
        let at = |gap: f64| {
            let flatness = format!("flatness = \"{} mm\"", gap / 1.2 * 1e3);
            verdict(&changed(PLATE, "flatness = \"0.1 mm\"", &flatness), key)
        };
        assert_eq!(at(0.8 * least), Verdict::Pass, "{key}");
        assert_eq!(at(0.5 * (least + most)), Verdict::NeedsTest, "{key}");
        assert_eq!(at(1.01 * most), Verdict::Fail, "{key}");
    }
}

#[test]
fn the_pull_on_a_bowed_lid_is_judged() {
    for key in ["latch_working_load_hot", "latch_working_load_cold", "latch_working_load_sun"] {
        let (low, high) = demand(&reviewed(PLATE), key);
        // By hand: 0.3 N/m on 1.4 m of seal, on four latches; squeezed or open at the sides it pushes more or less.
        assert!(low > 0.06 && high < 0.15 && low <= 0.106 && high >= 0.104, "{key}: {low} {high}");
        let at = |load: f64| {
            verdict(&changed(PLATE, "working_load = \"100 N\"", &format!("working_load = \"{load} N\"")), key)
        };
        assert_eq!(at(1.2 * high), Verdict::Pass, "{key}");
        assert_eq!(at(0.99 * low), Verdict::Fail, "{key}");
        needs(&without(PLATE, "working_load = \"100 N\"\n"), key, "latches.working_load");
    }
}

/// By hand: cold, the lid let go stands on the middles of its long sides, and the latches at its corners have to draw it by the
/// compression and by the rise of a bi-metal; stand-off, mounting and clearance come on top.
#[test]
fn a_bowed_lid_takes_more_travel() {
    let review = reviewed(PLATE);
    let rise = sagitta(bimetal(12e-6 * 20.0, (4e-3, 2e-3), 70.0 / 200.0));
    let (_, high) = demand(&review, "latch_travel_cold");
    close(high, 4e-3 + 3e-3 + rise, 0.1e-3);
    let (low, high) = demand(&review, "latch_travel_hot");
    assert!(low > 6.7e-3 && high < 7.1e-3, "{low} {high}");
    for key in ["latch_travel_hot", "latch_travel_cold", "latch_travel_sun"] {
        let (low, high) = demand(&review, key);
        let at = |travel: f64| {
            let travel = format!("travel = \"{} mm\"", travel * 1e3);
            verdict(&changed(PLATE, "travel = \"12 mm\"", &travel), key)
        };
        assert_eq!(at(1.12 * high), Verdict::Pass, "{key}");
        assert_eq!(at(0.99 * low), Verdict::Fail, "{key}");
        needs(&without(PLATE, "stand_off = \"2 mm\"\n"), key, "latches.stand_off");
    }
}

/// A pane on shoulder bushes floats, and its warmth bows nothing; in close holes it does.
#[test]
fn what_floats_does_not_drive() {
    let at = |text: &str, warm: &str| {
        let from = "layer = \"pane\", temperature = \"55 degC\"";
        demand(&changed(text, from, &format!("layer = \"pane\", temperature = \"{warm} degC\"")), "seal_hot")
    };
    assert_eq!(at(REVISED, "45"), at(REVISED, "55"));
    let close = REVISED.replace("role = \"oversize\"", "role = \"fixed\"");
    assert!(at(&close, "55").0 != at(&close, "45").0);
    needs(&without(REVISED, "role = \"oversize\"\n"), "seal_hot", "screws.pane_screws.passes.pane.role");
}

#[test]
fn what_is_missing_is_named() {
    for (kind, key) in [("hot", "seal_hot"), ("sun", "latch_travel_sun"), ("cold", "latch_working_load_cold")]
    {
        let state = |warm: &str| format!(", temperature = \"{warm} degC\" }}]");
        let lost = PLATE.replace(&state("40"), " }]").replace(&state("0"), " }]");
        needs(&reviewed(&lost), key, &format!("load_cases.{kind}.states.back.temperature"));
        let gone = PLATE.replace(&format!("kind = \"{kind}\""), "kind = \"opening\"");
        needs(&reviewed(&gone), key, &format!("load_cases (kind = \"{kind}\")"));
        needs(&without(PLATE, "assembled_at = \"20 degC\"\n"), key, "service.assembled_at");
        needs(&without(PLATE, ", film = \"10 W/(m^2 K)\""), key, "service.bay.film");
        needs(&without(PLATE, "joining = \"bonded\"\n"), key, "layers.back.joining");
    }
}
