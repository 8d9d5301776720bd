//! The speaker network as a deck for a circuit simulator, for alternating current.

use super::element::What;
use super::index::Index;
use super::network::{Network, SUPPLY};
use super::pieces::{Piece, pieces};
use model::{Settings, Sheet};
use std::fmt::Write;

/// A SPICE deck of the speaker side: an AC analysis from 20 Hz to 20 kHz, 20 points a decade.
///
/// The deck states elements, not results. Where several outputs feed one piece of network, the piece stands in it once for
/// each of them, with that source at 1 V and the others at 0 V, so that the currents can be added as the engine adds
/// them. The current of the source `vK_J` in the copy that output J drives is printed as `i(vK_J)`; by the custom of
/// SPICE it flows into the positive end, so a load is −1 V over it. K and J count the outputs of the sheet from 1, in
/// the order of [`super::study_speakers`].
#[must_use]
pub fn speaker_deck(sheet: &Sheet, _settings: &Settings) -> String {
    let net = Network::new(Index::new(sheet));
    let mut out =
        String::from("* Speaker network: outputs at 1 V, leads, coils, crossovers and capacitors\n");
    let mut prints = String::new();
    for piece in pieces(&net) {
        if piece.elements.is_empty() {
            continue;
        }
        for driven in &piece.outputs {
            copy(&net, &piece, *driven, &mut out, &mut prints);
        }
    }
    // A resistance to ground at every node, far above any impedance here: floating outputs have no other.
    out.push_str(".options rshunt=1e12 numdgt=9\n.ac dec 20 20 20k\n");
    out.push_str(&prints);
    out.push_str(".end\n");
    out
}

fn copy(net: &Network<'_>, piece: &Piece, driven: usize, out: &mut String, prints: &mut String) {
    let copy = driven + 1;
    let node = |node: usize| {
        if node == SUPPLY {
            "0".to_owned()
        } else {
            format!("n{node}_{copy}")
        }
    };
    for source in &piece.outputs {
        let Some(output) = net.outputs.get(*source) else {
            continue;
        };
        let name = format!("v{}_{copy}", source + 1);
        let volts = if *source == driven { 1 } else { 0 };
        let tag = net.index.tag(output.part);
        let _ = writeln!(out, "* {tag} channel {}", output.channel);
        let _ = writeln!(
            out,
            "{name} {} {} dc 0 ac {volts}",
            node(output.plus),
            node(output.minus)
        );
        let _ = writeln!(prints, ".print ac i({name})");
    }
    for number in &piece.elements {
        let Some(element) = net.elements.get(*number) else {
            continue;
        };
        let (a, b) = (node(element.a), node(element.b));
        let name = format!("{number}_{copy}");
        match element.what {
            What::Lead(run) => {
                let _ = writeln!(
                    out,
                    "r{name} {a} {b} {:e} ; {}",
                    element.band.ohms,
                    net.index.run_tag(run)
                );
            }
            What::Coil { speaker, coil } => {
                let tag = net.index.tag(speaker);
                // An inductor of nothing is no element for a simulator.
                let has_inductance = element.band.henries > 0.0;
                let middle = if has_inductance {
                    format!("m{name}")
                } else {
                    b.clone()
                };
                let _ = writeln!(
                    out,
                    "r{name} {a} {middle} {:e} ; {tag} coil {coil}",
                    element.band.ohms
                );
                if has_inductance {
                    let _ = writeln!(out, "l{name} {middle} {b} {:e}", element.band.henries);
                }
            }
            What::Inductor(_) => {
                let _ = writeln!(out, "l{name} {a} {b} {:e}", element.band.henries);
            }
            What::Capacitor(_) => {
                let _ = writeln!(out, "c{name} {a} {b} {:e}", 1.0 / element.band.elastance);
            }
            What::Tie => {
                let _ = writeln!(out, "v_{name} {a} {b} dc 0");
            }
        }
    }
}
