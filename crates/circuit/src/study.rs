//! What the engine knows about a sheet: the public, plain-data result of [`crate::study`]. Nothing here computes.
//!
//! Every map is ordered by id, every number is in SI units, and equal sheets give equal studies, natively and in wasm.

use model::quantity::*;
use model::{PartId, RunId, TerminalName, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use serde::Serialize;
use words::Saying;

/// Everything the engine knows about one sheet under one set of settings.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Study {
    /// How the network solution came out.
    pub outcome: Outcome,
    /// What each run carries and how warm it gets.
    pub runs: OrderedMap<RunId, RunFlow>,
    /// What each part does: current, voltage, power, whether it is on.
    pub parts: OrderedMap<PartId, PartFlow>,
    /// Voltage of every terminal against battery negative, mean level. Terminals that nothing ties to a source are absent.
    pub voltages: OrderedMap<String, Volts>,
    /// How well the solution balances.
    pub balance: Balance,
    /// Feed and return of every part that draws supply current.
    pub circuits: OrderedMap<PartId, Circuit>,
    /// Which devices guard each run that can be live.
    pub protection: OrderedMap<RunId, Protection>,
    /// What each fuse, breaker or fused output guards.
    pub devices: Vec<Device>,
    /// Runs for which a short at their far end does not simply open the device that guards them.
    pub shorts: Vec<crate::faults::FarShort>,
    /// Every channel of amplifiers and head units that can drive a speaker, and what it drives.
    pub channels: Vec<ChannelLoad>,
    /// Every speaker, and what reaches it.
    pub drivers: OrderedMap<PartId, Driver>,
    /// Signal and turn-on chains.
    pub signal: Signal,
    /// Charging and standing.
    pub energy: Energy,
    /// Values taken for granted that entered a result: which property of which part or run.
    pub assumed: OrderedSet<Assumption>,
    /// What was odd in the sheet and how it was taken: run ends on terminals that are not there, sources shorted, and so on.
    pub notes: Vec<Saying>,
}

/// How the network solution came out.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// No source on the sheet feeds anything.
    #[default]
    NothingToSolve,
    /// Solved and balanced.
    Solved,
    /// The feed cannot deliver what the loads ask at burst level.
    Collapsed {
        /// The largest share of the asked power that can be delivered, 0 to 1.
        deliverable: Share,
        /// The runs that lose most on the way, worst first.
        blamed_runs: Vec<RunId>,
        /// The parts that lose most on the way, worst first.
        blamed_parts: Vec<PartId>,
    },
    /// The solution did not balance; nothing is reported rather than something wrong.
    Failed {
        /// Why: part of a sentence.
        why: Saying,
    },
}

/// How well a solution balances; both relative numbers stay below 1e-6, or the outcome is [`Outcome::Failed`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Balance {
    /// Largest sum of currents at a node (Kirchhoff's current law).
    pub residual: Amps,
    /// The same over the largest current.
    pub relative_residual: f64,
    /// Power given by the sources less power taken, over the power given.
    pub relative_power: f64,
}

/// The three currents of a branch: they answer different questions.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct ThreeCurrents {
    /// Mean: energy, battery, alternator.
    pub mean: Amps,
    /// Root mean square over the thermal time of wires and fuses: heat.
    pub rms: Amps,
    /// Burst: voltage drop and cut-off.
    pub burst: Amps,
}

/// What a run carries.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct RunFlow {
    /// Currents from the run's `from` end to its `to` end; negative the other way.
    pub current: ThreeCurrents,
    /// Loss of voltage along it at burst level, endings included, as a size.
    pub drop: Volts,
    /// Power turned to heat in the wire at RMS level.
    pub loss: Watts,
    /// Power turned to heat in each ending at RMS level.
    pub ending_loss: [Watts; 2],
    /// Resistance of the wire alone, at its temperature.
    pub wire_resistance: Ohms,
    /// Resistance of each ending.
    pub ending_resistance: [Ohms; 2],
    /// Temperature of the conductor at RMS current.
    pub temperature: Celsius,
    /// Temperature around it.
    pub ambient: Celsius,
    /// Allowable continuous current at its place; `None` where size or insulation is not known.
    pub allowable: Option<Amps>,
    /// Time in which its RMS current brings it from the temperature around it to what its insulation bears for long; `None` where it never
    /// does, or size or insulation is not known.
    pub time_to_limit: Option<Seconds>,
    /// What it is used for, as found from what it joins.
    pub purpose: Purpose,
    /// The parts it serves: loads on the feed or return it belongs to.
    pub serves: OrderedSet<PartId>,
}

