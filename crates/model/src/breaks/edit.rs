//! What a break does to a sheet, as an edit; the usual history takes it back.

use super::{Break, Contact, coil_letter, reversed_name};
use crate::conductor::{Colour, Condition, Jacket, Material, Size};
use crate::fact::Fact;
use crate::kinds::PartKind;
use crate::kinds::supply::{Ground, GroundSurface, IsolatorKind, Splice};
use crate::quantity::{Metres, Ohms, SquareMm};
use crate::{
    BoardPoint, Change, Edit, End, Job, Part, PartId, Run, RunId, Sheet, SheetKind, TerminalName, TerminalRef,
};
use words::{Saying, say};

impl Break {
    /// The edit that throws this break on a sheet of a job.
    ///
    /// # Errors
    /// When the sheet has no such thing, or the thing cannot break in this way; the text says what would do.
    pub fn edit(&self, job: &Job, kind: SheetKind) -> Result<Edit, Saying> {
        let none = Sheet::default();
        let sheet = job.sheet(kind).unwrap_or(&none);
        let mut work = Work::on(job, sheet);
        work.throw(self)?;
        Ok(Edit::new(self.said(sheet), work.changes(kind)))
    }
}

impl Break {
    /// The sheet as this break leaves it. Ids of what was there stay.
    ///
    /// # Errors
    /// As [`Break::edit`].
    pub fn thrown(&self, sheet: &Sheet) -> Result<Sheet, Saying> {
        let none = Job::default();
        let mut work = Work::on(&none, sheet);
        work.throw(self)?;
        Ok(work.sheet)
    }

    /// The sheet as all these breaks leave it, one after the other. What it has not, or what cannot break in this way, stays as it is.
    #[must_use]
    pub fn all_thrown(breaks: &[Self], sheet: &Sheet) -> Sheet {
        let none = Job::default();
        let mut work = Work::on(&none, sheet);
        for broken in breaks {
            let _ = work.throw(broken);
        }
        work.sheet
    }
}

/// A sheet being broken, and what of it was touched.
struct Work<'a> {
    job: &'a Job,
    sheet: Sheet,
    parts: Vec<PartId>,
    runs: Vec<RunId>,
}

/// Keeps a list of each once, in the order of their touching.
fn touch<T: PartialEq>(list: &mut Vec<T>, it: T) {
    if !list.contains(&it) {
        list.push(it);
    }
}

impl<'a> Work<'a> {
    fn on(job: &'a Job, sheet: &Sheet) -> Self {
        Self {
            job,
            sheet: sheet.clone(),
            parts: Vec::new(),
            runs: Vec::new(),
        }
    }

    /// Parts that are there first, so that runs find them; what is gone goes last.
    fn changes(mut self, kind: SheetKind) -> Vec<Change> {
        let mut changes = Vec::new();
        let mut gone = Vec::new();
        for id in self.parts {
            let to = self.sheet.parts.remove(&id).map(Box::new);
            let list = if to.is_some() { &mut changes } else { &mut gone };
            list.push(Change::Part { sheet: kind, id, to });
        }
        for id in self.runs {
            let to = self.sheet.runs.remove(&id).map(Box::new);
            changes.push(Change::Run { sheet: kind, id, to });
        }
        changes.extend(gone);
        changes
    }

    fn throw(&mut self, broken: &Break) -> Result<(), Saying> {
        match broken {
            Break::Cut { run, .. } => {
                self.run(*run)?.wire.condition = Fact::Given(Condition::Cut);
                Ok(())
            }
            Break::Off { run, far } => self.off(*run, *far),
            Break::Open { part, output: None } => self.open(*part),
            Break::Open {
                part,
                output: Some(output),
            } => self.take_off(*part, Some(output)),
            Break::Grounded { run, at, through } => self.grounded(*run, at.0, *through),
            Break::Joined { points, through } => self.joined(points, *through),
            Break::Resistive { run, more } => self.resistive(*run, *more),
            Break::Poor { part, more } => self.poor(*part, *more),
            Break::Reversed { part, coil } => self.reversed(*part, *coil),
            Break::Dead { part } => {
                self.take_off(*part, None)?;
                self.sheet.parts.remove(part);
                touch(&mut self.parts, *part);
                Ok(())
            }
        }
    }

