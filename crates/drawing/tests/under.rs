//! A sheet laid under another: what is drawn of it, which signs the sheet on top gets, and that nothing else changes.

use drawing::{
    Cut, DisplayList, Ink, Item, Layout, Look, Moving, Overlay, Owner, Palette, Shape, Sign, Stroke, Under,
    Which, draw, draw_cut, draw_key, svg,
};
use kurbo::{Point, Rect};
use model::{PartId, RunId, Sheet, SheetKind};
use ordered::OrderedSet;
use std::sync::Arc;
use testkit::random::Dice;

const JOB: &str = "sheet found\n\
    battery B1 70Ah @0,0\nfuse F1 strip61 200A @300,0\nload L1 @600,0\nground E1 @600,300\nload L2 @0,400\n\
    run W1 B1.+ F1.in 16mm2 2m RD\nrun W2 F1.out L1.+ 16mm2 1m RD\nrun W3 L1.- E1.stud 16mm2 1m BK\n\
    sheet plan\n\
    battery B1 70Ah @0,0\nfuse F1 strip61 60A @300,0\nground E1 @600,300\nload L9 @0,400\n\
    run W1 B1.+ F1.in 16mm2 0.3m RD\nrun W9 F1.out L9.+ 16mm2 1m RD\n";

struct Pair {
    above: Sheet,
    layout: Layout,
    under: Arc<Under>,
}

fn pair(text: &str, kind: SheetKind, on: SheetKind) -> Pair {
    let job = testkit::text::job(text);
    let sheet = |kind| job.sheets.get(&kind).cloned().unwrap_or_default();
    laid(sheet(kind), kind, sheet(on), on)
}

fn laid(beneath: Sheet, kind: SheetKind, above: Sheet, on: SheetKind) -> Pair {
    Pair {
        layout: Layout::of(&above),
        under: Arc::new(Under::of(kind, beneath, on, &above)),
        above,
    }
}

impl Pair {
    fn visible(&self) -> Rect {
        let all = [self.layout.bounds(), self.under.layout.bounds()];
        all.into_iter()
            .flatten()
            .reduce(|all, one| all.union(one))
            .unwrap_or_default()
            .inflate(60.0, 60.0)
    }
    fn look(&self, zoom: f64) -> Look {
        Look {
            zoom,
            under: Some(self.under.clone()),
            ..Look::default()
        }
    }
    fn drawn(&self, look: &Look) -> DisplayList {
        draw(&self.above, &self.layout, None, look, self.visible())
    }
    fn part(&self, tag: &str) -> PartId {
        let found = self
            .above
            .part_by_tag(tag)
            .or_else(|| self.under.sheet.part_by_tag(tag));
        found.map(|(id, _)| id).unwrap_or_else(|| panic!("no {tag}"))
    }
    fn run(&self, tag: &str) -> RunId {
        let found = self
            .above
            .run_by_tag(tag)
            .or_else(|| self.under.sheet.run_by_tag(tag));
        found.map(|(id, _)| id).unwrap_or_else(|| panic!("no {tag}"))
    }
}

fn is_beneath(owner: Owner) -> bool {
    matches!(owner, Owner::UnderPart(_) | Owner::UnderRun(_))
}

fn stroke(item: &Item) -> Option<Stroke> {
    match item.shape {
        Shape::Path { stroke, .. } => stroke,
        Shape::Text { .. } => None,
    }
}

/// What a comparison adds to a picture: ghosts, and everything in the inks that are kept for it (with the paper that parts
/// crosses from what they cross).
fn is_added(item: &Item) -> bool {
    let marks = |ink| matches!(ink, Ink::Wash | Ink::WashEdge);
    is_beneath(item.owner) || stroke(item).is_some_and(|stroke| marks(stroke.ink))
}

