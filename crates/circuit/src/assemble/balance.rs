//! How the solution came out: what could be delivered, and whether what was found balances.

use crate::flows::Points;
use crate::network::{Kind, Network};
use crate::solve::Closure;
use crate::study::{Balance, Outcome};
use model::Sheet;
use model::quantity::{Amps, Share};

/// Largest relative imbalance of an answer.
const BALANCE_LIMIT: f64 = 1e-6;

pub(super) fn outcome(net: &Network, sheet: &Sheet, points: &Points) -> Outcome {
    if !points.mean.driven.iter().any(|d| *d) && !points.burst.driven.iter().any(|d| *d) {
        return Outcome::NothingToSolve;
    }
    let burst = &points.burst;
    if burst.deliverable >= 1.0 {
        return Outcome::Solved;
    }
    let mut blamed_runs = Vec::new();
    let mut blamed_parts = Vec::new();
    for &branch in &burst.blamed {
        let Some(it) = net.branches.get(branch) else {
            continue;
        };
        match it.kind {
            Kind::Wire { run } | Kind::Shield { run } => blamed_runs.extend(net.runs.get(run).map(|r| r.id)),
            _ => {
                if let Some(&id) = net.parts.get(it.part)
                    && sheet.parts.contains_key(&id)
                    && !blamed_parts.contains(&id)
                {
                    blamed_parts.push(id);
                }
            }
        }
    }
    Outcome::Collapsed {
        deliverable: Share(burst.deliverable),
        blamed_runs,
        blamed_parts,
    }
}

fn closures(points: &Points) -> [&Closure; 3] {
    [&points.mean.closure, &points.rms.closure, &points.burst.closure]
}

pub(super) fn balance(points: &Points) -> Balance {
    let mut out = Balance::default();
    for closure in closures(points) {
        out.residual = out.residual.max(Amps(closure.residual));
        out.relative_residual = out.relative_residual.max(closure.relative_residual());
        out.relative_power = out.relative_power.max(closure.relative_power().abs());
    }
    out
}

/// Whether all three points were found and balance. Written so that a number that is not one fails.
pub(super) fn balanced(points: &Points) -> bool {
    let settled = [&points.mean, &points.rms, &points.burst]
        .iter()
        .all(|p| p.settled);
    settled
        && closures(points)
            .iter()
            .all(|c| c.relative_residual() < BALANCE_LIMIT && c.relative_power().abs() < BALANCE_LIMIT)
}
