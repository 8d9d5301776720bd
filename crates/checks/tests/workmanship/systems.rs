//! The systems that are tried, one in each form of body, and what is held against each other: before and after a change.

use body::{Plan, route_all};
use checks::{Finding, analyse};
use model::body::{BatteryPlace, BodyForm, DriveSide, PassageKind};
use model::fact::Fact::Given;
use model::laying::Guard;
use model::quantity::Metres;
use model::{Job, RunId, Sheet, SheetKind};

/// Where the amplifier stands in each form: beside what may lie behind, since nobody looked yet.
pub(crate) fn amplifier_place(form: BodyForm, drive: DriveSide) -> &'static str {
    match (form, drive) {
        (BodyForm::Van, _) => "partition-left",
        (BodyForm::Camper, _) => "cupboard-left",
        (BodyForm::PickUp, _) => "cab-back-left",
        (_, DriveSide::Left) => "side-left",
        (_, DriveSide::Right) => "side-right",
    }
}

/// A front pair in the doors on an amplifier behind, its way laid by the router, each passage guarded as the trade does.
pub(crate) fn laid(form: BodyForm, drive: DriveSide, battery: BatteryPlace) -> Job {
    let at = amplifier_place(form, drive);
    let head = match drive {
        DriveSide::Left => "dash-left",
        DriveSide::Right => "dash-right",
    };
    let text = format!(
        "body {} {} {}\n\
        conditions loud\n\
        battery B1 agm 70Ah cranking=640A place=battery-tray by=maker\n\
        ground E1 bare place=battery-tray by=maker\n\
        fuse F1 \"Main fuse\" strip61 60A place=battery-tray mounted=bracket\n\
        fuse F2 regular 10A place={head}\n\
        ground E2 bare place={at}\n\
        ground E3 makers-point place={head} by=maker\n\
        head H1 speaker-outputs=0 line-outputs=2 place={head}\n\
        amplifier A1 sections=\"2x 60W@4ohm min 4ohm hp 80Hz\" ab input-level=line inputs=2 own-fuse=25A place={at} \
        mounted=body fixing-holes=4 screws=4 square=yes\n\
        speaker LS1 4ohm power=80W full front-left place=door-left\n\
        speaker LS2 4ohm power=80W full front-right place=door-right\n\
        run W1 B1.+ F1.in 35mm2 RD copper ends=ring/ring\n\
        run W2 F1.out A1.+ 35mm2 RD copper ends=ring/ferrule\n\
        run W3 A1.- E2.stud 35mm2 BK copper ends=ferrule/ring\n\
        run W4 B1.- E1.stud 50mm2 BK ends=ring/ring by=maker\n\
        run W5 F1.out F2.in 16mm2 RD copper ends=ring/spade\n\
        run W6 F2.out H1.30 2.5mm2 YE copper ends=spade/butt\n\
        run W7 F2.out H1.15 2.5mm2 RD copper ends=spade/butt\n\
        run W8 H1.31 E3.stud 2.5mm2 BK copper ends=butt/ring\n\
        run W9 H1.front-l A1.in1 0.35mm2 WH ends=plug/plug\n\
        run W10 H1.front-r A1.in2 0.35mm2 RD ends=plug/plug\n\
        run W11 H1.rem A1.rem 0.75mm2 BUWH copper ends=butt/ferrule\n\
        run W12 A1.out1+ LS1.+ 2.5mm2 WH copper ends=ferrule/spade\n\
        run W13 A1.out1- LS1.- 2.5mm2 WHBK copper ends=ferrule/spade\n\
        run W14 A1.out2+ LS2.+ 2.5mm2 GY copper ends=ferrule/spade\n\
        run W15 A1.out2- LS2.- 2.5mm2 GYBK copper ends=ferrule/spade\n",
        form.word(),
        drive.word(),
        battery.word(),
    );
    let mut job = testkit::job(&text);
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    let routed = route_all(&plan, sheet(&job), SheetKind::Plan);
    assert!(routed.without.is_empty(), "{:?}", routed.without);
    job.apply(routed.edit);
    let plan_sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
    for run in plan_sheet.runs.values_mut() {
        for name in &run.route {
            let Some(passage) = plan.passage(name) else {
                continue;
            };
            let guard = match passage.kind.value() {
                Some(PassageKind::Grommet | PassageKind::Hole) => Guard::Grommet,
                Some(PassageKind::Gaiter) => Guard::Gaiter,
                _ => continue,
            };
            run.laying.guards.0.insert(name.clone(), guard);
        }
        run.laying.support_spacing = Given(Metres(0.4));
    }
    job
}

