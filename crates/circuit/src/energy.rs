//! Charging and standing: what is drawn, what the alternators give, how long a battery lasts.

use crate::network::{Draw, Kind, Network};
use crate::solve::{Operating, Operator, SourceModel};
use crate::study::Energy;
use model::quantity::{AmpHours, Amps, Hours, Share};
use model::{PartKind, Sheet};
use reference::battery;

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
    let gives = |point: &Operating, branch: usize| -point.currents.get(branch).copied().unwrap_or(0.0);
    for source in &net.sources {
        let Some(PartKind::Battery(it)) = kinds.get(source.part) else {
            continue;
        };
        let Some(&id) = net.parts.get(source.part) else {
            continue;
        };
        let standing = gives(parked, source.branch).max(0.0);
        out.standing = out.standing + Amps(standing);
        let capacity = it.capacity.or(AmpHours(70.0));
        let charge = it.charge.or(Share(0.9)).0.clamp(0.0, 1.0);
        let exponent = battery::peukert_exponent(it.chemistry).usual;
        let flow = Amps(gives(off, source.branch));
        if let Some(full) = battery::time_to_flat(capacity, Hours(20.0), flow, exponent) {
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
