//! The body plan on the table: the same sheet, drawn where its things are in the car. Parts are carried from place to place,
//! and runs on which they hang are laid anew; places of the job's own are carried to where they are; everything else that is done to a job is done here as on the board.

use crate::camera::{Camera, ScreenPoint};
use crate::editor::Editor;
use crate::effects::{Effects, Open};
use crate::input::{Input, Key, Mods, PointerKind};
use crate::selection::{Selection, Thing};
use drawing::{DisplayList, Look, Owner, PlanView, draw_plan};
use kurbo::{Point, Rect};
use model::edits::{EditError, Words, move_place, set_part_words, set_route};
use model::{Edit, PartId, RunId};
use ordered::OrderedSet;
use words::say;

/// Furthest that a part may be dropped from a place, in pixels on screen: beyond, it stays where it was.
const REACH_PX: f64 = 90.0;

/// The plan on the table, and what the pointer does there.
#[derive(Clone, Debug)]
pub(crate) struct OnBody {
    /// Where everything lies; nothing while nobody has told the form of the body.
    pub(crate) view: Option<PlanView>,
    /// How the board was looked at before.
    board: Camera,
    hand: Hand,
    /// The place of the job's own that arrow keys move.
    held: Option<String>,
}

/// What the pointer meets on the plan.
#[derive(Clone, Debug, PartialEq)]
enum Met {
    Nothing,
    Thing(Thing),
    /// The mark of a finding, by its place in the list.
    Finding(usize),
    /// A place of the job's own, by its name.
    Place(String),
}

#[derive(Clone, Debug, PartialEq)]
enum Hand {
    Idle,
    /// Pressed, not yet moved past the slop.
    Pressing {
        on: Met,
        at: ScreenPoint,
        kind: PointerKind,
    },
    /// A part follows the pointer.
    Carrying {
        part: PartId,
        at: Point,
    },
    /// A place of the job's own follows the pointer.
    Moving {
        place: String,
        at: Point,
    },
}

/// What the picture of the body plan depends on beside the sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SeenOnBody {
    picked: OrderedSet<Owner>,
    hovered: Option<Owner>,
}

/// A route that a run can take, for a choice.
#[derive(Clone, Debug, PartialEq)]
pub struct WayOffer {
    /// The places and passages on it.
    pub route: Vec<String>,
    /// Its length, in words.
    pub length: String,
    /// What speaks for and against it, in sentences.
    pub reasons: Vec<String>,
    /// Whether the run has it now.
    pub is_taken: bool,
}

