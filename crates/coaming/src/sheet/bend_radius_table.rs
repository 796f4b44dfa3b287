//! Reading a table of inside radii between its columns of thickness.

/// Inside radius over thickness between the columns of a table: on the straight line between its neighbours, and the end
/// column's own beyond the ends.
pub(super) fn between_columns<const N: usize>(columns: [f64; N], factors: [f64; N], thickness: f64) -> f64 {
    let mut below = (0.0, factors.first().copied().unwrap_or(0.0));
    for above in columns.into_iter().zip(factors) {
        if thickness <= above.0 {
            let share = (thickness - below.0) / (above.0 - below.0);
            return below.1 + (above.1 - below.1) * share;
        }
        below = above;
    }
    below.1
}
