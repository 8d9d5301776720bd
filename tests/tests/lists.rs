//! The lists of every worked job against an independent sum over the job file, by a small Python program that knows nothing
//! but the file (`tests/python/sum_lists.py`).

use model::{Job, SheetKind};
use paperwork::{List, Terms, Work, json, lists};
use std::process::Command;

/// Runs the other program on a job and the lists of one of its sheets; what it says, and whether it agrees.
fn summed(job: &Job, kind: SheetKind, spoil: impl Fn(&mut serde_json::Value)) -> (bool, String) {
    let work = Work::of(job, kind, None).expect("the job has the sheet");
    let tables = lists(&work, &Terms::default(), &[List::Order, List::Cut, List::Labels]);
    let mut told = serde_json::Value::Array(tables.iter().map(json).collect());
    spoil(&mut told);
    let folder = std::env::temp_dir().join(format!(
        "loomwright-lists-{}-{:?}",
        std::process::id(),
        std::thread::current().id()
    ));
    std::fs::create_dir_all(&folder).expect("a temporary folder");
    let (job_file, lists_file) = (folder.join("job.json"), folder.join("lists.json"));
    std::fs::write(&job_file, model::file::write(job)).expect("the job is written");
    std::fs::write(&lists_file, told.to_string()).expect("the lists are written");
    let program = concat!(env!("CARGO_MANIFEST_DIR"), "/python/sum_lists.py");
    let run = Command::new("python3")
        .arg(program)
        .args([&job_file, &lists_file])
        .arg(kind.word())
        .output()
        .expect("python3 is installed: Debian package `python3`; this sum must not be skipped in silence");
    let said = String::from_utf8_lossy(&run.stdout).into_owned() + &String::from_utf8_lossy(&run.stderr);
    let _ = std::fs::remove_dir_all(&folder);
    (run.status.success(), said)
}

/// The worked jobs without their bodies: lengths that follow from routes are not in the file.
fn jobs() -> Vec<(&'static str, Job)> {
    lessons::WORKED_JOBS
        .iter()
        .map(|worked| {
            let mut job = worked.job();
            job.settings.body = model::Body::default();
            (worked.key, job)
        })
        .collect()
}

#[test]
fn lists_add_up_to_what_the_file_says() {
    for (key, job) in jobs() {
        for kind in job.sheets.keys() {
            let (agrees, said) = summed(&job, *kind, |_| ());
            assert!(agrees, "{key}: {said}");
        }
    }
}

#[test]
fn a_list_that_does_not_add_up_is_noticed() {
    let (_, job) = jobs()
        .into_iter()
        .find(|(key, _)| *key == "hatchback")
        .expect("the job");
    let (agrees, said) = summed(&job, SheetKind::Built, |told| {
        let length = &mut told[1]["rows"][0]["cut-length"];
        *length = (length.as_f64().unwrap_or_default() + 0.01).into();
    });
    assert!(!agrees && said.contains("cut W2"), "{said}");
}
