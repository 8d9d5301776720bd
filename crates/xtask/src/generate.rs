//! Generated files: the JSON Schema of the job file and a page for each check, both told by the command line program.

use crate::command::{output, run};
use crate::native;
use crate::page::files_below;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use xtask::workspace_root;

/// One generated file: path from the workspace root, and what it holds.
type Generated = BTreeMap<PathBuf, Vec<u8>>;

const SCHEMA: &str = "docs/job.schema.json";
const CHECKS: &str = "docs/checks";

/// Writes them all; a page of a check that no longer exists goes away.
pub(crate) fn generate() -> Result<(), String> {
    run(&mut native::build())?;
    let files = made()?;
    let root = workspace_root();
    for stale in present().into_keys().filter(|path| !files.contains_key(path)) {
        fs::remove_file(root.join(&stale))
            .map_err(|error| format!("cannot remove {}: {error}", stale.display()))?;
        println!("removed {}", stale.display());
    }
    for (path, bytes) in files {
        let file = root.join(&path);
        if fs::read(&file).is_ok_and(|old| old == bytes) {
            continue;
        }
        if let Some(folder) = file.parent() {
            fs::create_dir_all(folder)
                .map_err(|error| format!("cannot make {}: {error}", folder.display()))?;
        }
        fs::write(&file, bytes).map_err(|error| format!("cannot write {}: {error}", file.display()))?;
        println!("wrote {}", path.display());
    }
    Ok(())
}

/// The paths whose bytes are not what would be generated now. Compares with the folder and not with the last commit,
/// so that a developer's uncommitted work passes when it is whole; on a clean checkout it is the same.
pub(crate) fn stale() -> Result<Vec<PathBuf>, String> {
    let (made, present) = (made()?, present());
    let paths: std::collections::BTreeSet<&PathBuf> = made.keys().chain(present.keys()).collect();
    Ok(paths
        .into_iter()
        .filter(|path| made.get(*path) != present.get(*path))
        .cloned()
        .collect())
}

/// By the command line as it was built last.
fn made() -> Result<Generated, String> {
    let program =
        |arguments: &[&str]| output(native::command_line()?.args(["--language", "en"]).args(arguments));
    let mut files = Generated::new();
    files.insert(SCHEMA.into(), program(&["schema"])?);
    for (name, text) in pages(&String::from_utf8_lossy(&program(&[
        "explain",
        "--all",
        "--markdown",
    ])?))? {
        files.insert(Path::new(CHECKS).join(format!("{name}.md")), text.into_bytes());
    }
    Ok(files)
}

fn present() -> Generated {
    let root = workspace_root();
    let mut paths = files_below(&root.join(CHECKS)).unwrap_or_default();
    paths.push(root.join(SCHEMA));
    paths
        .into_iter()
        .filter_map(|file| {
            Some((
                file.strip_prefix(&root).ok()?.to_path_buf(),
                fs::read(&file).ok()?,
            ))
        })
        .collect()
}

/// Cuts the explanation of all checks at its first-level headings, `# name-of-check`, into one page each.
fn pages(all: &str) -> Result<BTreeMap<String, String>, String> {
    let mut pages = BTreeMap::new();
    let mut name = None;
    let mut in_block = false;
    for line in all.lines() {
        // A job in the text form may hold comments, which begin like a heading.
        in_block ^= line.starts_with("```");
        if let Some(heading) = line.strip_prefix("# ").filter(|_| !in_block) {
            let word = heading
                .split([':', ' '])
                .next()
                .unwrap_or_default()
                .trim_matches('`')
                .to_owned();
            if word.is_empty()
                || !word
                    .chars()
                    .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
            {
                return Err(format!("`# {heading}` does not begin with the name of a check"));
            }
            if pages.insert(word.clone(), String::new()).is_some() {
                return Err(format!("two checks are called {word}"));
            }
            name = Some(word);
        }
        if let Some(page) = name.as_ref().and_then(|name| pages.get_mut(name)) {
            page.push_str(line);
            page.push('\n');
        }
    }
    for page in pages.values_mut() {
        page.truncate(page.trim_end().len());
        page.push('\n');
    }
    if pages.is_empty() {
        Err("the command line program explains no check at all".to_owned())
    } else {
        Ok(pages)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_first_level_heading_begins_a_page_and_comments_in_examples_do_not() {
        let all = "# fuse-too-far\n\ntext\n```job\n# a comment\n```\n\n# `no-return`: no way back\nmore\n";
        let pages = pages(all).expect("two pages");
        assert_eq!(pages.keys().collect::<Vec<_>>(), ["fuse-too-far", "no-return"]);
        assert_eq!(
            pages["fuse-too-far"],
            "# fuse-too-far\n\ntext\n```job\n# a comment\n```\n"
        );
        assert_eq!(pages["no-return"], "# `no-return`: no way back\nmore\n");
    }

    #[test]
    fn a_heading_that_could_not_be_a_file_name_is_refused() {
        assert!(pages("# ../evil\n").is_err());
        assert!(pages("").is_err());
    }
}
