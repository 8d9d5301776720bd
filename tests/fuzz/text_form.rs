//! The text form: whatever is typed, it is read, or refused at a line and column that exist; what was read prints stably.

use crate::{Fate, fuzz};

fn target(bytes: &[u8]) -> Fate {
    let text = String::from_utf8_lossy(bytes);
    match model::text::parse(&text) {
        Ok(job) => {
            let printed = model::text::print(&job);
            let again = match model::text::parse(&printed) {
                Ok(again) => again,
                Err(errors) => panic!("what was printed cannot be read:\n{errors}\n{printed}"),
            };
            assert_eq!(
                model::text::print(&again),
                printed,
                "printed, read and printed again it is the same"
            );
            for sheet in job.sheets.values() {
                let analysis = format!("{:?}", checks::analyse(sheet, &job.settings));
                // A label may say the word: what is repeated from the text is no number.
                assert!(
                    text.contains("NaN") || !analysis.contains("NaN"),
                    "a number of the analysis is no number"
                );
            }
            Fate::Read
        }
        Err(errors) => {
            assert!(!errors.is_empty(), "a refusal has a reason");
            let lines = text.split('\n').count();
            for error in &errors.0 {
                assert!(
                    (1..=lines).contains(&error.line),
                    "line {} of {lines}",
                    error.line
                );
                assert!(
                    error.column >= 1 && error.column <= error.source.chars().count() + 1,
                    "{error}"
                );
                assert!(!error.message.to_string().is_empty());
            }
            // Reading on past errors must hold as well: the page does so while somebody types.
            let (_, same) = model::text::parse_lenient(&text);
            assert_eq!(same.0.len(), errors.0.len());
            Fate::Refused
        }
    }
}

#[test]
fn a_text_of_any_content_is_read_or_refused_at_its_place() {
    let mut seeds: Vec<Vec<u8>> = lessons::WORKED_JOBS
        .iter()
        .map(|job| job.text().as_bytes().to_vec())
        .collect();
    seeds.extend(
        testkit::sound_systems::sound_systems()
            .into_iter()
            .map(|(_, text)| text.to_string().into_bytes()),
    );
    let words = [
        "battery",
        "fuse",
        "amplifier",
        "ground",
        "speaker",
        "run",
        "set",
        "vehicle",
        "sheet",
        "B1",
        "W1",
        "B1.+",
        "A1.-",
        "F1.in",
        "agm",
        "70Ah",
        "60A",
        "16mm2",
        "0.3m",
        "RD",
        "\"2x 100W@4ohm min 2ohm\"",
        "?",
        "~",
        "->",
        "@0,0",
    ];
    fuzz("text-form", seeds, &words, target);
}
