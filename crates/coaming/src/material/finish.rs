//! Surfaces: what a face radiates and what it takes up from the sun. A layer's finish overrides its bare surface.

use super::figure::{Basis, Figure};
use super::lookup::most_alike;
use super::sources::{COATING_TABLE, EMISSIVITY_NOTES, EMISSIVITY_TABLE, SOLAR_TABLE, place, unverified};
use crate::prelude::*;

/// A surface finish.
#[derive(Debug, Clone, PartialEq)]
pub struct Finish {
    /// Its key in documents.
    pub key: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Emissivity for radiation of its own warmth.
    pub emissivity: Figure<f64>,
    /// Share of the sun that it takes up.
    pub solar_absorptance: Figure<f64>,
}

/// The finish by its key.
///
/// # Errors
/// [`Error::NotAnOption`] with the nearest key.
pub fn finish(key: &str) -> Result<Finish, Error> {
    let known: Vec<&str> = ROWS.iter().map(|row| row.key).collect();
    ROWS.iter().find(|row| row.key == key).map(Row::finish).ok_or_else(|| Error::NotAnOption {
        field: "finish".to_owned(),
        value: key.to_owned(),
        accepted: known.join(", "),
        nearest: most_alike(key, known.iter().copied()),
    })
}

/// All finishes.
pub fn finishes() -> Vec<Finish> {
    ROWS.iter().map(Row::finish).collect()
}

struct Row {
    key: &'static str,
    name: &'static str,
    emissivity: (f64, Source),
    solar_absorptance: (f64, Source),
}

impl Row {
    fn finish(&self) -> Finish {
        let figure = |(value, source): (f64, Source)| {
            let basis = if source.standing.is_unverified() { Basis::Estimate } else { Basis::Typical };
            Figure { value, basis, source, condition: "".into() }
        };
        Finish {
            key: self.key,
            name: self.name,
            emissivity: figure(self.emissivity),
            solar_absorptance: figure(self.solar_absorptance),
        }
    }
}

const PAINT: Source = unverified("generic powder-coat and paint data", "by shade");

const ROWS: &[Row] = &[
    Row {
        key: "mill_aluminium",
        name: "aluminium, bare sheet as received",
        emissivity: (0.09, place(EMISSIVITY_TABLE, "aluminium, as received, sheet, 100 degC")),
        solar_absorptance: (0.15, place(SOLAR_TABLE, "aluminium sheet")),
    },
    Row {
        key: "anodised_aluminium",
        name: "aluminium, clear anodised",
        emissivity: (0.55, place(EMISSIVITY_TABLE, "aluminium, anodised sheet, 100 degC")),
        solar_absorptance: (0.14, place(SOLAR_TABLE, "aluminium, anodised")),
    },
    Row {
        key: "galvanised_steel",
        name: "steel, galvanised, some months old",
        emissivity: (0.28, place(EMISSIVITY_TABLE, "iron, galvanised, sheet, oxidised, 20 degC")),
        solar_absorptance: (0.64, place(SOLAR_TABLE, "iron, galvanised, new")),
    },
    Row {
        key: "polished_stainless",
        name: "stainless steel, polished",
        emissivity: (0.16, place(EMISSIVITY_TABLE, "stainless steel, look-up list")),
        solar_absorptance: (0.33, place(SOLAR_TABLE, "stainless steel, polished")),
    },
    Row {
        key: "white_paint",
        name: "white enamel paint",
        emissivity: (0.92, place(EMISSIVITY_TABLE, "lacquer, white, 100 degC")),
        solar_absorptance: (0.252, place(COATING_TABLE, "white enamel")),
    },
    Row {
        key: "light_grey_paint",
        name: "light grey paint",
        emissivity: (0.94, place(EMISSIVITY_NOTES, "various oil paints, 40 degC, median")),
        solar_absorptance: (0.50, PAINT),
    },
    Row {
        key: "grey_paint",
        name: "grey oil paint",
        emissivity: (0.94, place(EMISSIVITY_NOTES, "various oil paints, 40 degC, median")),
        solar_absorptance: (0.75, place(SOLAR_TABLE, "oil paint, light grey")),
    },
    Row {
        key: "black_paint",
        name: "black paint",
        emissivity: (0.874, place(COATING_TABLE, "black paint")),
        solar_absorptance: (0.975, place(COATING_TABLE, "black paint")),
    },
];
