//! Page files: the job comes back out of them, and nothing that a job says is more than text there.

use html5ever::tendril::TendrilSink;
use html5ever::{ParseOpts, parse_document};
use markup5ever_rcdom::{Handle, NodeData, RcDom};
use model::Job;
use sharing::{PAGE_PLACE, PageError, Showing, carried, fragment, open_carried, page, shown};

const TEMPLATE: &str = "<!doctype html><html><head><meta charset=\"utf-8\"><title>x</title>\
<script type=\"text/plain\" id=\"loomwright-job\"></script><script type=\"module\">run()</script></head><body><p>waits</p></body></html>";

/// What somebody would write who wants to get out of the element, or to be read as markup.
const HOSTILE: [&str; 8] = [
    "</script><img src=x onerror=alert(1)>",
    "</SCRIPT\t><svg onload=alert(1)>",
    "<!--<script>",
    "--><script>alert(1)</script>",
    "&lt;/script&gt;<style>*{display:none}</style>",
    "a\u{2028}b\u{2029}c",
    "]]></script><![CDATA[",
    "\\u003c/script\\u003e \"'`",
];

/// Letters that do not repeat themselves, so that they do not pack.
fn noise(seed: usize, letters: usize) -> String {
    // A linear congruential generator with the multiplier of Knuth's MMIX (The Art of Computer Programming 2, 3.3.4).
    let mut state = seed as u64;
    (0..letters)
        .map(|_| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            char::from(b'a' + (state >> 33) as u8 % 26)
        })
        .collect()
}

/// The van with hostile words wherever words can stand, and so much noise in each note.
fn hostile(letters: usize) -> Job {
    let mut job = lessons::WorkedJob::of("van").expect("a worked job").job();
    let mut at = 0;
    let mut next = |letters: usize| {
        at += 1;
        format!("{}{}", HOSTILE[at % HOSTILE.len()], noise(at, letters))
    };
    job.title = next(0);
    for text in [
        &mut job.vehicle.name,
        &mut job.vehicle.drawn_by,
        &mut job.vehicle.date,
        &mut job.vehicle.revision,
        &mut job.vehicle.remark,
    ] {
        *text = next(0);
    }
    for sheet in job.sheets.values_mut() {
        for part in sheet.parts.values_mut() {
            part.label = next(0);
            part.note = next(letters);
        }
        for run in sheet.runs.values_mut() {
            run.label = next(0);
            run.note = next(letters);
        }
        for reading in &mut sheet.readings {
            reading.remark = next(letters);
        }
    }
    job
}

/// An element: its name, its attributes, and the text right in it.
type Found = (String, Vec<(String, String)>, String);

/// The elements of a page in order, as a browser's own parser rules find them (html5ever follows the HTML standard's).
fn elements(page: &str) -> Vec<Found> {
    fn walk(node: &Handle, out: &mut Vec<Found>) {
        if let NodeData::Element { name, attrs, .. } = &node.data {
            let text = node
                .children
                .borrow()
                .iter()
                .fold(String::new(), |mut text, child| {
                    if let NodeData::Text { contents } = &child.data {
                        text.push_str(&contents.borrow());
                    }
                    text
                });
            let attributes = attrs
                .borrow()
                .iter()
                .map(|attribute| (attribute.name.local.to_string(), attribute.value.to_string()))
                .collect();
            out.push((name.local.to_string(), attributes, text));
        }
        for child in node.children.borrow().iter() {
            walk(child, out);
        }
    }
    let dom = parse_document(RcDom::default(), ParseOpts::default()).one(page);
    let mut out = Vec::new();
    walk(&dom.document, &mut out);
    out
}

/// Puts the job in and holds what a browser would see against the template: the same elements, and in the job's place, and
/// only there, a text that opens to the same job.
fn holds(job: &Job) {
    let made = page(TEMPLATE, job).expect("a template");
    let (before, after) = (elements(TEMPLATE), elements(&made));
    let names = |all: &[Found]| {
        all.iter()
            .map(|(name, attributes, _)| (name.clone(), attributes.clone()))
            .collect::<Vec<_>>()
    };
    assert_eq!(names(&after), names(&before), "no element more, and none less");
    for ((name, attributes, text), (_, _, was)) in after.iter().zip(&before) {
        if attributes
            .iter()
            .any(|(name, value)| name == "id" && value == PAGE_PLACE)
        {
            assert_eq!(open_carried(text).as_ref(), Ok(job), "as the page reads it");
            assert_eq!(
                carried(&made),
                Some(text.as_str()),
                "as it is read without a browser"
            );
        } else {
            assert_eq!(text, was, "{name}");
        }
    }
    assert_eq!(
        page(&made, job),
        Err(PageError::NoTemplate),
        "one job is in it already"
    );
}

#[test]
fn a_job_in_a_page_is_text_whatever_it_says() {
    for worked in lessons::WORKED_JOBS {
        holds(&worked.job());
    }
    let packed = hostile(0);
    // Beyond a link it goes in as JSON.
    let large = hostile(400);
    assert!(fragment(&large).is_err(), "too large for a link");
    let made = page(TEMPLATE, &large).expect("a template");
    assert!(carried(&made).is_some_and(|text| text.starts_with('{')));
    for job in [packed, large] {
        holds(&job);
        // And with what is private left out.
        holds(&shown(&job, Showing::default()).0);
    }
}

#[test]
fn what_is_no_page_is_told() {
    let job = lessons::WORKED_JOBS[0].job();
    assert_eq!(page("<html></html>", &job), Err(PageError::NoTemplate));
    assert_eq!(carried("<html></html>"), None);
    assert_eq!(open_carried(" \n"), Err(PageError::NoJob));
    let made = page(TEMPLATE, &job).expect("a template");
    let packed = carried(&made).expect("a job");
    assert_eq!(open_carried(&packed[..packed.len() - 9]), Err(PageError::Damaged));
    let file = model::file::write(&job);
    assert_eq!(open_carried(&file), Ok(job));
    for wrong in [&file[..file.len() / 2], "{}", "[1]", "hello"] {
        let error = open_carried(wrong).expect_err("no job");
        assert!(matches!(error, PageError::NotUnderstood(_)), "{error:?}");
    }
}
