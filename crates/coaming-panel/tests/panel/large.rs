//! Large deflections against series, an independent Ritz solution and limits.
use crate::common::*;
use coaming_panel::*;

/// How the edges are held in the plane.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Plane {
    Held,
    Straight,
    Free,
}

fn plate(outline: Outline, clamped: bool, plane: Plane, nu: f64) -> Panel {
    let mut panel = Panel::new(outline, sheet(nu));
    let edge =
        if clamped { LineSupport::clamped(Line::Outline) } else { LineSupport::supported(Line::Outline) };
    panel.line_supports = vec![match plane {
        Plane::Held => edge.held_in_plane(),
        Plane::Straight => edge.straight_in_plane(),
        Plane::Free => edge,
    }];
    panel
}

fn square(clamped: bool, plane: Plane, nu: f64) -> Panel {
    plate(Outline::rectangle(0.0, 0.0, 1.0, 1.0), clamped, plane, nu)
}

fn large(panel: &Panel, load: &Load) -> Answer {
    let answer = solver(panel).solve_large(load).unwrap_or_else(|e| panic!("{e}"));
    println!("{:?}, {} steps, {:?}", answer.error, answer.newton_steps, answer.balance);
    assert!(answer.error.met, "{:?}", answer.error);
    assert!(answer.balance.force < 1e-8 && answer.balance.in_plane < 1e-8, "{:?}", answer.balance);
    answer
}

/// Pressure for p a^4 / (E t^4).
fn pressure(p: f64) -> Load {
    Load::uniform_pressure(p * E * T * T * T * T)
}

/// tests/independent/panel_large.py: Ritz in u, v and w, two sizes of the series alike to the digits given. (p a^4 / (E t^4), w / t.)
#[test]
fn squares_against_ritz() {
    for (clamped, plane, cases) in [
        (false, Plane::Held, [(10.0, 0.370_67), (200.0, 1.640_56)]),
        (false, Plane::Straight, [(10.0, 0.417_11), (200.0, 2.521_3)]),
        (false, Plane::Free, [(10.0, 0.428_96), (50.0, 1.560_9)]),
        (true, Plane::Held, [(20.0, 0.266_37), (400.0, 1.863_2)]),
        (true, Plane::Free, [(100.0, 1.146_9), (400.0, 2.776_3)]),
    ] {
        let panel = square(clamped, plane, 0.3);
        let mut solver = solver(&panel);
        for (p, exact) in cases {
            let answer = solver.solve_large(&pressure(p)).unwrap_or_else(|e| panic!("{e}"));
            println!("{:?} {} steps", answer.error, answer.newton_steps);
            let found = answer.largest_deflection.value / T;
            close(&format!("clamped {clamped}, {plane:?}, p {p}"), found, exact, 0.005);
        }
    }
}

/// Levy, Bending of Rectangular Plates with Large Deflections, NACA TN 846 / Report 737 (1942), supported, edges straight, nu = 0.316, and
/// NACA TN 847 / Report 740 (1942), clamped, held: printed digits from memory, confirmed by the Ritz solution of panel_large.py
/// (0.4887, 1.8691; 0.4687, 1.1056) to 1 % and 1.4 %.
#[test]
fn squares_against_levy() {
    for (clamped, plane, cases, within) in [
        (false, Plane::Straight, [(12.1, 0.486), (99.4, 1.870)], 0.01),
        (true, Plane::Held, [(38.3, 0.471), (95.0, 0.912)], 0.015),
    ] {
        let panel = square(clamped, plane, 0.316);
        let mut solver = solver(&panel);
        for (p, printed) in cases {
            let answer = solver.solve_large(&pressure(p)).unwrap_or_else(|e| panic!("{e}"));
            close(&format!("{plane:?}, p {p}"), answer.largest_deflection.value / T, printed, within);
        }
    }
}

/// The same script: 1 by 1.5, supported and held: w / t = 1.18388, membrane force in the middle 4.010 E t^3 / a^2.
#[test]
fn rectangle_against_ritz() {
    let panel = plate(Outline::rectangle(0.0, 0.0, 1.0, 1.5), false, Plane::Held, 0.3);
    let answer = large(&panel, &pressure(50.0));
    close("deflection", answer.largest_deflection.value / T, 1.183_9, 0.005);
    let middle = answer.field.at(p(0.5, 0.75)).map_or([0.0; 3], |m| m.membrane_force);
    close("membrane force", middle[0] / (E * T * T * T), 4.010, 0.005);
}

