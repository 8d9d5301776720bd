//! What the pointer and the keys do on the body plan.

use crate::camera::ScreenPoint;
use crate::editor::Editor;
use crate::effects::Open;
use crate::input::{Input, Key, Mods, PointerKind};
use crate::selection::{Selection, Thing};
use drawing::Owner;
use kurbo::{Point, Rect};
use model::PartId;

/// What the pointer meets on the plan.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Met {
    Nothing,
    Thing(Thing),
    /// The mark of a finding, by its place in the list.
    Finding(usize),
    /// A place of the job's own, by its name.
    Place(String),
}

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Hand {
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

impl Editor {
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

    pub(super) fn set_hand(&mut self, hand: Hand) {
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
    pub(super) fn met_at(&self, at: Point, kind: PointerKind) -> Met {
        let Some(view) = self.plan_view() else {
            return Met::Nothing;
        };
        if let Some(finding) = view.mark_at(&self.look(), at, self.mark_slop(kind)) {
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

    pub(super) fn body_click(&mut self, on: Met) {
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
