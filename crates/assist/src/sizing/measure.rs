//! The engine and the checks, asked of one choice: what flows, what is lost, what is found.

use super::shape::Shape;
use super::steps::pause;
use super::things::{Is, Thing, Things, rate};
use checks::{Asks, Finding};
use circuit::{Trial, TrialNet, Tried};
use model::job::{Duty, VehicleState};
use model::quantity::Ohms;
use model::{PartId, RunId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet, Sort as _};

/// Checks whose word a size or a rating decides.
pub(super) const DECIDED: &[&str] = &[
    "overloaded-run",
    "fuse-outsizes-wire",
    "fuse-undersized",
    "uneven-parallel",
    "clad-feed",
    "hot-joint",
    "return-through-shield",
    "return-too-thin",
    "return-too-long",
    "terminal-overfull",
    "supply-collapse",
    "voltage-drop",
    "ground-offset",
    "wire-before-fuse",
    "short-never-clears",
];

/// Checks that need not be asked with a choice: no size decides them, and none of [`DECIDED`] looks at what they find.
pub(super) const NOT_ASKED: &[&str] = &[
    "fuse-order",
    "no-signal",
    "crossed-signal",
    "wrong-level",
    "no-turn-on",
    "turn-on-overloaded",
    "always-on",
    "lead-loss",
    "speaker-overpowered",
    "no-high-pass",
    "over-budget",
    "standing-drain",
    "not-known",
    "unsupported",
    "signal-beside-feed",
    "signal-scattered",
];
/// What this check finds is the same whatever is chosen, as only what goes into a terminal is: once it is known what is wrong with the
/// thickest wires it is not asked again.
pub(super) const SETTLED: &str = "terminal-overfull";

/// What is asked of each choice, again and again.
pub(super) struct Bench<'a> {
    /// The sheet, laid in the body.
    pub(super) laid: &'a Sheet,
    /// What each choice is judged at, with [`NOT_ASKED`] left out.
    pub(super) scenes: Vec<Settings>,
    pub(super) things: &'a Things,
    pub(super) asks: &'a Asks,
    /// Devices of the study, by their names.
    pub(super) devices: Vec<circuit::DeviceRef>,
    /// The sheet at each of the scenes, and the choices that are laid there.
    pub(super) trials: Vec<Trial<'a>>,
    pub(super) set: Vec<usize>,
    /// How often it was asked what flows with a whole choice, and how often the checks were of one operating point.
    pub(super) asked: usize,
    pub(super) judged: usize,
    /// The operating point at which the checks last found something.
    pub(super) last_wrong: usize,
}

/// What flows with a choice.
#[derive(Clone, Debug, Default)]
pub(super) struct Measured {
    /// By variable: the largest steady current and the largest burst at any operating point, in A.
    pub(super) rms: Vec<f64>,
    pub(super) burst: Vec<f64>,
    /// By operating point, the job's own first.
    pub(super) points: Vec<AtPoint>,
}

impl Measured {
    /// Of what flows at all operating points.
    fn of(points: Vec<AtPoint>, vars: usize) -> Self {
        let mut it = Self {
            rms: vec![0.0; vars],
            burst: vec![0.0; vars],
            points: Vec::new(),
        };
        points.iter().for_each(|point| it.hold(point));
        it.points = points;
        it
    }

    /// Holds the largest currents of a point as well.
    pub(super) fn hold(&mut self, point: &AtPoint) {
        let larger = |all: &mut [f64], of: &[f64]| {
            for (most, amps) in all.iter_mut().zip(of) {
                *most = most.max(*amps);
            }
        };
        larger(&mut self.rms, &point.rms);
        larger(&mut self.burst, &point.burst);
    }
}

/// What flows at one operating point.
#[derive(Clone, Debug, Default)]
pub(super) struct AtPoint {
    /// By variable, in A.
    pub(super) rms: Vec<f64>,
    pub(super) burst: Vec<f64>,
    /// What is lost to each load whose drop is limited, in V: not where the supply collapses or the load is off.
    pub(super) drops: OrderedMap<PartId, f64>,
    /// What is left across those loads, in V.
    pub(super) volts: OrderedMap<PartId, f64>,
    /// Loads that are on.
    pub(super) on: OrderedSet<PartId>,
    /// Whether an operating point was found.
    pub(super) answered: bool,
}