/// The same script: clamped circles of radius 1 by a boundary value problem (the theory of Way, Trans. ASME 56 (1934) 627-636), held and
/// free in the plane; membrane force at the middle over E t^3 / a^2.
#[test]
fn circles() {
    for (plane, p_over, exact, force) in
        [(Plane::Held, 6.0, 0.770_24, 0.571_1), (Plane::Free, 15.0, 1.703_27, 1.261_4)]
    {
        let panel = plate(Outline::circle(0.0, 0.0, 1.0), true, plane, 0.3);
        let answer = large(&panel, &pressure(p_over));
        close(&format!("{plane:?}"), answer.largest_deflection.value / T, exact, 0.005);
        let middle = answer.field.at(p(0.0, 0.0)).map_or([0.0; 3], |m| m.membrane_force);
        close("membrane force", middle[0] / (E * T * T * T), force, 0.01);
    }
}

/// A heated supported square, held in its plane, is flat below its critical temperature and bows past it; Ritz (as above): w / t at three
/// times the critical rise 1.2058, at eight times 2.1747, at 1.5 times 0.61155. The critical rise: 2 pi^2 D (1 - nu) / (E alpha t a^2) by hand.
#[test]
fn heated_plate_bows() {
    let nu = 0.3;
    let critical = 2.0 * std::f64::consts::PI * std::f64::consts::PI * d(nu) * (1.0 - nu) / (E * 23e-6 * T);
    let warm = |times: f64| Load {
        temperatures: vec![LayerTemperature { layer: 0, rise: times * critical, difference: 0.0 }],
        ..Load::default()
    };
    let panel = square(false, Plane::Held, nu);
    let flat = solver(&panel).solve_large(&warm(0.9)).unwrap_or_else(|e| panic!("{e}"));
    assert!(flat.largest_deflection.value.abs() < 1e-9 * T, "{:?}", flat.largest_deflection);
    let middle = flat.field.at(p(0.4, 0.6)).map_or([0.0; 3], |m| m.membrane_force);
    close("flat", middle[0], -0.9 * critical * E * 23e-6 * T / (1.0 - nu), 1e-6);
    for (times, exact) in [(1.5, 0.611_55), (3.0, 1.205_80), (8.0, 2.174_7)] {
        let answer = large(&panel, &warm(times));
        close(&format!("{times} times"), answer.largest_deflection.value / T, exact, 0.005);
        // A small pressure inward chooses the other way.
        let mut pushed = warm(times);
        pushed.pressures.push(Pressure::uniform(-1e-4 * E * T * T * T * T));
        let inward = large(&panel, &pushed);
        close("inward", -inward.largest_deflection.value / T, exact, 0.005);
    }
}

/// Under a small load the answer is that of linear theory, on the same mesh to 1e-6.
#[test]
fn small_loads_are_linear() {
    let panel = square(false, Plane::Held, 0.3);
    // No finer mesh is allowed: both stay on the first.
    let settings = Settings { first_triangles: 300, most_triangles: 300, ..Settings::default() };
    let load = pressure(1e-3);
    let both = Solver::new(&panel, settings)
        .and_then(|mut s| Ok((s.solve(&load)?, s.solve_large(&load)?)))
        .unwrap_or_else(|e| panic!("{e}"));
    close("small", both.1.largest_deflection.value, both.0.largest_deflection.value, 1e-6);
}

