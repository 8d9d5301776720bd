//! A sheet held ready for hundreds of suspicions: what a meter would read if this or that were broken.

use super::alter::{Altered, altered};
use super::hearing::Hearing;
use super::linear::{Case, Linear, Straight, numbered};
use super::played::Tones;
use super::scene::{Heard, Scene, Standing};
use super::settle::{Ports, settle};
use super::views::Beside;
use super::{MOST_OHMS, Probe, Shown};
use model::breaks::Break;
use model::job::{Duty, VehicleState};
use model::quantity::{Amps, Ohms, Volts};
use model::{PartId, Settings, Sheet, TerminalRef};
use std::sync::OnceLock;

/// A suspicion as it changes the networks.
#[derive(Clone, Debug)]
pub struct Fault(Altered);

/// Numbers of a case by place, in half the room; and which places are tied together.
#[derive(Clone, Debug, Default)]
pub(super) struct Kept {
    volts: Vec<f32>,
    /// A number for each place; the same for those that are tied together. Empty where all is as nothing were wrong.
    islands: Vec<u32>,
}

impl Kept {
    /// Of a case of the network that `normal` is of.
    pub(super) fn of(case: &Case<'_>, normal: &Self) -> Self {
        let as_before = case.is_tied_as_before() && !normal.islands.is_empty();
        Self {
            volts: narrowed(case.all_volts()),
            islands: if as_before { Vec::new() } else { case.islands() },
        }
    }

    /// With nothing broken.
    fn normal(case: &Case<'_>) -> Self {
        Self {
            volts: narrowed(case.all_volts()),
            islands: numbered(case.islands_one_by_one()),
        }
    }

    /// Of another network, of which the volts and ties are told in the order of places.
    fn told(volts: &[f64], islands: Vec<(usize, u32)>, normal: &Self) -> Self {
        let islands = numbered(islands.into_iter());
        Self {
            volts: narrowed(volts),
            islands: if islands == normal.islands {
                Vec::new()
            } else {
                islands
            },
        }
    }

    fn between(&self, places: [u32; 2], normal: &Self) -> Option<f64> {
        let islands = if self.islands.is_empty() {
            &normal.islands
        } else {
            &self.islands
        };
        let [a, b] = places.map(|place| place as usize);
        if islands.get(a)? != islands.get(b)? {
            return None;
        }
        Some(f64::from(*self.volts.get(a)?) - f64::from(*self.volts.get(b)?))
    }
}

fn narrowed(volts: &[f64]) -> Vec<f32> {
    volts.iter().map(|volts| *volts as f32).collect()
}

/// What a meter would read in one state with something broken.
#[derive(Clone, Debug)]
pub struct Foreseen {
    pub(super) direct: Kept,
    pub(super) tone: Kept,
    /// Runs whose law has changed, by branch.
    pub(super) laws: Vec<(usize, Straight)>,
    /// By part, whether it is on and has its supply.
    pub(super) works: Vec<bool>,
    /// Devices that have opened.
    pub(super) opened: Vec<usize>,
    /// Amplifiers that protect themselves, by part.
    pub(super) protected: Vec<usize>,
    pub(super) swapped: Vec<[usize; 2]>,
}

/// What an ohmmeter would read with something broken.
#[derive(Clone, Debug, Default)]
pub struct Isolated {
    changes: Vec<(f64, Vec<f32>)>,
    /// As of [`Kept`].
    islands: Vec<u32>,
    swapped: Vec<[usize; 2]>,
}

