//! Latches and keepers in their sheets: whether what fastens them pulls out of the sheet or its head through it.

use coaming::fastener::InsertPullOut;

use crate::amount::Measure;
use crate::checks::ahead::thrown;
use crate::checks::latches::forces;
use crate::checks::solved::{Beyond, judged, tell_model, under};
use crate::checks::{Check, lid, mass, whole};
use crate::demand::{Demand, Need, NotChecked, Origin};
use crate::document::{Fixing, LoadKind};
use crate::held;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// The checks of what fastens the latches.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "latch_pull_out",
        title: "Latch pulled out of its sheet",
        case: Some(LoadKind::WindOut),
        subjects: whole,
        demand: |prepared, _| pull_out(prepared, Side::Latch),
    },
    Check {
        key: "latch_pull_through",
        title: "Latch's sheet sheared out round its fasteners",
        case: Some(LoadKind::WindOut),
        subjects: whole,
        demand: |prepared, _| pull_through(prepared, Side::Latch),
    },
    Check {
        key: "keeper_pull_out",
        title: "Keeper pulled out of its sheet",
        case: Some(LoadKind::WindOut),
        subjects: whole,
        demand: |prepared, _| pull_out(prepared, Side::Keeper),
    },
    Check {
        key: "keeper_pull_through",
        title: "Keeper's sheet sheared out round its fasteners",
        case: Some(LoadKind::WindOut),
        subjects: whole,
        demand: |prepared, _| pull_through(prepared, Side::Keeper),
    },
];

/// Which end of a latch.
#[derive(Clone, Copy)]
enum Side {
    Latch,
    Keeper,
}

impl Side {
    const fn path(self) -> &'static str {
        match self {
            Self::Latch => "latches.fixing",
            Self::Keeper => "latches.keeper_fixing",
        }
    }

    fn fixing<'a>(self, prepared: &Prepared<'a>) -> Result<&'a Fixing, NotChecked> {
        let latches = prepared.cover.latches.as_ref().ok_or_else(|| NotChecked::needs("latches"))?;
        let fixing = match self {
            Self::Latch => &latches.fixing,
            Self::Keeper => &latches.keeper_fixing,
        };
        fixing.as_ref().ok_or_else(|| NotChecked::needs(self.path()))
    }
}

/// Pull on one fastener of the most loaded latch: lid, gasket and latches solved together, while wind lifts and while the
/// road throws the cover outward, the greater of the two.
fn pull(
    prepared: &Prepared<'_>,
    fixing: &Fixing,
    side: Side,
    sheet: &mut Worksheet,
) -> Result<(f64, [Beyond; 2]), NotChecked> {
    let fasteners = fixing.fasteners.need(|| format!("{}.fasteners", side.path()))?;
    sheet.note("fasteners of each", f64::from(fasteners), Measure::Number);
    let lift = lid::pressure(prepared, LoadKind::WindOut, sheet)?;
    let thrown = thrown(prepared, sheet)?;
    by_even_share(prepared, lift, thrown.normal_acceleration, sheet)?;
    let wind = under(prepared, sheet, |setup| (setup, held::wind(prepared, setup.joined, -lift)))?;
    let road = under(prepared, sheet, |setup| (setup.weighed(), thrown.clone()))?;
    let (wind, of_wind) = judged(prepared, wind, sheet)?;
    let (road, of_road) = judged(prepared, road, sheet)?;
    let mut most = 0.0_f64;
    for (load, states) in [("wind", &wind), ("road", &road)] {
        for state in states {
            let found = &state.found;
            let pull = found.strongest().1 + found.pull_error();
            sheet.note(
                &format!("most loaded latch with its error, {load}, {}", state.name),
                pull,
                Measure::FORCE,
            );
            most = most.max(pull);
        }
    }
    tell_model(prepared, sheet);
    sheet.note("pull on the most loaded latch", most, Measure::FORCE);
    sheet.say("The fasteners of one latch share alike.");
    Ok((most / f64::from(fasteners), [of_wind, of_road]))
}

