//! Materials of the document: one's own, or single values of known ones.

use coaming::material::{self, Basis, Figure, Material, MaterialKind};
use coaming::prelude::*;

/// A material of one's own, or a known one with some values replaced.
#[derive(Debug, Clone, PartialEq, Fields)]
pub struct MaterialOverride {
    /// Name by which layers call it.
    pub name: String,
    /// Name of the known material whose other values it has.
    pub like: Option<String>,
    /// Its kind; needed where it is like no known one.
    pub kind: Option<MaterialKind>,
    /// What the values rest on: `maker` or `measured`.
    pub basis: Option<Basis>,
    /// Where the values come from, in words.
    pub origin: Option<String>,
    /// Density.
    #[shown_in("kg/m^3")]
    pub density: Option<MassDensity>,
    /// Young's modulus in tension, short-time at room temperature; in the plane of a laminate or of printed layers.
    #[shown_in("GPa")]
    pub youngs_modulus: Option<Pressure>,
    /// Young's modulus in compression.
    #[shown_in("GPa")]
    pub compression_modulus: Option<Pressure>,
    /// Shear modulus; for an adhesive that of the bond line.
    #[shown_in("MPa")]
    pub shear_modulus: Option<Pressure>,
    /// Poisson's ratio.
    pub poisson_ratio: Option<f64>,
    /// Young's modulus along the fibres, E1.
    #[shown_in("GPa")]
    pub youngs_modulus_1: Option<Pressure>,
    /// Young's modulus across the fibres in the ply, E2.
    #[shown_in("GPa")]
    pub youngs_modulus_2: Option<Pressure>,
    /// Shear modulus in the ply, G12.
    #[shown_in("GPa")]
    pub shear_modulus_12: Option<Pressure>,
    /// Poisson's ratio of the ply, strain across over strain along under a pull along the fibres, ν12.
    pub poisson_ratio_12: Option<f64>,
    /// Thermal expansion; in the plane of a laminate or of printed layers.
    #[shown_in("um/(m·K)")]
    pub expansion: Option<Expansion>,
    /// Thermal expansion along the fibres.
    #[shown_in("um/(m·K)")]
    pub expansion_1: Option<Expansion>,
    /// Thermal expansion across the fibres, or upright to printed layers.
    #[shown_in("um/(m·K)")]
    pub expansion_2: Option<Expansion>,
    /// Yield strength: 0.2 % proof stress of a metal in its weaker direction, yield stress of a plastic.
    #[shown_in("MPa")]
    pub yield_strength: Option<Pressure>,
    /// Tensile strength.
    #[shown_in("MPa")]
    pub ultimate_strength: Option<Pressure>,
    /// Tensile strength upright to printed layers.
    #[shown_in("MPa")]
    pub upright_strength: Option<Pressure>,
    /// Elongation at break.
    pub elongation: Option<f64>,
    /// Compressive yield strength, in the weaker direction.
    #[shown_in("MPa")]
    pub compressive_yield_strength: Option<Pressure>,
    /// Shear strength; for an adhesive that of the bond line.
    #[shown_in("MPa")]
    pub shear_strength: Option<Pressure>,
    /// Bearing strength at an edge distance of two diameters.
    #[shown_in("MPa")]
    pub bearing_strength: Option<Pressure>,
    /// Bearing yield strength at an edge distance of two diameters.
    #[shown_in("MPa")]
    pub bearing_yield_strength: Option<Pressure>,
    /// Highest tensile stress that may stand for years, at room temperature without an aggressive chemical.
    #[shown_in("MPa")]
    pub sustained_stress: Option<Pressure>,
    /// Highest tensile strain that may stand for years, at room temperature without an aggressive chemical.
    pub sustained_strain: Option<f64>,
    /// Highest shear strain of a bond line that returns with each change of temperature.
    pub cyclic_shear_strain: Option<f64>,
    /// Movement capability of a sealant, over the width of the joint.
    pub movement_capability: Option<f64>,
    /// Hardness, Shore A.
    pub shore_a_hardness: Option<f64>,
    /// Lowest pressure of the grade at 25 % compression.
    #[shown_in("kPa")]
    pub compression_deflection_low: Option<Pressure>,
    /// Highest pressure of the grade at 25 % compression.
    #[shown_in("kPa")]
    pub compression_deflection_high: Option<Pressure>,
    /// Highest temperature for continuous service.
    #[shown_in("degC")]
    pub service_temperature: Option<Temperature>,
    /// Lowest temperature for service.
    #[shown_in("degC")]
    pub lowest_temperature: Option<Temperature>,
    /// Softening temperature: Vicat, or deflection under load where the condition says so.
    #[shown_in("degC")]
    pub softening_temperature: Option<Temperature>,
    /// Linear swelling over mass of water taken up, per unit of either.
    pub swelling: Option<f64>,
    /// Thermal conductivity; through the thickness of a laminate.
    #[shown_in("W/(m·K)")]
    pub thermal_conductivity: Option<ThermalConductivity>,
    /// Emissivity of the bare surface for radiation of its own warmth.
    pub emissivity: Option<f64>,
    /// Share of the sun that the bare surface takes up.
    pub solar_absorptance: Option<f64>,
}

impl MaterialOverride {
    /// The record that it describes.
    ///
    /// # Errors
    /// [`Error::UnknownMaterial`] where it is like a material that is not known, [`Error::Missing`] where it is like none
    /// and has no kind, [`Error::NotAnOption`] for a basis that a document cannot give.
    pub fn material(&self, path: &str) -> Result<Material, Error> {
        let mut record = match (&self.like, self.kind) {
            (Some(like), _) => material::find(like).map_err(|error| at(error, &format!("{path}.like")))?,
            (None, Some(kind)) => Material::new(self.name.clone(), self.name.clone(), kind),
            (None, None) => {
                return Err(Error::Missing {
                    field: format!("{path}.kind"),
                    needed: "the kind of a material that is like no known one".to_owned(),
                });
            }
        };
        let condition = self.origin.clone().unwrap_or_default();
        let figure = |value: f64| match self.basis {
            Some(Basis::Measured) => Ok(Figure::measured(value, condition.clone())),
            Some(Basis::Maker) | None => Ok(Figure::maker(value, condition.clone())),
            Some(other) => Err(Error::NotAnOption {
                field: format!("{path}.basis"),
                value: Choice::name(other).to_owned(),
                accepted: "maker, measured".to_owned(),
                nearest: None,
            }),
        };
        record.key = self.name.clone().into();
        for (place, field) in Self::RECORD.fields.iter().enumerate() {
            if let Some(value) = self.get(place) {
                record.set(field.name, figure(value)?)?;
            }
        }
        Ok(record)
    }
}

/// Puts the document's path into a refusal of the material table.
pub(crate) fn at(error: Error, path: &str) -> Error {
    match error {
        Error::UnknownMaterial { name, nearest, .. } => {
            Error::UnknownMaterial { field: path.to_owned(), name, nearest }
        }
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_property_of_a_record_can_be_replaced() {
        let own: Vec<&str> = MaterialOverride::RECORD.fields.iter().skip(5).map(|field| field.name).collect();
        let known: Vec<&str> = Material::PROPERTIES.iter().map(|property| property.name).collect();
        assert_eq!(own, known);
    }
}
