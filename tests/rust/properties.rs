//! Properties that hold for every input: nothing panics, nothing comes out that is not finite, and the laws that follow
//! from the mechanics without any of the formulas' code.
//!
//! The seed is fixed, so that a run repeats itself.

use coaming::declaration::{Field, read_json};
use coaming::fastener::{TighteningPreload, TighteningTorque};
use coaming::latch::LatchForce;
use coaming::plate::{EdgeSupport, RectangularPlate};
use coaming::prelude::*;
use coaming::sheet::{BendAllowance, KFactorFromAllowance, KFactorFromDeduction, LegReference};
use coaming_tests::fuzzing;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_seed: RngSeed::Fixed(20_260_101),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// Equal but for rounding.
fn close(left: f64, right: f64) -> bool {
    (left - right).abs() <= 1e-12 * left.abs().max(right.abs())
}

/// Series and Ritz solutions, which take up to seconds where nothing is optimised.
const SLOW: &[&str] = &[
    "rectangular_plate",
    "rectangular_plate_frequency",
    "rectangular_plate_modes",
    "rectangular_plate_large_deflection",
    "heated_plate_buckling",
    "levy_plate",
    "annular_plate_modes",
    "circular_plate_large_deflection",
];

proptest! {
    #![proptest_config(config(120))]

    #[test]
    fn no_calculation_panics_or_gives_what_is_not_finite(bytes in prop::collection::vec(any::<u8>(), 20..200)) {
        for (place, entry) in coaming::ALL.iter().enumerate() {
            if SLOW.contains(&entry.name) && bytes[0] >= 8 {
                continue;
            }
            // Two bytes name the calculation, and a third that is not zero has the input drawn.
            let [high, low] = (place as u16).to_be_bytes();
            fuzzing::calculation(&[&[high, low, 1], bytes.as_slice()].concat());
        }
    }

    #[test]
    fn no_json_panics_as_an_input(text in "[\\[{\"]?\\PC{0,20}|\\{\"[a-z_]{1,9}\": ?(null|true|-?[0-9.e]{1,6}|\"[0-9]{1,3} ?[a-zN]{1,3}\")\\}?") {
        for entry in coaming::ALL {
            prop_assert!((entry.calculate_json)(&text).is_err());
        }
    }
}

proptest! {
    #![proptest_config(config(2000))]

    #[test]
    fn no_text_panics_as_a_quantity(text in "\\PC{0,30}|[-+0-9.,/ e]{1,12} ?(mm|in|N·m|ga steel|degC|%|1/K|um/\\(m K\\)|kPa/mm)?") {
        fuzzing::quantity(text.as_bytes());
    }
}

/// So that the first property is not hollow: among drawn inputs each calculation but two accepts some.
#[test]
fn drawn_inputs_reach_every_formula() {
    let mut state = 0x9E37_79B9_7F4A_7C15_u64;
    let mut byte = move || {
        // xorshift64 (Marsaglia 2003)
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 24) as u8
    };
    let mut unreached = Vec::new();
    for entry in coaming::ALL {
        let reached = (0..3000).any(|_| {
            let bytes: Vec<u8> = (0..300).map(|_| byte()).collect();
            let input = coaming_tests::drawing::record(
                entry.input.fields,
                &mut coaming_tests::drawing::Bytes::new(&bytes),
            );
            (entry.calculate_json)(&input.to_string()).is_ok()
        });
        if !reached {
            unreached.push(entry.name);
        }
    }
    // An outline of drawn points with bend lines across it is hardly ever a panel: `a_folded_panel_comes_back_flat` draws
    // panels that are.
    assert_eq!(unreached, ["folded_panel", "flat_positions"]);
}

/// Every unit of the shop with one of its relatives, and the exact factor between the two: SI Brochure (9th ed., 2019),
/// NIST SP 811 (2008) appendix B for the inch units, from memory (unverified).
#[test]
fn units_agree_with_their_relatives() {
    let pairs: &[(&Dimension, &str, &str, f64)] = &[
        (&Dimension::LENGTH, "in", "mm", 25.4),
        (&Dimension::LENGTH, "thou", "um", 25.4),
        (&Dimension::FORCE, "lbf", "N", 4.448_221_615_260_5),
        (&Dimension::PRESSURE, "bar", "kPa", 100.0),
        (&Dimension::MASS, "lb", "kg", 0.453_592_37),
        (&Dimension::TORQUE, "kgf m", "N·m", 9.806_65),
        (&Dimension::FREQUENCY, "Hz", "rpm", 60.0),
        (&Dimension::ANGLE, "deg", "arcmin", 60.0),
        (&Dimension::TIME, "h", "s", 3600.0),
        (&Dimension::TEMPERATURE_DIFFERENCE, "K", "delta_degF", 1.8),
        (&Dimension::EXPANSION, "1/K", "um/(m K)", 1e6),
        (&Dimension::FORCE_PER_VOLUME, "kPa/mm", "N/m^3", 1e6),
    ];
    for (dimension, large, small, factor) in pairs {
        for number in [1.0, 0.07, 123.456, 1e-9, 7e11] {
            let one = coaming::quantity::read(&format!("{number} {large}"), dimension).unwrap();
            let other =
                coaming::quantity::read(&format!("{:e} {small}", number * factor), dimension).unwrap();
            assert!(close(one, other), "{number} {large}: {one} and {other}");
        }
    }
}

