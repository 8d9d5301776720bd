//! The sound side: what each amplifier is, which of its outputs drives which speakers, and how the speakers are wired.

use super::hookup::{self, Drivers, HookUp, Output, Unit, Use, Wanted, Way};
use super::planner::{Planner, Trouble};
use super::wish::{AmplifierWish, ChannelsWish, PowerAt, SpeakersWish, Where, Wish};
use model::PartId;
use model::quantity::{Hertz, Ohms, Watts};
use model::written::{Bridged, Filter, Section, Sections, StatedPower};
use words::{Saying, Unit as In, figure, say};

/// Loads that power is stated at when that was not told.
const USUAL_LOAD: Ohms = Ohms(4.0);
/// Where the bass is parted from the rest (common practice; 60 to 120 Hz considered).
pub(super) const CROSSING: Hertz = Hertz(80.0);

/// Where two ways are divided, and where three are (common practice; 2 to 4 kHz, and 200 to 500 Hz considered).
pub(super) const TO_TWEETER: Hertz = Hertz(3500.0);
pub(super) const TO_MIDRANGE: Hertz = Hertz(300.0);

/// The corners of what drivers of a kind get: below, above.
fn corners(at: Where, way: Way, ways: u8) -> [Option<Hertz>; 2] {
    match (at, way) {
        (Where::Bass, _) => [None, Some(CROSSING)],
        (_, Way::Whole) => [Some(CROSSING), None],
        (_, Way::Low) => [
            Some(CROSSING),
            Some(if ways > 2 { TO_MIDRANGE } else { TO_TWEETER }),
        ],
        (_, Way::Middle) => [Some(TO_MIDRANGE), Some(TO_TWEETER)],
        (_, Way::High) => [Some(TO_TWEETER), None],
    }
}

/// What was decided of the sound.
pub(super) struct Sound {
    pub(super) units: Vec<Unit>,
    /// Channels of each amplifier as they are stated.
    pub(super) stated: Vec<Vec<Section>>,
    pub(super) wanted: Vec<(Wanted, SpeakersWish)>,
    /// The amplifiers as parts, once they are drawn.
    pub(super) amplifiers: Vec<PartId>,
    pub(super) head: Option<PartId>,
}

impl Sound {
    /// The corners of what an output gives.
    pub(super) fn corners(&self, it: &Use) -> [Option<Hertz>; 2] {
        let ways = self.wanted.iter().find(|(wanted, _)| wanted.at == it.plays);
        corners(it.plays, it.way, ways.map_or(1, |(_, wish)| wish.ways))
    }
}

/// Decides which output drives what.
pub(super) fn choose(planner: &mut Planner<'_>) -> Result<Sound, Vec<Trouble>> {
    let wish = planner.wish;
    let stated: Vec<Vec<Section>> = wish
        .amplifiers
        .iter()
        .enumerate()
        .map(|(at, it)| sections(planner, at, it))
        .collect();
    let units = units(&stated);
    let wanted = wanted(planner, wish, &stated);
    if wanted.iter().any(|(it, _)| it.at == Where::Centre) && wish.processor.is_none() {
        return Err(vec![Trouble::new(
            say!("start-centre"),
            say!("start-centre-instead"),
        )]);
    }
    let head = Output {
        power: vec![StatedPower {
            power: wish.head.power.unwrap_or(Watts(20.0)),
            load: USUAL_LOAD,
        }],
        minimum: USUAL_LOAD,
    };
    let outputs = planner.head_outputs();
    // Inputs at speaker level take next to nothing: an output that gives a signal drives its speaker all the same.
    let own = (outputs > 0 && wish.has_sound()).then_some((&head, outputs));
    let mut wanted = wanted;
    loop {
        let all: Vec<Wanted> = wanted.iter().map(|(it, _)| *it).collect();
        let Some(best) = hookup::choose(&units, own, &all) else {
            return Err(why_not(&units, own, &all));
        };
        let Some(idle) = idle(&units, stated.len(), &best) else {
            planner.hookup = best;
            break;
        };
        // Nobody tells an amplifier that is for nothing: the speakers that it is for were left out.
        let alone = units.iter().any(|unit| unit.amplifier == idle && !unit.paired);
        let kinds: &[Where] = if alone {
            &[Where::Bass]
        } else {
            &[Where::Front, Where::Rear, Where::Bass]
        };
        let missing = kinds.iter().find(|at| !all.iter().any(|it| it.at == **at));
        let Some(missing) = missing else {
            return Err(vec![Trouble::new(
                say!("start-idle", number = idle + 1),
                say!("start-idle-instead"),
            )]);
        };
        planner
            .assumed
            .push(say!("start-assumed-speakers", speakers = group(*missing)));
        let told = match missing {
            Where::Bass => basses(lone_channels(&stated)),
            at => SpeakersWish::new(*at),
        };
        wanted.extend(wanted_of(planner, told));
        wanted.sort_by_key(|(it, _)| (it.at, it.way));
    }
    Ok(Sound {
        units,
        stated,
        wanted,
        amplifiers: Vec::new(),
        head: None,
    })
}