/// What a run is used for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Purpose {
    /// Live: it can be reached from a source's live pole without crossing a load.
    Feed,
    /// It can be reached from a source's negative pole or the body without crossing a load.
    Return,
    /// Between two sources' live poles, or otherwise both live at both ends with different sources.
    BetweenSources,
    /// From a channel to a speaker.
    Speaker,
    /// A signal lead.
    Signal,
    /// A turn-on lead.
    TurnOn,
    /// Nothing that works joins to it.
    #[default]
    Nothing,
}

/// What a part does.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct PartFlow {
    /// Current through it: what a load takes, what a source gives (negative when it is charged), what passes a device.
    pub current: ThreeCurrents,
    /// Voltage across a load or source, or lost in a device, at mean level.
    pub voltage: Option<Volts>,
    /// The same at burst level.
    pub burst_voltage: Option<Volts>,
    /// Power taken or given, mean level.
    pub power: Watts,
    /// For what switches or can be off: whether it is on.
    pub on: Option<bool>,
    /// Why it is off, or limited: part of a sentence.
    pub remark: Option<Saying>,
    /// Whether that is so only when it is loud.
    pub only_loud: bool,
    /// Current through each output of a fused block, and through each of the vehicle's factory feeds, by terminal name.
    pub outputs: OrderedMap<String, ThreeCurrents>,
}

/// Feed and return of a part that draws supply current.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Circuit {
    /// One entry for each source whose live pole reaches the part's feed terminal.
    pub feeds: Vec<FeedWay>,
    /// One entry for each of those sources: the way back.
    pub returns: Vec<ReturnWay>,
    /// Everything that belongs to the circuit, feed and return, for lighting it up: runs.
    pub all_runs: OrderedSet<RunId>,
    /// The same: parts, sources and the load included.
    pub all_parts: OrderedSet<PartId>,
    /// Voltage lost from the source's poles to the part's terminals at burst level, feed and return together.
    pub drop: Option<Volts>,
    /// The feed's share of it.
    pub feed_drop: Option<Volts>,
    /// The return's share of it.
    pub return_drop: Option<Volts>,
}

/// How one source feeds a part.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct FeedWay {
    /// The source.
    pub source: PartId,
    /// The terminal of the load that is fed.
    pub terminal: String,
    /// The runs of the way of least resistance, from the source on.
    pub runs: Vec<RunId>,
    /// The parts that way crosses, from the source on, without source and load.
    pub parts: Vec<PartId>,
    /// Devices that *every* way crosses (each a cut of the feed): those really stand before the load.
    pub devices: Vec<DeviceRef>,
    /// Runs on any way, the least-resistance one included.
    pub on_any_way: OrderedSet<RunId>,
    /// Length of the way of least resistance.
    pub length: Metres,
    /// True when there is more than one way (ring or parallel feed).
    pub meshed: bool,
}

/// How a part's return gets back to a source.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ReturnWay {
    /// The source.
    pub source: PartId,
    /// Whether it gets back at all.
    pub complete: bool,
    /// The runs of the way of least resistance, from the load on.
    pub runs: Vec<RunId>,
    /// The parts that way crosses (ground points and the like), from the load on.
    pub parts: Vec<PartId>,
    /// Runs on any way.
    pub on_any_way: OrderedSet<RunId>,
    /// Length of the load's own ground lead: along runs to the first point on the body, or to the source when it is wired back.
    pub lead_length: Metres,
    /// Conductor length of the whole way, body metal not counted.
    pub length: Metres,
    /// Resistance of the whole return network between load and source's negative pole.
    pub resistance: Option<Ohms>,
    /// The run or part on the way with the highest resistance.
    pub weakest_run: Option<RunId>,
    /// The same, where it is a part (a ground point, the body).
    pub weakest_part: Option<PartId>,
    /// Whether it goes through the body of the vehicle.
    pub through_body: bool,
    /// Ground points it relies on.
    pub ground_points: Vec<PartId>,
    /// Signal leads whose shield carries return current, with that current.
    pub shields: OrderedMap<RunId, Amps>,
    /// Overcurrent devices in it: these do not belong there.
    pub devices: Vec<DeviceRef>,
}

/// Names an overcurrent device: a fuse or breaker, or one output of a fused block or of the vehicle's panel.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct DeviceRef {
    /// The part.
    pub part: PartId,
    /// The output's terminal name, where the part holds several devices.
    pub output: Option<TerminalName>,
}

