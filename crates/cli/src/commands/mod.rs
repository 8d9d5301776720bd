//! The commands, one file each.

pub(crate) mod breaking;
pub(crate) mod check;
pub(crate) mod deck;
pub(crate) mod draw;
pub(crate) mod explain;
pub(crate) mod find_fault;
pub(crate) mod format;
pub(crate) mod handover;
pub(crate) mod labels;
pub(crate) mod lesson;
pub(crate) mod link;
pub(crate) mod lists;
pub(crate) mod mend;
pub(crate) mod meter;
pub(crate) mod open;
pub(crate) mod page;
mod places;
pub(crate) mod prove;
pub(crate) mod routes;
pub(crate) mod schema;
pub(crate) mod size;
pub(crate) mod solve;
pub(crate) mod speakers;
pub(crate) mod start;
pub(crate) mod trace;
