//! The job: a vehicle, its sheets, and the settings under which they are judged.

use crate::conductor::{Condition, EndingMethod, FittedBy, Jacket, Material, Size, Surroundings};
use crate::fact::Fact::{self, Assumed, Given, Unknown};
use crate::handling::Handling;
use crate::id::{PartId, RunId, TerminalRef};
use crate::kinds::PartKind;
use crate::laying::Laying;
use crate::mounting::Mounting;
use crate::picture::Picture;
use crate::property::PropertySet;
use crate::quantity::{Celsius, Metres, Ohms, OhmsPerMetre};
use crate::terminals::{Role, Terminal, terminals};
use crate::thread::Thread;
use crate::tuning::Tuning;
use crate::{choice, properties};
use ordered::OrderedMap;

/// Fields of a file that this version does not know. They are kept, so that a newer version's work survives.
pub type Extra = OrderedMap<String, serde_json::Value>;

choice! {
    /// Which state of the vehicle a sheet shows.
    pub enum SheetKind {
        Found = "found", "Found";
        Plan = "plan", "Plan";
        Built = "built", "Built";
    }
}

/// A whole job, as one file holds it.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema, serde::Serialize),
    serde(default)
)]
pub struct Job {
    /// What the job is called.
    pub title: String,
    /// The vehicle and the customer's words.
    pub vehicle: VehicleInfo,
    /// The sheets, at most one of each kind.
    pub sheets: OrderedMap<SheetKind, Sheet>,
    /// How the sheets are judged.
    pub settings: Settings,
    /// Complaints, condition record, quote, and what is done.
    #[cfg_attr(feature = "schema", serde(skip_serializing_if = "is_default"))]
    pub thread: Thread,
    /// Pictures, by names of their own: `b1`.
    #[cfg_attr(feature = "schema", serde(skip_serializing_if = "OrderedMap::is_empty"))]
    pub pictures: OrderedMap<String, Picture>,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

properties! {
    /// What the title block says of the vehicle and the job.
    pub struct VehicleInfo {
        /// The vehicle, in the user's words.
        name as "name": String = String::new();
        /// Who drew the sheet.
        drawn_by as "drawn-by": String = String::new();
        /// Date of the drawing, as the user writes it.
        date as "date": String = String::new();
        /// Revision of the drawing.
        revision as "revision": String = String::new();
        /// A remark on the drawing.
        remark as "remark": String = String::new();
    }
}

choice! {
    /// How hard the music works the amplifiers.
    pub enum Duty {
        Idle = "idle", "idle";
        Speech = "speech", "speech";
        Music = "music", "music";
        Loud = "loud", "loud music";
        Tone = "tone", "test tone";
    }
}

choice! {
    /// What the vehicle is doing.
    pub enum VehicleState {
        Parked = "parked", "parked, all off";
        EngineOff = "engine-off", "in use, engine off";
        Idle = "idle", "engine idling";
        Cruise = "cruise", "cruising";
    }
}

choice! {
    /// Which set of limits the checks hold things against.
    pub enum Profile {
        CommonPractice = "common-practice", "common practice of the trade";
        SmallCraft = "small-craft", "small craft, published rules";
    }
}

/// How the sheets are judged.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema, serde::Serialize),
    serde(default)
)]
pub struct Settings {
    /// The conditions.
    pub conditions: Conditions,
    /// Limits that the user set, by their names; they win over the profile's.
    pub limits: OrderedMap<String, f64>,
    /// Names of checks that are not to be run, as the user decided.
    pub allowed: ordered::OrderedSet<String>,
    /// The body of the vehicle.
    pub body: crate::body::Body,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

properties! {
    /// Conditions under which a sheet is solved.
    pub struct Conditions {
        /// What the vehicle is doing.
        state as "state": VehicleState = VehicleState::Cruise;
        /// How hard the music works the amplifiers.
        duty as "duty": Duty = Duty::Loud;
        /// Which set of limits applies.
        profile as "profile": Profile = Profile::CommonPractice;
        /// Temperature in the cabin.
        cabin as "cabin": Fact<Celsius> = Assumed(Celsius(40.0)), -40.0 to 90.0;
        /// Temperature in the load area.
        load_area as "load-area": Fact<Celsius> = Assumed(Celsius(40.0)), -40.0 to 90.0;
        /// Temperature in the engine bay.
        engine_bay as "engine-bay": Fact<Celsius> = Assumed(Celsius(80.0)), -40.0 to 140.0;
        /// How long the vehicle stands before it must still start.
        parking as "parking": Fact<crate::quantity::Hours> = Assumed(crate::quantity::Hours(336.0)), 1.0 to 10000.0;
    }
}

/// One state of the vehicle's wiring.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema, serde::Serialize),
    serde(default)
)]
pub struct Sheet {
    /// The parts.
    pub parts: OrderedMap<PartId, Part>,
    /// The runs of wire between them.
    pub runs: OrderedMap<RunId, Run>,
    /// Readings of the meter that were kept, in the order in which they were taken.
    #[cfg_attr(feature = "schema", serde(skip_serializing_if = "Vec::is_empty"))]
    pub readings: Vec<crate::readings::Reading>,
    /// How the equipment is set, channel by channel.
    #[cfg_attr(feature = "schema", serde(skip_serializing_if = "Vec::is_empty"))]
    pub tunings: Vec<Tuning>,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

/// A point on the board, in board units: at zoom 1 a unit is a CSS pixel. x grows to the right, y downwards.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
pub struct BoardPoint {
    /// To the right.
    pub x: i32,
    /// Downwards.
    pub y: i32,
}

choice! {
    /// By how much a part is turned, clockwise.
    pub enum Turn {
        None = "0", "not turned";
        Quarter = "90", "a quarter turn clockwise";
        Half = "180", "half a turn";
        ThreeQuarters = "270", "a quarter turn anticlockwise";
    }
}

/// A placed thing with terminals.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
pub struct Part {
    /// What people call it on the drawing: `F1`. Unique on its sheet; letters, digits, `_`, up to 24 bytes.
    pub tag: String,
    /// A name in words, perhaps empty.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "String::is_empty"))]
    pub label: String,
    /// What it is.
    pub is: PartKind,
    /// Who fitted it.
    #[cfg_attr(feature = "schema", serde(default = "by_us"))]
    pub fitted_by: FittedBy,
    /// Where its middle stands on the board; a part without a place is arranged when it is drawn.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "Option::is_none"))]
    pub at: Option<BoardPoint>,
    /// How it is turned.
    #[cfg_attr(feature = "schema", serde(default = "not_turned"))]
    pub turn: Turn,
    /// Spot in the body where it is mounted, by name; the body plan gives these names a meaning.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "Option::is_none"))]
    pub place: Option<String>,
    /// How it is fixed there.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "is_default"))]
    pub mounting: Mounting,
    /// What becomes of it from sheet to sheet.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "is_default"))]
    pub handling: Handling,
    /// A remark.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "String::is_empty"))]
    pub note: String,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

#[cfg(feature = "schema")]
fn is_default<T: Default + PartialEq>(it: &T) -> bool {
    *it == T::default()
}
#[cfg(feature = "schema")]
fn by_us() -> FittedBy {
    FittedBy::Us
}
#[cfg(feature = "schema")]
fn not_turned() -> Turn {
    Turn::None
}

/// The name of a place, where there is one: an empty one names nothing, and a part with it would count as placed.
pub(crate) fn named(place: String) -> Option<String> {
    (!place.is_empty()).then_some(place)
}

fn has(set: &dyn PropertySet, name: &str) -> bool {
    set.properties().iter().any(|property| property.name == name)
}

impl Part {
    /// A part of this kind with this tag, not yet placed.
    pub fn new(tag: impl Into<String>, is: impl Into<PartKind>) -> Self {
        Self {
            tag: tag.into(),
            label: String::new(),
            is: is.into(),
            fitted_by: FittedBy::Us,
            at: None,
            turn: Turn::None,
            place: None,
            mounting: Mounting::default(),
            handling: Handling::default(),
            note: String::new(),
            extra: Extra::new(),
        }
    }
    /// All that can be set of it, its kind's properties first.
    #[must_use]
    pub fn sets(&self) -> [&dyn PropertySet; 3] {
        [self.is.set_of(), &self.mounting, &self.handling]
    }
    /// The set that has a property of this name, to be changed; its kind's when none has.
    pub fn set_with(&mut self, name: &str) -> &mut dyn PropertySet {
        if has(&self.mounting, name) {
            &mut self.mounting
        } else if has(&self.handling, name) {
            &mut self.handling
        } else {
            self.is.set_of_mut()
        }
    }
    /// Its terminals.
    #[must_use]
    pub fn terminals(&self) -> Vec<Terminal> {
        terminals(&self.is)
    }
    /// What one of its terminals is for; `None` when it has no such terminal.
    #[must_use]
    pub fn role(&self, terminal: &crate::id::TerminalName) -> Option<Role> {
        self.terminals()
            .into_iter()
            .find(|t| &t.name == terminal)
            .map(|t| t.role)
    }
    /// Its label if it has one, else the name of its kind in the reader's language.
    #[must_use]
    pub fn said(&self) -> words::Saying {
        if self.label.is_empty() {
            self.is.said()
        } else {
            self.label.as_str().into()
        }
    }
    /// Its label if it has one, else the name of its kind.
    #[must_use]
    pub fn name(&self) -> &str {
        if self.label.is_empty() {
            self.is.title()
        } else {
            &self.label
        }
    }
}

/// Where an end of a run is.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema, serde::Serialize),
    serde(rename_all = "kebab-case")
)]
pub enum End {
    /// On a terminal.
    On(TerminalRef),
    /// Nowhere: it lies loose here on the board.
    Loose(BoardPoint),
}

