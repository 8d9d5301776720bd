//! Findings in the making: where checks put them, and where a later check sees what an earlier one found.

use crate::context::Ctx;
use crate::finding::{Finding, Grade, Measure, Mend};
use crate::lie::Spot;
use crate::registry::Check;
use model::{Edit, PartId, RunId};
use ordered::Sort as _;
use ordered::{OrderedMap, OrderedSet};
use words::Saying;

/// What has been found so far.
#[derive(Default)]
pub(crate) struct Findings {
    list: Vec<Finding>,
    /// Names of the checks that marked each run, and each part.
    runs: OrderedMap<RunId, Vec<&'static str>>,
    parts: OrderedMap<PartId, Vec<&'static str>>,
    /// What undecided findings ask about.
    undecided_runs: OrderedSet<RunId>,
    undecided_parts: OrderedSet<PartId>,
}

impl Findings {
    /// Adds one.
    pub(crate) fn add(&mut self, finding: Finding) {
        for run in &finding.runs {
            self.runs.entry(*run).or_default().push(finding.check);
        }
        for part in &finding.parts {
            self.parts.entry(*part).or_default().push(finding.check);
        }
        if finding.undecided {
            self.undecided_runs.extend(&finding.runs);
            self.undecided_parts.extend(&finding.parts);
        }
        self.list.push(finding);
    }
    /// Adds those that other checks found elsewhere.
    pub(crate) fn take_in(&mut self, others: Self) {
        for (run, by) in others.runs {
            self.runs.entry(run).or_default().extend(by);
        }
        for (part, by) in others.parts {
            self.parts.entry(part).or_default().extend(by);
        }
        self.undecided_runs.extend(others.undecided_runs);
        self.undecided_parts.extend(others.undecided_parts);
        self.list.extend(others.list);
    }
    /// Whether one of these checks marked the run.
    pub(crate) fn has_run(&self, run: RunId, checks: &[&str]) -> bool {
        let by = self.runs.get(&run);
        by.is_some_and(|by| by.iter().any(|check| checks.contains(check)))
    }
    /// Whether one of these checks marked the part.
    pub(crate) fn has_part(&self, part: PartId, checks: &[&str]) -> bool {
        let by = self.parts.get(&part);
        by.is_some_and(|by| by.iter().any(|check| checks.contains(check)))
    }
    /// The parts that a check marked.
    pub(crate) fn parts_of(&self, check: &str) -> OrderedSet<PartId> {
        let marked = self.parts.iter().filter(|(_, by)| by.contains(&check));
        marked.map(|(part, _)| *part).collect()
    }
    /// Whether an undecided finding already asks about this run.
    pub(crate) fn is_undecided_run(&self, run: RunId) -> bool {
        self.undecided_runs.contains(&run)
    }
    /// Whether an undecided finding already asks about this part.
    pub(crate) fn is_undecided_part(&self, part: PartId) -> bool {
        self.undecided_parts.contains(&part)
    }
    /// All of them: by grade, undecided ones after decided, then by check name and place. Equal ones stand once.
    pub(crate) fn sorted(self) -> Vec<Finding> {
        let mut list = self.list;
        list.order_by(|a, b| {
            (a.grade, a.undecided, a.check, &a.parts, &a.runs, &a.what).cmp(&(
                b.grade,
                b.undecided,
                b.check,
                &b.parts,
                &b.runs,
                &b.what,
            ))
        });
        list.dedup();
        list
    }
}

impl Check {
    /// A finding of this check with its wording; marks and numbers are added by the methods of [`Finding`].
    pub(crate) fn finding(&self, what: Saying, remedy: Saying) -> Finding {
        Finding {
            check: self.name,
            grade: self.grade,
            undecided: false,
            what,
            remedy,
            parts: Vec::new(),
            runs: Vec::new(),
            spots: Vec::new(),
            measure: None,
            assumed: OrderedSet::new(),
            mends: Vec::new(),
        }
    }
    /// A finding that lacks a fact.
    pub(crate) fn undecided(&self, what: Saying, find_out: Saying) -> Finding {
        Finding {
            undecided: true,
            ..self.finding(what, find_out)
        }
    }
}

/// Building blocks of findings.
impl Finding {
    /// Marks these runs, each once, in this order.
    pub(crate) fn runs(mut self, runs: impl IntoIterator<Item = RunId>) -> Self {
        for run in runs {
            if !self.runs.contains(&run) {
                self.runs.push(run);
            }
        }
        self
    }
    /// Marks these parts, each once, in this order.
    pub(crate) fn parts(mut self, parts: impl IntoIterator<Item = PartId>) -> Self {
        for part in parts {
            if !self.parts.contains(&part) {
                self.parts.push(part);
            }
        }
        self
    }
    /// Marks these spots of the body.
    pub(crate) fn spots(mut self, spots: &[Spot<'_>]) -> Self {
        for spot in spots {
            if !self.spots.iter().any(|name| name == spot.name) {
                self.spots.push(spot.name.to_owned());
            }
        }
        self
    }
    /// Gives it another grade than its check's.
    pub(crate) fn grade(mut self, grade: Grade) -> Self {
        self.grade = grade;
        self
    }
    /// Holds a number against a limit of the profile.
    pub(crate) fn measure(
        mut self,
        value: f64,
        limit: f64,
        unit: &'static str,
        limit_key: Option<&'static str>,
    ) -> Self {
        self.measure = Some(Measure {
            value,
            limit,
            unit,
            limit_key,
        });
        self
    }
    /// Names those of these properties of a run's wire that are assumed.
    pub(crate) fn assumes_run(mut self, ctx: &Ctx<'_>, run: RunId, properties: &[&str]) -> Self {
        self.assumed.extend(ctx.assumed_of_run(run, properties));
        self
    }
    /// Names those of these properties of a part that are assumed.
    pub(crate) fn assumes_part(mut self, ctx: &Ctx<'_>, part: PartId, properties: &[&str]) -> Self {
        self.assumed.extend(ctx.assumed_of_part(part, properties));
        self
    }
    /// Offers an edit that clears it.
    pub(crate) fn mend(mut self, edit: Option<Edit>) -> Self {
        self.mends.extend(edit.map(|edit| Mend { edit, choice: None }));
        self
    }
    /// Offers an edit that clears it once somebody has decided this, the rest of a sentence.
    pub(crate) fn mend_by_choice(mut self, edit: Option<Edit>, choice: Saying) -> Self {
        let choice = Some(choice);
        self.mends.extend(edit.map(|edit| Mend { edit, choice }));
        self
    }
}
