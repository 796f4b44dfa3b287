//! Quantities against exact arithmetic and the text of the convention.

use super::*;
use crate::Error;
use proptest::prelude::*;

fn length(text: &str) -> f64 {
    read(text, &Dimension::LENGTH).unwrap_or(f64::NAN)
}

#[test]
fn equal_lengths_have_equal_bits() {
    for text in
        ["1.6 mm", "0.16 cm", "0.0016 m", "1600 um", "1600 µm", "1600 μm", "1.6mm", " 1.6 mm ", "+1.6 mm"]
    {
        assert_eq!(length(text).to_bits(), 0.0016f64.to_bits(), "{text}");
    }
    assert_eq!(mm(0.07), Length::read("0.07 mm").unwrap_or(mm(0.0)));
    assert_eq!(inch(0.125).value, length("1/8 in"));
    assert_eq!(length("1 1/8 in"), 1.125 * 0.0254);
    assert_eq!(length("-1 1/2 in"), -0.0381);
    assert_eq!(length("3 thou"), 0.0000762);
    assert_eq!(length("2 3/4in"), length("2.75 in"));
}

#[test]
fn units_that_a_shop_writes_are_read() {
    // Expected values by exact rational arithmetic in Python's `fractions`, rounded by float().
    let cases: &[(&str, &Dimension, f64)] = &[
        ("2.4 N·m", &Dimension::TORQUE, 2.4),
        ("2.4 N m", &Dimension::TORQUE, 2.4),
        ("2.4 N⋅m", &Dimension::TORQUE, 2.4),
        ("21 lbf in", &Dimension::TORQUE, 2.372_681_409_579_951),
        ("35 kPa", &Dimension::PRESSURE, 35e3),
        ("5 psi", &Dimension::PRESSURE, 34_473.786_465_841_804),
        ("195 N/mm2", &Dimension::PRESSURE, 195e6),
        ("195 N/mm^2", &Dimension::PRESSURE, 195e6),
        ("195 N/mm²", &Dimension::PRESSURE, 195e6),
        ("60 degC", &Dimension::TEMPERATURE, 333.15),
        ("60 °C", &Dimension::TEMPERATURE, 333.15),
        ("140 degF", &Dimension::TEMPERATURE, 333.15),
        ("54 delta_degF", &Dimension::TEMPERATURE_DIFFERENCE, 30.0),
        ("23.6e-6 1/K", &Dimension::EXPANSION, 23.6e-6),
        ("23.6 um/(m K)", &Dimension::EXPANSION, 23.6e-6),
        ("13.1e-6 1/degF", &Dimension::EXPANSION, 23.58e-6),
        ("90 deg", &Dimension::ANGLE, core::f64::consts::FRAC_PI_2),
        ("180 °", &Dimension::ANGLE, core::f64::consts::PI),
        ("15 W/(m² K)", &Dimension::HEAT_TRANSFER, 15.0),
        ("15 W/m²K", &Dimension::HEAT_TRANSFER, 15.0),
        ("3 g", &Dimension::ACCELERATION, 29.419_95),
        ("1500 rpm", &Dimension::FREQUENCY, 25.0),
        ("3 g", &Dimension::MASS, 0.003),
        ("16 ga steel", &Dimension::LENGTH, 0.001_518_92),
        ("16 ga stainless", &Dimension::LENGTH, 0.001_587_5),
        ("16 ga aluminium", &Dimension::LENGTH, 0.001_290_32),
    ];
    for (text, dimension, expected) in cases {
        let value = Dimension::ALL.iter().find(|known| known == dimension).map(|known| read(text, known));
        match value {
            Some(Ok(value)) => assert_eq!(value, *expected, "{text}"),
            other => panic!("{text}: {other:?}"),
        }
    }
}

