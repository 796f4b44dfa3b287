//! The records against the printed figures, each in the unit that its source prints.

use super::*;
use crate::prelude::*;

/// A figure of a record in SI units, its basis and whether it is unverified.
fn si_of(key: &str, property: &str) -> (f64, Basis, bool) {
    let found = find(key).ok().and_then(|record| {
        record.figures().into_iter().find(|figure| figure.property == property && figure.place.is_empty())
    });
    found.map_or((f64::NAN, Basis::Estimate, true), |figure| {
        (figure.figure.value, figure.figure.basis, figure.figure.is_unverified())
    })
}

/// The printed text in SI units, by the reader of the quantity module; plain numbers as they are.
fn printed(text: &str, property: &str) -> f64 {
    let known = Material::PROPERTIES.iter().find(|known| known.name == property);
    match known.and_then(|known| known.kind.dimension()) {
        Some(dimension) => read(text, dimension).unwrap_or(f64::NAN),
        None => text.parse().unwrap_or(f64::NAN),
    }
}

fn assert_near(found: f64, expected: f64, relative: f64, what: &str) {
    assert!(
        (found - expected).abs() <= relative * expected.abs(),
        "{what}: found {found:e}, printed {expected:e}"
    );
}

/// Reference row, record, property, value as printed. The digits are exact: a relative 1e-12 is for the last bit.
type Row = (&'static str, &'static str, &'static str, &'static str);

#[test]
fn figures_of_the_handbook_are_the_printed_digits() {
    // MIL-HDBK-5J: 5052-H32 table 3.5.1.0(b1), 6061-T6 table 3.6.2.0(b1), 301 table 2.7.1.0(b), 1025 table
    // 2.2.1.0(b). Of two directions the record holds the weaker.
    const ROWS: &[Row] = &[
        ("M001", "aluminium_5052_h32", "ultimate_strength", "31 ksi"),
        ("M001", "aluminium_5052_h32", "yield_strength", "22 ksi"),
        ("M001", "aluminium_5052_h32", "compressive_yield_strength", "22 ksi"),
        ("M002", "aluminium_5052_h32", "shear_strength", "19 ksi"),
        ("M002", "aluminium_5052_h32", "bearing_strength", "65 ksi"),
        ("M002", "aluminium_5052_h32", "bearing_yield_strength", "37 ksi"),
        ("M003", "aluminium_5052_h32", "youngs_modulus", "10.1e3 ksi"),
        ("M003", "aluminium_5052_h32", "compression_modulus", "10.2e3 ksi"),
        ("M003", "aluminium_5052_h32", "shear_modulus", "3.85e3 ksi"),
        ("M003", "aluminium_5052_h32", "poisson_ratio", "0.33"),
        ("M004", "aluminium_5052_h32", "density", "0.097 lb/in^3"),
        ("M005", "aluminium_6061_t6", "ultimate_strength", "42 ksi"),
        ("M005", "aluminium_6061_t6", "yield_strength", "35 ksi"),
        ("M005", "aluminium_6061_t6", "compressive_yield_strength", "35 ksi"),
        ("M006", "aluminium_6061_t6", "shear_strength", "27 ksi"),
        ("M006", "aluminium_6061_t6", "bearing_strength", "88 ksi"),
        ("M006", "aluminium_6061_t6", "bearing_yield_strength", "58 ksi"),
        ("M007", "aluminium_6061_t6", "youngs_modulus", "9.9e3 ksi"),
        ("M007", "aluminium_6061_t6", "compression_modulus", "10.1e3 ksi"),
        ("M007", "aluminium_6061_t6", "shear_modulus", "3.8e3 ksi"),
        ("M007", "aluminium_6061_t6", "poisson_ratio", "0.33"),
        ("M008", "aluminium_6061_t6", "density", "0.098 lb/in^3"),
        ("M009", "stainless_304", "ultimate_strength", "73 ksi"),
        ("M009", "stainless_304", "yield_strength", "26 ksi"),
        ("M009", "stainless_304", "compressive_yield_strength", "23 ksi"),
        ("M010", "stainless_304", "shear_strength", "50 ksi"),
        ("M010", "stainless_304", "bearing_strength", "162 ksi"),
        ("M010", "stainless_304", "bearing_yield_strength", "55 ksi"),
        ("M011", "stainless_304", "youngs_modulus", "29.0e3 ksi"),
        ("M011", "stainless_304", "compression_modulus", "28.0e3 ksi"),
        ("M011", "stainless_304", "shear_modulus", "11.2e3 ksi"),
        ("M011", "stainless_304", "poisson_ratio", "0.27"),
        ("M012", "stainless_304", "density", "0.286 lb/in^3"),
        ("M013", "steel_mild", "ultimate_strength", "55 ksi"),
        ("M013", "steel_mild", "yield_strength", "36 ksi"),
        ("M013", "steel_mild", "compressive_yield_strength", "36 ksi"),
        ("M013", "steel_mild", "shear_strength", "35 ksi"),
        ("M013", "steel_mild", "bearing_strength", "90 ksi"),
        ("M014", "steel_mild", "youngs_modulus", "29.0e3 ksi"),
        ("M014", "steel_mild", "compression_modulus", "29.0e3 ksi"),
        ("M014", "steel_mild", "shear_modulus", "11.0e3 ksi"),
        ("M014", "steel_mild", "poisson_ratio", "0.32"),
        ("M015", "steel_mild", "density", "0.284 lb/in^3"),
    ];
    for (id, key, property, text) in ROWS {
        let (found, basis, unverified) = si_of(key, property);
        assert_near(found, printed(text, property), 1e-12, &format!("[{id}] {key} {property}"));
        let guaranteed = property.ends_with("strength");
        assert_eq!(
            basis,
            if guaranteed { Basis::Minimum } else { Basis::Typical },
            "[{id}] {key} {property}"
        );
        assert!(!unverified, "[{id}] was read");
    }
}

