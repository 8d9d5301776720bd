//! A lesson of one's own: made of the sheets of a job, its faults chosen and told, what it still lacks, and what of the job it
//! leaves behind.

use lessons::{
    BuiltIn, Fault, LESSONS, Lack, Lesson, Thing, Verdict, Version, fault_name, faults, read, read_draft,
    tag, write,
};
use model::SheetKind;

fn all_faults(lesson: &Lesson) -> Vec<Fault> {
    faults(lesson, &lesson.analyse(Version::Bad))
}

/// A lesson of one's own from the worked job that several hands have altered.
fn own() -> Lesson {
    let job = lessons::WorkedJob::of("van")
        .map(lessons::WorkedJob::job)
        .unwrap_or_default();
    let mut lesson = Lesson::of_job(&job);
    lesson.story = vec!["It was handed over on Friday, and on Monday it would not start.".to_owned()];
    lesson
}

/// Nothing private goes into a lesson, since it is made to be given away and a note may tell the answer.
#[test]
fn a_lesson_of_one_sheet_has_a_bad_version_and_no_private_words() {
    let text = "job \"Blue van\"\nvehicle-info name=\"Blue van\" drawn-by=\"A. Fitter\" remark=\"late payer\"\nsheet plan\n\
                battery B1 agm note=\"from the old one\"\nfuse F1 60A\nrun W1 B1.+ F1.in 16mm2 note=\"too long\"\n\
                reading volts at=B1.+ against=B1.- 12.6V state=parked remark=\"cold\"\n";
    let job = testkit::text::job(text);
    assert_eq!(Lesson::sheets_of(&job), (SheetKind::Plan, None));
    let lesson = Lesson::of_job(&job);
    assert!(!lesson.has_good() && lesson.sheet(Version::Bad).parts.len() == 2);
    let written = write(&lesson);
    for word in ["Fitter", "late payer", "old one", "too long", "cold"] {
        assert!(!written.contains(word), "{word}\n{written}");
    }
    let mut both = job.clone();
    both.sheets.insert(SheetKind::Found, model::Sheet::default());
    assert_eq!(
        Lesson::sheets_of(&both),
        (SheetKind::Found, Some(SheetKind::Plan))
    );
    let mut lesson = lesson;
    lesson.take_sheets(&both, SheetKind::Plan, Some(SheetKind::Plan));
    assert!(lesson.has_good());
}

#[test]
fn what_a_lesson_lacks_is_told_until_it_lacks_nothing() {
    let empty = Lesson::default();
    assert_eq!(
        empty.lacks(&empty.analyse(Version::Bad)),
        [Lack::Title, Lack::Story, Lack::Drawing]
    );
    for built_in in LESSONS {
        let lesson = built_in.lesson();
        assert_eq!(
            lesson.lacks(&lesson.analyse(Version::Bad)),
            [],
            "{}",
            built_in.key
        );
    }
    let mut lesson = own();
    let bad = lesson.analyse(Version::Bad);
    assert_eq!(lesson.lacks(&bad), []);
    for fault in all_faults(&lesson) {
        lesson.ask_for(&fault, false);
    }
    assert_eq!(lesson.lacks(&bad), [Lack::Fault]);
    lesson.questions.push(lessons::Question::default());
    lesson.looks.push(lessons::Look::default());
    lesson.faults.push(lessons::ByHand {
        name: "loose-bolt".to_owned(),
        things: vec!["W999".to_owned()],
        says: String::new(),
    });
    let lacks = lesson.lacks(&bad);
    assert_eq!(
        lacks,
        [
            Lack::Fault,
            Lack::FaultThings("loose-bolt".to_owned()),
            Lack::FaultWords("loose-bolt".to_owned()),
            Lack::Look(1),
            Lack::Question(1),
            Lack::Answers(1),
        ]
    );
    for lack in lacks {
        let said = words::Words::english().say(&lack.saying());
        assert!(said.ends_with('.') && said.len() > 12, "{said}");
    }
    // Half-written it is kept and read again, but it is not a lesson yet.
    let text = write(&lesson);
    assert!(read(&text).is_err());
    assert_eq!(read_draft(&text).map(|again| write(&again)), Ok(text));
}

