//! Laws, limits and round trips that tie calculations to each other and to what must come out at the ends of their ranges.
//!
//! The seed is fixed, so that a run repeats itself.

use coaming::gasket::GasketSpacing;
use coaming::latch::{HoldOpen, LidSlam};
use coaming::plate::{
    CircularPlate, CircularPlateLargeDeflection, EdgeSupport, EllipticalPlate, InPlaneSupport, Laminate,
    LevyPlate, PlateDirection, PlateEdge, Ply, RectangularPlate,
};
use coaming::prelude::*;
use coaming::sheet::{
    BendDirection, FlatBend, FlatHole, FlatPanel, FlatPlace, FlatPositions, FoldedPanel, SpacePlace,
};
use coaming::thermal::{BowLayer, CriticalRise, LapShear, LayerGrowth, LayeredBow};
use coaming_tests::record;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_seed: RngSeed::Fixed(20_260_102),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

fn near(left: f64, right: f64, room: f64) -> bool {
    (left - right).abs() <= room * left.abs().max(right.abs())
}

/// Every input of the cases, read and written as JSON, calculates to the same outcome, to the bit.
#[test]
fn every_input_survives_being_written() {
    let mut compared = 0;
    for (_, case) in coaming_tests::all() {
        let entry = coaming::entry(&case.calculation).unwrap();
        let Ok(node) = (entry.read)(record(&case.input)) else { continue };
        let text = serde_json::to_string(&node).unwrap();
        if entry.name == "rectangular_plate_modes" || entry.name == "rectangular_plate_large_deflection" {
            // Seconds for each where nothing is optimised: reading alone.
            assert!((entry.read)(node).is_ok());
            continue;
        }
        match ((entry.calculate)(node), (entry.calculate_json)(&text)) {
            (Ok(direct), Ok(written)) => assert_eq!(direct, written, "{} {text}", entry.name),
            (Err(direct), Err(written)) => assert_eq!(direct.name(), written.name(), "{} {text}", entry.name),
            (direct, written) => panic!("{} {text}: {direct:?} and {written:?}", entry.name),
        }
        compared += 1;
    }
    assert!(compared > 900, "{compared}");
}

fn isotropic_ply(e: f64, nu: f64, t: f64, direction: f64) -> Ply {
    Ply {
        direction: si(direction),
        thickness: si(t),
        youngs_modulus_1: si(e),
        youngs_modulus_2: si(e),
        shear_modulus_12: si(e / (2.0 * (1.0 + nu))),
        poisson_ratio_12: nu,
        expansion_1: Some(per_kelvin(23e-6)),
        expansion_2: Some(per_kelvin(23e-6)),
        moisture_strain_1: None,
        moisture_strain_2: None,
    }
}

fn carbon_ply(direction: f64, t: f64) -> Ply {
    Ply {
        youngs_modulus_1: gigapascal(135.0),
        youngs_modulus_2: gigapascal(9.0),
        shear_modulus_12: gigapascal(5.0),
        poisson_ratio_12: 0.3,
        expansion_1: Some(per_kelvin(-0.5e-6)),
        expansion_2: Some(per_kelvin(28e-6)),
        ..isotropic_ply(1e9, 0.3, t, direction)
    }
}

fn laminate(plies: Vec<Ply>) -> Laminate {
    Laminate {
        plies,
        force_x: None,
        force_y: None,
        shear_force: None,
        moment_x: None,
        moment_y: None,
        twisting_moment: None,
        temperature_change: None,
    }
}

