//! Every figure of a record, ready to be printed and counted.

use super::curve::Curve;
use super::figure::Figure;
use super::record::Material;
use crate::prelude::*;

/// One figure of a record, ready to be printed.
#[derive(Debug, Clone, PartialEq)]
pub struct NamedFigure {
    /// The property's name.
    pub property: &'static str,
    /// The property in words.
    pub doc: &'static str,
    /// The place on a curve, such as `60 degC, 1000 h`; empty for a single figure.
    pub place: String,
    /// The value with its shop unit, rounded for people.
    pub shown: String,
    /// The value in SI units, its basis, source and condition.
    pub figure: Figure<f64>,
}

impl Material {
    /// Every figure of the record, single ones first, then the points of its curves: for printing and counting.
    pub fn figures(&self) -> Vec<NamedFigure> {
        let mut all: Vec<NamedFigure> = self
            .single_figures()
            .into_iter()
            .map(|(property, figure)| {
                named(
                    property.name,
                    property.doc,
                    String::new(),
                    property.kind.dimension(),
                    property.unit,
                    figure,
                )
            })
            .collect();
        let pressure = Pressure::KIND.dimension();
        for point in self.modulus_over_temperature.iter().flat_map(Curve::points) {
            let figure = point.figure.with_value(point.figure.value.value);
            all.push(named(
                "modulus_over_temperature",
                "Young's modulus over temperature.",
                point.at.shown(),
                pressure,
                "GPa",
                figure,
            ));
        }
        for line in &self.creep {
            for point in line.factor.points() {
                let time = point.at.value;
                let after =
                    if time < 3600.0 { point.at.shown() } else { format!("{} h", rounded(time / 3600.0, 4)) };
                let place = format!("{}, {after}", line.temperature.shown());
                let doc = "Creep modulus over short-time modulus.";
                all.push(named("creep", doc, place, None, "", point.figure.clone()));
            }
        }
        for point in self.moisture_uptake.iter().flat_map(Curve::points) {
            let place = format!("{} % relative humidity", rounded(point.at * 100.0, 4));
            let doc = "Mass of water taken up over dry mass.";
            all.push(named("moisture_uptake", doc, place, None, "", point.figure.clone()));
        }
        all
    }
}

fn named(
    property: &'static str,
    doc: &'static str,
    place: String,
    dimension: Option<&'static Dimension>,
    unit: &'static str,
    figure: Figure<f64>,
) -> NamedFigure {
    // The moduli of a table run from 0.3 MPa to 200 GPa.
    let unit = match unit {
        "GPa" | "MPa" if figure.value >= 1.0e10 => "GPa",
        "GPa" => "MPa",
        other => other,
    };
    let shown = match dimension {
        Some(dimension) => for_people(figure.value, dimension, unit, System::Shop),
        None => rounded(figure.value, 4),
    };
    NamedFigure { property, doc, place, shown, figure }
}
