//! Runs the built program as its users do: exit codes, streams, messages.

#![allow(clippy::disallowed_methods)]

mod searches;

use assert_cmd::Command;

fn loomwright(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_loomwright"));
    command.args(arguments).env("COLUMNS", "100");
    // The language of the machine that tests run on is nobody's business.
    command.env("LC_ALL", "C");
    command
}

fn output(command: &mut Command) -> (i32, String, String) {
    let output = command.output().expect("the program starts");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (
        output.status.code().unwrap_or(-1),
        text(&output.stdout),
        text(&output.stderr),
    )
}

/// A call that cannot do its work: exit code 2, and on standard error what is wrong or what there is.
#[track_caller]
fn refused(arguments: &[&str], says: &str) {
    let (code, _, err) = output(&mut loomwright(arguments));
    assert!(code == 2 && err.contains(says), "{code}: {err}");
}

/// The exit code of a call, and the JSON that it writes.
#[track_caller]
fn json(arguments: &[&str]) -> (i32, serde_json::Value) {
    let (code, out, err) = output(&mut loomwright(arguments));
    match serde_json::from_str(&out) {
        Ok(value) => (code, value),
        Err(error) => panic!("{code}: {error}: {out}{err}"),
    }
}

#[test]
fn the_exit_code_tells_stop_from_none_from_bad_input() {
    let (code, out, _) = output(&mut loomwright(&["check", "@estate"]));
    assert_eq!(code, 0, "{out}");
    let (code, out, _) = output(&mut loomwright(&["check", "@van"]));
    assert_eq!(code, 1, "{out}");
    assert!(
        out.contains("isolate the battery"),
        "a Stop finding brings the cautions:\n{out}"
    );
    let (code, out, err) = output(&mut loomwright(&["check", "no-such-file.loom.json"]));
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(err.contains("no-such-file.loom.json: cannot be read"), "{err}");
}

#[test]
fn a_job_comes_in_by_standard_input_in_both_forms() {
    let text = "battery B1\nload L1\nrun W1 B1.+ L1.+ 2.5mm2 1m\nrun W2 L1.- B1.- 2.5mm2 1m BK\n";
    let (code, out, err) = output(loomwright(&["check", "-"]).write_stdin(text));
    assert_eq!(code, 1, "{out}{err}");
    assert!(out.contains("feed-unprotected"), "{out}");
    let (code, file, _) = output(loomwright(&["format", "-"]).write_stdin(text));
    assert_eq!(code, 0);
    assert!(file.starts_with('{'));
    let (code, again, err) = output(loomwright(&["check", "-"]).write_stdin(file));
    assert_eq!((code, again), (1, out), "{err}");
}

#[test]
fn an_error_in_a_text_job_names_line_and_column() {
    let (code, _, err) = output(loomwright(&["check", "-"]).write_stdin("battery B1\nfuze F1 60A\n"));
    assert_eq!(code, 2);
    assert!(
        err.contains("line 2, column 1") && err.contains("did you mean `fuse`"),
        "{err}"
    );
}

#[test]
fn an_unknown_sheet_part_or_check_says_what_there_is() {
    refused(&["check", "@estate", "--sheet", "built"], "the job has plan");
    refused(&["trace", "@estate", "--part", "A9"], "A1");
    refused(&["explain", "fuse-far"], "fuse-too-far");
}

#[test]
fn a_trace_names_devices_and_return() {
    let (code, out, _) = output(&mut loomwright(&["trace", "@estate", "--part", "A1"]));
    assert_eq!(code, 0);
    assert!(
        out.contains("fed at + from B1 over W11 W12 W14") && out.contains("F1, then D1.out2"),
        "{out}"
    );
    assert!(out.contains("returns to B1") && out.contains("E1"), "{out}");
}

#[test]
fn json_is_json() {
    for command in ["check", "solve", "trace", "speakers"] {
        let (_, out, err) = output(&mut loomwright(&[command, "@camper", "--json"]));
        assert!(
            serde_json::from_str::<serde_json::Value>(&out).is_ok(),
            "{command}: {err}"
        );
    }
}

