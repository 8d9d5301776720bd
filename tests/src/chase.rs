//! A fault is put into a system, and looked for: readings come from the engine on the sheet that has the fault in it, with the errors of
//! a hand meter, and go where the finder proposes, or anywhere.
//!
//! Of a part that is dead the terminals stay, as they do in a vehicle; there the engine solves the network without what is inside.

use assist::finding::{Finder, Reading, State, Symptom, Verdict};
use circuit::{Bench, Foreseen, Isolated, Meter, Probe, Tones};
use model::breaks::{Break, Contact, HALF_WAY};
use model::quantity::{Ohms, Share};
use model::{Job, PartKind, Role, Settings, Sheet, SheetKind, TerminalRef};
use std::time::Instant;
use testkit::random::Dice;

/// Most measurements before a chase is given up: it then counts as so many, and as one in which nothing was named.
pub const MOST: usize = 400;

/// What came of a chase.
#[derive(Clone, Debug)]
pub struct Chase {
    /// The fault, as people write it.
    pub fault: String,
    /// Whether it was named, alone or among those that nothing tells apart from it.
    pub named: bool,
    /// What was named.
    pub said: Vec<String>,
    /// How many measurements it took.
    pub measured: usize,
    /// What was told first.
    pub symptoms: usize,
    /// The longest that what was known took to be taken in, with the next proposal, in seconds.
    pub slowest: f64,
}

/// A fault of a sheet, drawn without regard to how often such faults are.
fn draw(sheet: &Sheet, dice: &mut Dice) -> Break {
    let runs: Vec<model::RunId> = sheet.runs.keys().copied().collect();
    let parts: Vec<model::PartId> = sheet.parts.keys().copied().collect();
    loop {
        let run = dice.one(&runs);
        let part = dice.one(&parts);
        let ends: Vec<Role> = sheet.runs[&run]
            .ends()
            .iter()
            .filter_map(|end| sheet.role(end.terminal()?))
            .collect();
        let line = ends.len() == 2 && ends.iter().all(|role| role.is_line());
        let sound = ends
            .iter()
            .any(|role| matches!(role, Role::SpeakerOut { .. } | Role::Coil { .. }));
        let decade = 10.0_f64.powf(dice.share());
        let kind = &sheet.parts[&part].is;
        let open = Break::Open { part, output: None };
        let found = match dice.below(8) {
            0 => Some(Break::Cut { run, at: HALF_WAY }),
            1 if !line => {
                let more = Ohms(if sound { 3.0 * decade } else { 0.1 * decade });
                Some(Break::Resistive { run, more })
            }
            2 if !line && !ends.contains(&Role::Body) => Some(Break::Grounded {
                run,
                at: Share(dice.share()),
                through: Ohms(0.005),
            }),
            3 => match kind {
                PartKind::Fuse(_)
                | PartKind::Breaker(_)
                | PartKind::Plug(_)
                | PartKind::Ground(_)
                | PartKind::Relay(_) => Some(open),
                _ => None,
            },
            4 if matches!(kind, PartKind::Ground(_)) => Some(Break::Poor {
                part,
                more: Ohms(0.2 * decade),
            }),
            5 => match kind {
                PartKind::Amplifier(_) | PartKind::HeadUnit(_) | PartKind::Speaker(_) | PartKind::Load(_) => {
                    Some(Break::Dead { part })
                }
                _ => None,
            },
            6 => match kind {
                PartKind::Speaker(it) if it.coils <= 1 => Some(Break::Joined {
                    points: ["+", "-"].map(|name| Contact::Terminal(TerminalRef::new(part, name))),
                    through: Ohms(0.005),
                }),
                _ => None,
            },
            7 => match kind {
                PartKind::Block(it) => {
                    let fused: Vec<usize> = (0..it.fuses.0.len())
                        .filter(|at| it.fuses.0[*at].is_some())
                        .collect();
                    (!fused.is_empty()).then(|| Break::Open {
                        part,
                        output: Some(format!("out{}", dice.one(&fused) + 1).as_str().into()),
                    })
                }
                _ => None,
            },
            _ => None,
        };
        if let Some(found) = found {
            return found;
        }
    }
}

