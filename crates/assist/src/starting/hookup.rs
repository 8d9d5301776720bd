//! Which output drives which speakers, and how their coils are joined: the choice that gives most power within what each
//! output may drive and each speaker bears.
//!
//! Coils that are alike and to get equal power can only be joined as `series` of them one after the other in each of
//! `parallel` rows, or to the same load: with current *i* and voltage *i·Z* in every coil, an arrangement at *s·i·Z* volts and
//! *p·i* amperes takes *s·p* times the power of one, so *s·p* is the number of coils, and the load is *Z·s/p*.
//!
//! Where a way gives more than the coils bear, an amplifier's gain can be set lower, as installers do: to no less than a quarter of
//! what it could give, since below that the smallest turn of a knob matters more than the music. It is taken where every other way
//! gives much less, or none is left.

use super::wish::Where;
use circuit::speakers::stated_power;
use model::quantity::{Ohms, Volts, Watts};
use model::written::StatedPower;

/// How coils are joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Joined {
    /// Coils one after the other in each row.
    pub series: u8,
    /// Rows side by side.
    pub parallel: u8,
}

impl Joined {
    /// The load of so joined coils.
    #[must_use]
    pub fn load(self, coil: Ohms) -> Ohms {
        coil * f64::from(self.series) / f64::from(self.parallel.max(1))
    }
    /// All ways to join so many coils with equal power in each, least load first.
    pub fn all(coils: u8) -> impl Iterator<Item = Self> {
        (1..=coils)
            .filter(move |series| coils.is_multiple_of(*series))
            .map(move |series| Self {
                series,
                parallel: coils / series,
            })
    }
}

/// What an output states: power at loads, and the least it may drive.
#[derive(Clone, Debug, PartialEq)]
pub struct Output {
    /// Power stated at each load.
    pub power: Vec<StatedPower>,
    /// The least load.
    pub minimum: Ohms,
}

impl Output {
    /// Power into a load; nothing where it may not drive it.
    #[must_use]
    pub fn into_load(&self, load: Ohms) -> Option<Watts> {
        (load.0 >= self.minimum.0 * (1.0 - 1e-9)).then_some(())?;
        stated_power(&self.power, load)
    }
}

/// Speakers of one kind that one output is to drive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drivers {
    /// Coils, all of them together.
    pub coils: u8,
    /// Impedance of one coil.
    pub impedance: Ohms,
    /// Power that one coil bears; `None` where that was not told.
    pub bears: Option<Watts>,
}

/// What an output gives to so joined drivers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Driven {
    /// How the coils are joined.
    pub joined: Joined,
    /// Their load.
    pub load: Ohms,
    /// Power into it, as the gain is set.
    pub power: Watts,
    /// What the output could give into it.
    pub could: Watts,
}

impl Driven {
    /// Whether the gain keeps power from the drivers that they would not bear.
    #[must_use]
    pub fn is_turned_down(&self) -> bool {
        self.power.0 < self.could.0 * (1.0 - 1e-9)
    }
    /// Volts at the output at that power.
    #[must_use]
    pub fn volts(&self) -> Volts {
        Volts((self.power.0 * self.load.0).sqrt())
    }
}

/// How much more an output has to give, turned down, than another way that need not be: gains get turned up again (our own
/// judgement, about 2 dB; 1 dB to 3 dB considered).
const FOR_TURNING_DOWN: f64 = 1.5;

impl Driven {
    /// What it is worth against others, in watts.
    fn worth(&self) -> f64 {
        if self.is_turned_down() {
            self.power.0 / FOR_TURNING_DOWN
        } else {
            self.power.0
        }
    }
}

/// The least share of its power that an output is turned down to (our own judgement; a tenth to a half considered).
const LEAST_SHARE: f64 = 0.25;

/// The way to join drivers on an output that gives most power, without more than a coil bears; of equal ones the highest
/// load, which is the kinder one. `None` where there is no such way.
#[must_use]
pub fn join(output: &Output, drivers: &Drivers) -> Option<Driven> {
    let mut best: Option<Driven> = None;
    for joined in Joined::all(drivers.coils) {
        let load = joined.load(drivers.impedance);
        let Some(power) = output.into_load(load) else {
            continue;
        };
        let each = power.0 / f64::from(drivers.coils.max(1));
        if drivers.bears.is_some_and(|bears| each > bears.0 * (1.0 + 1e-9)) {
            continue;
        }
        if best.is_none_or(|best| power.0 >= best.power.0 * (1.0 - 1e-9)) {
            let could = power;
            best = Some(Driven {
                joined,
                load,
                power,
                could,
            });
        }
    }
    best
}

