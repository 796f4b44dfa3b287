//! What grows in a lid, as the solver takes it: the strains of its layers against the sheet's own.

use coaming_panel::{LayerGrowth, Load};

use super::lid::built;
use super::setup::Setup;
use crate::demand::NotChecked;
use crate::document::Layer;
use crate::prepared::Prepared;
use crate::worksheet::Worksheet;

/// One thing that bows the lid of a setup.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Grows {
    growth: LayerGrowth,
    /// True where it bows the middle of the lid outward.
    pub(crate) outward: bool,
}

impl Grows {
    /// All of some together, as a load.
    pub(crate) fn together<'a>(all: impl Iterator<Item = &'a Self>) -> Load {
        Load { growths: all.map(|one| one.growth).collect(), ..Load::default() }
    }
}

/// What bows the lid of a setup: the layers that join in, by what they grow more than the sheet, and the sheet itself, by what its
/// outer face grows more than its inner one.
///
/// Growth of all by one and the same strain bows nothing, and flanges grow with their sheet: so every strain counts from the
/// sheet's.
///
/// # Errors
/// [`NotChecked::Needs`] with the path of what the document does not give.
pub(crate) fn growing(
    prepared: &Prepared<'_>,
    setup: Setup,
    gradient: f64,
    mut strain: impl FnMut(&Layer) -> Result<f64, NotChecked>,
) -> Result<Vec<Grows>, NotChecked> {
    let (panel, parts) = built(prepared, setup, &mut Worksheet::new())?;
    let mut all = Vec::new();
    if gradient.abs() > NOTHING {
        let growth = LayerGrowth {
            layer: 0,
            difference_1: gradient,
            difference_2: gradient,
            ..LayerGrowth::default()
        };
        all.push(Grows { growth, outward: gradient > 0.0 });
    }
    let Some(skin) = parts.stiff.first().filter(|_| parts.stiff.len() > 1) else { return Ok(all) };
    let own = strain(skin)?;
    for (layer, given) in panel.layers.iter().enumerate().skip(1).zip(parts.stiff.iter().skip(1)) {
        let more = strain(given)? - own;
        let above = layer.1.lower_face > 0.0;
        if more.abs() > NOTHING {
            all.push(Grows { growth: LayerGrowth::even(layer.0, more), outward: (more > 0.0) == above });
        }
    }
    Ok(all)
}

/// A strain that bows nothing: what rounding leaves.
const NOTHING: f64 = 1e-12;
