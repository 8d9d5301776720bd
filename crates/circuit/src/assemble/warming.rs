//! How warm the runs become by what they carry, and what they carry by how warm they are: both settled together.

use crate::network::{Network, NetworkRun, values};
use crate::solve::{Level, Operator};
use model::job::Conditions;
use model::{Sheet, Wire};

/// Rounds in which currents and temperatures settle together; each brings the error down by the share of the
/// resistance that warming adds, a fifth or less in sound systems.
const HEAT_ROUNDS: usize = 4;

/// What the temperatures of runs follow from, run by run.
pub(crate) struct RunHeat {
    /// How the wire of each run warms with its current.
    pub(crate) warming: Vec<values::Warming>,
    /// Resistance at 20 °C of what warms in its branch, in ohms: of the wire without its endings. Nothing of a signal lead between line
    /// jacks, whose branch is a shield: it is no part of the core, and its table tells a range of one to seven at no temperature.
    pub(crate) cold: Vec<f64>,
    /// Resistance of its whole branch at 20 °C, in ohms: the wire with its endings, or a shield with its plugs.
    pub(crate) whole: Vec<f64>,
}

impl RunHeat {
    pub(crate) fn of(net: &Network, sheet: &Sheet, conditions: &Conditions) -> Self {
        // Runs of a network stand as those of its sheet: in the order of their ids.
        let wires = || sheet.runs.values().map(|run| &run.wire);
        let warms = |(run, wire): (&NetworkRun, &Wire)| {
            if run.line { 0.0 } else { values::wire_at_20(wire) }
        };
        let runs = net.runs.iter();
        Self {
            warming: wires()
                .map(|wire| values::Warming::of(wire, conditions))
                .collect(),
            cold: net.runs.iter().zip(wires()).map(warms).collect(),
            whole: runs.map(|run| net.branches[run.branch].resistance).collect(),
        }
    }
}

/// Settles temperatures and currents together at RMS level: by run, the temperature of its conductor in °C. Leaves the resistances in the
/// operator.
pub(crate) fn warm_up(
    operator: &mut Operator<'_>,
    net: &Network,
    sheet: &Sheet,
    conditions: &Conditions,
) -> Vec<f64> {
    settle_heat(operator, net, &RunHeat::of(net, sheet, conditions))
}

/// The same of runs of which it is known what their temperatures follow from.
pub(crate) fn settle_heat(operator: &mut Operator<'_>, net: &Network, heat: &RunHeat) -> Vec<f64> {
    let RunHeat { warming, cold, whole } = heat;
    let mut temperatures: Vec<f64> = warming.iter().map(|w| w.ambient).collect();
    for round in 0..HEAT_ROUNDS {
        let wires = cold.iter().zip(whole).zip(warming.iter().zip(&temperatures));
        for (run, ((at_20, whole), (warming, temperature))) in net.runs.iter().zip(wires) {
            let warmer = at_20 * (warming.factor(*temperature) - 1.0);
            operator.set_resistance(run.branch, whole + warmer);
        }
        if round + 1 == HEAT_ROUNDS {
            break;
        }
        let currents = if round == 0 {
            operator.operate_for_currents(Level::Rms)
        } else {
            operator.operate_again_for_currents(Level::Rms)
        };
        for ((run, warming), temperature) in net.runs.iter().zip(warming).zip(&mut temperatures) {
            let current = if run.line { 0.0 } else { currents[run.branch] };
            *temperature = warming.temperature(current);
        }
    }
    temperatures
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assemble::prepare;
    use model::Settings;

    /// A head unit whose ground is lifted over body metal, joined to an amplifier by five metres of signal lead whose core resists 1 Ω/m.
    const LIFTED: &str = "battery B1 agm charge=90% resistance=0.004ohm\nload L1 law=current current=80A\n\
        ground E1 contact=0ohm body=0.003ohm\nground E2 contact=0ohm body=0ohm\nhead H1\namplifier A1 input-ground=joined\n\
        ground E3 contact=0ohm body=0ohm\nbus X1 places=4\n\
        run W1 B1.+ L1.+ 50mm2 1m\nrun W2 L1.- X1.1 50mm2 1m\nrun W3 X1.2 E1.stud 50mm2 1m\nrun W4 E2.stud B1.- 50mm2 1m\n\
        run W5 B1.+ H1.30 2.5mm2 1m\nrun W6 H1.31 B1.- 2.5mm2 1m\nrun W7 X1.3 A1.- 50mm2 1m\n\
        run W8 H1.front-l A1.in1 0.35mm2 5m stated-resistance=1ohm/m\n";

    /// The shield is no part of the core: it resists what its own table says, 50 mΩ/m and two plugs, however cold and thin the core is.
    #[test]
    fn the_core_of_a_signal_lead_does_not_warm_its_shield() {
        let sheet = testkit::sheet(LIFTED);
        let (id, run) = sheet.run_by_tag("W8").expect("the signal lead");
        let shield_at = |cabin: f64| {
            let mut settings = Settings::default();
            settings.conditions.cabin = model::Fact::Given(model::quantity::Celsius(cabin));
            let it = prepare(&sheet, &settings, Level::Burst);
            assert!(it.point.settled, "{cabin} °C");
            let run = it.net.runs.iter().find(|run| run.id == id).expect("it is there");
            assert!(run.line);
            let crate::solve::Law::Resistance(ohms) = it.point.elements[run.branch].law else {
                panic!("a shield conducts");
            };
            (ohms, it.point.currents[run.branch])
        };
        let (_, usual) = shield_at(20.0);
        assert!(usual.abs() > 0.01, "{usual}");
        for cabin in [-40.0, 40.0, 90.0] {
            let (ohms, amps) = shield_at(cabin);
            approx::assert_relative_eq!(ohms, values::shield(run), max_relative = 1e-12);
            assert!(ohms >= 5.0 * 0.05, "{ohms}");
            // The leads of the supply warm, and move the grounds a little.
            approx::assert_relative_eq!(amps, usual, max_relative = 0.3);
        }
    }
}
