//! Splits the module of a built page, and lets its glue fetch what follows.

use super::linked::unlinked;
use super::list::lines;
use super::module::{Module, without};
use super::objects::noted;
use super::plan::{Parts, roots};
use super::references::References;
use super::watched::watched;
use super::{PARTS, Plan, glue, plan, split};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use xtask::{page_folder, workspace_root};

/// End of the name of a built module.
const WHOLE: &str = "_bg.wasm";
/// Ends of the names of its parts, the first being called as the whole was.
pub(crate) const FIRST: &str = WHOLE;
pub(crate) const MORE: &str = "_more.wasm";
pub(crate) const REST: &str = "_rest.wasm";
const PART_ENDS: [&str; PARTS] = [FIRST, MORE, REST];

/// Where the linker leaves the page's module, below the folder of what is built.
const LINKED: &str = "wasm32-unknown-unknown/page/loomwright-web.wasm";

/// The list of functions of a page that remembers what ran.
const FUNCTIONS: &str = "functions.txt";
/// The same with what ran.
const RAN: &str = "ran.txt";
/// The list of what the first picture does without.
const LIST: &str = "crates/xtask/src/split/later.txt";

/// Up to so many bytes: a browser compiles no larger module while a page stands still for it. One that was built for trying
/// things, without optimisation, stays whole.
const LARGEST: usize = 8_000_000;
/// Up to so many bytes, with the names of its functions, it is tried.
const LARGEST_WHOLE: usize = 30_000_000;

/// The parts of a page's module, and the glue that lets them follow.
pub(crate) struct Parted {
    files: Vec<(PathBuf, Vec<u8>)>,
}

impl Parted {
    /// Puts them into the page's folder, the first part under the name that the whole module had.
    ///
    /// # Errors
    /// When a file cannot be written.
    pub(crate) fn write(&self) -> Result<(), String> {
        self.files.iter().try_for_each(|(file, bytes)| write(file, bytes))
    }
}