/// The estimates are never below the true error by more than a factor 3, for true errors above 1e-4 and three times what the series itself
/// may be off: of the deflection at eleven points, and of the moment and the force in the plane at their largest and where they are nearly
/// so, each over its largest. Above it by more than 10 are at most one in ten of all, and of the deflections one in six: the second mesh of
/// a coarse ladder is better than the two can tell. Series: `tests/reference/large.csv`, by panel_large_field.py.
#[test]
fn estimates_are_honest() {
    let mut tally = [("deflection", 0, 0), ("moment", 0, 0), ("membrane force", 0, 0)];
    for case in cases() {
        let (mut panel, load) = (case.panel(), case.load());
        let place = |at: Point| p(0.5 * (1.0 + at.x), 0.5 * case.ratio * (1.0 + at.y));
        panel.marks = case.deflections.iter().map(|(at, ..)| place(*at)).collect();
        for first in [24, 90] {
            for tolerance in [0.1, 0.006] {
                let settings = Settings { tolerance, first_triangles: first, ..Settings::default() };
                let answer = Solver::new(&panel, settings)
                    .and_then(|mut s| s.solve_large(&load))
                    .unwrap_or_else(|e| panic!("{e}"));
                let at = |at: Point| answer.field.at(place(at));
                // In units of the series: h = T here, a = 1.
                let larger = |[xx, yy, xy]: [f64; 3]| {
                    let (mean, half) = (0.5 * (xx + yy), 0.5 * (xx - yy));
                    (mean.abs() + (half * half + xy * xy).sqrt()) / (E * T * T * T)
                };
                let deflection = missed(&case.deflections, None, &|q| at(q).map(|m| m.deflection / T));
                let largest = answer.largest_moment.value.abs() / (E * T * T * T * T);
                let moment = missed(&case.moments, Some((largest, case.largest[0])), &|q| {
                    at(q).map(|m| larger(m.moment) / T)
                });
                let largest = answer.largest_membrane_force.value.abs() / (E * T * T * T);
                let force = missed(&case.forces, Some((largest, case.largest[1])), &|q| {
                    at(q).map(|m| larger(m.membrane_force))
                });
                let error = &answer.error;
                let compared =
                    [(deflection, error.deflection), (moment, error.moment), (force, error.membrane_force)];
                for (((made, off), estimate), (what, counted, above)) in compared.into_iter().zip(&mut tally)
                {
                    if made < (3.0 * off).max(1e-4) {
                        continue;
                    }
                    println!(
                        "{} {first} {tolerance} {what}: true {made:.2e}, estimate {estimate:.2e}, ratio {:.2}, {} triangles",
                        case.name,
                        estimate / made,
                        error.triangles
                    );
                    *counted += 1;
                    *above += usize::from(estimate > 10.0 * made);
                    assert!(estimate > made / 3.0, "{}, {what}: {estimate} {made}", case.name);
                }
            }
        }
    }
    for (what, counted, above) in tally {
        println!("{what}: {above} of {counted} above by ten");
        let most = if what == "deflection" { counted / 6 } else { counted / 10 };
        assert!(above <= most && counted >= 30, "{what}: {above} of {counted}");
    }
    let (counted, above) = tally.iter().fold((0, 0), |sum, (_, c, a)| (sum.0 + c, sum.1 + a));
    assert!(10 * above <= counted, "{above} of {counted}");
}

/// The largest error at some places and of the largest value (found, true), over the largest, and how far the series may be off.
fn missed(
    places: &[(Point, f64, f64)],
    largest: Option<(f64, f64)>,
    found: &dyn Fn(Point) -> Option<f64>,
) -> (f64, f64) {
    let top = places.iter().map(|d| d.1).chain(largest.map(|l| l.1)).fold(0.0_f64, f64::max);
    let off = places.iter().fold(0.0_f64, |a, d| a.max(d.2)) / top;
    let at_places = places.iter().map(|(at, value, _)| (found(*at).unwrap_or(f64::NAN) - value).abs() / top);
    (at_places.chain(largest.map(|(found, exact)| (found / exact - 1.0).abs())).fold(0.0, f64::max), off)
}

/// One case of the series.
#[derive(Debug)]
struct Case {
    name: String,
    clamped: bool,
    plane: Plane,
    ratio: f64,
    heated: bool,
    load: f64,
    /// Place in fractions of half the sides, value, and how far it may be off.
    deflections: Vec<(Point, f64, f64)>,
    moments: Vec<(Point, f64, f64)>,
    forces: Vec<(Point, f64, f64)>,
    /// The largest moment and force in the plane, at whatever place.
    largest: [f64; 2],
}

impl Case {
    fn panel(&self) -> Panel {
        plate(Outline::rectangle(0.0, 0.0, 1.0, self.ratio), self.clamped, self.plane, 0.3)
    }

    /// A pressure, or a temperature in multiples of the critical one of the supported square (as in `heated_plate_bows`).
    fn load(&self) -> Load {
        if !self.heated {
            return pressure(self.load);
        }
        let critical = 2.0 * std::f64::consts::PI * std::f64::consts::PI * d(0.3) * 0.7 / (E * 23e-6 * T);
        let rise = self.load * critical;
        Load { temperatures: vec![LayerTemperature { layer: 0, rise, difference: 0.0 }], ..Load::default() }
    }
}

