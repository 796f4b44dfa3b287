//! Hostile documents, through the review command as a user runs it: exit status 2, a message that names file, line and
//! field, and never a panic.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A sound document: the faults are put into it one by one.
const SOUND: &str = include_str!("sound.toml");

/// The beginning of a second document, in JSON.
const SOUND_JSON: &str = r#"{
  "version": 1,
  "title": "Lid",
  "opening": { "outline": { "rectangle": { "width": "500 mm", "height": "360 mm" } } },
  "layers": [
    { "name": "lid", "role": "skin",
      "outline": { "rectangle": { "width": "580 mm", "height": "440 mm" } },
      "thickness": "2.5 mm" }
  ]
}
"#;

fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("hostile");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

fn written(name: &str, text: impl AsRef<[u8]>) -> PathBuf {
    let path = scratch(name);
    std::fs::write(&path, text).unwrap();
    path
}

fn reviewed(path: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_review")).arg(path).output().unwrap()
}

/// Runs the command on a bad file; gives its message without the file's name, which must lead it.
fn refused(path: &Path) -> String {
    let output = reviewed(path);
    let message = String::from_utf8(output.stderr).unwrap();
    let name = path.display().to_string();
    assert!(!message.contains("panicked"), "{name}: {message}");
    assert_eq!(output.status.code(), Some(2), "{name}: {message}");
    assert!(output.stdout.is_empty(), "{name} prints a review");
    assert!(message.lines().count() == 1, "{name}: one line is due: {message}");
    assert!(message.len() < 2_000 + name.len(), "{name}: a message of {} bytes", message.len());
    let rest = message.strip_prefix(&format!("{name}: "));
    rest.unwrap_or_else(|| panic!("{name} is not named: {message}")).trim_end().to_owned()
}

/// The line, from 1, of the one place where a piece stands.
fn line_of(text: &str, piece: &str) -> usize {
    let places: Vec<usize> = text.match_indices(piece).map(|found| found.0).collect();
    assert_eq!(places.len(), 1, "`{piece}` stands {} times", places.len());
    text[..places[0]].matches('\n').count() + 1
}

/// One fault put into a document: the piece that is replaced, what replaces it, the piece of the new text at whose
/// line the fault is due, and the words that are due in the message.
struct Fault {
    from: &'static str,
    to: &'static str,
    at: &'static str,
    says: &'static [&'static str],
}

const fn fault(
    from: &'static str,
    to: &'static str,
    at: &'static str,
    says: &'static [&'static str],
) -> Fault {
    Fault { from, to, at, says }
}

