//! The body plan on the table: the same sheet, drawn where its things are in the car. Parts are carried from place to place,
//! and runs on which they hang are laid anew; places of the job's own are carried to where they are; everything else that is done to a job is
//! done here as on the board.

mod hand;
mod placing;
mod ways;

pub use ways::WayOffer;

use crate::camera::Camera;
use crate::editor::Editor;
use crate::input::PointerKind;
use crate::selection::Thing;
use drawing::{DisplayList, Look, Owner, PlanView, draw_plan};
use hand::Hand;
use kurbo::{Point, Rect};
use ordered::OrderedSet;
use words::say;

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

/// What the picture of the body plan depends on beside the sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SeenOnBody {
    picked: OrderedSet<Owner>,
    hovered: Option<Owner>,
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
}
