//! The speaker side: what each channel drives, what reaches each speaker, and where a silent one has its gap.
//!
//! A channel's load is its own voltage over its own current, so leads that two channels share and bridged pairs come
//! out right. Every source is solved for alone and the results are added. Where two channels feed one network, their
//! relative phase is not known: currents are then added as sizes, which is the worse case, and a remark says so.
//!
//! *Left out:* the resistance of inductors, the mechanical resonance of drivers, mutual inductance of two coils on one former.

mod complex;
mod deck;
mod drivers;
mod element;
mod few;
mod gap;
pub(crate) mod index;
mod leads;
mod network;
mod outputs;
mod power;
mod reduced;

pub use deck::speaker_deck;
pub use leads::{LeadNet, Leads};
pub(crate) use outputs::is_ground_leg;

use crate::study::{Assumption, ChannelLoad, Driver, Signal};
use complex::Complex;
use drivers::Reached;
use element::{View, What};
use index::Index;
use model::job::Duty;
use model::quantity::{Hertz, Ohms, Watts};
use model::written::StatedPower;
use model::{Fact, PartId, PartKind, Settings, Sheet};
pub(crate) use network::Groups;
use network::{Network, SUPPLY};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use reduced::{Members, Reduced, Solution, Source};
use serde::Serialize;
use words::{Unit, figure, say};

/// Number of frequencies on a curve: 20 a decade from 20 Hz to 20 kHz, both ends included.
pub const CURVE_POINTS: u16 = 61;

/// A load above this, in ohms, is no load.
const LARGEST_LOAD: f64 = 1e7;

/// DC resistance and rated impedance of one voice coil, in ohms.
pub(crate) fn coil(speaker: &model::kinds::sound::Speaker) -> (f64, f64) {
    (element::coil_dc(speaker), element::rated(speaker))
}

/// Frequency of a point of the curves, from 0.
#[must_use]
pub fn curve_frequency(point: u16) -> Hertz {
    Hertz(20.0 * libm::pow(10.0, f64::from(point) / 20.0))
}

/// Power that an output of these stated powers gives into a load; see there for how it lies between and beyond them.
#[must_use]
pub fn stated_power(stated: &[StatedPower], load: Ohms) -> Option<Watts> {
    power::Stated::new(stated, None).watts(load.0).map(Watts)
}

/// What the outputs of a part deliver, all of them together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct OutputPower {
    /// Mean power at the duty: [`reference::audio::duty_share`] of the full power.
    pub mean: Watts,
    /// The power that draws the root mean square of the supply current over the thermal time of wires and fuses.
    pub rms: Watts,
    /// Power in bursts: full power into the actual load, whatever the music; nothing when idle.
    pub burst: Watts,
}

/// The speaker side of a sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Speakers {
    /// Every output, in order of part and channel; a bridged pair is one.
    pub channels: Vec<ChannelLoad>,
    /// Every speaker.
    pub drivers: OrderedMap<PartId, Driver>,
    /// What each amplifier and head unit delivers.
    pub output: OrderedMap<PartId, OutputPower>,
    /// Values taken for granted that entered a result.
    pub assumed: OrderedSet<Assumption>,
}

/// Shares of full power at a duty: mean, RMS, burst.
///
/// Mean by [`reference::audio::duty_share`]. The supply current of an output stage follows the size of its output
/// voltage; of a signal like noise that is |v| of a normal distribution, whose RMS is √(π/2) ≈ 1.25 times its mean. Bursts
/// reach full power whenever something plays.
fn shares(duty: Duty) -> (f64, f64, f64) {
    let mean = reference::audio::duty_share(duty).0;
    let rms = (mean * libm::sqrt(core::f64::consts::FRAC_PI_2)).min(1.0);
    match duty {
        Duty::Idle => (0.0, 0.0, 0.0),
        Duty::Tone => (mean, mean, 1.0),
        Duty::Speech | Duty::Music | Duty::Loud => (mean, rms, 1.0),
    }
}

