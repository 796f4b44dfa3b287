//! The lids of one review, each made once where nothing is to be noted of how.

use std::sync::{Arc, Mutex, PoisonError};

use coaming_panel::Panel;

use super::lid::lid;
use super::setup::Setup;
use crate::demand::NotChecked;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// A lid, or why there is none.
type Made = Result<Arc<Panel>, NotChecked>;

/// The lids that were made.
#[derive(Debug, Default)]
pub(crate) struct Lids(Mutex<Vec<(Setup, Made)>>);

/// The lid of a setup; its inputs are noted where there is a worksheet.
///
/// # Errors
/// As [`lid`].
pub(super) fn made(prepared: &Prepared<'_>, setup: Setup, sheet: Option<&mut Worksheet>) -> Made {
    if let Some(sheet) = sheet {
        return lid(prepared, setup, sheet).map(Arc::new);
    }
    let lids = || prepared.lids.0.lock().unwrap_or_else(PoisonError::into_inner);
    let known = lids().iter().find(|(known, _)| *known == setup).map(|(_, made)| made.clone());
    known.unwrap_or_else(|| {
        let made = lid(prepared, setup, &mut Worksheet::new()).map(Arc::new);
        lids().push((setup, made.clone()));
        made
    })
}
