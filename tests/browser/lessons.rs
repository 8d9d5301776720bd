//! A lesson presented: found and opened by keys, gone through to its end at the size of a projector, broken in both versions
//! at once, pointed at; both pictures are of one scale, nothing is stored, the table beneath loses nothing.

use crate::reader::german;
use crate::table::Table;
use ::lessons::{Lesson, Step, Version};
use loomwright_tests::browser::Page;
use serde_json::json;
use std::time::Duration;

const KEY: &str = "daisy-chained-grounds";

fn lesson(key: &str) -> Lesson {
    ::lessons::BuiltIn::of(key).expect("built in").lesson()
}

/// A page of the lessons at the size of a projector; the table is not laid.
fn open(fragment: &str, size: (u32, u32)) -> Page {
    let mut page = Page::open(fragment);
    page.wait_at_most(Duration::from_secs(90), "the lessons", || {
        (page.count("lessons") + page.count("lesson") == 1).then_some(())
    });
    page.set_size(size.0, size.1);
    page.wait_until("the new size", &format!("innerWidth === {}", size.0));
    page
}

/// Scale and origin of a picture, and its size: pixels for a board unit, the board point in its upper left corner.
fn framed(page: &Page, version: &str) -> [f64; 5] {
    let script = format!(
        "(() => {{ const c = document.querySelector('[data-testid=picture-{version}]'); \
         return [+c.dataset.scale, +c.dataset.left, +c.dataset.top, c.clientWidth, c.clientHeight]; }})()"
    );
    let numbers = page.eval(&script);
    std::array::from_fn(|n| numbers[n].as_f64().unwrap_or(f64::NAN))
}

/// Nothing sticks out to the right, and what is to be pressed is large enough.
fn assert_fits(page: &Page, what: &str) {
    assert_eq!(
        page.eval("document.documentElement.scrollWidth <= innerWidth && document.documentElement.scrollHeight <= innerHeight"),
        true,
        "{what}: the page is larger than the window"
    );
    let small = page.eval(
        "[...document.querySelectorAll('main button')].filter(b => b.offsetWidth > 0).map(b => [b.textContent, b.getBoundingClientRect()])
            .filter(([_, r]) => r.height < 44 || r.width < 44 || r.right > innerWidth + 0.5 || r.left < 0).map(([t, r]) => [t, r.width, r.height, r.right])",
    );
    assert_eq!(small, json!([]), "{what}: too small, or out of the window");
}

#[test]
fn a_lesson_is_found_and_gone_through_by_keys_alone() {
    let table = Table::open_worked("van");
    let (job, undo) = {
        table.press("ctrl+a");
        table.press("shift+Right");
        table.wait_kept();
        (table.job_text(), table.state()["undo"].clone())
    };
    assert!(undo.is_string(), "something to undo: {undo}");
    let stored = "indexedDB.databases().then(all => all.map(one => one.name).sort().join())";
    let before = table.eval(stored);
    // From the table: Ask finds the lessons.
    table.press("/");
    table.type_text("lessons");
    table.press("Enter");
    table.wait_until("the list", "!!document.querySelector('[data-testid=lessons]')");
    assert_eq!(table.eval("location.hash"), "#lessons");
    assert_eq!(
        table.eval("document.querySelectorAll('.lessons__entry').length"),
        ::lessons::LESSONS.len()
    );
    let place = ::lessons::LESSONS
        .iter()
        .position(|built_in| built_in.key == KEY)
        .expect("built in");
    for _ in 0..place {
        table.press("Down");
    }
    table.press("Enter");
    table.wait_until("the lesson", &format!("location.hash === '#lesson={KEY}'"));
    table.wait_for("the stage", || (table.count("lesson") == 1).then_some(()));

    // To its end by the key of a presenter's clicker.
    let lesson = lesson(KEY);
    let told = ::lessons::Told::of(&lesson);
    let words = words::Words::english();
    let count = lesson.steps().len();
    let mut seen = 0;
    for (place, step) in lesson.steps().into_iter().enumerate() {
        assert_eq!(table.text("place"), format!("{} / {count}", place + 1));
        let text = match step {
            Step::Story(n) => lesson.story[n].clone(),
            Step::Look(n) => lesson.looks[n].says.clone(),
            Step::Break(n) => {
                assert!(!table.text("told").contains(&told.tell(
                    &lesson.breaks[n].says,
                    None,
                    &words::Words::english()
                )));
                table.press("pagedown");
                lesson.breaks[n].says.clone()
            }
            Step::Question(n) => {
                assert_eq!(table.count("because"), 0, "the answer waits");
                table.press("pagedown");
                assert_eq!(
                    table.text("because"),
                    told.tell(&lesson.questions[n].why, None, &words::Words::english())
                );
                lesson.questions[n].asks.clone()
            }
            Step::Why(n) => lesson.why(&words)[n].clone(),
            Step::Sources => {
                let care = words.say(&checks::care());
                assert!(table.text("told").contains(&care));
                lesson.all_sources(&words)[0].clone()
            }
        };
        let text = told.tell(&text, None, &words::Words::english());
        assert!(table.text("told").contains(&text), "{step:?}: {text}");
        assert!(
            table
                .text("spoken")
                .contains(&format!("Step {} of {count}", place + 1))
        );
        seen += 1;
        table.press("pagedown");
    }
    assert_eq!(seen, count);
    assert_eq!(table.text("place"), format!("{count} / {count}"));
    table.press("left");
    assert_eq!(table.text("place"), format!("{} / {count}", count - 1));

    // Back to the table, which is as it was: the job, and what can be undone.
    table.press("Escape");
    table.wait_for("the list", || (table.count("lessons") == 1).then_some(()));
    table.press("Escape");
    table.wait_until("the table", "!document.querySelector('[data-testid=lessons]')");
    assert_eq!(table.eval("location.hash"), "");
    assert_eq!(table.job_text(), job);
    assert_eq!(table.state()["undo"], undo);
    assert_eq!(table.eval(stored), before, "nothing new is stored");
    table.press("ctrl+z");
    table.wait_for("the step undone", || (table.job_text() != job).then_some(()));
    table.assert_no_errors();
}

