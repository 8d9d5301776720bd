//! Systems that lie in the body of a car, of each form, and single faults in how they are fixed and laid. What is expected
//! follows from the route of each run and from what was changed, not from what the checks say. The rules themselves are
//! common practice of the trade and ISO 10133:2012 clause 7, as their pages name them.

mod systems;
mod things;
mod ways;

use checks::{Grade, analyse};
use model::SheetKind;
use model::fact::Fact::Unknown;
use systems::{all, sheet, tell, told};

#[test]
fn sound_systems_in_every_body_have_nothing_to_stop_or_fix() {
    let mut wrong = String::new();
    for (title, job) in all() {
        for finding in analyse(sheet(&job), &job.settings).findings {
            if finding.grade != Grade::Tidy {
                wrong.push_str(&format!(
                    "{title}: {} {}\n",
                    tell(sheet(&job), &finding),
                    finding.what
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}

#[test]
fn a_sheet_without_a_body_is_asked_nothing() {
    for (title, mut job) in all() {
        job.settings.body = model::body::Body::default();
        let sheet = job.sheets.get_mut(&SheetKind::Plan).expect("it is there");
        for run in sheet.runs.values_mut() {
            run.laying.guards.0 = ordered::OrderedMap::new();
            run.laying.support_spacing = Unknown;
        }
        let found = told(&job);
        let asked = [
            "bare-edge",
            "crush",
            "moving-joint",
            "airbag",
            "blind",
            "mount",
            "unsupported",
            "water",
            "signal-",
        ];
        let asked = found
            .iter()
            .filter(|it| asked.iter().any(|check| it.starts_with(check)));
        assert_eq!(asked.count(), 0, "{title}: {found:?}");
    }
}
