//! How long the panel solver takes, mesh included and nothing kept from run to run: `cargo bench -p coaming-benches --bench panel`.
//!
//! With `-- rectangle`, `-- tapered` or `-- lid` it runs that case alone; with `-- sizes` it prints time and memory from 1 000 to 200 000
//! triangles as CSV instead.

use coaming_benches::{report, time};
use coaming_panel::{
    Beam, Gasket, Joint, JointKind, Latch, LatchAction, Law, Layer, Line, LineSupport, Load, Material,
    Outline, Panel, PanelError, Point, PointSupport, Pressure, Region, Settings, Solver,
};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

fn p(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn polycarbonate() -> Material {
    Material::isotropic(2.4e9, 0.37, 1200.0, 65e-6)
}

/// 600 × 400 × 4 mm of polycarbonate, supported all round.
fn rectangle() -> Panel {
    let outline = Outline::rectangle(0.0, 0.0, 0.6, 0.4);
    let mut panel = Panel::new(outline, Layer::whole(0.004, polycarbonate()));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    panel
}

/// Deflection of the middle of the rectangle by the Navier series.
fn navier(q: f64) -> f64 {
    let d = 2.4e9 * 0.004_f64 * 0.004 * 0.004 / (12.0 * (1.0 - 0.37 * 0.37));
    let (a, b, pi) = (0.6_f64, 0.4_f64, std::f64::consts::PI);
    let mut sum = 0.0;
    for m in (1..400).step_by(2) {
        for n in (1..400).step_by(2) {
            let (m2, n2) = (f64::from(m * m) / (a * a), f64::from(n * n) / (b * b));
            let sign = if (m + n) / 2 % 2 == 1 { 1.0 } else { -1.0 };
            sum += sign / (f64::from(m * n) * (m2 + n2) * (m2 + n2));
        }
    }
    16.0 * q * sum / (d * pi * pi * pi * pi * pi * pi)
}

/// A tapered panel with a cut-out on ten points.
fn tapered() -> Panel {
    let outline = Outline::polygon(&[p(0.0, 0.0), p(0.6, 0.0), p(0.5, 0.4), p(0.1, 0.4)]);
    let mut panel = Panel::new(outline, Layer::whole(0.004, polycarbonate()));
    panel.holes = vec![Outline::rectangle(0.22, 0.14, 0.16, 0.12)];
    let places = [
        (0.02, 0.02),
        (0.2, 0.02),
        (0.4, 0.02),
        (0.58, 0.02),
        (0.525, 0.2),
        (0.48, 0.38),
        (0.36, 0.38),
        (0.24, 0.38),
        (0.12, 0.38),
        (0.075, 0.2),
    ];
    panel.point_supports = places.map(|(x, y)| PointSupport::held(p(x, y))).to_vec();
    panel
}

/// Its largest deflection and six frequencies by another element on a finer mesh: the column `fine`.
fn tapered_reference() -> Result<Vec<f64>, Box<dyn Error>> {
    include_str!("../crates/coaming-panel/tests/reference/tapered.csv")
        .lines()
        .skip(1)
        .map(|line| Ok(line.split(',').nth(3).ok_or("the column `fine` is missing")?.parse()?))
        .collect()
}

fn centred(width: f64, height: f64, radius: f64) -> Outline {
    let (x, y) = (-0.5 * width, -0.5 * height);
    if radius > 0.0 {
        Outline::rounded_rectangle(x, y, width, height, radius)
    } else {
        Outline::rectangle(x, y, width, height)
    }
}

/// The flanged lid of the revised cover in `examples/covers`, every layer as one piece with the sheet or the sheet alone.
fn lid(one_piece: bool) -> Panel {
    let sheet = Material::isotropic(70.3e9, 0.33, 2680.0, 23.6e-6);
    let (thickness, depth) = (0.0025, 0.0225);
    let mut panel = Panel::new(centred(0.58, 0.44, 0.0), Layer::whole(thickness, sheet));
    let aperture = centred(0.244, 0.164, 0.02);
    if one_piece {
        let on = |outline: Outline, holes: Vec<Outline>| Some(Region { outline, holes });
        panel.layers[0].region = on(panel.outline.clone(), vec![aperture]);
        for (region, lower_face, thickness, material) in [
            (on(centred(0.3, 0.22, 0.01), vec![]), -0.005, 0.005, polycarbonate()),
            (
                on(centred(0.32, 0.24, 0.0), vec![centred(0.26, 0.18, 0.0)]),
                -0.017,
                0.012,
                Material::isotropic(1.7e9, 0.39, 1010.0, 100e-6),
            ),
            (
                on(Outline::rectangle(-0.24, -0.17, 0.48, 0.04), vec![]),
                -0.001,
                0.001,
                Material::isotropic(50e9, 0.3, 1500.0, 3e-6),
            ),
        ] {
            panel.layers.push(Layer { region, lower_face, thickness, material });
            let upper = panel.layers.len() - 1;
            panel.joints.push(Joint { lower: upper, upper: 0, kind: JointKind::Bonded });
        }
    } else {
        panel.holes = vec![aperture];
    }
    for edge in 0..4 {
        panel.beams.push(Beam {
            line: Line::OutlineEdge(edge),
            layer: 0,
            youngs_modulus: 70.3e9,
            shear_modulus: 26.4e9,
            area: depth * thickness,
            second_moment_of_area: thickness * depth * depth * depth / 12.0,
            torsion_constant: depth * thickness * thickness * thickness / 3.0,
            centroid_height: -0.5 * depth,
            density: 2680.0,
        });
    }
    // 24 kPa at 25 % on 12 mm, growing as c / (1 - c).
    let law = (0..=14).map(f64::from).map(|i| 0.05 * i);
    panel.gaskets = vec![Gasket {
        line: Line::Path(centred(0.54, 0.40, 0.04).0),
        law: Law::Points(law.map(|c| (0.01 * c, 12e-3 * 24e3 * 3.0 * c / (1.0 - c))).collect()),
        free_height: 0.010,
        closed_gap: 0.007,
        gap_error: Vec::new(),
    }];
    let latches = [(-0.18, 0.2), (0.18, 0.2), (-0.18, -0.2), (0.18, -0.2), (0.27, 0.0), (-0.27, 0.0)];
    panel.latches = latches.map(|(x, y)| Latch { at: p(x, y), action: LatchAction::Height(0.0) }).to_vec();
    panel
}

fn lid_loads() -> Vec<Load> {
    let hand = Pressure {
        region: Some(Outline::rectangle(-0.05, 0.09, 0.1, 0.1)),
        ..Pressure::uniform(-500.0 / 0.01)
    };
    vec![
        Load::default(),
        Load::uniform_pressure(-1000.0),
        Load::uniform_pressure(1000.0),
        Load { pressures: vec![hand], ..Load::default() },
        Load { normal_acceleration: 29.42, ..Load::default() },
        Load { normal_acceleration: -29.42, ..Load::default() },
    ]
}

fn solver(panel: &Panel, tolerance: f64) -> Result<Solver, PanelError> {
    Solver::new(panel, Settings { tolerance, ..Settings::default() })
}

fn main() -> Result<(), Box<dyn Error>> {
    let asked: Vec<String> =
        std::env::args().skip(1).filter(|argument| !argument.starts_with("--")).collect();
    if asked.iter().any(|argument| argument == "sizes") {
        return sizes();
    }
    type Case = fn() -> Result<(), Box<dyn Error>>;
    for (name, case) in [("rectangle", flat as Case), ("tapered", cut), ("lid", lids)] {
        if asked.is_empty() || asked.iter().any(|argument| argument == name) {
            case()?;
        }
    }
    Ok(())
}

const Q: f64 = 1000.0;
const HALF_PER_CENT: f64 = 0.005;

fn flat() -> Result<(), Box<dyn Error>> {
    let (panel, load) = (rectangle(), Load::uniform_pressure(Q));
    let answer = solver(&panel, HALF_PER_CENT)?.solve(&load)?;
    let off = answer.largest_deflection.value / navier(Q) - 1.0;
    println!(
        "rectangle: {} triangles, off by {:.3} % of the Navier series",
        answer.error.triangles,
        100.0 * off
    );
    report(
        "rectangle, static at 0.5 %",
        time(|| {
            let _ = black_box(solver(&panel, HALF_PER_CENT).and_then(|mut s| s.solve(&load)));
        }),
        1.0,
    );
    Ok(())
}

fn cut() -> Result<(), Box<dyn Error>> {
    let (panel, load) = (tapered(), Load::uniform_pressure(Q));
    let reference = tapered_reference()?;
    let solved = solver(&panel, HALF_PER_CENT)
        .and_then(|mut s| s.solve(&load).and_then(|a| s.modes(&load, 6).map(|m| (a, m))))?;
    let found =
        std::iter::once(solved.0.largest_deflection.value).chain(solved.1.iter().map(|m| m.frequency));
    let off: Vec<f64> = found.zip(&reference).map(|(found, exact)| (found / exact - 1.0).abs()).collect();
    println!(
        "tapered: {} triangles, deflection off by {:.3} %, modes by at most {:.3} % of tests/reference/tapered.csv",
        solved.0.error.triangles,
        100.0 * off[0],
        100.0 * off[1..].iter().fold(0.0_f64, |a, b| a.max(*b))
    );
    report(
        "tapered on ten points, static and six modes at 0.5 %",
        time(|| {
            let solved = solver(&panel, HALF_PER_CENT)
                .and_then(|mut s| s.solve(&load).and_then(|a| s.modes(&load, 6).map(|m| (a, m))));
            let _ = black_box(solved);
        }),
        1.0,
    );
    Ok(())
}

fn lids() -> Result<(), Box<dyn Error>> {
    for tolerance in [0.05, 0.02, 0.005] {
        for (name, one_piece) in [("one piece", true), ("sheet alone", false)] {
            let (panel, loads) = (lid(one_piece), lid_loads());
            let start = Instant::now();
            let answers = solver(&panel, tolerance)?.solve_all(&loads)?;
            let seconds = start.elapsed().as_secs_f64();
            let triangles: Vec<usize> = answers.iter().map(|a| a.error.triangles).collect();
            println!("lid, {name}, six loads at {tolerance}: {seconds:.2} s once, triangles {triangles:?}");
        }
    }
    Ok(())
}

/// Largest memory in use so far, MiB, where the system tells.
fn peak() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kibibytes = line.and_then(|rest| rest.trim().trim_end_matches("kB").trim().parse::<f64>().ok());
    kibibytes.unwrap_or(f64::NAN) / 1024.0
}

