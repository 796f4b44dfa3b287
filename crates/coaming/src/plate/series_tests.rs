//! The series against finer series of their own kind: what the accuracy stated in the documentation rests on. Whether
//! they solve the right problem is tested by the cases, against other methods.

use super::clamped_patch::ClampedPatch;
use super::clamped_ritz::Clamped;
use super::legendre_bubble::Parity;
use super::levy_patch::{Ends, Patch};
use super::{rectangle_patch, rectangle_uniform};

const NU: f64 = 0.3;

fn relative(found: f64, expected: f64) -> f64 {
    (found / expected - 1.0).abs()
}

#[test]
fn clamped_plate_settles_for_sides_of_one_to_ten() {
    for ratio in [1.0, 1.2, 1.6, 2.0, 3.0, 5.0, 7.0, 10.0] {
        let found = rectangle_uniform::clamped(1.0, ratio, NU);
        let fine = Clamped::new((1.0, Parity::Even, 26), (ratio, Parity::Even, 60));
        let c = fine.uniform();
        let centre = fine.field(&c, 0.0, 0.0);
        let (mx, my) = centre.bending().moments(NU);
        let edge = fine.field(&c, -0.5, 0.0);
        assert!(relative(found.centre_deflection, centre.w) < 1e-8, "{ratio}");
        assert!(relative(found.short_span_moment, mx) < 1e-7, "{ratio}");
        assert!(relative(found.long_span_moment, my) < 1e-7, "{ratio}");
        assert!(relative(found.long_edge_moment, edge.bending().moments(NU).0) < 1e-6, "{ratio}");
        assert!(relative(found.long_edge_reaction, edge.reaction(NU)) < 1e-4, "{ratio}");
        // An edge settles fastest with more functions along it than across it.
        let fine = Clamped::new((ratio, Parity::Even, 36), (1.0, Parity::Even, 64));
        let edge = fine.field(&fine.uniform(), -0.5 * ratio, 0.0);
        assert!(relative(found.short_edge_moment, edge.bending().moments(NU).0) < 1e-6, "{ratio}");
    }
}

#[test]
fn both_directions_of_the_series_agree() {
    let patch = Patch { a: 1.0, b: 0.7, x1: 0.2, x2: 0.5, y1: 0.1, y2: 0.3, ends: Ends::Supported };
    for (x, y) in [(0.35, 0.2), (0.6, 0.15), (0.4, 0.5), (0.1, 0.05)] {
        let f = patch.along_x(x, y);
        let g = patch.turned().along_x(y, x).turned();
        for (f, g, size) in [
            (f.w, g.w, 1e-4),
            (f.wx, g.wx, 1e-3),
            (f.wy, g.wy, 1e-3),
            (f.wxx, g.wxx, 1e-2),
            (f.wxy, g.wxy, 1e-2),
            (f.wyy, g.wyy, 1e-2),
            (f.wxxx, g.wxxx, 1e-1),
            (f.wyyy, g.wyyy, 1e-1),
        ] {
            assert!((f - g).abs() < 1e-11 * size, "{f} {g}");
        }
    }
}

#[test]
fn clamped_edges_are_at_rest() {
    let patch = Patch { a: 1.0, b: 1.4, x1: 0.2, x2: 0.5, y1: 0.3, y2: 0.5, ends: Ends::Supported };
    let plate = ClampedPatch::new(patch, 10, 24);
    for s in [0.1, 0.37, 0.5, 0.8] {
        for (x, y) in [(0.0, 1.4 * s), (1.0, 1.4 * s), (s, 0.0), (s, 1.4)] {
            let f = plate.at(x, y);
            assert!(f.w.abs() < 1e-15 && f.wx.abs() < 1e-13 && f.wy.abs() < 1e-13, "{x} {y} {f:?}");
        }
    }
}

#[test]
fn loads_and_deflections_are_reciprocal() {
    // The deflection summed over patch 2 under patch 1 is that over patch 1 under patch 2 (Betti): 5 × 5 Gauss points.
    let gauss = super::quadrature::gauss_legendre(5);
    let first = Patch { a: 1.0, b: 1.4, x1: 0.1, x2: 0.3, y1: 0.2, y2: 0.5, ends: Ends::Supported };
    let second = Patch { a: 1.0, b: 1.4, x1: 0.5, x2: 0.8, y1: 0.9, y2: 1.1, ends: Ends::Supported };
    let work = |load: Patch, place: Patch| {
        let plate = ClampedPatch::new(load, 12, 24);
        let mut sum = 0.0;
        for (u, wu) in &gauss {
            for (v, wv) in &gauss {
                let x = 0.5 * (place.x1 + place.x2 + u * (place.x2 - place.x1));
                let y = 0.5 * (place.y1 + place.y2 + v * (place.y2 - place.y1));
                sum += wu * wv * plate.at(x, y).w;
            }
        }
        sum * (place.x2 - place.x1) * (place.y2 - place.y1)
    };
    assert!(relative(work(first, second), work(second, first)) < 1e-8);
}

#[test]
fn the_largest_values_are_no_less_than_any_found_by_looking() {
    for patch in [
        Patch { a: 1.0, b: 1.4, x1: 0.1, x2: 0.4, y1: 0.2, y2: 0.6, ends: Ends::Supported },
        Patch { a: 1.0, b: 1.0, x1: 0.0, x2: 0.2, y1: 0.4, y2: 0.6, ends: Ends::Supported },
        Patch { a: 2.0, b: 1.0, x1: 0.3, x2: 1.9, y1: 0.45, y2: 0.55, ends: Ends::Supported },
    ] {
        let found = rectangle_patch::solve(patch, false, NU);
        for i in 1..20 {
            for j in 1..20 {
                let (s, t) = (f64::from(i) / 20.0, f64::from(j) / 20.0);
                let here = patch.at(s * patch.a, t * patch.b);
                assert!(here.w <= found.deflection.value * (1.0 + 1e-9), "{patch:?} {found:?} {here:?}");
                let x = patch.x1 + s * (patch.x2 - patch.x1);
                let y = patch.y1 + t * (patch.y2 - patch.y1);
                let moment = patch.at(x, y).bending().principal_moment(NU);
                assert!(moment <= found.patch_moment.value * 1.00001, "{patch:?} {found:?} {moment}");
            }
        }
    }
}