impl End {
    /// The terminal it is on.
    #[must_use]
    pub fn terminal(&self) -> Option<&TerminalRef> {
        match self {
            Self::On(terminal) => Some(terminal),
            Self::Loose(_) => None,
        }
    }
}

properties! {
    /// How one end of a run is finished.
    pub struct Ending {
        /// The method.
        method as "method": Fact<EndingMethod> = Unknown;
        /// Its resistance; taken from the method when not known.
        resistance as "resistance": Fact<Ohms> = Unknown, 0.0 to 1000.0;
    }
}

properties! {
    /// The wire of a run: what it is made of and how it lies.
    pub struct Wire {
        /// Nominal size.
        size as "size": Fact<Size> = Assumed(Size::Metric(crate::quantity::SquareMm(2.5)));
        /// Length of the run, one way.
        length as "length": Fact<Metres> = Assumed(Metres(1.0)), 0.0 to 200.0;
        /// Colour of its insulation.
        jacket as "colour": Jacket = Jacket::plain(crate::conductor::Colour::Red);
        /// What it is made of.
        material as "material": Fact<Material> = Assumed(Material::Copper);
        /// Temperature that the insulation bears for long.
        insulation as "insulation": Fact<Celsius> = Assumed(Celsius(105.0)), 50.0 to 260.0;
        /// Resistance per metre at 20 °C as its maker states it; it then wins over material and size.
        stated_resistance as "stated-resistance": Fact<OhmsPerMetre> = Unknown, 0.000001 to 10.0;
        /// The warmest surroundings on its way.
        surroundings as "surroundings": Fact<Surroundings> = Assumed(Surroundings::Cabin);
        /// How many loaded wires lie together in its bundle, itself counted.
        bundle as "bundle": Fact<u8> = Assumed(1), 1 to 60;
        /// Whether it lies in a sheath or conduit over its whole length.
        sheathed as "sheathed": bool = false;
        /// State it is in.
        condition as "condition": Fact<Condition> = Given(Condition::Sound);
    }
}

