//! A stopwatch that every benchmark shares: the median of some runs, with the fastest and the slowest.
#![forbid(unsafe_code)]

use std::time::Instant;

/// Runs of each measurement.
pub const RUNS: usize = 15;

/// Seconds a run took: median, fastest and slowest of [`RUNS`], after one that is not counted.
#[derive(Debug, Clone, Copy)]
pub struct Time {
    /// The median.
    pub median: f64,
    /// The fastest.
    pub fastest: f64,
    /// The slowest.
    pub slowest: f64,
}

/// Measures what one call of `work` takes.
pub fn time(mut work: impl FnMut()) -> Time {
    work();
    let mut seconds: Vec<f64> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed().as_secs_f64()
        })
        .collect();
    seconds.sort_by(f64::total_cmp);
    let at = |place: usize| seconds.get(place).copied().unwrap_or(f64::NAN);
    Time { median: at(RUNS / 2), fastest: at(0), slowest: at(RUNS - 1) }
}

/// Prints one line: what, its median per item, and how far the runs lie apart.
pub fn report(what: &str, time: Time, items: f64) {
    let (scale, unit) = if time.median / items < 1e-5 { (1e9, "ns") } else { (1e3, "ms") };
    let shown = |seconds: f64| seconds / items * scale;
    println!(
        "{what:<58} {:>9.2} {unit}  ({:.2} to {:.2})",
        shown(time.median),
        shown(time.fastest),
        shown(time.slowest)
    );
}
