//! A wish read from one line of text, or from several. A phrase tells one thing; commas, `and` and `with` part phrases. A
//! phrase that names no thing tells more of the one before it.

mod sound;
mod subject;
mod supply;

use super::lexicon::Meaning;
use super::phrase::{Element, Is, NotUnderstood, Phrases, has, take};
use super::wish::*;
use model::body::BatteryPlace;
use ordered::Sort as _;
use std::ops::Range;
use subject::{Subject, driven_by, is_place, is_thing, speakers_begin, subject};
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
        // With its watts and amps: none of them belongs to anything else.
        if let Some(solar) = phrase.iter().find(|it| it.is == Is::Means(Meaning::Solar)) {
            let at = solar.at.clone();
            return self.not(&at, say!("start-no-solar"));
        }
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
}
