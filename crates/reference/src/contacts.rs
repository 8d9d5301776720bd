//! Resistance of endings, splices and ground points: typical values, each assumed until it is measured.
//!
//! No standard gives these; they are common practice, with the range they are met in. A bad one spreads over decades,
//! so `most` bounds what is usual and not what can happen.

use crate::{Source, Typical};
use model::conductor::{Condition, EndingMethod};
use model::kinds::supply::{GroundSurface, SpliceMethod};
use model::quantity::{Ohms, SquareMm};

const fn typical(least: f64, usual: f64, most: f64) -> Typical<Ohms> {
    Typical {
        least: Ohms(least),
        usual: Ohms(usual),
        most: Ohms(most),
        source: Source::practice("typical contact resistances"),
    }
}

fn scaled(of: Typical<Ohms>, factor: f64) -> Typical<Ohms> {
    Typical {
        least: of.least * factor,
        usual: of.usual * factor,
        most: of.most * factor,
        source: of.source,
    }
}

/// Resistance of one ending of a run. Below 16 mm² it grows with 1/√area up to four times, as smaller joints have less
/// surface; the figures are those of 16 mm² and more. A loose end joins nothing: `None`.
#[must_use]
pub fn ending_resistance(method: EndingMethod, area: SquareMm) -> Option<Typical<Ohms>> {
    let at_16 = match method {
        EndingMethod::Factory => typical(0.05e-3, 0.1e-3, 0.3e-3),
        EndingMethod::CrimpedRing => typical(0.1e-3, 0.15e-3, 0.3e-3),
        EndingMethod::CrimpedSpade => typical(0.2e-3, 0.5e-3, 2e-3),
        EndingMethod::Ferrule => typical(0.1e-3, 0.2e-3, 0.5e-3),
        EndingMethod::CrimpedSplice => typical(0.1e-3, 0.2e-3, 0.5e-3),
        EndingMethod::Soldered => typical(0.05e-3, 0.1e-3, 0.3e-3),
        EndingMethod::ScrewedBare => typical(0.2e-3, 0.5e-3, 2e-3),
        EndingMethod::Twisted => typical(1e-3, 5e-3, 50e-3),
        EndingMethod::Tap => typical(1e-3, 3e-3, 20e-3),
        EndingMethod::Plugged => typical(2e-3, 5e-3, 20e-3),
        EndingMethod::Loose => return None,
    };
    let small = libm::sqrt(16.0 / area.0.clamp(1.0, 16.0));
    Some(scaled(at_16, small))
}

/// Resistance of a splice.
#[must_use]
pub fn splice_resistance(method: SpliceMethod, area: SquareMm) -> Typical<Ohms> {
    let method = match method {
        SpliceMethod::Crimped => EndingMethod::CrimpedSplice,
        SpliceMethod::Soldered => EndingMethod::Soldered,
        SpliceMethod::Screwed => EndingMethod::ScrewedBare,
        SpliceMethod::Tap => EndingMethod::Tap,
        SpliceMethod::Twisted => EndingMethod::Twisted,
    };
    ending_resistance(method, area).unwrap_or(typical(1e-3, 5e-3, 50e-3))
}

/// How many times its resistance an ending has in a condition: corrosion and wet multiply it, the rest leaves it.
#[must_use]
pub const fn condition_factor(condition: Condition) -> Typical<f64> {
    let source = Source::practice("corroded joints; spreads over decades");
    match condition {
        Condition::Corroded => Typical {
            least: 3.0,
            usual: 20.0,
            most: 500.0,
            source,
        },
        Condition::Wet => Typical {
            least: 1.0,
            usual: 2.0,
            most: 20.0,
            source,
        },
        Condition::Sound | Condition::Chafed | Condition::Pinched | Condition::Melted | Condition::Cut => {
            Typical {
                least: 1.0,
                usual: 1.0,
                most: 1.0,
                source,
            }
        }
    }
}

/// Resistance of the contact of a ground point to the metal it is made on.
#[must_use]
pub const fn ground_contact(surface: GroundSurface) -> Typical<Ohms> {
    match surface {
        GroundSurface::MakersPoint => typical(0.1e-3, 0.2e-3, 0.5e-3),
        GroundSurface::BareMetal | GroundSurface::Engine => typical(0.1e-3, 0.3e-3, 1e-3),
        GroundSurface::BeltAnchor => typical(0.5e-3, 2e-3, 20e-3),
        GroundSurface::SeatRail | GroundSurface::Steering | GroundSurface::BrakeOrFuel => {
            typical(1e-3, 10e-3, 200e-3)
        }
        GroundSurface::Trim => typical(2e-3, 20e-3, 500e-3),
        GroundSurface::Hinge => typical(5e-3, 50e-3, 1.0),
        GroundSurface::Painted => typical(2e-3, 50e-3, 10.0),
    }
}

/// Body metal as a return conductor, bolted joints included, between two ground points.
pub const BODY_METAL: Typical<Ohms> = Typical {
    least: Ohms(0.5e-3),
    usual: Ohms(1e-3),
    most: Ohms(3e-3),
    source: Source::practice("typical measured body return; wide spread"),
};

/// Shield of a signal lead, per metre, in ohms: thin braid or wound strands.
pub const SIGNAL_SHIELD_PER_METRE: Typical<Ohms> = typical(0.02, 0.05, 0.15);