#[test]
fn a_drawing_is_svg_and_a_schema_is_a_schema() {
    let (_, out, err) = output(&mut loomwright(&["draw", "@camper"]));
    assert!(out.starts_with("<svg") || out.starts_with("<?xml"), "{err}");
    let (_, out, _) = output(&mut loomwright(&["schema"]));
    assert!(out.contains("\"$schema\""));
}

#[test]
fn a_sheet_is_drawn_over_another() {
    let job = "sheet found\nbattery B1 @0,0\nfuse F1 strip61 200A @300,0\nload L1 @600,0\nrun W1 B1.+ F1.in 16mm2 2m RD\n\
               sheet plan\nbattery B1 @0,0\nfuse F1 strip61 60A @300,0\nground E1 @0,300\nrun W1 B1.+ F1.in 16mm2 2m RD\n";
    let (code, out, err) = output(loomwright(&["draw", "-", "--under", "found"]).write_stdin(job));
    assert_eq!(code, 0, "{err}");
    assert!(
        out.contains("Found under Plan: 2 kept, 1 changed, 1 new, 1 removed"),
        "{out}"
    );
    assert!(
        out.contains(">L1</text>"),
        "what is removed shows its tag:\n{out}"
    );
    let (_, without, _) = output(loomwright(&["draw", "-"]).write_stdin(job));
    assert!(
        !without.contains(">L1<") && !without.contains("kept"),
        "{without}"
    );
    let (code, turned, err) =
        output(loomwright(&["draw", "-", "--sheet", "found", "--under", "plan"]).write_stdin(job));
    assert!(
        code == 0 && turned.contains("Plan under Found: 2 kept, 1 changed, 1 new, 1 removed"),
        "{err}"
    );
    let (code, _, err) = output(loomwright(&["draw", "-", "--under", "built"]).write_stdin(job));
    assert!(code == 2 && err.contains("besides it the job has found"), "{err}");
    let (code, _, err) = output(loomwright(&["draw", "-", "--under", "plan"]).write_stdin(job));
    assert!(code == 2 && err.contains("cannot lie under itself"), "{err}");
}

#[test]
fn help_documents_the_exit_codes() {
    let (code, out, _) = output(&mut loomwright(&["--help"]));
    assert!(code == 0 && out.contains("Exit codes: 0"), "{out}");
}

#[test]
fn a_link_is_made_and_opened() {
    let address = "https://wiring.example/board/";
    let (code, out, err) = output(&mut loomwright(&["link", "@van", "--address", address]));
    assert_eq!(code, 0, "{err}");
    assert!(
        out.contains("Left out: 1 notes and remarks (--notes shows them), 2 names (--names shows them)."),
        "{out}"
    );
    let link = out.lines().next().expect("a link");
    assert!(link.starts_with("https://wiring.example/board/#job="), "{link}");
    let (code, text, err) = output(&mut loomwright(&["open", link, "--text"]));
    assert_eq!(code, 0, "{err}");
    assert!(
        text.contains("amplifier A1") && !text.contains("The bench"),
        "{text}"
    );

    let (_, out, _) = output(&mut loomwright(&[
        "link",
        "@van",
        "--address",
        address,
        "--notes",
        "--names",
    ]));
    let whole = out.lines().next().expect("a link");
    let (_, file, _) = output(loomwright(&["open", "-"]).write_stdin(whole));
    let (_, van, _) = output(&mut loomwright(&["format", "@van"]));
    assert_eq!(file, van, "nothing is lost where everything is shown");

    let (code, out, err) = output(&mut loomwright(&["open", &link[..link.len() - 9]]));
    assert_eq!((code, out.as_str()), (2, ""));
    assert!(err.contains("cut short or changed"), "{err}");
    refused(&["link", "@van", "--address", "board"], "starts with https://");
}

