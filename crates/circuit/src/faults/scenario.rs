//! What one run through time tells: what happened when, and how it looked meanwhile.

use super::device::Edge;
use crate::study::DeviceRef;
use model::quantity::{Amps, Celsius, Seconds, Share, Volts};
use model::{PartId, RunId};
use serde::Serialize;

/// Something that happens.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Happening {
    /// A fuse blows or a breaker trips.
    Opens(DeviceRef),
    /// A breaker closes again by itself.
    Closes(DeviceRef),
    /// The insulation of a run passes what it bears for a short time.
    Damaged(RunId),
    /// The conductor of a run melts through.
    Melts(RunId),
    /// Equipment turns off, below its cut-off or without supply.
    Off(PartId),
    /// Equipment is on again.
    On(PartId),
    /// A contact opens by itself: a relay without its coil's voltage, an isolator.
    Lets(PartId),
    /// A contact closes by itself.
    Pulls(PartId),
    /// An alternator turns without a battery on it: its voltage may rise far. Not simulated.
    Unloaded(PartId),
}

/// Something that happens, and when.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Moment {
    /// Since the break.
    pub time: Seconds,
    /// What.
    pub happening: Happening,
}

/// A run at a moment; of one in pieces the hottest piece and the largest current.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct RunFrame {
    /// Current, as a size.
    pub current: Amps,
    /// Temperature of the conductor.
    pub temperature: Celsius,
}

/// A device at a moment.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct DeviceFrame {
    /// Current, as a size.
    pub current: Amps,
    /// How far it has come towards opening: 1 is open.
    pub age: Share,
    /// Whether it is open.
    pub open: bool,
}

/// Everything at a moment.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Frame {
    /// Since the break.
    pub time: Seconds,
    /// The runs.
    pub runs: Vec<RunFrame>,
    /// The devices.
    pub devices: Vec<DeviceFrame>,
    /// Parts that were on before and are off now.
    pub off: Vec<PartId>,
    /// Current through the short, where there is one.
    pub fault: Option<Amps>,
    /// Voltage of the strongest source at its poles.
    pub source: Volts,
}

/// How everything went at one edge of the operating times, with sources at their strongest or weakest.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Scenario {
    /// The edge.
    pub edge: Edge,
    /// Whether sources were at their strongest.
    pub strong: bool,
    /// What happened, in order.
    pub moments: Vec<Moment>,
    /// How it looked meanwhile, in order; the first at the break itself.
    pub frames: Vec<Frame>,
    /// When the current through the short had ended.
    pub cleared: Option<Seconds>,
    /// Time in which the first wire would have been damaged had nothing cleared, over the time it took; infinite where none would have been.
    pub margin: f64,
    /// Current through the short at first, and at last.
    pub fault: [Amps; 2],
    /// Hottest that each run became.
    pub hottest: Vec<Celsius>,
    /// I²t that each device let through, in A²s, up to its opening.
    pub let_through: Vec<f64>,
    /// Heat made in the short and in all conductors, in joules, until it was cleared or all was steady.
    pub heat: f64,
    /// False when it was given up before all was steady: the numbers up to there hold.
    pub settled: bool,
}
