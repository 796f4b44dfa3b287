//! Masses spread over regions, against the same mass in a layer.
use crate::common::*;
use coaming_panel::*;

const GRAVITY: f64 = 9.80665;

fn plate() -> Panel {
    let mut panel = Panel::new(Outline::rectangle(0.0, 0.0, 0.8, 0.6), sheet(0.3));
    panel.line_supports = vec![LineSupport::supported(Line::Outline)];
    panel
}

fn spread(outline: Outline, holes: Vec<Outline>, mass_per_area: f64) -> SpreadMass {
    SpreadMass { region: Region { outline, holes }, mass_per_area }
}

fn first_frequency(panel: &Panel) -> f64 {
    solver(panel).modes(&Load::default(), 1).unwrap()[0].frequency
}

/// All over the plate it is as a denser sheet. By hand: twice the mass rings lower by the root of two.
#[test]
fn all_over_it_is_density() {
    let mut laden = plate();
    laden.spread_masses = vec![spread(Outline::rectangle(-0.1, -0.1, 1.0, 0.8), Vec::new(), 2700.0 * T)];
    close("twice the mass", first_frequency(&plate()) / first_frequency(&laden), 2.0_f64.sqrt(), 1e-9);
}

/// What the supports carry is the weight of what lies on the plate, wherever the triangles are: a frame, half of it beside the plate.
#[test]
fn all_of_the_weight_is_there() {
    let mut laden = plate();
    laden.layers[0].material.density = 0.0;
    let (outer, inner) =
        (Outline::rectangle(0.31, 0.13, 0.98, 0.3), Outline::rectangle(0.37, 0.17, 0.86, 0.22));
    laden.spread_masses = vec![spread(outer, vec![inner], 3.0)];
    let answer = solve(&laden, &Load { normal_acceleration: -GRAVITY, ..Load::default() });
    let carried: f64 = answer.line_reactions.iter().map(|reaction| reaction.force).sum();
    close("weight", carried, 3.0 * GRAVITY * (0.49 * 0.3 - 0.43 * 0.22), 1e-9);
}

/// A patch rings as a limp layer of the same mass whose outline the mesh follows.
#[test]
fn a_patch_rings_as_a_limp_layer() {
    let patch = || Outline::rectangle(0.23, 0.17, 0.3, 0.21);
    let mut meshed = plate();
    let region = Region { outline: patch(), holes: Vec::new() };
    let material = Material::isotropic(1e-6 * E, 0.3, 8000.0, 0.0);
    meshed.layers.push(Layer { region: Some(region), lower_face: T, thickness: T, material });
    let mut laden = plate();
    laden.spread_masses = vec![spread(patch(), Vec::new(), 8000.0 * T)];
    let (found, expected) = (first_frequency(&laden), first_frequency(&meshed));
    assert!(expected < 0.9 * first_frequency(&plate()), "{expected}");
    close("patch", found, expected, 0.01);
}

/// It decides no mesh: another one takes its place on the same solver, and the solver says what of it cannot be.
#[test]
fn it_may_change_and_is_checked() {
    let mut laden = plate();
    let mut solver = solver(&laden);
    laden.spread_masses = vec![spread(Outline::circle(0.4, 0.3, 0.1), Vec::new(), 10.0)];
    solver.update(&laden).unwrap();
    laden.spread_masses[0].mass_per_area = -1.0;
    assert!(matches!(solver.update(&laden), Err(PanelError::Impossible { value, .. }) if value == -1.0));
    laden.spread_masses = vec![spread(
        Outline::polygon(&[p(0.1, 0.1), p(0.5, 0.5), p(0.5, 0.1), p(0.1, 0.5)]),
        Vec::new(),
        1.0,
    )];
    assert!(solver.update(&laden).is_err());
}

/// What cannot be is named with its place.
#[test]
fn what_cannot_be_is_refused() {
    let fault = |mass: SpreadMass| {
        let mut laden = plate();
        laden.spread_masses = vec![spread(Outline::circle(0.4, 0.3, 0.1), Vec::new(), 0.0), mass];
        match Solver::new(&laden, Settings::default()) {
            Ok(_) => panic!("no fault"),
            Err(fault) => (fault.to_string(), fault),
        }
    };
    for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0] {
        let (words, fault) = fault(spread(Outline::circle(0.4, 0.3, 0.1), Vec::new(), wrong));
        assert!(matches!(fault, PanelError::Impossible { .. }), "{words}");
        assert!(words.contains("spread mass 1: mass_per_area"), "{words}");
    }
    let bow_tie = Outline::polygon(&[p(0.1, 0.1), p(0.5, 0.5), p(0.5, 0.1), p(0.1, 0.5)]);
    let at = |found: Point, x: f64, y: f64| found.distance(p(x, y)) < 1e-6;
    let (words, found) = fault(spread(bow_tie, Vec::new(), 1.0));
    assert!(matches!(found, PanelError::Crossing { at: place, .. } if at(place, 0.3, 0.3)), "{words}");
    let frame = Outline::rectangle(0.1, 0.1, 0.5, 0.4);
    let (words, found) = fault(spread(frame.clone(), vec![Outline::rectangle(0.7, 0.1, 0.05, 0.05)], 1.0));
    assert!(matches!(found, PanelError::Outside { .. }) && words.contains("spread mass 1 hole 0"), "{words}");
    let (one, other) = (Outline::rectangle(0.2, 0.2, 0.2, 0.2), Outline::rectangle(0.3, 0.3, 0.2, 0.1));
    let (words, found) = fault(spread(frame.clone(), vec![one.clone(), other], 1.0));
    assert!(matches!(found, PanelError::Crossing { .. }), "{words}");
    let (words, found) = fault(spread(frame, vec![one.clone(), one], 1.0));
    assert!(words.contains("spread mass 1 hole 1"), "{words} {found:?}");
    let (words, _) = fault(spread(Outline::rectangle(0.1, 0.1, f64::NAN, 0.4), Vec::new(), 1.0));
    assert!(words.contains("spread mass 1"), "{words}");
}
