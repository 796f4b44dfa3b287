//! Valgrind over the C programs: no byte read or written where none is due, none left behind.

use std::process::Command;

use super::{Done, c};
use crate::workspace::{Workspace, is_installed, output};

/// Runs the programs that the stage `c` has built under Valgrind. Without it the plain run goes on, `--all` fails.
pub(super) fn run(workspace: &Workspace, all: bool) -> Result<Done, String> {
    match (all, is_installed("valgrind".as_ref())) {
        (true, false) => Err("install Valgrind, on Debian with `apt-get install valgrind`".to_owned()),
        (false, _) => Ok(Done { passed: 0, words: "skipped: valgrind (`--all` runs it)".to_owned() }),
        (true, true) => {
            let programs = [c::SAME_BITS, c::HOSTILE, c::PANEL];
            for program in programs {
                let mut command = Command::new("valgrind");
                command.args([
                    "--quiet",
                    "--error-exitcode=1",
                    "--leak-check=full",
                    "--show-leak-kinds=definite,indirect",
                ]);
                command.arg("--errors-for-leak-kinds=definite,indirect");
                output(command.arg(c::folder(workspace)?.join(program)))?;
            }
            Ok(Done { passed: 0, words: format!("no error in {}", programs.join(", ")) })
        }
    }
}
