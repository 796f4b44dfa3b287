//! Plates with known answers, each at the default tolerance.

use crate::common::*;
use coaming_panel::*;

fn supported(outline: Outline, nu: f64) -> Panel {
    let mut panel = Panel::new(outline, sheet(nu));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    panel
}

/// Timoshenko and Woinowsky-Krieger, table 8 (nu = 0.3) and the Navier series: w = 0.00406235 q a^4 / D, M = 0.0479 q a^2.
#[test]
fn supported_square() {
    let q = 1000.0;
    let answer = solve(&supported(Outline::rectangle(0.0, 0.0, 1.0, 1.0), 0.3), &Load::uniform_pressure(q));
    close("w", answer.largest_deflection.value, 0.004_062_35 * q / d(0.3), 0.005);
    let middle = answer.field.at(p(0.5, 0.5));
    assert!(middle.as_ref().is_some_and(|m| (m.moment[0] / q - 0.0479).abs() < 0.01 * 0.0479), "{middle:?}");
    let sum: f64 = answer.line_reactions.iter().map(|r| r.force).sum();
    close("sum of reactions", sum, -q, 1e-9);
    println!("{:?}", answer.error);
}

/// The same table: each corner is held down by 0.065 q a^2 (Navier series 0.06497), twice the twisting moment there (art. 23).
#[test]
fn corner_force_of_a_supported_square() {
    let q = 1000.0;
    let panel = supported(Outline::rectangle(0.0, 0.0, 1.0, 1.0), 0.3);
    // The tolerance is that of the deflection; a moment at a corner errs more, by 2 % at the default.
    let settings = Settings { tolerance: 1e-4, ..Settings::default() };
    let answer = Solver::new(&panel, settings)
        .and_then(|mut solver| solver.solve(&Load::uniform_pressure(q)))
        .unwrap_or_else(|e| panic!("{e}"));
    for at in [p(0.0, 0.0), p(1.0, 0.0), p(1.0, 1.0), p(0.0, 1.0)] {
        let twist = answer.field.at(at).map_or(f64::NAN, |m| m.moment[2]);
        close(&format!("corner force at {at}"), 2.0 * twist.abs(), 0.06497 * q, 0.005);
    }
}

/// Timoshenko and Woinowsky-Krieger, table 8, b/a = 2: 0.01013 q a^4 / D (Navier series 0.010129).
#[test]
fn supported_rectangle_far_from_the_origin() {
    let q = 1000.0;
    let answer =
        solve(&supported(Outline::rectangle(1000.0, -500.0, 0.5, 1.0), 0.3), &Load::uniform_pressure(q));
    close("w", answer.largest_deflection.value, 0.010_129 * q * 0.0625 / d(0.3), 0.005);
}

/// Timoshenko and Woinowsky-Krieger, table 35: 0.00126 q a^4 / D; 0.0012653 by Ritz. Edge moment 0.0513 q a^2.
#[test]
fn clamped_square() {
    let q = 1000.0;
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 1.0, 1.0), sheet(0.3));
    panel.line_supports = vec![LineSupport::clamped(Line::Outline)];
    let answer = solve(&panel, &Load::uniform_pressure(q));
    close("w", answer.largest_deflection.value, 0.001_265_3 * q / d(0.3), 0.005);
    let edge = answer.field.at(p(0.5, 0.0));
    assert!(
        edge.as_ref().is_some_and(|m| (m.moment[1].abs() / q - 0.0513).abs() < 0.02 * 0.0513),
        "{:?}",
        edge.map(|m| m.moment)
    );
}

/// Square plate on four corner points: centre 0.02551, middle of an edge 0.01775 q a^4 / D (Ritz, nu = 0.3).
#[test]
fn corner_supported_square() {
    let q = 1000.0;
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 1.0, 1.0), sheet(0.3));
    panel.point_supports =
        [p(0.0, 0.0), p(1.0, 0.0), p(1.0, 1.0), p(0.0, 1.0)].map(PointSupport::held).to_vec();
    let answer = solve(&panel, &Load::uniform_pressure(q));
    close("centre", answer.largest_deflection.value, 0.025_51 * q / d(0.3), 0.005);
    let edge = answer.field.at(p(0.5, 0.0)).map_or(0.0, |a| a.deflection);
    close("edge", edge, 0.017_75 * q / d(0.3), 0.005);
    for r in &answer.point_reactions {
        close("corner force", r.force, -0.25 * q, 0.002);
    }
    // The same series: 0.1117 q a^2 at the centre; 0.1504 along an edge at its middle, which governs.
    let moment = |at: Point, i: usize| answer.field.at(at).map_or(0.0, |a| a.moment[i]);
    close("moment at the centre", moment(p(0.5, 0.5), 0), 0.1117 * q, 0.005);
    for (at, along) in [(p(0.5, 0.0), 0), (p(0.5, 1.0), 0), (p(0.0, 0.5), 1), (p(1.0, 0.5), 1)] {
        close(&format!("moment at {at}"), moment(at, along), 0.1504 * q, 0.01);
    }
    close("largest moment", answer.largest_moment.value, 0.1504 * q, 0.005);
    println!("{:?}", answer.error);
}

