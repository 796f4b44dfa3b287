//! One calculation, called once and a million times: `cargo bench -p coaming-benches`.
//!
//! The bare loop is what a careful programmer writes by hand for this one formula, unchecked, on one thread. The C and
//! Python figures of the same calculation are printed by `cargo xtask bench`, in the same run.
#![forbid(unsafe_code)]

use std::hint::black_box;

use coaming::batch::{self, Column, Wanted};
use coaming::prelude::*;
use coaming::sheet::{BendAllowance, LegReference};
use coaming_benches::{report, time};

const ROWS: usize = 1_000_000;
const CALLS: usize = 100_000;

fn bend() -> BendAllowance {
    BendAllowance {
        bend_angle: deg(90.0),
        inside_radius: mm(1.6),
        thickness: mm(1.6),
        k_factor: 0.43,
        leg_reference: LegReference::ToVirtualSharp,
    }
}

fn main() {
    let bend = bend();
    let scalar = time(|| {
        for _ in 0..CALLS {
            let outcome = black_box(&bend).calculate();
            let _ = black_box(outcome);
        }
    });
    report("bend_allowance, one call from Rust", scalar, CALLS as f64);

    let radii: Vec<f64> = (0..ROWS).map(|row| 1e-3 + 4e-3 * row as f64 / ROWS as f64).collect();
    let mut allowance = vec![0.0; ROWS];
    let mut deduction = vec![0.0; ROWS];
    let (alpha, t, k) = (bend.bend_angle.value, bend.thickness.value, bend.k_factor);

    let bare = time(|| {
        let tangent = math::tan(alpha / 2.0);
        let rooms = allowance.iter_mut().zip(deduction.iter_mut());
        for (r, (allowance, deduction)) in black_box(&radii).iter().zip(rooms) {
            *allowance = alpha * (r + k * t);
            *deduction = 2.0 * tangent * (r + t) - *allowance;
        }
        black_box((&allowance, &deduction));
    });
    report("bend_allowance, 10^6 rows, bare loop, tan hoisted", bare, 1.0);

    let honest = time(|| {
        let rooms = allowance.iter_mut().zip(deduction.iter_mut());
        for (r, (allowance, deduction)) in black_box(&radii).iter().zip(rooms) {
            *allowance = alpha * (r + k * t);
            *deduction = 2.0 * math::tan(black_box(alpha) / 2.0) * (r + t) - *allowance;
        }
        black_box((&allowance, &deduction));
    });
    report("bend_allowance, 10^6 rows, bare loop, tan in each row", honest, 1.0);

    let place = |name: &str| BendAllowance::place(name).unwrap_or(usize::MAX);
    let outcome = |name: &str| <BendAllowance as Calculation>::Outcome::place(name).unwrap_or(usize::MAX);
    let batched = time(|| {
        let given = [Column { place: place("inside_radius"), values: &radii }];
        let mut wanted = [
            Wanted { place: outcome("bend_allowance"), values: &mut allowance },
            Wanted { place: outcome("bend_deduction"), values: &mut deduction },
        ];
        let _ = black_box(batch::run(black_box(&bend), &given, &mut wanted));
    });
    report("bend_allowance, 10^6 rows, batch, every row checked", batched, 1.0);
    println!("batch over bare loop, tan in each row: {:.2}", batched.median / honest.median);
    println!("batch over bare loop, tan hoisted:     {:.2}", batched.median / bare.median);
}
