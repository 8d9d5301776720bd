//! Splits the module of a built page, and lets its glue fetch the second half.

use super::{Plan, glue, plan, split};
use std::fs;
use std::path::{Path, PathBuf};
use wasm_encoder::RawSection;
use wasmparser::{Parser, Payload};

/// End of the name of a built module.
const WHOLE: &str = "_bg.wasm";
/// End of the name of its second half.
const REST: &str = "_rest.wasm";

/// Up to so many bytes: a browser compiles no larger module while a page stands still for it. One that was built for trying
/// things, without optimisation, stays whole.
const LARGEST: usize = 8_000_000;

/// Splits the module of a built page in two files, the first under the name that it had.
pub(crate) fn halve(folder: &Path) -> Result<(), String> {
    for file in modules(folder)?.into_iter().filter(|file| ends(file, WHOLE)) {
        let module = read(&file)?;
        if module.len() > LARGEST {
            write(&file, &without_names(&module)?)?;
            continue;
        }
        let beside = |end: &str| {
            let name = file.file_name().unwrap_or_default().to_string_lossy();
            file.with_file_name(name.replace(WHOLE, end))
        };
        let (glue, rest) = (beside(".js"), beside(REST));
        let halves = split(
            &module,
            &Plan {
                moves: &plan::moves,
                reads_texts: &plan::reads_texts,
                marks: plan::MARKS,
            },
        )?;
        let name = rest.file_name().unwrap_or_default().to_string_lossy();
        let text = String::from_utf8(read(&glue)?)
            .map_err(|error| format!("{} is no text: {error}", glue.display()))?;
        let joined = glue::joined(&text, &name)?;
        write(&file, &halves.first)?;
        write(&rest, &halves.rest)?;
        write(&glue, joined.as_bytes())?;
    }
    Ok(())
}

/// A module without what is only there for who looks into it.
///
/// # Errors
/// When it is damaged.
pub(crate) fn without_names(module: &[u8]) -> Result<Vec<u8>, String> {
    let mut out = wasm_encoder::Module::new();
    for payload in Parser::new(0).parse_all(module) {
        let payload = payload.map_err(|error| error.to_string())?;
        if let Payload::CustomSection(_) = payload {
            continue;
        }
        if let Some((id, range)) = payload.as_section() {
            out.section(&RawSection {
                id,
                data: &module[range],
            });
        }
    }
    Ok(out.finish())
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
