//! What is painted step by step, by shifting and mending a kept picture, is what is painted at once: compared pixel by
//! pixel with a whole new picture of the same state.

use crate::table::Table;

/// Keeps the picture as it is on the board.
const KEEP: &str = "(() => { const c = document.getElementById('board'); \
    window.kept_pixels = c.getContext('2d').getImageData(0, 0, c.width, c.height).data; return true })()";

/// Lets the board be painted wholly anew, and counts the pixels that differ from what was kept. Soft edges of letters may
/// differ by a few steps of grey where they were painted in two pieces, a single pixel of them by more: whatever is missing or
/// stands elsewhere covers more than that.
const COMPARE: &str = "(async () => { \
    window.dispatchEvent(new Event('resize')); \
    const frame = () => new Promise(done => requestAnimationFrame(() => done())); \
    await frame(); await frame(); await frame(); \
    const c = document.getElementById('board'), now = c.getContext('2d').getImageData(0, 0, c.width, c.height).data, was = window.kept_pixels; \
    if (was.length !== now.length) return -1; \
    let differ = 0, ink = 0; \
    for (let i = 0; i < now.length; i += 4) { \
        const by = Math.max(Math.abs(was[i] - now[i]), Math.abs(was[i + 1] - now[i + 1]), Math.abs(was[i + 2] - now[i + 2])); \
        if (by > 40) differ++; \
        if (now[i] + now[i + 1] + now[i + 2] < 300) ink++; \
    } \
    return ink <= 500 ? -2 : differ > 2 ? differ : 0 })()";

pub(crate) fn assert_same(table: &Table, after: &str) {
    // Whatever is asked for is painted by then.
    table.eval("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))");
    table.eval(KEEP);
    let differ = table.eval(COMPARE);
    assert_eq!(differ, 0, "pixels that differ {after}");
}

#[test]
fn what_is_painted_in_steps_is_what_is_painted_at_once() {
    let table = Table::open_worked("van");
    work_and_compare(&table);
}

/// Shifts the paper, points at things, carries a part and drops it, and compares after each.
pub(crate) fn work_and_compare(table: &Table) {
    for (dx, dy) in [(13, 17), (-40, -9), (0, 230), (-3, 1)] {
        table.wheel(500.0, 400.0, dx, dy);
    }
    assert_same(table, "after shifting the paper");

    let tags: Vec<String> = table
        .sheet()
        .parts
        .values()
        .map(|part| part.tag.clone())
        .collect();
    let in_view = |table: &Table, tag: &str| {
        let (x, y) = table.part(tag);
        ((60.0..1150.0).contains(&x) && (60.0..650.0).contains(&y)).then_some((x, y))
    };
    for (x, y) in tags.iter().filter_map(|tag| in_view(table, tag)).take(6) {
        table.hover(x, y);
        table.hover(x + 45.0, y + 30.0);
    }
    assert_same(table, "after the pointer went over parts and runs");

    let (x, y) = tags
        .iter()
        .find_map(|tag| in_view(table, tag))
        .unwrap_or_else(|| panic!("no part in view"));
    table.drag_and_hold(&[
        (x, y),
        (x + 12.0, y + 9.0),
        (x + 40.0, y - 20.0),
        (x + 90.0, y + 35.0),
    ]);
    assert_same(table, "within a drag");
    table.release();
    table.wait_for("the part to lie where it was dropped", || {
        (table.state()["tool"] == "pick/idle").then_some(())
    });
    assert_same(table, "after the drop");
}
