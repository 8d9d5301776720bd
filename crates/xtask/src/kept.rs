//! The finished page, kept from one run of the tests to the next as long as nothing has changed: to make the module small takes
//! one core a minute, and gives the same bytes again.
//!
//! What it is made of is every file that can get into it, the compiler, what the surroundings tell it, the optimiser, and
//! this program, which splits the module. What was finished is remembered too: a page that anything else built or touched since
//! is built anew.

use crate::command::quiet_output;
use crate::{page, policy, tools};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use xtask::{page_folder, workspace_root};

/// What the page is made of, at the top.
const SOURCES: &[&str] = &[
    ".cargo",
    "Cargo.lock",
    "Cargo.toml",
    "Trunk.toml",
    "crates",
    "index.html",
    "rust-toolchain.toml",
    "web",
];
/// The command line, which is below those.
const COMMAND_LINE: &str = "crates/cli";
/// Folders that hold none of the program.
const BESIDE: &[&str] = &["tests", "benches", "examples"];

/// How the variables begin that tell how programs are built.
const TELLING: &[&str] = &[
    "CARGO_BUILD_",
    "CARGO_ENCODED_RUSTFLAGS",
    "CARGO_PROFILE_",
    "CARGO_TARGET_",
    "RUSTC",
    "RUSTFLAGS",
    "TRUNK_",
];

/// Checksum of everything that the page is made of.
///
/// # Errors
/// When the workspace cannot be listed.
pub(crate) fn made_of() -> Result<String, String> {
    let root = workspace_root();
    let mut sources = Vec::new();
    for path in SOURCES.iter().map(|name| root.join(name)) {
        if path.is_dir() {
            sources.extend(page::files_below(&path)?);
        } else {
            sources.push(path);
        }
    }
    sources.retain(|source| !is_apart(source.strip_prefix(&root).unwrap_or(source)));
    // Settings of one who builds, for all that he builds.
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| Some(std::env::home_dir()?.join(".cargo")));
    sources.extend(home.map(|home| home.join("config.toml")));
    let optimiser = tools::wasm_opt();
    let this = std::env::current_exe().ok();
    let how = [
        quiet_output(Command::new("rustc").arg("-vV").current_dir(&root)),
        optimiser.map(|program| format!("{program:?} {}", written(&program))),
        this.map(|program| written(&program)),
    ];
    let mut told: Vec<String> = std::env::vars_os()
        // Each begins with a quotation mark.
        .map(|(name, value)| format!("{name:?} {value:?}"))
        .filter(|it| TELLING.iter().any(|begin| it[1..].starts_with(begin)))
        .collect();
    told.sort();
    Ok(policy::hash(
        format!("{how:?}{told:?}{}", checksums(&root, &sources)).as_bytes(),
    ))
}

/// Whether nothing of a source gets into the page, by its path below the top.
fn is_apart(source: &Path) -> bool {
    let mut folders = source.parent().into_iter().flat_map(Path::components);
    source.starts_with(COMMAND_LINE)
        || folders.any(|folder| BESIDE.iter().any(|beside| folder.as_os_str() == *beside))
}

/// Which of a program this is: how long the file is, and when it was written.
fn written(program: &Path) -> String {
    let told = fs::metadata(program).map(|told| (told.len(), told.modified().ok()));
    format!("{told:?}")
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
    Ok(policy::hash(checksums(&folder, &files).as_bytes()))
}

/// Each file by its name and its checksum. One that cannot be read, such as a link to nowhere, is nothing to build from: what
/// builds tells if it misses it.
fn checksums(folder: &Path, files: &[PathBuf]) -> String {
    let mut all = String::new();
    for file in files {
        let sum = fs::read(file).map_or_else(|error| error.kind().to_string(), |bytes| policy::hash(&bytes));
        let name = file.strip_prefix(folder).unwrap_or(file);
        all.push_str(&format!("{name:?} {sum}\n"));
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_of_a_name_or_of_what_stands_in_a_file_is_told() {
        let folder = std::env::temp_dir().join(format!("loomwright-kept-{}", std::process::id()));
        fs::create_dir_all(folder.join("deep")).expect("a folder");
        let told = || checksums(&folder, &page::files_below(&folder).expect("readable"));
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

    #[test]
    fn what_cannot_get_into_the_page_is_no_part_of_it() {
        for (source, expected) in [
            ("crates/cli/src/main.rs", true),
            ("crates/model/tests/edits.rs", true),
            ("web/tests/browser_side.rs", true),
            ("crates/xtask/src/split/tests.rs", false),
            ("crates/model/src/lib.rs", false),
            ("web/styles/page.css", false),
            ("index.html", false),
        ] {
            assert_eq!(is_apart(Path::new(source)), expected, "{source}");
        }
    }

    #[test]
    fn everything_that_the_page_is_made_of_is_there() {
        for name in SOURCES {
            assert!(workspace_root().join(name).exists(), "{name}");
        }
    }
}