/// The way to join drivers that all bear less than any way gives them, with the gain set to what they bear: the one that gives
/// least, of equal ones the highest load. `None` where even that would have to be turned down too far.
#[must_use]
pub fn join_turned_down(output: &Output, drivers: &Drivers) -> Option<Driven> {
    let power = drivers.bears? * f64::from(drivers.coils.max(1));
    let ways = Joined::all(drivers.coils).filter_map(|joined| {
        let load = joined.load(drivers.impedance);
        let could = output.into_load(load)?;
        (could.0 > power.0 && power.0 >= could.0 * LEAST_SHARE).then_some(Driven {
            joined,
            load,
            power,
            could,
        })
    });
    ways.reduce(|best, it| {
        if it.could.0 <= best.could.0 * (1.0 + 1e-9) {
            it
        } else {
            best
        }
    })
}

/// The way to join drivers on the output of an amplifier, whose gain can be set.
#[must_use]
pub fn join_by_gain(output: &Output, drivers: &Drivers) -> Option<Driven> {
    match (join(output, drivers), join_turned_down(output, drivers)) {
        (Some(plain), Some(down)) if down.worth() > plain.worth() => Some(down),
        (plain, down) => plain.or(down),
    }
}

/// Two channels that stand side by side in a section, or one that is left over.
#[derive(Clone, Debug, PartialEq)]
pub struct Unit {
    /// The amplifier, from 0.
    pub amplifier: usize,
    /// Its section, from 0.
    pub section: usize,
    /// Its first channel, counted through all sections from 1.
    pub channel: u8,
    /// Whether a second channel stands beside it.
    pub paired: bool,
    /// What one channel states.
    pub alone: Output,
    /// What both state, bridged.
    pub bridged: Option<Output>,
}

/// What of the sound drivers get.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// All of it.
    #[default]
    Whole,
    /// The low part, of a woofer with an output of its own.
    Low,
    /// The part between.
    Middle,
    /// The high part, of a tweeter with an output of its own.
    High,
}

/// A kind of speakers that wants to be driven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Where it plays.
    pub at: Where,
    /// What of the sound it gets.
    pub way: Way,
    /// Speakers, left and right together.
    pub count: u8,
    /// Coils of each.
    pub coils: u8,
    /// Impedance of a coil.
    pub impedance: Ohms,
    /// Power that each speaker bears.
    pub bears: Option<Watts>,
    /// Whether only bridged channels are to drive it.
    pub bridged: bool,
}

impl Wanted {
    /// So many of its speakers, on one output.
    fn drivers(&self, speakers: u8) -> Drivers {
        Drivers {
            coils: speakers.saturating_mul(self.coils),
            impedance: self.impedance,
            bears: self.bears.map(|it| it / f64::from(self.coils.max(1))),
        }
    }
    /// Speakers on each side.
    fn each_side(&self) -> u8 {
        self.count / 2
    }
}

/// What an output is used for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Use {
    /// The unit, by its place; `None` for the head unit's own outputs.
    pub unit: Option<usize>,
    /// The channel, counted through the amplifier; of the head unit 1 to 4.
    pub channel: u8,
    /// Whether the next channel is bridged with it.
    pub bridged: bool,
    /// What it drives.
    pub plays: Where,
    /// What of the sound that gets.
    pub way: Way,
    /// Which of its speakers: the first, and how many.
    pub speakers: (u8, u8),
    /// The one coil of that speaker, from 0, where it drives no more.
    pub coil: Option<u8>,
    /// Another kind of speakers on the same output, in parallel or in series with the first.
    pub also: Option<(Where, bool)>,
    /// What it gives them.
    pub driven: Driven,
}

/// Everything driven.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HookUp {
    /// Each output that is used.
    pub uses: Vec<Use>,
}

impl HookUp {
    /// Power of all outputs together.
    #[must_use]
    pub fn power(&self) -> Watts {
        self.uses.iter().map(|it| it.driven.power).sum()
    }
    /// Uses of a unit.
    pub fn of_unit(&self, unit: usize) -> impl Iterator<Item = &Use> {
        self.uses.iter().filter(move |it| it.unit == Some(unit))
    }
}

/// How good a hook-up is; more is better, the first figure first: amplifiers with something to drive, speakers with an output
/// of their own, kinds that an amplifier drives rather than the head unit, power (less where an output is turned down), and
/// outputs left free.
type Worth = (usize, usize, usize, u64, usize);

