//! What browser tests may look at: the job and the state of the editor, read-only.

use crate::browser;
use crate::desk::Desk;
use editor::Thing;
use model::json::object_of;
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
}

/// Puts the state of a drawing that lies over the table on the window, as `loomwright_over`.
pub(crate) fn install_over(desk: &Rc<Desk>) {
    let held = desk.clone();
    put("loomwright_over", Closure::new(move || state(&held)));
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
        let parts = object_of(
            &mut sheet
                .parts
                .iter()
                .filter_map(|(id, part)| Some((part.tag.clone(), points(&Thing::Part(*id))?))),
        );
        let terminals = object_of(&mut editor
            .layout()
            .parts()
            .flat_map(|(id, part)| part.studs.iter().map(move |stud| (id, stud)))
            .map(|(id, stud)| {
                let at = camera.to_screen(stud.at);
                let written = sheet.written(&model::TerminalRef { part: id, terminal: stud.name.clone() });
                (written, serde_json::json!([at.x, at.y]))
            }));
        let runs = object_of(&mut sheet
            .runs
            .iter()
            .filter_map(|(id, run)| {
                let at = camera.to_screen(editor.layout().run(*id)?.label_at);
                Some((run.tag.clone(), serde_json::json!([at.x, at.y])))
            }));
        let findings: Vec<serde_json::Value> = editor
            .analysis()
            .findings
            .iter()
            .map(|finding| {
                serde_json::json!({
                    "check": finding.check, "grade": finding.grade.title(), "undecided": finding.undecided, "what": editor.words().say(&finding.what),
                    "mends": finding.mends.len(),
                })
            })
            .collect();
        serde_json::json!({
            "tool": editor.tool().address(),
            "thrown": editor.breaks().iter().map(|it| it.written(sheet)).collect::<Vec<_>>(),
            "marks": editor.marks_of_breaks().into_iter().map(|at| [at.x, at.y]).collect::<Vec<_>>(),
            "suspects": editor.rings_of_suspects().into_iter().map(|(at, word)| serde_json::json!([at.x, at.y, word])).collect::<Vec<_>>(),
            "next_leads": editor.next_leads().into_iter().map(|at| [at.x, at.y]).collect::<Vec<_>>(),
            "body": [editor.body_clip().x, editor.body_clip().y],
            "sheet": editor.on().word(),
            "overlay": editor.overlay().title(),
            "under": editor.under().map(model::SheetKind::word),
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
            "studied": editor.is_studied(),
            "last_paint_ms": desk.last_paint_ms.get(),
            "parts": parts,
            "terminals": terminals,
            "runs": runs,
        })
        .to_string()
    })
}