#[test]
fn figures_of_data_sheets_are_the_printed_digits() {
    const ROWS: &[Row] = &[
        ("M025", "polycarbonate", "density", "1.20 g/cm^3"),
        ("M025", "polycarbonate", "youngs_modulus", "2300 MPa"),
        ("M025", "polycarbonate", "yield_strength", "60 MPa"),
        ("M025", "polycarbonate", "softening_temperature", "145 degC"),
        ("M027", "polycarbonate", "expansion", "65 um/(m K)"),
        ("M029", "acrylic_cast", "expansion", "72e-6 1/K"),
        ("M030", "acrylic_cast", "ultimate_strength", "62 MPa"),
        ("M030", "acrylic_cast", "shear_strength", "55 MPa"),
        ("M033", "petg_printed", "youngs_modulus", "2 GPa"),
        ("M033", "petg_printed", "ultimate_strength", "44 MPa"),
        ("M033", "petg_printed", "upright_strength", "25 MPa"),
        ("M040", "pa6_carbon_fibre", "youngs_modulus", "16 GPa"),
        ("M040", "pa6_carbon_fibre", "ultimate_strength", "210 MPa"),
        ("M040", "pa6_carbon_fibre", "density", "1.3 g/cm^3"),
        ("L001", "carbon_ply", "youngs_modulus_1", "20.01e6 psi"),
        ("L001", "carbon_ply", "youngs_modulus_2", "1.301e6 psi"),
        ("L001", "carbon_ply", "shear_modulus_12", "1.001e6 psi"),
        ("L001", "carbon_ply", "poisson_ratio_12", "0.3"),
        ("L011", "carbon_ply", "expansion_1", "-0.072e-6 1/delta_degF"),
        ("L011", "carbon_ply", "expansion_2", "32.4e-6 1/delta_degF"),
        ("L020", "carbon_quasi_isotropic", "expansion", "2.414e-6 1/delta_degF"),
    ];
    for (id, key, property, text) in ROWS {
        let (found, _, unverified) = si_of(key, property);
        assert_near(found, printed(text, property), 1e-12, &format!("[{id}] {key} {property}"));
        assert!(!unverified, "[{id}] was read");
    }
}