/// The conditions that a choice is judged under: the job's own first, and the worst unless it is asked for as set.
pub(super) fn scenes(settings: &Settings, as_set: bool) -> Vec<Settings> {
    let own = settings.conditions.clone();
    let mut settings = settings.clone();
    settings
        .allowed
        .extend(NOT_ASKED.iter().map(|name| (*name).into()));
    let mut all = vec![settings.clone()];
    if as_set {
        return all;
    }
    let mut add = |state: VehicleState, duty: Duty| {
        if (state, duty) != (own.state, own.duty) {
            let mut settings = settings.clone();
            (settings.conditions.state, settings.conditions.duty) = (state, duty);
            all.push(settings);
        }
    };
    for state in [VehicleState::EngineOff, VehicleState::Idle, VehicleState::Cruise] {
        add(state, Duty::Tone);
    }
    // A quiet system leaves the alternator free to charge a second battery.
    add(VehicleState::Cruise, Duty::Idle);
    all
}

impl Bench<'_> {
    /// The laid sheet with these choices made.
    pub(super) fn with(&self, picks: &[usize]) -> Sheet {
        let mut sheet = self.laid.clone();
        for (var, pick) in self.things.vars.iter().zip(picks) {
            let Some(choice) = var.choices.get(*pick) else {
                continue;
            };
            match (&var.thing, &choice.is) {
                (Thing::Run(id, _), Is::Wire { run, .. }) => {
                    if let Some(slot) = sheet.runs.get_mut(id) {
                        slot.clone_from(run);
                    }
                }
                (Thing::Device(place), Is::Rating { amps, .. }) => {
                    let Some(device) = self.devices.get(*place) else {
                        continue;
                    };
                    if let Some(part) = sheet.parts.get_mut(&device.part) {
                        rate(part, device, *amps);
                    }
                }
                _ => {}
            }
        }
        sheet
    }

    /// What flows with these choices; with none of them before any others, as things are laid.
    pub(super) async fn measure(&mut self, picks: &[usize]) -> Measured {
        self.lay(picks);
        let mut points = Vec::with_capacity(self.trials.len());
        for at in 0..self.trials.len() {
            points.extend(self.look(at).await);
        }
        Measured::of(points, self.things.vars.len())
    }

    /// What flows at an operating point with the choices that were laid last.
    pub(super) async fn look(&mut self, at: usize) -> Option<AtPoint> {
        pause().await;
        let tried = self.trials.get_mut(at)?.look();
        Some(at_point(self.things, self.asks, &tried))
    }

    /// Lays these choices, to be looked at.
    pub(super) fn lay(&mut self, picks: &[usize]) {
        self.asked += 1;
        for (var, pick) in picks.iter().enumerate() {
            if self.set.get(var) == Some(pick) {
                continue;
            }
            let it = &self.things.vars[var];
            for trial in &mut self.trials {
                match (&it.thing, it.choices.get(*pick).map(|choice| &choice.is)) {
                    (Thing::Run(_, place), Some(Is::Wire { conductor, .. })) => trial.lay(*place, conductor),
                    (Thing::Device(place), Some(Is::Rating { ohms, .. })) => {
                        trial.put_in(*place, Ohms(*ohms))
                    }
                    _ => {}
                }
            }
        }
        self.set = picks.to_vec();
    }

    /// By variable, by how much what is lost to a load at an operating point grows with what it resists, in V/Ω, with the choices that
    /// were measured last.
    pub(super) fn slopes(&mut self, point: usize, load: PartId) -> Option<Vec<f64>> {
        let [runs, devices] = self.trials.get_mut(point)?.slopes(load)?;
        let of = |var: &super::things::Var| match var.thing {
            Thing::Run(_, place) => runs.get(place).copied(),
            Thing::Device(place) => devices.get(place).copied(),
        };
        Some(
            self.things
                .vars
                .iter()
                .map(|var| of(var).unwrap_or(0.0))
                .collect(),
        )
    }

    /// What the checks that sizes decide find with these choices at the first operating point at which they find something that counts;
    /// the one at which they last did is asked first, and no more than so many are.
    pub(super) async fn first_findings(
        &mut self,
        picks: &[usize],
        scenes: usize,
        counts: impl Fn(usize, &Wrong) -> bool,
    ) -> Vec<Wrong> {
        let sheet = self.with(picks);
        let Some(settings) = self.scenes.first() else {
            return Vec::new();
        };
        let net = TrialNet::of(&sheet, settings);
        let mut order: Vec<usize> = (0..self.scenes.len()).collect();
        order.order_by_key(|scene| *scene != self.last_wrong);
        for scene in order.into_iter().take(scenes) {
            pause().await;
            let mut all = self.findings_at(&sheet, &net, scene);
            all.retain(|wrong| counts(scene, wrong));
            if !all.is_empty() {
                self.last_wrong = scene;
                return all;
            }
        }
        Vec::new()
    }

    /// What the checks that sizes decide find with these choices, at all operating points, each with the one at which it is found.
    pub(super) async fn findings(&mut self, picks: &[usize]) -> Vec<(usize, Wrong)> {
        let sheet = self.with(picks);
        let Some(settings) = self.scenes.first() else {
            return Vec::new();
        };
        let net = TrialNet::of(&sheet, settings);
        let mut all = Vec::new();
        for scene in 0..self.scenes.len() {
            pause().await;
            let found = self.findings_at(&sheet, &net, scene).into_iter();
            all.extend(found.map(|wrong| (scene, wrong)));
        }
        all
    }

    /// Leaves out the operating points of which this is false.
    pub(super) fn leave_out(&mut self, keep: &[bool]) {
        for (at, keep) in keep.iter().enumerate().rev() {
            if !keep {
                self.scenes.remove(at);
                self.trials.remove(at);
            }
        }
    }

    /// Asks no more for what no choice changes.
    pub(super) fn settle(&mut self) {
        for settings in &mut self.scenes {
            settings.allowed.insert(SETTLED.into());
        }
    }

    fn findings_at(&mut self, sheet: &Sheet, net: &TrialNet<'_>, scene: usize) -> Vec<Wrong> {
        self.judged += 1;
        let (Some(settings), Some(trial)) = (self.scenes.get(scene), self.trials.get(scene)) else {
            return Vec::new();
        };
        let study = trial.study(net, settings);
        let found = checks::judge(sheet, settings, &study).into_iter();
        found
            .filter(|finding| !finding.undecided && DECIDED.contains(&finding.check))
            .map(Wrong::of)
            .collect()
    }
}

