//! Gauss–Legendre nodes and weights on −1..1.

use crate::math;
use core::f64::consts::PI;

/// Nodes in rising order, with their weights; exact for polynomials of degree 2 count − 1.
pub(crate) fn gauss_legendre(count: usize) -> Vec<(f64, f64)> {
    let n = count as f64;
    let mut upper = Vec::with_capacity(count.div_ceil(2));
    for i in 0..count.div_ceil(2) {
        let mut t = math::cos(PI * (i as f64 + 0.75) / (n + 0.5));
        let mut slope = 0.0;
        // Newton from this start doubles its digits each time: four steps are plenty.
        for _ in 0..5 {
            let (mut before, mut here) = (1.0, t);
            let mut l = 1.0;
            while l < n {
                let next = ((2.0 * l + 1.0) * t * here - l * before) / (l + 1.0);
                before = here;
                here = next;
                l += 1.0;
            }
            slope = n * (t * here - before) / (t * t - 1.0);
            let step = here / slope;
            t -= step;
            if step.abs() < 1e-15 {
                break;
            }
        }
        if count % 2 == 1 && 2 * i + 1 == count {
            t = 0.0;
        }
        upper.push((t, 2.0 / ((1.0 - t * t) * slope * slope)));
    }
    let lower: Vec<(f64, f64)> = upper.iter().take(count / 2).map(|(t, w)| (-t, *w)).collect();
    upper.reverse();
    lower.into_iter().chain(upper).collect()
}
