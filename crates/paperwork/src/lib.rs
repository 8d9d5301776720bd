//! Every paper of a job, from the data of the job alone: what to buy, cut and label, what becomes of every thing, in which order to
//! strip out and build, what to measure, what was offered and decided, and what is handed over.
//!
//! Start at [`Work`], the work between two sheets; then [`lists`], which names every list. A paper is a value first: lists
//! are [`Table`]s of typed cells, checklists are [`Checklist`]s of steps with names that last. Painters turn them into
//! comma-separated values ([`csv()`]), JSON ([`json()`]) and the printable document ([`handover`]). *Invariant:* pure
//! functions, no disk and no clock; the same job gives the same papers, natively and in the page.

mod articles;
mod becomes;
mod build;
pub mod csv;
mod cut;
mod differs;
mod fuses;
mod handover;
mod json;
mod labels;
mod lists;
mod meter;
mod order;
mod order_table;
mod places;
mod price_sheet;
mod proof;
mod quote;
mod steps;
mod stock;
mod strip_out;
mod table;
mod terms;
mod thread;
mod tuning;
mod work;

pub use articles::{article, property_said, value_said};
pub use becomes::{BecomesLine, Metal, WhatBecomes, what_becomes};
pub use build::build;
pub use csv::csv;
pub use cut::{Cut, cut, cut_list, wiring_table};
pub use fuses::{device_text, fuse_table};
pub use handover::{Asked, Readers, handover};
pub use json::json;
pub use labels::{Label, LabelSheet, Placed, Shape, label_document, label_pages, label_sheet, label_sheets};
pub use lists::{List, lists};
pub use meter::{
    Expected, Point, Studies, Verdict, kept_readings, meter_sheet, point_of, points, terminal, tolerance,
    verdict,
};
pub use order::{Lacking, Order, OrderLine, Quantity, Section, order};
pub use places::parts_list;
pub use price_sheet::price_sheet;
pub use quote::{Quote, money, money_or_unknown, quote, quote_table, refusals};
pub use steps::{Checklist, Phase, Step};
pub use stock::return_to_stock;
pub use strip_out::strip_out;
pub use table::{Cell, Column, Table};
pub use terms::{Per, Price, PriceList, Rate, Terms};
pub use thread::{OpenEnd, open_ends, reference, thread_table};
pub use tuning::{settings_sheet, target_volts};
pub use work::{Becomes, Work};