/// Splits the module of a built page, which must not have been optimised since it was linked, and leaves it whole, without what
/// its linker told. One with a part that is too large for
/// being waited for stays whole.
///
/// # Errors
/// When a file cannot be read, or is not as it was in the modules that were split so far.
pub(crate) fn parted(folder: &Path) -> Result<Option<Parted>, String> {
    let modules = modules(folder)?;
    let Some(file) = modules.iter().find(|file| ends(file, WHOLE)) else {
        return Ok(None);
    };
    let as_linked = read(file)?;
    if as_linked.len() > LARGEST_WHOLE {
        return Ok(None);
    }
    let module = noted(&as_linked)?;
    // Without knowing what leads to what, nothing is held back.
    let Some(references) = linked()? else {
        return Ok(None);
    };
    let parts = Parts::of(&references, &roots(&Module::read(&module)?, &references)?);
    let beside = |end: &str| {
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        file.with_file_name(name.replace(WHOLE, end))
    };
    let (glue, files) = (beside(".js"), PART_ENDS.map(beside));
    let text =
        String::from_utf8(read(&glue)?).map_err(|error| format!("{} is no text: {error}", glue.display()))?;
    let following: Vec<String> = files
        .iter()
        .skip(1)
        .map(|file| {
            file.file_name()
                .unwrap_or_default()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    let (text, called) = glue::shortened(&glue::joined(&text, &following)?);
    let parts = split(
        &module,
        &Plan {
            part: &|name| parts.part(name),
            references: Some(&references),
            reads_texts: &plan::reads_texts,
            marks: plan::MARKS,
            called: &called,
        },
    )?;
    if parts.iter().any(|part| part.len() > LARGEST) {
        return Ok(None);
    }
    // The optimiser cannot keep right what the linker told, and says so.
    write(file, &unlinked(&as_linked)?.finish())?;
    let files = files.into_iter().zip(parts);
    Ok(Some(Parted {
        files: files.chain([(glue, text.into_bytes())]).collect(),
    }))
}

/// Calls the glue and the parts by what is in all of them, once they are as they will be shipped: a browser that keeps what has a
/// checksum in its name must never put parts of two builds together.
///
/// # Errors
/// When a file cannot be read, written or renamed.
pub(crate) fn name_by_contents(folder: &Path) -> Result<(), String> {
    let modules = modules(folder)?;
    let Some(first) = modules.iter().find(|file| ends(file, FIRST)) else {
        return Ok(());
    };
    let name = first.file_name().unwrap_or_default().to_string_lossy();
    let stem = name.trim_end_matches(FIRST);
    let files = [".js"].into_iter().chain(PART_ENDS);
    let files: Vec<(PathBuf, &str)> = files
        .map(|end| (first.with_file_name(format!("{stem}{end}")), end))
        .collect();
    let mut sums = String::new();
    for (file, _) in &files {
        sums.push_str(&crate::policy::hash(&read(file)?));
    }
    let sum = crate::policy::hex(sums.as_bytes());
    let own = stem.rsplit_once('-').map_or(stem, |(own, _)| own);
    let named = format!("{own}-{}", sum.get(..16).unwrap_or(&sum));
    for text in [&files[0].0, &folder.join("index.html")] {
        let told = String::from_utf8(read(text)?)
            .map_err(|error| format!("{} is no text: {error}", text.display()))?;
        write(text, told.replace(stem, &named).as_bytes())?;
    }
    for (file, end) in &files {
        let to = file.with_file_name(format!("{named}{end}"));
        fs::rename(file, &to).map_err(|error| format!("cannot rename {}: {error}", file.display()))?;
    }
    Ok(())
}

/// Puts a module that remembers what ran into a built page, in place of its own, and the list of its functions beside it: a line
/// each.
pub(crate) fn watch(folder: &Path) -> Result<(), String> {
    for file in modules(folder)?.into_iter().filter(|file| ends(file, WHOLE)) {
        let (watched, functions) = watched(&read(&file)?)?;
        write(&file, &watched)?;
        let lines: String = functions.iter().map(|name| format!("{name}\n")).collect();
        write(&folder.join(FUNCTIONS), lines.as_bytes())?;
    }
    Ok(())
}

/// Writes the list of what the first picture does without, by what was recorded in a folder with a page like the built one.
///
/// # Errors
/// When a file cannot be read or written, or is not as it should be.
pub(crate) fn write_list(folder: &Path) -> Result<(), String> {
    let references = linked()?.ok_or("the linker did not tell what leads to what: see web/build.rs")?;
    let modules = modules(&page_folder())?;
    let file = modules.iter().find(|file| ends(file, WHOLE));
    let module = read(file.ok_or("there is no built page")?)?;
    let roots = roots(&Module::read(&module)?, &references)?;
    let told = String::from_utf8(read(&folder.join(RAN))?).map_err(|error| error.to_string())?;
    let mut ran = BTreeMap::new();
    for line in told.lines() {
        let (did, name) = line
            .split_once(' ')
            .ok_or("what was recorded is not written as it should be")?;
        for function in references.of_names([name].into_iter()) {
            // Of several of one name, one is enough.
            *ran.entry(function).or_default() |= did == "1";
        }
    }
    let lines = lines(&references, &roots, &ran);
    let head = include_str!("later.txt")
        .lines()
        .take_while(|line| line.starts_with('#'));
    let text: String = head
        .chain(lines.iter().map(String::as_str))
        .map(|line| format!("{line}\n"))
        .collect();
    write(&workspace_root().join(LIST), text.as_bytes())
}

/// What leads to what in the module that was linked last for the page, if its linker told.
fn linked() -> Result<Option<References>, String> {
    let target = std::env::var_os("CARGO_TARGET_DIR").unwrap_or_else(|| "target".into());
    let file = workspace_root().join(target).join(LINKED);
    if !file.is_file() {
        return Ok(None);
    }
    References::of_linker(&read(&file)?)
}

/// A module without what is only there for who looks into it.
///
/// # Errors
/// When it is damaged.
pub(crate) fn without_names(module: &[u8]) -> Result<Vec<u8>, String> {
    Ok(without(module, &|_| true)?.finish())
}

fn modules(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let mut files = crate::page::files_below(folder)?;
    files.retain(|file| ends(file, ".wasm"));
    Ok(files)
}

fn ends(file: &Path, end: &str) -> bool {
    file.file_name()
        .is_some_and(|name| name.to_string_lossy().ends_with(end))
}

fn read(file: &Path) -> Result<Vec<u8>, String> {
    fs::read(file).map_err(|error| format!("cannot read {}: {error}", file.display()))
}

fn write(file: &Path, bytes: &[u8]) -> Result<(), String> {
    fs::write(file, bytes).map_err(|error| format!("cannot write {}: {error}", file.display()))
}
