//! The short at the far end of every live run, quickly: which device opens, and whether the wire lives to see it.
//!
//! What drives a current into a short at a node is a voltage behind a resistance (Thévenin); both stand in the one solution that the
//! largest current behind each device is found by. So a run costs a few numbers. Most are done with by three bounds at once: the device at the slowest
//! edge of its times, at the least current that the wire could let through hot and the weakest battery give, against the wire at the largest current and without
//! losing heat. Only where these bounds overlap the run is warmed step by step, in all four cases of [`super::Faults::course`]. That warms everything;
//! this warms the run itself alone, and leaves loads and capacitors out. A test holds one against the other.

use super::device::{Device, Edge};
use super::outcome::{Certainty, Within};
use crate::heat::Heating;
use crate::network::{Network, NetworkRun, values};
use crate::solve::{SourceModel, System};
use crate::study::{DeviceRef, Protection};
use model::job::Conditions;
use model::quantity::{Amps, Celsius, Ohms, Seconds};
use model::{PartKind, RunId, Sheet};
use ordered::{OrderedMap, Sort as _};
use serde::Serialize;

/// What a short at the far end of a run does, where that is not simply to open the device that guards it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FarShort {
    /// The run.
    pub run: RunId,
    /// The devices that guard it.
    pub devices: Vec<DeviceRef>,
    /// Current through the run at first.
    pub current: Within<Amps>,
    /// When the last of the devices opens at that current; `None` where it need not, by its slowest times and the least current.
    pub opens: Option<Within<Seconds>>,
    /// When the wire is damaged at that current; `None` where it bears it for ever.
    pub lasts: Option<Within<Seconds>>,
    /// Whether the wire is damaged before the device opens.
    pub damaged: Certainty,
    /// Whether the device does not open at all, and the wire bears it.
    pub stays: Certainty,
    /// The end of the run that is shorted: 0 or 1. What feeds the short comes in at the other one.
    #[serde(skip)]
    pub at_end: usize,
    /// What drives the short, for whoever asks what another wire or device would do; then the same of a short at the other end of the run,
    /// where such is fed through it too.
    #[serde(skip)]
    drives: Vec<Drive>,
}

/// What drives a short at one end of a run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Drive {
    /// The share of the fault current that the run carries.
    share: f64,
    /// Temperature at which the run begins, in °C.
    begins: f64,
    /// Voltage in V and resistance in Ω behind the short, strongest and weakest; the run itself is at 20 °C in it.
    behind: [(f64, f64); 2],
}

impl FarShort {
    /// The most that a short where the run begins could draw, through whatever is put in there.
    #[must_use]
    pub fn at_beginning(&self, wire: &model::Wire) -> Amps {
        let Drive { share, behind, .. } = self.drives.first().copied().unwrap_or_default();
        let (voltage, resistance) = behind[0];
        Amps(voltage / (resistance - share * share * values::wire_at_20(wire)).max(1e-6))
    }

    /// The same short, were the run of the wire `to` in place of `was`, and all others of `less` ohms less.
    #[must_use]
    pub fn with(
        &self,
        (was, to): (&model::Wire, &model::Wire),
        less: Ohms,
        conditions: &Conditions,
    ) -> Prospect {
        let heat = Heating::of(to, conditions);
        let (cold, laid) = (values::wire_at_20(was), values::wire_at_20(to));
        let case = |drive: &Drive| {
            let Drive {
                share,
                begins,
                behind: [strongest, weakest],
            } = *drive;
            let saved = share * share * (cold - laid) + less.0;
            let draws = |(voltage, resistance): (f64, f64), at: f64| {
                let warmer = share * share * laid * (heat.factor(Celsius(at)) - 1.0);
                share * voltage / (resistance - saved + warmer).max(1e-6)
            };
            let (most, least) = (draws(strongest, begins), draws(weakest, heat.limit.0));
            (least, heat.until(begins, heat.limit.0, most * most))
        };
        Prospect {
            cases: self.drives.iter().map(case).collect(),
        }
    }
}