proptest! {
    #![proptest_config(config(128))]

    /// A laminate of like isotropic plies is a plate, in whatever direction its plies lie, and grows without stress.
    #[test]
    fn a_laminate_of_one_metal_is_a_plate(
        e in 1e9..2e11, nu in 0.0..0.45, t in 1e-4..2e-3, angle in -3.0..3.0, rise in -60.0..80.0,
    ) {
        let plies = vec![isotropic_ply(e, nu, t, angle), isotropic_ply(e, nu, 2.0 * t, 0.0), isotropic_ply(e, nu, t, -angle)];
        let outcome =
            Laminate { temperature_change: Some(delta_kelvin(rise)), ..laminate(plies) }.calculate().unwrap().0;
        let h = 4.0 * t;
        let d = e * h * h * h / (12.0 * (1.0 - nu * nu));
        prop_assert!(near(outcome.bending_stiffness_11.value, d, 1e-12));
        prop_assert!(near(outcome.bending_stiffness_66.value, d * (1.0 - nu) / 2.0, 1e-12));
        prop_assert!(near(outcome.youngs_modulus_x.value, e, 1e-11));
        prop_assert!(outcome.coupling_stiffness_11.value.abs() < 1e-12 * e * h * h);
        for stress in &outcome.ply_stresses {
            prop_assert!(stress.inner_along.value.abs() + stress.outer_shear.value.abs() < 1e-12 * e);
        }
        prop_assert!(near(outcome.strain_x, 23e-6 * rise, 1e-9) || rise.abs() < 1e-6);
    }

    /// Turned over, a laminate keeps A and D, and its B and its bow change sign; a symmetric one has neither.
    #[test]
    fn a_laminate_can_be_turned_over(first in -1.5..1.5, second in -1.5..1.5, t in 1e-4..1e-3, rise in 1.0..80.0) {
        let make = |plies: Vec<Ply>| {
            Laminate { temperature_change: Some(delta_kelvin(rise)), ..laminate(plies) }.calculate().unwrap().0
        };
        let there = make(vec![carbon_ply(first, t), carbon_ply(second, 2.0 * t)]);
        let back = make(vec![carbon_ply(second, 2.0 * t), carbon_ply(first, t)]);
        prop_assert!(near(there.stretch_stiffness_11.value, back.stretch_stiffness_11.value, 1e-12));
        prop_assert!(near(there.bending_stiffness_22.value, back.bending_stiffness_22.value, 1e-12));
        let room = 1e-12 * there.stretch_stiffness_11.value * t;
        prop_assert!((there.coupling_stiffness_11.value + back.coupling_stiffness_11.value).abs() < room);
        prop_assert!((there.curvature_x.value + back.curvature_x.value).abs() < 1e-8 * there.curvature_x.value.abs().max(1e-6));
        let even = make(vec![carbon_ply(first, t), carbon_ply(second, t), carbon_ply(second, t), carbon_ply(first, t)]);
        prop_assert!(even.coupling_stiffness_12.value.abs() < 1e-9 * even.stretch_stiffness_12.value.abs().max(1.0) * t);
        prop_assert!(even.curvature_x.value.abs() < 1e-9);
        // Free of outer forces, the stresses of all plies balance.
        let sum: f64 = there.ply_stresses.iter().zip([(first, 1.0), (second, 2.0)]).map(|(s, (angle, weight))| {
            let (c, sn) = (math::cos(angle), math::sin(angle));
            let mean = |i: Pressure, o: Pressure| 0.5 * (i.value + o.value);
            let (along, across, shear) = (
                mean(s.inner_along, s.outer_along), mean(s.inner_across, s.outer_across), mean(s.inner_shear, s.outer_shear),
            );
            weight * (c * c * along + sn * sn * across - 2.0 * c * sn * shear)
        }).sum();
        prop_assert!(sum.abs() < 1e-3, "{sum}");
    }

    /// Layers that grow alike do not bow; hot as cold, nothing grows; twice the growth bows twice.
    #[test]
    fn equal_growth_does_not_bow(strain in -0.01..0.01, t1 in 1e-4..0.01, t2 in 1e-4..0.01, e1 in 1e6..2e11, e2 in 1e6..2e11) {
        let bow = |inner: f64, outer: f64| {
            let layer = |thickness: f64, modulus: f64, growth_strain: f64| BowLayer {
                name: String::new(), thickness: si(thickness), youngs_modulus: si(modulus), growth_strain,
            };
            LayeredBow { layers: vec![layer(t1, e1, inner), layer(t2, e2, outer)], length: m(1.0) }.calculate().unwrap().0
        };
        prop_assert!(bow(strain, strain).curvature.value.abs() < 1e-10 / (t1 + t2));
        let one = bow(0.0, strain).curvature.value;
        prop_assert!(near(bow(0.0, 0.5 * strain).curvature.value, 0.5 * one, 1e-12));
        prop_assert!(one * strain >= 0.0);
        let still = LayerGrowth {
            length: m(1.0), expansion: per_kelvin(23e-6), assembly_temperature: celsius(20.0),
            service_temperature: celsius(20.0), assembly_moisture_strain: strain, service_moisture_strain: strain,
        }.calculate().unwrap().0;
        prop_assert!(still.length_change.value == 0.0 && still.growth_strain == 0.0);
    }

    /// Without clearance the pane is held from the first kelvin; clearance only adds to the critical rise.
    #[test]
    fn clearance_only_adds_to_the_critical_rise(clearance in 0.0..0.01, strain in 1e-5..0.01, length in 0.1..3.0) {
        let rise = |clearance: f64| CriticalRise {
            expansion: per_kelvin(65e-6), other_expansion: per_kelvin(23e-6), held_length: si(length),
            clearance: si(clearance), critical_strain: strain,
        }.calculate().unwrap().0;
        let (held, loose) = (rise(0.0), rise(clearance));
        prop_assert!(held.rise_to_contact.value == 0.0);
        prop_assert!(near(held.critical_rise.value, strain / 42e-6, 1e-9));
        prop_assert!(loose.critical_rise.value >= held.critical_rise.value);
        prop_assert!(near(loose.critical_rise.value, held.critical_rise.value + loose.rise_to_contact.value, 1e-9));
    }

    /// A short or soft bond shares the load evenly; a longer one never lowers the mean below it, and the peak is above the mean.
    #[test]
    fn a_lap_is_even_where_it_is_short(overlap in 1e-3..0.2, shear_modulus in 1e6..1e9, load in 1.0..1e4) {
        let lap = |overlap: f64| LapShear {
            load: si(load), width: mm(25.0), overlap: si(overlap), first_thickness: mm(2.0),
            first_youngs_modulus: gigapascal(70.0), second_thickness: mm(2.0), second_youngs_modulus: gigapascal(70.0),
            bond_thickness: mm(0.2), bond_shear_modulus: si(shear_modulus),
        }.calculate().unwrap().0;
        let here = lap(overlap);
        prop_assert!(here.stress_ratio >= 1.0 - 1e-12);
        prop_assert!(near(here.mean_shear_stress.value, load / (0.025 * overlap), 1e-12));
        prop_assert!(near(lap(1e-6).stress_ratio, 1.0, 1e-6));
        prop_assert!(lap(2.0 * overlap).largest_shear_stress.value <= here.largest_shear_stress.value * (1.0 + 1e-12));
    }

    /// Latches close together squeeze the gasket evenly; a softer gasket or stiffer edge squeezes it more evenly.
    #[test]
    fn close_latches_squeeze_evenly(pitch in 0.02..0.5, second_moment in 1e-11..1e-8, line_stiffness in 1e4..1e7) {
        let spacing = |pitch: f64, second_moment: f64, line_stiffness: f64| GasketSpacing {
            youngs_modulus: gigapascal(70.0), second_moment: si(second_moment), line_stiffness: si(line_stiffness),
            pitch: si(pitch), mean_compressed: mm(4.0), wanted_ratio: 0.9,
        }.calculate().unwrap().0.compression_ratio;
        let here = spacing(pitch, second_moment, line_stiffness);
        prop_assert!(near(spacing(1e-3, 1e-8, 1e4), 1.0, 1e-9));
        prop_assert!(spacing(pitch, second_moment, 0.5 * line_stiffness) >= here - 1e-12 || here < 0.5);
        prop_assert!(spacing(pitch, 2.0 * second_moment, line_stiffness) >= here - 1e-12 || here < 0.5);
    }

    /// The stay's push and pull differ by twice the weight's share, and a still wind leaves the weight alone.
    #[test]
    fn wind_from_both_sides_encloses_the_weight(
        mass in 0.5..30.0, angle in 0.2..3.0, speed in 0.0..40.0, frame in 0.05..0.5, lid in 0.05..0.5,
    ) {
        let hold = |speed: f64| HoldOpen {
            mass: si(mass), centre_distance: mm(250.0), area: square_mm(0.25e6), area_distance: mm(250.0),
            opening_angle: si(angle), closed_rise: si(0.0), wind_speed: si(speed),
            air_density: kilogram_per_cubic_meter(1.25), force_coefficient: 1.2, stay_on_frame: si(frame),
            stay_on_lid: si(lid), working_load: None,
        }.calculate().unwrap().0;
        let (still, windy) = (hold(0.0), hold(speed));
        prop_assert!((still.push.value + still.pull.value).abs() <= 1e-12 * still.push.value.abs());
        let room = 1e-9 * (windy.push.value.abs() + windy.pull.value.abs() + 1e-6);
        prop_assert!((windy.push.value - windy.pull.value - 2.0 * still.push.value).abs() <= room);
        prop_assert!((windy.push.value + windy.pull.value) * windy.stay_arm.value + 1e-9 >= 2.0 * windy.wind_moment.value);
        // The stay is a side of a triangle.
        prop_assert!(windy.stay_length.value <= frame + lid && windy.stay_arm.value <= frame.min(lid) * (1.0 + 1e-12));
    }

    /// The higher a lid is let go, the harder it falls, up to the top; a damper only takes away.
    #[test]
    fn a_higher_lid_falls_harder(low in 0.05..1.4, more in 0.01..0.15, moment in 0.0..20.0) {
        let slam = |angle: f64, moment: f64| LidSlam {
            mass: kilogram(4.0), centre_distance: mm(230.0), hinge_to_edge: mm(460.0), radius_of_gyration: None,
            opening_angle: si(angle), closed_rise: si(0.0), holding_moment: Some(si(moment)), stop_travel: mm(5.0),
        }.calculate().unwrap().0.energy.value;
        prop_assert!(slam(low + more, 0.0) > slam(low, 0.0));
        prop_assert!(slam(low, moment) <= slam(low, 0.0));
        prop_assert!(slam(2.0, 0.0) == slam(FRAC_PI_2, 0.0));
    }
}

