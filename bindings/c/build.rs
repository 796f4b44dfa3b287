//! Gives the shared library its SONAME: before 1.0 the ABI holds within a minor version.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let part = |name: &str| std::env::var(name).unwrap_or_default();
    if part("CARGO_CFG_TARGET_OS") == "linux" {
        println!(
            "cargo::rustc-cdylib-link-arg=-Wl,-soname,libcoaming.so.{}.{}",
            part("CARGO_PKG_VERSION_MAJOR"),
            part("CARGO_PKG_VERSION_MINOR")
        );
    }
}
