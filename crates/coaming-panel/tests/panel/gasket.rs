//! Lids on gaskets, drawn down by latches.
use crate::common::*;
use coaming_panel::*;

/// A narrow lid one pitch long between two latches at its ends, guided there, on a linear gasket.
fn narrow_lid(beta_s: f64) -> (Panel, f64, f64) {
    let (pitch, width) = (1.0, 0.05);
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, pitch, width), sheet(0.0));
    let k = gasket_stiffness(beta_s, pitch, width);
    let gasket = |y: f64| Gasket {
        line: Line::Path(Path::polyline(&[p(0.0, y), p(pitch, y)])),
        law: Law::Linear { stiffness: k / 2.0 },
        free_height: 0.010,
        closed_gap: 0.007,
        gap_error: Vec::new(),
    };
    // Half of the gasket under each long edge, half of each latch at each corner: the lid cannot tip.
    panel.gaskets = vec![gasket(0.0), gasket(width)];
    let corners = [p(0.0, 0.0), p(pitch, 0.0), p(0.0, width), p(pitch, width)];
    panel.latches = corners.map(|at| Latch { at, action: LatchAction::Height(0.0) }).to_vec();
    // The next spans mirror this one: the ends do not turn.
    panel.line_supports =
        vec![LineSupport::guided(Line::OutlineEdge(1)), LineSupport::guided(Line::OutlineEdge(3))];
    (panel, k, width)
}

/// beta = (k / (4 E I))^(1/4).
fn gasket_stiffness(beta_s: f64, pitch: f64, width: f64) -> f64 {
    let beta = beta_s / pitch;
    4.0 * E * width * T * T * T / 12.0 * beta * beta * beta * beta
}

/// Hetényi, Beams on Elastic Foundation (1946), from the closed form of the infinite beam under equal forces at pitch s: compression between
/// over compression at the latches = 2 (sinh u cos u + cosh u sin u) / (sinh 2u + sin 2u), u = beta s / 2.
#[test]
fn narrow_lid_is_a_beam_on_an_elastic_foundation() {
    for (beta_s, printed) in [(1.0, 0.990), (2.0, 0.852), (3.0, 0.492), (4.0, 0.144)] {
        let u: f64 = beta_s / 2.0;
        let exact = 2.0 * (u.sinh() * u.cos() + u.cosh() * u.sin()) / ((2.0 * u).sinh() + (2.0 * u).sin());
        assert!((exact - printed).abs() < 6e-4, "{exact}");
        let (panel, _, _) = narrow_lid(beta_s);
        let answer = solve(&panel, &Load::default());
        let samples = &answer.gaskets[0].samples;
        let between = samples.iter().find(|s| s.along >= 0.5 - 1e-9).map_or(0.0, |s| s.compression);
        let at = samples[0].compression;
        close("compression at the latch", at, 0.003, 1e-9);
        close(&format!("ratio at beta s = {beta_s}"), between / at, exact, 0.01);
        println!("{:?}", answer.error);
    }
}