/// The best hook-up; `None` where something cannot be driven. `head` are the head unit's own speaker outputs, if any.
#[must_use]
pub fn choose(units: &[Unit], head: Option<(&Output, u8)>, wanted: &[Wanted]) -> Option<HookUp> {
    let mut search = Search {
        units,
        head,
        wanted,
        best: None,
    };
    search.go_on(0, &mut vec![false; units.len()], &mut HookUp::default());
    search.best.map(|(_, best)| best)
}

struct Search<'a> {
    units: &'a [Unit],
    head: Option<(&'a Output, u8)>,
    wanted: &'a [Wanted],
    best: Option<(Worth, HookUp)>,
}

impl Search<'_> {
    fn worth(&self, it: &HookUp) -> Worth {
        let mut amplifiers: Vec<usize> = it
            .uses
            .iter()
            .filter_map(|it| Some(self.units.get(it.unit?)?.amplifier))
            .collect();
        amplifiers.dedup();
        let amplifiers: ordered::OrderedSet<usize> = amplifiers.into_iter().collect();
        let shared = it.uses.iter().filter(|it| it.also.is_some()).count();
        let on_head = it.uses.iter().filter(|it| it.unit.is_none()).count();
        // Tenths of a watt, so that rounding does not decide.
        let power = (it.uses.iter().map(|it| it.driven.worth()).sum::<f64>() * 10.0).round() as u64;
        let far = usize::MAX / 2;
        (
            amplifiers.len(),
            far - shared,
            far - on_head,
            power,
            far - it.uses.len(),
        )
    }

    /// Drives the kind of this number and all after it.
    fn go_on(&mut self, number: usize, taken: &mut Vec<bool>, so_far: &mut HookUp) {
        let Some(wanted) = self.wanted.get(number).copied() else {
            let worth = self.worth(so_far);
            if self.best.as_ref().is_none_or(|(best, _)| worth > *best) {
                self.best = Some((worth, so_far.clone()));
            }
            return;
        };
        if so_far
            .uses
            .iter()
            .any(|it| it.also.is_some_and(|(at, _)| at == wanted.at))
        {
            self.go_on(number + 1, taken, so_far);
            return;
        }
        for (units, uses) in self.ways(&wanted, taken) {
            let before = so_far.uses.len();
            so_far.uses.extend(uses);
            for unit in &units {
                if let Some(it) = taken.get_mut(*unit) {
                    *it = true;
                }
            }
            self.go_on(number + 1, taken, so_far);
            so_far.uses.truncate(before);
            for unit in &units {
                if let Some(it) = taken.get_mut(*unit) {
                    *it = false;
                }
            }
        }
    }

    /// All ways to drive one kind with the units that are free.
    fn ways(&self, wanted: &Wanted, taken: &[bool]) -> Vec<(Vec<usize>, Vec<Use>)> {
        let free: Vec<usize> = (0..self.units.len())
            .filter(|at| taken.get(*at) == Some(&false))
            .collect();
        let mut ways = Vec::new();
        if wanted.at.is_stereo() {
            for unit in &free {
                ways.extend(self.stereo(wanted, *unit).map(|uses| (vec![*unit], uses)));
                for other in self
                    .wanted
                    .iter()
                    .filter(|it| it.at.is_stereo() && it.at > wanted.at && it.way == wanted.way)
                {
                    for series in [false, true] {
                        let both = self.both(wanted, other, *unit, series);
                        ways.extend(both.map(|uses| (vec![*unit], uses)));
                    }
                }
            }
            ways.extend(self.by_head(wanted).map(|uses| (Vec::new(), uses)));
        } else {
            // Every set of free units, each used bridged, by one channel or by both.
            let mut sets: Vec<Vec<(usize, u8)>> = vec![Vec::new()];
            for unit in &free {
                let Some(it) = self.units.get(*unit) else { continue };
                let mut kinds = if wanted.bridged { Vec::new() } else { vec![1_u8] };
                if it.paired && !wanted.bridged {
                    kinds.push(2);
                }
                if it.bridged.is_some() {
                    kinds.push(3);
                }
                let more: Vec<Vec<(usize, u8)>> = sets
                    .iter()
                    .filter(|set| wanted.at == Where::Bass || set.is_empty())
                    .flat_map(|set| {
                        kinds.iter().map(|kind| {
                            let mut set = set.clone();
                            set.push((*unit, *kind));
                            set
                        })
                    })
                    .collect();
                sets.extend(more);
            }
            for set in sets.into_iter().filter(|set| !set.is_empty()) {
                if let Some(uses) = self.single(wanted, &set) {
                    ways.push((set.iter().map(|(unit, _)| *unit).collect(), uses));
                }
            }
        }
        ways
    }

    /// Left and right on the two channels of a unit.
    fn stereo(&self, wanted: &Wanted, unit: usize) -> Option<Vec<Use>> {
        let it = self.units.get(unit).filter(|it| it.paired)?;
        let each = wanted.each_side();
        let driven = join_by_gain(&it.alone, &wanted.drivers(each))?;
        Some(sides(Some(unit), it.channel, wanted, each, None, driven))
    }

    /// Two kinds on the two channels of a unit, one speaker of each kind on each channel.
    fn both(&self, wanted: &Wanted, other: &Wanted, unit: usize, series: bool) -> Option<Vec<Use>> {
        let it = self.units.get(unit).filter(|it| it.paired)?;
        let single = |it: &Wanted| it.each_side() == 1 && it.coils == 1 && it.way == Way::Whole;
        if !single(wanted) || !single(other) {
            return None;
        }
        let (a, b) = (wanted.impedance.0, other.impedance.0);
        let load = Ohms(if series { a + b } else { a * b / (a + b) });
        let could = it.alone.into_load(load)?;
        // The lower impedance takes more of the power in parallel, the higher in series.
        let share = if series { a / (a + b) } else { b / (a + b) };
        let most = |it: &Wanted, share: f64| {
            it.bears
                .map_or(could, |bears| (bears / share.max(1e-9)).min(could))
        };
        let power = most(wanted, share).min(most(other, 1.0 - share));
        if power.0 < could.0 * LEAST_SHARE {
            return None;
        }
        let joined = Joined {
            series: if series { 2 } else { 1 },
            parallel: if series { 1 } else { 2 },
        };
        let driven = Driven {
            joined,
            load,
            power,
            could,
        };
        Some(sides(
            Some(unit),
            it.channel,
            wanted,
            1,
            Some((other.at, series)),
            driven,
        ))
    }

    /// Left and right on the head unit's own outputs.
    fn by_head(&self, wanted: &Wanted) -> Option<Vec<Use>> {
        let (output, outputs) = self.head?;
        let channel = if wanted.at == Where::Front { 1 } else { 3 };
        (outputs > channel && wanted.way == Way::Whole).then_some(())?;
        let each = wanted.each_side();
        let driven = join(output, &wanted.drivers(each))?;
        Some(sides(None, channel, wanted, each, None, driven))
    }

    /// One signal on these units, each by one channel (1), by both (2) or bridged (3); the speakers shared out evenly.
    fn single(&self, wanted: &Wanted, set: &[(usize, u8)]) -> Option<Vec<Use>> {
        let mut outputs: Vec<(usize, u8, bool, &Output)> = Vec::new();
        for (unit, kind) in set {
            let it = self.units.get(*unit)?;
            match kind {
                3 => outputs.push((*unit, it.channel, true, it.bridged.as_ref()?)),
                2 => outputs.extend([
                    (*unit, it.channel, false, &it.alone),
                    (*unit, it.channel + 1, false, &it.alone),
                ]),
                _ => outputs.push((*unit, it.channel, false, &it.alone)),
            }
        }
        let shares = u8::try_from(outputs.len()).ok()?;
        let whole = wanted.count.is_multiple_of(shares);
        // A coil for each output, where the outputs are alike.
        let by_coil = wanted.count == 1 && wanted.coils == shares && shares > 1;
        let alike = outputs
            .windows(2)
            .all(|pair| matches!(pair, [a, b] if a.3 == b.3));
        if !(whole || by_coil && alike) {
            return None;
        }
        let each = wanted.count / shares;
        let mut uses = Vec::new();
        for (number, (unit, channel, bridged, output)) in (0_u8..).zip(outputs) {
            let drivers = if by_coil {
                Drivers {
                    coils: 1,
                    ..wanted.drivers(1)
                }
            } else {
                wanted.drivers(each)
            };
            uses.push(Use {
                unit: Some(unit),
                channel,
                bridged,
                plays: wanted.at,
                way: wanted.way,
                speakers: if by_coil { (0, 1) } else { (number * each, each) },
                coil: by_coil.then_some(number),
                also: None,
                driven: join_by_gain(output, &drivers)?,
            });
        }
        Some(uses)
    }
}

/// The uses of two channels, left first.
fn sides(
    unit: Option<usize>,
    channel: u8,
    wanted: &Wanted,
    each: u8,
    also: Option<(Where, bool)>,
    driven: Driven,
) -> Vec<Use> {
    (0..2)
        .map(|side| Use {
            unit,
            channel: channel + side,
            bridged: false,
            plays: wanted.at,
            way: wanted.way,
            speakers: (side * each, each),
            coil: None,
            also,
            driven,
        })
        .collect()
}
