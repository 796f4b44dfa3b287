//! The C binding: the header in C and C++, the same bits, hostile calls, the example.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use super::rust::count;
use super::{Done, same_bits};
use crate::workspace::{Workspace, is_installed, output};

/// The program that compares bits.
pub(super) const SAME_BITS: &str = "same_bits";

/// The program that calls what no program should.
pub(super) const HOSTILE: &str = "hostile";

/// The program that solves panels, and asks of them what no program should.
pub(super) const PANEL: &str = "panel";

/// The program that asks for panels that cannot be.
const PANEL_HOSTILE: &str = "panel_hostile";

/// The program that reviews a cover again and again.
const REVIEWER: &str = "reviewer_test";

/// The program that compares the bits of a panel.
const PANEL_BITS: &str = "panel_bits";

/// Warnings are errors.
const STRICT: &[&str] = &["-Wall", "-Wextra", "-Werror", "-O1"];

/// The folder of the programs and of the library's names.
pub(crate) fn folder(workspace: &Workspace) -> Result<PathBuf, String> {
    workspace.output_folder("c")
}

/// Builds the library, compiles the programs and runs them.
pub(super) fn run(workspace: &Workspace, _all: bool) -> Result<Done, String> {
    let (c, cpp) = (compiler("CC", "cc")?, compiler("CXX", "c++")?);
    let folder = folder(workspace)?;
    library(workspace, &folder)?;
    let tests = workspace.root.join("bindings/c/tests");

    let header = tests.join("header.c");
    for (name, program, language) in [
        ("header_c99", &c, &["-xc", "-std=c99", "-pedantic"]),
        ("header_c11", &c, &["-xc", "-std=c11", "-pedantic"]),
        ("header_cpp17", &cpp, &["-xc++", "-std=c++17", "-pedantic"]),
    ] {
        compile(workspace, &folder, program, language, &header, name)?;
        output(&mut Command::new(folder.join(name)))?;
    }

    let c99: &[&str] = &["-std=c99", "-pedantic"];
    let mut passed = 3;
    // The table's texts are longer than C99 promises to every compiler.
    let table = format!("-I{}", workspace.output_folder(same_bits::FOLDER)?.display());
    let with_table = ["-std=c99", "-pedantic", "-Wno-overlength-strings", table.as_str()];
    let programs = [(SAME_BITS, &with_table[..]), (HOSTILE, c99), (PANEL, c99), (PANEL_HOSTILE, &with_table)];
    for (name, flags) in programs {
        compile(workspace, &folder, &c, flags, &tests.join(format!("{name}.c")), name)?;
        let printed = output(&mut Command::new(folder.join(name)))?;
        passed += count(&printed, "passed");
    }

    let example = workspace.root.join("examples/c/bend_allowance.c");
    compile(workspace, &folder, &c, c99, &example, "bend_allowance")?;
    output(&mut Command::new(folder.join("bend_allowance")))?;
    passed += 1 + covers(workspace, &folder, &c)? + panels(workspace, &folder, &c)?;
    passed += reviewer(workspace, &folder, &c)?;
    Ok(Done { passed, words: format!("{passed} checks hold: header, same bits, hostile calls, examples") })
}

/// Compares the bits of the panels with what Rust gave, and runs the example that solves one.
fn panels(workspace: &Workspace, folder: &Path, compiler: &OsString) -> Result<u64, String> {
    let flags: &[&str] = &["-std=c99", "-pedantic"];
    let bits = workspace.root.join("bindings/c/tests/panel_bits.c");
    compile(workspace, folder, compiler, flags, &bits, PANEL_BITS)?;
    for (source, name) in [("panel.c", "panel_example"), ("heated_pane.c", "heated_pane")] {
        compile(workspace, folder, compiler, flags, &workspace.root.join("examples/c").join(source), name)?;
    }
    let laid_down = workspace.output_folder(same_bits::FOLDER)?;
    let mut passed = 0;
    for (name, file) in same_bits::panels::all(workspace)? {
        let list = laid_down.join(format!("{name}.panel.txt"));
        passed += count(&output(Command::new(folder.join(PANEL_BITS)).arg(&file).arg(list))?, "passed");
        passed += match name.as_str() {
            "revised-lid" => {
                let printed = output(Command::new(folder.join("panel_example")).arg(&file))?;
                told(&printed, &["seal compressed least", "first mode", "Cautions"])?
            }
            "heated-pane" => {
                let printed = output(Command::new(folder.join("heated_pane")).arg(&file))?;
                // By hand and by the closed form in `tests/rust/examples.rs`.
                near(&printed, "damp presses with ", 2.190)?;
                near(&printed, "a rise of ", 3.0017)?;
                2 + told(&printed, &["damp times", "sun moves it by", "hand moves it by"])?
            }
            _ => 0,
        };
    }
    Ok(passed)
}

/// Asserts that an example tells of things; gives how many.
fn told(printed: &str, due: &[&str]) -> Result<u64, String> {
    match due.iter().find(|words| !printed.contains(*words)) {
        Some(words) => Err(format!("the example does not tell of `{words}`: {printed}")),
        None => Ok(due.len() as u64),
    }
}

/// Asserts that the number behind words is near to what is due.
fn near(printed: &str, words: &str, due: f64) -> Result<(), String> {
    let rest = printed.split_once(words).and_then(|(_, rest)| rest.split_whitespace().next());
    match rest.and_then(|number| number.parse::<f64>().ok()) {
        Some(found) if (found / due - 1.0).abs() < 0.005 => Ok(()),
        found => Err(format!("`{words}` {due} is due, not {found:?}: {printed}")),
    }
}

