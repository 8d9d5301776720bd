//! The problem at given currents, and its best answer: a walk over the forest from the leaves to the roots that keeps, at each
//! place, the least cost for every drop that may still be lost before it.

use super::frontier::{Keep, Made, Piece, Point, best_of, best_pieces};
use super::shape::Shape;
use super::things::Var;
use ordered::{OrderedMap, Sort as _};
use std::cell::Cell;

/// Most combinations of choices of one node that are walked through; beyond, its devices keep their least.
const MOST_COMBINED: usize = 4_000;

/// The problem at given currents.
pub(super) struct Program<'a> {
    pub(super) shape: &'a Shape,
    pub(super) vars: &'a [Var],
    /// By variable and choice: volts lost in it.
    pub(super) drops: Vec<Vec<f64>>,
    /// By variable: the first and last choice allowed.
    pub(super) range: Vec<(usize, usize)>,
    /// By load: most that may be lost in what is chosen.
    pub(super) budget: Vec<f64>,
    /// Rating over what a wire bears: the profile's factor.
    pub(super) factor: f64,
    /// By variable: whether it costs nothing, so that what the others cost at the least is told, whatever it is.
    pub(super) free: Vec<bool>,
    /// How many points are kept of each place: all where the very best is asked for.
    pub(super) points: Option<usize>,
    /// Whether what is told is a bound: the answer costs no less, but its choices need not hold.
    pub(super) hopeful: bool,
    /// What an answer may cost at the most.
    pub(super) most: f64,
    /// Whether it is told what is chosen, and not only what that costs.
    pub(super) traced: bool,
    /// Room that one walk after the other works in.
    pub(super) room: &'a Cell<Made>,
}

/// The best answer.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Answer {
    pub(super) cost: f64,
    /// By variable.
    pub(super) picks: Vec<usize>,
}

struct Walk<'p, 'a> {
    program: &'p Program<'a>,
    made: Made,
    /// By node, and the choice of the device above where something beyond depends on it.
    known: OrderedMap<(usize, usize), Vec<Point>>,
    /// By node: the device above whose rating something in it or beyond has to bear.
    above: Vec<Option<usize>>,
    /// By node: volts lost before it at the least and at the most.
    before: Vec<(f64, f64)>,
    /// By node: what it and all beyond it may cost at the most, if all else costs its least.
    caps: Vec<f64>,
    /// By run: its choices as pieces, from the first allowed on.
    runs: Vec<Vec<Piece>>,
    /// By ground rule and first choices of its runs: what is worth choosing of them together.
    ruled: OrderedMap<(usize, Vec<usize>), Vec<Piece>>,
}

/// What ratings of the devices of a node ask of its wires and of what lies beyond.
#[derive(PartialEq)]
struct Asked {
    /// By run of the node: how many of its first choices it leaves out.
    skips: Vec<usize>,
    /// By child: the choice of the device above it.
    given: Vec<usize>,
}

/// No choice of a device above.
const NONE: usize = usize::MAX;

