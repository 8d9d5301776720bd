//! Speed of the page in a real browser: what a step of a drag takes of its main thread; from a real move of the pointer to
//! the frame that shows it, as the browser counts it; a step of shifting the paper; the first full draw of a job. Prints a
//! report; it never fails on a time. `cargo xtask bench` builds the page that is measured and weighs it afterwards.

#![allow(clippy::disallowed_methods, clippy::print_stdout)]

use loomwright_tests::browser::Page;
use model::{Job, SheetKind};
use serde_json::Value;
use std::time::Duration;
use testkit::random::random_system;

/// A job of this size opens, is laid out and analysed in far less; a page that hangs is told from one that works.
const PATIENCE: Duration = Duration::from_secs(180);

/// Times every frame that the page asks for, and lets the file picker answer with a file of the page's own storage.
const PREPARE: &str = "(async () => { \
    const ask = window.requestAnimationFrame.bind(window); window.frames_ms = []; window.frame_end = 0; window.plain_frame = ask; \
    window.requestAnimationFrame = paint => ask(at => { const begin = performance.now(); paint(at); \
        window.frame_end = performance.now(); window.frames_ms.push(window.frame_end - begin) }); \
    const root = await navigator.storage.getDirectory(); \
    window.benchFile = await root.getFileHandle('bench.json', { create: true }); \
    window.showOpenFilePicker = async () => [window.benchFile]; return true })()";

/// Steps of one drag: a circle around where the part stands. Each waits for its frame. Gives, for each step, the time of
/// the handler with what it leaves for right afterwards, that of the paint, and that from the event to the end of the
/// paint; then puts the part back.
const DRAG: &str = "(async (x, y) => { \
    const board = document.getElementById('board'); \
    const send = (kind, x, y, buttons) => board.dispatchEvent(new PointerEvent(kind, { clientX: x, clientY: y, buttons, \
        button: kind === 'pointermove' ? -1 : 0, pointerId: 1, pointerType: 'mouse', bubbles: true, cancelable: true })); \
    const frame = () => new Promise(done => window.plain_frame(() => done())); \
    send('pointermove', x, y, 0); await frame(); await frame(); \
    send('pointerdown', x, y, 1); \
    const steps = []; \
    for (let n = 0; n < 60; n++) { \
        await frame(); \
        const turn = n / 60 * 2 * Math.PI, toX = Math.round(x + 40 * Math.cos(turn)), toY = Math.round(y + 40 * Math.sin(turn)); \
        window.frames_ms.length = 0; \
        const begin = performance.now(); send('pointermove', toX, toY, 1); \
        for (let turns = 0; turns < 8; turns++) await null; \
        const handled = performance.now(); \
        await frame(); \
        const painted = window.frames_ms.reduce((sum, ms) => sum + ms, 0); \
        if (n > 5) steps.push([handled - begin, painted, window.frame_end - begin]); \
    } \
    document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true })); \
    send('pointerup', x, y, 0); \
    return steps })";

/// Steps of the paper being shifted. Gives for each the time of handler and paint.
const PAN: &str = "(async (x, y) => { \
    const board = document.getElementById('board'); \
    const frame = () => new Promise(done => window.plain_frame(() => done())); \
    const steps = []; \
    for (let n = 0; n < 40; n++) { \
        await frame(); window.frames_ms.length = 0; \
        const begin = performance.now(); \
        board.dispatchEvent(new WheelEvent('wheel', { deltaX: n < 20 ? 17 : -17, deltaY: 11, clientX: x, clientY: y, bubbles: true, cancelable: true })); \
        const handled = performance.now() - begin; \
        await frame(); \
        if (n > 2) steps.push([handled + window.frames_ms.reduce((sum, ms) => sum + ms, 0)]); \
    } \
    return steps })";

/// From the key that opens a file to the end of the frame that shows it. The title block names the job before the frame
/// is painted; the next frame begins after that.
const OPEN: &str = "(async title => { \
    const begin = performance.now(); \
    document.getElementById('board').dispatchEvent(new KeyboardEvent('keydown', { key: 'o', ctrlKey: true, bubbles: true, cancelable: true })); \
    while (!document.querySelector('[data-testid=title-job]')?.innerText.includes(title)) \
        await new Promise(done => window.plain_frame(() => done())); \
    await new Promise(done => window.plain_frame(() => done())); \
    return [window.frame_end - begin, window.frames_ms.at(-1)] })";

/// The same circle for the real pointer.
fn around(x: f64, y: f64) -> Vec<(f64, f64)> {
    let circle = (1..=60).map(|step| {
        let turn = f64::from(step) / 60.0 * std::f64::consts::TAU;
        (x + 40.0 * turn.cos(), y + 40.0 * turn.sin())
    });
    std::iter::once((x, y)).chain(circle).collect()
}