/// An overcurrent device and what it guards.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Device {
    /// Which one.
    pub device: DeviceRef,
    /// Rated current; `None` when it is not known.
    pub rating: Option<Amps>,
    /// Current through it.
    pub current: ThreeCurrents,
    /// Runs it guards: downstream of it, up to the next device or load.
    pub guards: OrderedSet<RunId>,
    /// Whether it stands in a return: from it a negative pole can be reached without a load, and no live pole.
    pub in_return: bool,
    /// Largest current a source can drive through it into a short right behind it.
    pub prospective: Option<Amps>,
    /// Loads behind it.
    pub serves: OrderedSet<PartId>,
    /// False when a blown, missing or bridged device does not do its work.
    pub works: bool,
}

/// How a live run is guarded.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Protection {
    /// For each source that can drive current into it.
    pub from: Vec<ProtectionFrom>,
}

/// How a live run is guarded from one source.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ProtectionFrom {
    /// The source.
    pub source: PartId,
    /// Whether every way from that source's live pole to the run crosses a working device.
    pub protected: bool,
    /// Devices that guard it from this source: the last before the run on each way.
    pub guards: Vec<DeviceRef>,
    /// Where it is not protected: how far its far end is from the source along conductors, which is what counts
    /// against the reach of a first device.
    pub unprotected_to: Option<Metres>,
    /// Whether a device follows further along: the run then is the stretch between source and first device.
    pub device_follows: bool,
    /// Whether the whole of that unprotected stretch lies in sheath or conduit.
    pub sheathed: bool,
    /// Whether the source limits its own current to what the run bears (a converter).
    pub self_limiting: bool,
}

/// What one channel drives.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ChannelLoad {
    /// Amplifier or head unit.
    pub part: PartId,
    /// The channel; the first of the two when bridged. Counts from 1.
    pub channel: u8,
    /// The second channel of a bridged pair.
    pub bridged_with: Option<u8>,
    /// Speakers with a complete loop on it.
    pub drivers: Vec<PartId>,
    /// Nominal load from rated impedances, leads and capacitors left out; bridged: of the whole pair.
    pub nominal: Option<Ohms>,
    /// Smallest |Z| from 20 Hz to 20 kHz of the actual network, leads included.
    pub least: Option<Ohms>,
    /// Where that is.
    pub least_at: Option<Hertz>,
    /// DC resistance at the terminals: what a meter reads with the leads on. `None` for an open loop or a capacitor.
    pub dc_resistance: Option<Ohms>,
    /// Least load that the maker allows in this mode.
    pub minimum: Option<Ohms>,
    /// Power it can deliver into this load, by what is stated.
    pub power: Option<Watts>,
    /// Power delivered at this duty, mean.
    pub mean_power: Watts,
    /// |Z| over frequency, logarithmically spaced.
    pub curve: Vec<(Hertz, Ohms)>,
    /// Terminals of this channel that are tied to body or supply.
    pub touches_body: bool,
    /// Other outputs (part and channel) that a leg of this one is tied to without a speaker between, bridging left out.
    pub tied_to: Vec<(PartId, u8)>,
    /// What was assumed or uncertain (unknown relative phase and the like), each part of a sentence.
    pub remarks: Vec<Saying>,
    /// Runs in its loop.
    pub runs: OrderedSet<RunId>,
}

impl ChannelLoad {
    /// How equipment marks it: `1`, or `1+2` for a bridged pair.
    #[must_use]
    pub fn marking(&self) -> String {
        match self.bridged_with {
            Some(second) => format!("{}+{second}", self.channel),
            None => self.channel.to_string(),
        }
    }
}

/// What reaches one speaker.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Driver {
    /// One entry for each voice coil.
    pub coils: Vec<CoilDrive>,
    /// Whether any coil has a complete loop to a channel.
    pub plays: bool,
    /// Where the loop is broken, in words with the part or run named; `None` when it plays.
    pub gap: Option<Gap>,
    /// Power that the channels can give it, all coils together.
    pub power: Watts,
    /// Whether it pushes when the channel's signal is positive; `None` for a silent one.
    pub in_phase: Option<bool>,
    /// Whether its coils push against each other.
    pub coils_oppose: bool,
    /// From where a filter, capacitor or crossover keeps bass from it; `None` if nothing does.
    pub high_pass: Option<Hertz>,
    /// Loss of level in its leads at nominal impedance.
    pub lead_loss: Decibels,
    /// Channel that drives it, with its part.
    pub channel: Option<(PartId, u8)>,
}

/// Power and polarity of one voice coil.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct CoilDrive {
    /// Power it takes of the channel's full power.
    pub power: Watts,
    /// +1 driven in phase, -1 against, 0 not driven.
    pub polarity: i8,
}

