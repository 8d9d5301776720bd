//! What an ohmmeter shows between two terminals with the supply isolated.

use super::linear::{Linear, Pattern};
use super::{MOST_OHMS, views};
use crate::measured::as_measured;
use crate::network::{BODY, Network};
use body::Metal;
use model::quantity::Ohms;
use model::{Sheet, TerminalRef};

/// What an ohmmeter shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OhmsShown {
    /// Both leads are on one point.
    SamePoint,
    /// Nothing joins the two.
    Open,
    /// So much.
    Ohms(Ohms),
}

/// What an ohmmeter shows between two terminals, its leads left out, on a body of which it is known what metal lies between the ground
/// points. `None` when a terminal is not on the sheet, or nothing can be solved.
#[must_use]
pub fn ohms_between(
    sheet: &Sheet,
    metal: &Metal,
    red: &TerminalRef,
    black: &TerminalRef,
) -> Option<OhmsShown> {
    let sheet = &*as_measured(sheet);
    let net = Network::build_on(sheet, metal);
    let nodes = [net.node_of(red)?, net.node_of(black)?];
    if nodes[0] == nodes[1] {
        return Some(OhmsShown::SamePoint);
    }
    let extras = views::beside(sheet, &net);
    let branches = net.branches.iter().map(|branch| branch.nodes);
    let ends: Vec<[usize; 2]> = branches.chain(extras.iter().map(|it| it.nodes)).collect();
    let laws = net
        .branches
        .iter()
        .map(|branch| views::to_ohms(sheet, &net, branch));
    let laws = laws.chain(extras.iter().map(views::Extra::to_ohms)).collect();
    let linear = Linear::new(&Pattern::new(net.nodes, &ends), laws, &[BODY])?;
    let places = linear.places(nodes);
    if !linear.as_is().are_tied(places) {
        return Some(OhmsShown::Open);
    }
    let ohms = linear.own_ohms(places);
    Some(if ohms > MOST_OHMS {
        OhmsShown::Open
    } else {
        OhmsShown::Ohms(Ohms(ohms))
    })
}
