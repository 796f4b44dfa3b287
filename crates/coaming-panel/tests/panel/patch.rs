//! Patch tests: states of constant curvature come back exactly on any mesh.

use crate::common::*;
use coaming_panel::*;

/// An outline without symmetry.
fn outline() -> Outline {
    Outline::polygon(&[p(0.0, 0.0), p(0.9, 0.1), p(1.1, 0.8), p(0.4, 1.0), p(-0.1, 0.6)])
}

/// Free plate on three point supports that carry nothing, under edge moments that make the moment tensor constant: M = [[a, c], [c, b]].
/// With only normal edge moments the tensor must be isotropic: M = m I, curvature m / (D (1 + nu)) in every direction.
#[test]
fn all_round_bending_is_exact() {
    assert!(all_round_bending(Vec::new()) < 1e-10);
    // The corners of a hole are meshed down to a five-hundredth of the panel: rounding grows with the square of that ratio.
    assert!(all_round_bending(vec![Outline::rectangle(0.4, 0.4, 0.2, 0.15)]) < 1e-10);
}

/// The largest curvature error over the applied.
fn all_round_bending(holes: Vec<Outline>) -> f64 {
    let nu = 0.3;
    let mut panel = Panel::new(outline(), sheet(nu));
    panel.point_supports = [p(0.1, 0.1), p(0.9, 0.3), p(0.4, 0.8)].map(PointSupport::held).to_vec();
    panel.holes = holes;
    let m = 10.0;
    let around = std::iter::once(Line::Outline).chain((0..panel.holes.len()).map(Line::Hole));
    let edge_moments = around.map(|line| EdgeMoment { line, moment: m }).collect();
    let load = Load { edge_moments, ..Load::default() };
    let answer = solve(&panel, &load);
    // An outward-bending moment raises the edge: w = m r^2 / (2 D (1 + nu)), so the curvature -w,xx is negative.
    let exact = -m / (d(nu) * (1.0 + nu));
    let mut worst = 0.0_f64;
    for corners in &answer.field.curvature {
        for k in corners {
            worst = worst
                .max(((k[0] - exact) / exact).abs())
                .max(((k[1] - exact) / exact).abs())
                .max((k[2] / exact).abs());
        }
    }
    println!("largest curvature error over the applied {worst:.2e}");
    let slack = answer.point_reactions.iter().map(|r| r.force.abs()).fold(0.0, f64::max);
    assert!(slack < 1e-9 * m, "{slack}");
    worst
}

/// A rectangle held at three corners and loaded at the fourth: pure twist, w = P a b xi eta / (2 D (1 - nu)) by hand
/// (Timoshenko and Woinowsky-Krieger, art. 11: twisting by corner forces, M_xy = P / 2).
#[test]
fn twist_is_exact() {
    let (a, b, nu, force) = (0.8, 0.5, 0.3, 7.0);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, a, b), sheet(nu));
    panel.point_supports = [p(0.0, 0.0), p(a, 0.0), p(0.0, b)].map(PointSupport::held).to_vec();
    panel.marks = vec![p(a, b)];
    let load = Load { point_forces: vec![PointForce { at: p(a, b), force }], ..Load::default() };
    let answer = solve(&panel, &load);
    close("corner", answer.largest_deflection.value, force * a * b / (2.0 * d(nu) * (1.0 - nu)), 1e-10);
    let twist = -force / (d(nu) * (1.0 - nu));
    for corners in &answer.field.curvature {
        for k in corners {
            assert!(
                k[0].abs() < 1e-9 * twist.abs()
                    && k[1].abs() < 1e-9 * twist.abs()
                    && ((k[2] - twist) / twist).abs() < 1e-10
            );
        }
    }
}

/// An unsymmetric laminate, free in its plane, under all-round edge moment: curvature = (D - B A^-1 B)^-1 M, exactly.
#[test]
fn unsymmetric_stack_is_exact() {
    let aluminium = Material::isotropic(70e9, 0.3, 2700.0, 23e-6);
    let plastic = Material::isotropic(3e9, 0.3, 1200.0, 65e-6);
    let mut panel = Panel::new(outline(), Layer::whole(0.002, aluminium));
    panel.layers.push(Layer { region: None, lower_face: 0.002, thickness: 0.005, material: plastic });
    // Equal Poisson ratios and isotropy: A, B and D are multiples of one matrix, so the scalar neutral axis is exact. A third layer with
    // another ratio makes the coupling a true one.
    let glass = Material::isotropic(20e9, 0.12, 1900.0, 15e-6);
    panel.layers.push(Layer { region: None, lower_face: 0.007, thickness: 0.001, material: glass });
    panel.joints = vec![
        Joint { lower: 0, upper: 1, kind: JointKind::Bonded },
        Joint { lower: 1, upper: 2, kind: JointKind::Bonded },
    ];
    panel.point_supports = [p(0.1, 0.1), p(0.9, 0.3), p(0.4, 0.8)].map(PointSupport::held).to_vec();
    let m = 10.0;
    let load = Load { edge_moments: vec![EdgeMoment { line: Line::Outline, moment: m }], ..Load::default() };
    let answer = solve(&panel, &load);
    // All-round strain e and curvature k: N = 0 = A e + B k, M = B e + D k with A = sum E t / (1 - nu), about z = 0.
    let (mut aa, mut bb, mut dd) = (0.0, 0.0, 0.0);
    for (e, nu, low, t) in [(70e9, 0.3, 0.0, 0.002), (3e9, 0.3, 0.002, 0.005), (20e9, 0.12, 0.007, 0.001)] {
        let (q, z): (f64, f64) = (e / (1.0 - nu), low + 0.5 * t);
        aa += q * t;
        bb += q * t * z;
        dd += q * (t * z * z + t * t * t / 12.0);
    }
    let exact = -m / (dd - bb * bb / aa);
    for corners in &answer.field.curvature {
        for k in corners {
            assert!(
                ((k[0] - exact) / exact).abs() < 1e-9
                    && ((k[1] - exact) / exact).abs() < 1e-9
                    && (k[2] / exact).abs() < 1e-9,
                "{k:?} {exact}"
            );
        }
    }
}
