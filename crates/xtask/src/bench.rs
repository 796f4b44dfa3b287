//! The benchmarks of every language in one run, so that their figures can be compared.

use std::process::Command;

use crate::test::{c, python};
use crate::workspace::{Workspace, output, watch};

/// Measures in Rust, C and Python; what is measured stands in `benches`.
pub(crate) fn run(workspace: &Workspace) -> Result<String, String> {
    watch(workspace.cargo().args(["bench", "--quiet", "--package", "coaming-benches"]))?;
    let folder = c::folder(workspace)?;
    c::library(workspace, &folder)?;
    let compiler = c::compiler("CC", "cc")?;
    let source = workspace.root.join("benches/c/calculations.c");
    c::compile(workspace, &folder, &compiler, &["-std=c99", "-pedantic"], &source, "bench_calculations")?;
    print!("{}", output(&mut Command::new(folder.join("bench_calculations")))?);
    let environment = python::environment(workspace)?;
    watch(environment.python().arg(workspace.root.join("benches/python/calculations.py")))?;
    Ok(MEDIANS.to_owned())
}

/// What the times printed are.
const MEDIANS: &str = "times are medians of 15 runs, with the fastest and the slowest";

/// Measures the panel solver, then what scikit-fem, numpy and CalculiX take for an error that is no larger.
pub(crate) fn panel(workspace: &Workspace) -> Result<String, String> {
    let lines = watch(workspace.cargo().args([
        "bench",
        "--quiet",
        "--package",
        "coaming-benches",
        "--bench",
        "panel",
        "--",
        "rectangle",
        "tapered",
    ]))?;
    let environment = python::requirements(workspace)?;
    for (name, script) in
        [("rectangle:", "benches/python/panel.py"), ("tapered:", "benches/python/tapered.py")]
    {
        let line = lines
            .iter()
            .find(|line| line.starts_with(name))
            .ok_or_else(|| format!("no line begins with `{name}`"))?;
        let mut rival = environment.python();
        // A bound for every thread pool that numpy may have been built with.
        rival.env("OMP_NUM_THREADS", "1").env("OPENBLAS_NUM_THREADS", "1");
        watch(rival.arg(workspace.root.join(script)).args(shares(line)))?;
    }
    Ok(MEDIANS.to_owned())
}

/// Measures a whole review, and one after a number changed on a cover that was reviewed before.
pub(crate) fn review(workspace: &Workspace) -> Result<String, String> {
    watch(workspace.cargo().args(["bench", "--quiet", "--package", "coaming-benches", "--bench", "review"]))?;
    Ok(MEDIANS.to_owned())
}

/// The percentages of a line, as shares.
fn shares(line: &str) -> Vec<String> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let percent = words.windows(2).filter(|pair| pair[1].starts_with('%'));
    percent
        .filter_map(|pair| pair[0].parse::<f64>().ok())
        .map(|value| (value.abs() / 100.0).to_string())
        .collect()
}
