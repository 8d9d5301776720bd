//! What the sizes bring under the conditions that are set: no finding of grade Stop or Fix that is not there now. What would bring one
//! stays as it is, and is said to.
//!
//! The search looks for what the checks that sizes decide say nothing of, as far as that can be had; what cannot be it gives up, and
//! it knows nothing of the other checks. So all of them are asked once more in the end, of the sheet as it is and as it would be. Where
//! they find something new, first what was laid thinner close to it stays as it is. Where that does not do, changes are taken over in
//! groups that serve the same loads, as many at a time as bring nothing.

use super::steps::pause;
use super::{Held, Limit, RunLine, Short, Sizing};
use crate::mending::matched;
use checks::{Finding, Grade};
use circuit::{DeviceRef, Study};
use model::{PartId, RunId, Settings, Sheet, SheetKind};
use ordered::{OrderedMap, OrderedSet, Sort as _};

/// Most times that the checks are asked about a part of the changes.
const MOST_ASKED: usize = 40;

/// The sheet as it is, and what the checks find there of grade Stop and Fix.
struct Now<'s> {
    sheet: &'s Sheet,
    settings: &'s Settings,
    findings: Vec<Finding>,
}

/// Changes that are taken over together.
#[derive(Clone, Default)]
struct Group {
    runs: Vec<RunId>,
    devices: Vec<DeviceRef>,
}

/// Findings of grade Stop and Fix.
fn grave(mut findings: Vec<Finding>) -> Vec<Finding> {
    findings.retain(|finding| finding.grade != Grade::Tidy);
    findings
}

impl Now<'_> {
    /// What a sheet has of that grade, and the places of what is not there now.
    async fn against(&self, would: &Sheet) -> (Vec<Finding>, Vec<usize>) {
        pause().await;
        let after = grave(checks::analyse(would, self.settings).findings);
        let brought = matched((&self.findings, self.sheet), (&after, would)).brought;
        (after, brought)
    }
}

/// Leaves as it is what brings a finding.
pub(super) async fn no_worse(sheet: &Sheet, settings: &Settings, sizing: &mut Sizing) {
    let would = sizing.taken(sheet);
    pause().await;
    let after = grave(checks::analyse(&would, settings).findings);
    if after.is_empty() {
        return;
    }
    pause().await;
    let checks::Analysis { study, findings } = checks::analyse(sheet, settings);
    let findings = grave(findings);
    let now = Now {
        sheet,
        settings,
        findings,
    };
    let brought = matched((&now.findings, sheet), (&after, &would)).brought;
    let brought: Vec<&Finding> = brought.into_iter().filter_map(|at| after.get(at)).collect();
    let Some(first) = brought.first().map(|it| it.check) else {
        return;
    };
    let near = near(sheet, &brought);
    let mut thicker = sizing.clone();
    let is_thinner =
        |line: &RunLine| line.after.map(|size| size.area().0) < line.before.map(|size| size.area().0);
    let named = |line: &RunLine| is_thinner(line) && near.contains(&line.run);
    thicker.leave(named, |_| false, first);
    let (after, brought) = now.against(&thicker.taken(sheet)).await;
    if brought.is_empty() {
        *sizing = thicker;
        sizing.forget(&after);
        return;
    }
    let after = sizing.take_groups(&now, &study, &near).await;
    sizing.forget(&after);
}

/// Runs that findings name, and those that end at what they name.
fn near(sheet: &Sheet, brought: &[&Finding]) -> OrderedSet<RunId> {
    let names = |part: PartId| brought.iter().any(|it| it.parts.contains(&part));
    let mut all: OrderedSet<RunId> = brought.iter().flat_map(|it| &it.runs).copied().collect();
    for (id, run) in &sheet.runs {
        let mut ends = run.ends().into_iter().filter_map(|end| end.terminal());
        if ends.any(|at| names(at.part)) {
            all.insert(*id);
        }
    }
    all
}

impl Sizing {
    /// What changes, by the loads that it serves: what lies far from a finding first, and of that what serves most.
    fn groups(&self, study: &Study, near: &OrderedSet<RunId>) -> Vec<Group> {
        let mut by_loads: OrderedMap<OrderedSet<PartId>, Group> = OrderedMap::new();
        for line in self.runs.iter().filter(|line| line.changes) {
            let serves = study.runs.get(&line.run).map(|flow| flow.serves.clone());
            let group = by_loads.entry(serves.unwrap_or_default()).or_default();
            group.runs.push(line.run);
        }
        for line in self.devices.iter().filter(|line| line.changes) {
            let device = study.devices.iter().find(|it| it.device == line.device);
            let serves = device.map(|device| device.serves.clone());
            let group = by_loads.entry(serves.unwrap_or_default()).or_default();
            group.devices.push(line.device.clone());
        }
        let mut all: Vec<(OrderedSet<PartId>, Group)> = by_loads.into_iter().collect();
        let is_near = |group: &Group| group.runs.iter().any(|run| near.contains(run));
        all.order_by(|a, b| {
            let by_place = is_near(&a.1).cmp(&is_near(&b.1));
            by_place.then(b.0.len().cmp(&a.0.len()))
        });
        all.into_iter().map(|(_, group)| group).collect()
    }

