//! The page file's template, `dist/page.html`: the whole program in one HTML file, with an empty place for a job.
//!
//! Styles, the texts of other languages and the module's glue stand in it as they were built, the module gzipped and in base64.
//! It is made of the built page, so that what the file shows is what the page shows.

use crate::policy::{self, Around};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fs;
use std::io::Write;
use std::path::Path;

/// The page around it.
const FRAME: &str = include_str!("../../../web/page_file/page.html");
/// What unpacks the module and starts it.
const START: &str = include_str!("../../../web/page_file/start.js");

/// Name of the template in the built page's folder.
pub(crate) const NAME: &str = "page.html";

/// Writes the template beside the built page.
pub(crate) fn write(folder: &Path) -> Result<(), String> {
    let index = read(folder, &folder.join("index.html"))?;
    let (glue, module) = (only(folder, "js")?, only(folder, "wasm")?);
    let glue = String::from_utf8(glue).map_err(|error| format!("the module's glue is no text: {error}"))?;
    let index = String::from_utf8(index).map_err(|error| format!("index.html is no text: {error}"))?;
    let module = crate::split::without_names(&module)?;
    let template = template(&index, &texts(folder)?, &glue, &module)?;
    let file = folder.join(NAME);
    fs::write(&file, template).map_err(|error| format!("cannot write {}: {error}", file.display()))
}

/// The texts of the languages that lie beside the page, one element each.
fn texts(folder: &Path) -> Result<String, String> {
    let below = folder.join("texts");
    let mut languages: Vec<String> = Vec::new();
    let mut elements = String::new();
    for file in crate::page::files_below(&below)? {
        let Some(tag) = file
            .parent()
            .and_then(Path::file_name)
            .map(|tag| tag.to_string_lossy().into_owned())
        else {
            continue;
        };
        if languages.last() != Some(&tag) {
            if !languages.is_empty() {
                elements.push_str("</script>\n");
            }
            elements.push_str(&format!(
                "<script type=\"text/plain\" id=\"loomwright-texts-{tag}\">\n"
            ));
            languages.push(tag);
        }
        let text = String::from_utf8(read(folder, &file)?)
            .map_err(|error| format!("{} is no text: {error}", file.display()))?;
        // Within a script these would end it, or hide its end.
        if ["</script", "<!--", "<script"]
            .iter()
            .any(|sign| text.to_ascii_lowercase().contains(sign))
        {
            return Err(format!("{} cannot stand within a page", file.display()));
        }
        elements.push_str(&text);
        // Files end with a line of their own: the next begins a new one.
        elements.push('\n');
    }
    if !languages.is_empty() {
        elements.push_str("</script>");
    }
    Ok(elements)
}

/// The template of a built page: its `index.html`, the elements with its texts, its module and the module's glue.
fn template(index: &str, texts: &str, glue: &str, module: &[u8]) -> Result<String, String> {
    let script = format!("\n{}\n{START}", inline(glue)?);
    // Within a script these would end it, or hide its end.
    for sign in ["</script", "<!--", "<script"] {
        if script.to_ascii_lowercase().contains(sign) {
            return Err(format!(
                "the module's glue holds `{sign}` and cannot stand within a page"
            ));
        }
    }
    let mut packed = GzEncoder::new(Vec::new(), Compression::best());
    let packed = packed
        .write_all(module)
        .and_then(|()| packed.finish())
        .map_err(|error| format!("cannot pack the module: {error}"))?;
    let page = FRAME
        .replace("{styles}", &styles(index)?)
        .replace("{texts}", texts)
        .replace("{module}", &STANDARD.encode(packed));
    let page = page.replace("{script}", &script);
    let policy = policy::element(&policy::scripts(&page)?, Around::Nothing);
    policy::into_head(&page, &policy)
}

/// The style elements of a page, as they stand there.
fn styles(index: &str) -> Result<String, String> {
    let mut out = String::new();
    let mut rest = index;
    while let Some((_, from)) = rest.split_once("<style>") {
        let (style, after) = from
            .split_once("</style>")
            .ok_or("a style in index.html has no end")?;
        out.push_str("<style>");
        out.push_str(style);
        out.push_str("</style>\n");
        rest = after;
    }
    if out.is_empty() {
        return Err("index.html has no styles".to_owned());
    }
    Ok(out)
}

