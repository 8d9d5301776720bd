//! Mending without choosing: what a mend does is read before it is made, and all that need no choice are made at once, and
//! taken back at once. What is told is held against the native engine.

use crate::table::Table;
use loomwright_tests::browser::Scheme;

/// The numbers of `Stop 9 → 1, Fix 12 → 1, Tidy 0 → 0`: before and after, by grade.
fn numbers(counts: &str) -> Vec<usize> {
    counts
        .split(|c: char| !c.is_ascii_digit())
        .filter_map(|digits| digits.parse().ok())
        .collect()
}

/// How many findings of a sheet there are of each grade.
fn by_grade(table: &Table) -> [usize; 3] {
    let counts = checks::summary_of(&table.native().findings);
    [counts.stop, counts.fix, counts.tidy]
}

fn open_drawer(table: &Table) {
    table.press("shift+M");
    table.wait_at_most(
        std::time::Duration::from_secs(60),
        "everything to be worked out",
        || (table.attribute("mend-all-drawer", "data-known").as_deref() == Some("true")).then_some(()),
    );
}

#[test]
fn the_van_is_mended_at_once_and_taken_back_to_the_byte() {
    let mut table = Table::open_worked("van");
    let before = table.job_text();
    let was = by_grade(&table);
    open_drawer(&table);
    // Nothing is done yet: it is only told.
    assert_eq!(table.job_text(), before);
    let told = numbers(&table.text("mend-all-counts"));
    let [stop, stop_after, fix, fix_after, tidy, tidy_after] = told[..] else {
        panic!("{told:?}")
    };
    assert_eq!([stop, fix, tidy], was);
    assert!(
        stop_after * 2 < stop && fix_after * 2 < fix,
        "most of it is mended: {told:?}"
    );
    let left = table.text("mend-all-left");
    assert!(left.contains("To choose:"), "{left}");
    table.screenshot("mend-all");
    table.page_mut().set_scheme(Scheme::Dark);
    table.screenshot("mend-all-dark");
    table.page_mut().set_scheme(Scheme::Light);

    // The button has the focus: one more key makes them.
    table.press("Enter");
    table.wait_until(
        "the drawer to be gone",
        "!document.querySelector('[data-testid=mend-all-drawer]')",
    );
    table.findings_as_native();
    assert_eq!(by_grade(&table), [stop_after, fix_after, tidy_after]);
    table.screenshot("mend-all-made");
    let mended = table.job_text();

    // There is nothing more that needs no choice.
    open_drawer(&table);
    assert_eq!(table.count("mend-all-make"), 0);
    assert_eq!(table.count("mend-all-left"), 1);
    table.press("Escape");

    // One step back, one step forth.
    table.press("ctrl+z");
    table.wait_for("the sheet as it was", || {
        (table.job_text() == before).then_some(())
    });
    assert_eq!(by_grade(&table), was);
    table.press("ctrl+shift+Z");
    table.wait_for("the sheet as it was mended", || {
        (table.job_text() == mended).then_some(())
    });
    table.assert_no_errors();
}

#[test]
fn a_mend_says_what_it_does_before_it_is_made() {
    let mut table = Table::open_worked("van");
    let at_first = table.findings_as_native();
    // From finding to finding until one has a mend.
    let known = |table: &Table| {
        table.wait_for("what the mend does", || {
            (table.attribute("mend-does", "data-known").as_deref() == Some("true")).then_some(())
        });
    };
    table.press("n");
    known(&table);
    let does = table.text("mend-does");
    assert!(does.contains("Clears:") && does.contains("Would bring"), "{does}");
    assert_eq!(table.findings(), at_first, "looking changes nothing");
    table.screenshot("mend-does");
    table.press("shift+Enter");
    table.wait_for("fewer findings", || {
        (table.findings_as_native().len() < at_first.len()).then_some(())
    });
    table.press("ctrl+z");
    table.wait_for("the findings of before", || {
        (table.findings() == at_first).then_some(())
    });

    // One whose ground somebody has to find a place for says so.
    let ground = at_first
        .iter()
        .position(|finding| finding.starts_with("ground-forbidden"))
        .expect("a ground where none may be");
    for _ in 0..=ground {
        table.press("n");
    }
    known(&table);
    let does = table.text("mend-does");
    assert!(does.contains("where on the body"), "{does}");
    table.screenshot("mend-choice");

    // On a tablet all of it is opened by a finger.
    table.press("Escape");
    table.page_mut().set_size(1024, 768);
    table.set_touch();
    let (x, y) = table.place("grades").middle();
    table.tap_at(x, y);
    table.wait_at_most(
        std::time::Duration::from_secs(60),
        "everything to be worked out",
        || (table.attribute("mend-all-drawer", "data-known").as_deref() == Some("true")).then_some(()),
    );
    table.screenshot("mend-all-tablet");
    // Steps and what is left are read to the end there.
    table.eval("document.querySelector('[data-testid=mend-all-drawer]').scrollTo(0, 1e6)");
    table.screenshot("mend-all-tablet-end");
    table.eval("document.querySelector('[data-testid=mend-all-drawer]').scrollTo(0, 0)");
    let (x, y) = table.place("mend-all-make").middle();
    table.tap_at(x, y);
    table.wait_for("fewer findings", || {
        (table.findings().len() * 2 < at_first.len()).then_some(())
    });
    table.assert_no_errors();
}
