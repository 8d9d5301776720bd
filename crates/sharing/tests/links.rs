//! Links: nothing is lost on the way, what is damaged is told, old ones open, and the printed code is read back.

use lessons::{LESSONS, Lesson, lesson_fragment, open_lesson};
use proptest::prelude::*;
use sharing::{
    Address, AddressError, Carries, Code, LESSON_KEY, LONGEST_CODE, LONGEST_LINK, LinkError, Showing,
    carries, fragment, open, shown,
};

/// A job of forty parts as an installer would draw it: two rows of speakers, two amplifiers, a second battery, lights.
const FORTY_PARTS: &str = include_str!("jobs/forty_parts.job");

#[test]
fn worked_jobs_come_back_equal() {
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        let link = fragment(&job).expect("short enough");
        assert_eq!(open(&link).expect("opens"), job, "{}", worked.key);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]
    /// Any job that fits comes back as its text form says it.
    #[test]
    fn any_job_comes_back(job in testkit::any::any_job()) {
        if let Ok(link) = fragment(&job) {
            let text = model::text::print(&job);
            prop_assert_eq!(model::text::print(&open(&link).expect("opens")), text);
        }
    }

    /// Whatever stands in a link: it opens or says why not.
    #[test]
    fn any_text_is_answered(link in "\\PC{0,300}") {
        let _ = open(&link);
    }

    /// Whatever bytes are packed: they are answered too. The first byte is the version, so that most get past it.
    #[test]
    fn any_bytes_are_answered(mut bytes in proptest::collection::vec(any::<u8>(), 1..200)) {
        bytes[0] = 1;
        let _ = open(&encode(&bytes));
    }
}

/// Base64 of bytes, by the rules for addresses (RFC 4648, section 5), written out here so that it does not rest on the same code.
fn encode(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let mut out = String::new();
    for three in bytes.chunks(3) {
        let all = three
            .iter()
            .enumerate()
            .fold(0u32, |all, (at, byte)| all | u32::from(*byte) << (16 - 8 * at));
        for at in 0..=three.len() {
            out.push(char::from(LETTERS[(all >> (18 - 6 * at) & 63) as usize]));
        }
    }
    out
}

#[test]
fn a_job_of_forty_parts_fits_one_code() {
    let job = testkit::text::job(FORTY_PARTS);
    let parts: usize = job.sheets.values().map(|sheet| sheet.parts.len()).sum();
    assert!(parts >= 40, "{parts}");
    assert!(
        job.sheets
            .values()
            .all(|sheet| sheet.parts.values().all(|part| part.at.is_some()))
    );
    let link = Address::new("https://wiring.example/board/")
        .expect("address")
        .link(&fragment(&job).expect("fits"));
    assert!(link.len() <= 1100, "{} characters", link.len());
    assert!(Code::of(&link).is_some());
}

/// Changed and missing characters are told, wherever they stand.
#[test]
fn a_tampered_link_is_told() {
    let job = lessons::WORKED_JOBS[0].job();
    let link = fragment(&job).expect("fits");
    for at in (4..link.len()).step_by(5) {
        let mut letters: Vec<u8> = link.clone().into_bytes();
        letters[at] = if letters[at] == b'A' { b'B' } else { b'A' };
        let changed = String::from_utf8(letters).expect("letters");
        if let Ok(opened) = open(&changed) {
            // The last letter may hold bits that no byte needs; then it is the same link.
            assert_eq!(opened, job, "at {at}");
        }
    }
    for cut in (4..link.len()).step_by(5) {
        assert!(
            open(&link[..cut]).is_err() || open(&link[..cut]) == Ok(job.clone()),
            "cut at {cut}"
        );
    }
}

