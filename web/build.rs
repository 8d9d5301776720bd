//! Tells the linker to leave in the module which data each function takes hold of, where the page is built as it is shipped:
//! `cargo xtask` moves data after the first picture by it, and takes it out again.

#![allow(
    clippy::disallowed_methods,
    reason = "the environment is how cargo tells a build script what is built"
)]

fn main() {
    let told = |name: &str| std::env::var(name).unwrap_or_default();
    if told("CARGO_CFG_TARGET_ARCH") == "wasm32" && told("OPT_LEVEL") != "0" {
        println!("cargo:rustc-link-arg-bins=--emit-relocs");
    }
    println!("cargo:rerun-if-changed=build.rs");
}