#[test]
fn both_versions_have_one_scale_and_a_part_stands_at_the_same_place() {
    for (key, size) in [
        (KEY, (1280, 720)),
        ("permanent-turn-on", (1280, 720)),
        ("ring-feed", (820, 1180)),
        ("second-battery", (1600, 1000)),
    ] {
        let page = open(&format!("#lesson={key}"), size);
        let lesson = lesson(key);
        let sheets = Version::BOTH.map(|version| lesson.sheet(version));
        for (step, closer) in [("", false), ("right", false), ("z", true)] {
            if !step.is_empty() {
                page.press(step);
            }
            let what = format!("{key} at {size:?}, {step}");
            let [bad, good] = ["bad", "good"].map(|version| framed(&page, version));
            assert_eq!(bad, good, "{what}: scale, origin and size");
            let [scale, left, top, width, height] = bad;
            assert!(scale > 0.2 && width > 300.0 && height > 150.0, "{what}: {bad:?}");
            if !closer {
                // All of both lies within.
                for sheet in &sheets {
                    let bounds = drawing::Layout::of(sheet).bounds().expect("something is drawn");
                    let (x0, y0) = ((bounds.x0 - left) * scale, (bounds.y0 - top) * scale);
                    let (x1, y1) = ((bounds.x1 - left) * scale, (bounds.y1 - top) * scale);
                    assert!(
                        x0 >= 0.0 && y0 >= 0.0 && x1 <= width && y1 <= height,
                        "{what}: {bounds:?}"
                    );
                }
            }
            assert_fits(&page, &what);
        }
        page.press("?");
        page.wait_for("the keys", || (page.count("lesson-keys") == 1).then_some(()));
        assert_fits(&page, "with the list of keys");
        page.screenshot(&format!("lesson-{key}-{}", size.0));
        page.assert_no_errors();
    }
}

/// What a picture shows, as a number: it changes with the picture.
fn picture(page: &Page, version: &str) -> String {
    let script = format!("document.querySelector('[data-testid=picture-{version}]').toDataURL()");
    page.eval(&script).as_str().unwrap_or_default().to_owned()
}