    fn run(&mut self, id: RunId) -> Result<&mut Run, Saying> {
        touch(&mut self.runs, id);
        let run = self.sheet.runs.get_mut(&id);
        run.ok_or_else(|| say!("break-no-run", run = id.to_string()))
    }

    fn part(&mut self, id: PartId) -> Result<&mut Part, Saying> {
        touch(&mut self.parts, id);
        let part = self.sheet.parts.get_mut(&id);
        part.ok_or_else(|| say!("break-no-part", part = id.to_string()))
    }

    fn tag(&self, id: PartId) -> String {
        self.sheet.part_tag(id)
    }

    fn has(&self, at: &TerminalRef) -> Result<(), Saying> {
        if self.sheet.role(at).is_some() {
            return Ok(());
        }
        let part = self.tag(at.part);
        let names: Vec<String> = match self.sheet.parts.get(&at.part) {
            Some(it) => it
                .terminals()
                .iter()
                .map(|t| format!("{part}.{}", t.name))
                .collect(),
            None => return Err(say!("break-no-part", part = part)),
        };
        let terminal = at.terminal.to_string();
        Err(say!(
            "break-no-terminal",
            part = part,
            terminal = terminal,
            names = names
        ))
    }

    fn add_part(&mut self, part: Part) -> Result<PartId, Saying> {
        let made = |id: &PartId| self.sheet.parts.contains_key(id);
        let id = self.job.free_part_ids().find(|id| !made(id));
        let id = id.ok_or_else(|| say!("break-job-full"))?;
        self.sheet.parts.insert(id, part);
        touch(&mut self.parts, id);
        Ok(id)
    }

    fn add_run(&mut self, run: Run) {
        let made = |id: &RunId| self.sheet.runs.contains_key(id);
        if let Some(id) = self.job.free_run_ids().find(|id| !made(id)) {
            self.sheet.runs.insert(id, run);
            touch(&mut self.runs, id);
        }
    }

    /// A joint of wires; its tag says of what it is left. A name would stand on the drawing in one language only.
    fn splice(&mut self, left_of: &str, places: usize) -> Result<PartId, Saying> {
        let mut joint = PartKind::from(Splice::default());
        let places = places.clamp(2, 8).to_string();
        joint.set("places", &places).map_err(|error| error.said)?;
        let made = self.sheet.free_tag(&format!("{left_of}_"));
        self.add_part(Part::new(made, joint))
    }

    /// A piece of thick copper, a centimetre long, between two points, with a resistance at its first end: what touches.
    fn bridge(&mut self, from: End, to: End, through: Ohms) {
        let mut run = Run::new(self.sheet.free_tag("W"), from, to);
        run.wire.size = Fact::Given(Size::Metric(SquareMm(35.0)));
        run.wire.length = Fact::Given(Metres(0.01));
        run.wire.material = Fact::Given(Material::Copper);
        run.wire.jacket = Jacket::plain(Colour::Black);
        if through.0 > 0.0 {
            run.from_ending.resistance = Fact::Given(Ohms(through.0.min(1000.0)));
            run.to_ending.resistance = Fact::Given(Ohms(0.0));
        }
        self.add_run(run);
    }

    fn off(&mut self, id: RunId, far: bool) -> Result<(), Saying> {
        let place = {
            let run = self.run(id)?;
            let end = if far { &run.to } else { &run.from };
            end.terminal().map(|at| at.part)
        };
        let place = self.place_of(place);
        let run = self.run(id)?;
        let end = if far { &mut run.to } else { &mut run.from };
        *end = End::Loose(place);
        Ok(())
    }

    fn place_of(&self, part: Option<PartId>) -> BoardPoint {
        part.and_then(|part| self.sheet.parts.get(&part)?.at)
            .unwrap_or_default()
    }

