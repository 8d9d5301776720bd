//! Random jobs and edits, for tests of what must hold for all of them. They are valid by the rules of the file, but
//! make no sense as wiring: see the generator of random systems for jobs that do.

use model::body::{Body, BodyShape, OwnPassage, OwnPlace};
use model::conductor::{AWG_SERIES, Colour, FittedBy};
use model::handling::Handling;
use model::id::TerminalRef;
use model::job::{Ending, VehicleInfo, Wire};
use model::laying::Laying;
use model::mounting::Mounting;
use model::picture::{Picture, PictureFacts, PictureForm};
use model::property::{Property, PropertySet, Shape};
use model::thread::Thread;
use model::{
    BoardPoint, Change, Edit, End, Job, Part, PartId, PartKind, Run, RunId, Settings, Sheet, SheetKind, Turn,
};
use proptest::collection::{btree_set, vec};
use proptest::prelude::*;
use proptest::sample::{Index, select};

/// Any text that may be a label, with everything in it that could upset a parser.
pub fn any_words() -> impl Strategy<Value = String> {
    words_of(0)
}

/// The same, but not empty: the name of a place.
pub fn some_words() -> impl Strategy<Value = String> {
    words_of(1)
}

fn words_of(least: usize) -> impl Strategy<Value = String> {
    let piece = select(vec![
        "a", "Main", " ", "\"", "\\", "#", "=", "/", "~", "~1", "\n", "\t", "\r", "@1,2", "ü", "Ω", "x ",
        "{", "?", "\u{2028}",
    ]);
    vec(piece, least..6).prop_map(|pieces| pieces.concat())
}

/// A number in a range, often one of its ends or a round one.
fn any_number(range: Option<(f64, f64)>) -> BoxedStrategy<f64> {
    let (least, most) = range.unwrap_or((0.1, 100.0));
    prop_oneof![
        Just(least),
        Just(most),
        (0.0..=1.0_f64).prop_map(move |share| (least + (most - least) * share).clamp(least, most)),
        (0.0..=1.0_f64).prop_map(move |share| (least + (most - least) * share).round().clamp(least, most)),
    ]
    .boxed()
}

/// The written form of any value that the property takes.
pub fn any_value(property: &'static Property) -> BoxedStrategy<String> {
    let value = match property.shape {
        Shape::Number { ascii, .. } => {
            any_number(property.range).prop_map(move |number| format!("{number}{ascii}")).boxed()
        }
        Shape::Count => any_number(property.range).prop_map(|n| format!("{}", n.round())).boxed(),
        Shape::YesNo => select(vec!["yes", "no"]).prop_map(str::to_owned).boxed(),
        Shape::Choice(words) => select(words.iter().map(|(word, _)| (*word).to_owned()).collect::<Vec<_>>()).boxed(),
        Shape::Text { .. } => match property.name {
            "size" => prop_oneof![
                select(AWG_SERIES.iter().map(|(word, _)| format!("{word}AWG")).collect::<Vec<_>>()),
                any_number(Some((0.05, 400.0))).prop_map(|area| format!("{area}mm2")),
            ]
            .boxed(),
            "colour" => prop_oneof![
                9 => (select(Colour::ALL), proptest::option::of(select(Colour::ALL)))
                    .prop_map(|(base, tracer)| format!("{}{}", base.word(), tracer.map_or("", |c| c.word()))),
                1 => Just("?".to_owned()),
            ]
            .boxed(),
            "fuses" => vec(
                prop_oneof![Just("-".to_owned()), any_number(Some((0.1, 1000.0))).prop_map(|a| format!("{a}A"))],
                0..12,
            )
            .prop_map(|all| all.join(","))
            .boxed(),
            "sections" => select(vec![
                "4x 75W@4ohm 110W@2ohm min 2ohm bridged 220W@4ohm min 4ohm hp 80Hz; 1x 300W@2ohm min 2ohm lp 80Hz",
                "1x 300W@2ohm",
                "2x 50W@4ohm",
            ])
            .prop_map(str::to_owned)
            .boxed(),
            "cavities" => select(vec!["1 YE permanent; 2 RD switched; 3 BK ground", "1", "A1; B2 - OG colour; C WHBK"])
                .prop_map(str::to_owned)
                .boxed(),
            "guards" => select(vec![
                "",
                "bulkhead-left:grommet",
                "door-front-left:gaiter/a ~1 b~2c:nothing",
            ])
            .prop_map(str::to_owned)
            .boxed(),
            "parts-price" | "hour-price" => (0..10_000_000_i64)
                .prop_map(|hundredths| format!("{}.{:02}", hundredths / 100, hundredths % 100))
                .boxed(),
            "explained-by" | "clears" => select(vec!["", "silent-speaker LS4; load-too-low H1 LS5", "over-budget"])
                .prop_map(str::to_owned)
                .boxed(),
            "answers" | "proves" => select(vec!["", "C1", "C1 C12"]).prop_map(str::to_owned).boxed(),
            "tag" => select(vec!["", "C1", "I12", "closed", "Ü_7", "5A"])
                .prop_map(str::to_owned)
                .boxed(),
            "curve" => select(vec!["", "2:5", "1.35:600,2:5,6:0.1"]).prop_map(str::to_owned).boxed(),
            "loops" => select(vec!["", "1-3", "1-3 2-4"]).prop_map(str::to_owned).boxed(),
            _ => any_words().boxed(),
        },
    };
    if !property.may_be_assumed {
        return value;
    }
    prop_oneof![3 => value.clone(), 3 => value.prop_map(|v| format!("~{v}")), 1 => Just("?".to_owned())]
        .boxed()
}

