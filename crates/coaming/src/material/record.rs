//! The record of one material.

use std::borrow::Cow;

use super::agent::{Agent, Family};
use super::curve::Curve;
use super::figure::Figure;
use super::galvanic::GalvanicGroup;
use crate::declaration::Kind;
use crate::prelude::*;

/// What kind of material a record describes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Choice)]
#[non_exhaustive]
pub enum MaterialKind {
    /// Sheet, screw or insert metal.
    Metal,
    /// Window sheet.
    ClearPlastic,
    /// Plastic printed by extrusion or by powder-bed fusion.
    PrintedPlastic,
    /// Fibres in a resin: a whole laminate or one ply.
    Laminate,
    /// Cellular rubber or foam.
    Sponge,
    /// Solid rubber.
    SolidRubber,
    /// Adhesive, sealant or tape.
    Adhesive,
}

/// What is known of how a material burns: always referred to a specialist, never judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Flammability {
    /// One sentence.
    pub note: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// The share of the short-time modulus that is left after a time under load, at one temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct CreepLine {
    /// Temperature of the test.
    pub temperature: Temperature,
    /// Creep modulus over short-time modulus, over time under load.
    pub factor: Curve<Time, f64>,
}

/// A property that a record can have as a single figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Property {
    /// Its name, the same in every language and document.
    pub name: &'static str,
    /// Its doc line.
    pub doc: &'static str,
    /// Its kind: a quantity with its dimension, or a plain number.
    pub kind: Kind,
    /// The unit it is shown in; empty for a plain number.
    pub unit: &'static str,
}

macro_rules! record {
    ($( #[doc = $doc:literal] $name:ident: $quantity:ty, shown in $unit:literal; )+) => {
        /// Everything that is known of one material. A property without a source is absent; a caller sets any of
        /// them with a figure of their own: `steel.density = Some(Figure::measured(kilogram_per_cubic_meter(7850.0),
        /// "weighed"))`.
        #[derive(Debug, Clone, PartialEq)]
        pub struct Material {
            /// The key it is found by, in snake case.
            pub key: Cow<'static, str>,
            /// Its name as the trade writes it.
            pub name: Cow<'static, str>,
            /// What kind of material it is.
            pub kind: MaterialKind,
            /// The standard's designation, such as `EN 1.4301`; empty where there is none.
            pub designation: Cow<'static, str>,
            /// Form, state and what to beware of, in plain sentences.
            pub note: Cow<'static, str>,
            /// The family under which its compatibility with chemicals is listed.
            pub family: Option<Family>,
            /// What it is to a neighbour as a chemical: a sealant, an adhesive, a plasticised gasket.
            pub agent: Option<Agent>,
            /// Its group in the galvanic table.
            pub galvanic_group: Option<GalvanicGroup>,
            /// How it burns.
            pub flammability: Option<Flammability>,
            $( #[doc = $doc] pub $name: Option<Figure<$quantity>>, )+
            /// Young's modulus over temperature.
            pub modulus_over_temperature: Option<Curve<Temperature, Pressure>>,
            /// Creep, one line for each temperature of test, coldest first.
            pub creep: Vec<CreepLine>,
            /// Mass of water taken up over dry mass, over relative humidity from 0 to 1, in equilibrium at 23 degC.
            pub moisture_uptake: Option<Curve<f64, f64>>,
        }

        impl Material {
            /// The properties that a record can have as a single figure, in the order of the record.
            pub const PROPERTIES: &'static [Property] = &[$( Property {
                name: stringify!($name),
                doc: $doc,
                kind: <$quantity as Value>::KIND,
                unit: $unit,
            }, )+];

            /// A record with nothing known but its key, name and kind: for a caller's own material.
            pub fn new(
                key: impl Into<Cow<'static, str>>,
                name: impl Into<Cow<'static, str>>,
                kind: MaterialKind,
            ) -> Self {
                Self {
                    key: key.into(),
                    name: name.into(),
                    kind,
                    designation: Cow::Borrowed(""),
                    note: Cow::Borrowed(""),
                    family: None,
                    agent: None,
                    galvanic_group: None,
                    flammability: None,
                    $( $name: None, )+
                    modulus_over_temperature: None,
                    creep: Vec::new(),
                    moisture_uptake: None,
                }
            }

            /// Sets a property by its name, from SI units: for documents, which name it in text.
            ///
            /// # Errors
            /// [`Error::UnknownKey`] for a name that no property has, [`Error::NotFinite`] for a value that is not
            /// finite.
            pub fn set(&mut self, property: &str, figure: Figure<f64>) -> Result<(), Error> {
                if !figure.value.is_finite() {
                    return Err(Error::NotFinite { field: property.to_owned() });
                }
                match property {
                    $( stringify!($name) => {
                        self.$name = <$quantity as Value>::from_si(figure.value).map(|value| figure.with_value(value));
                        Ok(())
                    } )+
                    _ => Err(Error::UnknownKey {
                        field: property.to_owned(),
                        nearest: super::lookup::most_alike(property, Self::PROPERTIES.iter().map(|p| p.name)),
                    }),
                }
            }

            /// The single figures of the record, in the order of its properties.
            pub(super) fn single_figures(&self) -> Vec<(&'static Property, Figure<f64>)> {
                let values = [$( self.$name.as_ref().and_then(|figure| {
                    figure.value.si().map(|si| figure.with_value(si))
                }), )+];
                Self::PROPERTIES.iter().zip(values).filter_map(|(property, figure)| Some((property, figure?))).collect()
            }
        }
    };
}

