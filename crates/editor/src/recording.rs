//! Recording what is found: a run from one thing to another, told by a few letters each, with what was seen of it. What was
//! not seen stays unknown. One step for the undo list, the parts that it needs along with it.

use crate::ask::score;
use crate::editor::Editor;
use crate::effects::Effects;
use crate::roles::{fits, liking};
use crate::selection::{Selection, Thing};
use kurbo::{Point, Rect};
use model::conductor::{FittedBy, Jacket};
use model::edits::EditError;
use model::letters::in_lower;
use model::property::{PropertySet, PropertyType};
use model::{
    BoardPoint, Change, Edit, End, Fact, Part, PartId, PartKind, Role, Run, SheetKind, Terminal,
    TerminalName, TerminalRef, Wire,
};
use ordered::{OrderedSet, Sort as _};
use words::say;

/// Width of the drawer in which runs are recorded, over the left of the window, in pixels.
const DRAWER_PX: f64 = 400.0;

/// Where an end of a recorded run is.
#[derive(Clone, Debug, PartialEq)]
pub enum FoundAt {
    /// On this terminal.
    Terminal(TerminalRef),
    /// On this part, on the terminal of it that suits best.
    Part(PartId),
    /// On a part of this kind that is not on the sheet yet.
    New(&'static str),
    /// Nobody knows yet: it goes somewhere.
    Somewhere,
}

/// An offer for an end: what it is, and in words.
#[derive(Clone, Debug, PartialEq)]
pub struct FoundEnd {
    /// Where the end is.
    pub at: FoundAt,
    /// What to call it, short enough for a button.
    pub text: String,
}

/// What was seen of a run: the written form of a property of its wire, or of both its endings. What is empty is unknown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SeenOfRun {
    /// Its size.
    pub size: String,
    /// Its colour.
    pub colour: String,
    /// Its length, measured.
    pub length: String,
    /// The state it is in.
    pub condition: String,
    /// How its ends are finished.
    pub endings: String,
    /// What is moved when it loses contact.
    pub opens_when: String,
}

/// Properties that were seen, each with its written form.
type Seen<'a> = &'a [(&'a str, &'a String)];

impl Editor {
    /// Offers for an end by what was typed, best first, at most `most`: terminals when a tag and a dot were typed, else
    /// parts, then kinds of new parts. Nothing typed: the parts that were put last.
    #[must_use]
    pub fn ends_like(&self, typed: &str, most: usize) -> Vec<FoundEnd> {
        let sheet = self.sheet();
        let words = self.words();
        if let Some((tag, terminal)) = typed.trim().split_once('.')
            && let Some((id, part)) = sheet
                .parts
                .iter()
                .find(|(_, it)| in_lower(&it.tag) == in_lower(tag))
        {
            let like = in_lower(terminal);
            let all = part
                .terminals()
                .into_iter()
                .filter(|it| in_lower(it.name.as_str()).starts_with(&like));
            return all
                .take(most)
                .map(|terminal| FoundEnd {
                    text: format!("{}.{}", part.tag, terminal.name),
                    at: FoundAt::Terminal(TerminalRef {
                        part: *id,
                        terminal: terminal.name,
                    }),
                })
                .collect();
        }
        let asked: Vec<String> = typed.split_whitespace().map(in_lower).collect();
        let mut found: Vec<(u32, FoundEnd)> = Vec::new();
        for (place, (id, part)) in sheet.parts.iter().enumerate() {
            let text = format!("{} {}", part.tag, words.say(&part.said()));
            let haystack = format!("{text} {}", words.say(&part.is.said()));
            // Of equal ones the last put first: it is where the hand is.
            let late = u32::try_from(place).unwrap_or(u32::MAX) / 8;
            let weight = if asked.is_empty() { late } else { 5 };
            if let Some(score) = score(&haystack, &asked) {
                let at = FoundAt::Part(*id);
                found.push((
                    score.saturating_mul(10).saturating_add(weight),
                    FoundEnd { at, text },
                ));
            }
        }
        if !asked.is_empty() {
            for word in PartKind::WORDS.iter().copied() {
                let Some(kind) = PartKind::from_word(word) else {
                    continue;
                };
                // Found by its name, and by the word that says it is new.
                let text = words.say(&say!("record-new", kind = kind.said_within()));
                if let Some(score) = score(&text, &asked) {
                    let at = FoundAt::New(word);
                    found.push((score.saturating_mul(10), FoundEnd { at, text }));
                }
            }
        }
        found.order_by_key(|(score, _)| std::cmp::Reverse(*score));
        found.into_iter().map(|(_, end)| end).take(most).collect()
    }

