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

/// A beam on a foundation that only pushes, by finite differences and an active set: half a pitch between guided ends, drawn to zero at x = 0.
/// Independent of the solver: central differences of E I w'''' = -k max(w - c, 0) ... solved for the deflection at the middle.
fn unilateral_beam(stiffness: f64, k: f64, half: f64, drawn: f64) -> f64 {
    // Unknown rise w above the latch height; compression = drawn - w where positive. n cells, ghost points by symmetry at both ends.
    let n = 400;
    let h = half / n as f64;
    let mut active = vec![true; n + 1];
    let mut w = vec![0.0; n + 1];
    for _ in 0..60 {
        // Band matrix solved by Gaussian elimination on five diagonals.
        let mut a = vec![[0.0_f64; 5]; n + 1];
        let mut b = vec![0.0; n + 1];
        for i in 0..=n {
            for (offset, factor) in [(-2_i64, 1.0), (-1, -4.0), (0, 6.0), (1, -4.0), (2, 1.0)] {
                let mut j = i as i64 + offset;
                if j < 0 {
                    j = -j;
                }
                if j > n as i64 {
                    j = 2 * n as i64 - j;
                }
                a[i][(j - i as i64 + 2) as usize] += factor * stiffness / (h * h * h * h);
            }
            if active[i] {
                a[i][2] += k;
                b[i] = k * drawn;
            }
        }
        a[0] = [0.0, 0.0, 1.0, 0.0, 0.0];
        b[0] = 0.0;
        for i in 0..n {
            for below in 1..=2 {
                if i + below > n {
                    continue;
                }
                let factor = a[i + below][2 - below] / a[i][2];
                for c in 0..=2 {
                    if c + 2 >= below && c + 2 - below < 5 {
                        let value = a[i][c + 2];
                        a[i + below][c + 2 - below] -= factor * value;
                    }
                }
                b[i + below] -= factor * b[i];
            }
        }
        for i in (0..=n).rev() {
            let mut sum = b[i];
            for c in 1..=2 {
                if i + c <= n {
                    sum -= a[i][2 + c] * w[i + c];
                }
            }
            w[i] = sum / a[i][2];
        }
        let next: Vec<bool> = w.iter().map(|&w| w < drawn).collect();
        if next == active {
            break;
        }
        active = next;
    }
    w[n]
}

/// Past beta s = 4.73 the lid lifts off between latches.
#[test]
fn narrow_lid_lifts_off() {
    for beta_s in [4.0, 5.5, 7.0] {
        let (panel, k, width) = narrow_lid(beta_s);
        let answer = solve(&panel, &Load::default());
        let between =
            answer.gaskets[0].samples.iter().find(|s| s.along >= 0.5 - 1e-9).map_or(0.0, |s| s.compression);
        let exact = 0.003 - unilateral_beam(E * width * T * T * T / 12.0, k, 0.5, 0.003);
        println!(
            "beta s = {beta_s}: {between:.6e} against {exact:.6e}, open {} m",
            answer.gaskets[0].open_length
        );
        assert!((between - exact).abs() < 0.005 * 0.003);
        assert_eq!(answer.gaskets[0].open_length > 0.0, beta_s > 4.73);
        assert_eq!(between < 0.0, beta_s > 4.73);
    }
}

/// A stiff lid on a gasket all round: everything is known by hand.
fn stiff_lid() -> Panel {
    let mut panel =
        Panel::new(Outline::rectangle(0.0, 0.0, 0.4, 0.3), Layer::whole(0.05, sheet(0.3).material));
    panel.gaskets = vec![Gasket {
        line: Line::Outline,
        law: Law::Points(vec![(0.0, 0.0), (0.001, 100.0), (0.002, 200.0), (0.004, 400.0)]),
        free_height: 0.010,
        closed_gap: 0.007,
        gap_error: Vec::new(),
    }];
    let corners = [p(0.05, 0.05), p(0.35, 0.05), p(0.35, 0.25), p(0.05, 0.25)];
    panel.latches = corners.map(|at| Latch { at, action: LatchAction::Height(0.0) }).to_vec();
    panel
}

