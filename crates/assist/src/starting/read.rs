//! A wish read from one line of text, or from several. A phrase tells one thing; commas, `and` and `with` part phrases. A
//! phrase that names no thing tells more of the one before it.

use super::amps::amplifier;
use super::lexicon::Meaning;
use super::phrase::{Element, Is, Phrases, has, how_many, number, small, take};
use super::wish::*;
use model::body::BatteryPlace;
use model::quantity::{AmpHours, Amps, Ohms, Watts};
use ordered::Sort as _;
use std::ops::Range;
use words::{Saying, say};

/// Longest text that is read, in bytes.
pub const LONGEST: usize = 4000;

/// What was understood of a text.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Understood {
    /// The wish.
    pub wish: Wish,
    /// What of the text was not understood, in its order. Nothing of it is in the wish.
    pub not: Vec<NotUnderstood>,
}

/// Words that were not understood.
#[derive(Clone, Debug, PartialEq)]
pub struct NotUnderstood {
    /// Where they stand in the text, in bytes.
    pub at: Range<usize>,
    /// The words.
    pub text: String,
    /// What is wrong with them, and what would do.
    pub why: Saying,
}

/// The thing that a phrase tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Subject {
    Battery,
    Second,
    Alternator,
    Head,
    Processor,
    Amplifier,
    Speakers,
    Load,
}

/// Reads a wish.
#[must_use]
pub fn read(text: &str) -> Understood {
    if text.len() > LONGEST {
        let not = NotUnderstood {
            at: 0..text.len(),
            text: text.chars().take(20).collect(),
            why: say!("start-too-long", most = LONGEST, bytes = text.len()),
        };
        return Understood {
            wish: Wish::default(),
            not: vec![not],
        };
    }
    let mut phrases = Phrases {
        text,
        not: Vec::new(),
    };
    let all = phrases.phrases();
    let mut reader = Reader {
        phrases,
        out: Understood::default(),
        before: None,
        driven: Vec::new(),
    };
    for phrase in all {
        reader.phrase(phrase);
    }
    let mut out = reader.out;
    for at in reader.driven {
        if out.wish.speakers.iter().all(|it| it.at != at) {
            out.wish.speakers.push(SpeakersWish::new(at));
        }
    }
    out.not = reader.phrases.not;
    out.not.order_by(|a, b| a.at.start.cmp(&b.at.start));
    out
}

struct Reader<'t> {
    phrases: Phrases<'t>,
    out: Understood,
    /// What the last phrase told of.
    before: Option<Subject>,
    /// Speakers that are told of by no more than what an amplifier drives: `4 × 75 W amp for front and rear`.
    driven: Vec<Where>,
}