/// What an amplifier states, with the usual where that was not told.
fn sections(planner: &mut Planner<'_>, number: usize, it: &AmplifierWish) -> Vec<Section> {
    let channels = if it.channels.is_empty() {
        vec![ChannelsWish::new(4)]
    } else {
        it.channels.clone()
    };
    channels
        .iter()
        .map(|it| {
            let stated = |all: &[PowerAt]| -> Vec<StatedPower> {
                all.iter()
                    .map(|it| StatedPower {
                        power: it.power,
                        load: it.load.unwrap_or(USUAL_LOAD),
                    })
                    .collect()
            };
            let least = |all: &[StatedPower]| all.iter().map(|it| it.load).reduce(Ohms::min);
            let mut power = stated(&it.power);
            let tag = format!("A{}", number + 1);
            if power.is_empty() {
                let usual: &[(f64, f64)] = match it.count {
                    1 => &[(300.0, 4.0), (500.0, 2.0)],
                    2 => &[(100.0, 4.0), (150.0, 2.0)],
                    _ => &[(75.0, 4.0), (110.0, 2.0)],
                };
                power = usual
                    .iter()
                    .map(|(power, load)| StatedPower {
                        power: Watts(*power),
                        load: Ohms(*load),
                    })
                    .collect();
                planner.assumed.push(say!(
                    "start-assumed-power",
                    amplifier = tag.as_str(),
                    channels = usize::from(it.count),
                    power = figure(power.first().map_or(0.0, |it| it.power.0), In::Plain("W")),
                    load = figure(4.0, In::Plain("Ω"))
                ));
            } else if it.power.iter().any(|it| it.load.is_none()) {
                planner.assumed.push(say!(
                    "start-assumed-load-of-power",
                    amplifier = tag.as_str(),
                    load = figure(USUAL_LOAD.0, In::Plain("Ω"))
                ));
            }
            let minimum = it.minimum.or(least(&power)).unwrap_or(USUAL_LOAD);
            let bridged = if it.count < 2 {
                None
            } else if bridging_is_presumed(it) {
                Some(Bridged {
                    power: power
                        .iter()
                        .map(|it| StatedPower {
                            power: it.power * 3.0,
                            load: it.load,
                        })
                        .collect(),
                    minimum: it.bridged_minimum.unwrap_or(minimum),
                })
            } else if it.bridged.is_empty() {
                // Each of two bridged channels sees half the load and gives what it gives there alone.
                Some(Bridged {
                    power: power
                        .iter()
                        .map(|it| StatedPower {
                            power: it.power * 2.0,
                            load: it.load * 2.0,
                        })
                        .collect(),
                    minimum: it.bridged_minimum.unwrap_or(minimum * 2.0),
                })
            } else {
                let power = stated(&it.bridged);
                let minimum = it.bridged_minimum.or(least(&power)).unwrap_or(USUAL_LOAD);
                Some(Bridged { power, minimum })
            };
            Section {
                channels: it.count,
                power,
                minimum,
                bridged,
                filter: Filter::Full,
            }
        })
        .collect()
}

/// Whether nothing is told of bridging but may be taken for granted: of an amplifier that states one power, into 4 Ω or more, the
/// makers as a rule allow two bridged channels that same load, and they then give three times that power (common
/// practice; twice to four times considered).
pub(super) fn bridging_is_presumed(it: &ChannelsWish) -> bool {
    let one = it.power.len() == 1
        && it
            .power
            .iter()
            .all(|it| it.load.is_none_or(|load| load >= USUAL_LOAD));
    one && it.bridged.is_empty() && it.minimum.is_none()
}

