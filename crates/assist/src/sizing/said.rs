//! What a sizing says in the reader's words.

use super::{Held, Limit, Short, Sizing};
use circuit::DeviceRef;
use model::Sheet;
use model::conductor::Size;
use words::{Saying, Unit, Value, as_sold, figure, say, told};

/// A device as people write it: `F1`, `D1.out2`.
#[must_use]
pub fn device_tag(sheet: &Sheet, device: &DeviceRef) -> String {
    let part = sheet.part_tag(device.part);
    match &device.output {
        Some(output) => format!("{part}.{output}"),
        None => part,
    }
}

/// A size as it is sold.
#[must_use]
pub fn size_value(size: Size) -> Value {
    match size {
        Size::Metric(area) => as_sold(area.0, Unit::SquareMillimetre).into(),
        Size::Awg(_) => {
            use model::PropertyType;
            size.print().replace("AWG", " AWG").into()
        }
    }
}

impl Held {
    /// Why it keeps what it has, in a few words.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::Locked => say!("sizing-held-locked"),
            Self::Kept => say!("sizing-held-kept"),
            Self::Makers => say!("sizing-held-makers"),
            Self::NoLength => say!("sizing-held-no-length"),
            Self::NoInsulation => say!("sizing-held-no-insulation"),
            Self::NoPrice => say!("sizing-held-no-price"),
            Self::NoneFits => say!("sizing-held-none-fits"),
            Self::Signal => say!("sizing-held-signal"),
            Self::Undriven => say!("sizing-held-undriven"),
            Self::BetweenSources => say!("sizing-held-between"),
            Self::Brings(check) => say!("sizing-held-brings", check = title(check)),
        }
    }
}

impl Limit {
    /// What keeps it from being less, in a few words.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        match self {
            Self::Held(held) => held.said(),
            Self::Smallest => say!("sizing-limit-smallest"),
            Self::Heat => say!("sizing-limit-heat"),
            Self::Fuse(device) => say!("sizing-limit-fuse", device = device_tag(sheet, device)),
            Self::Drop(load) => say!("sizing-limit-drop", load = sheet.part_tag(*load)),
            Self::Ground(amplifier) => say!("sizing-limit-ground", amplifier = sheet.part_tag(*amplifier)),
            Self::Ending => say!("sizing-limit-ending"),
            Self::Lead => say!("sizing-limit-lead"),
            Self::Load => say!("sizing-limit-load"),
            Self::Burst => say!("sizing-limit-burst"),
            Self::Check(name) => say!("sizing-limit-check", check = title(name)),
            Self::Price => say!("sizing-limit-price"),
            Self::Together => say!("sizing-limit-together"),
        }
    }
}

/// The title of a check.
fn title(name: &str) -> Saying {
    checks::check_named(name).map_or_else(|| name.into(), |check| check.title())
}

impl Short {
    /// What no size suffices for, in a sentence; and that it is held as set, where it is.
    #[must_use]
    pub fn said(&self, sheet: &Sheet) -> Saying {
        match self {
            Self::Heat {
                run,
                by_terminal,
                as_set,
            } => {
                let run = sheet.run_tag(*run);
                match (by_terminal, as_set) {
                    (true, true) => say!("sizing-short-terminal-worst", run = run),
                    (true, false) => say!("sizing-short-terminal", run = run),
                    (false, true) => say!("sizing-short-heat-worst", run = run),
                    (false, false) => say!("sizing-short-heat", run = run),
                }
            }
            Self::Fuse { run, device, as_set } => {
                let (run, device) = (sheet.run_tag(*run), device_tag(sheet, device));
                if *as_set {
                    say!("sizing-short-fuse-worst", run = run, device = device)
                } else {
                    say!("sizing-short-fuse", run = run, device = device)
                }
            }
            Self::Rating { device, as_set } => {
                let device = device_tag(sheet, device);
                if *as_set {
                    say!("sizing-short-rating-worst", device = device)
                } else {
                    say!("sizing-short-rating", device = device)
                }
            }
            Self::Drop {
                load,
                drop,
                limit,
                at_worst,
            } => {
                let load = sheet.part_tag(*load);
                let lost = told(*drop, *limit, Unit::Plain("V"));
                let most = told(*limit, *drop, Unit::Plain("V"));
                match at_worst {
                    Some((state, duty)) => say!(
                        "sizing-short-drop-worst",
                        load = load,
                        lost = lost,
                        most = most,
                        state = state.said(),
                        duty = duty.said()
                    ),
                    None => say!("sizing-short-drop", load = load, lost = lost, most = most),
                }
            }
            Self::Ground { amplifier } => {
                say!("sizing-short-ground", amplifier = sheet.part_tag(*amplifier))
            }
            Self::Check {
                name,
                runs,
                parts,
                as_set,
            } => {
                let parts = parts.iter().map(|id| sheet.part_tag(*id));
                let things: Vec<String> = parts.chain(runs.iter().map(|id| sheet.run_tag(*id))).collect();
                if *as_set {
                    say!("sizing-short-check-worst", check = title(name), things = things)
                } else {
                    say!("sizing-short-check", check = title(name), things = things)
                }
            }
            Self::NoAnswer { as_set: true } => say!("sizing-short-no-answer-worst"),
            Self::NoAnswer { .. } => say!("sizing-short-no-answer"),
        }
    }
}

impl Sizing {
    /// How good the answer is, in a sentence.
    #[must_use]
    pub fn proof(&self) -> Saying {
        if self.proved && !self.short.is_empty() {
            say!("sizing-proved-but-short")
        } else if self.proved {
            say!("sizing-proved")
        } else if self.meshed {
            say!("sizing-meshed", gap = figure(self.gap(), Unit::Percent))
        } else {
            say!("sizing-not-proved", gap = figure(self.gap(), Unit::Percent))
        }
    }
}