#[test]
fn what_is_no_link_says_so() {
    for (link, error) in [
        ("", LinkError::NoJob),
        ("https://wiring.example/board/", LinkError::NoJob),
        ("https://wiring.example/board/#", LinkError::NoJob),
        ("https://wiring.example/board/#job=", LinkError::NoJob),
        ("#job=!", LinkError::Damaged),
        ("#job=AQ", LinkError::Damaged),
        // Version 9.
        ("#job=CQAAAAAA", LinkError::Newer(9)),
    ] {
        assert_eq!(open(link), Err(error), "{link}");
    }
    assert_eq!(
        open(&format!("#job={}", "A".repeat(LONGEST_LINK))),
        Err(LinkError::TooLong)
    );
    // A length far beyond every bound is refused before anything is unpacked.
    assert_eq!(
        open(&format!(
            "#job={}",
            encode(&[1, 255, 255, 255, 127, 0, 0, 0, 0, 1, 2, 3])
        )),
        Err(LinkError::Damaged)
    );
}

#[test]
fn a_job_too_large_says_so() {
    let mut job = lessons::WORKED_JOBS[0].job();
    // Letters in no order do not pack.
    let mut dice = testkit::random::Dice::new(3);
    job.vehicle.remark = (0..20_000)
        .map(|_| char::from(b'a' + dice.below(26) as u8))
        .collect();
    let told = fragment(&job).expect_err("too long");
    assert!(told.characters > LONGEST_LINK);
    assert!(told.to_string().contains("page file"));
}

#[test]
fn private_things_stay_out_unless_chosen() {
    let text = "job \"Estate\"\nvehicle-info name=\"Grey estate\" drawn-by=\"A. Fitter\" remark=\"pays late\"\n\
                battery B1 agm note=\"from the old car\"\nfuse F1 60A\nrun W1 B1.+ F1.in 16mm2 note=\"ask him\"\n\
                reading volts at=B1.+ against=B1.- 12.6V state=parked remark=\"cold\"\n";
    let job = testkit::text::job(text);
    let (bare, left) = shown(&job, Showing::default());
    assert_eq!((left.notes, left.names, left.unknown), (4, 2, 0));
    let written = model::text::print(&open(&fragment(&bare).expect("fits")).expect("opens"));
    for word in ["Grey", "Fitter", "late", "old car", "ask him", "cold"] {
        assert!(!written.contains(word), "{word} in\n{written}");
    }
    let (named, left) = shown(
        &job,
        Showing {
            names: true,
            ..Showing::default()
        },
    );
    assert_eq!((left.notes, left.names), (4, 0));
    assert_eq!(named.vehicle.drawn_by, "A. Fitter");
    let (whole, _) = shown(
        &job,
        Showing {
            names: true,
            notes: true,
            prices: true,
            pictures: true,
        },
    );
    assert_eq!(whole, job);
}

#[test]
fn the_quote_complaints_and_pictures_stay_out_unless_chosen() {
    let text = r#"complaint C1 "Aunt Petronella hears nothing" explained-by="silent-speaker LS1"
intake "Scratch on the sill" where=D1
offer Q1 "New speaker lead" must parts-price=41.70 hours=1h approved decided-on="by telephone"
rates currency=EUR hour-price=83.00
done build:F1
speaker LS1 4ohm"#;
    let mut job = model::text::parse(text).unwrap_or_else(|errors| panic!("{errors}"));
    let (edit, _) = model::edits::add_picture(
        &job,
        model::picture::PictureOf::Thing,
        "LS1",
        vec![0xff, 0xd8, 0xff, 0xe0],
    )
    .expect("it is a picture");
    job.apply(edit);
    let (bare, left) = shown(&job, Showing::default());
    assert_eq!(
        (left.notes, left.prices, left.pictures, left.unknown),
        (2, 2, 1, 0)
    );
    assert_eq!(bare.thread, model::thread::Thread::default());
    assert!(bare.pictures.is_empty());
    let written = model::text::print(&open(&fragment(&bare).expect("fits")).expect("opens"));
    for word in ["Petronella", "sill", "41.70", "telephone", "83.00", "build:F1"] {
        assert!(!written.contains(word), "{word} in\n{written}");
    }
    let prices = Showing {
        prices: true,
        ..Showing::default()
    };
    let (quoted, left) = shown(&job, prices);
    assert_eq!((left.prices, quoted.thread.offers.len()), (0, 1));
    assert!(quoted.thread.complaints.is_empty());
    // A link carries the quote, and never a picture.
    let opened = open(&fragment(&quoted).expect("fits")).expect("opens");
    assert_eq!(opened.thread.offers, quoted.thread.offers);
    let all = Showing {
        notes: true,
        names: true,
        prices: true,
        pictures: true,
    };
    let (whole, left) = shown(&job, all);
    assert_eq!((left.notes, left.pictures, whole.pictures.len()), (0, 0, 1));
    let opened = open(&fragment(&whole).expect("fits")).expect("opens");
    assert!(opened.pictures.is_empty());
}