#[test]
fn lessons_are_listed_told_and_opened() {
    let (code, out, _) = output(&mut loomwright(&["lesson"]));
    assert_eq!(code, 0);
    assert_eq!(out.lines().count(), 18, "a heading and seventeen lessons:\n{out}");
    let (code, out, _) = output(&mut loomwright(&["lesson", "fuse-far-from-battery"]));
    assert_eq!(code, 0);
    assert!(
        out.contains("4.6 m of red cable") && out.contains("Questions"),
        "{out}"
    );
    assert!(!out.contains('{') && !out.contains("<-"), "{out}");
    let (_, out, _) = output(&mut loomwright(&["lesson", "fuse-far-from-battery", "--answers"]));
    assert!(out.contains("<-") && out.contains("33 CFR 183.455"), "{out}");
    let (code, out, _) = output(&mut loomwright(&["check", "@fuse-far-from-battery/bad"]));
    assert!(code == 1 && out.contains("fuse-too-far"), "{out}");
    let (code, out, _) = output(&mut loomwright(&["check", "@fuse-far-from-battery/good"]));
    assert_eq!(code, 0, "{out}");
    let (code, _, err) = output(&mut loomwright(&["lesson", "fuse-far-from-batery"]));
    assert!(
        code == 2 && err.contains("did you mean `fuse-far-from-battery`?"),
        "{err}"
    );
    let (code, _, err) = output(&mut loomwright(&["check", "@ring-feed/best"]));
    assert!(
        code == 2 && err.contains("@ring-feed/bad and @ring-feed/good"),
        "{err}"
    );
}

#[test]
fn a_lesson_of_ones_own_is_read_from_text_and_told_what_is_wrong_with_it() {
    let (code, text, _) = output(&mut loomwright(&["lesson", "ring-feed", "--text"]));
    assert_eq!(code, 0);
    let (code, out, err) = output(loomwright(&["lesson", "-", "--problems"]).write_stdin(text.clone()));
    assert_eq!(
        (code, out.as_str()),
        (0, "-: nothing is wrong with the lesson.\n"),
        "{err}"
    );
    let text = text.replace("{current W2}", "{current W77}");
    let (code, _, err) = output(loomwright(&["lesson", "-", "--problems"]).write_stdin(text.clone()));
    assert!(code == 2 && err.contains("no run or part “W77”"), "{err}");
    let german = ["lesson", "-", "--problems", "--language", "de"];
    let (code, _, err) = output(loomwright(&german).write_stdin(text));
    assert!(
        code == 2
            && err.contains("Es gibt keine Leitung und kein Bauteil „W77“.")
            && !err.contains("There is"),
        "{err}"
    );
    let (code, _, err) = output(loomwright(&["lesson", "-"]).write_stdin("lesson mine\nabuot ring\n"));
    assert!(
        code == 2 && err.contains("line 2, column 1") && err.contains("did you mean `about`?"),
        "{err}"
    );
}

#[test]
fn a_page_file_is_made_and_opened() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = |name: &str| folder.path().join(name).to_string_lossy().into_owned();
    // A page as the program's build writes it, in short.
    let template =
        "<!doctype html><script type=\"text/plain\" id=\"loomwright-job\"></script><script>run()</script>";
    std::fs::write(path("page.html"), template).expect("a template");
    let made = path("made.html");
    let (code, out, err) = output(&mut loomwright(&[
        "page",
        "@van",
        "-o",
        &made,
        "--app",
        &path("page.html"),
    ]));
    assert_eq!(code, 0, "{err}");
    assert!(
        out.contains("Left out: 1 notes and remarks (--notes shows them), 2 names"),
        "{out}"
    );
    let page = std::fs::read_to_string(&made).expect("a page");
    assert!(page.ends_with("</script><script>run()</script>"), "{page}");
    let (code, text, err) = output(&mut loomwright(&["open", &made, "--text"]));
    assert_eq!(code, 0, "{err}");
    assert!(
        text.contains("amplifier A1") && !text.contains("The bench"),
        "{text}"
    );

    let all = ["page", "@van", "--notes", "--names", "-o", &made, "--app"];
    let (code, out, err) = output(loomwright(&all).arg(path("page.html")));
    assert!(code == 0 && !out.contains("Left out"), "{out}{err}");
    let (_, file, _) = output(&mut loomwright(&["open", &made]));
    let (_, van, _) = output(&mut loomwright(&["format", "@van"]));
    assert_eq!(file, van, "nothing is lost where everything is shown");

    refused(
        &["page", "@van", "-o", &path("x.html"), "--app", &path("none.html")],
        "cargo xtask bundle",
    );
    refused(
        &["page", "@van", "-o", &path("x.html"), "--app", &made],
        "no empty place",
    );
    refused(&["open", &path("page.html")], "no drawing in this page");
}

