//! What is believed after what is known: shares of suspicion, what to measure next, and when to stop.

use super::effort::Efforts;
use super::evidence::{Reading, State, Symptom};
use super::probes::{Candidate, candidates};
use super::scale::{Scatter, number, scatter, shown};
use super::suspects::suspects;
use super::symptoms::Symptoms;
use circuit::{Bench, Fault, Foreseen, Isolated, MOST_OHMS, Placed, Probe};
use model::breaks::Break;
use model::{PartId, Settings, Sheet};
use ordered::Sort as _;

/// How likely a reading is that a suspicion did not foretell, beside one that lies right on what it did: of contacts that are otherwise
/// than typical, of a lead on the wrong terminal.
const FLOOR: f64 = 2e-3;
/// Ohms from which a reading is an open circuit.
const OPEN_FROM: f64 = 1e6;
/// How likely a symptom is told where it is foretold, and where it is not.
const TOLD: (f64, f64) = (0.9, 0.01);
/// Weight of nothing being wrong with what the sheet shows.
const NOTHING: f64 = 1.0;
/// From this share on a suspicion is the answer.
const SURE: f64 = 0.95;
/// A measurement that is expected to tell less than this, in bits, tells nothing.
const LEAST_BITS: f64 = 0.04;
/// Suspicions below this share of the whole are left out when the next measurement is looked for.
const LEAST_SHARE: f64 = 1e-5;
/// How many that lead are solved anew by the engine.
const SHARPENED: usize = 6;
/// How many of the single faults are paired with one another, where none alone explains what was read.
const PAIRED: usize = 24;
/// A reading this many deviations from what is foretold is not explained.
const UNEXPLAINED: f64 = 4.0;
/// Width of a class of readings, in deviations, and how many there are on either side of nothing.
const WIDTH: f64 = 3.0;
const CLASSES: i32 = 96;
/// Steps between two classes.
const STEPS: i32 = 32;
/// Measurements that are looked at together.
const BLOCK: usize = 128;

/// A suspicion.
#[derive(Debug)]
struct Suspicion {
    breaks: Vec<Break>,
    /// Logarithm of its weight, and of weight and likelihood.
    prior: f64,
    belief: f64,
    /// Suspicions of the same thing, whatever its size, have the same number.
    thing: usize,
    fault: Fault,
    /// By state, as far as somebody asked.
    foreseen: Vec<Option<Foreseen>>,
    isolated: Isolated,
    sharp: bool,
}

/// A place to measure, looked up.
#[derive(Debug)]
struct Place {
    probe: Probe,
    placed: Placed,
    scatter: Scatter,
}

/// What is suspected, by thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspect {
    /// What is broken: one thing, or two. Nothing where all is as drawn.
    pub breaks: Vec<Break>,
    /// Its share of the suspicion, 0 to 1.
    pub share: f64,
    /// What each reading that was given would have been, in the order in which they were given.
    pub foretold: Vec<Option<f64>>,
}

/// A set of suspicions that nothing that can be measured tells apart.
pub type Group = Vec<Suspect>;

/// What to measure next.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// Where to put the leads.
    pub probe: Probe,
    /// What the vehicle does.
    pub state: State,
    /// What it is expected to tell, in bits.
    pub bits: f64,
    /// What it takes, in minutes.
    pub minutes: f64,
    /// What each of the leading suspicions would read there, in their order; `None` for an open circuit.
    pub foretold: Vec<(Suspect, Option<f64>)>,
}

/// How far it has come.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// One thing is left.
    Found(Suspect),
    /// These are left, and no measurement tells them apart.
    Alike(Group),
    /// There is something to measure.
    Open(Proposal),
    /// Nothing is known yet that speaks of a fault.
    Nothing,
}

/// Finds the fault of a sheet.
#[derive(Debug)]
pub struct Finder {
    bench: Bench,
    sheet: Sheet,
    symptoms_of: Symptoms,
    states: Vec<(State, usize)>,
    suspicions: Vec<Suspicion>,
    singles: usize,
    places: Vec<Place>,
    efforts: Efforts,
    readings: Vec<(Reading, Option<Placed>)>,
    symptoms: Vec<Symptom>,
}

