//! `find-fault`: what is broken behind readings and symptoms, and what to measure next.

use crate::Report;
use crate::args::FindFaultCall;
use crate::input::{json, open};
use crate::speech::{tell, text as text_of, words};
use crate::table::{print, table};
use assist::finding::{
    Finder, Proposal, Suspect, Verdict, read_reading, read_symptom, said_number, said_probe, said_suspect,
    said_unexplained,
};
use circuit::Probe;
use model::Sheet;
use serde::Serialize;
use words::{Unit, precise, say};

/// Most suspects that are listed for a reader.
const LISTED: usize = 12;

#[derive(Serialize)]
struct ToldSuspect {
    breaks: Vec<String>,
    share: f64,
    /// What each reading would have been, in their order; nothing for an open circuit.
    foretold: Vec<Option<f64>>,
}

#[derive(Serialize)]
struct Next {
    at: String,
    bits: f64,
    minutes: f64,
}

#[derive(Serialize)]
struct Answer {
    outcome: &'static str,
    suspects: Vec<ToldSuspect>,
    /// The readings, by their places, that not even the first of these explains.
    unexplained: Vec<usize>,
    next: Option<Next>,
}

/// A number of a reading as it is written.
fn number(probe: &Probe, number: Option<f64>) -> String {
    tell(&say!("as-it-stands", text = said_number(probe, number)))
}

fn told(sheet: &Sheet, suspect: &Suspect) -> ToldSuspect {
    ToldSuspect {
        breaks: suspect
            .breaks
            .iter()
            .map(|broken| broken.written(sheet))
            .collect(),
        share: suspect.share,
        foretold: suspect.foretold.clone(),
    }
}

fn next(sheet: &Sheet, proposal: &Proposal, out: &mut String) {
    let said = say!(
        "fault-next",
        at = said_probe(sheet, &proposal.probe),
        minutes = precise(proposal.minutes, Unit::Bare, 0),
        bits = precise(proposal.bits, Unit::Bare, 1),
    );
    out.push_str(&(tell(&said) + "\n"));
    for (suspect, foretold) in &proposal.foretold {
        let said = say!(
            "fault-would-read",
            what = said_suspect(sheet, suspect),
            number = said_number(&proposal.probe, *foretold),
        );
        out.push_str(&format!("  {}\n", tell(&said)));
    }
}

pub(crate) fn run(call: &FindFaultCall) -> Result<Report, String> {
    let opened = open(&call.job)?;
    let sheet = opened.sheet();
    let readings = call.reading.iter().map(|text| read_reading(text, &sheet));
    let readings = readings
        .collect::<Result<Vec<_>, _>>()
        .map_err(|said| tell(&said))?;
    let symptoms = call.symptom.iter().map(|text| read_symptom(text, &sheet));
    let symptoms = symptoms
        .collect::<Result<Vec<_>, _>>()
        .map_err(|said| tell(&said))?;
    let mut finder = Finder::new(&sheet, &opened.settings).ok_or_else(|| tell(&say!("fault-no-supply")))?;
    finder.know(&readings, &symptoms);
    let ranking: Vec<Suspect> = finder
        .ranking()
        .into_iter()
        .filter(|suspect| suspect.share >= 0.001)
        .collect();
    let verdict = finder.verdict();
    if call.job.json {
        let (outcome, proposal) = match &verdict {
            Verdict::Found(_) => ("found", None),
            Verdict::Alike(_) => ("alike", None),
            Verdict::Open(proposal) => ("open", Some(proposal)),
            Verdict::Nothing => ("nothing", None),
        };
        return Ok(Report::clean(json(&Answer {
            outcome,
            suspects: ranking.iter().map(|suspect| told(&sheet, suspect)).collect(),
            unexplained: finder.unexplained(),
            next: proposal.map(|proposal| Next {
                at: tell(&said_probe(&sheet, &proposal.probe)),
                bits: proposal.bits,
                minutes: proposal.minutes,
            }),
        })?));
    }
    let mut out = opened.heading() + "\n";
    let share = |share: f64| precise(share, Unit::Percent, 0);
    match &verdict {
        Verdict::Found(suspect) => {
            let what = said_suspect(&sheet, suspect);
            let said = say!("fault-found", what = what, share = share(suspect.share));
            out.push_str(&(tell(&said) + "\n"));
        }
        Verdict::Alike(_) => out.push_str(&(text_of("fault-alike") + "\n")),
        Verdict::Open(_) => out.push_str(&(text_of("fault-suspected") + "\n")),
        Verdict::Nothing => out.push_str(&(text_of("fault-none") + "\n")),
    }
    let mut list = if readings.is_empty() {
        table(&["share", "suspect"])
    } else {
        table(&["share", "suspect", "foretold"])
    };
    for suspect in ranking.iter().take(LISTED) {
        let mut row = vec![
            words().figure(share(suspect.share)),
            tell(&said_suspect(&sheet, suspect)),
        ];
        if !readings.is_empty() {
            let would = readings.iter().zip(&suspect.foretold);
            let would: Vec<String> = would
                .map(|(reading, foretold)| number(&reading.probe, *foretold))
                .collect();
            row.push(would.join(", "));
        }
        list.add_row(row);
    }
    out.push_str(&print(&list));
    for said in said_unexplained(&sheet, &finder, &readings) {
        out.push_str(&format!("\n{}\n", tell(&said)));
    }
    if let Verdict::Open(proposal) = &verdict {
        out.push('\n');
        next(&sheet, proposal, &mut out);
    }
    out.push_str(&format!("\n{}\n", text_of("fault-caution")));
    Ok(Report::clean(out))
}