#[test]
fn a_lesson_goes_into_a_link_and_comes_out_again() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("mine.lesson");
    let name = path.to_str().expect("a name");
    let (_, text, _) = output(&mut loomwright(&["lesson", "tied-outputs", "--text"]));
    let text = text.replace("lesson tied-outputs", "lesson mine");
    std::fs::write(&path, &text).expect("can be written");
    let (code, made, err) = output(&mut loomwright(&[
        "link",
        name,
        "--address",
        "https://wiring.example/board/",
    ]));
    assert_eq!(code, 0, "{err}");
    let link = made.lines().next().unwrap_or_default();
    assert!(
        link.starts_with("https://wiring.example/board/#own-lesson="),
        "{link}"
    );
    let (code, opened, err) = output(&mut loomwright(&["open", link]));
    assert_eq!((code, opened), (0, text), "{err}");
    let (code, told, err) = output(&mut loomwright(&["lesson", link, "--answers"]));
    assert!(code == 0 && told.contains("A wire saved"), "{err}{told}");
    refused(&["open", &link[..link.len() - 9]], "cut short");
}

#[test]
fn what_an_own_lesson_lacks_is_told() {
    let half = "lesson mine\ntitle Mine\nsystem\n  - battery B1\n";
    let (code, _, err) = output(loomwright(&["lesson", "-", "--problems"]).write_stdin(half));
    assert!(
        code == 2 && err.contains("It has no story") && err.contains("nothing to be found"),
        "{err}"
    );
}

#[test]
fn it_speaks_german_when_asked_or_when_the_environment_is_german() {
    let (code, out, err) = output(&mut loomwright(&[
        "check",
        "@van",
        "--remedies",
        "--language",
        "de",
    ]));
    assert_eq!((code, err.as_str()), (1, ""));
    assert!(
        out.contains("steht von B1 her unter Spannung") || out.contains("stehen von B1 her unter Spannung"),
        "{out}"
    );
    assert!(
        out.contains("die Batterie abklemmen") && out.contains(" Halt, "),
        "{out}"
    );
    let mut by_environment = loomwright(&["check", "@van", "--remedies"]);
    let (_, same, _) = output(by_environment.env("LC_ALL", "de_AT.UTF-8"));
    assert_eq!(same, out);
    // What is said in the call comes before the environment, and a language that is not there reads as English.
    let mut english = loomwright(&["check", "@van", "--language", "en"]);
    let (_, told, _) = output(english.env("LC_ALL", "de_DE.UTF-8"));
    assert!(told.contains("live from B1"), "{told}");
    let (_, french, _) = output(loomwright(&["check", "@van"]).env("LC_ALL", "fr_FR.UTF-8"));
    assert_eq!(french, told);
    let (code, page, _) = output(&mut loomwright(&["explain", "fuse-too-far", "--language=de"]));
    assert!(
        code == 0 && page.contains("## Warum das wichtig ist") && page.contains("0,45 m"),
        "{page}"
    );
    // A worked job has German names too.
    assert!(
        out.contains("Handwerkertransporter") && !told.contains("Handwerkertransporter"),
        "{out}"
    );
    for command in ["solve", "trace", "speakers"] {
        let (_, german, _) = output(&mut loomwright(&[command, "@van", "--language", "de"]));
        let (_, english, _) = output(&mut loomwright(&[command, "@van"]));
        assert!(german != english && !german.contains('$'), "{german}");
    }
}

