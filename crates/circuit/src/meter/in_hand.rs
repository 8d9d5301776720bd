//! A meter in hand: what it shows on one sheet in one state, with its own input and leads.

use super::linear::{Case, Linear};
use super::played::Tones;
use super::scene::{Heard, MOST_HEARINGS, Scene, Standing, differ};
use super::views::Beside;
use super::{METER_INPUT, MOST_OHMS, Probe, Shown};
use model::quantity::{Amps, Ohms, Volts};
use model::{PartId, Settings, Sheet};

/// A meter in hand, on one sheet in one state.
#[derive(Debug)]
pub struct Meter {
    scene: Scene,
    standing: Standing,
    direct: Linear,
    isolated: Linear,
    heard: Heard,
}

impl Meter {
    /// On a sheet, in the state and at the duty of the settings. `tones` are those of the sheet as it should be; where none are given, this
    /// one is that. `None` where nothing can be solved.
    #[must_use]
    pub fn new(sheet: &Sheet, settings: &Settings, tones: Option<&Tones>) -> Option<Self> {
        let scene = Scene::of(sheet, settings);
        let conditions = &settings.conditions;
        let mut standing = scene.stand(conditions.state, conditions.duty, tones)?;
        let mut heard = scene.hear(&standing)?;
        let whole = standing.demands.clone();
        for _ in 0..MOST_HEARINGS {
            let mut case = heard.tone.as_is();
            scene.hush(&mut case, &standing.tones);
            let asked = standing.tones.asked(&scene, &case, &whole);
            let asked = asked.unwrap_or_else(|| whole.clone());
            if !differ(&asked, &standing.demands, &heard.works) {
                break;
            }
            let (point, opened) = scene.operate(&mut standing.net.clone(), standing.state, &asked)?;
            (standing.point, standing.opened, standing.demands) = (point, opened, asked);
            heard = scene.hear(&standing)?;
        }
        Some(Self {
            direct: scene.direct(&standing.net, &standing.point, &standing.demands)?,
            isolated: scene.isolated()?,
            heard,
            standing,
            scene,
        })
    }

    /// The test tone, with what protects itself silent.
    fn tone(&self) -> Case<'_> {
        let mut case = self.heard.tone.as_is();
        self.scene.hush(&mut case, &self.standing.tones);
        case
    }

    /// Whether a part is on and has the supply to work.
    #[must_use]
    pub fn works(&self, part: PartId) -> bool {
        let at = self.scene.net.part_index(part);
        at.is_some_and(|at| self.heard.works.get(at) == Some(&true))
    }

    /// Whether an output of a part has a signal, by channel.
    #[must_use]
    pub fn has_signal(&self, part: PartId, channel: u8) -> bool {
        let at = self.scene.net.part_index(part);
        self.scene.extras.iter().zip(&self.heard.signal).any(|(extra, signal)| {
            *signal
                && matches!(extra.is, Beside::Leg { part, channel: its, .. } if Some(part) == at && its == channel)
        })
    }

    /// The devices that have opened because of what flowed through them.
    #[must_use]
    pub fn opened(&self) -> Vec<crate::DeviceRef> {
        let name = |at: &usize| self.scene.net.devices.get(*at).map(|device| device.name.clone());
        self.standing.opened.iter().filter_map(name).collect()
    }

    /// What it shows. `None` where that cannot be told: what is named is not on the sheet.
    #[must_use]
    pub fn read(&self, probe: &Probe) -> Option<Shown> {
        let net = &self.scene.net;
        let node = |at: &model::TerminalRef| net.node_of(at);
        Some(match probe {
            Probe::Volts(red, black) => {
                let nodes = [node(red)?, node(black)?];
                let places = self.direct.places(nodes);
                if nodes[0] == nodes[1] {
                    return Some(Shown::Volts(Volts(0.0)));
                }
                let Some(open) = self.direct.as_is().volts(places) else {
                    return Some(Shown::Open);
                };
                let behind = self.direct.own_ohms(places).max(0.0);
                Shown::Volts(Volts(open * METER_INPUT / (METER_INPUT + behind)))
            }
            Probe::Tone(red, black) => {
                let places = self.heard.tone.places([node(red)?, node(black)?]);
                match self.tone().volts(places) {
                    Some(volts) => Shown::Volts(Volts(volts.abs())),
                    None => Shown::Open,
                }
            }
            Probe::Ohms(red, black) => {
                let places = self.isolated.places([node(red)?, node(black)?]);
                if places[0] == places[1] {
                    return Some(Shown::Ohms(Ohms(0.0)));
                }
                let ohms = self
                    .isolated
                    .as_is()
                    .are_tied(places)
                    .then(|| self.isolated.own_ohms(places));
                match ohms.filter(|ohms| *ohms <= MOST_OHMS) {
                    Some(ohms) => Shown::Ohms(Ohms(ohms)),
                    None => Shown::Open,
                }
            }
            Probe::Amps(run) => {
                let run = net.runs.iter().find(|it| it.id == *run)?;
                let amps = self.standing.point.currents.get(run.branch).copied();
                Shown::Amps(Amps(if run.line { 0.0 } else { amps.unwrap_or(0.0).abs() }))
            }
        })
    }
}
