//! What is wrong within a document that reads: names that nothing bears, shapes that cannot be, names borne twice.

use coaming::declaration::nearest::nearest;
use coaming::material;
use coaming::prelude::*;

use super::{Cover, material_at};

impl Cover {
    /// Everything that is wrong, each with its path; empty for a sound document.
    pub fn problems(&self) -> Vec<Error> {
        let mut problems = Vec::new();
        self.shapes(&mut problems);
        self.ends(&mut problems);
        self.names(&mut problems);
        self.materials_exist(&mut problems);
        problems
    }

    fn shapes(&self, problems: &mut Vec<Error>) {
        let mut keep = |outcome: Result<(), Error>| problems.extend(outcome.err());
        keep(self.opening.outline.check_shape("opening.outline"));
        for layer in &self.layers {
            let path = format!("layers.{}", layer.name);
            keep(layer.outline.check_shape(&format!("{path}.outline")));
            let (width, height) = layer.outline.box_size();
            for (nth, cut_out) in layer.cut_outs.iter().flatten().enumerate() {
                let cut_path = format!("{path}.cut_outs[{nth}]");
                keep(cut_out.outline.check_shape(&format!("{cut_path}.outline")));
                let (cut_width, cut_height) = cut_out.outline.box_size();
                let centre = |point: &Option<super::Point>| {
                    point.map_or((0.0, 0.0), |point| (point.x.value, point.y.value))
                };
                let (x, y) = centre(&cut_out.at);
                let (layer_x, layer_y) = centre(&layer.at);
                let reaches = |offset: f64, cut: f64, whole: f64| offset.abs() + cut / 2.0 >= whole / 2.0;
                let polygons = matches!(cut_out.outline, super::Outline::Polygon(_))
                    || matches!(layer.outline, super::Outline::Polygon(_));
                if !polygons
                    && (reaches(x - layer_x, cut_width, width) || reaches(y - layer_y, cut_height, height))
                {
                    keep(Err(Error::Geometry {
                        place: cut_path,
                        reason: format!(
                            "the cut-out reaches the edge of `{}` or lies outside it",
                            layer.name
                        ),
                    }));
                }
            }
        }
        if let Some(path) = self.seal.as_ref().and_then(|seal| seal.path.as_ref()) {
            keep(path.check_shape("seal.path"));
        }
        if let Some(gravity) = self.service.as_ref().and_then(|service| service.gravity.as_ref())
            && [gravity.x, gravity.y, gravity.z] == [0.0; 3]
        {
            keep(Err(Error::inconsistent("service.gravity", "a direction is not zero along every axis")));
        }
    }

