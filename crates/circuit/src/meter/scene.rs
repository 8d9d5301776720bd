//! A sheet made ready for the meter, and how it stands in a state of the vehicle.

use super::OPENS;
use super::linear::{Case, Linear, Pattern, Straight};
use super::played::Tones;
use super::views::{self, Beside, Extra};
use crate::measured::as_measured;
use crate::network::{BODY, Closes, Draw, Kind, Network, values};
use crate::solve::{Demand, Law, Level, Operating, Operator, demands, stay_on};
use crate::speakers::{self, OutputPower};
use crate::study::Signal;
use model::job::{Conditions, Duty, VehicleState};
use model::{PartId, PartKind, RunId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};

/// Below this supply electronics do not work, whatever their maker calls their cut-off, in volts: 6 V (from memory).
pub(super) const LEAST_WORKING: f64 = values::IGNITION_THRESHOLD;

/// Voltage at which a power is weighed as a current, in volts.
const NOMINAL: f64 = 12.0;
/// Supply at which regulated electronics give up where their maker does not say, in volts: 8 V (from memory).
const GIVES_UP: f64 = 8.0;

/// One input, and what feeds it.
#[derive(Clone, Debug)]
pub(super) struct Inlet {
    pub(super) part: usize,
    pub(super) input: u8,
    pub(super) by: Vec<usize>,
    pub(super) runs: OrderedSet<RunId>,
}

/// What a sheet is, whatever the state.
#[derive(Debug)]
pub(super) struct Scene {
    pub(super) sheet: Sheet,
    pub(super) settings: Settings,
    pub(super) net: Network,
    pub(super) extras: Vec<Extra>,
    pub(super) pattern: Pattern,
    signal: Signal,
    /// Parts that need their turn-on input live: part, node of the input, node of the return.
    pub(super) told: Vec<(usize, usize, usize)>,
    pub(super) inlets: Vec<Inlet>,
    /// By part, the branch on which its supply is seen.
    pub(super) supply: Vec<Option<usize>>,
    /// Nodes that are tied down first.
    pub(super) first: Vec<usize>,
}

impl Scene {
    pub(super) fn of(sheet: &Sheet, settings: &Settings) -> Self {
        let laid = body::lay(sheet, settings);
        let sheet = as_measured(&laid).into_owned();
        let metal = body::Metal::of(&sheet, settings);
        let net = Network::build_apart(&sheet, &metal);
        let extras = views::beside(&sheet, &net);
        let branches = net.branches.iter().map(|branch| branch.nodes);
        let ends: Vec<[usize; 2]> = branches.chain(extras.iter().map(|it| it.nodes)).collect();
        let (_, signal) = speakers::study_sound(&sheet, settings);
        let index = |id: &PartId| net.part_index(*id);
        let mut told = Vec::new();
        for (id, fed) in signal.turn_on.iter().filter(|(_, fed)| fed.needs_lead) {
            if let Some(part) = index(id)
                && let (Some(input), Some(minus)) =
                    (net.node_by_name(part, "rem"), net.node_by_name(part, "-"))
            {
                told.push((part, input, minus));
            }
            let _ = fed;
        }
        let inlets = signal
            .inputs
            .iter()
            .filter_map(|fed| {
                Some(Inlet {
                    part: index(&fed.part)?,
                    input: fed.input,
                    by: fed.by.iter().filter_map(|(id, _)| index(id)).collect(),
                    runs: fed.runs.clone(),
                })
            })
            .collect();
        let mut supply = vec![None; net.parts.len()];
        for (at, branch) in net.branches.iter().enumerate() {
            if let (Kind::Load(Draw::Supply | Draw::Idle), Some(place)) =
                (branch.kind, supply.get_mut(branch.part))
            {
                place.get_or_insert(at);
            }
        }
        let batteries = net.sources.iter().filter(|source| {
            net.branches
                .get(source.branch)
                .is_some_and(|branch| branch.kind == Kind::Battery)
        });
        let mut first: Vec<usize> = batteries.map(|source| source.minus).collect();
        first.push(BODY);
        Self {
            pattern: Pattern::new(net.nodes, &ends),
            settings: settings.clone(),
            sheet,
            extras,
            signal,
            told,
            inlets,
            supply,
            first,
            net,
        }
    }

