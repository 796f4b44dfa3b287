//! Layers that grow: gradients through the thickness, moisture, bonded and screwed pairs.
use crate::common::*;
use coaming_panel::*;

/// A strip on two ends of two layers without contraction, `t1` of `e1` below `t2` of `e2`.
fn pair(length: f64, [t1, t2]: [f64; 2], [e1, e2]: [f64; 2], kind: JointKind) -> Panel {
    let layer = |lower_face: f64, thickness: f64, e: f64| Layer {
        region: None,
        lower_face,
        thickness,
        material: Material::isotropic(e, 0.0, 0.0, 1e-5),
    };
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, length, length / 25.0), layer(0.0, t1, e1));
    panel.layers.push(layer(t1, t2, e2));
    panel.joints = vec![Joint { lower: 0, upper: 1, kind }];
    panel.line_supports =
        vec![LineSupport::supported(Line::OutlineEdge(1)), LineSupport::supported(Line::OutlineEdge(3))];
    panel
}

fn grown(strain: f64) -> Load {
    Load { growths: vec![LayerGrowth::even(1, strain)], ..Load::default() }
}

/// Timoshenko, Analysis of Bi-Metal Thermostats, J. Opt. Soc. Am. 11 (1925) 233-255, eq. (4): with m = t1 / t2, n = E1 / E2 the curvature is
/// 6 e (1 + m)^2 / (h (3 (1 + m)^2 + (1 + m n) (m^2 + 1 / (m n)))), here of a damp plastic on aluminium; a strip on its ends rises by
/// curvature l^2 / 8. Heat that makes the same strain does the same.
#[test]
fn bonded_pair_bows() {
    let (length, strain) = (0.2_f64, 8e-4);
    for (t, e) in [([0.001, 0.004], [70e9, 2.4e9]), ([0.002, 0.001], [70e9, 110e9])] {
        let panel = pair(length, t, e, JointKind::Bonded);
        let answer = solve(&panel, &grown(strain));
        let (m, n, h) = (t[0] / t[1], e[0] / e[1], t[0] + t[1]);
        let one = (1.0 + m) * (1.0 + m);
        let curvature = 6.0 * strain * one / (h * (3.0 * one + (1.0 + m * n) * (m * m + 1.0 / (m * n))));
        // The upper layer grows: the middle rises.
        let middle = answer.field.at(p(0.5 * length, length / 50.0)).map_or(0.0, |a| a.deflection);
        close("bonded", middle, curvature * length * length / 8.0, 0.002);
        let warm = LayerTemperature { layer: 1, rise: strain / 1e-5, difference: 0.0 };
        let heated = solve(&panel, &Load { temperatures: vec![warm], ..Load::default() });
        close("heated", heated.largest_deflection.value, answer.largest_deflection.value, 1e-9);
    }
}

/// The same pair joined by screws of shear stiffness k per area. By hand: the force N between the layers obeys N'' = k (C N - e),
/// C = 1 / EA1 + 1 / EA2 + d^2 / (EI1 + EI2), N = 0 at the ends; the curvature is N d / (EI1 + EI2), so with q = sqrt(k C) the middle of a
/// strip of length 2 a rises by e d / (C EI) (a^2 / 2 - (1 - 1 / cosh(q a)) / q^2). Stiff joints bow as bonded ones, loose ones not at all.
#[test]
fn screwed_pair_bows_less() {
    let (length, strain, t, e) = (0.2_f64, 8e-4, [0.001, 0.004], [70e9, 2.4e9]);
    let a = 0.5 * length;
    let (own, arm) = ((0..2).map(|i| e[i] * t[i] * t[i] * t[i] / 12.0).sum::<f64>(), 0.5 * (t[0] + t[1]));
    let c = 1.0 / (e[0] * t[0]) + 1.0 / (e[1] * t[1]) + arm * arm / own;
    for k in [1e7, 1e9, 1e10, 1e12] {
        let answer = solve(&pair(length, t, e, JointKind::Slipping { shear_stiffness: k }), &grown(strain));
        let q = (k * c).sqrt();
        let exact = strain * arm / (c * own) * (0.5 * a * a - (1.0 - 1.0 / (q * a).cosh()) / (q * q));
        let middle = answer.field.at(p(a, length / 50.0)).map_or(0.0, |m| m.deflection);
        close(&format!("joint {k:e}"), middle, exact, 0.005);
    }
    let loose =
        solver(&pair(length, t, e, JointKind::Slipping { shear_stiffness: 0.0 })).solve(&grown(strain));
    let loose = loose.unwrap_or_else(|e| panic!("{e}")).largest_deflection.value;
    assert!(loose.abs() < 1e-12, "{loose}");
}

