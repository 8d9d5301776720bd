//! Printing a paper of the job: for as long as the printer looks, the page shows that paper alone.

use crate::browser;

/// Prints the paper that is open.
pub(crate) fn print() {
    let (Some(window), Some(root)) = (browser::window(), browser::root()) else {
        return;
    };
    // The style sheet for printing shows the paper instead of the drawing where this stands.
    let _ = root.set_attribute("data-printing", "paper");
    // Nothing can be printed where the browser does not offer it; the page stays as it is then.
    let _ = window.print();
    let _ = root.remove_attribute("data-printing");
}
