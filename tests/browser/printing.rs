//! Papers as the printer gets them: every one of every worked job, in both languages, on A4 and on Letter. Nothing sticks
//! out of its page, no table is cut at the right, labels keep their size, and there are as many pages as there should be.

use crate::table::Table;
use lessons::WORKED_JOBS;
use paperwork::{Asked, List, Work, handover, label_sheets};
use sharing::Showing;
use words::{Language, Reader, Words};

/// A4 by ISO 216, Letter by ANSI/ASME Y14.1, in millimetres.
const PAPERS: [(f64, f64); 2] = [(210.0, 297.0), (215.9, 279.4)];
/// CSS pixels in a millimetre (CSS Values and Units: 1 in is 96 px).
const PX: f64 = 96.0 / 25.4;

fn words(language: Language) -> Words {
    Words::of(Reader {
        language,
        ..Reader::default()
    })
}

/// Width and height of every page of a PDF in points: one `/MediaBox` stands for each.
fn pages(pdf: &[u8]) -> Vec<(f64, f64)> {
    let text = String::from_utf8_lossy(pdf);
    let boxes = text.split("/MediaBox [").skip(1);
    boxes
        .filter_map(|rest| rest.split_once(']'))
        .map(|(numbers, _)| {
            let all: Vec<f64> = numbers
                .split_whitespace()
                .filter_map(|it| it.parse().ok())
                .collect();
            (all[2] - all[0], all[3] - all[1])
        })
        .collect()
}

/// What sticks out at the right of a page that is this wide between its margins: elements of `within`, as `name: text`. What a
/// drawing shows beyond its own edge is cut there: a part of one has the rest on the next page.
fn sticking_out(table: &Table, within: &str) -> String {
    let told = table.eval(&format!(
        "(() => {{ const wide = document.documentElement.clientWidth; \
         return [...document.querySelectorAll('{within}')].filter(e => !e.ownerSVGElement && e.getBoundingClientRect().right > wide + 1) \
         .map(e => e.tagName + ': ' + e.textContent.slice(0, 60)).slice(0, 5).join(' | ') }})()"
    ));
    told.as_str().unwrap_or_default().to_owned()
}

/// Words within a box that is narrower than they are.
const SPILT: &str = "(() => [...document.querySelectorAll('td, th, p, li, dd, figcaption')] \
    .filter(e => e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0) \
    .map(e => e.textContent.slice(0, 60)).slice(0, 5).join(' | '))()";

#[test]
fn every_handover_fits_either_paper() {
    let mut table = Table::open();
    let folder = tempfile::TempDir::new().expect("a folder");
    for language in Language::ALL {
        for worked in WORKED_JOBS {
            let job = worked.job_in(*language);
            let asked = Asked {
                showing: Showing {
                    notes: true,
                    names: true,
                    prices: true,
                    pictures: true,
                },
                ..Asked::default()
            };
            let name = format!("{} {}", worked.key, language.tag());
            let (page, _) = handover(&job, asked, &words(*language)).expect("a sheet");
            let file = folder.path().join("handover.html");
            std::fs::write(&file, page).expect("the handover is written");
            table.go_to_file(&file);
            table.set_print(true);
            // Upright pages are narrowest on A4, lying ones on Letter: 26 mm of both are margins.
            for (wide, within) in [
                (
                    PAPERS[0].0 - 26.0,
                    "article > :not(.wide), article > :not(.wide) *",
                ),
                (PAPERS[1].1 - 26.0, ".wide, .wide *"),
            ] {
                table.page_mut().set_size((wide * PX) as u32, 1_000);
                table.set_print(true);
                assert_eq!(sticking_out(&table, within), "", "{name} on {wide} mm");
                assert_eq!(table.eval(SPILT), "", "{name} on {wide} mm");
            }
            let counts = PAPERS.map(|paper| {
                let pages = pages(&table.as_pdf_on(paper));
                for (wide, high) in &pages {
                    let points = [paper.0, paper.1].map(|millimetres| millimetres / 25.4 * 72.0);
                    let upright = (wide - points[0]).abs() < 1.0 && (high - points[1]).abs() < 1.0;
                    let lying = (high - points[0]).abs() < 1.0 && (wide - points[1]).abs() < 1.0;
                    assert!(upright || lying, "{name}: a page of {wide} × {high} pt");
                }
                pages.len()
            });
            // Letter is 18 mm shorter: a page more here or there, not many.
            // With the parts of the drawing, of which there are six at most.
            assert!((8..=21).contains(&counts[0]), "{name}: {counts:?}");
            assert!(
                (counts[0]..=counts[0] + 2).contains(&counts[1]),
                "{name}: {counts:?}"
            );
            table.set_print(false);
        }
    }
}