/// Bounds of a short, for whoever asks what other devices would do about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Prospect {
    /// For the short at each end: the least current through the run in A, and the soonest that it is damaged in s.
    cases: Vec<(f64, f64)>,
}

impl Prospect {
    /// Whether the short is ended before the run is damaged, were these the devices that guard it, each with its rating.
    ///
    /// By bounds alone, so that yes is certain: the devices at their slowest, at the least current that the weakest battery drives
    /// through the wire at the limit of its insulation, against the wire at the most that the strongest drives, without losing heat.
    /// Several devices carry an equal part each at the least.
    #[must_use]
    pub fn is_cleared_by(&self, devices: &[(&PartKind, Amps)]) -> bool {
        let ends = |(least, lasts): &(f64, f64)| {
            #[expect(clippy::cast_precision_loss, reason = "a few devices")]
            let part = least / devices.len().max(1) as f64;
            let opens = devices.iter().map(|(kind, rating)| {
                let device = Device::of(kind, *rating);
                device.map_or(f64::INFINITY, |it| it.opens_after(part, Edge::Slowest))
            });
            opens.fold(0.0, f64::max) < *lasts
        };
        !devices.is_empty() && self.cases.iter().all(ends)
    }
}

/// A network with every source at its strongest, solved, and what it is seen through.
pub(crate) struct Solved<'a> {
    pub(crate) net: &'a Network,
    pub(crate) sheet: &'a Sheet,
    pub(crate) system: &'a System,
    /// By node: the voltage there in V for 1 A that enters there; by branch, at either node for 1 A at the other.
    pub(crate) transfer: (&'a [f64], &'a [f64]),
    /// Node that shorts go to: the body, or a negative pole.
    pub(crate) to: &'a dyn Fn(usize) -> Option<usize>,
}

/// A short at one end of a run.
struct Short<'a> {
    at_end: usize,
    heat: Heating,
    /// Resistance of the wire alone at 20 °C, in Ω.
    cold: f64,
    /// Temperature at which it begins, in °C.
    begins: f64,
    enders: Enders<'a>,
    /// The share of the fault current that the run carries.
    share: f64,
    /// Voltage in V and resistance in Ω behind the short, strongest and weakest.
    behind: [(f64, f64); 2],
}

/// Change of temperature in a step of the close look, over the temperature above −234.5 °C.
const CLOSE_STEP: f64 = 0.08;

/// How one case ends.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Opens,
    Damaged,
    Stays,
}

