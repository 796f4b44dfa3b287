//! The lid thrown along its own plane: whether it slides on its seal, and how it tips on it.

use coaming::prelude::*;
use coaming_panel::Load;

use crate::amount::Measure;
use crate::checks::centre::{self, Centre};
use crate::checks::lid::factor;
use crate::checks::seal::loads::{begin, contact_left};
use crate::checks::solved::{Beyond, State, each, highest, judged, lowest, nothing, tell_model};
use crate::checks::{Check, whole};
use crate::demand::{Bound, Demand, Finding, Need, NotChecked, Origin};
use crate::document::{LoadKind, Locator, LocatorDirection};
use crate::held::{self, Along, Setup};
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of a lid that is thrown along its plane.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "seal_acceleration_x",
        title: "Contact left along the seal",
        case: Some(LoadKind::AccelerationX),
        subjects: whole,
        demand: |prepared, _| contact(prepared, Along::X),
    },
    Check {
        key: "seal_acceleration_y",
        title: "Contact left along the seal",
        case: Some(LoadKind::AccelerationY),
        subjects: whole,
        demand: |prepared, _| contact(prepared, Along::Y),
    },
    Check {
        key: "seal_sliding_x",
        title: "Lid kept from sliding on its seal",
        case: Some(LoadKind::AccelerationX),
        subjects: whole,
        demand: |prepared, _| sliding(prepared, Along::X),
    },
    Check {
        key: "seal_sliding_y",
        title: "Lid kept from sliding on its seal",
        case: Some(LoadKind::AccelerationY),
        subjects: whole,
        demand: |prepared, _| sliding(prepared, Along::Y),
    },
];

/// What acts on the lid in its plane.
struct Thrown {
    centre: Centre,
    /// Force along the acceleration with the weight's part of it, in newtons.
    along: f64,
    /// The weight's part across it, in newtons.
    across: f64,
    /// Most moment by which that tips the lid, in newton metres.
    moment: f64,
}

/// The lid's inertia with its weight, and how far from the plane in which it is held they act: that plane lies somewhere between
/// the sheet's inner face and the seat.
fn thrown(prepared: &Prepared<'_>, along: Along, sheet: &mut Worksheet) -> Result<Thrown, NotChecked> {
    let kind = match along {
        Along::X => LoadKind::AccelerationX,
        Along::Y => LoadKind::AccelerationY,
    };
    let case = prepared.load_case(kind)?;
    let path = format!("load_cases.{}.acceleration", Choice::name(kind));
    let acceleration =
        sheet.given("acceleration", path, case.acceleration)?.value * factor(sheet, case.factor);
    let gravity = prepared.cover.service.as_ref().and_then(|service| service.gravity.as_ref());
    let gravity = gravity.ok_or_else(|| NotChecked::needs("service.gravity"))?;
    let size = math::hypot(math::hypot(gravity.x, gravity.y), gravity.z);
    let weight = |share: f64| STANDARD_GRAVITY * (share / size).abs();
    let (with, beside) = match along {
        Along::X => (weight(gravity.x), weight(gravity.y)),
        Along::Y => (weight(gravity.y), weight(gravity.x)),
    };
    sheet.note_words("gravity along x, y, z", format!("{}, {}, {}", gravity.x, gravity.y, gravity.z));
    let centre = centre::of_mass(prepared, sheet)?;
    let (force, across) = (centre.mass * (acceleration + with), centre.mass * beside);
    let seal = prepared.seal()?;
    let closed = seal.stop_height.or(seal.closed_height);
    let closed = closed.need(|| "seal.stop_height or seal.closed_height".to_owned())?;
    let arm = centre.height.abs().max((centre.height + closed.value).abs());
    sheet.reckon(
        "force = mass × (acceleration + the weight's part of gravity that way); moment = force × arm",
    );
    sheet.note("force along the acceleration", force, Measure::FORCE);
    sheet.note("weight across it", across, Measure::FORCE);
    sheet.note("arm, to the sheet's inner face or to the seat", arm, Measure::LENGTH);
    Ok(Thrown { centre, along: force, across, moment: force * arm })
}

