//! What feeds each signal input, and at which level.
//!
//! Line level travels from line outputs, speaker level from the legs of speaker outputs; both through runs, splices,
//! plugs and adapters. Equipment hands on: channel n of an amplifier takes input ((n − 1) mod inputs) + 1, output n of a
//! converter or processor likewise. A processor can mix freely, and the sheet does not say how it is set: its outputs
//! count as fed when any of its inputs is, and the side of an output is that of the input with its number, or of a fed
//! one of the same side of a pair.

use super::{Spread, spread};
use crate::speakers::Speakers;
use crate::speakers::index::Index;
use crate::study::{ChannelSide, InputFed};
use model::kinds::sound::InputLevel;
use model::quantity::Hertz;
use model::terminals::{HEAD_LINE_OUTPUTS, HEAD_SPEAKER_OUTPUTS};
use model::{PartId, PartKind, Role, RunId, Sheet};
use ordered::{OrderedMap, OrderedSet};

/// Where a signal comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Source {
    part: PartId,
    /// Output or channel number.
    number: u8,
    /// Speaker level.
    is_speaker_level: bool,
}

/// One input while it is being worked out.
#[derive(Default)]
struct Input {
    sources: OrderedSet<Source>,
    by: OrderedSet<(PartId, String)>,
    runs: OrderedSet<RunId>,
    /// Every signal that arrives is of a level that its terminal takes.
    fits: bool,
}

type Inputs = OrderedMap<(PartId, u8), Input>;

/// What feeds every input of the sheet.
pub(super) fn find(index: &Index<'_>, speakers: &Speakers) -> Vec<InputFed> {
    let mut inputs = Inputs::new();
    for (at, spot) in index.spots.iter().enumerate() {
        match spot.role {
            Role::LineIn(number) => {
                let takes_both = matches!(
                    index.kind(at),
                    Some(PartKind::Amplifier(it)) if it.input_level == InputLevel::Both
                ) || matches!(index.kind(at), Some(PartKind::Processor(it)) if it.input_level == InputLevel::Both);
                let input = entry(&mut inputs, spot.part, number);
                line_input(index, at, takes_both, input);
            }
            Role::LevelIn {
                channel,
                positive: true,
            } => {
                let input = entry(&mut inputs, spot.part, channel);
                level_input(index, at, channel, input);
            }
            _ => {}
        }
    }
    let drives = Drives::new(index, speakers, &inputs);
    let mut all = Vec::with_capacity(inputs.len());
    for ((part, number), input) in &inputs {
        let mut sides = input
            .sources
            .iter()
            .map(|source| side(index, &inputs, *source, &mut OrderedSet::new()));
        let first = sides.next().flatten();
        let side = if sides.all(|side| side == first) {
            first
        } else {
            None
        };
        let driven = drives.of_input(*part, *number);
        all.push(InputFed {
            part: *part,
            input: *number,
            by: input.by.iter().cloned().collect(),
            side,
            level_fits: (!input.by.is_empty()).then_some(input.fits),
            needed: !driven.is_empty() && is_needed(index, &inputs, &drives, *part, *number),
            drives: driven.into_iter().collect(),
            runs: input.runs.clone(),
        });
    }
    all
}

fn entry(inputs: &mut Inputs, part: PartId, number: u8) -> &mut Input {
    inputs.entry((part, number)).or_insert_with(|| Input {
        fits: true,
        ..Input::default()
    })
}

/// Takes note of an output that reaches an input.
fn feed(index: &Index<'_>, input: &mut Input, spread: &Spread, at: usize, fits: bool) {
    let Some(spot) = index.spots.get(at) else { return };
    let (number, is_speaker_level) = match spot.role {
        Role::LineOut(number) => (number, false),
        Role::SpeakerOut { channel, .. } => (channel, true),
        _ => return,
    };
    input.sources.insert(Source {
        part: spot.part,
        number,
        is_speaker_level,
    });
    input.by.insert((spot.part, spot.name.as_str().to_owned()));
    input.fits &= fits;
    spread.runs_to(at, &mut input.runs);
}

fn line_input(index: &Index<'_>, at: usize, takes_both: bool, input: &mut Input) {
    let own = index.spots.get(at).map(|spot| spot.part);
    let found = spread(index, at, |other| index.is_supply(other));
    // Both legs of an output on one terminal are one short, not two signals: the positive leg speaks for both.
    for other in found.from.keys().copied() {
        match index.spots.get(other).map(|spot| (spot.part, spot.role)) {
            Some((part, Role::LineOut(_))) if Some(part) != own => feed(index, input, &found, other, true),
            Some((_, Role::SpeakerOut { positive: true, .. })) => {
                feed(index, input, &found, other, takes_both)
            }
            _ => {}
        }
    }
}

