//! Pictures that are pasted: each goes to what the focus is in, or to what is picked; a part and a complaint of the same tag
//! have pictures of their own.

use crate::table::Table;
use model::picture::PictureOf;

/// Pastes a small picture at the focus, as the browser hands one over that was copied elsewhere.
fn paste(table: &Table) {
    table.eval(
        "(() => { const c = document.createElement('canvas'); c.width = 60; c.height = 40; c.getContext('2d').fillRect(5, 5, 30, 20); \
         c.toBlob(blob => { const data = new DataTransfer(); data.items.add(new File([blob], 'seen.png', {type: 'image/png'})); \
         document.activeElement.dispatchEvent(new ClipboardEvent('paste', {clipboardData: data, bubbles: true, cancelable: true})) }) })()",
    );
}

/// Pictures of what has this tag among these.
fn count(table: &Table, among: PictureOf, tag: &str) -> usize {
    table
        .job()
        .pictures
        .values()
        .filter(|it| it.is_of(among, tag))
        .count()
}

fn wait(table: &Table, among: PictureOf, tag: &str, many: usize) {
    table.wait_for(&format!("{many} pictures of {tag}"), || {
        (count(table, among, tag) == many).then_some(())
    });
}

fn put(table: &Table, css: &str, text: &str) {
    table.eval(&format!(
        "(() => {{ const i = document.querySelector('{css}'); i.value = '{text}'; i.dispatchEvent(new Event('change', {{bubbles: true}})) }})()"
    ));
}

#[test]
fn a_pasted_picture_goes_to_what_is_picked_or_what_the_focus_is_in() {
    let table = Table::open_worked("van");
    // Nothing is picked: it is of the vehicle.
    paste(&table);
    wait(&table, PictureOf::Thing, "", 1);
    // One part is picked, its slip open.
    table.open_part("F1");
    table.wait_until(
        "the slip",
        "!!document.querySelector('[data-testid=add-picture]')",
    );
    paste(&table);
    wait(&table, PictureOf::Thing, "F1", 1);
    table.wait_until(
        "it is seen",
        "document.querySelector('[data-testid=picture] img')?.naturalWidth > 0",
    );
    // What is to be seen on it is kept with it.
    put(&table, "[data-testid=picture-words]", "Scorched holder");
    table.wait_for("the words", || {
        table
            .job()
            .pictures
            .values()
            .any(|it| it.facts.words == "Scorched holder")
            .then_some(())
    });
    table.press("Escape");
    // A complaint and a line of the condition record, by the focus in their lines.
    table.press("c");
    table.click("thread-add-complaint");
    table.wait_until(
        "the complaint",
        "!!document.querySelector('[data-testid=complaint-line]')",
    );
    table.eval("document.querySelector('[data-testid=complaint-line] summary, [data-testid=complaint-line] button').focus()");
    paste(&table);
    wait(&table, PictureOf::Complaint, "C1", 1);
    table.click("thread-condition");
    table.click("thread-add-intake");
    table.wait_until(
        "the line",
        "!!document.querySelector('[data-testid=intake-line]')",
    );
    table.eval("document.querySelector('[data-testid=intake-line] button').focus()");
    paste(&table);
    wait(&table, PictureOf::Intake, "I1", 1);
    assert_eq!(table.job().pictures.len(), 4);
    table.press("Escape");
    table.press("ctrl+z");
    wait(&table, PictureOf::Intake, "I1", 0);
    table.assert_no_errors();
}

#[test]
fn a_part_and_a_complaint_of_the_same_tag_do_not_share_pictures() {
    let table = Table::open_worked("van");
    // Renamed by the name at the head of its slip.
    table.open_part("F1");
    table.fill("slip-tag", "C1");
    table.wait_until("the part C1", "'C1' in JSON.parse(loomwright_state()).parts");
    paste(&table);
    wait(&table, PictureOf::Thing, "C1", 1);
    table.press("Escape");
    table.press("Escape");
    table.press("c");
    table.click("thread-add-complaint");
    table.wait_until(
        "the complaint",
        "!!document.querySelector('[data-testid=complaint-line]')",
    );
    assert_eq!(table.job().thread.complaints[0].tag, "C1");
    assert_eq!(
        table.eval("document.querySelectorAll('[data-testid=complaint-line] [data-testid=picture]').length"),
        0
    );
    table.eval("document.querySelector('[data-testid=complaint-line] button').focus()");
    paste(&table);
    wait(&table, PictureOf::Complaint, "C1", 1);
    assert_eq!(count(&table, PictureOf::Thing, "C1"), 1);
    // The complaint goes with its picture; that of the part stays.
    table.eval("document.querySelector('[data-testid=complaint-line] [data-testid=remove-line]').click()");
    wait(&table, PictureOf::Complaint, "C1", 0);
    assert_eq!(count(&table, PictureOf::Thing, "C1"), 1);
    table.assert_no_errors();
}

/// By hand, of the worked job: approved are Q1 to Q5 and Q7. Parts 96.40 + 18.20 + 0 + 2.50 + 24.90 + 21.00 = 163.00; hours
/// 3.5 + 2 + 0.75 + 0.25 + 1 + 0.5 = 8 at 78.00 are 624.00; together 787.00. Without Q5, 24.90 + 78.00 less: 684.10.
#[test]
fn the_difference_tells_metal_and_money() {
    let table = Table::open_worked("hatchback");
    let worth = |of: &str| -> Option<String> {
        let all = table.eval(
            "[...document.querySelectorAll('[data-testid=becomes-worth] > div')].map(d => d.innerText.replace(/\\s+/g, ' ').trim())",
        );
        let all: Vec<String> = serde_json::from_value(all).unwrap_or_default();
        all.into_iter().find(|row| row.contains(of))
    };
    table.press("c");
    table.click("thread-becomes");
    table.wait_until(
        "what it is worth",
        "!!document.querySelector('[data-testid=becomes-worth]')",
    );
    assert!(
        worth("pproved").is_some_and(|row| row.ends_with("787.00 EUR")),
        "{:?}",
        worth("pproved")
    );
    // Every row of the list of totals that tells of metal is there with its number.
    let job = table.job();
    let work = paperwork::Work::of(&job, model::SheetKind::Plan, None).expect("a plan");
    let all = paperwork::what_becomes(&work)
        .worth(&work)
        .shown(&words::Words::english());
    assert!(all.len() > 2, "{all:?}");
    for row in &all {
        let shown = worth(&row[0]).unwrap_or_else(|| panic!("{row:?} is not shown"));
        assert!(shown.ends_with(&row[1..].join(" ")), "{shown}: {row:?}");
    }
    table.click("thread-quote");
    table.eval(
        "(() => { const line = [...document.querySelectorAll('[data-testid=offer-line]')].find(l => l.querySelector('.thread__tag').innerText === 'Q5'); \
         line.querySelectorAll('details').forEach(d => d.open = true); \
         const l = [...line.querySelectorAll('label')].find(l => l.innerText.trim().startsWith('decision')); \
         const i = l.querySelector('select') ?? l.parentElement.querySelector('select'); i.value = 'declined'; \
         i.dispatchEvent(new Event('change', {bubbles: true})) })()",
    );
    table.click("thread-becomes");
    table.wait_for("the sum without it", || {
        worth("pproved")
            .filter(|row| row.ends_with("684.10 EUR"))
            .map(|_| ())
    });
    table.assert_no_errors();
}
