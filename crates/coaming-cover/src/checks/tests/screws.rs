//! Strength of the screws, and what they carry in service.

use super::*;
use crate::document::{AtPoints, OnRectangle, Point, Positions};
use coaming::prelude::*;

const PATTERN: &str = "pane_screws";

fn key(check: &str) -> String {
    format!("{check}({PATTERN})")
}

#[test]
fn screws_stand_at_the_corners_and_evenly_between_them() {
    let on = Positions::Rectangle(OnRectangle { width: mm(276.0), height: mm(196.0) });
    let points = on.points(10).unwrap();
    assert_eq!(points.len(), 10);
    // By hand: two between the corners of each long side, 92 mm apart, one on each short side, 98 mm.
    close(on.longest_pitch(10).unwrap(), 98e-3, 1e-12);
    assert!(points.iter().any(|point| (point.0 - 46e-3).abs() < 1e-12 && (point.1 - 98e-3).abs() < 1e-12));
    assert!(points.iter().any(|point| (point.0 + 138e-3).abs() < 1e-12 && point.1.abs() < 1e-12));
    assert_eq!(
        (on.points(3), on.points(7), on.points(u32::MAX), on.points(u32::MAX - 1)),
        (None, None, None, None)
    );
}

#[test]
fn a_pitch_is_the_longest_step_and_not_the_nearest_neighbour() {
    let at = |places: &[(f64, f64)]| {
        let points = places.iter().map(|(x, y)| Point { x: mm(*x), y: mm(*y) }).collect();
        Positions::Points(AtPoints { points })
    };
    let pitches = |positions: &Positions, longest: f64, shortest: f64| {
        close(positions.longest_pitch(1).unwrap(), longest * 1e-3, 1e-9);
        close(positions.shortest_pitch(1).unwrap(), shortest * 1e-3, 1e-9);
    };
    // Pairs 10 mm apart stand 190 mm from pair to pair; a row is no ring; a square lacks one of its sides' middles.
    let pairs = [(-105.0, 50.0), (-95.0, 50.0), (95.0, 50.0), (105.0, 50.0)];
    pitches(&at(&pairs), 190.0, 10.0);
    pitches(
        &at(&[(0.0, 0.0), (90.0, 30.0), (30.0, 10.0)]),
        60.0 * (10.0_f64 / 9.0).sqrt(),
        30.0 * (10.0_f64 / 9.0).sqrt(),
    );
    let square =
        [(-50.0, -50.0), (50.0, -50.0), (50.0, 50.0), (-50.0, 50.0), (0.0, 50.0), (50.0, 0.0), (-50.0, 0.0)];
    pitches(&at(&square), 100.0, 50.0);
    assert_eq!((at(&[(1.0, 1.0)]).longest_pitch(1), at(&[(1.0, 1.0)]).shortest_pitch(1)), (None, None));
    let on = Positions::Rectangle(OnRectangle { width: mm(276.0), height: mm(196.0) });
    close(on.shortest_pitch(10).unwrap(), 92e-3, 1e-12);
}

#[test]
fn tightening_uses_its_share_of_the_yield_strength() {
    let review = reviewed(REVISED);
    let key = key("screw_tightening");
    assert_eq!(verdict(&review, &key), Verdict::Pass);
    // By hand: M3 with 1.25 x 0.45/(0.2 x 3 mm) = 937.5 N on 5.031 mm2: 186.35 MPa; in the thread F d2/2 (tan phi + tan rho)/
    // (1 - tan phi tan rho) = 0.2948 N m with d2 = 2.675 mm, tan phi = 0.05950, tan rho = 0.15/cos 30 deg; on the fully
    // plastic section pi ds3/12 (VDI 2230-1) of ds = 2.531 mm 69.45 MPa; sqrt(186.35^2 + 3 x 69.45^2) = 221.8 MPa.
    close(demand(&review, &key).0, 221.8e6, 0.1e6);
    close(limit(&review, &key), 405e6, 1.0);
    let tight = changed(REVISED, "torque = \"0.45 N·m\"", "torque = \"0.85 N·m\"");
    assert_eq!(verdict(&tight, &key), Verdict::Fail);
    for (piece, path) in [
        ("strength_class = \"A2-70\" # chosen here\n", "strength_class"),
        ("tightening = \"torque_wrench\" # chosen here\n", "screws.pane_screws.tightening"),
        ("thread_friction = 0.15 # chosen here\n", "thread_friction"),
    ] {
        needs(&without(REVISED, piece), &key, path);
    }
}

#[test]
fn a_hand_in_a_corner_pulls_at_the_nearest_screw() {
    let review = reviewed(REVISED);
    let key = key("screw_pull_lean");
    assert_eq!(verdict(&review, &key), Verdict::Pass);
    // By hand: 400 N at (80, 40) mm on ten screws with sum x2 = 6 x 138^2 + 4 x 46^2 = 122 728 mm2 and
    // sum y2 = 8 x 98^2 = 76 832 mm2: 40 + 400 (80 x 138/122 728 + 40 x 98/76 832) = 96.39 N at the corner.
    close(demand(&review, &key).0, 937.5 + 96.39, 0.05);
    // 0.2 % stress of A2-70 on the stress area of M3: 450 MPa x 5.031 mm2.
    close(limit(&review, &key), 2264.0, 1.0);
    let heavy = changed(REVISED, "force = \"400 N\"", "force = \"7 kN\"");
    assert_eq!(verdict(&heavy, &key), Verdict::Fail);
    needs(&changed(REVISED, "force = \"400 N\"", "# "), &key, "load_cases.lean.force");
    let odd = changed(REVISED, "count = 10", "count = 9");
    not_calculated(&odd, &key);
}

