//! The things that may be chosen: for each run the sizes that could be laid in its place, for each device the ratings that could
//! be put in, each with what it costs, what it bears and what it resists; and what is held fast, and why.

use super::{Ask, By, Held, Series};
use checks::Asks;
use circuit::{Conductor, DeviceRef, Purpose, Study, device_resistance};
use model::conductor::{FittedBy, Material, Size};
use model::handling::Fate;
use model::quantity::{Amps, SquareMm};
use model::{Fact, PartKind, Run, RunId, Settings, Sheet};

/// A size that could be laid, or a rating that could be put in.
#[derive(Clone, Debug)]
pub(super) struct Choice {
    pub(super) is: Is,
    /// What it costs: metal in mm²·m, or hundredths of the currency.
    pub(super) cost: f64,
}

/// What is chosen.
#[derive(Clone, Debug)]
pub(super) enum Is {
    /// A run with this wire, which may be the wire that it has.
    Wire {
        run: Box<Run>,
        size: Size,
        conductor: Conductor,
        /// Steady current that it bears; nothing where that cannot be told.
        bears: f64,
        /// What it conducts per metre at 20 °C, in S·m.
        conducts: f64,
    },
    /// A device of this rating, in A, with this resistance, in Ω.
    Rating { amps: f64, ohms: f64 },
}

impl Choice {
    /// What it resists at a steady current, in ohms.
    pub(super) fn ohms(&self, steady: f64) -> f64 {
        match &self.is {
            Is::Wire { conductor, .. } => conductor.resistance(Amps(steady)).0,
            Is::Rating { ohms, .. } => *ohms,
        }
    }
    /// What a run of it conducts per metre at 20 °C, in S·m.
    pub(super) fn conducts(&self) -> f64 {
        match &self.is {
            Is::Wire { conducts, .. } => *conducts,
            Is::Rating { .. } => 0.0,
        }
    }
    /// What a run of it bears, or a device lets through, in A.
    pub(super) fn amps(&self) -> f64 {
        match &self.is {
            Is::Wire { bears, .. } => *bears,
            Is::Rating { amps, .. } => *amps,
        }
    }
}

/// A run or a device that is sized.
#[derive(Clone, Debug)]
pub(super) enum Thing {
    /// A run, by its place among the runs of the sheet.
    Run(RunId, usize),
    /// A device, by its place in the study.
    Device(usize),
}

/// A run or a device that is sized, with its choices from thin to thick.
#[derive(Clone, Debug)]
pub(super) struct Var {
    pub(super) thing: Thing,
    pub(super) choices: Vec<Choice>,
    /// Whether a terminal takes no more than the last of them.
    pub(super) by_terminal: bool,
}

impl Var {
    pub(super) fn is_run(&self) -> bool {
        matches!(self.thing, Thing::Run(..))
    }
    pub(super) fn last(&self) -> usize {
        self.choices.len().saturating_sub(1)
    }
}

/// What may be chosen on a sheet, and what not.
pub(super) struct Things {
    pub(super) vars: Vec<Var>,
    /// The variable of each run of the sheet, by its place, and of each device of the study.
    pub(super) of_run: Vec<Option<usize>>,
    pub(super) of_device: Vec<Option<usize>>,
    /// Supply runs and devices that stay as they are, and why.
    pub(super) held_runs: Vec<(RunId, Held)>,
    pub(super) held_devices: Vec<(usize, Held)>,
}

impl Things {
    pub(super) fn new(laid: &Sheet, settings: &Settings, study: &Study, asks: &Asks, ask: &Ask<'_>) -> Self {
        let mut it = Self {
            vars: Vec::new(),
            of_run: vec![None; laid.runs.len()],
            of_device: vec![None; study.devices.len()],
            held_runs: Vec::new(),
            held_devices: Vec::new(),
        };
        for (place, (id, run)) in laid.runs.iter().enumerate() {
            let Some(asked) = asks.runs.get(id).filter(|asked| asked.touched) else {
                continue;
            };
            match asked.purpose {
                // A shielded lead is bought as it is.
                Purpose::Signal => it.held_runs.push((*id, Held::Signal)),
                // A lead that turns others on carries next to nothing: strength, heat and what guards it decide.
                Purpose::TurnOn => {}
                _ if asked.supply => {}
                _ => continue,
            }
            if asked.purpose == Purpose::Signal {
                continue;
            }
            match held_run(run) {
                Some(held) => it.held_runs.push((*id, held)),
                None => {
                    let (choices, by_terminal) = wires(laid, settings, run, asked.largest, ask);
                    if choices.is_empty() {
                        let held = if matches!(ask.by, By::Cost(_)) {
                            Held::NoPrice
                        } else {
                            Held::NoneFits
                        };
                        it.held_runs.push((*id, held));
                        continue;
                    }
                    it.of_run[place] = Some(it.vars.len());
                    it.vars.push(Var {
                        thing: Thing::Run(*id, place),
                        choices,
                        by_terminal,
                    });
                }
            }
        }
        for (place, (device, asked)) in study.devices.iter().zip(&asks.devices).enumerate() {
            let Some(part) = laid.parts.get(&device.device.part) else {
                continue;
            };
            if asked.ratings.is_empty() || !asked.judged || matches!(part.is, PartKind::Vehicle(_)) {
                continue;
            }
            let between = device.guards.iter().any(|run| {
                study
                    .runs
                    .get(run)
                    .is_some_and(|flow| flow.purpose == circuit::Purpose::BetweenSources)
            });
            if let Some(held) = held_device(part).or(between.then_some(Held::BetweenSources)) {
                it.held_devices.push((place, held));
                continue;
            }
            let choices: Vec<Choice> = asked
                .ratings
                .iter()
                .filter_map(|amps| {
                    let ohms = device_resistance(&part.is, Amps(*amps))?.0;
                    let cost = match ask.by {
                        By::Metal => 0.0,
                        By::Cost(prices) => prices
                            .device(&part.is, Amps(*amps))
                            .map_or(0.0, |price| price.0 as f64),
                    };
                    Some(Choice {
                        is: Is::Rating { amps: *amps, ohms },
                        // Of two that do, the smaller: it guards what lies beyond all that is reckoned here better.
                        cost: cost + amps * A_HAIR,
                    })
                })
                .collect();
            it.of_device[place] = Some(it.vars.len());
            it.vars.push(Var {
                thing: Thing::Device(place),
                choices,
                by_terminal: false,
            });
        }
        it
    }
}

