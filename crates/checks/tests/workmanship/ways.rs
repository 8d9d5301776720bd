//! What a run comes through, and what lies beside it.

use crate::systems::{Book, all, run_mut, sheet, told, ways};
use body::Plan;
use checks::analyse;
use model::body::{OwnPassage, PassageKind};
use model::fact::Fact::Given;
use model::laying::Guard;

#[test]
fn a_guard_that_is_missing_or_not_known_is_told_where_it_is() {
    use PassageKind::{Gaiter, Grommet, Hole};
    let mut book = Book::default();
    for (title, sound) in all() {
        let before = told(&sound);
        for (id, tag, passages) in ways(&sound) {
            for (name, kind) in passages {
                let (check, through_metal) = match kind {
                    Some(Grommet | Hole) => ("bare-edge", true),
                    Some(Gaiter) => ("moving-joint", false),
                    _ => continue,
                };
                let mut bare = sound.clone();
                run_mut(&mut bare, id)
                    .laying
                    .guards
                    .0
                    .insert(name.clone(), Guard::Nothing);
                book.expect(
                    &title,
                    &format!("{tag} bare in {name}"),
                    &before,
                    &bare,
                    &[format!("{check} {tag}")],
                );
                let mut unknown = sound.clone();
                run_mut(&mut unknown, id).laying.guards.0.remove(&name);
                book.expect(
                    &title,
                    &format!("{tag} in {name}"),
                    &before,
                    &unknown,
                    &[format!("{check}? {tag}")],
                );
                let mut tube = sound.clone();
                run_mut(&mut tube, id)
                    .laying
                    .guards
                    .0
                    .insert(name.clone(), Guard::Tube);
                // The bulkhead's grommets, and a pick-up's below the cab, lead outside; holes within the body do not.
                let opens = name.starts_with("bulkhead-grommet") || name.starts_with("cab-grommet");
                let expected = match (through_metal, opens) {
                    (true, true) => vec![format!("water-way {tag}")],
                    (true, false) => vec![],
                    (false, _) => vec![format!("{check} {tag}")],
                };
                book.expect(
                    &title,
                    &format!("{tag} in a tube in {name}"),
                    &before,
                    &tube,
                    &expected,
                );
            }
        }
    }
    book.close(300);
}

#[test]
fn what_is_told_of_a_passage_touches_every_run_in_it_and_no_other() {
    let mut book = Book::default();
    for (title, sound) in all().into_iter().step_by(3) {
        let before = told(&sound);
        let ways = ways(&sound);
        let mut names: Vec<(String, Option<PassageKind>)> = Vec::new();
        for (_, _, passages) in &ways {
            names.extend(
                passages
                    .iter()
                    .filter(|it| !names.contains(it))
                    .cloned()
                    .collect::<Vec<_>>(),
            );
        }
        for (name, kind) in names {
            let through = ways
                .iter()
                .filter(|(_, _, passages)| passages.iter().any(|it| it.0 == name));
            let tags: Vec<String> = through.map(|(_, tag, _)| tag.clone()).collect();
            let tell = |how: fn(&mut OwnPassage)| {
                let mut changed = sound.clone();
                how(changed.settings.body.passages.entry(name.clone()).or_default());
                changed
            };
            let each = |check: &str| {
                tags.iter()
                    .map(|tag| format!("{check} {tag}"))
                    .collect::<Vec<_>>()
            };
            let airbag = tell(|it| it.airbag = Given(true));
            book.expect(
                &title,
                &format!("airbag in {name}"),
                &before,
                &airbag,
                &each("airbag-way"),
            );
            let guarded = matches!(
                kind,
                Some(PassageKind::Grommet | PassageKind::Hole | PassageKind::Gaiter)
            );
            // A grommet or gaiter bears no weight; where nothing was told, it is asked.
            let crush = tell(|it| it.crush = Given(true));
            let expected = each(if guarded { "crush" } else { "crush?" });
            book.expect(&title, &format!("crush in {name}"), &before, &crush, &expected);
            let sharp = tell(|it| it.sharp = Given(true));
            let expected = if guarded { Vec::new() } else { each("bare-edge?") };
            book.expect(
                &title,
                &format!("sharp edges in {name}"),
                &before,
                &sharp,
                &expected,
            );
            if kind != Some(PassageKind::Gaiter) {
                let moving = tell(|it| it.moving = Given(true));
                // A grommet is no gaiter.
                let expected = each(if guarded { "moving-joint" } else { "moving-joint?" });
                book.expect(&title, &format!("{name} moves"), &before, &moving, &expected);
            }
        }
    }
    book.close(200);
}

