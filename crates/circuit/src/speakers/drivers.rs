//! What reaches each speaker: power and polarity of every coil, loss in its leads, and from where it gets no bass.

use super::complex::Complex;
use super::element::{View, What};
use super::gap;
use super::network::Network;
use super::reduced::{Members, Reduced, Solution};
use super::seen::{Seen, Solved};
use crate::study::{CoilDrive, Driver, Gap};
use model::PartId;
use model::quantity::{Decibels, Hertz, Watts};
use ordered::OrderedMap;
use words::say;

/// What one output does to one coil at nominal values.
#[derive(Clone, Copy, Debug, Default)]
struct Push {
    output: usize,
    /// Current through the coil from plus to minus, for 1 V of this output.
    amps: f64,
    /// Its RMS voltage at full power.
    volts: f64,
}

/// What reaches one coil in one view.
#[derive(Clone, Debug, Default)]
struct CoilView {
    pushes: Vec<Push>,
    /// Power at full drive, watts.
    power: f64,
}

/// What reaches one speaker, gathered from the pieces its coils are in.
#[derive(Clone, Debug, Default)]
pub(super) struct Reached {
    coils: OrderedMap<u8, CoilReached>,
    /// It hangs in a piece of network that was too large to be solved.
    unsolved: bool,
}

#[derive(Clone, Copy, Debug, Default)]
struct CoilReached {
    power: f64,
    polarity: i8,
    loss: f64,
    high_pass: Option<f64>,
    output: usize,
}

impl Reached {
    /// The largest loss of level in the leads of any of its coils, in dB.
    pub(super) fn loss(&self) -> f64 {
        let driven = self.coils.values().filter(|coil| coil.polarity != 0);
        driven.map(|coil| coil.loss).fold(0.0, f64::max)
    }
    pub(super) fn driver(self, net: &Network<'_>, id: PartId, coils: usize) -> Driver {
        let mut it = Driver {
            coils: vec![CoilDrive::default(); coils],
            ..Driver::default()
        };
        let mut strongest: Option<CoilReached> = None;
        for (coil, reached) in &self.coils {
            let Some(slot) = it.coils.get_mut(usize::from(coil.saturating_sub(1))) else {
                continue;
            };
            *slot = CoilDrive {
                power: Watts(reached.power),
                polarity: reached.polarity,
            };
            if reached.polarity == 0 {
                continue;
            }
            it.power = it.power + slot.power;
            it.lead_loss = it.lead_loss.max(Decibels(reached.loss));
            if strongest.is_none_or(|so_far| reached.power > so_far.power) {
                strongest = Some(*reached);
            }
        }
        let has = |sign: i8| it.coils.iter().any(|coil| coil.polarity == sign);
        it.coils_oppose = has(1) && has(-1);
        it.plays = has(1) || has(-1);
        if let Some(strongest) = strongest {
            it.in_phase = Some(strongest.polarity > 0);
            it.high_pass = strongest.high_pass.map(Hertz);
            it.channel = net
                .outputs
                .get(strongest.output)
                .map(|output| (output.part, output.channel));
        }
        if !it.plays {
            it.gap = Some(if self.unsolved {
                let what = say!("gap-too-large", speaker = net.index.tag(id));
                Gap {
                    what,
                    part: Some(id),
                    run: None,
                }
            } else {
                gap::find(net, id)
            });
        }
        it
    }
}

