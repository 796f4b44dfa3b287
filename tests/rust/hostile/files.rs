//! Files that are no documents, nesting without end, and the command line.

use std::process::Command;

use crate::{SOUND, SOUND_JSON, refused, reviewed, scratch, written};

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