#[test]
fn wind_and_road_are_shared_alike() {
    let review = reviewed(REVISED);
    let wind = key("screw_pull_wind");
    // By hand: 1 kPa on 260 x 180 mm is 46.8 N on ten screws.
    close(demand(&review, &wind).0, 937.5 + 4.68, 0.01);
    assert_eq!(verdict(&review, &wind), Verdict::Pass);
    assert_eq!(
        verdict(&changed(REVISED, "pressure = \"1.0 kPa\"", "pressure = \"300 kPa\""), &wind),
        Verdict::Fail
    );
    needs(&without(REVISED, "pressure = \"1.0 kPa\"\n"), &wind, "load_cases.wind_in.pressure");
    needs(
        &changed(REVISED, "role = \"pane\"\nface = \"inner\"\n", "role = \"pane\"\n"),
        &wind,
        "layers.pane.face",
    );
    let road = key("screw_shake");
    assert_eq!(verdict(&review, &road), Verdict::Pass);
    // By hand: pane 300 x 220 x 5 mm of 1200 kg/m3 less its corners, 0.3955 kg, frame 30 000 mm2 x 12 mm of 930, 0.3348 kg:
    // 21.5 N at 3 g, 2.15 N a screw; (939.65/2264)^2 = 0.1723, the cube of the shear's 0.0016 is nothing.
    close(demand(&review, &road).0, 0.1723, 0.0005);
    // By hand: the pane 50 mm to the right puts the mass's centre 0.3955 x 50/0.7303 = 27.08 mm out. The pull of the
    // corner screw is 2.15 + 21.49 x 27.08 x 138/122 728 = 2.80 N; in the plane 21.49 N along y turns on sum r2 =
    // 199 560 mm2: hypot(582 x 98/199 560, 2.15 + 582 x 138/199 560) = 2.57 N.
    let aside =
        changed(REVISED, "name = \"pane\"\n", "name = \"pane\"\nat = { x = \"50 mm\", y = \"0 mm\" }\n");
    close(input(&aside, &road, "pull on the most loaded screw, shaken"), 2.803, 0.002);
    close(input(&aside, &road, "shear on the most loaded screw, shaken"), 2.567, 0.002);
    let rough = changed(REVISED, "acceleration = \"3 gn\"", "acceleration = \"1500 gn\"");
    assert_eq!(verdict(&rough, &road), Verdict::Fail);
    needs(&without(REVISED, "acceleration = \"3 gn\"\n"), &road, "load_cases.acceleration_z.acceleration");
}

#[test]
fn a_thread_strips_the_weaker_part() {
    let key = key("screw_stripping");
    needs(
        &changed(REVISED, "material = \"brass_insert\"\n", "\n"),
        &key,
        "screws.pane_screws.insert.material",
    );
    let with = |shear: &str| {
        let insert = format!(
            "[[materials]]\nname = \"insert\"\nlike = \"brass_insert\"\nbasis = \"measured\"\nshear_strength = \"{shear}\"\n"
        );
        let text = REVISED.replace("material = \"brass_insert\"", "material = \"insert\"");
        reviewed(&format!("{text}\n{insert}"))
    };
    assert_eq!(verdict(&with("200 MPa"), &key), Verdict::Pass);
    assert_eq!(verdict(&with("20 MPa"), &key), Verdict::Fail);
}

#[test]
fn a_head_presses_on_what_lies_beneath() {
    let key = "head_bearing(pane_screws, lid)";
    let flat = |class: &str| {
        let text = REVISED.replace("countersunk_head = \"iso_7046_1\"", "flat_head = \"iso_7045\"");
        changed(&text, "torque = \"0.45 N·m\"", class)
    };
    let review = flat("torque = \"0.45 N·m\"");
    // By hand: 937.5 + 96.4 N on pi/4 (5.3^2 - 3.4^2) = 12.98 mm2. The head's diameter is not confirmed: no pass.
    close(demand(&review, key).0, 79.6e6, 0.2e6);
    assert_eq!(verdict(&review, key), Verdict::NeedsTest);
    assert_eq!(verdict(&flat("torque = \"1.5 N·m\""), key), Verdict::Fail);
    needs(&flat("# "), key, "screws.pane_screws.torque");
}

#[test]
fn a_thin_sheet_waves_between_distant_screws() {
    let key = "screw_pitch(pane_screws, lid)";
    // By hand: 98 mm over 2.5 and 1.6 mm.
    close(demand(&reviewed(REVISED), key).0, 39.2, 1e-9);
    assert_eq!(verdict(&reviewed(REVISED), key), Verdict::Marginal);
    close(demand(&reviewed(FIRST_GUESS), key).0, 61.25, 1e-9);
    assert_eq!(verdict(&reviewed(FIRST_GUESS), key), Verdict::Fail);
    assert_eq!(verdict(&changed(REVISED, "count = 10", "count = 16"), key), Verdict::Pass);
    needs(&without(REVISED, "count = 10\n"), key, "screws.pane_screws.count");
}

/// By hand: one diameter of M3 is due; a thread of 1 mm limits whatever the screw, and a screw of 10 mm limits in a thread of
/// 5.7 mm.
#[test]
fn the_cure_names_what_limits_the_engagement() {
    let lever = |from: &str, to: &str| {
        let row = changed(REVISED, from, to).row("screw_engagement(pane_screws)").unwrap();
        assert_eq!(row.verdict, Verdict::Fail, "{to}");
        row.outcome.unwrap().cure.unwrap().lever
    };
    let insert = lever("thread_length = \"5.7 mm\"", "thread_length = \"1 mm\"");
    assert_eq!(insert, "screws.pane_screws.insert.thread_length");
    assert_eq!(lever("length = \"16 mm\"", "length = \"10 mm\""), "screws.pane_screws.length");
}