/// One piece of wire between two terminals.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema, serde::Serialize))]
pub struct Run {
    /// What people call it on the drawing and on its labels: `W1`. Unique on its sheet.
    pub tag: String,
    /// A name in words, perhaps empty.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "String::is_empty"))]
    pub label: String,
    /// One end.
    pub from: End,
    /// The other end.
    pub to: End,
    /// What it is made of and how it lies.
    #[cfg_attr(feature = "schema", serde(default))]
    pub wire: Wire,
    /// How the end `from` is finished.
    #[cfg_attr(feature = "schema", serde(default))]
    pub from_ending: Ending,
    /// How the end `to` is finished.
    #[cfg_attr(feature = "schema", serde(default))]
    pub to_ending: Ending,
    /// Who fitted it.
    #[cfg_attr(feature = "schema", serde(default = "by_us"))]
    pub fitted_by: FittedBy,
    /// Places of the body it passes through, by name, in order; the body plan gives these names a meaning.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub route: Vec<String>,
    /// How it is laid, and what its copper really is.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "is_default"))]
    pub laying: Laying,
    /// What becomes of it from sheet to sheet.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "is_default"))]
    pub handling: Handling,
    /// Bends that were put by hand on the drawing, from `from` to `to`. Empty: the drawing lays the run itself.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub bends: Vec<BoardPoint>,
    /// A remark.
    #[cfg_attr(feature = "schema", serde(default, skip_serializing_if = "String::is_empty"))]
    pub note: String,
    /// Unknown fields, kept.
    #[cfg_attr(feature = "schema", serde(flatten))]
    pub extra: Extra,
}

