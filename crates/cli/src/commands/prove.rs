//! `prove`: the fewest and easiest readings that would expose every single fault of grade Stop, as a list to work through, each with what
//! was kept of it in the job.

use crate::args::JobCall;
use crate::input::{json, open};
use crate::speech::{tell, text as text_of, words};
use crate::{Done, Report};
use assist::proving::{
    Doing, Fault, Harm, Hazard, Look, Proof, Step, figure_of, prove, said_doing, said_expected, said_faults,
    said_harm, said_leads, said_look, said_why,
};
use circuit::Probe;
use model::Sheet;
use model::property::PropertyType as _;
use serde::Serialize;
use words::{Saying, Unit, Value, precise, say};

#[derive(Serialize)]
struct ToldStep {
    state: &'static str,
    duty: &'static str,
    measured: &'static str,
    red: Option<String>,
    black: Option<String>,
    run: Option<String>,
    unit: &'static str,
    /// Nothing for an open circuit.
    expected: Option<f64>,
    least: f64,
    /// Nothing where there is no end.
    most: Option<f64>,
    exposes: Vec<String>,
    /// What was kept of it with the job.
    read: Option<f64>,
    within: Option<bool>,
}

#[derive(Serialize)]
struct ToldUnseen {
    look: String,
    faults: Vec<String>,
}

#[derive(Serialize)]
struct Answer {
    readings: Vec<ToldStep>,
    unseen: Vec<ToldUnseen>,
    faults: usize,
    exposed: usize,
    /// No list that exposes as much has fewer readings.
    least: usize,
    shortest: bool,
    minutes: f64,
    stops: usize,
}

/// A fault in the written form.
fn written(sheet: &Sheet, hazard: &Hazard) -> String {
    let run_of = |run: &model::RunId| {
        sheet
            .runs
            .get(run)
            .map_or_else(String::new, |run| run.tag.clone())
    };
    match &hazard.fault {
        Fault::Broken(broken) => broken.written(sheet),
        Fault::Thinner { run, size, .. } => format!("{} size {}", run_of(run), size.print()),
        Fault::Larger { device, rating } => {
            let tag = assist::sizing::device_tag(sheet, device);
            match rating {
                Some(rating) => format!("{tag} rating {}", rating.print()),
                None => format!("{tag} bridged"),
            }
        }
    }
}

fn written_all(sheet: &Sheet, proof: &Proof, all: impl Iterator<Item = usize>) -> Vec<String> {
    all.filter_map(|at| Some(written(sheet, proof.hazards.get(at)?)))
        .collect()
}

fn told(sheet: &Sheet, proof: &Proof, step: &Step) -> ToldStep {
    let (measured, red, black, run) = match &step.probe {
        Probe::Volts(red, black) | Probe::Tone(red, black) => (
            "volts",
            Some(sheet.written(red)),
            Some(sheet.written(black)),
            None,
        ),
        Probe::Ohms(red, black) => ("ohms", Some(sheet.written(red)), Some(sheet.written(black)), None),
        Probe::Amps(run) => {
            let tag = sheet.runs.get(run).map(|run| run.tag.clone());
            ("amps", None, None, tag)
        }
    };
    ToldStep {
        state: match step.doing {
            Doing::FusesOut => "fuses-out",
            Doing::Isolated => "isolated",
            _ => step.state.vehicle.word(),
        },
        duty: step.state.duty.word(),
        measured,
        red,
        black,
        run,
        unit: step.unit(),
        expected: step.expected,
        least: step.limits.least,
        most: step.limits.most,
        exposes: written_all(sheet, proof, step.exposes.iter().map(|(at, _)| *at)),
        read: kept(sheet, step).flatten(),
        within: step.verdict(sheet),
    }
}

/// What was kept of a reading: a number, or nothing for an open circuit.
fn kept(sheet: &Sheet, step: &Step) -> Option<Option<f64>> {
    Some(sheet.readings.get(step.kept(sheet)?)?.number())
}

fn outcome(sheet: &Sheet, step: &Step) -> Option<Saying> {
    let read = kept(sheet, step)?;
    let read: Value = match read {
        Some(number) => figure_of(step, number).into(),
        None => say!("fault-open").into(),
    };
    let verdict = if step.verdict(sheet)? {
        say!("proof-pass")
    } else {
        say!("proof-fail")
    };
    Some(say!("proof-kept", read = read, verdict = verdict))
}

