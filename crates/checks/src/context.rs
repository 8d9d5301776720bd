//! What every check is given: the sheet, the settings, what the engine knows, and the questions that many checks ask.

use crate::lie::Lie;
use crate::mends::rejoining::{self, Loose};
use crate::places::Places;
use crate::unprotected::Stretch;
use crate::wiring::{BODY, Point, TieKind, Wiring, gives_return, live_pole};
use crate::wording::assumed;
use circuit::{Device, DeviceRef, Purpose, RunFlow, Study};
use model::conductor::{Condition, FittedBy};
use model::kinds::supply::DeviceState;
use model::property::PropertySet;
use model::quantity::Metres;
use model::{Part, PartId, PartKind, Role, Run, RunId, Settings, Sheet, TerminalName, TerminalRef};
use ordered::{OrderedMap, OrderedSet};
use std::ops::Deref;
use std::sync::{Mutex, OnceLock, PoisonError};
use words::Saying;

/// Runs that land on each part, in the order of their ids: by the place of the part, and on parts that are not there.
fn on_part(sheet: &Sheet, parts: &Places<PartId>) -> (Vec<Vec<RunId>>, OrderedMap<PartId, Vec<RunId>>) {
    let mut lists: Vec<Vec<RunId>> = vec![Vec::new(); parts.ids().len()];
    let mut elsewhere: OrderedMap<PartId, Vec<RunId>> = OrderedMap::new();
    for (id, run) in &sheet.runs {
        let [from, to] = run.ends().map(|end| end.terminal().map(|t| t.part));
        for part in from.into_iter().chain(to.filter(|to| from != Some(*to))) {
            match parts.of(part).and_then(|at| lists.get_mut(at)) {
                Some(list) => list.push(*id),
                None => elsewhere.entry(part).or_default().push(*id),
            }
        }
    }
    (lists, elsewhere)
}

/// No mend adds more things of one letter than this.
const MOST_ADDED: usize = 64;

/// What a check looks at: a sheet, and what the engine says of it.
pub(crate) struct Ctx<'a> {
    on: SheetCtx<'a>,
    pub(crate) study: &'a Study,
    /// By the place of a run: devices that guard it, by their place in the study.
    guards: Vec<Vec<usize>>,
    /// Stretches of wire that a source can drive current into without crossing a working device.
    pub(crate) stretches: Vec<Stretch>,
    /// Ends that lie loose with where they can have been meant to be, and outputs that are free: looked for once, since many
    /// findings ask.
    loose: OnceLock<Vec<Loose>>,
    free_feeds: OnceLock<Vec<TerminalRef>>,
}

/// What follows from the sheet alone, whatever the engine says of it.
pub(crate) struct SheetCtx<'a> {
    pub(crate) sheet: &'a Sheet,
    pub(crate) settings: &'a Settings,
    pub(crate) wiring: Wiring,
    /// Where parts and runs stand on the sheet: nearly every check asks for both, one after the other.
    parts: Places<PartId>,
    runs: Places<RunId>,
    /// Runs that land on each part, in the order of their ids: by the place of the part, and on parts that are not there.
    on_part: (Vec<Vec<RunId>>, OrderedMap<PartId, Vec<RunId>>),
    /// By the place of a run, whether it is judged for what it is.
    touched: Vec<bool>,
    /// Points that a source's live pole reaches when everything that can close is closed.
    pub(crate) live: OrderedSet<Point>,
    /// Points on which a run lands that is cut through.
    pub(crate) cut: OrderedSet<Point>,
    /// What uses current and whose negative terminal no wire joins to the body or a source; shields do not count.
    pub(crate) ungrounded: OrderedSet<PartId>,
    /// By the letters of tags, the first number that is free and which are taken on the sheet: mends give what they add tags that are
    /// free.
    taken: Mutex<OrderedMap<&'static str, (usize, Vec<bool>)>>,
    /// Islands in which everything that could conduct counts.
    whole: OnceLock<Vec<Point>>,
    /// Runs between a source's negative pole and the body or another such pole, head units and batteries: asked for finding by finding.
    straps: OnceLock<Vec<RunId>>,
    heads: OnceLock<Vec<PartId>>,
    batteries: OnceLock<Vec<PartId>>,
    /// How the sheet lies in the vehicle's body; nothing where no body is told.
    pub(crate) lie: Option<Lie>,
}

