//! Writes what the native engine says of the worked jobs and the sound systems, a line of JSON for each: its name, its
//! text, and the analysis of each of its sheets. `web/tests/same_bytes.rs` holds the engine in the browser against it.
#![allow(clippy::print_stdout, reason = "its output is what it is for")]

fn main() {
    let worked = lessons::WORKED_JOBS
        .iter()
        .map(|job| (job.key.to_owned(), job.text().to_owned()));
    let sound = testkit::sound_systems::sound_systems()
        .into_iter()
        .map(|(title, text)| (title.to_string(), text.to_string()));
    for (name, text) in worked.chain(sound) {
        let job = testkit::job(&text);
        let analyses: Vec<String> = job
            .sheets
            .values()
            .map(|sheet| {
                serde_json::to_string(&checks::analyse(sheet, &job.settings))
                    .expect("an analysis is plain data")
            })
            .collect();
        println!(
            "{}",
            serde_json::json!({"name": name, "text": text, "analyses": analyses})
        );
    }
}
