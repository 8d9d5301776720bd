//! The SVG painter: well-formed, escaped, the same list in every palette, and one small picture kept as it is.

use drawing::{DisplayList, Layout, Look, Palette, TitleBlock, TitleCell, draw, draw_paper, svg};
use expect_test::expect_file;
use kurbo::Rect;

fn picture(text: &str, palette: &Palette) -> String {
    let sheet = testkit::text::sheet(text);
    let layout = Layout::of(&sheet);
    let visible = layout.bounds().unwrap_or_default().inflate(60.0, 60.0);
    let study = circuit::study(&sheet, &model::Settings::default());
    let title = TitleBlock {
        cells: vec![vec![TitleCell {
            name: "Job".to_owned(),
            text: "<Small & \"plain\">".to_owned(),
            share: 1,
        }]],
    };
    let mut list = draw_paper(visible, 1.0, &title);
    list.items
        .extend(draw(&sheet, &layout, Some(&study), &Look::default(), visible).items);
    svg(&list, palette, visible)
}

#[test]
fn pictures_of_all_sound_systems_are_well_formed() {
    for (name, text) in testkit::sound_systems::sound_systems() {
        for palette in [Palette::light(), Palette::dark(), Palette::print()] {
            let picture = picture(&text, &palette);
            let read = roxmltree::Document::parse(&picture).unwrap_or_else(|error| panic!("{name}: {error}"));
            assert_eq!(read.root_element().tag_name().name(), "svg");
            assert!(
                read.descendants()
                    .filter(|node| node.has_tag_name("path"))
                    .count()
                    > 5,
                "{name}"
            );
            for number in ["NaN", "inf"] {
                assert!(!picture.contains(number), "{name}: {number}");
            }
        }
    }
}

#[test]
fn text_is_escaped() {
    let mut sheet = testkit::text::sheet("battery B1 @0,0\n");
    for part in sheet.parts.values_mut() {
        part.label = "<a> & \"b\" \u{1}".to_owned();
    }
    let layout = Layout::of(&sheet);
    let list = draw(
        &sheet,
        &layout,
        None,
        &Look::default(),
        Rect::new(-500.0, -500.0, 500.0, 500.0),
    );
    let picture = svg(&list, &Palette::light(), Rect::new(-500.0, -500.0, 500.0, 500.0));
    let read = roxmltree::Document::parse(&picture).unwrap_or_else(|error| panic!("{error}"));
    let found = read
        .descendants()
        .any(|node| node.text().is_some_and(|text| text == "<a> & \"b\" \u{fffd}"));
    assert!(found, "{picture}");
}

#[test]
fn a_small_picture_stays_as_it_is() {
    let text = "battery B1 \"Battery\" 70Ah @0,0\n\
                fuse F1 \"Main fuse\" 60A @240,0\n\
                load L1 \"Lamp\" 60W @480,60\n\
                ground E1 @510,220\n\
                run W1 B1.+ F1.in 16mm2 0.3m RD\n\
                run W2 F1.out L1.+ 16mm2 4m RDBK\n\
                run W3 L1.- E1.stud 16mm2 0.4m BK\n";
    let sheet = testkit::text::sheet(text);
    let layout = Layout::of(&sheet);
    let visible = Rect::new(-100.0, -80.0, 620.0, 320.0);
    let list: DisplayList = draw(&sheet, &layout, None, &Look::default(), visible);
    expect_file!["small.svg"].assert_eq(&svg(&list, &Palette::light(), visible));
}

#[test]
fn what_is_not_visible_is_not_drawn() {
    let sheet = testkit::text::sheet("battery B1 @0,0\nfuse F1 @5000,0\nrun W1 B1.+ F1.in 16mm2 5m RD\n");
    let layout = Layout::of(&sheet);
    let look = Look::default();
    let near = draw(
        &sheet,
        &layout,
        None,
        &look,
        Rect::new(-200.0, -200.0, 200.0, 200.0),
    );
    let owners: std::collections::BTreeSet<_> = near.items.iter().map(|item| item.owner).collect();
    assert_eq!(owners.len(), 2, "battery and run: {owners:?}");
    let far = draw(
        &sheet,
        &layout,
        None,
        &look,
        Rect::new(-200.0, 500.0, 200.0, 900.0),
    );
    assert_eq!(far.items, vec![]);
}

#[test]
fn detail_drops_away_in_order() {
    let sheet = testkit::text::sheet("battery B1 @0,0\nfuse F1 @300,0\nrun W1 B1.+ F1.in 16mm2 5m RD\n");
    let layout = Layout::of(&sheet);
    let mut before = usize::MAX;
    for zoom in [1.0, 0.6, 0.4, 0.1] {
        let look = Look {
            zoom,
            ..Look::default()
        };
        let list = draw(
            &sheet,
            &layout,
            None,
            &look,
            Rect::new(-500.0, -500.0, 900.0, 500.0),
        );
        assert!(list.items.len() < before, "at zoom {zoom}");
        before = list.items.len();
    }
    assert!(before >= 3, "outlines and the run remain");
}