pub(crate) fn sheet(job: &Job) -> &Sheet {
    job.sheet(SheetKind::Plan).expect("it is there")
}

pub(crate) fn all() -> Vec<(String, Job)> {
    let mut all = Vec::new();
    for form in BodyForm::ALL {
        for drive in DriveSide::ALL {
            for battery in BatteryPlace::ALL {
                let title = format!("{} {} {}", form.word(), drive.word(), battery.word());
                all.push((title, laid(*form, *drive, *battery)));
            }
        }
    }
    all
}

pub(crate) fn tell(sheet: &Sheet, finding: &Finding) -> String {
    let parts = finding.parts.iter().map(|id| sheet.parts[id].tag.clone());
    let runs = finding.runs.iter().map(|id| sheet.runs[id].tag.clone());
    let tags: Vec<String> = parts.chain(runs).collect();
    let mark = if finding.undecided { "?" } else { "" };
    format!("{}{mark} {}", finding.check, tags.join(" "))
}

/// What was found, as `check[?] tag tag …`.
pub(crate) fn told(job: &Job) -> Vec<String> {
    let findings = analyse(sheet(job), &job.settings).findings;
    findings.iter().map(|finding| tell(sheet(job), finding)).collect()
}

/// What the changed job has beyond what was found before.
pub(crate) fn new(before: &[String], changed: &Job) -> Vec<String> {
    let found = told(changed).into_iter();
    found.filter(|found| !before.contains(found)).collect()
}

pub(crate) fn run_mut(job: &mut Job, id: RunId) -> &mut model::Run {
    let sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
    sheet.runs.get_mut(&id).expect("it is there")
}

/// Each change alone, in each system: what is new must be exactly what is expected.
#[derive(Default)]
pub(crate) struct Book {
    pub(crate) tried: usize,
    pub(crate) wrong: String,
}

impl Book {
    pub(crate) fn expect(
        &mut self,
        title: &str,
        what: &str,
        before: &[String],
        changed: &Job,
        expected: &[String],
    ) {
        self.tried += 1;
        let mut found = new(before, changed);
        let mut expected = expected.to_vec();
        found.sort();
        expected.sort();
        if found != expected {
            self.wrong.push_str(&format!(
                "{title}, {what}:\n  expected {expected:?}\n  found    {found:?}\n"
            ));
        }
    }
    pub(crate) fn close(self, least: usize) {
        assert!(self.wrong.is_empty(), "{}", self.wrong);
        assert!(self.tried >= least, "only {} were tried", self.tried);
    }
}

/// A passage by name and kind.
pub(crate) type Through = (String, Option<PassageKind>);

/// Of each run that we laid: its id, its tag, and the passages of its way by name and kind.
pub(crate) fn ways(job: &Job) -> Vec<(RunId, String, Vec<Through>)> {
    let plan = Plan::of(&job.settings.body).expect("it has a form");
    let runs = sheet(job).runs.iter().filter(|(_, run)| !run.route.is_empty());
    runs.map(|(id, run)| {
        let passages = run.route.iter().filter_map(|name| plan.passage(name));
        let kinds = passages.map(|it| (it.name.clone(), it.kind.value())).collect();
        (*id, run.tag.clone(), kinds)
    })
    .collect()
}