#[test]
fn an_instructor_chooses_which_findings_are_to_be_found() {
    let wanted = |lesson: &Lesson| all_faults(lesson).iter().filter(|it| it.wanted).count();
    let (mut taken_out, mut put_in) = (0, 0);
    // A wire that was left when something went, with nothing on it, is only untidy.
    let mut left_over = BuiltIn::of("ring-feed").expect("built in").lesson();
    let text = write(&left_over) + "  - run W90 loose@600,500 loose@700,500 2.5mm2 1m\n";
    left_over = read(&text).unwrap_or_else(|errors| panic!("{errors}"));
    for lesson in LESSONS.iter().map(BuiltIn::lesson).chain([own(), left_over]) {
        let before = wanted(&lesson);
        for fault in &all_faults(&lesson) {
            let mut other = lesson.clone();
            other.ask_for(fault, !fault.wanted);
            assert_eq!(read(&write(&other)).as_ref(), Ok(&other));
            let same = |it: &&Fault| it.reason == fault.reason && it.things.first() == fault.things.first();
            let after = all_faults(&other);
            let is_wanted = after.iter().find(same).map(|it| it.wanted);
            if fault.is_by_check() {
                assert_eq!(is_wanted, Some(!fault.wanted), "{} {}", lesson.key, fault.reason);
                other.ask_for(fault, fault.wanted);
                assert_eq!(wanted(&other), before, "{} {}", lesson.key, fault.reason);
            } else {
                assert_eq!(is_wanted, None);
            }
            *(if fault.wanted { &mut taken_out } else { &mut put_in }) += 1;
        }
    }
    assert!(taken_out > 30 && put_in > 0, "{taken_out} {put_in}");
    // What is not asked for counts neither for nor against.
    let mut lesson = own();
    let (first, before) = (all_faults(&lesson).remove(0), wanted(&lesson));
    lesson.ask_for(&first, false);
    let mark = lessons::Mark {
        thing: first.things[0],
        reason: first.reason.clone(),
    };
    let outcome = lessons::score(&lesson, std::slice::from_ref(&mark));
    assert_eq!(
        (outcome.accused.len(), outcome.verdict(&mark)),
        (0, Verdict::Unasked)
    );
    assert_eq!(outcome.missed.len(), before - 1);
}

#[test]
fn an_instructors_words_stand_with_the_fault() {
    let mut lesson = own();
    let fault = all_faults(&lesson).remove(0);
    lesson.explain(&fault, "Somebody was in a hurry.");
    let again = all_faults(&lesson).remove(0);
    assert_eq!(
        (again.added(), &again.finding),
        ("Somebody was in a hurry.", &fault.finding)
    );
    lesson.explain(&again, "Twice.");
    assert_eq!(
        (lesson.faults.len(), all_faults(&lesson)[0].added()),
        (1, "Twice.")
    );
    assert_eq!(read(&write(&lesson)).as_ref(), Ok(&lesson));
    lesson.explain(&again, "");
    assert!(all_faults(&lesson)[0].added().is_empty());
}

