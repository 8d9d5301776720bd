//! Breaking something on the page: a run of a worked job touches the body, the answer is the engine's, the touch is dragged along, time
//! is gone through, and closing the drawer leaves the job as it was.

use crate::table::Table;
use circuit::faults::Faults;
use model::breaks::Break;
use words::Words;

#[test]
fn a_run_touches_the_body_and_what_follows_is_gone_through_and_healed() {
    let mut table = Table::open_worked("hatchback");
    let (sheet, before) = (table.sheet(), table.job());
    let words = Words::default();
    let faults = Faults::new(&sheet, &before.settings);
    let outcome = |written: &str| {
        let broken = Break::read(written, &sheet).expect("a break");
        let course = faults.course(&[broken]).expect("a course");
        words.say(&course.outcome.said(&sheet))
    };
    table.press("x");
    // What cannot be is told where it is written.
    table.click("breaking-written");
    table.type_text("W999 cut");
    table.click("breaking-throw");
    assert!(table.text("breaking-wrong").contains("W999"));
    table.eval(
        "(() => { const it = document.querySelector('[data-testid=breaking-written]'); it.value = ''; \
         it.dispatchEvent(new Event('input', { bubbles: true })); })()",
    );
    table.click("breaking-written");
    table.type_text("W12 grounded at 50%");
    table.click("breaking-throw");
    table.wait_until(
        "the outcome",
        "!!document.querySelector('[data-testid=breaking-outcome]')",
    );
    assert_eq!(table.text("breaking-outcome"), outcome("W12 grounded at 50%"));
    table.screenshot("break-it-thrown");
    // Dragged along the wire, the answer follows.
    let slide = |table: &Table, name: &str, value: &str| {
        table.eval(&format!(
            "(() => {{ const it = document.querySelector('[data-testid={name}]'); it.value = '{value}'; \
             it.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()"
        ));
    };
    slide(&table, "breaking-along", "100");
    table.wait_until(
        "the other end",
        "document.querySelector('[data-testid=breaking-thrown]').innerText.includes('100')",
    );
    assert_eq!(table.text("breaking-outcome"), outcome("W12 grounded at 100%"));
    assert!(table.count("breaking-event") > 0);
    let first = table.text("breaking-at");
    slide(&table, "breaking-moment", "9999");
    table.wait_until(
        "a later moment",
        &format!("document.querySelector('[data-testid=breaking-at]').innerText !== {first:?}"),
    );
    table.page_mut().set_size(1024, 768);
    table
        .page_mut()
        .set_scheme(loomwright_tests::browser::Scheme::Dark);
    table.screenshot("break-it-later-tablet-dark");
    table.click("breaking-all-back");
    assert_eq!(table.count("breaking-outcome"), 0);
    assert_eq!(table.job(), before, "nothing of the job changes");
    table.assert_no_errors();
}

/// What the native engine says of breaks written down: outcome and what flows at first, in the page's words.
fn native(table: &Table, written: &[String]) -> (String, String) {
    let (sheet, words) = (table.sheet(), Words::default());
    let breaks: Vec<Break> = written
        .iter()
        .map(|text| Break::read(text, &sheet).expect("a break"))
        .collect();
    let course = Faults::new(&sheet, &table.job().settings).course(&breaks);
    let course = course.expect("a course");
    (
        words.say(&course.outcome.said(&sheet)),
        course
            .fault
            .map_or_else(String::new, |fault| words.say(&fault.said())),
    )
}

fn thrown(table: &Table) -> Vec<String> {
    let state = table.state();
    let all = state["thrown"].as_array().into_iter().flatten();
    all.filter_map(|it| Some(it.as_str()?.to_owned())).collect()
}

fn point(value: &serde_json::Value) -> (f64, f64) {
    let at = |place: usize| {
        value[place]
            .as_f64()
            .unwrap_or_else(|| panic!("no point: {value}"))
    };
    (at(0), at(1))
}

/// The run of the sheet that, touching the body, makes some wire warmest.
fn the_run_that_warms_most(table: &Table) -> String {
    let sheet = table.sheet();
    let faults = Faults::new(&sheet, &table.job().settings);
    let rise = |tag: &str| {
        let broken = Break::read(&format!("{tag} grounded"), &sheet).expect("a break");
        let course = faults.course(&[broken]).expect("a course");
        let hottest = |frame: &circuit::faults::Frame| {
            frame.runs.iter().map(|run| run.temperature.0).fold(0.0, f64::max)
        };
        let frames = &course.scenarios[0].frames;
        frames.iter().map(hottest).fold(0.0, f64::max) - hottest(&frames[0])
    };
    let tags = sheet.runs.values().map(|run| run.tag.clone());
    let best = tags.max_by(|a, b| rise(a).total_cmp(&rise(b))).expect("a run");
    assert!(rise(&best) > 5.0, "{best}: {}", rise(&best));
    best
}

