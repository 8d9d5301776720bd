//! The exercise: a learner does it with the keyboard alone, results stay on the device; an instructor makes a lesson of a job, and
//! a class gets it by a link or a file.

use crate::accessible::{Found, look};
use crate::table::Table;
use loomwright_tests::browser::{Page, Scheme, Site};
use serde_json::Value;
use std::time::Duration;

/// A fault on the radio of this lesson, and what it is called.
const TIED: &str = "#lesson=tied-outputs/exercise";

fn opened(path: &str) -> Page {
    let page = Page::open_on(Site::built_page(), path);
    until_exercise(&page);
    page
}

fn until_exercise(page: &Page) {
    page.wait_at_most(Duration::from_secs(90), "the exercise", || {
        (page.count("exercise") == 1 && page.eval("typeof loomwright_over") == "function").then_some(())
    });
}

/// What the drawing of the exercise says of itself.
fn drawing(page: &Page) -> Value {
    let text = page.eval("loomwright_over()");
    serde_json::from_str(text.as_str().unwrap_or_default()).unwrap_or_default()
}

/// Where a part lies on the screen.
fn part(page: &Page, tag: &str) -> (f64, f64) {
    let at = &drawing(page)["parts"][tag];
    (
        at[0].as_f64().unwrap_or_default(),
        at[1].as_f64().unwrap_or_default(),
    )
}

/// The test id of what has the focus, or its id.
fn in_focus(page: &Page) -> String {
    let focus = page.eval("document.activeElement.dataset.testid || document.activeElement.id || ''");
    focus.as_str().unwrap_or_default().to_owned()
}

/// Goes on by the Tab key until something has the focus.
fn tab_to(page: &Page, what: &str) {
    for _ in 0..60 {
        if in_focus(page) == what {
            return;
        }
        page.press("tab");
    }
    panic!("the Tab key does not lead to {what}");
}

/// Walks by keys until the drawing's keyboard stands on a part.
fn walk_to(page: &Page, tag: &str) {
    for _ in 0..40 {
        if drawing(page)["focus"] == tag {
            return;
        }
        page.press("]");
    }
    panic!("the keys do not lead to {tag}");
}

/// Marks the part that the keyboard stands on.
fn mark(page: &Page, typed: &str) {
    page.press("enter");
    page.wait_for("the reasons", || (in_focus(page) == "reason-field").then_some(()));
    page.type_text(typed);
    page.press("enter");
    page.wait_for("the drawing again", || {
        (in_focus(page) == "board-over").then_some(())
    });
}