fn line_is_named(group: &str, format: &str, sound: &str, faults: &[Fault]) {
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

/// Each fault stands at a place where a reader could lose the line: an array of tables, a table below one, an inline
/// table, an inline table in an array over several lines.
#[test]
fn a_wrong_value_is_named_with_its_line() {
    line_is_named(
        "value",
        "toml",
        SOUND,
        &[
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = 1.6",
                "thickness = 1.6",
                &["layers[0].thickness: `1.6`", "it needs a unit"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1.6\"",
                "thickness = \"1.6\"",
                &["layers[0].thickness: `1.6`", "it needs a unit"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1.6 kg\"",
                "1.6 kg",
                &["layers[0].thickness", "`kg` does not measure length"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"NaN mm\"",
                "NaN mm",
                &["layers[0].thickness", "it is not finite"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"inf mm\"",
                "inf mm",
                &["layers[0].thickness", "it is not finite"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1e400 mm\"",
                "1e400 mm",
                &["layers[0].thickness", "larger than any number"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = nan",
                "thickness = nan",
                &["layers[0].thickness", "it needs a unit"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"-1 mm\"",
                "-1 mm",
                &["layers[0].thickness: -1 mm is not possible", "greater than 0 mm"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"0 mm\"",
                "thickness = \"0 mm\"",
                &["layers[0].thickness: 0 mm is not possible"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"1,6 mm\"",
                "1,6 mm",
                &["layers[0].thickness", "write `1.6 mm`"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = \"16 ga\"",
                "16 ga",
                &["layers[0].thickness", "needs its metal"],
            ),
            fault(
                "thickness = \"2.5 mm\"",
                "thickness = [\"2.5 mm\"]",
                "[\"2.5 mm\"]",
                &["layers[0].thickness"],
            ),
            fault("thickness = \"2.5 mm\"", "thickness = 1979-05-27", "1979-05-27", &["layers[0].thickness"]),
            fault(
                "thickness = \"5 mm\"",
                "thickness = \"5 N\"",
                "5 N\"",
                &["layers[1].thickness", "`N` does not measure length"],
            ),
            fault(
                "hole = \"8.0 mm\"",
                "hole = \"8.0 s\"",
                "8.0 s",
                &["screws[0].passes[1].hole", "`s` does not measure length"],
            ),
            fault(
                "length = \"5.4 mm\"",
                "length = \"-5.4 mm\"",
                "-5.4 mm",
                &["screws[0].bush.length: -5.4 mm is not possible"],
            ),
            fault(
                "height = \"196 mm\"",
                "height = \"196 lb\"",
                "196 lb",
                &["screws[0].positions.rectangle.height"],
            ),
            fault("y = \"-150 mm\"", "y = -150", "y = -150", &["layers[3].at.y: `-150`", "it needs a unit"]),
            fault(
                "layer = \"strip\", temperature = \"75 degC\"",
                "layer = \"strip\", temperature = \"75 K/s\"",
                "75 K/s",
                &["load_cases[9].states[3].temperature"],
            ),
            fault(
                "layer = \"frame\", temperature = \"-10 degC\", humidity = 0.5",
                "layer = \"frame\", temperature = \"-10 degC\", humidity = 1.5",
                "humidity = 1.5",
                &["load_cases[10].states[2].humidity: 1.5 is not possible", "at most 1"],
            ),
            fault(
                "orders = [1, 3, 6]",
                "orders = [1,\n 3,\n -6]",
                "-6]",
                &["service.excitations[1].orders[2]: -6 is not possible"],
            ),
            fault(
                "count = 10",
                "count = 10.5",
                "count = 10.5",
                &["screws[0].count", "a whole number of things"],
            ),
            fault(
                "count = 10",
                "count = 99999999999",
                "count = 99999999999",
                &["screws[0].count", "a whole number of things"],
            ),
            fault(
                "countersunk = true",
                "countersunk = \"yes\"",
                "countersunk = \"yes\"",
                &["screws[0].passes[0].countersunk", "true or false"],
            ),
            fault("version = 1", "version = 2", "version = 2", &["version: 2 is not possible"]),
            fault(
                "edge = \"top\"",
                "edge = \"upper\"",
                "\"upper\"",
                &["layers[0].bends[2].edge: `upper` is not an option", "left, right, top, bottom"],
            ),
            fault(
                "kind = \"heat_set\"",
                "kind = \"heatset\"",
                "heatset",
                &["screws[0].insert.kind", "did you mean `heat_set`?"],
            ),
            fault(
                "kind = \"sun\"",
                "kind = \"sunshine\"",
                "sunshine",
                &["load_cases[11].kind", "did you mean `sun`?"],
            ),
            fault(
                "{ rectangle = { width = \"540 mm\"",
                "{ rektangle = { width = \"540 mm\"",
                "rektangle",
                &["seal.path: `rektangle` is not an option", "did you mean `rectangle`?"],
            ),
        ],
    );
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

/// Faults between fields have a path instead of a line.
#[test]
fn faults_between_fields_are_named_with_their_path() {
    let bow_tie = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"9 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"0 mm\", y = \"9 mm\" }] } }";
    let spike = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"5 mm\", y = \"0 mm\" }, { x = \"5 mm\", y = \"9 mm\" }] } }";
    let two = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"9 mm\" }] } }";
    let repeated = "outline = { polygon = { points = [{ x = \"0 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"0 mm\" }, { x = \"9 mm\", y = \"9 mm\" }] } }";
    let lid = "outline = { rectangle = { width = \"580 mm\", height = \"440 mm\" } }";
    let cases: &[(&str, &str, &[&str])] = &[
        (
            "aluminium_5052_h32",
            "aluminium_5052_h23",
            &["layers.lid.material: unknown material `aluminium_5052_h23`", "aluminium_5052_h32"],
        ),
        (
            "epdm_sponge_2a1",
            "epdm_sponge_2a9",
            &["seal.material: unknown material `epdm_sponge_2a9`", "epdm_sponge_2a1"],
        ),
        (
            lid,
            bow_tie,
            &[
                "layers.lid.outline.polygon, point 0 (0 mm, 0 mm)",
                "crosses the side from point 2 (9 mm, 0 mm)",
            ],
        ),
        (lid, spike, &["layers.lid.outline.polygon, point 1 (9 mm, 0 mm)", "runs back here"]),
        (lid, two, &["layers.lid.outline.polygon, 2 points", "at least three"]),
        (lid, repeated, &["layers.lid.outline.polygon, point 1 (9 mm, 0 mm)", "stands twice"]),
        (
            "layer = \"pane\"\nhole",
            "layer = \"pain\"\nhole",
            &["screws.pane_screws.passes[1].layer: `pain`", "did you mean `pane`?"],
        ),
        ("name = \"strip\"", "name = \"lid\"", &["layers[3].name", "borne twice"]),
        (
            "layers = [\"lid\", \"strip\"]",
            "layers = [\"lid\"]",
            &["bonds.strip_bond.layers", "joins two layers"],
        ),
        ("width = \"244 mm\"", "width = \"644 mm\"", &["layers.lid.cut_outs[0]", "reaches the edge"]),
        (
            "corner_radius = \"40 mm\"",
            "corner_radius = \"400 mm\"",
            &["seal.path.rectangle.corner_radius", "more than half the shorter side"],
        ),
        (
            "[hazard]",
            "[[waivers]]\ncheck = \"latch_hand_farce\"\naccepted_by = \"shop\"\nreason = \"a test\"\n[hazard]",
            &["waivers[0].check `latch_hand_farce`", "did you mean `latch_hand_force`?"],
        ),
    ];
    for (nth, (from, to, says)) in cases.iter().enumerate() {
        assert!(SOUND.contains(from), "`{from}` stands nowhere");
        let message = refused(&written(&format!("relation-{nth}.toml"), SOUND.replacen(from, to, 1)));
        for words in *says {
            assert!(message.contains(words), "`{to}`: `{words}` is due: {message}");
        }
    }
}

#[test]
fn files_that_are_no_documents_are_refused() {
    let cases: &[(&str, Vec<u8>, &[&str])] = &[
        ("latin-1.toml", b"title = \"\xe9tanche\"".to_vec(), &["not UTF-8", "byte 9"]),
        ("utf-16.toml", b"\xff\xfet\0i\0t\0l\0e\0".to_vec(), &["not UTF-8"]),
        ("zeros.toml", vec![0; 1000], &["line 1"]),
        ("empty.toml", Vec::new(), &["the text is empty"]),
        ("blank.toml", b" \n\t\r\n".to_vec(), &["the text is empty"]),
        ("comment.toml", b"# nothing\n".to_vec(), &["version: missing"]),
        ("brace.json", b"{".to_vec(), &["line 1", "cannot be read"]),
        ("list.json", b"[1, 2]".to_vec(), &["line 1"]),
        ("null.json", b"{\"version\": null}".to_vec(), &["line 1", "version"]),
        ("tail.json", [SOUND_JSON.as_bytes(), b"{}"].concat(), &["line 11", "trailing"]),
        ("20-mebibytes.toml", vec![b'#'; 20 << 20], &["too large", "20971520 bytes", "16777216"]),
        ("20-mebibytes.json", vec![b'{'; 20 << 20], &["too large", "20971520 bytes"]),
    ];
    for (name, bytes, says) in cases {
        let message = refused(&written(name, bytes));
        for words in *says {
            assert!(message.contains(words), "{name}: `{words}` is due: {message}");
        }
    }
    assert!(refused(&scratch("missing.toml")).contains("No such file"), "a missing file");
    assert!(refused(&scratch("")).contains("directory"), "a directory");
}

/// A text may nest without end in several ways; none of them may exhaust the stack, on reading or on dropping.
#[test]
fn deep_nesting_is_refused() {
    for depth in [1_000, 200_000] {
        let arrays = format!("a = {}1{}", "[".repeat(depth), "]".repeat(depth));
        let open = format!("a = {}", "[".repeat(depth));
        let inline = format!("a = {}1{}", "{ a = ".repeat(depth), " }".repeat(depth));
        let dotted = format!("{}a = 1", "a.".repeat(depth));
        let header = format!("[{}a]", "a.".repeat(depth));
        let list_header = format!("[[{}a]]", "a.".repeat(depth));
        for (name, text) in [
            ("arrays", arrays),
            ("open", open),
            ("inline", inline),
            ("dotted", dotted),
            ("header", header),
            ("list-header", list_header),
        ] {
            let message = refused(&written(&format!("deep-{name}-{depth}.toml"), text));
            assert!(message.contains("line 1"), "{name}: {message}");
        }
        let lists = format!("{{\"layers\": {}{}}}", "[".repeat(depth), "]".repeat(depth));
        let objects = format!("{}1{}", "{\"layers\": ".repeat(depth), "}".repeat(depth));
        let unknown = format!("{{\"depth\": {}{}}}", "[".repeat(depth), "]".repeat(depth));
        for (name, text) in [("lists", lists), ("objects", objects), ("unknown", unknown)] {
            let message = refused(&written(&format!("deep-{name}-{depth}.json"), text));
            assert!(message.contains("line 1"), "{name}: {message}");
        }
    }
}

/// The documents have no field for a temperature difference: it is asked of a calculation.
#[test]
fn a_temperature_is_no_difference() {
    let entry = coaming::entry("plate_temperature_gradient").unwrap();
    let input = |rise: &str| {
        format!(
            r#"{{ "length": "500 mm", "width": "300 mm", "thickness": "2 mm", "youngs_modulus": "70 GPa",
  "poissons_ratio": 0.33, "expansion": "23.6e-6 1/K",
  "gradient": "{rise}" }}"#
        )
    };
    for rise in ["20 °C", "20 degC", "68 degF", "20", "20 mm"] {
        let error = (entry.calculate_json)(&input(rise)).unwrap_err();
        assert_eq!((error.name(), error.field()), ("not_a_quantity", "gradient"), "{rise}: {error}");
        assert_eq!(error.position().map(|place| place.0), Some(3), "{rise}: {error}");
    }
    let message = (entry.calculate_json)(&input("20 °C")).unwrap_err().to_string();
    assert!(message.contains("write K, delta_degC or delta_degF"), "{message}");
    for rise in ["20 K", "20 delta_degC", "36 delta_degF"] {
        let answer = (entry.calculate_json)(&input(rise));
        assert!(answer.is_ok(), "{rise}: {answer:?}");
    }
}

#[test]
fn sound_documents_are_reviewed_beside_a_bad_one() {
    // Without the wind, whose series take long where nothing is optimised.
    let sound = written("sound.toml", SOUND.replace("pressure = \"1.0 kPa\"\n", ""));
    let bad = written("bad.toml", "title = 1");
    let output = Command::new(env!("CARGO_BIN_EXE_review")).args([&bad, &sound]).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stdout).contains("Pump-bay hatch, revised"));
    assert!(String::from_utf8_lossy(&output.stderr).contains("bad.toml: line 1"));
    assert_eq!(reviewed(&sound).status.code(), Some(0));
    assert_eq!(reviewed(&written("sound.json", SOUND_JSON)).status.code(), Some(0));
}

#[test]
fn words_of_the_command_line_are_checked() {
    for words in [&["--jsno"][..], &[]] {
        let output = Command::new(env!("CARGO_BIN_EXE_review")).args(words).output().unwrap();
        assert_eq!(output.status.code(), Some(2), "{words:?}");
        assert!(String::from_utf8_lossy(&output.stderr).starts_with("review: "), "{words:?}");
    }
}
