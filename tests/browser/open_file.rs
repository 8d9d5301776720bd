//! Files that people bring: damaged ones and newer ones are refused in words and the open job stays; a text opens, arranged.

use crate::table::Table;

/// Opens the file that the picker answers with, and gives what the page says to it.
fn open(table: &Table, text: &str) -> String {
    table.write_picked_file(text);
    let count = "document.querySelector('[data-testid=said]').innerText";
    let before = table.eval(count);
    table.press("ctrl+o");
    table.wait_for("the page to say how opening went", || {
        let said = table.said();
        (said.contains("brought") && said != before).then_some(said)
    })
}

#[test]
fn a_damaged_or_newer_file_is_refused_in_words_and_the_job_on_the_table_stays() {
    let table = Table::open_worked("van");
    let before = table.job_text();

    table.answer_pickers("brought-cut.json");
    let cut = &before[..before.len() / 2];
    let said = open(&table, cut);
    assert!(said.contains("was not opened"), "{said}");
    assert_eq!(table.job_text(), before);

    table.answer_pickers("brought-other.json");
    let said = open(&table, "{\"a\": \"file of something else\"}");
    assert!(said.contains("was not opened"), "{said}");
    assert_eq!(table.job_text(), before);

    // Something else altogether, one word of it: what is said has room at the foot of the sheet.
    table.answer_pickers("brought-else.txt");
    let said = open(&table, &"[".repeat(50_000));
    assert!(
        said.contains("neither a job file nor a job in the text form") && said.len() < 300,
        "{said}"
    );
    assert_eq!(table.job_text(), before);

    // As a version of some later year would write it.
    table.answer_pickers("brought-newer.json");
    let mut newer: serde_json::Value = serde_json::from_str(&before).expect("a job file is JSON");
    let version = newer["version"].as_u64().expect("a job file has a version");
    newer["version"] = (version + 1).into();
    let said = open(&table, &newer.to_string());
    assert!(
        said.contains("was not opened") && said.contains("newer"),
        "{said}"
    );
    assert_eq!(table.job_text(), before);

    // What was on the table is still worked on and kept.
    table.open_part("P2");
    table.fill("slip-label", "Still here");
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert!(table.job_text().contains("Still here"));
    table.assert_no_errors();
}

#[test]
fn a_job_written_as_text_opens_neatly_arranged() {
    let table = Table::open();
    table.answer_pickers("brought.txt");
    let text = lessons::WorkedJob::of("camper").expect("a worked job").text();
    let said = open(&table, text);
    assert!(said.contains("is on the table"), "{said}");

    let expected = testkit::job(text);
    let job = table.job();
    assert_eq!(job.title, expected.title);
    for (kind, sheet) in &expected.sheets {
        let tags = |sheet: &model::Sheet| {
            sheet
                .parts
                .values()
                .map(|part| part.tag.clone())
                .collect::<Vec<_>>()
        };
        assert_eq!(tags(&job.sheets[kind]), tags(sheet));
        assert_eq!(job.sheets[kind].runs.len(), sheet.runs.len());
    }
    table.findings_as_native();

    // Every part is in view and has a place of its own: middles at least a part's height apart at this zoom.
    let state = table.state();
    let zoom = state["zoom"].as_f64().expect("a zoom");
    let places: Vec<(String, f64, f64)> = state["parts"]
        .as_object()
        .expect("parts")
        .iter()
        .map(|(tag, at)| {
            (
                tag.clone(),
                at[0].as_f64().unwrap_or(f64::NAN),
                at[1].as_f64().unwrap_or(f64::NAN),
            )
        })
        .collect();
    assert!(places.len() > 10, "{} parts", places.len());
    for (at, (tag, x, y)) in places.iter().enumerate() {
        assert!(
            (0.0..1440.0).contains(x) && (0.0..900.0).contains(y),
            "{tag} is out of view: {x}, {y}"
        );
        for (other, other_x, other_y) in &places[at + 1..] {
            let apart = (x - other_x).hypot(y - other_y) / zoom;
            assert!(apart > 20.0, "{tag} and {other} lie over each other");
        }
    }
    table.assert_no_errors();
}