    fn open(&mut self, id: PartId) -> Result<(), Saying> {
        let tag = self.tag(id);
        let part = self.part(id)?;
        let (property, value) = match &part.is {
            PartKind::Fuse(_) | PartKind::Breaker(_) => ("state", "open"),
            PartKind::Switch(_) => ("closed", "no"),
            PartKind::Isolator(it) if it.kind == IsolatorKind::Manual => ("closed", "no"),
            PartKind::Plug(_) => ("mated", "no"),
            // What decides by itself is opened where it goes on.
            PartKind::Isolator(_) => return self.take_off(id, Some(&TerminalName::from("aux"))),
            PartKind::Relay(_) => return self.take_off(id, Some(&TerminalName::from("30"))),
            PartKind::Ground(_) => return self.take_off(id, None),
            PartKind::Block(block) => {
                let outputs: Vec<String> = (1..=block.outputs).map(|n| format!("{tag}.out{n}")).collect();
                return Err(say!("break-open-output", part = tag, outputs = outputs));
            }
            _ => return Err(say!("break-cannot-open", part = tag)),
        };
        part.is.set(property, value).map_err(|error| error.said)
    }

    /// Everything off the terminals of a part, or off one of them: wires that shared a terminal stay joined by a splice, a wire alone
    /// ends loose.
    fn take_off(&mut self, id: PartId, only: Option<&TerminalName>) -> Result<(), Saying> {
        if let Some(terminal) = only {
            self.has(&TerminalRef {
                part: id,
                terminal: terminal.clone(),
            })?;
        } else if !self.sheet.parts.contains_key(&id) {
            return Err(say!("break-no-part", part = id.to_string()));
        }
        let tag = self.tag(id);
        let place = self.place_of(Some(id));
        // By terminal, in the order of the runs: which ends were on it.
        let mut off: Vec<(TerminalName, Vec<(RunId, bool)>)> = Vec::new();
        for (run, it) in self.sheet.runs_of(id) {
            for (far, end) in [(false, &it.from), (true, &it.to)] {
                let Some(at) = end.terminal().filter(|at| at.part == id) else {
                    continue;
                };
                if only.is_some_and(|only| *only != at.terminal) {
                    continue;
                }
                match off.iter_mut().find(|(name, _)| *name == at.terminal) {
                    Some((_, ends)) => ends.push((run, far)),
                    None => off.push((at.terminal.clone(), vec![(run, far)])),
                }
            }
        }
        if let Some(terminal) = only.filter(|_| off.is_empty()) {
            return Err(say!("break-nothing-on", terminal = format!("{tag}.{terminal}")));
        }
        for (_, ends) in off {
            let joint = match ends.len() {
                0 | 1 => None,
                many => Some(self.splice(&tag, many)?),
            };
            for (place_there, (run, far)) in ends.into_iter().enumerate() {
                let run = self.run(run)?;
                let end = if far { &mut run.to } else { &mut run.from };
                *end = match joint {
                    Some(joint) => End::On(TerminalRef::new(joint, (place_there + 1).to_string())),
                    None => End::Loose(place),
                };
            }
        }
        Ok(())
    }

    /// The run in two pieces; gives the free place of the joint between them. The piece at its `from` end keeps its id.
    fn split(&mut self, id: RunId, at: f64) -> Result<End, Saying> {
        let run = self.run(id)?.clone();
        let at = if at.is_finite() { at.clamp(0.0, 1.0) } else { 0.5 };
        let joint = self.splice(&run.tag, 3)?;
        let length = run.wire.length.or(Metres(1.0));
        let [near, rest] = [at, 1.0 - at].map(|share| Fact::Given(length * share));
        let on = |place: &str| End::On(TerminalRef::new(joint, place));
        let mut second = run.clone();
        second.tag = self.sheet.free_tag("W");
        second.from = on("2");
        second.wire.length = rest;
        second.from_ending.resistance = Fact::Given(Ohms(0.0));
        let first = self.run(id)?;
        first.to = on("1");
        first.wire.length = near;
        first.to_ending.resistance = Fact::Given(Ohms(0.0));
        self.add_run(second);
        Ok(on("3"))
    }

    /// A point of the body, beside no other.
    fn body(&mut self) -> Result<End, Saying> {
        let ground = Ground {
            surface: Fact::Given(GroundSurface::BareMetal),
            contact: Fact::Given(Ohms(0.0)),
            body: Fact::Given(Ohms(0.0)),
            ..Ground::default()
        };
        let body = self.add_part(Part::new(self.sheet.free_tag("E"), PartKind::from(ground)))?;
        Ok(End::On(TerminalRef::new(body, "stud")))
    }