#[test]
fn help_and_errors_of_the_call_are_german_too() {
    let (code, out, _) = output(&mut loomwright(&["--language", "de", "check", "--help"]));
    assert!(
        code == 0 && out.contains("Aufruf: loomwright check") && out.contains("Nennt zu jedem Befund"),
        "{out}"
    );
    assert!(out.contains("loomwright check [OPTIONEN] <JOB>"), "{out}");
    assert!(!out.contains("Options:") && !out.contains("Print help"), "{out}");
    let (_, whole, _) = output(&mut loomwright(&["--language", "de", "--help"]));
    assert!(
        whole.contains("Aufruf: loomwright [OPTIONEN] <BEFEHL>") && !whole.contains("COMMAND"),
        "{whole}"
    );
    for (call, said) in [
        (&["chek"][..], "keinen Befehl `chek`"),
        (&["check"], "es fehlt: <JOB>"),
        (
            &["check", "@van", "--sheet", "attic"],
            "möglich sind found, plan, built",
        ),
        (&["check", "@van", "--json=x"], "--json nimmt keinen Wert"),
        (&["check", "@nowhere"], "keinen ausgearbeiteten Auftrag @nowhere"),
        (&["explain", "fuze"], "keine Prüfung `fuze`"),
        (&["check", "no-such-file.loom.json"], "lässt sich nicht lesen"),
    ] {
        let (code, out, err) = output(loomwright(call).args(["--language", "de"]));
        assert!(
            code == 2 && out.is_empty() && err.contains(said),
            "{call:?}: {err}"
        );
    }
    // What is wrong with a job is German as well, in either form.
    let spoilt = "{\"format\":\"loomwright-job\",\"version\":1,\"title\":7}";
    for (text, said) in [
        (
            "battery B1\nfuze F1 60A\n",
            "Zeile 2, Spalte 1: es gibt keine Bauteilart und keine Zeile `fuze`",
        ),
        (spoilt, "title: ist kein Text"),
    ] {
        let call = ["--language", "de", "check", "-"];
        let (code, _, err) = output(loomwright(&call).write_stdin(text));
        assert!(code == 2 && err.contains(said), "{err}");
    }
}

#[test]
fn labels_are_written_as_sheets_to_cut() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let file = folder.path().join("labels.html");
    let path = file.to_str().expect("a path");
    let (code, out, err) = output(&mut loomwright(&["labels", "@estate", "--output", path]));
    assert!(code == 0 && out.contains("labels on 2 sheets"), "{out}{err}");
    let page = std::fs::read_to_string(&file).expect("the sheets");
    assert_eq!(page.matches("class=\"labels\"").count(), 2);
    // Found was there before: nothing of it is laid.
    let (code, _, err) = output(loomwright(&["labels", "-", "-o", path]).write_stdin("battery B1\n"));
    assert!(code == 2 && err.contains("would get a label"), "{err}");
}

/// 1 ft = 0.3048 m and 1 in = 25.4 mm exactly (international yard and pound agreement, 1959); areas of gauge numbers by
/// ASTM B258.
#[test]
fn lengths_and_sizes_are_told_in_the_units_asked_for() {
    let text = "battery B1 agm 70Ah cranking=640A\nfuse F1 strip61 60A\nload L1 power=100W\n\
        run W1 B1.+ F1.in 16mm2 1.8288m RD\nrun W2 F1.out L1.+ 2.5mm2 2m RD\nrun W3 L1.- B1.- 2.5mm2 2m BK\n";
    let told = |units: &[&str]| {
        output(
            loomwright(&["check", "-", "--remedies"])
                .args(units)
                .write_stdin(text),
        )
        .1
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
    };
    let (metric, american) = (told(&[]), told(&["--units", "awg"]));
    assert!(
        metric.contains("sits 1.83 m of wire from B1") && metric.contains("0.45 m is the limit"),
        "{metric}"
    );
    assert!(
        american.contains("sits 6 ft of wire from B1") && american.contains("17.7 in is the limit"),
        "{american}"
    );
    // A size to be laid is told as it is sold: these runs are made in square millimetres, and so is what takes their place.
    assert!(
        american.contains(" AWG) copper") && american.contains(" mm² (≈ ") && metric.contains(" mm² copper"),
        "{american}"
    );
    assert!(!metric.contains("AWG"), "{metric}");
    refused(&["check", "@van", "--units", "leagues"], "metric, awg");
}

