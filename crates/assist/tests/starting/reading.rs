//! What is read of a line, in both languages, and what is told of what is not.

use assist::starting::{Understood, line, read};
use words::{Language, Words};

fn told(text: &str) -> Vec<String> {
    let Understood { not, .. } = read(text);
    not.iter().map(|it| format!("{}: {}", it.text, it.why)).collect()
}

/// Lines as an installer types them, each above the wish that is read of it, written anew. Read by eye; to change one, change
/// the file.
#[test]
fn lines_as_they_are_typed_read_as_they_are_meant() {
    for (name, language) in [
        ("english.txt", Language::English),
        ("german.txt", Language::German),
    ] {
        let path = format!("{}/tests/starting/{name}", env!("CARGO_MANIFEST_DIR"));
        let kept = std::fs::read_to_string(&path).expect("the file of lines");
        let mut anew = String::new();
        let mut count = 0;
        for text in kept
            .lines()
            .filter(|line| !line.starts_with("  ") && !line.is_empty())
        {
            let it = read(text);
            assert_eq!(it.not, [], "{text}");
            anew.push_str(&format!("{text}\n  {}\n", line(&it.wish, language)));
            count += 1;
        }
        if std::env::var_os("UPDATE_EXPECT").is_some() {
            std::fs::write(&path, &anew).expect("the file is written");
        } else {
            assert_eq!(kept, anew, "{path}");
        }
        assert!(count >= 20, "{path}: {count}");
    }
}

/// The engine has no source that gives what the sun does: that is said, and no number beside it becomes anything else.
#[test]
fn a_solar_panel_is_refused_by_name() {
    for text in [
        "camper, leisure battery 100 Ah, 200 W solar panel with MPPT controller 20 A, fridge",
        "Wohnmobil, Zusatzbatterie 100 Ah, Solaranlage 200 W mit Solarregler 20 A, Kühlschrank",
    ] {
        let it = read(text);
        let keys: Vec<&str> = it.not.iter().map(|it| it.why.key()).collect();
        assert_eq!(keys, ["start-no-solar"; 2], "{text}");
        assert_eq!(
            it.wish,
            read("camper, leisure battery 100 Ah, fridge").wish,
            "{text}"
        );
    }
}

#[test]
fn what_is_written_reads_back_the_same_in_both_languages() {
    for name in ["english.txt", "german.txt"] {
        let path = format!("{}/tests/starting/{name}", env!("CARGO_MANIFEST_DIR"));
        for text in std::fs::read_to_string(&path).expect("the file of lines").lines() {
            let wish = read(text.trim()).wish;
            for language in Language::ALL {
                let written = line(&wish, *language);
                let back = read(&written);
                assert_eq!(back.not, [], "{written}");
                assert_eq!(back.wish, wish, "{written}");
            }
        }
    }
}

#[test]
fn what_is_not_understood_is_told_where_it_stands_and_with_what_would_do() {
    let text = "hatchbak, 4 × 75 W amp";
    let it = read(text);
    let [not] = &it.not[..] else {
        panic!("{:?}", it.not)
    };
    assert_eq!(text.get(not.at.clone()), Some("hatchbak"));
    assert!(not.why.to_string().contains("“hatchback”"), "{}", not.why);
    // The rest is read all the same.
    assert_eq!(line(&it.wish, Language::English), "amplifier 4 × 75\u{a0}W");

    assert!(
        told("radio, 75")
            .first()
            .is_some_and(|it| it.contains("A number of what?")),
        "{:?}",
        told("radio, 75")
    );
    assert!(
        told("2 subs in series")
            .first()
            .is_some_and(|it| it.contains("is chosen here"))
    );
    assert!(
        told("alternator 120 A mono amp")
            .iter()
            .any(|it| it.contains("put a comma"))
    );
    assert!(
        told("alternator 70 Ah")
            .first()
            .is_some_and(|it| it.starts_with("70 Ah"))
    );
    assert!(
        told("front components, rear pair, front pair")
            .first()
            .is_some_and(|it| it.contains("told already"))
    );
    assert!(
        told("5 mono amps 300 W")
            .first()
            .is_some_and(|it| it.contains("More than 4"))
    );
}

#[test]
fn whatever_is_typed_gives_an_answer() {
    let letters: Vec<char> = "4×75 WΩaAhx,.;+-#@ \n\u{ad}éß🚗mono amp sub front 2 ohm"
        .chars()
        .collect();
    let mut state = 12_345_u64;
    for _ in 0..300 {
        let mut text = String::new();
        for _ in 0..40 {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            let at = (state >> 33) as usize % letters.len();
            text.push(letters[at]);
        }
        let it = read(&text);
        // Every place that is told lies in the text.
        assert!(
            it.not.iter().all(|it| text.get(it.at.clone()).is_some()),
            "{text:?}"
        );
    }
    assert_eq!(read(&"amp ".repeat(2000)).not.len(), 1);
    assert_eq!(read("").wish, assist::starting::Wish::default());
}

/// Words of the labels are in the language of who starts.
#[test]
fn labels_are_in_the_readers_language() {
    let german = Words::of(words::Reader {
        language: Language::German,
        ..words::Reader::default()
    });
    let wish = read("Kombi, Mono 300 W an 4 Ohm, Subwoofer 4 Ohm").wish;
    let job = model::Job::default();
    let started = assist::starting::start(&wish, &job, model::SheetKind::Plan, &german).expect("it is drawn");
    let labels: Vec<&str> = started
        .sheet
        .parts
        .values()
        .map(|part| part.label.as_str())
        .collect();
    assert!(
        labels.contains(&"Bassendstufe") && labels.contains(&"Hauptsicherung"),
        "{labels:?}"
    );
}
