//! What makes the page one that can be installed and opened without a network: manifest, icons, service worker.
//!
//! The service worker knows every file of the folder by its checksum, and its version is made of these: a folder that was
//! built anew from the same sources has the same version, and a change of any file is a new one.

use crate::{icon, page, policy};
use std::fs;
use std::path::Path;

const MANIFEST: &str = include_str!("../../../web/offline/manifest.webmanifest");
const WORKER: &str = include_str!("../../../web/offline/service_worker.js");
/// Name of the service worker in the built page's folder.
pub(crate) const WORKER_NAME: &str = "sw.js";

/// What the page's head names of it.
pub(crate) const HEAD: &str = "<link rel=\"manifest\" href=\"manifest.webmanifest\"><link rel=\"apple-touch-icon\" href=\"icon-192.png\"><link rel=\"icon\" href=\"icon.svg\">";

/// Writes manifest and icons.
pub(crate) fn write_manifest(folder: &Path) -> Result<(), String> {
    let png = |side| icon::png(side).map_err(|error| format!("cannot pack the icon: {error}"));
    write(folder, "manifest.webmanifest", MANIFEST.as_bytes())?;
    write(folder, "icon.svg", icon::svg().as_bytes())?;
    write(folder, "icon-192.png", &png(192)?)?;
    write(folder, "icon-512.png", &png(512)?)
}

/// Whether a folder has its service worker: it is the last thing to be written into one.
pub(crate) fn has_worker(folder: &Path) -> bool {
    folder.join(WORKER_NAME).is_file()
}

/// Writes the service worker: last, when every other file is as it will be served.
pub(crate) fn write_worker(folder: &Path) -> Result<(), String> {
    let mut files = Vec::new();
    for file in page::files_below(folder)? {
        let name = file
            .strip_prefix(folder)
            .unwrap_or(&file)
            .to_string_lossy()
            .replace('\\', "/");
        if name != WORKER_NAME {
            let bytes =
                fs::read(&file).map_err(|error| format!("cannot read {}: {error}", file.display()))?;
            files.push((name, policy::hash(&bytes)));
        }
    }
    write(folder, WORKER_NAME, worker(&files).as_bytes())
}

/// The service worker for files of these names and checksums.
fn worker(files: &[(String, String)]) -> String {
    let list: Vec<String> = files
        .iter()
        // Servers answer with the index for the folder; some send those who name it there.
        .map(|(name, hash)| (if name == "index.html" { "./" } else { name }, hash))
        .map(|(name, hash)| format!("  {name:?}: {hash:?},\n"))
        .collect();
    let list = format!("{{\n{}}}", list.concat());
    let version = policy::hash(list.as_bytes()).replace(['+', '/', '='], "");
    WORKER
        .replace("{files}", &list)
        .replace("{version}", version.get(7..23).unwrap_or(&version))
}

fn write(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), String> {
    let file = folder.join(name);
    fs::write(&file, bytes).map_err(|error| format!("cannot write {}: {error}", file.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worker_lists_the_files_and_any_change_is_a_new_version() {
        let files = |hash: &str| {
            vec![
                ("index.html".to_owned(), "sha256-a".to_owned()),
                ("x.js".to_owned(), hash.to_owned()),
            ]
        };
        let (one, same, other) = (
            worker(&files("sha256-b")),
            worker(&files("sha256-b")),
            worker(&files("sha256-c")),
        );
        assert!(
            one.contains("\"./\": \"sha256-a\",") && one.contains("\"x.js\": \"sha256-b\","),
            "{one}"
        );
        assert_eq!(one, same);
        let version = |worker: &str| {
            worker
                .lines()
                .find(|line| line.starts_with("const VERSION"))
                .map(str::to_owned)
        };
        assert!(
            version(&one).is_some_and(|line| line.len() == "const VERSION = \"\";".len() + 16),
            "{:?}",
            version(&one)
        );
        assert_ne!(version(&one), version(&other));
    }
}
