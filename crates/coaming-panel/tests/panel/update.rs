//! Another panel of the same shape in the place of the one that was meshed.
use crate::common::*;
use coaming_panel::*;

fn bits(answer: &Answer) -> Vec<u64> {
    let pulls = answer.latches.iter().map(|l| l.pull);
    answer.field.deflection.iter().copied().chain(pulls).map(f64::to_bits).collect()
}

fn answer(solver: &mut Solver, load: &Load) -> Answer {
    solver.solve(load).unwrap_or_else(|e| panic!("{e}"))
}

fn update(solver: &mut Solver, panel: &Panel) {
    solver.update(panel).unwrap_or_else(|e| panic!("{e}"));
}

/// The lid of reference.rs with other numbers everywhere.
fn other_lid() -> Panel {
    let mut panel = crate::reference::lid();
    panel.layers[0].thickness *= 1.1;
    panel.layers[0].material.youngs_modulus_1 *= 0.97;
    panel.gaskets[0].law = Law::Points(vec![(0.0, 0.0), (0.002, 500.0), (0.005, 2000.0)]);
    panel.gaskets[0].closed_gap = 0.0065;
    for latch in &mut panel.latches {
        latch.action = LatchAction::Height(0.0001);
    }
    panel
}

/// A plate without contact, and the same thicker on softer springs.
fn plates() -> [Panel; 2] {
    [(T, 1e5), (1.2 * T, 5e4)].map(|(thickness, stiffness)| {
        let layer = Layer { thickness, ..sheet(0.3) };
        let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 0.8, 0.6), layer);
        panel.line_supports = vec![
            LineSupport::clamped(Line::OutlineEdge(0)),
            LineSupport::elastic(Line::OutlineEdge(2), stiffness, 0.0),
        ];
        panel
    })
}

/// On the first mesh, which the shape alone decides, an updated solver has the bits of a fresh one; its modes too.
#[test]
fn same_bits_as_a_fresh_solver_on_the_same_mesh() {
    let settings = Settings { most_triangles: 64, ..Settings::default() };
    let fresh = |panel: &Panel| Solver::new(panel, settings).unwrap_or_else(|e| panic!("{e}"));
    let [plate, thicker] = plates();
    for (one, other, load) in [
        (crate::reference::lid(), other_lid(), Load::uniform_pressure(-200.0)),
        (plate, thicker, Load { normal_acceleration: -9.80665, ..Load::uniform_pressure(300.0) }),
    ] {
        let mut updated = fresh(&one);
        let before = answer(&mut updated, &load);
        update(&mut updated, &other);
        let found = answer(&mut updated, &load);
        assert_ne!(bits(&before), bits(&found));
        assert_eq!(bits(&found), bits(&answer(&mut fresh(&other), &load)));
        let modes = |solver: &mut Solver| {
            let modes = solver.modes(&load, 3).unwrap_or_else(|e| panic!("{e}"));
            modes.iter().map(|m| m.frequency.to_bits()).collect::<Vec<_>>()
        };
        assert_eq!(modes(&mut updated), modes(&mut fresh(&other)));
    }
}

/// There and back: the refined meshes and all they hold are as before; and the answer between is that of a fresh solver within the tolerance.
#[test]
fn there_and_back() {
    let load = Load::default();
    let mut solver = solver(&crate::reference::lid());
    let first = answer(&mut solver, &load);
    update(&mut solver, &other_lid());
    let between = answer(&mut solver, &load);
    let fresh = solve(&other_lid(), &load);
    close("updated", between.largest_deflection.value, fresh.largest_deflection.value, 0.006);
    update(&mut solver, &crate::reference::lid());
    assert_eq!(bits(&first), bits(&answer(&mut solver, &load)));
}

/// Another outline, hole, layer, place or kind of support is refused by name, and the solver stays as it was.
#[test]
fn another_shape_is_refused() {
    let lid = crate::reference::lid();
    let settings = Settings { most_triangles: 64, ..Settings::default() };
    let mut solver = Solver::new(&lid, settings).unwrap_or_else(|e| panic!("{e}"));
    let before = bits(&answer(&mut solver, &Load::default()));
    let mut refused = |change: &dyn Fn(&mut Panel), name: &str| {
        let mut other = lid.clone();
        change(&mut other);
        let fault = solver.update(&other);
        assert!(matches!(fault, Err(PanelError::OtherShape { part }) if part == name), "{fault:?}");
    };
    refused(&|panel| panel.outline = Outline::rectangle(0.0, 0.0, 0.58, 0.45), "outline");
    refused(&|panel| panel.holes.push(Outline::circle(0.2, 0.2, 0.01)), "holes");
    refused(&|panel| panel.layers.push(sheet(0.3)), "layers");
    refused(&|panel| panel.latches[1].at = p(0.56, 0.22), "latches");
    refused(&|panel| panel.latches[0].action = LatchAction::Force(1.0), "latches");
    refused(&|panel| panel.line_supports = vec![LineSupport::supported(Line::Outline)], "line_supports");
    let mut thin = lid.clone();
    thin.layers[0].thickness = -1.0;
    assert!(matches!(solver.update(&thin), Err(PanelError::Impossible { value, .. }) if value == -1.0));
    assert_eq!(before, bits(&answer(&mut solver, &Load::default())));
}

/// A panel that was let go on one gasket is let go on another from where it lay, and ends where a fresh solver does on the same mesh.
#[test]
fn let_go_again() {
    let settings = Settings { most_triangles: 64, ..Settings::default() };
    let fresh = |panel: &Panel| Solver::new(panel, settings).unwrap_or_else(|e| panic!("{e}"));
    let open = |solver: &mut Solver| solver.opening(&Load::default()).unwrap_or_else(|e| panic!("{e}"));
    let mut solver = fresh(&crate::reference::lid());
    let first = open(&mut solver);
    update(&mut solver, &other_lid());
    let (again, due) = (open(&mut solver), open(&mut fresh(&other_lid())));
    assert!((first.travel / due.travel - 1.0).abs() > 0.01);
    for (one, other) in again.travels.iter().zip(&due.travels) {
        close("travel", *one, *other, 1e-8);
    }
}
