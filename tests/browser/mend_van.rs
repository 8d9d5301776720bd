//! Putting the trades van right by hand: findings vanish as their causes do, come back with undo, and are still gone after
//! the page was loaded again.

use crate::table::Table;

/// Sum of the numbers that a text begins its words with: `9 Stop 12 Fix 0 Tidy` gives 21.
fn numbers_in(text: &str) -> usize {
    text.split(|c: char| !c.is_ascii_digit())
        .filter_map(|digits| digits.parse::<usize>().ok())
        .sum()
}

/// Findings of a check.
fn of<'a>(findings: &'a [String], check: &str) -> Vec<&'a String> {
    let start = format!("{check}: ");
    findings
        .iter()
        .filter(|finding| finding.starts_with(&start))
        .collect()
}

#[test]
fn three_faults_of_the_van_are_mended_by_hand_and_stay_mended() {
    let table = Table::open_worked("van");
    let at_first = table.findings_as_native();
    // The margin shows as many: single notes, and folds that tell how many they hold.
    let folded: usize = table
        .texts("note-fold")
        .iter()
        .filter_map(|text| text.split_whitespace().next()?.parse::<usize>().ok())
        .sum();
    assert_eq!(
        table.count("note") + folded,
        at_first.len(),
        "notes in the margin"
    );
    assert_eq!(
        numbers_in(&table.text("grades")),
        at_first.len(),
        "{}",
        table.text("grades")
    );
    assert!(
        at_first.len() >= 15,
        "the van has many faults: {}",
        at_first.len()
    );

    // A finding in hand stands on its slip, and is not written once more at the foot; who listens hears it there.
    table.press("n");
    table.wait_until(
        "the finding to be told to who listens",
        "document.querySelector('[data-testid=said]').matches('.unseen:not(:empty)')",
    );
    assert!(table.text("said").contains("Stop"), "{}", table.text("said"));
    table.press("Escape");
    table.press("Home");

    // One: the plug behind the rear speaker is apart. It is put together on its slip.
    assert_eq!(of(&at_first, "silent-speaker").len(), 1);
    table.open_part("P2");
    table.click("field-mated");
    table.type_text("yes");
    table.press("Enter");
    let plugged = table.findings_as_native();
    assert_eq!(of(&plugged, "silent-speaker").len(), 0, "{plugged:#?}");
    table.click("close");

    // Two: the fuse of the third output lets more through than its wire bears (17 A); 15 A is the next of ISO 8820.
    let too_large = |findings: &[String]| {
        of(findings, "fuse-outsizes-wire")
            .iter()
            .filter(|finding| finding.contains("D1.out3"))
            .count()
    };
    assert_eq!(too_large(&plugged), 1);
    table.open_part("D1");
    table.fill("field-fuses", "60A,30A,15A,-");
    let fused = table.findings_as_native();
    assert_eq!(too_large(&fused), 0, "{fused:#?}");
    table.click("close");

    // Three: the front left speaker moves against the right one. Both leads come off and are pulled anew, plus to plus.
    assert_eq!(of(&fused, "reversed-speaker").len(), 1);
    for run in ["W21", "W22"] {
        let (x, y) = table.run(run);
        table.click_at(x, y);
        table.wait_until(
            &format!("{run} to be picked"),
            &format!("JSON.parse(loomwright_state()).picked_runs.join() === '{run}'"),
        );
        table.press("Delete");
    }
    table.pull("A2.out1+", "LS2.+");
    let half_way = table.findings_as_native();
    assert!(
        of(&half_way, "silent-speaker")
            .iter()
            .any(|finding| finding.contains("LS2")),
        "one lead does not make a speaker play: {half_way:#?}"
    );
    table.pull("A2.out1-", "LS2.-");
    let mended = table.findings_as_native();
    assert_eq!(of(&mended, "reversed-speaker").len(), 0, "{mended:#?}");
    assert_eq!(of(&mended, "silent-speaker").len(), 0, "{mended:#?}");

    // Undone, the last lead is off again and the finding is back; done again, it is gone.
    table.press("ctrl+z");
    assert_eq!(table.findings_as_native(), half_way);
    table.press("ctrl+shift+Z");
    assert_eq!(table.findings_as_native(), mended);

    // All of it is there after the page was loaded again.
    let before = table.job_text();
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.job_text(), before);
    assert_eq!(table.findings_as_native(), mended);
    table.assert_no_errors();
}