/// Force 300 N/m on 1.4 m of gasket at 3 mm compression: 420 N over four latches; 105 N each. By hand.
#[test]
fn latches_of_a_stiff_lid() {
    let panel = stiff_lid();
    let answer = solve(&panel, &Load::default());
    close("gasket", answer.gaskets[0].force, 420.0, 2e-3);
    for latch in &answer.latches {
        close("latch", latch.pull, 105.0, 2e-3);
    }
    // Spring latches: pull = stiffness (draw + w) = gasket force / 4, with 100 N per mm and m: 4 k (w + draw) = 1.4e5 (0.003 - w).
    let mut sprung = panel.clone();
    for latch in &mut sprung.latches {
        latch.action = LatchAction::Spring { stiffness: 50_000.0, draw: 0.002 };
    }
    let w = (1.4e5 * 0.003 - 200_000.0 * 0.002) / (200_000.0 + 1.4e5);
    let answer = solve(&sprung, &Load::default());
    close("sprung latch", answer.latches[0].pull, 50_000.0 * (0.002 + w), 2e-3);
    let opening = solver(&sprung).opening(&Load::default()).unwrap_or_else(|e| panic!("{e}"));
    // Free: the gasket has one thousandth of its push left, so w is just short of 3 mm; the draw of 2 mm comes on top.
    close("travel of spring latches", opening.travel, 0.005, 2e-3);
    let opening = solver(&panel).opening(&Load::default()).unwrap_or_else(|e| panic!("{e}"));
    close("travel", opening.travel, 0.003, 2e-3);
    // Pressure inward of 1 kPa adds 120 N to the gasket, which the latches at a height do not feel: they would have to push less.
    let load = Load::uniform_pressure(-1000.0);
    let answer = solve(&panel, &load);
    let sum: f64 = answer.latches.iter().map(|l| l.pull).sum();
    close("latches under pressure", sum, 300.0, 3e-3);
    // Enough pressure and the latches let go: 420 N / 0.12 m2 = 3.5 kPa; beyond, the gasket carries all.
    let answer = solve(&panel, &Load::uniform_pressure(-7000.0));
    assert!(answer.latches.iter().all(|l| l.pull == 0.0));
    close("all on the gasket", answer.gaskets[0].force, 840.0, 1e-6);
    assert!(answer.gaskets[0].beyond_law);
}

/// One latch missing on a stiff lid: force and moments about both axes leave three unknowns for three latches; by hand the lid stays a
/// plane, and the missing corner rises.
#[test]
fn one_latch_missing() {
    let panel = stiff_lid();
    let load = Load { missing_latches: vec![2], ..Load::default() };
    let answer = solve(&panel, &load);
    assert_eq!(answer.latches[2].pull, 0.0);
    // Plane w = s ((x - 0.05) / 0.3 + (y - 0.05) / 0.2 - 1) above the line through latches 1 and 3; latch 0 lets go or pulls.
    // With all three pulling the plane is w = 0 and the missing corner stays: the moments are carried by latches 1 and 3 alone, 210 N each.
    close("latch 1", answer.latches[1].pull, 210.0, 5e-3);
    close("latch 3", answer.latches[3].pull, 210.0, 5e-3);
    assert!(answer.latches[0].pull < 2.0, "{:?}", answer.latches);
}

/// A stop under each latch of a stiff lid drawn by a known force: stop + gasket = latch. By hand.
#[test]
fn stops_carry_what_the_gasket_leaves() {
    let mut panel = stiff_lid();
    let at: Vec<Point> = panel.latches.iter().map(|l| l.at).collect();
    for latch in &mut panel.latches {
        latch.action = LatchAction::Force(200.0);
    }
    panel.stops = at.iter().map(|&at| Stop { at, height: 0.0, stiffness: 1e8 }).collect();
    let answer = solve(&panel, &Load::default());
    for stop in &answer.stops {
        close("stop", *stop, 95.0, 3e-3);
    }
}

/// An error of the gap along the path changes the compression by just that; a stiff lid on heights.
#[test]
fn gap_error_along_the_path() {
    let mut panel = stiff_lid();
    panel.gaskets[0].gap_error = vec![(0.0, 0.0), (0.2, 0.001), (0.4, 0.0)];
    let answer = solve(&panel, &Load::default());
    let smallest = answer.gaskets[0].smallest;
    assert!(
        (smallest.value - 0.002).abs() < 2e-5 && smallest.at.distance(p(0.2, 0.0)) < 1e-9,
        "{smallest:?}"
    );
}
