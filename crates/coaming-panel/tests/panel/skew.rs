//! Skew plates against `tests/reference/skew.csv`, which `tests/independent/panel_skew.py` writes with scikit-fem: supported ones as two
//! membranes, clamped ones by Argyris's element.
use crate::common::*;
use coaming_panel::*;

/// The rows of one plate; their last two meshes agree to 1e-5, the clamped plate's to 2e-5.
fn reference(plate: &str) -> Vec<f64> {
    let rows = rows(include_str!("../reference/skew.csv"), Some(plate));
    rows.iter()
        .map(|(name, values)| {
            let [_, middle, fine] = values[..] else { panic!("{plate}, {name}: {values:?}") };
            let settled = if plate.starts_with("supported") { 1e-5 } else { 2e-5 };
            assert!((middle / fine - 1.0).abs() < settled, "{plate}, {name} has not settled");
            fine
        })
        .collect()
}

/// A rhombus of side `a` with this acute angle.
fn rhombus(degrees: f64, a: f64) -> Outline {
    let (s, c) = degrees.to_radians().sin_cos();
    Outline::polygon(&[p(0.0, 0.0), p(a, 0.0), p(a * (1.0 + c), a * s), p(a * c, a * s)])
}

/// The supported rhombus of side 1, and its deflection at the middle over q / D.
pub(crate) fn supported(degrees: f64) -> (Panel, f64) {
    let mut panel = Panel::new(rhombus(degrees, 1.0), sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    (panel, reference(&format!("supported {degrees}"))[0])
}

/// Obtuse corners to 120 degrees at the default tolerance; 135 and 150, where moments grow without bound the faster the blunter the
/// corner, at 2 %. The values agree with Morley, Skew Plates and Structures (1963): 0.00256 and 0.000408 for 60 and 30 degrees (from
/// memory, unverified).
#[test]
fn supported_to_their_tolerance() {
    let q = 1000.0;
    for (degrees, tolerance) in [(75.0, 0.005), (60.0, 0.005), (45.0, 0.02), (30.0, 0.02)] {
        let (panel, middle) = supported(degrees);
        let settings = Settings { tolerance, ..Settings::default() };
        let answer = Solver::new(&panel, settings)
            .and_then(|mut s| s.solve(&Load::uniform_pressure(q)))
            .unwrap_or_else(|e| panic!("{e}"));
        println!("{:?}", answer.error);
        assert!(answer.error.met);
        close(&format!("skew {degrees}"), answer.largest_deflection.value, middle * q / d(0.3), tolerance);
    }
}

/// The clamped rhombus, 45 degrees, 10 m sides, 0.05 m of steel, and its six frequencies in Hz.
pub(crate) fn clamped() -> (Panel, Vec<f64>) {
    let steel = Material::isotropic(200e9, 0.3, 8000.0, 0.0);
    let mut panel = Panel::new(rhombus(45.0, 10.0), Layer::whole(0.05, steel));
    panel.line_supports = vec![LineSupport::clamped(Line::Outline)];
    let stiffness: f64 = 200e9 * 0.05 * 0.05 * 0.05 / (12.0 * (1.0 - 0.3 * 0.3));
    let unit = (stiffness / (8000.0 * 0.05)).sqrt() / (std::f64::consts::TAU * 100.0);
    (panel, reference("clamped 45").iter().map(|parameter| parameter * unit).collect())
}

/// Six modes at the default tolerance. NAFEMS FV15 has 7.938, 12.835 and
/// 17.941 Hz (second-hand), 0.4, 0.1 and 0.5 % above the values of the file.
#[test]
fn clamped_rhombus() {
    let (panel, exact) = clamped();
    let modes = solver(&panel).modes(&Load::default(), 6).unwrap_or_else(|e| panic!("{e}"));
    assert_eq!(exact.len(), 6);
    for (mode, exact) in modes.iter().zip(exact) {
        assert!(mode.met, "{}", mode.error);
        println!("estimate {:.2e}", mode.error);
        close("clamped rhombus", mode.frequency, exact, 0.005);
    }
    for (mode, printed) in modes.iter().zip([7.938, 12.835, 17.941]) {
        close("clamped rhombus, FV15", mode.frequency, printed, 0.006);
    }
}
