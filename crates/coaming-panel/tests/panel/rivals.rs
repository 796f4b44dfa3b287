//! Panels against two independent ways at once: a thin plate of Argyris's triangles, and shells of eight nodes by a general-purpose package
//! (`tests/independent/panel_tapered.py`, `panel_washers.py`).
use crate::common::*;
use coaming_panel::*;

/// A tapered panel of polycarbonate with a cut-out on ten points.
pub(crate) fn tapered() -> Panel {
    let outline = Outline::polygon(&[p(0.0, 0.0), p(0.6, 0.0), p(0.5, 0.4), p(0.1, 0.4)]);
    let mut panel = Panel::new(outline, Layer::whole(0.004, Material::isotropic(2.4e9, 0.37, 1200.0, 65e-6)));
    panel.holes = vec![Outline::rectangle(0.22, 0.14, 0.16, 0.12)];
    let lower = [0.02, 0.2, 0.4, 0.58].map(|x| p(x, 0.02));
    let upper = [0.48, 0.36, 0.24, 0.12].map(|x| p(x, 0.38));
    let at = lower.into_iter().chain([p(0.525, 0.2)]).chain(upper).chain([p(0.075, 0.2)]);
    panel.point_supports = at.map(PointSupport::held).collect();
    panel
}

/// Largest deflection and six frequencies at the default tolerance, each to that. The triangles' last two meshes agree to 5e-5, the shells of a
/// twentieth of the thickness with them to 3e-4.
#[test]
fn tapered_panel_on_ten_points() {
    let (panel, load) = (tapered(), Load::uniform_pressure(1000.0));
    let answer = solve(&panel, &load);
    let modes = solver(&panel).modes(&load, 6).unwrap_or_else(|e| panic!("{e}"));
    let found = std::iter::once(answer.largest_deflection.value).chain(modes.iter().map(|m| m.frequency));
    let reference = rows(include_str!("../reference/tapered.csv"), None);
    assert_eq!(reference.len(), 7);
    for ((name, values), found) in reference.iter().zip(found) {
        let [_, middle, fine, shells] = values[..] else { panic!("{name}: {values:?}") };
        assert!((middle / fine - 1.0).abs() < 5e-5, "{name} has not settled");
        assert!((shells / fine - 1.0).abs() < 3e-4, "{name}: the two ways differ");
        close(&format!("tapered, {name}"), found, fine, 0.005);
    }
}

/// The sheet of a lid with a cut-out, clamped under the washers of six latches.
pub(crate) fn washers() -> Panel {
    let aluminium = Material::isotropic(70.3e9, 0.33, 2680.0, 23.6e-6);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 0.58, 0.44), Layer::whole(0.0025, aluminium));
    panel.holes = vec![Outline::rectangle(0.168, 0.138, 0.244, 0.164)];
    let at = [(0.02, 0.22), (0.56, 0.22), (0.11, 0.02), (0.47, 0.02), (0.11, 0.42), (0.47, 0.42)];
    panel.point_supports = at.map(|(x, y)| PointSupport::washer(p(x, y), 0.008)).to_vec();
    panel.marks = vec![p(0.29, 0.138), p(0.168, 0.22), p(0.29, 0.0)];
    panel
}

/// Deflections under 1 kPa: to 0.2 % of the thin plate, whose last two meshes agree to 6e-4, and to 1 % of shells as thick as the sheet. Those
/// move by 0.8 to 1.2 % on the first halving and by a third of that on the second, and settle 0.2 to 0.8 % above the plate: they shear, and a
/// free edge takes up twist over a width of about the thickness. A quarter as thick at the same stiffness they come within 0.3 % of the plate,
/// from below: slim shells are too stiff on a coarse mesh, and move by 4 % on the first halving.
#[test]
fn sheet_on_washers() {
    let settings = Settings { tolerance: 1e-3, ..Settings::default() };
    let answer = Solver::new(&washers(), settings)
        .and_then(|mut solver| solver.solve(&Load::uniform_pressure(1000.0)))
        .unwrap_or_else(|e| panic!("{e}"));
    println!("{:?}", answer.error);
    let places = [p(0.168, 0.138), p(0.29, 0.138), p(0.168, 0.22), p(0.29, 0.0)];
    let text = include_str!("../reference/washers.csv");
    for (by, settled, within) in
        [("plate", 6e-4, 0.002), ("shells 1", 0.004, 0.01), ("shells 4", 0.005, 0.005)]
    {
        let reference = rows(text, Some(by));
        assert_eq!(reference.len(), places.len());
        for ((name, values), at) in reference.iter().zip(places) {
            let [coarse, middle, fine] = values[..] else { panic!("{name}: {values:?}") };
            let (first, last) = (middle - coarse, fine - middle);
            assert!(last.abs() < 0.5 * first.abs(), "{by}, {name}: the halvings do not converge");
            assert!(last.abs() < settled * fine, "{by}, {name} has not settled");
            let found = answer.field.at(at).map_or(f64::NAN, |m| m.deflection);
            close(&format!("{by}, {name}"), found, fine, within);
        }
    }
}
