//! Mending, starting, measuring, finding the fault, breaking.

use super::*;

#[test]
fn everything_that_needs_no_choice_is_mended_and_written() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("mended.loom.json");
    let path = path.to_str().expect("a name");
    let counts = |of: &str| -> serde_json::Value {
        let (_, out, err) = output(&mut loomwright(&["mend", of, "--all", "--json"]));
        serde_json::from_str(&out).unwrap_or_else(|error| panic!("{error}: {out}{err}"))
    };
    // Only told at first: there is no file.
    let (code, out, err) = output(&mut loomwright(&[
        "mend",
        "@van",
        "--all",
        "--dry-run",
        "-o",
        path,
    ]));
    assert!(code == 1 && out.contains("What is left"), "{out}{err}");
    assert!(!std::path::Path::new(path).exists());
    let told = counts("@van");
    assert!(
        told["after"]["stop"].as_u64() < told["before"]["stop"].as_u64(),
        "{told}"
    );
    let (_, out, err) = output(&mut loomwright(&["mend", "@van", "--all", "-o", path]));
    assert!(out.contains("written"), "{out}{err}");
    // Of what was written there is nothing more to mend, and the checks count what was told.
    let again = counts(path);
    assert_eq!(again["before"], told["after"]);
    assert!(again["steps"].as_array().is_some_and(Vec::is_empty), "{again}");
    let (_, findings) = json(&["check", path, "--json"]);
    assert_eq!(
        findings.as_array().map(Vec::len),
        told["left"].as_array().map(Vec::len)
    );
}

#[test]
fn one_finding_is_mended_by_its_number_and_a_wrong_number_says_how_many_there_are() {
    let (_, list) = json(&["mend", "@van", "--json"]);
    let list = list.as_array().expect("a list");
    let first = list
        .iter()
        .find(|it| it["mends"].as_array().is_some_and(|mends| !mends.is_empty()))
        .expect("a finding with a mend");
    let number = first["number"].to_string();
    let (_, made) = json(&["mend", "@van", "--finding", &number, "--json"]);
    assert_eq!(made["clears"], first["mends"][0]["clears"]);
    refused(&["mend", "@van", "--finding", "999"], &list.len().to_string());
    refused(&["mend", "@van", "--finding", &number, "--way", "9"], &number);
}

#[test]
fn a_system_is_started_from_a_line_and_from_a_file() {
    let line =
        "hatchback, 4 × 75 W amp, mono 500 W at 2 ohm, front components, rear pair, 2 × 4 ohm dual coil sub";
    let (code, text, err) = output(&mut loomwright(&["start", line, "--text"]));
    assert_eq!(code, 0, "{err}");
    // What was started is in order, and its sheet is arranged.
    let (code, out, err) = output(loomwright(&["check", "-", "--json"]).write_stdin(text.clone()));
    assert_eq!(code, 0, "{out}{err}");
    assert!(!out.contains("\"grade\": \"fix\""), "{out}");
    assert!(
        text.lines()
            .filter(|line| line.starts_with("speaker "))
            .all(|line| line.contains(" @"))
    );
    // A thing on each line, with remarks.
    let form = line.replace(", ", "\n") + " # as ordered\n";
    let (code, same, err) = output(loomwright(&["start", "--form", "-", "--text"]).write_stdin(form));
    assert_eq!((code, same), (0, text), "{err}");
    let (code, json, _) = output(&mut loomwright(&["start", line, "--json"]));
    assert_eq!(code, 0);
    assert!(
        json.contains("\"choices\"") && json.contains("\"copper-kg\""),
        "{json}"
    );
    let german = "Schrägheck, Endstufe 4 × 75 W, Frontkomponenten";
    let (code, out, _) = output(&mut loomwright(&["--language", "de", "start", german]));
    assert_eq!(code, 0);
    assert!(
        out.contains("Angenommen:") && out.contains("Endstufe 4 × 75"),
        "{out}"
    );
}

#[test]
fn what_cannot_be_started_is_told_with_what_would_do() {
    let (code, out, err) = output(&mut loomwright(&["start", "hatchbak, 4 × 75 W amp"]));
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(err.contains("^^^^^^^^") && err.contains("“hatchback”"), "{err}");
    refused(
        &["start", "mono 500 W at 2 ohm, 1 ohm sub"],
        "may drive the bass speakers",
    );
    // An alternator that is too small: told, and drawn only when that is asked for.
    let small = "alternator 55 A, 4 × 100 W amp, mono 500 W at 2 ohm, front components, rear pair, 2 × 4 ohm dual coil sub";
    refused(&["start", small], "With an alternator of 120 A it would do.");
    let (code, out, err) = output(&mut loomwright(&["start", small, "--anyway"]));
    assert_eq!(code, 0, "{err}");
    assert!(out.contains("Not met:"), "{out}");
}