    /// What the parts ask in a state.
    fn asked(&self, state: VehicleState, power: &OrderedMap<PartId, OutputPower>, duty: Duty) -> Vec<Demand> {
        let in_state = |state: VehicleState| {
            let conditions = Conditions {
                state,
                duty,
                ..self.settings.conditions.clone()
            };
            demands(&self.sheet, &conditions, |part| {
                power.get(&part).copied().unwrap_or_default()
            })
        };
        let mut all = in_state(state);
        let turn_on = &self.signal.turn_on;
        if state == VehicleState::Parked && turn_on.values().any(|fed| fed.always_live) {
            let in_use = in_state(VehicleState::EngineOff);
            stay_on(&self.sheet, turn_on, &in_use, &mut all);
        }
        all
    }

    /// How the sheet stands in a state. `tones` are those of the sheet as it should be, where it is not that.
    pub(super) fn stand(&self, state: VehicleState, duty: Duty, tones: Option<&Tones>) -> Option<Standing> {
        let mut settings = self.settings.clone();
        settings.conditions.duty = duty;
        settings.conditions.state = state;
        let sound = speakers::study_speakers(&self.sheet, &settings);
        let tones = tones.map_or_else(|| Tones::found(&self.sheet, &sound), Tones::clone);
        let mut demands = self.asked(state, &tones.output, duty);
        // What takes its power whatever the supply gives up somewhere.
        for demand in &mut demands {
            if demand
                .supply
                .iter()
                .any(|law| matches!(law, Law::Power(_) | Law::Current(_)))
            {
                demand.cut_off.get_or_insert(GIVES_UP);
            }
        }
        let mut operator = Operator::new(&self.net, &self.sheet, state, demands.clone());
        operator.listen(&self.told);
        crate::assemble::warm_up(&mut operator, &self.net, &self.sheet, &settings.conditions);
        let warm = operator.resistances().to_vec();
        drop(operator);
        let mut net = self.net.clone();
        for (branch, ohms) in net.branches.iter_mut().zip(&warm) {
            branch.resistance = *ohms;
        }
        let (point, opened) = self.operate(&mut net.clone(), state, &demands)?;
        Some(Standing {
            state,
            demands,
            net,
            point,
            opened,
            tones,
        })
    }

    /// The operating point of a network of this sheet, with devices opened that open within seconds; which these are.
    pub(super) fn operate(
        &self,
        net: &mut Network,
        state: VehicleState,
        demands: &[Demand],
    ) -> Option<(Operating, Vec<usize>)> {
        let mut opened = Vec::new();
        let mut demands = demands.to_vec();
        loop {
            let mut operator = Operator::new(net, &self.sheet, state, demands.clone());
            operator.listen(&self.told);
            let point = operator.operate(Level::Mean);
            drop(operator);
            if point.share < 1.0 && point.settled && self.give_up(net, &point, &mut demands) {
                continue;
            }
            let over = |at: usize| {
                let device = net.devices.get(at)?;
                let amps = point.currents.get(device.branch)?.abs();
                let times = amps / device.rating?.0.max(0.1);
                (times > OPENS && device.works && !opened.contains(&at)).then_some((times, at))
            };
            let worst = (0..net.devices.len())
                .filter_map(over)
                .max_by(|a, b| a.0.total_cmp(&b.0));
            let Some((_, worst)) = worst else {
                return point.settled.then_some((point, opened));
            };
            let branch = net.devices.get(worst).map(|device| device.branch);
            if let Some(branch) = branch.and_then(|at| net.branches.get_mut(at)) {
                branch.closes = Closes::Never;
            }
            opened.push(worst);
        }
    }

    /// What asks for more than it can get and is not known to give up does so all the same: whoever asks most for the resistance through
    /// which it is fed. False when nobody is left.
    fn give_up(&self, net: &Network, point: &Operating, demands: &mut [Demand]) -> bool {
        let Some(direct) = self.direct(net, point, demands) else {
            return false;
        };
        let asks = |at: usize| {
            let branch = net.branches.get(at)?;
            let Kind::Load(draw) = branch.kind else {
                return None;
            };
            let demand = demands.get(branch.part)?;
            let on = point.on.get(branch.part) == Some(&true);
            let amps = match draw {
                Draw::Coil => return None,
                Draw::Supply if !on => return None,
                Draw::Supply => match demand.supply.get(Level::Mean as usize)? {
                    Law::Power(watts) => watts / NOMINAL,
                    Law::Current(amps) => *amps,
                    _ => return None,
                },
                Draw::TurnOn => demand.turn_on,
                Draw::Idle | Draw::Base | Draw::Leakage => {
                    if on {
                        demand.idle
                    } else {
                        demand.off
                    }
                }
            };
            let nodes = branch.nodes;
            let tied = crate::flows::across(point, nodes[0], nodes[1]).is_some();
            (tied && amps > 0.0).then(|| (amps * direct.own_ohms(direct.places(nodes)), branch))
        };
        let worst = (0..net.branches.len())
            .filter_map(asks)
            .max_by(|a, b| a.0.total_cmp(&b.0));
        let Some((_, branch)) = worst else { return false };
        let Some(demand) = demands.get_mut(branch.part) else {
            return false;
        };
        if branch.kind == Kind::Load(Draw::TurnOn) {
            demand.turn_on = 0.0;
        } else if point.on.get(branch.part) == Some(&true) && demand.may_be_on {
            demand.may_be_on = false;
            demand.supply = [Law::Open; 3];
            demand.idle = demand.off;
        } else {
            (demand.idle, demand.off) = (0.0, 0.0);
        }
        true
    }

