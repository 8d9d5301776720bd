//! The glue between page and module, with what fetches the rest.

/// What fetches the rest and puts it in its place.
const FETCH: &str = include_str!("../../../../web/rest/rest.js");
/// Where the glue makes what the module takes from the page.
const IMPORTS: &str = "= __wbg_get_imports();";
/// Where it has the module.
const LOADED: &str = "await __wbg_load(await module_or_path, imports);";
/// Where it starts the program.
const START: &str = "wasm.__wbindgen_start();";

/// The glue of a module that was split; `rest` is the file of its second half, beside the glue.
///
/// # Errors
/// When the glue is written otherwise than it was so far.
pub(crate) fn joined(glue: &str, rest: &str) -> Result<String, String> {
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
    Ok(format!("{own}\n{}{names}", FETCH.replace("{rest}", rest)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_glue_takes_the_rest_in_or_says_what_it_lacks() {
        let glue = "let wasm;\nfunction go() {\n    const imports = __wbg_get_imports();\n    const { instance } = await __wbg_load(await module_or_path, imports);\n    wasm.__wbindgen_start();\n}\n\nexport { go as default };\n";
        let joined = joined(glue, "x_rest.wasm").expect("a glue");
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
        assert!(
            joined.contains("new URL(\"x_rest.wasm\", import.meta.url)"),
            "{joined}"
        );
        assert!(
            joined.trim_end().ends_with("export { go as default };"),
            "{joined}"
        );
        for sign in [IMPORTS, LOADED, START, "export"] {
            let error = super::joined(&glue.replace(sign, ""), "x").expect_err("it lacks something");
            assert!(error.contains(sign.trim_start_matches("export")), "{error}");
        }
    }
}
