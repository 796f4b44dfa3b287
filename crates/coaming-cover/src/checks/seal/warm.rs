//! What is left of the seal's contact where warmth and damp bow the lid.

use crate::checks::bow::bowed;
use crate::checks::seal::loads::{begin, contact_left};
use crate::checks::{Check, whole};
use crate::demand::{Demand, NotChecked};
use crate::document::LoadKind;
use crate::prepared::Prepared;

/// The checks of the seal of a bowed lid.
pub(in crate::checks) const CHECKS: &[Check] = &[
    Check {
        key: "seal_hot",
        title: "Contact left along the seal",
        case: Some(LoadKind::Hot),
        subjects: whole,
        demand: |prepared, _| contact(prepared, LoadKind::Hot),
    },
    Check {
        key: "seal_cold",
        title: "Contact left along the seal",
        case: Some(LoadKind::Cold),
        subjects: whole,
        demand: |prepared, _| contact(prepared, LoadKind::Cold),
    },
    Check {
        key: "seal_sun",
        title: "Contact left along the seal",
        case: Some(LoadKind::Sun),
        subjects: whole,
        demand: |prepared, _| contact(prepared, LoadKind::Sun),
    },
];

/// Least compression all round the closed and new seal of a lid that its layers' growth bows.
fn contact(prepared: &Prepared<'_>, kind: LoadKind) -> Result<Demand, NotChecked> {
    let (mut sheet, gap) = begin(prepared)?;
    let states = bowed(prepared, kind, &mut sheet)?;
    contact_left(prepared, sheet, states, gap)
}
