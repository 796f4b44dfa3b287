//! Layers bonded, slipping and with a soft core; beams and the width of sheet that works with them; temperature.
use crate::common::*;
use coaming_panel::*;

/// A layer of a strip.
fn layer(e: f64, nu: f64, lower_face: f64, thickness: f64, alpha: f64) -> Layer {
    Layer { region: None, lower_face, thickness, material: Material::isotropic(e, nu, 1000.0, alpha) }
}

/// A narrow strip on two end supports.
fn strip(length: f64, width: f64, layers: Vec<Layer>, joints: Vec<Joint>) -> Panel {
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, length, width), layers[0].clone());
    panel.layers = layers;
    panel.joints = joints;
    panel.line_supports =
        vec![LineSupport::supported(Line::OutlineEdge(1)), LineSupport::supported(Line::OutlineEdge(3))];
    panel
}

fn bonded(lower: usize, upper: usize) -> Joint {
    Joint { lower, upper, kind: JointKind::Bonded }
}

fn slipping(lower: usize, upper: usize, shear_stiffness: f64) -> Joint {
    Joint { lower, upper, kind: JointKind::Slipping { shear_stiffness } }
}

/// Bonded steel on plastic, no contraction: the panel, its neutral axis over the lower face, and E I per metre of width by the transformed
/// section of elementary beam theory.
pub(crate) fn bonded_strip() -> (Panel, f64, f64) {
    let panel = strip(
        1.0,
        0.05,
        vec![layer(200e9, 0.0, 0.0, 0.001, 0.0), layer(3e9, 0.0, 0.001, 0.006, 0.0)],
        vec![bonded(0, 1)],
    );
    let (ea1, ea2) = (200e9 * 0.001, 3e9 * 0.006);
    let (z1, z2) = (0.0005, 0.004);
    let z = (ea1 * z1 + ea2 * z2) / (ea1 + ea2);
    let own = |e: f64, t: f64| e * t * t * t / 12.0;
    let ei = own(200e9, 0.001) + own(3e9, 0.006) + ea1 * (z1 - z) * (z1 - z) + ea2 * (z2 - z) * (z2 - z);
    (panel, z, ei)
}

/// 5 q l^4 / (384 E I).
#[test]
fn bonded_unsymmetric_strip() {
    let (q, length) = (50.0, 1.0);
    let (panel, z, ei) = bonded_strip();
    let answer = solve(&panel, &Load::uniform_pressure(q));
    close("bonded strip", answer.largest_deflection.value, 5.0 * q / (384.0 * ei), 0.005);
    // The load acts outward, so the middle rises and the lower face is in compression: -E z0 M / EI.
    let middle = answer.field.at(p(0.5, 0.025)).unwrap_or_else(|| panic!("no field"));
    let moment = q * length * length / 8.0;
    close("lower face", middle.layers[0].lower.stress[0], -200e9 * z * moment / ei, 0.02);
    close("moment", middle.moment[0].abs(), moment, 0.02);
}

/// The same with the neutral axis of the group far from where it bends: two layers of different contraction, so that the coupling B is
/// a true matrix, in a strip so wide that it bends to a cylinder: D - B^2 / A of plane strain.
#[test]
fn cylinder_bending_with_coupling() {
    let (q, nu1, nu2) = (50.0, 0.3, 0.45);
    let mut panel = strip(
        1.0,
        0.4,
        vec![layer(70e9, nu1, 0.0, 0.001, 0.0), layer(2.4e9, nu2, 0.001, 0.006, 0.0)],
        vec![bonded(0, 1)],
    );
    // Guided and held across along the long edges: no strain and no curvature across.
    for edge in [0, 2] {
        let mut guided = LineSupport::guided(Line::OutlineEdge(edge));
        guided.in_plane_across = true;
        panel.line_supports.push(guided);
    }
    let answer = solve(&panel, &Load::uniform_pressure(q));
    let (mut a, mut b, mut dd) = (0.0, 0.0, 0.0);
    for (e, nu, low, t) in [(70e9, nu1, 0.0, 0.001), (2.4e9, nu2, 0.001, 0.006)] {
        let (stiff, z): (f64, f64) = (e / (1.0 - nu * nu), low + t / 2.0);
        a += stiff * t;
        b += stiff * t * z;
        dd += stiff * (t * z * z + t * t * t / 12.0);
    }
    close("cylinder", answer.largest_deflection.value, 5.0 * q / (384.0 * (dd - b * b / a)), 0.005);
}

