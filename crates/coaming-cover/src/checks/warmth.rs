//! Warmth and damp: how hot each layer gets, dew, and the pressure of a closed bay.

use super::{Check, Subject, layers_that, whole};
use crate::demand::{Demand, NotChecked};
use crate::document::LoadKind;
use crate::prepared::Prepared;

/// The checks of warmth and damp.
pub(super) const CHECKS: &[Check] = &[
    Check {
        key: "layer_temperature",
        title: "Layer against its service temperature",
        case: Some(LoadKind::Sun),
        subjects: |prepared| layers_that(prepared, |_| true),
        demand: layer_temperature,
    },
    Check {
        key: "backing_temperature",
        title: "Gasket's adhesive backing against its service temperature",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| {
            let seal = prepared.seal()?;
            seal.backing.as_ref().ok_or_else(|| NotChecked::needs("seal.backing"))?;
            Err(NotChecked::not_calculated("temperatures through the stack in the sun"))
        },
    },
    Check {
        key: "closed_bay",
        title: "Pressure of the closed bay",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: |_, _| Err(NotChecked::not_calculated("pressure of a closed bay as it warms")),
    },
    Check {
        key: "dew",
        title: "Dew on the inner face",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: |_, _| Err(NotChecked::not_calculated("inner face against the dew point")),
    },
    Check {
        key: "touch",
        title: "Touch temperature of the outer face",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |_, _| Err(NotChecked::not_calculated("touch temperature")),
    },
];

fn layer_temperature(_: &Prepared<'_>, _: &Subject) -> Result<Demand, NotChecked> {
    Err(NotChecked::not_calculated("temperatures through the stack in the sun"))
}
