//! Amplifiers and processor as parts, their signal and their turn-on leads.

use super::places::Spot;
use super::planner::{Planner, Trouble};
use super::sketch::jacket;
use super::sound::{Sound, sections_as_set};
use super::supply::Consumer;
use super::vehicle::Vehicle;
use super::wish::Where;
use model::PartId;
use model::conductor::Colour;
use model::kinds::sound::{Amplifier, AmplifierClass, InputLevel, Processor, TurnOn};
use model::kinds::supply::{Splice, SpliceMethod};
use ordered::OrderedMap;
use words::{Unit, figure, say};

const SIGNAL: f64 = 0.35;
const TURN_ON: f64 = 0.75;

/// Draws amplifiers and processor; they want supply.
pub(super) fn equipment(
    planner: &mut Planner<'_>,
    vehicle: &Vehicle,
    sound: &mut Sound,
) -> Result<Vec<Consumer>, Vec<Trouble>> {
    sound.head = vehicle.head;
    let by_speaker_level = planner.line_pairs() == 0;
    let wish = planner.wish;
    let mut consumers = Vec::new();
    let processor = match &wish.processor {
        Some(it) => {
            let needed = inputs_of(planner, sound).len();
            let outputs = it.outputs.unwrap_or_else(|| {
                let even = needed.next_multiple_of(2).clamp(4, 12);
                u8::try_from(even).unwrap_or(12)
            });
            if needed > usize::from(outputs) {
                return Err(vec![Trouble::new(
                    say!(
                        "start-few-outputs",
                        outputs = usize::from(outputs),
                        needed = needed
                    ),
                    say!("start-few-outputs-instead", needed = needed),
                )]);
            }
            let is = Processor {
                inputs: if by_speaker_level { 4 } else { 2 },
                input_level: level(by_speaker_level),
                outputs,
                turn_on: if wish.head.factory {
                    TurnOn::Sensing
                } else {
                    TurnOn::Lead
                },
                ..Processor::default()
            };
            Some(planner.sketch.part(is, None, Spot::Equipment))
        }
        None => None,
    };
    for (number, it) in wish.amplifiers.iter().enumerate() {
        let sections = sections_as_set(sound, &planner.hookup, number);
        let channels = sections.channels();
        let senses = wish.head.factory && processor.is_none();
        let plays = plays(planner, sound, number);
        let only_bridged = channels == 2 && plays.iter().all(|(_, bridged)| *bridged);
        let is = Amplifier {
            sections,
            class: it.class.unwrap_or(AmplifierClass::D),
            turn_on: if senses { TurnOn::Sensing } else { TurnOn::Lead },
            input_level: level(by_speaker_level && processor.is_none()),
            inputs: if only_bridged { 1 } else { channels.clamp(1, 8) },
            ..Amplifier::default()
        };
        let bass = plays.iter().all(|(at, _)| *at == Where::Bass);
        let name = if bass {
            say!("start-label-bass-amplifier")
        } else {
            say!("start-label-amplifier", channels = usize::from(channels))
        };
        let part = planner.sketch.part(is, Some(name.clone()), Spot::Equipment);
        sound.amplifiers.push(part);
        let tag = planner.sketch.tag_of(part);
        consumers.push(Consumer {
            part,
            large: true,
            switched: false,
            name: tag.into(),
        });
    }
    if let Some(part) = processor {
        consumers.push(Consumer {
            part,
            large: false,
            switched: false,
            name: planner.sketch.tag_of(part).into(),
        });
    }
    if let Some(head) = vehicle.head {
        signals(planner, sound, head, processor);
        turn_on(planner, sound, head, processor);
    }
    Ok(consumers)
}

fn level(speaker: bool) -> InputLevel {
    if speaker {
        InputLevel::Speaker
    } else {
        InputLevel::Line
    }
}

/// What an amplifier plays, and whether bridged.
fn plays(planner: &Planner<'_>, sound: &Sound, amplifier: usize) -> Vec<(Where, bool)> {
    let uses = planner.hookup.uses.iter();
    uses.filter(|it| {
        let unit = it.unit.and_then(|unit| sound.units.get(unit));
        unit.is_some_and(|unit| unit.amplifier == amplifier)
    })
    .map(|it| (it.plays, it.bridged))
    .collect()
}

/// An input that wants a signal.
struct Input {
    amplifier: usize,
    input: u8,
    plays: Where,
    /// Left is `true`; the bass and the centre have no side.
    left: Option<bool>,
}

/// The inputs of all amplifiers that want a signal, in the order of their channels.
fn inputs_of(planner: &Planner<'_>, sound: &Sound) -> Vec<Input> {
    let mut inputs = Vec::new();
    for it in &planner.hookup.uses {
        let Some(unit) = it.unit.and_then(|unit| sound.units.get(unit)) else {
            continue;
        };
        let channels: u8 = sound
            .stated
            .get(unit.amplifier)
            .map_or(0, |all| all.iter().map(|section| section.channels).sum());
        let left = it.plays.is_stereo().then_some(it.speakers.0 == 0);
        let both = it.bridged && channels > 2;
        for input in [Some(it.channel), both.then_some(it.channel + 1)]
            .into_iter()
            .flatten()
        {
            inputs.push(Input {
                amplifier: unit.amplifier,
                input,
                plays: it.plays,
                left,
            });
        }
    }
    inputs.sort_by_key(|it| (it.amplifier, it.input));
    inputs
}