impl Editor {
    /// Whether the body plan is on the table.
    #[must_use]
    pub fn is_on_body(&self) -> bool {
        self.on_body.is_some()
    }
    /// Where everything lies on the body plan; nothing while the board is on the table, or the form is not known.
    #[must_use]
    pub fn plan_view(&self) -> Option<&PlanView> {
        self.on_body.as_ref()?.view.as_ref()
    }
    /// What decides how large letters are, and what labels of runs say.
    fn look_on_body(&self) -> Look {
        Look {
            zoom: self.camera.zoom,
            overlay: self.overlay,
            ..Look::default()
        }
    }
    pub(crate) fn study_on_body(&self) -> Option<&circuit::Study> {
        Some(self.shown_study()).filter(|_| !self.conceals)
    }
    fn made_view(&self) -> Option<PlanView> {
        let laid = body::lay(self.sheet(), &self.job.settings);
        PlanView::of(
            &self.job.settings.body,
            &laid,
            self.study_on_body(),
            &self.look_on_body(),
            &self.words,
        )
    }
    /// Letters on the plan keep their size on the screen, and labels have the room that the overlay needs: after a change of
    /// zoom or overlay it is laid out anew, where that matters.
    pub(crate) fn follow_look(&mut self) {
        if self.on_body.is_none() {
            return;
        }
        let look = self.look_on_body();
        if self.plan_view().is_some_and(|view| !view.suits(&look)) {
            let view = self.made_view();
            if let Some(on_body) = &mut self.on_body {
                on_body.view = view;
            }
            self.still_changed();
            self.out.repaint = true;
        }
    }
    /// Shows the whole plan. Letters grow as it gets smaller, and what stands beside the car with them: after a few rounds
    /// both hold.
    pub(crate) fn fit_body(&mut self) {
        for _ in 0..8 {
            let Some(all) = self.plan_view().map(PlanView::bounds) else {
                return;
            };
            self.camera.fit(all, 1.4);
            let look = self.look_on_body();
            if self.plan_view().is_some_and(|view| view.suits(&look)) {
                return;
            }
            self.follow_look();
        }
    }
    /// Turns from the board to the body plan, and back.
    pub(crate) fn turn_body(&mut self) {
        self.interrupt();
        self.hovered = None;
        match self.on_body.take() {
            Some(on_body) => {
                let now = self.camera;
                self.camera = Camera {
                    width: now.width,
                    height: now.height,
                    margins: now.margins,
                    ..on_body.board
                };
                self.tell(say!("sheet-turned", sheet = self.on.said()));
            }
            None => {
                self.tool = crate::tools::Tool::default();
                self.on_body = Some(Box::new(OnBody {
                    view: self.made_view(),
                    board: self.camera,
                    hand: Hand::Idle,
                    held: None,
                }));
                self.fit();
                let known = self.plan_view().is_some();
                self.tell(if known {
                    say!("body-turned")
                } else {
                    say!("body-form-unknown")
                });
            }
        }
        self.still_changed();
        self.out.noticed = true;
        self.out.repaint = true;
    }
    /// The plan follows the sheet and the body. One that just got a form is shown as a whole.
    pub(crate) fn follow_body(&mut self) {
        if self.on_body.is_none() {
            return;
        }
        let view = self.made_view();
        let fresh = view.is_some() && self.plan_view().is_none();
        if let Some(on_body) = &mut self.on_body {
            on_body.view = view;
        }
        if fresh {
            self.fit();
        }
        self.still_changed();
    }
    pub(crate) fn seen_on_body(
        &self,
        picked: OrderedSet<Owner>,
        hovered: Option<Owner>,
    ) -> Option<SeenOnBody> {
        self.is_on_body().then_some(SeenOnBody { picked, hovered })
    }
    /// The plan as it is painted; nothing while the board is on the table.
    pub(crate) fn body_picture(&self, look: &Look) -> Option<DisplayList> {
        let on_body = self.on_body.as_ref()?;
        let study = self.study_on_body();
        Some(on_body.view.as_ref().map_or_else(DisplayList::default, |view| {
            draw_plan(view, self.sheet(), study, look)
        }))
    }
    /// What lies under a point of the plan.
    pub(crate) fn body_thing_at(&self, at: Point, kind: PointerKind) -> Option<Thing> {
        let view = self.plan_view()?;
        let slop = self.options.reach_px(kind).min(16.0) / self.camera.zoom;
        Some(match view.hit(at, slop)? {
            Owner::Part(id) => Thing::Part(id),
            Owner::Run(id) => Thing::Run(id),
            _ => return None,
        })
    }
    /// The box around a thing on the plan.
    pub(crate) fn body_area_of(&self, thing: &Thing) -> Option<Rect> {
        let view = self.plan_view()?;
        match thing {
            Thing::Part(id) => view.parts.get(id).map(|part| part.area),
            Thing::Terminal(at) => view.parts.get(&at.part).map(|part| part.area),
            Thing::Run(id) => {
                let points = view.runs.get(id)?.points.iter();
                points
                    .map(|point| Rect::from_center_size(*point, (8.0, 8.0)))
                    .reduce(|all, one| all.union(one))
            }
        }
    }

