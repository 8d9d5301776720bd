//! Tests in a real browser, one file per user task. `cargo xtask test --stage browser` builds the page and runs them.

#![allow(clippy::disallowed_methods)]

mod accessible;
mod body_plan;
mod break_it;
mod draw_by_keyboard;
mod draw_system;
mod escape;
mod exercise;
mod find_fault;
mod fingers;
mod harness;
mod keep_work;
mod lay_under;
mod lessons;
mod looks;
mod mend_all;
mod mend_van;
mod meter;
mod offline;
mod open_file;
mod other_hosts;
mod page_file;
mod paint;
mod papers;
mod pictures;
mod policy;
mod printing;
mod prove;
mod reader;
mod readings;
mod record_found;
mod rest;
mod rewire;
mod share;
mod size_it;
mod start_system;
mod table;
mod what_feeds;