/// What the latches would pull if they shared alike, for comparison: the gasket at the greater end of its band, with the
/// greater of wind that lifts and the road on top of it.
fn by_even_share(
    prepared: &Prepared<'_>,
    lift: f64,
    acceleration: f64,
    sheet: &mut Worksheet,
) -> Result<(), NotChecked> {
    let [_, closed] = forces(prepared, sheet)?;
    let count = prepared.cover.latches.as_ref().and_then(|latches| latches.count);
    let count = f64::from(count.need(|| "latches.count".to_owned())?);
    let path = prepared.seal()?.path.as_ref().ok_or_else(|| NotChecked::needs("seal.path"))?;
    let lift = lift * path.area() / count;
    let inertia = mass::of_cover(prepared, sheet)?.value * acceleration / count;
    sheet.note("wind's lift on each latch, shared evenly", lift, Measure::FORCE);
    sheet.note("inertia on each latch, shared evenly", inertia, Measure::FORCE);
    sheet.note(
        "pull on each latch, shared evenly",
        closed.latch_force.value + lift.max(inertia),
        Measure::FORCE,
    );
    Ok(())
}

fn judge([of_wind, of_road]: [Beyond; 2], demand: Demand) -> Result<Demand, NotChecked> {
    of_wind.judge(demand).and_then(|demand| of_road.judge(demand))
}

fn factored(prepared: &Prepared<'_>, pull: f64, sheet: &mut Worksheet) -> f64 {
    let (factor, _) = prepared.limits.insert_factor();
    sheet.note("factor on what it holds", factor, Measure::Number);
    factor * pull
}

fn pull_out(prepared: &Prepared<'_>, side: Side) -> Result<Demand, NotChecked> {
    let fixing = side.fixing(prepared)?;
    let mut sheet = Worksheet::new();
    let (pull, beyond) = pull(prepared, fixing, side, &mut sheet)?;
    let at = format!("{}.pull_out", side.path());
    let holds = sheet.given("one fastener holds in this sheet", at.clone(), fixing.pull_out)?;
    let due = factored(prepared, pull, &mut sheet);
    sheet.advise(
        format!("{}.fasteners", side.path()),
        "more or larger fasteners, a backing plate, or more latches",
    );
    judge(beyond, sheet.at_most(due, Measure::FORCE, holds.value, Origin::Maker(at)))
}

fn pull_through(prepared: &Prepared<'_>, side: Side) -> Result<Demand, NotChecked> {
    let fixing = side.fixing(prepared)?;
    let path = side.path();
    let mut sheet = Worksheet::new();
    let (pull, beyond) = pull(prepared, fixing, side, &mut sheet)?;
    let head = sheet.given("head or flange", format!("{path}.head_diameter"), fixing.head_diameter)?;
    let (thickness, material) = match &fixing.layer {
        Some(layer) => {
            let layer = prepared.layer(layer)?;
            let at = format!("layers.{}.thickness", layer.name);
            (sheet.given("thickness", at, layer.thickness)?, prepared.material_of(layer)?)
        }
        None => {
            let at = format!("{path}.material");
            let material = prepared.material(&fixing.material.need(|| at.clone())?, &at)?;
            (sheet.given("thickness", format!("{path}.thickness"), fixing.thickness)?, material)
        }
    };
    let shear_strength = sheet.property(&material, "shear_strength", &material.shear_strength)?;
    let cylinder = sheet.run(&InsertPullOut {
        shear_strength,
        insert_diameter: head,
        insert_length: thickness,
        reduction: 1.0,
    })?;
    sheet.say(
        "Shear of the sheet round the head; a thin sheet dishes before, which a backing plate prevents.",
    );
    let due = factored(prepared, pull, &mut sheet);
    sheet.advise(format!("{path}.head_diameter"), "wider heads, a backing plate, or a thicker sheet");
    let origin = Origin::Design(format!("shear strength of {} round the heads", material.key));
    judge(beyond, sheet.at_most(due, Measure::FORCE, cylinder.pull_out.value, origin))
}
