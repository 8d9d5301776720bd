//! The metal of the body as a conductor: from where the battery strap joins it to the ground points, and from one ground
//! point to the next. What two of them share, they share here too.

use crate::places::Point;
use crate::plan::Plan;
use model::quantity::{Metres, Ohms};
use model::{PartId, PartKind, Settings, Sheet};
use reference::body_metal;

/// A spot of the body at which ground points are.
#[derive(Clone, Debug, PartialEq)]
pub struct MetalPoint {
    /// The ground points there.
    pub grounds: Vec<PartId>,
    /// The spot towards the battery strap, by its index; nothing where that is the strap itself.
    pub toward: Option<usize>,
    /// Resistance of the body from here to there, without the spreading around a ground point.
    pub ohms: Ohms,
}

/// The metal between ground points: a tree with its root where the battery strap joins the body. Each spot hangs on the
/// nearest of those before it (the least spanning tree, by Prim's rule), so that currents flow together where their ways
/// through the car do. A real body spreads more than a tree: what this gives is on the careful side.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Metal {
    /// The spots; each comes after the one it hangs on.
    pub points: Vec<MetalPoint>,
}

impl Metal {
    /// Of a sheet in the body that the settings tell; empty where that has no form, or no ground point has a place in it.
    /// Ground points whose body metal was measured are left out.
    #[must_use]
    pub fn of(sheet: &Sheet, settings: &Settings) -> Self {
        let is_placed = |kind: &PartKind| matches!(kind, PartKind::Ground(_));
        let any = sheet
            .parts
            .values()
            .any(|part| part.place.is_some() && is_placed(&part.is));
        if settings.body.shape.form.is_unknown() || !any {
            return Self::default();
        }
        Plan::of(&settings.body).map_or_else(Self::default, |plan| Self::on(&plan, sheet))
    }

    pub(crate) fn on(plan: &Plan, sheet: &Sheet) -> Self {
        // By place, in the order of the plan: the ground points there.
        let mut at_place: Vec<Vec<PartId>> = vec![Vec::new(); plan.places.len()];
        for (id, part) in &sheet.parts {
            if let PartKind::Ground(ground) = &part.is
                && !ground.body.is_given()
                && let Some(list) = plan
                    .place_of(sheet, *id)
                    .and_then(|place| at_place.get_mut(place))
            {
                list.push(*id);
            }
        }
        let mut left: Vec<(Point, Vec<PartId>)> = plan
            .places
            .iter()
            .zip(at_place)
            .filter(|(_, grounds)| !grounds.is_empty())
            .map(|(place, grounds)| (place.at, grounds))
            .collect();
        let strap = strap(plan, sheet);
        let mut placed: Vec<Point> = Vec::new();
        let mut metal = Self::default();
        while !left.is_empty() {
            // The nearest pair of one that hangs already and one that does not.
            let mut best: Option<(Metres, usize, Option<usize>)> = None;
            for (which, (at, _)) in left.iter().enumerate() {
                let hanging = placed
                    .iter()
                    .enumerate()
                    .map(|(point, other)| (Some(point), *other));
                for (toward, other) in std::iter::once((None, strap)).chain(hanging) {
                    let far = at.straight(other);
                    if best.is_none_or(|(least, ..)| far < least) {
                        best = Some((far, which, toward));
                    }
                }
            }
            let Some((far, which, toward)) = best else { break };
            let (at, grounds) = left.remove(which);
            placed.push(at);
            metal.points.push(MetalPoint {
                grounds,
                toward,
                ohms: body_metal::along(far),
            });
        }
        metal
    }

    /// The spot of a ground point, by its index.
    #[must_use]
    pub fn point_of(&self, ground: PartId) -> Option<usize> {
        self.points
            .iter()
            .position(|point| point.grounds.contains(&ground))
    }

    /// Resistance from each ground point to the battery strap when it alone carries current: spreading around it, and the
    /// way along the body.
    #[must_use]
    pub fn to_strap(&self) -> Vec<(PartId, Ohms)> {
        let mut along: Vec<Ohms> = Vec::new();
        for point in &self.points {
            let before = point.toward.and_then(|at| along.get(at).copied());
            along.push(before.unwrap_or(Ohms::ZERO) + point.ohms);
        }
        let points = self.points.iter().zip(along);
        points
            .flat_map(|(point, along)| {
                let ohms = along + body_metal::spreading();
                point.grounds.iter().map(move |ground| (*ground, ohms))
            })
            .collect()
    }
}

/// Where the battery strap joins the body: where the vehicle's own wiring is placed, else the battery, else where the form
/// has its battery.
fn strap(plan: &Plan, sheet: &Sheet) -> Point {
    let of = |which: fn(&PartKind) -> bool| {
        sheet
            .parts
            .iter()
            .filter(|(_, part)| which(&part.is))
            .find_map(|(id, _)| plan.point_of(sheet, *id))
    };
    of(|kind| matches!(kind, PartKind::Vehicle(_)))
        .or_else(|| of(|kind| matches!(kind, PartKind::Battery(_))))
        .unwrap_or_else(|| plan.battery_at())
}
