//! The meter in the page reads what the engine outside of it computes.

use crate::table::Table;

/// The first number of a text: `12.34 V` gives 12.34.
fn number(text: &str) -> f64 {
    text.split_whitespace()
        .next()
        .and_then(|word| word.parse().ok())
        .unwrap_or_else(|| panic!("no number in `{text}`"))
}

#[test]
fn volts_and_amps_on_the_meter_are_those_of_the_native_engine() {
    let table = Table::open_worked("estate");
    let (sheet, native) = (table.sheet(), table.native());
    let terminals: Vec<(String, f64)> = sheet
        .parts
        .iter()
        .flat_map(|(id, part)| {
            model::terminals::terminals(&part.is)
                .into_iter()
                .map(|terminal| model::TerminalRef {
                    part: *id,
                    terminal: terminal.name,
                })
        })
        .filter_map(|at| {
            Some((
                sheet.written(&at),
                native.study.voltages.get(&circuit::voltage_key(&at))?.0,
            ))
        })
        .collect();
    let volts = |written: &str| {
        terminals
            .iter()
            .find(|(name, _)| name == written)
            .unwrap_or_else(|| panic!("no voltage for {written}"))
            .1
    };
    let battery = sheet
        .parts
        .values()
        .find(|part| part.is.word() == "battery")
        .map(|part| part.tag.clone())
        .expect("the estate has a battery");
    let amplifiers: Vec<&str> = sheet
        .parts
        .values()
        .filter(|part| part.is.word() == "amplifier")
        .map(|part| part.tag.as_str())
        .collect();
    assert!(amplifiers.len() >= 2, "the estate has two amplifiers");

    table.press("m");
    // Black stays on battery negative until it is moved.
    for amplifier in &amplifiers {
        for pole in ["+", "-"] {
            let at = format!("{amplifier}.{pole}");
            let (x, y) = table.terminal(&at);
            table.click_at(x, y);
            let expected = volts(&at) - volts(&format!("{battery}.-"));
            // Two places are shown: half of the last one, and what rounding twice may add.
            table.wait_for(&format!("{expected:.3} V at {at}"), || {
                let shown = table.texts("reading").into_iter().next()?;
                (shown.ends_with(" V") && (number(&shown) - expected).abs() <= 0.005 + 1e-9).then_some(())
            });
        }
    }
    // The drop of the feed: red on the battery, black on the amplifier.
    let (far, near) = (format!("{}.+", amplifiers[0]), format!("{battery}.+"));
    table.click("lead-black");
    let (x, y) = table.terminal(&far);
    table.click_at(x, y);
    let (x, y) = table.terminal(&near);
    table.click_at(x, y);
    let expected = volts(&near) - volts(&far);
    assert!(expected > 0.0, "a feed under load loses something");
    table.wait_for(&format!("{expected:.3} V lost"), || {
        let shown = table.texts("reading").into_iter().next()?;
        (shown.ends_with(" V") && (number(&shown) - expected).abs() <= 0.005 + 1e-9).then_some(())
    });

    // The clamp around the feed of the amplifier.
    let (id, run) = sheet
        .runs
        .iter()
        .find(|(_, run)| crate::table::ends(&sheet, run).1 == far)
        .expect("the amplifier is fed");
    let amps = native.study.runs[id].current.mean.0.abs();
    table.click("meter-amps");
    let (x, y) = table.run(&run.tag);
    table.click_at(x, y);
    table.wait_for(&format!("{amps:.3} A in {}", run.tag), || {
        let shown = table.texts("reading").into_iter().next()?;
        // Three figures are shown.
        (shown.ends_with(" A") && (number(&shown) - amps).abs() <= amps * 0.005 + 5e-3).then_some(())
    });
    table.assert_no_errors();
}