    /// Whether a part works, by whether it is on and the volts that it is fed with; what needs no supply always does.
    pub(super) fn works(&self, part: usize, on: bool, volts: impl Fn(usize) -> Option<f64>) -> bool {
        match self.supply.get(part).copied().flatten() {
            Some(branch) => on && volts(branch).is_some_and(|volts| volts >= LEAST_WORKING),
            None => true,
        }
    }

    /// Which outputs have a signal, by leg among `extras`, given which parts work and which leads are cut.
    pub(super) fn has_signal(&self, works: &[bool], is_cut: &dyn Fn(RunId) -> bool) -> Vec<bool> {
        let kinds: Vec<&PartKind> = self.sheet.parts.values().map(|part| &part.is).collect();
        let works = |part: usize| works.get(part) == Some(&true);
        let mut gives: Vec<bool> = kinds
            .iter()
            .enumerate()
            .map(|(part, kind)| matches!(kind, PartKind::HeadUnit(_)) && works(part))
            .collect();
        let mut live = vec![false; self.inlets.len()];
        // Signals go a few parts deep; each round carries them one further.
        loop {
            let mut moved = false;
            for (at, inlet) in self.inlets.iter().enumerate() {
                let fed = inlet.by.iter().any(|by| gives.get(*by) == Some(&true))
                    && !inlet.runs.iter().any(|run| is_cut(*run));
                if let (Some(live), true) = (live.get_mut(at), fed)
                    && !*live
                {
                    (*live, moved) = (true, true);
                    if let (Some(gives), true) = (gives.get_mut(inlet.part), works(inlet.part)) {
                        *gives = true;
                    }
                }
            }
            if !moved {
                break;
            }
        }
        let input_of = |part: usize, channel: u8| match kinds.get(part) {
            Some(PartKind::Amplifier(it)) => Some((channel - 1) % it.inputs.max(1) + 1),
            _ => None,
        };
        self.extras
            .iter()
            .map(|extra| {
                let Beside::Leg { part, channel, .. } = extra.is else {
                    return false;
                };
                works(part)
                    && match input_of(part, channel.max(1)) {
                        None => true,
                        Some(input) => self
                            .inlets
                            .iter()
                            .zip(&live)
                            .any(|(inlet, live)| inlet.part == part && inlet.input == input && *live),
                    }
            })
            .collect()
    }

    /// The network of the test tone, every leg that has a signal at its volts.
    pub(super) fn tone(&self, standing: &Standing, signal: &[bool]) -> Option<Linear> {
        let branches = self.net.branches.iter().zip(&standing.point.elements);
        let branches = branches.map(|(branch, now)| views::to_tone(branch, now));
        let extras = self.extras.iter().zip(signal).map(|(extra, signal)| {
            let volts = match extra.is {
                Beside::Leg { part, channel, .. } if *signal => standing
                    .tones
                    .of_leg(self.net.parts.get(part).copied().unwrap_or_default(), channel),
                _ => 0.0,
            };
            extra.to_tone(volts)
        });
        Linear::new(&self.pattern, branches.chain(extras).collect(), &[BODY])
    }

    /// The network of an ohmmeter.
    pub(super) fn isolated(&self) -> Option<Linear> {
        let branches = self.net.branches.iter();
        let branches = branches.map(|branch| views::to_ohms(&self.sheet, &self.net, branch));
        let laws = branches.chain(self.extras.iter().map(Extra::to_ohms)).collect();
        Linear::new(&self.pattern, laws, &self.first)
    }

