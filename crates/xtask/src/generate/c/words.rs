//! The Rust source of the codes and words: errors, caveats, version.

use coaming::{Caveat, Error};

use super::{NOTICE, names, record};

/// The source.
pub(super) fn text() -> String {
    let mut text = format!("//! {NOTICE}\n\nuse core::ffi::CStr;\n\n");
    text.push_str(&format!(
        "/// The ABI that this header was made for: a thousand times the major version, plus the minor one.
        pub const COAMING_ABI: u32 = {};

        /// The version of the library.
        pub(crate) const VERSION: &CStr = c{:?};

        const _: () = assert!(VERSION.count_bytes() == env!(\"CARGO_PKG_VERSION\").len());\n\n",
        abi(),
        env!("CARGO_PKG_VERSION")
    ));
    for (code, name, sentence, cure) in Error::CODES {
        let doc = record::doc_lines(&record::for_c(&format!("{sentence} {cure}")));
        text.push_str(&format!("{doc}pub const {}: u32 = {code};\n\n", names::constant(&["error", name])));
    }
    for caveat in Caveat::ALL {
        let doc = format!("The bit of the caveat `{}`: {} {}", caveat.name(), caveat.text(), caveat.cure());
        let doc = record::doc_lines(&record::for_c(&doc));
        let constant = names::constant(&["caveat", caveat.name()]);
        text.push_str(&format!("{doc}pub const {constant}: u32 = {};\n\n", caveat.bit()));
    }
    text.push_str(&table(
        "The sentence of an error.",
        "error_text",
        Error::CODES.iter().map(|row| (row.0, row.2)),
    ));
    text.push_str(&table(
        "The cure of an error.",
        "error_cure",
        Error::CODES.iter().map(|row| (row.0, row.3)),
    ));
    let caveats = || Caveat::ALL.iter();
    text.push_str(&table(
        "The sentence of a caveat.",
        "caveat_text",
        caveats().map(|it| (it.bit(), it.text())),
    ));
    text.push_str(&table("The cure of a caveat.", "caveat_cure", caveats().map(|it| (it.bit(), it.cure()))));
    text
}

fn table(doc: &str, name: &str, rows: impl Iterator<Item = (u32, &'static str)>) -> String {
    let rows: String = rows.map(|(number, words)| format!("{number} => c{words:?},\n")).collect();
    format!(
        "/// {doc}
        pub(crate) fn {name}(number: u32) -> Option<&'static CStr> {{
            Some(match number {{ {rows} _ => return None }})
        }}\n\n"
    )
}

/// The ABI of this version.
fn abi() -> u32 {
    let part = |text: &str| text.parse::<u32>().unwrap_or(0);
    1000 * part(env!("CARGO_PKG_VERSION_MAJOR")) + part(env!("CARGO_PKG_VERSION_MINOR"))
}