#[test]
fn a_break_is_thrown_in_both_at_once_and_heals_and_overlays_lie_on_both() {
    let page = open(&format!("#lesson={KEY}"), (1280, 720));
    let both = || ["bad", "good"].map(|version| picture(&page, version));
    let whole = both();
    assert_eq!(page.text("counts-bad"), "0 Stop\n2 Fix\n0 Tidy");
    assert_eq!(page.text("counts-good"), "0 Stop\n0 Fix\n0 Tidy");
    assert!(page.text("foot-bad").contains("Return too long"));
    assert!(page.text("foot-good").contains("Nothing found"));
    page.press("b");
    page.wait_until(
        "the break",
        "document.querySelector('[data-testid=throw]').ariaPressed === 'true'",
    );
    // By the engine: see crates/lessons/src/aftermath.rs.
    assert_eq!(
        page.text("foot-bad"),
        "A1 and A2 go off.\nLS1, LS2 and LS3 fall silent with A1 and A2."
    );
    assert_eq!(
        page.texts("foot-good"),
        ["A1 goes off.\nA2 stays on.\nLS1 falls silent with A1."]
    );
    assert!(page.text("spoken").contains("A1 and A2 go off."), "said aloud");
    let broken = both();
    assert!(
        broken[0] != whole[0] && broken[1] != whole[1],
        "it is to be seen on both"
    );
    page.screenshot("lesson-broken");
    page.press("b");
    page.wait_until(
        "the healing",
        "document.querySelector('[data-testid=throw]').ariaPressed === 'false'",
    );
    assert_eq!(both(), whole);

    let mut seen = vec![whole.clone()];
    for (key, name) in [
        ("1", "Current"),
        ("2", "Voltage"),
        ("3", "Heat"),
        ("4", "Protection"),
        ("5", "Signal"),
        ("6", "Speakers"),
    ] {
        page.press(key);
        page.wait_for("the legend", || {
            page.text("overlay-legend").contains(name).then_some(())
        });
        let now = both();
        for before in &seen {
            assert!(
                now[0] != before[0] && now[1] != before[1],
                "{name} is another picture of both"
            );
        }
        seen.push(now);
    }
    page.press("0");
    page.wait_for("no legend", || {
        page.text("overlay-legend").is_empty().then_some(())
    });
    assert_eq!(both(), whole);
    page.assert_no_errors();
    // Who only looks at a lesson leaves nothing behind.
    assert_eq!(page.eval("localStorage.length"), 0);
    assert_eq!(page.eval("indexedDB.databases().then(all => all.length)"), 0);
}

/// German words are longer: on a projector all keys stay in one row and the heads in one line, whatever is on, so that the
/// pictures keep their size.
#[test]
fn in_german_the_pictures_keep_their_size_whatever_is_on() {
    let mut page = Table::open();
    german(&page);
    page.page_mut().set_size(1280, 720);
    page.wait_until("the new size", "innerWidth === 1280");
    page.eval(&format!("void (location.hash = 'lesson={KEY}')"));
    page.wait_for("the lesson", || (page.count("lesson") == 1).then_some(()));
    let size = || framed(&page, "bad");
    let before = size();
    for keys in [["1", "b"], ["6", "f"], ["z", "p"]] {
        for key in keys {
            page.press(key);
        }
        std::thread::sleep(Duration::from_millis(100));
        assert_eq!(&size()[3..], &before[3..], "after {keys:?}");
        assert_eq!(
            page.eval("[...document.querySelectorAll('.pinned__head')].every(head => head.scrollWidth <= head.clientWidth && head.offsetHeight < 60)"),
            true,
            "after {keys:?}"
        );
    }
    assert!(page.text("told").contains(' ') && page.text("counts-bad").contains("Beheben"));
    page.assert_no_errors();
}

/// Where the rings of the pointer are, from the corner of their pictures.
fn spots(page: &Page) -> Vec<(f64, f64)> {
    let places = page.eval(
        "[...document.querySelectorAll('.spot')].map(s => { const a = s.getBoundingClientRect(), b = s.parentElement.getBoundingClientRect();
            return [a.x + a.width / 2 - b.x, a.y + a.height / 2 - b.y]; })",
    );
    let places = places.as_array().cloned().unwrap_or_default();
    places
        .iter()
        .map(|at| {
            (
                at[0].as_f64().unwrap_or(f64::NAN),
                at[1].as_f64().unwrap_or(f64::NAN),
            )
        })
        .collect()
}

