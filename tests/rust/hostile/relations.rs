//! Faults between fields, and a difference that is none.

use crate::{SOUND, refused, written};

/// Faults between fields have a path instead of a line.
#[test]
fn faults_between_fields_are_named_with_their_path() {
    let bow_tie = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"9 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"0 mm\", y = \"9 mm\" }] } }";
    let spike = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"5 mm\", y = \"0 mm\" }, { x = \"5 mm\", y = \"9 mm\" }] } }";
    let two = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"9 mm\" }] } }";
    let repeated = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"9 mm\" }] } }";
    let lid = "outline = { rectangle = { width = \"580 mm\", height = \"440 mm\" } }";
    let cases: &[(&str, &str, &[&str])] = &[
        (
            "aluminium_5052_h32",
            "aluminium_5052_h23",
            &["layers.lid.material: unknown material `aluminium_5052_h23`", "aluminium_5052_h32"],
        ),
        (
            "epdm_sponge_2a1",
            "epdm_sponge_2a9",
            &["seal.material: unknown material `epdm_sponge_2a9`", "epdm_sponge_2a1"],
        ),
        (
            lid,
            bow_tie,
            &[
                "layers.lid.outline.polygon, point 0 (0 mm, 0 mm)",
                "crosses the side from point 2 (9 mm, 0 mm)",
            ],
        ),
        (lid, spike, &["layers.lid.outline.polygon, point 1 (9 mm, 0 mm)", "runs back here"]),
        (lid, two, &["layers.lid.outline.polygon, 2 points", "at least three"]),
        (lid, repeated, &["layers.lid.outline.polygon, point 1 (9 mm, 0 mm)", "stands twice"]),
        (
            "layer = \"pane\"\nhole",
            "layer = \"pain\"\nhole",
            &["screws.pane_screws.passes[1].layer: `pain`", "did you mean `pane`?"],
        ),
        ("name = \"strip\"", "name = \"lid\"", &["layers[3].name", "borne twice"]),
        (
            "layers = [\"lid\", \"strip\"]",
            "layers = [\"lid\"]",
            &["bonds.strip_bond.layers", "joins two layers"],
        ),
        ("width = \"244 mm\"", "width = \"644 mm\"", &["layers.lid.cut_outs[0]", "reaches the edge"]),
        (
            "corner_radius = \"40 mm\"",
            "corner_radius = \"400 mm\"",
            &["seal.path.rectangle.corner_radius", "more than half the shorter side"],
        ),
        (
            "[hazard]",
            "[[waivers]]\ncheck = \"latch_hand_farce\"\naccepted_by = \"shop\"\nreason = \"a test\"\n[hazard]",
            &["waivers[0].check `latch_hand_farce`", "did you mean `latch_hand_force`?"],
        ),
    ];
    for (nth, (from, to, says)) in cases.iter().enumerate() {
        assert!(SOUND.contains(from), "`{from}` stands nowhere");
        let message = refused(&written(&format!("relation-{nth}.toml"), SOUND.replacen(from, to, 1)));
        for words in *says {
            assert!(message.contains(words), "`{to}`: `{words}` is due: {message}");
        }
    }
}

/// The documents have no field for a temperature difference: it is asked of a calculation.
#[test]
fn a_temperature_is_no_difference() {
    let entry = coaming::entry("plate_temperature_gradient").unwrap();
    let input = |rise: &str| {
        format!(
            r#"{{ "length": "500 mm", "width": "300 mm", "thickness": "2 mm", "youngs_modulus": "70 GPa",
  "poissons_ratio": 0.33, "expansion": "23.6e-6 1/K",
  "gradient": "{rise}" }}"#
        )
    };
    for rise in ["20 °C", "20 degC", "68 degF", "20", "20 mm"] {
        let error = (entry.calculate_json)(&input(rise)).unwrap_err();
        assert_eq!((error.name(), error.field()), ("not_a_quantity", "gradient"), "{rise}: {error}");
        assert_eq!(error.position().map(|place| place.0), Some(3), "{rise}: {error}");
    }
    let message = (entry.calculate_json)(&input("20 °C")).unwrap_err().to_string();
    assert!(message.contains("write K, delta_degC or delta_degF"), "{message}");
    for rise in ["20 K", "20 delta_degC", "36 delta_degF"] {
        let answer = (entry.calculate_json)(&input(rise));
        assert!(answer.is_ok(), "{rise}: {answer:?}");
    }
}