    /// The offer for an end of which nobody knows yet where it goes.
    #[must_use]
    pub fn somewhere(&self) -> FoundEnd {
        FoundEnd {
            at: FoundAt::Somewhere,
            text: self.words().text("record-somewhere"),
        }
    }

    /// Records a run between two ends, with what was seen of it, and shows it. Parts that are not there yet are put beside
    /// the other end. On the sheet of what was found, all of it is by an earlier hand until told otherwise.
    ///
    /// # Errors
    /// When something that was seen cannot be read, or no terminal of a part suits.
    pub fn record(&mut self, from: &FoundAt, to: &FoundAt, seen: &SeenOfRun) -> Result<Effects, EditError> {
        let mut recorder = Recorder::of(self);
        let ends = recorder.ends(from, to)?;
        let (edit, run) = recorder.run(ends, seen)?;
        let effects = self.make(Ok(edit))?;
        self.selection = Selection::of(&Thing::Run(run));
        self.focus = Some(Thing::Run(run));
        let ends = self
            .sheet()
            .runs
            .get(&run)
            .map(|run| run.ends().map(|end| end.terminal().map(|at| at.part)));
        let parts = ends.into_iter().flatten().flatten().map(Thing::Part);
        let areas: Vec<kurbo::Rect> = parts
            .chain([Thing::Run(run)])
            .filter_map(|thing| self.area_of(&thing))
            .collect();
        if let Some(area) = areas.into_iter().reduce(|all, one| all.union(one)) {
            // Beside the drawer in which it is told.
            let margins = self.camera.margins;
            self.camera.margins.left = margins.left.max(DRAWER_PX + 40.0);
            self.camera.reveal(area);
            self.camera.margins = margins;
        }
        Ok(effects)
    }
}

/// An end before its terminal is chosen.
struct Candidate {
    part: PartId,
    /// The terminals that may be meant, likeliest first.
    terminals: Vec<Terminal>,
}

/// Makes the edit.
struct Recorder<'e> {
    editor: &'e Editor,
    on: SheetKind,
    by: FittedBy,
    /// Parts that are not on the sheet yet.
    new: Vec<(PartId, Part)>,
}

impl<'e> Recorder<'e> {
    fn of(editor: &'e Editor) -> Self {
        let on = editor.on();
        let by = if on == SheetKind::Found {
            FittedBy::Earlier
        } else {
            FittedBy::Us
        };
        Self {
            editor,
            on,
            by,
            new: Vec::new(),
        }
    }

    /// Both ends, parts that are not there made along.
    fn ends(&mut self, from: &FoundAt, to: &FoundAt) -> Result<[End; 2], EditError> {
        let near = |at: &FoundAt| match at {
            FoundAt::Part(id) => Some(*id),
            FoundAt::Terminal(at) => Some(at.part),
            FoundAt::New(_) | FoundAt::Somewhere => None,
        };
        let first = self.candidate(from, near(to))?;
        let beside = first.as_ref().map(|it| it.part).or(near(from));
        let second = self.candidate(to, beside)?;
        match (first, second) {
            (None, None) => Err(EditError(say!("error-record-nowhere"))),
            (Some(one), None) => Ok([self.on(&one, 0), self.loose(one.part, 1.0)]),
            (None, Some(other)) => Ok([self.loose(other.part, -1.0), self.on(&other, 0)]),
            (Some(one), Some(other)) => {
                let (a, b) = best_pair(&one, &other);
                Ok([self.on(&one, a), self.on(&other, b)])
            }
        }
    }

    fn on(&self, candidate: &Candidate, place: usize) -> End {
        let name = candidate.terminals.get(place).map_or_else(
            || TerminalName::new(String::new()),
            |terminal| terminal.name.clone(),
        );
        End::On(TerminalRef {
            part: candidate.part,
            terminal: name,
        })
    }

