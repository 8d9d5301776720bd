//! Charging and standing: what is drawn, what the alternators give, how long a battery lasts.
//!
//! Parked, switches count as turned off, battery master switches as left on; see `crate::network`. What batteries in parallel at different
//! charge pass to each other is no drain: they settle at one voltage within hours and then bear what is drawn by their capacity.

use crate::network::{Draw, Kind, Network};
use crate::solve::{Law, Operating, Operator, SourceModel, join, shorten};
use crate::study::Energy;
use model::quantity::{AmpHours, Amps, Hours, Share};
use model::{PartKind, Sheet};
use ordered::OrderedMap;
use reference::battery;

/// Least current, in amperes, and longest time, in hours, at which it is told when a battery is flat: below 1 mA the battery's own
/// discharge is more, and beyond ten years nobody waits.
const LEAST_DRAIN: f64 = 1e-3;
const LONGEST: f64 = 10.0 * 365.0 * 24.0;

/// What each battery gives to others than batteries in parallel with it, in amperes; nothing when it is charged. In the order of the
/// sources.
fn drains(net: &Network, capacity: &[Option<f64>], point: &Operating) -> Vec<f64> {
    let mut joined: Vec<usize> = (0..net.nodes).collect();
    for (branch, element) in net.branches.iter().zip(&point.elements) {
        let signal = matches!(branch.kind, Kind::Shield { .. } | Kind::Tie);
        if branch.carries && !signal && matches!(element.law, Law::Resistance(_)) {
            join(&mut joined, branch.nodes[0], branch.nodes[1]);
        }
    }
    shorten(&mut joined);
    let at = |node: usize| joined.get(node).copied().unwrap_or(node);
    // By the poles that a group of batteries has in common: what it gives, and its capacity.
    let mut groups: OrderedMap<(usize, usize), (f64, f64)> = OrderedMap::new();
    for (source, capacity) in net.sources.iter().zip(capacity) {
        if let Some(capacity) = capacity {
            let group = groups
                .entry((at(source.plus), at(source.minus)))
                .or_insert((0.0, 0.0));
            group.0 -= point.currents.get(source.branch).copied().unwrap_or(0.0);
            group.1 += capacity;
        }
    }
    net.sources
        .iter()
        .zip(capacity)
        .map(
            |(source, capacity)| match (capacity, groups.get(&(at(source.plus), at(source.minus)))) {
                (Some(capacity), Some((gives, all))) => gives.max(0.0) * capacity / all,
                _ => 0.0,
            },
        )
        .collect()
}

/// The energy side of a sheet. `mean` is the operating point at the chosen state, `off` the one in use with the
/// engine off, `parked` the one parked; all at mean level.
pub(crate) fn energy(
    net: &Network,
    sheet: &Sheet,
    parking: Hours,
    models: &[SourceModel],
    mean: &Operating,
    off: &Operating,
    parked: &Operating,
) -> Energy {
    let mut out = Energy {
        draw: Amps(draw(net, mean)),
        ..Energy::default()
    };
    for model in models {
        if let SourceModel::Limited {
            limit,
            efficiency: None,
            ..
        } = model
        {
            out.available = out.available + Amps(*limit);
        }
    }
    let kinds: Vec<&PartKind> = sheet.parts.values().map(|p| &p.is).collect();
    let capacities: Vec<Option<f64>> = net
        .sources
        .iter()
        .map(|s| match kinds.get(s.part) {
            Some(PartKind::Battery(it)) => Some(it.capacity.or(AmpHours(70.0)).0.max(1e-6)),
            _ => None,
        })
        .collect();
    let standing = drains(net, &capacities, parked);
    let flowing = drains(net, &capacities, off);
    for ((source, standing), flow) in net.sources.iter().zip(standing).zip(flowing) {
        let Some(PartKind::Battery(it)) = kinds.get(source.part) else {
            continue;
        };
        let Some(&id) = net.parts.get(source.part) else {
            continue;
        };
        out.standing = out.standing + Amps(standing);
        let capacity = it.capacity.or(AmpHours(70.0));
        let charge = it.charge.or(Share(0.9)).0.clamp(0.0, 1.0);
        let exponent = battery::peukert_exponent(it.chemistry).usual;
        let full = battery::time_to_flat(capacity, Hours(20.0), Amps(flow), exponent);
        if let Some(full) = full.filter(|_| flow >= LEAST_DRAIN)
            && full.0 * charge <= LONGEST
        {
            out.hours_to_flat.insert(id, full * charge);
        }
        // At standing currents Peukert would promise more than the battery holds, so charge is simply counted.
        let left = charge - standing * parking.0 / capacity.0.max(1e-6);
        out.charge_after_parking.insert(id, Share(left.clamp(0.0, 1.0)));
    }
    out
}

/// What all loads draw together, and what converters lose. What a converter gives is counted where it is drawn.
fn draw(net: &Network, point: &Operating) -> f64 {
    let mut sum = 0.0;
    let converters: ordered::OrderedSet<usize> = net
        .sources
        .iter()
        .filter(|s| {
            net.branches
                .get(s.branch)
                .is_some_and(|b| b.kind == Kind::ConverterOut)
        })
        .map(|s| s.part)
        .collect();
    for (at, branch) in net.branches.iter().enumerate() {
        let current = point.currents.get(at).copied().unwrap_or(0.0);
        match branch.kind {
            Kind::Load(Draw::Supply) if converters.contains(&branch.part) => sum += current,
            Kind::ConverterOut => sum += current,
            Kind::Load(_) => sum += current.abs(),
            _ => {}
        }
    }
    sum
}

/// The operating points that energy needs besides the one at the chosen state.
pub(crate) fn resting_points(
    operator: &mut Operator<'_>,
    off: Vec<crate::solve::Demand>,
    parked: Vec<crate::solve::Demand>,
) -> (Operating, Operating) {
    use model::job::VehicleState;
    operator.set_state(VehicleState::EngineOff, off);
    let off = operator.operate(crate::solve::Level::Mean);
    operator.set_state(VehicleState::Parked, parked);
    let parked = operator.operate(crate::solve::Level::Mean);
    (off, parked)
}
