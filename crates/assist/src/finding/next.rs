//! What to measure next: the place whose reading is expected to tell most for the effort.

use super::belief::{Finder, Place, Suspicion, Taken};
use super::effort::Efforts;
use super::evidence::State;
use super::scale::{Scatter, number, shown};
use super::verdict::Proposal;
use circuit::Probe;
use model::PartId;

/// A measurement that is expected to tell less than this, in bits, tells nothing.
const LEAST_BITS: f64 = 0.04;
/// Suspicions below this share of the whole are left out when the next measurement is looked for.
const LEAST_SHARE: f64 = 1e-5;
/// Width of a class of readings, in deviations, and how many there are on either side of nothing.
const WIDTH: f64 = 3.0;
const CLASSES: i32 = 96;
/// Steps between two classes.
const STEPS: i32 = 32;
/// Measurements that are looked at together.
const BLOCK: usize = 128;

/// Suspicions that are alive, sizes of one thing together.
struct Alive {
    /// Places among all suspicions, with their shares.
    rows: Vec<(usize, f64)>,
    /// The thing of each row, and of each thing its share and how many rows it has.
    thing: Vec<usize>,
    things: Vec<(f64, usize)>,
    /// What is left open by a reading that belongs to two classes, by its step between them.
    doubts: Vec<f64>,
    whole: f64,
}

/// The numbers that lie on one step.
struct Band {
    step: i32,
    least: f64,
    most: f64,
}

impl Band {
    fn of(scatter: Scatter, number: f64) -> Self {
        let step = step(scatter, number);
        let end = |steps: f64| scatter.number(steps * WIDTH / f64::from(STEPS));
        Self {
            step,
            least: end(f64::from(step) - 0.5),
            most: end(f64::from(step) + 0.5),
        }
    }
}

impl Finder {
    /// The parts whose terminals have been reached, and whether the supply is off just now.
    fn open(&self) -> (Vec<PartId>, bool) {
        let open = self
            .readings
            .iter()
            .flat_map(|taken| Efforts::touched(&self.sheet, &taken.reading.probe));
        let last = self.readings.last();
        let isolated = last.is_some_and(|taken| matches!(taken.reading.probe, Probe::Ohms(..)));
        (open.collect(), isolated)
    }

