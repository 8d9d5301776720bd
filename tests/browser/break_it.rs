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