/// A speaker-level input needs both its legs on one output, or its negative leg on ground as some equipment has it.
fn level_input(index: &Index<'_>, plus: usize, channel: u8, input: &mut Input) {
    let Some(part) = index.spots.get(plus).map(|spot| spot.part) else {
        return;
    };
    let Some(minus) = index.find(part, &format!("hi{channel}-")) else {
        return;
    };
    let reach = |at: usize| spread(index, at, |other| index.is_supply(other));
    let (found, back) = (reach(plus), reach(minus));
    let legs = |spread: &Spread| -> OrderedMap<usize, (PartId, u8)> {
        spread
            .from
            .keys()
            .filter_map(
                |at| match index.spots.get(*at).map(|spot| (spot.part, spot.role)) {
                    Some((part, Role::SpeakerOut { channel, .. })) => Some((*at, (part, channel))),
                    _ => None,
                },
            )
            .collect()
    };
    let is_line = |at: &usize| matches!(index.spots.get(*at).map(|spot| spot.role), Some(Role::LineOut(_)));
    let (ahead, behind) = (legs(&found), legs(&back));
    let grounded = back.from.keys().any(|at| index.is_supply(*at));
    for (at, output) in &ahead {
        let closed = grounded || behind.values().any(|other| other == output);
        if closed {
            feed(index, input, &found, *at, true);
            for (other, _) in behind.iter().filter(|(_, it)| *it == output) {
                back.runs_to(*other, &mut input.runs);
            }
        }
    }
    // Legs of two different outputs on the two legs of one input: both of them feed it, which is one too many.
    if input.by.is_empty()
        && let (Some((a, _)), Some((b, _))) = (ahead.first_key_value(), behind.first_key_value())
    {
        feed(index, input, &found, *a, true);
        feed(index, input, &back, *b, true);
    }
    for spread in [&found, &back] {
        for at in spread.from.keys().filter(|at| is_line(at)) {
            feed(index, input, spread, *at, false);
        }
    }
}

/// Side of the stage that a source plays; `None` when it cannot be told.
fn side(
    index: &Index<'_>,
    inputs: &Inputs,
    source: Source,
    seen: &mut OrderedSet<(PartId, u8)>,
) -> Option<ChannelSide> {
    let by_number = |number: u8| {
        if number % 2 == 1 {
            ChannelSide::Left
        } else {
            ChannelSide::Right
        }
    };
    let count = match &index.sheet.parts.get(&source.part)?.is {
        PartKind::HeadUnit(_) => {
            let is_bass = !source.is_speaker_level
                && HEAD_LINE_OUTPUTS
                    .iter()
                    .any(|(name, number)| *name == "sub" && *number == source.number);
            let known = source.is_speaker_level || HEAD_LINE_OUTPUTS.iter().any(|(_, n)| *n == source.number);
            let known = known
                && (!source.is_speaker_level
                    || HEAD_SPEAKER_OUTPUTS.iter().any(|(_, n)| *n == source.number));
            return known.then(|| {
                if is_bass {
                    ChannelSide::Bass
                } else {
                    by_number(source.number)
                }
            });
        }
        PartKind::Amplifier(it) => it.inputs,
        PartKind::Processor(it) => it.inputs,
        PartKind::LineConverter(it) => it.channels,
        _ => return None,
    };
    let mapped = source_input(source.number, count);
    let of = |number: u8, seen: &mut OrderedSet<(PartId, u8)>| {
        if !seen.insert((source.part, number)) {
            return None;
        }
        let sources = &inputs.get(&(source.part, number))?.sources;
        let mut sides = sources
            .iter()
            .map(|source| side(index, inputs, *source, seen))
            .collect::<Vec<_>>()
            .into_iter();
        let first = sides.next().flatten();
        if sides.all(|side| side == first) {
            first
        } else {
            None
        }
    };
    if let Some(found) = of(mapped, seen) {
        return Some(found);
    }
    let is_processor = matches!(
        index.sheet.parts.get(&source.part).map(|part| &part.is),
        Some(PartKind::Processor(_))
    );
    let is_fed = inputs
        .get(&(source.part, mapped))
        .is_some_and(|input| !input.by.is_empty());
    if !is_processor || is_fed {
        return None;
    }
    (1..=count)
        .filter(|number| number % 2 == mapped % 2)
        .find_map(|number| of(number, seen))
}

/// The input that an output takes: ((n − 1) mod inputs) + 1.
fn source_input(output: u8, inputs: u8) -> u8 {
    output.saturating_sub(1) % inputs.max(1) + 1
}

