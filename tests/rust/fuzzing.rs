//! What is fuzzed: each function takes any bytes and panics where the library breaks a promise. The targets of
//! `tests/fuzz` call them, and the test `corpora` replays their corpora.

use coaming::declaration::{Field, Node, Value};
use coaming::quantity::{Dimension, System, for_data, for_people, read, read_number};
use coaming_cover::document::{self, Form};
use coaming_cover::order_sheet::order_sheet;
use coaming_cover::panel::{CaseSolution, LoadOf, Panel, Work, read_panel};
use coaming_cover::render::{Detail, order_sheet_json, order_sheet_text, review_json, review_text};
use coaming_cover::review::{input_hash, review};

use crate::drawing::{Bytes, record};
use crate::panels;

/// A function that takes any bytes.
pub type Target = fn(&[u8]);

/// Every target with its name, which is that of its corpus.
pub const TARGETS: &[(&str, Target)] = &[
    ("quantity", quantity),
    ("document_toml", document_toml),
    ("document_json", document_json),
    ("calculation", calculation),
    ("panel", panel),
];

/// A text read as a quantity of every dimension is finite, and what is written for data reads back to the same bits.
///
/// # Panics
/// Where the promise is broken.
pub fn quantity(bytes: &[u8]) {
    let Ok(text) = core::str::from_utf8(bytes) else { return };
    if let Ok(number) = read_number(text) {
        assert!(number.is_finite(), "{text:?} reads as {number}");
    }
    for dimension in Dimension::ALL {
        let Ok(si) = read(text, dimension) else { continue };
        assert!(si.is_finite(), "{text:?} reads as {si}");
        for unit in [dimension.shop, dimension.si] {
            let written = for_data(si, dimension, unit);
            let back = read(&written, dimension).unwrap_or_else(|error| panic!("{written:?}: {error}"));
            assert_eq!((back + 0.0).to_bits(), (si + 0.0).to_bits(), "{text:?} is written as {written:?}");
        }
        for system in [System::Shop, System::Inch] {
            assert!(!for_people(si, dimension, dimension.shop, system).contains("NaN"), "{text:?}");
        }
    }
}

/// A TOML document is refused with a typed error, or read, written back to equal types and reviewed.
///
/// # Panics
/// Where the promise is broken.
pub fn document_toml(bytes: &[u8]) {
    if let Ok(text) = core::str::from_utf8(bytes) {
        whole_document(text, Form::Toml);
    }
}

/// As [`document_toml`], for JSON.
///
/// # Panics
/// Where the promise is broken.
pub fn document_json(bytes: &[u8]) {
    if let Ok(text) = core::str::from_utf8(bytes) {
        whole_document(text, Form::Json);
    }
}

fn whole_document(text: &str, form: Form) {
    let cover = match document::read(text, form) {
        Ok(cover) => cover,
        Err(error) => return assert!(!error.to_string().is_empty()),
    };
    let as_toml = document::to_toml(&cover).expect("a document that reads can be written as TOML");
    let as_json = document::to_json(&cover).expect("a document that reads can be written as JSON");
    assert_eq!(document::read(&as_toml, Form::Toml).as_ref(), Ok(&cover), "{as_toml}");
    assert_eq!(document::read(&as_json, Form::Json).as_ref(), Ok(&cover), "{as_json}");
    let hash = input_hash(&cover);
    assert_eq!(document::read(&as_toml, Form::Toml).and_then(|again| input_hash(&again)), hash);
    // A waiver of a check that does not exist is found when the checks are known.
    if let Ok(review) = review(&cover) {
        let json = review_json(&review).expect("a review can be written");
        // JSON has no infinity: `null` stands where a number was not finite.
        assert!(!json.contains("null"), "{json}");
        for system in [System::Shop, System::Inch] {
            let _ = review_text(&review, Detail::Full, system);
        }
    }
    if let Ok(sheet) = order_sheet(&cover) {
        let json = order_sheet_json(&sheet).expect("an order sheet can be written");
        assert!(!json.contains("null"), "{json}");
        let _ = order_sheet_text(&sheet, System::Inch);
    }
}