/// Newmark, Siess and Viest (1951): two layers with an elastic shear joint under a sine load. For a simply supported beam of span l under
/// q sin(pi x / l), EI_eff = EI_0 + r^2 EA* / (1 + pi^2 EA* / (k l^2)), EA* = EA1 EA2 / (EA1 + EA2): derived here by hand.
/// The same as the gamma method of EN 1995-1-1, annex B.
#[test]
fn partly_composite_strip() {
    let (length, q, e, t) = (1.0_f64, 40.0, 10e9, 0.004);
    let pi = std::f64::consts::PI;
    for k in [0.0, 1e7, 1e9, 1e11, 1e13] {
        let mut panel = strip(
            length,
            0.04,
            vec![layer(e, 0.0, 0.0, t, 0.0), layer(2.0 * e, 0.0, t, t, 0.0)],
            vec![slipping(0, 1, k)],
        );
        panel.marks = vec![p(0.5, 0.02)];
        // A sine load from twenty steps: each a region whose pressure is the mean of the sine over it.
        let n = 40;
        let pressures = (0..n)
            .map(|i| {
                let (from, to) = (i as f64 / n as f64, (i + 1) as f64 / n as f64);
                let mean = q * ((pi * from).cos() - (pi * to).cos()) / (pi * (to - from));
                Pressure {
                    region: Some(Outline::rectangle(from, 0.0, to - from, 0.04)),
                    ..Pressure::uniform(mean)
                }
            })
            .collect();
        let answer = solve(&panel, &Load { pressures, ..Load::default() });
        let (ea1, ea2) = (e * t, 2.0 * e * t);
        let star = ea1 * ea2 / (ea1 + ea2);
        let own = 3.0 * e * t * t * t / 12.0;
        let joined =
            if k == 0.0 { 0.0 } else { t * t * star / (1.0 + pi * pi * star / (k * length * length)) };
        let exact = q / (pi * pi * pi * pi * (own + joined));
        close(&format!("joint {k:e}"), answer.largest_deflection.value, exact, 0.005);
    }
}

/// Sandwich plate with thin faces and a soft core, all edges supported, sine-free check by the Navier series of sandwich theory:
/// w = sum q_mn / (D k^4) (1 + k^2 D0 / S) with thin faces' own stiffness; S = G d^2 / t_core
/// (Allen, Analysis and Design of Structural Sandwich Panels, 1969; Plantema 1966).
pub(crate) fn sandwich(q: f64) -> (Panel, f64) {
    let (a, b, e, nu, t, core, shear) = (0.8_f64, 0.6_f64, 70e9, 0.3, 0.0008, 0.02, 8e6);
    let d0 = t + core;
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, a, b), layer(e, nu, 0.0, t, 0.0));
    panel.layers.push(layer(e, nu, t + core, t, 0.0));
    panel.joints = vec![slipping(0, 1, shear / core)];
    let mut held = LineSupport::supported(Line::Outline);
    // The hard support: faces are held along the edge, free across it.
    held.in_plane_along = true;
    panel.line_supports = vec![held];
    let pi = std::f64::consts::PI;
    let stretch = e * t / (1.0 - nu * nu);
    let (own, joint, s) =
        (2.0 * e * t * t * t / 12.0 / (1.0 - nu * nu), 0.5 * stretch * d0 * d0, shear * d0 * d0 / core);
    let mut exact = 0.0;
    for m in (1..60).step_by(2) {
        for n in (1..60).step_by(2) {
            let (km, kn) = (m as f64 * pi / a, n as f64 * pi / b);
            let k2 = km * km + kn * kn;
            let q_mn = 16.0 * q / (pi * pi * m as f64 * n as f64);
            // Bending of the faces themselves, beside the couple of face forces that the core's shear limits.
            let stiff = own * k2 * k2 + joint * k2 * k2 / (1.0 + k2 * joint / s);
            exact += q_mn / stiff * (m as f64 * pi / 2.0).sin() * (n as f64 * pi / 2.0).sin();
        }
    }
    (panel, exact)
}

