//! Chemicals that reach the gasket and the adhesives, and what gasket and adhesives do to what they touch.

use coaming::material::Agent;
use coaming::prelude::*;

use crate::checks::chemicals::{agent, is_plastic, judge, judge_material};
use crate::checks::{Check, Subject, name, whole};
use crate::demand::{Demand, Need, NotChecked};
use crate::document::{Face, Layer, LayerRole};
use crate::prepared::Prepared;

/// The checks of neighbours.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "gasket_agent",
        title: "Agent that reaches the gasket",
        case: None,
        subjects: |prepared| {
            each_agent(prepared, |prepared| vec![prepared.cover.seal.iter().map(|_| String::new()).collect()])
        },
        demand: |prepared, subject| {
            let gasket = prepared.seal()?.material.need(|| "seal.material".to_owned())?;
            let material = prepared.material(&gasket, "seal.material")?;
            judge_material(&material, agent(name(subject, 0)?)?, "service.agents".to_owned())
        },
    },
    Check {
        key: "gasket_neighbour",
        title: "Gasket against a plastic that it lies on",
        case: None,
        subjects: |prepared| {
            let skins = prepared.cover.layers.iter().filter(|layer| layer.role == LayerRole::Skin);
            let plastic = skins.filter(|layer| is_plastic(prepared, &layer.name));
            plastic.map(|layer| vec![layer.name.clone()]).collect()
        },
        demand: |prepared, subject| {
            let gasket = prepared.seal()?.material.need(|| "seal.material".to_owned())?;
            beside(prepared, name(subject, 0)?, &gasket, "seal.material")
        },
    },
    Check {
        key: "backing_neighbour",
        title: "Adhesive backing on its gasket",
        case: None,
        subjects: whole,
        demand: |prepared, _| {
            let seal = prepared.seal()?;
            let gasket = seal.material.need(|| "seal.material".to_owned())?;
            let backing = seal.backing.need(|| "seal.backing".to_owned())?;
            let acts = acts_as(prepared, &backing, "seal.backing")?;
            judge_material(&*prepared.material(&gasket, "seal.material")?, acts, "seal.backing".to_owned())
        },
    },
    Check {
        key: "adhesive_neighbour",
        title: "Adhesive on a plastic that it bonds",
        case: None,
        subjects: |prepared| {
            let bonds = prepared.cover.bonds.iter().flatten();
            bonds
                .flat_map(|bond| bond.layers.iter().map(|layer| vec![bond.name.clone(), layer.clone()]))
                .filter(|subject| subject.get(1).is_some_and(|layer| is_plastic(prepared, layer)))
                .collect()
        },
        demand: |prepared, subject| {
            let path = format!("bonds.{}.adhesive", name(subject, 0)?);
            let mut bonds = prepared.cover.bonds.iter().flatten();
            let bond = bonds.find(|bond| Some(&bond.name) == subject.first());
            let adhesive = bond.and_then(|bond| bond.adhesive.clone()).need(|| path.clone())?;
            beside(prepared, name(subject, 1)?, &adhesive, &path)
        },
    },
    Check {
        key: "adhesive_agent",
        title: "Agent that reaches an adhesive",
        case: None,
        subjects: |prepared| {
            each_agent(prepared, |prepared| {
                prepared.cover.bonds.iter().flatten().map(|bond| vec![bond.name.clone()]).collect()
            })
        },
        demand: |prepared, subject| {
            let path = format!("bonds.{}.adhesive", name(subject, 0)?);
            let mut bonds = prepared.cover.bonds.iter().flatten();
            let bond = bonds.find(|bond| Some(&bond.name) == subject.first());
            let adhesive = bond.and_then(|bond| bond.adhesive.clone()).need(|| path.clone())?;
            let material = prepared.material(&adhesive, &path)?;
            judge_material(&material, agent(name(subject, 1)?)?, "service.agents".to_owned())
        },
    },
    Check {
        key: "weather",
        title: "Sun and ozone on a layer outdoors",
        case: None,
        subjects: outdoors,
        demand: |prepared, subject| judge(prepared, name(subject, 0)?, Agent::Weather, "layers".to_owned()),
    },
    Check {
        key: "gasket_weather",
        title: "Sun and ozone on the gasket",
        case: None,
        subjects: |prepared| prepared.cover.seal.iter().map(|_| Subject::new()).collect(),
        demand: |prepared, _| {
            let gasket = prepared.seal()?.material.need(|| "seal.material".to_owned())?;
            let material = prepared.material(&gasket, "seal.material")?;
            judge_material(&material, Agent::Weather, "seal.material".to_owned())
        },
    },
];

/// Each of some subjects with each agent of the service.
fn each_agent(prepared: &Prepared<'_>, of: fn(&Prepared<'_>) -> Vec<Subject>) -> Vec<Subject> {
    let agents = prepared.cover.service.as_ref().and_then(|service| service.agents.clone());
    let agents: Vec<Agent> = agents.unwrap_or_default();
    let with = |subject: &Subject| -> Vec<Subject> {
        let named = subject.iter().filter(|name| !name.is_empty()).cloned().collect::<Subject>();
        let with_agent = |agent: &Agent| [named.clone(), vec![Choice::name(*agent).to_owned()]].concat();
        agents.iter().map(with_agent).collect()
    };
    of(prepared).iter().flat_map(with).collect()
}

/// The plastics that sun and ozone reach: skins, panes, and what lies on the outer face.
fn outdoors(prepared: &Prepared<'_>) -> Vec<Subject> {
    let reached = |layer: &&Layer| {
        matches!(layer.role, LayerRole::Skin | LayerRole::Pane) || layer.face == Some(Face::Outer)
    };
    let layers = prepared.cover.layers.iter().filter(reached);
    layers.filter(|layer| is_plastic(prepared, &layer.name)).map(|layer| vec![layer.name.clone()]).collect()
}

/// What a gasket or an adhesive is to its neighbour.
fn acts_as(prepared: &Prepared<'_>, material: &str, path: &str) -> Result<Agent, NotChecked> {
    let material = prepared.material(material, path)?;
    material.agent.need(|| format!("materials.{}.agent", material.key))
}

/// A material beside a layer.
fn beside(prepared: &Prepared<'_>, layer: &str, material: &str, path: &str) -> Result<Demand, NotChecked> {
    judge(prepared, layer, acts_as(prepared, material, path)?, path.to_owned())
}
