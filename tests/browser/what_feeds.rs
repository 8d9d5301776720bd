//! "What feeds this?" lights the whole circuit of an amplifier, and a run under the pointer tells its numbers: those of the
//! engine outside of the page.

use crate::table::Table;
use serde_json::Value;

/// The numbers of a text, signs and units left out: `12.5 A of 40 A allowed` gives 12.5 and 40.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.'))
        .filter_map(|word| word.parse().ok())
        .collect()
}

/// Whether a computed number is among those shown: three figures at most, two places at most, a milli where it is small.
fn shows(text: &str, expected: f64, unit: &str) -> bool {
    text.split_whitespace()
        .zip(text.split_whitespace().skip(1))
        .filter_map(|(number, shown_unit)| {
            let scale = if shown_unit == unit {
                1.0
            } else if shown_unit == format!("m{unit}") {
                1000.0
            } else {
                return None;
            };
            Some((number.parse::<f64>().ok()?, scale))
        })
        .any(|(number, scale)| {
            let rounding = (0.005 * expected.abs() * scale).max(0.005) + 1e-9;
            (number - expected * scale).abs() <= rounding
        })
}

/// How many pixels of the canvas have the ink of what is lit.
fn lit_pixels(table: &Table) -> u64 {
    let count = table.eval(
        "(() => { const board = document.getElementById('board'); \
         const probe = document.createElement('canvas').getContext('2d'); \
         probe.fillStyle = getComputedStyle(document.documentElement).getPropertyValue('--lit').trim(); probe.fillRect(0, 0, 1, 1); \
         const [r, g, b] = probe.getImageData(0, 0, 1, 1).data; \
         const data = board.getContext('2d').getImageData(0, 0, board.width, board.height).data; let n = 0; \
         for (let i = 0; i < data.length; i += 4) if (data[i] === r && data[i + 1] === g && data[i + 2] === b) n++; return n })()",
    );
    count.as_u64().unwrap_or_default()
}

#[test]
fn asking_what_feeds_an_amplifier_lights_its_circuit_and_names_it() {
    let table = Table::open_worked("estate");
    let (sheet, native) = (table.sheet(), table.native());
    let (id, amplifier) = sheet
        .parts
        .iter()
        .find(|(_, part)| part.is.word() == "amplifier")
        .expect("the estate has amplifiers");
    let circuit = &native.study.circuits[id];
    assert_eq!(lit_pixels(&table), 0, "nothing is lit before one asks");

    table.open_part(&amplifier.tag);
    table.press("f");
    let legend = table.text("feeds-legend");
    assert!(
        legend.starts_with(&format!("What feeds {}", amplifier.tag)),
        "{legend}"
    );
    // Every source, and every device on the way from it, is named.
    for feed in &circuit.feeds {
        for part in std::iter::once(&feed.source).chain(&feed.parts) {
            let tag = &sheet.parts[part].tag;
            assert!(legend.contains(tag.as_str()), "{tag} is missing: {legend}");
        }
    }
    let amps = native.study.parts[id].current.mean.0.abs();
    let drop = circuit
        .drop
        .expect("a fed amplifier loses something on the way")
        .0;
    // One and two places are shown.
    let shown = numbers(legend.split_once('(').expect("numbers in brackets").1);
    assert!((shown[0] - amps).abs() <= 0.05 + 1e-9, "{amps} A: {legend}");
    assert!((shown[1] - drop).abs() <= 0.005 + 1e-9, "{drop} V: {legend}");
    table.wait_for("the circuit to be lit", || {
        (lit_pixels(&table) > 100).then_some(())
    });

    table.press("Escape");
    table.wait_until(
        "the legend to be gone",
        "!document.querySelector('[data-testid=feeds-legend]')",
    );
    table.wait_for("the light to be out", || (lit_pixels(&table) == 0).then_some(()));
    table.assert_no_errors();
}

#[test]
fn a_run_under_the_pointer_tells_amps_drop_temperature_and_guard() {
    let table = Table::open_worked("estate");
    let (sheet, native) = (table.sheet(), table.native());
    let tag = |id: &model::PartId| sheet.parts[id].tag.as_str();
    let feeds: Vec<_> = sheet
        .runs
        .iter()
        .filter_map(|(id, run)| {
            let flow = native.study.runs.get(id)?;
            (flow.purpose == circuit::Purpose::Feed && flow.current.rms.0.abs() > 0.5)
                .then_some((id, run, flow))
        })
        .collect();
    assert!(feeds.len() >= 4, "{} feeds", feeds.len());
    for (id, run, flow) in feeds {
        let (x, y) = table.run(&run.tag);
        table.hover(x, y);
        let shown = table.wait_for(&format!("the numbers of {}", run.tag), || {
            let text = table.texts("hover").into_iter().next()?;
            text.starts_with(&format!("{} ", run.tag)).then_some(text)
        });
        let rows = table.eval(
            "(() => { const all = document.querySelectorAll('[data-testid=hover] dt'); \
             return Object.fromEntries([...all].map(dt => [dt.innerText, dt.nextElementSibling.innerText])) })()",
        );
        let row = |name: &str| {
            rows[name]
                .as_str()
                .unwrap_or_else(|| panic!("no {name}: {shown}"))
                .to_owned()
        };
        assert!(
            shows(&row("current"), flow.current.rms.0.abs(), "A"),
            "{flow:?}: {shown}"
        );
        if let Some(most) = flow.allowable {
            assert!(shows(&row("current"), most.0, "A"), "{flow:?}: {shown}");
        }
        assert!(shows(&row("drop"), flow.drop.0, "V"), "{flow:?}: {shown}");
        let temperatures = numbers(&row("temperature"));
        assert!(
            (temperatures[0] - flow.temperature.0).abs() <= 0.5 + 1e-9,
            "{flow:?}: {shown}"
        );
        assert!(
            (temperatures[1] - flow.ambient.0).abs() <= 0.5 + 1e-9,
            "{flow:?}: {shown}"
        );
        let guards = native
            .study
            .protection
            .get(id)
            .into_iter()
            .flat_map(|protection| &protection.from);
        for guard in guards.filter(|from| from.protected).flat_map(|from| &from.guards) {
            assert!(
                shown.contains(tag(&guard.part)),
                "{} guards it: {shown}",
                tag(&guard.part)
            );
        }
    }
    table.hover(700.0, 20.0);
    table.wait_until(
        "the numbers to go with the pointer",
        "!document.querySelector('[data-testid=hover]')",
    );
    assert_eq!(table.state()["focus"], Value::Null);
    table.assert_no_errors();
}
