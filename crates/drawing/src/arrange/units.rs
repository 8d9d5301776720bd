//! What is arranged: units (a part with the ground points below it), the runs between them, and systems of units that
//! runs join.

use crate::part_box::PartBox;
use kurbo::Point;
use model::kinds::PartKind;
use model::{PartId, Sheet, Side};
use ordered::OrderedMap;
use ordered::Sort as _;

/// Room between a part and the ground points below it: enough for a tag on the run between them.
const ABOVE_GROUND: i32 = 60;

/// A part with the ground points that stand below it.
#[derive(Clone, Debug)]
pub(crate) struct Unit {
    /// Its parts: id, and the middle measured from the unit's upper left corner.
    pub(crate) parts: Vec<(PartId, i32, i32)>,
    pub(crate) width: i32,
    pub(crate) height: i32,
    /// Where its kind stands in the order from left to right when nothing else decides.
    pub(crate) rank: u8,
    /// Runs that leave below it for elsewhere: they want room there.
    pub(crate) below: i32,
}

/// A run between two units: unit and height of the stud below the unit's top, at each end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Link {
    pub(crate) from: usize,
    pub(crate) to: usize,
    pub(crate) from_y: i32,
    pub(crate) to_y: i32,
    /// Whether it leaves to the right and lands on the left: then `from` must stand left of `to`.
    pub(crate) directed: bool,
}

/// Units that runs join.
#[derive(Clone, Debug, Default)]
pub(crate) struct System {
    pub(crate) units: Vec<Unit>,
    pub(crate) links: Vec<Link>,
}

fn rank(kind: &PartKind) -> u8 {
    match kind {
        PartKind::Battery(_) | PartKind::Alternator(_) => 0,
        PartKind::Vehicle(_) => 1,
        PartKind::Fuse(_) | PartKind::Breaker(_) | PartKind::Converter(_) => 2,
        PartKind::Block(_) | PartKind::Bus(_) | PartKind::Isolator(_) => 3,
        PartKind::Plug(_) | PartKind::Adapter(_) | PartKind::Relay(_) | PartKind::Switch(_) => 4,
        PartKind::HeadUnit(_) | PartKind::Splice(_) => 5,
        PartKind::Processor(_) | PartKind::LineConverter(_) => 6,
        PartKind::Amplifier(_) => 7,
        PartKind::Crossover(_) | PartKind::InlineCapacitor(_) => 8,
        PartKind::Speaker(_) | PartKind::Load(_) | PartKind::Capacitor(_) | PartKind::Ground(_) => 9,
    }
}

fn whole(length: f64) -> i32 {
    libm::round(length) as i32
}

