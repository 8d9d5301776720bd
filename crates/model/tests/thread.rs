//! The thread of a job, pictures, how things are fixed and laid: written, read back, renamed, undone, and salvaged.

use model::conductor::Material;
use model::edits::{
    ThreadList, add_line, add_picture, add_picture_of_intake, remove_line, remove_picture, rename_part,
    set_line, set_property, set_wire_property, tick,
};
use model::file;
use model::handling::Handling;
use model::json::ToJson;
use model::laying::Laying;
use model::mounting::Mounting;
use model::picture::{PictureForm, PictureOf};
use model::property::PropertySet;
use model::quantity::{Metres, Millimetres};
use model::thread::{Decision, Money, Need, Rates};
use model::{Fact, Job, PartKind, PropertyType, SheetKind};

const JOB: &str = r#"job "Estate, bass silent"
complaint C1 "No bass since the move" explained-by="silent-speaker LS1" happens-with=lid-open
intake "Lid of the block cracked" where=D1 date=2026-11-30
offer Q1 "New feed to the block" must clears="fuse-too-far F1 W1" answers=C1 parts-price=34.50 hours=1.5h approved extra=yes
rates currency=EUR hour-price=78.00
done strip-out:B1

sheet found
battery B1 agm 70Ah
fuse F1 "Main fuse" strip61 60A mounted=seat-back fixing-holes=2 screws=1 fate=move once-out=scrap
speaker LS1 4ohm
run W1 B1.+ F1.in 16mm2 0.3m RD route=engine-bay/bulkhead-left guards=bulkhead-left:grommet support-spacing=0.4m strands=126 strand-diameter=0.4mm
tuning of=A1 channel=1 target-volts=17.3V high-pass=80Hz
"#;

fn job() -> Job {
    model::text::parse(JOB).unwrap_or_else(|errors| panic!("{errors}"))
}

#[test]
fn text_and_file_read_back() {
    let job = job();
    let text = model::text::print(&job);
    assert_eq!(model::text::parse(&text).as_ref(), Ok(&job), "{text}");
    let offer = &job.thread.offers[0];
    assert_eq!(
        (offer.need, offer.decision, offer.extra_work),
        (Need::Must, Decision::Approved, true)
    );
    let bytes = file::write(&job);
    let read = file::read_lenient(bytes.as_bytes()).expect("it was just written");
    assert_eq!(read.job, job);
    assert!(read.problems.is_empty(), "{:?}", read.problems);
}

#[test]
fn what_stands_beside_a_kind_has_names_of_its_own() {
    let beside = || Mounting::list().iter().chain(Handling::list());
    for word in PartKind::WORDS {
        let kind = PartKind::from_word(word).expect("a word of the list");
        for property in kind.properties() {
            assert!(
                beside().all(|other| other.name != property.name),
                "{word}: {}",
                property.name
            );
        }
    }
    for property in model::Wire::list() {
        let names = || Laying::list().iter().chain(Handling::list());
        assert!(
            names().all(|other| other.name != property.name),
            "{}",
            property.name
        );
    }
}

#[test]
fn prices_are_exact_and_sums_too() {
    assert_eq!(Money::parse("120,5", None), Ok(Money(12050)));
    assert_eq!(Money(12050).print(), "120.50");
    for text in ["", "-1", "1.234", "x", ".5", "99999999999999999999"] {
        assert!(Money::parse(text, None).is_err(), "{text}");
    }
    let job = job();
    // 34.50 and 1.5 h of 78.00 an hour.
    assert_eq!(job.thread.offers[0].price(&job.thread.rates), Some(Money(15150)));
    assert_eq!(job.thread.offers[0].price(&Rates::default()), None);
}

#[test]
fn lines_are_added_changed_and_undone() {
    let mut job = job();
    let before = file::write(&job);
    let (edit, place) = add_line(&job, ThreadList::Complaints, &[("what", "Hums")]).expect("there is room");
    let back = job.apply(edit);
    assert_eq!((place, job.thread.complaints[1].tag.as_str()), (1, "C2"));
    let edit = set_line(
        &job,
        ThreadList::Complaints,
        1,
        "explained-by",
        "ground-offset A1",
    )
    .expect("it fits");
    let back_further = job.apply(edit);
    let wrong = set_line(&job, ThreadList::Complaints, 1, "explained-by", "Not A Check");
    assert!(wrong.is_err_and(|error| error.to_string().contains("name of a check")));
    assert!(set_line(&job, ThreadList::Offers, 7, "what", "x").is_err());
    job.apply(back_further);
    job.apply(back);
    assert_eq!(file::write(&job), before);
    let edit = tick(&job, "build:F1", "Fit F1".into(), true).expect("there is room");
    let back = job.apply(edit);
    assert!(job.thread.done.contains("build:F1"));
    job.apply(back);
    assert_eq!(file::write(&job), before);
}