/// Exact: w = (5 + nu) q a^4 / (64 (1 + nu) D) supported; q a^4 / (64 D) clamped.
#[test]
fn circles() {
    let (q, nu, a) = (1000.0, 0.3, 0.3);
    let answer = solve(&supported(Outline::circle(0.2, 0.1, a), nu), &Load::uniform_pressure(q));
    let base = q * a * a * a * a / (64.0 * d(nu));
    close("supported", answer.largest_deflection.value, (5.0 + nu) / (1.0 + nu) * base, 0.005);
    let mut panel = Panel::new(Outline::circle(0.2, 0.1, a), sheet(nu));
    panel.line_supports = vec![LineSupport::clamped(Line::Outline)];
    let answer = solve(&panel, &Load::uniform_pressure(q));
    close("clamped", answer.largest_deflection.value, base, 0.005);
}

/// Ring supported at its outer edge, free inside, b/a = 0.5, line load at the inner edge or pressure: solved here from the closed form
/// w = C1 + C2 r^2 + C3 ln r + C4 r^2 ln r + q r^4 / (64 D) with free and supported edges.
pub(crate) fn open_ring(q: f64) -> (Panel, f64) {
    let (nu, a, b) = (0.3_f64, 0.4_f64, 0.2_f64);
    let mut panel = supported(Outline::circle(0.0, 0.0, a), nu);
    panel.holes = vec![Outline::circle(0.0, 0.0, b)];
    let dd = d(nu);
    // Shear at r: V = q (r^2 - b^2) / (2 r). D d/dr[(1/r) d/dr (r w')] = V: phi = w' integrates to
    // D phi = q r^3 / 16 - q b^2 / 4 r (2 ln r - 1) / 2 ... written as particular part plus c1 r + c2 / r.
    let part = |r: f64| q * r * r * r / 16.0 - q * b * b / 4.0 * (r * r.ln() - 0.5 * r);
    let part_slope = |r: f64| 3.0 * q * r * r / 16.0 - q * b * b / 4.0 * (r.ln() + 0.5);
    // Radial moment D(phi' + nu phi / r) = 0 at both edges.
    let m = |r: f64| part_slope(r) + nu * part(r) / r;
    // c1 (1 + nu) - c2 (1 - nu) / r^2 = -m(r)
    let c2 = (m(a) - m(b)) / ((1.0 - nu) * (1.0 / (a * a) - 1.0 / (b * b)));
    let c1 = (-m(a) + c2 * (1.0 - nu) / (a * a)) / (1.0 + nu);
    // Deflection of the inner edge: -integral of phi from b to a, by Simpson's rule.
    let phi = |r: f64| (part(r) + c1 * r + c2 / r) / dd;
    let n = 2000;
    let h = (a - b) / n as f64;
    let mut sum = phi(a) + phi(b);
    for i in 1..n {
        sum += phi(b + i as f64 * h) * if i % 2 == 1 { 4.0 } else { 2.0 };
    }
    (panel, (sum * h / 3.0).abs())
}

#[test]
fn ring() {
    let (panel, exact) = open_ring(1000.0);
    let answer = solve(&panel, &Load::uniform_pressure(1000.0));
    close("inner edge", answer.largest_deflection.value.abs(), exact, 0.005);
}

/// Timoshenko and Woinowsky-Krieger, table 23 (point load, Navier series): w = 0.011601 P a^2 / D under the load.
#[test]
fn point_load_on_a_square() {
    let mut panel = supported(Outline::rectangle(0.0, 0.0, 1.0, 1.0), 0.3);
    panel.marks = vec![p(0.5, 0.5)];
    let load = Load { point_forces: vec![PointForce { at: p(0.5, 0.5), force: -100.0 }], ..Load::default() };
    let answer = solve(&panel, &load);
    close("w", answer.largest_deflection.value, -0.011_601 * 100.0 / d(0.3), 0.005);
}

/// A patch load on part of a supported square by the Navier series: total P on u × v about (x, y).
#[test]
fn patch_load_on_a_square() {
    use std::f64::consts::PI;
    let (x, y, u, v, force) = (0.37, 0.61, 0.13, 0.21, 50.0);
    let pressure = Pressure {
        region: Some(Outline::rectangle(x - u / 2.0, y - v / 2.0, u, v)),
        ..Pressure::uniform(force / (u * v))
    };
    let load = Load { pressures: vec![pressure], ..Load::default() };
    let answer = solve(&supported(Outline::rectangle(0.0, 0.0, 1.0, 1.0), 0.3), &load);
    let (mut exact, (px, py)) = (0.0, (0.5, 0.5));
    for m in 1..80 {
        for n in 1..80 {
            let (m, n) = (m as f64 * PI, n as f64 * PI);
            let q = 16.0 * force / (m * n * u * v)
                * (m * x).sin()
                * (n * y).sin()
                * (m * u / 2.0).sin()
                * (n * v / 2.0).sin();
            exact += q / (d(0.3) * (m * m + n * n) * (m * m + n * n)) * (m * px).sin() * (n * py).sin();
        }
    }
    let found = answer.field.at(p(px, py)).map_or(0.0, |a| a.deflection);
    close("w at the centre", found, exact, 0.005);
}