impl Finder {
    /// On a sheet as it should be. `None` where nothing on it is fed.
    #[must_use]
    pub fn new(sheet: &Sheet, settings: &Settings) -> Option<Self> {
        let mut bench = Bench::new(sheet, settings)?;
        let on = bench.ready(State::ON.vehicle, State::ON.duty)?;
        let laid = bench.sheet().clone();
        let mut it = Self {
            places: candidates(&laid, &bench)
                .into_iter()
                .filter_map(|Candidate { probe, near }| {
                    Some(Place {
                        placed: bench.place(&probe)?,
                        scatter: scatter(&probe, near),
                        probe,
                    })
                })
                .collect(),
            efforts: Efforts::of(&laid, settings),
            symptoms_of: Symptoms::of(&laid, settings, &bench),
            suspicions: Vec::new(),
            singles: 0,
            states: vec![(State::ON, on)],
            readings: Vec::new(),
            symptoms: Vec::new(),
            sheet: laid,
            bench,
        };
        it.suspect(Vec::new(), NOTHING);
        for weighed in suspects(&it.sheet) {
            it.suspect(vec![weighed.broken], weighed.weight);
        }
        it.singles = it.suspicions.len();
        it.believe();
        Some(it)
    }

    fn suspect(&mut self, breaks: Vec<Break>, weight: f64) {
        let Some(fault) = self.bench.fault(&breaks) else {
            return;
        };
        let thing = match self.suspicions.last() {
            Some(last) if same(&last.breaks, &breaks) => last.thing,
            Some(last) => last.thing + 1,
            None => 0,
        };
        self.suspicions.push(Suspicion {
            isolated: self.bench.isolate(&fault),
            breaks,
            prior: libm::log(weight),
            belief: 0.0,
            thing,
            fault,
            foreseen: Vec::new(),
            sharp: false,
        });
    }

    /// The sheet, laid in its body.
    #[must_use]
    pub fn sheet(&self) -> &Sheet {
        &self.sheet
    }

    /// How many single faults are suspected, sizes of one counted apart.
    #[must_use]
    pub fn suspicions(&self) -> usize {
        self.singles
    }

    /// All probes that may be proposed.
    pub fn probes(&self) -> impl Iterator<Item = &Probe> {
        self.places.iter().map(|place| &place.probe)
    }

    /// Takes what is known, all of it; what was told before is forgotten.
    pub fn know(&mut self, readings: &[Reading], symptoms: &[Symptom]) {
        self.readings = readings
            .iter()
            .map(|reading| (reading.clone(), self.bench.place(&reading.probe)))
            .collect();
        self.symptoms = symptoms.to_vec();
        for (reading, _) in &self.readings {
            if !matches!(reading.probe, Probe::Ohms(..))
                && !self.states.iter().any(|(state, _)| *state == reading.state)
                && let Some(ready) = self.bench.ready(reading.state.vehicle, reading.state.duty)
            {
                self.states.push((reading.state, ready));
            }
        }
        self.suspicions.truncate(self.singles);
        self.believe();
        if self.readings.is_empty() && self.symptoms.is_empty() {
            return;
        }
        self.sharpen();
        if self.leaves_unexplained() {
            self.pair();
            self.sharpen();
        }
    }

    /// What a suspicion foretells of a reading: `None` where it says nothing.
    fn foretold(&self, suspicion: &Suspicion, state: State, placed: &Placed, probe: &Probe) -> Option<f64> {
        if matches!(probe, Probe::Ohms(..)) {
            let shown = self.bench.ohms(&suspicion.isolated, placed)?;
            return Some(number(shown, probe));
        }
        let at = self.states.iter().position(|(known, _)| *known == state)?;
        let (_, ready) = self.states.get(at)?;
        let foreseen = suspicion.foreseen.get(at)?.as_ref()?;
        Some(number(self.bench.read(*ready, foreseen, placed)?, probe))
    }

    /// How many deviations a reading lies from what is foretold.
    fn far(&self, suspicion: &Suspicion, reading: &Reading, placed: Option<&Placed>) -> Option<f64> {
        let foretold = self.foretold(suspicion, reading.state, placed?, &reading.probe)?;
        let scatter = self.scatter(&reading.probe);
        let clean = |number: f64| match reading.probe {
            Probe::Ohms(..) if number > OPEN_FROM => MOST_OHMS,
            _ => number,
        };
        let read = clean(reading.number.unwrap_or(MOST_OHMS));
        let foretold = clean(foretold);
        let own = reading.tolerance.unwrap_or(0.0) / 2.0 / scatter.at(foretold);
        Some((scatter.place(read) - scatter.place(foretold)) / libm::sqrt(1.0 + own * own))
    }

    fn scatter(&self, probe: &Probe) -> Scatter {
        let known = self.places.iter().find(|place| place.probe == *probe);
        known.map_or_else(|| scatter(probe, self.is_near(probe)), |place| place.scatter)
    }