    /// An input while the plan is on the table, other than those that move the paper.
    pub(crate) fn body_input(&mut self, input: Input) {
        let Some(hand) = self.on_body.as_ref().map(|it| it.hand.clone()) else {
            return;
        };
        let next = match (hand, input) {
            (Hand::Idle, Input::Move(pointer)) => {
                let over = self.body_thing_at(self.camera.to_board(pointer.at), pointer.kind);
                self.hover(over);
                Hand::Idle
            }
            (Hand::Idle, Input::Down(pointer, _)) => {
                self.out.taken = true;
                Hand::Pressing {
                    on: self.met_at(self.camera.to_board(pointer.at), pointer.kind),
                    at: pointer.at,
                    kind: pointer.kind,
                }
            }
            (Hand::Pressing { on, at, kind }, Input::Move(pointer)) => {
                if at.distance(pointer.at) <= self.options.slop_px(kind) {
                    Hand::Pressing { on, at, kind }
                } else {
                    match on {
                        Met::Thing(Thing::Part(part)) if !self.looks_only => {
                            self.out.open = Some(Open::Nothing);
                            self.out.repaint = true;
                            Hand::Carrying {
                                part,
                                at: self.camera.to_board(pointer.at),
                            }
                        }
                        Met::Place(place) if !self.looks_only => {
                            self.out.open = Some(Open::Nothing);
                            self.out.repaint = true;
                            Hand::Moving {
                                place,
                                at: self.camera.to_board(pointer.at),
                            }
                        }
                        _ => {
                            // Nothing to carry: the paper goes along.
                            self.fingers.shift_by(pointer.id, at);
                            self.paper_input(input);
                            Hand::Idle
                        }
                    }
                }
            }
            (Hand::Pressing { on, .. }, Input::Up(_)) => {
                self.body_click(on);
                Hand::Idle
            }
            (Hand::Carrying { part, .. }, Input::Move(pointer)) => {
                self.out.repaint = true;
                Hand::Carrying {
                    part,
                    at: self.camera.to_board(pointer.at),
                }
            }
            (Hand::Carrying { part, .. }, Input::Up(pointer)) => {
                self.out.taken = true;
                let at = self.camera.to_board(pointer.at);
                self.set_hand(Hand::Idle);
                if let Some(place) = self.place_near(at) {
                    self.carry_to(part, &place);
                }
                return;
            }
            (Hand::Pressing { on, .. }, Input::Held) => {
                self.body_click(on);
                Hand::Idle
            }
            (Hand::Moving { place, .. }, Input::Move(pointer)) => {
                self.out.repaint = true;
                Hand::Moving {
                    place,
                    at: self.camera.to_board(pointer.at),
                }
            }
            (Hand::Moving { place, .. }, Input::Up(pointer)) => {
                self.out.taken = true;
                self.set_hand(Hand::Idle);
                let at = self.camera.to_board(pointer.at);
                if let Some(to) = self.plan_view().map(|view| view.metres_at(at)) {
                    self.move_place_to(&place, to);
                }
                return;
            }
            (Hand::Carrying { .. } | Hand::Moving { .. }, Input::Lost | Input::Key(Key::Escape, _)) => {
                self.out.repaint = true;
                Hand::Idle
            }
            (_, Input::Lost | Input::Left) => {
                self.hover(None);
                Hand::Idle
            }
            (hand, _) => hand,
        };
        self.set_hand(next);
    }

    fn set_hand(&mut self, hand: Hand) {
        if let Some(on_body) = &mut self.on_body {
            on_body.hand = hand;
        }
    }

    /// Lets go of a part that is carried. True when one was.
    pub(crate) fn drop_carried(&mut self) -> bool {
        let carries = self
            .on_body
            .as_ref()
            .is_some_and(|it| matches!(it.hand, Hand::Carrying { .. } | Hand::Moving { .. }));
        self.set_hand(Hand::Idle);
        carries
    }

