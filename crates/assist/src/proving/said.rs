//! A proof in words.

use super::{Doing, Fault, Harm, Hazard, Look, Proof, Step};
use crate::sizing::{device_tag, size_value};
use circuit::Probe;
use model::Sheet;
use model::breaks::Break;
use model::job::Duty;
use words::{Figure, Saying, Unit, figure, precise, say};

/// What the vehicle does, as a heading.
#[must_use]
pub fn said_doing(doing: Doing, played: Duty) -> Saying {
    match doing {
        Doing::FusesOut => say!("proof-doing-fuses-out"),
        Doing::Isolated => say!("proof-doing-isolated"),
        Doing::Parked => say!("proof-doing-parked"),
        Doing::On => say!("proof-doing-on"),
        Doing::Tone => say!("proof-doing-tone", duty = played.said()),
        Doing::Idling => say!("proof-doing-idling", duty = played.said()),
    }
}

/// Where the leads go.
#[must_use]
pub fn said_leads(sheet: &Sheet, probe: &Probe) -> Saying {
    match probe {
        Probe::Volts(red, black) | Probe::Tone(red, black) => {
            say!(
                "proof-at-volts",
                red = sheet.written(red),
                black = sheet.written(black)
            )
        }
        Probe::Ohms(red, black) => say!(
            "proof-at-ohms",
            red = sheet.written(red),
            black = sheet.written(black)
        ),
        Probe::Amps(run) => say!("proof-at-amps", run = sheet.run_tag(*run)),
    }
}

/// A number of a reading, as the meter shows it: those of one reading all in one unit.
#[must_use]
pub fn figure_of(step: &Step, number: f64) -> Figure {
    let (unit, times) = step.shown_in();
    let number = number * times;
    let places = match number.abs() {
        100.0.. => 0,
        10.0.. => 1,
        _ => 2,
    };
    precise(number, Unit::Plain(unit), places)
}

/// What is read if all is in order.
#[must_use]
pub fn said_expected(step: &Step) -> Saying {
    let number = |number: f64| figure_of(step, number);
    let least = number(step.limits.least);
    match (step.expected, step.limits.most) {
        (Some(expected), Some(most)) => say!(
            "proof-expected",
            expected = number(expected),
            least = least,
            most = number(most)
        ),
        _ => say!("proof-expected-open", least = least),
    }
}

/// What is wrong.
#[must_use]
pub fn said_fault(sheet: &Sheet, hazard: &Hazard) -> Saying {
    match &hazard.fault {
        Fault::Broken(broken) => match broken {
            Break::Grounded { run, .. } => say!("proof-touches", run = sheet.run_tag(*run)),
            Break::Joined {
                points: [one, other], ..
            } => say!("break-joined", one = one.said(sheet), other = other.said(sheet)),
            Break::Resistive { run, .. } => say!("proof-bad-joint", run = sheet.run_tag(*run)),
            Break::Poor { part, .. } => say!("proof-bad-contact", part = sheet.part_tag(*part)),
            _ => broken.said(sheet),
        },
        Fault::Thinner { run, size, .. } => say!(
            "proof-thinner",
            run = sheet.run_tag(*run),
            size = size_value(*size)
        ),
        Fault::Larger {
            device,
            rating: Some(rating),
        } => say!(
            "proof-larger",
            device = device_tag(sheet, device),
            rating = figure(rating.0, Unit::Plain("A"))
        ),
        Fault::Larger { device, rating: None } => {
            say!("proof-bridged", device = device_tag(sheet, device))
        }
    }
}

/// What is wrong by several, each thing once.
#[must_use]
pub fn said_faults(sheet: &Sheet, proof: &Proof, hazards: impl Iterator<Item = usize>) -> Vec<Saying> {
    let mut all: Vec<Saying> = Vec::new();
    for hazard in hazards.filter_map(|at| proof.hazards.get(at)) {
        let said = said_fault(sheet, hazard);
        if !all.contains(&said) {
            all.push(said);
        }
    }
    all
}

/// Why that is grave.
#[must_use]
pub fn said_harm(harm: Harm) -> Saying {
    match harm {
        Harm::LiveEnd => say!("proof-harm-live-end"),
        Harm::Short => say!("proof-harm-short"),
        Harm::HotJoint => say!("proof-harm-hot-joint"),
        Harm::Overload => say!("proof-harm-overload"),
        Harm::Fuse => say!("proof-harm-fuse"),
    }
}

/// What to look at.
#[must_use]
pub fn said_look(sheet: &Sheet, look: &Look) -> Saying {
    match look {
        Look::Rating(device) => say!("proof-look-rating", device = device_tag(sheet, device)),
        Look::Size(run) => {
            let size = sheet.runs.get(run).and_then(|run| run.wire.size.value());
            match size {
                Some(size) => say!(
                    "proof-look-size",
                    run = sheet.run_tag(*run),
                    size = size_value(size)
                ),
                None => say!("proof-look-run", run = sheet.run_tag(*run)),
            }
        }
        Look::Run(run) => say!("proof-look-run", run = sheet.run_tag(*run)),
        Look::Part(part) => say!("proof-look-part", part = sheet.part_tag(*part)),
    }
}

/// Why no reading does it.
#[must_use]
pub fn said_why(look: &Look) -> Saying {
    match look {
        Look::Rating(_) => say!("proof-why-rating"),
        Look::Size(_) => say!("proof-why-size"),
        Look::Run(_) | Look::Part(_) => say!("proof-why-small"),
    }
}
