//! Sizing on the page: what it says is the engine's, all of it is taken as one edit and taken back as one, what is locked stays,
//! and a slider asks what if without changing the job.

use crate::table::Table;
use assist::sizing::{Ask, By, WhatIf, size};
use checks::Grade;
use model::SheetKind;
use model::job::Duty;
use paperwork::{List, PriceList, Terms, Work};
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

/// Where the thumb of a slider of the drawer stands at a share of its range, in the window.
fn thumb(table: &Table, name: &str, share: f64) -> (f64, f64) {
    let track = table.eval(&format!(
        "(() => {{ const it = document.querySelector('[data-testid={name}]'); it.scrollIntoView({{ block: 'center' }}); \
         const r = it.getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; }})()"
    ));
    let at = |place: usize| track[place].as_f64().expect("a number");
    // The middle of a thumb of 16 pixels does not reach the ends of the track.
    (at(0) + 8.0 + (at(2) - 16.0) * share, at(1) + at(3) / 2.0)
}

fn way(table: &Table, name: &str, from: f64, to: f64) -> Vec<(f64, f64)> {
    let share = |step: u32| from + (to - from) * f64::from(step) / 8.0;
    (0..=8).map(|step| thumb(table, name, share(step))).collect()
}

/// What the engine says of a question: grave findings as it would be, metal with the sizes, in the page's words.
fn native(table: &Table, what_if: &WhatIf) -> (usize, String) {
    let (sheet, settings) = what_if.of(&table.sheet(), &table.job().settings);
    let found = checks::analyse(&sheet, &settings).findings;
    let grave = found.iter().filter(|it| it.grade != Grade::Tidy).count();
    let ask = Ask {
        as_set: what_if.duty.is_some(),
        ..Ask::default()
    };
    let sizing = size(&sheet, &settings, &ask);
    let [before, after] = sizing.metal().map(|kg| precise(kg, Unit::Plain("kg"), 2));
    let metal = say!("sizing-metal", before = before, after = after);
    (grave, Words::default().say(&metal))
}

/// Waits until the drawer says what the engine says.
fn follows(table: &Table, what: &str, what_if: &WhatIf) {
    let (grave, metal) = native(table, what_if);
    let begins = format!("Findings of grade Stop or Fix: {grave} now");
    table.wait_for(&format!("{what}: {begins}, {metal}"), || {
        let says = table.text("sizing-findings").starts_with(&begins) && table.text("sizing-metal") == metal;
        says.then_some(())
    });
}

#[test]
fn each_slider_moves_sizes_and_findings_while_the_hand_drags_it() {
    let mut table = Table::open_worked("hatchback");
    let before = table.job();
    table.press("q");
    table.wait_until(
        "the sizes",
        "!!document.querySelector('[data-testid=sizing-metal]')",
    );
    follows(&table, "as it is", &WhatIf::default());
    let third = 0.5 / 1.5;
    let usual = WhatIf::default();
    let sliders = [
        ("sizing-length", third, 1.0, WhatIf { length: 2.0, ..usual }),
        (
            "sizing-alternator",
            third,
            0.0,
            WhatIf {
                alternator: 0.5,
                ..usual
            },
        ),
        (
            "sizing-battery",
            third,
            0.0,
            WhatIf {
                battery: 0.5,
                ..usual
            },
        ),
        (
            "sizing-duty",
            1.0,
            0.0,
            WhatIf {
                duty: Some(Duty::Idle),
                ..usual
            },
        ),
    ];
    for (name, from, to, asked) in &sliders {
        let way = way(&table, name, *from, *to);
        table.drag_and_hold(&way);
        // Still held: the answer is there, and what moved is told.
        follows(&table, name, asked);
        let lists = table.count("sizing-moved-size") + table.count("sizing-moved-finding");
        table.wait_for("what moved", || {
            let told = table.count("sizing-moved-size") + table.count("sizing-moved-finding");
            (told > 0 || table.count("sizing-moved-none") == 1).then_some(())
        });
        if *name == "sizing-length" {
            assert!(lists > 0, "twice the length moves something");
            table.screenshot("size-it-what-if");
        }
        table.release();
        follows(&table, name, asked);
        table.click("sizing-back");
        follows(&table, "back", &usual);
    }
    // By keys: a step of the slider in focus.
    table.eval("document.querySelector('[data-testid=sizing-length]').focus()");
    table.press("right");
    follows(&table, "a key", &WhatIf { length: 1.1, ..usual });
    table.click("sizing-back");
    // By a finger, on a tablet.
    table.page_mut().set_size(1024, 768);
    table.set_touch();
    table.touch_drag(&way(&table, "sizing-length", third, 1.0));
    follows(&table, "a finger", &WhatIf { length: 2.0, ..usual });
    table.screenshot("size-it-what-if-tablet");
    assert_eq!(table.job(), before, "nothing of the job changes");
    table.assert_no_errors();
}