/// So little per ampere of rating that it decides between equals alone.
const A_HAIR: f64 = 1e-9;

/// Why a run stays as it is; `None` where it may be laid anew.
pub(super) fn held_run(run: &Run) -> Option<Held> {
    if run.laying.size_locked {
        Some(Held::Locked)
    } else if run.handling.fate.value() == Some(Fate::Keep) {
        Some(Held::Kept)
    } else if run.fitted_by == FittedBy::Maker {
        Some(Held::Makers)
    } else if run.wire.length.is_unknown() {
        Some(Held::NoLength)
    } else if run.wire.insulation.is_unknown() {
        Some(Held::NoInsulation)
    } else {
        None
    }
}

/// Why a device keeps its rating.
fn held_device(part: &model::Part) -> Option<Held> {
    let locked = match &part.is {
        PartKind::Fuse(fuse) => fuse.rating_locked,
        PartKind::Breaker(breaker) => breaker.rating_locked,
        PartKind::Block(block) => block.rating_locked,
        _ => false,
    };
    if locked {
        Some(Held::Locked)
    } else if part.handling.fate.value() == Some(Fate::Keep) {
        Some(Held::Kept)
    } else if part.fitted_by == FittedBy::Maker {
        Some(Held::Makers)
    } else {
        None
    }
}

/// The wires that could be laid for a run, thinnest first, and whether a terminal keeps thicker ones out.
pub(super) fn wires(
    laid: &Sheet,
    settings: &Settings,
    run: &Run,
    largest: Option<SquareMm>,
    ask: &Ask<'_>,
) -> (Vec<Choice>, bool) {
    let own = run.wire.size.value();
    let any = match (ask.series, own) {
        (Some(Series::Gauge), _) | (None, Some(Size::Awg(_))) => Size::Awg(0),
        _ => Size::Metric(SquareMm(0.0)),
    };
    let least = checks::limit(settings, "least-conductor").unwrap_or(0.0);
    let is_copper = matches!(
        run.wire.material.value(),
        Some(Material::Copper | Material::TinnedCopper)
    );
    let length = run.wire.length.value().map_or(0.0, |length| length.0);
    let mut by_terminal = false;
    let mut all = Vec::new();
    for size in any.series() {
        let area = size.area();
        if area.0 < least {
            continue;
        }
        if largest.is_some_and(|largest| !checks::fits(area, largest)) {
            by_terminal = true;
            break;
        }
        let stays = own == Some(size) && is_copper;
        let laid_run = if stays { run.clone() } else { lay(run, size) };
        let cost = match ask.by {
            By::Metal => area.0 * length,
            By::Cost(prices) => match prices.wire(&laid_run.wire) {
                Some(metre) => metre * 100.0 * length,
                None => continue,
            },
        };
        let conductor = Conductor::of(laid, &laid_run, &settings.conditions);
        let bears = conductor.allowable().map_or(0.0, |amps| amps.0);
        let conducts = conducts(&laid_run);
        all.push(Choice {
            is: Is::Wire {
                run: Box::new(laid_run),
                size,
                conductor,
                bears,
                conducts,
            },
            cost,
        });
    }
    (all, by_terminal)
}

/// What a run conducts per metre at 20 °C, in S·m; nothing where that is not known.
pub(super) fn conducts(run: &Run) -> f64 {
    circuit::cold_per_metre(run).map_or(0.0, |ohms| 1.0 / ohms.0.max(1e-12))
}

/// A run laid anew in this size: of copper, tinned where it was tinned.
pub(super) fn lay(run: &Run, size: Size) -> Run {
    let mut run = checks::renewed(run);
    run.wire.size = Fact::Given(size);
    run.wire.stated_resistance = Fact::Unknown;
    if run.wire.material.value() != Some(Material::TinnedCopper) {
        run.wire.material = Fact::Given(Material::Copper);
    }
    run
}

/// Gives a device another rating.
pub(super) fn rate(part: &mut model::Part, device: &DeviceRef, amps: f64) {
    let rating = Amps(amps);
    match (&mut part.is, &device.output) {
        (PartKind::Fuse(fuse), None) => fuse.rating = Fact::Given(rating),
        (PartKind::Breaker(breaker), None) => breaker.rating = Fact::Given(rating),
        (PartKind::Block(block), Some(output)) => {
            let number = output
                .as_str()
                .strip_prefix("out")
                .and_then(|it| it.parse::<usize>().ok());
            let slot = number.and_then(|it| block.fuses.0.get_mut(it.checked_sub(1)?));
            if let Some(slot) = slot {
                *slot = Some(rating);
            }
        }
        _ => {}
    }
}
