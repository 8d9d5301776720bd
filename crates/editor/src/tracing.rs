//! Leads put where a measurement is proposed, and what is suspected lit on the board.

use crate::editor::Editor;
use crate::effects::Effects;
use crate::selection::{Selection, Thing};
use crate::tools::Tool;
use crate::tools::meter::{Meter, Mode};
use circuit::Probe;
use kurbo::Rect;

/// The meter as it measures there.
pub(crate) fn meter_at(probe: &Probe) -> Meter {
    let (mode, leads, clamp) = match probe {
        Probe::Volts(red, black) => (Mode::Volts, Some([red, black]), None),
        Probe::Tone(red, black) => (Mode::Tone, Some([red, black]), None),
        Probe::Ohms(red, black) => (Mode::Ohms, Some([red, black]), None),
        Probe::Amps(run) => (Mode::Amps, None, Some(*run)),
    };
    Meter {
        mode,
        red: leads.map(|[red, _]| red.clone()),
        black: leads.map(|[_, black]| black.clone()),
        clamp,
        black_next: false,
    }
}

impl Editor {
    /// Takes the meter in hand with its leads on two terminals, or its clamp around a run, and brings them into view.
    pub fn put_leads(&mut self, probe: &Probe) -> Effects {
        self.interrupt();
        let meter = meter_at(probe);
        // Both leads, so that neither lies beneath what is open along the edges.
        let leads = [&meter.red, &meter.black].into_iter().flatten().cloned();
        let shown = leads.map(Thing::Terminal).chain(meter.clamp.map(Thing::Run));
        let shown = shown.filter_map(|thing| self.area_of(&thing));
        let shown = shown.reduce(|one, other| one.union(other));
        self.ready_tone(meter.mode);
        self.take(Tool::Meter(meter));
        if let Some(area) = shown {
            self.show_beside(area);
        }
        self.out.noticed = true;
        self.out.repaint = true;
        self.take_effects()
    }

    /// Brings an area to the middle of the free paper, clear of what lies open along its edges.
    pub(crate) fn show_beside(&mut self, area: Rect) {
        self.camera.reveal(area);
        let middle = self.camera.free_area().center();
        let at = self.camera.to_screen(area.center());
        self.camera.pan(middle.x - at.x, middle.y - at.y);
    }

    /// Picks all of these, so that they stand out on the board, and brings the first of them into view.
    pub fn light(&mut self, things: &[Thing]) -> Effects {
        self.selection = Selection::none();
        for thing in things {
            if thing.is_on(self.sheet()) {
                self.selection.add(thing);
            }
        }
        if let Some(area) = things.first().and_then(|thing| self.area_of(thing)) {
            self.show_beside(area);
        }
        self.out.noticed = true;
        self.out.repaint = true;
        self.take_effects()
    }
}