/// A probe whose places are known, so that it is read in hundreds of suspicions without being looked up in each.
#[derive(Clone, Copy, Debug)]
pub struct Placed {
    what: What,
    nodes: [usize; 2],
    places: [u32; 2],
    /// Of ohms, those with nothing broken.
    before: f64,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum What {
    Volts,
    Tone,
    Ohms,
    /// In the run of this branch.
    Amps(usize),
    /// In a lead that carries no supply current.
    NoAmps,
}

/// One state made ready.
#[derive(Debug)]
pub(super) struct Ready {
    state: VehicleState,
    duty: Duty,
    pub(super) standing: Standing,
    direct: Linear,
    /// Made when a fault is first foreseen: whoever only wants to know what is normal does without.
    ports: OnceLock<Ports>,
    pub(super) heard: Heard,
    pub(super) normal: Foreseen,
}

/// A sheet held ready for suspicions.
///
/// What the meter's own 10 MΩ take is left out. It is below 0.1 % wherever anything but the leak of a diode that blocks (1 MΩ) feeds a
/// point; there it is a tenth, and [`Meter`](super::Meter) has it.
#[derive(Debug)]
pub struct Bench {
    scene: Scene,
    states: Vec<Ready>,
    isolated: Linear,
    /// What is tied together with the supply isolated and nothing broken.
    whole: Kept,
}

impl Bench {
    /// Of a sheet as it should be. `None` where its numbers are out of all proportion.
    #[must_use]
    pub fn new(sheet: &Sheet, settings: &Settings) -> Option<Self> {
        let scene = Scene::of(sheet, settings);
        let isolated = scene.isolated()?;
        Some(Self {
            whole: Kept::normal(&isolated.as_is()),
            isolated,
            scene,
            states: Vec::new(),
        })
    }

    /// Makes a state ready; its number. `None` where nothing is solved in it.
    pub fn ready(&mut self, state: VehicleState, duty: Duty) -> Option<usize> {
        let known = self
            .states
            .iter()
            .position(|it| it.state == state && it.duty == duty);
        if known.is_some() {
            return known;
        }
        let scene = &self.scene;
        let mut standing = scene.stand(state, duty, None)?;
        let direct = scene.direct(&standing.net, &standing.point, &standing.demands)?;
        let heard = scene.hear(&standing)?;
        let mut case = heard.tone.as_is();
        let protected = scene.hush(&mut case, &standing.tones);
        standing.tones.heard(scene, &case, &heard.signal);
        let normal = Foreseen {
            direct: Kept::normal(&direct.as_is()),
            tone: Kept::normal(&case),
            laws: Vec::new(),
            works: heard.works.clone(),
            opened: standing.opened.clone(),
            protected,
            swapped: Vec::new(),
        };
        self.states.push(Ready {
            state,
            duty,
            direct,
            ports: OnceLock::new(),
            heard,
            standing,
            normal,
        });
        Some(self.states.len() - 1)
    }

    /// A suspicion, or several at once. `None` where the sheet has no such thing.
    #[must_use]
    pub fn fault(&self, breaks: &[Break]) -> Option<Fault> {
        let mut all = Altered::default();
        for broken in breaks {
            all = all.and(altered(&self.scene, broken)?);
        }
        Some(Fault(all))
    }

    /// What a meter would read in a state that was made ready, by a few changes of its factored networks; by the engine where these do
    /// not come to rest.
    #[must_use]
    pub fn foresee(&self, fault: &Fault, state: usize) -> Option<Foreseen> {
        let ready = self.states.get(state)?;
        let (it, scene) = (&fault.0, &self.scene);
        let ports = ready
            .ports
            .get_or_init(|| Ports::new(scene, &ready.standing, &ready.direct));
        let mut hearing = Hearing::of(scene, ready, it);
        let (case, settled) = loop {
            let mut case = ready.direct.as_is();
            it.put(scene, &ready.direct, &mut case);
            let settled = settle(
                scene,
                &ready.standing,
                hearing.demands(),
                &ready.direct,
                ports,
                &mut case,
                &it.dead,
            );
            if case.is_lost() {
                return self.solve(fault, state);
            }
            if hearing.has_heard(&settled.on, |at| case.volts(ready.direct.ends(at))) {
                break (case, settled);
            }
        };
        let direct = Kept::of(&case, &ready.normal.direct);
        let laws: Vec<(usize, Straight)> = scene
            .net
            .runs
            .iter()
            .filter(|run| {
                case.law(run.branch) != ready.direct.laws.get(run.branch).copied().unwrap_or_default()
            })
            .map(|run| (run.branch, case.law(run.branch)))
            .collect();
        Some(hearing.foreseen(direct, laws, settled.opened))
    }

