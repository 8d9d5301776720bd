//! Numbers in a lesson's words: they are those on the drawing beside them, in the reader's language and units.

use drawing::{Layout, Look, Overlay, Owner, Shape, draw};
use lessons::{BuiltIn, LESSONS, Lesson, Told, Version};
use words::{Language, Lengths, Reader, Sizes, Words};

fn lesson(key: &str) -> Lesson {
    BuiltIn::of(key).map_or_else(|| panic!("no lesson {key}"), BuiltIn::lesson)
}

fn reader(language: Language) -> Words {
    Words::of(Reader {
        language,
        lengths: Lengths::Feet,
        sizes: Sizes::Awg,
    })
}

/// The places for a number of a run in a lesson: name and tag.
fn places(text: &str) -> Vec<(&str, &str)> {
    let pieces = text.split('{').skip(1);
    let places = pieces.filter_map(|piece| piece.split_once('}')?.0.split_once(' '));
    places.filter(|(_, tag)| tag.starts_with('W')).collect()
}

/// What an overlay writes at a run of the bad version.
fn written(lesson: &Lesson, told: &Told<'_>, overlay: Overlay, tag: &str, words: &Words) -> Vec<String> {
    let sheet = lesson.sheet(Version::Bad);
    let layout = Layout::read_by(&sheet, words);
    let look = Look {
        overlay,
        zoom: 1.0,
        ..Look::default()
    };
    let all = layout.bounds().expect("something is drawn").inflate(500.0, 500.0);
    let list = draw(
        &sheet,
        &layout,
        Some(&told.shown(Version::Bad).analysis.study),
        &look,
        all,
    );
    let (id, _) = sheet.run_by_tag(tag).expect("a run");
    let own = list.items.iter().filter(|item| item.owner == Owner::Run(id));
    own.filter_map(|item| match &item.shape {
        Shape::Text { text, .. } => Some(text.clone()),
        _ => None,
    })
    .collect()
}

#[test]
fn text_and_drawing_say_the_same_number() {
    let mut held = 0;
    for words in [Words::english(), reader(Language::German)] {
        for built_in in LESSONS {
            let lesson = built_in.lesson();
            let told = Told::of(&lesson);
            let looks = lesson.looks.iter().map(|look| &look.says);
            for (name, tag) in lesson.story.iter().chain(looks).flat_map(|it| places(it)) {
                let overlay = match name {
                    "current" => Overlay::Current,
                    "temperature" => Overlay::Heat,
                    "drop" => Overlay::Voltage,
                    _ => continue,
                };
                let number = told.tell(&format!("{{{name} {tag}}}"), None, &words);
                let drawn = written(&lesson, &told, overlay, tag, &words);
                // A number that finds no room is left out.
                let Some(drawn) = drawn
                    .iter()
                    .find(|it| **it != *tag && it.contains(|c: char| c.is_ascii_digit()))
                else {
                    continue;
                };
                assert!(
                    drawn.trim_start_matches('−') == number,
                    "{}: {name} {tag} is told as {number} and drawn as {drawn}",
                    built_in.key
                );
                held += 1;
            }
        }
    }
    assert!(held > 20, "{held} numbers were held against the drawing");
}

/// A foot is 0.3048 m exactly; gauge numbers by ASTM B258: 1/0 is 53.5 mm², 4 is 21.2 mm².
#[test]
fn numbers_are_told_in_the_readers_units() {
    let text = "lesson a\nsystem\n    battery B1 70Ah\n    fuse F1 100A\n    amplifier A1 sections=\"2x 100W@4ohm\" line\n    \
                run W1 B1.+ F1.in 21.2mm2 3.048m copper\n    run W2 F1.out A1.+ 53.49mm2 0.3m copper\n    \
                run W3 A1.- B1.- 16mm2 0.3m copper\n";
    let lesson = lessons::read(text).unwrap_or_else(|errors| panic!("{errors}"));
    let told = Told::of(&lesson);
    let tell = |text: &str, words: &Words| told.tell(text, None, words);
    let american = reader(Language::English);
    assert_eq!(
        tell("{length W1} of {size W1}, then {size W2}", &american),
        "10 ft of 4 AWG, then 1/0 AWG"
    );
    let german = Words::of(Reader {
        language: Language::German,
        ..Reader::default()
    });
    assert_eq!(tell("{length W1}, {size W1}", &german), "3,05 m, 21,2 mm²");
    assert!(tell("{resistance W1}", &german).ends_with(" mΩ"));
    // Of a hundred: a whole number, not a hundredth.
    let left = tell("{charge B1}", &Words::english());
    assert!(left.ends_with(" %") && left != "{charge B1}", "{left}");
    let share: f64 = left.trim_end_matches(" %").parse().expect("a number");
    assert!((1.0..=100.0).contains(&share), "{left}");
}

