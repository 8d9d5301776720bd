//! Leads of speakers: of each loop with one voice coil the sizes of least cost with which no more level is lost than the profile allows, and
//! which bear the current of full power. Those that several coils share are sized in [`super::loops`].

use super::frontier::{Piece, best_pieces};
use super::things::{Choice, Is, held_run, wires};
use super::{Ask, By, Held, Limit, Short};
use checks::Asks;
use circuit::speakers::LeadNet;
use circuit::{ChannelLoad, Conductor, Purpose, Study};
use model::conductor::Size;
use model::quantity::Amps;
use model::{Run, RunId, Settings, Sheet};
use ordered::{OrderedMap, OrderedSet};

/// A lead of a speaker as it should be.
pub(super) struct Lead {
    pub(super) to: Run,
    pub(super) size: Size,
    pub(super) cost: f64,
    pub(super) limit: Limit,
}

impl Lead {
    /// Of the wire that was chosen.
    pub(super) fn of(choice: &Choice, limit: Limit) -> Option<Self> {
        let Is::Wire { run, size, .. } = &choice.is else {
            return None;
        };
        Some(Self {
            to: (**run).clone(),
            size: *size,
            cost: choice.cost,
            limit,
        })
    }
}

/// What came of all leads of speakers.
pub(super) struct Leads {
    pub(super) sized: OrderedMap<RunId, Lead>,
    pub(super) held: Vec<(RunId, Held)>,
    pub(super) short: Vec<Short>,
    /// Whether nothing that costs less suffices, and by how much something might otherwise.
    pub(super) proved: bool,
    pub(super) unsure: f64,
}

/// What resistance over that of the load loses so many decibels.
fn over_load(decibels: f64) -> f64 {
    libm::pow(10.0, decibels / 20.0) - 1.0
}

impl Leads {
    pub(super) async fn of(
        laid: &Sheet,
        settings: &Settings,
        study: &Study,
        asks: &Asks,
        ask: &Ask<'_>,
    ) -> Self {
        let mut it = Self {
            sized: OrderedMap::new(),
            held: Vec::new(),
            short: Vec::new(),
            proved: true,
            unsure: 0.0,
        };
        let mut done: OrderedSet<RunId> = OrderedSet::new();
        let is_lead = |id: &RunId| {
            let asked = asks.runs.get(id);
            asked.is_some_and(|asked| asked.touched && asked.purpose == Purpose::Speaker)
        };
        let alone = |channel: &&ChannelLoad| {
            let shared = |run: &RunId| {
                let loops = study.channels.iter().filter(|other| other.runs.contains(run));
                loops.count() > 1
            };
            // Leads to one coil lie in line; those of several feed them side by side or one through the other.
            let coils = channel
                .drivers
                .iter()
                .filter_map(|id| study.drivers.get(id))
                .map(|driver| driver.coils.len());
            coils.sum::<usize>() == 1 && !channel.runs.iter().any(shared)
        };
        for channel in study.channels.iter().filter(alone) {
            let runs: Vec<RunId> = channel.runs.iter().copied().filter(|id| is_lead(id)).collect();
            done.extend(runs.iter().copied());
            it.size_loop(laid, settings, study, asks, ask, channel, &runs);
        }
        let others = |done: &OrderedSet<RunId>| -> Vec<RunId> {
            let all = laid.runs.keys().copied();
            all.filter(|id| is_lead(id) && !done.contains(id)).collect()
        };
        let shared = others(&done);
        if !shared.is_empty() {
            let mut net = LeadNet::of(laid);
            for (piece, runs) in net.pieces().into_iter().enumerate() {
                let driven = |id: &RunId| study.channels.iter().any(|channel| channel.runs.contains(id));
                let runs: Vec<RunId> = shared
                    .iter()
                    .copied()
                    .filter(|id| runs.contains(id) && driven(id))
                    .collect();
                if !runs.is_empty() {
                    done.extend(runs.iter().copied());
                    it.size_piece((laid, settings), (asks, ask), &mut net, piece, &runs)
                        .await;
                }
            }
        }
        for id in others(&done) {
            it.held.push((id, Held::Undriven));
        }
        it
    }

