//! What it takes to put a lead somewhere: what comes off to get there, in minutes of an installer who knows the vehicle (common practice,
//! rough; half and double were weighed and change the order of few proposals).

use body::Plan;
use circuit::Probe;
use model::body::Reach;
use model::{PartId, PartKind, Settings, Sheet};

/// Minutes of a measurement itself, once the leads can be put there.
pub(crate) const LOOK: f64 = 1.0;
/// Minutes to take the supply off and to put it on again, for ohms.
pub(crate) const ISOLATE: f64 = 2.0;
/// Minutes to start a test tone.
pub(crate) const TONE: f64 = 0.3;

/// Minutes until a lead can be put on each part.
#[derive(Clone, Debug)]
pub(crate) struct Efforts {
    parts: ordered::OrderedMap<PartId, f64>,
}

/// Minutes until what hides a place is off.
fn minutes(reach: Reach) -> f64 {
    match reach {
        Reach::Open => 0.0,
        Reach::Bonnet | Reach::Glovebox | Reach::LoadFloor => 0.5,
        Reach::Carpet => 1.5,
        Reach::KickPanel | Reach::SillTrim | Reach::SeatBack | Reach::SideTrim => 2.5,
        Reach::DashTrim | Reach::Console | Reach::Seat | Reach::PillarTrim | Reach::LidTrim => 4.0,
        Reach::DoorCard | Reach::Ramp => 6.0,
        Reach::Headlining => 12.0,
    }
}

/// Where the sheet does not say where a part is: as such parts are usually mounted.
fn usual(kind: &PartKind) -> f64 {
    match kind {
        PartKind::Battery(_) => 0.3,
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Block(_) => 0.5,
        PartKind::Amplifier(_) | PartKind::Capacitor(_) | PartKind::Bus(_) => 1.0,
        PartKind::Speaker(_) => 5.0,
        PartKind::HeadUnit(_) | PartKind::Plug(_) | PartKind::Adapter(_) => 4.0,
        PartKind::Splice(_) => 6.0,
        PartKind::Ground(_) => 2.0,
        _ => 2.0,
    }
}

impl Efforts {
    pub(crate) fn of(sheet: &Sheet, settings: &Settings) -> Self {
        let plan = Plan::of(&settings.body);
        let of = |id: PartId, part: &model::Part| {
            let place = plan
                .as_ref()
                .and_then(|plan| plan.places.get(plan.place_of(sheet, id)?));
            place
                .and_then(|place| place.facts.reach.value())
                .map_or_else(|| usual(&part.is), minutes)
        };
        Self {
            parts: sheet.parts.iter().map(|(&id, part)| (id, of(id, part))).collect(),
        }
    }

    /// The parts that a probe is put on.
    pub(crate) fn touched(sheet: &Sheet, probe: &Probe) -> Vec<PartId> {
        match probe {
            Probe::Volts(red, black) | Probe::Tone(red, black) | Probe::Ohms(red, black) => {
                let mut parts = vec![red.part, black.part];
                parts.dedup();
                parts
            }
            // Round the run at whichever end is easier.
            Probe::Amps(run) => sheet
                .runs
                .get(run)
                .map(|run| {
                    run.ends()
                        .iter()
                        .filter_map(|end| Some(end.terminal()?.part))
                        .collect()
                })
                .unwrap_or_default(),
        }
    }

    /// Minutes until a lead can be put on a part.
    pub(crate) fn to_reach(&self, part: PartId) -> f64 {
        self.parts.get(&part).copied().unwrap_or(1.0)
    }

    /// Minutes for a measurement. What is `open` already costs nothing more; `isolated` says whether the supply is off.
    pub(crate) fn minutes(&self, sheet: &Sheet, probe: &Probe, open: &[PartId], isolated: bool) -> f64 {
        let own = |part: &PartId| {
            if open.contains(part) {
                0.0
            } else {
                self.to_reach(*part)
            }
        };
        let touched = Self::touched(sheet, probe);
        let reach = match probe {
            Probe::Amps(_) => touched.iter().map(own).fold(f64::INFINITY, f64::min),
            _ => touched.iter().map(own).sum(),
        };
        let reach = if reach.is_finite() { reach } else { 1.0 };
        let change = match (matches!(probe, Probe::Ohms(..)), isolated) {
            (true, false) | (false, true) => ISOLATE,
            _ => 0.0,
        };
        let tone = if matches!(probe, Probe::Tone(..)) {
            TONE
        } else {
            0.0
        };
        LOOK + reach + change + tone
    }
}