impl Run {
    /// A run with this tag between two ends, its wire as it comes from the reel.
    pub fn new(tag: impl Into<String>, from: End, to: End) -> Self {
        Self {
            tag: tag.into(),
            label: String::new(),
            from,
            to,
            wire: Wire::default(),
            from_ending: Ending::default(),
            to_ending: Ending::default(),
            fitted_by: FittedBy::Us,
            route: Vec::new(),
            laying: Laying::default(),
            handling: Handling::default(),
            bends: Vec::new(),
            note: String::new(),
            extra: Extra::new(),
        }
    }
    /// All that can be set of it besides its endings, its wire's properties first.
    #[must_use]
    pub fn sets(&self) -> [&dyn PropertySet; 3] {
        [&self.wire, &self.laying, &self.handling]
    }
    /// The set that has a property of this name, to be changed; its wire when none has.
    pub fn set_with(&mut self, name: &str) -> &mut dyn PropertySet {
        if has(&self.laying, name) {
            &mut self.laying
        } else if has(&self.handling, name) {
            &mut self.handling
        } else {
            &mut self.wire
        }
    }
    /// Both ends.
    #[must_use]
    pub fn ends(&self) -> [&End; 2] {
        [&self.from, &self.to]
    }
    /// Whether it lands on this part.
    #[must_use]
    pub fn touches(&self, part: PartId) -> bool {
        self.ends()
            .iter()
            .any(|end| end.terminal().is_some_and(|t| t.part == part))
    }
}

