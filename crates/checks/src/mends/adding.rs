//! Parts and runs that a mend adds, with ids and tags that are free on the sheet.

use crate::context::Ctx;
use crate::mends::{set_part, set_run};
use crate::wires::renewed;
use model::conductor::{Colour, EndingMethod, Jacket, Size};
use model::edits::usual_ending;
use model::laying::Guards;
use model::quantity::Metres;
use model::{Change, End, Ending, Fact, Part, PartId, PartKind, Run, RunId, TerminalRef};
use ordered::OrderedMap;

/// Changes in the making.
pub(crate) struct Adding<'c, 'a> {
    ctx: &'c Ctx<'a>,
    next_part: u32,
    next_run: u32,
    /// By letter, the highest number that was given out.
    numbers: OrderedMap<&'static str, usize>,
    /// Parts that were added, so that runs can end on them.
    added: OrderedMap<PartId, PartKind>,
    pub(crate) changes: Vec<Change>,
}

impl<'c, 'a> Adding<'c, 'a> {
    pub(crate) fn new(ctx: &'c Ctx<'a>) -> Self {
        let above = |last: Option<u32>| last.map_or(1, |id| id.saturating_add(1));
        Self {
            ctx,
            next_part: above(ctx.sheet.parts.last_key_value().map(|(id, _)| id.0)),
            next_run: above(ctx.sheet.runs.last_key_value().map(|(id, _)| id.0)),
            numbers: OrderedMap::new(),
            added: OrderedMap::new(),
            changes: Vec::new(),
        }
    }

    /// A free tag that was not given out yet.
    fn tag(&mut self, letter: &'static str) -> String {
        let last = self.numbers.entry(letter).or_default();
        *last = self.ctx.free_number(letter, *last);
        format!("{letter}{last}")
    }

    /// A new part where this one stands; its id and its tag.
    pub(crate) fn part(&mut self, is: impl Into<PartKind>, beside: PartId) -> (PartId, String) {
        let (id, is) = (PartId(self.next_part), is.into());
        self.next_part = self.next_part.saturating_add(1);
        let tag = self.tag(is.letter());
        let mut part = Part::new(tag.clone(), is);
        part.place = self.ctx.part(beside).and_then(|part| part.place.clone());
        self.added.insert(id, part.is.clone());
        self.changes.push(set_part(id, part));
        (id, tag)
    }

    /// A new run; its id and its tag. Its tag is put in here, and what of its ends is not told is finished as is usual.
    pub(crate) fn run(&mut self, mut run: Run) -> (RunId, String) {
        let id = RunId(self.next_run);
        self.next_run = self.next_run.saturating_add(1);
        let tag = self.tag("W");
        run.tag.clone_from(&tag);
        for (end, ending) in [(&run.from, &mut run.from_ending), (&run.to, &mut run.to_ending)] {
            if ending.method.is_unknown() {
                *ending = self.ending(end);
            }
        }
        self.changes.push(set_run(id, run));
        (id, tag)
    }

    /// The run with this end on a terminal of a part that is added where the end was: its way stays.
    pub(crate) fn moved(&self, run: &Run, end: usize, to: TerminalRef) -> Run {
        let (mut run, to) = (run.clone(), End::On(to));
        let ending = self.ending(&to);
        if end == 0 {
            (run.from, run.from_ending) = (to, ending);
        } else {
            (run.to, run.to_ending) = (to, ending);
        }
        run.bends = Vec::new();
        run
    }