fn cases() -> Vec<Case> {
    let mut cases: Vec<Case> = Vec::new();
    for line in include_str!("../reference/large.csv").lines().skip(1) {
        let (name, row) =
            line.rsplitn(4, ',').nth(3).map_or(("", line), |name| (name, &line[name.len() + 1..]));
        let row: Vec<&str> = row.split(',').collect();
        let number = |text: &str| text.parse::<f64>().unwrap_or(f64::NAN);
        let value = (number(row[2]), (number(row[2]) - number(row[1])).abs());
        if cases.last().is_none_or(|c| c.name != name) {
            let words: Vec<&str> = name.split(',').collect();
            let plane = match words[2] {
                "held" => Plane::Held,
                "straight" => Plane::Straight,
                _ => Plane::Free,
            };
            cases.push(Case {
                name: name.to_owned(),
                clamped: words[1] == "clamped",
                plane,
                ratio: number(words[3]),
                heated: words[0] == "heated",
                load: number(words[4]),
                deflections: Vec::new(),
                largest: [f64::NAN; 2],
                moments: Vec::new(),
                forces: Vec::new(),
            });
        }
        let Some(case) = cases.last_mut() else { continue };
        let mut words = row[0].split(' ');
        let list = match words.next() {
            Some("w") => &mut case.deflections,
            Some("m") => &mut case.moments,
            Some("f") => &mut case.forces,
            Some(largest) => {
                case.largest[usize::from(largest == "force")] = value.0;
                continue;
            }
            None => continue,
        };
        let at: Vec<f64> = words.map(number).collect();
        list.push((p(at[0], at[1]), value.0, value.1));
    }
    assert_eq!(cases.len(), 10);
    cases
}

/// A sheet so thin that it only stretches: a round membrane clamped and held, w = 0.653 (q a / (E t))^(1/3) a for nu = 0.3 (Hencky 1915;
/// digits by the power series solved anew by Fichter, NASA TP-3658 (1997): 0.6526 at nu = 0.3; from memory).
#[test]
fn membrane_limit() {
    let panel = plate(Outline::circle(0.0, 0.0, 1.0), false, Plane::Held, 0.3);
    let p_over = 1e6;
    let answer = large(&panel, &pressure(p_over));
    let exact = 0.653 * (p_over * T * T * T).cbrt();
    close("membrane", answer.largest_deflection.value, exact, 0.015);
}

/// The drawing's turning does not matter; an unsymmetric plate with a free edge and a corner held.
#[test]
fn turning() {
    let corners = [p(0.0, 0.0), p(1.0, 0.0), p(1.1, 0.7), p(0.1, 0.8)];
    let solved = |angle: f64| {
        let (c, s) = (angle.cos(), angle.sin());
        let turned = corners.map(|q| p(c * q.x - s * q.y + 3.0, s * q.x + c * q.y - 2.0));
        let mut panel = Panel::new(Outline::polygon(&turned), sheet(0.3));
        panel.line_supports = vec![
            LineSupport::clamped(Line::OutlineEdge(3)).held_in_plane(),
            LineSupport::supported(Line::OutlineEdge(1)).straight_in_plane(),
        ];
        panel.point_supports = vec![PointSupport::held(turned[1]).held_in_plane()];
        large(&panel, &pressure(30.0)).largest_deflection.value
    };
    close("turned", solved(0.7), solved(0.0), 0.005);
}