proptest! {
    #![proptest_config(config(24))]

    /// A circle's large deflection is below the linear one, follows the pressure's sign, rises with it, and a held edge
    /// never deflects more than a free one.
    #[test]
    fn a_stretched_circle_deflects_less(pressure in 10.0..2e5, clamped in any::<bool>(), nu in 0.0..0.45) {
        let edge_support = if clamped { EdgeSupport::Clamped } else { EdgeSupport::Supported };
        let plate = |pressure: f64, in_plane_support: InPlaneSupport| CircularPlateLargeDeflection {
            radius: mm(150.0), thickness: mm(1.5), youngs_modulus: gigapascal(70.0), poissons_ratio: nu,
            pressure: si(pressure), edge_support, in_plane_support,
        }.calculate().unwrap().0;
        let (free, fixed) = (plate(pressure, InPlaneSupport::Free), plate(pressure, InPlaneSupport::Fixed));
        prop_assert!(free.centre_deflection.value.abs() <= free.linear_deflection.value.abs() * (1.0 + 1e-9));
        prop_assert!(fixed.deflection_ratio <= free.deflection_ratio * (1.0 + 1e-9));
        prop_assert!(near(plate(-pressure, InPlaneSupport::Fixed).centre_deflection.value, -fixed.centre_deflection.value, 1e-12));
        prop_assert!(plate(1.1 * pressure, InPlaneSupport::Free).deflection_ratio > free.deflection_ratio);
        prop_assert!(fixed.edge_pull.value > 0.0 && free.edge_pull.value == 0.0);
        let small = CircularPlate {
            radius: mm(150.0), thickness: mm(1.5), youngs_modulus: gigapascal(70.0), poissons_ratio: nu,
            pressure: si(pressure), edge_support, central_force: None, force_radius: None,
        }.calculate().unwrap().0;
        prop_assert!(near(small.centre_deflection.value, free.linear_deflection.value, 1e-12));
    }

    /// An ellipse of equal axes is a circle; a long one is a clamped strip across.
    #[test]
    fn an_ellipse_lies_between_circle_and_strip(size in 0.1..2.0, nu in 0.0..0.45) {
        let ellipse = |length: f64| EllipticalPlate {
            length: si(length), width: si(2.0 * size), thickness: si(0.01 * size), youngs_modulus: gigapascal(70.0),
            poissons_ratio: nu, pressure: si(1e3),
        }.calculate().unwrap().0;
        let circle = CircularPlate {
            radius: si(size), thickness: si(0.01 * size), youngs_modulus: gigapascal(70.0), poissons_ratio: nu,
            pressure: si(1e3), edge_support: EdgeSupport::Clamped, central_force: None, force_radius: None,
        }.calculate().unwrap().0;
        let round = ellipse(2.0 * size);
        prop_assert!(near(round.centre_deflection.value, circle.centre_deflection.value, 1e-12));
        prop_assert!(near(round.width_end_moment.value, circle.edge_moment.value, 1e-12));
        prop_assert!(near(round.length_end_reaction.value, circle.edge_reaction.value, 1e-12));
        let long = ellipse(2000.0 * size);
        // q b^4/(24 D), q b^2/3 at the edge, q b reaction.
        prop_assert!(near(long.width_end_moment.value, -1e3 * size * size / 3.0, 1e-5));
        prop_assert!(near(long.width_end_reaction.value, 1e3 * size, 1e-5));
    }
}