    /// The same, solved anew by the engine.
    #[must_use]
    pub fn solve(&self, fault: &Fault, state: usize) -> Option<Foreseen> {
        let ready = self.states.get(state)?;
        let (it, scene) = (&fault.0, &self.scene);
        let mut hearing = Hearing::of(scene, ready, it);
        let (anew, opened) = loop {
            let mut net = ready.standing.net.clone();
            it.build_into(&mut net);
            let (point, opened) = scene.operate(&mut net, ready.state, hearing.demands())?;
            let anew = scene.direct(&net, &point, hearing.demands())?;
            let case = anew.as_is();
            if hearing.has_heard(&point.on, |at| case.volts(anew.ends(at))) {
                break (anew, opened);
            }
        };
        let case = anew.as_is();
        // Kept in the order of the bench.
        let mut volts = vec![0.0; scene.net.nodes];
        let mut islands = vec![(0, 0); scene.net.nodes];
        for node in 0..scene.net.nodes {
            let place = ready.direct.places([node; 2])[0] as usize;
            let from = anew.places([node; 2])[0];
            if let (Some(volts), Some(island)) = (volts.get_mut(place), islands.get_mut(place)) {
                *volts = case.all_volts().get(from as usize).copied().unwrap_or(0.0);
                *island = case.island(from);
            }
        }
        let direct = Kept::told(&volts, islands, &ready.normal.direct);
        let laws = scene
            .net
            .runs
            .iter()
            .map(|run| (run.branch, case.law(run.branch)))
            .filter(|(at, law)| ready.direct.laws.get(*at) != Some(law))
            .collect();
        Some(hearing.foreseen(direct, laws, opened))
    }

    /// What a meter would read in a state if nothing were broken.
    #[must_use]
    pub fn normal(&self, state: usize) -> Option<&Foreseen> {
        self.states.get(state).map(|ready| &ready.normal)
    }

    /// Looks a probe up. `None` where what it names is not on the sheet.
    #[must_use]
    pub fn place(&self, probe: &Probe) -> Option<Placed> {
        let net = &self.scene.net;
        let (what, nodes) = match probe {
            Probe::Volts(red, black) => (What::Volts, [net.node_of(red)?, net.node_of(black)?]),
            Probe::Tone(red, black) => (What::Tone, [net.node_of(red)?, net.node_of(black)?]),
            Probe::Ohms(red, black) => (What::Ohms, [net.node_of(red)?, net.node_of(black)?]),
            Probe::Amps(run) => {
                let run = net.runs.iter().find(|it| it.id == *run)?;
                let what = if run.line {
                    What::NoAmps
                } else {
                    What::Amps(run.branch)
                };
                (what, run.nodes)
            }
        };
        let places = self.isolated.places(nodes);
        let before = if what == What::Ohms {
            self.isolated.own_ohms(places)
        } else {
            0.0
        };
        Some(Placed {
            what,
            nodes,
            places,
            before,
        })
    }

    /// Where a probe is put when terminals have changed places.
    fn places(&self, swapped: &[[usize; 2]], placed: &Placed) -> [u32; 2] {
        if swapped.is_empty() {
            return placed.places;
        }
        let nodes = placed.nodes.map(|node| super::alter::swapped(swapped, node));
        self.isolated.places(nodes)
    }

    /// What a meter shows at a probe of volts, tone or amps. `None` at one of ohms.
    #[must_use]
    pub fn read(&self, state: usize, foreseen: &Foreseen, placed: &Placed) -> Option<Shown> {
        let ready = self.states.get(state)?;
        let normal = &ready.normal;
        let places = self.places(&foreseen.swapped, placed);
        Some(match placed.what {
            What::Volts => match foreseen.direct.between(places, &normal.direct) {
                Some(volts) => Shown::Volts(Volts(volts)),
                None => Shown::Open,
            },
            What::Tone => match foreseen.tone.between(places, &normal.tone) {
                Some(volts) => Shown::Volts(Volts(volts.abs())),
                None => Shown::Open,
            },
            What::Amps(branch) => {
                let changed = foreseen.laws.iter().find(|(at, _)| *at == branch);
                let law = changed.map_or_else(
                    || ready.direct.laws.get(branch).copied().unwrap_or_default(),
                    |(_, law)| *law,
                );
                let across = foreseen.direct.between(placed.places, &normal.direct);
                Shown::Amps(Amps(across.map_or(0.0, |volts| law.at(volts).abs())))
            }
            What::NoAmps => Shown::Amps(Amps(0.0)),
            What::Ohms => return None,
        })
    }