fn units(amplifiers: &[Vec<Section>]) -> Vec<Unit> {
    let mut units = Vec::new();
    for (amplifier, sections) in amplifiers.iter().enumerate() {
        let mut channel = 1;
        for (at, section) in sections.iter().enumerate() {
            let mut left = section.channels;
            while left > 0 {
                let paired = left > 1;
                units.push(Unit {
                    amplifier,
                    section: at,
                    channel,
                    paired,
                    alone: Output {
                        power: section.power.clone(),
                        minimum: section.minimum,
                    },
                    bridged: section.bridged.as_ref().filter(|_| paired).map(|it| Output {
                        power: it.power.clone(),
                        minimum: it.minimum,
                    }),
                });
                let by = if paired { 2 } else { 1 };
                channel += by;
                left -= by;
            }
        }
    }
    units
}

/// The speakers, with the usual where nothing is told of them; and which there are where none are told at all.
fn wanted(planner: &mut Planner<'_>, wish: &Wish, stated: &[Vec<Section>]) -> Vec<(Wanted, SpeakersWish)> {
    let mut all = wish.speakers.clone();
    if all.is_empty() {
        let pairs: u8 = stated.iter().flatten().map(|it| it.channels / 2).sum();
        let alone = lone_channels(stated);
        let with_head = stated.is_empty() && wish.head.is_told();
        if pairs > 0 || with_head {
            all.push(SpeakersWish::new(Where::Front));
        }
        if pairs > 1 || with_head {
            all.push(SpeakersWish::new(Where::Rear));
        }
        if alone > 0 {
            all.push(basses(alone));
        }
        for it in &all {
            planner
                .assumed
                .push(say!("start-assumed-speakers", speakers = group(it.at)));
        }
    }
    all.sort_by_key(|it| it.at);
    all.into_iter().flat_map(|it| wanted_of(planner, it)).collect()
}

/// Channels that have no other beside them: each is for a bass speaker.
fn lone_channels(stated: &[Vec<Section>]) -> usize {
    stated.iter().flatten().filter(|it| it.channels % 2 == 1).count()
}

/// Bass speakers, one for each channel that is for them.
fn basses(channels: usize) -> SpeakersWish {
    SpeakersWish {
        count: u8::try_from(channels).ok().filter(|count| *count > 1),
        ..SpeakersWish::new(Where::Bass)
    }
}

/// An amplifier with nothing to drive.
fn idle(units: &[Unit], amplifiers: usize, hookup: &HookUp) -> Option<usize> {
    (0..amplifiers).find(|at| {
        let of_it = |it: &Use| {
            it.unit
                .and_then(|unit| units.get(unit))
                .is_some_and(|it| it.amplifier == *at)
        };
        !hookup.uses.iter().any(of_it)
    })
}

/// What wants to be driven of speakers: each driver by itself where they are divided actively.
fn wanted_of(planner: &mut Planner<'_>, it: SpeakersWish) -> Vec<(Wanted, SpeakersWish)> {
    let count = match (it.at.is_stereo(), it.count) {
        (true, Some(count)) => count.max(2).next_multiple_of(2),
        (true, None) => 2,
        (false, count) => count.unwrap_or(1).max(1),
    };
    if it.impedance.is_none() {
        planner.assumed.push(say!(
            "start-assumed-impedance",
            speakers = group(it.at),
            impedance = figure(4.0, In::Plain("Ω"))
        ));
    }
    let wanted = |way: Way| Wanted {
        at: it.at,
        way,
        count,
        coils: it.coils.unwrap_or(1).clamp(1, 2),
        impedance: it.impedance.unwrap_or(Ohms(4.0)),
        bears: it.power,
        bridged: it.bridged && !it.at.is_stereo(),
    };
    let ways: &[Way] = match (it.at.is_stereo() && it.active, it.ways) {
        (true, 3..) => &[Way::Low, Way::Middle, Way::High],
        (true, _) => &[Way::Low, Way::High],
        _ => &[Way::Whole],
    };
    ways.iter().map(|way| (wanted(*way), it)).collect()
}

/// What a kind of speakers is called.
pub(super) fn group(at: Where) -> Saying {
    match at {
        Where::Front => say!("start-group-front"),
        Where::Rear => say!("start-group-rear"),
        Where::Centre => say!("start-group-centre"),
        Where::Bass => say!("start-group-bass"),
    }
}

/// What drivers of a kind are called.
pub(super) fn drivers(at: Where, way: Way) -> Saying {
    match way {
        Way::Whole => group(at),
        Way::Low => say!("start-group-low", of = group(at)),
        Way::Middle => say!("start-group-middle", of = group(at)),
        Way::High => say!("start-group-high", of = group(at)),
    }
}