impl Program<'_> {
    /// The answer of least cost; `None` where none is allowed.
    pub(super) fn solve(&self) -> Option<Answer> {
        if self.range.iter().any(|(first, last)| first > last) {
            return None;
        }
        let mut walk = Walk {
            program: self,
            made: self.room.take().cleared(self.traced),
            known: OrderedMap::new(),
            above: self.above(),
            before: self.before(),
            caps: self.caps(),
            runs: self.run_pieces(),
            ruled: OrderedMap::new(),
        };
        let mut answer = Answer {
            cost: 0.0,
            picks: self.range.iter().map(|(first, _)| *first).collect(),
        };
        let mut suffices = true;
        for root in &self.shape.roots {
            let points = walk.of(*root, NONE);
            let Some(best) = points.first() else {
                suffices = false;
                break;
            };
            answer.cost += best.cost;
            walk.made.read(best.made, &mut answer.picks);
        }
        self.room.set(walk.made);
        suffices.then_some(answer)
    }

    fn cost(&self, var: usize, choice: usize) -> f64 {
        if self.free[var] {
            return 0.0;
        }
        self.vars[var]
            .choices
            .get(choice)
            .map_or(0.0, |choice| choice.cost)
    }

    /// What a run bears, as a rating is held against it; the rating of a device.
    fn amps(&self, var: usize, choice: usize) -> f64 {
        let amps = self.vars[var]
            .choices
            .get(choice)
            .map_or(0.0, super::things::Choice::amps);
        if self.vars[var].is_run() {
            amps * self.factor
        } else {
            amps
        }
    }

    /// By node, volts lost before it at the least and at the most.
    fn before(&self) -> Vec<(f64, f64)> {
        let nodes = &self.shape.nodes;
        let mut before = vec![(0.0, 0.0); nodes.len()];
        for at in 0..nodes.len() {
            let Some(parent) = nodes[at].parent else { continue };
            let (mut least, mut most): (f64, f64) = before[parent];
            for var in nodes[parent].runs.iter().chain(&nodes[parent].devices) {
                let (first, last) = self.range[*var];
                let drops = self.drops[*var].get(first..=last).unwrap_or_default();
                least += drops.iter().copied().fold(f64::INFINITY, f64::min);
                most += drops.iter().copied().fold(0.0, f64::max);
            }
            before[at] = (least, most);
        }
        before
    }

    /// By node, what it and all beyond it may cost at the most.
    fn caps(&self) -> Vec<f64> {
        let nodes = &self.shape.nodes;
        let least = |var: &usize| {
            let (first, last) = self.range[*var];
            let costs = (first..=last).map(|choice| self.cost(*var, choice));
            costs.fold(f64::INFINITY, f64::min)
        };
        // Children come after their parents.
        let mut beyond = vec![0.0; nodes.len()];
        for at in (0..nodes.len()).rev() {
            let own: f64 = nodes[at].runs.iter().chain(&nodes[at].devices).map(least).sum();
            beyond[at] += own;
            if let Some(parent) = nodes[at].parent {
                beyond[parent] += beyond[at];
            }
        }
        let all: f64 = self.shape.roots.iter().map(|root| beyond[*root]).sum();
        // A little more, for what adding up in another order makes of it.
        beyond
            .into_iter()
            .map(|own| self.most * (1.0 + 1e-9) + 1e-6 - (all - own))
            .collect()
    }

    /// By variable: the choices of a run as pieces.
    fn run_pieces(&self) -> Vec<Vec<Piece>> {
        let of = |(var, (first, last)): (usize, &(usize, usize))| {
            let piece = |choice| Piece {
                cost: self.cost(var, choice),
                drop: self.drops[var][choice],
                picks: vec![(var, choice)],
            };
            if self.vars[var].is_run() {
                (*first..=*last).map(piece).collect()
            } else {
                Vec::new()
            }
        };
        self.range.iter().enumerate().map(of).collect()
    }

    /// By node, the device above that something in it or beyond depends on.
    fn above(&self) -> Vec<Option<usize>> {
        let nodes = &self.shape.nodes;
        let mut above = vec![None; nodes.len()];
        // Children come after their parents, so that what they need is known before.
        for at in (0..nodes.len()).rev() {
            let node = &nodes[at];
            let own = node.runs.iter().flat_map(|run| &self.shape.held[*run]);
            let needed = own.copied().find(|device| !node.devices.contains(device));
            let below = if node.devices.is_empty() {
                node.children.iter().find_map(|child| above[*child])
            } else {
                None
            };
            above[at] = needed.or(below);
        }
        above
    }
}

impl Walk<'_, '_> {
    /// The best of a node and all beyond it, with this choice of the device above.
    fn of(&mut self, at: usize, above: usize) -> Vec<Point> {
        let key = (at, if self.above[at].is_some() { above } else { NONE });
        if let Some(points) = self.known.get(&key) {
            return points.clone();
        }
        let points = self.work(at, key.1);
        self.known.insert(key, points.clone());
        points
    }

    fn work(&mut self, at: usize, above: usize) -> Vec<Point> {
        let program = self.program;
        let node = &program.shape.nodes[at];
        let from_above = self.above[at];
        let of_children: Vec<(usize, Option<usize>)> = node
            .children
            .iter()
            .map(|child| (*child, self.above[*child]))
            .collect();
        // Ratings that ask the same of all wires differ in what they cost and lose by themselves: what is worth choosing of them is put in
        // line at once.
        let mut alike: Vec<(Asked, Vec<Piece>)> = Vec::new();
        for ratings in self.ratings(&node.devices) {
            let chosen = |device: usize| {
                let own = node.devices.iter().position(|other| *other == device);
                own.and_then(|place| ratings.get(place).copied())
                    .or_else(|| (from_above == Some(device) && above != NONE).then_some(above))
            };
            let needs = |run: usize| {
                let held = program.shape.held[run].iter();
                held.filter_map(|device| Some(program.amps(*device, chosen(*device)?)))
                    .fold(0.0, f64::max)
            };
            let skips: Option<Vec<usize>> = node
                .runs
                .iter()
                .map(|run| {
                    let (first, last) = program.range[*run];
                    let needs = needs(*run);
                    (first..=last).position(|choice| program.amps(*run, choice) >= needs)
                })
                .collect();
            let Some(skips) = skips else { continue };
            // A device of this node, or the same as for this one.
            let given = of_children.iter();
            let given = given.map(|(_, needed)| needed.and_then(chosen).unwrap_or(NONE));
            let asked = Asked {
                skips,
                given: given.collect(),
            };
            let own = || node.devices.iter().copied().zip(ratings.iter().copied());
            let piece = Piece {
                cost: own().map(|(device, choice)| program.cost(device, choice)).sum(),
                drop: own().map(|(device, choice)| program.drops[device][choice]).sum(),
                picks: own().collect(),
            };
            match alike.iter_mut().find(|(other, _)| *other == asked) {
                Some((_, pieces)) => pieces.push(piece),
                None => alike.push((asked, vec![piece])),
            }
        }
        let mut all = Vec::new();
        for (asked, pieces) in alike {
            let mut points = vec![Point {
                cost: 0.0,
                slack: node
                    .leaves
                    .iter()
                    .map(|leaf| program.budget[*leaf])
                    .fold(f64::INFINITY, f64::min),
                made: 0,
            }];
            if points.iter().any(|point| point.slack < 0.0) {
                return Vec::new();
            }
            for ((child, _), given) in of_children.iter().zip(&asked.given) {
                let beyond = self.of(*child, *given);
                points = self.made.beside(&points, &beyond);
            }
            let most = self.before[at].1;
            let keep = self.keep(at);
            if !node.devices.is_empty() {
                points = self.made.before(&points, &best_pieces(pieces), keep);
            }
            points = self.put_runs(at, points, &asked.skips, keep);
            // More than may be lost before it is of no use to anybody.
            let enough = points.partition_point(|point| point.slack < most);
            points.truncate(enough + 1);
            all = best_of(&all, &points);
        }
        all
    }

