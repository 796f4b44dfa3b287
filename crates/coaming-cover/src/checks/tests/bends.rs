//! Bent sheet: holes beside bends, flanges on the brake, inside radii.

use super::*;

#[test]
fn a_hole_beside_a_bend_of_another_angle_needs_another_distance() {
    let right = reviewed(REVISED);
    // By hand: 2.5 x 2.5 + 3.2 = 9.45 mm at 90 deg, 2.5 x 2.5 + 3.2 tan 30 deg = 8.0975 mm at 60 deg.
    close(limit(&right, "hole_to_bend(lid, left)"), 9.45e-3, 1e-9);
    let flat = changed(REVISED, "bend_angle = \"90 deg\"", "bend_angle = \"60 deg\"");
    close(limit(&flat, "hole_to_bend(lid, left)"), 8.097_521e-3, 1e-8);
    needs(&without(REVISED, "nearest_hole = \"12.75 mm\"\n"), "hole_to_bend(lid, left)", "nearest_hole");
}

#[test]
fn a_flange_must_bridge_its_die() {
    let review = reviewed(REVISED);
    assert_eq!(verdict(&review, "smallest_flange(lid, left)"), Verdict::Pass);
    // By hand: 0.70 x 16 mm; at 60 deg times cos 45 deg over cos 30 deg.
    close(limit(&review, "smallest_flange(lid, left)"), 11.2e-3, 1e-9);
    let flat = changed(REVISED, "bend_angle = \"90 deg\"", "bend_angle = \"60 deg\"");
    close(limit(&flat, "smallest_flange(lid, left)"), 9.144_762e-3, 1e-8);
    let die = changed(REVISED, "die_opening = \"16 mm\"", "die_opening = \"36 mm\"");
    assert_eq!(verdict(&die, "smallest_flange(lid, left)"), Verdict::Fail);
    needs(
        &without(REVISED, "die_opening = \"16 mm\" # chosen here\n"),
        "smallest_flange(lid, top)",
        "die_opening",
    );
}

#[test]
fn an_inside_radius_is_held_against_the_guide_of_its_temper() {
    let radius = |to: &str| changed(REVISED, "inside_radius = \"3.2 mm\"", to);
    // By hand: between 1.0 t at 1/16 in and 1.5 t at 1/8 in, 2.5 mm takes 1.28740 t.
    let key = "inside_radius(lid, left)";
    close(limit(&radius("inside_radius = \"4 mm\""), key), 3.218_504e-3, 1e-8);
    for (to, expected) in [
        ("inside_radius = \"4 mm\"", Verdict::Pass),
        ("inside_radius = \"3.3 mm\"", Verdict::Marginal),
        ("inside_radius = \"3.2 mm\"", Verdict::NeedsTest),
        ("inside_radius = \"2.6 mm\"", Verdict::NeedsTest),
        ("inside_radius = \"2.5 mm\"", Verdict::Fail),
    ] {
        assert_eq!(verdict(&radius(to), key), expected, "{to}");
    }
    needs(&without(REVISED, "inside_radius = \"3.2 mm\"\n"), key, "inside_radius");
    for (from, to) in [
        ("aluminium_5052_h32", "aluminium_5754_h22"),
        ("bend_angle = \"90 deg\"", "bend_angle = \"120 deg\""),
    ] {
        not_calculated(&changed(REVISED, from, to), key);
    }
}