/// Why a speaker has no complete loop.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Gap {
    /// Part of a sentence: `plug P1 is apart`, `nothing is on LS1.-`.
    pub what: Saying,
    /// The part to mark.
    pub part: Option<PartId>,
    /// The run to mark.
    pub run: Option<RunId>,
}

/// Signal and turn-on chains.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Signal {
    /// For every amplifier or processor input that something could feed.
    pub inputs: Vec<InputFed>,
    /// For every part that is told to turn on.
    pub turn_on: OrderedMap<PartId, TurnOnFed>,
    /// For every turn-on output: the current asked of it against what it can give.
    pub turn_on_outputs: Vec<TurnOnOutput>,
    /// For every signal lead: voltage between the grounds it joins, and what its shield carries.
    pub offsets: OrderedMap<RunId, GroundOffset>,
}

/// What feeds one input.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct InputFed {
    /// Amplifier, processor or converter.
    pub part: PartId,
    /// Input number, from 1.
    pub input: u8,
    /// Outputs that feed it: part and terminal. One is right.
    pub by: Vec<(PartId, String)>,
    /// Source channel at the head of the chain: the head unit and `left`, `right` or `bass`.
    pub side: Option<ChannelSide>,
    /// What level arrives against what it takes; `None` when nothing arrives.
    pub level_fits: Option<bool>,
    /// Whether channels with speakers hang on this input.
    pub needed: bool,
    /// Speakers that play what comes in here, further equipment in between included.
    pub drives: Vec<PartId>,
    /// Runs of the chain into it.
    pub runs: OrderedSet<RunId>,
}

/// Side of the stage a signal belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ChannelSide {
    /// Left.
    Left,
    /// Right.
    Right,
    /// Bass or mono.
    Bass,
}

/// Who tells a part to turn on.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TurnOnFed {
    /// Turn-on outputs that reach it.
    pub by: Vec<PartId>,
    /// Runs of the lead.
    pub runs: OrderedSet<RunId>,
    /// Whether it hangs on a feed that is always live.
    pub always_live: bool,
    /// Whether it hangs on a feed that the ignition or a switch switches.
    pub switched_feed: bool,
    /// Whether it turns on by a signal and a signal arrives.
    pub sensed: bool,
    /// Whether it needs a lead at all.
    pub needs_lead: bool,
}

/// What is asked of a turn-on output.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TurnOnOutput {
    /// The part.
    pub part: PartId,
    /// Its terminal.
    pub terminal: String,
    /// Sum of what hangs on it.
    pub asked: Amps,
    /// What it can carry.
    pub capacity: Option<Amps>,
    /// The parts that hang on it.
    pub serves: Vec<PartId>,
}

/// Voltage between the grounds that a signal lead joins.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct GroundOffset {
    /// Difference under load at burst level, as a size.
    pub offset: Volts,
    /// Current through the shield.
    pub shield_current: Amps,
    /// Whether both ends tie their signal ground to the supply ground, so that the offset drives a current.
    pub joined: bool,
}

/// Charging and standing.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Energy {
    /// Mean draw of everything on the sheet, the vehicle's own load included, at the chosen state and duty.
    pub draw: Amps,
    /// What the alternators can give at the chosen state, hot.
    pub available: Amps,
    /// Standing current, parked: what batteries give, less what those in parallel pass to each other. Switches count as turned off, save
    /// a battery master switch (in the only live or return way of a battery to the vehicle or to two parts or more), which is left on unless the sheet says
    /// that it is off. Equipment whose turn-on input hangs on a feed that nothing turns off stays on, without music.
    pub standing: Amps,
    /// For each battery: hours until it is flat at the present draw with the engine off (Peukert). Absent where it gives less than
    /// 1 mA or would last more than ten years.
    pub hours_to_flat: OrderedMap<PartId, Hours>,
    /// For each battery: share of its charge left after the parking time.
    pub charge_after_parking: OrderedMap<PartId, Share>,
}

/// A value taken for granted: the property of a part or run.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Assumption {
    /// The part.
    pub part: Option<PartId>,
    /// The run.
    pub run: Option<RunId>,
    /// The property.
    pub property: &'static str,
}

/// The key under which [`Study::voltages`] holds a terminal: `p3.in`.
#[must_use]
pub fn voltage_key(terminal: &TerminalRef) -> String {
    use std::fmt::Write as _;
    let name = terminal.terminal.as_str();
    // Room for the letter, ten digits and the dot: every terminal has its key.
    let mut key = String::with_capacity(name.len() + 12);
    let _ = write!(key, "{}.{name}", terminal.part);
    key
}
