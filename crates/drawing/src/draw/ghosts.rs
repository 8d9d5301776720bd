//! What is on the sheet beneath alone, drawn where it stands there, under everything else: dashed, in a faint ink, with its tag
//! and without numbers. What lies under a part of the sheet on top shows its tag on a tab above that part, as the leaf of a
//! binder does. Nothing of it moves with a gesture: what a gesture carries covers nothing until it is put down.

use super::pen::{Pen, Writing, solid};
use super::runs::plain;
use super::sleeves::{strike_box, strike_run};
use super::{Cut, Which};
use crate::display::{Anchor, Detail, Ink, Owner, Stroke};
use crate::layout::Layout;
use crate::letters::text_width;
use crate::look::Look;
use crate::part_box::{PartBox, TAG_SIZE, Weight};
use crate::shapes::rounded;
use crate::under::{Sign, Under};
use crate::ways::RUN_LABEL_SIZE;
use kurbo::{BezPath, Point, Rect, Vec2};
use model::{Part, PartId};
use words::say;

/// What reaches out of the boxes of a ghost: crosses and strokes, in board units.
const REACH: f64 = 12.0;
/// From which share of its area on a ghost counts as covered.
const COVERED: f64 = 0.5;

/// The dashes of a ghost at a zoom.
pub(crate) fn dashes(zoom: f64) -> Stroke {
    let farther = (1.0 / zoom.max(1e-3)).clamp(1.0, 3.0);
    Stroke {
        ink: Ink::Faint,
        width: 1.2 * farther,
        dash: Some((3.5 * farther, 3.0 * farther)),
    }
}

/// The sheet beneath, as it shows through a cut of the one on top.
pub(crate) struct Ghosts<'a> {
    under: &'a Under,
    layout: &'a Layout,
    look: &'a Look,
    cut: &'a Cut<'a>,
}

impl<'a> Ghosts<'a> {
    /// `None` where no sheet is laid under, and for what moves: ghosts stay.
    pub(crate) fn new(layout: &'a Layout, look: &'a Look, cut: &'a Cut<'a>) -> Option<Self> {
        let under = look.under.as_deref().filter(|_| cut.which != Which::Moving)?;
        Some(Self {
            under,
            layout,
            look,
            cut,
        })
    }

    fn stroke(&self, owner: Owner) -> Stroke {
        let mut stroke = dashes(self.look.zoom);
        if self.look.picked.contains(&owner) {
            stroke.ink = Ink::Picked;
            stroke.width *= 1.8;
        }
        stroke
    }

    /// Runs, then parts.
    pub(crate) fn draw(&self, pen: &mut Pen) {
        let (under, zoom) = (self.under, self.look.zoom);
        for id in self.cut.near(&under.layout.run_index, REACH) {
            let (Some(sign), Some(run), Some(way)) = (
                under.run(id).filter(|sign| sign.is_beneath()),
                under.sheet.runs.get(&id),
                under.layout.runs.get(&id),
            ) else {
                continue;
            };
            if !way.areas().any(|area| self.cut.shows(area.inflate(REACH, REACH))) {
                continue;
            }
            let owner = Owner::UnderRun(id);
            pen.owner(owner);
            pen.path(Detail::Shape, plain(way), None, Some(self.stroke(owner)));
            let size = RUN_LABEL_SIZE.max(7.5 / zoom.max(1e-3));
            let label = way.label.as_ref().filter(|label| {
                let room = label.area.width().max(label.area.height());
                text_width(&run.tag, size, false) <= room && size <= 12.5
            });
            if sign == Sign::Gone {
                strike_run(pen, way, zoom, Ink::WashEdge, |area| {
                    label.is_some_and(|label| label.area.overlaps(area)) || !self.is_bare(area)
                });
            }
            let Some(label) = label.filter(|label| pen.shows(Detail::Labels) && self.is_bare(label.area))
            else {
                continue;
            };
            let middle = label.area.center();
            let (half, depth) = (
                text_width(&run.tag, size, false) / 2.0 + 2.0,
                4.6 * size / RUN_LABEL_SIZE,
            );
            let (gap, at) = if label.upright {
                ((2.0 * depth, 2.0 * half), middle + Vec2::new(0.35 * size, 0.0))
            } else {
                ((2.0 * half, 2.0 * depth), middle + Vec2::new(0.0, 0.35 * size))
            };
            pen.area(
                Detail::Labels,
                Rect::from_center_size(middle, gap),
                Some(Ink::Paper),
                None,
            );
            let writing = Writing {
                anchor: Anchor::Middle,
                upright: label.upright,
                ..Writing::new(run.tag.clone(), at, size, Ink::Faint)
            };
            pen.write(Detail::Labels, writing);
        }
        for id in self.cut.near(&under.layout.part_index, REACH) {
            let (Some(sign), Some(part), Some(drawn)) = (
                under.part(id).filter(|sign| sign.is_beneath()),
                under.sheet.parts.get(&id),
                under.layout.parts.get(&id),
            ) else {
                continue;
            };
            if !self.cut.shows(drawn.outline.inflate(REACH, REACH)) {
                continue;
            }
            let owner = Owner::UnderPart(id);
            pen.owner(owner);
            let stroke = self.stroke(owner);
            pen.path(Detail::Shape, rounded(drawn.outline, 2.0), None, Some(stroke));
            super::parts::draw_symbol(
                pen,
                part,
                drawn,
                self.under.layout.words(),
                Ink::Dimmed,
                Ink::Dimmed,
            );
            if sign == Sign::Gone {
                strike_box(pen, drawn.outline, zoom, Ink::WashEdge);
            }
            self.write_tag(pen, part, drawn);
        }
    }

