//! Work is kept as it is done: a crash takes at most the gesture in hand, and two tabs on one job lose nothing.

use crate::table::Table;
use std::time::Duration;

/// Lets the page hear late of everything that it waits for when it takes a job: what was read and written, and that the job is
/// its own. What it sends meanwhile takes effect as always.
const SLOW: &str = "(() => {
    const LATE = 1500;
    const later = (of, name) => {
        const own = Object.getOwnPropertyDescriptor(of.prototype, name);
        Object.defineProperty(of.prototype, name, {
            get() { return own.get.call(this) },
            set(hear) { own.set.call(this, hear && (event => setTimeout(() => hear(event), LATE))) },
        });
    };
    later(IDBTransaction, 'oncomplete');
    const request = LockManager.prototype.request;
    LockManager.prototype.request = async function (...asked) {
        await new Promise(done => setTimeout(done, LATE));
        return request.apply(this, asked);
    };
})()";

#[test]
fn a_crash_takes_the_gesture_in_hand_and_nothing_else() {
    let mut table = Table::open_worked("van");
    let (x, y) = table.part("A2");
    table.drag(&[(x, y), (x + 60.0, y + 40.0)]);
    table.open_part("LS1");
    table.fill("slip-label", "Box behind the seat");
    table.click("close");
    let done = table.job_text();
    assert!(done.contains("Box behind the seat"));
    table.wait_kept();

    // Another part is in hand when the power goes.
    let (x, y) = table.part("A1");
    table.drag_and_hold(&[(x, y), (x - 50.0, y + 30.0)]);
    assert_ne!(table.job_text(), done, "the gesture shows while it is made");
    table.page_mut().crash_and_reopen();
    table.wait_ready();
    assert_eq!(table.job_text(), done);
    table.findings_as_native();

    // Nor does closing a tab without warning lose what was done a moment before.
    table.open_part("LS1");
    table.fill("slip-label", "Box under the bench");
    let done = table.job_text();
    table.open_tab("");
    table.go_to_tab(0);
    table.close_tab();
    table.go_to_tab(0);
    table.wait_ready();
    table.wait_until(
        "the other tab's last edit",
        &format!("loomwright_job() === {}", serde_json::Value::from(done)),
    );
    table.assert_no_errors();
}

#[test]
fn of_two_tabs_on_one_job_the_second_says_so_and_neither_loses_anything() {
    let table = Table::open_worked("van");
    table.open_tab("");
    table.wait_until("the page's hooks", "typeof loomwright_state === 'function'");
    let message = table.text("storage-trouble");
    assert!(message.contains("Another tab has this job"), "{message}");
    assert_eq!(
        table.job().title,
        lessons::WorkedJob::of("van").expect("the van").job().title
    );

    // What the first tab does shows in the second.
    table.go_to_tab(0);
    table.open_part("LS1");
    table.fill("slip-label", "Named by the first tab");
    table.wait_kept();
    let first = table.job_text();
    table.go_to_tab(1);
    table.wait_until(
        "the first tab's edit in the second",
        &format!("loomwright_job() === {}", serde_json::Value::from(first)),
    );

    // The second takes the job over and writes; the first hears of it, and shows what the second did.
    table.press("b");
    table.click("take-over");
    table.wait_until(
        "the message to be gone",
        "!document.querySelector('[data-testid=storage-trouble]')",
    );
    table.open_part("LS2");
    table.fill("slip-label", "Named by the second tab");
    table.wait_kept();
    let second = table.job_text();
    assert!(second.contains("Named by the first tab") && second.contains("Named by the second tab"));
    table.go_to_tab(0);
    let message = table.text("storage-trouble");
    assert!(message.contains("Another tab has this job"), "{message}");
    table.wait_until(
        "the second tab's edit in the first",
        &format!("loomwright_job() === {}", serde_json::Value::from(second.clone())),
    );

    // The second goes; the first has the job again, with all that was done.
    table.go_to_tab(1);
    table.close_tab();
    table.go_to_tab(0);
    table.wait_until(
        "the job to be the first tab's again",
        "!document.querySelector('[data-testid=storage-trouble]')",
    );
    assert_eq!(table.job_text(), second);
    table.assert_no_errors();
}

#[test]
fn a_full_or_shut_storage_is_told_and_what_was_done_is_kept_once_there_is_room() {
    let table = Table::open_worked("estate");
    // The browser's own error, as it comes when the disk or the page's share of it is full.
    table.eval(
        "(() => { window.add = IDBObjectStore.prototype.add; IDBObjectStore.prototype.add = () => { \
         throw new DOMException('no room', 'QuotaExceededError') } })()",
    );
    table.open_part("LS1");
    table.fill("slip-label", "While it was full");
    let message = table.text("storage-trouble");
    assert!(
        message.contains("storage is full") && message.contains("save the job to a file"),
        "{message}"
    );
    table.eval("(() => { IDBObjectStore.prototype.add = window.add })()");
    table.fill("slip-label", "With room again");
    table.wait_until(
        "the message to be gone",
        "!document.querySelector('[data-testid=storage-trouble]')",
    );
    let job = table.job_text();
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.job_text(), job);
    table.assert_no_errors();
}