#[test]
fn fields_of_a_newer_version_stay_out() {
    let mut job = lessons::WORKED_JOBS[0].job();
    job.extra.insert("prices".to_owned(), 12.into());
    let (bare, left) = shown(
        &job,
        Showing {
            names: true,
            notes: true,
            ..Showing::default()
        },
    );
    assert_eq!(left.unknown, 1);
    assert_eq!(bare, lessons::WORKED_JOBS[0].job());
}

#[test]
fn an_address_is_one() {
    for good in [
        "https://wiring.example/board/",
        "http://10.0.0.7:8080/?shop=3",
        " https://a.b/ ",
    ] {
        assert!(Address::new(good).is_ok(), "{good}");
    }
    for (bad, error) in [
        ("", AddressError::NoHost),
        ("wiring.example", AddressError::NoHost),
        ("javascript:alert(1)", AddressError::NoHost),
        ("https:///board", AddressError::NoHost),
        ("https://a.b/#x", AddressError::Fragment),
        ("https://a.b/ c", AddressError::Character(' ')),
        ("https://a.b/\"><b>", AddressError::Character('"')),
    ] {
        assert_eq!(Address::new(bad), Err(error), "{bad}");
    }
}

/// Read by an independent decoder, as a camera would see it: eight pixels a module, with the clear paper around.
#[test]
fn a_printed_code_is_read_back() {
    for (job, text) in lessons::WORKED_JOBS
        .iter()
        .map(|it| (it.key, it.text()))
        .chain([("forty", FORTY_PARTS)])
    {
        let job_read = testkit::text::job(text);
        let link = Address::new("https://wiring.example/board/")
            .expect("address")
            .link(&fragment(&job_read).expect("fits"));
        // The job in three sheets, with its complaints and its quote, is no matter for a printed code.
        if job == "hatchback" {
            assert!(link.len() > LONGEST_CODE && Code::of(&link).is_none());
            continue;
        }
        let code = Code::of(&link).unwrap_or_else(|| panic!("{job} has {} characters", link.len()));
        let scale = 8;
        let quiet = (code.box_side() - code.side()) / 2;
        let side = code.box_side() * scale;
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
            let (x, y) = (x / scale, y / scale);
            if x >= quiet && y >= quiet && code.dark(x - quiet, y - quiet) {
                0
            } else {
                255
            }
        });
        let found = picture.detect_grids();
        assert_eq!(found.len(), 1, "{job}");
        assert_eq!(found[0].decode().expect("readable").1, link, "{job}");
    }
    assert!(Code::of(&"x".repeat(LONGEST_CODE + 1)).is_none());
    assert!(Code::of(&"x".repeat(LONGEST_CODE)).is_some());
}

/// Links of every version that was ever made, each beside the job that it holds, as the text form says it today.
const OLD: &[(&str, &str)] = &[
    (
        include_str!("links/v1-estate.link"),
        include_str!("links/v1-estate.job"),
    ),
    (
        include_str!("links/v1-van.link"),
        include_str!("links/v1-van.job"),
    ),
    (
        include_str!("links/v1-camper.link"),
        include_str!("links/v1-camper.job"),
    ),
    (
        include_str!("links/v1-forty.link"),
        include_str!("links/v1-forty.job"),
    ),
];

#[test]
fn old_links_open() {
    for (link, text) in OLD {
        let job = open(link).unwrap_or_else(|error| panic!("{error}\n{text}"));
        assert_eq!(job, testkit::text::job(text));
    }
}

