//! The short at the far end of every live run, quickly: which device opens, and whether the wire lives to see it.
//!
//! What drives a current into a short at a node is a voltage behind a resistance (Thévenin); both stand in the one solution that the
//! largest current behind each device is found by. So a run costs a few numbers. Most are done with by three bounds at once: the device at the slowest
//! edge of its times, at the least current that the wire could let through hot and the weakest battery give, against the wire at the largest current and without
//! losing heat. Only where these bounds overlap the run is warmed step by step, in all four cases of [`super::Faults::course`]. That warms everything;
//! this warms the run itself alone, and leaves loads and capacitors out. A test holds one against the other.

mod behind;
mod bounds;
mod course;
mod enders;
mod prospect;

pub use prospect::Prospect;

use super::device::Device;
use super::outcome::{Certainty, Within};
use crate::heat::Heating;
use crate::network::{Network, values};
use crate::solve::{SourceModel, System};
use crate::study::{DeviceRef, Protection};
use behind::{look, weakest_battery};
use bounds::is_cleared;
use course::Short;
use enders::enders;
use model::job::Conditions;
use model::quantity::{Amps, Seconds};
use model::{RunId, Sheet};
use ordered::{OrderedMap, Sort as _};
use serde::Serialize;

/// What a short at the far end of a run does, where that is not simply to open the device that guards it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FarShort {
    /// The run.
    pub run: RunId,
    /// The devices that guard it.
    pub devices: Vec<DeviceRef>,
    /// Current through the run at first.
    pub current: Within<Amps>,
    /// When the last of the devices opens at that current; `None` where it need not, by its slowest times and the least current.
    pub opens: Option<Within<Seconds>>,
    /// When the wire is damaged at that current; `None` where it bears it for ever.
    pub lasts: Option<Within<Seconds>>,
    /// Whether the wire is damaged before the device opens.
    pub damaged: Certainty,
    /// Whether the device does not open at all, and the wire bears it.
    pub stays: Certainty,
    /// The end of the run that is shorted: 0 or 1. What feeds the short comes in at the other one.
    #[serde(skip)]
    pub at_end: usize,
    /// What drives the short, for whoever asks what another wire or device would do; then the same of a short at the other end of the run,
    /// where such is fed through it too.
    #[serde(skip)]
    drives: Vec<Drive>,
}

/// What drives a short at one end of a run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Drive {
    /// The share of the fault current that the run carries.
    share: f64,
    /// Temperature at which the run begins, in °C.
    begins: f64,
    /// Voltage in V and resistance in Ω behind the short, strongest and weakest; the run itself is at 20 °C in it.
    behind: [(f64, f64); 2],
}

/// A network with every source at its strongest, solved, and what it is seen through.
pub(crate) struct Solved<'a> {
    pub(crate) net: &'a Network,
    pub(crate) sheet: &'a Sheet,
    pub(crate) system: &'a System,
    /// By node: the voltage there in V for 1 A that enters there; by branch, at either node for 1 A at the other.
    pub(crate) transfer: (&'a [f64], &'a [f64]),
    /// Node that shorts go to: the body, or a negative pole.
    pub(crate) to: &'a dyn Fn(usize) -> Option<usize>,
}

/// The runs whose short is not simply cleared. `temperatures` are those of the conductors as they work, in °C; `before` gives the devices through
/// which a device is fed.
#[allow(clippy::too_many_arguments)]
pub(crate) fn far_shorts(
    it: &Solved<'_>,
    devices: &[Device],
    protection: &OrderedMap<RunId, Protection>,
    guarded: &[Vec<RunId>],
    temperatures: &[f64],
    conditions: &Conditions,
    models: &[SourceModel],
    before: &dyn Fn(usize) -> Vec<usize>,
) -> Vec<FarShort> {
    let mut out = Vec::new();
    let weakest = weakest_battery(it, models);
    let Some((emf, more)) = weakest else { return out };
    // By run, in the order of runs, as protection and runs are: none has to be looked up.
    let mut guarding: Vec<(RunId, usize)> = Vec::new();
    for (device, runs) in guarded.iter().enumerate() {
        guarding.extend(runs.iter().map(|run| (*run, device)));
    }
    guarding.order();
    let (mut guarding, mut told) = (guarding.into_iter().peekable(), protection.iter().peekable());
    let mut guards: Vec<usize> = Vec::new();
    for ((run, (id, wire)), begins) in it.net.runs.iter().zip(&it.sheet.runs).zip(temperatures) {
        guards.clear();
        while let Some((_, device)) = guarding.next_if(|(run, _)| run <= id) {
            guards.push(device);
        }
        let mut from = &[][..];
        while let Some((of, protection)) = told.next_if(|(run, _)| *run <= id) {
            if of == id {
                from = &protection.from;
            }
        }
        let known = |wire: &model::Wire| {
            !(wire.size.is_unknown() || wire.length.is_unknown() || wire.insulation.is_unknown())
        };
        // What is not guarded from each of its sources is another finding, and has no device to wait for.
        let is_guarded = from.iter().all(|from| from.protected && !from.guards.is_empty());
        if guards.is_empty() || !is_guarded || run.line || !run.whole || !known(&wire.wire) {
            continue;
        }
        for end in [0, 1] {
            let Some(found) = look(it, run, end, emf, more) else {
                continue;
            };
            let ohms = it
                .net
                .branches
                .get(run.branch)
                .map_or(0.0, |branch| branch.resistance);
            if is_cleared(&found, devices, &guards, &wire.wire, ohms) {
                continue;
            }
            let short = Short {
                at_end: end,
                heat: Heating::of(&wire.wire, conditions),
                cold: values::wire_at_20(&wire.wire),
                begins: *begins,
                enders: enders(it, devices, &guards, &found, before),
                share: found.share,
                behind: found.behind,
            };
            if short.enders.devices.is_empty() {
                continue;
            }
            let all = from.iter().flat_map(|from| from.guards.iter().cloned());
            if let Some(mut told) = short.tell(*id, all) {
                let other = look(it, run, 1 - end, emf, more);
                told.drives.extend(other.map(|found| Drive {
                    share: found.share,
                    begins: *begins,
                    behind: found.behind,
                }));
                out.push(told);
                break;
            }
        }
    }
    out
}
