//! Forces and movements in the plane against plane elasticity.
use crate::common::*;
use coaming_panel::*;

/// To a tolerance of the displacements that leaves forces near a hole sharp too.
fn finely(panel: &Panel, load: &Load) -> Answer {
    let settings = Settings { tolerance: 1e-4, ..Settings::default() };
    let answer =
        Solver::new(panel, settings).and_then(|mut s| s.solve(load)).unwrap_or_else(|e| panic!("{e}"));
    println!("{:?}", answer.error);
    answer
}

/// A plate held nowhere in its plane, supported all round against moving out of it.
fn loose(outline: Outline) -> Panel {
    let mut panel = Panel::new(outline, sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    panel
}

fn fault(panel: &Panel, load: &Load) -> PanelError {
    match Solver::new(panel, Settings::default()).and_then(|mut s| s.solve(load)) {
        Ok(_) => panic!("no error"),
        Err(e) => {
            println!("{e}");
            e
        }
    }
}

/// Uniform states of stress come back exactly on any mesh: pull on all edges of a rectangle turned by 0.4 rad, and shear. With stresses
/// sx, sy, sxy in the plate's own axes the traction is the stress tensor times the outward normal.
#[test]
fn uniform_stress_is_exact() {
    let (c, s) = (0.4_f64.cos(), 0.4_f64.sin());
    let turn = |x: f64, y: f64| p(c * x - s * y, s * x + c * y);
    let panel = loose(Outline::polygon(&[turn(0.0, 0.0), turn(0.9, 0.0), turn(0.9, 0.5), turn(0.0, 0.5)]));
    // Tensor [[a, k], [k, b]] in x and y.
    let (a, b, k) = (3e4, -1e4, 2e4);
    let normals = [turn(0.0, -1.0), turn(1.0, 0.0), turn(0.0, 1.0), turn(-1.0, 0.0)];
    let edge_forces = normals
        .iter()
        .enumerate()
        .map(|(edge, n)| {
            EdgeForce::directed(Line::OutlineEdge(edge), 0, p(a * n.x + k * n.y, k * n.x + b * n.y))
        })
        .collect();
    let answer = solve(&panel, &Load { edge_forces, ..Load::default() });
    assert!(answer.balance.in_plane < 1e-9, "{:?}", answer.balance);
    for t in 0..answer.field.triangles.len() {
        let force = answer.field.middle_of(t).map_or([0.0; 3], |m| m.membrane_force);
        for (found, exact) in force.into_iter().zip([a, b, k]) {
            assert!((found - exact).abs() < 1e-7 * a, "{found} {exact}");
        }
    }
    assert!(answer.largest_deflection.value.abs() < 1e-15);
}

/// Thick-walled ring under outer pull q: radial stress q (1 - r0^2 / r^2) / (1 - r0^2 / R^2), hoop with plus (Lame; Timoshenko and
/// Goodier, Theory of Elasticity, art. 28). At the hole the hoop stress is 2 q / (1 - r0^2 / R^2).
#[test]
fn ring_under_outer_pull() {
    let (inner, outer, q) = (0.1, 0.3, 4e4);
    let mut panel = loose(Outline::circle(0.0, 0.0, outer));
    panel.holes = vec![Outline::circle(0.0, 0.0, inner)];
    let load = Load { edge_forces: vec![EdgeForce::outward(Line::Outline, 0, q)], ..Load::default() };
    let answer = finely(&panel, &load);
    let share = 1.0 / (1.0 - inner * inner / (outer * outer));
    let at = |x: f64, y: f64| answer.field.at(p(x, y)).map_or([0.0; 3], |a| a.membrane_force);
    let middle = at(0.0, 0.2);
    close("radial", middle[1], q * share * (1.0 - 0.25), 0.01);
    close("hoop", middle[0], q * share * (1.0 + 0.25), 0.01);
    close("hoop at the hole", at(0.0, 0.1001)[0], 2.0 * q * share, 0.02);
}

/// A plate with a small round hole under pull on two edges: three times the stress at the hole's flank (Kirsch; Timoshenko and Goodier,
/// art. 35; a hole of a tenth of the width raises it to 3.03 of the gross stress by Peterson's chart, from memory, so 3 %).
#[test]
fn hole_in_a_pulled_plate() {
    let q = 1e4;
    let mut panel = loose(Outline::rectangle(-0.5, -0.5, 1.0, 1.0));
    panel.holes = vec![Outline::circle(0.0, 0.0, 0.05)];
    let edge_forces = [1, 3].map(|e| EdgeForce::outward(Line::OutlineEdge(e), 0, q)).to_vec();
    let answer = finely(&panel, &Load { edge_forces, ..Load::default() });
    let flank = answer.field.at(p(0.0, 0.050_02)).map_or([0.0; 3], |a| a.membrane_force);
    close("flank", flank[0], 3.03 * q, 0.03);
}

/// A plate pressed together by an edge that moves: E t d / a with the sides free; E t d / (a (1 - nu^2)) with the sides held across.
/// The reactions are that force times the width, opposite to each other. Hooke's law.
#[test]
fn edge_that_moves() {
    let (a, b, d, nu) = (0.8, 0.5, 1e-5, 0.3);
    for sides_held in [false, true] {
        let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, a, b), sheet(nu));
        panel.line_supports = (0..4).map(|e| LineSupport::supported(Line::OutlineEdge(e))).collect();
        for e in [1, 3] {
            panel.line_supports[e].in_plane_across = true;
        }
        for e in [0, 2] {
            panel.line_supports[e].in_plane_across = sides_held;
        }
        let support_movements = vec![SupportMovement { support: 1, movement: p(-d, 0.0) }];
        let answer = solve(&panel, &Load { support_movements, ..Load::default() });
        let stiff = if sides_held { 1.0 / (1.0 - nu * nu) } else { 1.0 };
        let force = E * T * d / a * stiff;
        let middle = answer.field.at(p(0.3, 0.2)).map_or([0.0; 3], |m| m.membrane_force);
        close("force", middle[0], -force, 1e-8);
        close("moved edge", answer.line_reactions[1].in_plane.x, -force * b, 1e-8);
        close("edge that stays", answer.line_reactions[3].in_plane.x, force * b, 1e-8);
        assert!(answer.balance.in_plane < 1e-9);
    }
}