    /// Whether neither a part, a run nor a label of the sheet on top lies there.
    fn is_bare(&self, area: Rect) -> bool {
        let on_run = self
            .layout
            .run_index
            .any_near(area, |id, piece| self.cut.has_run(id) && piece.overlaps(area));
        let on_label = self
            .layout
            .label_index
            .any_near(area, |id, label| self.cut.has_run(id) && label.overlaps(area));
        !on_run && !on_label && !self.is_under_part(area)
    }
    fn is_under_part(&self, area: Rect) -> bool {
        self.layout.part_index.any_near(area, |id, outline| {
            self.cut.has_part(id) && outline.overlaps(area)
        })
    }

    /// Where the tag of a ghost can be read: its own place first, then the other corners. Of those that no part covers one that
    /// is bare, if there is one.
    fn tag_spot(&self, part: &Part, drawn: &PartBox) -> Option<(Point, Anchor)> {
        let outline = drawn.outline;
        let own = drawn
            .words
            .iter()
            .find(|words| words.weight == Weight::Tag && !words.upright);
        let (low, high) = (outline.y1 - 4.0, outline.y0 + TAG_SIZE + 1.0);
        let spots = own
            .map(|words| (words.at, words.anchor))
            .into_iter()
            .chain([
                (Point::new(outline.x0 + 4.0, high), Anchor::Start),
                (Point::new(outline.x1 - 4.0, low), Anchor::End),
                (Point::new(outline.x1 - 4.0, high), Anchor::End),
                (Point::new(outline.x0 + 4.0, low), Anchor::Start),
            ])
            .filter(|(at, anchor)| {
                !self.is_under_part(super::text_area(&part.tag, *at, TAG_SIZE, *anchor, true, false))
            });
        let mut first = None;
        for (at, anchor) in spots {
            if self.is_bare(super::text_area(&part.tag, at, TAG_SIZE, anchor, true, false)) {
                return Some((at, anchor));
            }
            first = first.or(Some((at, anchor)));
        }
        first
    }

    fn write_tag(&self, pen: &mut Pen, part: &Part, drawn: &PartBox) {
        if !pen.shows(Detail::Labels) {
            super::parts::write_small_tag(pen, part, drawn, self.look.zoom, Ink::Faint);
            return;
        }
        // What is hidden has its tag on a tab.
        let spot = self
            .tag_spot(part, drawn)
            .filter(|_| self.cover_of(part, drawn).is_none());
        if let Some((at, anchor)) = spot {
            let size = TAG_SIZE.max(9.5 / self.look.zoom.max(1e-3)).min(15.0);
            let writing = Writing {
                bold: true,
                anchor,
                halo: true,
                ..Writing::new(part.tag.clone(), at, size, Ink::Faint)
            };
            pen.write(Detail::Labels, writing);
        }
    }

    /// The part of the sheet on top that hides a ghost or its tag.
    fn cover_of(&self, part: &Part, drawn: &PartBox) -> Option<PartId> {
        let outline = drawn.outline;
        let mut most: Option<(PartId, f64)> = None;
        self.layout.part_index.any_near(outline, |id, cover| {
            let over = cover.intersect(outline);
            let area = if over.width() > 0.0 && over.height() > 0.0 {
                over.area()
            } else {
                0.0
            };
            if area > 0.0 && self.cut.has_part(id) && most.is_none_or(|(_, had)| area > had) {
                most = Some((id, area));
            }
            false
        });
        let (id, area) = most?;
        (area >= COVERED * outline.area() || self.tag_spot(part, drawn).is_none()).then_some(id)
    }