    /// The network of direct current at an operating point, made straight there. `net` is that of the sheet, perhaps with changed branches
    /// and more of them.
    pub(super) fn direct(&self, net: &Network, point: &Operating, demands: &[Demand]) -> Option<Linear> {
        let branches = net.branches.iter().enumerate().map(|(at, branch)| {
            let [a, b] = branch.nodes;
            let law = point.elements.get(at).map_or(Law::Open, |it| it.law);
            let amps = point.currents.get(at).copied().unwrap_or(0.0);
            let across = crate::flows::across(point, a, b).unwrap_or(0.0);
            let law = views::straight(law, across, amps);
            if law.conductance == 0.0 {
                views::at_rest(branch, demands.get(branch.part))
            } else {
                law
            }
        });
        let laws = branches.collect::<Vec<_>>();
        if net.branches.len() == self.net.branches.len() {
            let extras = self.extras.iter().map(|_| Straight::default());
            let laws = laws.into_iter().chain(extras).collect();
            return Linear::new(&self.pattern, laws, &self.first);
        }
        let ends: Vec<[usize; 2]> = net.branches.iter().map(|branch| branch.nodes).collect();
        Linear::new(&Pattern::new(net.nodes, &ends), laws, &self.first)
    }

    /// What is heard as the sheet stands, protection aside.
    pub(super) fn hear(&self, standing: &Standing) -> Option<Heard> {
        let works: Vec<bool> = (0..self.net.parts.len())
            .map(|part| {
                let on = standing.point.on.get(part) == Some(&true);
                self.works(part, on, |at| standing.across(at))
            })
            .collect();
        let signal = self.has_signal(&works, &|_| false);
        Some(Heard {
            tone: self.tone(standing, &signal)?,
            works,
            signal,
        })
    }

    /// Makes legs silent whose amplifier protects itself; which amplifiers these are, by part.
    pub(super) fn hush(&self, case: &mut Case<'_>, tones: &Tones) -> Vec<usize> {
        let protected = self.protected(case, tones);
        self.silence(case, &|_, extra| protected.contains(&extra.part()));
        protected
    }

    /// Takes the volts from legs.
    pub(super) fn silence(&self, case: &mut Case<'_>, silent: &dyn Fn(usize, &Extra) -> bool) {
        let from = self.net.branches.len();
        for (at, extra) in self.extras.iter().enumerate() {
            let law = case.law(from + at);
            if law.given != 0.0 && silent(at, extra) {
                case.put(from + at, Straight { given: 0.0, ..law }, None);
            }
        }
    }

    /// Amplifiers that protect themselves: a leg drives less than half of the least load. By part.
    fn protected(&self, case: &Case<'_>, tones: &Tones) -> Vec<usize> {
        let from = self.net.branches.len();
        let mut all = Vec::new();
        for (at, extra) in self.extras.iter().enumerate() {
            let Beside::Leg { part, channel, share } = extra.is else {
                continue;
            };
            let id = self.net.parts.get(part).copied().unwrap_or_default();
            let volts = tones.of_leg(id, channel);
            if share == 0.0 || volts <= 0.0 || all.contains(&part) {
                continue;
            }
            let most = 2.1 * volts / views::least_load(&self.sheet, id, channel);
            if case.current(from + at).abs() > most {
                all.push(part);
            }
        }
        all
    }
}

/// How a sheet stands in a state.
#[derive(Debug)]
pub(super) struct Standing {
    pub(super) state: VehicleState,
    pub(super) demands: Vec<Demand>,
    /// The network with its resistances at their temperatures.
    pub(super) net: Network,
    pub(super) point: Operating,
    /// Devices that have opened.
    pub(super) opened: Vec<usize>,
    pub(super) tones: Tones,
}

impl Standing {
    /// The volts across a branch; `None` where nothing ties it to a source.
    pub(super) fn across(&self, branch: usize) -> Option<f64> {
        let nodes = self.net.branches.get(branch)?.nodes;
        crate::flows::across(&self.point, nodes[0], nodes[1])
    }
}

/// What is heard of a sheet.
#[derive(Debug)]
pub(super) struct Heard {
    /// By part.
    pub(super) works: Vec<bool>,
    /// By leg among the extras, whether it has a signal.
    pub(super) signal: Vec<bool>,
    /// The network of the tone.
    pub(super) tone: Linear,
}

/// Most rounds in which what is drawn follows what is heard, which follows what is drawn.
pub(super) const MOST_HEARINGS: usize = 3;

/// Whether parts that work ask otherwise.
pub(super) fn differ(one: &[Demand], other: &[Demand], works: &[bool]) -> bool {
    let mut all = one.iter().zip(other).zip(works);
    all.any(|((one, other), works)| *works && one != other)
}