/// A hot plate held all round: -E alpha dT t / (1 - nu) in every direction; free all round it grows without stress.
#[test]
fn heated_plate() {
    let (rise, nu) = (10.0, 0.3);
    let mut panel = loose(Outline::rectangle(0.0, 0.0, 0.8, 0.5));
    let temperatures = vec![LayerTemperature { layer: 0, rise, difference: 0.0 }];
    let load = Load { temperatures, ..Load::default() };
    let free = solver(&panel).solve(&load).unwrap_or_else(|e| panic!("{e}"));
    let stress =
        |answer: &Answer| answer.field.at(p(0.3, 0.2)).map_or(f64::NAN, |m| m.layers[0].upper.stress[0]);
    assert!(stress(&free).abs() < 1e-6, "{}", stress(&free));
    panel.line_supports = vec![LineSupport::supported(Line::Outline).held_in_plane()];
    let held = solver(&panel).solve(&load).unwrap_or_else(|e| panic!("{e}"));
    close("held", stress(&held), -E * 23e-6 * rise / (1.0 - nu), 1e-9);
}

/// An edge that stays straight under an uneven pull moves as one: by the mean pull, E t u / a = mean; with nu = 0 and the force read off
/// the far edge.
#[test]
fn straight_edge() {
    let (a, b, q) = (0.8, 0.5, 1e4);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, a, b), sheet(0.0));
    panel.line_supports = (0..4).map(|e| LineSupport::supported(Line::OutlineEdge(e))).collect();
    panel.line_supports[1].in_plane_straight = true;
    panel.line_supports[3].in_plane_across = true;
    let edge_forces = vec![EdgeForce::outward(Line::OutlineEdge(1), 0, q)];
    let even = solve(&panel, &Load { edge_forces: edge_forces.clone(), ..Load::default() });
    close("even pull", even.field.at(p(0.4, 0.1)).map_or(0.0, |m| m.membrane_force[0]), q, 1e-8);
    close("reaction", even.line_reactions[3].in_plane.x, -q * b, 1e-8);
    // All round straight, with a hole that would bow the edges.
    panel.line_supports = vec![LineSupport::supported(Line::Outline).straight_in_plane()];
    panel.holes = vec![Outline::circle(0.4, 0.25, 0.1)];
    let edge_forces = [1, 3].map(|e| EdgeForce::outward(Line::OutlineEdge(e), 0, q)).to_vec();
    let answer = finely(&panel, &Load { edge_forces, ..Load::default() });
    // Section through the hole's middle: the whole pull passes beside it.
    let n = 400;
    let (from, to) = (0.35, 0.5);
    let sum: f64 = (0..n)
        .map(|i| from + (to - from) * (i as f64 + 0.5) / n as f64)
        .map(|y| answer.field.at(p(0.4, y)).map_or(0.0, |m| m.membrane_force[0]) * (to - from) / n as f64)
        .sum();
    close("pull beside the hole", 2.0 * sum, q * b, 0.01);
}

