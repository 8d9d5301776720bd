//! Another sheet of the job laid under the one on the table: which one, what became of each thing between the two, and how
//! one finds it.

use crate::camera::Camera;
use crate::editor::Editor;
use crate::effects::{Effects, Open};
use crate::input::PointerKind;
use crate::selection::{Selection, Thing};
use drawing::{Owner, Sign, Under};
use kurbo::{Point, Rect};
use model::compare::{Became, Comparison};
use model::{Sheet, SheetKind};
use std::sync::Arc;
use words::{Words, say};

/// Height of the legend's lines on the screen, and width of its list, in pixels.
const LEGEND_PX: f64 = 92.0;
/// Height of the one line that says what an overlay shows, in pixels.
const OVERLAY_LINE_PX: f64 = 34.0;
const LIST_PX: f64 = 440.0;

/// From which width of the window on the list stays open when one of its lines is taken, in pixels.
const LIST_STAYS_PX: f64 = 1400.0;

/// What became of one thing, told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fate {
    /// The thing.
    pub thing: Thing,
    /// Its tag, and for a part its name.
    pub written: String,
    /// What became of it.
    pub became: Became,
    /// Its sign on the drawing.
    pub sign: Sign,
}

impl Editor {
    /// The sheet laid under the one on the table.
    #[must_use]
    pub fn under(&self) -> Option<SheetKind> {
        self.under.as_ref().map(|under| under.kind)
    }
    /// What became of everything, from the earlier of the two sheets to the later one; `None` without a sheet laid under.
    /// Within a gesture it stays as it was when the gesture began.
    #[must_use]
    pub fn comparison(&self) -> Option<Comparison> {
        self.under.as_ref().map(|under| under.compared.clone())
    }
    /// The sheet laid under, with what its signs mean and its counts in words.
    #[must_use]
    pub fn laid(&self) -> Option<&Under> {
        self.under.as_deref()
    }
    /// The sheets that can be laid under this one: those with parts on them.
    #[must_use]
    pub fn layable(&self) -> Vec<SheetKind> {
        let others = self.job.sheets.iter().filter(|(kind, _)| **kind != self.on);
        others
            .filter(|(_, sheet)| !sheet.parts.is_empty())
            .map(|(kind, _)| *kind)
            .collect()
    }
    /// Lays a sheet under the one on the table, or takes it away.
    pub fn lay_under(&mut self, kind: Option<SheetKind>) -> Effects {
        self.put_under(kind);
        self.take_effects()
    }
    /// None, the other sheets one after another, none.
    pub(crate) fn step_under(&mut self) {
        let all = self.layable();
        let next = match self.under() {
            None => all.first(),
            Some(now) => all.iter().find(|kind| **kind > now),
        };
        if all.is_empty() {
            self.tell(say!("under-none"));
        } else {
            self.put_under(next.copied());
        }
    }
    fn put_under(&mut self, kind: Option<SheetKind>) {
        self.interrupt();
        let whole = self.is_seen_whole();
        let kind = kind.filter(|kind| self.layable().contains(kind));
        self.beneath = None;
        self.under = kind.and_then(|kind| {
            let beneath = self.job.sheets.get(&kind)?.clone();
            Some(Arc::new(Under::read_by(
                kind,
                beneath,
                self.on,
                self.sheet(),
                &self.words,
            )))
        });
        let nothing = || self.words.text("under-nothing");
        self.out.say = Some(self.under.as_ref().map_or_else(nothing, |under| under.words()));
        // Who saw the whole sheet still does: nothing of it goes under the legend.
        if whole && self.under.is_some() {
            let top = self
                .seen_bounds()
                .map(|all| self.camera.to_screen(all.origin()).y);
            if top.is_some_and(|top| top < self.camera.free_area().y0 + LEGEND_PX) {
                self.fit();
            }
        }
        self.still_changed();
        self.out.noticed = true;
        self.out.repaint = true;
    }
    /// Whether all of the sheet lies in the part of the window that nothing covers.
    fn is_seen_whole(&self) -> bool {
        let free = self.camera.free_area();
        let inside = |corner: kurbo::Point| {
            let at = self.camera.to_screen(corner);
            free.inflate(1.0, 1.0).contains(kurbo::Point::new(at.x, at.y))
        };
        self.seen_bounds()
            .is_some_and(|all| inside(all.origin()) && inside(kurbo::Point::new(all.x1, all.y1)))
    }
    /// Brings what is laid under up to date after the job changed or another sheet was put on the table.
    pub(crate) fn follow_under(&mut self) {
        let Some(mut held) = self.under.take() else { return };
        let beneath = self
            .job
            .sheets
            .get(&held.kind)
            .filter(|sheet| !sheet.parts.is_empty());
        let (Some(beneath), true) = (beneath, held.kind != self.on) else {
            self.beneath = None;
            return;
        };
        if held.sheet == *beneath {
            let nothing = Sheet::default();
            let above = self.job.sheets.get(&self.on).unwrap_or(&nothing);
            Arc::make_mut(&mut held).compare_with(self.on, above);
        } else {
            held = Arc::new(Under::read_by(
                held.kind,
                beneath.clone(),
                self.on,
                self.sheet(),
                &self.words,
            ));
        }
        let shows = |thing: &Thing| sign(&held, thing).is_some_and(Sign::is_beneath);
        if !self.beneath.as_ref().is_some_and(shows) {
            self.beneath = None;
        }
        self.under = Some(held);
    }
    /// Moves the camera with the room kept free that a legend takes: that of a sheet laid under, its lines or with its list, or
    /// the line of an overlay.
    pub(crate) fn beside_legend(&mut self, with_list: bool, go: impl FnOnce(&mut Camera)) {
        let margins = self.camera.margins;
        if self.under.is_some() {
            if with_list && self.camera.width >= LIST_STAYS_PX {
                self.camera.margins.left += LIST_PX;
            } else {
                self.camera.margins.top += LEGEND_PX;
            }
        } else if self.overlay != drawing::Overlay::None {
            self.camera.margins.top += OVERLAY_LINE_PX;
        }
        go(&mut self.camera);
        self.camera.margins = margins;
    }
    /// The box around everything that is seen: the sheet, and what shows through.
    pub(crate) fn seen_bounds(&self) -> Option<Rect> {
        let beneath = self.under.as_ref().and_then(|under| under.bounds());
        match (self.layout.bounds(), beneath) {
            (Some(above), Some(beneath)) => Some(above.union(beneath)),
            (above, beneath) => above.or(beneath),
        }
    }
    /// What became of a thing, while a sheet is laid under.
    #[must_use]
    pub fn became(&self, thing: &Thing) -> Option<&Became> {
        let compared = &self.under.as_ref()?.compared;
        match thing {
            Thing::Part(id) => compared.parts.get(id),
            Thing::Terminal(at) => compared.parts.get(&at.part),
            Thing::Run(id) => compared.runs.get(id),
        }
    }
    /// What became of a thing of the sheet on the table, as lines beside it; none where it was kept.
    #[must_use]
    pub fn became_words(&self, thing: &Thing) -> Vec<String> {
        let Some(under) = &self.under else {
            return Vec::new();
        };
        match (self.became(thing), sign(under, thing)) {
            (Some(Became::Changed(lines)), _) => lines.iter().map(|line| self.words.say(line)).collect(),
            (_, Some(Sign::New)) => {
                vec![self.words.say(&say!("under-new", sheet = under.kind.said()))]
            }
            (_, Some(Sign::Goes)) => {
                vec![self.words.say(&say!("under-removed", sheet = under.kind.said()))]
            }
            _ => Vec::new(),
        }
    }
    /// Everything that was not kept: changed, new, removed; of each the parts, then the runs.
    #[must_use]
    pub fn fates(&self) -> Vec<Fate> {
        let Some(under) = &self.under else {
            return Vec::new();
        };
        let parts = under
            .compared
            .parts
            .iter()
            .map(|(id, became)| (Thing::Part(*id), became));
        let runs = under
            .compared
            .runs
            .iter()
            .map(|(id, became)| (Thing::Run(*id), became));
        let all: Vec<(Thing, &Became)> = parts.chain(runs).collect();
        let mut fates = Vec::new();
        let kinds: [fn(&Became) -> bool; 3] = [
            |became| matches!(became, Became::Changed(_)),
            |became| matches!(became, Became::New),
            |became| matches!(became, Became::Removed),
        ];
        for is_wanted in kinds {
            for (thing, became) in all.iter().filter(|(_, became)| is_wanted(became)) {
                if let Some(sign) = sign(under, thing) {
                    let sheet = if sign.is_beneath() {
                        &under.sheet
                    } else {
                        self.sheet()
                    };
                    fates.push(Fate {
                        thing: thing.clone(),
                        written: with_name(thing, sheet, &self.words),
                        became: (*became).clone(),
                        sign,
                    });
                }
            }
        }
        fates
    }
    /// Brings a thing of either sheet into view: picks it, or shows it where it lies beneath.
    pub fn go_to_either(&mut self, thing: &Thing) -> Effects {
        if thing.is_on(self.sheet()) {
            let mut effects = self.go_to(thing);
            if let Some(area) = self.area_of(thing) {
                self.beside_legend(true, |camera| camera.reveal(area));
            }
            // What was asked for is what became of it, and that stands on its slip.
            effects.open = Some(Open::Details(thing.clone()));
            return effects;
        }
        self.interrupt();
        let Some(under) = self.under.clone() else {
            return self.take_effects();
        };
        let area = match thing {
            Thing::Part(id) => under.layout.part(*id).map(|part| part.outline),
            Thing::Terminal(at) => under.layout.part(at.part).map(|part| part.outline),
            Thing::Run(id) => under.layout.run(*id).map(drawing::RunWay::bounds),
        };
        if let Some(area) = area {
            self.selection = Selection::none();
            self.focus = None;
            self.finding = None;
            self.beside_legend(true, |camera| camera.reveal(area));
            self.out.open = Some(Open::Nothing);
            self.light_beneath(Some(thing.clone()));
        }
        self.take_effects()
    }
    /// What shows through from the sheet beneath at a point of the board.
    pub(crate) fn beneath_at(&self, at: Point, kind: PointerKind) -> Option<Thing> {
        let under = self.under.as_ref()?;
        let reach = self.options.reach_px(kind) / self.camera.zoom;
        let hit = under.layout.hit(at, reach.min(22.0))?;
        let thing = match hit.owner() {
            Owner::Part(id) => Thing::Part(id),
            Owner::Run(id) => Thing::Run(id),
            _ => return None,
        };
        sign(under, &thing).is_some_and(Sign::is_beneath).then_some(thing)
    }
    /// Lights a thing of the sheet beneath and says what it is; or nothing of it.
    pub(crate) fn light_beneath(&mut self, thing: Option<Thing>) {
        if let (Some(thing), Some(under)) = (&thing, &self.under) {
            let written = with_name(thing, &under.sheet, &self.words);
            let said = say!("under-alone", thing = written, sheet = under.kind.said());
            self.out.say = Some(self.words.say(&said));
        }
        if self.beneath != thing {
            self.beneath = thing;
            self.out.noticed = true;
            self.out.repaint = true;
        }
    }
}

fn sign(under: &Under, thing: &Thing) -> Option<Sign> {
    match thing {
        Thing::Part(id) => under.part(*id),
        Thing::Terminal(at) => under.part(at.part),
        Thing::Run(id) => under.run(*id),
    }
}

fn with_name(thing: &Thing, sheet: &Sheet, words: &Words) -> String {
    let written = thing.written(sheet);
    match thing {
        Thing::Part(id) => sheet.parts.get(id).map_or(written.clone(), |part| {
            format!("{written} {}", words.say(&part.said()))
        }),
        _ => written,
    }
}
