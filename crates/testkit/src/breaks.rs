//! Everything that can break on a sheet, and some things that cannot.

use model::breaks::{Break, Contact};
use model::quantity::{Ohms, Share};
use model::{Sheet, TerminalRef};

/// Breaks of every kind on every run, part and terminal of a sheet. Not all of them can be thrown.
#[must_use]
pub fn every_break(sheet: &Sheet) -> Vec<Break> {
    let mut all = Vec::new();
    for (at, &run) in sheet.runs.keys().enumerate() {
        all.push(Break::Cut {
            run,
            at: Share(if at % 2 == 0 { 0.5 } else { 0.8 }),
        });
        all.extend([false, true].map(|far| Break::Off { run, far }));
        let places = [0.0, 0.25, 1.0];
        all.push(Break::Grounded {
            run,
            at: Share(places[at % 3]),
            through: Ohms(if at % 2 == 0 { 0.0 } else { 0.05 }),
        });
        all.push(Break::Resistive { run, more: Ohms(0.2) });
    }
    let mut before: Option<TerminalRef> = None;
    for (&part, it) in &sheet.parts {
        all.push(Break::Open { part, output: None });
        all.push(Break::Poor {
            part,
            more: Ohms(0.5),
        });
        all.push(Break::Dead { part });
        all.extend([None, Some(1), Some(2)].map(|coil| Break::Reversed { part, coil }));
        for terminal in it.terminals() {
            let at = TerminalRef {
                part,
                terminal: terminal.name.clone(),
            };
            all.push(Break::Open {
                part,
                output: Some(terminal.name),
            });
            if let Some(before) = before.replace(at.clone()) {
                all.push(Break::Joined {
                    points: [before, at.clone()].map(Contact::Terminal),
                    through: Ohms(0.0),
                });
            } else if let Some((&run, _)) = sheet.runs.iter().next_back() {
                let along = |at| Contact::Along(run, Share(at));
                let pairs = [
                    [Contact::Terminal(at.clone()), Contact::Body],
                    [Contact::Terminal(at), along(0.3)],
                    [along(0.9), along(0.2)],
                ];
                all.extend(pairs.map(|points| Break::Joined {
                    points,
                    through: Ohms(0.01),
                }));
            }
        }
    }
    all
}
