//! All papers of one worked job, kept beside this test, in both languages. Updated by `UPDATE_EXPECT=1`; the difference is
//! to be read before it is kept.

#![allow(clippy::disallowed_methods, reason = "this test reads and writes files")]

use expect_test::expect_file;
use lessons::WorkedJob;
use paperwork::{Asked, List, Readers, Terms, Work, csv, handover, lists};
use sharing::Showing;
use words::{Language, Lengths, Reader, Sizes, Words};

fn german() -> Words {
    Words::of(Reader {
        language: Language::German,
        ..Reader::default()
    })
}

const EVERYTHING: Showing = Showing {
    notes: true,
    names: true,
    prices: true,
    pictures: true,
};

fn job(language: Language) -> model::Job {
    WorkedJob::of("hatchback")
        .expect("the worked job")
        .job_in(language)
}

/// A document without its drawings: those have their own tests.
fn without_drawings(page: &str) -> String {
    let mut out = String::new();
    let mut rest = page;
    while let Some((before, after)) = rest.split_once("<svg") {
        out.push_str(before);
        out.push_str("<svg/>");
        rest = after.split_once("</svg>").map_or("", |(_, after)| after);
    }
    out + rest
}

/// Letters of every drawing of a handover are at least 6 pt high (2.12 mm) on A4 and on Letter, between the margins of its style
/// sheet. Six points are what is commonly taken as the least that everybody reads (common practice).
#[test]
fn letters_of_drawings_can_be_read_in_print() {
    for language in words::Language::ALL {
        let words = words::Words::of(words::Reader {
            language: *language,
            ..words::Reader::default()
        });
        for worked in lessons::WORKED_JOBS {
            let job = worked.job_in(*language);
            let (page, _) = handover(&job, Asked::default(), &words).expect("a sheet");
            let mut drawings = 0;
            for section in page.split("<section class=\"").skip(1) {
                let lies = section.starts_with("wide");
                for svg in section.split("<svg role=\"img\"").skip(1) {
                    let svg = svg.split("</svg>").next().unwrap_or_default();
                    let view = svg.split("viewBox=\"").nth(1).and_then(|it| it.split('"').next());
                    let view: Vec<f64> = view
                        .expect("its bounds")
                        .split(' ')
                        .map(|it| it.parse().expect("a number"))
                        .collect();
                    let room = if lies { (253.0, 154.0) } else { (183.0, 100.0) };
                    let scale = f64::min(room.0 / view[2], room.1 / view[3]);
                    for size in svg.split("font-size=\"").skip(1) {
                        let size: f64 = size
                            .split('"')
                            .next()
                            .and_then(|it| it.parse().ok())
                            .expect("a size");
                        let printed = size * scale;
                        assert!(
                            printed > 0.95 * 2.12,
                            "{} {language:?} {lies}: {printed} mm",
                            worked.key
                        );
                    }
                    drawings += 1;
                }
            }
            assert!(drawings >= 3, "{}: {drawings}", worked.key);
        }
    }
}

#[test]
fn every_list_is_what_it_was() {
    for words in [Words::english(), german()] {
        let language = words.reader().language;
        let job = job(language);
        let work = Work::latest(&job).expect("a sheet");
        for table in lists(&work, &Terms::default(), List::ALL) {
            let mut text = csv(&table, &words);
            for note in &table.notes {
                text.push_str(&format!("# {}\r\n", words.say(note)));
            }
            // Stored with plain line ends: a checkout may turn them, and the crate's own test holds them.
            let path = format!("./papers/{}/{}.csv", language.tag(), table.name);
            expect_file![path].assert_eq(&text.replace("\r\n", "\n"));
        }
    }
}

#[test]
fn the_handover_is_what_it_was() {
    for words in [Words::english(), german()] {
        let language = words.reader().language;
        let asked = Asked {
            showing: EVERYTHING,
            ..Asked::default()
        };
        let (page, _) = handover(&job(language), asked, &words).expect("a sheet");
        let path = format!("./papers/{}/handover.html", language.tag());
        expect_file![path].assert_eq(&without_drawings(&page));
    }
}

#[test]
fn the_label_sheet_is_what_it_was() {
    for words in [Words::english(), german()] {
        let language = words.reader().language;
        let job = job(language);
        let work = Work::latest(&job).expect("a sheet");
        let study = circuit::study(&work.sheet, &job.settings);
        let path = format!("./papers/{}/labels.html", language.tag());
        expect_file![path].assert_eq(&paperwork::label_document(&work, &study, &words));
    }
}