#[test]
fn lessons_come_back_equal_and_fit_a_link() {
    for built_in in LESSONS {
        let lesson = built_in.lesson();
        let link = lesson_fragment(&lesson).expect("short enough");
        assert_eq!(open_lesson(&link).expect("opens"), lesson, "{}", built_in.key);
        let whole = format!("https://wiring.example/board/#{link}");
        assert_eq!(carries(&whole), Some(Carries::Lesson));
        assert_eq!(open_lesson(&whole).expect("opens"), lesson);
        assert!(link.len() < 2600, "{}: {} characters", built_in.key, link.len());
    }
    for worked in lessons::WORKED_JOBS {
        let lesson = Lesson::of_job(&worked.job());
        assert_eq!(
            open_lesson(&lesson_fragment(&lesson).expect("fits")).expect("opens"),
            lesson
        );
    }
}

/// Nobody can take a lesson for a drawing, a drawing for a lesson, or either for the key of a lesson that comes with the program.
#[test]
fn a_lesson_is_no_drawing_and_no_key() {
    let lesson = lesson_fragment(&LESSONS[0].lesson()).expect("fits");
    let job = fragment(&lessons::WORKED_JOBS[0].job()).expect("fits");
    assert_eq!(open(&lesson), Err(LinkError::IsLesson));
    assert_eq!(open_lesson(&job), Err(LinkError::IsJob));
    assert_eq!(carries(&job), Some(Carries::Job));
    assert_eq!(carries("#lesson=ring-feed"), None);
    for (link, error) in [
        ("", LinkError::NoLesson),
        ("https://wiring.example/board/", LinkError::NoLesson),
        ("#own-lesson=", LinkError::NoLesson),
        ("#own-lesson=!", LinkError::Damaged),
        ("#own-lesson=CQAAAAAA", LinkError::Newer(9)),
        ("#lesson=ring-feed", LinkError::Damaged),
    ] {
        assert_eq!(open_lesson(link), Err(error), "{link}");
    }
    let long = format!("#{LESSON_KEY}{}", "A".repeat(LONGEST_LINK));
    assert_eq!(open_lesson(&long), Err(LinkError::TooLong));
}

#[test]
fn a_tampered_lesson_link_is_told() {
    let lesson = LESSONS[0].lesson();
    let link = lesson_fragment(&lesson).expect("fits");
    for at in (LESSON_KEY.len()..link.len()).step_by(41) {
        let mut letters: Vec<u8> = link.clone().into_bytes();
        letters[at] = if letters[at] == b'A' { b'B' } else { b'A' };
        let changed = String::from_utf8(letters).expect("letters");
        if let Ok(opened) = open_lesson(&changed) {
            assert_eq!(opened, lesson, "at {at}");
        }
        let cut = open_lesson(&link[..at]);
        assert!(cut.is_err() || cut == Ok(lesson.clone()), "cut at {at}");
    }
}

/// What is whole by its checksum but half-written by its maker does not open.
#[test]
fn a_half_written_lesson_does_not_open() {
    let mut lesson = LESSONS[0].lesson();
    lesson.questions[0].answers.clear();
    assert!(lessons::read_draft(&lessons::write(&lesson)).is_ok());
    let link = lesson_fragment(&lesson).expect("fits");
    assert!(matches!(open_lesson(&link), Err(LinkError::NotUnderstood(_))));
}

/// Links of lessons of every version, each beside its lesson as the text says it today.
const OLD_LESSONS: &[(&str, &str)] = &[
    (
        include_str!("links/v1-painted-seat-rail.lesson-link"),
        include_str!("links/v1-painted-seat-rail.lesson"),
    ),
    (
        include_str!("links/v1-own.lesson-link"),
        include_str!("links/v1-own.lesson"),
    ),
];

#[test]
fn old_lesson_links_open() {
    for (link, text) in OLD_LESSONS {
        let lesson = open_lesson(link).unwrap_or_else(|error| panic!("{error}\n{text}"));
        assert_eq!(lessons::read(text).as_ref(), Ok(&lesson));
        assert_eq!(lessons::write(&lesson), *text);
    }
}