    /// What a pointer meets: marks lie on top; of a place of the job's own, its dot.
    fn met_at(&self, at: Point, kind: PointerKind) -> Met {
        let Some(view) = self.plan_view() else {
            return Met::Nothing;
        };
        // A mark takes what lies on it, and a finger a little more; what lies under it is picked beside it.
        let slop = if kind == PointerKind::Touch { 7.0 } else { 0.0 } / self.camera.zoom;
        if let Some(finding) = view.mark_at(&self.look(), at, slop) {
            return Met::Finding(finding as usize);
        }
        let thing = |slop: f64| match view.hit(at, slop) {
            Some(Owner::Part(id)) => Some(Met::Thing(Thing::Part(id))),
            _ => None,
        };
        let reach = self.options.reach_px(kind).min(16.0) / self.camera.zoom;
        let place = || {
            let place = view.own_place_at(at, reach)?;
            view.plan.places.get(place).map(|it| Met::Place(it.name.clone()))
        };
        thing(0.0)
            .or_else(place)
            .or_else(|| self.body_thing_at(at, kind).map(Met::Thing))
            .unwrap_or(Met::Nothing)
    }

    fn body_click(&mut self, on: Met) {
        self.hold_place(None);
        match on {
            Met::Thing(thing) => {
                self.pick_only(&thing);
                self.out.open = Some(Open::Details(thing));
            }
            Met::Finding(finding) => self.show_finding(finding),
            Met::Place(place) => {
                self.selection = Selection::none();
                self.focus = None;
                self.out.open = Some(Open::Nothing);
                self.hold_place(Some(place));
            }
            Met::Nothing => {
                self.selection = Selection::none();
                self.focus = None;
                self.out.open = Some(Open::Nothing);
            }
        }
        self.out.noticed = true;
        self.out.repaint = true;
    }

