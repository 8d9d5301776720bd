//! Conditions that a vehicle is used under.

use model::Settings;
use model::job::{Duty, VehicleState};

/// The conditions that sizes have to hold under: as set, and the worst.
#[must_use]
pub fn conditions(settings: &Settings) -> Vec<Settings> {
    let worst = [
        (VehicleState::EngineOff, Duty::Tone),
        (VehicleState::Idle, Duty::Tone),
        (VehicleState::Cruise, Duty::Tone),
        (VehicleState::Cruise, Duty::Idle),
    ];
    let with = |(state, duty): (VehicleState, Duty)| {
        let mut settings = settings.clone();
        (settings.conditions.state, settings.conditions.duty) = (state, duty);
        settings
    };
    std::iter::once(settings.clone())
        .chain(worst.into_iter().map(with))
        .collect()
}
