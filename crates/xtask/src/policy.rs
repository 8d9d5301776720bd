//! The content security policy that stands in the page and in the page file: what may run there, and from where anything
//! may come. Source: W3C Content Security Policy Level 3; `wasm-unsafe-eval` lets WebAssembly be compiled and nothing else.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// Where the page's own files lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Around {
    /// Beside it, on the same host.
    Beside,
    /// In it: it is one file.
    Nothing,
}

/// The element that goes into a page. Scripts that stand within the page run only when their text is one of `scripts`.
pub(crate) fn element(scripts: &[&str], around: Around) -> String {
    let own = if around == Around::Beside { " 'self'" } else { "" };
    let hashes: String = scripts
        .iter()
        .map(|script| format!(" '{}'", hash(script.as_bytes())))
        .collect();
    let mut rules = vec![
        "default-src 'none'".to_owned(),
        format!("script-src{own} 'wasm-unsafe-eval'{hashes}"),
        // Styles stand within the page, and places, sizes and the palette are style attributes that are set as one works:
        // they have no hash that could be known before. A style cannot ask another host for anything: see img-src and the
        // absent font-src.
        "style-src 'unsafe-inline'".to_owned(),
        format!("img-src{own} data: blob:"),
    ];
    if around == Around::Beside {
        rules.extend(["connect-src 'self'", "manifest-src 'self'", "worker-src 'self'"].map(str::to_owned));
    }
    rules.extend(["form-action 'none'", "base-uri 'none'"].map(str::to_owned));
    format!(
        "<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">",
        rules.join("; ")
    )
}

/// Checksum of a file as policies and `integrity` name it.
pub(crate) fn hash(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

/// Checksum as a name can hold it.
pub(crate) fn hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Texts of the scripts that stand within a page and run. One of another type than a script's does not run.
pub(crate) fn scripts(page: &str) -> Result<Vec<&str>, String> {
    let mut found = Vec::new();
    let mut rest = page;
    while let Some((_, from)) = rest.split_once("<script") {
        let (attributes, inside) = from.split_once('>').ok_or("a script in the page has no end")?;
        let (text, after) = inside
            .split_once("</script>")
            .ok_or("a script in the page has no end")?;
        if !attributes.contains("src=") && !attributes.contains("text/plain") {
            found.push(text);
        }
        rest = after;
    }
    Ok(found)
}

/// Begin and end of what [`into_head`] adds, so that finishing a page twice does not add it twice.
const ADDED: [&str; 2] = ["<!-- Added by the build: -->", "<!-- until here. -->"];

/// Puts elements into the head of a page, right behind its character set: a policy holds for what comes after it.
pub(crate) fn into_head(page: &str, elements: &str) -> Result<String, String> {
    let mut page = page.to_owned();
    if let Some((before, from)) = page.split_once(ADDED[0]) {
        let (_, after) = from
            .split_once(ADDED[1])
            .ok_or("what was added to the page has no end")?;
        page = format!("{before}{after}");
    }
    let charset = page
        .find("<meta charset")
        .ok_or("the page names no character set")?;
    let end = page[charset..]
        .find('>')
        .ok_or("the page's character set has no end")?
        + charset
        + 1;
    let [begin, close] = ADDED;
    Ok(format!(
        "{}{begin}{elements}{close}{}",
        &page[..end],
        &page[end..]
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hash_is_that_of_the_specification() {
        // CSP Level 3, section 8.3 (hash usage for script elements): the example `alert('Hello, world.');`.
        assert_eq!(
            hash(b"alert('Hello, world.');"),
            "sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng="
        );
    }

    #[test]
    fn scripts_within_a_page_are_found_and_what_is_added_is_added_once() {
        let page = "<head><meta charset=utf-8><script type=module>run()</script><script src=x.js></script>\
                    <script type=\"text/plain\">data</script></head>";
        assert_eq!(scripts(page), Ok(vec!["run()"]));
        let once = into_head(page, "<b>").expect("a head");
        assert!(once.starts_with("<head><meta charset=utf-8><!-- Added"), "{once}");
        let twice = into_head(&once, "<b><i>").expect("a head");
        assert_eq!(twice.matches("<b>").count(), 1, "{twice}");
        assert!(twice.contains("<i>") && twice.ends_with(&page[26..]), "{twice}");
    }

    #[test]
    fn a_page_of_one_file_names_no_host_at_all() {
        let element = element(&["run()"], Around::Nothing);
        assert!(
            !element.contains("'self'") && !element.contains("connect-src"),
            "{element}"
        );
        assert!(
            element.contains("default-src 'none'") && element.contains(&hash(b"run()")),
            "{element}"
        );
    }
}
