//! Stress at the holes of a pane: wedging heads, restrained growth and a hand, against what it bears for years.

use std::sync::Arc;

use coaming::fastener::{HoleStress, HoleStressOutcome, WedgingHead};
use coaming::material::{Agent, Basis, Compatibility, Family, Material, compatibility};
use coaming::prelude::*;

use crate::amount::{Amount, Measure, Phrase};
use crate::checks::movement::restraint::{difference, held};
use crate::checks::movement::{bush_play, passed, shank};
use crate::checks::pane::hand::firmest_stress;
use crate::checks::screws::{countersink, passes_that};
use crate::checks::{Subject, name, pane};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin, Ruling};
use crate::document::{Layer, LayerRole, LoadKind, ScrewPattern};
use crate::prepared::Prepared;
use crate::worksheet::{Worksheet, practice};

/// A load that passes within this time is not one that stands: common practice.
const STANDS_FROM: f64 = 3600.0;

/// Every pattern with each pane that it passes.
pub(super) fn subjects(prepared: &Prepared<'_>) -> Vec<Subject> {
    let is_pane = |subject: &Subject| {
        let layer = subject.get(1).and_then(|layer| prepared.layer(layer).ok());
        layer.is_some_and(|layer| layer.role == LayerRole::Pane)
    };
    passes_that(prepared, |_| true).into_iter().filter(is_pane).collect()
}

/// What stresses a hole, all in SI units.
#[derive(Default)]
struct Loads {
    bending: f64,
    pin: f64,
    restrained: f64,
    head: Option<WedgingHead>,
}

/// The hole of a pattern in a pane.
struct Hole<'a> {
    pattern: &'a ScrewPattern,
    layer: &'a Layer,
    material: Arc<Material>,
    path: String,
    diameter: Length,
    width: Length,
    thickness: Length,
    poissons_ratio: f64,
    limit: (f64, Origin),
}

impl<'a> Hole<'a> {
    fn find(prepared: &Prepared<'a>, subject: &Subject, sheet: &mut Worksheet) -> Result<Self, NotChecked> {
        let pattern = prepared.pattern(name(subject, 0)?)?;
        let layer = prepared.layer(name(subject, 1)?)?;
        let passed = passed(pattern, &layer.name)?;
        let path = format!("screws.{}.passes.{}", pattern.name, layer.name);
        let diameter = sheet.given("hole", format!("{path}.hole"), passed.hole)?;
        let edge = sheet.given(
            "centre of the hole to the edge",
            format!("{path}.edge_distance"),
            passed.edge_distance,
        )?;
        let thickness =
            sheet.given("thickness", format!("layers.{}.thickness", layer.name), layer.thickness)?;
        let material = prepared.material_of(layer)?;
        let poissons_ratio = sheet.property(&material, "poisson_ratio", &material.poisson_ratio)?;
        let limit = sustained(prepared, &material, sheet)?;
        sheet.say("The strip round the hole is twice as wide as its distance from the edge.");
        Ok(Self {
            pattern,
            layer,
            material,
            path,
            diameter,
            width: edge * 2.0,
            thickness,
            poissons_ratio,
            limit,
        })
    }

    fn stress(&self, loads: Loads, sheet: &mut Worksheet) -> Result<HoleStressOutcome, NotChecked> {
        sheet.run(&HoleStress {
            hole_diameter: self.diameter,
            width: self.width,
            thickness: self.thickness,
            poissons_ratio: self.poissons_ratio,
            membrane_stress: pascal(0.0),
            bending_stress: si(loads.bending),
            pin_force: si(loads.pin),
            restrained_stress: si(loads.restrained),
            wedging_head: loads.head,
            sustained_limit: si(self.limit.0),
        })
    }