/// Compiles the example that reviews, and compares what it prints with what Rust gave, in every form and unit system.
fn covers(workspace: &Workspace, folder: &Path, compiler: &OsString) -> Result<u64, String> {
    let example = workspace.root.join("examples/c/review.c");
    compile(workspace, folder, compiler, &["-std=c99", "-pedantic"], &example, "review")?;
    let laid_down = workspace.output_folder(same_bits::FOLDER)?;
    let mut passed = 0;
    for (name, file) in same_bits::covers::all(workspace)? {
        for [call, form, units, ending] in same_bits::covers::OUTPUTS {
            let printed = output(Command::new(folder.join("review")).arg(&file).args([call, form, units]))?;
            let expected = std::fs::read_to_string(laid_down.join(format!("{name}.{ending}")));
            if !expected.is_ok_and(|expected| expected == printed) {
                return Err(format!("{name}: C gives another {call} than Rust as {form} in {units} units"));
            }
            passed += 1;
        }
    }
    for of in same_bits::covers::SCHEMAS {
        let printed = output(Command::new(folder.join("review")).args(["--schema", of]))?;
        let expected = std::fs::read_to_string(laid_down.join(format!("{of}.schema.json")));
        if !expected.is_ok_and(|expected| expected == printed) {
            return Err(format!("C gives another schema of the {of} than Rust"));
        }
        passed += 1;
    }
    Ok(passed)
}

/// Compares what a reviewer gives with fresh reviews, and runs the example that changes a cover.
fn reviewer(workspace: &Workspace, folder: &Path, compiler: &OsString) -> Result<u64, String> {
    let flags: &[&str] = &["-std=c99", "-pedantic"];
    let test = workspace.root.join("bindings/c/tests/reviewer.c");
    compile(workspace, folder, compiler, flags, &test, REVIEWER)?;
    let cover = workspace.root.join("examples/covers/revised.toml");
    let passed = count(&output(Command::new(folder.join(REVIEWER)).arg(&cover))?, "passed");
    compile(workspace, folder, compiler, flags, &workspace.root.join("examples/c/reviewer.c"), "reviewer")?;
    let changed = ["length = \"16 mm\"", "length = \"20 mm\""];
    let printed = output(Command::new(folder.join("reviewer")).arg(&cover).args(changed))?;
    let failing: Vec<u64> =
        printed.lines().map(|line| count(line, "fail")).filter(|fail| *fail > 0).collect();
    // 8.5 mm in a hole of 9.5 mm, and 4 mm more: one check fails that did not.
    match failing.as_slice() {
        [before, after] if *after == before + 1 => Ok(passed + 1),
        _ => Err(format!("the reviewer's example does not see what longer screws do: {printed}")),
    }
}

pub(crate) fn compiler(variable: &str, default: &str) -> Result<OsString, String> {
    let program = std::env::var_os(variable).unwrap_or_else(|| default.into());
    match is_installed(&program) {
        true => Ok(program),
        false => Err(format!(
            "no compiler `{}`: install one for C and C++, on Debian with `apt-get install build-essential`",
            program.to_string_lossy()
        )),
    }
}

pub(crate) fn compile(
    workspace: &Workspace,
    folder: &Path,
    compiler: &OsString,
    flags: &[&str],
    source: &Path,
    name: &str,
) -> Result<(), String> {
    let mut command = Command::new(compiler);
    command.args(flags).args(STRICT).arg("-I").arg(workspace.root.join("bindings/c/include")).arg(source);
    command.arg("-o").arg(folder.join(name)).arg("-L").arg(folder).arg("-lcoaming").arg("-lm");
    output(command.arg(format!("-Wl,-rpath,{}", folder.display()))).map(|_| ())
}

/// Builds the shared library as it is shipped, and gives it both its names in the folder: `libcoaming.so` for the
/// linker, the SONAME for the loader.
pub(crate) fn library(workspace: &Workspace, folder: &Path) -> Result<(), String> {
    let mut build = workspace.cargo();
    build.args(["build", "--quiet", "--release", "--package", "coaming-c"]);
    build.args(["--message-format", "json-render-diagnostics"]);
    let messages = output(build.stderr(Stdio::inherit()))?;
    let library = messages.lines().filter_map(shared_library).next_back();
    let library = library.ok_or("cargo has built no shared library `coaming`")?;
    let soname =
        format!("libcoaming.so.{}.{}", env!("CARGO_PKG_VERSION_MAJOR"), env!("CARGO_PKG_VERSION_MINOR"));
    for name in ["libcoaming.so", &soname] {
        let link = folder.join(name);
        if link.symlink_metadata().is_ok() {
            std::fs::remove_file(&link).map_err(|error| format!("{}: {error}", link.display()))?;
        }
        std::os::unix::fs::symlink(&library, &link)
            .map_err(|error| format!("{}: {error}", link.display()))?;
    }
    Ok(())
}

/// The shared library that a message of cargo tells of.
fn shared_library(message: &str) -> Option<PathBuf> {
    let message: serde_json::Value = serde_json::from_str(message).ok()?;
    let is_ours = message["reason"] == "compiler-artifact"
        && message["target"]["name"] == "coaming"
        && message["target"]["crate_types"].as_array()?.iter().any(|of| of == "cdylib");
    let files = message["filenames"].as_array().filter(|_| is_ours)?;
    files.iter().filter_map(|file| file.as_str()).find(|file| file.ends_with(".so")).map(PathBuf::from)
}