    /// The measurement that is expected to tell most for its effort. `None` where none tells anything.
    #[must_use]
    pub fn propose(&self) -> Option<Proposal> {
        let (open, isolated) = self.open();
        let bits = self.bits();
        let mut best: Option<(f64, f64, f64, usize)> = None;
        for (at, (place, bits)) in self.places.iter().zip(bits).enumerate() {
            let known = |taken: &Taken| taken.reading.probe == place.probe;
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

    fn alive(&self) -> Alive {
        let shares = self.shares().into_iter().enumerate();
        let rows: Vec<(usize, f64)> = shares.filter(|(_, share)| *share > LEAST_SHARE).collect();
        let (mut thing, mut things) = (Vec::with_capacity(rows.len()), Vec::<(f64, usize)>::new());
        let mut last = None;
        for (at, share) in &rows {
            let its = self.suspicions.get(*at).map(|it| it.thing);
            match things.last_mut() {
                Some(same) if its == last => *same = (same.0 + share, same.1 + 1),
                _ => things.push((*share, 1)),
            }
            thing.push(things.len() - 1);
            last = its;
        }
        let doubts = (0..=STEPS).map(|step| {
            let part = f64::from(step) / f64::from(STEPS);
            entropy(part) + entropy(1.0 - part)
        });
        Alive {
            doubts: doubts.collect(),
            whole: rows.iter().map(|(_, share)| share).sum(),
            rows,
            thing,
            things,
        }
    }

    /// What a suspicion foretells in the state in which measurements are proposed.
    fn would_read(&self, suspicion: &Suspicion, place: &Place) -> Option<f64> {
        let shown = if matches!(place.probe, Probe::Ohms(..)) {
            self.bench.ohms(&suspicion.isolated, &place.placed)?
        } else {
            let (_, ready) = self.states.first()?;
            let foreseen = suspicion.foreseen.first()?.as_ref()?;
            self.bench.read(*ready, foreseen, &place.placed)?
        };
        Some(number(shown, &place.probe))
    }

    /// What each measurement is expected to tell of which thing is broken, in bits.
    ///
    /// Readings fall into classes of [`WIDTH`] deviations; one between two middles belongs to both in part, so that what is told apart by less
    /// than the scatter is told apart in part only. Most suspicions change nothing of most readings: only those that do are gone through
    /// one by one.
    fn bits(&self) -> Vec<f64> {
        let alive = self.alive();
        let mut all = Vec::with_capacity(self.places.len());
        let mut odd: Vec<Vec<(usize, i32)>> = vec![Vec::new(); BLOCK];
        for block in self.places.chunks(BLOCK) {
            // Whatever reads like this is on one step: the first suspicion is that nothing is broken.
            let bands: Vec<Band> = block
                .iter()
                .map(|place| {
                    let nothing = self.suspicions.first();
                    let usual = nothing.and_then(|it| self.would_read(it, place));
                    Band::of(place.scatter, usual.unwrap_or(0.0))
                })
                .collect();
            odd.iter_mut().for_each(Vec::clear);
            // One suspicion after the other: all of its volts lie together.
            for (row, (at, _)) in alive.rows.iter().enumerate() {
                let Some(suspicion) = self.suspicions.get(*at) else {
                    continue;
                };
                for ((place, band), odd) in block.iter().zip(&bands).zip(&mut odd) {
                    let number = self.would_read(suspicion, place).unwrap_or(0.0);
                    if !(band.least..=band.most).contains(&number) {
                        odd.push((row, step(place.scatter, number)));
                    }
                }
            }
            all.extend(
                bands
                    .iter()
                    .zip(&odd)
                    .map(|(band, odd)| alive.bits(band.step, odd)),
            );
        }
        all
    }
}

impl Alive {
    fn doubt(&self, step: i32) -> f64 {
        let at = usize::try_from(step.rem_euclid(STEPS)).unwrap_or(0);
        self.doubts.get(at).copied().unwrap_or(0.0)
    }

    /// Bits of a measurement that reads on the `usual` step with all suspicions but the `odd` ones, each with its own step, rows rising.
    fn bits(&self, usual: i32, odd: &[(usize, i32)]) -> f64 {
        let mut classes = [0.0_f64; 2 * CLASSES as usize + 2];
        let (mut within, mut rest) = (0.0, self.whole);
        let mut own: Vec<(usize, f64)> = Vec::new();
        let mut odd = odd.iter().copied().peekable();
        while let Some((row, first)) = odd.next() {
            let thing = self.thing.get(row).copied().unwrap_or(0);
            let (sum, sizes) = self.things.get(thing).copied().unwrap_or_default();
            rest -= sum;
            own.clear();
            if sizes == 1 {
                for (class, mass) in split(first, sum) {
                    add(&mut classes, class, mass);
                }
                // One size alone: what it leaves open stands in the table.
                within += sum * self.doubt(first);
                continue;
            }
            let (mut left, mut count) = (sum, 0);
            let mut next = Some((row, first));
            while let Some((row, step)) = next {
                let share = self.rows.get(row).map_or(0.0, |(_, share)| *share);
                own.extend(split(step, share));
                left -= share;
                count += 1;
                next = odd.next_if(|(row, _)| self.thing.get(*row) == Some(&thing));
            }
            if count < sizes {
                own.extend(split(usual, left.max(0.0)));
            }
            // Few: classes that are met twice are put together.
            for at in 0..own.len() {
                let Some(&(class, _)) = own.get(at) else { continue };
                if own.iter().take(at).any(|(other, _)| *other == class) {
                    continue;
                }
                let mass: f64 = own.iter().filter(|it| it.0 == class).map(|it| it.1).sum();
                add(&mut classes, class, mass);
                within += sum * entropy(mass / sum);
            }
        }
        let rest = rest.max(0.0);
        for (class, mass) in split(usual, rest) {
            add(&mut classes, class, mass);
        }
        within += rest * self.doubt(usual);
        let whole: f64 = classes.iter().map(|mass| entropy(*mass)).sum();
        ((whole - within) / std::f64::consts::LN_2).max(0.0)
    }
}

fn add(classes: &mut [f64], class: usize, mass: f64) {
    if let Some(to) = classes.get_mut(class) {
        *to += mass;
    }
}

/// The two classes that a step is between, with the part of a share that each has.
fn split(step: i32, share: f64) -> [(usize, f64); 2] {
    let class = usize::try_from(step.div_euclid(STEPS) + CLASSES).unwrap_or(0);
    let part = f64::from(step.rem_euclid(STEPS)) / f64::from(STEPS);
    [(class, share * (1.0 - part)), (class + 1, share * part)]
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