fn bend_angle() -> impl Strategy<Value = f64> {
    0.01..FRAC_PI_2
}

proptest! {
    #![proptest_config(config(256))]

    /// What is written for data in any unit reads back to the same bits.
    #[test]
    fn quantities_survive_being_written(value in any::<f64>(), place in 0..Dimension::ALL.len()) {
        prop_assume!(value.is_finite());
        let dimension = &Dimension::ALL[place];
        let text = coaming::quantity::for_data(value, dimension, dimension.shop);
        let back = coaming::quantity::read(&text, dimension).unwrap();
        prop_assert_eq!((back + 0.0).to_bits(), (value + 0.0).to_bits(), "{}", text);
    }

    /// A bend twice as large in every length has twice the allowance, setback and deduction.
    #[test]
    fn a_bend_scales_with_its_lengths(
        angle in bend_angle(), radius in 0.0..0.02, thickness in 1e-4..0.01, k_factor in 0.05..0.95, scale in 0.01..100.0,
    ) {
        let bend = |scale: f64| BendAllowance {
            bend_angle: si(angle), inside_radius: si(radius * scale), thickness: si(thickness * scale), k_factor,
            leg_reference: LegReference::ToVirtualSharp,
        }.calculate().unwrap().0;
        let (one, other) = (bend(1.0), bend(scale));
        prop_assert!(close(one.bend_allowance.value * scale, other.bend_allowance.value));
        prop_assert!(close(one.neutral_radius.value * scale, other.neutral_radius.value));
        prop_assert!(close(one.setback.unwrap().value * scale, other.setback.unwrap().value));
        // The deduction is a difference, so its rounding is measured by what it is made of.
        let room = 1e-12 * other.bend_allowance.value;
        prop_assert!((one.bend_deduction.value * scale - other.bend_deduction.value).abs() <= room);
    }

    /// Two bends one behind the other, of the same radius, have the allowance of one bend by both angles.
    #[test]
    fn allowances_add_up(first in 0.01..0.7, second in 0.01..0.7, radius in 0.0..0.02, thickness in 1e-4..0.01) {
        let allowance = |angle: f64| BendAllowance {
            bend_angle: si(angle), inside_radius: si(radius), thickness: si(thickness), k_factor: 0.4,
            leg_reference: LegReference::ToVirtualSharp,
        }.calculate().unwrap().0.bend_allowance.value;
        prop_assert!(close(allowance(first) + allowance(second), allowance(first + second)));
    }

    /// K from an allowance or deduction is the K that it was made with.
    #[test]
    fn k_factors_survive_the_round_trip(
        angle in 0.1..FRAC_PI_2, radius in 1e-4..0.01, thickness in 1e-3..0.01, k_factor in 0.05..0.95,
    ) {
        let (bend_angle, inside_radius, thickness) = (si(angle), si(radius), si(thickness));
        let bend = BendAllowance {
            bend_angle, inside_radius, thickness, k_factor, leg_reference: LegReference::ToVirtualSharp,
        }.calculate().unwrap().0;
        let by_allowance = KFactorFromAllowance {
            bend_angle, inside_radius, thickness, bend_allowance: bend.bend_allowance,
        }.calculate().unwrap().0;
        let by_deduction = KFactorFromDeduction {
            bend_angle, inside_radius, thickness, bend_deduction: bend.bend_deduction,
        }.calculate().unwrap().0;
        prop_assert!((by_allowance.k_factor - k_factor).abs() < 1e-11, "{}", by_allowance.k_factor);
        prop_assert!((by_deduction.k_factor - k_factor).abs() < 1e-10, "{}", by_deduction.k_factor);
    }

    /// The preload of a torque is the preload that the torque was found for.
    #[test]
    fn torque_and_preload_are_inverse(
        preload in 1.0..1e5, thread_friction in 0.04..0.4, head_friction in 0.04..0.4, seat in 0.6..FRAC_PI_2,
        prevailing in 0.0..2.0,
    ) {
        let thread = coaming::fastener::ThreadDesignation::from_name("M6").unwrap();
        let there = TighteningTorque {
            thread, preload: si(preload), thread_friction, head_friction, bearing_outer_diameter: mm(10.0),
            bearing_inner_diameter: mm(6.6), seat_half_angle: si(seat), prevailing_torque: si(prevailing),
        }.calculate().unwrap().0;
        let back = TighteningPreload {
            thread, torque: there.torque, thread_friction, head_friction, bearing_outer_diameter: mm(10.0),
            bearing_inner_diameter: mm(6.6), seat_half_angle: si(seat), prevailing_torque: si(prevailing),
        }.calculate().unwrap().0;
        prop_assert!((back.preload.value - preload).abs() <= 1e-9 * preload + 1e-6, "{}", back.preload.value);
        // The torque beyond the prevailing one is proportional to the preload.
        let double = TighteningTorque {
            thread, preload: si(2.0 * preload), thread_friction, head_friction, bearing_outer_diameter: mm(10.0),
            bearing_inner_diameter: mm(6.6), seat_half_angle: si(seat), prevailing_torque: si(prevailing),
        }.calculate().unwrap().0;
        let (one, two) = (there.torque.value - prevailing, double.torque.value - prevailing);
        prop_assert!((two - 2.0 * one).abs() <= 1e-12 * (two + prevailing));
        // A higher friction never takes less torque.
        let rougher = TighteningTorque {
            thread, preload: si(preload), thread_friction: thread_friction * 1.1, head_friction,
            bearing_outer_diameter: mm(10.0), bearing_inner_diameter: mm(6.6), seat_half_angle: si(seat),
            prevailing_torque: si(prevailing),
        }.calculate().unwrap().0;
        prop_assert!(rougher.torque > there.torque);
    }

    /// A thin plate is linear in the pressure and inverse in Young's modulus; by similarity, a plate of the same
    /// proportions deflects in proportion to its size, and its stress does not change.
    #[test]
    fn a_plate_obeys_its_scaling_laws(
        length in 0.1..2.0, ratio in 0.3..3.0, thickness in 5e-4..0.01, modulus in 1e9..2e11, nu in 0.0..0.45,
        pressure in 1.0..1e5, scale in 0.1..10.0, clamped in any::<bool>(),
    ) {
        let edge_support = if clamped { EdgeSupport::Clamped } else { EdgeSupport::Supported };
        let plate = |size: f64, modulus: f64, pressure: f64| RectangularPlate {
            length: si(length * size), width: si(length * ratio * size), thickness: si(thickness * size),
            youngs_modulus: si(modulus), poissons_ratio: nu, pressure: si(pressure), edge_support,
        }.calculate().unwrap().0;
        let one = plate(1.0, modulus, pressure);
        let pressed = plate(1.0, modulus, pressure * scale);
        let stiffer = plate(1.0, modulus * scale, pressure);
        let larger = plate(scale, modulus, pressure);
        let near = |left: f64, right: f64| (left - right).abs() <= 1e-9 * left.abs().max(right.abs());
        let (deflection, stress) = (one.largest_deflection.value, one.largest_stress.value);
        prop_assert!(near(pressed.largest_deflection.value, deflection * scale));
        prop_assert!(near(pressed.largest_stress.value, stress * scale));
        prop_assert!(near(stiffer.largest_deflection.value, deflection / scale));
        prop_assert!(near(stiffer.largest_stress.value, stress));
        prop_assert!(near(larger.largest_deflection.value, deflection * scale));
        prop_assert!(near(larger.largest_stress.value, stress));
        // Positive pressure pushes inward, and inward is negative.
        prop_assert!(deflection < 0.0);
        // Turned by a quarter, it is the same plate.
        let turned = RectangularPlate {
            length: si(length * ratio), width: si(length), thickness: si(thickness), youngs_modulus: si(modulus),
            poissons_ratio: nu, pressure: si(pressure), edge_support,
        }.calculate().unwrap().0;
        prop_assert!(near(turned.centre_deflection.value, one.centre_deflection.value));
        prop_assert!(near(turned.centre_moment_along_length.value, one.centre_moment_along_width.value));
    }

    /// The latches share the gasket's force: it is linear in the line force and path, inverse in their number.
    #[test]
    fn latch_forces_are_linear(
        line_force in 1.0..1e4, path in 0.1..5.0, latches in 1u32..40, lever in 0.5..20.0, scale in 0.1..10.0,
    ) {
        let force = |line: f64, path: f64, latches: u32| LatchForce {
            line_force: si(line), path_length: si(path), latches, pressure: si(0.0), sealed_area: si(0.2),
            lever_ratio: lever, efficiency: 0.9, worked_at_once: 1, hand_force_limit: si(60.0), working_load: None,
        }.calculate().unwrap().0;
        let one = force(line_force, path, latches);
        prop_assert!(close(force(line_force * scale, path, latches).latch_force.value, one.latch_force.value * scale));
        prop_assert!(close(force(line_force, path * scale, latches).hand_force.value, one.hand_force.value * scale));
        prop_assert!(close(force(line_force, path, 2 * latches).latch_force.value, one.latch_force.value / 2.0));
        prop_assert!(close(one.latch_force.value * f64::from(latches), line_force * path));
    }

    /// What a calculation has read, it writes so that it reads to equal types.
    #[test]
    fn inputs_survive_being_written(
        angle in 0.0..PI, radius in 0.0..1.0, thickness in 1e-9..1.0, k_factor in 1e-9..0.999,
    ) {
        let bend = BendAllowance {
            bend_angle: si(angle), inside_radius: si(radius), thickness: si(thickness), k_factor,
            leg_reference: LegReference::ToTangent,
        };
        let text = serde_json::to_string(&bend.write(&Field::ROOT)).unwrap();
        prop_assert_eq!(read_json::<BendAllowance>(&text), Ok(bend));
    }
}
