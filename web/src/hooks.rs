//! What browser tests may look at: the job and the state of the editor, read-only; and the engine, asked directly.

use crate::browser;
use crate::desk::Desk;
use editor::Thing;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;

/// Puts `loomwright_job` and `loomwright_state` on the window, for as long as the page lives.
pub(crate) fn install(desk: &Rc<Desk>) {
    let held = desk.clone();
    put(
        "loomwright_job",
        Closure::new(move || held.see(|editor| model::file::write(editor.job()))),
    );
    let held = desk.clone();
    put("loomwright_state", Closure::new(move || state(&held)));
    put_engine();
}

/// Puts `loomwright.analyse(text)` on the window: the analysis of each sheet of a job in the text form, a line of JSON each.
/// It is what shows that the engine gives the same bytes here as outside of the browser.
fn put_engine() {
    let Some(window) = browser::window() else { return };
    let analyse: Closure<dyn Fn(String) -> String> = Closure::new(|text: String| analyses(&text));
    let engine = js_sys::Object::new();
    let _ = js_sys::Reflect::set(&engine, &JsValue::from_str("analyse"), analyse.as_ref());
    let _ = js_sys::Reflect::set(&window, &JsValue::from_str("loomwright"), &engine);
    analyse.forget();
}

fn analyses(text: &str) -> String {
    match model::text::parse(text) {
        Ok(job) => {
            let line = |sheet: &model::Sheet| {
                serde_json::to_string(&checks::analyse(sheet, &job.settings))
                    .unwrap_or_else(|error| error.to_string())
            };
            job.sheets.values().map(line).collect::<Vec<_>>().join("\n")
        }
        Err(errors) => format!("not read: {errors}"),
    }
}

fn put(name: &str, hook: Closure<dyn Fn() -> String>) {
    if let Some(window) = browser::window() {
        let _ = js_sys::Reflect::set(&window, &JsValue::from_str(name), hook.as_ref());
        hook.forget();
    }
}

fn state(desk: &Desk) -> String {
    desk.see(|editor| {
        let sheet = editor.sheet();
        let camera = editor.camera();
        let points = |thing: &Thing| {
            editor.area_of(thing).map(|area| {
                let at = camera.to_screen(area.center());
                serde_json::json!([at.x, at.y])
            })
        };
        let parts: serde_json::Map<String, serde_json::Value> = sheet
            .parts
            .iter()
            .filter_map(|(id, part)| Some((part.tag.clone(), points(&Thing::Part(*id))?)))
            .collect();
        let terminals: serde_json::Map<String, serde_json::Value> = editor
            .layout()
            .parts()
            .flat_map(|(id, part)| part.studs.iter().map(move |stud| (id, stud)))
            .map(|(id, stud)| {
                let at = camera.to_screen(stud.at);
                let written = sheet.written(&model::TerminalRef { part: id, terminal: stud.name.clone() });
                (written, serde_json::json!([at.x, at.y]))
            })
            .collect();
        let runs: serde_json::Map<String, serde_json::Value> = sheet
            .runs
            .iter()
            .filter_map(|(id, run)| {
                let at = camera.to_screen(editor.layout().run(*id)?.label_at);
                Some((run.tag.clone(), serde_json::json!([at.x, at.y])))
            })
            .collect();
        let findings: Vec<serde_json::Value> = editor
            .analysis()
            .findings
            .iter()
            .map(|finding| {
                serde_json::json!({
                    "check": finding.check, "grade": finding.grade.title(), "undecided": finding.undecided, "what": finding.what,
                    "mends": finding.mends.len(),
                })
            })
            .collect();
        serde_json::json!({
            "tool": editor.tool().address(),
            "sheet": editor.on().word(),
            "overlay": editor.overlay().title(),
            "zoom": camera.zoom,
            "focus": editor.focus().map(|thing| thing.written(sheet)),
            "picked_parts": editor.selection().parts.iter().map(|id| editor.tag(*id)).collect::<Vec<_>>(),
            "picked_runs": editor.selection().runs.iter().map(|id| Thing::Run(*id).written(sheet)).collect::<Vec<_>>(),
            "finding": editor.finding(),
            "findings_count": findings.len(),
            "findings": findings,
            "undo": editor.history().undo_name(),
            "redo": editor.history().redo_name(),
            "reading": editor.reading().map(|reading| reading.shown),
            "stale": editor.is_stale(),
            "last_paint_ms": desk.last_paint_ms.get(),
            "parts": parts,
            "terminals": terminals,
            "runs": runs,
        })
        .to_string()
    })
}
