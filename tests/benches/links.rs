//! Size of links: every worked job packed as a link, beside what a general compressor makes of the job file.

#![allow(clippy::disallowed_methods, clippy::print_stdout)]

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::io::Write;

/// Characters of the job file without white space, gzipped as hard as gzip can, in letters that an address may hold.
fn gzipped(job: &model::Job) -> usize {
    let file = model::file::write(job);
    let compact: serde_json::Value = serde_json::from_str(&file).expect("a job file is JSON");
    let mut gzip = GzEncoder::new(Vec::new(), Compression::best());
    gzip.write_all(compact.to_string().as_bytes())
        .expect("memory takes it");
    URL_SAFE_NO_PAD
        .encode(gzip.finish().expect("memory takes it"))
        .len()
}

fn main() {
    println!("links, in characters without the address");
    println!(
        "  {:<10} {:>5} {:>5} {:>6} {:>24}",
        "job", "parts", "runs", "link", "JSON + gzip + base64"
    );
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        let parts: usize = job.sheets.values().map(|sheet| sheet.parts.len()).sum();
        let runs: usize = job.sheets.values().map(|sheet| sheet.runs.len()).sum();
        match sharing::fragment(&job) {
            Ok(link) => println!(
                "  {:<10} {parts:>5} {runs:>5} {:>6} {:>24}",
                worked.key,
                link.len(),
                gzipped(&job)
            ),
            Err(too_long) => println!("  {:<10} {parts:>5} {runs:>5} {too_long}", worked.key),
        }
    }
}
