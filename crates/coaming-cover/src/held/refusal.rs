//! The solver's refusals as the library's errors.

use coaming::prelude::*;
use coaming_panel::PanelError;

use crate::demand::NotChecked;

/// Why the solver gives no number: the place stands in the words, in the document's coordinates.
pub(crate) fn refusal(error: &PanelError) -> NotChecked {
    NotChecked::Refused(match error {
        PanelError::NotConverged { residual, .. } => Error::NotConverged {
            what: "the equilibrium of lid, gasket and latches".to_owned(),
            residual: *residual,
        },
        other => Error::Geometry { place: "the lid on its gasket".to_owned(), reason: other.to_string() },
    })
}
