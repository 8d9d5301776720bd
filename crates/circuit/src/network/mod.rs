//! A sheet as an electrical network: nodes, and branches between them.
//!
//! Nodes are terminals, joined where they are one point electrically (bus, splice, bar of a block, mated cavities of a
//! plug). The body of the vehicle is node 0, always there. Branches are everything between two nodes: runs, fuses,
//! contacts, straps, ground points, sources and loads. Everything is an index into a list, so that nothing is looked
//! up by name once the network stands.

mod build;
mod master;
pub(crate) mod values;

use crate::study::DeviceRef;
use model::quantity::Amps;
use model::{PartId, Role, RunId, TerminalName, TerminalRef};
use ordered::OrderedSet;

/// The body of the vehicle.
pub const BODY: usize = 0;

/// Least resistance of anything, in ohms: 10 µΩ, about what a clean bolted joint of heavy cable has. Wires without
/// length and joints without resistance are taken as this, so that every branch has a current of its own.
pub const LEAST_RESISTANCE: f64 = 1e-5;

/// When a branch that can open conducts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Closes {
    /// Always.
    Always,
    /// Never as things stand: a switch that is open, a blown fuse.
    Never,
    /// Unless the vehicle is parked: the ignition.
    InUse,
    /// With the engine running.
    EngineOn,
    /// With the coil of this relay (index of its coil branch) energised, or at rest.
    Relay {
        /// Branch of the coil.
        coil: usize,
        /// Coil voltage at which it pulls in, in volts.
        pull_in: f64,
        /// True for the contact made when energised.
        energised: bool,
    },
    /// When the voltage from the branch's first node to `minus` reaches `closes_at` volts.
    Sensing {
        /// Node the voltage is measured against.
        minus: usize,
        /// Voltage at which it closes.
        closes_at: f64,
    },
    /// One way only, from first node to second, losing this voltage.
    Diode {
        /// Voltage lost.
        drop: f64,
    },
    /// With the part's electronics turned on.
    TurnedOn,
}

/// What a branch is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// The wire of a run with both endings.
    Wire {
        /// Index of the run.
        run: usize,
    },
    /// The shield of a signal run.
    Shield {
        /// Index of the run.
        run: usize,
    },
    /// How a part ties the shield of its line jacks to its supply negative.
    Tie,
    /// A fuse, breaker, or fused output.
    Device {
        /// Index of the device.
        device: usize,
    },
    /// Contact of a switch, relay or isolator.
    Contact,
    /// A ground point: its contact and the body metal behind it, as far as it is its own.
    Ground,
    /// Body metal that ground points share, from one spot to the next.
    Metal,
    /// A strap or lead of the vehicle's own wiring.
    VehiclePath,
    /// The electronic output that tells others to turn on.
    TurnOnOut,
    /// A battery, first node positive.
    Battery,
    /// An alternator, first node positive.
    Alternator,
    /// The output of a converter, first node positive.
    ConverterOut,
    /// Something that draws: see [`Draw`].
    Load(Draw),
}

/// What a load branch stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Draw {
    /// The working supply of a part: amplifier, head unit, processor, load, input of a converter.
    Supply,
    /// Its idle current beside it.
    Idle,
    /// A turn-on input.
    TurnOn,
    /// A relay's coil.
    Coil,
    /// The vehicle's own base load.
    Base,
    /// Leakage of a capacitor.
    Leakage,
}

/// Something between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Branch {
    /// What it is.
    pub kind: Kind,
    /// The nodes it joins.
    pub nodes: [usize; 2],
    /// Index of the part it belongs to; of no meaning for runs.
    pub part: usize,
    /// Its resistance in ohms at 20 °C, at least [`LEAST_RESISTANCE`]; of sources the series resistance.
    pub resistance: f64,
    /// When it conducts.
    pub closes: Closes,
    /// Whether tracing passes through it: anything that conducts or could after a switch is thrown or a fuse put back.
    pub carries: bool,
}

/// One overcurrent device.
#[derive(Clone, Debug, PartialEq)]
pub struct NetworkDevice {
    /// Which one.
    pub name: DeviceRef,
    /// Its rating.
    pub rating: Option<Amps>,
    /// Whether it does its work.
    pub works: bool,
    /// Its branch.
    pub branch: usize,
}

/// One source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NetworkSource {
    /// The part.
    pub part: usize,
    /// Its live pole.
    pub plus: usize,
    /// Its negative pole.
    pub minus: usize,
    /// Its branch.
    pub branch: usize,
}

/// One feed terminal of a part that draws supply current.
#[derive(Clone, Debug, PartialEq)]
pub struct Consumer {
    /// The part.
    pub part: usize,
    /// The terminal that is fed.
    pub terminal: TerminalName,
    /// Its node.
    pub plus: usize,
    /// Node of the part's return.
    pub minus: usize,
}