/// The job stored under this title, opened from the list.
fn open_kept(table: &Table, title: &str) {
    table.press("b");
    let place = table.wait_for("the job in the list", || {
        table.texts("kept-job").iter().position(|it| it.contains(title))
    });
    table.click_nth("kept-job", place);
    let title = serde_json::Value::from(title);
    table.wait_at_most(Duration::from_secs(30), "the stored job on the table", || {
        (table.eval(&format!("JSON.parse(loomwright_job()).title === {title}")) == true).then_some(())
    });
}

fn titled(key: &str) -> String {
    lessons::WorkedJob::of(key).expect("a worked job").job().title
}

#[test]
fn what_a_newcomer_does_before_the_storage_has_answered_is_kept() {
    let mut table = Table::open_prepared(SLOW);
    table.wait_until("the page's hooks", "typeof loomwright_state === 'function'");
    table.wait_until("all of the program", "JSON.parse(loomwright_state()).studied");
    let (x, y) = table.part("A1");
    table.drag(&[(x, y), (x + 60.0, y + 40.0)]);
    table.wait_until("the edit", "!!JSON.parse(loomwright_state()).undo");
    let first = table.job_text();
    table.wait_ready();
    // Of something else, as an edit of the same part would bring the first with it.
    let (x, y) = table.part("B1");
    table.drag(&[(x, y), (x + 20.0, y + 60.0)]);
    let done = table.job_text();
    assert_ne!(done, first);
    table.wait_kept();
    table.page_mut().crash_and_reopen();
    table.wait_ready();
    assert_eq!(table.job_text(), done);
    table.assert_no_errors();
}

#[test]
fn what_is_done_while_another_job_comes_onto_the_table_goes_to_the_job_it_was_done_on() {
    let table = Table::open_worked("estate");
    let estate = table.job_text();
    table.eval(SLOW);
    // Another job, and an edit of it at once.
    table.press("b");
    table.click("worked-van");
    let van = serde_json::Value::from(titled("van"));
    table.wait_until(
        "the van",
        &format!("JSON.parse(loomwright_job()).title === {van}"),
    );
    let (x, y) = table.part("A2");
    table.drag(&[(x, y), (x + 60.0, y + 40.0)]);
    table.wait_until("the edit", "!!JSON.parse(loomwright_state()).undo");
    let van = table.job_text();
    table.wait_kept();
    // Back to the first, and an edit of what still lies there while that is fetched.
    table.press("b");
    let place = table.wait_for("the job in the list", || {
        table
            .texts("kept-job")
            .iter()
            .position(|it| it.contains(&titled("estate")))
    });
    table.click_nth("kept-job", place);
    let (x, y) = table.part("A2");
    table.drag(&[(x, y), (x - 40.0, y + 30.0)]);
    let edited = table.job_text();
    assert_ne!(edited, van, "the van lies there yet");
    let title = serde_json::Value::from(titled("estate"));
    table.wait_until(
        "the estate again",
        &format!("JSON.parse(loomwright_job()).title === {title}"),
    );
    assert_eq!(table.job_text(), estate, "nothing of the other job went into it");
    open_kept(&table, &titled("van"));
    assert_eq!(table.job_text(), edited);
    table.assert_no_errors();
}

#[test]
fn a_new_job_without_room_is_told_goes_into_no_other_and_is_kept_once_there_is_room() {
    let table = Table::open_worked("estate");
    let estate = table.job_text();
    table.eval(
        "(() => { window.add = IDBObjectStore.prototype.add; IDBObjectStore.prototype.add = () => { \
         throw new DOMException('no room', 'QuotaExceededError') } })()",
    );
    table.press("b");
    table.click("worked-van");
    let van = serde_json::Value::from(titled("van"));
    table.wait_until(
        "the van",
        &format!("JSON.parse(loomwright_job()).title === {van}"),
    );
    let message = table.text("storage-trouble");
    assert!(message.contains("storage is full"), "{message}");
    table.eval("(() => { IDBObjectStore.prototype.add = window.add })()");
    table.open_part("LS1");
    table.fill("slip-label", "With room again");
    table.wait_until(
        "the message to be gone",
        "!document.querySelector('[data-testid=storage-trouble]')",
    );
    let van = table.job_text();
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.job_text(), van, "it is the job that was open last");
    open_kept(&table, &titled("estate"));
    assert_eq!(table.job_text(), estate);
    table.assert_no_errors();
}