/// Standard gravity, in metres per square second (3rd General Conference on Weights and Measures, 1901).
const STANDARD_GRAVITY: f64 = 9.80665;

/// The lid at every limit, tipped either way.
fn limits(
    prepared: &Prepared<'_>,
    along: Along,
    moment: f64,
) -> Result<Vec<(String, Setup, Load)>, NotChecked> {
    let mut limits = Vec::new();
    for setup in Setup::ALL {
        for (words, moment) in [("one way", moment), ("the other way", -moment)] {
            let name = format!("{}, {words}", setup.joined_name());
            limits.push((name, setup, held::tilted(prepared, setup, along, moment)?));
        }
    }
    Ok(limits)
}

/// The limits of both directions, those of one lid together, for all to be solved at once.
pub(in crate::checks) fn all_limits(prepared: &Prepared<'_>) -> Vec<(Setup, Vec<Load>)> {
    let mut all: Vec<(Setup, Vec<Load>)> = Vec::new();
    for along in [Along::X, Along::Y] {
        let thrown = thrown(prepared, along, &mut Worksheet::new());
        let limits = thrown.and_then(|thrown| limits(prepared, along, thrown.moment));
        for (_, setup, load) in limits.into_iter().flatten() {
            match all.iter_mut().find(|(known, _)| *known == setup) {
                Some((_, loads)) => loads.push(load),
                None => all.push((setup, vec![load])),
            }
        }
    }
    all
}

fn tipped(
    prepared: &Prepared<'_>,
    along: Along,
    moment: f64,
    sheet: &mut Worksheet,
) -> Result<Vec<State>, NotChecked> {
    let states = each(prepared, sheet, limits(prepared, along, moment)?)?;
    sheet.note("moment that tips the lid", moment, Measure::TORQUE);
    sheet.say("The lid is thrown either way along its plane, its weight with it. Force and what holds it, at the seat, at the sheet's inner face or between, lie one arm apart: the further of the two is taken, and the moment put on the lid as a pressure that grows evenly along the acceleration.");
    sheet.say("Screws, inserts, gasket and paint are left out of the mass.");
    Ok(states)
}

/// Least compression while the lid is thrown along its plane, which tips it.
fn contact(prepared: &Prepared<'_>, along: Along) -> Result<Demand, NotChecked> {
    let (mut sheet, gap) = begin(prepared)?;
    let thrown = thrown(prepared, along, &mut sheet)?;
    let states = tipped(prepared, along, thrown.moment, &mut sheet)?;
    contact_left(prepared, sheet, states, gap)
}

/// Friction of the gasket in newtons, least and most, with the lid tipped.
fn friction(
    prepared: &Prepared<'_>,
    along: Along,
    moment: f64,
    sheet: &mut Worksheet,
) -> Result<((f64, f64), Beyond), NotChecked> {
    let seal = prepared.seal()?;
    let least = sheet.number("least friction of the gasket", "seal.friction_low", seal.friction_low)?;
    let most = sheet.number("greatest friction of the gasket", "seal.friction_high", seal.friction_high)?;
    let linear = tipped(prepared, along, moment, sheet)?;
    let (states, beyond) = judged(prepared, linear, sheet)?;
    for state in &states {
        sheet.note(&format!("push of the gasket, {}", state.name), state.found.gasket_force, Measure::FORCE);
    }
    let push = |found: &held::Found| (found.gasket_force, found.left.pull_share * found.gasket_force);
    let (low, _, _) = lowest(&states, push).ok_or_else(nothing)?;
    let (_, high, _) = highest(&states, push).ok_or_else(nothing)?;
    sheet.reckon("friction = coefficient × push of the gasket");
    sheet.say("Stops and hooks rub too, and are left out. A sponge gives sideways before it slides.");
    tell_model(prepared, sheet);
    Ok(((least * low.max(0.0), most * high), beyond))
}

