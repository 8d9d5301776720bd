//! What a phrase tells of an amplifier: its channels, their power at loads, bridging, minimum loads.

use super::lexicon::Meaning;
use super::phrase::{Element, Is, number, take};
use super::wish::Where;
use super::wish::{AmplifierWish, ChannelsWish, PowerAt};
use model::quantity::{Ohms, Watts};

/// Reads a phrase into an amplifier.
pub(super) fn amplifier(it: &mut AmplifierWish, phrase: &mut [Element]) {
    let mut state = State::default();
    // In a phrase of its own, `gebrückt` and `mindestens` stand before what they speak of; a channel count before its noun.
    for at in 0..phrase.len() {
        let is = |at: usize| phrase.get(at).map(|it| it.is);
        let next = is(at + 1);
        // `2 ohm stable`, but not `at 2 ohm stable`, nor `4 ohm, stable at 2 ohm`: the load is one that it may drive, and of
        // no power.
        let at_it = |is: Option<Is>| matches!(is, Some(Is::Means(Meaning::At)));
        let to_come = is(at + 2);
        if matches!(
            (is(at), next),
            (Some(Is::Ohms(_)), Some(Is::Means(Meaning::Minimum)))
        ) && !at.checked_sub(1).is_some_and(|before| at_it(is(before)))
            && !at_it(to_come)
            && !matches!(to_come, Some(Is::Ohms(_)))
        {
            state.minimum = true;
        }
        if let Some(element) = phrase.get_mut(at) {
            element.used |= state.take(it, element.is, next);
        }
    }
    take(phrase, Meaning::Amplifier);
}

#[derive(Default)]
struct State {
    /// Powers told from here on are those of a bridged pair.
    bridged: bool,
    /// The next load is the least.
    minimum: bool,
    /// How many channels the next power is of.
    count: Option<u8>,
}

impl State {
    fn take(&mut self, it: &mut AmplifierWish, is: Is, next: Option<Is>) -> bool {
        match is {
            Is::Means(Meaning::Mono) => self.channels(it, 1),
            Is::Means(Meaning::Stereo) => self.channels(it, 2),
            // A bass amplifier has one channel.
            Is::Means(Meaning::Plays(Where::Bass)) => {
                if it.channels.is_empty() && self.count.is_none() {
                    self.channels(it, 1);
                }
            }
            Is::Number(_) | Is::Means(Meaning::Number(_)) => {
                let (Some(count), Some(Is::Means(Meaning::Channels))) = (number(is), next) else {
                    return false;
                };
                self.channels(it, count);
            }
            Is::Means(Meaning::Channels | Meaning::At) => {}
            Is::Times(_) => {
                let count = number(is).unwrap_or(1);
                match it.channels.last_mut() {
                    // `4 channels, 4 × 75 W` and `mono 1 × 500 W` tell the same twice.
                    Some(last) if last.count == count && last.power.is_empty() => {}
                    // `5-channel amp 4 × 60 W + 1 × 300 W`: the total was told first.
                    Some(last) if last.power.is_empty() && last.count > count => last.count = count,
                    _ => self.count = Some(count),
                }
                self.bridged = false;
            }
            Is::Means(Meaning::Bridged) => self.bridged = true,
            Is::Means(Meaning::Minimum) => {
                // `stable at 2 ohm` and `2 ohm stable`: in the second the load came before.
                let behind = matches!(next, Some(Is::Ohms(_) | Is::Means(Meaning::At)));
                match it.channels.last_mut() {
                    Some(last) if !behind => {
                        let powers = if self.bridged {
                            &mut last.bridged
                        } else {
                            &mut last.power
                        };
                        let load = powers.last_mut().and_then(|it| it.load);
                        let least = if self.bridged {
                            &mut last.bridged_minimum
                        } else {
                            &mut last.minimum
                        };
                        *least = least.or(load);
                    }
                    _ => self.minimum = true,
                }
            }
            Is::Watts(power) => self.power(it, Watts(power)),
            Is::Ohms(load) => return self.load(it, Ohms(load)),
            Is::Means(Meaning::Class(class)) => it.class = Some(class),
            Is::Means(Meaning::Second) => {}
            _ => return false,
        }
        true
    }

    fn channels(&mut self, it: &mut AmplifierWish, count: u8) {
        match it.channels.last_mut() {
            // `4 × 75 W, 4 channels`.
            Some(last) if last.count == count || count == 0 => {}
            _ => it.channels.push(ChannelsWish::new(count.clamp(1, 12))),
        }
    }

    fn power(&mut self, it: &mut AmplifierWish, power: Watts) {
        if let Some(count) = self.count.take() {
            it.channels.push(ChannelsWish::new(count.clamp(1, 12)));
        }
        if it.channels.is_empty() {
            it.channels.push(ChannelsWish::new(1));
        }
        if let Some(last) = it.channels.last_mut() {
            let list = if self.bridged {
                &mut last.bridged
            } else {
                &mut last.power
            };
            if list.len() < 6 {
                list.push(PowerAt { power, load: None });
            }
        }
    }

    fn load(&mut self, it: &mut AmplifierWish, load: Ohms) -> bool {
        let Some(last) = it.channels.last_mut() else {
            return false;
        };
        if std::mem::take(&mut self.minimum) {
            if self.bridged {
                last.bridged_minimum = Some(load);
            } else {
                last.minimum = Some(load);
            }
            return true;
        }
        let list = if self.bridged {
            &mut last.bridged
        } else {
            &mut last.power
        };
        match list.last_mut() {
            Some(power) if power.load.is_none() => power.load = Some(load),
            // A load of which no power is told is one that it may drive.
            _ if self.bridged => last.bridged_minimum = Some(load),
            _ => last.minimum = Some(load),
        }
        true
    }
}