#[test]
fn a_learner_does_the_exercise_with_the_keyboard_alone() {
    let page = opened(TIED);
    // Nothing tells the answer: no findings, no overlays, none of the words of the lesson.
    assert_eq!(drawing(&page)["findings_count"], 0);
    page.press("4");
    assert_eq!(drawing(&page)["overlay"], "No overlay");
    let told = page.text("paper");
    assert!(
        !told.contains("Output touches chassis") && !told.contains("protect"),
        "{told}"
    );
    assert_eq!(in_focus(&page), "board-over");

    walk_to(&page, "H1");
    mark(&page, "touches");
    walk_to(&page, "LS1");
    mark(&page, "overpow");
    walk_to(&page, "E1");
    page.press("enter");
    page.wait_for("the reasons", || {
        (in_focus(&page) == "reason-field").then_some(())
    });
    page.type_text("nothing is called so");
    page.press("enter");
    assert_eq!(in_focus(&page), "reason-field", "no reason, no mark");
    page.press("escape");
    page.wait_for("the drawing again", || {
        (in_focus(&page) == "board-over").then_some(())
    });
    let marks = page.texts("marked");
    assert!(
        marks.len() == 2 && marks[0].contains("H1") && marks[0].contains("Output touches chassis"),
        "{marks:?}"
    );
    assert_eq!(page.count("badge"), 2);

    // A third one is put and taken back again.
    walk_to(&page, "LS2");
    mark(&page, "overpow");
    assert_eq!(page.count("marked"), 3);
    for _ in 0..3 {
        tab_to(&page, "take-back");
        page.press("tab");
    }
    page.press("shift+tab");
    assert_eq!(in_focus(&page), "take-back");
    page.press("enter");
    page.wait_for("two marks", || (page.count("marked") == 2).then_some(()));

    tab_to(&page, "learner");
    page.type_text("Row three");
    tab_to(&page, "hand-in");
    page.press("enter");
    page.wait_for("the outcome", || (in_focus(&page) == "outcome").then_some(()));
    assert_eq!(page.text("outcome"), "1 of 1 found");
    assert!(
        page.text("found").contains("Output touches chassis"),
        "{}",
        page.text("found")
    );
    let wrong = page.texts("accused").join("\n");
    assert!(
        wrong.contains("Wrongly accused") && wrong.contains("LS1"),
        "{wrong}"
    );
    // By shape and word on the drawing too.
    let badges = page.texts("badge");
    assert!(
        badges.contains(&"Found".to_owned()) && badges.contains(&"Wrong".to_owned()),
        "{badges:?}"
    );
    assert_eq!(
        page.eval(
            "new Set([...document.querySelectorAll('.badge path')].map(it => it.getAttribute('d'))).size"
        ),
        2
    );
    page.screenshot("exercise-outcome");

    // The score is shown when it is asked for.
    assert_eq!(page.count("points"), 0);
    tab_to(&page, "score");
    page.press("enter");
    page.wait_for("the points", || (page.count("points") == 1).then_some(()));
    assert_eq!(page.text("points"), "Points: 0 of 1");
    tab_to(&page, "again");
    page.press("enter");
    page.wait_for("a new try", || (page.count("hand-in") == 1).then_some(()));
    assert_eq!((page.count("marked"), page.count("badge")), (0, 0));
    page.assert_no_errors();
}

#[test]
fn results_stay_on_the_device_are_handed_out_and_go_when_asked() {
    let folder = tempfile::tempdir().expect("a folder");
    let page = opened(TIED);
    page.download_into(folder.path());
    page.click("learner");
    page.type_text("Bench two");
    page.click("hand-in");
    page.wait_for("the outcome", || (page.count("outcome") == 1).then_some(()));
    assert!(page.text("missed").contains("Output touches chassis"));
    page.reload();
    until_exercise(&page);
    page.eval("document.querySelector('[data-testid=results-fold]').open = true");
    page.wait_for("the result", || (page.count("result") == 1).then_some(()));
    let told = page.text("result");
    assert!(
        told.contains("Bench two") && told.contains("0 found, 1 missed"),
        "{told}"
    );
    page.click("results-json");
    let file = page.downloaded(folder.path(), "-results.json");
    let text = std::fs::read_to_string(file).expect("a file");
    // Read by a general-purpose reader of JSON.
    let value: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(
        (&value[0]["learner"], &value[0]["of"]),
        (&"Bench two".into(), &1.into())
    );
    assert_eq!(value[0]["missed"][0]["reason"], "output-touches-chassis");
    page.click("results-text");
    let file = page.downloaded(folder.path(), "-results.txt");
    let text = std::fs::read_to_string(file).expect("a file");
    assert!(
        text.contains("Bench two") && text.contains("Missed: Output touches chassis"),
        "{text}"
    );
    page.click("results-delete");
    page.wait_for("no result", || (page.count("result") == 0).then_some(()));
    page.reload();
    until_exercise(&page);
    page.eval("document.querySelector('[data-testid=results-fold]').open = true");
    std::thread::sleep(Duration::from_millis(500));
    assert_eq!(page.count("result"), 0);
    page.assert_no_errors();
}