    fn candidate(&mut self, at: &FoundAt, beside: Option<PartId>) -> Result<Option<Candidate>, EditError> {
        let sheet = self.editor.sheet();
        let (part, terminals) = match at {
            FoundAt::Somewhere => return Ok(None),
            FoundAt::Terminal(at) => {
                let there = sheet.parts.get(&at.part).map(Part::terminals).unwrap_or_default();
                let it = there.into_iter().filter(|it| it.name == at.terminal).collect();
                (at.part, it)
            }
            FoundAt::Part(id) => {
                let taken: OrderedSet<&TerminalName> = sheet
                    .runs_of(*id)
                    .flat_map(|(_, run)| run.ends())
                    .filter_map(End::terminal)
                    .filter(|at| at.part == *id)
                    .map(|at| &at.terminal)
                    .collect();
                let mut all = sheet.parts.get(id).map(Part::terminals).unwrap_or_default();
                // Terminals on which nothing lands yet come first, in their own order.
                all.order_by_key(|terminal| taken.contains(&terminal.name));
                (*id, all)
            }
            FoundAt::New(word) => {
                let kind = PartKind::from_word(word)
                    .ok_or_else(|| EditError(say!("error-record-kind", kind = *word)))?;
                let id = self.free_id();
                let tag = self.free_tag(kind.letter());
                let mut part = Part::new(tag, kind);
                part.at = Some(self.spot(&part, beside));
                part.fitted_by = self.by;
                let terminals = part.terminals();
                self.new.push((id, part));
                (id, terminals)
            }
        };
        if terminals.is_empty() {
            return Err(EditError(say!("error-record-no-terminal")));
        }
        Ok(Some(Candidate { part, terminals }))
    }

    fn free_id(&self) -> PartId {
        self.editor
            .job()
            .free_part_ids()
            .find(|id| self.new.iter().all(|(taken, _)| taken != id))
            .unwrap_or(PartId(0))
    }

    fn free_tag(&self, letter: &str) -> String {
        let mut sheet = model::Sheet::default();
        sheet.parts.extend(
            self.editor
                .sheet()
                .parts
                .iter()
                .map(|(id, part)| (*id, part.clone())),
        );
        sheet.parts.extend(self.new.iter().cloned());
        sheet.runs.extend(
            self.editor
                .sheet()
                .runs
                .iter()
                .map(|(id, run)| (*id, run.clone())),
        );
        sheet.free_tag(letter)
    }

    /// A free place for a part right of another, or below all where there is none.
    fn spot(&self, part: &Part, beside: Option<PartId>) -> BoardPoint {
        let size = drawing::PartBox::size_of(part);
        // Room for runs and their labels on all sides.
        let covers = |at: Point| Rect::from_center_size(at, size).inflate(30.0, 30.0);
        let layout = self.editor.layout();
        let made = beside.and_then(|id| self.new.iter().find(|(new, _)| *new == id));
        let start = match (beside.and_then(|id| self.editor.area_of(&Thing::Part(id))), made) {
            (Some(area), _) => Point::new(area.x1 + 75.0 + size.width / 2.0, area.center().y),
            (None, Some((_, part))) => {
                let at = part.at.unwrap_or_default();
                Point::new(f64::from(at.x) + 240.0, f64::from(at.y))
            }
            (None, None) => layout
                .bounds()
                .map_or(Point::ZERO, |all| Point::new(all.x0 + 60.0, all.y1 + 140.0)),
        };
        let grid = self.editor.options().grid_units;
        let mut spot = crate::tools::pull::snapped(start, grid);
        // Down, then further right; a sheet has fewer parts than this.
        for step in 0_u32..400 {
            let (column, row) = (step / 20, step % 20);
            let at = start + kurbo::Vec2::new(180.0 * f64::from(column), 100.0 * f64::from(row));
            spot = crate::tools::pull::snapped(at, grid);
            let point = drawing::to_point(spot);
            let area = covers(point);
            let new = |(_, other): &(PartId, Part)| {
                let stands =
                    |at| Rect::from_center_size(drawing::to_point(at), drawing::PartBox::size_of(other));
                other.at.map(stands).is_some_and(|other| other.overlaps(area))
            };
            let on_part = layout.parts().any(|(_, other)| other.outline.overlaps(area));
            if !on_part && !self.new.iter().any(new) {
                break;
            }
        }
        spot
    }

    /// A loose end beside a part: right of it, or left.
    fn loose(&self, part: PartId, side: f64) -> End {
        let area = self.editor.area_of(&Thing::Part(part)).or_else(|| {
            let at = self.new.iter().find(|(id, _)| *id == part)?.1.at?;
            let middle = Point::new(f64::from(at.x), f64::from(at.y));
            Some(kurbo::Rect::from_center_size(middle, (100.0, 60.0)))
        });
        let area = area.unwrap_or_default();
        let x = if side > 0.0 { area.x1 } else { area.x0 };
        let at = Point::new(x + 90.0 * side, area.y1 + 20.0);
        End::Loose(crate::tools::pull::snapped(at, self.editor.options().grid_units))
    }