#[test]
fn the_page_lives_while_sizes_follow_the_hand() {
    let table = Table::open_worked("van");
    table.press("q");
    table.wait_until(
        "the sizes",
        "!!document.querySelector('[data-testid=sizing-metal]')",
    );
    let usual = WhatIf::default();
    follows(&table, "as it is", &usual);
    // Every turn that the page has from now on; and whether sizes could be taken that are of an older question.
    table.eval(
        "(() => { const it = window.turns = { all: [performance.now()], stale: 0, late: 0 }; \
         it.timer = setInterval(() => { it.all.push(performance.now()); \
         if (document.querySelector('[data-testid=sizing-late]')) { it.late += 1; \
         if (document.querySelector('[data-testid=sizing-take]:enabled, .sizing__take:enabled')) it.stale += 1; } }, 1); })()",
    );
    let way = way(&table, "sizing-length", 0.5 / 1.5, 1.0);
    table.drag_and_hold(&way);
    follows(&table, "twice the length", &WhatIf { length: 2.0, ..usual });
    let told = table.eval(
        "(() => { const it = window.turns; clearInterval(it.timer); const all = it.all; \
         const gaps = all.slice(1).map((at, place) => at - all[place]); \
         return [Math.max(...gaps), all[all.length - 1] - all[0], it.late, it.stale]; })()",
    );
    let number = |at: usize| told[at].as_f64().expect("a number");
    let (longest, whole, late, stale) = (number(0), number(1), number(2), number(3));
    assert!(late >= 4.0, "{late} turns while sizes were worked out");
    assert!(
        stale < 0.5,
        "sizes of an older question could be taken, {stale} times"
    );
    // As a share, as the machine may be busy with other things.
    assert!(
        longest < 0.5 * whole,
        "{longest:.0} ms of {whole:.0} ms at a time"
    );
    table.release();
    table.screenshot("size-it-van");
    table.assert_no_errors();
}

#[test]
fn the_shops_own_price_list_decides_where_cost_is_to_be_least() {
    let table = Table::open_worked("hatchback");
    let (job, words) = (table.job(), Words::default());
    table.press("q");
    table.wait_until(
        "the sizes",
        "!!document.querySelector('[data-testid=sizing-metal]')",
    );
    let choose = |value: &str| {
        table.eval(&format!(
            "(() => {{ const it = document.querySelector('[data-testid=sizing-by]'); it.value = '{value}'; \
             it.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()"
        ));
    };
    choose("cost");
    table.wait_until(
        "a plain word that there is no list",
        "(document.querySelector('[data-testid=sizing-prices]') ?? { innerText: '' }).innerText.includes('No price list')",
    );
    assert_eq!(table.count("sizing-cost"), 0);
    // The list that the page hands out, filled in: 2.00 for the thinnest, and less and less for what is thicker.
    let folder = tempfile::tempdir().expect("a folder");
    table.download_into(folder.path());
    table.click("sizing-list-out");
    let file = table.downloaded(folder.path(), ".csv");
    let empty = std::fs::read_to_string(file).expect("the list");
    let work = Work::of(&job, SheetKind::Plan, None).expect("a sheet");
    let expected = paperwork::lists(&work, &Terms::default(), &[List::Prices]);
    let expected = paperwork::csv(&expected[0], &words);
    let articles = |text: &str| -> Vec<String> {
        let first = |line: &str| line.split(',').next().unwrap_or_default().to_owned();
        text.trim_start_matches('\u{feff}').lines().map(first).collect()
    };
    assert_eq!(articles(&empty), articles(&expected));
    let filled = filled(&empty);
    let list = PriceList::read(&filled, &words);
    table.eval(&format!(
        "(() => {{ const box = new DataTransfer(); box.items.add(new File([{filled:?}], 'prices.csv', {{ type: 'text/csv' }})); \
         const it = document.querySelector('[data-testid=sizing-list-in]'); it.files = box.files; \
         it.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()"
    ));
    let sizing = size(
        &table.sheet(),
        &job.settings,
        &Ask {
            by: By::Cost(&list),
            ..Ask::default()
        },
    );
    let [before, after] = sizing.cost();
    let money = |it| paperwork::money(it, &job.thread.rates);
    let told = match (before, after) {
        (Some(before), Some(after)) => say!("sizing-cost", before = money(before), after = money(after)),
        (_, after) => say!(
            "sizing-cost-then",
            after = money(after.expect("a price for all that is chosen"))
        ),
    };
    let told = words.say(&told);
    table.wait_for(&told, || {
        (table.count("sizing-cost") == 1 && table.text("sizing-cost") == told).then_some(())
    });
    table.screenshot("size-it-by-cost");
    table.assert_no_errors();
}

/// A price list in which a line costs a hundredth less than the one before: 19.99, 19.98 and so on. Price and hours stand last.
fn filled(empty: &str) -> String {
    let lines = empty.lines().enumerate().map(|(at, line)| {
        let cents = 2000 - at;
        match line.strip_suffix(",,") {
            Some(line) => format!("{line},{}.{:02},\n", cents / 100, cents % 100),
            None => format!("{line}\n"),
        }
    });
    lines.collect()
}
