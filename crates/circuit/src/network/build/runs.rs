//! Runs: what each is as a branch, and what was taken for granted of it.

use super::builder::Builder;
use crate::network::{BODY, Branch, Closes, Kind, NetworkRun, values};
use model::conductor::Condition;
use model::{End, Run, RunId, Sheet};
use words::say;

impl Builder {
    pub(super) fn runs(&mut self, sheet: &Sheet) {
        for (&id, run) in &sheet.runs {
            let index = self.net.runs.len();
            let mut terminals = [None; 2];
            for (at, end) in run.ends().into_iter().enumerate() {
                if let End::On(to) = end {
                    terminals[at] = self.net.terminal_index(to);
                    match terminals[at] {
                        Some(terminal) => self.wired[terminal] = true,
                        None => self.net.notes.push(say!(
                            "note-no-terminal",
                            run = &run.tag,
                            terminal = sheet.written(to),
                        )),
                    }
                }
            }
            let is_line = |t: Option<usize>| t.is_some_and(|t| self.net.terminals[t].role.is_line());
            let line = is_line(terminals[0]) && is_line(terminals[1]);
            let nodes = terminals.map(|t| match t {
                Some(t) => self.net.terminals[t].node,
                None => {
                    self.parent.push(self.parent.len());
                    self.parent.len() - 1
                }
            });
            let whole = run.wire.condition.value() != Some(Condition::Cut);
            self.assume_run(id, run, line);
            let resistance = values::wire_at_20(&run.wire);
            let endings = [values::ending(sheet, run, 0), values::ending(sheet, run, 1)];
            let closes = if whole { Closes::Always } else { Closes::Never };
            let (kind, branch_nodes, ohms) = if line {
                let shields = terminals.map(|t| match t {
                    Some(t) => self.shield_of(t),
                    None => BODY,
                });
                (Kind::Shield { run: index }, shields, values::shield(run))
            } else {
                (
                    Kind::Wire { run: index },
                    nodes,
                    resistance + endings[0] + endings[1],
                )
            };
            let branch = self.branch(Branch {
                kind,
                nodes: branch_nodes,
                part: 0,
                resistance: ohms,
                closes,
                carries: whole,
            });
            if line {
                for terminal in terminals.into_iter().flatten() {
                    let part = self.net.terminals[terminal].part;
                    self.net.line_runs.entry(part).or_default().push(index);
                }
            }
            self.net.runs.push(NetworkRun {
                id,
                nodes,
                terminals,
                branch,
                length: values::length(&run.wire),
                length_known: !run.wire.length.is_unknown(),
                line,
                whole,
            });
        }
    }

    pub(super) fn shield_of(&mut self, terminal: usize) -> usize {
        if let Some(point) = self.shield[terminal] {
            return point;
        }
        let point = self.point();
        self.shield[terminal] = Some(point);
        point
    }

    pub(super) fn assume_run(&mut self, id: RunId, run: &Run, line: bool) {
        let wire = &run.wire;
        let mut note = |given: bool, name: &'static str| {
            if !given {
                self.assumed.push((None, Some(id), name));
            }
        };
        // In the order of their names, so that nothing has to be sorted.
        let sized = wire.stated_resistance.is_given();
        let from = &run.from_ending;
        note(line || wire.bundle.is_settled(), "bundle");
        note(
            line || from.method.is_given() || from.resistance.is_given(),
            "from-ending",
        );
        note(line || wire.insulation.is_given(), "insulation");
        note(wire.length.is_settled(), "length");
        note(sized || wire.material.is_given(), "material");
        note(sized || wire.size.is_given(), "size");
        note(line || wire.surroundings.is_settled(), "surroundings");
        let to = &run.to_ending;
        note(
            line || to.method.is_given() || to.resistance.is_given(),
            "to-ending",
        );
    }
}
