//! Wishes as installers write them: each is understood whole, and what is planned of it has no finding of grade Stop or Fix.

use assist::starting::{Started, read, start};
use model::kinds::sound::Band;
use model::{Job, PartKind, SheetKind};
use words::{Language, Reader, Words};

const ENGLISH: &[&str] = &[
    "one-amp boot build: hatchback, factory radio, mono 300 W at 4 ohm, one 12 inch sub 4 ohm 250 W",
    "hatch, keep the factory radio, 4 channel amp 4x60W, front components, rear coaxials",
    "estate, 5 channel amp 4x75W + 1x350W at 2 ohm, front components 60 W, rear coax 50 W, dual 4 ohm sub 300 W",
    "saloon, active 3-way front, dsp with 8 outputs, 6-channel amp 6 x 80 W, mono 500 W at 2 ohm, sub 2 ohm 400 W",
    "hatchback, active 2-way front, 4 x 100 W amp",
    "van, two subs 4 ohm 200 W each, mono amp 800 W at 2 ohm",
    "pick-up, radio, active sub 150 W behind the seat",
    "camper, second battery AGM 100 Ah, split charge relay, fridge, lights, water pump, usb sockets, inverter 300 W",
    "estate, 2 channel amp 2 x 75 W at 4 ohm bridged 200 W at 4 ohm, sub 4 ohm 150 W",
    "hatchback, door speakers 40 W off a 4 x 45 W amp",
    "saloon, head unit with 3 preouts, amp 4x100w rms at 4 ohm, mono 1 x 1000w at 1 ohm, fronts components, rears coax, two dvc 2 ohm subs 500 W each",
    "estate, 3-way front 4 ohm, 2 x 150 W amp",
    "van, radio with 2 preouts, 4 x 80 W amp, front components, sub 4 ohm 250 W on bridged channels",
    "camper, lithium leisure battery 100 Ah, cool box, lights 20 W, radio, front coax",
];

const GERMAN: &[&str] = &[
    "Kombi, Werksradio behalten, Vierkanalendstufe 4 × 80 W, 2-Wege-Frontsystem, Subwoofer 4 Ohm 300 W an gebrückten Kanälen",
    "Schrägheck, Aktivsubwoofer 200 W, Radio",
    "Limousine, vollaktives 3-Wege-Frontsystem, DSP, 6-Kanal-Endstufe 6 × 70 W, Monoblock 600 W an 1 Ohm, Doppelschwingspule 2 Ohm",
    "Wohnmobil, Zusatzbatterie Lithium 100 Ah, Trennrelais, Kühlbox, Wechselrichter 600 W, Licht, Wasserpumpe",
    "Kastenwagen, Frontlautsprecher 50 W, Endstufe 2 × 90 W an 4 Ohm",
    "Transporter, Zusatzbatterie AGM 95 Ah im Laderaum, Standheizung, Licht 30 W",
    "Kombi, 3-Wege Frontsystem 4 Ohm, Endstufe 2 × 150 W",
    "Kleinwagen, Autoradio 4 × 25 W, Koax vorne und hinten",
];

fn started(text: &str, language: Language) -> Started {
    let words = Words::of(Reader {
        language,
        ..Reader::default()
    });
    let understood = read(text);
    let not: Vec<&str> = understood.not.iter().map(|it| &*it.text).collect();
    assert!(not.is_empty(), "{text}: {not:?}");
    start(&understood.wish, &Job::default(), SheetKind::Plan, &words).unwrap_or_else(|why| {
        let why: Vec<String> = why.iter().map(|it| it.what.to_string()).collect();
        panic!("{text}: {why:?}")
    })
}

/// Common practice: these are the jobs that small shops get, in the words they are told in.
#[test]
fn what_installers_write_is_planned_without_stop_and_fix() {
    let all = ENGLISH.iter().map(|it| (it, Language::English));
    let all = all.chain(GERMAN.iter().map(|it| (it, Language::German)));
    for (text, language) in all {
        let started = started(text, language);
        let left: Vec<String> = started.troubles.iter().map(|it| it.what.to_string()).collect();
        assert!(left.is_empty(), "{text}: {left:?}");
    }
}

/// The power that reaches the bass, and the volts that its gain is set to.
fn bass(started: &Started) -> Vec<(f64, f64)> {
    let all = started
        .sheet
        .tunings
        .iter()
        .filter(|it| it.low_pass.value().is_some_and(|hz| hz.0 < 200.0));
    all.map(|it| {
        let (part, _) = started.sheet.part_by_tag(&it.of).expect("the amplifier");
        let number: u8 = it
            .channel
            .split('+')
            .next()
            .and_then(|it| it.parse().ok())
            .expect("a channel");
        let channels = &started.analysis.study.channels;
        let channel = channels
            .iter()
            .find(|it| it.part == part && it.channel == number)
            .expect("the channel");
        let volts = it.target.value().expect("a target").0;
        (volts * volts / channel.nominal.expect("a load").0, volts)
    })
    .collect()
}