#[test]
fn ghosts_are_what_is_on_the_sheet_beneath_alone_and_nothing_else() {
    let pair = pair(JOB, SheetKind::Found, SheetKind::Plan);
    for zoom in [0.1, 0.3, 0.6, 1.0, 2.0] {
        let list = pair.drawn(&pair.look(zoom));
        let ghosts: OrderedSet<Owner> = list
            .items
            .iter()
            .map(|item| item.owner)
            .filter(|o| is_beneath(*o))
            .collect();
        let wanted = OrderedSet::from([
            Owner::UnderPart(pair.part("L1")),
            Owner::UnderPart(pair.part("L2")),
            Owner::UnderRun(pair.run("W2")),
            Owner::UnderRun(pair.run("W3")),
        ]);
        assert_eq!(ghosts, wanted, "at zoom {zoom}");
        // Their lines are dashed and faint, and none of their numbers is written.
        for item in list.items.iter().filter(|item| is_beneath(item.owner)) {
            if let Shape::Text { text, .. } = &item.shape {
                assert!(
                    ["L1", "L2", "W2", "W3", "P", "I"].contains(&text.as_str()),
                    "`{text}` at zoom {zoom}"
                );
            }
        }
        let outline = |id| {
            list.items
                .iter()
                .find(|item| item.owner == Owner::UnderPart(id))
                .and_then(stroke)
                .unwrap_or_else(|| panic!("no outline at zoom {zoom}"))
        };
        let ghost = outline(pair.part("L1"));
        assert!(ghost.dash.is_some() && ghost.ink == Ink::Faint, "{ghost:?}");
    }
}

#[test]
fn nothing_else_of_the_picture_changes() {
    let pair = pair(JOB, SheetKind::Found, SheetKind::Plan);
    for overlay in [Overlay::None, Overlay::Protection] {
        for zoom in [0.2, 0.6, 1.0] {
            let bare = Look {
                zoom,
                overlay,
                ..Look::default()
            };
            let with = Look {
                overlay,
                ..pair.look(zoom)
            };
            let rest: Vec<Item> = pair
                .drawn(&with)
                .items
                .into_iter()
                .filter(|item| !is_added(item))
                .collect();
            assert_eq!(rest, pair.drawn(&bare).items, "at zoom {zoom}");
        }
    }
    // A sheet laid under its like changes nothing at all.
    let same = laid(
        pair.above.clone(),
        SheetKind::Found,
        pair.above.clone(),
        SheetKind::Plan,
    );
    assert_eq!(same.drawn(&same.look(1.0)), same.drawn(&Look::default()));
}

/// What is drawn for a thing besides what is drawn without a sheet under it.
fn sign_of(pair: &Pair, owner: Owner) -> Vec<Item> {
    let list = pair.drawn(&pair.look(1.0));
    list.items
        .into_iter()
        .filter(|item| item.owner == owner && is_added(item))
        .collect()
}

#[test]
fn new_changed_and_kept_are_told_apart_by_shape_alone() {
    let pair = pair(JOB, SheetKind::Found, SheetKind::Plan);
    let area = |items: &[Item]| {
        items
            .iter()
            .map(|item| item.bounds)
            .reduce(|all, one| all.union(one))
    };
    let outline = |id| pair.layout.part(id).map(|part| part.outline).unwrap_or_default();
    // Kept: nothing. New: one closed line around it. Changed: pieces at its corners.
    let closes = |items: &[Item]| {
        items.iter().all(|item| match &item.shape {
            Shape::Path { path, .. } => path.elements().last() == Some(&kurbo::PathEl::ClosePath),
            Shape::Text { .. } => false,
        })
    };
    assert_eq!(sign_of(&pair, Owner::Part(pair.part("B1"))), vec![]);
    let (new, changed) = (
        sign_of(&pair, Owner::Part(pair.part("L9"))),
        sign_of(&pair, Owner::Part(pair.part("F1"))),
    );
    assert!(new.len() == 2 && closes(&new), "{new:?}");
    assert!(changed.len() == 2 && !closes(&changed), "{changed:?}");
    for (tag, items) in [("L9", &new), ("F1", &changed)] {
        let (area, outline) = (area(items).unwrap_or_default(), outline(pair.part(tag)));
        assert!(area.union(outline) == area, "{tag}: around it");
        let most = outline.inflate(8.0, 8.0);
        assert!(
            most.union(area) == most,
            "{tag}: within the box that is painted anew with it"
        );
    }
    let dashes = |tag: &str| -> Vec<bool> {
        let items = sign_of(&pair, Owner::Run(pair.run(tag)));
        items
            .iter()
            .filter_map(stroke)
            .map(|stroke| stroke.dash.is_some())
            .collect()
    };
    assert_eq!(dashes("W9"), [false, false], "new: whole");
    assert_eq!(dashes("W1"), [true, true], "changed: in pieces");
}

