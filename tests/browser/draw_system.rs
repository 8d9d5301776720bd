//! A small system drawn from an empty sheet by the pointer: findings come and go as it is wired, and the saved file holds
//! what was drawn.

use crate::table::{Table, ends};

#[test]
fn a_system_is_drawn_from_an_empty_sheet_by_the_pointer_and_saved_as_drawn() {
    let table = Table::empty();
    assert_eq!(table.findings_as_native(), Vec::<String>::new());

    // Parts, dragged out of the shelf.
    table.press("a");
    let battery = table.take_from_shelf("battery", (420.0, 300.0));
    let amplifier = table.take_from_shelf("amplifier", (760.0, 300.0));
    let ground = table.take_from_shelf("ground", (760.0, 560.0));
    let other_ground = table.take_from_shelf("ground", (600.0, 480.0));
    let head = table.take_from_shelf("head", (420.0, 680.0));
    let speaker = table.take_from_shelf("speaker", (980.0, 300.0));
    table.press("a");
    table.wait_until(
        "the shelf to be shut",
        "!document.querySelector('[data-testid=shelf-drawer]')",
    );
    let at = |tag: &str, terminal: &str| format!("{tag}.{terminal}");

    // The feed without a fuse: that can burn, and the page says so at once.
    let mut drawn: Vec<(String, String)> = Vec::new();
    let mut pull = |from: String, to: String| {
        table.pull(&from, &to);
        drawn.push((from, to));
        table.findings_as_native()
    };
    pull(at(&battery, "-"), at(&other_ground, "stud"));
    pull(at(&amplifier, "-"), at(&ground, "stud"));
    let bare = pull(at(&battery, "+"), at(&amplifier, "+"));
    assert!(
        bare.iter()
            .any(|finding| finding.starts_with("feed-unprotected: ")),
        "{bare:#?}"
    );

    // A fuse dropped on the run is put into it.
    let feed = table.sheet();
    let feed = feed.runs.values().last().expect("a run");
    table.press("Escape");
    table.press("a");
    let fuse = table.take_from_shelf("fuse", table.run(&feed.tag));
    table.press("a");
    let sheet = table.sheet();
    let mut wired: Vec<(String, String)> = sheet.runs.values().map(|run| ends(&sheet, run)).collect();
    drawn.pop();
    drawn.push((at(&battery, "+"), at(&fuse, "in")));
    drawn.push((at(&fuse, "out"), at(&amplifier, "+")));
    wired.sort();
    drawn.sort();
    assert_eq!(wired, drawn, "the fuse sits in the feed");
    let fused = table.findings_as_native();
    assert!(
        !fused
            .iter()
            .any(|finding| finding.starts_with("feed-unprotected: ")),
        "{fused:#?}"
    );

    // The head unit, its signal and turn-on, and the speaker.
    let mut pull = |from: String, to: String| {
        table.pull(&from, &to);
        drawn.push((from, to));
        table.findings_as_native()
    };
    pull(at(&fuse, "out"), at(&head, "30"));
    pull(at(&fuse, "out"), at(&head, "15"));
    pull(at(&head, "31"), at(&other_ground, "stud"));
    pull(at(&head, "rem"), at(&amplifier, "rem"));
    pull(at(&head, "front-l"), at(&amplifier, "in1"));
    let one_lead = pull(at(&amplifier, "out1+"), at(&speaker, "+"));
    assert!(
        one_lead
            .iter()
            .any(|finding| finding.starts_with("silent-speaker: ")),
        "{one_lead:#?}"
    );
    let both = pull(at(&amplifier, "out1-"), at(&speaker, "-"));
    assert!(
        !both.iter().any(|finding| finding.starts_with("silent-speaker: ")),
        "{both:#?}"
    );
    assert!(
        table
            .native()
            .study
            .drivers
            .values()
            .all(|driver| driver.power.0 > 0.0),
        "the speaker plays"
    );

    // Saved: the file holds what was drawn, and reads back as the same job.
    table.answer_pickers("drawn.json");
    table.press("ctrl+s");
    let saved = table.wait_for("the job to be saved", || {
        let text = table.picked_file();
        (!text.is_empty()).then_some(text)
    });
    assert_eq!(saved, table.job_text());
    let job = model::file::read(saved.as_bytes()).expect("the saved file reads strictly");
    let sheet = job.sheets.values().next().expect("one sheet");
    let mut kinds: Vec<&str> = sheet.parts.values().map(|part| part.is.word()).collect();
    kinds.sort_unstable();
    assert_eq!(
        kinds,
        [
            "amplifier",
            "battery",
            "fuse",
            "ground",
            "ground",
            "head",
            "speaker"
        ]
    );
    let mut wired: Vec<(String, String)> = sheet.runs.values().map(|run| ends(sheet, run)).collect();
    wired.sort();
    drawn.sort();
    assert_eq!(wired, drawn);
    table.screenshot("drawn-by-pointer");
    table.assert_no_errors();
}