#[test]
fn scissors_cut_and_a_lead_shorts_on_the_board_by_the_mouse() {
    let table = Table::open_worked("hatchback");
    let before = table.job();
    table.press("x");
    table.wait_until(
        "the scissors",
        "JSON.parse(loomwright_state()).tool === 'break/scissors'",
    );
    let (x, y) = table.run("W8");
    table.hover(x, y);
    table.screenshot("break-it-scissors");
    table.click_at(x, y);
    let cut = table.wait_for("a cut", || thrown(&table).pop());
    assert!(cut.starts_with("W8 cut at "), "{cut}");
    table.press("ctrl+z");
    table.wait_until(
        "the cut to be mended",
        "JSON.parse(loomwright_state()).thrown.length === 0",
    );

    table.click("break-lead");
    let body = point(&table.state()["body"]);
    table.drag(&[(x, y), (x + 30.0, y + 30.0), body]);
    let first = table.wait_for("a short", || thrown(&table).pop());
    assert!(first.starts_with("W8 grounded at "), "{first}");
    let (outcome, draws) = native(&table, std::slice::from_ref(&first));
    assert_eq!(table.text("breaking-outcome"), outcome);
    assert!(table.text("breaking-draws").contains(&draws), "{draws}");

    // The mark is drawn along the wire: the numbers follow while the button is held.
    let mark = point(&table.state()["marks"][0]);
    table.drag_and_hold(&[mark, (mark.0 - 20.0, mark.1), (mark.0 - 70.0, mark.1 + 3.0)]);
    let held = table.wait_for("the mark to follow", || {
        thrown(&table).pop().filter(|now| *now != first)
    });
    assert_eq!(table.state()["tool"], "break/dragging");
    table.wait_for("the numbers to follow", || {
        let now = native(&table, std::slice::from_ref(&held)).1;
        table.text("breaking-draws").contains(&now).then_some(())
    });
    assert!(!table.text("breaking-draws").contains(&draws));
    table.screenshot("break-it-dragged");
    table.release();
    assert_eq!(thrown(&table), [held]);

    // Away from everything it comes off; undo puts it back where it was before.
    let mark = point(&table.state()["marks"][0]);
    table.drag(&[
        mark,
        (mark.0 - 20.0, mark.1 + 60.0),
        (mark.0 - 80.0, mark.1 + 250.0),
    ]);
    table.wait_until(
        "it to be off",
        "JSON.parse(loomwright_state()).thrown.length === 0",
    );
    table.press("ctrl+z");
    table.wait_until(
        "it to be back",
        "JSON.parse(loomwright_state()).thrown.length === 1",
    );
    table.press("x");
    table.wait_until(
        "the tool to be put away",
        "JSON.parse(loomwright_state()).tool === 'pick/idle'",
    );
    assert!(thrown(&table).is_empty());
    assert_eq!(table.job(), before, "nothing of the job changes");
    table.assert_no_errors();
}

#[test]
fn one_finger_shorts_drags_the_touch_and_moves_through_time() {
    let mut table = Table::open_worked("hatchback");
    table.page_mut().set_size(1024, 768);
    table
        .page_mut()
        .set_scheme(loomwright_tests::browser::Scheme::Dark);
    table.set_touch();
    table.press("Home");
    table.press("x");
    table.wait_until(
        "the scissors",
        "JSON.parse(loomwright_state()).tool === 'break/scissors'",
    );
    for target in ["break-scissors", "break-lead"] {
        assert!(table.place(target).height >= 44.0, "{target}");
    }
    let tag = "W8";
    let at = table.run(tag);
    table.tap_at(at.0, at.1);
    let cut = table.wait_for("a cut", || thrown(&table).pop());
    assert!(cut.starts_with(&format!("{tag} cut")), "{cut}");
    table.click("breaking-all-back");
    table.wait_until(
        "nothing to be thrown",
        "JSON.parse(loomwright_state()).thrown.length === 0",
    );

    table.click("break-lead");
    let body = point(&table.state()["body"]);
    table.touch_drag(&[at, (at.0 + 30.0, at.1 + 30.0), body]);
    let first = table.wait_for("a short", || thrown(&table).pop());
    assert!(first.starts_with(&format!("{tag} grounded at ")), "{first}");
    let draws = table.text("breaking-draws");
    let mark = point(&table.state()["marks"][0]);
    // Level or upright: one of these is along the wire, the others may lead to what is beside it.
    let along = |by: &(f64, f64)| {
        let to = (mark.0 + by.0, mark.1 + by.1);
        table.touch_drag(&[mark, (mark.0 + by.0 / 2.0, mark.1 + by.1 / 2.0), to]);
        let now = thrown(&table);
        let is_along = now != [first.clone()] && now[0].starts_with(&format!("{tag} grounded at "));
        if !is_along && now != [first.clone()] {
            table.press("ctrl+z");
        }
        is_along
    };
    let ways = [(30.0, 0.0), (0.0, 30.0), (-30.0, 0.0), (0.0, -30.0)];
    assert!(ways.iter().any(along), "the touch is dragged along");
    let moved = thrown(&table);
    assert_ne!(table.text("breaking-draws"), draws, "{first} against {moved:?}");
    assert!(table.text("breaking-draws").contains(&native(&table, &moved).1));

    // Time is drawn through on the board, and the wires are seen to warm.
    table.click("breaking-all-back");
    table.click("breaking-written");
    table.type_text(&format!("{} grounded", the_run_that_warms_most(&table)));
    table.click("breaking-throw");
    table.wait_until("a short", "JSON.parse(loomwright_state()).thrown.length === 1");
    assert_eq!(table.state()["overlay"], "Heat");
    let slider = table.place("breaking-moment");
    assert!(slider.height >= 44.0, "{slider:?}");
    let (when, hot) = (table.text("breaking-at"), table.text("breaking-hottest"));
    let across = |share: f64| (slider.x + 8.0 + share * (slider.width - 16.0), slider.middle().1);
    table.touch_drag(&[across(0.0), across(0.4), across(0.7)]);
    table.wait_for("a later moment", || {
        (table.text("breaking-at") != when).then_some(())
    });
    assert_ne!(table.text("breaking-hottest"), hot);
    table.screenshot("break-it-tablet-dark");
    table.assert_no_errors();
}
