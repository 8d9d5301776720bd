//! Escape backs out of what the hand is doing, and the job is what it was, byte for byte.

use crate::table::Table;

/// Escape with the button still down; then the button comes up, which must do nothing either.
fn backs_out(table: &Table, during: &str, before: &str) {
    table.wait_until(
        &format!("the hand to be in {during}"),
        &format!("JSON.parse(loomwright_state()).tool === '{during}'"),
    );
    table.press("Escape");
    table.wait_until(
        &format!("Escape to end {during}"),
        "JSON.parse(loomwright_state()).tool === 'pick/idle'",
    );
    assert_eq!(table.job_text(), before, "after Escape in {during}");
    table.release();
    assert_eq!(table.job_text(), before, "after letting go of {during}");
}

#[test]
fn escape_in_the_middle_of_a_gesture_leaves_the_job_as_it_was() {
    let table = Table::open_worked("van");
    let before = table.job_text();

    // A part is carried, and put back.
    let (x, y) = table.part("A1");
    table.drag_and_hold(&[(x, y), (x + 70.0, y + 50.0)]);
    assert_ne!(table.part("A1"), (x, y), "the part follows the hand");
    backs_out(&table, "pick/carrying", &before);
    assert_eq!(table.part("A1"), (x, y), "the part is back in its place");

    // A run is pulled, and let go of over the terminal that it would have landed on.
    table.drag_and_hold(&[table.terminal("H1.rem"), table.terminal("A1.rem")]);
    backs_out(&table, "pull/drawing", &before);

    // A part is taken from the shelf, and given back.
    table.press("a");
    let (x, y) = table.place("shelf-fuse").middle();
    table.drag_and_hold(&[(x, y), (700.0, 500.0)]);
    backs_out(&table, "place/holding", &before);
    assert_eq!(
        table.state()["undo"],
        serde_json::Value::Null,
        "nothing was done, so there is nothing to undo"
    );
    table.assert_no_errors();
}
