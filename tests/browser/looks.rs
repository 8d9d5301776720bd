//! How the page looks: pictures at two sizes, light and dark, kept in `target/browser`; and no text is cut or covers another.

use crate::table::Table;
use loomwright_tests::browser::Scheme;
use serde_json::json;

/// Texts of the title block and of the margin that stand over each other, or are cut off without saying so. A note that
/// has no room for its whole text ends in an ellipsis and is read in full when pointed at; that is not a fault.
const TEXT_FAULTS: &str = r"(() => {
    const faults = [];
    const boxes = [];
    const shown = e => { const r = e.getBoundingClientRect(); return r.width > 0 && r.height > 0; };
    const name = e => (e.innerText || e.value || e.className).replace(/\s+/g, ' ').slice(0, 60);
    for (const e of document.querySelectorAll('.title-block .cell__name, .title-block .cell__text, .title-block .cell__value, .title-block .cell__select, .set__sheet, .set__fill, .revisions button')) {
        if (!shown(e)) continue;
        if (e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline') faults.push(`cut: ${name(e)} (${e.scrollWidth} in ${e.clientWidth})`);
        if (e.tagName === 'SELECT') {
            // A list tells no overflow of what is chosen in it: measured with its own letters.
            const pen = document.createElement('canvas').getContext('2d'), style = getComputedStyle(e);
            pen.font = style.font;
            const text = e.selectedOptions[0]?.text ?? '', room = e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
            if (pen.measureText(text).width > room + 1) faults.push(`cut: ${text} (${Math.round(pen.measureText(text).width)} in ${room})`);
        }
        boxes.push([name(e), e.getBoundingClientRect(), e]);
    }
    for (const e of document.querySelectorAll('.notes__list > li > button, .notes__words')) {
        if (!shown(e)) continue;
        const what = e.querySelector('.note__what') ?? e;
        if (what.scrollHeight > what.clientHeight + 2 && !(parseInt(getComputedStyle(what).webkitLineClamp) >= 1)) faults.push(`cut: ${name(e)}`);
        boxes.push([name(e), e.getBoundingClientRect(), e]);
    }
    for (const e of document.querySelectorAll('.tray button, .legend, .spoken p')) {
        if (shown(e)) boxes.push([name(e), e.getBoundingClientRect(), e]);
    }
    for (let i = 0; i < boxes.length; i++) for (let j = i + 1; j < boxes.length; j++) {
        const [a, r, x] = boxes[i], [b, s, y] = boxes[j];
        if (x.contains(y) || y.contains(x)) continue;
        const w = Math.min(r.right, s.right) - Math.max(r.left, s.left), h = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
        if (w > 1.5 && h > 1.5) faults.push(`over each other: ${a} | ${b}`);
    }
    for (const [a, r] of boxes) if (r.left < -1 || r.top < -1 || r.right > innerWidth + 1 || r.bottom > innerHeight + 1) faults.push(`outside the window: ${a}`);
    return faults;
})()";

#[test]
fn nothing_is_cut_or_covered_at_two_sizes_light_and_dark() {
    let mut faults = Vec::new();
    let mut table = Table::open();
    for key in ["estate", "van"] {
        for (width, height) in [(1600, 900), (1024, 768)] {
            table.page_mut().set_size(width, height);
            table.wait_until(
                "the window's size",
                &format!("document.getElementById('board').width === {width} && document.getElementById('board').height === {height}"),
            );
            // Fetched at this size, so that the sheet is fitted to it.
            table.take_worked(key);
            for scheme in [Scheme::Light, Scheme::Dark] {
                table.page_mut().set_scheme(scheme);
                let dark = scheme == Scheme::Dark;
                table.wait_until(
                    "the paper of that scheme",
                    &format!(
                        "document.documentElement.style.colorScheme === '{}'",
                        if dark { "dark" } else { "light" }
                    ),
                );
                // A frame is asked for after the inks changed; two later it is on the screen.
                table.eval("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))");
                let picture = format!("{key}-{width}x{height}-{}", if dark { "dark" } else { "light" });
                table.screenshot(&picture);
                let found = table.eval(TEXT_FAULTS);
                if found != json!([]) {
                    faults.push(format!("{picture}: {found:#}"));
                }
            }
        }
    }
    table.assert_no_errors();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn panels_slips_and_overlays_open_within_the_window() {
    let table = Table::open_worked("van");
    let inside = |what: &str| {
        let place = table.place(what);
        assert!(
            place.x >= 0.0
                && place.y >= 0.0
                && place.x + place.width <= 1440.5
                && place.y + place.height <= 900.5,
            "{what} reaches out of the window: {place:?}"
        );
    };
    for (key, panel) in [
        ("a", "shelf-drawer"),
        ("/", "ask-box"),
        ("o", "outline-list"),
        ("?", "keys-list"),
        ("b", "jobs-drawer"),
        ("i", "record-drawer"),
        ("c", "thread-drawer"),
        ("y", "papers-page"),
    ] {
        table.press(key);
        inside(panel);
        table.screenshot(&format!("van-{panel}"));
        // Escape closes each of them, from wherever the keys are in it.
        table.press("Escape");
        table.wait_until(
            &format!("{panel} to be closed by Escape"),
            &format!("!document.querySelector('[data-testid={panel}]')"),
        );
    }
    table.open_part("A1");
    inside("slip");
    table.screenshot("van-slip");
    table.press("Escape");
    table.press("n");
    inside("explanation");
    table.screenshot("van-finding");
    table.press("Escape");
    for (key, overlay) in [
        ("1", "current"),
        ("2", "voltage"),
        ("3", "heat"),
        ("4", "protection"),
        ("5", "signal"),
        ("6", "speakers"),
    ] {
        table.press(key);
        inside("overlay-legend");
        table.eval(
            "new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))",
        );
        table.screenshot(&format!("van-overlay-{overlay}"));
    }
    table.assert_no_errors();
}