/// A strip between two supports that do not give: cylindrical bending, the force from the stretch (Timoshenko and Woinowsky-Krieger,
/// arts. 1 to 3: supported edges). With u^2 = S l^2 / (4 D) the two equations are solved here by bisection; w from eq. (7) there.
#[test]
fn long_plate_between_rigid_supports() {
    let (l, nu) = (0.5_f64, 0.3);
    let q = 60.0 * E * T * T * T * T / (l * l * l * l);
    let stiff = d(nu);
    let stretch = E * T / (1.0 - nu * nu);
    // Extension by the force S and by the slopes of w under q with S: found by integrating the exact deflection's slope.
    let slope = |s: f64, x: f64| {
        let k = (s / stiff).sqrt();
        let a = k * l / 2.0;
        let z = x - l / 2.0;
        -q * z / s + q / (s * k) * (k * z).sinh() / a.cosh()
    };
    let excess = |s: f64| {
        let n = 2000;
        let sum: f64 = (0..n).map(|i| slope(s, l * (i as f64 + 0.5) / n as f64)).map(|v| 0.5 * v * v).sum();
        sum * l / n as f64 - s * l / stretch
    };
    let (mut low, mut high) = (1e-3 * stiff / (l * l), 1e4 * stiff / (l * l));
    for _ in 0..200 {
        let mid = 0.5 * (low + high);
        if excess(mid) > 0.0 { low = mid } else { high = mid }
    }
    let s = 0.5 * (low + high);
    let n = 4000;
    let w: f64 = (0..n).map(|i| slope(s, l / 2.0 * (i as f64 + 0.5) / n as f64) * l / 2.0 / n as f64).sum();
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, l, 0.1), sheet(nu));
    for edge in [1, 3] {
        panel.line_supports.push(LineSupport::supported(Line::OutlineEdge(edge)).held_in_plane());
    }
    for edge in [0, 2] {
        let mut guided = LineSupport::guided(Line::OutlineEdge(edge));
        guided.in_plane_across = true;
        panel.line_supports.push(guided);
    }
    let answer = large(&panel, &Load::uniform_pressure(q));
    close("deflection", answer.largest_deflection.value, w, 0.005);
    let middle = answer.field.at(p(0.25, 0.05)).map_or([0.0; 3], |m| m.membrane_force);
    close("force", middle[0], s, 0.005);
    close("reaction in the plane", answer.line_reactions[0].in_plane.x, s * 0.1, 0.005);
}

/// A lid that nothing holds in its plane, on a gasket and drawn by latches: contact in the same iteration. Under a small load like linear
/// theory; under a hard draw the forces of latches and gasket balance, and the lid is stiffer than linear theory has it.
#[test]
fn lid_on_a_gasket() {
    let mut panel = Panel::new(
        Outline::rectangle(0.0, 0.0, 0.6, 0.4),
        Layer::whole(0.0008, Material::isotropic(E, 0.3, 2700.0, 0.0)),
    );
    panel.gaskets = vec![Gasket {
        line: Line::Outline,
        law: Law::Points(vec![(0.0, 0.0), (0.002, 400.0), (0.004, 1500.0)]),
        free_height: 0.006,
        closed_gap: 0.0055,
        gap_error: Vec::new(),
    }];
    let draw = 0.002;
    panel.latches = [p(0.02, 0.2), p(0.58, 0.2), p(0.3, 0.02), p(0.3, 0.38)]
        .map(|at| Latch { at, action: LatchAction::Spring { stiffness: 2e5, draw } })
        .to_vec();
    let load = Load::uniform_pressure(-2000.0);
    let mut solver = Solver::new(&panel, Settings { tolerance: 0.01, ..Settings::default() })
        .unwrap_or_else(|e| panic!("{e}"));
    let (linear, large) = solver
        .solve(&load)
        .and_then(|linear| Ok((linear, solver.solve_large(&load)?)))
        .unwrap_or_else(|e| panic!("{e}"));
    let pull: f64 = large.latches.iter().map(|l| l.pull).sum();
    let push: f64 = large.gaskets.iter().map(|g| g.force).sum();
    println!("{:?} {:?} {pull} {push}", linear.largest_deflection, large.largest_deflection);
    close("forces", push, pull + 2000.0 * 0.24, 1e-8);
    assert!(large.largest_deflection.value.abs() < 0.9 * linear.largest_deflection.value.abs());
}

/// A load that no equilibrium carries is a typed error.
#[test]
fn no_equilibrium() {
    let mut panel = square(false, Plane::Held, 0.3);
    panel.line_supports = Vec::new();
    panel.stops =
        [p(0.1, 0.1), p(0.9, 0.1), p(0.5, 0.9)].map(|at| Stop { at, height: 0.0, stiffness: 1e6 }).to_vec();
    let away = solver(&panel).solve_large(&Load::uniform_pressure(100.0));
    assert!(
        matches!(away, Err(PanelError::ContactLost { .. } | PanelError::NotConverged { .. })),
        "{away:?}"
    );
}
