//! Links are input from strangers: whatever stands in one, it opens or says why not, and what opens packs again into a link
//! that opens to the same job.

use crate::{Fate, fuzz};

#[test]
fn links() {
    // The address is long, so that some changes leave the job as it was.
    let address = "https://wiring.example/a/long/way/to/the/board/that/nobody/looks/at?shop=3&of=7&and=so&on=to&fill=the&room=that&it=has";
    let seeds = lessons::WORKED_JOBS
        .iter()
        .map(|worked| {
            let fragment = sharing::fragment(&worked.job()).expect("worked jobs fit into links");
            format!("{address}#{fragment}").into_bytes()
        })
        .collect();
    fuzz(
        "links",
        seeds,
        &["#", "job=", "#job=", "AQ", "-", "_", "=", "%23"],
        |bytes| {
            let link = String::from_utf8_lossy(bytes);
            match sharing::open(&link) {
                Ok(job) => {
                    let again = sharing::fragment(&job).map(|fragment| sharing::open(&fragment));
                    assert_eq!(again, Ok(Ok(job)), "what opens packs again");
                    Fate::Read
                }
                Err(error) => {
                    assert!(!error.to_string().is_empty());
                    Fate::Refused
                }
            }
        },
    );
}