    /// The head that is sunk into the pane and wedges its hole.
    fn head(
        &self,
        prepared: &Prepared<'_>,
        sheet: &mut Worksheet,
    ) -> Result<Option<WedgingHead>, NotChecked> {
        let passed = passed(self.pattern, &self.layer.name)?;
        if !passed.countersunk.need(|| format!("{}.countersunk", self.path))? {
            return Ok(None);
        }
        let path = format!("screws.{}", self.pattern.name);
        let torque = sheet.given("tightening torque", format!("{path}.torque"), self.pattern.torque)?;
        let nut_factor = sheet.number("nut factor", format!("{path}.nut_factor"), self.pattern.nut_factor)?;
        let friction =
            sheet.number("least friction", format!("{path}.friction_low"), self.pattern.friction_low)?;
        let size = self.pattern.size.need(|| format!("{path}.size"))?;
        let force: Force = si(torque.value / (nut_factor * size.nominal_diameter().value));
        sheet.note("preload, T/(K d)", force.value, Measure::FORCE);
        let cone = countersink(prepared, self.pattern, passed, sheet)?;
        let depth = cone.flush_depth.value.min(self.thickness.value);
        let half_angle: Angle = si(cone.included_angle.value / 2.0);
        Ok(Some(WedgingHead { force, half_angle, friction: friction.min(1.0), depth: si(depth) }))
    }

    /// The demand: the band against the limit. In an agent that can craze the material the limit is not known: only a
    /// stress past the limit of clean air decides there.
    fn judge(
        self,
        prepared: &Prepared<'_>,
        mut sheet: Worksheet,
        (low, high): (f64, f64),
    ) -> Result<Demand, NotChecked> {
        sheet.advise(
            format!("{}.hole", self.path),
            "a flat head on a shoulder bush, in a larger hole further from the edge",
        );
        let needs = "the sustained limit of the material in what reaches it";
        if high <= 0.0 {
            return Ok(sheet.rule("nothing stresses the hole", needs, Ruling::Holds, self.limit.1));
        }
        let attackers = attackers(prepared, &self.material)?;
        let (limit, origin) = self.limit;
        let bound = Bound::AtMost { limit, marginal_above: None };
        if attackers.is_empty() || low > limit {
            return Ok(sheet.finish(Finding::Number { low, high, measure: Measure::STRESS, bound }, origin));
        }
        let amount = |si: f64| Amount { si, measure: Measure::STRESS };
        let template = format!("{{}} to {{}}, with {} about; {{}} in clean air", attackers.join(" and "));
        let finds = Phrase::with(template, [amount(low), amount(high), amount(limit)]);
        Ok(sheet.rule(finds, "a strip bent to that stress and wetted stays clear", Ruling::NeedsTest, origin))
    }
}

/// The stress that a material bears for years in clean air: the maker's or a measured one where the document gives it,
/// the limit of common practice for polycarbonate, the record's for any other.
pub(super) fn sustained(
    prepared: &Prepared<'_>,
    material: &Material,
    sheet: &mut Worksheet,
) -> Result<(f64, Origin), NotChecked> {
    let own = material
        .sustained_stress
        .as_ref()
        .is_some_and(|figure| matches!(figure.basis, Basis::Maker | Basis::Measured));
    if material.family == Some(Family::Polycarbonate) && !own {
        return Ok(practice(prepared.limits.polycarbonate_sustained_stress()));
    }
    let limit = sheet.property(material, "sustained_stress", &material.sustained_stress)?;
    Ok((limit.value, Origin::Design(format!("materials.{}.sustained_stress", material.key))))
}

/// The agents that are not reported harmless to a material.
fn attackers(prepared: &Prepared<'_>, material: &Material) -> Result<Vec<String>, NotChecked> {
    let agents = prepared.cover.service.as_ref().and_then(|service| service.agents.clone());
    let agents: Vec<Agent> = agents.need(|| "service.agents".to_owned())?;
    let family = material.family.need(|| format!("materials.{}.family", material.key))?;
    let harmless =
        |agent: &Agent| compatibility(family, *agent).is_some_and(|row| row.verdict == Compatibility::Ok);
    let words = |agent: Agent| Choice::name(agent).replace('_', " ");
    Ok(agents.into_iter().filter(|agent| !harmless(agent)).map(words).collect())
}

/// Closed: only a head that is sunk into the pane.
pub(super) fn closed(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let hole = Hole::find(prepared, subject, &mut sheet)?;
    let head = hole.head(prepared, &mut sheet)?;
    let outcome = hole.stress(Loads { head, ..Loads::default() }, &mut sheet)?;
    sheet.say("Wedging alone: the pressure of the clamp on the pane's faces is left out.");
    hole.judge(prepared, sheet, (outcome.smallest_stress.value, outcome.largest_stress.value))
}