/// All that is asked of the sheet can be asked of it with its study.
impl<'a> Deref for Ctx<'a> {
    type Target = SheetCtx<'a>;
    fn deref(&self) -> &SheetCtx<'a> {
        &self.on
    }
}

impl<'a> SheetCtx<'a> {
    /// What can be looked up before, or while, the engine works.
    pub(crate) fn of(sheet: &'a Sheet, settings: &'a Settings) -> Self {
        let parts = Places::new(sheet.parts.keys().copied());
        let runs = Places::new(sheet.runs.keys().copied());
        let mut ctx = Self {
            sheet,
            settings,
            wiring: Wiring::of(sheet),
            on_part: on_part(sheet, &parts),
            parts,
            runs,
            touched: Vec::new(),
            live: OrderedSet::new(),
            cut: OrderedSet::new(),
            ungrounded: OrderedSet::new(),
            taken: Mutex::default(),
            whole: OnceLock::new(),
            straps: OnceLock::new(),
            heads: OnceLock::new(),
            batteries: OnceLock::new(),
            lie: Lie::of(sheet, settings),
        };
        ctx.touched = sheet.runs.values().map(|run| ctx.is_touched(run)).collect();
        let poles: Vec<Point> = sheet
            .parts
            .iter()
            .filter_map(|(id, part)| {
                let pole = live_pole(&part.is)?;
                ctx.wiring.point(*id, pole)
            })
            .collect();
        ctx.live = ctx.wiring.reach(poles, |tie| {
            let open = matches!(
                tie.kind,
                TieKind::Device(_, DeviceState::Open | DeviceState::Missing)
            );
            !open && !tie.ends.contains(&BODY)
        });
        ctx.cut = sheet
            .runs
            .values()
            .filter(|run| run.wire.condition.value() == Some(Condition::Cut))
            .flat_map(|run| run.ends())
            .filter_map(|end| end.terminal())
            .filter_map(|at| ctx.wiring.point(at.part, at.terminal.as_str()))
            .collect();
        ctx.ungrounded = ctx.find_ungrounded();
        ctx
    }

    /// The negative pole of a source.
    pub(crate) fn negative_pole(&self, source: PartId) -> Option<Point> {
        let name = match self.kind(source)? {
            PartKind::Alternator(_) => "case",
            _ => "-",
        };
        self.wiring.point(source, name)
    }

    fn find_ungrounded(&self) -> OrderedSet<PartId> {
        let island = self.whole();
        let at = |point: Point| island.get(point).copied().unwrap_or(point);
        let targets: OrderedSet<Point> = self
            .sheet
            .parts
            .iter()
            .filter(|(_, part)| live_pole(&part.is).is_some())
            .filter_map(|(id, _)| self.negative_pole(*id))
            .chain([BODY])
            .map(at)
            .collect();
        let joined = |id: PartId, part: &Part| {
            let mut negatives = self
                .wiring
                .terminals_of(id)
                .filter(|(terminal, _)| gives_return(&part.is, terminal.role))
                .map(|(_, point)| point)
                .peekable();
            negatives.peek().is_none() || negatives.any(|point| targets.contains(&at(point)))
        };
        self.sheet
            .parts
            .iter()
            .filter(|(id, part)| !joined(**id, part))
            .map(|(id, _)| *id)
            .collect()
    }

    // Names.

