//! The speakers as parts, their leads, and what is told of each output.

use super::hookup::{HookUp, Use, Wanted, Way};
use super::places::Spot;
use super::planner::Planner;
use super::sketch::jacket;
use super::sound::{Sound, TO_MIDRANGE, TO_TWEETER, bridging_is_presumed, drivers, group, ohms};
use super::wish::{SpeakersWish, Where};
use model::conductor::{Colour, Jacket};
use model::kinds::sound::{Band, Crossover, Position, Speaker};
use model::quantity::{Decibels, Hertz, Ohms, Volts, Watts};
use model::tuning::Tuning;
use model::{Fact, PartId, Sheet};
use ordered::OrderedMap;
use words::{Unit as In, figure, say};

/// Draws all speakers and their leads.
pub(super) fn speakers(planner: &mut Planner<'_>, sound: &Sound) {
    let uses = planner.hookup.uses.clone();
    let mut drawn: OrderedMap<(Where, Way), Vec<Drawn>> = OrderedMap::new();
    for (wanted, wish) in &sound.wanted {
        let power = |at: u8| -> Watts {
            let of = uses.iter().find(|it| {
                (it.plays == wanted.at && it.way == wanted.way
                    || it.also.is_some_and(|(also, _)| also == wanted.at))
                    && (it.coil.is_some() || (it.speakers.0..it.speakers.0 + it.speakers.1).contains(&at))
            });
            of.map_or(Watts(20.0), |it| {
                let share = if it.coil.is_some() {
                    f64::from(wanted.coils)
                } else {
                    1.0 / f64::from(it.speakers.1.max(1))
                };
                it.driven.power * share
            })
        };
        let all = (0..wanted.count)
            .map(|at| draw(planner, wanted, wish, at, power(at)))
            .collect();
        drawn.insert((wanted.at, wanted.way), all);
    }
    for it in &uses {
        lead(planner, sound, &drawn, it);
        choice(planner, sound, it);
    }
}

/// A speaker as it is drawn: what stands for it on the sheet, and the two ends of each of its coils.
struct Drawn {
    part: PartId,
    coils: Vec<(&'static str, &'static str)>,
}

/// A rating that is made, at least this much.
fn rating(power: Watts) -> Watts {
    const SERIES: [f64; 14] = [
        40.0, 60.0, 80.0, 100.0, 120.0, 150.0, 200.0, 250.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0,
    ];
    let next = SERIES.iter().find(|rating| **rating >= power.0 * (1.0 - 1e-9));
    Watts(next.copied().unwrap_or_else(|| (power.0 / 500.0).ceil() * 500.0))
}

