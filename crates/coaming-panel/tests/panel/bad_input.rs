//! Hostile geometry, laws and supports: each is a typed error that names the place; nothing panics or hangs.
use crate::common::*;
use coaming_panel::*;
use proptest::prelude::*;

fn square() -> Outline {
    Outline::rectangle(0.0, 0.0, 1.0, 1.0)
}

fn held(outline: Outline) -> Panel {
    let mut panel = Panel::new(outline, sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    panel
}

fn fault(panel: &Panel) -> PanelError {
    fault_under(panel, &Load::uniform_pressure(1.0))
}

fn fault_under(panel: &Panel, load: &Load) -> PanelError {
    match Solver::new(panel, Settings::default()).and_then(|mut s| s.solve(load)) {
        Ok(_) => panic!("no error"),
        Err(e) => {
            println!("{e}");
            e
        }
    }
}

fn near(found: Point, x: f64, y: f64) -> bool {
    found.distance(p(x, y)) < 1e-6
}

#[test]
fn outline_that_crosses_itself() {
    let bow_tie = Outline::polygon(&[p(0.0, 0.0), p(1.0, 1.0), p(1.0, 0.0), p(0.0, 1.0)]);
    assert!(matches!(fault(&held(bow_tie)), PanelError::Crossing { at, .. } if near(at, 0.5, 0.5)));
    let arc =
        Outline(Path::start(0.0, 0.0).line_to(2.0, 0.0).line_to(2.0, 1.0).arc_to(p(1.0, -0.5), p(0.0, 1.0)));
    assert!(matches!(fault(&held(arc)), PanelError::Crossing { at, .. } if at.y.abs() < 1e-9));
}

#[test]
fn outline_that_touches_itself() {
    let pinched =
        Outline::polygon(&[p(0.0, 0.0), p(1.0, 0.0), p(0.5, 0.5), p(1.0, 1.0), p(0.0, 1.0), p(0.5, 0.5)]);
    assert!(matches!(fault(&held(pinched)), PanelError::Touching { at, .. } if near(at, 0.5, 0.5)));
}

#[test]
fn slivers_and_duplicates() {
    let doubled = Outline::polygon(&[p(0.0, 0.0), p(1.0, 0.0), p(1.0, 0.0), p(1.0, 1.0)]);
    assert!(matches!(fault(&held(doubled)), PanelError::DuplicatePoint { at, .. } if near(at, 1.0, 0.0)));
    let needle = Outline::polygon(&[p(0.0, 0.0), p(1.0, 0.0), p(1.0, 0.02)]);
    assert!(matches!(fault(&held(needle)), PanelError::Sliver { at, .. } if near(at, 0.0, 0.0)));
    let ribbon = Outline::rectangle(0.0, 0.0, 1.0, 1e-6);
    assert!(matches!(
        fault(&held(ribbon)),
        PanelError::Touching { .. } | PanelError::Sliver { .. } | PanelError::DuplicatePoint { .. }
    ));
    assert!(matches!(
        fault(&held(Outline::polygon(&[p(0.0, 0.0), p(1.0, 0.0)]))),
        PanelError::Missing { .. }
    ));
    assert!(matches!(fault(&held(Outline::polygon(&[]))), PanelError::Missing { .. }));
    let flat = Outline(Path::start(0.0, 0.0).arc_to(p(0.5, 0.0), p(1.0, 0.0)).line_to(0.5, 1.0));
    assert!(matches!(fault(&held(flat)), PanelError::StraightArc { .. }));
    let nan = Outline::polygon(&[p(0.0, 0.0), p(1.0, f64::NAN), p(1.0, 1.0)]);
    assert!(matches!(fault(&held(nan)), PanelError::Impossible { .. }));
}

#[test]
fn holes() {
    let with = |holes: Vec<Outline>| Panel { holes, ..held(square()) };
    let outside = fault(&with(vec![Outline::rectangle(1.2, 0.2, 0.1, 0.1)]));
    assert!(matches!(outside, PanelError::Outside { at, .. } if near(at, 1.2, 0.2)));
    let crossing = fault(&with(vec![Outline::rectangle(0.9, 0.2, 0.3, 0.1)]));
    assert!(matches!(crossing, PanelError::Crossing { at, .. } if (at.x - 1.0).abs() < 1e-9));
    let touching = fault(&with(vec![Outline::rectangle(0.5, 0.2, 0.5, 0.1)]));
    assert!(matches!(touching, PanelError::Touching { at, .. } if (at.x - 1.0).abs() < 1e-9));
    let nested = fault(&with(vec![Outline::rectangle(0.2, 0.2, 0.5, 0.5), Outline::circle(0.4, 0.4, 0.05)]));
    assert!(matches!(nested, PanelError::Crossing { .. }));
    let overlapping = fault(&with(vec![Outline::circle(0.4, 0.4, 0.1), Outline::circle(0.5, 0.4, 0.1)]));
    assert!(matches!(overlapping, PanelError::Crossing { .. }));
}

#[test]
fn layers() {
    let region = |outline| Some(Region { outline, holes: Vec::new() });
    let mut off = held(square());
    off.layers.push(Layer {
        region: region(Outline::rectangle(0.8, 0.1, 0.5, 0.2)),
        lower_face: T,
        ..sheet(0.3)
    });
    assert!(matches!(fault(&off), PanelError::Outside { .. }));
    let mut overlap = held(square());
    overlap.layers.push(Layer {
        region: region(Outline::rectangle(0.1, 0.1, 0.5, 0.2)),
        lower_face: 0.5 * T,
        ..sheet(0.3)
    });
    assert!(matches!(fault(&overlap), PanelError::LayersOverlap { at, .. } if at.x < 0.6 && at.y < 0.3));
    let mut bare = held(square());
    bare.layers[0].region = region(Outline::rectangle(0.0, 0.0, 0.5, 1.0));
    assert!(matches!(fault(&bare), PanelError::NoMaterial { at, .. } if at.x > 0.5));
    let mut none = held(square());
    none.layers.clear();
    assert!(matches!(fault(&none), PanelError::Missing { .. }));
    let mut thin = held(square());
    thin.layers[0].thickness = 0.0;
    assert!(matches!(fault(&thin), PanelError::Impossible { value, .. } if value == 0.0));
}

#[test]
fn supports_on_no_material() {
    let mut panel = held(square());
    panel.holes = vec![Outline::rectangle(0.4, 0.4, 0.2, 0.2)];
    panel.point_supports = vec![PointSupport::held(p(0.5, 0.5))];
    assert!(matches!(fault(&panel), PanelError::NoMaterial { at, .. } if near(at, 0.5, 0.5)));
    panel.point_supports.clear();
    panel.line_supports.push(LineSupport::supported(Line::Path(Path::polyline(&[p(0.1, 0.5), p(0.9, 0.5)]))));
    assert!(matches!(fault(&panel), PanelError::NoMaterial { at, .. } if (at.x - 0.5).abs() < 0.1));
    panel.line_supports.pop();
    panel.latches = vec![Latch { at: p(2.0, 0.5), action: LatchAction::Force(1.0) }];
    assert!(matches!(fault(&panel), PanelError::NoMaterial { at, .. } if near(at, 2.0, 0.5)));
    panel.latches.clear();
    let load = Load { point_forces: vec![PointForce { at: p(0.5, 0.5), force: 1.0 }], ..Load::default() };
    assert!(matches!(fault_under(&panel, &load), PanelError::NoMaterial { .. }));
}

#[test]
fn mechanisms_name_the_free_motion() {
    let mut panel = Panel::new(square(), sheet(0.3));
    assert!(matches!(fault(&panel), PanelError::Mechanism { motion: FreeMotion::Lift }));
    panel.line_supports = vec![LineSupport::supported(Line::OutlineEdge(3))];
    assert!(
        matches!(fault(&panel), PanelError::Mechanism { motion: FreeMotion::Turn { through, direction } }
        if through.x.abs() < 1e-9 && direction.x.abs() < 1e-9)
    );
    panel.line_supports = vec![LineSupport::guided(Line::Outline)];
    assert!(matches!(fault(&panel), PanelError::Mechanism { motion: FreeMotion::Lift }));
    panel.line_supports.clear();
    panel.point_supports = [p(0.0, 0.0), p(1.0, 1.0)].map(PointSupport::held).to_vec();
    assert!(matches!(fault(&panel), PanelError::Mechanism { motion: FreeMotion::Turn { direction, .. } }
        if (direction.x - direction.y).abs() < 1e-9));
}

#[test]
fn laws() {
    let with = |law: Law| {
        let mut panel = Panel::new(square(), sheet(0.3));
        panel.gaskets = vec![Gasket {
            line: Line::Outline,
            law,
            free_height: 0.01,
            closed_gap: 0.007,
            gap_error: Vec::new(),
        }];
        panel
    };
    let falls = with(Law::Points(vec![(0.0, 0.0), (0.002, 500.0), (0.004, 400.0)]));
    assert!(matches!(fault(&falls), PanelError::LawFalls { compression, .. } if compression == 0.004));
    assert!(matches!(fault(&with(Law::Points(vec![(0.0, 0.0)]))), PanelError::Missing { .. }));
    let back = with(Law::Points(vec![(0.0, 0.0), (0.002, 1.0), (0.001, 2.0)]));
    assert!(matches!(fault(&back), PanelError::Impossible { .. }));
    assert!(matches!(fault(&with(Law::Linear { stiffness: -1.0 })), PanelError::Impossible { .. }));
    // A gasket alone holds nothing down: pressure from inside carries the panel away.
    let blown = fault_under(&with(Law::Linear { stiffness: 1e5 }), &Load::uniform_pressure(100.0));
    assert!(matches!(blown, PanelError::ContactLost { motion: FreeMotion::Lift }), "{blown}");
}

/// No tolerance is no number, below nothing or without end.
#[test]
fn tolerances() {
    let panel = held(Outline::rectangle(0.0, 0.0, 0.4, 0.3));
    let fault = |settings: Settings| Solver::new(&panel, settings).err();
    for wrong in [f64::NAN, f64::INFINITY, -1e-6] {
        let length = fault(Settings { absolute_tolerance: wrong, ..Settings::default() });
        assert!(
            matches!(&length, Some(PanelError::Impossible { name, .. }) if name == "absolute_tolerance"),
            "{length:?}"
        );
        let share = fault(Settings { tolerance: wrong, ..Settings::default() });
        assert!(
            matches!(&share, Some(PanelError::Impossible { name, .. }) if name == "tolerance"),
            "{share:?}"
        );
    }
    assert!(fault(Settings { absolute_tolerance: 0.0, ..Settings::default() }).is_none());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]
    /// Any polygon at all: an answer in balance, or an error; never a panic.
    #[test]
    fn any_polygon(corners in prop::collection::vec((0..8_i32, 0..8_i32), 3..9), hole in prop::option::of((0.5..7.0_f64, 0.5..7.0_f64, 0.05..1.5_f64))) {
        let corners: Vec<Point> = corners.iter().map(|&(x, y)| p(f64::from(x), f64::from(y))).collect();
        let mut panel = held(Outline::polygon(&corners));
        panel.holes = hole.map(|(x, y, r)| Outline::circle(x, y, r)).into_iter().collect();
        let settings = Settings { first_triangles: 40, most_triangles: 3000, ..Settings::default() };
        if let Ok(answer) = Solver::new(&panel, settings).and_then(|mut s| s.solve(&Load::uniform_pressure(1.0))) {
            prop_assert!(answer.balance.force < 1e-8 && answer.balance.moment < 1e-8, "{:?}", answer.balance);
            prop_assert!(answer.largest_deflection.value.is_finite());
        }
    }
}
