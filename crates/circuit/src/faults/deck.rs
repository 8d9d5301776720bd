//! The network right after breaks as a deck for a circuit simulator, so that anybody can check the fault currents.
//!
//! As [`crate::deck()`]: elements by their characteristics, not results. Taken as settled are only which equipment has dropped out and
//! which contacts have let go. Loads below 6 V are resistances, here and there.

use super::Faults;
use super::base::Base;
use super::circuit::{Circuit, GIVES_UP, What};
use super::device::Edge;
use super::run::Run;
use crate::network::Draw;
use crate::solve::{Element, LEAKAGE, Law, join, shorten};
use model::breaks::Break;
use std::fmt::Write as _;
use words::Saying;

impl Faults {
    /// The deck right after breaks, sources at their strongest or weakest, and the voltage of each of its nodes as found here.
    ///
    /// # Errors
    /// As [`Faults::course`].
    pub fn deck(&self, breaks: &[Break], strong: bool) -> Result<(String, Vec<(String, f64)>), Saying> {
        let ready = self.ready(breaks)?;
        let base = ready.base(self);
        let mut run = Run::new(base, &ready.circuit, Edge::Slowest, strong);
        run.begin();
        Ok(write(base, &ready.circuit, &run))
    }
}

fn write(base: &Base, circuit: &Circuit, run: &Run<'_>) -> (String, Vec<(String, f64)>) {
    let reference = run.system.references();
    let is = |list: &[bool], node: usize| list.get(node) == Some(&true);
    let name = |node: usize| match is(&reference, node) {
        true => "0".to_owned(),
        false => format!("n{node}"),
    };
    let driven: Vec<bool> = (0..circuit.nodes)
        .map(|node| run.system.is_driven(node))
        .collect();
    // What hangs on nothing but a source that gives nothing has no voltage that a simulator could find.
    let mut hangs: Vec<usize> = (0..circuit.nodes).collect();
    for element in &run.elements {
        if matches!(element.law, Law::Resistance(_) | Law::Source { .. }) {
            join(&mut hangs, element.nodes[0], element.nodes[1]);
        }
    }
    shorten(&mut hangs);
    let firm: Vec<usize> = (0..circuit.nodes)
        .filter(|&node| is(&reference, node))
        .filter_map(|node| hangs.get(node).copied())
        .collect();
    let is_firm =
        |node: usize| is(&driven, node) && hangs.get(node).is_some_and(|group| firm.contains(group));
    let mut out = String::from("* Loomwright: supply network right after a break\n");
    for (at, (item, element)) in circuit.items.iter().zip(&run.elements).enumerate() {
        let Element { nodes: [a, b], law } = *element;
        if a == b || !is_firm(a) || !is_firm(b) || law == Law::Open {
            continue;
        }
        let (a, b) = (name(a), name(b));
        let v = format!("V({a},{b})");
        if let What::Load { part, draw, law } = item.what {
            let over = format!("max({v},{GIVES_UP})");
            let source = base.net.sources.iter().position(|it| it.part == part);
            let asked = match source.filter(|_| draw == Draw::Supply) {
                Some(source) => Law::Power(run.drawn.get(source).copied().unwrap_or(0.0)),
                None => law,
            };
            let _ = match asked {
                Law::Power(watts) => writeln!(out, "B{at} {a} {b} I={watts:e}*{v}/({over}*{over})"),
                Law::Current(amps) => writeln!(out, "B{at} {a} {b} I={amps:e}*{v}/{over}"),
                Law::Resistance(ohms) => writeln!(out, "R{at} {a} {b} {ohms:e}"),
                _ => Ok(()),
            };
            continue;
        }
        let _ = match law {
            Law::Resistance(ohms) => writeln!(out, "R{at} {a} {b} {ohms:e}"),
            Law::Source { emf, resistance } => writeln!(out, "B{at} {a} {b} I=({v}-{emf:e})/{resistance:e}"),
            // A choice of slopes has one everywhere; least and most of nothing have none right at the voltage of an idle battery.
            Law::Battery { emf, gives, takes } => writeln!(
                out,
                "B{at} {a} {b} I=({v}-{emf:e})*(({v} > {emf:e}) ? {:e} : {:e})",
                1.0 / takes,
                1.0 / gives
            ),
            Law::Limited {
                emf,
                resistance,
                limit,
            } => writeln!(
                out,
                "B{at} {a} {b} I=-min(max(({emf:e}-{v})/{resistance:e},0),{limit:e})"
            ),
            Law::Diode { drop, resistance } => writeln!(
                out,
                "B{at} {a} {b} I=max(({v}-{drop:e})/{resistance:e},0)+{LEAKAGE:e}*{v}"
            ),
            Law::Open | Law::Current(_) | Law::Power(_) => Ok(()),
        };
    }
    let told: Vec<usize> = (0..circuit.nodes)
        .filter(|&node| is_firm(node) && !is(&reference, node))
        .collect();
    let volts = |node: usize| run.system.voltages().get(node).copied().unwrap_or(0.0);
    for &node in &told {
        let _ = writeln!(out, ".nodeset v({})={:.2}", name(node), volts(node));
    }
    out.push_str(
        ".options reltol=1e-7 abstol=1e-10 vntol=1e-9 gmin=1e-15 itl1=1000\n.control\nop\nset numdgt=12\n",
    );
    for &node in &told {
        let _ = writeln!(out, "print v({})", name(node));
    }
    out.push_str(".endc\n.end\n");
    (
        out,
        told.into_iter().map(|node| (name(node), volts(node))).collect(),
    )
}