    /// Whether both leads are on one run, or on one part through which current passes.
    fn is_near(&self, probe: &Probe) -> bool {
        let Probe::Volts(red, black) = probe else {
            return false;
        };
        let on = |end: &model::End, at| end.terminal() == Some(at);
        self.sheet.runs.values().any(|run| {
            (on(&run.from, red) && on(&run.to, black)) || (on(&run.from, black) && on(&run.to, red))
        })
    }

    /// Works out all beliefs.
    fn believe(&mut self) {
        for at in 0..self.suspicions.len() {
            self.foresee(at);
            self.weigh(at);
        }
    }

    /// Makes sure that a suspicion foretells every state that is asked for.
    fn foresee(&mut self, at: usize) {
        let Some(suspicion) = self.suspicions.get_mut(at) else {
            return;
        };
        while suspicion.foreseen.len() < self.states.len() {
            let foreseen = self
                .states
                .get(suspicion.foreseen.len())
                .and_then(|(_, ready)| self.bench.foresee(&suspicion.fault, *ready));
            suspicion.foreseen.push(foreseen);
            suspicion.sharp = false;
        }
    }

    fn weigh(&mut self, at: usize) {
        let Some(suspicion) = self.suspicions.get(at) else {
            return;
        };
        let mut belief = suspicion.prior;
        for (reading, placed) in &self.readings {
            if let Some(far) = self.far(suspicion, reading, placed.as_ref()) {
                belief += libm::log((1.0 - FLOOR) * libm::exp(-0.5 * far * far) + FLOOR);
            }
        }
        for symptom in &self.symptoms {
            belief += libm::log(if self.foretells(suspicion, symptom) {
                TOLD.0
            } else {
                TOLD.1
            });
        }
        if let Some(suspicion) = self.suspicions.get_mut(at) {
            suspicion.belief = belief;
        }
    }

    fn foretells(&self, suspicion: &Suspicion, symptom: &Symptom) -> bool {
        let (Some((_, ready)), Some(Some(foreseen))) = (self.states.first(), suspicion.foreseen.first())
        else {
            return false;
        };
        self.symptoms_of
            .holds(&self.bench, *ready, foreseen, &suspicion.breaks, symptom)
    }

    /// Lets the engine solve what leads anew, until what leads has been.
    fn sharpen(&mut self) {
        for _ in 0..2 {
            let mut leading: Vec<usize> = (0..self.suspicions.len()).collect();
            let belief = |at: &usize| self.suspicions.get(*at).map_or(f64::NEG_INFINITY, |it| it.belief);
            leading.order_by(|a, b| belief(b).total_cmp(&belief(a)).then(a.cmp(b)));
            leading.truncate(SHARPENED);
            leading.retain(|at| self.suspicions.get(*at).is_some_and(|it| !it.sharp));
            if leading.is_empty() {
                return;
            }
            for at in leading {
                if let Some(suspicion) = self.suspicions.get_mut(at) {
                    for (foreseen, (_, ready)) in suspicion.foreseen.iter_mut().zip(&self.states) {
                        if let Some(anew) = self.bench.solve(&suspicion.fault, *ready) {
                            *foreseen = Some(anew);
                        }
                    }
                    suspicion.sharp = true;
                }
                self.weigh(at);
            }
        }
    }

    /// Whether the best suspicion leaves a reading unexplained.
    fn leaves_unexplained(&self) -> bool {
        let best = self
            .suspicions
            .iter()
            .max_by(|a, b| a.belief.total_cmp(&b.belief));
        best.is_some_and(|best| {
            self.readings.iter().any(|(reading, placed)| {
                self.far(best, reading, placed.as_ref())
                    .is_some_and(|far| far.abs() > UNEXPLAINED)
            }) || self.symptoms.iter().any(|symptom| !self.foretells(best, symptom))
        })
    }

    /// Adds pairs of the single faults that explain most.
    fn pair(&mut self) {
        let whole: f64 = self.suspicions.iter().map(|it| libm::exp(it.prior)).sum();
        let mut leading: Vec<(f64, usize, usize)> = self
            .suspicions
            .iter()
            .enumerate()
            .filter(|(_, it)| !it.breaks.is_empty())
            .map(|(at, it)| (it.belief, at, it.thing))
            .collect();
        leading.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        // The likeliest size of each thing.
        let mut things: Vec<usize> = Vec::new();
        leading.retain(|(_, _, thing)| {
            let new = !things.contains(thing);
            things.push(*thing);
            new
        });
        leading.truncate(PAIRED);
        for (place, (_, one, _)) in leading.iter().enumerate() {
            for (_, other, _) in leading.iter().skip(place + 1) {
                let (Some(one), Some(other)) = (self.suspicions.get(*one), self.suspicions.get(*other))
                else {
                    continue;
                };
                let weight = libm::exp(one.prior + other.prior) / whole.max(1.0);
                let breaks = [one.breaks.as_slice(), other.breaks.as_slice()].concat();
                self.suspect(breaks, weight);
            }
        }
        for at in self.singles..self.suspicions.len() {
            self.foresee(at);
            self.weigh(at);
        }
    }