    /// The tag of a part.
    pub(crate) fn part_tag(&self, id: PartId) -> String {
        self.sheet.part_tag(id)
    }
    /// The tag of a run.
    pub(crate) fn run_tag(&self, id: RunId) -> String {
        self.sheet.run_tag(id)
    }
    /// A device as people write it: `F1`, `D1.out2`.
    pub(crate) fn device_tag(&self, device: &DeviceRef) -> String {
        match &device.output {
            Some(output) => format!("{}.{output}", self.part_tag(device.part)),
            None => self.part_tag(device.part),
        }
    }
    /// Tags of devices, in this order.
    pub(crate) fn device_tags<'i>(&self, devices: impl IntoIterator<Item = &'i DeviceRef>) -> Vec<String> {
        devices
            .into_iter()
            .map(|device| self.device_tag(device))
            .collect()
    }
    /// Tags of runs, in the order of the drawing's numbers.
    pub(crate) fn run_tags<'i>(&self, ids: impl IntoIterator<Item = &'i RunId>) -> Vec<String> {
        ids.into_iter().map(|id| self.run_tag(*id)).collect()
    }
    /// Tags of parts.
    pub(crate) fn part_tags<'i>(&self, ids: impl IntoIterator<Item = &'i PartId>) -> Vec<String> {
        ids.into_iter().map(|id| self.part_tag(*id)).collect()
    }
    /// A terminal as people write it.
    pub(crate) fn terminal(&self, part: PartId, name: &str) -> String {
        format!("{}.{name}", self.part_tag(part))
    }

    /// The next number above this one with which these letters make a tag that is free on the sheet.
    pub(crate) fn free_number(&self, letters: &'static str, above: usize) -> usize {
        let mut all = self.taken.lock().unwrap_or_else(PoisonError::into_inner);
        let (first, taken) = all.entry(letters).or_insert_with(|| {
            let taken = self.numbers_taken(letters);
            let free = (1..).find(|number| taken.get(*number) != Some(&true));
            (free.unwrap_or(1), taken)
        });
        // One more than there are things is looked at, and what one mend adds on top.
        (*first.max(&mut (above + 1))..)
            .find(|number| taken.get(*number) != Some(&true))
            .unwrap_or(above + 1)
    }
    fn numbers_taken(&self, letters: &str) -> Vec<bool> {
        let (parts, runs) = (&self.sheet.parts, &self.sheet.runs);
        let mut taken = vec![false; parts.len() + runs.len() + MOST_ADDED];
        let parts = parts.values().map(|part| part.tag.as_str());
        for tag in parts.chain(runs.values().map(|run| run.tag.as_str())) {
            let digits = tag.strip_prefix(letters).unwrap_or_default();
            // `F01` and `F+1` are other tags than `F1`.
            if digits.starts_with(|c: char| c.is_ascii_digit() && c != '0')
                && let Some(slot) = digits
                    .parse::<usize>()
                    .ok()
                    .and_then(|number| taken.get_mut(number))
            {
                *slot = true;
            }
        }
        taken
    }
    /// Islands in which everything that could conduct counts: what is switched off or blown is no missing wire.
    pub(crate) fn whole(&self) -> &[Point] {
        self.whole.get_or_init(|| self.wiring.islands(|_| true))
    }

    /// Runs between the negative pole of a source and the body, or another such pole.
    pub(crate) fn straps(&self) -> &[RunId] {
        self.straps.get_or_init(|| {
            let sources = self.sheet.parts.iter();
            let sources = sources.filter(|(_, part)| live_pole(&part.is).is_some());
            let poles: OrderedSet<Point> = sources.filter_map(|(id, _)| self.negative_pole(*id)).collect();
            let joins = |id: &RunId| {
                let ends = self.wiring.ends(*id)?;
                let is_pole = ends.map(|end| poles.contains(&end));
                Some(is_pole.contains(&true) && (ends.contains(&BODY) || !is_pole.contains(&false)))
            };
            let runs = self.sheet.runs.keys().copied();
            runs.filter(|id| joins(id) == Some(true) && self.touched_run(*id))
                .collect()
        })
    }
    fn parts_that(&self, is: fn(&PartKind) -> bool) -> Vec<PartId> {
        let parts = self.sheet.parts.iter().filter(|(_, part)| is(&part.is));
        parts.map(|(id, _)| *id).collect()
    }
    /// The head units of the sheet.
    pub(crate) fn heads(&self) -> &[PartId] {
        self.heads
            .get_or_init(|| self.parts_that(|kind| matches!(kind, PartKind::HeadUnit(_))))
    }
    /// The batteries of the sheet.
    pub(crate) fn batteries(&self) -> &[PartId] {
        self.batteries
            .get_or_init(|| self.parts_that(|kind| matches!(kind, PartKind::Battery(_))))
    }

    // Things.

    pub(crate) fn part(&self, id: PartId) -> Option<&'a Part> {
        self.sheet.parts.at(self.parts.of(id)?).map(|(_, part)| part)
    }
    pub(crate) fn run(&self, id: RunId) -> Option<&'a Run> {
        self.sheet.runs.at(self.runs.of(id)?).map(|(_, run)| run)
    }
    /// What a terminal is for; `None` when the sheet has no such terminal.
    pub(crate) fn role(&self, at: &TerminalRef) -> Option<Role> {
        let mut own = self.wiring.terminals_of(at.part);
        own.find(|(terminal, _)| terminal.name == at.terminal)
            .map(|(terminal, _)| terminal.role)
    }
    pub(crate) fn kind(&self, id: PartId) -> Option<&'a PartKind> {
        self.part(id).map(|part| &part.is)
    }
    /// Runs that land on a part.
    pub(crate) fn runs_of(&self, part: PartId) -> impl Iterator<Item = (RunId, &'a Run)> {
        let (here, elsewhere) = &self.on_part;
        let list = match self.parts.of(part) {
            Some(place) => here.get(place),
            None => elsewhere.get(&part),
        };
        let list = list.into_iter().flatten();
        list.filter_map(|id| Some((*id, self.run(*id)?)))
    }
    /// Runs that land on a terminal.
    pub(crate) fn runs_on(&self, part: PartId, terminal: &str) -> Vec<RunId> {
        let at = TerminalRef::new(part, terminal);
        self.runs_of(part)
            .filter(|(_, run)| run.ends().iter().any(|end| end.terminal() == Some(&at)))
            .map(|(id, _)| id)
            .collect()
    }
    /// The kind and terminal that a run's ends are on.
    pub(crate) fn landings(&self, id: RunId) -> Vec<(PartId, &'a PartKind, &'a TerminalName)> {
        let Some(run) = self.run(id) else {
            return Vec::new();
        };
        run.ends()
            .into_iter()
            .filter_map(|end| end.terminal())
            .filter_map(|at| Some((at.part, self.kind(at.part)?, &at.terminal)))
            .collect()
    }
    /// Length of a run, nothing where it is not known.
    pub(crate) fn length(&self, id: RunId) -> Option<Metres> {
        self.run(id).and_then(|run| run.wire.length.value())
    }

    // Who fitted it.

    /// Whether the vehicle's maker put this part there. The vehicle's own wiring always counts as his.
    pub(crate) fn is_makers(&self, id: PartId) -> bool {
        self.part(id)
            .is_some_and(|part| part.fitted_by == FittedBy::Maker || matches!(part.is, PartKind::Vehicle(_)))
    }
    /// Whether a run is judged for what it is: not when the maker fitted it and everything it joins.
    pub(crate) fn touched_run(&self, id: RunId) -> bool {
        self.runs
            .of(id)
            .is_some_and(|place| self.touched.get(place) == Some(&true))
    }
    fn is_touched(&self, run: &Run) -> bool {
        let joined = || {
            run.ends()
                .into_iter()
                .filter_map(|end| end.terminal())
                .map(|t| t.part)
        };
        let is_source = |id: PartId| {
            matches!(
                self.kind(id),
                Some(PartKind::Vehicle(_) | PartKind::Battery(_) | PartKind::Alternator(_))
            )
        };
        // Battery and alternator leads to the vehicle's own wiring are the vehicle's, whoever drew them.
        let is_vehicle = |id: PartId| matches!(self.kind(id), Some(PartKind::Vehicle(_)));
        if joined().count() == 2 && joined().all(is_source) && joined().any(is_vehicle) {
            return false;
        }
        run.fitted_by != FittedBy::Maker || joined().any(|part| !self.is_makers(part) && !is_source(part))
    }
    /// Whether a part is judged for what it is: not when the maker fitted it and every run on it.
    pub(crate) fn touched_part(&self, id: PartId) -> bool {
        !self.is_makers(id) || self.runs_of(id).any(|(_, run)| run.fitted_by != FittedBy::Maker)
    }
    /// Whether a device does its work, or would once it is put back: not when it is bridged.
    pub(crate) fn counts(&self, device: &Device) -> bool {
        device.works
            || match self.kind(device.device.part) {
                Some(PartKind::Fuse(fuse)) => fuse.state != DeviceState::Bridged,
                Some(PartKind::Breaker(breaker)) => breaker.state != DeviceState::Bridged,
                _ => true,
            }
    }
    // Limits.

    /// A limit: what the user set, else what the profile says, else nothing.
    pub(crate) fn limit(&self, key: &str) -> Option<f64> {
        crate::limits::limit(self.settings, key)
    }

    // What is assumed.

    /// Those of these properties of a run's wire that are assumed, as `W1 size`.
    pub(crate) fn assumed_of_run(&self, id: RunId, properties: &[&str]) -> Vec<Saying> {
        let Some(run) = self.run(id) else {
            return Vec::new();
        };
        properties
            .iter()
            .filter(|name| run.wire.is_assumed(name))
            .map(|name| assumed(&run.tag, name))
            .collect()
    }
    /// Those of these properties of a part that are assumed, as `F1 rating`.
    pub(crate) fn assumed_of_part(&self, id: PartId, properties: &[&str]) -> Vec<Saying> {
        let Some(part) = self.part(id) else {
            return Vec::new();
        };
        properties
            .iter()
            .filter(|name| part.is.set_of().is_assumed(name))
            .map(|name| assumed(&part.tag, name))
            .collect()
    }
    /// The properties of a device that hold its rating, as `F1 rating`, where they are assumed.
    pub(crate) fn assumed_rating(&self, device: &DeviceRef) -> Vec<Saying> {
        let property = match (
            self.kind(device.part),
            device.output.as_ref().map(TerminalName::as_str),
        ) {
            (Some(PartKind::Vehicle(_)), Some("30")) => "permanent-fuse",
            (Some(PartKind::Vehicle(_)), Some("15")) => "switched-fuse",
            (Some(PartKind::Vehicle(_)), _) => "main-fuse",
            _ => "rating",
        };
        self.assumed_of_part(device.part, &[property])
    }
}