#[test]
fn json_carries_key_values_and_the_english_sentence_in_every_language() {
    let (_, out, _) = output(&mut loomwright(&["check", "@van", "--json", "--language", "de"]));
    let findings: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let all = findings.as_array().expect("a list");
    let far = all
        .iter()
        .find(|finding| finding["check"] == "fuse-too-far")
        .expect("the main fuse sits too far out");
    let what = &far["what"];
    assert_eq!(what["key"], "fuse-too-far-what");
    assert_eq!(what["far"], serde_json::json!([2.4, "m"]));
    let english = what["english"].as_str().expect("a sentence");
    assert!(english.starts_with("F1 sits 2.4 m of wire from B1"), "{english}");
}

#[test]
fn ways_through_the_body_are_listed_proposed_and_laid_anew() {
    let job = "body estate\nbattery B1 place=battery-tray\nload L1 10A place=side-right\nload L2 place=attic\n\
               run W1 B1.+ L1.+ 4mm2\nrun W2 B1.+ L2.+ 4mm2 2m route=attic\n";
    let (code, out, err) = output(loomwright(&["routes", "-"]).write_stdin(job));
    assert_eq!(code, 0, "{err}");
    assert!(
        out.contains("no way laid") && out.contains("does not have attic"),
        "{out}"
    );
    assert!(out.contains("measure in the vehicle before cutting"), "{out}");
    let (_, out, _) = output(loomwright(&["routes", "-", "W1"]).write_stdin(job));
    assert!(
        out.contains("\n1. ") && out.contains("\n2. ") && out.contains("of wire"),
        "{out}"
    );
    let folder = tempfile::tempdir().expect("there is room");
    let file = folder.path().join("laid.loom.json");
    let path = file.to_str().expect("a plain name");
    let (code, out, err) = output(loomwright(&["routes", "-", "--anew", "-o", path]).write_stdin(job));
    assert!(code == 0 && out.contains("battery-bulkhead /"), "{out}{err}");
    // What was laid is in the file, and a length that follows from it is not.
    let (_, all) = json(&["routes", path, "--json"]);
    assert_eq!(all[0]["length-is"], "computed");
    assert_eq!(all[0]["route"][0], "battery-bulkhead");
    assert_eq!(all[1]["length"], 2.0);
    assert!(
        !std::fs::read_to_string(&file)
            .expect("it was written")
            .contains("computed")
    );
    let (code, _, err) = output(loomwright(&["routes", "-", "W9"]).write_stdin(job));
    assert!(code == 2 && err.contains("W1 W2"), "{err}");
    let (code, out, _) = output(&mut loomwright(&["routes", path, "--places"]));
    assert!(
        code == 0 && out.contains("under-seat-left") && out.contains("bulkhead-grommet-right"),
        "{out}"
    );
    let (_, all) = json(&["routes", path, "--places", "--json"]);
    let places = all["places"].as_array().expect("a list");
    let under = places
        .iter()
        .find(|it| it["name"] == "under-seat-left")
        .expect("it is there");
    assert_eq!(
        (&under["facts"]["crush"], &under["facts"]["behind"]),
        (&true.into(), &"lines".into())
    );
    let (code, out, err) = output(&mut loomwright(&["draw", "--body", path]));
    assert!(
        code == 0 && out.starts_with("<svg") && out.contains("dashboard, middle"),
        "{err}"
    );
    let without = "battery B1\nload L1 10A\nrun W1 B1.+ L1.+ 4mm2\n";
    let (code, _, err) = output(loomwright(&["draw", "--body", "-"]).write_stdin(without));
    assert!(code == 2 && err.contains("body estate"), "{err}");
    let (code, _, err) = output(loomwright(&["routes", "-"]).write_stdin(without));
    assert!(code == 2 && err.contains("body estate"), "{err}");
}