/// By hand: 300 W into 4 Ω turned down to 250 W stand at √(250 · 4) = 31.6 V; two 4 Ω coils in parallel, 2 Ω, turned down from
/// 350 W to 300 W, at √(300 · 2) = 24.4 V.
#[test]
fn a_gain_is_planned_where_the_bass_bears_less_than_the_amplifier_gives() {
    for (text, watts, volts) in [
        (ENGLISH[0], 250.0, 31.6),
        (ENGLISH[2], 300.0, 24.4),
        (ENGLISH[8], 150.0, 24.4),
    ] {
        let started = started(text, Language::English);
        let [(power, set)] = bass(&started)[..] else {
            panic!("{text}: {:?}", started.sheet.tunings)
        };
        assert!(power <= watts && power > 0.95 * watts, "{text}: {power} W");
        assert!((set - volts).abs() < 0.051, "{text}: {set} V");
        let told = started
            .choices
            .iter()
            .any(|it| it.to_string().contains("set the gain"));
        assert!(told, "{text}: {:?}", started.choices);
    }
}

/// Drivers with an output each play their own part of the band and nothing below it.
#[test]
fn each_driver_of_an_active_front_has_its_channel_and_its_filter() {
    for (text, language, ways) in [
        (ENGLISH[3], Language::English, 3),
        (ENGLISH[4], Language::English, 2),
        (GERMAN[2], Language::German, 3),
    ] {
        let started = started(text, language);
        let mut front = 0;
        for (id, driver) in &started.analysis.study.drivers {
            let Some(PartKind::Speaker(speaker)) = started.sheet.parts.get(id).map(|it| &it.is) else {
                continue;
            };
            let least = match speaker.band {
                Band::Tweeter => 2000.0,
                Band::Mid => 200.0,
                Band::Woofer => 60.0,
                Band::Sub | Band::Full => continue,
            };
            front += 1;
            assert!(
                driver.high_pass.is_some_and(|it| it.0 >= least),
                "{text}: {driver:?}"
            );
            let (part, number) = driver.channel.expect("a channel");
            let channels = started.analysis.study.channels.iter();
            let own = channels.filter(|it| it.part == part && it.channel == number);
            assert!(own.into_iter().all(|it| it.drivers == [*id]), "{text}");
        }
        assert_eq!(front, 2 * ways, "{text}");
        let processor = |it: &model::Part| matches!(it.is, PartKind::Processor(_));
        assert!(started.sheet.parts.values().any(processor), "{text}");
    }
}

#[test]
fn the_title_block_says_what_was_told() {
    let words = Words::english();
    let wish = read(ENGLISH[2]).wish;
    let mut job = Job::default();
    let started = start(&wish, &job, SheetKind::Plan, &words).expect("it is drawn");
    let undo = job.apply(started.edit);
    assert_eq!(job.vehicle.name, "Estate car");
    assert_eq!(
        job.title.replace('\u{a0}', " "),
        "Sound system 4 × 75 W + 1 × 350 W"
    );
    job.apply(undo);
    assert_eq!(job, Job::default());
    // What somebody wrote there stays.
    job.title = "Own title".to_owned();
    job.vehicle.name = "Delivery van".to_owned();
    let started = start(&wish, &job, SheetKind::Plan, &words).expect("it is drawn");
    job.apply(started.edit);
    assert_eq!((&*job.title, &*job.vehicle.name), ("Own title", "Delivery van"));
}

/// Common practice: the bass speaker gets both channels that are left over.
#[test]
fn a_pair_that_is_left_over_drives_the_bass_bridged_and_what_that_takes_for_granted_is_told() {
    let words = Words::of(Reader::default());
    let started = started(
        "hatchback, head unit, 4 x 75 W amp, front components, sub 300 W",
        Language::English,
    );
    let bass = bass(&started);
    assert_eq!(bass.len(), 1);
    // Three times 75 W (common practice).
    assert!((bass[0].0 - 225.0).abs() < 1.0, "{bass:?}");
    let assumed: Vec<String> = started.assumed.iter().map(|it| words.say(it)).collect();
    assert!(
        assumed
            .iter()
            .any(|it| it == "Two channels of A1, bridged, give 225 W into 4 Ω."),
        "{assumed:?}"
    );
}

/// Two bridged channels see half the load each: where power is stated at 2 Ω alone, they may not drive 2 Ω together.
#[test]
fn power_at_two_ohms_says_nothing_of_two_ohms_bridged() {
    let started = started(
        "estate, 2 x 200 W amp at 2 ohm, sub 4 ohm 500 W",
        Language::English,
    );
    // Into 4 Ω they give what the two channels give into 2 Ω each.
    let bass = bass(&started);
    assert!((bass[0].0 - 400.0).abs() < 1.0, "{bass:?}");
}