#[test]
fn who_reads_feet_and_gauge_numbers_gets_them_and_buys_no_less() {
    let words = Words::of(Reader {
        lengths: Lengths::Feet,
        sizes: Sizes::Awg,
        ..Reader::default()
    });
    let job = job(Language::English);
    let work = Work::latest(&job).expect("a sheet");
    let tables = lists(&work, &Terms::default(), &[List::Order, List::Cut]);
    let order = csv(&tables[0], &words);
    // 5.30 m are 17.388 ft; with a tenth of waste 5.83 m, in whole metres 6 m, 19.685 ft: 20 ft.
    let line = order
        .lines()
        .find(|line| line.starts_with("cable copper 16mm2 RD"))
        .expect("the main feed");
    assert!(
        line.contains("16 mm² (≈ 5 AWG)") && line.contains(",20,ft,17.39,"),
        "{line}"
    );
    let cut = csv(&tables[1], &words);
    assert!(cut.starts_with("Tag,Name,Size,Colour,Material,Cut (ft)"), "{cut}");
}

#[test]
fn a_handover_holds_nothing_from_outside_and_no_markup_of_the_job() {
    let mut job = job(Language::English);
    let evil = "<script>alert(1)</script><img src=https://example.org/x onerror=\"x\">&amp;\u{202e}";
    job.title = evil.to_owned();
    job.vehicle.name = evil.to_owned();
    for complaint in &mut job.thread.complaints {
        complaint.words = evil.to_owned();
    }
    for offer in &mut job.thread.offers {
        offer.words = evil.to_owned();
    }
    for sheet in job.sheets.values_mut() {
        for part in sheet.parts.values_mut() {
            part.label = evil.to_owned();
            part.note = evil.to_owned();
        }
    }
    job.pictures.insert(
        "b1".to_owned(),
        model::picture::Picture {
            facts: model::picture::PictureFacts {
                words: evil.to_owned(),
                ..Default::default()
            },
            bytes: std::sync::Arc::new(vec![0xff, 0xd8, 0xff, 0xe0]),
            ..Default::default()
        },
    );
    let asked = Asked {
        showing: EVERYTHING,
        ..Asked::default()
    };
    let (page, _) = handover(&job, asked, &Words::english()).expect("a sheet");
    for forbidden in [
        "<script",
        "<img src=https",
        "onerror=\"",
        "<link",
        "<iframe",
        "javascript:",
        "\u{202e}",
    ] {
        assert!(!page.contains(forbidden), "{forbidden}");
    }
    assert!(page.contains("&lt;script&gt;"));
    // Addresses: none that is loaded, and of those that only name a format, that of SVG alone.
    for (at, _) in page.match_indices("http") {
        let rest = &page[at..page.len().min(at + 40)];
        let named = rest.starts_with("http://www.w3.org/2000/svg")
            || rest.starts_with("http-equiv=")
            || page[..at].ends_with("src=");
        assert!(named, "{rest}");
    }
    assert!(page.contains("default-src 'none'"));
    assert!(page.contains("src=\"data:image/jpeg;base64,/9j/4A==\""));
}

#[test]
fn private_things_stay_out_unless_they_are_asked_for() {
    let job = job(Language::English);
    let (bare, left) = handover(&job, Asked::default(), &Words::english()).expect("a sheet");
    for private in [
        "The bench",
        "Hatchback, petrol",
        "The bass cuts out",
        "Scratch on",
        "EUR",
        "369.40",
    ] {
        assert!(!bare.contains(private), "{private}");
    }
    // What was done and what was declined is handed over in any case.
    assert!(
        bare.contains("New main feed: fuse at the battery")
            && bare.contains("Sound-deadening of the front doors")
    );
    assert!(left.notes > 0 && left.names == 2 && left.prices == 7, "{left:?}");
    let priced = Asked {
        showing: Showing {
            prices: true,
            ..Showing::default()
        },
        ..Asked::default()
    };
    let (priced, _) = handover(&job, priced, &Words::english()).expect("a sheet");
    assert!(priced.contains("369.40") && !priced.contains("The bass cuts out"));
    let customer = Asked {
        readers: Readers::Customer,
        ..Asked::default()
    };
    let (customer, _) = handover(&job, customer, &Words::english()).expect("a sheet");
    assert!(customer.contains("How to isolate the system") && !customer.contains("Wiring table"));
}

#[test]
fn every_worked_job_has_its_papers_on_every_sheet() {
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        for kind in job.sheets.keys() {
            let work = Work::of(&job, *kind, None).expect("the sheet");
            for table in lists(&work, &Terms::default(), List::ALL) {
                for row in &table.rows {
                    assert_eq!(row.len(), table.columns.len(), "{} {}", worked.key, table.name);
                }
            }
            let asked = Asked {
                kind: Some(*kind),
                ..Asked::default()
            };
            assert!(
                handover(&job, asked, &Words::english()).is_some(),
                "{}",
                worked.key
            );
        }
    }
    assert!(handover(&model::Job::default(), Asked::default(), &Words::english()).is_none());
}