/// The runs whose short is not simply cleared. `temperatures` are those of the conductors as they work, in °C; `before` gives the devices through
/// which a device is fed.
#[allow(clippy::too_many_arguments)]
pub(crate) fn far_shorts(
    it: &Solved<'_>,
    devices: &[Device],
    protection: &OrderedMap<RunId, Protection>,
    guarded: &[Vec<RunId>],
    temperatures: &[f64],
    conditions: &Conditions,
    models: &[SourceModel],
    before: &dyn Fn(usize) -> Vec<usize>,
) -> Vec<FarShort> {
    let mut out = Vec::new();
    let weakest = weakest_battery(it, models);
    let Some((emf, more)) = weakest else { return out };
    // By run, in the order of runs, as protection and runs are: none has to be looked up.
    let mut guarding: Vec<(RunId, usize)> = Vec::new();
    for (device, runs) in guarded.iter().enumerate() {
        guarding.extend(runs.iter().map(|run| (*run, device)));
    }
    guarding.order();
    let (mut guarding, mut told) = (guarding.into_iter().peekable(), protection.iter().peekable());
    let mut guards: Vec<usize> = Vec::new();
    for ((run, (id, wire)), begins) in it.net.runs.iter().zip(&it.sheet.runs).zip(temperatures) {
        guards.clear();
        while let Some((_, device)) = guarding.next_if(|(run, _)| run <= id) {
            guards.push(device);
        }
        let mut from = &[][..];
        while let Some((of, protection)) = told.next_if(|(run, _)| *run <= id) {
            if of == id {
                from = &protection.from;
            }
        }
        let known = |wire: &model::Wire| {
            !(wire.size.is_unknown() || wire.length.is_unknown() || wire.insulation.is_unknown())
        };
        // What is not guarded from each of its sources is another finding, and has no device to wait for.
        let is_guarded = from.iter().all(|from| from.protected && !from.guards.is_empty());
        if guards.is_empty() || !is_guarded || run.line || !run.whole || !known(&wire.wire) {
            continue;
        }
        for end in [0, 1] {
            let Some(found) = look(it, run, end, emf, more) else {
                continue;
            };
            let ohms = it
                .net
                .branches
                .get(run.branch)
                .map_or(0.0, |branch| branch.resistance);
            if is_cleared(&found, devices, &guards, &wire.wire, ohms) {
                continue;
            }
            let short = Short {
                at_end: end,
                heat: Heating::of(&wire.wire, conditions),
                cold: values::wire_at_20(&wire.wire),
                begins: *begins,
                enders: enders(it, devices, &guards, &found, before),
                share: found.share,
                behind: found.behind,
            };
            if short.enders.devices.is_empty() {
                continue;
            }
            let all = from.iter().flat_map(|from| from.guards.iter().cloned());
            if let Some(mut told) = short.tell(*id, all) {
                let other = look(it, run, 1 - end, emf, more);
                told.drives.extend(other.map(|found| Drive {
                    share: found.share,
                    begins: *begins,
                    behind: found.behind,
                }));
                out.push(told);
                break;
            }
        }
    }
    out
}

/// Most devices that are looked at for one run.
const MOST_IN_LINE: usize = 8;

/// The devices that end the current through a run, each with the share of the fault current that it carries.
#[derive(Default)]
struct Enders<'a> {
    devices: Vec<(&'a Device, f64)>,
    /// Whether all of them have to open: none carries all that the run carries. Else the first does.
    all: bool,
}

impl Enders<'_> {
    /// The time in which they end the current, of the time in which each of them would open.
    fn time(&self, of_each: impl Iterator<Item = f64>) -> f64 {
        if self.all {
            of_each.fold(0.0, f64::max)
        } else {
            of_each.fold(f64::INFINITY, f64::min)
        }
    }
}

/// Those in line with the run carry what it carries. A single guard does, as all that comes to the run comes through it, and so does what
/// feeds that guard alone, and so on; of several guards it has to be found out.
fn enders<'a>(
    it: &Solved<'_>,
    devices: &'a [Device],
    guards: &[usize],
    found: &Found,
    before: &dyn Fn(usize) -> Vec<usize>,
) -> Enders<'a> {
    if let [guard] = guards {
        let mut line = vec![*guard];
        while let Some(&last) = line.last().filter(|_| line.len() < MOST_IN_LINE) {
            let mut feeding = before(last);
            feeding.dedup();
            match feeding[..] {
                [one] if !line.contains(&one) => line.push(one),
                _ => break,
            }
        }
        let works = line
            .iter()
            .filter_map(|device| devices.get(*device))
            .filter(|device| device.works);
        return Enders {
            devices: works.map(|device| (device, found.share)).collect(),
            all: false,
        };
    }
    let short = it.system.half_form(&[(found.node, 1.0), (found.to, -1.0)]);
    let carries = |device: usize| {
        let at = it.net.devices.get(device)?.branch;
        let branch = it.net.branches.get(at)?;
        let [a, b] = branch.nodes;
        let device = it.system.half_form(&[(a, 1.0), (b, -1.0)]);
        let across = it.system.whole_form(&device, &short);
        Some((across / branch.resistance).abs().min(1.0))
    };
    let with_share = |device: usize| {
        let it = devices.get(device).filter(|device| device.works)?;
        Some((it, carries(device).filter(|share| *share > 0.02)?))
    };
    let in_line = |share: f64| (share - found.share).abs() < 0.02 * found.share + 0.002;
    let mut looked: Vec<(&Device, f64)> = guards.iter().copied().filter_map(with_share).collect();
    if looked.len() > MOST_IN_LINE {
        // Those that carry most of it; of some that carry the same, as wires in parallel do, the first.
        looked.order_by(|(_, a), (_, b)| b.total_cmp(a));
        looked.truncate(MOST_IN_LINE);
    }
    let line: Vec<(&Device, f64)> = looked
        .iter()
        .copied()
        .filter(|(_, share)| in_line(*share))
        .collect();
    if line.is_empty() {
        return Enders {
            devices: looked,
            all: true,
        };
    }
    Enders {
        devices: line,
        all: false,
    }
}

