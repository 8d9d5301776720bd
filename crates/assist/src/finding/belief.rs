//! What is believed after what is known: shares of suspicion, and when to stop.

use super::effort::Efforts;
use super::evidence::{Reading, State, Symptom};
use super::probes::{Candidate, candidates};
use super::scale::{Scatter, number, scatter, shown};
use super::suspects::suspects;
use super::symptoms::Symptoms;
use super::verdict::{Suspect, Verdict};
use circuit::{Bench, Fault, Foreseen, Isolated, MOST_OHMS, Placed, Probe};
use model::breaks::Break;
use model::{Settings, Sheet};
use ordered::{OrderedMap, Sort as _};

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
/// How many that lead are solved anew by the engine.
const SHARPENED: usize = 6;
/// How many of the single faults are paired with one another, where none alone explains what was read.
const PAIRED: usize = 24;
/// Pairs that were thought of before are kept, up to so many.
const MOST_PAIRS: usize = 2000;
/// A reading this many deviations from what is foretold is not explained.
const UNEXPLAINED: f64 = 4.0;

/// A suspicion.
#[derive(Debug)]
pub(super) struct Suspicion {
    breaks: Vec<Break>,
    /// Logarithm of its weight, and of weight and likelihood.
    prior: f64,
    belief: f64,
    /// Suspicions of the same thing, whatever its size, have the same number.
    pub(super) thing: usize,
    fault: Fault,
    /// By state, as far as somebody asked.
    pub(super) foreseen: Vec<Option<Foreseen>>,
    pub(super) isolated: Isolated,
    sharp: bool,
}

/// A place to measure, looked up.
#[derive(Debug)]
pub(super) struct Place {
    pub(super) probe: Probe,
    pub(super) placed: Placed,
    pub(super) scatter: Scatter,
}

/// A reading that was given, looked up.
#[derive(Debug)]
pub(super) struct Taken {
    pub(super) reading: Reading,
    placed: Option<Placed>,
    scatter: Scatter,
}

/// Finds the fault of a sheet.
#[derive(Debug)]
pub struct Finder {
    pub(super) bench: Bench,
    pub(super) sheet: Sheet,
    symptoms_of: Symptoms,
    pub(super) states: Vec<(State, usize)>,
    pub(super) suspicions: Vec<Suspicion>,
    singles: usize,
    /// The single faults of each pair, which follow these; and pairs that were thought of before, as they are foreseen already.
    pairs: Vec<(usize, usize)>,
    known_pairs: OrderedMap<(usize, usize), Suspicion>,
    pub(super) places: Vec<Place>,
    pub(super) efforts: Efforts,
    pub(super) readings: Vec<Taken>,
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
            pairs: Vec::new(),
            known_pairs: OrderedMap::new(),
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
            .map(|reading| Taken {
                placed: self.bench.place(&reading.probe),
                scatter: self.scatter(&reading.probe),
                reading: reading.clone(),
            })
            .collect();
        self.symptoms = symptoms.to_vec();
        for Taken { reading, .. } in &self.readings {
            if !matches!(reading.probe, Probe::Ohms(..))
                && !self.states.iter().any(|(state, _)| *state == reading.state)
                && let Some(ready) = self.bench.ready(reading.state.vehicle, reading.state.duty)
            {
                self.states.push((reading.state, ready));
            }
        }
        let pairs = self.suspicions.split_off(self.singles);
        if self.known_pairs.len() > MOST_PAIRS {
            self.known_pairs.clear();
        }
        self.known_pairs
            .extend(std::mem::take(&mut self.pairs).into_iter().zip(pairs));
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
    pub(super) fn foretold(
        &self,
        suspicion: &Suspicion,
        state: State,
        placed: &Placed,
        probe: &Probe,
    ) -> Option<f64> {
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
    fn far(&self, suspicion: &Suspicion, taken: &Taken) -> Option<f64> {
        let Taken {
            reading,
            placed,
            scatter,
        } = taken;
        let foretold = self.foretold(suspicion, reading.state, placed.as_ref()?, &reading.probe)?;
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
        for taken in &self.readings {
            if let Some(far) = self.far(suspicion, taken) {
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

    fn best(&self) -> Option<&Suspicion> {
        self.suspicions
            .iter()
            .max_by(|a, b| a.belief.total_cmp(&b.belief))
    }

    /// The readings, by their places among those that were given, that not even the likeliest suspicion explains: they contradict the others,
    /// or three things are broken.
    #[must_use]
    pub fn unexplained(&self) -> Vec<usize> {
        let Some(best) = self.best() else {
            return Vec::new();
        };
        let far = |taken: &Taken| self.far(best, taken).is_some_and(|far| far.abs() > UNEXPLAINED);
        let all = self.readings.iter().enumerate();
        all.filter(|(_, it)| far(it)).map(|(at, _)| at).collect()
    }

    /// Whether the best suspicion leaves something unexplained.
    fn leaves_unexplained(&self) -> bool {
        let foretells_all = |best| self.symptoms.iter().all(|symptom| self.foretells(best, symptom));
        !self.unexplained().is_empty() || !self.best().is_none_or(foretells_all)
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
                let key = (*one.min(other), *one.max(other));
                let before = self.suspicions.len();
                match self.known_pairs.remove(&key) {
                    Some(pair) => {
                        let thing = self.suspicions.last().map_or(0, |last| last.thing + 1);
                        self.suspicions.push(Suspicion { thing, ..pair });
                    }
                    None => self.suspect_both(key, whole),
                }
                if self.suspicions.len() > before {
                    self.pairs.push(key);
                }
            }
        }
        for at in self.singles..self.suspicions.len() {
            self.foresee(at);
            self.weigh(at);
        }
    }

    fn suspect_both(&mut self, (one, other): (usize, usize), whole: f64) {
        if let (Some(one), Some(other)) = (self.suspicions.get(one), self.suspicions.get(other)) {
            let weight = libm::exp(one.prior + other.prior) / whole.max(1.0);
            let breaks = [one.breaks.as_slice(), other.breaks.as_slice()].concat();
            self.suspect(breaks, weight);
        }
    }

    /// The share of each suspicion.
    pub(super) fn shares(&self) -> Vec<f64> {
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

    pub(super) fn told(&self, share: f64, at: usize) -> Suspect {
        let Some(suspicion) = self.suspicions.get(at) else {
            return Suspect {
                breaks: Vec::new(),
                share,
                foretold: Vec::new(),
            };
        };
        let foretold = self.readings.iter().map(|Taken { reading, placed, .. }| {
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
    pub(super) fn ranked(&self) -> Vec<(f64, usize)> {
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
}

/// Whether two suspicions are of the same thing.
fn same(one: &[Break], other: &[Break]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(a, b)| a.is_same_thing(b))
}
