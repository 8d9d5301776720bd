//! The drawing: geometry of the board, symbols, ways of the runs, arrangement, and the display list that every painter
//! replays. It knows the sheet and the engine's numbers; of findings it knows only the marks it is given.
//!
//! Start at [`Layout`] (where everything lies), then [`draw`] (what is drawn) and [`svg`] (one of the painters).
//! *Invariant:* nothing here depends on zoom, study or look where parts and runs lie; only what is shown does.

mod arrange;
mod cells;
mod display;
mod draw;
mod index;
mod layout;
mod letters;
mod look;
pub mod numbers;
mod palette;
mod part_box;
mod plan_view;
mod shapes;
mod sheets;
mod svg;
mod symbols;
mod under;
mod ways;

pub use arrange::{arrange, arrange_unplaced};
pub use display::*;
pub use draw::{
    Cut, KEY_HEIGHT, Moving, TitleBlock, TitleCell, Which, areas_of, detail_at, draw, draw_cut, draw_key,
    draw_paper, mark_at, mark_spot, marks_bounds, text_area, title_cells,
};
pub use layout::{Hit, Layout};
pub use letters::{FONT_FAMILY, fit, text_width};
pub use look::{Lit, Look, Mark, MarkShape, Overlay};
pub use palette::Palette;
pub use part_box::{GRID, PartBox, STUD_PITCH, Stud, to_point};
pub use plan_view::{PlanLabel, PlanPart, PlanRun, PlanView, UNITS_PER_METRE, draw_plan};
pub use shapes::{circle, rounded};
pub use sheets::{LEAST_PRINTED, Sheet as PrintSheet, scale_on, sheets, zoom_in_print};
pub use svg::svg;
pub use symbols::{Symbol, symbol};
pub use under::{Sign, Under, take_places};
pub use ways::{RunLabel, RunWay, size_as_marked, width_of};
