//! The pieces of the page, one each in a file of its name: components where they keep something between two paintings, else
//! plain functions, which cost the page a few kilobytes less each.

mod ask;
mod body_plan;
mod break_it;
mod drop_here;
mod explanation;
mod field;
mod find_fault;
mod handover;
mod hover_slip;
mod jobs;
mod keys;
mod limits;
mod low_strip;
mod mark;
mod mend_all;
mod mend_does;
mod meter_face;
mod moment_strip;
mod note;
mod notes;
mod offer;
mod outline;
mod overlay_legend;
mod papers;
pub(crate) mod pictures;
mod plain_slip;
mod proof;
mod reader_cells;
mod readings;
mod record;
mod run_fields;
mod set_index;
mod share;
mod shelf;
mod shelf_item;
mod sizing;
mod slip;
mod spoken;
mod start;
mod thread;
mod title_block;
mod title_cell;
mod title_plate;
mod told;
mod tray;
mod tunings;
mod under_legend;

pub(crate) use ask::Ask;
pub(crate) use body_plan::{BodyPlan, body_plan_word};
pub(crate) use break_it::BreakIt;
pub(crate) use drop_here::DropHere;
pub(crate) use explanation::explanation;
pub(crate) use find_fault::FindFault;
pub(crate) use hover_slip::hover_slip;
pub(crate) use jobs::Jobs;
pub(crate) use keys::keys;
pub(crate) use limits::limits;
pub(crate) use low_strip::LowStrip;
pub(crate) use mark::mark;
pub(crate) use mend_all::MendAll;
pub(crate) use meter_face::meter_face;
pub(crate) use moment_strip::moment_strip;
pub(crate) use notes::Notes;
pub(crate) use offer::Offer;
pub(crate) use outline::outline;
pub(crate) use overlay_legend::{legend, legends};
pub(crate) use papers::Papers;
pub(crate) use plain_slip::plain_slip;
pub(crate) use proof::ProofDrawer;
#[allow(
    unused_imports,
    reason = "pages without a title block put these cells where they like"
)]
pub(crate) use reader_cells::ReaderCells;
pub(crate) use readings::readings;
pub(crate) use record::Record;
pub(crate) use share::{Share, link};
pub(crate) use shelf::Shelf;
pub(crate) use sizing::SizingDrawer;
pub(crate) use slip::Slip;
pub(crate) use spoken::spoken;
pub(crate) use start::{Start, start_offer};
pub(crate) use thread::Thread;
pub(crate) use title_plate::{COPY, title_block_or_plate};
pub(crate) use tray::tray;