/// A gradient alone bends a free plate to a sphere of curvature e / t, e the strain of the upper face over the lower (Timoshenko and
/// Woinowsky-Krieger, art. 14): on its four corners the middle rises by (a^2 + b^2) e / (8 t), without stress. Exactly, on any mesh.
#[test]
fn gradient_bows_to_a_sphere() {
    let (a, b, strain) = (0.5_f64, 0.3_f64, 4e-4);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, a, b), sheet(0.3));
    panel.point_supports = [p(0.0, 0.0), p(a, 0.0), p(a, b), p(0.0, b)].map(PointSupport::held).to_vec();
    panel.marks = vec![p(a / 2.0, b / 2.0)];
    let damp = LayerGrowth { difference_1: strain, difference_2: strain, ..LayerGrowth::even(0, 1e-3) };
    let warm = LayerTemperature { layer: 0, rise: 5.0, difference: strain / 23e-6 };
    for load in [
        Load { growths: vec![damp], ..Load::default() },
        Load { temperatures: vec![warm], ..Load::default() },
    ] {
        let answer = solver(&panel).solve(&load).unwrap_or_else(|e| panic!("{e}"));
        let middle = answer.field.at(p(a / 2.0, b / 2.0)).unwrap_or_else(|| panic!("no field"));
        close("middle", middle.deflection, (a * a + b * b) * strain / (8.0 * T), 1e-8);
        assert!(middle.layers[0].upper.stress.iter().all(|s| s.abs() < 1e-6 * E * strain), "{middle:?}");
    }
}

/// A panel that is held in its plane and grows by moisture buckles as a heated one: the strain of the critical rise,
/// pi^2 t^2 (1 / a^2 + 1 / b^2) / (12 (1 + nu)), and bows past it as far (w / t = 1.2058 at three times that, the square of panel_large.py).
#[test]
fn damp_panel_buckles() {
    let pi2 = std::f64::consts::PI * std::f64::consts::PI;
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 1.0, 1.0), sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline).held_in_plane()];
    let critical = pi2 * T * T * 2.0 / (12.0 * 1.3);
    let load = Load { growths: vec![LayerGrowth::even(0, critical)], ..Load::default() };
    let found = solver(&panel).buckling(&load, 1).unwrap_or_else(|e| panic!("{e}"));
    close("factor", found.modes[0].factor, 1.0, 0.005);
    let load = Load { growths: vec![LayerGrowth::even(0, 3.0 * critical)], ..Load::default() };
    let answer = solver(&panel).solve_large(&load).unwrap_or_else(|e| panic!("{e}"));
    close("bow", answer.largest_deflection.value / T, 1.205_8, 0.005);
}

/// Growth beyond a fifth, of no number or of a layer that is not there.
#[test]
fn impossible_growth() {
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 1.0, 1.0), sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    for (growth, missing) in [
        (LayerGrowth::even(0, 0.3), false),
        (LayerGrowth { difference_2: f64::NAN, ..LayerGrowth::default() }, false),
        (LayerGrowth::even(4, 0.01), true),
    ] {
        let load = Load { growths: vec![growth], ..Load::default() };
        match solver(&panel).solve(&load) {
            Err(PanelError::Impossible { .. }) => assert!(!missing),
            Err(PanelError::Missing { .. }) => assert!(missing),
            other => panic!("{other:?}"),
        }
    }
}