#[test]
fn soft_core_sandwich() {
    let (panel, exact) = sandwich(300.0);
    let answer = solve(&panel, &Load::uniform_pressure(300.0));
    close("sandwich", answer.largest_deflection.value, exact, 0.005);
}

/// Timoshenko, Analysis of Bi-Metal Thermostats (1925): two equal layers, curvature 24 (a2 - a1) dT / (h (14 + n + 1/n)); a free cantilever
/// strip without contraction across bows L^2 / (2 rho).
#[test]
fn bimetal_strip() {
    let (length, h, n, rise) = (0.1_f64, 0.002_f64, 200.0 / 70.0, 40.0);
    let mut panel = Panel::new(
        Outline::rectangle(0.0, 0.0, length, 0.004),
        Layer {
            region: None,
            lower_face: 0.0,
            thickness: h / 2.0,
            material: Material::isotropic(200e9, 0.0, 0.0, 12e-6),
        },
    );
    panel.layers.push(layer(70e9, 0.0, h / 2.0, h / 2.0, 23e-6));
    panel.joints = vec![bonded(0, 1)];
    panel.line_supports = vec![LineSupport::clamped(Line::OutlineEdge(3))];
    let temperatures = (0..2).map(|layer| LayerTemperature { layer, rise, difference: 0.0 }).collect();
    let answer = solve(&panel, &Load { temperatures, ..Load::default() });
    let curvature = 24.0 * 11e-6 * rise / (h * (14.0 + n + 1.0 / n));
    // The warmer-growing layer is the upper one: the strip bows down at its free end. Biaxial growth with nu = 0 stays a strip but for the
    // clamped end's hold across: 0.5 % is enough for a strip 25 times as long as wide.
    close("tip", answer.largest_deflection.value.abs(), 0.5 * curvature * length * length, 0.005);
    assert!(answer.largest_deflection.value < 0.0);
}

/// Clamped plate with a gradient: no deflection, stress E alpha dT / (2 (1 - nu)) (Timoshenko and Woinowsky-Krieger, art. 14): 12.33 MPa.
#[test]
fn clamped_plate_with_a_gradient() {
    let mut panel =
        Panel::new(Outline::rectangle(0.0, 0.0, 0.5, 0.4), layer(70e9, 0.33, 0.0, 0.003, 23.6e-6));
    panel.line_supports = vec![LineSupport::clamped(Line::Outline)];
    let load = Load {
        temperatures: vec![LayerTemperature { layer: 0, rise: 0.0, difference: 10.0 }],
        ..Load::default()
    };
    let answer = solver(&panel).solve(&load).unwrap_or_else(|e| panic!("{e}"));
    let middle = answer.field.at(p(0.2, 0.2)).unwrap_or_else(|| panic!("no field"));
    close("stress", middle.layers[0].upper.stress[0], -12.33e6, 1e-3);
}

