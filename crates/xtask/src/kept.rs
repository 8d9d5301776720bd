//! The finished page, kept from one run of the tests to the next as long as nothing has changed: to make the module small takes
//! one core a minute, and gives the same bytes again.
//!
//! What it is made of is every file of the workspace but those that the page cannot hold, and the optimiser. What was
//! finished is remembered too: a page that anything else built or touched since is built anew.

use crate::{page, policy, tools};
use std::fs;
use std::path::{Path, PathBuf};
use xtask::{page_folder, workspace_root};

/// Folders at the top that hold nothing that the page is made of: what was built, and tests of the whole.
const APART: &[&str] = &["target", "dist", "tests", ".git"];

/// Checksum of everything that the page is made of.
pub(crate) fn made_of() -> Result<String, String> {
    let root = workspace_root();
    let mut sources = Vec::new();
    for entry in fs::read_dir(&root).map_err(|error| format!("cannot read {}: {error}", root.display()))? {
        let path = entry.map_err(|error| error.to_string())?.path();
        let apart = |name: &str| path.file_name().is_some_and(|own| own == name);
        if APART.iter().any(|name| apart(name)) {
            continue;
        }
        if path.is_dir() {
            sources.extend(page::files_below(&path)?);
        } else {
            sources.push(path);
        }
    }
    sources.sort();
    let how = [
        format!("{:?}", tools::wasm_opt()),
        std::env::var("RUSTFLAGS").unwrap_or_default(),
    ];
    Ok(policy::hash(
        format!("{how:?}{}", checksums(&root, &sources)?).as_bytes(),
    ))
}

/// Whether the page stands as it was finished of these sources.
pub(crate) fn stands(made_of: &str) -> bool {
    let kept = fs::read_to_string(note()).unwrap_or_default();
    finished().is_ok_and(|finished| kept == format!("{made_of}\n{finished}\n"))
}

/// Notes that the page was finished of these sources.
pub(crate) fn remember(made_of: &str) -> Result<(), String> {
    let (note, text) = (note(), format!("{made_of}\n{}\n", finished()?));
    fs::write(&note, text).map_err(|error| format!("cannot write {}: {error}", note.display()))
}

fn note() -> PathBuf {
    workspace_root().join("target").join("xtask").join("page.kept")
}

fn finished() -> Result<String, String> {
    let folder = page_folder();
    let files = page::files_below(&folder)?;
    Ok(policy::hash(checksums(&folder, &files)?.as_bytes()))
}

/// Each file by its name and its checksum.
fn checksums(folder: &Path, files: &[PathBuf]) -> Result<String, String> {
    let mut all = String::new();
    for file in files {
        let bytes = fs::read(file).map_err(|error| format!("cannot read {}: {error}", file.display()))?;
        let name = file.strip_prefix(folder).unwrap_or(file);
        all.push_str(&format!("{name:?} {}\n", policy::hash(&bytes)));
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_of_a_name_or_of_what_stands_in_a_file_is_told() {
        let folder = std::env::temp_dir().join(format!("loomwright-kept-{}", std::process::id()));
        fs::create_dir_all(folder.join("deep")).expect("a folder");
        let told = || checksums(&folder, &page::files_below(&folder).expect("readable")).expect("readable");
        fs::write(folder.join("deep/one"), "text").expect("writable");
        let first = told();
        assert_eq!(first, told());
        fs::write(folder.join("deep/one"), "texts").expect("writable");
        let second = told();
        fs::rename(folder.join("deep/one"), folder.join("deep/two")).expect("renamed");
        let third = told();
        fs::remove_dir_all(&folder).expect("removed");
        assert!(first != second && second != third && first != third);
    }
}