/// The vehicle with the fault in it.
struct Vehicle {
    bench: Bench,
    state: usize,
    foreseen: Foreseen,
    isolated: Isolated,
    /// The engine on the edited sheet, where the part is still on it.
    meter: Option<Meter>,
}

impl Vehicle {
    fn of(sheet: &Sheet, settings: &Settings, broken: &Break) -> Option<Self> {
        let mut bench = Bench::new(sheet, settings)?;
        let state = bench.ready(State::ON.vehicle, State::ON.duty)?;
        let fault = bench.fault(std::slice::from_ref(broken))?;
        let foreseen = bench.solve(&fault, state)?;
        let isolated = bench.isolate(&fault);
        let mut on = settings.clone();
        (on.conditions.state, on.conditions.duty) = (State::ON.vehicle, State::ON.duty);
        let meter = (!matches!(broken, Break::Dead { .. })).then(|| {
            let mut job = Job {
                settings: settings.clone(),
                ..Job::default()
            };
            job.sheets.insert(SheetKind::Built, sheet.clone());
            let edit = broken.edit(&job, SheetKind::Built).ok()?;
            job.apply(edit);
            Meter::new(job.sheet(SheetKind::Built)?, &on, Some(&Tones::of(sheet, &on)))
        });
        Some(Self {
            bench,
            state,
            foreseen,
            isolated,
            meter: meter.flatten(),
        })
    }

    fn read(&self, probe: &Probe) -> Option<Option<f64>> {
        let shown = match &self.meter {
            Some(meter) => meter.read(probe)?,
            None => {
                let placed = self.bench.place(probe)?;
                match probe {
                    Probe::Ohms(..) => self.bench.ohms(&self.isolated, &placed)?,
                    _ => self.bench.read(self.state, &self.foreseen, &placed)?,
                }
            }
        };
        Some(shown.number(probe))
    }

    /// The same as a hand meter shows it: half a per cent and a digit of direct volts, two per cent of the rest.
    fn measure(&self, probe: &Probe, dice: &mut Dice) -> Option<Reading> {
        // Sum of twelve: near enough a normal distribution of deviation 1.
        let noise: f64 = (0..12).map(|_| dice.share()).sum::<f64>() - 6.0;
        let number = self.read(probe)?.map(|number| match probe {
            Probe::Volts(..) => number + noise * (0.005 * number.abs() + 0.005),
            Probe::Tone(..) => (number + noise * (0.02 * number + 0.01)).abs(),
            Probe::Amps(_) => (number + noise * (0.02 * number + 0.01)).abs(),
            Probe::Ohms(..) => (number + noise * (0.02 * number + 0.05)).abs(),
        });
        Some(Reading {
            probe: probe.clone(),
            state: State::ON,
            number,
            tolerance: None,
        })
    }

    /// What can be seen and heard: what is off, else what is silent; one of each at most.
    fn symptoms(&self, sheet: &Sheet) -> Vec<Symptom> {
        let Some(normal) = self.bench.normal(self.state) else {
            return Vec::new();
        };
        let off = sheet
            .parts
            .keys()
            .find(|id| self.bench.works(normal, **id) && !self.bench.works(&self.foreseen, **id));
        let level = |foreseen: &Foreseen, id| {
            let coils = self.bench.coils(self.state, foreseen, id);
            coils
                .iter()
                .map(|volts| volts.0.abs())
                .fold(f64::INFINITY, f64::min)
        };
        let silent = sheet.parts.iter().find(|(id, part)| {
            matches!(part.is, PartKind::Speaker(_))
                && level(normal, **id) > 0.1
                && level(&self.foreseen, **id) < 0.05 * level(normal, **id)
        });
        let mut all: Vec<Symptom> = off.map(|id| Symptom::Off(*id)).into_iter().collect();
        if all.is_empty() {
            all.extend(silent.map(|(id, _)| Symptom::Silent(*id)));
        }
        all
    }