#[test]
fn refusals_say_what_is_wrong() {
    let cases: &[(&str, &Dimension, &str)] = &[
        ("1.6", &Dimension::LENGTH, "needs a unit"),
        ("1.6 kg", &Dimension::LENGTH, "does not measure length"),
        ("NaN mm", &Dimension::LENGTH, "not finite"),
        ("inf mm", &Dimension::LENGTH, "not finite"),
        ("1,6 mm", &Dimension::LENGTH, "write `1.6 mm`"),
        ("1e999 mm", &Dimension::LENGTH, "larger than any number"),
        ("1e99999 mm", &Dimension::LENGTH, "out of range"),
        ("16 ga", &Dimension::LENGTH, "needs its metal"),
        ("mm", &Dimension::LENGTH, "begin with a number"),
        ("", &Dimension::LENGTH, "begin with a number"),
        ("3 mmm", &Dimension::LENGTH, "unknown unit `mmm`; did you mean `mm`?"),
        ("1/0 in", &Dimension::LENGTH, "over zero"),
        ("20 degC", &Dimension::TEMPERATURE_DIFFERENCE, "names a temperature"),
        ("20 °C", &Dimension::TEMPERATURE_DIFFERENCE, "names a temperature"),
        ("20 delta_degC", &Dimension::TEMPERATURE, "not a difference"),
        ("15 W/m² K", &Dimension::HEAT_TRANSFER, "parentheses"),
        ("3 mm/(((((s", &Dimension::LENGTH, "parenthes"),
    ];
    for (text, dimension, reason) in cases {
        let known = Dimension::ALL.iter().find(|known| known == dimension).unwrap_or(&Dimension::LENGTH);
        let message = read(text, known).map_or_else(|error| error.to_string(), |value| value.to_string());
        assert!(message.contains(reason), "{text}: {message}");
    }
    assert!(matches!(read_number("0.4 mm"), Err(Error::NotAQuantity { .. })));
    assert_eq!(read_number("40 %"), Ok(0.4));
    assert_eq!(read_number("0.4"), Ok(0.4));
}

#[test]
fn people_see_four_figures() {
    let shown = |si, system| for_people(si, &Dimension::LENGTH, "mm", system);
    assert_eq!(shown(0.1 / 1e3 + 0.2 / 1e3, System::Shop), "0.3 mm");
    assert_eq!(shown(1.811, System::Shop), "1811 mm");
    assert_eq!(shown(1.23456, System::Shop), "1235 mm");
    assert_eq!(shown(0.0254, System::Inch), "1 in");
    assert_eq!(for_people(333.15, &Dimension::TEMPERATURE, "degC", System::Inch), "140 degF");
    assert_eq!(for_people(273.15, &Dimension::TEMPERATURE, "degC", System::Shop), "0 degC");
    assert_eq!(for_people(195e6, &Dimension::PRESSURE, "MPa", System::Shop), "195 MPa");
    assert_eq!(for_people(23.6e-6, &Dimension::EXPANSION, "1/K", System::Shop), "2.36e-5 1/K");
    assert_eq!(rounded(-0.000_012_344_9, 4), "-1.234e-5");
}

#[test]
fn every_unit_that_is_written_is_read() {
    for dimension in Dimension::ALL {
        for system in [System::Shop, System::Inch] {
            let text = for_people(300.0, dimension, dimension.shop, system);
            assert!(read(&text, dimension).is_ok(), "{text} as {}", dimension.name);
        }
    }
}

proptest! {
    #[test]
    fn data_reads_back_to_the_same_bits(value in any::<f64>(), place in 0usize..Dimension::ALL.len()) {
        prop_assume!(value.is_finite() && value != 0.0);
        let dimension = &Dimension::ALL[place];
        let text = for_data(value, dimension, dimension.shop);
        let back = read(&text, dimension);
        prop_assert_eq!(back.as_ref().map(|back| back.to_bits()), Ok(value.to_bits()), "{} -> {:?}", text, back);
    }

    #[test]
    fn reading_never_panics(text in "\\PC{0,40}") {
        for dimension in Dimension::ALL {
            let _ = read(&text, dimension);
        }
        let _ = read_number(&text);
    }

    #[test]
    fn a_typed_decimal_equals_its_text(hundredths in -1_000_000i32..1_000_000) {
        let text = format!("{}.{:02} mm", hundredths / 100, (hundredths % 100).abs());
        prop_assume!(hundredths >= 0 || hundredths <= -100);
        prop_assert_eq!(mm(f64::from(hundredths) / 100.0).value, length(&text));
    }
}
