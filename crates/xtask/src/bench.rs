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
    Ok("times are medians of 15 runs, with the fastest and the slowest".to_owned())
}
