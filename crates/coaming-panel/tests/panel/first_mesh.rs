//! Answers on the first mesh alone, for searches among many loads.
use coaming_panel::*;

const FIRST_MESH: Settings =
    Settings { tolerance: 0.005, absolute_tolerance: 0.0, first_triangles: 120, most_triangles: 64 };

/// The first mesh's answer is the one that a solver allowed no other mesh gives, to the bit, and estimates nothing.
#[test]
fn first_mesh_alone() {
    let lid = crate::reference::lid();
    let load = Load::uniform_pressure(-200.0);
    let mut refined = Solver::new(&lid, Settings { tolerance: 0.05, ..Settings::default() }).unwrap();
    refined.solve(&load).unwrap();
    let found = refined.solve_on_first_mesh(&load).unwrap();
    let alone = Solver::new(&lid, FIRST_MESH).unwrap().solve(&load).unwrap();
    assert_eq!(found.field.deflection, alone.field.deflection);
    assert!(found.error.deflection.is_infinite() && !found.error.met);
    assert!(found.error.triangles < refined.solve(&load).unwrap().error.triangles);
    let pull = EdgeForce::outward(Line::OutlineEdge(0), 0, 1.0);
    let pulled = Load { edge_forces: vec![pull], ..Load::default() };
    assert!(matches!(refined.solve_on_first_mesh(&pulled), Err(PanelError::Missing { .. })));
}
