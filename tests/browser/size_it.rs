//! Sizing on the page: what it says is the engine's, all of it is taken as one edit and taken back as one, what is locked stays,
//! and a slider asks what if without changing the job.

use crate::table::Table;
use assist::sizing::{Ask, size};
use words::{Unit, Words, precise, say};

fn told(table: &Table) -> String {
    let sizing = size(&table.sheet(), &table.job().settings, &Ask::default());
    let [before, after] = sizing.metal().map(|kg| precise(kg, Unit::Plain("kg"), 2));
    Words::default().say(&say!("sizing-metal", before = before, after = after))
}

#[test]
fn sizes_are_worked_out_taken_at_once_locked_and_asked_about() {
    let mut table = Table::open_worked("hatchback");
    let (before, bytes) = (table.job(), table.job_text());
    table.press("q");
    let says = |expected: &str| {
        format!(
            "(document.querySelector('[data-testid=sizing-metal]') ?? {{ innerText: '' }}).innerText === {expected:?}"
        )
    };
    table.wait_until("the sizes", &says(&told(&table)));
    table.screenshot("size-it");
    // What if the wires were twice as long: nothing of the job changes.
    let usual = table.text("sizing-metal");
    table.eval(
        "(() => { const it = document.querySelector('[data-testid=sizing-length]'); it.value = '2'; \
         it.dispatchEvent(new Event('input', { bubbles: true })); })()",
    );
    table.wait_until(
        "more metal",
        &format!("document.querySelector('[data-testid=sizing-metal]').innerText !== {usual:?}"),
    );
    assert_eq!(table.job(), before);
    table.click("sizing-back");
    table.wait_until("the sizes again", &says(&usual));
    // All of it is one edit, and goes as one.
    table.click("sizing-take");
    table.wait_for("the edit", || (table.job() != before).then_some(()));
    table.wait_until(
        "nothing more to take",
        "!!document.querySelector('[data-testid=sizing-nothing]')",
    );
    table.press("Escape");
    table.press("ctrl+z");
    table.wait_for("the job as it was", || (table.job_text() == bytes).then_some(()));
    // What is locked keeps its size.
    table.press("q");
    table.wait_until("the sizes", &says(&told(&table)));
    table.click("sizing-lock-W12");
    table.wait_until(
        "a lock",
        "document.querySelector('[data-testid=sizing-lock-W12]').getAttribute('aria-pressed') === 'true'",
    );
    table.wait_until(
        "the row",
        "!document.querySelector('[data-testid=sizing-take-W12]')",
    );
    table.page_mut().set_size(1024, 768);
    table
        .page_mut()
        .set_scheme(loomwright_tests::browser::Scheme::Dark);
    table.screenshot("size-it-tablet-dark");
    table.assert_no_errors();
}