#[test]
fn what_refers_to_a_part_follows_its_tag() {
    let mut job = job();
    let jpeg = vec![0xff, 0xd8, 0xff, 0xe0];
    let (edit, key) = add_picture(&job, PictureOf::Thing, "F1", jpeg).expect("a picture");
    job.apply(edit);
    let (id, _) = job
        .sheet(SheetKind::Found)
        .and_then(|s| s.part_by_tag("F1"))
        .expect("the fuse");
    let edit = rename_part(&job, SheetKind::Found, id, "F9").expect("it is free");
    let back = job.apply(edit);
    assert_eq!(job.thread.offers[0].clears.print(), "fuse-too-far F9 W1");
    assert_eq!(job.pictures[&key].facts.of, "F9");
    job.apply(back);
    assert_eq!(job.thread.offers[0].clears.print(), "fuse-too-far F1 W1");
    assert_eq!(job.pictures[&key].facts.of, "F1");
}

#[test]
fn one_way_sets_all_that_can_be_set() {
    let mut job = job();
    let sheet = job.sheet(SheetKind::Found).expect("a sheet");
    let (fuse, wire) = (
        sheet.part_by_tag("F1").expect("the fuse").0,
        sheet.run_by_tag("W1").expect("the run").0,
    );
    for (name, text) in [("rating", "80A"), ("screws", "2"), ("fate", "?")] {
        let edit = set_property(&job, SheetKind::Found, fuse, name, text).expect("it fits");
        job.apply(edit);
    }
    let edit = set_wire_property(&job, SheetKind::Found, wire, "support-spacing", "0.5m").expect("it fits");
    job.apply(edit);
    let sheet = job.sheet(SheetKind::Found).expect("a sheet");
    assert_eq!(sheet.parts[&fuse].mounting.screws, Fact::Given(2));
    assert_eq!(sheet.parts[&fuse].handling.fate, Fact::Unknown);
    assert_eq!(sheet.runs[&wire].laying.support_spacing, Fact::Given(Metres(0.5)));
}

#[test]
fn a_picture_goes_through_the_file_and_a_damaged_one_is_kept_aside() {
    let mut job = job();
    assert!(add_picture(&job, PictureOf::Thing, "F1", b"GIF89a".to_vec()).is_err());
    assert!(
        add_picture(
            &job,
            PictureOf::Thing,
            "F1",
            vec![0xff; model::limits::LARGEST_PICTURE + 1]
        )
        .is_err()
    );
    let png = [&[0x89][..], b"PNG\r\n\x1a\n", &[1, 2, 3]].concat();
    let (edit, key) = add_picture(&job, PictureOf::Thing, "F1", png.clone()).expect("a picture");
    let line = model::history::Entry::Did(edit.clone()).line();
    assert_eq!(
        model::history::Entry::from_line(&line),
        Ok(model::history::Entry::Did(edit.clone()))
    );
    job.apply(edit);
    let written = file::write(&job);
    let read = file::read(written.as_bytes()).expect("it was just written");
    assert_eq!(*read.pictures[&key].bytes, png);
    assert_eq!(read.pictures[&key].facts.form, PictureForm::Png);
    // A picture whose bytes are not those of a picture: told, kept aside, and the rest is there.
    let damaged = written.replace("iVBORw0KGgo", "AAAAAAAAAAA");
    assert_ne!(damaged, written);
    let read = file::read_lenient(damaged.as_bytes()).expect("the rest is good");
    assert!(read.job.pictures.is_empty());
    assert!(
        read.problems.iter().any(|it| it.place.starts_with("pictures.b1")),
        "{:?}",
        read.problems
    );
    assert_eq!(read.job.thread, job.thread);
}

