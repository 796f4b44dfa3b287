//! The plies of a laminate: their stiffness in its axes, their places, and what holds their free strains back.

use super::Ply;
use super::laminate_solve::{InAxes, OnAxis, free_strains, times, turned};
use crate::prelude::*;

/// A ply with its stiffness and place, in thicknesses of the laminate.
pub(super) struct Placed {
    pub(super) on_axis: OnAxis,
    pub(super) in_axes: InAxes,
    pub(super) direction: f64,
    /// Height of the inner and the outer face over mid-height.
    pub(super) faces: [f64; 2],
    /// Free strain for each kelvin; none where it is not given.
    pub(super) per_kelvin: Option<[f64; 2]>,
    pub(super) moisture: [f64; 2],
}

/// The plies with their stiffness and place.
pub(super) fn placed(plies: &[Ply], height: f64) -> Result<Vec<Placed>, Error> {
    let mut z = -0.5;
    plies
        .iter()
        .enumerate()
        .map(|(place, ply)| {
            let (e1, e2, nu) = (ply.youngs_modulus_1.value, ply.youngs_modulus_2.value, ply.poisson_ratio_12);
            let room = 1.0 - nu * nu * e2 / e1;
            if room <= 0.0 {
                return Err(Error::inconsistent(
                    format!("plies[{place}].poisson_ratio_12"),
                    "its square times E2/E1 has to be less than 1, or the ply would give energy",
                ));
            }
            let on_axis = [e1 / room, nu * e2 / room, e2 / room, ply.shear_modulus_12.value];
            let inner = z;
            z += ply.thickness.value / height;
            let direction = ply.direction.value;
            Ok(Placed {
                on_axis,
                in_axes: turned(on_axis, direction),
                direction,
                faces: [inner, z],
                per_kelvin: ply
                    .expansion_1
                    .zip(ply.expansion_2)
                    .map(|(along, across)| [along.value, across.value]),
                moisture: [ply.moisture_strain_1.unwrap_or(0.0), ply.moisture_strain_2.unwrap_or(0.0)],
            })
        })
        .collect()
}

/// Forces and moments that hold the plies' free strains back.
pub(super) fn held_back(plies: &[Placed], free: impl Fn(&Placed) -> [f64; 2]) -> [f64; 6] {
    let mut sums = [0.0; 6];
    for ply in plies {
        let [inner, outer] = ply.faces;
        let [x, y, shear] = times(ply.in_axes, free_strains(free(ply), ply.direction));
        let (t, tz) = (outer - inner, 0.5 * (outer * outer - inner * inner));
        let [nx, ny, n, mx, my, m] = &mut sums;
        for (sum, part) in
            [(nx, x * t), (ny, y * t), (n, shear * t), (mx, x * tz), (my, y * tz), (m, shear * tz)]
        {
            *sum += part;
        }
    }
    sums
}