/// The name of the head unit's output for a signal. `pair` counts pairs of line outputs, 0 means speaker outputs.
fn output(pairs: u8, plays: Where, left: bool) -> &'static str {
    match (pairs, plays, left) {
        (0, Where::Rear, true) => "rl",
        (0, Where::Rear, false) => "rr",
        (0, _, true) => "fl",
        (0, _, false) => "fr",
        (3, Where::Bass, _) => "sub",
        (2.., Where::Rear | Where::Bass, true) => "rear-l",
        (2.., Where::Rear | Where::Bass, false) => "rear-r",
        (_, _, true) => "front-l",
        (_, _, false) => "front-r",
    }
}

fn signals(planner: &mut Planner<'_>, sound: &Sound, head: PartId, processor: Option<PartId>) {
    let pairs = planner.line_pairs();
    let inputs = inputs_of(planner, sound);
    let colour = |left: Option<bool>| {
        jacket(
            match left {
                Some(true) => Colour::White,
                Some(false) => Colour::Red,
                None => Colour::Violet,
            },
            None,
        )
    };
    let grey = |positive: bool| jacket(Colour::Grey, (!positive).then_some(Colour::Black));
    let mut last: OrderedMap<usize, bool> = OrderedMap::new();
    if let Some(processor) = processor {
        if pairs == 0 {
            for (at, name) in (1_u8..).zip(["fl", "fr", "rl", "rr"]) {
                for sign in ["+", "-"] {
                    let (from, to) = (format!("{name}{sign}"), format!("hi{at}{sign}"));
                    planner
                        .sketch
                        .run((head, &from), (processor, &to), 1.0, grey(sign == "+"));
                }
            }
        } else {
            for (at, left) in [(1, true), (2, false)] {
                let from = output(1, Where::Front, left);
                planner.sketch.run(
                    (head, from),
                    (processor, &format!("in{at}")),
                    SIGNAL,
                    colour(Some(left)),
                );
            }
        }
        // Left comes out at odd numbers and right at even ones: pairs first, then what has no side.
        let mut ordered: Vec<&Input> = inputs.iter().collect();
        ordered.sort_by_key(|it| it.left.is_none());
        for (at, it) in (1_u8..).zip(ordered) {
            let Some(part) = sound.amplifiers.get(it.amplifier) else {
                continue;
            };
            let (from, to) = (format!("line{at}"), format!("in{}", it.input));
            planner
                .sketch
                .run((processor, &from), (*part, &to), SIGNAL, colour(it.left));
        }
        return;
    }
    for it in &inputs {
        let Some(part) = sound.amplifiers.get(it.amplifier) else {
            continue;
        };
        // What has no side takes left and right in turn.
        let side = it.left.unwrap_or_else(|| {
            let next = last.entry(it.amplifier).or_insert(true);
            std::mem::replace(next, !*next)
        });
        let from = output(pairs, it.plays, side);
        if pairs == 0 {
            for sign in ["+", "-"] {
                let (from, to) = (format!("{from}{sign}"), format!("hi{}{sign}", it.input));
                planner
                    .sketch
                    .run((head, &from), (*part, &to), 1.0, grey(sign == "+"));
            }
        } else {
            let to = format!("in{}", it.input);
            planner
                .sketch
                .run((head, from), (*part, &to), SIGNAL, colour(it.left));
        }
    }
    if !inputs.is_empty() && pairs == 0 {
        planner.choices.push(say!(
            "start-chose-speaker-level",
            head = planner.sketch.tag_of(head)
        ));
    }
}

/// The turn-on lead: from the head unit to the processor and on, or to all amplifiers over a splice.
fn turn_on(planner: &mut Planner<'_>, sound: &Sound, head: PartId, processor: Option<PartId>) {
    let factory = planner.wish.head.factory;
    let blue = jacket(Colour::Blue, Some(Colour::White));
    let (from, terminal) = match processor {
        Some(processor) => {
            if !factory {
                planner
                    .sketch
                    .run((head, "rem"), (processor, "rem"), TURN_ON, blue);
            }
            (processor, "rem-out")
        }
        None if factory => {
            if !sound.amplifiers.is_empty() {
                planner.choices.push(say!("start-chose-sensing"));
            }
            return;
        }
        None => (head, "rem"),
    };
    match sound.amplifiers[..] {
        [] => {}
        [one] => {
            planner.sketch.run((from, terminal), (one, "rem"), TURN_ON, blue);
        }
        _ => {
            let places = u8::try_from(sound.amplifiers.len() + 1).unwrap_or(8).clamp(2, 8);
            let splice = Splice {
                places,
                method: SpliceMethod::Crimped,
                ..Splice::default()
            };
            let splice = planner
                .sketch
                .part(splice, Some(say!("start-label-turn-on")), Spot::Equipment);
            planner.sketch.run((from, terminal), (splice, "1"), TURN_ON, blue);
            for (at, amplifier) in sound.amplifiers.iter().enumerate() {
                let place = (at + 2).to_string();
                planner
                    .sketch
                    .run((splice, &place), (*amplifier, "rem"), TURN_ON, blue);
            }
        }
    }
    let draws = 0.01 * sound.amplifiers.len() as f64;
    if sound.amplifiers.len() > 1 {
        planner.choices.push(say!(
            "start-chose-turn-on",
            from = planner.sketch.tag_of(from),
            draws = figure(draws, Unit::Plain("A"))
        ));
    }
}
