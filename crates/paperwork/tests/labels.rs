//! Labels to cut: every end of a run that is laid has a flag, every flag goes around its wire, everything lies within what
//! A4 and Letter have in common, nothing covers anything else, and no word is longer than its face.

use lessons::WORKED_JOBS;
use paperwork::{LabelSheet, Shape, Work, label_document, label_pages, label_sheets};
use words::{Language, Reader, Words};

/// Common to A4 (210 × 297 mm, ISO 216) and Letter (215.9 × 279.4 mm, ANSI/ASME Y14.1), less 10 mm on every side.
const ROOM: (f64, f64) = (190.0, 259.4);

fn each(look: impl Fn(&str, &Work<'_>, &Words)) {
    for language in [Language::English, Language::German] {
        let words = Words::of(Reader {
            language,
            ..Reader::default()
        });
        for worked in WORKED_JOBS {
            let job = worked.job_in(language);
            for kind in job.sheets.keys() {
                let work = Work::of(&job, *kind, None).expect("a sheet");
                look(&format!("{} {}", worked.key, kind.word()), &work, &words);
            }
        }
    }
}

fn sheets(work: &Work<'_>, words: &Words) -> (Vec<LabelSheet>, Vec<String>) {
    let study = circuit::study(&work.sheet, &work.job.settings);
    (
        label_sheets(work, &study, words),
        label_pages(work, &study, words),
    )
}

#[test]
fn every_end_has_a_flag_that_goes_around_its_wire() {
    each(|name, work, words| {
        let (sheets, _) = sheets(work, words);
        let labels: Vec<_> = sheets.iter().flat_map(|sheet| &sheet.labels).collect();
        for (id, run) in work.sheet.runs.iter().filter(|(id, _)| work.is_laid(**id)) {
            let flags: Vec<_> = labels
                .iter()
                .filter(|placed| placed.label.mark == run.tag && placed.label.shape != Shape::Flat)
                .collect();
            assert_eq!(flags.len(), 2, "{name}: {id} {}", run.tag);
            assert_ne!(flags[0].label.below, flags[1].label.below, "{name}: {}", run.tag);
            for flag in flags {
                let Shape::Flag { around } = flag.label.shape else {
                    unreachable!()
                };
                let bare = run.wire.size.value().map_or(120.0, |size| size.area().0);
                // The way around a solid round wire without any insulation: a bound from below.
                let least = 2.0 * (bare * std::f64::consts::PI).sqrt();
                assert!(around > least, "{name}: {} {around} mm", run.tag);
            }
        }
        for (id, part) in &work.sheet.parts {
            let is_new = work.before.is_none() && part.fitted_by == model::conductor::FittedBy::Us;
            if is_new && matches!(part.is, model::PartKind::Fuse(_)) {
                assert!(
                    labels.iter().any(|placed| placed.label.mark == part.tag),
                    "{name}: {id}"
                );
            }
        }
    });
}

/// By hand: ISO 6722-1 gives 16 mm² at most 8.3 mm over the insulation (from memory). π · 8.3 = 26.08 mm; with 2 mm for the
/// paper's stiffness and rounded up 29 mm; the flag is 27 + 29 + 27 = 83 mm long.
#[test]
fn a_flag_worked_by_hand() {
    let text =
        "battery B1\nfuse F1 60A\nload L1\nrun W1 B1.+ F1.in 16mm2 1m RD\nrun W2 F1.out L1.+ 2.5mm2 1m RDBK";
    let job = model::text::parse(text).expect("a job");
    let work = Work::latest(&job).expect("a sheet");
    let (sheets, _) = sheets(&work, &Words::english());
    let first = &sheets[0].labels[0].label;
    assert_eq!(first.shape, Shape::Flag { around: 29.0 });
    assert_eq!(first.size(), (83.0, 10.0));
    assert_eq!(first.beside, ["16 mm²", "RD"]);
    assert_eq!(first.below, "B1.+ ← F1.in");
    assert_eq!(sheets[0].labels[1].label.below, "F1.in ← B1.+");
    let fuse = &sheets[0].labels[4].label;
    assert_eq!(
        (fuse.mark.as_str(), fuse.beside.as_slice(), fuse.shape),
        ("F1", &["60 A".to_owned()][..], Shape::Flat)
    );
}

/// The number behind `name="` in a line of the drawing.
fn number(line: &str, name: &str) -> f64 {
    let from = line.split_once(&format!(" {name}=\"")).map(|(_, rest)| rest);
    from.and_then(|rest| rest.split_once('"'))
        .and_then(|(number, _)| number.parse().ok())
        .unwrap_or_else(|| panic!("{name} in {line}"))
}

#[test]
fn labels_lie_within_either_paper_and_beside_one_another() {
    each(|name, work, words| {
        let (sheets, pages) = sheets(work, words);
        assert_eq!(sheets.len(), pages.len());
        for (sheet, page) in sheets.iter().zip(&pages) {
            let boxes: Vec<[f64; 4]> = sheet
                .labels
                .iter()
                .map(|placed| {
                    let (wide, high) = placed.label.size();
                    [placed.x, placed.y, placed.x + wide, placed.y + high]
                })
                .collect();
            for (at, one) in boxes.iter().enumerate() {
                assert!(
                    one[0] >= 0.0 && one[1] >= 0.0 && one[2] <= ROOM.0 && one[3] <= ROOM.1,
                    "{name}: {one:?}"
                );
                for other in &boxes[..at] {
                    let apart =
                        one[0] >= other[2] || other[0] >= one[2] || one[1] >= other[3] || other[1] >= one[3];
                    assert!(apart, "{name}: {one:?} over {other:?}");
                }
            }
            // The drawing itself: of real size, and every word within one face of a label or within the head.
            assert!(page.contains("width=\"190mm\" height=\"258mm\" viewBox=\"0 0 190 258\""));
            for line in page.lines().filter(|line| line.starts_with("<text")) {
                let (x, y, long) = (number(line, "x"), number(line, "y"), number(line, "textLength"));
                assert!(number(line, "font-size") >= 1.9, "{name}: {line}");
                let (left, right) = if line.contains("text-anchor=\"end\"") {
                    (x - long, x)
                } else {
                    (x, x + long)
                };
                let in_head = y < 16.0 && left >= 0.0 && right <= ROOM.0;
                let in_face = sheet.labels.iter().any(|placed| {
                    let tall = y > placed.y && y < placed.y + placed.label.size().1;
                    tall && placed.label.faces().iter().any(|(at, wide)| {
                        left >= placed.x + at - 0.01 && right <= placed.x + at + wide + 0.01
                    })
                });
                assert!(in_head || in_face, "{name}: {line}");
            }
        }
    });
}

#[test]
fn long_tags_and_markup_stay_within_their_label() {
    let tag = "A_VERY_LONG_TAG_OF_24_X";
    let text = format!(
        "battery B1\nfuse {tag} \"<b>&amp; a label that is far longer than any face of a label could ever be</b>\" 60A\nrun W1 B1.+ {tag}.in 16mm2 1m RD"
    );
    let job = model::text::parse(&text).expect("a job");
    let work = Work::latest(&job).expect("a sheet");
    let study = circuit::study(&work.sheet, &job.settings);
    let page = label_document(&work, &study, &Words::english());
    assert!(!page.contains("<b>") && page.contains("&lt;b&gt;&amp;amp;"));
    assert!(page.contains("font-size=\"1.90\""), "{page}");
    for line in page.lines().filter(|line| line.starts_with("<text")) {
        assert!(number(line, "textLength") <= ROOM.0, "{line}");
    }
}