#[test]
fn strands_add_up_to_the_true_size_and_a_measured_drop_tells_the_material() {
    // IEC 60228, class 5, 16 mm²: strands of at most 0.41 mm; makers build it as 126 × 0.40 mm (from memory), 15.8 mm².
    let mut laying = job()
        .sheet(SheetKind::Found)
        .expect("a sheet")
        .run_by_tag("W1")
        .expect("W1")
        .1
        .laying
        .clone();
    let area = laying.counted_area().expect("both are known");
    assert!((area.0 - 15.83).abs() < 0.01, "{area}");
    // The same table: at most 1.21 mΩ/m at 20 °C. Ten amps over two metres of copper drop 24.2 mV at most.
    laying.set("tested-drop", "22mV").expect("it fits");
    laying.set("tested-current", "10A").expect("it fits");
    let rho = |material: Material| match material {
        // Ω·mm²/m at 20 °C: IEC 60028 for copper, IEC 60889 for aluminium; clad ones from ASTM B566 (10 %, 15 %).
        Material::Copper | Material::TinnedCopper => 0.017_241,
        Material::Aluminium => 0.028_264,
        Material::CladAluminium10 => 0.027_43,
        Material::CladAluminium15 => 0.026_76,
    };
    let (material, off) = laying.likely_material(Metres(2.0), rho).expect("all is known");
    assert_eq!(material, Material::Copper);
    assert!((0.95..1.05).contains(&off), "{off}");
    laying.set("tested-drop", "35mV").expect("it fits");
    let (material, _) = laying.likely_material(Metres(2.0), rho).expect("all is known");
    assert!(
        matches!(material, Material::CladAluminium10 | Material::Aluminium),
        "{material:?}"
    );
    laying.strand = Fact::Given(Millimetres(0.0));
    assert_eq!(
        laying
            .likely_material(Metres(2.0), rho)
            .map(|it| it.1.is_finite()),
        Some(true)
    );
}

#[test]
fn a_line_of_the_condition_record_has_pictures_of_its_own_and_takes_them_along() {
    let mut job = job();
    let before = file::write(&job);
    let jpeg = || vec![0xff, 0xd8, 0xff, 0xe0];
    // The line of the text form has no tag yet: it gets one with its first picture, in the same step.
    assert_eq!(job.thread.intake[0].tag, "");
    let (edit, key) = add_picture_of_intake(&job, 0, jpeg()).expect("a picture");
    let back = job.apply(edit);
    assert_eq!(job.thread.intake[0].tag, "I1");
    assert_eq!(job.pictures[&key].facts.of, "I1");
    let (edit, second) = add_picture_of_intake(&job, 0, jpeg()).expect("another");
    job.apply(edit);
    assert_eq!(job.pictures[&second].facts.of, "I1");
    // A new line has a tag from the start, and another one.
    let (edit, place) = add_line(&job, ThreadList::Intake, &[("what", "Lamp out")]).expect("there is room");
    job.apply(edit);
    assert_eq!(job.thread.intake[place].tag, "I2");
    assert!(add_picture_of_intake(&job, 9, jpeg()).is_err());
    // The tag stands in the text form, which reads it back.
    let text = model::text::print(&job);
    assert!(text.contains("intake I1 \"Lid of the block cracked\""), "{text}");
    let read = model::text::parse(&text).expect("its own text");
    assert_eq!(read.thread.intake, job.thread.intake);
    // Its pictures go with the line, and come back with it.
    let with = file::write(&job);
    let edit = remove_line(&job, ThreadList::Intake, 0).expect("it is there");
    let undo = job.apply(edit);
    assert!(job.pictures.is_empty());
    job.apply(undo);
    assert_eq!(file::write(&job), with);
    let edit = remove_line(&job, ThreadList::Intake, place).expect("it is there");
    job.apply(edit);
    let edit = remove_picture(&job, &second).expect("it is there");
    job.apply(edit);
    job.apply(back);
    assert_eq!(file::write(&job), before);
}

