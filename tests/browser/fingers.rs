//! By fingers: one draws and selects, two shift and enlarge, a long press opens details; in a narrow window the notes and
//! the title block unfold from the strip above the tools, and everything that is touched is large enough.

use crate::table::{Table, ends};

#[test]
fn one_finger_draws_and_selects_two_shift_and_enlarge_a_long_press_tells() {
    let mut table = Table::empty();
    table.page_mut().set_size(1180, 820);
    table.set_touch();
    table.press("a");
    for (word, at) in [("battery", (420.0, 300.0)), ("load", (720.0, 300.0))] {
        let before = table.sheet();
        let from = table.place(&format!("shelf-{word}")).middle();
        table.touch_drag(&[from, at]);
        table.fresh_part(&before, word);
    }
    table.press("a");
    table.wait_until(
        "the shelf to be shut",
        "!document.querySelector('[data-testid=shelf-drawer]')",
    );

    // One finger pulls a run.
    table.touch_drag(&[table.terminal("B1.+"), table.terminal("L1.+")]);
    let sheet = table.wait_for("a run", || {
        let sheet = table.sheet();
        (sheet.runs.len() == 1).then_some(sheet)
    });
    let run = sheet.runs.values().next().expect("a run");
    assert_eq!(ends(&sheet, run), ("B1.+".to_owned(), "L1.+".to_owned()));

    // Two fingers spread by a half: the paper is enlarged by a half, about the middle between them. The job stays.
    let (job, zoom) = (table.job_text(), table.state()["zoom"].as_f64().expect("a zoom"));
    table.two_fingers([(500.0, 560.0), (700.0, 560.0)], [(450.0, 560.0), (750.0, 560.0)]);
    table.wait_for("the paper to be enlarged", || {
        let now = table.state()["zoom"].as_f64().unwrap_or(zoom);
        ((now / zoom - 1.5).abs() < 0.02).then_some(())
    });
    let was = table.part("B1");
    table.two_fingers([(500.0, 560.0), (700.0, 560.0)], [(540.0, 500.0), (740.0, 500.0)]);
    table.wait_for("the paper to be shifted", || {
        let now = table.part("B1");
        ((now.0 - was.0 - 40.0).abs() < 2.0 && (now.1 - was.1 + 60.0).abs() < 2.0).then_some(())
    });
    assert_eq!(table.job_text(), job);

    // A finger that carries a part, and one that rests on it.
    let (x, y) = table.part("L1");
    table.touch_drag(&[(x, y), (x, y + 90.0)]);
    table.wait_until(
        "the part to be moved",
        "JSON.parse(loomwright_state()).undo === 'Move L1'",
    );
    let (x, y) = table.part("L1");
    table.rest_at(x, y, 800);
    table.wait_for("the slip of L1", || {
        let label = table.attribute("slip", "aria-label")?;
        (label == "Details of L1").then_some(())
    });
    table.assert_no_errors();
}

#[test]
fn in_a_narrow_window_notes_and_title_block_are_in_reach() {
    let mut table = Table::open_worked("van");
    for (width, height, name) in [(390, 844, "phone"), (820, 1180, "tablet")] {
        table.page_mut().set_size(width, height);
        table.set_touch();
        let told = table.findings();
        table.wait_until("the strip", "!!document.querySelector('[data-testid=low-notes]')");
        // By keys alone: the strip is a button with its state, the notes are buttons in a list.
        table.eval("document.querySelector('[data-testid=low-notes]').focus()");
        assert_eq!(
            table.attribute("low-notes", "aria-expanded").as_deref(),
            Some("false")
        );
        table.press("Enter");
        table.wait_until(
            "the notes",
            "document.querySelectorAll('[data-testid=note]').length > 0",
        );
        assert_eq!(table.count("note"), told.len(), "one note for each finding");
        assert_eq!(
            table.attribute("low-notes", "aria-expanded").as_deref(),
            Some("true")
        );
        let small = table.eval(
            "[...document.querySelectorAll('button, select, input')].filter(e => e.offsetParent).map(e => \
             [e.dataset.testid ?? e.className, e.getBoundingClientRect()]).filter(([, r]) => r.width < 43.5 || r.height < 43.5) \
             .map(([name, r]) => `${name} ${r.width}x${r.height}`)",
        );
        // WCAG 2.2, 2.5.5 (enhanced): targets of 44 by 44 CSS pixels.
        assert_eq!(
            small,
            serde_json::json!([]),
            "targets that are too small on a {name}"
        );
        table.screenshot(&format!("narrow-notes-{name}"));
        table.click_nth("note", 2);
        table.wait_for("the explanation", || {
            let shown = table.attribute("explanation", "aria-label")?;
            (shown == "Finding 3").then_some(())
        });
        let place = table.place("explanation");
        assert!(
            place.x >= 0.0 && place.x + place.width <= f64::from(width),
            "{place:?}"
        );
        assert_eq!(table.count("note"), 0, "the notes fold when one is chosen");
        table.click("close");
        table.click("low-title");
        assert!(table.text("title-vehicle").contains("van"));
        table.click("low-title");
        table.wait_until(
            "the title block to be folded",
            "!document.querySelector('.title-block')",
        );
    }
    table.assert_no_errors();
}