proptest! {
    #![proptest_config(config(6))]

    /// Held all round by supports a plate on two edges is the supported plate; standing water from one side and from the other
    /// add up to an even pressure; what presses is what the edges and corners carry.
    #[test]
    fn water_from_both_sides_is_an_even_pressure(width in 0.4..2.0, share in 0.0..1.0, free in any::<bool>()) {
        let second = if free { PlateEdge::Free } else { PlateEdge::Supported };
        let plate = |first_pressure: f64, second_pressure: f64| LevyPlate {
            length: m(1.0), width: si(width), thickness: mm(10.0), youngs_modulus: gigapascal(109.2), poissons_ratio: 0.3,
            first_length_edge: PlateEdge::Supported, second_length_edge: second, first_pressure: si(first_pressure),
            second_pressure: si(second_pressure), pressure_varies_along: PlateDirection::Width,
        }.calculate().unwrap().0;
        let (even, one, other) = (plate(1e3, 1e3), plate(1e3 * share, 0.0), plate(1e3 * (1.0 - share), 1e3));
        prop_assert!(near(even.centre_deflection.value, one.centre_deflection.value + other.centre_deflection.value, 1e-9));
        let sum = one.first_width_edge_reaction.value + other.first_width_edge_reaction.value;
        prop_assert!(near(even.first_width_edge_reaction.value, sum, 1e-9));
        prop_assert!(even.largest_deflection.value.abs() >= even.centre_deflection.value.abs());
        if !free {
            let supported = RectangularPlate {
                length: m(1.0), width: si(width), thickness: mm(10.0), youngs_modulus: gigapascal(109.2),
                poissons_ratio: 0.3, pressure: si(1e3), edge_support: EdgeSupport::Supported,
            }.calculate().unwrap().0;
            prop_assert!(near(even.centre_deflection.value, supported.centre_deflection.value, 1e-8));
            prop_assert!(near(even.corner_reactions[0].value, supported.corner_reaction.value, 1e-6));
            prop_assert!(near(even.first_length_edge_reaction.value, supported.length_edge_reaction.value, 1e-6));
        }
    }
}

