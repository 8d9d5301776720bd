//! What is the same for every break on a sheet: its network, where it stood before, and how its wires and devices behave.

use super::device::Device;
use crate::assemble::{Prepared, prepare_measured};
use crate::heat::Heating;
use crate::measured::as_measured;
use crate::network::{Kind, Network, values};
use crate::solve::{Law, Level, SourceModel};
use model::{PartKind, Settings, Sheet, TerminalRef};

/// A sheet made ready to be broken.
#[derive(Clone, Debug)]
pub(super) struct Base {
    pub(super) sheet: Sheet,
    pub(super) settings: Settings,
    pub(super) net: Network,
    pub(super) models: Vec<SourceModel>,
    /// Law of each branch at the operating point before.
    pub(super) laws: Vec<Law>,
    /// Voltage of each node then.
    pub(super) voltages: Vec<f64>,
    /// Whether each part was on then.
    pub(super) on: Vec<bool>,
    /// Temperature of each run then.
    pub(super) temperatures: Vec<f64>,
    /// Resistance of the wire of each run at 20 °C, without endings.
    pub(super) cold: Vec<f64>,
    pub(super) heats: Vec<Heating>,
    pub(super) devices: Vec<Device>,
}

impl Base {
    /// Of a sheet that [`body::lay`] made.
    pub(super) fn new(sheet: &Sheet, settings: &Settings) -> Self {
        let sheet = as_measured(sheet).into_owned();
        let Prepared {
            net,
            point,
            models,
            temperatures,
        } = prepare_measured(&sheet, settings, Level::Rms);
        let laws = point.elements.iter().map(|it| it.law).collect();
        Self {
            models,
            laws,
            voltages: point.voltages,
            on: point.on,
            temperatures,
            cold: sheet
                .runs
                .values()
                .map(|run| values::wire_at_20(&run.wire))
                .collect(),
            heats: heats(&sheet, settings),
            devices: Device::all(&net, &sheet),
            net,
            sheet,
            settings: settings.clone(),
        }
    }

    /// The same before, on a sheet that a break has changed: what was there goes on as it was, what is new follows its own law.
    pub(super) fn on(&self, sheet: Sheet) -> Self {
        let net = Network::build_on(&sheet, &body::Metal::of(&sheet, &self.settings));
        // Branches of a part stand in the same order in both networks.
        let own = |net: &Network, part: usize| -> Vec<usize> {
            let is_own = |at: &usize| {
                net.branches.get(*at).is_some_and(|b| {
                    b.part == part && !matches!(b.kind, Kind::Wire { .. } | Kind::Shield { .. })
                })
            };
            (0..net.branches.len()).filter(is_own).collect()
        };
        let mut laws: Vec<Law> = net
            .branches
            .iter()
            .map(|b| match b.kind {
                Kind::Load(_) | Kind::Battery | Kind::Alternator | Kind::ConverterOut | Kind::TurnOnOut => {
                    Law::Open
                }
                _ if b.closes == crate::network::Closes::Never => Law::Open,
                _ => Law::Resistance(b.resistance),
            })
            .collect();
        let mut on = vec![false; net.parts.len()];
        let mut voltages = vec![0.0; net.nodes];
        for (part, id) in net.parts.iter().enumerate() {
            let Some(before) = self.net.part_index(*id) else {
                continue;
            };
            on[part] = self.on.get(before) == Some(&true);
            for (now, was) in own(&net, part).into_iter().zip(own(&self.net, before)) {
                let opened = net.branches[now].closes == crate::network::Closes::Never;
                if let Some(law) = self.laws.get(was).filter(|_| !opened) {
                    laws[now] = *law;
                }
            }
            let both = net.terminals_of(part).iter().zip(self.net.terminals_of(before));
            for (now, was) in both {
                if let (Some(place), Some(volts)) = (voltages.get_mut(now.node), self.voltages.get(was.node))
                {
                    *place = *volts;
                }
            }
        }
        let heats = heats(&sheet, &self.settings);
        let temperature = |(index, run): (usize, &crate::network::NetworkRun)| {
            let before = self.net.runs.binary_search_by(|it| it.id.cmp(&run.id)).ok();
            let before = before.and_then(|before| self.temperatures.get(before).copied());
            before.unwrap_or_else(|| heats.get(index).map_or(20.0, |heat| heat.ambient().0))
        };
        let models = net
            .sources
            .iter()
            .map(|source| {
                let id = net.parts.get(source.part);
                let before = self
                    .net
                    .sources
                    .iter()
                    .position(|it| self.net.parts.get(it.part) == id);
                before
                    .and_then(|before| self.models.get(before).copied())
                    .unwrap_or(SourceModel::Off)
            })
            .collect();
        Self {
            temperatures: net.runs.iter().enumerate().map(temperature).collect(),
            cold: sheet
                .runs
                .values()
                .map(|run| values::wire_at_20(&run.wire))
                .collect(),
            devices: Device::all(&net, &sheet),
            models,
            laws,
            voltages,
            on,
            heats,
            net,
            sheet,
            settings: self.settings.clone(),
        }
    }

    pub(super) fn kind_of(&self, part: usize) -> Option<&PartKind> {
        self.sheet
            .parts
            .get(self.net.parts.get(part)?)
            .map(|part| &part.is)
    }

    /// Voltage between two nodes before, as a size.
    pub(super) fn apart(&self, a: usize, b: usize) -> f64 {
        let at = |node: usize| self.voltages.get(node).copied().unwrap_or(0.0);
        (at(a) - at(b)).abs()
    }

    pub(super) fn node_of(&self, at: &TerminalRef) -> Option<usize> {
        self.net.node_of(at)
    }
}

fn heats(sheet: &Sheet, settings: &Settings) -> Vec<Heating> {
    sheet
        .runs
        .values()
        .map(|run| Heating::of(&run.wire, &settings.conditions))
        .collect()
}
