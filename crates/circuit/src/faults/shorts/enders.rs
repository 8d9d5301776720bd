//! Which devices end the current through a run, and which share of the fault current each of them carries.

use super::Solved;
use super::behind::Found;
use crate::faults::device::Device;
use ordered::Sort as _;

/// Most devices that are looked at for one run.
pub(super) const MOST_IN_LINE: usize = 8;

/// The devices that end the current through a run, each with the share of the fault current that it carries.
#[derive(Default)]
pub(super) struct Enders<'a> {
    pub(super) devices: Vec<(&'a Device, f64)>,
    /// Whether all of them have to open: none carries all that the run carries. Else the first does.
    pub(super) all: bool,
}

impl Enders<'_> {
    /// The time in which they end the current, of the time in which each of them would open.
    pub(super) fn time(&self, of_each: impl Iterator<Item = f64>) -> f64 {
        if self.all {
            of_each.fold(0.0, f64::max)
        } else {
            of_each.fold(f64::INFINITY, f64::min)
        }
    }
}

/// Those in line with the run carry what it carries. A single guard does, as all that comes to the run comes through it, and so does what
/// feeds that guard alone, and so on; of several guards it has to be found out.
pub(super) fn enders<'a>(
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
