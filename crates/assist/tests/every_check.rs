//! Every check that an edit can clear proposes one: on its own failing example a mend clears the finding and brings nothing of
//! grade Stop or Fix, or its page says why there is none.

use assist::mending::preview;
use checks::{CHECKS, Finding, Grade, analyse, explanation_of};
use model::{Job, SheetKind};
use words::Words;

fn findings(job: &Job) -> Vec<Finding> {
    let sheet = job.sheet(SheetKind::Plan).cloned().unwrap_or_default();
    analyse(&sheet, &job.settings).findings
}

/// Checks that no edit clears on their own example.
const NONE: &[&str] = &["not-known"];

#[test]
fn every_check_that_an_edit_can_clear_proposes_one() {
    let words = Words::english();
    let mut wrong = String::new();
    for check in CHECKS {
        let job = testkit::job(check.example);
        let before = findings(&job);
        let mut own = before.iter().filter(|it| it.check == check.name);
        let is_mended = own.clone().next().is_some()
            && own.all(|finding| {
                finding.mends.iter().any(|mend| {
                    let it = preview(&job, SheetKind::Plan, &before, &mend.edit);
                    let clears = it.clears.iter().any(|cleared| cleared == finding);
                    clears && it.brings.iter().all(|brought| brought.grade == Grade::Tidy)
                })
            });
        let named = NONE.contains(&check.name);
        if is_mended == named {
            let mends = before.iter().flat_map(|it| &it.mends);
            let told: Vec<String> = mends.map(|mend| words.say(&mend.edit.name.said())).collect();
            wrong.push_str(&format!("{}: mended {is_mended}, by {told:#?}\n", check.name));
        }
    }
    assert!(wrong.is_empty(), "\n{wrong}");
    for name in NONE {
        let page = explanation_of(name).expect("it is a check");
        assert!(page.unmended.is_some(), "the page of {name} says why");
    }
}
