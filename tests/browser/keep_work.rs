//! Work is kept as it is done: a crash takes at most the gesture in hand, and two tabs on one job lose nothing.

use crate::table::Table;

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