record! {
    /// Density.
    density: MassDensity, shown in "kg/m^3";
    /// Young's modulus in tension, short-time at room temperature; in the plane of a laminate or of printed layers.
    youngs_modulus: Pressure, shown in "GPa";
    /// Young's modulus in compression.
    compression_modulus: Pressure, shown in "GPa";
    /// Shear modulus; for an adhesive that of the bond line.
    shear_modulus: Pressure, shown in "MPa";
    /// Poisson's ratio.
    poisson_ratio: f64, shown in "";
    /// Young's modulus along the fibres, E1.
    youngs_modulus_1: Pressure, shown in "GPa";
    /// Young's modulus across the fibres in the ply, E2.
    youngs_modulus_2: Pressure, shown in "GPa";
    /// Shear modulus in the ply, G12.
    shear_modulus_12: Pressure, shown in "GPa";
    /// Poisson's ratio of the ply, strain across over strain along under a pull along the fibres, ν12.
    poisson_ratio_12: f64, shown in "";
    /// Thermal expansion; in the plane of a laminate or of printed layers.
    expansion: Expansion, shown in "um/(m·K)";
    /// Thermal expansion along the fibres.
    expansion_1: Expansion, shown in "um/(m·K)";
    /// Thermal expansion across the fibres, or upright to printed layers.
    expansion_2: Expansion, shown in "um/(m·K)";
    /// Yield strength: 0.2 % proof stress of a metal in its weaker direction, yield stress of a plastic.
    yield_strength: Pressure, shown in "MPa";
    /// Tensile strength.
    ultimate_strength: Pressure, shown in "MPa";
    /// Tensile strength upright to printed layers.
    upright_strength: Pressure, shown in "MPa";
    /// Elongation at break.
    elongation: f64, shown in "";
    /// Compressive yield strength, in the weaker direction.
    compressive_yield_strength: Pressure, shown in "MPa";
    /// Shear strength; for an adhesive that of the bond line.
    shear_strength: Pressure, shown in "MPa";
    /// Bearing strength at an edge distance of two diameters.
    bearing_strength: Pressure, shown in "MPa";
    /// Bearing yield strength at an edge distance of two diameters.
    bearing_yield_strength: Pressure, shown in "MPa";
    /// Highest tensile stress that may stand for years, at room temperature without an aggressive chemical.
    sustained_stress: Pressure, shown in "MPa";
    /// Highest tensile strain that may stand for years, at room temperature without an aggressive chemical.
    sustained_strain: f64, shown in "";
    /// Highest shear strain of a bond line that returns with each change of temperature.
    cyclic_shear_strain: f64, shown in "";
    /// Movement capability of a sealant, over the width of the joint.
    movement_capability: f64, shown in "";
    /// Hardness, Shore A.
    shore_a_hardness: f64, shown in "";
    /// Lowest pressure of the grade at 25 % compression.
    compression_deflection_low: Pressure, shown in "kPa";
    /// Highest pressure of the grade at 25 % compression.
    compression_deflection_high: Pressure, shown in "kPa";
    /// Highest temperature for continuous service.
    service_temperature: Temperature, shown in "degC";
    /// Lowest temperature for service.
    lowest_temperature: Temperature, shown in "degC";
    /// Softening temperature: Vicat, or deflection under load where the condition says so.
    softening_temperature: Temperature, shown in "degC";
    /// Linear swelling over mass of water taken up, per unit of either.
    swelling: f64, shown in "";
    /// Thermal conductivity; through the thickness of a laminate.
    thermal_conductivity: ThermalConductivity, shown in "W/(m·K)";
    /// Emissivity of the bare surface for radiation of its own warmth.
    emissivity: f64, shown in "";
    /// Share of the sun that the bare surface takes up.
    solar_absorptance: f64, shown in "";
}