fn job_of(parts: usize) -> Job {
    let mut job = Job {
        title: format!("Bench of {parts} parts"),
        ..Job::default()
    };
    job.sheets.insert(SheetKind::Found, random_system(7, parts));
    job
}

/// The middle of some numbers, and the one that nineteen of twenty stay below.
fn middle_and_high(mut numbers: Vec<f64>) -> (f64, f64) {
    numbers.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let place = (numbers.len() as f64 * share) as usize;
        numbers
            .get(place.min(numbers.len().saturating_sub(1)))
            .copied()
            .unwrap_or(f64::NAN)
    };
    (at(0.5), at(0.95))
}

fn column(steps: &Value, of: impl Fn(&Value) -> f64) -> (f64, f64) {
    middle_and_high(steps.as_array().into_iter().flatten().map(of).collect())
}

fn main() {
    println!(
        "page in Chromium, 1600 by 900; milliseconds, median and 95 %\n\
         main-thread time of a drag step is handler and paint together; to its end is from the handler's begin to the end of the paint;\n\
         move to frame is from a real move of the pointer to the frame on the display, the wait for the next frame (up to 16.7) within"
    );
    println!(
        "  {:>6} {:>6} {:>10} {:>10} | {:>15} {:>15} {:>15} {:>15} | {:>15} {:>6} | {:>15}",
        "parts",
        "runs",
        "open",
        "its paint",
        "handler",
        "paint",
        "together",
        "to its end",
        "move to frame",
        "moves",
        "shift"
    );
    for parts in [30, 300, 3000] {
        let job = job_of(parts);
        let sheet = &job.sheets[&SheetKind::Found];
        let mut page = Page::open("");
        page.set_size(1600, 900);
        page.wait_until(
            "the job to be this tab's",
            "navigator.locks.query().then(q => q.held.some(lock => lock.name.startsWith('loomwright:')))",
        );
        page.eval(PREPARE);
        page.eval(&format!(
            "(async () => {{ const out = await benchFile.createWritable(); await out.write({}); await out.close(); return true }})()",
            Value::from(model::file::write(&job))
        ));
        page.eval("document.getElementById('board').focus()");
        // Not awaited: a large job may take longer than one request to the browser.
        page.eval(&format!(
            "void ({OPEN})({}).then(found => {{ window.opened = found }})",
            Value::from(job.title.clone())
        ));
        let opened = page.wait_at_most(PATIENCE, "the job to be open", || {
            let found = page.eval("window.opened ?? null");
            (!found.is_null()).then_some(found)
        });
        page.wait_at_most(PATIENCE, "the analysis", || {
            (page.eval("JSON.parse(loomwright_state()).stale") == false).then_some(())
        });
        // The part with the most runs of those in view is the hardest to drag.
        let state = page.eval("loomwright_state()");
        let state: Value = serde_json::from_str(state.as_str().unwrap_or_default()).unwrap_or_default();
        let at = sheet
            .parts
            .iter()
            .filter_map(|(id, part)| {
                let place = &state["parts"][part.tag.as_str()];
                let (x, y) = (place[0].as_f64()?, place[1].as_f64()?);
                let in_view = (120.0..1000.0).contains(&x) && (120.0..740.0).contains(&y);
                in_view.then(|| (sheet.runs_of(*id).count(), x, y))
            })
            .max_by(|a, b| a.0.cmp(&b.0));
        let Some((_, x, y)) = at else {
            println!("  {:>6} no part in view", sheet.parts.len());
            continue;
        };
        page.eval(&format!(
            "void ({DRAG})({x}, {y}).then(found => {{ window.dragged = found }})"
        ));
        let steps = page.wait_at_most(PATIENCE, "the drag to end", || {
            let found = page.eval("window.dragged ?? null");
            (!found.is_null()).then_some(found)
        });
        let latencies = page.latencies_of_drag(&around(x, y));
        let shifts = page.eval(&format!("({PAN})({x}, {y})"));
        let number = |step: &Value, place: usize| step[place].as_f64().unwrap_or(f64::NAN);
        let shown = |(middle, high): (f64, f64)| format!("{middle:>6.1} {high:>8.1}");
        println!(
            "  {:>6} {:>6} {:>10.0} {:>10.1} | {} {} {} {} | {} {:>6} | {}",
            sheet.parts.len(),
            sheet.runs.len(),
            number(&opened, 0),
            number(&opened, 1),
            shown(column(&steps, |step| number(step, 0))),
            shown(column(&steps, |step| number(step, 1))),
            shown(column(&steps, |step| number(step, 0) + number(step, 1))),
            shown(column(&steps, |step| number(step, 2))),
            shown(middle_and_high(latencies.clone())),
            latencies.len(),
            shown(column(&shifts, |step| number(step, 0))),
        );
    }
}