#[test]
fn recalled_figures_agree_and_say_that_they_are_unverified() {
    // Rows of the status MEMORY: unverified here too, or where another text was read for it not estimated.
    const ROWS: &[Row] = &[
        ("M018", "aluminium_6061_t6", "expansion", "23.6e-6 1/K"),
        ("M020", "steel_mild", "expansion", "12e-6 1/K"),
        ("M021", "aluminium_5754_h22", "youngs_modulus", "70000 MPa"),
        ("M021", "aluminium_5754_h22", "poisson_ratio", "0.3"),
        ("M021", "aluminium_5754_h22", "expansion", "23e-6 1/K"),
        ("M021", "aluminium_5754_h22", "density", "2700 kg/m^3"),
        ("M032", "abs_printed", "youngs_modulus", "2300 MPa"),
        ("M032", "asa_printed", "expansion", "90e-6 1/K"),
        ("M039", "pa6_dry", "youngs_modulus", "3200 MPa"),
        ("M039", "pa6_conditioned", "youngs_modulus", "1100 MPa"),
    ];
    for (id, key, property, text) in ROWS {
        let (found, basis, unverified) = si_of(key, property);
        assert_near(found, printed(text, property), 1e-12, &format!("[{id}] {key} {property}"));
        assert!(unverified, "[{id}] {key} {property} was not read");
        assert_ne!(basis, Basis::Measured);
    }
    // Recalled in the references, read second-hand or in a data page since.
    for (id, key, property, text) in [
        ("M018", "aluminium_5052_h32", "expansion", "23.8e-6 1/K"),
        ("M019", "stainless_304", "expansion", "16.0e-6 1/K"),
        ("M034", "petg_sheet", "expansion", "68e-6 1/K"),
    ] {
        let (found, _, unverified) = si_of(key, property);
        assert_near(found, printed(text, property), 1e-12, &format!("[{id}] {key} {property}"));
        assert!(!unverified, "[{id}] {key} {property}");
    }
}

#[test]
fn ranges_hold_the_recorded_values() {
    // M031: cast acrylic 2800 to 3200 MPa. M038: 0.2 to 0.3 % growth per 1 % of water. M026: 0.35 % at equilibrium.
    let (modulus, ..) = si_of("acrylic_cast", "youngs_modulus");
    assert!((2800e6..=3200e6).contains(&modulus), "[M031] {modulus}");
    let (swelling, ..) = si_of("pa6_conditioned", "swelling");
    assert!((0.2..=0.3).contains(&swelling), "[M038] {swelling}");
}

#[test]
fn moisture_uptake_is_the_printed_one() -> Result<(), Box<dyn std::error::Error>> {
    for (id, key, humidity, uptake) in [
        ("M026", "polycarbonate", 1.0, 0.0035),
        ("M035", "pa6_dry", 0.60, 0.035),
        ("M036", "pa6_conditioned", 0.95, 0.083),
    ] {
        let curve = find(key)?.moisture_uptake.ok_or("absent")?;
        let found = curve.at(humidity).ok_or("outside")?.value;
        assert_near(found, uptake, 1e-12, &format!("[{id}] {key}"));
    }
    Ok(())
}