    /// The name of the place to which something dropped at a point belongs; nothing where all are too far.
    fn place_near(&self, at: Point) -> Option<String> {
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
    fn hold_place(&mut self, place: Option<String>) {
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
    fn own_spot(&self, name: &str) -> Option<Point> {
        let view = self.plan_view()?;
        let place = view.plan.place_index(name)?;
        let is_own = !view.plan.places.get(place)?.of_the_form;
        view.spots.get(place).copied().filter(|_| is_own)
    }
    /// Puts a place of the job's own where it is, in metres from the front and from the left side. One step; lengths of the
    /// runs that pass it follow.
    fn move_place_to(&mut self, place: &str, to: (f64, f64)) {
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

    /// An arrow key while a part is picked: it goes to the nearest place in that direction; while a place of the job's own is
    /// in hand, that is moved by a step, with Shift by a small one. True when the key meant that.
    pub(crate) fn body_key(&mut self, key: Key, mods: Mods) -> bool {
        if !self.is_on_body() || !matches!(key, Key::Left | Key::Right | Key::Up | Key::Down) {
            return false;
        }
        if let Some(name) = self.held_place().map(str::to_owned)
            && self.selection.single().is_none()
        {
            let at = self
                .plan_view()
                .and_then(|view| view.plan.place(&name))
                .map(|it| it.at);
            if let Some(at) = at {
                let (dx, dy) = crate::walk::direction(key);
                let step = if mods.shift { 0.01 } else { 0.05 };
                // The left side lies below.
                let moved = |from: f64, by: f64| libm::round((from + by) * 100.0).max(0.0) / 100.0;
                self.move_place_to(
                    &name,
                    (
                        moved(at.x, f64::from(dx) * step),
                        moved(at.y, -f64::from(dy) * step),
                    ),
                );
            }
            return true;
        }
        let Some(Thing::Part(part)) = self.selection.single() else {
            return false;
        };
        if self.refuses() {
            return true;
        }
        let (dx, dy) = crate::walk::direction(key);
        let (dx, dy) = (f64::from(dx), f64::from(dy));
        let target = self.plan_view().and_then(|view| {
            let here = view.parts.get(&part)?;
            let from = match here.place.and_then(|place| view.spots.get(place)) {
                Some(spot) => *spot,
                None => here.area.center(),
            };
            let ahead = |spot: &Point| {
                let off = *spot - from;
                let (along, aside) = (off.x * dx + off.y * dy, (off.x * dy - off.y * dx).abs());
                // Within a right angle about the direction; what lies aside counts twice.
                (along > 1.0 && aside <= along).then_some(along + aside)
            };
            let mut best: Option<(f64, usize)> = None;
            for (place, spot) in view.spots.iter().enumerate() {
                if let Some(off) = ahead(spot)
                    && best.is_none_or(|(least, _)| off < least)
                {
                    best = Some((off, place));
                }
            }
            view.plan.places.get(best?.1).map(|place| place.name.clone())
        });
        if let Some(place) = target {
            self.carry_to(part, &place);
        }
        true
    }

    /// Puts a part at a place of the body; the runs on it that are laid through the body find their way anew, unless their
    /// way is locked. One step.
    fn carry_to(&mut self, part: PartId, place: &str) {
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

    /// A run with what follows from its way through the body.
    #[must_use]
    pub fn laid_run(&self, run: RunId) -> Option<model::Run> {
        body::lay(self.sheet(), &self.job.settings)
            .runs
            .get(&run)
            .cloned()
    }

    /// The best routes of a run through the body, with what speaks for and against each.
    #[must_use]
    pub fn ways_of(&self, run: RunId) -> Vec<WayOffer> {
        let Some(plan) = body::Plan::of(&self.job.settings.body) else {
            return Vec::new();
        };
        // A route may name its passages alone, or its places too: the way is the same.
        let has = self
            .sheet()
            .runs
            .get(&run)
            .filter(|run| !run.route.is_empty())
            .and_then(|run| plan.walk(self.sheet(), run).ok())
            .map(|walk| walk.passages().collect::<Vec<_>>());
        body::propose(&plan, self.sheet(), run)
            .into_iter()
            .map(|offer| WayOffer {
                length: self
                    .words
                    .figure(words::drawn(offer.length.0, words::Unit::Metre)),
                reasons: offer.reasons.iter().map(|it| self.words.say(it)).collect(),
                is_taken: has
                    .as_ref()
                    .is_some_and(|has| offer.walk.passages().eq(has.iter().copied())),
                route: offer.route,
            })
            .collect()
    }

    /// Lays a run along a route.
    ///
    /// # Errors
    /// When the run is not on the sheet.
    pub fn lay_along(&mut self, run: RunId, route: Vec<String>) -> Result<Effects, EditError> {
        let edit = set_route(&self.job, self.on, run, route);
        self.make(edit)
    }

    /// Lays all runs through the body anew, but those whose way is locked.
    pub(crate) fn route_everything(&mut self) {
        if self.refuses() {
            return;
        }
        let Some(plan) = body::Plan::of(&self.job.settings.body) else {
            self.tell(say!("body-form-unknown"));
            return;
        };
        self.interrupt();
        let routed = body::route_all(&plan, self.sheet(), self.on);
        let (changed, without) = (routed.changed.len(), routed.without.len());
        if changed > 0 {
            self.apply(routed.edit);
        }
        self.tell(say!("body-routed", changed = changed, without = without));
    }

    /// The place of the job's own that is carried, over the plan: where it was and where the pointer is; of one that is in
    /// hand, where it is.
    pub(crate) fn held_spot(&self) -> Option<(Point, Option<Point>)> {
        match &self.on_body.as_ref()?.hand {
            Hand::Moving { place, at } => Some((self.own_spot(place)?, Some(*at))),
            _ => Some((self.own_spot(self.held_place()?)?, None)),
        }
    }

    /// The part that is carried, over the plan: its box at the pointer, and the place to which it would go.
    pub(crate) fn carried(&self) -> Option<(Rect, Option<Point>)> {
        let on_body = self.on_body.as_ref()?;
        let Hand::Carrying { part, at } = &on_body.hand else {
            return None;
        };
        let view = on_body.view.as_ref()?;
        let size = view.parts.get(part)?.area.size();
        let near = self.place_near(*at).and_then(|name| {
            let place = view.plan.place_index(&name)?;
            view.spots.get(place).copied()
        });
        Some((Rect::from_center_size(*at, size), near))
    }
}