impl Reader<'_> {
    fn not(&mut self, at: &Range<usize>, why: Saying) {
        self.phrases.not(at, why);
    }

    fn phrase(&mut self, mut phrase: Vec<Element>) {
        self.vehicle(&mut phrase);
        if let Some(at) = driven_by(&phrase) {
            // `2 subs 4 ohm at mono 500 W`: the speakers, then what drives them.
            let mut rest = phrase.split_off(at);
            if let Some(it) = rest.first_mut() {
                it.is = Is::Means(Meaning::Amplifier);
            }
            self.one(phrase);
            return self.one(rest);
        }
        self.takes_head(&mut phrase);
        if subject(&phrase) == Some(Subject::Amplifier) {
            if let Some(at) = speakers_begin(&phrase) {
                let rest = phrase.split_off(at);
                self.one(phrase);
                return self.one(rest);
            }
            self.takes_driven(&mut phrase);
        } else if phrase.first().is_some_and(|it| it.is == Is::Means(Meaning::And))
            && self.before == Some(Subject::Amplifier)
            && !self.driven.is_empty()
            && phrase.iter().all(|it| it.used || is_place(it.is))
        {
            self.takes_driven(&mut phrase);
            return;
        }
        self.one(phrase);
    }

    /// Takes from a phrase of speakers that the head unit drives them: `door speakers off the radio`.
    fn takes_head(&mut self, phrase: &mut [Element]) {
        let place = |means: Meaning| phrase.iter().position(|it| it.is == Is::Means(means));
        let speakers = phrase.iter().position(|it| is_place(it.is));
        let behind = place(Meaning::Head)
            .zip(speakers)
            .is_some_and(|(head, at)| at < head);
        if !behind || has(phrase, Meaning::LineOutputs) || has(phrase, Meaning::SpeakerOutputs) {
            return;
        }
        take(phrase, Meaning::Head);
        let factory = take(phrase, Meaning::Factory);
        let head = &mut self.out.wish.head;
        head.factory |= factory;
        if head.speaker_outputs.is_none() {
            head.speaker_outputs = Some(4);
        }
    }

    /// Takes from a phrase what says no more than which speakers are driven.
    fn takes_driven(&mut self, phrase: &mut [Element]) {
        let named = phrase
            .iter()
            .any(|it| matches!(it.is, Is::Means(Meaning::Plays(_))));
        // The bass of `sub amp` tells what the amplifier is; it is read there.
        let place = |is: Is| match is {
            Is::Means(Meaning::Plays(Where::Bass)) => None,
            Is::Means(Meaning::Plays(at)) => Some(at),
            Is::Means(Meaning::Stands(BatteryPlace::Rear)) => Some(Where::Rear),
            Is::Means(Meaning::Stands(BatteryPlace::Front)) => Some(Where::Front),
            Is::Means(Meaning::Doors) if !named => Some(Where::Front),
            _ => None,
        };
        for it in phrase.iter_mut().filter(|it| !it.used) {
            if let Some(at) = place(it.is) {
                self.driven.push(at);
                it.used = true;
            } else if matches!(it.is, Is::Means(Meaning::Doors | Meaning::Speakers)) {
                it.used = true;
            }
        }
    }

    /// A phrase that tells of one thing.
    fn one(&mut self, mut phrase: Vec<Element>) {
        let coil = |it: &Element| matches!(it.is, Is::Means(Meaning::DualCoil | Meaning::SingleCoil));
        let of_coils = self.before != Some(Subject::Speakers) && phrase.iter().any(coil);
        // `4-Kanal 4x80 W` needs no noun, unless what is spoken of has channels as well.
        let of_channels = !matches!(
            self.before,
            Some(Subject::Speakers | Subject::Processor | Subject::Amplifier)
        ) && phrase
            .iter()
            .any(|it| !it.used && it.is == Is::Means(Meaning::Channels));
        let named = subject(&phrase)
            .or(of_coils.then_some(Subject::Speakers))
            .or(of_channels.then_some(Subject::Amplifier));
        let open = phrase.iter().any(|it| !it.used);
        let goes_on = self.before.filter(|_| named.is_none());
        let guess = phrase
            .iter()
            .any(|it| matches!(it.is, Is::Watts(_)))
            .then_some(Subject::Amplifier);
        if open {
            let goes_on_with = goes_on.is_some();
            match named.or(goes_on).or(guess) {
                Some(subject) => {
                    self.before = Some(subject);
                    match subject {
                        Subject::Battery => self.battery(&mut phrase),
                        Subject::Second => self.second(&mut phrase),
                        Subject::Alternator => self.alternator(&mut phrase),
                        Subject::Head => self.head(&mut phrase),
                        Subject::Processor => self.processor(&mut phrase),
                        Subject::Amplifier => self.amplifiers(&mut phrase, goes_on_with),
                        Subject::Speakers => self.speakers(&mut phrase, goes_on_with),
                        Subject::Load => self.load(&mut phrase),
                    }
                }
                None => self.before = None,
            }
        }
        for it in phrase.iter().filter(|it| !it.used) {
            let why = match it.is {
                Is::Number(_) | Is::Times(_) => say!("start-number-alone"),
                Is::Means(means) if named.is_some() && is_thing(means) => say!("start-two-things"),
                _ => say!("start-does-not-fit"),
            };
            self.not(&it.at, why);
        }
    }

    /// What a phrase tells of the vehicle, whatever else it tells of.
    fn vehicle(&mut self, phrase: &mut [Element]) {
        let without = take(phrase, Meaning::Without);
        let mut denied = false;
        let wish = &mut self.out.wish;
        for it in phrase.iter_mut() {
            it.used |= match it.is {
                Is::Means(Meaning::Body(form)) => {
                    wish.body = Some(form);
                    true
                }
                Is::Means(Meaning::Drive(side)) => {
                    wish.drive = Some(side);
                    true
                }
                Is::Means(Meaning::Harness) => {
                    denied |= without;
                    wish.harness = Some(!without);
                    true
                }
                Is::Means(Meaning::WiredReturn) => {
                    denied |= without;
                    wish.wired_return = Some(!without);
                    true
                }
                Is::Means(Meaning::BodyReturn) => {
                    wish.wired_return = Some(false);
                    true
                }
                _ => false,
            };
        }
        // What is denied otherwise is told by who reads on.
        if without && !denied {
            for it in phrase.iter_mut() {
                if it.is == Is::Means(Meaning::Without) {
                    it.used = false;
                }
            }
        }
    }

    /// What a phrase tells of a battery.
    fn of_battery(battery: &mut BatteryWish, phrase: &mut [Element]) {
        for it in phrase.iter_mut() {
            it.used |= match it.is {
                Is::Means(Meaning::Chemistry(of)) => {
                    battery.chemistry = Some(of);
                    true
                }
                Is::AmpHours(capacity) => {
                    battery.capacity = Some(AmpHours(capacity));
                    true
                }
                Is::Amps(current) => {
                    battery.cranking = Some(Amps(current));
                    true
                }
                Is::Means(Meaning::Battery | Meaning::Cranking | Meaning::Second) => true,
                _ => false,
            };
        }
    }

    fn battery(&mut self, phrase: &mut [Element]) {
        // `2 batteries`: the second one is told nothing of.
        for at in 0..phrase.len() {
            let is_noun = phrase
                .get(at + 1)
                .is_some_and(|it| it.is == Is::Means(Meaning::Battery));
            if let Some(it) = phrase.get_mut(at).filter(|_| is_noun)
                && let Some(count @ 1..=2) = number(it.is)
            {
                it.used = true;
                if count == 2 {
                    self.out.wish.second.get_or_insert_with(Default::default);
                }
            }
        }
        Self::of_battery(&mut self.out.wish.battery, phrase);
        if let Some(at) = stands(phrase) {
            self.out.wish.battery_at = Some(at);
        }
    }

    fn second(&mut self, phrase: &mut [Element]) {
        let second = self.out.wish.second.get_or_insert_with(Default::default);
        Self::of_battery(&mut second.battery, phrase);
        second.at = stands(phrase).or(second.at);
        for it in phrase.iter_mut() {
            if let Is::Means(Meaning::Isolator(kind)) = it.is {
                second.isolator = Some(kind);
                it.used = true;
            }
        }
    }

    fn alternator(&mut self, phrase: &mut [Element]) {
        take(phrase, Meaning::Alternator);
        for it in phrase.iter_mut() {
            if let Is::Amps(current) = it.is {
                self.out.wish.alternator = Some(Amps(current));
                it.used = true;
            }
        }
    }

    fn head(&mut self, phrase: &mut [Element]) {
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

    fn processor(&mut self, phrase: &mut [Element]) {
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

    fn amplifiers(&mut self, phrase: &mut [Element], goes_on: bool) {
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

    fn speakers(&mut self, phrase: &mut [Element], goes_on: bool) {
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

    fn load(&mut self, phrase: &mut [Element]) {
        let mut load = None;
        let (mut power, mut current) = (None, None);
        let count = how_many(phrase);
        for it in phrase.iter_mut() {
            it.used |= match it.is {
                Is::Means(Meaning::Load(kind)) if load.is_none_or(|it| it == kind) => {
                    load = Some(kind);
                    true
                }
                Is::Watts(watts) => {
                    power = Some(Watts(watts));
                    true
                }
                Is::Amps(amps) => {
                    current = Some(Amps(amps));
                    true
                }
                _ => false,
            };
        }
        let all = &mut self.out.wish.loads;
        match (load, all.last_mut()) {
            (None, Some(last)) => {
                last.power = power.or(last.power);
                last.current = current.or(last.current);
            }
            (None, None) => {}
            (Some(kind), _) => {
                let one = LoadWish { kind, power, current };
                all.extend(std::iter::repeat_n(
                    one,
                    usize::from(count.unwrap_or(1).clamp(1, 8)),
                ));
            }
        }
        if all.len() > MOST_LOADS {
            all.truncate(MOST_LOADS);
            if let Some(at) = phrase.first().map(|it| it.at.clone()) {
                self.not(&at, say!("start-too-many", most = MOST_LOADS));
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

/// Whether an element says where speakers are and nothing else.
fn is_place(is: Is) -> bool {
    matches!(
        is,
        Is::Means(Meaning::Plays(_) | Meaning::Stands(_) | Meaning::Doors | Meaning::Speakers)
    )
}

/// Where in a phrase speakers end and what they hang on begins: `at` before an amplifier, or before `2 × 120 W`.
fn driven_by(phrase: &[Element]) -> Option<usize> {
    let is = |at: usize| phrase.get(at).map(|it| it.is);
    let at = (1..phrase.len()).find(|at| {
        let amplifier = matches!(
            is(at + 1),
            Some(Is::Means(Meaning::Amplifier | Meaning::Mono | Meaning::Stereo))
        );
        let power = matches!(is(at + 1), Some(Is::Times(_))) && matches!(is(at + 2), Some(Is::Watts(_)));
        is(*at) == Some(Is::Means(Meaning::At)) && (amplifier || power)
    })?;
    let before = phrase.get(..at)?;
    let speakers = before.iter().any(|it| {
        is_place(it.is)
            || matches!(
                it.is,
                Is::Means(
                    Meaning::Components
                        | Meaning::ThreeWay
                        | Meaning::Active
                        | Meaning::FullRange
                        | Meaning::DualCoil
                )
            )
    });
    let amplifier = before.iter().any(|it| {
        matches!(
            it.is,
            Is::Means(Meaning::Amplifier | Meaning::Mono | Meaning::Stereo)
        )
    });
    (speakers && !amplifier).then_some(at)
}

/// Where in a phrase of an amplifier that was told of speakers are told of that are more than a place: `mono 500 W at 2 ohm one dual
/// coil sub 2 × 4 ohm`. A number right before them is theirs.
fn speakers_begin(phrase: &[Element]) -> Option<usize> {
    let is = |it: &Element, tells: fn(Meaning) -> bool| matches!(it.is, Is::Means(means) if tells(means));
    let kind = phrase.iter().position(|it| {
        is(it, |it| {
            matches!(
                it,
                Meaning::DualCoil
                    | Meaning::SingleCoil
                    | Meaning::Components
                    | Meaning::ThreeWay
                    | Meaning::Active
                    | Meaning::FullRange
                    | Meaning::Pair
            )
        })
    })?;
    let mut begins = kind;
    while let Some(before) = begins.checked_sub(1).and_then(|at| phrase.get(at)) {
        let power = begins
            .checked_sub(2)
            .and_then(|at| phrase.get(at))
            .is_some_and(|it| matches!(it.is, Is::Times(_)));
        let counts = number(before.is).is_some() && !power;
        if !(counts || is_place(before.is)) {
            break;
        }
        begins -= 1;
    }
    let told = phrase.get(..begins)?.iter().any(|it| {
        matches!(it.is, Is::Watts(_))
            || is(it, |it| {
                matches!(it, Meaning::Amplifier | Meaning::Mono | Meaning::Stereo)
            })
    });
    told.then_some(begins)
}

/// What a phrase tells of; the first of these that it names.
fn subject(phrase: &[Element]) -> Option<Subject> {
    let means = |which: fn(Meaning) -> bool| {
        phrase
            .iter()
            .any(|it| !it.used && matches!(it.is, Is::Means(means) if which(means)))
    };
    let of_battery = means(|it| matches!(it, Meaning::Battery | Meaning::Chemistry(_) | Meaning::Cranking))
        || phrase.iter().any(|it| matches!(it.is, Is::AmpHours(_)));
    if means(|it| matches!(it, Meaning::Isolator(_))) || of_battery && means(|it| it == Meaning::Second) {
        Some(Subject::Second)
    } else if means(|it| it == Meaning::Alternator) {
        Some(Subject::Alternator)
    } else if means(|it| it == Meaning::Processor) {
        Some(Subject::Processor)
    } else if means(|it| matches!(it, Meaning::Load(_))) {
        Some(Subject::Load)
    } else if means(|it| matches!(it, Meaning::Head | Meaning::LineOutputs | Meaning::SpeakerOutputs)) {
        Some(Subject::Head)
    } else if means(|it| matches!(it, Meaning::Amplifier | Meaning::Mono | Meaning::Stereo)) {
        Some(Subject::Amplifier)
    } else if of_battery {
        Some(Subject::Battery)
    } else if means(|it| {
        matches!(
            it,
            Meaning::Plays(_)
                | Meaning::Doors
                | Meaning::Components
                | Meaning::ThreeWay
                | Meaning::Active
                | Meaning::FullRange
                | Meaning::Speakers
        )
    }) {
        Some(Subject::Speakers)
    } else {
        None
    }
}

/// Whether a meaning names a thing, so that a phrase with two of them wants a comma.
fn is_thing(means: Meaning) -> bool {
    matches!(
        means,
        Meaning::Battery
            | Meaning::Alternator
            | Meaning::Isolator(_)
            | Meaning::Head
            | Meaning::Processor
            | Meaning::Amplifier
            | Meaning::Speakers
            | Meaning::Plays(_)
            | Meaning::Components
            | Meaning::ThreeWay
            | Meaning::FullRange
            | Meaning::Load(_)
    )
}

/// Where a phrase says that a battery stands.
fn stands(phrase: &mut [Element]) -> Option<BatteryPlace> {
    let mut found = None;
    for it in phrase.iter_mut() {
        let at = match it.is {
            Is::Means(Meaning::Stands(at)) => Some(at),
            Is::Means(Meaning::Plays(Where::Rear)) => Some(BatteryPlace::Rear),
            Is::Means(Meaning::Plays(Where::Front)) => Some(BatteryPlace::Front),
            _ => None,
        };
        it.used |= at.is_some();
        found = at.or(found);
    }
    found
}
