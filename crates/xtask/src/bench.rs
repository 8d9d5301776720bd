//! Reports on speed and size. They print numbers and fail only when a bench itself breaks, never on a time.

use crate::command::{cargo, run};
use crate::{page, tools};

/// Runs every bench target of the workspace against the page as it is shipped, then weighs the page.
pub(crate) fn bench() -> Result<(), String> {
    page::build()?;
    tools::for_tests(&tools::BROWSER)?;
    tools::for_tests(&[tools::NGSPICE])?;
    // Bench targets only: the test harness of every library would be built with full optimisation for nothing.
    run(&mut cargo([
        "bench",
        "--workspace",
        "--features",
        "loomwright-tests/browser,loomwright-tests/bench",
        "--bench",
        "*",
    ]))?;
    page::print_sizes()
}
