//! Chemicals: what reaches a plastic, rubber or adhesive, and whether it bears it.

pub(super) mod neighbours;

use coaming::material::{Agent, Compatibility, Material, MaterialKind, compatibility};
use coaming::prelude::*;

use crate::checks::{Check, Subject, name};
use crate::demand::{Demand, NotChecked, Origin, Ruling};
use crate::document::ScrewPattern;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of chemicals.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "agent",
        title: "Agent that reaches a layer",
        case: None,
        subjects: agents,
        demand: |prepared, subject| {
            let layer = name(subject, 0)?;
            judge(prepared, layer, agent(name(subject, 1)?)?, "service.agents".to_owned())
        },
    },
    Check {
        key: "locking",
        title: "Locking of a screw beside a layer",
        case: None,
        subjects: lockings,
        demand: |prepared, subject| {
            let pattern = prepared.pattern(name(subject, 0)?)?;
            let path = format!("screws.{}.locking", pattern.name);
            let locking = pattern.locking.ok_or_else(|| NotChecked::needs(path.clone()))?;
            judge(prepared, name(subject, 1)?, locking, path)
        },
    },
    Check {
        key: "sealant",
        title: "Sealant beside a layer",
        case: None,
        subjects: sealants,
        demand: |prepared, subject| {
            let sealant = prepared.material(name(subject, 1)?, "service.sealants")?;
            let agent =
                sealant.agent.ok_or_else(|| NotChecked::needs(format!("materials.{}.agent", sealant.key)))?;
            judge(prepared, name(subject, 0)?, agent, "service.sealants".to_owned())
        },
    },
];

/// An agent by its name.
pub(super) fn agent(name: &str) -> Result<Agent, NotChecked> {
    Agent::from_name(name).ok_or_else(|| NotChecked::needs("service.agents"))
}

/// The names of the layers whose material has a compatibility family.
fn judged_layers(prepared: &Prepared<'_>) -> Vec<String> {
    let known = |layer: &&crate::document::Layer| {
        prepared.material_of(layer).map_or(true, |material| material.family.is_some())
    };
    prepared.cover.layers.iter().filter(known).map(|layer| layer.name.clone()).collect()
}

fn agents(prepared: &Prepared<'_>) -> Vec<Subject> {
    let service = prepared.cover.service.as_ref();
    let agents: Vec<Agent> = service.and_then(|service| service.agents.clone()).unwrap_or_default();
    let layers = judged_layers(prepared);
    let with = |layer: &String| -> Vec<Subject> {
        agents.iter().map(|agent| vec![layer.clone(), Choice::name(*agent).to_owned()]).collect()
    };
    layers.iter().flat_map(with).collect()
}

fn lockings(prepared: &Prepared<'_>) -> Vec<Subject> {
    let of_pattern = |pattern: &ScrewPattern| -> Vec<Subject> {
        let beside = pattern.passes.iter().flatten().map(|passed| passed.layer.clone());
        let beside = beside.chain(pattern.insert.iter().map(|insert| insert.layer.clone()));
        let mut layers: Vec<String> = Vec::new();
        for layer in beside.filter(|layer| is_plastic(prepared, layer)) {
            if !layers.contains(&layer) {
                layers.push(layer);
            }
        }
        layers.into_iter().map(|layer| vec![pattern.name.clone(), layer]).collect()
    };
    prepared.cover.screws.iter().flatten().flat_map(of_pattern).collect()
}

/// True for a layer that a chemical can craze or swell.
pub(super) fn is_plastic(prepared: &Prepared<'_>, layer: &str) -> bool {
    use coaming::material::MaterialKind as Kind;
    let material = prepared.layer(layer).and_then(|layer| prepared.material_of(layer));
    material.map_or(true, |material| matches!(material.kind, Kind::ClearPlastic | Kind::PrintedPlastic))
}

fn sealants(prepared: &Prepared<'_>) -> Vec<Subject> {
    let service = prepared.cover.service.as_ref();
    let sealants: Vec<String> = service.and_then(|service| service.sealants.clone()).unwrap_or_default();
    let layers: Vec<String> = judged_layers(prepared);
    let with = |layer: &String| -> Vec<Subject> {
        sealants.iter().map(|sealant| vec![layer.clone(), sealant.clone()]).collect()
    };
    layers.iter().flat_map(with).collect()
}

/// An agent on a layer.
pub(super) fn judge(
    prepared: &Prepared<'_>,
    layer: &str,
    agent: Agent,
    lever: String,
) -> Result<Demand, NotChecked> {
    judge_material(&*prepared.material_of(prepared.layer(layer)?)?, agent, lever)
}

/// An agent on a material.
pub(super) fn judge_material(material: &Material, agent: Agent, lever: String) -> Result<Demand, NotChecked> {
    let family =
        material.family.ok_or_else(|| NotChecked::needs(format!("materials.{}.family", material.key)))?;
    let words = Choice::name(agent).replace('_', " ");
    let row = compatibility(family, agent).ok_or_else(|| {
        NotChecked::not_calculated(format!("{words} on {} is not in the table", material.name))
    })?;
    let mut sheet = Worksheet::new();
    sheet.note_words("material", material.name.to_string());
    sheet.note_words("agent", words.clone());
    sheet.say(row.reason);
    let (finds, ruling) = match row.verdict {
        Compatibility::Ok => (format!("{words}: no harm reported"), Ruling::Holds),
        Compatibility::Avoid => (format!("{words}: avoid"), Ruling::Broken),
        // What cracks under stress is tried under stress; metals, rubbers and bonds are tried as they are.
        _ if matches!(material.kind, MaterialKind::ClearPlastic | MaterialKind::PrintedPlastic) => {
            (format!("{words}: test on a stressed strip"), Ruling::NeedsTest)
        }
        _ => (format!("{words}: test on a sample"), Ruling::NeedsTest),
    };
    sheet.advise(
        lever,
        match agent {
            Agent::Weather => {
                format!("shade, a coating, or a grade made for outdoors in place of {}", material.name)
            }
            _ => format!("something else than {words} near {}", material.name),
        },
    );
    Ok(sheet.rule(finds, "no reported harm", ruling, Origin::Published(row.source)))
}