#[test]
fn of_the_later_sheet_beneath_what_goes_is_struck_and_what_comes_is_a_ghost() {
    let pair = pair(JOB, SheetKind::Plan, SheetKind::Found);
    assert_eq!(pair.under.part(pair.part("L1")), Some(Sign::Goes));
    assert_eq!(pair.under.part(pair.part("L9")), Some(Sign::Comes));
    assert_eq!(pair.under.run(pair.run("W1")), Some(Sign::Changed));
    assert_eq!(
        pair.under.words(),
        "Plan under Found: 2 kept, 2 changed, 2 new, 4 removed"
    );
    let struck = sign_of(&pair, Owner::Part(pair.part("L1")));
    let outline = pair
        .layout
        .part(pair.part("L1"))
        .map(|part| part.outline)
        .unwrap_or_default();
    let strike = |items: &[Item]| {
        items.iter().any(|item| match &item.shape {
            Shape::Path { path, .. } => path.control_box() == outline,
            Shape::Text { .. } => false,
        })
    };
    assert!(strike(&struck), "{struck:?}");
    assert!(
        !sign_of(&pair, Owner::Run(pair.run("W2"))).is_empty(),
        "crosses on the run"
    );
    let list = pair.drawn(&pair.look(1.0));
    let comes = list
        .items
        .iter()
        .filter(|item| item.owner == Owner::UnderPart(pair.part("L9")));
    assert!(
        comes.filter_map(stroke).all(|stroke| stroke.ink != Ink::WashEdge),
        "not struck"
    );
}

#[test]
fn what_lies_exactly_under_a_part_shows_its_tag_above_it() {
    // L2 stood where L9 stands now.
    let pair = pair(JOB, SheetKind::Found, SheetKind::Plan);
    let cover = pair
        .layout
        .part(pair.part("L9"))
        .map(|part| part.outline)
        .unwrap_or_default();
    let hidden = pair.under.layout.part(pair.part("L2")).map(|part| part.outline);
    assert_eq!(hidden, Some(cover), "the case at hand");
    for zoom in [0.3, 0.5, 1.0, 2.0] {
        let list = pair.drawn(&pair.look(zoom));
        let last_of_cover = list
            .items
            .iter()
            .rposition(|item| item.owner == Owner::Part(pair.part("L9")));
        let tab = list.items.iter().position(|item| {
            item.owner == Owner::UnderPart(pair.part("L2"))
                && matches!(&item.shape, Shape::Text { text, .. } if text == "L2")
                && !item.bounds.overlaps(cover)
        });
        assert!(tab > last_of_cover, "at zoom {zoom}: {tab:?}, {last_of_cover:?}");
    }
    // Without letters the tab itself is still there.
    let far = pair.drawn(&pair.look(0.15));
    let outside =
        |item: &&Item| item.owner == Owner::UnderPart(pair.part("L2")) && item.bounds.y0 < cover.y0 - 8.0;
    assert!(far.items.iter().filter(outside).count() > 0);
    // While the cover is carried it hides nothing: no tab, and the ghost has its own tag.
    let moving = Moving {
        parts: OrderedSet::from([pair.part("L9")]),
        runs: OrderedSet::from([pair.run("W9")]),
    };
    let cut = |which| Cut {
        visible: pair.visible(),
        areas: &[],
        moving: &moving,
        which,
    };
    let look = pair.look(1.0);
    let still = draw_cut(&pair.above, &pair.layout, None, &look, &cut(Which::Still));
    let tags: Vec<Rect> = still
        .items
        .iter()
        .filter(|item| matches!(&item.shape, Shape::Text { text, .. } if text == "L2"))
        .map(|item| item.bounds)
        .collect();
    assert!(
        tags.len() == 1 && tags.iter().all(|tag| tag.overlaps(cover)),
        "{tags:?}"
    );
    let moves = draw_cut(&pair.above, &pair.layout, None, &look, &cut(Which::Moving));
    assert!(
        moves.items.iter().all(|item| !is_beneath(item.owner)),
        "ghosts stay"
    );
}

/// A random sheet and the same after some work: parts gone, changed, moved over others.
fn worked_on(seed: u64) -> (Sheet, Sheet) {
    let before = testkit::random::random_system(seed, 50);
    let mut after = before.clone();
    let mut dice = Dice::new(seed);
    let ids: Vec<PartId> = before.parts.keys().copied().collect();
    let mut places: Vec<_> = before.parts.values().map(|part| part.at).collect();
    for id in ids {
        match dice.below(6) {
            0 => {
                after.parts.remove(&id);
                let gone: Vec<RunId> = before.runs_of(id).map(|(run, _)| run).collect();
                for run in gone {
                    after.runs.remove(&run);
                }
            }
            1 => {
                if let Some(part) = after.parts.get_mut(&id) {
                    part.label.push_str(" anew");
                }
            }
            2 => {
                let place = dice.below(places.len());
                if let Some(part) = after.parts.get_mut(&id) {
                    part.at = places.swap_remove(place);
                }
            }
            _ => {}
        }
    }
    (before, after)
}