/// One terminal of the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct NetworkTerminal {
    /// Index of its part.
    pub part: usize,
    /// Its name.
    pub name: TerminalName,
    /// What it is for.
    pub role: Role,
    /// Its node.
    pub node: usize,
}

/// One run in the network.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NetworkRun {
    /// Its identity.
    pub id: RunId,
    /// Nodes of its ends; a loose end has a node of its own.
    pub nodes: [usize; 2],
    /// Indices of the terminals it lands on.
    pub terminals: [Option<usize>; 2],
    /// Its branch: wire, or shield for a signal run between line jacks.
    pub branch: usize,
    /// Length in metres as taken.
    pub length: f64,
    /// Whether the length is known.
    pub length_known: bool,
    /// Whether it runs between line jacks, so that only its shield counts here.
    pub line: bool,
    /// Whether it conducts from end to end.
    pub whole: bool,
}

/// The network of a sheet.
#[derive(Clone, Debug, Default)]
pub struct Network {
    /// Number of nodes; the body is node 0.
    pub nodes: usize,
    /// The parts, in the order of their ids.
    pub parts: Vec<PartId>,
    /// The terminals, part by part.
    pub terminals: Vec<NetworkTerminal>,
    /// Where each part's terminals begin in `terminals`; one more entry than parts.
    pub first_terminal: Vec<usize>,
    /// The runs, in the order of their ids.
    pub runs: Vec<NetworkRun>,
    /// All branches.
    pub branches: Vec<Branch>,
    /// Overcurrent devices.
    pub devices: Vec<NetworkDevice>,
    /// Sources.
    pub sources: Vec<NetworkSource>,
    /// Parts that draw.
    pub consumers: Vec<Consumer>,
    /// Signal runs between line jacks, by the part on which they land.
    pub line_runs: ordered::OrderedMap<usize, Vec<usize>>,
    /// Properties taken for granted: part or run, and the name.
    pub assumed: OrderedSet<(Option<PartId>, Option<RunId>, &'static str)>,
    /// What was odd, and how it was taken.
    pub notes: Vec<words::Saying>,
}

impl Network {
    /// Index of a part.
    #[must_use]
    pub fn part_index(&self, part: PartId) -> Option<usize> {
        self.parts.binary_search(&part).ok()
    }

    /// The branches of a part that pass current on.
    pub(crate) fn ways_through(&self, part: usize) -> impl Iterator<Item = usize> + '_ {
        let branches = self.branches.iter().enumerate();
        let own = branches.filter(move |(_, branch)| {
            branch.part == part && matches!(branch.kind, Kind::Device { .. } | Kind::Contact | Kind::Ground)
        });
        own.map(|(at, _)| at)
    }

    /// The run that a branch is the wire or the shield of.
    #[must_use]
    pub fn run_of(&self, branch: usize) -> Option<usize> {
        match self.branches.get(branch)?.kind {
            Kind::Wire { run } | Kind::Shield { run } => Some(run),
            _ => None,
        }
    }

    /// The overcurrent device that a branch is.
    #[must_use]
    pub fn device_of(&self, branch: usize) -> Option<usize> {
        match self.branches.get(branch)?.kind {
            Kind::Device { device } => Some(device),
            _ => None,
        }
    }

    /// Index of a terminal.
    #[must_use]
    pub fn terminal_index(&self, at: &TerminalRef) -> Option<usize> {
        let part = self.part_index(at.part)?;
        let (first, end) = (
            *self.first_terminal.get(part)?,
            *self.first_terminal.get(part + 1)?,
        );
        (first..end).find(|&t| self.terminals.get(t).is_some_and(|it| it.name == at.terminal))
    }

    /// Node of a terminal.
    #[must_use]
    pub fn node_of(&self, at: &TerminalRef) -> Option<usize> {
        self.terminal_index(at)
            .and_then(|t| self.terminals.get(t))
            .map(|t| t.node)
    }

    /// Node of a part's terminal by name.
    #[must_use]
    pub fn node_by_name(&self, part: usize, name: &str) -> Option<usize> {
        let (first, end) = (
            *self.first_terminal.get(part)?,
            *self.first_terminal.get(part + 1)?,
        );
        self.terminals
            .get(first..end)?
            .iter()
            .find(|t| t.name.as_str() == name)
            .map(|t| t.node)
    }

    /// The terminals of a part.
    #[must_use]
    pub fn terminals_of(&self, part: usize) -> &[NetworkTerminal] {
        match (self.first_terminal.get(part), self.first_terminal.get(part + 1)) {
            (Some(&first), Some(&end)) => self.terminals.get(first..end).unwrap_or_default(),
            _ => &[],
        }
    }

    /// Signal runs between line jacks that land on a part.
    #[must_use]
    pub fn line_runs_of(&self, part: usize) -> &[usize] {
        self.line_runs.get(&part).map(Vec::as_slice).unwrap_or_default()
    }
}