/// What each channel drives and what reaches each speaker.
#[must_use]
pub fn study_speakers(sheet: &Sheet, settings: &Settings) -> Speakers {
    study_network(&Network::new(Index::new(sheet)), settings)
}

/// The whole sound side at once: what [`study_speakers`] and [`study_signal`](crate::signal::study_signal) find, with the
/// terminals of the sheet numbered only once, and filters of head units carried on to the drivers.
#[must_use]
pub fn study_sound(sheet: &Sheet, settings: &Settings) -> (Speakers, Signal) {
    let net = Network::new(Index::new(sheet));
    let mut speakers = study_network(&net, settings);
    let signal = crate::signal::study_index(&net.index, &speakers);
    crate::signal::carry_filters(sheet, &signal, &mut speakers);
    (speakers, signal)
}

fn study_network(net: &Network<'_>, settings: &Settings) -> Speakers {
    let mut study = Speakers::default();
    let mut reach: OrderedMap<PartId, Reached> = OrderedMap::new();
    let mut loads: Vec<Option<ChannelLoad>> = vec![None; net.outputs.len()];
    let frequencies: Vec<Hertz> = (0..CURVE_POINTS).map(curve_frequency).collect();
    for piece in pieces(net) {
        solve_piece(net, &piece, settings, &frequencies, &mut loads, &mut reach);
    }
    ties(net, &mut loads);
    let (mean, rms, burst) = shares(settings.conditions.duty);
    for load in loads.into_iter().flatten() {
        let full = load.power.unwrap_or_default();
        let sum = study.output.entry(load.part).or_default();
        *sum = OutputPower {
            mean: sum.mean + full * mean,
            rms: sum.rms + full * rms,
            burst: sum.burst + full * burst,
        };
        study.channels.push(load);
    }
    for (id, part) in &net.index.sheet.parts {
        if let PartKind::Speaker(speaker) = &part.is {
            // Taken over where it stands: each one taken out would move those behind it.
            let driver = reach.get_mut(id).map(std::mem::take).unwrap_or_default().driver(
                net,
                *id,
                usize::from(speaker.coils.clamp(1, 2)),
            );
            study.drivers.insert(*id, driver);
        }
    }
    assumptions(net, &mut study);
    study
}

/// A connected piece: elements and outputs by number.
#[derive(Default)]
struct Piece {
    elements: Vec<usize>,
    outputs: Vec<usize>,
}

/// The pieces of a network that have an output in them. The supply does not connect: with its voltage fixed, what
/// hangs on it on one side does not know of the other.
fn pieces(net: &Network<'_>) -> Vec<Piece> {
    let mut groups = Groups::new(net.nodes);
    let mut join = |a: usize, b: usize| {
        if a != SUPPLY && b != SUPPLY {
            groups.join(a, b);
        }
    };
    for element in &net.elements {
        join(element.a, element.b);
    }
    for output in &net.outputs {
        join(output.plus, output.minus);
    }
    let mut all: OrderedMap<usize, Piece> = OrderedMap::new();
    let mut none = Vec::new();
    for (number, output) in net.outputs.iter().enumerate() {
        match [output.plus, output.minus]
            .into_iter()
            .find(|node| *node != SUPPLY)
        {
            Some(node) => all.entry(groups.find(node)).or_default().outputs.push(number),
            None => none.push(Piece {
                elements: Vec::new(),
                outputs: vec![number],
            }),
        }
    }
    for (number, element) in net.elements.iter().enumerate() {
        if let Some(node) = [element.a, element.b].into_iter().find(|node| *node != SUPPLY)
            && let Some(piece) = all.get_mut(&groups.find(node))
        {
            piece.elements.push(number);
        }
    }
    all.into_values().chain(none).collect()
}

