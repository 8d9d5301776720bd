//! The time course of breaks: against hand-worked numbers, published constants, and laws that hold on any sheet.

mod any;
mod course;
mod far;
mod heat;

use circuit::faults::{Course, Faults};
use model::breaks::Break;
use model::{Settings, Sheet};

fn course_in(text: &str, breaks: &[&str], settings: &Settings) -> (Sheet, Course) {
    let sheet = testkit::sheet(text);
    let breaks: Vec<Break> = breaks
        .iter()
        .map(|it| Break::read(it, &sheet).unwrap_or_else(|why| panic!("{it}: {why}")))
        .collect();
    let course = Faults::new(&sheet, settings)
        .course(&breaks)
        .unwrap_or_else(|why| panic!("{why}"));
    (sheet, course)
}

fn course(text: &str, breaks: &[&str]) -> (Sheet, Course) {
    course_in(text, breaks, &Settings::default())
}
