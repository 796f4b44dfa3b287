//! Flanges as beams against flanges as shells: `tests/reference/flange.csv`, which `tests/independent/panel_flange.py` writes with
//! CalculiX.
use crate::common::*;
use coaming_panel::*;

/// Deflections (middle of the sheet, middle of the fold) over the pressure of a sheet with flanges along its two long sides, as beams.
fn as_beams(a: f64, b: f64, t: f64, h: f64, ends: bool) -> [f64; 2] {
    let aluminium = Material::isotropic(E, 0.3, 2700.0, 0.0);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, a, b), Layer::whole(t, aluminium));
    panel.beams = [0, 2]
        .map(|edge| Beam {
            line: Line::OutlineEdge(edge),
            layer: 0,
            youngs_modulus: E,
            shear_modulus: E / 2.6,
            area: t * h,
            second_moment_of_area: t * h * h * h / 12.0,
            torsion_constant: h * t * t * t / 3.0,
            centroid_height: 0.5 * t - 0.5 * h,
            density: 0.0,
        })
        .to_vec();
    if ends {
        panel.line_supports = [1, 3].map(|e| LineSupport::supported(Line::OutlineEdge(e))).to_vec();
    } else {
        panel.point_supports = [p(0.0, 0.0), p(a, 0.0), p(a, b), p(0.0, b)].map(PointSupport::held).to_vec();
    }
    panel.marks = vec![p(a / 2.0, b / 2.0), p(a / 2.0, 0.0)];
    // Fine enough that what is left is the idealisation's own.
    let settings = Settings { tolerance: 5e-4, ..Settings::default() };
    let answer = Solver::new(&panel, settings)
        .and_then(|mut solver| solver.solve(&Load::uniform_pressure(1.0)))
        .unwrap_or_else(|e| panic!("{e}"));
    [p(a / 2.0, b / 2.0), p(a / 2.0, 0.0)].map(|at| answer.field.at(at).map_or(f64::NAN, |m| m.deflection))
}

/// The sheet between the flanges comes out to 1.5 % for flanges up to a twenty-fourth of the span and to 4 % for a twelfth; the fold itself to
/// 2 % and to 8 %, on the stiff side: a beam neither shears nor bends sideways, a deep flange does.
#[test]
fn flanges_as_beams() {
    let mut counted = 0;
    for line in include_str!("../reference/flange.csv").lines().filter(|l| !l.starts_with('#')) {
        let row: Vec<&str> = line.split(',').collect();
        let [a, b, t, h] = [0, 1, 2, 3].map(|i| row[i].parse::<f64>().unwrap_or(f64::NAN) * 1e-3);
        let reference = [5, 6].map(|i| row[i].parse::<f64>().unwrap_or(f64::NAN));
        let found = as_beams(a, b, t, h, row[4] == "ends");
        let (sheet, fold) = (found[0] / reference[0], found[1] / reference[1]);
        println!("{line}: {sheet:.4} {fold:.4}");
        let (near_sheet, near_fold) = if h > a / 20.0 { (0.04, 0.08) } else { (0.015, 0.02) };
        assert!((sheet - 1.0).abs() < near_sheet && (fold - 1.0).abs() < near_fold, "{line}: {sheet} {fold}");
        counted += 1;
    }
    assert_eq!(counted, 12);
}
