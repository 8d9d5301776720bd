//! A sheet made ready at one level, for whoever goes on from what flows there: faults, decks for a circuit simulator.

use super::warming::warm_up;
use crate::measured::as_measured;
use crate::network::Network;
use crate::solve::{Level, Operating, Operator, SourceModel, demands};
use model::{Settings, Sheet};

/// A sheet made ready at one level.
pub(crate) struct Prepared {
    pub(crate) net: Network,
    pub(crate) point: Operating,
    /// Of each source, in the order of the network.
    pub(crate) models: Vec<SourceModel>,
    /// Temperature of the conductor of each run in °C, settled at RMS level.
    pub(crate) temperatures: Vec<f64>,
}

/// The operating point of a sheet at one level, as [`super::study`] finds it: temperatures settled at RMS level.
pub(crate) fn prepare(sheet: &Sheet, settings: &Settings, level: Level) -> Prepared {
    prepare_measured(&as_measured(sheet), settings, level)
}

/// The same of a sheet into which what was measured is put already.
pub(crate) fn prepare_measured(sheet: &Sheet, settings: &Settings, level: Level) -> Prepared {
    let conditions = &settings.conditions;
    let net = Network::build_on(sheet, &body::Metal::of(sheet, settings));
    let speakers = crate::speakers::study_speakers(sheet, settings);
    let asked = demands(sheet, conditions, |part| {
        speakers.output.get(&part).copied().unwrap_or_default()
    });
    let mut operator = Operator::new(&net, sheet, conditions.state, asked);
    let temperatures = warm_up(&mut operator, &net, sheet, conditions);
    let point = operator.operate(level);
    let models = operator.models.clone();
    drop(operator);
    Prepared {
        net,
        point,
        models,
        temperatures,
    }
}