impl<'a> Ctx<'a> {
    /// The context of one analysis.
    pub(crate) fn new(sheet: &'a Sheet, settings: &'a Settings, study: &'a Study) -> Self {
        Self::studied(SheetCtx::of(sheet, settings), study)
    }

    /// A sheet with what the engine says of it.
    pub(crate) fn studied(on: SheetCtx<'a>, study: &'a Study) -> Self {
        let mut guards = vec![Vec::new(); on.sheet.runs.len()];
        for (at, device) in study.devices.iter().enumerate() {
            for run in &device.guards {
                let place = on.runs.of(*run);
                if let Some(list) = place.and_then(|place| guards.get_mut(place)) {
                    list.push(at);
                }
            }
        }
        let mut ctx = Self {
            on,
            study,
            guards,
            stretches: Vec::new(),
            loose: OnceLock::new(),
            free_feeds: OnceLock::new(),
        };
        ctx.stretches = crate::unprotected::stretches(&ctx);
        ctx
    }

    /// Ends that lie loose, in the order of their runs.
    pub(crate) fn loose(&self) -> &[Loose] {
        self.loose.get_or_init(|| rejoining::loose_ends(self))
    }
    /// Outputs of blocks that a source can make live and that have no wire yet.
    pub(crate) fn free_feeds(&self) -> &[TerminalRef] {
        self.free_feeds.get_or_init(|| rejoining::free_feeds(self))
    }

