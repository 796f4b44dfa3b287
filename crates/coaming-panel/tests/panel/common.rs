//! Helpers of the tests.
#![allow(dead_code)]

use coaming_panel::*;

/// Young's modulus of the test plates, Pa.
pub(crate) const E: f64 = 70e9;
/// Thickness of the test plates, m.
pub(crate) const T: f64 = 0.002;

/// A point.
pub(crate) fn p(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// One isotropic layer.
pub(crate) fn sheet(poissons_ratio: f64) -> Layer {
    Layer::whole(T, Material::isotropic(E, poissons_ratio, 2700.0, 23e-6))
}

/// Bending stiffness of the test plates.
pub(crate) fn d(poissons_ratio: f64) -> f64 {
    E * T * T * T / (12.0 * (1.0 - poissons_ratio * poissons_ratio))
}

/// A solver at the default tolerance.
pub(crate) fn solver(panel: &Panel) -> Solver {
    Solver::new(panel, Settings::default()).unwrap_or_else(|e| panic!("{e}"))
}

/// The answer at the default tolerance.
pub(crate) fn solve(panel: &Panel, load: &Load) -> Answer {
    let answer = solver(panel).solve(load).unwrap_or_else(|e| panic!("{e}"));
    assert!(answer.balance.force < 1e-8, "force balance {:?}", answer.balance);
    assert!(answer.balance.moment < 1e-8, "moment balance {:?}", answer.balance);
    assert!(answer.error.met, "estimate {:?}", answer.error);
    answer
}

/// Asserts that two numbers agree within a share of the second.
pub(crate) fn close(what: &str, found: f64, exact: f64, within: f64) {
    let off = (found / exact - 1.0).abs();
    println!("{what}: {found:.8e} against {exact:.8e}, off by {off:.2e}");
    assert!(off <= within, "{what}: {found} against {exact}, off by {off}, accepted {within}");
}

/// The rows of a file of `tests/reference` whose first column is `by`, or all of them; name and values.
pub(crate) fn rows(text: &str, by: Option<&str>) -> Vec<(String, Vec<f64>)> {
    let rows: Vec<_> = text
        .lines()
        .skip(1)
        .map(|line| line.split(',').collect::<Vec<_>>())
        .filter(|row| by.is_none_or(|by| row[0] == by))
        .map(|row| row[usize::from(by.is_some())..].to_vec())
        .map(|row| (row[0].to_string(), row[1..].iter().map(|v| v.parse().unwrap_or(f64::NAN)).collect()))
        .collect();
    assert!(!rows.is_empty(), "no rows for {by:?}");
    rows
}
