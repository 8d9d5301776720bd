//! The lists of every worked job against an independent sum over the job file, by a small Python program that knows nothing
//! but the file (`tests/python/sum_lists.py`).

use model::{Job, SheetKind};
use paperwork::{List, PriceList, Terms, Work, json, lists, order};
use std::process::Command;

/// Runs the other program on a job and the lists of one of its sheets; what it says, and whether it agrees.
fn summed(job: &Job, kind: SheetKind, spoil: impl Fn(&mut serde_json::Value)) -> (bool, String) {
    let work = Work::of(job, kind, None).expect("the job has the sheet");
    let mut terms = Terms::default();
    let prices = price_list(&work, &terms);
    terms.prices = PriceList::read(&prices, &words::Words::english());
    let tables = lists(&work, &terms, &[List::Order, List::Cut, List::Labels]);
    let mut told = serde_json::Value::Array(tables.iter().map(json).collect());
    spoil(&mut told);
    let folder = std::env::temp_dir().join(format!(
        "loomwright-lists-{}-{:?}",
        std::process::id(),
        std::thread::current().id()
    ));
    std::fs::create_dir_all(&folder).expect("a temporary folder");
    let [job_file, lists_file, prices_file] =
        ["job.json", "lists.json", "prices.csv"].map(|name| folder.join(name));
    std::fs::write(&job_file, model::file::write(job)).expect("the job is written");
    std::fs::write(&lists_file, told.to_string()).expect("the lists are written");
    std::fs::write(&prices_file, prices).expect("the prices are written");
    let program = concat!(env!("CARGO_MANIFEST_DIR"), "/python/sum_lists.py");
    let run = Command::new("python3")
        .arg(program)
        .args([&job_file, &lists_file, &prices_file])
        .arg(kind.word())
        .output()
        .expect("python3 is installed: Debian package `python3`; this sum must not be skipped in silence");
    let said = String::from_utf8_lossy(&run.stdout).into_owned() + &String::from_utf8_lossy(&run.stderr);
    let _ = std::fs::remove_dir_all(&folder);
    (run.status.success(), said)
}

/// A price list for all that is ordered, with a price of its own for each kind and size (as the other program groups articles).
fn price_list(work: &Work<'_>, terms: &Terms) -> String {
    let mut list = "article,unit,price\n".to_owned();
    for line in order(work, terms).lines {
        let mut words = line.article.split(' ');
        let kind = match words.next().unwrap_or_default() {
            "cable" | "fuse" => line.article.clone(),
            sized @ ("ring" | "spade" | "ferrule" | "butt" | "plug" | "tap" | "clip" | "shrink-sleeve"
            | "tube" | "sleeve" | "fuse-holder" | "signal-lead") => {
                format!("{sized} {}", words.next().unwrap_or_default())
            }
            other => other.to_owned(),
        };
        let cents = kind
            .bytes()
            .fold(7_u32, |sum, byte| (sum * 31 + u32::from(byte)) % 4999);
        let unit = match line.used {
            paperwork::Quantity::Pieces(_) => "pcs",
            paperwork::Quantity::Metres(_) => "m",
        };
        let price = f64::from(cents + 1) / 100.0;
        list.push_str(&format!("\"{}\",{unit},{price:.2}\n", line.article));
    }
    list
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
    let row = |told: &serde_json::Value, article: &str| {
        let rows = told[0]["rows"].as_array().expect("rows");
        rows.iter()
            .position(|row| row["article"] == article)
            .expect("the article")
    };
    let (agrees, said) = summed(&job, SheetKind::Built, |told| {
        let at = row(told, "shrink-sleeve 16mm2");
        told[0]["rows"][at]["quantity"] = 5.into();
    });
    assert!(!agrees && said.contains("bought shrink-sleeve 16mm2"), "{said}");
    let (agrees, said) = summed(&job, SheetKind::Built, |told| {
        let at = row(told, "label");
        let sum = &mut told[0]["rows"][at]["sum"];
        *sum = (sum.as_f64().expect("a sum") + 0.01).into();
    });
    assert!(!agrees && said.contains("cost label"), "{said}");
    let (agrees, said) = summed(&job, SheetKind::Built, |told| {
        told[0]["notes"] = serde_json::json!(["In all: 0.00 EUR"]);
    });
    assert!(!agrees && said.contains("total"), "{said}");
}