/// An eccentric pull bends: on a layer bonded to another, E A e about the common neutral axis. Two equal layers: the pull on the upper
/// one alone has the arm t / 2 and bends the strip to the curvature 12 P (t / 2) / (E (2 t)^3) per width, nu = 0 (beam theory).
#[test]
fn eccentric_pull() {
    let (length, width, q, e, t) = (0.5, 0.05, 2e3, 70e9, 0.002);
    let plain = Material::isotropic(e, 0.0, 0.0, 0.0);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, length, width), Layer::whole(t, plain));
    panel.layers.push(Layer { region: None, lower_face: t, thickness: t, material: plain });
    panel.joints = vec![Joint { lower: 0, upper: 1, kind: JointKind::Bonded }];
    panel.line_supports =
        vec![LineSupport::supported(Line::OutlineEdge(1)), LineSupport::supported(Line::OutlineEdge(3))];
    let edge_forces = [1, 3].map(|k| EdgeForce::outward(Line::OutlineEdge(k), 1, q)).to_vec();
    let answer = solve(&panel, &Load { edge_forces, ..Load::default() });
    let curvature = 12.0 * q * (0.5 * t) / (e * 8.0 * t * t * t);
    // A pull on the outer layer stretches the outer face: the middle rises.
    close("middle", answer.largest_deflection.value, curvature * length * length / 8.0, 1e-3);
}

/// What pulls that nothing balances begin to do, by statics: a pull through the middle slides the square its way, a couple turns it about
/// its middle, a pull past a held point turns it about that, and a pull across a line that only holds along itself slides it across.
#[test]
fn free_motions_in_the_plane_are_named() {
    let square = loose(Outline::rectangle(0.0, 0.0, 1.0, 1.0));
    let motion = |panel: &Panel, edge_forces: Vec<EdgeForce>| match fault(
        panel,
        &Load { edge_forces, ..Load::default() },
    ) {
        PanelError::Mechanism { motion } => motion,
        other => panic!("{other}"),
    };
    let pulled = |k| EdgeForce::outward(Line::OutlineEdge(k), 0, 1.0);
    let along = |k, x, y| EdgeForce::directed(Line::OutlineEdge(k), 0, p(x, y));
    let slides = |found, x: f64, y: f64| match found {
        FreeMotion::Slide { direction } => assert!(direction.distance(p(x, y)) < 0.01, "{direction}"),
        other => panic!("{other}"),
    };
    let turns = |found, x: f64, y: f64| match found {
        FreeMotion::TurnInPlane { about } => assert!(about.distance(p(x, y)) < 0.05, "{about}"),
        other => panic!("{other}"),
    };
    let couple = || vec![along(0, -1.0, 0.0), along(2, 1.0, 0.0)];
    slides(motion(&square, vec![pulled(1)]), 1.0, 0.0);
    slides(motion(&square, vec![along(2, 3.0, -4.0), along(0, 3.0, -4.0)]), 0.6, -0.8);
    turns(motion(&square, couple()), 0.5, 0.5);
    let mut held = square.clone();
    held.point_supports = vec![PointSupport::held(p(0.25, 0.25)).held_in_plane()];
    turns(motion(&held, vec![pulled(1)]), 0.25, 0.25);
    turns(motion(&held, couple()), 0.25, 0.25);
    let mut guided = square.clone();
    guided
        .line_supports
        .push(LineSupport { in_plane_along: true, ..LineSupport::supported(Line::OutlineEdge(3)) });
    slides(motion(&guided, vec![pulled(1)]), 1.0, 0.0);
    let mut straight = square;
    straight.line_supports.push(LineSupport::supported(Line::OutlineEdge(0)).straight_in_plane());
    slides(motion(&straight, vec![pulled(1)]), 1.0, 0.0);
}

/// Pulls that nothing balances, movements that nothing holds, edges that cannot stay straight: typed errors.
#[test]
fn faults_in_the_plane() {
    let panel = loose(Outline::rectangle(0.0, 0.0, 1.0, 1.0));
    let pull = |line| Load { edge_forces: vec![EdgeForce::outward(line, 0, 1.0)], ..Load::default() };
    assert!(matches!(fault(&panel, &pull(Line::Hole(0))), PanelError::Missing { .. }));
    let mut load = pull(Line::Outline);
    load.edge_forces[0].layer = 3;
    assert!(matches!(fault(&panel, &load), PanelError::Missing { .. }));
    load = pull(Line::Outline);
    load.edge_forces[0].outward = f64::NAN;
    assert!(matches!(fault(&panel, &load), PanelError::Impossible { .. }));
    let moved = |support| Load {
        support_movements: vec![SupportMovement { support, movement: p(1e-5, 0.0) }],
        ..Load::default()
    };
    assert!(matches!(fault(&panel, &moved(0)), PanelError::Contradiction { .. }));
    assert!(matches!(fault(&panel, &moved(7)), PanelError::Missing { .. }));
    let mut round = loose(Outline::circle(0.0, 0.0, 1.0));
    round.line_supports = vec![LineSupport::supported(Line::Outline).straight_in_plane()];
    assert!(matches!(fault(&round, &pull(Line::Outline)), PanelError::Contradiction { .. }));
    let mut skew = loose(Outline::polygon(&[p(0.0, 0.0), p(1.0, 0.0), p(1.3, 1.0), p(0.3, 1.0)]));
    skew.line_supports = vec![LineSupport::supported(Line::Outline).straight_in_plane()];
    assert!(matches!(fault(&skew, &pull(Line::Outline)), PanelError::Contradiction { .. }));
}
