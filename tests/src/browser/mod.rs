//! A scripted hand and eye for the page in a real Chromium: real pointer, real keys, screenshots.
//!
//! Start at [`Page::open`]. A test is one user task in a file of its own under `tests/browser`; it finds things by
//! `data-testid`, waits for named conditions with a deadline, and reads what it cannot see through [`Page::eval`].
//! Everything panics with a message that says what was expected, since that is how a test fails.
//!
//! Invariant: the browser reaches no host but this machine, and each page has an origin of its own on which nothing is stored.

mod browsers;
mod driver;
mod eye;
mod hand;
mod keys;
mod latency;
mod page;

pub use page::{Page, Place, Scheme, Site};
