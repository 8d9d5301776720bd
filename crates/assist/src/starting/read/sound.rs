//! What a phrase tells of what makes the music.

use super::super::amps::amplifier;
use super::super::lexicon::Meaning;
use super::super::phrase::{Element, Is, has, how_many, number, small, take};
use super::super::wish::*;
use super::Reader;
use model::body::BatteryPlace;
use model::quantity::{Ohms, Watts};
use words::say;

impl Reader<'_> {
    pub(super) fn head(&mut self, phrase: &mut [Element]) {
        let (factory, without) = (take(phrase, Meaning::Factory), take(phrase, Meaning::Without));
        take(phrase, Meaning::Head);
        let head = &mut self.out.wish.head;
        head.factory |= factory;
        // That there is one at all is worth telling: its four outputs then drive what no amplifier does.
        if head.speaker_outputs.is_none() && !head.is_told() {
            head.speaker_outputs = Some(4);
        }
        let (line, speaker) = (
            has(phrase, Meaning::LineOutputs),
            has(phrase, Meaning::SpeakerOutputs),
        );
        take(phrase, Meaning::LineOutputs);
        take(phrase, Meaning::SpeakerOutputs);
        take(phrase, Meaning::Pair);
        if without {
            if line {
                head.line_pairs = Some(0);
            }
            if speaker {
                head.speaker_outputs = Some(0);
            }
        }
        for it in phrase.iter_mut() {
            it.used |= match it.is {
                Is::Watts(power) => {
                    head.power = Some(Watts(power));
                    true
                }
                Is::Times(count) => {
                    head.speaker_outputs = Some(small(count).min(4));
                    true
                }
                Is::Number(_) | Is::Means(Meaning::Number(_)) if line || speaker => {
                    let count = number(it.is).unwrap_or(0);
                    if line {
                        // Up to three they are pairs; more are counted one by one.
                        let pairs = if count > 3 { count.div_ceil(2) } else { count };
                        head.line_pairs = Some(pairs.min(3));
                    } else {
                        head.speaker_outputs = Some(count.min(4));
                    }
                    true
                }
                _ => false,
            };
        }
    }

    pub(super) fn processor(&mut self, phrase: &mut [Element]) {
        let processor = self.out.wish.processor.get_or_insert_with(Default::default);
        take(phrase, Meaning::Processor);
        take(phrase, Meaning::Channels);
        take(phrase, Meaning::Outputs);
        for it in phrase.iter_mut() {
            if let Some(count) = number(it.is) {
                processor.outputs = Some(count.clamp(1, 12));
                it.used = true;
            }
        }
    }

    pub(super) fn amplifiers(&mut self, phrase: &mut [Element], goes_on: bool) {
        // `4x75` are watts.
        each_times(phrase, Is::Watts);
        let all = &mut self.out.wish.amplifiers;
        let count = how_many(phrase);
        let begins = !goes_on || all.is_empty();
        if begins {
            all.push(AmplifierWish::default());
        }
        if let Some(it) = all.last_mut() {
            if goes_on {
                one_more_channel(it, phrase);
            }
            amplifier(it, phrase);
        }
        // `2 mono amps 500 W` are two of them.
        if let (Some(it), true, Some(count)) = (all.last().cloned(), begins, count) {
            all.extend(std::iter::repeat_n(
                it,
                usize::from(count).clamp(1, MOST_AMPLIFIERS + 1) - 1,
            ));
        }
        if all.len() > MOST_AMPLIFIERS {
            all.truncate(MOST_AMPLIFIERS);
            if let Some(at) = phrase.first().map(|it| it.at.clone()) {
                self.not(&at, say!("start-too-many", most = MOST_AMPLIFIERS));
            }
        }
    }

    pub(super) fn speakers(&mut self, phrase: &mut [Element], goes_on: bool) {
        // `speakers in the rear` play there; a subwoofer stands in the load area in any case.
        let plays = phrase
            .iter()
            .any(|it| matches!(it.is, Is::Means(Meaning::Plays(_))));
        for it in phrase.iter_mut() {
            let at = match it.is {
                Is::Means(Meaning::Stands(BatteryPlace::Rear)) => Where::Rear,
                Is::Means(Meaning::Stands(BatteryPlace::Front)) => Where::Front,
                _ => continue,
            };
            if plays {
                it.used = true;
            } else {
                it.is = Is::Means(Meaning::Plays(at));
            }
        }
        // `in the doors` are the front ones, unless it is told which.
        let mut named = phrase
            .iter()
            .any(|it| matches!(it.is, Is::Means(Meaning::Plays(_))));
        // Four of them are those of the rear as well.
        if !named && has(phrase, Meaning::Doors) {
            for it in phrase.iter_mut().filter(|it| number(it.is) == Some(4)) {
                it.used = true;
                it.is = Is::Means(Meaning::Speakers);
                self.driven.push(Where::Rear);
            }
        }
        for it in phrase.iter_mut().filter(|it| it.is == Is::Means(Meaning::Doors)) {
            if !std::mem::replace(&mut named, true) {
                it.is = Is::Means(Meaning::Plays(Where::Front));
            }
            it.used = true;
        }
        let plays = phrase.iter().find_map(|it| match it.is {
            Is::Means(Meaning::Plays(at)) => Some(at),
            _ => None,
        });
        let coils = has(phrase, Meaning::DualCoil);
        // `dual coil 2x4` are ohms.
        if coils && !phrase.iter().any(|it| matches!(it.is, Is::Ohms(_))) {
            each_times(phrase, Is::Ohms);
        }
        let last = self.out.wish.speakers.last().map(|it| it.at);
        let at = match (plays, goes_on, last) {
            (Some(at), ..) => at,
            (None, true, Some(at)) => at,
            (None, ..) if coils => Where::Bass,
            (None, ..) => Where::Front,
        };
        let told = self.out.wish.speakers.iter().any(|it| it.at == at);
        if told
            && !(goes_on && last == Some(at))
            && let Some(it) = phrase
                .iter_mut()
                .find(|it| it.is == Is::Means(Meaning::Plays(at)))
        {
            it.used = true;
            let at = it.at.clone();
            self.not(&at, say!("start-told-twice"));
        }
        let all = &mut self.out.wish.speakers;
        if !told {
            all.push(SpeakersWish::new(at));
        }
        let Some(it) = all.iter_mut().find(|it| it.at == at) else {
            return;
        };
        let mut before = None;
        for element in phrase.iter_mut() {
            let is = element.is;
            element.used |= match is {
                Is::Means(Meaning::Plays(other)) => other == at,
                Is::Means(Meaning::Speakers | Meaning::FullRange) => true,
                Is::Means(Meaning::Components) => {
                    let divided = at.is_stereo();
                    it.ways = if divided { it.ways.max(2) } else { it.ways };
                    divided
                }
                Is::Means(Meaning::ThreeWay) => {
                    let divided = at.is_stereo();
                    it.ways = if divided { 3 } else { it.ways };
                    divided
                }
                Is::Means(Meaning::Bridged) if !at.is_stereo() => {
                    it.bridged = true;
                    true
                }
                // `on bridged channels`.
                Is::Means(Meaning::Channels) if it.bridged => true,
                // Of what is divided; a centre speaker is not.
                Is::Means(Meaning::Active) => {
                    it.active |= at != Where::Centre;
                    it.ways = if at.is_stereo() { it.ways.max(2) } else { it.ways };
                    it.active
                }
                Is::Means(Meaning::Pair) => {
                    let pairs = before.and_then(number).unwrap_or(1);
                    it.count = Some(pairs.saturating_mul(2));
                    true
                }
                Is::Means(Meaning::DualCoil) => {
                    it.coils = Some(2);
                    true
                }
                Is::Means(Meaning::SingleCoil) => {
                    it.coils = Some(1);
                    true
                }
                Is::Means(Meaning::Channels) => false,
                // `2 × 4 ohm dual coil` are the coils of one; `2 × 4 ohm` are two speakers.
                Is::Times(n) => {
                    if coils && n == 2.0 {
                        it.coils = Some(2);
                    } else {
                        it.count = Some(small(n));
                    }
                    true
                }
                Is::Number(_) | Is::Means(Meaning::Number(_)) => {
                    it.count = number(is);
                    true
                }
                Is::Ohms(impedance) => {
                    it.impedance = Some(Ohms(impedance));
                    true
                }
                Is::Watts(power) => {
                    it.power = Some(Watts(power));
                    true
                }
                Is::Means(Meaning::At) => true,
                _ => false,
            };
            before = Some(is);
        }
        if it.count.is_some_and(|count| count == 0 || count > MOST_SPEAKERS) {
            it.count = None;
            if let Some(at) = phrase.first().map(|it| it.at.clone()) {
                self.not(&at, say!("start-too-many", most = usize::from(MOST_SPEAKERS)));
            }
        }
    }
}

/// A number right behind `×` that has no unit gets one.
fn each_times(phrase: &mut [Element], unit: fn(f64) -> Is) {
    for at in 1..phrase.len() {
        let behind = phrase.get(at - 1).is_some_and(|it| matches!(it.is, Is::Times(_)));
        if let Some(it) = phrase.get_mut(at)
            && let (Is::Number(number), true) = (it.is, behind)
        {
            it.is = unit(number);
        }
    }
}

/// `4x60 + 300`: a number alone behind the power of other channels is the power of one more.
fn one_more_channel(it: &mut AmplifierWish, phrase: &mut [Element]) {
    const LEAST_WATTS: f64 = 20.0;
    let told = it.channels.last().is_some_and(|it| !it.power.is_empty());
    let mut open = phrase.iter_mut().filter(|it| !it.used);
    if let (Some(element), None, true) = (open.next(), open.next(), told)
        && let Is::Number(power) = element.is
        && power >= LEAST_WATTS
    {
        element.used = true;
        let power = PowerAt {
            power: Watts(power),
            load: None,
        };
        it.channels.push(ChannelsWish {
            power: vec![power],
            ..ChannelsWish::new(1)
        });
    }
}
