//! The corpora of `tests/fuzz`, replayed: hand-made seeds, and inputs that once broke a promise.

use coaming_tests::fuzzing::TARGETS;

#[test]
fn every_corpus_is_replayed() {
    for (name, target) in TARGETS {
        let folder = coaming_tests::folder().join("fuzz/corpus").join(name);
        let mut files: Vec<_> = std::fs::read_dir(&folder)
            .unwrap_or_else(|error| panic!("{}: {error}", folder.display()))
            .map(|entry| entry.unwrap().path())
            .collect();
        files.sort();
        assert!(!files.is_empty(), "{} is empty", folder.display());
        for file in files {
            // The captured output of a failing test ends with the file that broke it.
            println!("{}", file.display());
            target(&std::fs::read(&file).unwrap());
        }
    }
}
