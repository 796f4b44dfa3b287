//! Searches on the first mesh: one load by itself, and many further loads to first order.
use crate::common::*;
use coaming_panel::*;

const FIRST_MESH: Settings = Settings { tolerance: 0.005, first_triangles: 120, most_triangles: 64 };

fn first_mesh(panel: &Panel) -> Solver {
    Solver::new(panel, FIRST_MESH).unwrap_or_else(|e| panic!("{e}"))
}

fn hand(x: f64, y: f64, force: f64) -> Load {
    let region = Some(Outline::rectangle(x - 0.04, y - 0.03, 0.08, 0.06));
    Load {
        pressures: vec![Pressure { region, ..Pressure::uniform(-force / (0.08 * 0.06)) }],
        ..Load::default()
    }
}

/// Both loads at once.
fn sum(one: &Load, other: &Load) -> Load {
    let pressures = one.pressures.iter().chain(&other.pressures).cloned().collect();
    Load { pressures, ..one.clone() }
}

fn largest_change(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max)
}

/// The first mesh's answer is the one that a solver allowed no other mesh gives, to the bit, and estimates nothing.
#[test]
fn first_mesh_alone() {
    let lid = crate::reference::lid();
    let load = Load::uniform_pressure(-200.0);
    let mut refined = Solver::new(&lid, Settings { tolerance: 0.05, ..Settings::default() }).unwrap();
    refined.solve(&load).unwrap();
    let found = refined.solve_on_first_mesh(&load).unwrap();
    let alone = first_mesh(&lid).solve(&load).unwrap();
    assert_eq!(found.field.deflection, alone.field.deflection);
    assert!(found.error.deflection.is_infinite() && !found.error.met);
    assert!(found.error.triangles < refined.solve(&load).unwrap().error.triangles);
    let pull = EdgeForce::outward(Line::OutlineEdge(0), 0, 1.0);
    let pulled = Load { edge_forces: vec![pull], ..Load::default() };
    assert!(matches!(refined.solve_on_first_mesh(&pulled), Err(PanelError::Missing { .. })));
    assert!(matches!(refined.solve_nearby(&load, &[pulled]), Err(PanelError::Missing { .. })));
}

/// Superposition: exact for a panel that nothing can let go of.
#[test]
fn a_linear_panel_adds_up() {
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 0.8, 0.6), sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    let wind = Load::uniform_pressure(-300.0);
    let hands = [hand(0.2, 0.3, 50.0), hand(0.5, 0.2, 80.0)];
    let mut solver = first_mesh(&panel);
    let fields = solver.solve_nearby(&wind, &hands).unwrap();
    assert_eq!(fields.len(), 2);
    for (field, hand) in fields.iter().zip(&hands) {
        let together = solver.solve(&sum(&wind, hand)).unwrap();
        let size = together.largest_deflection.value.abs();
        assert!(largest_change(&field.deflection, &together.field.deflection) < 1e-9 * size);
    }
}

/// On a gasket what is left out goes with the square of the further load: a tenth of the hand, a hundredth of the error.
#[test]
fn first_order_about_a_closed_lid() {
    let mut solver = first_mesh(&crate::reference::lid());
    let closed = Load::default();
    let resting = solver.solve(&closed).unwrap().field.deflection;
    let mut off = |force: f64| {
        let hand = hand(0.3, 0.2, force);
        let field = solver.solve_nearby(&closed, std::slice::from_ref(&hand)).unwrap().remove(0);
        let solved = solver.solve(&hand).unwrap().field.deflection;
        let moved = largest_change(&solved, &resting);
        (largest_change(&field.deflection, &solved), moved)
    };
    let (much, moved) = off(10.0);
    let (little, moved_little) = off(1.0);
    println!("off by {much:.3e} of {moved:.3e} m, and by {little:.3e} of {moved_little:.3e} m");
    assert!(much < 0.05 * moved, "{much} {moved}");
    assert!(little < 0.02 * much, "{little} {much}");
}