/// What heats is the RMS current; music has a mean below it and bursts above.
#[test]
fn mean_rms_and_burst_are_three_numbers_of_one_current() {
    let lesson = lessons::BuiltIn::of("daisy-chained-grounds")
        .expect("built in")
        .lesson();
    let told = Told::of(&lesson);
    let amps = |name: &str| {
        let (number, unit) = lessons::measures::measure(told.shown(Version::Bad).judged(), name, "W7")
            .unwrap_or_else(|why| panic!("{why}"));
        assert_eq!(unit, "A");
        number
    };
    let [mean, rms, burst] = ["current", "rms", "burst"].map(amps);
    assert!(0.0 < mean && mean < rms && rms < burst, "{mean} {rms} {burst}");
}

/// An instructor is told of a place that has no number before a class reads it, in whatever text it stands.
#[test]
fn a_place_without_a_number_is_told_wherever_it_stands() {
    let mut lesson = lesson("ring-feed");
    assert!(Told::of(&lesson).unfilled().is_empty());
    lesson.explanation.push("W2 carries {current W2}.".to_owned());
    lesson.breaks[0].says = "{broken good current W99}".to_owned();
    lesson.questions[0].answers[1].says = "{drop".to_owned();
    let told: Vec<String> = Told::of(&lesson)
        .unfilled()
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(
        told,
        [
            "A brace is not closed in: {drop",
            "The place “broken good current W99” has no number: There is no run or part “W99”."
        ]
    );
}

/// Numbers that Ohm's law gives by hand: coils of 4 Ω side by side are 2 Ω and in a row 8 Ω; of 4 Ω and 8 Ω side by side the
/// first takes twice the power of the second; two equal wires share equally, and one left alone carries at least
/// twice as much into a constant power.
#[test]
fn numbers_told_are_those_of_ohms_law() {
    let number = |key: &str, text: &str| {
        let lesson = lesson(key);
        let told = Told::of(&lesson).tell(text, None, &words::Words::english());
        let digits = told.split(' ').next().and_then(|it| it.parse::<f64>().ok());
        digits.unwrap_or_else(|| panic!("{key}: {text} is told as {told}"))
    };
    assert_eq!(number("coils-on-bridged-amplifier", "{load A1.1}"), 2.0);
    assert_eq!(number("coils-on-bridged-amplifier", "{good load A1.1}"), 8.0);
    assert_eq!(
        number("coils-on-bridged-amplifier", "{broken bad load A1.1}"),
        4.0
    );
    assert_eq!(number("mixed-impedances", "{load A1.1}"), 2.67, "4·8/(4+8)");
    let [first, second] = ["{power LS1}", "{power LS2}"].map(|it| number("mixed-impedances", it));
    assert!((first / second - 2.0).abs() < 0.02, "{first} {second}");
    let [one, other, alone] = ["{current W2}", "{current W3}", "{broken bad current W3}"]
        .map(|it| number("parallel-small-wires", it));
    assert!(one == other && alone >= 2.0 * one, "{one} {other} {alone}");
}

#[test]
fn a_place_that_cannot_be_filled_in_stays_and_is_told() {
    let mut lesson = lesson("fuse-far-from-battery");
    lesson.story = vec!["{current W99} and {nonsense A1} and {good current W1} {".to_owned()];
    let told = Told::of(&lesson);
    let text = told.tell(&lesson.story[0], None, &words::Words::english());
    assert!(
        text.starts_with("{current W99} and {nonsense A1} and ") && text.ends_with(" A {"),
        "{text}"
    );
    let problems: Vec<String> = told.problems().iter().map(ToString::to_string).collect();
    let problems = problems.join("\n");
    for part in [
        "no run or part “W99”",
        "no “nonsense” of “A1”",
        "A brace is not closed",
    ] {
        assert!(problems.contains(part), "{part}:\n{problems}");
    }
}
