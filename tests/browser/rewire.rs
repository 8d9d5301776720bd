//! Wiring that is there already is changed by hand: an end put elsewhere or left loose, a piece drawn aside, a bend taken
//! out; and copied through the clipboard of the system.

use crate::table::{Table, ends};
use model::{BoardPoint, End};

/// A battery and two loads; the first is fed.
fn small() -> Table {
    let table = Table::empty();
    table.press("a");
    table.take_from_shelf("battery", (420.0, 330.0));
    table.take_from_shelf("load", (860.0, 230.0));
    table.take_from_shelf("load", (860.0, 480.0));
    table.press("a");
    table.wait_until(
        "the shelf to be shut",
        "!document.querySelector('[data-testid=shelf-drawer]')",
    );
    table.pull("B1.+", "L1.+");
    table.press("Escape");
    table
}

fn run(table: &Table) -> model::Run {
    table.sheet().runs.values().next().cloned().expect("a run")
}

#[test]
fn an_end_is_put_on_another_terminal_or_left_loose_and_back() {
    let table = small();
    // A little off its stud, on the run.
    let (x, y) = table.terminal("L1.+");
    let (to_x, to_y) = table.terminal("L2.+");
    table.drag(&[(x - 18.0, y), (x - 60.0, y + 60.0), (to_x, to_y)]);
    table.wait_until(
        "the step",
        "JSON.parse(loomwright_state()).undo === 'Move end of run W1'",
    );
    let sheet = table.sheet();
    assert_eq!(ends(&sheet, &run(&table)), ("B1.+".to_owned(), "L2.+".to_owned()));
    table.findings_as_native();

    table.drag(&[(to_x - 18.0, to_y), (600.0, 560.0)]);
    table.wait_for("a loose end", || {
        matches!(run(&table).to, End::Loose(_)).then_some(())
    });
    assert!(
        table
            .findings_as_native()
            .iter()
            .any(|finding| finding.starts_with("loose-end"))
    );
    table.press("ctrl+z");
    table.press("ctrl+z");
    assert_eq!(ends(&table.sheet(), &run(&table)).1, "L1.+");

    // Escape in mid-gesture leaves no trace.
    let before = table.job_text();
    table.drag_and_hold(&[(x - 18.0, y), (640.0, 560.0)]);
    assert_eq!(table.state()["tool"], "end/moving");
    table.screenshot("end-in-hand");
    table.press("Escape");
    table.release();
    assert_eq!(table.job_text(), before);
    table.assert_no_errors();
}

#[test]
fn a_piece_drawn_aside_stays_and_a_double_click_takes_a_bend_out() {
    let table = small();
    let zoom = table.state()["zoom"].as_f64().expect("a zoom");
    let (x, y) = table.run("W1");
    table.drag(&[(x, y), (x + 60.0, y + 60.0)]);
    table.wait_until("the bend", "JSON.parse(loomwright_state()).undo === 'Bend W1'");
    let bends = run(&table).bends;
    assert_eq!(bends.len(), 2, "{bends:?}");
    let (px, py) = table.part("L1");
    table.drag(&[(px, py), (px, py - 60.0)]);
    table.wait_until("the move", "JSON.parse(loomwright_state()).undo === 'Move L1'");
    assert_eq!(run(&table).bends, bends, "they stay when a part moves");

    // Where a bend is on the screen: from the battery, whose place is known both ways.
    let battery = table
        .sheet()
        .part_by_tag("B1")
        .and_then(|(_, part)| part.at)
        .expect("a place");
    let origin = table.part("B1");
    let on_screen = |at: BoardPoint| {
        (
            origin.0 + f64::from(at.x - battery.x) * zoom,
            origin.1 + f64::from(at.y - battery.y) * zoom,
        )
    };
    let (bx, by) = on_screen(bends[1]);
    table.double_click_at(bx, by);
    table.wait_for("one bend less", || (run(&table).bends.len() == 1).then_some(()));
    table.screenshot("bend-by-hand");
    // By keys: the run is still picked.
    table.press("shift+K");
    table.wait_for("the run to find its way", || {
        run(&table).bends.is_empty().then_some(())
    });
    table.assert_no_errors();
}

#[test]
fn parts_go_through_the_clipboard_and_foreign_text_is_told() {
    let table = small();
    let (x, y) = table.part("L1");
    table.click_at(x, y);
    table.press("ctrl+c");
    table.wait_until(
        "it to be copied",
        "document.querySelector('[data-testid=said]').textContent.includes('copied')",
    );
    // What is on the clipboard is the job's text form.
    table.press("/");
    table.press("ctrl+v");
    let pasted = table.eval("document.activeElement.value");
    assert!(
        pasted.as_str().is_some_and(|text| text.contains("load L1")),
        "{pasted}"
    );
    table.press("ctrl+a");
    table.type_text("A letter about wires");
    table.press("ctrl+a");
    table.press("ctrl+c");
    table.press("Escape");
    table.wait_until("Ask to be shut", "!document.querySelector('.ask')");

    let before = table.job_text();
    table.press("ctrl+v");
    table.wait_until(
        "the message",
        "document.querySelector('[data-testid=said]').textContent.startsWith('Nothing was pasted')",
    );
    assert_eq!(table.job_text(), before);

    // Copied again, it is pasted into another job.
    table.click_at(x, y);
    table.press("ctrl+c");
    table.press("shift+E");
    table.wait_until(
        "an empty sheet",
        "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
    );
    table.press("ctrl+v");
    table.wait_until(
        "the part",
        "Object.keys(JSON.parse(loomwright_state()).parts).join() === 'L1'",
    );
    table.press("ctrl+x");
    table.wait_until(
        "it to be gone",
        "Object.keys(JSON.parse(loomwright_state()).parts).length === 0",
    );
    table.assert_no_errors();
}
