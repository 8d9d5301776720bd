//! What a phrase tells of the vehicle, of its supply, and of what it feeds besides music.

use super::super::lexicon::Meaning;
use super::super::phrase::{Element, Is, how_many, number, take};
use super::super::wish::*;
use super::Reader;
use model::body::BatteryPlace;
use model::quantity::{AmpHours, Amps, Watts};
use words::say;

impl Reader<'_> {
    /// What a phrase tells of the vehicle, whatever else it tells of.
    pub(super) fn vehicle(&mut self, phrase: &mut [Element]) {
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
                Is::Amps(current) if !it.used => {
                    battery.cranking = Some(Amps(current));
                    true
                }
                Is::Means(Meaning::Battery | Meaning::Cranking | Meaning::Second) => true,
                _ => false,
            };
        }
    }

    pub(super) fn battery(&mut self, phrase: &mut [Element]) {
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

    pub(super) fn second(&mut self, phrase: &mut [Element]) {
        let second = self.out.wish.second.get_or_insert_with(Default::default);
        if take(phrase, Meaning::Charger) {
            let charger = second.charger.get_or_insert_default();
            for it in phrase.iter_mut() {
                if let Is::Amps(current) = it.is {
                    charger.current = Some(Amps(current));
                    it.used = true;
                }
            }
        }
        if let Some(count) = how_many_batteries(phrase) {
            second.count = count.clamp(1, MOST_SECONDS);
            if count > MOST_SECONDS
                && let Some(at) = phrase.first().map(|it| it.at.clone())
            {
                self.not(&at, say!("start-too-many", most = usize::from(MOST_SECONDS)));
            }
        }
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

    pub(super) fn alternator(&mut self, phrase: &mut [Element]) {
        take(phrase, Meaning::Alternator);
        for it in phrase.iter_mut() {
            if let Is::Amps(current) = it.is {
                self.out.wish.alternator = Some(Amps(current));
                it.used = true;
            }
        }
    }

    pub(super) fn load(&mut self, phrase: &mut [Element]) {
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

/// How many batteries a phrase tells of: a number right before what they are: `two 100 Ah lithium`, `2 × AGM`.
fn how_many_batteries(phrase: &mut [Element]) -> Option<u8> {
    for at in 0..phrase.len() {
        let behind = phrase.get(at + 1).is_some_and(|it| {
            matches!(
                it.is,
                Is::AmpHours(_) | Is::Means(Meaning::Battery | Meaning::Second | Meaning::Chemistry(_))
            )
        });
        if let Some(it) = phrase.get_mut(at).filter(|it| behind && !it.used)
            && let Some(count) = number(it.is)
        {
            it.used = true;
            return Some(count);
        }
    }
    None
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