    // What the engine says.

    pub(crate) fn flow(&self, id: RunId) -> Option<&'a RunFlow> {
        // As a rule a study tells of each run of the sheet.
        match self.runs.of(id).and_then(|place| self.study.runs.at(place)) {
            Some((of, flow)) if *of == id => Some(flow),
            _ => self.study.runs.get(&id),
        }
    }
    pub(crate) fn purpose(&self, id: RunId) -> Purpose {
        self.flow(id).map(|flow| flow.purpose).unwrap_or_default()
    }
    /// True for what carries supply current from a source.
    pub(crate) fn is_feed(&self, id: RunId) -> bool {
        matches!(self.purpose(id), Purpose::Feed | Purpose::BetweenSources)
    }
    /// True for feeds and returns.
    pub(crate) fn is_supply(&self, id: RunId) -> bool {
        self.is_feed(id) || self.purpose(id) == Purpose::Return
    }
    /// Whether a run is judged for what it carries: also when something that was added hangs on it.
    pub(crate) fn burdened_run(&self, id: RunId) -> bool {
        self.touched_run(id)
            || self
                .flow(id)
                .is_some_and(|flow| flow.serves.iter().any(|load| !self.is_makers(*load)))
    }
    /// The devices that guard a run, in the order of the study.
    pub(crate) fn guards_of(&self, run: RunId) -> impl Iterator<Item = &'a Device> {
        let all = self.runs.of(run).and_then(|place| self.guards.get(place));
        let all = all.map(Vec::as_slice).unwrap_or_default();
        all.iter().filter_map(|at| self.study.devices.get(*at))
    }
    /// Whether a device is judged for what it carries.
    pub(crate) fn burdened_device(&self, device: &Device) -> bool {
        !self.is_makers(device.device.part) || device.serves.iter().any(|load| !self.is_makers(*load))
    }
}