    /// Takes over as many groups of changes as bring nothing. What the checks find of grade Stop and Fix then.
    async fn take_groups(&mut self, now: &Now<'_>, study: &Study, near: &OrderedSet<RunId>) -> Vec<Finding> {
        let groups = self.groups(study, near);
        let mut kept = Group::default();
        let mut left: Vec<(Group, &'static str)> = Vec::new();
        let mut found = now.findings.clone();
        // The next last.
        let mut open = vec![(0..groups.len(), "")];
        let mut asked = 0;
        while let Some((some, check)) = open.pop() {
            let of = groups.get(some.clone()).unwrap_or_default();
            if asked >= MOST_ASKED {
                left.extend(of.iter().map(|group| (group.clone(), check)));
                continue;
            }
            asked += 1;
            let mut with = kept.clone();
            for group in of {
                with.runs.extend(&group.runs);
                with.devices.extend(group.devices.iter().cloned());
            }
            let would = self.taken_of(now.sheet, &with);
            let (after, brought) = now.against(&would).await;
            let Some(first) = brought.first().and_then(|at| after.get(*at)) else {
                (kept, found) = (with, after);
                continue;
            };
            if let [group] = of {
                left.push((group.clone(), first.check));
                continue;
            }
            let middle = usize::midpoint(some.start, some.end);
            open.push((middle..some.end, first.check));
            open.push((some.start..middle, first.check));
        }
        for (group, check) in &left {
            let run = |line: &RunLine| group.runs.contains(&line.run);
            self.leave(run, |device| group.devices.contains(device), check);
        }
        found
    }

    /// The sheet with these changes alone.
    fn taken_of(&self, sheet: &Sheet, group: &Group) -> Sheet {
        let on = SheetKind::Plan;
        let (run, device) = (
            |run: RunId| group.runs.contains(&run),
            |device: &DeviceRef| group.devices.contains(device),
        );
        super::applied(sheet, self.edit_of(sheet, on, run, device), on)
    }

    /// What no size that was tried clears may be clear with what stays as it is.
    fn forget(&mut self, after: &[Finding]) {
        self.short.retain(|short| match short {
            Short::Check {
                name,
                runs,
                parts,
                as_set: false,
            } => after.iter().any(|it| {
                let shares = it.runs.iter().any(|run| runs.contains(run))
                    || it.parts.iter().any(|part| parts.contains(part));
                it.check == *name && (shares || (runs.is_empty() && parts.is_empty()))
            }),
            _ => true,
        });
    }

    /// Leaves these as they are, for what this check would find otherwise. What is chosen is then no longer proved to be the least.
    fn leave(
        &mut self,
        runs: impl Fn(&RunLine) -> bool,
        devices: impl Fn(&DeviceRef) -> bool,
        check: &'static str,
    ) {
        let limit = Limit::Held(Held::Brings(check));
        let mut more = 0.0;
        let mut leaves = false;
        for line in self.runs.iter_mut().filter(|line| line.changes) {
            if !runs(line) {
                continue;
            }
            more += match (line.cost, line.before, line.after) {
                ([Some(before), Some(after)], ..) => before.number() - after.number(),
                // New wire is of copper, in which metal is reckoned.
                ([None, None], Some(before), Some(after)) => {
                    line.metal[1] * (before.area().0 / after.area().0.max(1e-9) - 1.0)
                }
                _ => 0.0,
            };
            (line.after, line.changes, line.limit) = (line.before, false, limit.clone());
            line.metal[1] = line.metal[0];
            line.cost[1] = line.cost[0];
            leaves = true;
        }
        for line in self.devices.iter_mut().filter(|line| line.changes) {
            if !devices(&line.device) {
                continue;
            }
            if let [Some(before), Some(after)] = line.cost {
                more += before.number() - after.number();
            }
            (line.after, line.changes, line.limit) = (line.before, false, limit.clone());
            line.cost[1] = line.cost[0];
            leaves = true;
        }
        self.objective += more;
        // What stays may be less than the limits allow.
        self.bound = self.bound.min(self.objective);
        self.proved &= !leaves;
    }
}
