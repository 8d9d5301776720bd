//! Things told in plain words: every number is the engine's, and nothing is left without words.

mod hand;

use drawing::numbers::amps;
use editor::Thing;
use hand::Hand;
use words::Words;

#[test]
fn every_part_and_run_of_the_worked_jobs_is_told() {
    for worked in lessons::WORKED_JOBS {
        let hand = Hand::new(worked.text());
        let sheet = hand.editor.sheet();
        let things = sheet
            .parts
            .keys()
            .map(|id| Thing::Part(*id))
            .chain(sheet.runs.keys().map(|id| Thing::Run(*id)));
        for thing in things {
            let told = hand.editor.plain(&thing);
            assert!(!told.is_empty(), "{} {thing:?}", worked.key);
            for sentence in told {
                assert!(
                    sentence.ends_with('.') && !sentence.contains("  ") && !sentence.contains(" ,"),
                    "{sentence}"
                );
                // The word is never used of work on wiring.
                assert!(!sentence.to_lowercase().contains("safe"), "{sentence}");
            }
        }
    }
}

#[test]
fn an_amplifier_is_told_with_the_engines_numbers() {
    let estate = lessons::WorkedJob::of("estate").unwrap();
    let hand = Hand::new(estate.text());
    let (id, _) = hand.editor.sheet().part_by_tag("A1").unwrap();
    let told = hand.editor.plain(&Thing::Part(id)).join("\n");
    let study = &hand.editor.analysis().study;
    let flow = &study.parts[&id];
    for words in [
        "It gets current from B1 (Main battery) through F1 and D1".to_owned(),
        "through the vehicle's body".to_owned(),
        format!("it takes {}", amps(&Words::english(), flow.current.mean.0)),
        format!("for moments {}", amps(&Words::english(), flow.current.burst.0)),
        "Channel 1 plays LS1 and LS2".to_owned(),
    ] {
        assert!(told.contains(&words), "{words} in\n{told}");
    }
}

#[test]
fn what_is_wrong_is_told_plainly() {
    let van = lessons::WorkedJob::of("van").unwrap();
    let hand = Hand::new(van.text());
    let told = |tag: &str| {
        let sheet = hand.editor.sheet();
        let thing = sheet
            .part_by_tag(tag)
            .map(|(id, _)| Thing::Part(id))
            .or_else(|| sheet.run_by_tag(tag).map(|(id, _)| Thing::Run(id)))
            .unwrap();
        hand.editor.plain(&thing).join("\n")
    };
    assert!(told("LS4").contains("It is silent: "), "{}", told("LS4"));
    assert!(told("LS2").contains("wrong way round"), "{}", told("LS2"));
    assert!(
        told("W39").contains("Nothing cuts it off from B1 (Main battery) if it is shorted."),
        "{}",
        told("W39")
    );
    assert!(told("W45").contains("that end is loose"), "{}", told("W45"));
    assert!(
        told("F1").contains("is made for 200 A and guards"),
        "{}",
        told("F1")
    );
}
