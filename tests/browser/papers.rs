//! The papers of a job: what the page shows and hands out is what the same job gives outside of the browser; checklists are
//! ticked by fingers and stay ticked; a paper is printed alone.

use crate::table::Table;
use paperwork::{List, Terms, Work, csv};

#[test]
fn lists_are_those_of_the_job_and_are_handed_out_as_tables() {
    let table = Table::open_worked("hatchback");
    let folder = tempfile::TempDir::new().expect("a folder");
    table.download_into(folder.path());
    table.press("y");
    table.wait_until("the papers", "!!document.querySelector('[data-testid=paper]')");
    let job = table.job();
    let work = Work::of(&job, model::SheetKind::Plan, None).expect("a plan");
    let words = words::Words::default();
    for list in List::ALL {
        table.click(&format!("paper-{}", list.word()));
        let native = paperwork::lists(&work, &Terms::default(), &[*list])
            .pop()
            .expect("a list");
        table.wait_until(
            list.word(),
            &format!(
                "document.querySelector('[data-testid=paper] h2').innerText === {:?}",
                words.say(&list.title())
            ),
        );
        let rows = table.count("paper-row") + table.count("paper-step");
        assert_eq!(rows, native.rows.len(), "{}", list.word());
        let shown = table.text("paper");
        for row in native
            .without(&["article", "step-name", "phase", "for", "done"])
            .shown(&words)
        {
            for cell in row.iter().filter(|cell| !cell.is_empty()) {
                assert!(shown.contains(cell.trim()), "{}: {cell}", list.word());
            }
        }
    }
    table.click("paper-cut");
    table.click("paper-csv");
    let file = table.downloaded(folder.path(), "csv");
    let text = std::fs::read_to_string(file).expect("the table file");
    let native = paperwork::lists(&work, &Terms::default(), &[List::Cut])
        .pop()
        .expect("a list");
    assert_eq!(
        text.trim_start_matches('\u{feff}'),
        csv(&native, &words).trim_start_matches('\u{feff}')
    );
    // The handover is the document that the command line makes, private things left out.
    table.click("paper-handover");
    table.click("handover-make");
    let file = table.downloaded(folder.path(), "html");
    let asked = paperwork::Asked {
        kind: Some(model::SheetKind::Plan),
        ..paperwork::Asked::default()
    };
    let native = paperwork::handover(&job, asked, &words).expect("a plan").0;
    assert_eq!(std::fs::read_to_string(file).expect("the handover"), native);
    table.assert_no_errors();
}

#[test]
fn a_checklist_is_ticked_by_fingers_and_printed_alone() {
    let mut table = Table::open_worked("hatchback");
    table.page_mut().set_size(1180, 820);
    table.set_touch();
    table.press("y");
    table.click("paper-strip-out");
    table.wait_until(
        "the steps",
        "document.querySelectorAll('[data-testid=paper-step]').length > 5",
    );
    let done = table.job().thread.done.len();
    let (x, y) = table.place_of("paper-step", 1).middle();
    table.tap_at(x, y);
    table.wait_for("the tick", || {
        (table.job().thread.done.len() == done + 1).then_some(())
    });
    // The care stands above the steps, whatever is ticked.
    assert!(
        table
            .text("paper")
            .contains("Isolate the battery before any work")
    );
    table.press("Escape");
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.job().thread.done.len(), done + 1);
    table.press("y");
    table.click("paper-strip-out");
    table.eval("document.documentElement.setAttribute('data-printing', 'paper')");
    table.set_print(true);
    let seen = |what: &str| {
        table.eval(&format!(
            "document.querySelector('{what}').getBoundingClientRect().height > 0"
        ))
    };
    assert_eq!(seen("[data-testid=paper]"), true);
    assert_eq!(seen("[data-testid=board]"), false);
    assert_eq!(seen(".papers__tabs"), false);
    table.set_print(false);
    table.eval("document.documentElement.removeAttribute('data-printing')");
    table.press("Escape");
    table.press("ctrl+z");
    table.assert_no_errors();
}

#[test]
fn how_a_channel_is_set_is_told_on_the_slip_and_stands_on_the_settings_sheet() {
    let table = Table::open_worked("estate");
    table.open_part("A2");
    table.wait_until(
        "the way in",
        "!!document.querySelector('[data-testid=add-tuning]')",
    );
    let put = |css: &str, text: &str| {
        table.eval(&format!(
            "(() => {{ document.querySelector('[data-testid=tunings]').open = true; const i = document.querySelector('{css}'); \
             i.value = '{text}'; i.dispatchEvent(new Event('change', {{bubbles: true}})) }})()"
        ));
    };
    put("[data-testid=add-tuning]", "1");
    table.wait_until("the channel", "!!document.querySelector('[data-testid=tuning]')");
    put("[data-testid=tuning] [data-testid=field-target-volts]", "17.5");
    put("[data-testid=tuning] [data-testid=field-gain]", "a quarter turn");
    table.wait_for("both", || {
        let job = table.job();
        let tunings = &job.sheet(model::SheetKind::Plan)?.tunings;
        let told = tunings.iter().find(|it| it.of == "A2" && it.channel == "1")?;
        (told.target.is_given() && told.gain == "a quarter turn").then_some(())
    });
    table.press("Escape");
    table.press("y");
    table.click("paper-settings");
    table.wait_until(
        "the settings sheet",
        "document.querySelector('[data-testid=paper]').innerText.includes('a quarter turn')",
    );
    assert!(table.text("paper").contains("17.5"));
    table.assert_no_errors();
}