#[test]
fn the_pointer_is_seen_at_the_same_place_on_both_by_mouse_and_by_keys() {
    let page = open(&format!("#lesson={KEY}"), (1280, 720));
    assert_eq!(page.count("spot"), 0);
    page.press("p");
    page.wait_for("the rings", || (page.count("spot") == 2).then_some(()));
    let bad = page.place("picture-bad");
    page.hover(bad.x + 200.0, bad.y + 90.0);
    page.wait_for("the rings at the mouse", || {
        let spots = spots(&page);
        let near = |(x, y): (f64, f64)| (x - 200.0).abs() < 1.5 && (y - 90.0).abs() < 1.5;
        (spots.len() == 2 && spots.into_iter().all(near)).then_some(())
    });
    let good = page.place("picture-good");
    page.hover(good.x + 320.0, good.y + 120.0);
    page.wait_for("the rings at the mouse, from the other picture", || {
        let spots = spots(&page);
        let near = |(x, y): (f64, f64)| (x - 320.0).abs() < 1.5 && (y - 120.0).abs() < 1.5;
        (spots.len() == 2 && spots.into_iter().all(near)).then_some(())
    });
    // By keys from part to part: a ring stands on the middle of the part that is spoken of.
    let place = page.text("place");
    let sheet = lesson(KEY).sheet(Version::Bad);
    let layout = drawing::Layout::of(&sheet);
    let mut stood = Vec::new();
    for key in ["right", "right", "right", "down", "up", "left"] {
        page.press(key);
        let spoken = page.text("spoken");
        assert!(spoken.contains("Bad: ") && spoken.contains("Good: "), "{spoken}");
        let told = spoken.trim_start_matches("Bad: ").trim_start_matches("run ");
        let tag: String = told.chars().take_while(|c| c.is_alphanumeric()).collect();
        let [scale, left, top, ..] = framed(&page, "bad");
        let at = match (sheet.part_by_tag(&tag), sheet.run_by_tag(&tag)) {
            (Some((id, _)), _) => layout.part(id).expect("drawn").middle(),
            (_, Some((id, _))) => layout.run(id).expect("drawn").label_at,
            _ => panic!("what is `{tag}`? {spoken}"),
        };
        let (x, y) = ((at.x - left) * scale, (at.y - top) * scale);
        page.wait_for(&format!("the rings on {tag}"), || {
            let spots = spots(&page);
            let near = |(sx, sy): (f64, f64)| (sx - x).abs() < 1.5 && (sy - y).abs() < 1.5;
            (spots.len() == 2 && spots.into_iter().all(near)).then_some(())
        });
        stood.push(tag);
    }
    stood.sort();
    stood.dedup();
    assert!(stood.len() >= 3, "it walks: {stood:?}");
    assert_eq!(page.text("place"), place, "the arrows are the pointer's");
    page.press("pagedown");
    assert_ne!(page.text("place"), place, "the clicker goes on");
    page.screenshot("lesson-pointer");
    page.press("Escape");
    page.wait_for("no rings", || (page.count("spot") == 0).then_some(()));
    assert_eq!(page.count("lesson"), 1, "Escape takes one thing at a time");
    page.assert_no_errors();
}

#[test]
fn a_version_becomes_a_job_of_ones_own_on_purpose() {
    let page = open(&format!("#lesson={KEY}"), (1280, 720));
    page.click("open-good");
    page.wait_at_most(Duration::from_secs(30), "the table with the job", || {
        (page.eval("typeof loomwright_job") == "function" && page.count("lesson") == 0).then_some(())
    });
    let wanted = lesson(KEY).taken(Version::Good, &words::Words::english());
    page.wait_until(
        "the good version on the table",
        &format!("JSON.parse(loomwright_job()).title === {}", json!(wanted.title)),
    );
    assert_eq!(
        page.eval("Object.keys(JSON.parse(loomwright_state()).parts).length"),
        wanted
            .sheets
            .values()
            .map(|sheet| sheet.parts.len())
            .sum::<usize>()
    );
    assert_eq!(page.eval("location.hash"), "");
    // The table is on: a second version takes the place of the first, by the address.
    page.eval(&format!("void (location.hash = 'lesson={KEY}')"));
    page.wait_for("the lesson", || (page.count("lesson") == 1).then_some(()));
    page.click("open-bad");
    let wanted = lesson(KEY).taken(Version::Bad, &words::Words::english());
    page.wait_until(
        "the bad version on the table",
        &format!("JSON.parse(loomwright_job()).title === {}", json!(wanted.title)),
    );
    page.assert_no_errors();
}