#[test]
fn the_meter_reads_two_points_and_says_which_there_are() {
    let (code, read) = json(&[
        "meter",
        "@hatchback",
        "F1.out",
        "B1.-",
        "--state",
        "engine-off",
        "--duty",
        "idle",
        "--json",
    ]);
    assert_eq!(code, 0);
    let volts = read[0]["number"].as_f64().expect("volts");
    assert!((11.0..13.5).contains(&volts), "{volts}");
    let (_, read) = json(&[
        "meter",
        "@hatchback",
        "F1.out",
        "B1.-",
        "--state",
        "engine-off",
        "--broken",
        "F1 open",
        "--json",
    ]);
    assert!(read[0]["number"].as_f64().expect("volts").abs() < 0.1, "{read}");
    refused(
        &["meter", "@hatchback", "F1.middle", "B1.-"],
        "has no terminal “middle”; it has in out",
    );
}

#[test]
fn a_fault_is_found_from_a_symptom_and_readings() {
    let (code, out, _) = output(&mut loomwright(&[
        "find-fault",
        "@hatchback",
        "--symptom",
        "A1 off",
        "--reading",
        "F1.in B1.- 12.4 V on",
        "--reading",
        "F1.out B1.- 0 V on",
        "--json",
    ]));
    assert_eq!(code, 0, "{out}");
    let answer: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert!(
        answer["suspects"][0]["share"]
            .as_f64()
            .is_some_and(|share| share > 0.7),
        "{out}"
    );
    assert_eq!(answer["suspects"][0]["breaks"][0], "F1 open", "{out}");
    let (code, out, _) = output(&mut loomwright(&[
        "find-fault",
        "@hatchback",
        "--symptom",
        "A1 off",
    ]));
    assert_eq!(code, 0);
    assert!(out.contains("Next: "), "{out}");
    refused(
        &["find-fault", "@hatchback", "--symptom", "A1 grumpy"],
        "is no symptom; write",
    );
}

#[test]
fn a_break_is_followed_through_time() {
    let text = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 80A\namplifier A1\nground E1\n\
        run W1 B1.+ F1.in 16mm2 0.3m\nrun W2 F1.out A1.+ 16mm2 5m\nrun W3 A1.- E1.stud 16mm2 0.5m BK\n\
        run W4 B1.- E1.stud 25mm2 0.4m BK\n";
    let call = |breaks: &[&str]| {
        let mut arguments = vec!["break", "-"];
        arguments.extend(breaks);
        output(loomwright(&arguments).write_stdin(text))
    };
    let (code, out, err) = call(&["W2 grounded at 100 %"]);
    assert_eq!(code, 0, "{out}{err}");
    assert!(
        out.contains("F1 opens") && out.contains("certain") && out.contains("Cleared after"),
        "{out}"
    );
    // Ahead of the fuse nothing opens: as grave as a finding of grade Stop.
    let (code, out, _) = call(&["W1 grounded"]);
    assert_eq!(code, 1, "{out}");
    assert!(
        out.contains("W1: insulation damaged") && out.contains("melts"),
        "{out}"
    );
    let (code, _, err) = call(&["W9 cut"]);
    assert_eq!(code, 2);
    assert!(err.contains("There is no run “W9”"), "{err}");
    let (code, _, err) = call(&["W2 burnt"]);
    assert_eq!(code, 2);
    assert!(err.contains("“burnt” says no break"), "{err}");
    let (code, out, err) = call(&["W2 grounded", "W4 resistive 0.1 Ω", "--json"]);
    assert_eq!(code, 0, "{err}");
    let course: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert!(course["events"].is_array() && course["scenarios"][0]["frames"].is_array());
}

#[test]
fn a_proof_is_a_list_of_readings_and_a_kept_one_outside_of_its_limits_is_told_by_the_exit_code() {
    let (code, proof) = json(&["prove", "@hatchback", "--sheet", "built", "--json"]);
    assert_eq!(code, 0);
    let readings = proof["readings"].as_array().expect("readings");
    assert_eq!(proof["shortest"], true);
    assert_eq!(proof["least"].as_u64(), Some(readings.len() as u64));
    let seen: std::collections::BTreeSet<&str> = readings
        .iter()
        .flat_map(|it| it["exposes"].as_array().expect("faults"))
        .filter_map(serde_json::Value::as_str)
        .collect();
    assert_eq!(proof["exposed"].as_u64(), Some(seen.len() as u64));
    // Shorts first, with the supply isolated.
    assert_eq!(readings[0]["state"], "isolated");
    assert!(seen.iter().any(|fault| fault.contains("grounded")), "{seen:?}");
    let (code, out, _) = output(&mut loomwright(&["prove", "@hatchback", "--sheet", "built"]));
    assert!(
        code == 0 && out.contains("in order from") && out.contains("qualified person"),
        "{out}"
    );
    // A reading is kept with the job: within, and then outside.
    let (code, text, err) = output(&mut loomwright(&["format", "@hatchback", "--text"]));
    assert_eq!(code, 0, "{err}");
    let at = |name: &str| readings[0][name].as_str().expect("a terminal").to_owned();
    for (shown, code) in [("", 0), (" ohms=0.02ohm", 1)] {
        let line = format!(
            "reading ohms at={} against={}{shown} state=parked duty=idle",
            at("red"),
            at("black")
        );
        let kept = text.replace("sheet built\n", &format!("sheet built\n{line}\n"));
        assert_ne!(kept, text);
        let call = ["prove", "-", "--sheet", "built", "--json"];
        let (said, out, err) = output(loomwright(&call).write_stdin(kept));
        assert_eq!(said, code, "{line}: {err}");
        let proof: serde_json::Value = serde_json::from_str(&out).expect("JSON");
        assert_eq!(proof["readings"][0]["within"], code == 0, "{line}");
    }
    let (code, out, err) = output(loomwright(&["prove", "-"]).write_stdin("load L1\n"));
    assert!(code == 0 && out.contains("nothing to prove"), "{out}{err}");
}