fn at_point(things: &Things, asks: &Asks, tried: &Tried) -> AtPoint {
    let (mut rms, mut burst) = (Vec::new(), Vec::new());
    for var in &things.vars {
        let found = match var.thing {
            Thing::Run(_, place) => tried.runs.get(place),
            Thing::Device(place) => tried.devices.get(place),
        };
        let [steady, loud] = found.copied().unwrap_or_default();
        rms.push(steady);
        burst.push(loud);
    }
    let asked = |load: &PartId| asks.drops.contains_key(load);
    let loads = || tried.loads.iter().filter(|(load, _)| asked(load));
    AtPoint {
        rms,
        burst,
        drops: loads()
            .filter(|_| !tried.collapsed)
            .map(|(load, [lost, _])| (*load, *lost))
            .collect(),
        volts: loads().map(|(load, [_, left])| (*load, *left)).collect(),
        on: tried.on.iter().copied().collect(),
        answered: tried.answered,
    }
}

/// What is wrong with a choice.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Wrong {
    pub(super) check: &'static str,
    pub(super) runs: Vec<RunId>,
    pub(super) parts: Vec<PartId>,
}

impl Wrong {
    /// Whether it says of one of the same things the same as another.
    pub(super) fn like(&self, other: &Self) -> bool {
        let shared = self.runs.iter().any(|run| other.runs.contains(run))
            || self.parts.iter().any(|part| other.parts.contains(part));
        self.check == other.check && (shared || (self.runs.is_empty() && self.parts.is_empty()))
    }
    pub(super) fn of(finding: Finding) -> Self {
        Self {
            check: finding.check,
            runs: finding.runs,
            parts: finding.parts,
        }
    }
}

/// For each tree, by its root, the operating point at which the drop to one of its loads is furthest towards its limit.
pub(super) fn governing(
    measured: &Measured,
    shape: &Shape,
    limits: &[OrderedMap<PartId, f64>],
) -> Vec<usize> {
    let mut best: Vec<(f64, usize)> = vec![(0.0, 0); shape.nodes.len()];
    for (leaf, (_, part)) in shape.leaves.iter().enumerate() {
        let (Some(part), Some(tree)) = (part, shape.tree_of_leaf[leaf]) else {
            continue;
        };
        for (at, (point, limits)) in measured.points.iter().zip(limits).enumerate() {
            let limit = limits.get(part).map_or(1.0, |limit| limit.max(1e-9));
            let share = point.drops.get(part).map_or(0.0, |drop| drop / limit);
            if share > best[tree].0 {
                best[tree] = (share, at);
            }
        }
    }
    best.into_iter().map(|(_, at)| at).collect()
}