#[test]
fn lists_come_as_tables_as_files_and_as_json() {
    let (code, out, err) = output(&mut loomwright(&["lists", "@hatchback", "--list", "cut,order"]));
    assert_eq!(code, 0, "{err}");
    assert!(
        out.contains("starting from Found") && out.contains("Cut (m)"),
        "{out}"
    );
    let (code, out, _) = output(&mut loomwright(&[
        "lists",
        "@hatchback",
        "--list",
        "fuses",
        "--csv",
    ]));
    assert!(code == 0 && out.starts_with("Fuse,Name,Type,Rating (A)"), "{out}");
    let (code, out, _) = output(&mut loomwright(&["lists", "@hatchback", "--json"]));
    let all: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert!(
        code == 0 && all.as_array().is_some_and(|all| all.len() == 19),
        "{out}"
    );
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("lists");
    let path = path.to_str().expect("a name");
    let (code, out, err) = output(&mut loomwright(&["lists", "@van", "--csv", "--output", path]));
    assert_eq!(code, 0, "{out}{err}");
    let order = std::fs::read_to_string(format!("{path}/order.csv")).expect("the file");
    assert!(order.starts_with("\u{feff}Article,"), "{order}");
}

#[test]
fn a_price_list_prices_the_order_and_a_wrong_one_says_where() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("prices.csv");
    std::fs::write(
        &path,
        "article;price;hours\nlabel;0,05;\nfuse strip61 60A;6.50;0,1\n",
    )
    .expect("written");
    let path = path.to_str().expect("a name");
    let call = ["lists", "@hatchback", "--list", "order", "--price-list", path];
    let (code, out, err) = output(&mut loomwright(&call));
    // 22 labels at 0.05 and one fuse at 6.50.
    assert!(
        code == 0 && out.contains("By the price list: 7.60 EUR"),
        "{out}{err}"
    );
    std::fs::write(path, "article,price\nlabel,cheap\n").expect("written");
    let (code, _, err) = output(&mut loomwright(&call));
    assert!(code == 2 && err.contains("line 2"), "{err}");
}

#[test]
fn lists_that_cannot_be_made_say_what_there_is() {
    refused(&["lists", "@hatchback", "--list", "shopping"], "order");
    refused(&["lists", "@estate", "--since", "found"], "before plan");
    refused(&["lists", "@estate", "--csv"], "--output");
    refused(&["lists", "@estate", "--waste", "lots"], "0 … 100");
}

#[test]
fn a_handover_is_one_file_and_tells_what_stays_out() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("handover.html");
    let path = path.to_str().expect("a name");
    let (code, out, err) = output(&mut loomwright(&["handover", "@hatchback", "-o", path]));
    assert!(code == 0 && out.contains("Left out"), "{out}{err}");
    let page = std::fs::read_to_string(path).expect("the file");
    assert!(page.starts_with("<!doctype html>") && page.contains("How to isolate the system"));
    refused(&["handover", "@estate", "-o", path, "--sheet", "built"], "plan");
}

#[test]
fn a_list_tears_no_word_of_its_cells() {
    for (language, words) in [
        ("en", ["Sound-deadening", "telephone"]),
        ("de", ["Kupferleitung", "angenommen"]),
    ] {
        let call = ["lists", "@hatchback", "--list", "quote", "--language", language];
        let (code, out, err) = output(&mut loomwright(&call));
        assert_eq!(code, 0, "{err}");
        assert!(words.iter().all(|word| out.contains(word)), "{out}");
        assert!(out.lines().all(|line| line.chars().count() <= 100), "{out}");
    }
}
