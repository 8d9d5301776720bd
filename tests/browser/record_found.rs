//! The first hours of a job, on a tablet: what is found is recorded run by run with fingers alone; a complaint is followed
//! from intake to proof; a picture is taken in.

use crate::table::Table;
use model::SheetKind;
use model::property::PropertyType;
use std::cell::Cell;

/// A tablet in the hand, and how often it was touched.
struct Tablet {
    table: Table,
    touches: Cell<usize>,
}

impl Tablet {
    fn new() -> Self {
        let mut table = Table::empty();
        table.page_mut().set_size(1180, 820);
        table.set_touch();
        Self {
            table,
            touches: Cell::new(0),
        }
    }
    /// Touches what has that `data-testid`, wherever the list has to be shifted for it.
    fn touch(&self, test_id: &str) {
        self.table.wait_until(
            test_id,
            &format!("!!document.querySelector('[data-testid=\"{test_id}\"]')"),
        );
        self.table.eval(&format!(
            "document.querySelector('[data-testid=\"{test_id}\"]').scrollIntoView({{block: 'nearest', inline: 'nearest'}})"
        ));
        let place = self.table.place(test_id);
        assert!(
            place.width >= 43.5 && place.height >= 43.5,
            "{test_id} is {} × {} px",
            place.width,
            place.height
        );
        let (x, y) = place.middle();
        self.table.tap_at(x, y);
        self.touches.set(self.touches.get() + 1);
    }
    fn runs(&self) -> usize {
        self.table
            .job()
            .sheet(SheetKind::Found)
            .map_or(0, |sheet| sheet.runs.len())
    }
    /// Records a run: from where nothing is typed when a chain goes on.
    fn record(&self, from: Option<&str>, to: &str) {
        let (before, touched) = (self.runs(), self.touches.get());
        if let Some(from) = from {
            self.table
                .eval("document.querySelector('[data-testid=record-from]').select()");
            self.table.type_text(from);
            self.touch("record-from-0");
        }
        self.table.type_text(to);
        self.touch("record-to-0");
        self.touch("record-go");
        self.table.wait_for("the run to be recorded", || {
            (self.runs() == before + 1).then_some(())
        });
        let touches = self.touches.get() - touched;
        assert!(touches <= 3, "{touches} touches for a run");
    }
}

#[test]
fn forty_found_runs_are_recorded_by_fingers_with_three_touches_each() {
    let tablet = Tablet::new();
    tablet.touch("record");
    tablet.touch("record-to-found");
    // Eight feeds, each from the battery by a fuse and a block to a load that goes to ground: five runs a feed.
    for feed in 1..=8 {
        let named = |kind: &str| format!("new {kind}");
        tablet.record(Some(if feed == 1 { "new battery" } else { "B1" }), &named("fuse"));
        tablet.record(None, &named("distribution"));
        tablet.record(None, &named("amplifier"));
        tablet.record(None, &named("ground"));
        tablet.record(Some(&format!("D{feed}")), &named("load"));
    }
    let job = tablet.table.job();
    let sheet = job.sheet(SheetKind::Found).expect("what was found");
    assert_eq!(sheet.runs.len(), 40);
    assert_eq!(sheet.parts.len(), 1 + 8 * 5);
    // One battery; every amplifier is fed, and goes to ground.
    let ends = |run: &model::Run| {
        run.ends()
            .map(|end| end.terminal().map(|at| sheet.written(at)).unwrap_or_default())
    };
    let feeds = sheet.runs.values().filter(|run| ends(run)[0] == "B1.+").count();
    assert_eq!(feeds, 8);
    let grounds = sheet
        .runs
        .values()
        .filter(|run| ends(run)[1].ends_with(".stud"))
        .count();
    assert_eq!(grounds, 8);
    // What nobody looked at is not known, and is asked for.
    assert!(
        sheet
            .runs
            .values()
            .all(|run| run.wire.size.is_unknown() && run.wire.length.is_unknown())
    );
    tablet.table.press("Escape");
    tablet.touch("thread");
    tablet.touch("thread-find-out");
    assert!(tablet.table.count("find-out-line") > 8);
    tablet.table.assert_no_errors();
}

#[test]
fn what_is_seen_of_a_run_is_told_by_large_buttons() {
    let tablet = Tablet::new();
    tablet.touch("record");
    tablet.touch("record-to-found");
    tablet.table.type_text("new battery");
    tablet.touch("record-from-0");
    tablet.table.type_text("new fuse");
    tablet.touch("record-to-0");
    for seen in ["seen-RD", "seen-chafed", "seen-twisted"] {
        tablet.touch(seen);
    }
    tablet.touch("record-go");
    tablet
        .table
        .wait_for("the run", || (tablet.runs() == 1).then_some(()));
    let job = tablet.table.job();
    let run = job
        .sheet(SheetKind::Found)
        .and_then(|it| it.run_by_tag("W1"))
        .expect("W1")
        .1;
    assert_eq!(
        (
            run.wire.jacket.print(),
            run.wire.condition.print(),
            run.from_ending.method.print()
        ),
        ("RD".to_owned(), "chafed".to_owned(), "twisted".to_owned())
    );
    // Where a run goes is not known yet: it goes somewhere. The chain goes on at the fuse.
    tablet.table.type_text("nobody knows");
    tablet.touch("record-to-0");
    tablet.touch("record-go");
    tablet
        .table
        .wait_for("the second run", || (tablet.runs() == 2).then_some(()));
    let job = tablet.table.job();
    let sheet = job.sheet(SheetKind::Found).expect("a sheet");
    let run = sheet.run_by_tag("W2").expect("W2").1;
    assert_eq!(
        run.from.terminal().map(|at| sheet.written(at)).as_deref(),
        Some("F1.out")
    );
    assert!(run.to.terminal().is_none());
    tablet.table.press("Escape");
    tablet.table.press("ctrl+z");
    tablet
        .table
        .wait_for("one run less", || (tablet.runs() == 1).then_some(()));
    tablet.table.assert_no_errors();
}

