//! Another sheet of the job, laid under the one on the table: what of it shows through, and which sign each thing of the
//! sheet on top gets. Signs differ by shape, so that they are told apart in black and white.

use crate::layout::Layout;
use kurbo::Rect;
use model::compare::{Became, Comparison, compare};
use model::{PartId, RunId, Sheet, SheetKind};
use ordered::OrderedSet;
use words::{Words, say};

/// A sheet laid under the one on the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Under {
    /// Which sheet it is.
    pub kind: SheetKind,
    /// Which sheet lies on top.
    pub on: SheetKind,
    /// What is on it.
    pub sheet: Sheet,
    /// The same with what stands on both sheets where it stands on the one on top: so nothing hangs in the air that ends
    /// on a part which was moved since.
    standing: Sheet,
    /// Where everything of it is drawn.
    pub layout: Layout,
    /// What became of everything, from the earlier of the two sheets to the later.
    pub compared: Comparison,
}

/// The sign that a thing gets for what became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sign {
    /// New on the sheet on top: a sleeve all around it.
    New,
    /// On both, but different: the same sleeve in pieces, of a part at its corners.
    Changed,
    /// On the earlier sheet alone, and that lies on top: struck through.
    Goes,
    /// On the sheet beneath alone, and that is the earlier: dashed and struck through.
    Gone,
    /// On the sheet beneath alone, and that is the later: dashed.
    Comes,
}

impl Under {
    /// Lays a sheet of one kind under another. What is on both stands where it stands on the one on top.
    #[must_use]
    pub fn of(kind: SheetKind, sheet: Sheet, on: SheetKind, above: &Sheet) -> Self {
        Self::read_by(kind, sheet, on, above, &Words::english())
    }
    /// The same for a reader.
    #[must_use]
    pub fn read_by(kind: SheetKind, sheet: Sheet, on: SheetKind, above: &Sheet, words: &Words) -> Self {
        let mut standing = sheet.clone();
        stand_as(&mut standing, above);
        let layout = Layout::read_by(&standing, words);
        let mut this = Self {
            kind,
            on,
            sheet,
            standing,
            layout,
            compared: Comparison::default(),
        };
        this.compare_with(on, above);
        this
    }
    /// Compares anew: the sheet on top changed, or it is another one.
    pub fn compare_with(&mut self, on: SheetKind, above: &Sheet) {
        let moved = stand_as(&mut self.standing, above);
        if !moved.is_empty() {
            self.layout.update(&self.standing, &moved);
        }
        self.on = on;
        self.compared = if self.is_earlier() {
            compare(&self.sheet, above)
        } else {
            compare(above, &self.sheet)
        };
    }
    /// Whether the sheet beneath is the earlier of the two.
    #[must_use]
    pub fn is_earlier(&self) -> bool {
        self.kind < self.on
    }
    fn sign(&self, became: Option<&Became>) -> Option<Sign> {
        match (became?, self.is_earlier()) {
            (Became::Kept, _) => None,
            (Became::Changed(_), _) => Some(Sign::Changed),
            (Became::New, true) => Some(Sign::New),
            (Became::New, false) => Some(Sign::Comes),
            (Became::Removed, true) => Some(Sign::Gone),
            (Became::Removed, false) => Some(Sign::Goes),
        }
    }
    /// The sign of a part of either sheet.
    #[must_use]
    pub fn part(&self, id: PartId) -> Option<Sign> {
        self.sign(self.compared.parts.get(&id))
    }
    /// The sign of a run of either sheet.
    #[must_use]
    pub fn run(&self, id: RunId) -> Option<Sign> {
        self.sign(self.compared.runs.get(&id))
    }
    /// The box around everything that shows through; `None` when nothing does.
    #[must_use]
    pub fn bounds(&self) -> Option<Rect> {
        let parts = self
            .layout
            .parts()
            .filter(|(id, _)| self.part(*id).is_some_and(Sign::is_beneath));
        let runs = self
            .layout
            .runs()
            .filter(|(id, _)| self.run(*id).is_some_and(Sign::is_beneath));
        parts
            .map(|(_, part)| part.outline)
            .chain(runs.map(|(_, way)| way.bounds()))
            .reduce(|all, one| all.union(one))
    }
    /// How many things became what, in words: `Found under Plan: 12 kept, 3 changed, 5 new, 7 removed`.
    #[must_use]
    pub fn words(&self) -> String {
        let tally = self.compared.tally();
        self.layout.words().say(&say!(
            "drawn-under",
            kind = self.kind.said(),
            on = self.on.said(),
            kept = tally.kept,
            changed = tally.changed,
            new = tally.new,
            removed = tally.removed
        ))
    }
    /// The signs that can be on the drawing, and what each means there.
    #[must_use]
    pub fn key(&self) -> Vec<(Sign, String)> {
        let words = self.layout.words();
        let (kind, on) = (self.kind.said(), self.on.said());
        if self.is_earlier() {
            vec![
                (Sign::New, words.say(&say!("drawn-new-on", on = on))),
                (Sign::Changed, words.say(&say!("drawn-differs", kind = &kind))),
                (Sign::Gone, words.say(&say!("drawn-gone", kind = &kind))),
            ]
        } else {
            vec![
                (Sign::Goes, words.say(&say!("drawn-goes", kind = &kind))),
                (Sign::Changed, words.say(&say!("drawn-differs", kind = &kind))),
                (Sign::Comes, words.say(&say!("drawn-comes", kind = &kind))),
            ]
        }
    }
}

/// Puts parts where the same part stands on another sheet, turned as it is there. Says which of them moved.
fn stand_as(sheet: &mut Sheet, other: &Sheet) -> OrderedSet<PartId> {
    let mut moved = OrderedSet::new();
    for (id, part) in &mut sheet.parts {
        let there = other
            .parts
            .get(id)
            .filter(|there| there.is.word() == part.is.word());
        if let Some(there) = there
            && there.at.is_some()
            && (there.at, there.turn) != (part.at, part.turn)
        {
            (part.at, part.turn) = (there.at, there.turn);
            moved.insert(*id);
        }
    }
    moved
}

/// Gives parts without a place that of the same part on another sheet, so that a thing stands at the same place on all sheets of
/// a set.
pub fn take_places(sheet: &mut Sheet, from: &Sheet) {
    for (id, part) in &mut sheet.parts {
        let there = from
            .parts
            .get(id)
            .filter(|there| there.is.word() == part.is.word());
        if let (None, Some(there)) = (part.at, there) {
            part.at = there.at;
        }
    }
}

impl Sign {
    /// Whether the thing is on the sheet beneath alone.
    #[must_use]
    pub fn is_beneath(self) -> bool {
        matches!(self, Self::Gone | Self::Comes)
    }
}