/// Values for some of a list of properties.
fn some_values(list: &'static [Property]) -> BoxedStrategy<Vec<(&'static str, String)>> {
    if list.is_empty() {
        return Just(Vec::new()).boxed();
    }
    vec(select(list), 0..4)
        .prop_flat_map(|chosen| {
            chosen
                .into_iter()
                .map(|p| any_value_of(p.name, p))
                .collect::<Vec<_>>()
        })
        .boxed()
}

fn any_value_of(name: &'static str, property: Property) -> BoxedStrategy<(&'static str, String)> {
    // `select` hands out copies, while a value's strategy outlives them: leaked once per case, in tests only.
    any_value(Box::leak(Box::new(property)))
        .prop_map(move |value| (name, value))
        .boxed()
}

/// Sets values that must fit.
fn with<P: PropertySet>(mut it: P, values: Vec<(&'static str, String)>) -> P {
    for (name, value) in values {
        it.set(name, &value)
            .unwrap_or_else(|why| panic!("{name}={value}: {why}"));
    }
    it
}

/// Any point of the board.
pub fn any_point() -> impl Strategy<Value = BoardPoint> {
    let reach = || -model::limits::FURTHEST..=model::limits::FURTHEST;
    prop_oneof![(-50..50, -50..50), (reach(), reach())].prop_map(|(x, y)| BoardPoint { x, y })
}

/// Any kind with any values.
pub fn any_kind() -> BoxedStrategy<PartKind> {
    select(PartKind::WORDS)
        .prop_flat_map(|word| {
            let kind = PartKind::from_word(word).expect("a word of the list");
            some_values(kind.properties()).prop_map(move |values| {
                let mut kind = kind.clone();
                for (name, value) in values {
                    kind.set(name, &value)
                        .unwrap_or_else(|why| panic!("{name}={value}: {why}"));
                }
                kind
            })
        })
        .boxed()
}

/// Any part; its tag is made by the caller.
pub fn any_part() -> impl Strategy<Value = Part> {
    (
        any_kind(),
        any_words(),
        select(FittedBy::ALL),
        proptest::option::of(any_point()),
        select(Turn::ALL),
        proptest::option::of(some_words()),
        any_words(),
        (some_values(Mounting::list()), some_values(Handling::list())),
    )
        .prop_map(
            |(is, label, fitted_by, at, turn, place, note, (mounting, handling))| Part {
                label,
                fitted_by,
                at,
                turn,
                place,
                mounting: with(Mounting::default(), mounting),
                handling: with(Handling::default(), handling),
                note,
                ..Part::new("", is)
            },
        )
}

/// What a run is drawn from, before the parts are known that its ends are on.
type AnyRun = (Run, [(Index, Index); 2]);

fn any_run() -> impl Strategy<Value = AnyRun> {
    let end = || prop_oneof![1 => any_point().prop_map(Some), 8 => Just(None)];
    let on = || (any::<Index>(), any::<Index>());
    (
        (any_words(), any_words(), select(FittedBy::ALL)),
        (
            some_values(Wire::list()),
            some_values(Ending::list()),
            some_values(Ending::list()),
            some_values(Laying::list()),
            some_values(Handling::list()),
        ),
        (vec(some_words(), 0..3), vec(any_point(), 0..3)),
        (end(), end()),
        [on(), on()],
    )
        .prop_map(
            |(
                (label, note, fitted_by),
                (wire, from_ending, to_ending, laying, handling),
                (route, bends),
                (from, to),
                on,
            )| {
                // A loose end at the middle of the board stands for one that is put on a part.
                let end = |at: Option<BoardPoint>| End::Loose(at.unwrap_or_default());
                let mut run = Run::new("", end(from), end(to));
                run.label = label;
                run.note = note;
                run.fitted_by = fitted_by;
                run.wire = with(Wire::default(), wire);
                run.from_ending = with(Ending::default(), from_ending);
                run.to_ending = with(Ending::default(), to_ending);
                run.laying = with(Laying::default(), laying);
                run.handling = with(Handling::default(), handling);
                run.route = route;
                run.bends = bends;
                (run, on)
            },
        )
}

/// Any line that is a set of properties: a kept reading of the meter, a complaint.
fn any_line<P: PropertySet + Default + std::fmt::Debug>() -> impl Strategy<Value = P> {
    some_values(P::list()).prop_map(|values| with(P::default(), values))
}

/// Any thread of a job.
fn any_thread() -> impl Strategy<Value = Thread> {
    (
        vec(any_line(), 0..3),
        vec(any_line(), 0..3),
        vec(any_line(), 0..3),
        any_line(),
        btree_set(any_words(), 0..3),
    )
        .prop_map(|(complaints, intake, offers, rates, done)| Thread {
            complaints,
            intake,
            offers,
            rates,
            done: done.into_iter().collect(),
            ..Thread::default()
        })
}

/// Any picture: three bytes by which its form is known, and some more.
fn any_picture() -> impl Strategy<Value = Picture> {
    (some_values(PictureFacts::list()), vec(any::<u8>(), 0..20)).prop_map(|(facts, more)| {
        let mut picture = Picture {
            facts: with(PictureFacts::default(), facts),
            ..Picture::default()
        };
        picture.facts.form = PictureForm::Jpeg;
        picture.bytes = std::sync::Arc::new([vec![0xff, 0xd8, 0xff], more].concat());
        picture
    })
}

fn any_sheet() -> impl Strategy<Value = Sheet> {
    (
        vec(any_part(), 0..8),
        btree_set(1..40_u32, 8),
        vec(any_run(), 0..10),
        btree_set(1..60_u32, 10),
        vec(any_line(), 0..3),
        vec(any_line(), 0..3),
    )
        .prop_map(|(parts, part_ids, runs, run_ids, readings, tunings)| {
            let mut sheet = Sheet {
                readings,
                tunings,
                ..Sheet::default()
            };
            for (part, id) in parts.into_iter().zip(part_ids) {
                let tag = format!("{}{id}", part.is.letter());
                sheet.parts.insert(PartId(id), Part { tag, ..part });
            }
            let ends: Vec<TerminalRef> = sheet
                .parts
                .iter()
                .flat_map(|(id, part)| {
                    part.terminals().into_iter().map(|t| TerminalRef {
                        part: *id,
                        terminal: t.name,
                    })
                })
                .collect();
            for ((mut run, [(from, _), (to, _)]), id) in runs.into_iter().zip(run_ids) {
                run.tag = format!("run{id}");
                for (end, on) in [(&mut run.from, from), (&mut run.to, to)] {
                    if *end == End::Loose(BoardPoint::default()) && !ends.is_empty() {
                        *end = End::On(on.get(&ends).clone());
                    }
                }
                sheet.runs.insert(RunId(id), run);
            }
            sheet
        })
}

/// Any name that a place or passage may have, now and then one that the usual bodies have.
pub fn any_place_name() -> impl Strategy<Value = String> {
    let piece = select(vec!["sill", "left", "load-floor", "-", "_", "7", "ü", "Ω"]);
    vec(piece, 1..4).prop_map(|pieces| pieces.concat())
}

/// Any body, mostly none.
pub fn any_body() -> impl Strategy<Value = Body> {
    let told = (
        some_values(BodyShape::list()),
        proptest::collection::btree_map(any_place_name(), some_values(OwnPlace::list()), 0..3),
        proptest::collection::btree_map(any_place_name(), some_values(OwnPassage::list()), 0..3),
    )
        .prop_map(|(shape, places, passages)| Body {
            shape: with(BodyShape::default(), shape),
            places: places
                .into_iter()
                .map(|(name, it)| (name, with(OwnPlace::default(), it)))
                .collect(),
            passages: passages
                .into_iter()
                .map(|(name, it)| (name, with(OwnPassage::default(), it)))
                .collect(),
            ..Body::default()
        });
    prop_oneof![Just(Body::default()), told]
}

/// Any settings.
pub fn any_settings() -> impl Strategy<Value = Settings> {
    (
        some_values(model::job::Conditions::list()),
        proptest::collection::btree_map(any_words(), any_number(Some((0.0, 1e6))), 0..3),
        btree_set(any_words(), 0..3),
        any_body(),
    )
        .prop_map(|(conditions, limits, allowed, body)| Settings {
            body,
            conditions: with(model::job::Conditions::default(), conditions),
            limits: limits.into_iter().collect(),
            allowed: allowed.into_iter().collect(),
            ..Settings::default()
        })
}

/// Any job that the file's door lets in, without unknown fields, and without pictures, which text cannot show.
pub fn any_job() -> impl Strategy<Value = Job> {
    (
        any_words(),
        some_values(VehicleInfo::list()),
        proptest::collection::btree_map(select(SheetKind::ALL), any_sheet(), 0..3),
        any_settings(),
        any_thread(),
    )
        .prop_map(|(title, vehicle, sheets, settings, thread)| Job {
            thread,
            title,
            vehicle: with(VehicleInfo::default(), vehicle),
            sheets: sheets.into_iter().collect(),
            settings,
            ..Job::default()
        })
}

/// Any change, to things that are there and to things that are not.
pub fn any_change() -> impl Strategy<Value = Change> {
    let sheet = || select(SheetKind::ALL);
    prop_oneof![
        4 => (sheet(), 1..45_u32, proptest::option::of(any_part())).prop_map(|(sheet, id, part)| Change::Part {
            sheet,
            id: PartId(id),
            to: part.map(|part| Box::new(Part { tag: format!("{}{id}", part.is.letter()), ..part })),
        }),
        4 => (sheet(), 1..65_u32, proptest::option::of(any_run())).prop_map(|(sheet, id, run)| Change::Run {
            sheet,
            id: RunId(id),
            to: run.map(|(run, _)| Box::new(Run { tag: format!("run{id}"), ..run })),
        }),
        1 => (sheet(), vec(any_line(), 0..3)).prop_map(|(sheet, to)| Change::Readings { sheet, to }),
        1 => (sheet(), vec(any_line(), 0..3)).prop_map(|(sheet, to)| Change::Tunings { sheet, to }),
        1 => any_thread().prop_map(|thread| Change::Thread(Box::new(thread))),
        1 => (select(vec!["b1", "b2"]), proptest::option::of(any_picture()))
            .prop_map(|(key, to)| Change::Picture { key: key.to_owned(), to }),
        1 => (sheet(), any::<bool>()).prop_map(|(sheet, there)| Change::Sheet { sheet, there }),
        1 => any_words().prop_map(Change::Title),
        1 => some_values(VehicleInfo::list())
            .prop_map(|values| Change::Vehicle(Box::new(with(VehicleInfo::default(), values)))),
        1 => any_settings().prop_map(|settings| Change::Settings(Box::new(settings))),
    ]
}

/// Any edit.
pub fn any_edit() -> impl Strategy<Value = Edit> {
    (any_words(), vec(any_change(), 0..5)).prop_map(|(name, changes)| Edit::new(name, changes))
}