pub(super) fn ohms(load: Ohms) -> words::Figure {
    figure(load.0, In::Plain("Ω"))
}

/// Why there is no hook-up.
fn why_not(units: &[Unit], head: Option<(&Output, u8)>, wanted: &[Wanted]) -> Vec<Trouble> {
    // Left and right take the two channels of a pair; the bass one channel, or two that are bridged.
    let outputs = |stereo: bool| -> Vec<&Output> {
        let of_units = units.iter().filter(|it| it.paired || !stereo);
        let bridged = units
            .iter()
            .filter_map(|it| it.bridged.as_ref())
            .filter(|_| !stereo);
        let own = head.map(|(it, _)| it).filter(|_| stereo);
        of_units.map(|it| &it.alone).chain(bridged).chain(own).collect()
    };
    let mut troubles = Vec::new();
    for it in wanted {
        let each = if it.at.is_stereo() { it.count / 2 } else { it.count };
        let together = Drivers {
            coils: each.saturating_mul(it.coils),
            impedance: it.impedance,
            bears: it.bears.map(|bears| bears / f64::from(it.coils)),
        };
        if hookup::choose(units, head, &[*it]).is_some() {
            continue;
        }
        let outputs = outputs(it.at.is_stereo());
        let possible = outputs.iter().filter_map(|output| {
            let mut ways = hookup::Joined::all(together.coils)
                .filter_map(|joined| output.into_load(joined.load(together.impedance)));
            let first = ways.next()?;
            Some(ways.fold(first, Watts::min))
        });
        let too_strong = possible.reduce(Watts::min);
        let loads: Vec<words::Figure> = hookup::Joined::all(together.coils)
            .map(|joined| ohms(joined.load(together.impedance)))
            .collect();
        let least = outputs.iter().map(|it| it.minimum).reduce(Ohms::min);
        troubles.push(match (too_strong, it.bears, least) {
            (Some(power), Some(bears), _) if power.0 > bears.0 * f64::from(each) => Trouble::new(
                say!(
                    "start-too-strong",
                    speakers = drivers(it.at, it.way),
                    bears = figure(bears.0 * f64::from(each), In::Plain("W")),
                    power = figure(power.0, In::Plain("W"))
                ),
                say!(
                    "start-too-strong-instead",
                    power = figure(power.0 / f64::from(each), In::Plain("W"))
                ),
            ),
            (None, _, Some(least)) => Trouble::new(
                say!(
                    "start-no-load",
                    speakers = drivers(it.at, it.way),
                    loads = loads,
                    least = ohms(least)
                ),
                say!("start-no-load-instead", least = ohms(least)),
            ),
            _ => Trouble::new(
                say!("start-no-output", speakers = drivers(it.at, it.way)),
                say!("start-no-output-instead"),
            ),
        });
    }
    if troubles.is_empty() {
        troubles.push(Trouble::new(
            say!(
                "start-too-few",
                speakers = wanted.iter().map(|it| drivers(it.at, it.way)).collect::<Vec<_>>()
            ),
            say!("start-too-few-instead"),
        ));
    }
    troubles
}

/// The channels of an amplifier as they are set: sections of channels that are used alike.
pub(super) fn sections_as_set(sound: &Sound, hookup: &HookUp, amplifier: usize) -> Sections {
    let mut sections: Vec<Section> = Vec::new();
    for (number, unit) in sound
        .units
        .iter()
        .enumerate()
        .filter(|(_, it)| it.amplifier == amplifier)
    {
        let Some(stated) = sound.stated.get(amplifier).and_then(|it| it.get(unit.section)) else {
            continue;
        };
        // What an amplifier divides by itself is what the drivers must not get.
        let filter = match hookup.of_unit(number).next().map(|it| sound.corners(it)) {
            Some([Some(from), _]) => Filter::HighPass(from),
            Some([None, Some(to)]) => Filter::LowPass(to),
            _ => Filter::Full,
        };
        let section = Section {
            channels: if unit.paired { 2 } else { 1 },
            bridged: stated.bridged.clone().filter(|_| unit.paired),
            filter,
            ..stated.clone()
        };
        match sections.last_mut() {
            Some(last)
                if last.channels % 2 == 0
                    && section.channels == 2
                    && Section {
                        channels: 2,
                        ..last.clone()
                    } == section =>
            {
                last.channels += 2;
            }
            _ => sections.push(section),
        }
    }
    if sections.is_empty() {
        return Sections::four_channel();
    }
    Sections(sections)
}
