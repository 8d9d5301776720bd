//! From sheet and layout to the display list.

mod aside;
mod ghosts;
mod key;
pub(crate) mod marks;
pub(crate) mod overlay;
mod paper;
mod parts;
pub(crate) mod pen;
mod readings;
mod runs;
mod sleeves;
mod volts;

pub use key::{KEY_HEIGHT, draw_key};
pub use marks::marks_bounds;
pub use paper::{TitleBlock, TitleCell, draw_paper, title_cells};

use crate::display::{Detail, DisplayList, Owner};
use crate::index::Index;
use crate::layout::Layout;
use crate::look::{Look, Overlay};
use circuit::Study;
use kurbo::{Point, Rect};
use model::{PartId, RunId, Sheet};
use ordered::OrderedSet;
use ordered::Sort as _;
use pen::Pen;
pub use pen::text_area;

/// Which details a zoom shows: numbers from 0.75 up, labels from 0.5, studs and symbols from 0.28, shapes always.
#[must_use]
pub fn detail_at(zoom: f64) -> Detail {
    if zoom >= 0.75 {
        Detail::Numbers
    } else if zoom >= 0.5 {
        Detail::Labels
    } else if zoom >= 0.28 {
        Detail::Studs
    } else {
        Detail::Shape
    }
}

/// What a gesture in hand moves or changes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Moving {
    /// Parts.
    pub parts: OrderedSet<PartId>,
    /// Runs, those that land on the parts among them.
    pub runs: OrderedSet<RunId>,
}

impl Moving {
    /// Whether nothing moves.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.parts.is_empty() && self.runs.is_empty()
    }
}

/// Which things are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// All of them.
    All,
    /// All but those that move, as if those were not there.
    Still,
    /// Those that move.
    Moving,
}

/// What of a picture is drawn: a painter that keeps the picture of what stays draws only what changes.
#[derive(Clone, Copy, Debug)]
pub struct Cut<'a> {
    /// The part of the board that is seen.
    pub visible: Rect,
    /// Of that only what touches these areas; all of it when there are none.
    pub areas: &'a [Rect],
    /// What moves.
    pub moving: &'a Moving,
    /// Which things.
    pub which: Which,
}

impl Cut<'_> {
    pub(crate) fn has_part(&self, id: PartId) -> bool {
        match self.which {
            Which::All => true,
            Which::Still => !self.moving.parts.contains(&id),
            Which::Moving => self.moving.parts.contains(&id),
        }
    }
    pub(crate) fn has_run(&self, id: RunId) -> bool {
        match self.which {
            Which::All => true,
            Which::Still => !self.moving.runs.contains(&id),
            Which::Moving => self.moving.runs.contains(&id),
        }
    }
    /// Whether the crossing with a run is drawn as a hop.
    pub(crate) fn hops_over(&self, id: RunId) -> bool {
        self.which != Which::Still || !self.moving.runs.contains(&id)
    }
    /// Whether something of this box is to be drawn.
    #[must_use]
    pub fn shows(&self, area: Rect) -> bool {
        area.overlaps(self.visible)
            && (self.areas.is_empty() || self.areas.iter().any(|shown| shown.overlaps(area)))
    }
    /// Keys of the things that may be shown, each once, in order.
    fn near<K: Copy + Ord>(&self, index: &Index<K>, margin: f64) -> Vec<K> {
        let near = |area: &Rect| index.near(area.inflate(margin, margin));
        match self.areas {
            [] => near(&self.visible),
            areas => {
                let mut all: Vec<K> = areas.iter().flat_map(near).collect();
                all.order();
                all.dedup();
                all
            }
        }
    }
    pub(crate) fn parts(&self, layout: &Layout, margin: f64) -> Vec<PartId> {
        if self.which == Which::Moving {
            return self.moving.parts.iter().copied().collect();
        }
        let mut near = self.near(&layout.part_index, margin);
        near.retain(|id| self.has_part(*id));
        near
    }
    pub(crate) fn runs(&self, layout: &Layout) -> Vec<RunId> {
        if self.which == Which::Moving {
            return self.moving.runs.iter().copied().collect();
        }
        let mut near = self.near(&layout.run_index, 8.0);
        near.retain(|id| self.has_run(*id));
        near
    }
}