    #[allow(
        clippy::too_many_arguments,
        reason = "one call, with what everything is told of"
    )]
    fn size_loop(
        &mut self,
        laid: &Sheet,
        settings: &Settings,
        study: &Study,
        asks: &Asks,
        ask: &Ask<'_>,
        channel: &ChannelLoad,
        runs: &[RunId],
    ) {
        let Some((load, driver)) = channel
            .drivers
            .first()
            .and_then(|id| Some((*id, study.drivers.get(id)?)))
        else {
            return;
        };
        let ohms = |run: &Run| {
            Conductor::of(laid, run, &settings.conditions)
                .resistance(Amps(0.0))
                .0
        };
        let all = channel.runs.iter().filter_map(|id| laid.runs.get(id));
        let now: f64 = all.map(&ohms).sum();
        let lost = over_load(driver.lead_loss.0);
        let most = match checks::limit(settings, "lead-loss") {
            // The leads resist what they do; what they lose tells what they are held against.
            Some(limit) if lost > 0.0 => now * over_load(limit) / lost * (1.0 - 1e-6),
            _ => f64::INFINITY,
        };
        let heat = checks::limit(settings, "ampacity-factor")
            .unwrap_or(1.0)
            .max(0.01);
        let amps = match (channel.power, channel.nominal) {
            (Some(power), Some(nominal)) => libm::sqrt(power.0 / nominal.0.max(0.1)),
            _ => 0.0,
        };
        let (mut stays, mut chosen): (f64, Vec<(RunId, Vec<Choice>)>) = (0.0, Vec::new());
        for id in &channel.runs {
            let Some(run) = laid.runs.get(id) else { continue };
            if !runs.contains(id) {
                stays += ohms(run);
                continue;
            }
            let held = held_run(run).or_else(|| {
                let largest = asks.runs.get(id).and_then(|asked| asked.largest);
                let (choices, _) = wires(laid, settings, run, largest, ask);
                if choices.is_empty() {
                    let by_price = matches!(ask.by, By::Cost(_));
                    return Some(if by_price { Held::NoPrice } else { Held::NoneFits });
                }
                chosen.push((*id, choices));
                None
            });
            if let Some(held) = held {
                self.held.push((*id, held));
                stays += ohms(run);
            }
        }
        let first = |choices: &[Choice]| {
            let bears = choices.iter().position(|choice| choice.amps() * heat >= amps);
            bears.unwrap_or(choices.len().saturating_sub(1))
        };
        let mut pieces = vec![Piece {
            cost: 0.0,
            drop: stays,
            picks: Vec::new(),
        }];
        for (at, (_, choices)) in chosen.iter().enumerate() {
            let longer = |so_far: &Piece| -> Vec<Piece> {
                let with = |pick: usize| Piece {
                    cost: so_far.cost + choices[pick].cost,
                    drop: so_far.drop + choices[pick].ohms(0.0),
                    picks: so_far.picks.iter().copied().chain([(at, pick)]).collect(),
                };
                (first(choices)..choices.len()).map(with).collect()
            };
            pieces = best_pieces(pieces.iter().flat_map(longer).collect());
        }
        let best = pieces.iter().find(|piece| piece.drop <= most);
        if best.is_none() && !chosen.is_empty() {
            self.short.push(Short::Check {
                name: "lead-loss",
                runs: chosen.iter().map(|(id, _)| *id).collect(),
                parts: vec![load],
                as_set: false,
            });
        }
        for (at, pick) in best
            .or(pieces.last())
            .map(|piece| &*piece.picks)
            .unwrap_or_default()
        {
            let (id, choices) = &chosen[*at];
            let choice = &choices[*pick];
            let limit = match pick.checked_sub(1).map(|less| &choices[less]) {
                None => Limit::Smallest,
                Some(less) if less.cost >= choice.cost => Limit::Price,
                Some(less) if less.amps() * heat < amps => Limit::Heat,
                Some(_) => Limit::Check("lead-loss"),
            };
            if let Some(lead) = Lead::of(choice, limit) {
                self.sized.insert(*id, lead);
            }
        }
    }
}