    fn names(&self, problems: &mut Vec<Error>) {
        if self.layers.is_empty() {
            problems
                .push(Error::Missing { field: "layers".to_owned(), needed: "at least one layer".to_owned() });
        }
        let names: Vec<&str> = self.layers.iter().map(|layer| layer.name.as_str()).collect();
        unique(&names, "layers", problems);
        let patterns: Vec<&str> = self.screws.iter().flatten().map(|pattern| pattern.name.as_str()).collect();
        unique(&patterns, "screws", problems);
        let bonds: Vec<&str> = self.bonds.iter().flatten().map(|bond| bond.name.as_str()).collect();
        unique(&bonds, "bonds", problems);
        let joints = self.sealant_joints.iter().flatten();
        let joints: Vec<&str> = joints.map(|joint| joint.name.as_str()).collect();
        unique(&joints, "sealant_joints", problems);
        let locators: Vec<&str> = self.locators.iter().flatten().map(|one| one.name.as_str()).collect();
        unique(&locators, "locators", problems);
        let mut known = |layer: &str, field: String| {
            if !names.contains(&layer) {
                problems.push(Error::NotAnOption {
                    field,
                    value: layer.to_owned(),
                    accepted: format!("the name of a layer: {}", names.join(", ")),
                    nearest: nearest(layer, names.iter().copied()).map(str::to_owned),
                });
            }
        };
        for pattern in self.screws.iter().flatten() {
            let path = format!("screws.{}", pattern.name);
            for (nth, passed) in pattern.passes.iter().flatten().enumerate() {
                known(&passed.layer, format!("{path}.passes[{nth}].layer"));
            }
            if let Some(insert) = &pattern.insert {
                known(&insert.layer, format!("{path}.insert.layer"));
            }
            if let Some(bush) = &pattern.bush {
                known(&bush.layer, format!("{path}.bush.layer"));
            }
        }
        for bond in self.bonds.iter().flatten() {
            for (nth, layer) in bond.layers.iter().enumerate() {
                known(layer, format!("bonds.{}.layers[{nth}]", bond.name));
            }
        }
        for joint in self.sealant_joints.iter().flatten() {
            for (nth, layer) in joint.layers.iter().enumerate() {
                known(layer, format!("sealant_joints.{}.layers[{nth}]", joint.name));
            }
        }
        if let Some(latches) = &self.latches {
            for (path, fixing) in [("fixing", &latches.fixing), ("keeper_fixing", &latches.keeper_fixing)] {
                if let Some(layer) = fixing.as_ref().and_then(|fixing| fixing.layer.as_ref()) {
                    known(layer, format!("latches.{path}.layer"));
                }
            }
        }
        for (nth, case) in self.load_cases.iter().flatten().enumerate() {
            if let Some(layer) = &case.layer {
                known(layer, format!("load_cases[{nth}].layer"));
            }
            for (mth, state) in case.states.iter().flatten().enumerate() {
                known(&state.layer, format!("load_cases[{nth}].states[{mth}].layer"));
            }
        }
        let bay = self.service.as_ref().and_then(|service| service.bay.as_ref());
        if let Some(layer) = bay.and_then(|bay| bay.drain_layer.as_ref()) {
            known(layer, "service.bay.drain_layer".to_owned());
        }
        for joint in self.sealant_joints.iter().flatten().filter(|joint| joint.layers.len() != 2) {
            problems.push(Error::inconsistent(
                format!("sealant_joints.{}.layers", joint.name),
                format!("a joint lies between two layers, and {} are named", joint.layers.len()),
            ));
        }
        for bond in self.bonds.iter().flatten().filter(|bond| bond.layers.len() != 2) {
            problems.push(Error::inconsistent(
                format!("bonds.{}.layers", bond.name),
                format!("a bond joins two layers, and {} are named", bond.layers.len()),
            ));
        }
    }

    fn materials_exist(&self, problems: &mut Vec<Error>) {
        let own = self.materials.as_deref().unwrap_or(&[]);
        for (nth, given) in own.iter().enumerate() {
            problems.extend(given.material(&format!("materials[{nth}]")).err());
        }
        let mut known = |name: &Option<String>, path: String| {
            if let Some(name) = name
                && !own.iter().any(|given| given.name == *name)
                && let Err(error) = material::find(name)
            {
                problems.push(material_at(error, &path));
            }
        };
        for layer in &self.layers {
            known(&layer.material, format!("layers.{}.material", layer.name));
        }
        for pattern in self.screws.iter().flatten() {
            known(&pattern.material, format!("screws.{}.material", pattern.name));
            let insert = pattern.insert.as_ref().and_then(|insert| insert.material.clone());
            known(&insert, format!("screws.{}.insert.material", pattern.name));
            let bush = pattern.bush.as_ref().and_then(|bush| bush.material.clone());
            known(&bush, format!("screws.{}.bush.material", pattern.name));
        }
        for bond in self.bonds.iter().flatten() {
            known(&bond.adhesive, format!("bonds.{}.adhesive", bond.name));
        }
        for joint in self.sealant_joints.iter().flatten() {
            known(&joint.sealant, format!("sealant_joints.{}.sealant", joint.name));
        }
        if let Some(latches) = &self.latches {
            for (path, fixing) in [("fixing", &latches.fixing), ("keeper_fixing", &latches.keeper_fixing)] {
                let material = fixing.as_ref().and_then(|fixing| fixing.material.clone());
                known(&material, format!("latches.{path}.material"));
            }
        }
        if let Some(seal) = &self.seal {
            known(&seal.material, "seal.material".to_owned());
            known(&seal.backing, "seal.backing".to_owned());
        }
        let sealants = self.service.as_ref().and_then(|service| service.sealants.as_ref());
        for (nth, sealant) in sealants.into_iter().flatten().enumerate() {
            known(&Some(sealant.clone()), format!("service.sealants[{nth}]"));
        }
    }
}

fn unique(names: &[&str], list: &str, problems: &mut Vec<Error>) {
    for (nth, name) in names.iter().enumerate() {
        if names.iter().take(nth).any(|earlier| earlier == name) {
            problems
                .push(Error::inconsistent(format!("{list}[{nth}].name"), format!("`{name}` is borne twice")));
        }
    }
}