    /// The share of each suspicion.
    fn shares(&self) -> Vec<f64> {
        let most = self
            .suspicions
            .iter()
            .fold(f64::NEG_INFINITY, |most, it| most.max(it.belief));
        let raw: Vec<f64> = self
            .suspicions
            .iter()
            .map(|it| libm::exp(it.belief - most))
            .collect();
        let sum: f64 = raw.iter().sum();
        raw.into_iter().map(|it| it / sum.max(1e-300)).collect()
    }

    /// What is suspected, likeliest first; sizes of one thing are one, told at its likeliest.
    #[must_use]
    pub fn ranking(&self) -> Vec<Suspect> {
        self.ranked()
            .into_iter()
            .map(|(share, at)| self.told(share, at))
            .collect()
    }

    fn told(&self, share: f64, at: usize) -> Suspect {
        let Some(suspicion) = self.suspicions.get(at) else {
            return Suspect {
                breaks: Vec::new(),
                share,
                foretold: Vec::new(),
            };
        };
        let foretold = self.readings.iter().map(|(reading, placed)| {
            let number = self.foretold(suspicion, reading.state, placed.as_ref()?, &reading.probe)?;
            shown(&reading.probe, number)
        });
        Suspect {
            breaks: suspicion.breaks.clone(),
            share,
            foretold: foretold.collect(),
        }
    }

    /// Share of each thing with its likeliest suspicion, likeliest first.
    fn ranked(&self) -> Vec<(f64, usize)> {
        let mut all: Vec<(f64, usize)> = Vec::new();
        let mut best = 0.0;
        let mut thing = usize::MAX;
        for (at, (share, suspicion)) in self.shares().into_iter().zip(&self.suspicions).enumerate() {
            match all.last_mut() {
                Some(last) if suspicion.thing == thing => {
                    last.0 += share;
                    if share > best {
                        (last.1, best) = (at, share);
                    }
                }
                _ => {
                    all.push((share, at));
                    (best, thing) = (share, suspicion.thing);
                }
            }
        }
        all.order_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        all
    }

