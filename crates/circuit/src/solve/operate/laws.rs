//! Which law each branch follows as things stand: at this level, in this state of the vehicle, with what is on and closed.

use super::Operator;
use crate::network::{Branch, Closes, Draw, Kind, values};
use crate::solve::law::HAIR;
use crate::solve::{Law, Level};
use model::PartKind;
use model::job::VehicleState;

/// A source as the solver sees it.
#[derive(Clone, Copy, Debug)]
pub(crate) enum SourceModel {
    /// A battery: voltage, resistance by level, resistance to charging.
    Battery(values::BatteryModel),
    /// Holds a voltage with a slope up to a limit, and takes nothing.
    Limited {
        /// Voltage at no current.
        voltage: f64,
        /// Fall of voltage per ampere, in ohms.
        slope: f64,
        /// Most current.
        limit: f64,
        /// Share of the power taken at its input that it gives; of converters.
        efficiency: Option<f64>,
    },
    /// Gives nothing as things stand.
    Off,
}

/// In which piece of its characteristic a source works.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Piece {
    /// Discharging, or holding its voltage.
    Holding,
    /// A battery that is charged.
    Charging,
    /// At its limit.
    Limited,
    /// Would have to take current, which it cannot.
    Blocked,
}

impl Operator<'_> {
    /// Gives every element its law as things stand.
    pub(super) fn lay(&mut self, level: Level) {
        if self.laid {
            for at in 0..self.moving.len() {
                let at = self.moving[at];
                self.elements[at].law = self.law(at, level);
            }
        } else {
            for at in 0..self.elements.len() {
                self.elements[at].law = self.law(at, level);
            }
            self.system.steady_changed();
            self.laid = true;
        }
    }

    fn law(&self, at: usize, level: Level) -> Law {
        let branch = &self.net.branches[at];
        let through = Law::Resistance(self.ohms[at]);
        let when = |conducts: bool| if conducts { through } else { Law::Open };
        let demand = self.demands.get(branch.part);
        let on = self.is_on(branch.part);
        match branch.kind {
            Kind::Load(draw) => match (draw, demand) {
                (Draw::Coil, _) => self
                    .coil
                    .get(&branch.part)
                    .map_or(Law::Open, |r| Law::Resistance(*r)),
                (_, None) => Law::Open,
                (Draw::Supply, Some(demand)) => match self.input.get(&branch.part) {
                    // What is asked is multiplied by the share; what a converter takes for its output is not asked.
                    Some(power) if self.share > 1e-9 => Law::Power(*power / self.share),
                    Some(_) => Law::Open,
                    None if on => demand.supply[level as usize],
                    None => Law::Open,
                },
                (Draw::TurnOn, Some(demand)) => Law::Current(demand.turn_on),
                (_, Some(demand)) => Law::Current(if on { demand.idle } else { demand.off }),
            },
            Kind::Battery | Kind::Alternator | Kind::ConverterOut => match self.source_of.get(at) {
                Some(Some(source)) => self.source_law(*source, level),
                _ => Law::Open,
            },
            _ => match branch.closes {
                Closes::Always => through,
                Closes::Never => Law::Open,
                Closes::InUse => when(self.in_use),
                Closes::EngineOn => when(self.engine),
                Closes::Relay { .. } | Closes::Sensing { .. } => when(self.closed[at]),
                Closes::Diode { drop } => Law::Diode {
                    drop,
                    resistance: self.ohms[at],
                },
                Closes::TurnedOn => when(on),
            },
        }
    }

    fn source_law(&self, source: usize, level: Level) -> Law {
        match self.models[source] {
            SourceModel::Battery(it) => {
                let gives = if level == Level::Burst { it.most } else { it.usual };
                Law::Battery {
                    emf: it.emf,
                    gives,
                    takes: it.charging,
                }
            }
            SourceModel::Limited { .. } if !self.may_give(source) => Law::Open,
            SourceModel::Limited {
                voltage,
                slope,
                limit,
                ..
            } => Law::Limited {
                emf: voltage,
                resistance: slope,
                limit,
            },
            SourceModel::Off => Law::Open,
        }
    }

    /// In which piece of its characteristic a source has come to work.
    pub(super) fn piece(&self, source: usize) -> Piece {
        let Some(it) = self.net.sources.get(source) else {
            return Piece::Blocked;
        };
        let v = self.system.across(&self.elements[it.branch]);
        match self.elements[it.branch].law {
            Law::Battery { emf, .. } if v > emf + HAIR => Piece::Charging,
            Law::Limited { emf, .. } if v > emf - HAIR => Piece::Blocked,
            Law::Limited {
                emf,
                resistance,
                limit,
            } if v <= emf - resistance * limit => Piece::Limited,
            Law::Open => Piece::Blocked,
            _ => Piece::Holding,
        }
    }
}

/// Whether a branch keeps its law whatever the level, the state of the vehicle, and what is on: wires, fuses, coils.
pub(super) fn is_steady(branch: &Branch) -> bool {
    match branch.kind {
        Kind::Load(draw) => draw == Draw::Coil,
        Kind::Battery | Kind::Alternator | Kind::ConverterOut => false,
        _ => matches!(branch.closes, Closes::Always | Closes::Never),
    }
}

/// How a source gives in this state of the vehicle.
pub(super) fn source_model(kind: Option<&PartKind>, state: VehicleState) -> SourceModel {
    let engine = matches!(state, VehicleState::Idle | VehicleState::Cruise);
    match kind {
        Some(PartKind::Battery(it)) => SourceModel::Battery(values::battery_model(it)),
        Some(PartKind::Alternator(it)) if engine => {
            let cold = if state == VehicleState::Idle {
                &it.idle_current
            } else {
                &it.current
            };
            let stand_in = if state == VehicleState::Idle { 60.0 } else { 120.0 };
            SourceModel::Limited {
                voltage: it.voltage.value().map_or(14.2, |v| v.0),
                slope: values::ALTERNATOR_SLOPE,
                limit: cold.value().map_or(stand_in, |i| i.0) * it.hot_share.value().map_or(0.8, |s| s.0),
                efficiency: None,
            }
        }
        Some(PartKind::Converter(it)) if engine || !it.with_engine => SourceModel::Limited {
            voltage: it.voltage.value().map_or(14.4, |v| v.0),
            slope: values::CONVERTER_SLOPE,
            limit: it.current.value().map_or(30.0, |i| i.0),
            efficiency: Some(it.efficiency.value().map_or(0.9, |s| s.0).clamp(0.05, 1.0)),
        },
        _ => SourceModel::Off,
    }
}