#[test]
fn a_cut_by_areas_shows_what_the_whole_shows_there() {
    for seed in 0..6 {
        let (before, after) = worked_on(seed);
        let pair = laid(before, SheetKind::Found, after, SheetKind::Plan);
        for zoom in [0.2, 0.6, 1.0] {
            let look = pair.look(zoom);
            let whole = pair.drawn(&look);
            let mut dice = Dice::new(seed);
            for _ in 0..12 {
                let visible = pair.visible();
                let at = Point::new(
                    dice.between(visible.x0, visible.x1),
                    dice.between(visible.y0, visible.y1),
                );
                let areas = [Rect::from_center_size(
                    at,
                    (dice.between(2.0, 160.0), dice.between(2.0, 160.0)),
                )];
                let cut = Cut {
                    visible,
                    areas: &areas,
                    moving: &Moving::default(),
                    which: Which::All,
                };
                let part_of = draw_cut(&pair.above, &pair.layout, None, &look, &cut);
                // The box around a long run touches much that the run does not; only what is there for the comparison is
                // looked at here, the rest has a test of its own.
                let there =
                    |item: &&Item| is_added(item) && areas.iter().any(|area| area.overlaps(item.bounds));
                let mine: Vec<&Item> = part_of.items.iter().filter(there).collect();
                for item in whole.items.iter().filter(there) {
                    let bent = matches!(item.owner, Owner::Run(_) | Owner::UnderRun(_));
                    assert!(
                        bent || mine.contains(&item),
                        "seed {seed}, zoom {zoom}, {areas:?}: {item:?}"
                    );
                }
                assert!(
                    mine.iter().all(|item| whole.items.contains(item)),
                    "seed {seed}, zoom {zoom}"
                );
            }
        }
    }
}

#[test]
fn letters_of_ghosts_can_be_read_and_pictures_are_well_formed() {
    let (before, after) = worked_on(3);
    let pair = laid(before, SheetKind::Found, after, SheetKind::Plan);
    for zoom in [0.05, 0.2, 0.45, 0.5, 0.8, 1.5] {
        for item in pair.drawn(&pair.look(zoom)).items {
            if let Shape::Text { size, text, .. } = &item.shape {
                assert!(size * zoom >= 6.1, "`{text}` at zoom {zoom}");
            }
        }
    }
    let mut list = pair.drawn(&pair.look(1.0));
    let (key, area) = draw_key(&pair.under, Point::new(0.0, 0.0), 1.0);
    assert!(
        key.items
            .iter()
            .all(|item| area.union(item.bounds) == area || item.bounds.x0 >= area.x0 - 1.0)
    );
    list.items.extend(key.items);
    for palette in [Palette::light(), Palette::dark(), Palette::print()] {
        let picture = svg(&list, &palette, pair.visible());
        assert!(roxmltree::Document::parse(&picture).is_ok());
        assert!(!picture.contains("NaN"));
    }
}

#[test]
fn what_is_gone_ends_on_the_parts_that_stayed_wherever_they_were_moved() {
    // The fuse stayed and was moved, the load behind it is gone: its run comes from where the fuse is now.
    let moved = JOB.replace("strip61 60A @300,0", "strip61 60A @300,220 turn=90");
    assert_ne!(moved, JOB);
    let mut pair = pair(&moved, SheetKind::Found, SheetKind::Plan);
    let (fuse, run) = (pair.part("F1"), pair.run("W2"));
    let ends_on_fuse = |pair: &Pair| {
        let stud = pair
            .layout
            .stud(&model::TerminalRef::new(fuse, "out"))
            .expect("a stud");
        let way = pair.under.layout.run(run).expect("it is laid");
        way.points
            .first()
            .is_some_and(|first| (*first - stud).hypot() < 0.5)
    };
    assert!(ends_on_fuse(&pair));
    // And again after a further move.
    let mut above = pair.above.clone();
    above.parts.get_mut(&fuse).expect("it is there").at = Some(model::BoardPoint { x: 120, y: 500 });
    Arc::make_mut(&mut pair.under).compare_with(SheetKind::Plan, &above);
    pair.layout = Layout::of(&above);
    assert!(ends_on_fuse(&pair));
}