/// A part and a complaint may both be called C1: each has its own pictures, and keeps them when the other goes.
#[test]
fn a_line_is_called_by_a_tag_or_by_none_in_edits_and_files_alike() {
    let job = job();
    for (list, line) in [
        (ThreadList::Complaints, "complaints"),
        (ThreadList::Intake, "intake"),
        (ThreadList::Offers, "offers"),
    ] {
        let wrong = set_line(&job, list, 0, "tag", "C 1").expect_err("no tag has a space");
        assert!(wrong.to_string().contains("letters, digits"), "{wrong}");
        assert!(add_line(&job, list, &[("tag", "C-1")]).is_err());
        assert!(set_line(&job, list, 0, "tag", "").is_ok());
        let mut spoilt = job.to_json();
        spoilt["thread"][line][0]["tag"] = "C 1".into();
        spoilt["format"] = file::FORMAT.into();
        spoilt["version"] = file::VERSION.into();
        let spoilt = spoilt.to_string();
        let place = format!("thread.{line}.0.tag");
        let refused = file::read(spoilt.as_bytes())
            .expect_err("no tag has a space")
            .to_string();
        assert!(
            refused.contains(&format!("{place}: `C 1` is not a tag")),
            "{refused}"
        );
        // All else opens, and what was wrong is kept.
        let opened = file::read_lenient(spoilt.as_bytes()).expect("the rest is sound");
        assert!(opened.is_damaged());
        assert_eq!(opened.job.extra[file::UNREAD][&place], "C 1");
        assert_eq!(opened.job.thread.complaints[0].words, "No bass since the move");
    }
}

#[test]
fn a_part_and_a_complaint_of_the_same_tag_have_pictures_of_their_own() {
    let mut job = model::text::parse("capacitor C1\ncomplaint C1 \"No bass\"\n").expect("a job");
    let png = |last: u8| vec![0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, last];
    let mut keys = Vec::new();
    for (at, among) in [(1, PictureOf::Thing), (2, PictureOf::Complaint)] {
        let (edit, key) = add_picture(&job, among, "C1", png(at)).expect("a picture");
        job.apply(edit);
        keys.push(key);
    }
    assert!(job.pictures[&keys[0]].is_of(PictureOf::Thing, "C1"));
    assert!(!job.pictures[&keys[0]].is_of(PictureOf::Complaint, "C1"));
    // Another tag for the part takes its picture along, and no other.
    let part = job
        .sheet(SheetKind::Plan)
        .expect("a plan")
        .part_by_tag("C1")
        .expect("a part")
        .0;
    let renamed = rename_part(&job, SheetKind::Plan, part, "C7").expect("a name");
    job.apply(renamed);
    assert_eq!(job.pictures[&keys[0]].facts.of, "C7");
    assert_eq!(job.pictures[&keys[1]].facts.of, "C1");
    // And so for the complaint.
    let renamed = set_line(&job, ThreadList::Complaints, 0, "tag", "C9").expect("a name");
    job.apply(renamed);
    assert_eq!(job.pictures[&keys[1]].facts.of, "C9");
    let gone = remove_line(&job, ThreadList::Complaints, 0).expect("it goes");
    job.apply(gone);
    assert_eq!(job.pictures.keys().collect::<Vec<_>>(), [&keys[0]]);
}

/// A file of version 1 said nothing of whose tag it is. What stood at both stands at both, and nothing is lost.
#[test]
fn pictures_of_an_older_file_go_where_they_were_seen() {
    let file = include_str!("jobs/v1/pictures.loom.json");
    let job = model::file::read(file.as_bytes()).expect("a job");
    let of = |among: PictureOf, tag: &str| -> Vec<&str> {
        let all = job
            .pictures
            .iter()
            .filter(|(_, picture)| picture.is_of(among, tag));
        all.map(|(key, _)| key.as_str()).collect()
    };
    assert_eq!(of(PictureOf::Thing, "C1"), ["b1"]);
    assert_eq!(of(PictureOf::Complaint, "C1"), ["b7"]);
    assert_eq!(job.pictures["b1"].bytes, job.pictures["b7"].bytes);
    assert_eq!(job.pictures["b7"].facts.words, "C1");
    assert_eq!(of(PictureOf::Complaint, "C2"), ["b2"]);
    assert_eq!(of(PictureOf::Intake, "I1"), ["b3"]);
    for (tag, key) in [("F1", "b4"), ("", "b5"), ("dash-centre", "b6")] {
        assert_eq!(of(PictureOf::Thing, tag), [key]);
    }
    assert_eq!(job.pictures.len(), 7);
}
