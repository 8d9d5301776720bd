//! The picture of the sheet on the table: how it is looked at, what of it a gesture moves, and what is drawn.

use crate::editor::Editor;
use crate::selection::Thing;
use crate::tools::{Pick, Tool};
use drawing::{Cut, DisplayList, Lit, Look, Moving, Overlay, Owner, Which, draw_cut};
use model::SheetKind;
use ordered::OrderedSet;

/// What the picture depends on besides the camera. As long as it stays equal, but for what moves, the picture of what does
/// not move stays the same.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// Counts changes of sheet and analysis other than those of a gesture in hand.
    pub still: u64,
    /// The overlay in force.
    pub overlay: Overlay,
    /// What one asked of what feeds it.
    pub feeds: Option<Thing>,
    /// The sheet laid under; what changes on it or against it is counted by `still`.
    pub under: Option<SheetKind>,
    /// What is picked.
    pub picked: OrderedSet<Owner>,
    /// What the pointer or the keyboard is on.
    pub hovered: Option<Owner>,
    /// What the gesture in hand moves.
    pub moving: Moving,
    /// The same of the body plan, while that is on the table: it is painted as a whole.
    pub on_body: Option<crate::SeenOnBody>,
}

impl Editor {
    pub(crate) fn lit(&self) -> Lit {
        let Some(thing) = &self.feeds else {
            return Lit::default();
        };
        let mut lit = Lit::default();
        for part in self.fed_by(thing) {
            if let Some(circuit) = self.analysis.study.circuits.get(&part) {
                lit.parts.extend(circuit.all_parts.iter().copied());
                lit.runs.extend(circuit.all_runs.iter().copied());
                lit.parts.insert(part);
            }
        }
        self.add_chains(thing, &mut lit);
        lit
    }
    /// What the gesture in hand moves or changes; nothing when there is none.
    #[must_use]
    pub fn moving(&self) -> Moving {
        if !self.history.in_gesture() {
            return Moving::default();
        }
        let lands = |run: &model::Run| {
            run.ends()
                .into_iter()
                .filter_map(model::End::terminal)
                .any(|terminal| self.gesture_parts.contains(&terminal.part))
        };
        let runs = self.sheet().runs.iter();
        Moving {
            parts: self.gesture_parts.clone(),
            runs: runs
                .filter(|(id, run)| self.gesture_runs.contains(id) || lands(run))
                .map(|(id, _)| *id)
                .collect(),
        }
    }
    pub(crate) fn still_changed(&mut self) {
        self.still = self.still.wrapping_add(1);
    }
    fn picked(&self) -> OrderedSet<Owner> {
        let mut picked = self.selection.owners();
        if let Some(finding) = self.finding.and_then(|place| self.analysis.findings.get(place)) {
            picked.extend(finding.parts.iter().map(|id| Owner::Part(*id)));
            picked.extend(finding.runs.iter().map(|id| Owner::Run(*id)));
        }
        picked.extend(self.beneath.as_ref().map(|thing| match thing {
            Thing::Part(id) => Owner::UnderPart(*id),
            Thing::Terminal(at) => Owner::UnderPart(at.part),
            Thing::Run(id) => Owner::UnderRun(*id),
        }));
        picked
    }
    fn under_pointer(&self) -> Option<Owner> {
        let focus = self.shown_focus().map(Thing::owner);
        self.hovered.as_ref().map(Thing::owner).or(focus)
    }
    /// What the picture depends on.
    #[must_use]
    pub fn seen(&self) -> Seen {
        let on_body = self.seen_on_body(self.picked(), self.under_pointer());
        let is_board = on_body.is_none();
        Seen {
            still: self.still,
            overlay: self.overlay,
            feeds: self.feeds.clone(),
            under: self.under(),
            picked: if is_board {
                self.picked()
            } else {
                OrderedSet::new()
            },
            hovered: self.under_pointer().filter(|_| is_board),
            moving: self.moving(),
            on_body,
        }
    }
    /// How the sheet is looked at.
    #[must_use]
    pub fn look(&self) -> Look {
        Look {
            overlay: self.overlay,
            picked: self.picked(),
            hovered: self.under_pointer(),
            lit: self.lit(),
            marks: self.marks.clone(),
            under: self.under.clone(),
            covered: self.covered_by_breaks(),
            zoom: self.camera.zoom,
        }
    }
    /// What of the sheet is to be painted, back to front, and what the tool in hand shows on top.
    #[must_use]
    pub fn picture(&self) -> DisplayList {
        let cut = Cut {
            visible: self.camera.visible(),
            areas: &[],
            moving: &Moving::default(),
            which: Which::All,
        };
        let mut list = self.picture_cut(&self.look(), &cut);
        list.items.extend(self.tool_picture().items);
        list
    }
    /// A cut of the sheet's picture, without what the tool in hand shows.
    #[must_use]
    pub fn picture_cut(&self, look: &Look, cut: &Cut<'_>) -> DisplayList {
        if let Some(list) = self.body_picture(look) {
            return if cut.which == Which::Moving {
                DisplayList::default()
            } else {
                list
            };
        }
        let study = Some(self.shown_study()).filter(|_| self.studied && !self.conceals);
        draw_cut(self.sheet(), &self.layout, study, look, cut)
    }
    /// Whether nothing is in hand, picked, suspected or broken.
    fn has_nothing_to_sketch(&self) -> bool {
        !self.is_on_body()
            && matches!(self.tool, Tool::Pick(Pick::Idle) | Tool::Hand)
            && self.shown_focus().is_none()
            && self.selection.is_empty()
            && self.hunt.is_nothing()
            && self.broken.breaks.is_empty()
    }

    /// What the tool in hand shows on top.
    #[must_use]
    pub fn tool_picture(&self) -> DisplayList {
        if self.has_nothing_to_sketch() {
            DisplayList::default()
        } else {
            self.sketched()
        }
    }
    // Apart, so that the page's first picture does without.
    #[inline(never)]
    fn sketched(&self) -> DisplayList {
        let mut list = DisplayList::default();
        self.sketch(&mut list);
        if !self.is_on_body() {
            self.sketch_hunt(&mut crate::sketch::Sketch::new(&mut list, self.camera.zoom));
            self.sketch_broken(&mut list);
        }
        list
    }
}