    /// How far it has come, and what to do next.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        if self.readings.is_empty() && self.symptoms.is_empty() {
            return self.propose().map_or(Verdict::Nothing, Verdict::Open);
        }
        let ranked = self.ranked();
        if let Some(&(share, at)) = ranked.first()
            && share >= SURE
        {
            return Verdict::Found(self.told(share, at));
        }
        match self.propose() {
            Some(proposal) => Verdict::Open(proposal),
            None => {
                let left = ranked.into_iter().filter(|(share, _)| *share >= 0.01);
                Verdict::Alike(left.map(|(share, at)| self.told(share, at)).collect())
            }
        }
    }

    /// The parts whose terminals have been reached, and whether the supply is off just now.
    fn open(&self) -> (Vec<PartId>, bool) {
        let open = self
            .readings
            .iter()
            .flat_map(|(reading, _)| Efforts::touched(&self.sheet, &reading.probe));
        let last = self.readings.last();
        let isolated = last.is_some_and(|(reading, _)| matches!(reading.probe, Probe::Ohms(..)));
        (open.collect(), isolated)
    }

    /// The measurement that is expected to tell most for its effort. `None` where none tells anything.
    #[must_use]
    pub fn propose(&self) -> Option<Proposal> {
        let (open, isolated) = self.open();
        let bits = self.bits();
        let mut best: Option<(f64, f64, f64, usize)> = None;
        for (at, (place, bits)) in self.places.iter().zip(bits).enumerate() {
            let known = |(reading, _): &(Reading, Option<Placed>)| reading.probe == place.probe;
            if bits < LEAST_BITS || self.readings.iter().any(known) {
                continue;
            }
            let minutes = self.efforts.minutes(&self.sheet, &place.probe, &open, isolated);
            let worth = bits / minutes;
            if best.is_none_or(|(most, ..)| worth > most) {
                best = Some((worth, bits, minutes, at));
            }
        }
        let (_, bits, minutes, at) = best?;
        let place = self.places.get(at)?;
        let leading = self.ranked().into_iter().take(5);
        let foretold = leading.filter_map(|(share, at)| {
            let suspicion = self.suspicions.get(at)?;
            let number = self.foretold(suspicion, State::ON, &place.placed, &place.probe)?;
            Some((self.told(share, at), shown(&place.probe, number)))
        });
        Some(Proposal {
            probe: place.probe.clone(),
            state: State::ON,
            bits,
            minutes,
            foretold: foretold.collect(),
        })
    }

    /// What each measurement is expected to tell of which thing is broken, in bits.
    ///
    /// Readings fall into classes of [`WIDTH`] deviations; one between two middles belongs to both in part, so that what is told apart by less
    /// than the scatter is told apart in part only.
    fn bits(&self) -> Vec<f64> {
        let shares = self.shares();
        let alive: Vec<(usize, f64)> = shares
            .iter()
            .copied()
            .enumerate()
            .filter(|(_, share)| *share > LEAST_SHARE)
            .collect();
        let doubts: Vec<f64> = (0..=STEPS)
            .map(|step| {
                let part = f64::from(step) / f64::from(STEPS);
                entropy(part) + entropy(1.0 - part)
            })
            .collect();
        let mut all = Vec::with_capacity(self.places.len());
        let mut steps: Vec<i32> = Vec::new();
        for block in self.places.chunks(BLOCK) {
            steps.clear();
            // One suspicion after the other: all of its volts lie together.
            for (at, _) in &alive {
                let suspicion = self.suspicions.get(*at);
                steps.extend(block.iter().map(|place| {
                    let number = suspicion
                        .and_then(|it| self.foretold(it, State::ON, &place.placed, &place.probe))
                        .unwrap_or(0.0);
                    step(place.scatter, number)
                }));
            }
            for column in 0..block.len() {
                all.push(self.bits_of(&alive, &doubts, |row| {
                    steps.get(row * block.len() + column).copied().unwrap_or(0)
                }));
            }
        }
        all
    }

    fn bits_of(&self, alive: &[(usize, f64)], doubts: &[f64], step: impl Fn(usize) -> i32) -> f64 {
        let mut classes = [0.0_f64; 2 * CLASSES as usize + 2];
        let mut within = 0.0;
        let mut row = 0;
        let mut own: Vec<(usize, f64)> = Vec::new();
        while let Some(&(first, _)) = alive.get(row) {
            let thing = self.suspicions.get(first).map(|it| it.thing);
            own.clear();
            let begun = row;
            let mut sum = 0.0;
            while let Some(&(at, share)) = alive.get(row) {
                if self.suspicions.get(at).map(|it| it.thing) != thing {
                    break;
                }
                let it = step(row);
                let class = usize::try_from(it.div_euclid(STEPS) + CLASSES).unwrap_or(0);
                let part = f64::from(it.rem_euclid(STEPS)) / f64::from(STEPS);
                for (class, mass) in [(class, share * (1.0 - part)), (class + 1, share * part)] {
                    if let Some(to) = classes.get_mut(class) {
                        *to += mass;
                    }
                    match own.iter_mut().find(|(known, _)| *known == class) {
                        Some(known) => known.1 += mass,
                        None => own.push((class, mass)),
                    }
                }
                sum += share;
                row += 1;
            }
            // One size alone: what it leaves open stands in the table.
            within += if row == begun + 1 {
                let at = usize::try_from(step(begun).rem_euclid(STEPS)).unwrap_or(0);
                sum * doubts.get(at).copied().unwrap_or(0.0)
            } else {
                sum * own.iter().map(|(_, mass)| entropy(mass / sum)).sum::<f64>()
            };
        }
        let whole: f64 = classes.iter().map(|mass| entropy(*mass)).sum();
        ((whole - within) / std::f64::consts::LN_2).max(0.0)
    }
}

/// −p ln p.
fn entropy(p: f64) -> f64 {
    if p > 0.0 { -p * libm::log(p) } else { 0.0 }
}

/// Where a number lies, in steps between classes.
fn step(scatter: Scatter, number: f64) -> i32 {
    let steps = scatter.place(number) / WIDTH * f64::from(STEPS);
    let most = f64::from((CLASSES - 1) * STEPS);
    // A number that is not one becomes nothing.
    steps.clamp(-most, most).round() as i32
}

/// Whether two suspicions are of the same thing.
fn same(one: &[Break], other: &[Break]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(a, b)| a.is_same_thing(b))
}