/// Time of one solution on one first mesh, and of all meshes of a refined one, against its triangles; with the largest memory so far.
fn sizes() -> Result<(), Box<dyn Error>> {
    println!("triangles,seconds_mesh,seconds_solution,peak_mebibytes");
    for first in [1_000, 2_000, 5_000, 10_000, 20_000] {
        let settings = Settings { first_triangles: first, most_triangles: 64, ..Settings::default() };
        let start = Instant::now();
        let mut solver = Solver::new(&rectangle(), settings)?;
        let meshed = start.elapsed().as_secs_f64();
        let answer = solver.solve(&Load::uniform_pressure(1000.0))?;
        let solved = start.elapsed().as_secs_f64() - meshed;
        println!("{},{meshed:.4},{solved:.4},{:.0}", answer.error.triangles, peak());
    }
    for most in [60_000, 150_000, 300_000] {
        let settings = Settings { tolerance: 1e-9, most_triangles: most, ..Settings::default() };
        let start = Instant::now();
        let mut solver = Solver::new(&rectangle(), settings)?;
        let answer = solver.solve(&Load::uniform_pressure(1000.0))?;
        let all = start.elapsed().as_secs_f64();
        println!("{},,{all:.4},{:.0}", answer.error.triangles, peak());
    }
    Ok(())
}