    fn grounded(&mut self, id: RunId, at: f64, through: Ohms) -> Result<(), Saying> {
        let from = self.split(id, at)?;
        let to = self.body()?;
        // Where nothing is told to lie between, nothing does.
        self.bridge(from, to, through.max(Ohms(1e-9)));
        Ok(())
    }

    fn joined(&mut self, points: &[Contact; 2], through: Ohms) -> Result<(), Saying> {
        let [one, other] = points;
        let [from, to] = match (one, other) {
            // The farther first: the nearer then lies on the piece that keeps its id, which is shorter by what went.
            (Contact::Along(a, near), Contact::Along(b, far)) if a == b => {
                let [near, far] = if near.0 <= far.0 { [near, far] } else { [far, near] };
                let second = self.split(*b, far.0)?;
                [self.split(*a, near.0 / far.0.max(1e-9))?, second]
            }
            _ => [self.contact(one)?, self.contact(other)?],
        };
        self.bridge(from, to, through);
        Ok(())
    }

    /// Where a run can be put that touches this point.
    fn contact(&mut self, point: &Contact) -> Result<End, Saying> {
        match point {
            Contact::Terminal(at) => {
                self.has(at)?;
                Ok(End::On(at.clone()))
            }
            Contact::Along(run, at) => self.split(*run, at.0),
            Contact::Body => self.body(),
        }
    }

    fn resistive(&mut self, id: RunId, more: Ohms) -> Result<(), Saying> {
        let run = self.run(id)?.clone();
        let joint = self.splice(&run.tag, 2)?;
        let on = |place: &str| End::On(TerminalRef::new(joint, place));
        self.bridge(on("2"), run.to, more);
        self.run(id)?.to = on("1");
        Ok(())
    }

    /// Whatever is on the part's first terminal comes to it through a resistance.
    fn poor(&mut self, id: PartId, more: Ohms) -> Result<(), Saying> {
        let tag = self.tag(id);
        let name = match self.part(id)?.is {
            PartKind::Ground(_) => "stud",
            PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Switch(_) | PartKind::Block(_) => "in",
            PartKind::Isolator(_) => "main",
            PartKind::Relay(_) => "30",
            _ => return Err(say!("break-cannot-be-poor", part = tag)),
        };
        let at = TerminalRef::new(id, name);
        let ends: Vec<(RunId, bool)> = self
            .sheet
            .runs_of(id)
            .flat_map(|(run, it)| [(run, false, it.from.clone()), (run, true, it.to.clone())])
            .filter(|(_, _, end)| end.terminal() == Some(&at))
            .map(|(run, far, _)| (run, far))
            .collect();
        let joint = self.splice(&tag, ends.len() + 1)?;
        for (place, (run, far)) in ends.into_iter().enumerate() {
            let run = self.run(run)?;
            let end = if far { &mut run.to } else { &mut run.from };
            *end = End::On(TerminalRef::new(joint, (place + 2).to_string()));
        }
        self.bridge(End::On(TerminalRef::new(joint, "1")), End::On(at), more);
        Ok(())
    }

    fn reversed(&mut self, id: PartId, coil: Option<u8>) -> Result<(), Saying> {
        let stem = coil.map_or("", coil_letter);
        let turned = |end: &End| match end {
            End::On(at) if at.part == id && at.terminal.as_str().starts_with(stem) => {
                let name = at.terminal.as_str();
                let other = match (name.strip_suffix('+'), name.strip_suffix('-')) {
                    (Some(stem), _) => format!("{stem}-"),
                    (_, Some(stem)) => format!("{stem}+"),
                    _ => return end.clone(),
                };
                End::On(TerminalRef::new(id, other))
            }
            _ => end.clone(),
        };
        let mut turned_runs = Vec::new();
        for (run, it) in self.sheet.runs_of(id) {
            let [from, to] = [turned(&it.from), turned(&it.to)];
            if from != it.from || to != it.to {
                turned_runs.push((run, from, to));
            }
        }
        if turned_runs.is_empty() {
            return Err(say!(
                "break-cannot-reverse",
                part = reversed_name(&self.sheet, id, coil)
            ));
        }
        for (id, from, to) in turned_runs {
            let run = self.run(id)?;
            (run.from, run.to) = (from, to);
        }
        Ok(())
    }
}