    /// Puts a part into a run, so far along its wire from this end of it, by two of its terminals. The run is split: its first
    /// piece keeps its id. The tag of the part.
    pub(crate) fn put_into(
        &mut self,
        id: RunId,
        end: usize,
        far: Metres,
        is: impl Into<PartKind>,
        [near_name, far_name]: [&str; 2],
    ) -> Option<String> {
        let ctx = self.ctx;
        let run = ctx.run(id)?;
        let length = run.wire.length.value()?;
        let first = far.min(Metres(length.0 / 2.0));
        let beside = run.ends().get(end)?.terminal()?.part;
        let (part, tag) = self.part(is, beside);
        let on = |name: &str| End::On(TerminalRef::new(part, name));
        let (mut near_piece, mut far_piece) = (run.clone(), run.clone());
        // The part stands where this end does, so that all of the way lies behind it.
        near_piece.route.clear();
        near_piece.laying.guards = Guards::default();
        let keep = |to: Metres| match run.wire.length {
            // What is computed is so no more once the run is cut: it is laid anew, or else a guess.
            Fact::Assumed(_) | Fact::Computed(_) => Fact::Assumed(to),
            _ => Fact::Given(to),
        };
        near_piece.wire.length = keep(first);
        far_piece.wire.length = keep(Metres(length.0 - first.0));
        let (near_end, far_end) = (on(near_name), on(far_name));
        let (near_ending, far_ending) = (self.ending(&near_end), self.ending(&far_end));
        if end == 0 {
            (near_piece.to, near_piece.to_ending) = (near_end, near_ending);
            (far_piece.from, far_piece.from_ending) = (far_end, far_ending);
        } else {
            (near_piece.from, near_piece.from_ending) = (near_end, near_ending);
            (far_piece.to, far_piece.to_ending) = (far_end, far_ending);
        }
        near_piece.bends.clear();
        far_piece.bends.clear();
        self.changes.push(set_run(id, near_piece));
        self.run(far_piece);
        Some(tag)
    }

    /// How a wire is usually finished on a terminal; on a fuse by a ring, since what is put in is bolted.
    fn ending(&self, end: &End) -> Ending {
        let method = end.terminal().and_then(|at| {
            let (kind, role) = match self.added.get(&at.part) {
                Some(kind) => {
                    let all = model::terminals::terminals(kind);
                    (kind, all.iter().find(|it| it.name == at.terminal)?.role)
                }
                None => (self.ctx.kind(at.part)?, self.ctx.role(at)?),
            };
            Some(match kind {
                PartKind::Fuse(_) => EndingMethod::CrimpedRing,
                kind => usual_ending(kind, role),
            })
        });
        Ending {
            method: method.map_or(Fact::Unknown, Fact::Given),
            ..Ending::default()
        }
    }
}

/// A wire as it comes from the reel, of this size and length.
pub(crate) fn wire(
    from: TerminalRef,
    to: TerminalRef,
    size: Size,
    length: Fact<Metres>,
    colour: Colour,
) -> Run {
    let mut run = Run::new("", End::On(from), End::On(to));
    run.wire.size = Fact::Given(size);
    run.wire.length = length;
    run.wire.jacket = Jacket::plain(colour);
    run
}

/// A wire like this run, on the way that it takes, between other terminals.
pub(crate) fn beside(run: &Run, from: TerminalRef, to: TerminalRef) -> Run {
    let mut new = renewed(run);
    (new.from, new.to) = (End::On(from), End::On(to));
    new.label = String::new();
    new.note = String::new();
    new.bends = Vec::new();
    new.handling = model::handling::Handling::default();
    new.fitted_by = model::conductor::FittedBy::Us;
    (new.from_ending, new.to_ending) = (Ending::default(), Ending::default());
    new
}

/// The run with this end on another terminal; what it went through on the way there is no more.
pub(crate) fn moved(ctx: &Ctx<'_>, run: &Run, end: usize, to: TerminalRef) -> Run {
    let mut run = run.clone();
    let was = run
        .ends()
        .get(end)
        .and_then(|end| end.terminal())
        .map(|at| at.part);
    let place = |part: PartId| ctx.part(part).and_then(|part| part.place.clone());
    if was.and_then(place) != place(to.part) {
        run.route = Vec::new();
        run.laying.guards = Guards::default();
    }
    let method = ctx
        .kind(to.part)
        .and_then(|kind| Some(usual_ending(kind, ctx.role(&to)?)));
    let ending = Ending {
        method: method.map_or(Fact::Unknown, Fact::Given),
        ..Ending::default()
    };
    if end == 0 {
        (run.from, run.from_ending) = (End::On(to), ending);
    } else {
        (run.to, run.to_ending) = (End::On(to), ending);
    }
    run.bends = Vec::new();
    run
}

/// Takes a run out.
pub(crate) fn without_run(id: RunId) -> Change {
    Change::Run {
        sheet: crate::mends::WRITTEN_FOR,
        id,
        to: None,
    }
}