fn draw(planner: &mut Planner<'_>, wanted: &Wanted, wish: &SpeakersWish, at: u8, power: Watts) -> Drawn {
    let each = (wanted.count / 2).max(1);
    let left = at < each;
    let (position, spot, label) = match (wanted.at, left) {
        (Where::Front, true) => (
            Position::FrontLeft,
            Spot::Door(true),
            say!("start-label-front-left"),
        ),
        (Where::Front, false) => (
            Position::FrontRight,
            Spot::Door(false),
            say!("start-label-front-right"),
        ),
        (Where::Rear, true) => (
            Position::RearLeft,
            Spot::Behind(true),
            say!("start-label-rear-left"),
        ),
        (Where::Rear, false) => (
            Position::RearRight,
            Spot::Behind(false),
            say!("start-label-rear-right"),
        ),
        (Where::Centre, _) => (Position::Centre, Spot::Dash, say!("start-label-centre")),
        (Where::Bass, _) => (Position::Bass, Spot::Equipment, say!("start-label-subwoofer")),
    };
    let bears = wanted.bears.map_or(Fact::Assumed(rating(power)), Fact::Given);
    let impedance = wish
        .impedance
        .map_or(Fact::Assumed(wanted.impedance), Fact::Given);
    let speaker = |band: Band, coils: u8| Speaker {
        impedance,
        coils,
        power: bears,
        band,
        position: Fact::Given(position),
        ..Speaker::default()
    };
    let named = |band: Band| match band {
        Band::Woofer => say!("start-label-woofer", of = label.clone()),
        Band::Mid => say!("start-label-midrange", of = label.clone()),
        Band::Tweeter => say!("start-label-tweeter", of = label.clone()),
        Band::Sub | Band::Full => label.clone(),
    };
    let alone = match (wanted.at, wanted.way) {
        (Where::Bass, _) => Some(Band::Sub),
        (_, Way::Low) => Some(Band::Woofer),
        (_, Way::Middle) => Some(Band::Mid),
        (_, Way::High) => Some(Band::Tweeter),
        (_, Way::Whole) => (wish.ways < 2).then_some(Band::Full),
    };
    if let Some(band) = alone {
        let part = planner
            .sketch
            .part(speaker(band, wanted.coils), Some(named(band)), spot);
        let coils = match wanted.coils {
            1 => vec![("+", "-")],
            _ => vec![("a+", "a-"), ("b+", "b-")],
        };
        return Drawn { part, coils };
    }
    let foot = if spot == Spot::Door(left) {
        Spot::Footwell(left)
    } else {
        spot
    };
    let ways: &[(Hertz, Band)] = match wish.ways {
        3.. => &[(TO_MIDRANGE, Band::Woofer), (TO_TWEETER, Band::Mid)],
        _ => &[(TO_TWEETER, Band::Woofer)],
    };
    // A crossover of three ways is drawn as two, one behind the other: each divides what the one before lets pass above it.
    let colours = colours(wanted.at, left);
    let mut first = None;
    let mut above: Option<PartId> = None;
    for (frequency, below) in ways {
        let crossover = Crossover {
            frequency: Fact::Assumed(*frequency),
            order: 2,
            load: Fact::Assumed(wanted.impedance),
            ..Crossover::default()
        };
        let sketch = &mut planner.sketch;
        let name = say!("start-label-crossover", of = label.clone());
        let crossover = sketch.part(crossover, Some(name), foot);
        if let Some(above) = above {
            for (from, to) in [("high+", "in+"), ("high-", "in-")] {
                sketch.run((above, from), (crossover, to), 1.5, colours.of(to == "in+"));
            }
        }
        let woofer = sketch.part(speaker(*below, 1), Some(named(*below)), spot);
        for (from, to) in [("low+", "+"), ("low-", "-")] {
            sketch.run((crossover, from), (woofer, to), 2.5, colours.of(to == "+"));
        }
        first = first.or(Some(crossover));
        above = Some(crossover);
    }
    let sketch = &mut planner.sketch;
    let tweeter = sketch.part(speaker(Band::Tweeter, 1), Some(named(Band::Tweeter)), spot);
    if let Some(above) = above {
        for (from, to) in [("high+", "+"), ("high-", "-")] {
            sketch.run((above, from), (tweeter, to), 1.5, colours.of(to == "+"));
        }
    }
    let crossover = first.unwrap_or(tweeter);
    Drawn {
        part: crossover,
        coils: vec![("in+", "in-")],
    }
}

/// Colours of a speaker's leads: one colour, the return with a black stripe (common practice).
struct Colours(Colour);

impl Colours {
    fn of(&self, positive: bool) -> Jacket {
        jacket(self.0, (!positive).then_some(Colour::Black))
    }
}

fn colours(at: Where, left: bool) -> Colours {
    Colours(match (at, left) {
        (Where::Front, true) => Colour::White,
        (Where::Front, false) => Colour::Grey,
        (Where::Rear, true) => Colour::Green,
        (Where::Rear, false) => Colour::Violet,
        (Where::Centre, _) => Colour::Orange,
        (Where::Bass, _) => Colour::Blue,
    })
}

/// The two terminals of an output.
fn legs(sound: &Sound, it: &Use) -> Option<(PartId, String, String)> {
    match it.unit {
        Some(unit) => {
            let part = sound.amplifiers.get(sound.units.get(unit)?.amplifier)?;
            let back = if it.bridged { it.channel + 1 } else { it.channel };
            Some((*part, format!("out{}+", it.channel), format!("out{back}-")))
        }
        None => {
            let (name, _) =
                model::terminals::HEAD_SPEAKER_OUTPUTS.get(usize::from(it.channel.checked_sub(1)?))?;
            Some((sound.head?, format!("{name}+"), format!("{name}-")))
        }
    }
}