/// The weakest battery: the least voltage of any, in V, and by how many Ω more any may hold back than at its strongest.
fn weakest_battery(it: &Solved<'_>, models: &[SourceModel]) -> Option<(f64, f64)> {
    let batteries = models.iter().filter_map(|model| match model {
        SourceModel::Battery(battery) => Some((battery.emf, battery.most - battery.least)),
        _ => None,
    });
    let weakest = batteries.reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
    weakest.filter(|_| !it.net.devices.is_empty())
}

/// What is behind a short at one end of a run.
struct Found {
    /// The node that is shorted, and the one that it is shorted to.
    node: usize,
    to: usize,
    /// The share of the fault current that the run carries.
    share: f64,
    /// Voltage in V and resistance in Ω behind the short, strongest and weakest; the run itself is at 20 °C in it.
    behind: [(f64, f64); 2],
}

/// What is behind a short at this end of a run; nothing where no source feeds it through the run. `emf` and `more` are what
/// [`weakest_battery`] found.
fn look(it: &Solved<'_>, run: &NetworkRun, end: usize, emf: f64, more: f64) -> Option<Found> {
    let branch = it.net.branches.get(run.branch)?;
    let [a, b] = if end == 1 {
        branch.nodes
    } else {
        [branch.nodes[1], branch.nodes[0]]
    };
    let to = (it.to)(b)?;
    if a == b || b == to || !it.system.is_driven(b) {
        return None;
    }
    let (own, other) = it.transfer;
    let (inner, across) = if it.system.is_reference(to) {
        (own.get(b)? - own.get(to)?, other.get(run.branch)? - own.get(b)?)
    } else {
        let short = [(b, 1.0), (to, -1.0)];
        (
            it.system.form(&short, &short),
            it.system.form(&[(a, 1.0), (b, -1.0)], &short),
        )
    };
    let volts = it.system.voltages();
    let voltage = volts.get(b)? - volts.get(to)?;
    // Written so that a number that is not one does not pass.
    if !(inner > 0.0 && voltage > 0.5) {
        return None;
    }
    let share = -across / branch.resistance;
    // A run through which nothing of it comes has its far end elsewhere.
    (share > 0.02).then_some(Found {
        node: b,
        to,
        share: share.min(1.0),
        behind: [(voltage, inner), (emf.min(voltage), inner + more)],
    })
}

/// By bounds alone: whether the current ends, devices at their slowest, at the least current, before the wire could be damaged at the
/// largest. Of several guards one carries its part of what the run carries at the least; which is not asked.
fn is_cleared(found: &Found, devices: &[Device], guards: &[usize], wire: &model::Wire, ohms: f64) -> bool {
    let metal = reference::materials::data(values::material(wire));
    let rating = wire.insulation.or(Celsius(105.0));
    let limit = reference::insulation::short_limit(rating).0;
    let warmer = 1.0 + metal.coefficient * (limit - 20.0);
    let share = found.share;
    let [(strong, inner), (weak, outer)] = found.behind;
    // With its endings, which do not warm as it does: a little more than it can hold back.
    let least = weak / (outer + share * share * ohms * (warmer - 1.0));
    #[expect(clippy::cast_precision_loss, reason = "a few devices")]
    let part = least * share / guards.len() as f64;
    // From the rating, as the adiabatic law has it: I²t = k²S².
    let per_metre = match wire.stated_resistance.value() {
        Some(stated) => stated.0,
        None => metal.resistivity / values::size(wire).area().0.max(0.01),
    };
    let heat = metal.volumetric_heat * values::size(wire).area().0.max(0.01) * 1000.0;
    let begins = 1.0 + metal.coefficient * (rating.0.min(limit) - 20.0);
    // The logarithm of a quotient, from below.
    let log = 2.0 * (warmer - begins) / (warmer + begins);
    let bears = heat / per_metre * log / metal.coefficient;
    let most = share * strong / inner;
    // By the gate below at once, as a rule; else by the curve.
    let guards = || guards.iter().filter_map(|device| devices.get(*device));
    let opened_by = guards().map(|device| device.opened_by(part)).fold(0.0, f64::max);
    if opened_by * most * most < bears {
        return true;
    }
    let opens = guards().map(|device| device.opens_after(part, Edge::Slowest));
    opens.fold(0.0, f64::max) * most * most < bears
}