#[test]
fn where_nothing_can_be_kept_the_exercise_goes_on_and_says_so() {
    let page = Page::open_on(Site::built_page(), "#lessons");
    page.run_first("Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('not here', 'SecurityError'); } });");
    page.reload();
    page.wait_at_most(Duration::from_secs(90), "the list", || {
        (page.count("lessons") == 1).then_some(())
    });
    page.eval(&format!("void (location.hash = '{TIED}')"));
    until_exercise(&page);
    page.click("hand-in");
    page.wait_for("the message", || {
        page.text("said").contains("keeps no data").then_some(())
    });
    assert_eq!(page.text("outcome"), "0 of 1 found");
    page.eval("document.querySelector('[data-testid=results-fold]').open = true");
    page.wait_for("the result to hand out", || {
        (page.count("result") == 1).then_some(())
    });
}

/// Makes a lesson of the van and gives its link, without the address.
fn lesson_of_the_van(table: &Table) -> String {
    table.press("shift+L");
    table.wait_for("Share", || (table.count("make-lesson") == 1).then_some(()));
    table.eval("void document.querySelector('[data-testid=make-lesson]').scrollIntoView()");
    table.click("make-lesson");
    table.wait_for("the form", || {
        (table.count("writing") == 1 && table.eval("typeof loomwright_over") == "function").then_some(())
    });
    let lacks = table.text("own-lacks");
    assert!(lacks.contains("It has no story"), "{lacks}");
    table.click("own-story");
    table.type_text("It was handed over on Friday. On Monday it would not start.");
    // A fault that no check sees, by the drawing, in words of one's own.
    let at = part(table, "E2");
    table.click_at(at.0, at.1);
    table.wait_for("the reasons", || {
        (in_focus(table) == "reason-field").then_some(())
    });
    table.type_text("Under the carpet");
    table.press("enter");
    table.wait_for("its words", || (in_focus(table) == "fault-words").then_some(()));
    assert!(table.text("own-lacks").contains("no explanation"));
    table.type_text("Water stands there.");
    table.wait_for("a whole lesson", || (table.count("own-whole") == 1).then_some(()));
    table.eval("void document.querySelector('[data-testid=own-link]').scrollIntoView()");
    table.click("own-link");
    table.wait_for("the link", || (table.count("share-link") == 1).then_some(()));
    let link = table.eval("document.querySelector('[data-testid=share-link]').value");
    let link = link.as_str().unwrap_or_default().to_owned();
    let (_, fragment) = link.split_once('#').unwrap_or_else(|| panic!("{link}"));
    format!("#{fragment}")
}

#[test]
fn an_instructor_makes_a_lesson_and_a_class_gets_it_by_link_and_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let table = Table::open_worked("van");
    table.download_into(folder.path());
    let link = lesson_of_the_van(&table);
    table.screenshot("own-lesson");
    let lesson = lessons::open_lesson(&link).expect("opens natively too");
    assert_eq!(lesson.faults.len(), 1);
    assert!(lesson.job.vehicle.drawn_by.is_empty(), "names stay behind");
    table.eval("void document.querySelector('[data-testid=own-file]').scrollIntoView()");
    table.click("own-file");
    let file = table.downloaded(folder.path(), ".lesson");
    let text = std::fs::read_to_string(file).expect("a file");
    assert_eq!(lessons::read(&text).as_ref(), Ok(&lesson));
    // It is kept: after a reload its form is as it was left.
    table.reload();
    table.wait_at_most(Duration::from_secs(90), "the form", || {
        (table.count("writing") == 1).then_some(())
    });
    let story = table.eval("document.querySelector('[data-testid=own-story]').value");
    assert!(story.as_str().is_some_and(|it| it.contains("Monday")), "{story}");
    table.assert_no_errors();

    // A learner with a clean browser.
    let page = opened(&link);
    assert!(page.text("paper").contains("On Monday it would not start"));
    let at = part(&page, "E2");
    page.click_at(at.0, at.1);
    page.wait_for("the reasons", || {
        (in_focus(&page) == "reason-field").then_some(())
    });
    page.type_text("carpet");
    page.press("enter");
    page.click("hand-in");
    page.wait_for("the outcome", || (page.count("outcome") == 1).then_some(()));
    assert!(
        page.text("found").contains("Water stands there"),
        "{}",
        page.text("found")
    );
    page.assert_no_errors();

    // By file: dropped on the list of lessons.
    let page = Page::open_on(Site::built_page(), "#lessons");
    page.wait_at_most(Duration::from_secs(90), "the list", || {
        (page.count("lessons") == 1).then_some(())
    });
    drop_file(&page, "broken.lesson", "lesson mine\nstroy\n  x\n");
    page.wait_for("why not", || {
        (page.count("own-list-trouble") == 1 && page.text("own-list-trouble").contains("story")).then_some(())
    });
    drop_file(&page, "mine.lesson", &text);
    until_exercise(&page);
    page.eval("void (location.hash = '#lessons')");
    page.wait_for("it in the list", || (page.count("own-entry") == 1).then_some(()));
}