    /// Whether no probe reads otherwise by more than a meter errs if another thing were broken.
    fn is_alike(&self, other: &Self, probes: &[Probe]) -> bool {
        probes.iter().all(|probe| {
            let [a, b] = [self.read(probe), other.read(probe)].map(|it| it.flatten().unwrap_or(1e7).min(1e6));
            let least = match probe {
                Probe::Volts(..) => 0.1 + 0.02 * a.abs(),
                Probe::Tone(..) => 0.2 + 0.12 * a.abs(),
                Probe::Amps(_) => 0.1 + 0.16 * a.abs(),
                Probe::Ohms(..) => 0.3 + 0.16 * a.abs(),
            };
            (a - b).abs() <= 1.5 * least
        })
    }
}

/// One chase in a random system. `anywhere` measures in no order; `None` where the drawn fault could not be put in.
#[must_use]
pub fn chase(seed: u64, parts: usize, anywhere: bool) -> Option<Chase> {
    let sheet = testkit::random::random_system(seed, parts);
    chase_on(&sheet, &Settings::default(), seed, anywhere)
}

/// One chase on a sheet.
#[must_use]
pub fn chase_on(sheet: &Sheet, settings: &Settings, seed: u64, anywhere: bool) -> Option<Chase> {
    let mut dice = Dice::new(seed ^ 0x5EED);
    let broken = draw(sheet, &mut dice);
    chase_after(sheet, settings, &broken, None, dice, anywhere)
}

/// One chase after a fault that is told to have these symptoms.
#[must_use]
pub fn chase_known(
    sheet: &Sheet,
    settings: &Settings,
    broken: &Break,
    symptoms: &[Symptom],
    seed: u64,
) -> Option<Chase> {
    chase_after(sheet, settings, broken, Some(symptoms), Dice::new(seed), false)
}

fn chase_after(
    sheet: &Sheet,
    settings: &Settings,
    broken: &Break,
    symptoms: Option<&[Symptom]>,
    mut dice: Dice,
    anywhere: bool,
) -> Option<Chase> {
    let vehicle = Vehicle::of(sheet, settings, broken)?;
    let mut finder = Finder::new(sheet, settings)?;
    let symptoms = match symptoms {
        Some(told) => told.to_vec(),
        None => vehicle.symptoms(sheet),
    };
    let mut probes: Vec<Probe> = finder.probes().cloned().collect();
    let all = probes.clone();
    let mut readings: Vec<Reading> = Vec::new();
    let mut slowest = 0.0_f64;
    let last = loop {
        let begun = Instant::now();
        finder.know(&readings, &symptoms);
        let verdict = finder.verdict();
        slowest = slowest.max(begun.elapsed().as_secs_f64());
        let Verdict::Open(proposal) = &verdict else {
            break verdict;
        };
        if readings.len() >= MOST || probes.is_empty() {
            break verdict;
        }
        let probe = if anywhere {
            let at = dice.below(probes.len());
            probes.swap_remove(at)
        } else {
            proposal.probe.clone()
        };
        if let Some(reading) = vehicle.measure(&probe, &mut dice) {
            readings.push(reading);
        }
    };
    let left = match &last {
        Verdict::Found(suspect) => vec![suspect.clone()],
        Verdict::Alike(group) => group.clone(),
        _ => Vec::new(),
    };
    let is_it = |breaks: &[Break]| matches!(breaks, [one] if one.is_same_thing(broken));
    let mut named = left.iter().any(|suspect| is_it(&suspect.breaks));
    if !named && let Some(best) = left.first() {
        // Another one that reads the same everywhere is its class; nothing at all, where nothing shows.
        let alike = match best.breaks.as_slice() {
            [] => Vehicle::of(
                sheet,
                settings,
                &Break::Resistive {
                    run: *sheet.runs.keys().next()?,
                    more: Ohms(0.0),
                },
            ),
            [one] => Vehicle::of(sheet, settings, one),
            _ => None,
        };
        named = alike.is_some_and(|alike| vehicle.is_alike(&alike, &all));
    }
    Some(Chase {
        fault: broken.written(sheet),
        named,
        said: left
            .iter()
            .map(|suspect| {
                let all: Vec<String> = suspect
                    .breaks
                    .iter()
                    .map(|broken| broken.written(sheet))
                    .collect();
                format!("{} {:.2}", all.join(" and "), suspect.share)
            })
            .collect(),
        measured: readings.len(),
        symptoms: symptoms.len(),
        slowest,
    })
}