#[test]
fn a_fault_of_ones_own_is_one_more_to_be_found() {
    let mut lesson = own();
    let before = all_faults(&lesson).iter().filter(|it| it.wanted).count();
    let sheet = lesson.sheet(Version::Bad);
    let (id, run) = sheet.runs.iter().next().unwrap_or_else(|| panic!("no run"));
    let name = fault_name("  Behind the glove-box hinge!");
    assert_eq!(name, "behind-the-glove-box-hinge");
    assert_eq!(
        (fault_name("!?"), fault_name("Übergang ß")),
        (String::new(), "übergang-ß".to_owned())
    );
    assert!(fault_name(&"é".repeat(90)).len() <= 60);
    assert!(!lesson.add_fault(&name, &[Thing::Run(model::RunId(9999))], "x"));
    assert!(!lesson.add_fault("", &[Thing::Run(*id)], "x"));
    assert!(lesson.add_fault(&name, &[Thing::Run(*id)], "It is pinched."));
    let fault = all_faults(&lesson)
        .into_iter()
        .find(|it| it.reason == name)
        .unwrap_or_else(|| panic!("not there"));
    assert!(fault.wanted && !fault.is_by_check() && tag(&sheet, fault.things[0]) == run.tag);
    assert!(lessons::reasons(&lesson).iter().any(|it| it.name == name));
    assert_eq!(
        all_faults(&lesson).iter().filter(|it| it.wanted).count(),
        before + 1
    );
    lesson.explain(&fault, "It is cut.");
    let fault = all_faults(&lesson).into_iter().find(|it| it.reason == name);
    assert!(fault.as_ref().is_some_and(|it| it.says == "It is cut."));
    if let Some(fault) = fault {
        lesson.ask_for(&fault, false);
    }
    assert!(lesson.faults.is_empty());
    // Under the name of a check, on a thing that the check does not find, it is a fault for itself.
    let check = all_faults(&lesson).remove(0);
    let elsewhere = sheet
        .parts
        .keys()
        .map(|id| Thing::Part(*id))
        .find(|it| !check.things.contains(it))
        .unwrap_or_else(|| panic!("no other part"));
    assert!(lesson.add_fault(&check.reason, &[elsewhere], "Here too."));
    let again = all_faults(&lesson);
    assert!(
        again
            .iter()
            .any(|it| it.things == [elsewhere] && it.says == "Here too." && !it.is_by_check())
    );
}

/// Whatever is begun and not finished is kept: it reads back as it was written, so that closing the page loses nothing.
#[test]
fn what_is_begun_and_not_finished_is_kept() {
    let mut lesson = own();
    lesson.title = String::new();
    for kind in lessons::BreakKind::ALL {
        let things = ["B1.+".to_owned()];
        for count in 0..kind.wants().min(2) {
            lesson.breaks.push(lessons::Break {
                kind,
                things: things.iter().take(count).cloned().collect(),
                ..lessons::Break::default()
            });
        }
    }
    lesson.looks.push(lessons::Look::default());
    lesson.questions.push(lessons::Question {
        answers: vec![lessons::Answer::default(); 3],
        ..lessons::Question::default()
    });
    let text = write(&lesson);
    let again = read_draft(&text).unwrap_or_else(|errors| panic!("{errors}"));
    assert_eq!(again, lesson);
    // Given to a class it has to be whole.
    assert!(read(&text).is_err());
}

#[test]
fn a_fault_may_have_several_places_and_each_of_them_finds_it() {
    let mut lesson = own();
    let first = all_faults(&lesson).remove(0);
    let sheet = lesson.sheet(Version::Bad);
    let free: Vec<Thing> = sheet
        .runs
        .keys()
        .map(|id| Thing::Run(*id))
        .filter(|thing| {
            all_faults(&lesson)
                .iter()
                .all(|fault| !fault.things.contains(thing))
        })
        .take(2)
        .collect();
    let [one, other] = free[..] else {
        panic!("two runs without a fault")
    };
    let [one_tag, other_tag] = [one, other].map(|thing| tag(&sheet, thing).to_owned());
    assert!(lesson.add_fault("of-ones-own", &[one], "It rubs."));
    let own_fault = |lesson: &Lesson| {
        let all = all_faults(lesson);
        all.into_iter()
            .find(|it| it.reason == "of-ones-own")
            .expect("it is there")
    };
    assert!(
        lesson.added_to_fault(&own_fault(&lesson)).is_empty(),
        "the last place stays"
    );
    lesson.add_to_fault(&own_fault(&lesson), other);
    lesson.add_to_fault(&own_fault(&lesson), other);
    assert_eq!(own_fault(&lesson).things, [one, other]);
    // A finding gets a place more, and keeps its own.
    lesson.add_to_fault(&first, other);
    let found = all_faults(&lesson).remove(0);
    assert_eq!(found.finding, first.finding);
    assert!(found.things.starts_with(&first.things) && found.things.contains(&other));
    assert_eq!(lesson.added_to_fault(&found), std::slice::from_ref(&other_tag));
    for (thing, reason) in [
        (one, "of-ones-own"),
        (other, "of-ones-own"),
        (other, &*first.reason),
    ] {
        let mark = lessons::Mark {
            thing,
            reason: reason.to_owned(),
        };
        let outcome = lessons::score(&lesson, std::slice::from_ref(&mark));
        assert_eq!(outcome.verdict(&mark), Verdict::Right, "{reason}");
    }
    assert_eq!(read(&write(&lesson)).as_ref(), Ok(&lesson));
    // Taken out again.
    lesson.take_from_fault(&found, &other_tag);
    assert_eq!(all_faults(&lesson).remove(0).things, first.things);
    lesson.take_from_fault(&own_fault(&lesson), &one_tag);
    assert_eq!(own_fault(&lesson).things, [other]);
    lesson.take_from_fault(&own_fault(&lesson), &other_tag);
    assert_eq!(
        own_fault(&lesson).things,
        [other],
        "a fault without a place is none"
    );
}