/// Sum of sizes of what all sources do to one quantity: the worse case of unknown phases.
fn worst<'a>(all: impl Iterator<Item = &'a Complex>, volts: &[f64]) -> f64 {
    all.zip(volts).map(|(value, volts)| value.size() * volts).sum()
}

/// Own voltage over own current of a source, the worse case. `None` when no current flows or it is not solved.
fn own_load(reduced: &Reduced, solution: Option<&Solution>, source: usize, volts: &[f64]) -> Option<f64> {
    if reduced.is_shorted(source) {
        return Some(0.0);
    }
    let amps = worst(
        solution?.source_amps.iter().filter_map(|row| row.get(source)),
        volts,
    );
    let load = volts.get(source)? / amps;
    (load.is_finite() && load < LARGEST_LOAD).then_some(load)
}

/// A view without leads and the same with them, the first drawn together, and its solution.
type Viewed = (View, View, Reduced, Option<Solution>);

/// A piece as its outputs see it, with leads and without.
struct Seen<'n> {
    outputs: Vec<(usize, &'n outputs::Output)>,
    sources: Vec<Source>,
    /// The weights with which sources count against one another, where several feed one piece.
    open_volts: Vec<f64>,
    members: Members<'n>,
    views: Vec<Viewed>,
    with_leads: Vec<(Reduced, Option<Solution>)>,
    /// By view and source: the nominal load.
    nominal: Vec<Vec<Option<f64>>>,
}

fn see<'n>(net: &'n Network<'_>, piece: &Piece) -> Seen<'n> {
    let outputs: Vec<(usize, &outputs::Output)> = piece
        .outputs
        .iter()
        .filter_map(|number| net.outputs.get(*number).map(|it| (*number, it)))
        .collect();
    let sources: Vec<Source> = outputs
        .iter()
        .map(|(_, it)| Source {
            plus: it.plus,
            minus: it.minus,
        })
        .collect();
    let open_volts: Vec<f64> = outputs
        .iter()
        .map(|(_, it)| it.stated.open_volts().max(1e-3))
        .collect();
    let members = Members::new(&net.elements, &piece.elements, &sources);
    let reduce = |view: View| Reduced::new(&members, view);
    let filters = piece
        .elements
        .iter()
        .filter_map(|number| net.elements.get(*number))
        .filter(|element| matches!(element.what, What::Inductor(_) | What::Capacitor(_)));
    let corners: Vec<f64> = filters.map(|element| element.corner).collect();
    let mut looks = vec![(View::Low { leads: false }, View::Low { leads: true })];
    // Without a filter in it the low end of the band is like the high one.
    if !corners.is_empty() {
        looks.push((View::High { leads: false }, View::High { leads: true }));
    }
    looks.extend(between(corners).into_iter().map(|at| {
        let [plain, leads] = [false, true].map(|leads| View::Between { leads, at });
        (plain, leads)
    }));
    let views: Vec<Viewed> = looks
        .into_iter()
        .map(|(plain, leads)| {
            let reduced = reduce(plain);
            let solution = reduced.solve(1.0);
            (plain, leads, reduced, solution)
        })
        .collect();
    let with_leads: Vec<(Reduced, Option<Solution>)> = views
        .iter()
        .map(|(_, leads, _, _)| {
            let reduced = reduce(*leads);
            let solution = reduced.solve(1.0);
            (reduced, solution)
        })
        .collect();
    // Nominal load of each source in each view, and its voltage at full power there.
    let nominal: Vec<Vec<Option<f64>>> = views
        .iter()
        .map(|(_, _, reduced, solution)| {
            (0..sources.len())
                .map(|at| own_load(reduced, solution.as_ref(), at, &open_volts))
                .collect()
        })
        .collect();
    Seen {
        outputs,
        sources,
        open_volts,
        members,
        views,
        with_leads,
        nominal,
    }
}