/// What is lost on the way to each load in what is not chosen, at the operating point of its tree: all that is lost, less what
/// is lost in the choices.
pub(super) fn fixed_drops(
    shape: &Shape,
    things: &Things,
    measured: &Measured,
    governing: &[usize],
    picks: &[usize],
) -> OrderedMap<PartId, f64> {
    let mut fixed: OrderedMap<PartId, f64> = OrderedMap::new();
    for (leaf, (_, part)) in shape.leaves.iter().enumerate() {
        let (Some(part), Some(tree)) = (part, shape.tree_of_leaf[leaf]) else {
            continue;
        };
        let point = governing.get(tree).and_then(|at| measured.points.get(*at));
        if let Some(drop) = point.and_then(|point| point.drops.get(part)) {
            fixed.insert(*part, *drop);
        }
    }
    for (var, it) in things.vars.iter().enumerate().filter(|(var, _)| shape.fits[*var]) {
        let Some(point) = governing
            .get(shape.tree[var])
            .and_then(|at| measured.points.get(*at))
        else {
            continue;
        };
        let lost = point.burst[var] * it.choices[picks[var]].ohms(point.rms[var]);
        for leaf in &shape.loads[var] {
            let part = shape.leaves.get(*leaf).and_then(|(_, part)| *part);
            if let Some(drop) = part.and_then(|part| fixed.get_mut(&part)) {
                *drop -= lost;
            }
        }
    }
    fixed
}

#[cfg(test)]
mod tests {
    use super::*;
    use circuit::{Purpose, study_laid};
    use testkit::random::random_system;

    /// What is decided, of what the checks find.
    fn decided(sheet: &Sheet, settings: &Settings) -> Vec<Finding> {
        let found = checks::judge(sheet, settings, &study_laid(sheet, settings)).into_iter();
        found.filter(|finding| DECIDED.contains(&finding.check)).collect()
    }

    /// A sheet with another size in every third supply run.
    fn other_sizes(sheet: &Sheet, settings: &Settings) -> Sheet {
        let study = study_laid(sheet, settings);
        let mut other = sheet.clone();
        for (at, (id, run)) in other.runs.iter_mut().enumerate() {
            let purpose = study.runs.get(id).map(|flow| flow.purpose);
            let is_supply = matches!(purpose, Some(Purpose::Feed | Purpose::Return | Purpose::TurnOn));
            let size = run.wire.size.value().filter(|_| is_supply && at % 3 == 0);
            let next = size.and_then(|size| size.series().find(|next| next.area().0 > size.area().0));
            if let Some(next) = next {
                *run = super::super::things::lay(run, next);
            }
        }
        other
    }

    // Source: the whole engine and all checks, asked of the same sheet.
    #[test]
    fn what_is_shared_and_left_out_changes_nothing_that_counts() {
        let mut changed = 0;
        for seed in 0..12 {
            let sheet = random_system(seed, 30);
            let settings = Settings::default();
            let other = other_sizes(&sheet, &settings);
            changed += usize::from(other != sheet);
            let net = TrialNet::of(&sheet, &settings);
            let scenes = scenes(&settings, false);
            let trials = Trial::all(&net, &scenes);
            let on = TrialNet::of(&other, &settings);
            for (scene, trial) in scenes.iter().zip(&trials) {
                let study = trial.study(&on, scene);
                assert_eq!(study, study_laid(&other, scene), "seed {seed}");
                let asked: Vec<Finding> = checks::judge(&other, scene, &study)
                    .into_iter()
                    .filter(|finding| DECIDED.contains(&finding.check))
                    .collect();
                let mut whole = scene.clone();
                for name in NOT_ASKED {
                    whole.allowed.remove(*name);
                }
                assert_eq!(asked, decided(&other, &whole), "seed {seed}");
            }
        }
        assert!(changed >= 10, "{changed} of 12 sheets have other sizes");
    }
}