/// What reaches every coil of a piece.
pub(super) fn find(seen: &Seen<'_>, reach: &mut OrderedMap<PartId, Reached>) {
    let net = seen.net;
    // Per coil element, what reaches it in each view.
    let mut found: OrderedMap<usize, Vec<CoilView>> = OrderedMap::new();
    for (view, viewed) in seen.views.iter().enumerate() {
        // Outputs straight across one another are settled by their leads only.
        let solved = [&viewed.without_leads, &viewed.with_leads].into_iter();
        let mut solved = solved.filter_map(|it| Some((&it.reduced, it.solution.as_ref()?)));
        let Some((reduced, solution)) = solved.next() else {
            continue;
        };
        for (at, branch) in reduced.branches.iter().enumerate() {
            for (element, forward) in branch.members.iter() {
                let Some(it) = net.elements.get(*element) else {
                    continue;
                };
                if !matches!(it.what, What::Coil { .. }) {
                    continue;
                }
                let slot = found
                    .entry(*element)
                    .or_insert_with(|| vec![CoilView::default(); seen.views.len()]);
                let Some(slot) = slot.get_mut(view) else { continue };
                for source in 0..seen.sources.len() {
                    let amps = solution
                        .branch_amps
                        .get(source)
                        .and_then(|row| row.get(at))
                        .map_or(0.0, |amps| amps.re);
                    let own = solution
                        .source_amps
                        .get(source)
                        .and_then(|row| row.get(source))
                        .map_or(0.0, |it| it.size());
                    let rounding = solution.rounding.get(at).copied().unwrap_or_default();
                    if amps.abs() <= (own * 1e-9).max(rounding) {
                        continue;
                    }
                    let volts = viewed.volts(seen, source, reduced, solution);
                    slot.pushes.push(Push {
                        output: source,
                        amps: if *forward { amps } else { -amps },
                        volts,
                    });
                }
                let sum: f64 = slot.pushes.iter().map(|push| push.amps.abs() * push.volts).sum();
                slot.power = sum * sum * it.rated;
            }
        }
    }
    if seen
        .views
        .iter()
        .all(|viewed| viewed.with_leads.solution.is_none())
    {
        for element in seen
            .piece
            .elements
            .iter()
            .filter_map(|number| net.elements.get(*number))
        {
            if let What::Coil { speaker, .. } = element.what {
                reach.entry(speaker).or_default().unsolved = true;
            }
        }
    }
    for (number, in_views) in found {
        let Some(element) = net.elements.get(number) else {
            continue;
        };
        let What::Coil { speaker, coil } = element.what else {
            continue;
        };
        // The end of the band in which it works is the one in which more reaches it.
        let strength = |view: &CoilView| view.pushes.iter().map(|push| push.amps.abs()).fold(0.0, f64::max);
        let Some((best, view)) = in_views
            .iter()
            .enumerate()
            .max_by(|a, b| strength(a.1).total_cmp(&strength(b.1)).then(b.0.cmp(&a.0)))
        else {
            continue;
        };
        let Some(main) = view.pushes.iter().copied().max_by(|a, b| {
            (a.amps.abs() * a.volts)
                .total_cmp(&(b.amps.abs() * b.volts))
                .then(b.output.cmp(&a.output))
        }) else {
            continue;
        };
        let Some((output_number, output)) = seen.outputs.get(main.output) else {
            continue;
        };
        let power = in_views.iter().map(|view| view.power).fold(0.0, f64::max);
        let loss = seen
            .views
            .get(best)
            .and_then(|viewed| amps_of(&viewed.with_leads, number, main.output))
            .map_or(0.0, |amps| 20.0 * libm::log10(main.amps.abs() / amps.abs()));
        let filtered = best > 0
            && in_views
                .first()
                .is_some_and(|low| strength(low) < main.amps.abs() * 1e-6);
        let by_parts = if filtered {
            let upto = match seen.views.get(best).map(|viewed| viewed.view) {
                Some(View::Between { at, .. }) => at / core::f64::consts::TAU,
                _ => HIGHEST,
            };
            corner(&seen.members, number, &main, upto)
        } else {
            None
        };
        let high_pass = [output.high_pass, by_parts]
            .into_iter()
            .flatten()
            .reduce(f64::max);
        reach.entry(speaker).or_default().coils.insert(
            coil,
            CoilReached {
                power,
                polarity: if main.amps > 0.0 { 1 } else { -1 },
                loss: if loss.is_finite() { loss.max(0.0) } else { 0.0 },
                high_pass,
                output: *output_number,
            },
        );
    }
}

/// Current through an element, from its `a` to its `b`, with one source at 1 V; the real part.
fn amps_of(solved: &Solved, element: usize, source: usize) -> Option<f64> {
    amps_complex(&solved.reduced, solved.solution.as_ref(), element, source).map(|amps| amps.re)
}

fn amps_complex(
    reduced: &Reduced,
    solution: Option<&Solution>,
    element: usize,
    source: usize,
) -> Option<Complex> {
    let (at, forward) = reduced.branches.iter().enumerate().find_map(|(at, branch)| {
        branch
            .members
            .iter()
            .find(|(member, _)| *member == element)
            .map(|(_, forward)| (at, *forward))
    })?;
    let amps = *solution?.branch_amps.get(source)?.get(at)?;
    Some(if forward { amps } else { -amps })
}

/// Where nothing more changes, in hertz.
const HIGHEST: f64 = 1e6;

/// Frequency at which a coil gets 1/√2 of the voltage that its filter lets pass: found by halving an interval from 0.1 Hz up to
/// where the filter passes, in its logarithm, until it is settled to 1e-12.
fn corner(members: &Members<'_>, element: usize, main: &Push, upto: f64) -> Option<f64> {
    let reduced = Reduced::new(members, View::Filter);
    let limit = main.amps.abs() * core::f64::consts::FRAC_1_SQRT_2;
    let passes = |frequency: f64| {
        let solution = reduced.solve(core::f64::consts::TAU * frequency);
        amps_complex(&reduced, solution.as_ref(), element, main.output)
            .is_some_and(|amps| amps.size() >= limit)
    };
    let (mut low, mut high) = (libm::log(0.1), libm::log(upto));
    if passes(libm::exp(low)) || !passes(libm::exp(high)) {
        return None;
    }
    while high - low > 1e-12 {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if passes(libm::exp(middle)) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(libm::exp(0.5 * (low + high)))
}