fn solve_piece(
    net: &Network<'_>,
    piece: &Piece,
    settings: &Settings,
    frequencies: &[Hertz],
    loads: &mut [Option<ChannelLoad>],
    reach: &mut OrderedMap<PartId, Reached>,
) {
    let Seen {
        outputs,
        sources,
        open_volts,
        members,
        views,
        with_leads,
        nominal,
    } = see(net, piece);
    let reduce = |view: View| Reduced::new(&members, view);
    drivers::find(
        net,
        piece,
        &sources,
        &outputs,
        &views,
        &with_leads,
        &nominal,
        &open_volts,
        reach,
    );

    let band = reduce(View::Band);
    let mut curves = curves(&band, &open_volts, frequencies);
    let share = shares(settings.conditions.duty).0;
    for (at, (number, output)) in outputs.iter().enumerate() {
        let of_views = || nominal.iter().filter_map(|view| view.get(at).copied().flatten());
        let least_nominal = of_views().reduce(f64::min);
        let mut load = ChannelLoad {
            part: output.part,
            channel: output.channel,
            bridged_with: output.bridged_with,
            minimum: output.stated.minimum.filter(|_| output.allowed).map(Ohms),
            nominal: least_nominal.map(Ohms),
            ..ChannelLoad::default()
        };
        let mut remarks = output.remarks.clone();
        reached(net, at, &views, &with_leads, &mut load);
        if let Some(nominal) = least_nominal {
            load.power = if nominal > 0.0 {
                output.stated.watts(nominal).map(Watts)
            } else {
                None
            };
            if nominal > 0.0 && output.stated.is_below(nominal) {
                remarks.push(say!("channel-power-not-stated"));
            }
            if nominal == 0.0 {
                remarks.push(say!("channel-legs-joined"));
            }
        }
        load.mean_power = load.power.unwrap_or_default() * share;
        match curves.get_mut(at) {
            Some(Some(curve)) => load.curve = std::mem::take(curve),
            Some(None) if !piece.elements.is_empty() && !load.drivers.is_empty() => {
                remarks.push(say!("channel-not-solved"));
            }
            _ => {}
        }
        if let Some((at, least)) = load.curve.iter().copied().min_by(|a, b| a.1.0.total_cmp(&b.1.0)) {
            load.least = Some(least);
            load.least_at = Some(at);
        }
        let solutions = views
            .iter()
            .filter_map(|it| it.3.as_ref())
            .chain(with_leads.iter().filter_map(|it| it.1.as_ref()));
        if is_shared(solutions, at) {
            remarks.push(say!("channel-leads-shared"));
        }
        load.dc_resistance = meter(&members, at);
        let unknown: Vec<String> = load
            .drivers
            .iter()
            .filter(|id| match net.index.sheet.parts.get(id).map(|part| &part.is) {
                Some(PartKind::Speaker(speaker)) => speaker.impedance.is_unknown(),
                _ => false,
            })
            .map(|id| net.index.tag(*id))
            .collect();
        if !unknown.is_empty() {
            remarks.push(say!(
                "channel-impedance-unknown",
                speakers = unknown,
                taken = figure(4.0, Unit::Plain("Ω")),
            ));
            (load.nominal, load.least, load.least_at) = (None, None, None);
            load.curve.clear();
        }
        load.remarks = remarks;
        if let Some(slot) = loads.get_mut(*number) {
            *slot = Some(load);
        }
    }
}

/// Most parts of the band between filters that are looked at by themselves: a driver has three or four ways at the most.
const MOST_BETWEEN: usize = 4;

/// How far apart two filters divide, at the least, for something to play between them.
const APART: f64 = 2.0;

/// Angular frequencies between filters: the geometric mean of each two corners that follow one another.
fn between(mut corners: Vec<f64>) -> Vec<f64> {
    corners.retain(|corner| corner.is_finite() && *corner > 0.0);
    corners.order_by(f64::total_cmp);
    let pairs = corners.iter().zip(corners.iter().skip(1));
    pairs
        .filter(|(low, high)| **high > **low * APART)
        .map(|(low, high)| (low * high).sqrt())
        .take(MOST_BETWEEN)
        .collect()
}