impl Short<'_> {
    /// The fault current in A while the run has this temperature, with sources at their strongest (case 0) or weakest (1).
    fn fault(&self, case: usize, temperature: f64) -> f64 {
        let (voltage, resistance) = self.behind.get(case).copied().unwrap_or((0.0, 1.0));
        let more = self.cold * (self.heat.factor(Celsius(temperature)) - 1.0);
        voltage / (resistance + self.share * self.share * more).max(1e-6)
    }

    /// Warms the run step by step until something ends it.
    fn end(&self, case: usize, edge: Edge) -> End {
        // The current falls as the wire warms: between what it is at first and what it is at the limit.
        let [most, least] = [self.begins, self.heat.limit.0].map(|at| self.fault(case, at));
        let opens = |fault: f64| {
            let devices = self.enders.devices.iter();
            self.enders
                .time(devices.map(|(device, share)| device.opens_after(share * fault, edge)))
        };
        let lasts = |fault: f64| {
            let current = self.share * fault;
            self.heat.until(self.begins, self.heat.limit.0, current * current)
        };
        if opens(least) < lasts(most) {
            return End::Opens;
        }
        if lasts(least) < opens(most) {
            return End::Damaged;
        }
        let mut temperature = self.begins;
        let devices = &self.enders.devices;
        let mut ages = [0.0_f64; MOST_IN_LINE];
        let mut paces = [0.0_f64; MOST_IN_LINE];
        for _ in 0..200 {
            let fault = self.fault(case, temperature);
            let squared = self.share * self.share * fault * fault;
            if temperature >= self.heat.limit.0 - 0.05 {
                return End::Damaged;
            }
            for (pace, (device, share)) in paces.iter_mut().zip(devices) {
                *pace = 1.0 / device.opens_after(share * fault, edge).max(1e-6);
            }
            let left = ages.iter().zip(&paces).take(devices.len()).map(|(age, pace)| {
                if *age >= 0.999 {
                    0.0
                } else if *pace > 0.0 {
                    (1.0 - age) / pace
                } else {
                    f64::INFINITY
                }
            });
            let opens = self.enders.time(left);
            if opens <= 0.0 {
                return End::Opens;
            }
            let unrest = self.heat.unrest(temperature, squared);
            let rests = unrest < 0.3;
            if opens.is_infinite() && rests {
                return End::Stays;
            }
            let pace = self.heat.pace(temperature, squared).abs().max(1e-9);
            let mut step = opens.min(self.heat.until(temperature, self.heat.limit.0, squared));
            if !rests {
                step = step
                    .min(CLOSE_STEP * (temperature + 234.5) / pace)
                    .min(0.7 * self.heat.settles_in());
            }
            if !step.is_finite() {
                return End::Stays;
            }
            let step = step.max(1e-6);
            let guess = self.heat.after_step(temperature, squared, step);
            let then = self.share * self.fault(case, guess);
            temperature = self
                .heat
                .after_step(temperature, 0.5 * (squared + then * then), step);
            for (age, pace) in ages.iter_mut().zip(&paces) {
                *age += pace * step;
            }
        }
        End::Stays
    }

    /// What it does in all four cases; nothing where it is cleared in each.
    fn tell(&self, run: RunId, devices: impl Iterator<Item = DeviceRef>) -> Option<FarShort> {
        // What is damaged though its devices open as soon as they may is damaged when they open later.
        let cases = [0, 1].map(|case| {
            let fastest = self.end(case, Edge::Fastest);
            let told = self.enders.devices.iter().all(|(device, _)| device.is_told());
            let slowest = if told || fastest == End::Damaged {
                fastest
            } else {
                self.end(case, Edge::Slowest)
            };
            [slowest, fastest]
        });
        let count = |end: End| cases.iter().flatten().filter(|it| **it == end).count();
        let mut all: Vec<DeviceRef> = Vec::new();
        for device in devices {
            if !all.contains(&device) {
                all.push(device);
            }
        }
        // Where several devices share the current, each takes over what those carried that have opened: that is not followed here, so
        // that nothing is certain.
        let most = if all.len() > 1 {
            Certainty::Possible
        } else {
            Certainty::Certain
        };
        let [damaged, stays] = [End::Damaged, End::Stays].map(|end| Certainty::of(count(end), 4).min(most));
        if damaged == Certainty::No && stays == Certainty::No {
            return None;
        }
        let faults = [0, 1].map(|case| self.fault(case, self.begins));
        let opens = |edge: Edge, fault: f64| {
            let devices = self.enders.devices.iter();
            self.enders
                .time(devices.map(|(device, share)| device.opens_after(share * fault, edge)))
        };
        let within = |least: f64, most: f64| {
            most.is_finite().then_some(Within {
                least: Seconds(least),
                most: Seconds(most),
            })
        };
        let lasts = faults.map(|fault| {
            let squared = self.share * self.share * fault * fault;
            self.heat.until(self.begins, self.heat.limit.0, squared)
        });
        Some(FarShort {
            run,
            devices: all,
            current: Within {
                least: Amps(self.share * faults[1]),
                most: Amps(self.share * faults[0]),
            },
            opens: within(opens(Edge::Fastest, faults[0]), opens(Edge::Slowest, faults[1])),
            lasts: within(lasts[0], lasts[1]),
            damaged,
            stays,
            at_end: self.at_end,
            drives: vec![Drive {
                share: self.share,
                begins: self.begins,
                behind: self.behind,
            }],
        })
    }
}

