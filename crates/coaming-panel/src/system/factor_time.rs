//! How long factors of sparse matrices take: the floor of what any answer takes, for benchmarks.

use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// Nanoseconds so far.
static SPENT: AtomicU64 = AtomicU64::new(0);

/// What all threads of this process have spent so far in finding the numbers of sparse factors, added up: for benchmarks.
pub fn factor_time() -> Duration {
    Duration::from_nanos(SPENT.load(Ordering::Relaxed))
}

/// Counts what some work takes.
pub(crate) fn counted<T>(work: impl FnOnce() -> T) -> T {
    let start = Instant::now();
    let made = work();
    let spent = u64::try_from(start.elapsed().as_nanos()).unwrap_or(u64::MAX);
    SPENT.fetch_add(spent, Ordering::Relaxed);
    made
}