/// A source of 1 V that drives less than this, in amperes, drives nothing: a thousand megohms lie between its ends, more
/// than any load has, and where every loop is open rounding is all there is.
const LEAST_AMPS: f64 = 1e-9;

/// Whether other sources make more than a hundredth of a source's own current in it. What is below a billionth of the
/// largest current is rounding.
fn is_shared<'a>(mut solutions: impl Iterator<Item = &'a Solution>, source: usize) -> bool {
    solutions.any(|solution| {
        let amps = |driven: usize| {
            solution
                .source_amps
                .get(driven)
                .and_then(|row| row.get(source))
                .map_or(0.0, |amps| amps.size())
        };
        let largest = solution
            .source_amps
            .iter()
            .flatten()
            .map(|amps| amps.size())
            .fold(0.0, f64::max);
        let least = (amps(source) * 0.01).max(largest * 1e-9).max(LEAST_AMPS);
        (0..solution.source_amps.len()).any(|driven| driven != source && amps(driven) > least)
    })
}

/// Speakers that get current from a source, and the runs that carry it.
fn reached(
    net: &Network<'_>,
    source: usize,
    views: &[Viewed],
    with_leads: &[(Reduced, Option<Solution>)],
    load: &mut ChannelLoad,
) {
    let all = views
        .iter()
        .map(|(_, _, reduced, solution)| (reduced, solution))
        .chain(with_leads.iter().map(|(a, b)| (a, b)));
    let mut speakers = OrderedSet::new();
    for (reduced, solution) in all {
        let Some(solution) = solution else { continue };
        let Some(amps) = solution.branch_amps.get(source) else {
            continue;
        };
        let largest = amps.iter().map(|it| it.size()).fold(0.0, f64::max);
        for ((branch, amps), rounding) in reduced.branches.iter().zip(amps).zip(&solution.rounding) {
            if amps.size() <= (largest * 1e-9).max(*rounding) {
                continue;
            }
            for (element, _) in branch.members.iter() {
                match net.elements.get(*element).map(|it| it.what) {
                    Some(What::Coil { speaker, .. }) => {
                        speakers.insert(speaker);
                    }
                    Some(What::Lead(run)) => {
                        load.runs.insert(run);
                    }
                    _ => {}
                }
            }
        }
    }
    load.drivers = speakers.into_iter().collect();
}

/// |Z| over the band of each source; `None` where it is not settled or no current flows.
fn curves(band: &Reduced, volts: &[f64], frequencies: &[Hertz]) -> Vec<Option<Vec<(Hertz, Ohms)>>> {
    let mut all: Vec<Option<Vec<(Hertz, Ohms)>>> = volts
        .iter()
        .map(|_| Some(Vec::with_capacity(usize::from(CURVE_POINTS))))
        .collect();
    if band.branches.is_empty() {
        return volts.iter().map(|_| None).collect();
    }
    // Without a reactance in it the load is the same everywhere.
    let resistive = band.is_resistive();
    let flat = resistive.then(|| band.solve(1.0));
    let flat_load = band
        .straight_admittance(1.0)
        .filter(|_| resistive)
        .map(|admittance| 1.0 / admittance.size());
    for (point, frequency) in (0..CURVE_POINTS).zip(frequencies) {
        let omega = core::f64::consts::TAU * frequency.0;
        let straight = flat_load.or_else(|| Some(1.0 / band.straight_admittance(omega)?.size()));
        if let ([slot], Some(load)) = (all.as_mut_slice(), straight) {
            // Everything lies straight across the one source: no equations to solve.
            match slot {
                Some(curve) if load.is_finite() && load < LARGEST_LOAD => {
                    curve.push((*frequency, Ohms(load)))
                }
                _ => *slot = None,
            }
        } else {
            let solved = if flat.is_none() { band.solve(omega) } else { None };
            let solution = flat.as_ref().unwrap_or(&solved);
            for (at, slot) in all.iter_mut().enumerate() {
                match (own_load(band, solution.as_ref(), at, volts), slot.as_mut()) {
                    (Some(load), Some(curve)) => curve.push((*frequency, Ohms(load))),
                    _ => *slot = None,
                }
            }
        }
        if point == 0 && all.iter().all(Option::is_none) {
            break;
        }
    }
    all
}