/// The leads of one output to its speakers, and those between their coils.
fn lead(planner: &mut Planner<'_>, sound: &Sound, drawn: &OrderedMap<(Where, Way), Vec<Drawn>>, it: &Use) {
    let Some((from, plus, minus)) = legs(sound, it) else {
        return;
    };
    let left = it.speakers.0 == 0;
    let mut coils: Vec<(PartId, &'static str, &'static str)> = Vec::new();
    let also = it.also.map(|(at, _)| (at, Way::Whole));
    for kind in [Some((it.plays, it.way)), also].into_iter().flatten() {
        let first = usize::from(it.speakers.0);
        let of = drawn.get(&kind).map(Vec::as_slice).unwrap_or_default();
        for speaker in of.iter().skip(first).take(usize::from(it.speakers.1)) {
            let all = speaker.coils.iter().enumerate();
            coils.extend(
                all.filter(|(at, _)| it.coil.is_none_or(|coil| usize::from(coil) == *at))
                    .map(|(_, (plus, minus))| (speaker.part, *plus, *minus)),
            );
        }
    }
    let colours = colours(it.plays, left);
    let to = coils
        .first()
        .map_or(Spot::Equipment, |it| planner.sketch.spot(it.0));
    let length = planner.sketch.places.length(planner.sketch.spot(from), to);
    let area = size_for(it.driven.load, it.driven.could, length.0);
    let row = usize::from(it.driven.joined.series.max(1));
    // Where leads were brought already: further coils of the same speaker are joined there.
    let mut brought: Vec<(PartId, &'static str)> = Vec::new();
    let mut taken: Vec<(PartId, &'static str)> = Vec::new();
    for row in coils.chunks(row) {
        let (Some(first), Some(last)) = (row.first(), row.last()) else {
            continue;
        };
        match brought.iter().find(|(part, _)| *part == first.0) {
            Some((part, terminal)) => {
                planner
                    .sketch
                    .run((*part, terminal), (first.0, first.1), area, colours.of(true));
            }
            None => {
                planner
                    .sketch
                    .run((from, &plus), (first.0, first.1), area, colours.of(true));
                brought.push((first.0, first.1));
            }
        }
        for pair in row.windows(2) {
            if let [a, b] = pair {
                planner.sketch.run((a.0, a.2), (b.0, b.1), area, colours.of(true));
            }
        }
        match taken.iter().find(|(part, _)| *part == last.0) {
            Some((part, terminal)) => {
                planner
                    .sketch
                    .run((*part, terminal), (last.0, last.2), area, colours.of(false));
            }
            None => {
                planner
                    .sketch
                    .run((from, &minus), (last.0, last.2), area, colours.of(false));
                taken.push((last.0, last.2));
            }
        }
    }
}

/// The least size that loses a quarter of a decibel in both its conductors at most, and bears the current of full power.
fn size_for(load: Ohms, power: Watts, length: f64) -> f64 {
    const SIZES: [f64; 7] = [1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0];
    // 20 · log10(1 + r/Z) = 0.25 dB.
    let most = 0.0292 * load.0;
    let current = (power.0 / load.0.max(0.1)).sqrt();
    let fits = |area: &&f64| {
        let lead = 2.0 * length / (58.0 * 0.9 * **area);
        // 6 A a square millimetre: what bundled wire in the cabin bears of music.
        lead <= most && current <= **area * 6.0
    };
    SIZES.iter().find(fits).copied().unwrap_or(25.0)
}

/// Tells what one output drives, and why so.
fn choice(planner: &mut Planner<'_>, sound: &Sound, it: &Use) {
    let Some((part, ..)) = legs(sound, it) else { return };
    let tag = planner.sketch.tag_of(part);
    let (load, power) = (ohms(it.driven.load), figure(it.driven.power.0, In::Plain("W")));
    let unit = it.unit.and_then(|unit| sound.units.get(unit));
    let Some(unit) = unit else {
        if it.speakers.0 == 0 {
            planner.choices.push(say!(
                "start-chose-head",
                head = tag,
                speakers = group(it.plays),
                load = load,
                power = power
            ));
        }
        return;
    };
    let output = match (&unit.bridged, it.bridged) {
        (Some(bridged), true) => bridged,
        _ => &unit.alone,
    };
    let how = if let Some((also, series)) = it.also {
        let with = group(also);
        if series {
            say!("start-how-both-series", with = with)
        } else {
            say!("start-how-both-parallel", with = with)
        }
    } else if it.coil.is_some() {
        say!("start-how-coil")
    } else {
        let joined = it.driven.joined;
        match (joined.series, joined.parallel) {
            (1, 1) if it.plays.is_stereo() => say!("start-how-one"),
            (1, 1) => say!("start-how-alone"),
            (series, 1) => say!("start-how-series", coils = usize::from(series)),
            (1, parallel) => say!("start-how-parallel", coils = usize::from(parallel)),
            (series, parallel) => say!(
                "start-how-both",
                series = usize::from(series),
                parallel = usize::from(parallel)
            ),
        }
    };
    let least = ohms(output.minimum);
    // Left tells for both sides.
    let stereo = it.plays.is_stereo();
    if stereo && it.speakers.0 != 0 {
        return;
    }
    let channels = if it.bridged || stereo {
        format!("{}/{}", it.channel, it.channel + 1)
    } else {
        it.channel.to_string()
    };
    let kind = match (it.bridged, stereo) {
        (true, _) => "bridged",
        (_, true) => "pair",
        _ => "one",
    };
    planner.choices.push(say!(
        "start-chose-output",
        amplifier = tag,
        channels = channels.as_str(),
        kind = kind,
        speakers = drivers(it.plays, it.way),
        how = how,
        load = load,
        least = least,
        power = power
    ));
    if it.driven.is_turned_down() {
        planner.choices.push(say!(
            "start-chose-gain",
            amplifier = planner.sketch.tag_of(part),
            channels = channels,
            kind = kind,
            speakers = drivers(it.plays, it.way),
            volts = figure(target(it).0, In::Plain("V")),
            power = figure(it.driven.power.0, In::Plain("W")),
            could = figure(it.driven.could.0, In::Plain("W"))
        ));
    }
    if it.bridged {
        let channels = planner
            .wish
            .amplifiers
            .get(unit.amplifier)
            .and_then(|it| it.channels.get(unit.section));
        let tag = planner.sketch.tag_of(part);
        if let (Some(stated), true) = (output.power.first(), channels.is_some_and(bridging_is_presumed)) {
            planner.assumed.push(say!(
                "start-assumed-bridged",
                amplifier = tag,
                power = figure(stated.power.0, In::Plain("W")),
                load = ohms(stated.load)
            ));
        } else if channels.is_none_or(|it| it.bridged.is_empty()) {
            planner
                .assumed
                .push(say!("start-assumed-bridging", amplifier = tag));
        }
    }
}

/// The volts that the gain of an output is set to, to a tenth as a meter shows it: downwards where it keeps power away.
fn target(it: &Use) -> Volts {
    let tenths = it.driven.volts().0 * 10.0;
    Volts(if it.driven.is_turned_down() {
        (tenths + 1e-6).floor() / 10.0
    } else {
        tenths.round() / 10.0
    })
}

/// How each channel is set: filter, and the volts that the gain is set to.
pub(super) fn tunings(sheet: &mut Sheet, sound: &Sound, hookup: &HookUp) {
    for it in &hookup.uses {
        let Some(unit) = it.unit.and_then(|unit| sound.units.get(unit)) else {
            continue;
        };
        let Some(part) = sound
            .amplifiers
            .get(unit.amplifier)
            .and_then(|id| sheet.parts.get(id))
        else {
            continue;
        };
        let [from, to] = sound.corners(it);
        let corner = |corner: Option<Hertz>| corner.map_or(Fact::Unknown, Fact::Given);
        sheet.tunings.push(Tuning {
            of: part.tag.clone(),
            channel: if it.bridged {
                format!("{}+{}", it.channel, it.channel + 1)
            } else {
                it.channel.to_string()
            },
            target: Fact::Given(target(it)),
            high_pass: corner(from),
            low_pass: corner(to),
            slope: Fact::Assumed(Decibels(12.0)),
            ..Tuning::default()
        });
    }
}
