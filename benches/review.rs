//! How long a whole review takes, and one after a number changed on a cover that was reviewed before:
//! `cargo bench -p coaming-benches --bench review`.
//!
//! With `-- revised` or `-- half-fix` it runs that case alone, with `-- torque`, `-- pressure`, `-- thickness` or `-- latch` that change.
//! Each line tells how long the threads together were in factors of sparse matrices, which is the floor. Where more threads work than there
//! are cores, what they waited for a core counts too: it is an upper bound, and may pass the time itself.

use coaming_benches::{report, time};
use coaming_cover::document::{Cover, Form, read};
use coaming_cover::review::review;
use coaming_cover::reviewer::Reviewer;
use coaming_panel::factor_time;
use std::error::Error;
use std::hint::black_box;

const REVISED: &str = include_str!("../examples/covers/revised.toml");
const HALF_FIX: &str = include_str!("../examples/covers/half-fix.toml");

/// What a line of the revised cover becomes, and what that is called.
const CHANGES: [(&str, &str, &str); 4] = [
    ("torque", "torque = \"0.45 N·m\"", "torque = \"0.4 N·m\""),
    ("pressure", "pressure_at_25_percent = \"24 kPa\"", "pressure_at_25_percent = \"25 kPa\""),
    ("thickness", "thickness = \"2.5 mm\"", "thickness = \"2.6 mm\""),
    ("latch", "x = \"270 mm\", y = \"0 mm\"", "x = \"270 mm\", y = \"5 mm\""),
];

fn main() -> Result<(), Box<dyn Error>> {
    let asked: Vec<String> =
        std::env::args().skip(1).filter(|argument| !argument.starts_with("--")).collect();
    let wanted = |name: &str| asked.is_empty() || asked.iter().any(|argument| argument == name);
    for (name, text) in [("revised", REVISED), ("half-fix", HALF_FIX)] {
        if wanted(name) {
            let cover = cover(text)?;
            measure(&format!("whole review, {name}"), || {
                let _ = black_box(review(&cover));
            });
        }
    }
    for (what, from, to) in CHANGES {
        if wanted(what) {
            changed(what, from, to)?;
        }
    }
    Ok(())
}

fn cover(text: &str) -> Result<Cover, Box<dyn Error>> {
    Ok(read(text, Form::of(text))?)
}

/// The cover goes to and fro between two values, so that every run changes the number.
fn changed(what: &str, from: &str, to: &str) -> Result<(), Box<dyn Error>> {
    if !REVISED.contains(from) {
        return Err(format!("the revised cover has no `{from}`").into());
    }
    let covers = [cover(&REVISED.replacen(from, to, 1))?, cover(REVISED)?];
    let mut reviewer = Reviewer::new();
    reviewer.review(&covers[1])?;
    let mut next = 0;
    measure(&format!("reviewed again, {what} changed"), || {
        let _ = black_box(reviewer.review(&covers[next]));
        next = 1 - next;
    });
    Ok(())
}

/// Measures, and tells the share of the factors.
fn measure(what: &str, mut work: impl FnMut()) {
    let (mut factors, mut runs) = (0.0, 0_u32);
    let time = time(|| {
        let before = factor_time();
        work();
        factors += (factor_time() - before).as_secs_f64();
        runs += 1;
    });
    report(what, time, 1.0);
    let each = factors / f64::from(runs.max(1));
    println!(
        "  of which sparse factors {:.2} ms, {:.0} % of the median",
        1e3 * each,
        100.0 * each / time.median
    );
}