impl Sheet {
    /// Whether nothing is on it, not even a field of a newer version.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.parts.is_empty()
            && self.runs.is_empty()
            && self.readings.is_empty()
            && self.tunings.is_empty()
            && self.extra.is_empty()
    }
    /// The part of a tag.
    #[must_use]
    pub fn part_by_tag(&self, tag: &str) -> Option<(PartId, &Part)> {
        self.parts
            .iter()
            .find(|(_, part)| part.tag == tag)
            .map(|(id, part)| (*id, part))
    }
    /// The tag of a part; its id where the sheet has no such part.
    #[must_use]
    pub fn part_tag(&self, id: PartId) -> String {
        let part = self.parts.get(&id);
        part.map_or_else(|| id.to_string(), |part| part.tag.clone())
    }
    /// The tag of a run; its id where the sheet has no such run.
    #[must_use]
    pub fn run_tag(&self, id: RunId) -> String {
        let run = self.runs.get(&id);
        run.map_or_else(|| id.to_string(), |run| run.tag.clone())
    }
    /// The run of a tag.
    #[must_use]
    pub fn run_by_tag(&self, tag: &str) -> Option<(RunId, &Run)> {
        self.runs
            .iter()
            .find(|(_, run)| run.tag == tag)
            .map(|(id, run)| (*id, run))
    }
    /// What the terminal is for; `None` when the sheet has no such terminal.
    #[must_use]
    pub fn role(&self, at: &TerminalRef) -> Option<Role> {
        self.parts.get(&at.part)?.role(&at.terminal)
    }
    /// The terminal as people write it: `F1.in`.
    #[must_use]
    pub fn written(&self, at: &TerminalRef) -> String {
        match self.parts.get(&at.part) {
            Some(part) => format!("{}.{}", part.tag, at.terminal),
            None => format!("{}.{}", at.part, at.terminal),
        }
    }
    /// Runs that land on a part.
    pub fn runs_of(&self, part: PartId) -> impl Iterator<Item = (RunId, &Run)> {
        self.runs
            .iter()
            .filter(move |(_, run)| run.touches(part))
            .map(|(id, run)| (*id, run))
    }
    /// The least free tag of a letter: with `F1` and `F2` taken, `F3`. Looks at parts and runs alike.
    #[must_use]
    pub fn free_tag(&self, letter: &str) -> String {
        // Among so many tags one of the first numbers is free; higher ones need not be looked at.
        let mut taken = vec![false; self.parts.len() + self.runs.len() + 1];
        let tags = self
            .parts
            .values()
            .map(|p| p.tag.as_str())
            .chain(self.runs.values().map(|r| r.tag.as_str()));
        for tag in tags {
            let digits = tag.strip_prefix(letter).unwrap_or_default();
            // `F01` and `F+1` are other tags than `F1`.
            if digits.starts_with(|c: char| c.is_ascii_digit() && c != '0')
                && let Ok(number) = digits.parse::<usize>()
                && let Some(slot) = taken.get_mut(number.saturating_sub(1))
            {
                *slot = true;
            }
        }
        let free = taken.iter().position(|taken| !taken).unwrap_or(taken.len());
        format!("{letter}{}", free + 1)
    }
}

impl Job {
    /// The sheet of a kind.
    #[must_use]
    pub fn sheet(&self, kind: SheetKind) -> Option<&Sheet> {
        self.sheets.get(&kind)
    }
    /// A part id that no sheet of the job uses yet.
    #[must_use]
    pub fn free_part_id(&self) -> PartId {
        self.free_part_ids().next().unwrap_or(PartId(0))
    }
    /// A run id that no sheet of the job uses yet.
    #[must_use]
    pub fn free_run_id(&self) -> RunId {
        self.free_run_ids().next().unwrap_or(RunId(0))
    }
    /// Part ids that no sheet of the job uses yet: those after the last, then those left between.
    pub fn free_part_ids(&self) -> impl Iterator<Item = PartId> {
        let ids = |s: &'_ Sheet| s.parts.last_key_value().map(|(id, _)| id.0);
        let last = self.sheets.values().filter_map(ids).max().unwrap_or(0);
        (last..=u32::MAX)
            .skip(1)
            .chain(1..last)
            .map(PartId)
            .filter(|id| !self.sheets.values().any(|s| s.parts.contains_key(id)))
    }
    /// Run ids that no sheet of the job uses yet: those after the last, then those left between.
    pub fn free_run_ids(&self) -> impl Iterator<Item = RunId> {
        let ids = |s: &'_ Sheet| s.runs.last_key_value().map(|(id, _)| id.0);
        let last = self.sheets.values().filter_map(ids).max().unwrap_or(0);
        (last..=u32::MAX)
            .skip(1)
            .chain(1..last)
            .map(RunId)
            .filter(|id| !self.sheets.values().any(|s| s.runs.contains_key(id)))
    }
}
