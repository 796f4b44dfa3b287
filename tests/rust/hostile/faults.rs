//! Wrong and absent keys, each named with its line; and how the line is found.

use crate::{SOUND, SOUND_JSON, refused, written};

/// The line, from 1, of the one place where a piece stands.
fn line_of(text: &str, piece: &str) -> usize {
    let places: Vec<usize> = text.match_indices(piece).map(|found| found.0).collect();
    assert_eq!(places.len(), 1, "`{piece}` stands {} times", places.len());
    text[..places[0]].matches('\n').count() + 1
}

/// One fault put into a document: the piece that is replaced, what replaces it, the piece of the new text at whose
/// line the fault is due, and the words that are due in the message.
pub(crate) struct Fault {
    from: &'static str,
    to: &'static str,
    at: &'static str,
    says: &'static [&'static str],
}

pub(crate) const fn fault(
    from: &'static str,
    to: &'static str,
    at: &'static str,
    says: &'static [&'static str],
) -> Fault {
    Fault { from, to, at, says }
}

pub(crate) fn line_is_named(group: &str, format: &str, sound: &str, faults: &[Fault]) {
    for (nth, fault) in faults.iter().enumerate() {
        assert!(sound.contains(fault.from), "`{}` stands nowhere", fault.from);
        let text = sound.replacen(fault.from, fault.to, 1);
        let path = written(&format!("{group}-{nth}.{format}"), &text);
        let message = refused(&path);
        let line = line_of(&text, fault.at);
        assert!(
            message.starts_with(&format!("line {line}, column ")),
            "`{}`: line {line} is due: {message}",
            fault.to
        );
        for words in fault.says {
            assert!(message.contains(words), "`{}`: `{words}` is due: {message}", fault.to);
        }
    }
}

#[test]
fn a_wrong_key_is_named_with_its_line() {
    line_is_named(
        "key",
        "toml",
        SOUND,
        &[
            fault(
                "good_face",
                "goodface",
                "goodface",
                &["goodface: unknown key", "did you mean `good_face`?"],
            ),
            fault(
                "thickness_tolerance = \"0.25 mm\"",
                "thicknes_tolerance = \"0.25 mm\"",
                "thicknes_tolerance",
                &["layers[1].thicknes_tolerance: unknown key", "did you mean `thickness_tolerance`?"],
            ),
            fault(
                "[screws.bush]",
                "[screws.bushing]",
                "[screws.bushing]",
                &["screws[0].bushing: unknown key", "did you mean `bush`?"],
            ),
            fault(
                "edge_distance = \"12 mm\"",
                "edge_distanse = \"12 mm\"",
                "edge_distanse",
                &["screws[0].passes[1].edge_distanse: unknown key"],
            ),
            fault(
                "{ layer = \"pane\", temperature = \"-10 degC\"",
                "{ layr = \"pane\", temperature = \"-10 degC\"",
                "layr =",
                &["load_cases[10].states[1].layr: unknown key", "did you mean `layer`?"],
            ),
            fault(
                "height = \"164 mm\", corner_radius",
                "height = \"164 mm\", radius",
                ", radius =",
                &["layers[0].cut_outs[0].outline.rectangle.radius: unknown key"],
            ),
            fault("[hazard]", "[hazzard]", "[hazzard]", &["hazzard: unknown key", "did you mean `hazard`?"]),
            fault(
                "pieces = 2\npiece_gap",
                "pieces = 2\npieces = 3\npiece_gap",
                "pieces = 3",
                &["duplicate key"],
            ),
            fault(
                "[service.bay]",
                "[service.ambient]\nhighest = \"1 K\"\n[service.bay]",
                "[service.ambient]\nhighest",
                &["duplicate key"],
            ),
        ],
    );
}

#[test]
fn a_missing_structural_key_is_named_with_the_line_of_its_table() {
    line_is_named(
        "missing",
        "toml",
        SOUND,
        &[
            fault("title = \"Pump-bay hatch, revised\"\n", "", "# A sound document", &["title: missing"]),
            fault(
                "outline = { rectangle = { width = \"500 mm\", height = \"360 mm\", corner_radius = \"20 mm\" } }",
                "",
                "[opening]",
                &["opening.outline: missing"],
            ),
            fault(
                "outline = { rectangle = { width = \"300 mm\", height = \"220 mm\", corner_radius = \"10 mm\" } }",
                "",
                "[[layers]]\nname = \"pane\"",
                &["layers[1].outline: missing"],
            ),
            fault("role = \"frame\"\n", "", "[[layers]]\nname = \"frame\"", &["layers[2].role: missing"]),
            fault(
                "{ layer = \"strip\", temperature = \"75 degC\"",
                "{ temperature = \"75 degC\"",
                "{ temperature = \"75 degC\"",
                &["load_cases[9].states[3].layer: missing"],
            ),
            fault(
                "{ width = \"260 mm\", height = \"180 mm\" }",
                "{ width = \"260 mm\" }",
                "{ width = \"260 mm\" }",
                &["layers[2].cut_outs[0].outline.rectangle.height: missing"],
            ),
            fault(
                "{ rectangle = { width = \"276 mm\", height = \"196 mm\" } }",
                "{}",
                "positions = {}",
                &["screws[0].positions", "one key of rectangle, points"],
            ),
            fault("kind = \"wind_in\"\n", "", "[[load_cases]]\npressure", &["load_cases[2].kind: missing"]),
        ],
    );
}

#[test]
fn json_faults_are_named_with_their_line() {
    line_is_named(
        "any",
        "json",
        SOUND_JSON,
        &[
            fault("\"2.5 mm\"", "1.6", "1.6", &["layers[0].thickness: `1.6`", "it needs a unit"]),
            fault("\"2.5 mm\"", "\"1.6 kg\"", "1.6 kg", &["layers[0].thickness"]),
            fault("\"2.5 mm\"", "\"-1 mm\"", "-1 mm", &["layers[0].thickness: -1 mm is not possible"]),
            fault("\"2.5 mm\"", "NaN", "NaN", &["cannot be read"]),
            fault("\"2.5 mm\"", "1e999", "1e999", &["cannot be read"]),
            fault(
                "\"thickness\"",
                "\"thicknes\"",
                "thicknes",
                &["layers[0].thicknes: unknown key", "did you mean `thickness`?"],
            ),
            fault("\"skin\"", "\"skim\"", "skim", &["layers[0].role: `skim` is not an option"]),
            fault("\"name\": \"lid\", ", "", "\"2.5 mm\" }", &["layers[0].name: missing"]),
            fault(
                "\"title\": \"Lid\",",
                "\"title\": \"Lid\", \"title\": \"Lid\",",
                "\"title\": \"Lid\", \"title\"",
                &["title: given twice"],
            ),
        ],
    );
}