/// Which speakers hang on which input.
struct Drives {
    /// By part and input: speakers on the part's own channels.
    own: OrderedMap<(PartId, u8), OrderedSet<PartId>>,
    /// Inputs of channels that play by themselves or lead a bridged pair.
    leading: OrderedSet<(PartId, u8)>,
    /// By part and its input: inputs of further equipment that its outputs feed.
    onward: OrderedMap<(PartId, u8), OrderedSet<(PartId, u8)>>,
}

impl Drives {
    fn new(index: &Index<'_>, speakers: &Speakers, inputs: &Inputs) -> Self {
        let mut own: OrderedMap<(PartId, u8), OrderedSet<PartId>> = OrderedMap::new();
        let mut leading = OrderedSet::new();
        for load in &speakers.channels {
            let Some(PartKind::Amplifier(amplifier)) = index.sheet.parts.get(&load.part).map(|part| &part.is)
            else {
                continue;
            };
            if !load.drivers.is_empty() {
                leading.insert((load.part, source_input(load.channel, amplifier.inputs)));
            }
            for channel in [Some(load.channel), load.bridged_with].into_iter().flatten() {
                own.entry((load.part, source_input(channel, amplifier.inputs)))
                    .or_default()
                    .extend(load.drivers.iter().copied());
            }
        }
        let mut onward: OrderedMap<(PartId, u8), OrderedSet<(PartId, u8)>> = OrderedMap::new();
        for (input, it) in inputs {
            for source in &it.sources {
                let count = match index.sheet.parts.get(&source.part).map(|part| &part.is) {
                    Some(PartKind::Amplifier(it)) => it.inputs,
                    Some(PartKind::Processor(it)) => it.inputs,
                    Some(PartKind::LineConverter(it)) => it.channels,
                    _ => continue,
                };
                onward
                    .entry((source.part, source_input(source.number, count)))
                    .or_default()
                    .insert(*input);
            }
        }
        Self { own, leading, onward }
    }

    fn of_input(&self, part: PartId, input: u8) -> OrderedSet<PartId> {
        let mut found = OrderedSet::new();
        let mut seen = OrderedSet::new();
        let mut waiting = vec![(part, input)];
        while let Some(at) = waiting.pop() {
            if seen.insert(at) {
                found.extend(self.own.get(&at).into_iter().flatten().copied());
                waiting.extend(self.onward.get(&at).into_iter().flatten().copied());
            }
        }
        found
    }
}

/// Whether something is missed when nothing comes in here, where speakers hang on it. Of a bridged pair the second channel's input may be left
/// free, and of a processor every input whose pair is not used.
fn is_needed(index: &Index<'_>, inputs: &Inputs, drives: &Drives, part: PartId, number: u8) -> bool {
    let is_fed = |number: u8| {
        inputs
            .get(&(part, number))
            .is_some_and(|input| !input.by.is_empty())
    };
    match index.sheet.parts.get(&part).map(|it| &it.is) {
        Some(PartKind::Processor(processor)) => {
            let partner = if number % 2 == 1 {
                number.saturating_add(1)
            } else {
                number.saturating_sub(1)
            };
            is_fed(number) || is_fed(partner) || !(1..=processor.inputs).any(is_fed)
        }
        Some(PartKind::Amplifier(_)) => {
            drives.leading.contains(&(part, number)) || drives.onward.contains_key(&(part, number))
        }
        _ => true,
    }
}

/// Carries filters of head units on: what comes out of front and rear outputs that keep bass back has none further down
/// either. The filters in amplifiers, crossovers and capacitors are in [`Speakers`] already; a processor's are not on the sheet.
pub(super) fn carry_filters(sheet: &Sheet, inputs: &[InputFed], speakers: &mut Speakers) {
    for input in inputs {
        let from = |(part, terminal): &(PartId, String)| match sheet.parts.get(part).map(|part| &part.is) {
            Some(PartKind::HeadUnit(head)) if terminal != "sub" => head.high_pass.value(),
            _ => None,
        };
        // All that feeds it must be filtered, and the lowest of the corners counts.
        let corners: Option<Vec<Hertz>> = input.by.iter().map(from).collect();
        let Some(corner) = corners.and_then(|all| all.into_iter().reduce(Hertz::min)) else {
            continue;
        };
        for driver in &input.drives {
            if let Some(driver) = speakers.drivers.get_mut(driver)
                && driver.plays
            {
                driver.high_pass = Some(driver.high_pass.map_or(corner, |own| own.max(corner)));
            }
        }
    }
}