/// A beam alone, on a sheet so thin that it carries nothing: 5 q l^4 / (384 E I) and, with its offset, the same (a free sheet lets the
/// beam's centroid stay unstrained).
#[test]
fn beam_with_a_feeble_sheet() {
    let (length, width, force) = (1.0_f64, 0.05, 20.0);
    for centroid_height in [0.00005, 0.0125] {
        let mut panel = strip(length, width, vec![layer(70e9, 0.0, 0.0, 0.0001, 0.0)], Vec::new());
        panel.beams = vec![Beam {
            line: Line::Path(Path::polyline(&[p(0.0, width / 2.0), p(length, width / 2.0)])),
            layer: 0,
            youngs_modulus: 70e9,
            shear_modulus: 26e9,
            area: 4e-5,
            second_moment_of_area: 2e-9,
            torsion_constant: 1e-11,
            centroid_height,
            density: 0.0,
        }];
        let load = Load {
            line_forces: vec![LineForce {
                line: Line::Path(Path::polyline(&[p(0.0, width / 2.0), p(length, width / 2.0)])),
                force,
            }],
            ..Load::default()
        };
        let answer = solve(&panel, &load);
        let own = 70e9 * width * 1e-12 / 12.0;
        let sheet_area = 70e9 * width * 0.0001;
        let arm = centroid_height - 0.00005;
        // Exact limits of the width that works with the beam: none of the sheet, and all of it.
        let least = 70e9 * 2e-9 + own;
        let most = least + arm * arm / (1.0 / (70e9 * 4e-5) + 1.0 / sheet_area);
        let found = 5.0 * force / (384.0 * answer.largest_deflection.value);
        println!("stiffness {found:.6e} between {least:.6e} and {most:.6e}");
        assert!(found > least * 0.995 && found < most * 1.005);
        if arm == 0.0 {
            close("concentric", found, least, 0.005);
        } else {
            // A narrow sheet 20 times as long as wide works with its whole width (shear lag under 1 %).
            close("eccentric", found, most, 0.01);
        }
    }
}

/// The width of a wide sheet that works with a rib under a sine moment: 4 l / (pi (3 + 2 nu - nu^2)) in all (von Kármán; Timoshenko and
/// Goodier, Theory of Elasticity, art. 49). Derived again by hand from the stress function (A + B a y) exp(-a y) cos(a x), a = pi / l,
/// with no displacement across the rib's line.
#[test]
fn effective_width_of_a_wide_flange() {
    let (l, nu, e) = (1.0_f64, 0.3, 70e9);
    let pi = std::f64::consts::PI;
    let (wide, thickness) = (4.0, 0.0005);
    let (area, own, height) = (3e-4, 1e-8, 0.02);
    let mut panel = Panel::new(
        Outline::rectangle(0.0, -wide / 2.0, l, wide),
        layer(e, nu, -thickness / 2.0, thickness, 0.0),
    );
    let mut ends = [1, 3].map(|edge| LineSupport::supported(Line::OutlineEdge(edge)));
    for end in &mut ends {
        // The sine solution has no displacement along the ends.
        end.in_plane_along = true;
    }
    panel.line_supports = ends.to_vec();
    let rib = Line::Path(Path::polyline(&[p(0.0, 0.0), p(l, 0.0)]));
    panel.beams = vec![Beam {
        line: rib.clone(),
        layer: 0,
        youngs_modulus: e,
        shear_modulus: e / 2.6,
        area,
        second_moment_of_area: own,
        torsion_constant: 0.0,
        centroid_height: height,
        density: 0.0,
    }];
    let n = 40;
    let q = 500.0;
    let line_forces = (0..n)
        .map(|i| {
            let (from, to) = (i as f64 / n as f64, (i + 1) as f64 / n as f64);
            let force = q * ((pi * from).cos() - (pi * to).cos()) / (pi * (to - from));
            LineForce { line: Line::Path(Path::polyline(&[p(from, 0.0), p(to, 0.0)])), force }
        })
        .collect();
    let answer = solve(&panel, &Load { line_forces, ..Load::default() });
    let width = 4.0 * l / (pi * (3.0 + 2.0 * nu - nu * nu));
    let sheet = e * thickness * width;
    let ei = e * own + height * height / (1.0 / (e * area) + 1.0 / sheet);
    // The sheet's own bending is below 0.03 % of this.
    let exact = q / (ei * pi * pi * pi * pi / (l * l * l * l));
    close("rib", answer.field.at(p(0.5, 0.0)).map_or(0.0, |a| a.deflection), exact, 0.01);
}