/// Chooses in a list that is a `select`.
fn choose(table: &Table, css: &str, value: &str) {
    table.eval(&format!(
        "(() => {{ const s = document.querySelector('{css}'); s.value = '{value}'; s.dispatchEvent(new Event('change', {{bubbles: true}})) }})()"
    ));
}

/// Types into a field by the name that stands before it, within the first thing of that `data-testid`.
fn put(table: &Table, within: &str, field: &str, text: &str) {
    table.eval(&format!(
        "(() => {{ const l = [...document.querySelectorAll('[data-testid={within}] label')].find(l => l.innerText.trim().startsWith('{field}')); \
         const i = l.querySelector('input, select') ?? l.parentElement.querySelector('input, select'); i.value = '{text}'; \
         i.dispatchEvent(new Event('change', {{bubbles: true}})) }})()"
    ));
}

#[test]
fn a_complaint_is_followed_from_intake_to_proof() {
    let table = Table::open_worked("van");
    table.press("c");
    table.click("thread-add-complaint");
    table.wait_until(
        "the complaint",
        "!!document.querySelector('[data-testid=complaint-line]')",
    );
    put(&table, "complaint-line", "what", "Rear left says nothing");
    table.wait_for("the words", || {
        (table.job().thread.complaints[0].words == "Rear left says nothing").then_some(())
    });
    assert_eq!(table.count("open-ends"), 1);
    // Tied to the finding that explains it.
    let silent = table
        .findings_as_native()
        .iter()
        .position(|it| it.starts_with("silent-speaker"))
        .expect("LS4 is silent");
    choose(&table, "[data-testid=tie-finding]", &silent.to_string());
    let tied = table.wait_for("the tie", || {
        let all = table.job().thread.complaints[0].explained_by.clone();
        (!all.0.is_empty()).then_some(all)
    });
    assert!(tied.print().starts_with("silent-speaker LS4"), "{}", tied.print());
    // The quote offers what the findings ask for; this one answers the complaint.
    table.click("thread-quote");
    table.click("quote-findings");
    let place = table.wait_for("the offer", || {
        table
            .job()
            .thread
            .offers
            .iter()
            .position(|offer| offer.answers.0.contains(&"C1".to_owned()))
    });
    let offers = table.job().thread.offers.len();
    assert_eq!(
        offers,
        table.findings_as_native().len(),
        "one line for each finding"
    );
    let tag = table.job().thread.offers[place].tag.clone();
    // Offered once, whatever is pressed again.
    table.click("quote-findings");
    put(&table, "thread-quote-list", "hour price", "80");
    table.wait_for("the price of an hour", || {
        table.job().thread.rates.hour.is_given().then_some(())
    });
    assert_eq!(table.job().thread.offers.len(), offers);
    // Priced, approved and done: the numbers are those of the shop.
    let line = format!("[data-testid=offer-line]:nth-of-type({})", place + 1);
    for (field, value) in [
        ("parts price", "12,50"),
        ("hours", "0.5"),
        ("decision", "approved"),
        ("done", "yes"),
    ] {
        table.eval(&format!(
            "(() => {{ const line = [...document.querySelectorAll('[data-testid=offer-line]')].find(l => l.querySelector('.thread__tag').innerText === '{tag}'); \
             line.querySelectorAll('details').forEach(d => d.open = true); \
             const l = [...line.querySelectorAll('label')].find(l => l.innerText.trim().startsWith('{field}')); \
             const i = l.querySelector('input, select') ?? l.parentElement.querySelector('input, select'); i.value = '{value}'; \
             i.dispatchEvent(new Event('change', {{bubbles: true}})) }})()"
        ));
    }
    let offer = table.wait_for("the offer to be done", || {
        let job = table.job();
        job.thread
            .offers
            .iter()
            .find(|it| it.tag == tag && it.done)
            .cloned()
    });
    let rates = table.job().thread.rates.clone();
    assert_eq!(
        offer.price(&rates).map(|it| it.print()).as_deref(),
        Some("52.50"),
        "{line}"
    );
    // The plan starts from what was found; the plug is pushed together there, and that clears the finding.
    table.press("Escape");
    table.click("fill-plan");
    table.click("sheet-plan");
    table.wait_for("the plan", || table.job().sheet(SheetKind::Plan).map(|_| ()));
    let text = table.text("sheet-plan");
    assert!(text.contains("26"), "{text}");
    table.press("c");
    table.click("thread-becomes");
    // The same numbers as on the papers.
    let job = table.job();
    let work = paperwork::Work::of(&job, SheetKind::Plan, Some(SheetKind::Found)).expect("a plan");
    let all = paperwork::what_becomes(&work);
    let told = format!(
        "{} findings cleared, {} left, {} new.",
        all.cleared.len(),
        all.left.len(),
        all.added.len()
    );
    table.wait_for("the findings", || {
        (table.text("becomes-findings") == told).then_some(())
    });
    assert!(
        table.text("becomes-counts").contains("0 removed"),
        "{}",
        table.text("becomes-counts")
    );
    table.press("Escape");
    table.open_part("P2");
    choose(&table, "[data-testid=slip] [data-testid=field-mated]", "yes");
    table.wait_for("the speaker to be heard", || {
        let silent = table
            .findings_as_native()
            .iter()
            .any(|it| it.starts_with("silent-speaker"));
        (!silent).then_some(())
    });
    // The reading that proves it: volts at the speaker's terminal, the doors open.
    table.press("Escape");
    table.press("m");
    let (x, y) = table.terminal("LS4.+");
    table.click_at(x, y);
    table.press("s");
    table.press("Escape");
    table.press("g");
    choose(&table, "[data-testid=reading-with]", "doors-open");
    choose(&table, "[data-testid=reading-proves]", "C1");
    table.wait_for("the proof", || {
        let job = table.job();
        let readings = &job.sheet(SheetKind::Plan)?.readings;
        readings
            .iter()
            .any(|it| it.proves.print() == "C1" && it.moved.is_given())
            .then_some(())
    });
    table.press("Escape");
    table.press("c");
    table.wait_until(
        "the complaints",
        "!!document.querySelector('[data-testid=complaint-line]')",
    );
    assert!(table.text("complaint-line").contains("Proven by"));
    // All that is left is to close it.
    let open = table.texts("open-ends");
    assert!(open.len() == 1 && open[0].lines().count() == 1, "{open:?}");
    put(&table, "complaint-line", "closed", "yes");
    table.wait_until(
        "nothing to be open",
        "!document.querySelector('[data-testid=open-ends]')",
    );
    table.assert_no_errors();
}