/// The systems of a sheet, in order of their least part.
pub(crate) fn systems(sheet: &Sheet) -> Vec<System> {
    let boxes: OrderedMap<PartId, PartBox> = sheet
        .parts
        .iter()
        .map(|(id, part)| (*id, PartBox::of(part, Point::ZERO)))
        .collect();
    // Which part each ground point stands below, and under which of its studs.
    let mut host: OrderedMap<PartId, (PartId, i32)> = OrderedMap::new();
    for run in sheet.runs.values() {
        let (Some(a), Some(b)) = (run.from.terminal(), run.to.terminal()) else {
            continue;
        };
        for (ground, other) in [(a, b), (b, a)] {
            let is_ground = |id: &PartId| {
                sheet
                    .parts
                    .get(id)
                    .is_some_and(|part| matches!(part.is, PartKind::Ground(_)))
            };
            if !is_ground(&ground.part) || is_ground(&other.part) || host.contains_key(&ground.part) {
                continue;
            }
            if let Some(stud) = boxes
                .get(&other.part)
                .and_then(|drawn| drawn.stud(&other.terminal))
                && stud.side == Side::Bottom
            {
                host.insert(ground.part, (other.part, whole(stud.at.x)));
            }
        }
    }
    let mut below: OrderedMap<PartId, Vec<(i32, PartId)>> = OrderedMap::new();
    for (ground, (part, x)) in &host {
        below.entry(*part).or_default().push((*x, *ground));
    }

    let mut units: Vec<Unit> = Vec::new();
    // For each part its unit and the upper left corner of that unit relative to the part's middle.
    let mut home: OrderedMap<PartId, (usize, i32, i32)> = OrderedMap::new();
    for (id, part) in &sheet.parts {
        let Some(drawn) = boxes.get(id) else { continue };
        if host.contains_key(id) {
            continue;
        }
        let half = |drawn: &PartBox| {
            (
                whole(drawn.outline.width() / 2.0),
                whole(drawn.outline.height() / 2.0),
            )
        };
        let (half_x, half_y) = half(drawn);
        // Middles relative to the host's middle.
        let mut members: Vec<(PartId, i32, i32, i32, i32)> = vec![(*id, 0, 0, half_x, half_y)];
        let mut free_from = i32::MIN;
        let mut grounds = below.get(id).cloned().unwrap_or_default();
        grounds.order();
        for (stud_x, ground) in grounds {
            let Some(ground_box) = boxes.get(&ground) else {
                continue;
            };
            let (ground_x, ground_y) = half(ground_box);
            let x = stud_x.max(free_from.saturating_add(ground_x));
            members.push((ground, x, half_y + ABOVE_GROUND + ground_y, ground_x, ground_y));
            free_from = x + ground_x + 20;
        }
        let left = members
            .iter()
            .map(|(_, x, _, half, _)| x - half)
            .min()
            .unwrap_or(0);
        let right = members
            .iter()
            .map(|(_, x, _, half, _)| x + half)
            .max()
            .unwrap_or(0);
        let top = -half_y;
        let bottom = members
            .iter()
            .map(|(_, _, y, _, half)| y + half)
            .max()
            .unwrap_or(0);
        for (member, x, y, _, _) in &members {
            home.insert(*member, (units.len(), x - left, y - top));
        }
        units.push(Unit {
            parts: members
                .iter()
                .map(|(member, x, y, _, _)| (*member, x - left, y - top))
                .collect(),
            width: right - left,
            height: bottom - top,
            rank: rank(&part.is),
            below: 0,
        });
    }

    let mut links = Vec::new();
    for run in sheet.runs.values() {
        let (Some(a), Some(b)) = (run.from.terminal(), run.to.terminal()) else {
            continue;
        };
        let find = |terminal: &model::TerminalRef| {
            let stud = boxes.get(&terminal.part)?.stud(&terminal.terminal)?;
            let (unit, _, y) = *home.get(&terminal.part)?;
            Some((unit, y + whole(stud.at.y), stud.side))
        };
        let (Some(mut from), Some(mut to)) = (find(a), find(b)) else {
            continue;
        };
        if from.0 == to.0 {
            continue;
        }
        for end in [&from, &to] {
            if end.2 == Side::Bottom
                && let Some(unit) = units.get_mut(end.0)
            {
                unit.below += 1;
            }
        }
        let directed = match (from.2, to.2) {
            (Side::Right, Side::Left) => true,
            (Side::Left, Side::Right) => {
                std::mem::swap(&mut from, &mut to);
                true
            }
            _ => false,
        };
        links.push(Link {
            from: from.0,
            to: to.0,
            from_y: from.1,
            to_y: to.1,
            directed,
        });
    }
    split(units, links)
}

/// Splits units into systems that links join.
fn split(units: Vec<Unit>, links: Vec<Link>) -> Vec<System> {
    let mut parent: Vec<usize> = (0..units.len()).collect();
    fn root(parent: &mut [usize], mut at: usize) -> usize {
        while let Some(up) = parent.get(at).copied() {
            if up == at {
                break;
            }
            // Halve the way for the next search.
            let above = parent.get(up).copied().unwrap_or(up);
            if let Some(slot) = parent.get_mut(at) {
                *slot = above;
            }
            at = up;
        }
        at
    }
    for link in &links {
        let (a, b) = (root(&mut parent, link.from), root(&mut parent, link.to));
        if let Some(slot) = parent.get_mut(a.max(b)) {
            *slot = a.min(b);
        }
    }
    let mut systems: Vec<System> = Vec::new();
    let mut system_of: OrderedMap<usize, usize> = OrderedMap::new();
    let mut new_place: Vec<(usize, usize)> = Vec::with_capacity(units.len());
    for (place, unit) in units.into_iter().enumerate() {
        let top = root(&mut parent, place);
        let number = *system_of.entry(top).or_insert_with(|| {
            systems.push(System::default());
            systems.len() - 1
        });
        if let Some(system) = systems.get_mut(number) {
            new_place.push((number, system.units.len()));
            system.units.push(unit);
        }
    }
    for link in links {
        if let (Some((number, from)), Some((_, to))) = (new_place.get(link.from), new_place.get(link.to))
            && let Some(system) = systems.get_mut(*number)
        {
            system.links.push(Link {
                from: *from,
                to: *to,
                ..link
            });
        }
    }
    systems
}