/// What a meter reads between the ends of an output, its leads on and the amplifier off.
fn meter(members: &Members<'_>, source: usize) -> Option<Ohms> {
    let reduced = Reduced::new(&members.of_source(source)?, View::Meter);
    let solution = reduced.solve(1.0);
    own_load(&reduced, solution.as_ref(), 0, &[1.0]).map(Ohms)
}

/// Marks outputs whose legs are tied to the supply or to other outputs by nothing but wire.
fn ties(net: &Network<'_>, loads: &mut [Option<ChannelLoad>]) {
    let mut groups = Groups::new(net.nodes);
    let leads = || {
        net.elements
            .iter()
            .filter(|element| matches!(element.what, What::Lead(_)))
    };
    for lead in leads() {
        if lead.a != SUPPLY && lead.b != SUPPLY {
            groups.join(lead.a, lead.b);
        }
    }
    let mut on_supply = OrderedSet::new();
    for lead in leads() {
        match (lead.a, lead.b) {
            (SUPPLY, SUPPLY) => {}
            (SUPPLY, node) | (node, SUPPLY) => {
                on_supply.insert(groups.find(node));
            }
            _ => {}
        }
    }
    // Legs of one output by the group of nodes they are in; ground legs are part of the supply and count as no leg.
    let mut legs: OrderedMap<usize, OrderedSet<usize>> = OrderedMap::new();
    for (number, output) in net.outputs.iter().enumerate() {
        for node in [output.plus, output.minus] {
            if node != SUPPLY {
                legs.entry(groups.find(node)).or_default().insert(number);
            }
        }
    }
    for (group, numbers) in &legs {
        for number in numbers {
            let Some(Some(load)) = loads.get_mut(*number) else {
                continue;
            };
            load.touches_body |= on_supply.contains(group);
            for other in numbers.iter().filter(|other| *other != number) {
                if let Some(output) = net.outputs.get(*other) {
                    let tie = (output.part, output.channel);
                    if !load.tied_to.contains(&tie) {
                        load.tied_to.push(tie);
                    }
                }
            }
        }
    }
    for load in loads.iter_mut().flatten() {
        load.tied_to.order();
    }
}

/// Notes which assumed values entered: impedances of speakers that play, powers of head units.
fn assumptions(net: &Network<'_>, study: &mut Speakers) {
    let mut note = |part: PartId, property: &'static str, given: bool| {
        if !given {
            study.assumed.insert(Assumption {
                part: Some(part),
                run: None,
                property,
            });
        }
    };
    for (id, driver) in &study.drivers {
        if let Some(PartKind::Speaker(speaker)) = net.index.sheet.parts.get(id).map(|part| &part.is)
            && driver.plays
        {
            note(*id, "impedance", matches!(speaker.impedance, Fact::Given(_)));
            note(*id, "dc-resistance", speaker.dc_resistance.is_given());
        }
    }
    for load in &study.channels {
        if let Some(PartKind::HeadUnit(head)) = net.index.sheet.parts.get(&load.part).map(|part| &part.is)
            && !load.drivers.is_empty()
        {
            note(load.part, "power", head.power.is_given());
            note(load.part, "rated-load", head.rated_load.is_given());
            note(load.part, "minimum-load", head.minimum_load.is_given());
        }
    }
}
