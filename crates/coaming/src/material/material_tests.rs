//! What must hold of every record, and interpolation, lookup, compatibility and the galvanic table by hand.

use std::collections::BTreeSet;

use super::*;
use crate::prelude::*;

type Outcome = Result<(), Box<dyn std::error::Error>>;

#[test]
fn keys_are_unique_and_found() -> Outcome {
    let keys = keys();
    assert_eq!(keys.iter().collect::<BTreeSet<_>>().len(), keys.len());
    for key in keys {
        let record = find(key)?;
        assert_eq!(record.key, key);
        assert!(key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_'), "{key}");
        assert!(!record.name.is_empty() && !record.designation.is_empty(), "{key}");
    }
    Ok(())
}

#[test]
fn a_record_of_every_kind_is_there() -> Outcome {
    for key in [
        "aluminium_5052_h32",
        "aluminium_5754_h22",
        "aluminium_6061_t6",
        "aluminium_3003_h14",
        "steel_mild",
        "stainless_304",
        "stainless_316",
        "titanium_grade_2",
        "polycarbonate",
        "acrylic_cast",
        "petg_sheet",
        "pa6_dry",
        "pa6_conditioned",
        "pa6_carbon_fibre",
        "pa12_powder_bed",
        "asa_printed",
        "abs_printed",
        "petg_printed",
        "carbon_quasi_isotropic",
        "carbon_ply",
        "glass_laminate",
        "silicone_neutral",
        "polyurethane_flexible",
        "epoxy_rigid",
        "epoxy_toughened",
        "acrylic_foam_tape",
    ] {
        find(key)?;
    }
    Ok(())
}

#[test]
fn every_figure_is_finite_and_says_where_it_comes_from() {
    for record in all() {
        let figures = record.figures();
        assert!(!figures.is_empty(), "{} is empty", record.key);
        for NamedFigure { property, place, shown, figure, .. } in figures {
            let what = format!("{} {property} {place}", record.key);
            assert!(figure.value.is_finite(), "{what}");
            assert!(!figure.source.title.is_empty() && !shown.is_empty(), "{what}");
            let may_be_negative = property == "expansion_1";
            let may_be_zero = property == "moisture_uptake";
            assert!(figure.value > 0.0 || may_be_negative || (may_be_zero && figure.value == 0.0), "{what}");
            if matches!(property, "poisson_ratio" | "poisson_ratio_12") {
                assert!(figure.value < 0.5, "{what}");
            }
            if matches!(property, "emissivity" | "solar_absorptance" | "creep" | "moisture_uptake") {
                assert!(figure.value <= 1.0, "{what}");
            }
            // What was not looked up says so when it is printed.
            assert_eq!(figure.is_unverified(), figure.source.to_string().contains("unverified"), "{what}");
        }
    }
}

#[test]
fn figures_are_shown_in_the_unit_that_suits_their_size() -> Outcome {
    let shown = |key: &str, property: &str| -> Result<String, Error> {
        let figures = find(key)?.figures();
        Ok(figures
            .into_iter()
            .find(|f| f.property == property)
            .map_or_else(String::new, |figure| figure.shown))
    };
    assert_eq!(shown("aluminium_5052_h32", "youngs_modulus")?, "69.64 GPa");
    assert_eq!(shown("polycarbonate", "youngs_modulus")?, "2300 MPa");
    assert_eq!(shown("silicone_neutral", "youngs_modulus")?, "0.35 MPa");
    assert_eq!(shown("polycarbonate", "expansion")?, "65 um/(m·K)");
    assert_eq!(shown("epdm_sponge_2a1", "compression_deflection_high")?, "34.47 kPa");
    assert_eq!(shown("polycarbonate", "service_temperature")?, "115 degC");
    Ok(())
}

#[test]
fn curves_rise_and_meet_the_single_figure() -> Outcome {
    for record in all() {
        if let Some(curve) = &record.modulus_over_temperature {
            curve.clone().checked()?;
            let at_room = curve.at(celsius(23.0)).ok_or("outside")?;
            assert_eq!(
                Some(at_room.value),
                record.youngs_modulus.as_ref().map(|figure| figure.value),
                "{}",
                record.key
            );
            assert!(
                curve
                    .points()
                    .windows(2)
                    .all(|pair| matches!(pair, [a, b] if a.figure.value > b.figure.value))
            );
        }
        for line in &record.creep {
            line.factor.clone().checked()?;
            assert!(
                line.factor
                    .points()
                    .windows(2)
                    .all(|pair| matches!(pair, [a, b] if a.figure.value > b.figure.value))
            );
        }
        assert!(record.creep.windows(2).all(|pair| matches!(pair, [a, b] if a.temperature < b.temperature)));
        if let Some(curve) = &record.moisture_uptake {
            curve.clone().checked()?;
        }
        for (low, high) in [
            (&record.compression_deflection_low, &record.compression_deflection_high),
            (&record.sustained_stress, &record.ultimate_strength),
            (&record.yield_strength, &record.ultimate_strength),
        ] {
            if let (Some(low), Some(high)) = (low, high) {
                assert!(low.value <= high.value, "{}", record.key);
            }
        }
    }
    Ok(())
}

#[test]
fn interpolation_by_hand() -> Outcome {
    let sheet = find("polycarbonate")?;
    // Halfway between 2100 MPa at 60 and 2000 MPa at 80 degC.
    let modulus = sheet.youngs_modulus_at(celsius(70.0)).ok_or("outside")?;
    assert!((modulus.value.value - 2050e6).abs() < 1.0);
    assert!(modulus.is_unverified() && modulus.basis == Basis::Estimate);
    assert!(sheet.youngs_modulus_at(celsius(121.0)).is_none());
    // At 10 s nothing has crept. In the middle of log time, √1000 h, between 2200/2400 and 1900/2400: 2050/2400.
    let factor =
        |temperature: f64, time: Time| sheet.creep_factor(celsius(temperature), time).map(|f| f.value);
    assert_eq!(factor(23.0, second(5.0)), Some(1.0));
    let middle = factor(23.0, hour(1000.0_f64.sqrt())).ok_or("outside")?;
    assert!((middle - 2050.0 / 2400.0).abs() < 1e-12, "{middle}");
    // Colder than the coldest line: that line. Between the lines at 41.5 degC: the mean of 1900/2400 and 0.68.
    assert_eq!(factor(-15.0, hour(1000.0)), factor(23.0, hour(1000.0)));
    let between = factor(41.5, hour(1000.0)).ok_or("outside")?;
    assert!((between - (1900.0 / 2400.0 + 0.68) / 2.0).abs() < 1e-12, "{between}");
    assert!(factor(61.0, hour(1000.0)).is_none() && factor(23.0, hour(2e5)).is_none());
    // PA6 from dry to 90 %: 0.25 × (0.035 + (0.083 − 0.035) × 30/35) = 1.904 %. Back is the same with a minus.
    let frame = find("pa6_dry")?;
    let swell = frame.moisture_strain(0.0, 0.9).ok_or("outside")?;
    assert!((swell.value - 0.25 * (0.035 + 0.048 * 30.0 / 35.0)).abs() < 1e-15, "{}", swell.value);
    assert!(swell.is_unverified());
    let back = frame.moisture_strain(0.9, 0.0).ok_or("outside")?;
    assert_eq!(back.value, -swell.value);
    assert!(frame.moisture_strain(0.0, 1.1).is_none());
    // Metals: steady near room temperature, no creep, no moisture.
    let metal = find("aluminium_5052_h32")?;
    assert_eq!(metal.youngs_modulus_at(celsius(55.0)), metal.youngs_modulus);
    assert!(metal.youngs_modulus_at(celsius(150.0)).is_none());
    assert_eq!(metal.creep_factor(celsius(55.0), hour(1e6)).map(|f| f.value), Some(1.0));
    assert_eq!(metal.moisture_strain(0.1, 0.9).map(|f| f.value), Some(0.0));
    Ok(())
}

#[test]
fn a_curve_refuses_points_that_cannot_be() {
    let point = |at: f64, value: f64| Point { at, figure: Figure::measured(value, "by hand") };
    assert!(Curve::straight(vec![point(0.0, 1.0), point(1.0, 2.0)]).is_ok());
    assert!(Curve::<f64, f64>::straight(vec![]).is_err());
    assert!(Curve::straight(vec![point(1.0, 1.0), point(1.0, 2.0)]).is_err());
    assert!(Curve::straight(vec![point(2.0, 1.0), point(1.0, 2.0)]).is_err());
    assert!(Curve::straight(vec![point(0.0, f64::NAN)]).is_err());
    assert!(Curve::over_logarithm(vec![point(0.0, 1.0), point(1.0, 2.0)]).is_err());
}

#[test]
fn lookup_forgives_spelling_and_names_what_is_near() {
    assert_eq!(find(" Aluminium 5052-H32").map(|record| record.key), Ok("aluminium_5052_h32".into()));
    let near = |name: &str| match find(name) {
        Err(Error::UnknownMaterial { nearest, .. }) => nearest,
        _ => None,
    };
    assert!(near("polycarbonat").is_some_and(|names| names.starts_with("polycarbonate")));
    assert!(near("epdm_sponge").is_some_and(|names| names.matches("epdm_sponge").count() == 3));
    assert_eq!(near("%%%"), None);
    assert!(find("%%%").is_err());
}

#[test]
fn a_caller_sets_figures_of_their_own() -> Outcome {
    let mut record = find("polycarbonate")?;
    record.youngs_modulus = Some(Figure::maker(megapascal(2350.0), "maker's sheet, ISO 527"));
    record.set("density", Figure::measured(1195.0, "weighed"))?;
    assert_eq!(
        record.density.as_ref().map(|figure| (figure.value.value, figure.basis)),
        Some((1195.0, Basis::Measured))
    );
    let counted = shares(&[record.clone()]);
    assert_eq!(counted.given, 2);
    assert!(matches!(
        record.set("densitty", Figure::measured(1.0, "")),
        Err(Error::UnknownKey { nearest: Some(near), .. }) if near.starts_with("density")
    ));
    assert!(matches!(record.set("density", Figure::measured(f64::NAN, "")), Err(Error::NotFinite { .. })));
    assert!(Material::new("mine", "my sheet", MaterialKind::ClearPlastic).figures().is_empty());
    Ok(())
}

#[test]
fn shares_add_up() {
    let counted = shares(&all());
    assert_eq!(counted.minimum + counted.typical + counted.estimate + counted.given, counted.total);
    let standings =
        counted.read + counted.second_hand + counted.computed + counted.common_practice + counted.unverified;
    assert_eq!(standings, counted.total);
    assert_eq!(counted.total, all().iter().map(|record| record.figures().len()).sum::<usize>());
    assert_eq!(shares(&[]).of_total(0), 0.0);
}

#[test]
fn compatibility_is_never_a_bare_yes() {
    let mut seen = BTreeSet::new();
    for row in compatibility_rows() {
        assert!(seen.insert((row.family, row.agent)), "{:?} {:?} stands twice", row.family, row.agent);
        assert!(row.reason.len() > 4 && !row.source.title.is_empty(), "{:?} {:?}", row.family, row.agent);
    }
    let verdict = |family, agent| compatibility(family, agent).map(|row| row.verdict);
    // The hazards that the trade knows best, by common practice.
    for (family, agent) in [
        (Family::Polycarbonate, Agent::AnaerobicThreadlocker),
        (Family::Polycarbonate, Agent::AcetoxySilicone),
        (Family::Polycarbonate, Agent::PlasticisedPvc),
        (Family::Polycarbonate, Agent::Ketones),
        (Family::Epdm, Agent::RubberBasedAdhesive),
        (Family::Epdm, Agent::MineralOil),
    ] {
        assert_eq!(verdict(family, agent), Some(Compatibility::Avoid), "{family:?} {agent:?}");
    }
    assert_eq!(
        verdict(Family::Polycarbonate, Agent::NeutralSilicone),
        Some(Compatibility::TestOnAStressedStrip)
    );
    // Silence is not a yes.
    assert_eq!(verdict(Family::EpoxyLaminate, Agent::PlasticisedPvc), None);
}

#[test]
fn galvanic_pairs_by_hand() -> Outcome {
    // Index −0.50 V for 18 % chromium steel, −0.90 V for aluminium: 0.40 V [Z005], limits 0.15/0.25/0.50 V [Z004].
    let pair = |exposure| galvanic_pair(GalvanicGroup::StainlessSteel, GalvanicGroup::Aluminium, exposure);
    let harsh = pair(Exposure::Harsh).ok_or("no pair")?;
    assert!((harsh.difference_high - 0.40).abs() < 1e-12 && harsh.limit == 0.15 && !harsh.is_within_limit());
    assert_eq!(harsh.corrodes, Some(GalvanicGroup::Aluminium));
    assert!(pair(Exposure::Controlled).is_some_and(|pair| pair.limit == 0.50 && pair.is_within_limit()));
    assert!(pair(Exposure::Normal).is_some_and(|pair| pair.limit == 0.25 && !pair.is_within_limit()));
    // Seawater: graphite 0.2..0.3 V, aluminium −1.00..−0.76 V [Z006]: 0.96 to 1.30 V, either way round.
    for (one, other) in
        [(GalvanicGroup::Carbon, GalvanicGroup::Aluminium), (GalvanicGroup::Aluminium, GalvanicGroup::Carbon)]
    {
        let carbon = galvanic_pair(one, other, Exposure::Controlled).ok_or("no pair")?;
        assert!(
            (carbon.difference_low - 0.96).abs() < 1e-12 && (carbon.difference_high - 1.30).abs() < 1e-12
        );
        assert!(!carbon.is_within_limit() && carbon.corrodes == Some(GalvanicGroup::Aluminium));
        assert_eq!(carbon.source.standing, Standing::SecondHand);
    }
    let same = galvanic_pair(GalvanicGroup::Zinc, GalvanicGroup::Zinc, Exposure::Harsh).ok_or("no pair")?;
    assert!(same.is_within_limit() && same.corrodes.is_none());
    Ok(())
}

#[test]
fn finishes_can_be_and_are_found() -> Outcome {
    for each in finishes() {
        assert_eq!(finish(each.key)?.name, each.name);
        for figure in [&each.emissivity, &each.solar_absorptance] {
            assert!(
                figure.value > 0.0 && figure.value <= 1.0 && !figure.source.title.is_empty(),
                "{}",
                each.key
            );
        }
    }
    assert!(
        matches!(finish("grey_pant"), Err(Error::NotAnOption { nearest: Some(near), .. }) if near.contains("grey_paint"))
    );
    Ok(())
}