/// The glue as a part of a larger script: instead of exporting its function that starts the module, it names it.
fn inline(glue: &str) -> Result<String, String> {
    let export = glue.rfind("export").ok_or("the module's glue exports nothing")?;
    let (before, names) = (&glue[..export], &glue[export + "export".len()..]);
    let start = names
        .trim()
        .trim_end_matches(';')
        .strip_prefix('{')
        .and_then(|names| names.trim_end().strip_suffix('}'))
        .and_then(|names| {
            names.split(',').find_map(|name| {
                let (own, outer) = name.split_once(" as ")?;
                (outer.trim() == "default").then(|| own.trim().to_owned())
            })
        })
        .ok_or("the module's glue does not end with `export { …, … as default }`; see how its generator writes it now")?;
    if before
        .lines()
        .any(|line| line.starts_with("import ") || line.starts_with("export "))
    {
        return Err(
            "the module's glue imports or exports something else; a page of one file has no place for that"
                .to_owned(),
        );
    }
    Ok(format!("{before}const loomwrightInit = {start};\n"))
}

/// The one file of the folder with that ending.
fn only(folder: &Path, ending: &str) -> Result<Vec<u8>, String> {
    let mut found = crate::page::files_below(folder)?;
    found.retain(|file| file.extension().is_some_and(|it| it == ending));
    match &found[..] {
        [file] => read(folder, file),
        files => Err(format!(
            "{} holds {} files *.{ending}; it takes one",
            folder.display(),
            files.len()
        )),
    }
}

fn read(folder: &Path, file: &Path) -> Result<Vec<u8>, String> {
    fs::read(file).map_err(|error| {
        format!(
            "cannot read {}: {error}; build the page into {} first",
            file.display(),
            folder.display()
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    const INDEX: &str = "<!doctype html><head><style>a { b: c }</style><p><style>d{}</style></head>";
    const TEXTS: &str = "<script type=\"text/plain\" id=\"loomwright-texts-de\">\na = b\n</script>";
    const GLUE: &str = "let wasm;\nasync function go() {}\nfunction goSync() {}\n\nexport { goSync as initSync, go as default };\n";

    #[test]
    fn the_template_holds_styles_glue_and_module_and_takes_a_job() {
        let module: Vec<u8> = (0..5_000_u32).map(|n| (n % 251) as u8).collect();
        let made = template(INDEX, TEXTS, GLUE, &module).expect("a template");
        assert!(
            made.contains("<style>a { b: c }</style>\n<style>d{}</style>"),
            "{made}"
        );
        assert!(made.contains(TEXTS), "{made}");
        assert!(made.contains("const loomwrightInit = go;"), "{made}");
        assert!(
            !made.contains("export {") && !made.contains("{styles}") && !made.contains("{module}"),
            "{made}"
        );
        let packed = made
            .split_once("id=\"loomwright-module\">")
            .and_then(|(_, rest)| rest.split_once("</script>"))
            .map(|(packed, _)| STANDARD.decode(packed).expect("base64"))
            .expect("a module");
        let mut back = Vec::new();
        flate2::read::GzDecoder::new(packed.as_slice())
            .read_to_end(&mut back)
            .expect("unpacks");
        assert_eq!(back, module);

        let job = lessons::WORKED_JOBS[0].job();
        let page = sharing::page(&made, &job).expect("it has a place for a job");
        assert_eq!(
            sharing::open_carried(sharing::carried(&page).expect("a place")),
            Ok(job)
        );
    }

    #[test]
    fn glue_that_cannot_stand_within_a_page_is_refused() {
        for (wrong, why) in [
            (GLUE.replace("let wasm;", "let wasm = '</Script>';"), "</script"),
            (GLUE.replace("let wasm;", "import x from './y.js';"), "imports"),
            (GLUE.replace("go as default", "go"), "as default"),
            (String::new(), "exports nothing"),
        ] {
            let error = template(INDEX, TEXTS, &wrong, b"").expect_err("refused");
            assert!(error.contains(why), "{error}");
        }
    }
}
