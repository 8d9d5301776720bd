//! The same system drawn with the keyboard alone: the pointer is never touched.

use crate::table::{Table, ends};

/// Puts a part from the shelf down by keys, moved by some steps of the arrow keys first, and gives its tag.
fn put(table: &Table, word: &str, steps: &[(&str, usize)]) -> String {
    let before = table.sheet();
    table.press("a");
    let filter = "document.activeElement?.dataset.testid === 'shelf-filter'";
    table.wait_until("the shelf's filter to have the keys", filter);
    let title = model::PartKind::from_word(word).expect("a kind").title();
    table.type_text(title);
    table.wait_until(
        &format!("{word} on the shelf"),
        &format!("!!document.querySelector('[data-testid=shelf-{word}]')"),
    );
    table.press("down");
    // The first item that is left has the focus; it must be the one that is meant, or arrows go on.
    table.wait_until(
        "an item of the shelf to have the keys",
        "document.activeElement?.dataset.testid?.startsWith('shelf-') && !document.activeElement.dataset.testid.includes('filter')",
    );
    table.wait_for(&format!("{word} to have the keys"), || {
        let on = table.eval("document.activeElement.dataset.testid");
        if on == format!("shelf-{word}") {
            return Some(());
        }
        table.press("tab");
        None
    });
    table.press("Enter");
    table.wait_until(
        "the part in hand",
        "JSON.parse(loomwright_state()).tool === 'place/holding'",
    );
    for (key, times) in steps {
        for _ in 0..*times {
            table.press(key);
        }
    }
    table.press("Enter");
    table.wait_until(
        "the part on the sheet",
        "JSON.parse(loomwright_state()).tool === 'pick/idle'",
    );
    table.fresh_part(&before, word)
}

/// Walks to a terminal: asks for its part, steps onto the side where it is, and along that side.
fn walk_to(table: &Table, terminal: &str) {
    let (tag, _) = terminal.split_once('.').expect("part and terminal");
    let on = |what: &str| table.state()["focus"] == what;
    for (side, along) in [
        ("left", ["up", "down"]),
        ("right", ["up", "down"]),
        ("up", ["left", "right"]),
        ("down", ["left", "right"]),
    ] {
        for step in along {
            table.press("/");
            table.wait_until(
                "the Ask box to have the keys",
                "document.activeElement?.dataset.testid === 'ask-field'",
            );
            table.type_text(tag);
            table.wait_for(&format!("an answer for {tag}"), || {
                let first = table.texts("answer").into_iter().next()?;
                first.starts_with(&format!("{tag} ")).then_some(())
            });
            table.press("Enter");
            table.wait_until(
                &format!("the keys on {tag}"),
                &format!("JSON.parse(loomwright_state()).focus === '{tag}'"),
            );
            table.press(side);
            for _ in 0..16 {
                if on(terminal) {
                    return;
                }
                let before = table.state()["focus"].clone();
                table.press(step);
                let now = table.state()["focus"].as_str().unwrap_or_default().to_owned();
                if before == now || !now.starts_with(&format!("{tag}.")) {
                    break;
                }
            }
            if on(terminal) {
                return;
            }
        }
    }
    panic!(
        "the arrow keys do not reach {terminal}: at {}",
        table.state()["focus"]
    );
}

/// Pulls a run by keys.
fn pull(table: &Table, from: &str, to: &str) {
    let before = table.sheet().runs.len();
    walk_to(table, from);
    table.press("w");
    table.wait_until(
        "a run in hand",
        "JSON.parse(loomwright_state()).tool === 'pull/stepping'",
    );
    let reached = |said: &str| {
        said.split_once("terminal ")
            .map(|(_, rest)| rest.split(',').next().unwrap_or_default().trim().to_owned())
    };
    let mut at = from.to_owned();
    let mut crosswise = false;
    for _ in 0..24 {
        if at == to {
            break;
        }
        let (x, y) = table.terminal(&at);
        let (to_x, to_y) = table.terminal(to);
        let sideways = ((to_x - x).abs() > (to_y - y).abs()) != crosswise;
        let key = match (sideways, to_x > x, to_y > y) {
            (true, true, _) => "right",
            (true, false, _) => "left",
            (false, _, true) => "down",
            (false, _, false) => "up",
        };
        table.press(key);
        let next = table.wait_for("the page to say where the run would go", || {
            let said = table.said();
            if said.contains("Arrows go to terminals") {
                return Some(from.to_owned());
            }
            reached(&said)
        });
        // Nothing that way: the other axis next.
        crosswise = next == at && !crosswise;
        at = next;
    }
    assert_eq!(at, to, "the arrow keys do not lead a run from {from} to {to}");
    table.press("Enter");
    table.wait_until(
        "the run to be pulled",
        "JSON.parse(loomwright_state()).tool === 'pick/idle'",
    );
    let sheet = table.sheet();
    assert_eq!(sheet.runs.len(), before + 1);
    let run = sheet.runs.values().last().expect("a run");
    assert_eq!(ends(&sheet, run), (from.to_owned(), to.to_owned()));
    table.findings_as_native();
}

#[test]
fn the_same_system_is_drawn_with_the_keyboard_alone() {
    let table = Table::empty();
    let battery = put(&table, "battery", &[("left", 8), ("up", 4)]);
    let fuse = put(&table, "fuse", &[]);
    let amplifier = put(&table, "amplifier", &[("right", 3)]);
    let speaker = put(&table, "speaker", &[("right", 3)]);
    let ground = put(&table, "ground", &[("left", 9), ("down", 7)]);
    let other_ground = put(&table, "ground", &[("left", 12)]);
    let head = put(&table, "head", &[("down", 6)]);

    let mut drawn: Vec<(String, String)> = [
        (&battery, "-", &other_ground, "stud"),
        (&amplifier, "-", &ground, "stud"),
        (&battery, "+", &fuse, "in"),
        (&fuse, "out", &amplifier, "+"),
        (&fuse, "out", &head, "30"),
        (&fuse, "out", &head, "15"),
        (&head, "31", &other_ground, "stud"),
        (&head, "rem", &amplifier, "rem"),
        (&head, "front-l", &amplifier, "in1"),
        (&amplifier, "out1+", &speaker, "+"),
        (&amplifier, "out1-", &speaker, "-"),
    ]
    .map(|(a, from, b, to)| (format!("{a}.{from}"), format!("{b}.{to}")))
    .into();
    for (from, to) in &drawn {
        pull(&table, from, to);
    }
    let sheet = table.sheet();
    let mut wired: Vec<(String, String)> = sheet.runs.values().map(|run| ends(&sheet, run)).collect();
    wired.sort();
    drawn.sort();
    assert_eq!(wired, drawn);
    assert!(
        table
            .native()
            .study
            .drivers
            .values()
            .all(|driver| driver.power.0 > 0.0),
        "the speaker plays"
    );

    // A step back and again, saved, and there after loading again.
    let text = table.job_text();
    table.press("ctrl+z");
    assert_ne!(table.job_text(), text);
    table.press("ctrl+shift+Z");
    assert_eq!(table.job_text(), text);
    table.answer_pickers("by-keys.json");
    table.press("ctrl+s");
    let saved = table.wait_for("the job to be saved", || {
        let text = table.picked_file();
        (!text.is_empty()).then_some(text)
    });
    assert_eq!(saved, text);
    table.wait_kept();
    table.reload();
    table.wait_ready();
    assert_eq!(table.job_text(), text);
    table.screenshot("drawn-by-keyboard");
    table.assert_no_errors();
}
