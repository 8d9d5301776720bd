//! What touches the body, or its own return.

use super::{Fault, Harm, Hazard, NEAR, SUPPLY, Universe};
use circuit::{Probe, Purpose, Shown};
use model::breaks::{Break, Contact, HALF_WAY};
use model::conductor::Condition;
use model::quantity::Ohms;
use model::{PartKind, Role, RunId, Sheet, TerminalRef};
use ordered::OrderedSet;
use std::ops::Range;

/// A touch of bare metal, in ohms.
const TOUCH: Ohms = Ohms(0.005);
/// Resistance of a battery and of a way back through the body that nobody knows better, in ohms: on the high side.
const SOURCE: f64 = 0.015;
const BACK: f64 = 0.01;

impl<'a> Universe<'a> {
    /// Ohms between two terminals with the supply isolated and nothing wrong.
    fn ohms(&self, a: &TerminalRef, b: &TerminalRef) -> Option<f64> {
        let placed = self.bench.place(&Probe::Ohms(a.clone(), b.clone()))?;
        match self.bench.ohms(&circuit::Isolated::default(), &placed)? {
            Shown::Ohms(ohms) => Some(ohms.0),
            _ => None,
        }
    }

    /// The poles of the batteries, plus and minus.
    fn batteries(&self) -> Vec<[TerminalRef; 2]> {
        let parts = self.sheet.parts.iter();
        let own = parts.filter(|(_, part)| matches!(part.is, PartKind::Battery(_)));
        own.map(|(id, _)| ["+", "-"].map(|name| TerminalRef::new(*id, name)))
            .collect()
    }

    /// Adds those of runs that touch the body, with which more flows than a wire bears.
    pub(super) fn touches(&mut self, range: &Range<usize>) {
        let sheet: &'a Sheet = self.sheet;
        let batteries = self.batteries();
        let on_body: Vec<TerminalRef> = self
            .sheet
            .parts
            .iter()
            .filter_map(|(id, part)| match part.is {
                PartKind::Ground(_) => Some(TerminalRef::new(*id, "stud")),
                PartKind::Vehicle(_) => Some(TerminalRef::new(*id, "31")),
                _ => None,
            })
            .collect();
        // Where no source is tied to the body, a touch of it is no short.
        let has_body = batteries
            .iter()
            .any(|[_, minus]| on_body.iter().any(|at| self.ohms(at, minus).is_some()));
        let ohms_to = |it: &Self, at: &TerminalRef| {
            let own = batteries.iter().filter_map(|[plus, _]| it.ohms(plus, at));
            own.reduce(f64::min)
        };
        for (&id, run) in sheet.runs.iter().skip(range.start).take(range.len()) {
            let (Some(from), Some(to)) = (run.from.terminal(), run.to.terminal()) else {
                continue;
            };
            let asked = self.asks.runs.get(&id);
            let feeds = matches!(
                self.purpose(id),
                Purpose::Feed | Purpose::BetweenSources | Purpose::TurnOn
            );
            let cut = run.wire.condition.value() == Some(Condition::Cut);
            if !(feeds || asked.is_some_and(|it| it.live)) || !has_body || cut {
                continue;
            }
            let broken = Break::Grounded {
                run: id,
                at: HALF_WAY,
                through: TOUCH,
            };
            let way = ohms_to(self, from).zip(ohms_to(self, to)).map(|(a, b)| a.max(b));
            let bears = self.flows.get(&id).and_then(|flow| flow.bears);
            let draws = way.map(|way| SUPPLY / (way + SOURCE + BACK + TOUCH.0));
            let grave = match draws.zip(bears) {
                // What is not judged itself may overload what is.
                Some((draws, bears)) if draws > NEAR * bears && asked.is_some_and(|it| it.burdened) => true,
                _ => self.is_grave(&broken),
            };
            if grave {
                self.add(broken, Harm::Short);
            }
        }
    }

    /// Adds supply terminals that touch one another, of what is fed by a run of which a touch is among those found `before`.
    pub(super) fn joined(&mut self, before: &[Hazard]) {
        let sheet: &'a Sheet = self.sheet;
        let shorted = before.iter().filter_map(|hazard| match &hazard.fault {
            Fault::Broken(Break::Grounded { run, .. }) => Some(*run),
            _ => None,
        });
        let shorted: OrderedSet<RunId> = shorted.collect();
        for (&id, part) in &sheet.parts {
            let terminal = |role: Role| {
                let mut all = part.terminals().into_iter();
                let it = all.find(|terminal| terminal.role == role)?;
                Some(TerminalRef {
                    part: id,
                    terminal: it.name,
                })
            };
            let (Some(plus), Some(minus)) = (terminal(Role::SupplyPlus), terminal(Role::SupplyMinus)) else {
                continue;
            };
            let wired = |at: &TerminalRef| {
                let mut runs = sheet.runs_of(id);
                let run = runs.find(|(_, run)| run.ends().iter().any(|end| end.terminal() == Some(at)));
                run.map(|(run, _)| run)
            };
            let Some(feed) = wired(&plus).filter(|feed| shorted.contains(feed)) else {
                continue;
            };
            if wired(&minus).is_some() && self.purpose(feed) != Purpose::TurnOn {
                let broken = Break::Joined {
                    points: [plus, minus].map(Contact::Terminal),
                    through: TOUCH,
                };
                self.add(broken, Harm::Short);
            }
        }
    }
}
