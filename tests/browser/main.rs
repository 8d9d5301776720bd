//! Tests in a real browser, one file per user task. `cargo xtask test --stage browser` builds the page and runs them.

#![allow(clippy::disallowed_methods)]

mod harness;
mod same_bytes;
