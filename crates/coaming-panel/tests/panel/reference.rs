//! Panels of a cover against a general-purpose finite-element package: the values of `tests/reference/cover.csv`, which
//! `tests/independent/panel_cover.py` writes with scikit-fem's Argyris element and a mesh of its own. Each is held to 1 %.
use crate::common::*;
use coaming_panel::*;

/// One panel's values on three meshes each, coarse to fine.
fn reference(panel: &str) -> Vec<(String, [f64; 3])> {
    let values: Vec<_> = include_str!("../reference/cover.csv")
        .lines()
        .skip(1)
        .map(|line| line.split(',').collect::<Vec<_>>())
        .filter(|row| row[0] == panel)
        .map(|row| (row[1].to_string(), [2, 3, 4].map(|i| row[i].parse().unwrap_or(f64::NAN))))
        .collect();
    assert!(!values.is_empty(), "no values for {panel}");
    values
}

/// Compares everything the file gives for a panel, and demands that the reference itself stands still to a fifth of the tolerance.
fn compare(panel: &str, found: &[(&str, f64)]) {
    let values = reference(panel);
    let mut named: Vec<_> = values.iter().map(|v| v.0.as_str()).collect();
    let mut compared: Vec<_> = found.iter().map(|f| f.0).collect();
    named.sort_unstable();
    compared.sort_unstable();
    assert_eq!(named, compared, "every value of the file is compared");
    for (name, [_, middle, fine]) in &values {
        assert!((middle / fine - 1.0).abs() < 0.002, "the reference of {panel}, {name}, has not settled");
        for (_, value) in found.iter().filter(|f| f.0 == name) {
            close(&format!("{panel}, {name}"), *value, *fine, 0.01);
        }
    }
}

const WIDTH: f64 = 0.58;
const HEIGHT: f64 = 0.44;

fn latch_points() -> [Point; 4] {
    [p(0.29, 0.01), p(0.57, 0.22), p(0.29, 0.43), p(0.01, 0.22)]
}

fn sheet_of(thickness: f64) -> Panel {
    let aluminium = Material::isotropic(70e9, 0.33, 2680.0, 23.6e-6);
    Panel::new(Outline::rectangle(0.0, 0.0, WIDTH, HEIGHT), Layer::whole(thickness, aluminium))
}

fn deflection(answer: &Answer, at: Point) -> f64 {
    answer.field.at(at).unwrap_or_else(|| panic!("no answer at {at}")).deflection
}

/// The flat lid of 1.6 mm on a gasket that only pushes, between four latches.
pub(crate) fn lid() -> Panel {
    let mut panel = sheet_of(0.0016);
    let path = Outline::rounded_rectangle(0.02, 0.02, 0.54, 0.40, 0.04);
    panel.gaskets = vec![Gasket {
        line: Line::Path(path.0),
        law: Law::Linear { stiffness: 288e3 },
        free_height: 0.010,
        closed_gap: 0.006,
        gap_error: Vec::new(),
    }];
    panel.latches = latch_points().map(|at| Latch { at, action: LatchAction::Height(0.0) }).to_vec();
    panel.marks = vec![p(0.29, 0.22)];
    panel
}

/// It opens at its corners.
#[test]
fn lid_on_its_gasket() {
    let panel = lid();
    let answer = solve(&panel, &Load::default());
    let modes = solver(&panel).modes(&Load::default(), 3).unwrap_or_else(|e| panic!("{e}"));
    let gasket = &answer.gaskets[0];
    println!("{:?}", answer.error);
    compare(
        "lid",
        &[
            ("corner", deflection(&answer, p(0.0, 0.0))),
            ("middle", deflection(&answer, p(0.29, 0.22))),
            ("smallest compression", gasket.smallest.value),
            ("largest compression", gasket.largest.value),
            ("gasket force", gasket.force),
            ("pull front", answer.latches[0].pull),
            ("pull side", answer.latches[1].pull),
            ("open length", gasket.open_length),
            ("mode 1", modes[0].frequency),
            ("mode 2", modes[1].frequency),
            ("mode 3", modes[2].frequency),
        ],
    );
}

/// A sheet of 2.5 mm with a sharp-cornered cut-out for a window, on four points.
pub(crate) fn cut_out() -> Panel {
    let mut panel = sheet_of(0.0025);
    panel.holes = vec![Outline::rectangle(0.168, 0.138, 0.244, 0.164)];
    panel.point_supports = latch_points().map(PointSupport::held).to_vec();
    panel.marks = vec![p(0.29, 0.138), p(0.168, 0.22)];
    panel
}

/// Under 1 kPa inward.
#[test]
fn sheet_with_a_cut_out() {
    let panel = cut_out();
    let answer = solve(&panel, &Load::uniform_pressure(-1000.0));
    println!("{:?}", answer.error);
    compare(
        "cut-out",
        &[
            ("corner", deflection(&answer, p(0.0, 0.0))),
            ("hole corner", deflection(&answer, p(0.168, 0.138))),
            ("hole long edge", deflection(&answer, p(0.29, 0.138))),
            ("hole short edge", deflection(&answer, p(0.168, 0.22))),
            ("reaction front", answer.point_reactions[0].force),
            ("reaction side", answer.point_reactions[1].force),
        ],
    );
}

/// A pane of 5 mm polycarbonate supported all round, under a hand on 80 by 80 mm set off its middle.
pub(crate) fn pane() -> (Panel, Load) {
    let polycarbonate = Material::isotropic(2.4e9, 0.37, 1200.0, 65e-6);
    let outline = Outline::rectangle(0.0, 0.0, 0.272, 0.192);
    let mut panel = Panel::new(outline, Layer::whole(0.005, polycarbonate));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    panel.marks = vec![p(0.1, 0.09), p(0.136, 0.096)];
    let hand = Pressure {
        region: Some(Outline::rectangle(0.06, 0.05, 0.08, 0.08)),
        ..Pressure::uniform(-250.0 / 0.0064)
    };
    (panel, Load { pressures: vec![hand], ..Load::default() })
}

#[test]
fn pane_under_a_hand() {
    let (panel, load) = pane();
    let answer = solve(&panel, &load);
    println!("{:?}", answer.error);
    compare(
        "pane",
        &[
            ("under the hand", deflection(&answer, panel.marks[0])),
            ("middle", deflection(&answer, panel.marks[1])),
        ],
    );
}