#[test]
fn what_was_written_stays_when_other_sheets_are_taken() {
    let mut job = lessons::WorkedJob::of("van").expect("a worked job").job();
    let mut built = job.sheet(SheetKind::Found).cloned().expect("a sheet");
    let (gone, _) = built
        .parts
        .iter()
        .next()
        .map(|(id, part)| (*id, part.tag.clone()))
        .expect("a part");
    built.parts.remove(&gone);
    built.runs.retain(|_, run| {
        run.ends()
            .into_iter()
            .all(|end| end.terminal().is_none_or(|at| at.part != gone))
    });
    job.sheets.insert(SheetKind::Built, built);
    let mut lesson = Lesson::of_job(&job);
    assert_eq!(
        Lesson::sheets_of(&job),
        (SheetKind::Found, Some(SheetKind::Built)),
        "in the order in which a job goes"
    );
    lesson.story = vec!["A story.".to_owned()];
    let wanted = all_faults(&lesson).len();
    lesson.take_sheets(&job, SheetKind::Built, Some(SheetKind::Found));
    assert!(lesson.has_good() && lesson.story == ["A story."]);
    assert!(!lesson.sheet(Version::Bad).parts.contains_key(&gone));
    assert!(lesson.sheet(Version::Good).parts.contains_key(&gone));
    lesson.take_sheets(&job, SheetKind::Found, None);
    assert!(!lesson.has_good() && all_faults(&lesson).len() == wanted);
}

/// What is private in a job, what was complained of, offered and photographed has no place in a lesson; what a drawing is judged
/// by, and how the equipment is set, belongs to it.
#[test]
fn a_lesson_keeps_what_the_drawing_says_and_nothing_of_the_customer() {
    let text = "job \"A van\"\nvehicle-info name=\"Somebody's\" remark=\"pays late\"\nbody form=van\nplace \"under the bench\"\n\
                complaint \"it hums\"\noffer \"new cable\"\nsheet found\nbattery B1 70Ah\nfuse F1 60A\n\
                amplifier A1 sections=\"2x 100W@4ohm\" line note=\"ask him\"\nrun W1 B1.+ F1.in 10mm2 0.3m copper\n\
                run W2 F1.out A1.+ 10mm2 4m copper\ntuning of=A1 channel=1 target-volts=17.3V high-pass=80Hz\n";
    let (job, errors) = model::text::parse_lenient(text);
    let lesson = Lesson::of_job(&job);
    assert_eq!(lesson.job.settings, job.settings, "{errors}");
    let tunings = |sheet: &model::Sheet| sheet.tunings.len();
    assert_eq!(
        tunings(&lesson.sheet(Version::Bad)),
        job.sheets.values().map(tunings).sum::<usize>()
    );
    assert_eq!(lesson.job.thread, model::Job::default().thread);
    let written = write(&lesson);
    for word in ["Somebody", "late", "hums", "new cable", "ask him"] {
        assert!(!written.contains(word), "{word}:\n{written}");
    }
    assert_eq!(read_draft(&written), Ok(lesson));
}