/// What keeps the lid from sliding: the gasket's friction, or, where that is too little, what locates the lid.
fn sliding(prepared: &Prepared<'_>, along: Along) -> Result<Demand, NotChecked> {
    let mut sheet = Worksheet::new();
    let thrown = thrown(prepared, along, &mut sheet)?;
    let ((low, high), beyond) = friction(prepared, along, thrown.moment, &mut sheet)?;
    let force = math::hypot(thrown.along, thrown.across);
    sheet.note("force that would slide the lid", force, Measure::FORCE);
    sheet.note("friction, least", low, Measure::FORCE);
    sheet.note("friction, most", high, Measure::FORCE);
    if low < force {
        let all = prepared.cover.locators.as_ref().ok_or_else(|| NotChecked::needs("locators"))?;
        let mut here = Vec::new();
        for locator in all {
            if holds(locator)?.contains(&along) {
                here.push(locator);
            }
        }
        if !here.is_empty() {
            return on_locators(sheet, &here, along, &thrown, high).and_then(|demand| beyond.judge(demand));
        }
    }
    sheet.at("friction of the gasket against what would slide the lid");
    sheet.advise(
        "locators",
        "pins, ledges or hooks that locate the lid in its plane, or a gasket that presses harder",
    );
    let bound = Bound::AtLeast { limit: force };
    let origin = Origin::Design("inertia and weight of the lid along its plane".to_owned());
    beyond.judge(sheet.finish(Finding::Number { low, high, measure: Measure::FORCE, bound }, origin))
}

/// The directions that a locator holds.
fn holds(locator: &Locator) -> Result<&'static [Along], NotChecked> {
    let direction = locator.direction.need(|| format!("locators.{}.direction", locator.name))?;
    Ok(match direction {
        LocatorDirection::AlongX => &[Along::X],
        LocatorDirection::AlongY => &[Along::Y],
        LocatorDirection::EitherWay => &[Along::X, Along::Y],
    })
}

/// The force on one locator: from an even share of what friction leaves at best, to all of it on one, and more where the centre of
/// mass lies beyond them all.
fn on_locators(
    mut sheet: Worksheet,
    here: &[&Locator],
    along: Along,
    thrown: &Thrown,
    friction: f64,
) -> Result<Demand, NotChecked> {
    let mut places = Vec::new();
    let mut weakest: Option<(f64, String)> = None;
    for locator in here {
        let path = format!("locators.{}", locator.name);
        let at = locator.at.need(|| format!("{path}.at"))?;
        places.push(match along {
            Along::X => at.y.value,
            Along::Y => at.x.value,
        });
        let path = format!("{path}.working_load");
        let load =
            sheet.given(&format!("working load of {}", locator.name), path.clone(), locator.working_load)?;
        if weakest.as_ref().is_none_or(|(known, _)| load.value < *known) {
            weakest = Some((load.value, path));
        }
    }
    let (limit, path) = weakest.ok_or_else(nothing)?;
    let across = match along {
        Along::X => thrown.centre.y,
        Along::Y => thrown.centre.x,
    };
    let first = places.iter().copied().fold(f64::INFINITY, f64::min);
    let last = places.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let beyond = (first - across).max(across - last).max(0.0);
    let span = last - first;
    let lever = if beyond > 0.0 && span > 0.0 { beyond / span } else { 0.0 };
    let low = (thrown.along - friction).max(0.0) / here.len() as f64;
    let high = thrown.along * (1.0 + lever);
    sheet.note("locators that hold this way", here.len() as f64, Measure::Number);
    sheet.note("centre of mass beyond the outermost of them", beyond, Measure::LENGTH);
    sheet.reckon(
        "on one locator: from (force − greatest friction)/number to force × (1 + distance beyond/span)",
    );
    sheet.say("Each has some play, so that one of several may bear alone, and friction may help or not.");
    sheet.at("on one locator");
    sheet.advise("locators", "more or stronger locators, on both sides of the centre of mass");
    let bound = Bound::AtMost { limit, marginal_above: None };
    let finding = Finding::Number { low, high, measure: Measure::FORCE, bound };
    let demand = sheet.finish(finding, Origin::Maker(path));
    if beyond > IN_LINE && span <= 0.0 {
        return Err(NotChecked::NotCalculated {
            what: "what keeps the lid from turning about the line of its locators".to_owned(),
            shown: Some(Box::new(demand)),
        });
    }
    Ok(demand)
}

/// A centre of mass so near to the line of force of a single locator, in metres, turns nothing that the seal would feel.
const IN_LINE: f64 = 1e-3;