/// Drops a file on the page.
fn drop_file(page: &Page, name: &str, text: &str) {
    page.eval(&format!(
        "(() => {{ const all = new DataTransfer(); all.items.add(new File([{}], '{name}')); \
         document.body.dispatchEvent(new DragEvent('drop', {{ dataTransfer: all, bubbles: true, cancelable: true }})); return 0; }})()",
        Value::from(text)
    ));
}

#[test]
fn a_damaged_lesson_link_says_so() {
    let fragment = lessons::lesson_fragment(&lessons::LESSONS[0].lesson()).expect("fits");
    let page = Page::open_on(
        Site::built_page(),
        &format!("#{}", &fragment[..fragment.len() - 9]),
    );
    page.wait_at_most(Duration::from_secs(90), "the message", || {
        (page.count("no-lesson") == 1).then_some(())
    });
    assert!(
        page.text("no-lesson").contains("cut short"),
        "{}",
        page.text("no-lesson")
    );
    page.assert_no_errors();
}

#[test]
fn exercise_and_form_are_accessible() {
    let mut found = Found::default();
    let mut page = opened(TIED);
    for scheme in [Scheme::Light, Scheme::Dark] {
        page.set_scheme(scheme);
        look(&page, &format!("the exercise, {scheme:?}"), &mut found);
        let at = part(&page, "H1");
        page.click_at(at.0, at.1);
        page.wait_for("the reasons", || (page.count("marking") == 1).then_some(()));
        look(&page, &format!("the reasons, {scheme:?}"), &mut found);
        // Who clicks and presses Enter, as the page says, has not chosen a reason yet.
        page.wait_for("the filter", || (in_focus(&page) == "reason-field").then_some(()));
        page.press("enter");
        assert_eq!((page.count("marking"), page.count("marked")), (1, 0));
        page.press("down");
        page.press("enter");
        page.wait_for("the mark", || (page.count("marked") == 1).then_some(()));
        page.click("hand-in");
        page.eval("document.querySelector('[data-testid=results-fold]').open = true");
        page.wait_for("a result", || (page.count("result") > 0).then_some(()));
        look(&page, &format!("the outcome, {scheme:?}"), &mut found);
        targets(&page);
        page.click("again");
    }
    page.set_size(820, 1180);
    look(&page, "the exercise on a tablet held upright", &mut found);
    let mut table = Table::open_worked("van");
    lesson_of_the_van(&table);
    table.eval("document.querySelectorAll('.paper__fold').forEach(it => it.open = true)");
    for add in ["add-look", "add-break", "add-question"] {
        table.eval(&format!(
            "void document.querySelector('[data-testid={add}]').click()"
        ));
    }
    for scheme in [Scheme::Light, Scheme::Dark] {
        table.page_mut().set_scheme(scheme);
        look(&table, &format!("the form of a lesson, {scheme:?}"), &mut found);
    }
    targets(&table);
    table.eval("void (location.hash = '#lessons')");
    table.wait_for("the list", || (table.count("own-entry") == 1).then_some(()));
    look(&table, "the list with an own lesson", &mut found);
}