/// The band of operating times of a device at a current, from the fastest to the slowest; infinite where it holds. `None` where the
/// sheet has no such device.
#[must_use]
pub fn operating_band(
    sheet: &Sheet,
    device: &DeviceRef,
    current: Amps,
) -> Option<reference::fuses::TimeBand> {
    let part = sheet.parts.get(&device.part)?;
    operating_band_of(&part.is, rating(&part.is, device)?, current)
}

/// The same of a device of this part that had another rating.
#[must_use]
pub fn operating_band_of(kind: &PartKind, rating: Amps, current: Amps) -> Option<reference::fuses::TimeBand> {
    Device::of(kind, rating).map(|it| it.band(current.0))
}

/// The rating of a device.
fn rating(kind: &PartKind, device: &DeviceRef) -> Option<Amps> {
    match kind {
        PartKind::Fuse(fuse) => fuse.rating.value(),
        PartKind::Breaker(breaker) => breaker.rating.value(),
        PartKind::Block(block) => {
            let output = device.output.as_ref()?.as_str().strip_prefix("out")?;
            let at = output.parse::<usize>().ok()?.checked_sub(1)?;
            block.fuses.0.get(at).copied().flatten()
        }
        PartKind::Vehicle(vehicle) => match device.output.as_ref()?.as_str() {
            "+" => vehicle.main_fuse.value(),
            "30" => vehicle.permanent_fuse.value(),
            "15" => vehicle.switched_fuse.value(),
            _ => None,
        },
        _ => None,
    }
}