#[test]
fn signal_leads_belong_together_and_apart_from_feeds() {
    let mut seen = (0, 0);
    for (title, sound) in all() {
        let id = |tag: &str| sheet(&sound).run_by_tag(tag).expect("it is there").0;
        let [first, second] = [id("W9"), id("W10")];
        let plan = Plan::of(&sound.settings.body).expect("it has a form");
        let offered = body::propose(&plan, sheet(&sound), second);
        // On the second best way, which differs in more than a corner, it is away from its sibling.
        if let Some(other) = offered.get(1) {
            let mut apart = sound.clone();
            run_mut(&mut apart, second).route = other.route.clone();
            let found = told(&apart);
            let scattered = found.iter().any(|it| it.starts_with("signal-scattered A1"));
            let far = other
                .walk
                .places()
                .filter_map(|at| plan.places.get(at))
                .filter(|place| {
                    sheet(&sound).runs[&first]
                        .route
                        .iter()
                        .all(|name| *name != place.name)
                })
                .count();
            assert!(scattered || far == 0, "{title}: {found:?} on {:?}", other.route);
            seen.0 += usize::from(scattered);
        }
        // On the way of the amplifier's feed from where that comes into the cabin.
        let mut beside = sound.clone();
        run_mut(&mut beside, first).route = sheet(&sound).runs[&id("W2")].route.clone();
        let way = body::lay(sheet(&beside), &beside.settings).runs[&id("W2")]
            .wire
            .length;
        let found = told(&beside);
        let marked = found
            .iter()
            .any(|it| it.starts_with("signal-beside-feed") && it.contains("W9"));
        // All of the feed but its ends is shared: beyond a metre that is too much.
        let shared = way.value().expect("it has a way").0 - 0.3;
        assert_eq!(marked, shared > 1.0, "{title}: {shared} m, {found:?}");
        seen.1 += usize::from(marked);
    }
    assert!(seen.0 >= 6 && seen.1 >= 12, "{seen:?}");
}

#[test]
fn how_far_a_signal_lead_lies_beside_a_feed_is_worked_by_hand() {
    let check = checks::check_named("signal-beside-feed").expect("it is a check");
    let job = testkit::job(check.example);
    let analysis = analyse(sheet(&job), &job.settings);
    let finding = analysis
        .findings
        .iter()
        .find(|it| it.check == check.name)
        .expect("it fires");
    // Sill in front 1.38 m, sill behind 1.39 m, up the wheel arch 0.67 m, as worked by hand beside the forms of bodies.
    let measure = finding.measure.expect("it is measured");
    assert!((measure.value - 3.44).abs() < 1e-9, "{measure:?}");
    // A passage of its own beside the sill keeps it apart: both ends are the same, the way is another.
    let apart = check.example.replace(
        "body estate",
        "body estate\npassage beside-sill from=footwell-left to=side-left kind=carpet length=3.4m",
    );
    let apart = apart.replace(
        "A1.in1 0.5mm2 BK ends=plug/plug route=sill-front-left/sill-rear-left/arch-way-left",
        "A1.in1 0.5mm2 BK ends=plug/plug route=beside-sill",
    );
    let job = testkit::job(&apart);
    let found = told(&job);
    assert!(
        found.iter().any(|it| it.starts_with("signal-beside-feed W9")),
        "{found:?}"
    );
    assert!(
        !found.iter().any(|it| it.starts_with("signal-beside-feed W8")),
        "{found:?}"
    );
}

#[test]
fn a_passage_of_no_kind_is_asked_about() {
    let text = "body estate\npassage duct from=footwell-left to=side-left length=3m\n\
        amplifier A1 sections=\"1x 60W@4ohm min 4ohm\" place=footwell-left\n\
        speaker LS1 4ohm power=80W place=side-left\n\
        run W1 A1.out1+ LS1.+ 2.5mm2 WH route=duct support-spacing=0.4m\n\
        run W2 A1.out1- LS1.- 2.5mm2 WHBK route=duct support-spacing=0.4m guards=duct:sleeve";
    assert_eq!(told(&testkit::job(text)), ["bare-edge? W1"]);
    for (kind, expected) in [
        ("carpet", vec![]),
        ("hole", vec!["bare-edge? W1"]),
        ("carpet sharp", vec!["bare-edge? W1"]),
    ] {
        let known = text.replace("length=3m", &format!("length=3m kind={kind}"));
        assert_eq!(told(&testkit::job(&known)), expected, "{kind}");
    }
}
