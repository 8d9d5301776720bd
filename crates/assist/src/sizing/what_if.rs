//! What would be: the same sheet with another duty, alternator, battery, or longer and shorter runs.

use model::job::Duty;
use model::quantity::{AmpHours, Amps, Metres, Ohms};
use model::{Fact, PartKind, Settings, Sheet};

/// What is taken to be otherwise. Factors are taken from 0.1 to 10.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WhatIf {
    /// How hard the music works the amplifiers; `None`: as set, and the worst as well.
    pub duty: Option<Duty>,
    /// Current of every alternator, over what it is.
    pub alternator: f64,
    /// Capacity and cranking current of every battery, over what they are.
    pub battery: f64,
    /// Length of every run that may be laid anew, over what it is.
    pub length: f64,
}

impl Default for WhatIf {
    fn default() -> Self {
        Self {
            duty: None,
            alternator: 1.0,
            battery: 1.0,
            length: 1.0,
        }
    }
}

impl WhatIf {
    /// The sheet and the settings as they would be.
    #[must_use]
    pub fn of(&self, sheet: &Sheet, settings: &Settings) -> (Sheet, Settings) {
        let factor = |factor: f64| {
            if factor.is_finite() {
                factor.clamp(0.1, 10.0)
            } else {
                1.0
            }
        };
        let (alternator, battery, length) =
            (factor(self.alternator), factor(self.battery), factor(self.length));
        let (mut sheet, mut settings) = (sheet.clone(), settings.clone());
        if let Some(duty) = self.duty {
            settings.conditions.duty = duty;
        }
        let amps = |fact: &mut Fact<Amps>, by: f64| *fact = scaled(*fact, |it| Amps(it.0 * by));
        for part in sheet.parts.values_mut() {
            match &mut part.is {
                PartKind::Alternator(it) => {
                    amps(&mut it.current, alternator);
                    amps(&mut it.idle_current, alternator);
                }
                PartKind::Battery(it) => {
                    amps(&mut it.cranking, battery);
                    it.capacity = scaled(it.capacity, |it| AmpHours(it.0 * battery));
                    it.resistance = scaled(it.resistance, |it| Ohms(it.0 / battery));
                }
                _ => {}
            }
        }
        if length != 1.0 {
            let laid = body::lay(&sheet, &settings).into_owned();
            for (id, run) in &mut sheet.runs {
                if run.fitted_by == model::conductor::FittedBy::Maker {
                    continue;
                }
                let own = laid.runs.get(id).map_or(run.wire.length, |laid| laid.wire.length);
                run.wire.length = match own.value() {
                    // Told, so that the body plan does not take it back.
                    Some(own) => Fact::Given(Metres(own.0 * length)),
                    None => Fact::Unknown,
                };
            }
        }
        (sheet, settings)
    }
}

fn scaled<T: Copy>(fact: Fact<T>, by: impl Fn(T) -> T) -> Fact<T> {
    match fact {
        Fact::Given(it) => Fact::Given(by(it)),
        Fact::Assumed(it) => Fact::Assumed(by(it)),
        Fact::Computed(it) => Fact::Computed(by(it)),
        Fact::Unknown => Fact::Unknown,
    }
}
