//! Parts carried from place to place, and places of the job's own carried to where they are.

use crate::editor::Editor;
use crate::effects::Effects;
use crate::selection::{Selection, Thing};
use kurbo::Point;
use model::edits::{EditError, Words, move_place, set_part_words, set_route};
use model::{Edit, PartId, RunId};
use ordered::OrderedSet;
use words::say;

/// Furthest that a part may be dropped from a place, in pixels on screen: beyond, it stays where it was.
const REACH_PX: f64 = 90.0;

impl Editor {
    /// The name of the place to which something dropped at a point belongs; nothing where all are too far.
    pub(super) fn place_near(&self, at: Point) -> Option<String> {
        let view = self.plan_view()?;
        let place = view.place_near(at)?;
        let spot = view.spots.get(place)?;
        let off = spot.distance(at) * self.camera.zoom;
        (off <= REACH_PX).then(|| view.plan.places.get(place).map(|it| it.name.clone()))?
    }

    /// The place of the job's own in hand: arrow keys move it.
    #[must_use]
    pub fn held_place(&self) -> Option<&str> {
        self.on_body.as_ref()?.held.as_deref()
    }

    /// Takes a place of the job's own in hand, or none. One that only the form has is nobody's to move.
    pub fn take_place(&mut self, place: Option<String>) -> Effects {
        if place.is_some() {
            self.selection = Selection::none();
            self.focus = None;
        }
        self.hold_place(place);
        self.take_effects()
    }

    pub(super) fn hold_place(&mut self, place: Option<String>) {
        let own = place.filter(|name| self.own_spot(name).is_some());
        if let Some(name) = own.as_deref()
            && let Some(place) = self.plan_view().and_then(|view| view.plan.place(name))
        {
            let said = say!("body-place-held", place = place.said());
            self.tell(said);
        }
        if let Some(on_body) = &mut self.on_body {
            on_body.held = own;
        }
        self.out.noticed = true;
        self.out.repaint = true;
    }

    /// Lets go of the place in hand.
    pub(crate) fn let_go_of_place(&mut self) {
        self.hold_place(None);
    }

    /// Where a place of the job's own is drawn.
    pub(super) fn own_spot(&self, name: &str) -> Option<Point> {
        let view = self.plan_view()?;
        let place = view.plan.place_index(name)?;
        let is_own = !view.plan.places.get(place)?.of_the_form;
        view.spots.get(place).copied().filter(|_| is_own)
    }

    /// Puts a place of the job's own where it is, in metres from the front and from the left side. One step; lengths of the
    /// runs that pass it follow.
    pub(super) fn move_place_to(&mut self, place: &str, to: (f64, f64)) {
        if self.refuses() {
            return;
        }
        match move_place(&self.job, place, to.0, to.1) {
            Ok(edit) => {
                self.apply(edit);
                self.hold_place(Some(place.to_owned()));
                let at = self.plan_view().and_then(|view| view.plan.place(place));
                if let Some((said, front, left)) = at.map(|it| (it.said(), it.at.x, it.at.y)) {
                    let metres = |far: f64| words::drawn(far, words::Unit::Metre);
                    self.tell(say!(
                        "body-place-moved",
                        place = said,
                        front = metres(front),
                        left = metres(left)
                    ));
                }
            }
            Err(EditError(why)) => self.tell(why),
        }
        self.out.repaint = true;
    }

    /// Puts a part at a place of the body; the runs on it that are laid through the body find their way anew, unless their
    /// way is locked. One step.
    pub(super) fn carry_to(&mut self, part: PartId, place: &str) {
        match self.placed(part, place) {
            Ok(edit) if edit.changes.is_empty() => {}
            Ok(edit) => {
                let said = self.job.sheet(self.on).and_then(|sheet| {
                    let tag = sheet.parts.get(&part)?.tag.clone();
                    let place = self.plan_view()?.plan.place(place)?.said();
                    Some(say!("body-placed", part = tag, place = place))
                });
                self.apply(edit);
                self.pick_only(&Thing::Part(part));
                if let Some(said) = said {
                    self.tell(said);
                }
            }
            Err(EditError(why)) => self.tell(why),
        }
        self.out.repaint = true;
    }

    /// The edit that puts a part at a place.
    ///
    /// # Errors
    /// When the part is not on the sheet.
    pub fn placed(&self, part: PartId, place: &str) -> Result<Edit, EditError> {
        let there = self.sheet().parts.get(&part).and_then(|it| it.place.as_deref());
        if there == Some(place) || (there.is_none() && place.is_empty()) {
            return Ok(Edit::default());
        }
        let mut edit = set_part_words(&self.job, self.on, part, Words::Place, place)?;
        let mut after = self.job.clone();
        after.apply(edit.clone());
        let Some((plan, sheet)) = body::Plan::of(&after.settings.body).zip(after.sheet(self.on)) else {
            return Ok(edit);
        };
        let on_part: OrderedSet<RunId> = sheet.runs_of(part).map(|(id, _)| id).collect();
        // All of them together: each finds its way around the others as they will lie, not as they lay.
        let routed = body::route_those(&plan, sheet, self.on, &|id, run| {
            !run.route.is_empty() && on_part.contains(&id)
        });
        edit.changes.extend(routed.edit.changes);
        for id in routed.without {
            edit.changes
                .extend(set_route(&after, self.on, id, Vec::new())?.changes);
        }
        Ok(edit)
    }
}
