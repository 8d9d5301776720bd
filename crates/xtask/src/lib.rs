//! What the developer commands share with the browser tests: the server of the built page, and where the workspace is.
//!
//! The commands themselves are in the binary beside it.

// Developer tools talk to the disk, the environment and the clock by their nature; the ban in `clippy.toml` is for core crates.
#![allow(clippy::disallowed_methods)]

pub mod static_server;

use std::path::{Path, PathBuf};

/// Folder of the root manifest.
#[must_use]
pub fn workspace_root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_path_buf()
}

/// Folder that the built page is written to.
#[must_use]
pub fn page_folder() -> PathBuf {
    workspace_root().join("dist")
}

/// Folder of the tools that xtask fetches.
#[must_use]
pub fn tool_folder() -> PathBuf {
    workspace_root().join("target").join("tools")
}

/// The script with rules of accessibility (axe-core) that browser tests run in the page. The stage `browser` fetches it.
#[must_use]
pub fn accessibility_script() -> PathBuf {
    tool_folder()
        .join("node_modules")
        .join("axe-core")
        .join("axe.min.js")
}

/// The first file of that name in a folder of `PATH`, or the path itself when it names an existing file.
#[must_use]
pub fn find_program(name: &str) -> Option<PathBuf> {
    let direct = Path::new(name);
    if direct.is_absolute() {
        return direct.is_file().then(|| direct.to_path_buf());
    }
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .flat_map(|folder| [folder.join(name), folder.join(format!("{name}.exe"))])
        .find(|candidate| candidate.is_file())
}