    /// Tabs of what is covered: where each stands, what is written on it.
    pub(crate) fn tabs(&self) -> Vec<Tab> {
        let zoom = self.look.zoom.max(1e-3);
        // Letters of a tag, as large as there is any room for above a part; a tab without letters is seen too.
        let size = (9.5 / zoom).clamp(9.5, 24.0);
        let mut tabs = Vec::new();
        for cover in self.cut.parts(self.layout, TAB_REACH) {
            let Some(above) = self.layout.parts.get(&cover).map(|part| part.outline) else {
                continue;
            };
            let mut hidden: Vec<(PartId, &str)> = Vec::new();
            let mut ghosts = self.under.layout.part_index.near(above);
            ghosts.retain(|id| self.under.part(*id).is_some_and(Sign::is_beneath));
            for id in ghosts {
                if let (Some(part), Some(drawn)) =
                    (self.under.sheet.parts.get(&id), self.under.layout.parts.get(&id))
                    && self.cover_of(part, drawn) == Some(cover)
                {
                    hidden.push((id, part.tag.as_str()));
                }
            }
            let Some((first, _)) = hidden.first().copied() else {
                continue;
            };
            let text = match hidden.as_slice() {
                [(_, one)] => (*one).to_owned(),
                [(_, one), (_, two)] => format!("{one}, {two}"),
                [(_, one), rest @ ..] => {
                    self.under
                        .layout
                        .words()
                        .say(&say!("drawn-more", one = *one, more = rest.len()))
                }
                [] => continue,
            };
            let text = crate::letters::fit(&text, MOST_TAB, size, true);
            let corner = Point::new(above.x0 + 5.0, above.y0 - 1.0);
            let area = Rect::new(
                corner.x,
                corner.y - 1.35 * size,
                corner.x + text_width(&text, size, true) + size,
                corner.y,
            );
            if self.cut.shows(area.inflate(4.0, 4.0)) {
                tabs.push(Tab {
                    owner: Owner::UnderPart(first),
                    area,
                    text,
                    size,
                    picked: hidden
                        .iter()
                        .any(|(id, _)| self.look.picked.contains(&Owner::UnderPart(*id))),
                    struck: self.under.is_earlier(),
                });
            }
        }
        tabs
    }
}

/// Widest words on a tab, in board units.
const MOST_TAB: f64 = 150.0;
/// How far a tab may reach out of the part it stands on.
const TAB_REACH: f64 = MOST_TAB + 60.0;

/// A tab above a part, for what it hides.
pub(crate) struct Tab {
    owner: Owner,
    pub(crate) area: Rect,
    text: String,
    size: f64,
    picked: bool,
    struck: bool,
}

pub(crate) fn draw_tabs(pen: &mut Pen, tabs: &[Tab], look: &Look) {
    for tab in tabs {
        pen.owner(tab.owner);
        let (area, slant) = (tab.area, tab.size * 0.3);
        let mut path = BezPath::new();
        path.move_to((area.x0, area.y1));
        path.line_to((area.x0 + slant, area.y0));
        path.line_to((area.x1 - slant, area.y0));
        path.line_to((area.x1, area.y1));
        let mut stroke = dashes(look.zoom);
        if tab.picked {
            stroke.ink = Ink::Picked;
        }
        pen.path(Detail::Shape, path, Some(Ink::Paper), Some(stroke));
        if tab.struck {
            let mut strike = BezPath::new();
            let middle = area.y1 - 0.68 * tab.size;
            strike.move_to((area.x0 + 1.2 * slant, middle + 0.2 * tab.size));
            strike.line_to((area.x1 - 1.2 * slant, middle - 0.2 * tab.size));
            pen.path(
                Detail::Shape,
                strike,
                None,
                Some(solid(Ink::WashEdge, (1.4 / look.zoom.max(1e-3)).clamp(1.4, 4.0))),
            );
        }
        let writing = Writing {
            anchor: Anchor::Middle,
            bold: true,
            ..Writing::new(
                tab.text.clone(),
                Point::new(area.center().x, area.y1 - 0.36 * tab.size),
                tab.size,
                Ink::Text,
            )
        };
        pen.write(Detail::Shape, writing);
    }
}