fn direction(up: bool) -> BendDirection {
    if up { BendDirection::Up } else { BendDirection::Down }
}

proptest! {
    #![proptest_config(config(96))]

    /// Folded and brought back, every hole lies where it was; holes of one face keep their distance; an opposite bend
    /// behind a bend makes the faces parallel again.
    #[test]
    fn a_folded_panel_comes_back_flat(
        first in 0.05..3.1, second in 0.05..3.1, slant in -0.5..0.5, radius in 0.0..0.005, t in 5e-4..4e-3,
        first_up in any::<bool>(), second_up in any::<bool>(), x in 0.02..0.1, y in 0.03..0.17,
    ) {
        let bend = |at: f64, angle: f64, up: bool| FlatBend {
            from_x: si(at), from_y: si(0.1), to_x: si(at + 0.04 * slant), to_y: si(0.14), bend_angle: si(angle),
            inside_radius: si(radius), bend_direction: direction(up),
        };
        let place = |x: f64, y: f64| FlatPlace { x: si(x), y: si(y) };
        let hole = |x: f64, y: f64| FlatHole { x: si(x), y: si(y), diameter: mm(3.0) };
        let panel = FlatPanel {
            thickness: si(t), k_factor: 0.4,
            outline: vec![place(0.0, 0.0), place(1.0, 0.0), place(1.0, 0.2), place(0.0, 0.2)],
            holes: vec![hole(x, y), hole(0.5 + x, y), hole(0.5 + 0.5 * x, 0.2 - y), hole(0.9, y)],
            bends: vec![bend(0.3, first, first_up), bend(0.7, second, second_up)],
            base: place(0.1, 0.1),
        };
        let folded = FoldedPanel { panel: panel.clone() }.calculate().unwrap().0;
        let places: Vec<SpacePlace> =
            folded.holes.iter().map(|hole| SpacePlace { x: hole.x, y: hole.y, z: hole.z }).collect();
        let flat = FlatPositions { panel: FlatPanel { holes: Vec::new(), ..panel.clone() }, places: places.clone() }
            .calculate().unwrap().0;
        for ((hole, back), face) in panel.holes.iter().zip(&flat.places).zip(folded.holes.iter().zip(&flat.faces)) {
            prop_assert!((hole.x - back.x).value.abs() < 1e-9 && (hole.y - back.y).value.abs() < 1e-9);
            prop_assert_eq!(face.0.face, *face.1);
        }
        let apart = |a: &SpacePlace, b: &SpacePlace| {
            let square = |side: Length| math::square(side.value);
            (square(a.x - b.x) + square(a.y - b.y) + square(a.z - b.z)).sqrt()
        };
        let on_flat = (0.25 * x * x + (0.2 - 2.0 * y) * (0.2 - 2.0 * y)).sqrt();
        prop_assert!((apart(&places[1], &places[2]) - on_flat).abs() < 1e-12);
        let areas: f64 = folded.faces.iter().map(|face| face.area.value).sum();
        prop_assert!(areas < 0.2 && near(folded.volume.value, folded.flat_area.value * t, 1e-12));
        let mut zed = panel;
        zed.bends[1].bend_angle = si(first);
        zed.bends[1].bend_direction = direction(!first_up);
        let zed = FoldedPanel { panel: zed }.calculate().unwrap().0;
        prop_assert!((zed.faces.last().unwrap().normal_z - 1.0).abs() < 1e-12);
    }
}