#[test]
fn sponge_bands_are_those_of_the_grades() {
    // ASTM D1056, grade designation, second-hand [G001]: psi at 25 %.
    for (key, low, high) in [
        ("epdm_sponge_2a1", 2.0, 5.0),
        ("epdm_sponge_2a2", 5.0, 9.0),
        ("neoprene_sponge_2c3", 9.0, 13.0),
        ("nitrile_sponge_2b4", 13.0, 17.0),
        ("silicone_sponge_2d2", 5.0, 9.0),
        ("silicone_sponge_2d3", 9.0, 15.0),
        ("silicone_sponge_2d4", 15.0, 22.0),
        ("epdm_sponge_2a5", 17.0, 25.0),
        ("silicone_sponge_2d5", 22.0, 30.0),
    ] {
        // 1 psi = 6894.757293168 Pa.
        assert_near(si_of(key, "compression_deflection_low").0, low * 6894.757293168, 1e-12, key);
        assert_near(si_of(key, "compression_deflection_high").0, high * 6894.757293168, 1e-12, key);
    }
}

#[test]
fn rubber_moduli_follow_gent() {
    // A. N. Gent 1958, E = 0.0981 (56 + 7.62336 S) / (0.137505 (254 − 2.54 S)), second-hand [G008], ±0.001 MPa.
    for (key, shore_a) in [("epdm_solid_40", 40.0), ("nitrile_solid_60", 60.0), ("silicone_solid_80", 80.0)] {
        let gent = 0.0981 * (56.0 + 7.62336 * shore_a) / (0.137505 * (254.0 - 2.54 * shore_a));
        let (modulus, basis, _) = si_of(key, "youngs_modulus");
        assert!((modulus / 1e6 - gent).abs() <= 0.001, "{key}: {modulus} against {gent} MPa");
        assert_eq!(basis, Basis::Estimate);
        assert_eq!(si_of(key, "shore_a_hardness").0, shore_a);
    }
}

#[test]
fn quasi_isotropic_constants_are_those_of_its_plies() {
    // Independent route: the ply's stiffness turned to eight angles 22.5 degrees apart and averaged, by the
    // transformation of RP-1351 eq. for Qbar; the mean of equally spaced angles is the quasi-isotropic laminate.
    let (e1, e2, g12, nu12) = (20.01, 1.301, 1.001, 0.3);
    let nu21 = nu12 * e2 / e1;
    let (q11, q22) = (e1 / (1.0 - nu12 * nu21), e2 / (1.0 - nu12 * nu21));
    let (q12, q66) = (nu12 * q22, g12);
    let (mut a11, mut a12, mut a66) = (0.0, 0.0, 0.0);
    for step in 0..8 {
        let angle = f64::from(step) * PI / 8.0;
        let (s, c) = (math::sin(angle), math::cos(angle));
        let (s2, c2) = (s * s, c * c);
        a11 += (q11 * c2 * c2 + 2.0 * (q12 + 2.0 * q66) * s2 * c2 + q22 * s2 * s2) / 8.0;
        a12 += ((q11 + q22 - 4.0 * q66) * s2 * c2 + q12 * (s2 * s2 + c2 * c2)) / 8.0;
        a66 += ((q11 + q22 - 2.0 * q12 - 2.0 * q66) * s2 * c2 + q66 * (s2 * s2 + c2 * c2)) / 8.0;
    }
    let msi = 6894.757293168e6;
    let key = "carbon_quasi_isotropic";
    assert_near(si_of(key, "youngs_modulus").0, (a11 - a12 * a12 / a11) * msi, 2e-4, "E");
    assert_near(si_of(key, "poisson_ratio").0, a12 / a11, 2e-4, "nu");
    assert_near(si_of(key, "shear_modulus").0, a66 * msi, 2e-4, "G");
    // Expansion: the stiffness-weighted mean over all angles, (n1 + n2) / (2 (a11 + a12)).
    let (alpha1, alpha2) = (-0.072e-6, 32.4e-6);
    let (n1, n2) = (q11 * alpha1 + q12 * alpha2, q12 * alpha1 + q22 * alpha2);
    let expansion = (n1 + n2) / 2.0 / (a11 + a12);
    assert_near(si_of(key, "expansion").0, expansion * 1.8, 1e-3, "[L020] expansion");
}
