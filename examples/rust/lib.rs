//! Examples in Rust: run one with `cargo run --release --example review -- examples/covers/*.toml`.
#![forbid(unsafe_code)]