/// Draws what of a sheet lies in the visible area, back to front: what shows through from a sheet laid under, then runs with
/// what is written on them, then parts, then marks.
#[must_use]
pub fn draw(
    sheet: &Sheet,
    layout: &Layout,
    study: Option<&Study>,
    look: &Look,
    visible: Rect,
) -> DisplayList {
    let cut = Cut {
        visible,
        areas: &[],
        moving: &Moving::default(),
        which: Which::All,
    };
    draw_cut(sheet, layout, study, look, &cut)
}

/// Draws a cut of what [`draw`] draws. Where numbers find their place by what stands beside them (overlays), cuts by area
/// may place them otherwise than the whole.
#[must_use]
pub fn draw_cut(
    sheet: &Sheet,
    layout: &Layout,
    study: Option<&Study>,
    look: &Look,
    cut: &Cut<'_>,
) -> DisplayList {
    let mut pen = Pen::new(detail_at(look.zoom), look.zoom);
    let overlays = overlay::Overlays::new(sheet, study, look, layout.words());
    let spots = marks::spots(layout, look, |host| match host {
        Owner::Part(id) => cut.has_part(id),
        Owner::Run(id) => cut.has_run(id),
        _ => true,
    });
    // Numbers of an overlay keep clear of marks, and of one another.
    let mut taken: Vec<Rect> = match look.overlay {
        Overlay::None => Vec::new(),
        _ => marks::areas(&spots, look),
    };
    let ghosts = ghosts::Ghosts::new(layout, look, cut);
    let tabs = ghosts.as_ref().map(ghosts::Ghosts::tabs).unwrap_or_default();
    if look.overlay != Overlay::None {
        taken.extend(tabs.iter().map(|tab| tab.area));
        taken.extend(&look.covered);
    }
    if let Some(ghosts) = &ghosts {
        ghosts.draw(&mut pen);
    }
    if let Some(under) = &look.under {
        sleeves::draw_sleeves(&mut pen, under, layout, look, cut);
    }
    runs::draw_runs(&mut pen, sheet, layout, &overlays, look, cut, &mut taken);
    parts::draw_parts(&mut pen, sheet, layout, study, look, cut);
    if let Some(under) = &look.under {
        sleeves::draw_strikes(&mut pen, under, layout, look, cut);
    }
    ghosts::draw_tabs(&mut pen, &tabs, look);
    if look.overlay == Overlay::Voltage {
        volts::draw_voltages(&mut pen, layout, &overlays, look.zoom, cut, &mut taken);
    }
    marks::draw_marks(&mut pen, &spots, look, cut);
    pen.finish()
}

/// What a part or run covers when it is drawn, in any state, but for numbers of an overlay: boxes for [`Cut::areas`].
/// Empty for everything else.
#[must_use]
pub fn areas_of(layout: &Layout, owner: Owner) -> Vec<Rect> {
    match owner {
        Owner::Part(id) => layout
            .parts
            .get(&id)
            .map(|part| part.outline.inflate(8.0, 8.0))
            .into_iter()
            .collect(),
        Owner::Run(id) => layout
            .runs
            .get(&id)
            .into_iter()
            .flat_map(|way| way.areas().map(|area| area.inflate(10.0, 10.0)))
            .collect(),
        Owner::Sheet | Owner::Finding(_) | Owner::Tool | Owner::UnderPart(_) | Owner::UnderRun(_) => {
            Vec::new()
        }
    }
}

/// The finding whose mark lies under a point, give or take the slop in board units.
#[must_use]
pub fn mark_at(layout: &Layout, look: &Look, at: Point, slop: f64) -> Option<u32> {
    let reach = marks::radius(look.zoom) + slop;
    marks::spots(layout, look, |_| true)
        .into_iter()
        .filter(|spot| spot.shown)
        .rev()
        .find(|spot| spot.at.distance(at) <= reach)
        .map(|spot| spot.mark.finding)
}

/// Where the mark of a finding stands, or the one that stands for it too; `None` when it speaks of nothing that is on
/// the board.
#[must_use]
pub fn mark_spot(layout: &Layout, look: &Look, finding: u32) -> Option<Point> {
    marks::spots(layout, look, |_| true)
        .into_iter()
        .find(|spot| spot.mark.finding == finding)
        .map(|spot| spot.at)
}