    /// What an ohmmeter would meet.
    #[must_use]
    pub fn isolate(&self, fault: &Fault) -> Isolated {
        let mut case = self.isolated.as_is();
        fault.0.put(&self.scene, &self.isolated, &mut case);
        Isolated {
            changes: case
                .changes()
                .map(|(k, w)| (k, w.iter().map(|w| *w as f32).collect()))
                .collect(),
            islands: Kept::of(&case, &self.whole).islands,
            swapped: fault.0.swapped.clone(),
        }
    }

    /// What an ohmmeter would show at a probe of ohms. `None` at another one.
    #[must_use]
    pub fn ohms(&self, isolated: &Isolated, placed: &Placed) -> Option<Shown> {
        if placed.what != What::Ohms {
            return None;
        }
        let places = self.places(&isolated.swapped, placed);
        let [a, b] = places.map(|place| place as usize);
        if a == b {
            return Some(Shown::Ohms(Ohms(0.0)));
        }
        let islands = if isolated.islands.is_empty() {
            &self.whole.islands
        } else {
            &isolated.islands
        };
        if islands.get(a)? != islands.get(b)? {
            return Some(Shown::Open);
        }
        let before = if places == placed.places {
            placed.before
        } else {
            self.isolated.own_ohms(places)
        };
        let ohms = isolated.changes.iter().fold(before, |ohms, (k, w)| {
            let at = |place: usize| f64::from(w.get(place).copied().unwrap_or(0.0));
            let across = at(a) - at(b);
            ohms - k * across * across
        });
        Some(if ohms < MOST_OHMS {
            Shown::Ohms(Ohms(ohms.max(0.0)))
        } else {
            Shown::Open
        })
    }

    /// Whether a part works, foreseen: on, with its supply, and not protecting itself.
    #[must_use]
    pub fn works(&self, foreseen: &Foreseen, part: PartId) -> bool {
        let at = self.scene.net.part_index(part);
        at.is_some_and(|at| foreseen.works.get(at) == Some(&true) && !foreseen.protected.contains(&at))
    }

    /// The devices that have opened, foreseen.
    #[must_use]
    pub fn opened(&self, foreseen: &Foreseen) -> Vec<crate::DeviceRef> {
        let name = |at: &usize| self.scene.net.devices.get(*at).map(|device| device.name.clone());
        foreseen.opened.iter().filter_map(name).collect()
    }

    /// The volts of the tone across each voice coil of a speaker, foreseen.
    #[must_use]
    pub fn coils(&self, state: usize, foreseen: &Foreseen, part: PartId) -> Vec<Volts> {
        let Some((ready, at)) = self.states.get(state).zip(self.scene.net.part_index(part)) else {
            return Vec::new();
        };
        let normal = &ready.normal;
        let from = self.scene.net.branches.len();
        self.scene
            .extras
            .iter()
            .enumerate()
            .filter(|(_, extra)| matches!(extra.is, Beside::Coil { part, .. } if part == at))
            .map(|(extra, _)| {
                let ends = ready.heard.tone.ends(from + extra);
                let volts = foreseen.tone.between(ends, &normal.tone).unwrap_or(0.0);
                Volts(volts)
            })
            .collect()
    }

    /// The volts of a test tone at each channel in a state.
    #[must_use]
    pub fn tones(&self, state: usize) -> Option<&Tones> {
        self.states.get(state).map(|ready| &ready.standing.tones)
    }

    /// A number for the point that a terminal is electrically, wires aside; `None` where the sheet has no such terminal.
    #[must_use]
    pub fn point(&self, at: &TerminalRef) -> Option<usize> {
        self.scene.net.node_of(at)
    }

    /// The sheet as it is laid in its body.
    #[must_use]
    pub fn sheet(&self) -> &Sheet {
        &self.scene.sheet
    }
}
