//! A document made ready for its checks: names resolved to records.

use std::sync::{Arc, Mutex, PoisonError};

use coaming::material::{self, Figure, Material};
use coaming::prelude::*;

use crate::demand::{Need, NotChecked};
use crate::document::{Cover, Layer, LoadCase, LoadKind, ScrewPattern, Seal};
use crate::held::{Lids, Solutions};
use crate::limits::Resolved;

/// A document with its materials and limits resolved.
#[derive(Debug)]
pub struct Prepared<'a> {
    /// The document.
    pub cover: &'a Cover,
    /// Its limits.
    pub limits: Resolved<'a>,
    /// What the panel solver has found so far.
    pub(crate) solutions: Arc<Solutions>,
    /// The lids that were made of it so far.
    pub(crate) lids: Lids,
    own_materials: Vec<Arc<Material>>,
    /// Records of the table that were asked for, by the names that they were asked for by.
    table: Mutex<Vec<(String, Arc<Material>)>>,
}

impl<'a> Prepared<'a> {
    /// Makes a document ready.
    ///
    /// # Errors
    /// The first of the document's [`problems`](Cover::problems).
    pub fn new(cover: &'a Cover) -> Result<Self, Error> {
        Self::with(cover, Arc::default())
    }

    /// Makes a document ready, with what the panel solver has found for others: what is alike is not solved again.
    ///
    /// # Errors
    /// As [`new`](Self::new).
    pub(crate) fn with(cover: &'a Cover, solutions: Arc<Solutions>) -> Result<Self, Error> {
        if let Some(problem) = cover.problems().into_iter().next() {
            return Err(problem);
        }
        let own = cover.materials.iter().flatten().enumerate();
        let own_materials: Result<Vec<Arc<Material>>, Error> =
            own.map(|(nth, given)| given.material(&format!("materials[{nth}]")).map(Arc::new)).collect();
        Ok(Self {
            cover,
            limits: Resolved { given: cover.limits.as_ref() },
            solutions,
            lids: Lids::default(),
            own_materials: own_materials?,
            table: Mutex::default(),
        })
    }

    /// The record of a material by name: the document's own before the table's.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] where there is none.
    pub fn material(&self, name: &str, path: &str) -> Result<Arc<Material>, NotChecked> {
        if let Some(own) = self.own_materials.iter().find(|own| own.key == name) {
            return Ok(Arc::clone(own));
        }
        let mut table = self.table.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, known)) = table.iter().find(|(known, _)| known == name) {
            return Ok(Arc::clone(known));
        }
        let found = Arc::new(material::find(name).map_err(|_| NotChecked::needs(path))?);
        table.push((name.to_owned(), Arc::clone(&found)));
        Ok(found)
    }

    /// A layer by name: `problems` has made sure that it is there.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] where there is none.
    pub fn layer(&self, name: &str) -> Result<&'a Layer, NotChecked> {
        self.cover
            .layers
            .iter()
            .find(|layer| layer.name == name)
            .ok_or_else(|| NotChecked::needs(format!("layers.{name}")))
    }

    /// The material of a layer.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    pub fn material_of(&self, layer: &Layer) -> Result<Arc<Material>, NotChecked> {
        let path = || format!("layers.{}.material", layer.name);
        let name = layer.material.as_ref().ok_or_else(|| NotChecked::needs(path()))?;
        self.material(name, &path())
    }

    /// A screw pattern by name.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] where there is none.
    pub fn pattern(&self, name: &str) -> Result<&'a ScrewPattern, NotChecked> {
        let mut patterns = self.cover.screws.iter().flatten();
        patterns
            .find(|pattern| pattern.name == name)
            .ok_or_else(|| NotChecked::needs(format!("screws.{name}")))
    }

    /// The seal.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] where there is none.
    pub fn seal(&self) -> Result<&'a Seal, NotChecked> {
        self.cover.seal.as_ref().ok_or_else(|| NotChecked::needs("seal"))
    }

    /// The load case of a kind.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] where there is none.
    pub fn load_case(&self, kind: LoadKind) -> Result<&'a LoadCase, NotChecked> {
        let mut cases = self.cover.load_cases.iter().flatten();
        cases
            .find(|case| case.kind == kind)
            .ok_or_else(|| NotChecked::needs(format!("load_cases (kind = \"{}\")", Choice::name(kind))))
    }

    /// The temperature of a layer in a load case.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    pub fn temperature(&self, kind: LoadKind, layer: &str) -> Result<Temperature, NotChecked> {
        let state = self.load_case(kind)?.states.iter().flatten().find(|state| state.layer == layer);
        let path = || format!("load_cases.{}.states.{layer}.temperature", Choice::name(kind));
        state.and_then(|state| state.temperature).need(path)
    }

    /// The humidity that a layer is in balance with in a load case.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    pub fn humidity(&self, kind: LoadKind, layer: &str) -> Result<f64, NotChecked> {
        let state = self.load_case(kind)?.states.iter().flatten().find(|state| state.layer == layer);
        let path = || format!("load_cases.{}.states.{layer}.humidity", Choice::name(kind));
        state.and_then(|state| state.humidity).need(path)
    }

    /// The temperature at assembly.
    ///
    /// # Errors
    /// [`NotChecked::Needs`] with the path.
    pub fn assembled_at(&self) -> Result<Temperature, NotChecked> {
        self.cover
            .service
            .as_ref()
            .and_then(|service| service.assembled_at)
            .need(|| "service.assembled_at".to_owned())
    }
}

/// A property of a material that a check needs.
///
/// # Errors
/// [`NotChecked::Needs`] with the material and property.
pub fn property<Q: Clone>(
    material: &Material,
    name: &str,
    figure: &Option<Figure<Q>>,
) -> Result<Figure<Q>, NotChecked> {
    figure.need(|| format!("materials.{}.{name}", material.key))
}