/// The articles of a price list, and the list with a price for each: what a closure says of its size in mm².
fn filled(empty: &str, price: impl Fn(f64) -> Option<f64>) -> String {
    let lines = empty.lines().enumerate().map(|(at, line)| {
        let size = line
            .split("mm2")
            .next()
            .and_then(|it| it.rsplit(' ').next()?.parse::<f64>().ok());
        let price = size.map_or(Some(1.0), &price).filter(|_| at > 0);
        match (line.strip_suffix(",,"), price) {
            (Some(line), Some(price)) => format!("{line},{price:.2},\n"),
            _ => format!("{line}\n"),
        }
    });
    lines.collect()
}

#[test]
fn sizes_follow_the_shops_own_price_list_and_what_is_not_on_it_is_not_chosen() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("prices.csv");
    let path = path.to_str().expect("a name");
    let metric = |arguments: &[&str]| {
        let mut all = vec!["--units", "metric"];
        all.extend(arguments);
        output(&mut loomwright(&all))
    };
    let (code, empty, err) = metric(&["lists", "@hatchback", "--list", "prices", "--csv"]);
    assert_eq!(code, 0, "{err}");
    assert!(
        empty.contains("cable copper 16mm2 RD") && empty.contains("fuse strip61 60A"),
        "{empty}"
    );
    let (code, _, err) = metric(&["size", "@hatchback", "--by", "cost"]);
    assert_eq!(code, 2);
    assert!(err.contains("--price-list"), "{err}");
    let sized = |prices: &str| -> serde_json::Value {
        std::fs::write(path, prices).expect("it is written");
        let call = [
            "size",
            "@hatchback",
            "--by",
            "cost",
            "--price-list",
            path,
            "--json",
        ];
        let (_, out, err) = metric(&call);
        serde_json::from_str(&out).unwrap_or_else(|error| panic!("{error}: {out}{err}"))
    };
    let of = |sizing: &serde_json::Value, run: &str| -> (String, String) {
        let runs = sizing["runs"].as_array().expect("runs");
        let line = runs.iter().find(|it| it["run"] == run).expect("the run");
        let text = |name: &str| line[name].as_str().unwrap_or_default().to_owned();
        (text("after"), text("because"))
    };
    // Dearer by the square millimetre: as with the least metal.
    let usual = sized(&filled(&empty, Some));
    let (_, out, _) = metric(&["size", "@hatchback", "--json"]);
    let metal: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let (size, _) = of(&metal, "W12");
    assert_eq!(of(&usual, "W12").0, size);
    let runs = metal["runs"].as_array().expect("runs");
    let own = runs.iter().find(|it| it["run"] == "W12").expect("the run")["before"].clone();
    let own = own.as_str().expect("a size").to_owned();
    assert!(
        usual["cost"][1].as_f64() < usual["cost"][0].as_f64(),
        "{}",
        usual["cost"]
    );
    // That size is sold out: the next one is laid.
    let area: f64 = size.trim_end_matches("mm2").parse().expect("square millimetres");
    let without = sized(&filled(&empty, |it| (it != area).then_some(it)));
    let (next, _) = of(&without, "W12");
    let next: f64 = next.trim_end_matches("mm2").parse().expect("square millimetres");
    assert!(next > area, "{next} {area}");
    // Nothing thick is on the list: the run keeps what it has, and that is said.
    let (left, why) = of(&sized(&filled(&empty, |_| None)), "W12");
    assert_eq!((left, &*why), (own, "no price for a size that would do"));
    // A price that cannot be read is no silent gap.
    std::fs::write(path, filled(&empty, Some).replace(",1.00,", ",one,")).expect("it is written");
    let (code, _, err) = metric(&["size", "@hatchback", "--by", "cost", "--price-list", path]);
    assert_eq!(code, 2);
    assert!(err.contains("prices.csv") && err.contains("line"), "{err}");
}
