//! What a layer would strain if nothing held it: by its temperature, or by growth of any other kind.

use super::load::Load;
use super::panel::Layer;
use crate::error::{PanelError, checked};

/// Growth of one layer that its temperature does not explain, as by moisture: the strains that it would show if nothing held it, beside
/// those at which the panel is flat and free of stress.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LayerGrowth {
    /// Index of the layer.
    pub layer: usize,
    /// Strain at the middle of the layer along axis 1 of its material.
    pub along_1: f64,
    /// Strain at the middle of the layer along axis 2.
    pub along_2: f64,
    /// Strain along axis 1 at the upper face minus that at the lower.
    pub difference_1: f64,
    /// Strain along axis 2 at the upper face minus that at the lower.
    pub difference_2: f64,
}

impl LayerGrowth {
    /// The same in every direction and through the thickness.
    pub fn even(layer: usize, strain: f64) -> Self {
        Self { layer, along_1: strain, along_2: strain, ..Self::default() }
    }

    pub(crate) fn check(&self, name: &str, layers: usize) -> Result<(), PanelError> {
        for (part, strain) in [
            ("along_1", self.along_1),
            ("along_2", self.along_2),
            ("difference_1", self.difference_1),
            ("difference_2", self.difference_2),
        ] {
            checked(format!("{name}: {part}"), strain, "between -0.2 and 0.2", |s| s.abs() <= 0.2)?;
        }
        if self.layer >= layers {
            return Err(PanelError::Missing {
                name: name.into(),
                reason: format!("there is no layer {}", self.layer),
            });
        }
        Ok(())
    }
}

/// Strains (xx, yy, engineering xy) that a layer would show if nothing held it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FreeStrain {
    pub layer: usize,
    /// At the middle of the layer.
    pub middle: [f64; 3],
    /// Upper face minus lower face.
    pub difference: [f64; 3],
}

/// The free strains of a load, of temperatures and of other growth.
pub(crate) fn free_strains(load: &Load, layers: &[Layer]) -> Vec<FreeStrain> {
    let warm = load.temperatures.iter().filter_map(|t| {
        let expansion = layers.get(t.layer)?.material.expansion();
        let (middle, difference) = (expansion.map(|a| a * t.rise), expansion.map(|a| a * t.difference));
        Some(FreeStrain { layer: t.layer, middle, difference })
    });
    let grown = load.growths.iter().filter_map(|g| {
        let material = &layers.get(g.layer)?.material;
        Some(FreeStrain {
            layer: g.layer,
            middle: material.in_plane(g.along_1, g.along_2),
            difference: material.in_plane(g.difference_1, g.difference_2),
        })
    });
    warm.chain(grown).collect()
}
