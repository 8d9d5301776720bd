//! What each output of a piece drives: its load in ohms over the band, the speakers in it, its power.

use super::CURVE_POINTS;
use super::element::{View, What};
use super::outputs::Output;
use super::reduced::{Members, Reduced, Solution};
use super::seen::{LARGEST_LOAD, Seen, Solved, own_load};
use crate::study::ChannelLoad;
use model::quantity::{Hertz, Ohms, Watts};
use model::{PartId, PartKind};
use ordered::OrderedSet;
use words::{Unit, figure, say};

/// The load of each output of a piece, with the number of the output in the network. `mean` is the share of full power that
/// is given in the mean.
pub(super) fn loads(seen: &Seen<'_>, frequencies: &[Hertz], mean: f64) -> Vec<(usize, ChannelLoad)> {
    let band = Reduced::new(&seen.members, View::Band);
    let curves = curves(&band, &seen.open_volts, frequencies);
    let with_curves = seen.outputs.iter().zip(curves).enumerate();
    with_curves
        .map(|(at, ((number, output), curve))| (*number, load(seen, at, output, curve, mean)))
        .collect()
}

/// Impedance over the band, in order of frequency.
type Curve = Vec<(Hertz, Ohms)>;

fn load(seen: &Seen<'_>, at: usize, output: &Output, curve: Option<Curve>, mean: f64) -> ChannelLoad {
    let least_nominal = seen
        .views
        .iter()
        .filter_map(|view| view.nominal(at))
        .reduce(f64::min);
    let mut load = ChannelLoad {
        part: output.part,
        channel: output.channel,
        bridged_with: output.bridged_with,
        minimum: output.stated.minimum.filter(|_| output.allowed).map(Ohms),
        nominal: least_nominal.map(Ohms),
        ..ChannelLoad::default()
    };
    let mut remarks = output.remarks.clone();
    reached(seen, at, &mut load);
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
    load.mean_power = load.power.unwrap_or_default() * mean;
    match curve {
        Some(curve) => load.curve = curve,
        None if !seen.piece.elements.is_empty() && !load.drivers.is_empty() => {
            remarks.push(say!("channel-not-solved"));
        }
        None => {}
    }
    if let Some((at, least)) = load.curve.iter().copied().min_by(|a, b| a.1.0.total_cmp(&b.1.0)) {
        load.least = Some(least);
        load.least_at = Some(at);
    }
    if is_shared(seen.all().filter_map(|it| it.solution.as_ref()), at) {
        remarks.push(say!("channel-leads-shared"));
    }
    load.dc_resistance = meter(&seen.members, at);
    let unknown = of_unknown_impedance(seen, &load.drivers);
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
    load
}

/// Tags of those speakers of which nobody knows the impedance.
fn of_unknown_impedance(seen: &Seen<'_>, drivers: &[PartId]) -> Vec<String> {
    let index = &seen.net.index;
    let is_unknown = |id: &&PartId| match index.sheet.parts.get(id).map(|part| &part.is) {
        Some(PartKind::Speaker(speaker)) => speaker.impedance.is_unknown(),
        _ => false,
    };
    let unknown = drivers.iter().filter(is_unknown);
    unknown.map(|id| index.tag(*id)).collect()
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
fn reached(seen: &Seen<'_>, source: usize, load: &mut ChannelLoad) {
    let mut speakers = OrderedSet::new();
    for Solved { reduced, solution } in seen.all() {
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
                match seen.net.elements.get(*element).map(|it| it.what) {
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
fn curves(band: &Reduced, volts: &[f64], frequencies: &[Hertz]) -> Vec<Option<Curve>> {
    let mut all: Vec<Option<Curve>> = volts
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
