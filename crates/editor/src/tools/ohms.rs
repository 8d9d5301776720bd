//! What the meter in hand shows as an ohmmeter, and what it says of it.

use crate::editor::Editor;
use circuit::OhmsShown;
use model::TerminalRef;
use words::{Saying, Unit, drawn, say};

impl Editor {
    /// What an ohmmeter shows, as a number and written, and a remark. `None` when a terminal is not on the sheet.
    pub(crate) fn ohms_between(
        &self,
        red: &TerminalRef,
        black: &TerminalRef,
    ) -> Option<(Option<f64>, Saying, Option<Saying>)> {
        let sheet = self.sheet();
        let metal = body::Metal::of(sheet, &self.job().settings);
        Some(match circuit::ohms_between(sheet, &metal, red, black)? {
            OhmsShown::SamePoint => (Some(0.0), "0 Ω".into(), Some(say!("meter-same-point"))),
            OhmsShown::Open => (None, say!("meter-open"), Some(say!("meter-no-way"))),
            OhmsShown::Ohms(ohms) => (
                Some(ohms.0),
                say!("as-it-stands", text = drawn(ohms.0, Unit::Plain("Ω"))),
                None,
            ),
        })
    }
}