/// A calculation of the registry, on JSON: the bytes as they are, or an input drawn from them. What comes out is finite.
///
/// # Panics
/// Where the promise is broken.
pub fn calculation(bytes: &[u8]) {
    let mut bytes = Bytes::new(bytes);
    let entry = &coaming::ALL[bytes.below(coaming::ALL.len())];
    let text = if bytes.byte() == 0 {
        String::from_utf8_lossy(bytes.rest()).into_owned()
    } else {
        record(entry.input.fields, &mut bytes).to_string()
    };
    match (entry.calculate_json)(&text) {
        Ok((outcome, _)) => assert!(is_finite(&outcome), "{} {text}: {outcome:?}", entry.name),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
    let _ = (entry.calculate_text)(&text);
}

/// A panel, the bytes as they are or drawn from them, is refused with a typed error, or solved in few steps to finite numbers; what
/// was solved before changes nothing.
///
/// # Panics
/// Where the promise is broken.
pub fn panel(bytes: &[u8]) {
    let _ = solved_cases(bytes);
}

/// As [`panel`], and how many load cases were solved: the drawing would prove nothing if none were.
///
/// # Panics
/// Where the promise is broken.
pub fn solved_cases(bytes: &[u8]) -> usize {
    let mut bytes = Bytes::new(bytes);
    let text = match bytes.byte() {
        0 => String::from_utf8_lossy(bytes.rest()).into_owned(),
        _ => panels::panel(&mut bytes).to_string(),
    };
    // A document that asks for a fine mesh, or for many modes, takes its time by right.
    let problem = read_panel(&text, Form::of(&text)).map(|mut problem| {
        let settings = problem.settings.get_or_insert_default();
        settings.most_triangles = Some(settings.most_triangles.unwrap_or(2_000).min(2_000));
        settings.first_triangles = settings.first_triangles.map(|first| first.min(200));
        problem.load_cases.truncate(2);
        for case in &mut problem.load_cases {
            case.modes = case.modes.map(|modes| modes.min(3));
            case.buckling = case.buckling.map(|ways| ways.min(3));
        }
        problem
    });
    let mut panel = match problem.and_then(Panel::new) {
        Ok(panel) => panel,
        Err(error) => {
            assert!(!error.to_string().is_empty());
            return 0;
        }
    };
    let count = panel.problem().load_cases.len();
    let solved: Vec<_> = (0..count).map(|nth| patiently(&mut panel, nth, &text)).collect();
    if let Some(first) = solved.first() {
        assert_eq!(&patiently(&mut panel, 0, &text), first, "{text}");
    }
    solved.iter().flatten().count()
}

/// Solves a load case, with no endless iteration.
fn patiently(panel: &mut Panel, nth: usize, text: &str) -> Option<CaseSolution> {
    let mut steps = 0;
    let solved = panel.solve(LoadOf::Document(nth), &mut |now| {
        steps += 1;
        let most = if now.work == Work::Modes { 200 } else { 1_300 };
        assert!(now.step <= most && steps < 20_000, "{now:?} {text}");
        core::ops::ControlFlow::Continue(())
    });
    match solved {
        Ok(case) => {
            assert!(is_finite(&case.write(&Field::ROOT)), "{text}");
            assert_eq!(case.field.x_m.len(), case.field.deflection_m.len(), "{text}");
            Some(case)
        }
        Err(error) => {
            let words = error.to_string();
            // Nothing but what a caller gave may stand as it is not.
            assert!(!words.is_empty() && !words.contains("NaN") && !words.contains("inf "), "{words} {text}");
            None
        }
    }
}

/// True where every number of a node is finite.
pub fn is_finite(node: &Node) -> bool {
    match node {
        Node::List(entries) => entries.iter().all(is_finite),
        Node::Record(entries) => entries.iter().all(|entry| is_finite(&entry.1)),
        other => other.si().is_none_or(f64::is_finite),
    }
}