/// Hot or cold: growth that friction or the screws restrain, beside the head.
///
/// Friction holds a clamped pane from the first degree, up to its own force; the screws hold any pane once its clearance
/// is used up. A pane that is pressed holds no more than the stress at which it bows.
pub(super) fn restrained(
    prepared: &Prepared<'_>,
    subject: &Subject,
    kind: LoadKind,
) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let hole = Hole::find(prepared, subject, &mut sheet)?;
    let (pattern, layer) = (hole.pattern, hole.layer);
    let path = format!("screws.{}", pattern.name);
    let head = hole.head(prepared, &mut sheet)?;
    let apart = difference(prepared, pattern, layer, kind, &mut sheet)?;
    let (mut locked, mut blocked, mut pin) = (0.0, 0.0, 0.0);
    if apart != 0.0 {
        let shank = shank(pattern, &layer.name, &path, &mut sheet)?;
        let tolerance = sheet.given(
            "position tolerance",
            format!("{path}.position_tolerance"),
            pattern.position_tolerance,
        )?;
        let positions =
            pattern.positions.as_ref().ok_or_else(|| NotChecked::needs(format!("{path}.positions")))?;
        let (x, y) = positions.reach();
        let clearance = (hole.diameter.value - shank.value - 2.0 * tolerance.value).max(0.0);
        sheet.note("clearance left by the tolerance", clearance, Measure::LENGTH);
        let beyond = (1.0 - clearance / (2.0 * math::hypot(x, y) * apart.abs())).max(0.0);
        let floats = pattern.bush.as_ref().is_some_and(|bush| bush.layer == layer.name)
            && bush_play(prepared, pattern, &mut sheet)?.1.floats;
        if beyond > 0.0 || !floats {
            let held = held(prepared, pattern, layer, apart, &mut sheet)?;
            let stress = held.stress.abs();
            blocked = (stress * beyond).min(held.bows);
            pin = blocked * held.section / f64::from(held.to_one_side);
            if !floats {
                locked = stress.min(held.bows).min(held.slip.friction_force_max.value / held.section);
            }
        }
        sheet.note("stress held by friction, at most", locked, Measure::STRESS);
        sheet.note("stress held by the screws", blocked, Measure::STRESS);
    }
    if kind == LoadKind::Hot {
        sheet.say("The limit is that of a room: a warm pane bears less, and what is pressed when hot is pulled once it has crept and cools.");
    }
    let low =
        hole.stress(Loads { restrained: blocked, pin, head: head.clone(), ..Loads::default() }, &mut sheet)?;
    let high =
        hole.stress(Loads { restrained: locked.max(blocked), pin, head, ..Loads::default() }, &mut sheet)?;
    hole.judge(prepared, sheet, (low.smallest_stress.value, high.largest_stress.value))
}

/// A hand on the pane: no bending at holes beyond the edge of the free span where the pane merely rests there, no more than the
/// largest stress anywhere where its lap is held flat.
pub(super) fn lean(prepared: &Prepared<'_>, subject: &Subject) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let hole = Hole::find(prepared, subject, &mut sheet)?;
    let head = hole.head(prepared, &mut sheet)?;
    let case = pane::lean_case(prepared, hole.layer)?;
    let bending = firmest_stress(prepared, hole.layer, &mut sheet)?;
    sheet.note("bending at the holes, at most", bending, Measure::STRESS);
    sheet.say("The lap is neither hinged nor clamped: bending at its holes lies between none and the largest stress of the pane held flat there.");
    let low = hole.stress(Loads { head: head.clone(), ..Loads::default() }, &mut sheet)?;
    let high = hole.stress(Loads { bending, head, ..Loads::default() }, &mut sheet)?;
    let (low, high) = (low.smallest_stress.value, high.largest_stress.value);
    let limit = hole.limit.0;
    if high > limit {
        // A limit for years is no limit for seconds: it is passed for as long as the hand stays.
        let duration = sheet.given("how long it lasts", "load_cases.lean.duration", case.duration)?;
        if duration.value < STANDS_FROM {
            let amount = |si: f64| Amount { si, measure: Measure::STRESS };
            let finds =
                Phrase::with("{} to {} in passing, {} for good", [amount(low), amount(high), amount(limit)]);
            return Ok(sheet.rule(
                finds,
                "no crazes after the hand has leaned often",
                Ruling::NeedsTest,
                hole.limit.1,
            ));
        }
    }
    hole.judge(prepared, sheet, (low, high))
}