#[test]
fn a_picture_is_scaled_down_kept_with_its_part_and_undone() {
    let table = Table::open_worked("van");
    table.open_part("F1");
    table.wait_until(
        "the way in",
        "!!document.querySelector('[data-testid=add-picture]')",
    );
    // A picture of 4000 × 3000 points, as a camera makes it, put into the field that the camera fills.
    table.eval(
        "(() => { const c = document.createElement('canvas'); c.width = 4000; c.height = 3000; const x = c.getContext('2d'); \
         for (let i = 0; i < 400; i++) { x.fillStyle = `hsl(${i * 37 % 360} 60% 50%)`; x.fillRect(i * 91 % 4000, i * 57 % 3000, 300, 200) } \
         c.toBlob(blob => { const list = new DataTransfer(); list.items.add(new File([blob], 'bulkhead.jpg', {type: 'image/jpeg'})); \
         const field = document.querySelector('[data-testid=add-picture]'); field.files = list.files; \
         field.dispatchEvent(new Event('change', {bubbles: true})) }, 'image/jpeg', 0.95) })()",
    );
    table.wait_until(
        "the picture",
        "document.querySelector('[data-testid=picture] img')?.naturalWidth > 0",
    );
    assert_eq!(
        table.eval("(() => { const i = document.querySelector('[data-testid=picture] img'); return [i.naturalWidth, i.naturalHeight] })()"),
        serde_json::json!([1600, 1200])
    );
    let job = table.job();
    let (key, picture) = job.pictures.iter().next().expect("it is in the job");
    assert_eq!((key.as_str(), picture.facts.of.as_str()), ("b1", "F1"));
    assert!(picture.bytes.len() < 1_000_000, "{} bytes", picture.bytes.len());
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.job().pictures.len(), 1);
    // It stays out of what is shared, unless chosen.
    table.press("shift+l");
    table.wait_until(
        "the drawer",
        "!!document.querySelector('[data-testid=share-seen]')",
    );
    assert!(!table.text("share-seen").contains("picture"));
    table.click("show-pictures");
    table.wait_until(
        "the picture to be told",
        "document.querySelector('[data-testid=share-seen]').innerText.includes('1 picture')",
    );
    table.press("Escape");
    table.open_part("F1");
    table.wait_until("the picture", "!!document.querySelector('[data-testid=picture]')");
    table.click_nth("remove-picture", 0);
    table.wait_for("no picture", || table.job().pictures.is_empty().then_some(()));
    table.press("Escape");
    table.press("ctrl+z");
    table.wait_for("the picture again", || {
        (table.job().pictures.len() == 1).then_some(())
    });
    table.assert_no_errors();
}