#[test]
fn every_paper_of_the_page_fits_either_paper() {
    for language in Language::ALL {
        let mut table = Table::open();
        if *language == Language::German {
            crate::reader::german(&table);
        }
        for worked in WORKED_JOBS {
            table.press("b");
            table.click(&format!("worked-{}", worked.key));
            let title = serde_json::Value::from(worked.job_in(*language).title);
            table.wait_until(
                "the job",
                &format!("JSON.parse(loomwright_job()).title === {title}"),
            );
            let job = table.job();
            let kind = table.state()["sheet"].as_str().unwrap_or_default().to_owned();
            let kind = model::SheetKind::from_word(&kind).expect("a sheet");
            let work = Work::of(&job, kind, None).expect("a sheet");
            table.page_mut().set_size(1440, 900);
            table.press("y");
            table.wait_until("the papers", "!!document.querySelector('[data-testid=paper]')");
            table.eval("document.documentElement.setAttribute('data-printing', 'paper')");
            for list in List::ALL {
                let name = format!("{} {} {}", worked.key, language.tag(), list.word());
                table.set_print(false);
                table.page_mut().set_size(1440, 900);
                table.eval(&format!(
                    "document.querySelector('[data-testid=paper-{}]').click()",
                    list.word()
                ));
                let title = serde_json::Value::from(words(*language).say(&list.title()));
                table.wait_until(
                    "the paper",
                    &format!("document.querySelector('[data-testid=paper] h2').textContent === {title}"),
                );
                let lies = table.eval("!!document.querySelector('.papers--wide')") == true;
                // 24 mm are margins; those of labels are 20.
                let wide = match list {
                    List::Labels => PAPERS[0].0 - 20.0,
                    _ if lies => PAPERS[1].1 - 24.0,
                    _ => PAPERS[0].0 - 24.0,
                };
                table.page_mut().set_size((wide * PX) as u32, 1_000);
                table.set_print(true);
                assert_eq!(
                    sticking_out(&table, "[data-testid=paper], [data-testid=paper] *"),
                    "",
                    "{name}"
                );
                assert_eq!(table.eval(SPILT), "", "{name}");
                let counts = PAPERS.map(|paper| pages(&table.as_pdf_on(paper)).len());
                if *list == List::Labels {
                    let study = circuit::study(&work.sheet, &job.settings);
                    let sheets = label_sheets(&work, &study, &words(*language)).len();
                    assert_eq!(counts, [sheets.max(1); 2], "{name}");
                } else {
                    let rows = table.count("paper-row") + table.count("paper-step");
                    // An upright page holds some twenty rows of three lines; half as many lie on one that is turned.
                    let most = 1 + rows / if lies { 8 } else { 16 };
                    // Letter is wider and shorter: a page more or less, and no more.
                    assert!(counts[0].abs_diff(counts[1]) <= 1, "{name}: {counts:?}");
                    let longest = counts[0].max(counts[1]);
                    assert!(longest <= most + 1, "{name}: {counts:?} for {rows} rows");
                }
            }
            table.set_print(false);
            table.page_mut().set_size(1440, 900);
            table.eval("document.documentElement.removeAttribute('data-printing')");
            table.press("Escape");
            table.wait_until("no papers", "!document.querySelector('[data-testid=paper]')");
        }
        table.assert_no_errors();
    }
}
