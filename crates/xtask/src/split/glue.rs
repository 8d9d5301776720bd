//! The glue between page and module, with what fetches the parts that follow.

use std::collections::BTreeMap;

/// What fetches them and puts them in their places.
const FETCH: &str = include_str!("../../../../web/rest/rest.js");
/// Where the glue makes what the module takes from the page.
const IMPORTS: &str = "= __wbg_get_imports();";
/// Where it has the module.
const LOADED: &str = "await __wbg_load(await module_or_path, imports);";
/// Where it starts the program.
const START: &str = "wasm.__wbindgen_start();";

/// What the glue gives to the module begins with this.
const GIVEN: &str = "__wb";
/// What stands behind the name of what it gives.
const GIVES: &str = ": function(";

/// The glue with short names for what it gives to the module, which are long and full of checksums, and without remarks and
/// indents; and what each is called now. It is a third of the glue's gzipped bytes.
pub(crate) fn shortened(glue: &str) -> (String, BTreeMap<String, String>) {
    let (mut short, mut names) = (String::with_capacity(glue.len()), BTreeMap::new());
    for line in glue.lines().map(str::trim).filter(|line| !line.starts_with("//")) {
        let given = line
            .split_once(GIVES)
            .filter(|(name, _)| name.starts_with(GIVEN) && name.bytes().all(is_of_name));
        match given {
            Some((name, after)) => {
                let own = format!("i{}", names.len());
                short.push_str(&format!("{own}{GIVES}{after}"));
                names.insert(name.to_owned(), own);
            }
            None => short.push_str(line),
        }
        short.push('\n');
    }
    (short, names)
}

fn is_of_name(letter: u8) -> bool {
    letter.is_ascii_alphanumeric() || letter == b'_'
}

/// The glue of a module that was split; `following` are the files of the parts that follow, beside the glue.
///
/// # Errors
/// When the glue is written otherwise than it was so far.
pub(crate) fn joined(glue: &str, following: &[String]) -> Result<String, String> {
    let export = glue
        .rfind("\nexport")
        .ok_or("the module's glue exports nothing")?;
    let (own, names) = glue.split_at(export);
    for sign in [IMPORTS, LOADED, START] {
        if !own.contains(sign) {
            return Err(format!(
                "the module's glue has no `{sign}`; see how its generator writes it now"
            ));
        }
    }
    let own = own
        .replace(IMPORTS, "= withRest(__wbg_get_imports());")
        .replace(LOADED, &format!("{LOADED}\n    await restBefore(instance);"))
        .replace(START, &format!("{START}\n    restFollows();"));
    let quoted: Vec<String> = following.iter().map(|name| format!("\"{name}\"")).collect();
    Ok(format!(
        "{own}\n{}{names}",
        FETCH.replace("{parts}", &quoted.join(", "))
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_the_glue_gives_has_short_names_and_nothing_else_has_others() {
        let glue = "const import0 = {\n    // A remark.\n    __wbg_get_0f1e: function(arg0) {\n        return other_0f1e: function(arg0)\n    },\n    __wbindgen_x: function() {\n";
        let (short, names) = shortened(glue);
        assert_eq!(
            short,
            "const import0 = {\ni0: function(arg0) {\nreturn other_0f1e: function(arg0)\n},\ni1: function() {\n"
        );
        let expected = [("__wbg_get_0f1e", "i0"), ("__wbindgen_x", "i1")];
        assert_eq!(
            names,
            expected.map(|(was, is)| (was.to_owned(), is.to_owned())).into()
        );
    }

    #[test]
    fn the_glue_takes_the_rest_in_or_says_what_it_lacks() {
        let glue = "let wasm;\nfunction go() {\n    const imports = __wbg_get_imports();\n    const { instance } = await __wbg_load(await module_or_path, imports);\n    wasm.__wbindgen_start();\n}\n\nexport { go as default };\n";
        let joined = joined(glue, &["x_more.wasm".to_owned(), "x_rest.wasm".to_owned()]).expect("a glue");
        assert!(
            joined.contains("const imports = withRest(__wbg_get_imports());"),
            "{joined}"
        );
        assert!(
            joined.contains("imports);\n    await restBefore(instance);"),
            "{joined}"
        );
        assert!(
            joined.contains("wasm.__wbindgen_start();\n    restFollows();"),
            "{joined}"
        );
        assert!(joined.contains("[\"x_more.wasm\", \"x_rest.wasm\"]"), "{joined}");
        assert!(
            joined.trim_end().ends_with("export { go as default };"),
            "{joined}"
        );
        for sign in [IMPORTS, LOADED, START, "export"] {
            let error = super::joined(&glue.replace(sign, ""), &[]).expect_err("it lacks something");
            assert!(error.contains(sign.trim_start_matches("export")), "{error}");
        }
    }
}