fn in_words(sheet: &Sheet, proof: &Proof, out: &mut String) {
    let exposed = exposed(proof);
    let summary = say!(
        "proof-summary",
        readings = say!("proof-count", count = proof.steps.len()),
        exposed = exposed,
        all = proof.hazards.len(),
        minutes = precise(proof.minutes, Unit::Bare, 0),
    );
    let mut line = |said: &Saying| out.push_str(&(tell(said) + "\n"));
    if proof.hazards.is_empty() {
        line(&say!("proof-none-grave"));
        return;
    }
    line(&summary);
    line(&if proof.is_shortest() {
        say!("proof-shortest")
    } else {
        say!("proof-bound", least = proof.least)
    });
    if proof.stops > 0 {
        line(&say!("proof-stops", count = proof.stops));
    }
    let mut doing = None;
    for (number, step) in (1..).zip(&proof.steps) {
        if doing != Some(step.doing) {
            doing = Some(step.doing);
            out.push_str(&format!("\n{}\n", tell(&said_doing(step.doing, proof.played))));
        }
        let at = tell(&said_leads(sheet, &step.probe));
        let expected = tell(&said_expected(step));
        out.push_str(&format!("{number:>3}. {at}\n     {expected}\n"));
        let faults = said_faults(sheet, proof, step.exposes.iter().map(|(at, _)| *at));
        let points = say!("proof-points", faults = faults);
        out.push_str(&format!("     {}\n", tell(&points)));
        if let Some(said) = outcome(sheet, step) {
            out.push_str(&format!("     {}\n", tell(&said)));
        }
    }
    if !proof.unseen.is_empty() {
        out.push_str(&format!("\n{}\n", text_of("proof-unseen")));
        for unseen in &proof.unseen {
            let mut harms: Vec<Harm> = unseen
                .hazards
                .iter()
                .filter_map(|at| proof.hazards.get(*at))
                .map(|hazard| hazard.harm)
                .collect();
            harms.sort_unstable();
            harms.dedup();
            let harms: Vec<String> = harms.into_iter().map(|harm| tell(&said_harm(harm))).collect();
            let faults = said_faults(sheet, proof, unseen.hazards.iter().copied());
            let faults: Vec<String> = faults.iter().map(tell).collect();
            out.push_str(&format!("  {}.\n", tell(&said_look(sheet, &unseen.look))));
            out.push_str(&format!(
                "    {} ({}); {}\n",
                words().list(&faults),
                words().list(&harms),
                tell(&said_why(&unseen.look))
            ));
        }
    }
}

fn exposed(proof: &Proof) -> usize {
    let unseen: usize = proof.unseen.iter().map(|unseen| unseen.hazards.len()).sum();
    proof.hazards.len() - unseen
}

pub(crate) fn run(call: &JobCall) -> Result<Report, String> {
    let opened = open(call)?;
    let sheet = opened.sheet();
    let proof = prove(&sheet, &opened.settings).ok_or_else(|| tell(&say!("fault-no-supply")))?;
    let outside = proof.steps.iter().any(|step| step.verdict(&sheet) == Some(false));
    let text = if call.json {
        json(&Answer {
            readings: proof
                .steps
                .iter()
                .map(|step| told(&sheet, &proof, step))
                .collect(),
            unseen: proof
                .unseen
                .iter()
                .map(|unseen| ToldUnseen {
                    look: match &unseen.look {
                        Look::Rating(device) => assist::sizing::device_tag(&sheet, device),
                        Look::Size(run) | Look::Run(run) => sheet
                            .runs
                            .get(run)
                            .map_or_else(String::new, |run| run.tag.clone()),
                        Look::Part(part) => sheet
                            .parts
                            .get(part)
                            .map_or_else(String::new, |part| part.tag.clone()),
                    },
                    faults: written_all(&sheet, &proof, unseen.hazards.iter().copied()),
                })
                .collect(),
            faults: proof.hazards.len(),
            exposed: exposed(&proof),
            least: proof.least,
            shortest: proof.is_shortest(),
            minutes: proof.minutes,
            stops: proof.stops,
        })?
    } else {
        let mut out = opened.heading() + "\n";
        in_words(&sheet, &proof, &mut out);
        out.push_str(&format!("\n{}\n", text_of("proof-caution")));
        out
    };
    Ok(Report {
        text,
        done: if outside { Done::Stop } else { Done::Clean },
    })
}
