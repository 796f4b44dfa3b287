//! The header, written by cbindgen from the boundary and the generated sources; the assertions on layout stand at its end.

use std::path::PathBuf;

use cbindgen::{Builder, Config, DocumentationStyle, Language};

use super::module::Module;
use super::{GeneratedFile, NOTICE, layout, member, names};
use crate::workspace::{self, Workspace};

/// Where the header stands.
const HEADER: &str = "bindings/c/include/coaming.h";

/// The sources by hand that declare what C sees.
const BOUNDARY: &[&str] =
    &["fault.rs", "batch.rs", "text.rs", "reviewer.rs", "panel.rs", "solution.rs", "states.rs", "values.rs"];

/// The header of these generated sources.
pub(super) fn file(
    workspace: &Workspace,
    sources: &[GeneratedFile],
    modules: &[Module],
) -> Result<GeneratedFile, String> {
    let mut builder = Builder::new().with_config(config(modules));
    for name in BOUNDARY {
        builder = builder.with_src(workspace.root.join("bindings/c/src/boundary").join(name));
    }
    // cbindgen reads files: the sources are laid where they do not touch the committed ones.
    let folder = workspace.output_folder("xtask/generated")?;
    for source in sources {
        let path = folder.join(source.path.file_name().unwrap_or_default());
        workspace::write(&path, &source.text)?;
        builder = builder.with_src(path);
    }
    let mut text = Vec::new();
    builder.generate().map_err(|error| format!("cbindgen: {error}"))?.write(&mut text);
    let text = String::from_utf8(text).map_err(|error| format!("cbindgen: {error}"))?;
    Ok(GeneratedFile { path: PathBuf::from(HEADER), text })
}

fn config(modules: &[Module]) -> Config {
    Config {
        language: Language::C,
        cpp_compat: true,
        no_includes: true,
        sys_includes: vec!["stddef.h".to_owned(), "stdint.h".to_owned()],
        documentation: true,
        documentation_style: DocumentationStyle::Cxx,
        usize_is_size_t: true,
        line_length: 110,
        header: Some(format!("{}\n#ifndef COAMING_H\n#define COAMING_H\n", opening())),
        trailer: Some(format!("{CHECKS}\n{}\n#endif /* COAMING_H */", assertions(modules))),
        ..Config::default()
    }
}

fn opening() -> String {
    format!(
        "/* Calculations for layered removable covers, for C (C99 and later) and C++.
 *
 * {NOTICE}
 *
 * Every number is in SI units; a member's name ends with its unit, `thickness_m`. Fill an input struct, call its
 * function, look at the status: COAMING_OK, or a code COAMING_ERROR_... that the fault explains. Nothing but a
 * CoamingPanel and a CoamingReviewer keeps state; every function may be called from any thread. An outcome is written
 * only on success. A member `has_x` tells whether the optional `x` beside it is there.
 *
 * Check coaming_abi_matches() once before the first call. */"
    )
}

/// What C and C++ compile into the caller.
const CHECKS: &str = r#"/** True (1) where the library that is loaded goes with this header. */
static inline int coaming_abi_matches(void) {
  return coaming_abi() == COAMING_ABI;
}

/** True (1) where a set of caveats has the one of a bit COAMING_CAVEAT_.... */
static inline int coaming_has_caveat(uint64_t caveats, uint32_t bit) {
  return bit < 64 && (caveats >> bit & 1) == 1;
}

/* The layout that the library was built with. */
#if defined(__cplusplus)
#define COAMING_ASSERT(condition) static_assert(condition, #condition)
#elif defined(__STDC_VERSION__) && __STDC_VERSION__ >= 201112L
#define COAMING_ASSERT(condition) _Static_assert(condition, #condition)
#else
#define COAMING_ASSERT_NAME(line) coaming_assertion_##line
#define COAMING_ASSERT_AT(condition, line) typedef char COAMING_ASSERT_NAME(line)[(condition) ? 1 : -1]
#define COAMING_ASSERT(condition) COAMING_ASSERT_AT(condition, __LINE__)
#endif
"#;

fn assertions(modules: &[Module]) -> String {
    let mut lines = vec![
        size("CoamingFault", 344),
        offset("CoamingFault", "field", 4),
        offset("CoamingFault", "value", 72),
        offset("CoamingFault", "message", 80),
        offset("CoamingFault", "index", 336),
        size("CoamingProgress", 16),
        size("CoamingSummary", 240),
        size("CoamingLatchState", 96),
        size("CoamingGasketState", 72),
        size("CoamingReaction", 40),
        size("CoamingLayerStresses", 120),
        size("CoamingMode", 24),
        size("CoamingBucklingMode", 24),
        size("CoamingCriticalTemperature", 80),
    ];
    for (record, is_outcome) in modules.iter().flat_map(|module| &module.records) {
        let name = names::structure(record);
        let members = member::members(record, *is_outcome);
        let layout = layout::of(&members);
        lines.push(size(&name, layout.size));
        lines.extend(members.iter().zip(layout.offsets).map(|(member, at)| offset(&name, &member.name, at)));
    }
    lines.concat()
}

fn size(name: &str, bytes: usize) -> String {
    format!("COAMING_ASSERT(sizeof({name}) == {bytes});\n")
}

fn offset(name: &str, member: &str, bytes: usize) -> String {
    format!("COAMING_ASSERT(offsetof({name}, {member}) == {bytes});\n")
}