/// What can be pressed on the paper is at least 44 px high (look and handling of this program).
fn targets(page: &Page) {
    let small = page.eval(
        "[...document.querySelectorAll('.paper button, .paper input:not([type=checkbox]), .paper textarea, .paper select, .paper summary, .paper label:has(input[type=checkbox]), .over__head button, .over__tools button')]
            .filter(it => it.getClientRects().length && it.getBoundingClientRect().height < 43.5).map(it => it.outerHTML.slice(0, 90))",
    );
    assert_eq!(small, Value::Array(Vec::new()), "{small}");
}

/// What the form says under a test id, once it says anything.
fn option_of(table: &Table, list: &str) -> String {
    let value = table.eval(&format!("document.querySelector('[data-testid={list}]').value"));
    value.as_str().unwrap_or_default().to_owned()
}

/// Chooses in a list as a hand does: the list says that it was changed.
fn choose(table: &Table, list: &str, value: &str) {
    table.eval(&format!(
        "(() => {{ const list = document.querySelector('[data-testid={list}]'); list.value = '{value}'; \
         list.dispatchEvent(new Event('change', {{ bubbles: true }})); return 0; }})()"
    ));
}

#[test]
fn an_unfinished_lesson_of_two_sheets_outlives_the_page() {
    let table = Table::open_worked("van");
    table.click("fill-plan");
    table.wait_for("the plan to be filled", || {
        (table.count("under-plan") == 1).then_some(())
    });
    table.press("shift+L");
    table.wait_for("Share", || (table.count("make-lesson") == 1).then_some(()));
    table.eval("void document.querySelector('[data-testid=make-lesson]').scrollIntoView()");
    table.click("make-lesson");
    let form = || {
        table.wait_at_most(Duration::from_secs(90), "the form", || {
            (table.count("own-sheet-bad") == 1 && table.eval("typeof loomwright_over") == "function")
                .then_some(())
        });
    };
    form();
    assert_eq!(
        [
            option_of(&table, "own-sheet-bad"),
            option_of(&table, "own-sheet-good")
        ],
        ["found", "plan"]
    );
    table.click("own-story");
    table.type_text("Half of a sto");
    // The other way round: what was written stays.
    choose(&table, "own-sheet-bad", "plan");
    table.wait_for("the list again", || {
        (in_focus(&table) == "own-sheet-bad").then_some(())
    });
    assert_eq!(
        [
            option_of(&table, "own-sheet-bad"),
            option_of(&table, "own-sheet-good")
        ],
        ["plan", "found"]
    );
    // A break of which nothing is said yet but what breaks: what follows is told.
    table.eval("document.querySelector('[data-testid=own-break]').open = true");
    table.click("add-break");
    table.eval("void document.querySelector('[data-testid=break-says]').scrollIntoView({ block: 'center' })");
    let at = part(&table, "F1");
    table.click_at(at.0, at.1);
    // A click opens the form of a fault; it is shut again, and the fuse stays picked.
    table.wait_for("the form of a fault", || {
        (table.count("adding") == 1).then_some(())
    });
    table.press("Escape");
    table.wait_for("the fuse to be named", || {
        (table.count("add-thing") == 1).then_some(())
    });
    table.click("add-thing");
    table.wait_for("what follows", || (table.count("follows") == 1).then_some(()));
    let told = table.text("follows");
    assert!(told.contains("Bad") && told.contains("Good"), "{told}");
    table.screenshot("own-break");
    table.click("add-break");
    table.wait_for("a second one", || (table.count("take-out") == 2).then_some(()));
    std::thread::sleep(Duration::from_millis(300));
    table.reload();
    form();
    assert_eq!(option_of(&table, "own-story"), "Half of a sto");
    assert_eq!(option_of(&table, "own-sheet-bad"), "plan");
    table.eval("document.querySelector('[data-testid=own-break]').open = true");
    table.wait_for("both breaks", || (table.count("take-out") == 2).then_some(()));
    assert!(table.text("follows").contains("Bad"));
    table.assert_no_errors();
}
