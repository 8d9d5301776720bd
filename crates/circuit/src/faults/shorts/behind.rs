//! What drives a short at one end of a run: a voltage behind a resistance, with sources at their strongest and at their weakest.

use super::Solved;
use crate::network::NetworkRun;
use crate::solve::SourceModel;

/// The weakest battery: the least voltage of any, in V, and by how many Ω more any may hold back than at its strongest.
pub(super) fn weakest_battery(it: &Solved<'_>, models: &[SourceModel]) -> Option<(f64, f64)> {
    let batteries = models.iter().filter_map(|model| match model {
        SourceModel::Battery(battery) => Some((battery.emf, battery.most - battery.least)),
        _ => None,
    });
    let weakest = batteries.reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
    weakest.filter(|_| !it.net.devices.is_empty())
}

/// What is behind a short at one end of a run.
pub(super) struct Found {
    /// The node that is shorted, and the one that it is shorted to.
    pub(super) node: usize,
    pub(super) to: usize,
    /// The share of the fault current that the run carries.
    pub(super) share: f64,
    /// Voltage in V and resistance in Ω behind the short, strongest and weakest; the run itself is at 20 °C in it.
    pub(super) behind: [(f64, f64); 2],
}

/// What is behind a short at this end of a run; nothing where no source feeds it through the run. `emf` and `more` are what
/// [`weakest_battery`] found.
pub(super) fn look(it: &Solved<'_>, run: &NetworkRun, end: usize, emf: f64, more: f64) -> Option<Found> {
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