    /// The run, with what was seen of it.
    fn run(self, [from, to]: [End; 2], seen: &SeenOfRun) -> Result<(Edit, model::RunId), EditError> {
        if from == to {
            return Err(EditError(say!("error-same-end")));
        }
        let job = self.editor.job();
        let id = job.free_run_id();
        let mut run = Run::new(self.free_tag("W"), from, to);
        run.fitted_by = self.by;
        run.wire = Wire {
            size: Fact::Unknown,
            length: Fact::Unknown,
            condition: Fact::Unknown,
            // The rest nobody sees at a glance: it is assumed, and shown as assumed wherever it decides something.
            jacket: Jacket::UNKNOWN,
            ..Wire::default()
        };
        let told: [(&mut dyn PropertySet, Seen<'_>); 2] = [
            (
                &mut run.wire,
                &[
                    ("size", &seen.size),
                    ("colour", &seen.colour),
                    ("length", &seen.length),
                    ("condition", &seen.condition),
                ],
            ),
            (&mut run.laying, &[("opens-when", &seen.opens_when)]),
        ];
        for (set, told) in told {
            for (name, text) in told.iter().filter(|(_, text)| !text.trim().is_empty()) {
                set.set(name, text.trim()).map_err(|why| {
                    EditError(say!(
                        "error-record-seen",
                        name = model::said::name_of(name),
                        why = why.said
                    ))
                })?;
            }
        }
        if !seen.endings.trim().is_empty() {
            for ending in [&mut run.from_ending, &mut run.to_ending] {
                ending.set("method", seen.endings.trim())?;
            }
        }
        for (end, ending) in [(&run.from, &mut run.from_ending), (&run.to, &mut run.to_ending)] {
            if matches!(end, End::Loose(_)) {
                // Where it goes is not known, so it is not known to be a bare end either.
                ending.method = Fact::Unknown;
            }
        }
        let name = say!("edit-record", run = &run.tag);
        let mut changes: Vec<Change> = self
            .new
            .into_iter()
            .map(|(id, part)| Change::Part {
                sheet: self.on,
                id,
                to: Some(Box::new(part)),
            })
            .collect();
        changes.push(Change::Run {
            sheet: self.on,
            id,
            to: Some(Box::new(run)),
        });
        Ok((Edit::new(name, changes), id))
    }
}

/// The terminals of two parts that go together best; of equal ones the first of each.
fn best_pair(one: &Candidate, other: &Candidate) -> (usize, usize) {
    let mut best = (0, 0);
    let mut best_liking = None;
    for (a, from) in one.terminals.iter().enumerate() {
        for (b, to) in other.terminals.iter().enumerate() {
            let how = likes(from.role, to.role);
            if best_liking.is_none_or(|known| how > known) {
                (best, best_liking) = ((a, b), Some(how));
            }
        }
    }
    best
}

fn likes(from: Role, to: Role) -> u8 {
    if fits(from, to) { liking(from, to) } else { 0 }
}

/// The colours that vehicle wiring has most, for buttons (IEC 60757).
pub const USUAL_COLOURS: &[&str] = &["RD", "BK", "YE", "BU", "BN", "WH", "GN", "GY", "VT", "OG"];
/// The sizes that audio and power wiring has most, for buttons, in the series that the reader reads.
#[must_use]
pub fn usual_sizes(read_as: words::Sizes) -> &'static [&'static str] {
    match read_as {
        words::Sizes::SquareMillimetres => &[
            "0.75mm2", "1.5mm2", "2.5mm2", "4mm2", "6mm2", "10mm2", "16mm2", "25mm2", "35mm2", "50mm2",
        ],
        words::Sizes::Awg => &[
            "18AWG", "16AWG", "14AWG", "12AWG", "10AWG", "8AWG", "4AWG", "2AWG", "1/0AWG", "2/0AWG",
        ],
    }
}

/// The words of a choice, for buttons: each written word with its words on screen.
#[must_use]
pub fn choices<P: PropertyType>() -> Vec<(&'static str, words::Saying)> {
    match P::SHAPE {
        model::property::Shape::Choice(all) => all
            .iter()
            .map(|(word, title)| (*word, model::said::choice(title)))
            .collect(),
        _ => Vec::new(),
    }
}