    fn keep(&self, at: usize) -> Keep {
        Keep {
            needed: self.before[at].0,
            most: self.caps[at],
            points: self.program.points,
            hopeful: self.program.hopeful,
        }
    }

    /// Puts the runs of a node in line: those of a ground rule together, the others one after the other.
    fn put_runs(&mut self, at: usize, mut points: Vec<Point>, skips: &[usize], keep: Keep) -> Vec<Point> {
        let program = self.program;
        let node = &program.shape.nodes[at];
        let skip = |run: usize| {
            let place = node.runs.iter().position(|other| *other == run);
            place.and_then(|place| skips.get(place).copied()).unwrap_or(0)
        };
        let mut ruled: Vec<usize> = Vec::new();
        for lead in &node.leads {
            let vars: Vec<usize> = program.shape.leads[*lead].vars().collect();
            let key = (*lead, vars.iter().map(|run| skip(*run)).collect::<Vec<usize>>());
            let pieces = match self.ruled.get(&key) {
                Some(pieces) => pieces.clone(),
                None => {
                    let pieces = self.together(*lead, &vars, &key.1);
                    self.ruled.insert(key, pieces.clone());
                    pieces
                }
            };
            points = self.made.before(&points, &pieces, keep);
            ruled.extend(vars);
        }
        for run in node.runs.iter().filter(|run| !ruled.contains(run)) {
            let pieces = self.runs[*run].get(skip(*run)..).unwrap_or_default();
            points = self.made.before(&points, pieces, keep);
        }
        points
    }

    /// What is worth choosing of the runs of a ground rule together.
    fn together(&self, lead: usize, vars: &[usize], skips: &[usize]) -> Vec<Piece> {
        let program = self.program;
        let own = |at: usize| {
            let skip = skips.get(at).copied().unwrap_or(0);
            vars.get(at)
                .and_then(|run| self.runs[*run].get(skip..))
                .unwrap_or_default()
        };
        let none = Piece {
            cost: 0.0,
            drop: 0.0,
            picks: Vec::new(),
        };
        let or_none = |at: usize| {
            if at < vars.len() {
                own(at)
            } else {
                std::slice::from_ref(&none)
            }
        };
        let conducts = |piece: &Piece| {
            let pick = piece.picks.first();
            pick.map_or(0.0, |(run, choice)| {
                program.vars[*run].choices[*choice].conducts()
            })
        };
        // Which they are is written down only for the few that nothing beats.
        let mut all: Vec<(f64, f64, [&Piece; 3])> = Vec::new();
        for a in or_none(0) {
            for b in or_none(1) {
                for c in or_none(2) {
                    let three = [a, b, c];
                    let holds = program.shape.leads[lead].holds(|run| {
                        let place = vars.iter().position(|other| *other == run);
                        place
                            .and_then(|place| three.get(place))
                            .map_or(0.0, |piece| conducts(piece))
                    });
                    if holds {
                        all.push((a.cost + b.cost + c.cost, a.drop + b.drop + c.drop, three));
                    }
                }
            }
        }
        all.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
        let mut least = f64::INFINITY;
        all.retain(|(_, drop, _)| {
            let keeps = *drop < least;
            least = least.min(*drop);
            keeps
        });
        let piece = |(cost, drop, three): &(f64, f64, [&Piece; 3])| Piece {
            cost: *cost,
            drop: *drop,
            picks: three
                .iter()
                .flat_map(|piece| piece.picks.iter().copied())
                .collect(),
        };
        all.iter().map(piece).collect()
    }

    /// All combinations of ratings of these devices.
    fn ratings(&self, devices: &[usize]) -> Vec<Vec<usize>> {
        let range = |device: &usize| self.program.range[*device];
        let count = devices
            .iter()
            .map(|device| range(device).1 - range(device).0 + 1)
            .fold(1_usize, usize::saturating_mul);
        let mut all = vec![Vec::new()];
        for device in devices {
            let (first, last) = range(device);
            let last = if count > MOST_COMBINED { first } else { last };
            let longer = |so_far: &Vec<usize>| -> Vec<Vec<usize>> {
                let with = |choice| so_far.iter().copied().chain([choice]).collect();
                (first..=last).map(with).collect()
            };
            all = all.iter().flat_map(longer).collect();
        }
        all
    }
}
