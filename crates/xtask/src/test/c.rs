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
    for (name, flags) in [(SAME_BITS, with_table.as_slice()), (HOSTILE, c99), (PANEL, c99)] {
        compile(workspace, &folder, &c, flags, &tests.join(format!("{name}.c")), name)?;
        let printed = output(&mut Command::new(folder.join(name)))?;
        passed += count(&printed, "passed");
    }

    let example = workspace.root.join("examples/c/bend_allowance.c");
    compile(workspace, &folder, &c, c99, &example, "bend_allowance")?;
    output(&mut Command::new(folder.join("bend_allowance")))?;
    passed += 1 + covers(workspace, &folder, &c)? + panels(workspace, &folder, &c)?;
    Ok(Done { passed, words: format!("{passed} checks hold: header, same bits, hostile calls, examples") })
}

/// Compares the bits of the panels with what Rust gave, and runs the example that solves one.
fn panels(workspace: &Workspace, folder: &Path, compiler: &OsString) -> Result<u64, String> {
    let flags: &[&str] = &["-std=c99", "-pedantic"];
    let bits = workspace.root.join("bindings/c/tests/panel_bits.c");
    compile(workspace, folder, compiler, flags, &bits, PANEL_BITS)?;
    compile(workspace, folder, compiler, flags, &workspace.root.join("examples/c/panel.c"), "panel_example")?;
    let laid_down = workspace.output_folder(same_bits::FOLDER)?;
    let mut passed = 0;
    for (name, file) in same_bits::panels::all(workspace)? {
        let list = laid_down.join(format!("{name}.panel.txt"));
        passed += count(&output(Command::new(folder.join(PANEL_BITS)).arg(&file).arg(list))?, "passed");
        if name != "revised-lid" {
            continue;
        }
        let printed = output(Command::new(folder.join("panel_example")).arg(&file))?;
        for words in ["seal compressed least", "first mode", "Cautions"] {
            if !printed.contains(words) {
                return Err(format!("{name}: the example does not tell of `{words}`"));
            }
            passed += 1;
        }
    }
    Ok(passed)
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
