//! The SVG painter: well-formed, escaped, the same list in every palette, and one small picture kept as it is.

use drawing::{
    Cut, DisplayList, Layout, Look, Moving, Owner, Palette, TitleBlock, TitleCell, Which, areas_of, draw,
    draw_cut, draw_paper, svg,
};
use expect_test::expect_file;
use kurbo::{Point, Rect};
use ordered::OrderedSet;

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

/// A picture is put into the page for the printer: nothing that a job says may be more than text in it.
#[test]
fn no_word_of_a_job_becomes_markup() {
    const HOSTILE: [&str; 5] = [
        "</text><img src=x onerror=alert(1)>",
        "</svg><script>alert(1)</script>",
        "<!-- \u{2028} ]]> <![CDATA[",
        "\" onload=\"alert(1)",
        "&lt;script&gt; 'x' &amp;",
    ];
    let mut sheet = lessons::WorkedJob::of("van")
        .and_then(|van| van.job().sheets.into_values().next())
        .unwrap_or_default();
    let mut words = HOSTILE.iter().cycle().map(|word| (*word).to_owned());
    let mut next = || words.next().unwrap_or_default();
    for part in sheet.parts.values_mut() {
        part.label = next();
        part.note = next();
    }
    for run in sheet.runs.values_mut() {
        run.label = next();
        run.note = next();
    }
    let layout = Layout::of(&sheet);
    let visible = layout.bounds().unwrap_or_default().inflate(60.0, 60.0);
    let study = circuit::study(&sheet, &model::Settings::default());
    let cells = (0..5)
        .map(|_| TitleCell {
            name: "Job".to_owned(),
            text: next(),
            share: 1,
        })
        .collect();
    let mut list = draw_paper(visible, 1.0, &TitleBlock { cells: vec![cells] });
    list.items
        .extend(draw(&sheet, &layout, Some(&study), &Look::default(), visible).items);
    let picture = svg(&list, &Palette::print(), visible);

    let read = roxmltree::Document::parse(&picture).unwrap_or_else(|error| panic!("{error}"));
    const ATTRIBUTES: &str = "viewBox width height font-family font-size font-weight stroke stroke-width stroke-linejoin stroke-dasharray \
                              x y d fill text-anchor paint-order transform";
    for node in read.descendants() {
        assert!(node.is_root() || node.is_element() || node.is_text(), "{node:?}");
        if node.is_element() {
            assert!(
                ["svg", "rect", "path", "text"].contains(&node.tag_name().name()),
                "{node:?}"
            );
        }
        for attribute in node.attributes() {
            assert!(
                ATTRIBUTES
                    .split_whitespace()
                    .any(|known| known == attribute.name()),
                "{node:?}"
            );
        }
    }
    let texts: Vec<&str> = read
        .descendants()
        .filter(|node| node.has_tag_name("text"))
        .filter_map(|node| node.text())
        .collect();
    for word in HOSTILE {
        // What has no room is cut short; each begins differently within these letters.
        let begins: String = word.chars().take(9).collect();
        assert!(
            texts.iter().any(|text| text.starts_with(&begins)),
            "{word} is written as it is: {texts:?}"
        );
    }
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
    let owners: ordered::OrderedSet<_> = near.items.iter().map(|item| item.owner).collect();
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

/// A random sheet with its layout.
fn random(parts: usize) -> (model::Sheet, Layout) {
    let sheet = testkit::random::random_system(5, parts);
    let layout = Layout::of(&sheet);
    (sheet, layout)
}

#[test]
fn what_stays_and_what_moves_make_up_the_picture() {
    let (sheet, layout) = random(40);
    let visible = layout.bounds().unwrap_or_default().inflate(50.0, 50.0);
    let part = *sheet.parts.keys().nth(4).unwrap_or_else(|| panic!("no part"));
    let moving = Moving {
        parts: OrderedSet::from([part]),
        runs: sheet.runs_of(part).map(|(id, _)| id).collect(),
    };
    assert!(!moving.runs.is_empty());
    let owners = |which| -> Vec<Owner> {
        let cut = Cut {
            visible,
            areas: &[],
            moving: &moving,
            which,
        };
        let list = draw_cut(&sheet, &layout, None, &Look::default(), &cut);
        let all: OrderedSet<Owner> = list.items.iter().map(|item| item.owner).collect();
        all.into_iter().collect()
    };
    let (still, moves) = (owners(Which::Still), owners(Which::Moving));
    let mut both: Vec<Owner> = still.iter().chain(&moves).copied().collect();
    both.sort_unstable();
    assert_eq!(both, owners(Which::All), "each once");
    let mut wanted: Vec<Owner> = moving.runs.iter().map(|id| Owner::Run(*id)).collect();
    wanted.push(Owner::Part(part));
    wanted.sort_unstable();
    assert_eq!(moves, wanted);
}

#[test]
fn a_cut_by_areas_has_all_that_touches_them_in_the_same_order() {
    let (sheet, layout) = random(60);
    let visible = layout.bounds().unwrap_or_default().inflate(50.0, 50.0);
    let look = Look::default();
    let whole = draw(&sheet, &layout, None, &look, visible);
    for (id, part) in layout.parts().step_by(7) {
        let areas = [
            part.outline.inflate(8.0, 8.0),
            Rect::from_center_size(visible.center(), (60.0, 300.0)),
        ];
        let touched = |item: &&drawing::Item| areas.iter().any(|area| area.overlaps(item.bounds));
        let cut = Cut {
            visible,
            areas: &areas,
            moving: &Moving::default(),
            which: Which::All,
        };
        let part_of = draw_cut(&sheet, &layout, None, &look, &cut);
        let of_cut: Vec<_> = part_of.items.iter().filter(touched).collect();
        // The box around a bent run may touch an area that none of its pieces touches.
        let near = |item: &&drawing::Item| {
            areas_of(&layout, item.owner)
                .iter()
                .any(|box_of| areas.iter().any(|area| area.overlaps(*box_of)))
        };
        let wanted: Vec<_> = whole.items.iter().filter(touched).filter(near).collect();
        let of_cut: Vec<_> = of_cut.into_iter().filter(near).collect();
        assert_eq!(of_cut, wanted, "around {id}");
    }
}

#[test]
fn letters_can_be_read_at_any_zoom_or_are_left_out() {
    let (sheet, layout) = random(60);
    let study = circuit::study(&sheet, &model::Settings::default());
    let visible = layout.bounds().unwrap_or_default().inflate(50.0, 50.0);
    for zoom in [0.05, 0.15, 0.3, 0.45, 0.5, 0.6, 0.7, 0.8, 1.0, 2.0] {
        for overlay in [
            drawing::Overlay::None,
            drawing::Overlay::Current,
            drawing::Overlay::Voltage,
        ] {
            let look = Look {
                zoom,
                overlay,
                ..Look::default()
            };
            let list = draw(&sheet, &layout, Some(&study), &look, visible);
            for item in &list.items {
                if let drawing::Shape::Text { text, size, .. } = &item.shape {
                    // About 2 mm on a desk's screen.
                    assert!(
                        size * zoom >= 6.1,
                        "`{text}` has {} px at zoom {zoom}",
                        size * zoom
                    );
                }
            }
        }
    }
}

#[test]
fn marks_do_not_cover_one_another() {
    let (sheet, layout) = random(80);
    let mut marks = Vec::new();
    for (number, id) in sheet.parts.keys().chain(sheet.parts.keys()).enumerate() {
        marks.push(drawing::Mark {
            finding: number as u32,
            shape: drawing::MarkShape::Octagon,
            parts: vec![*id],
            runs: vec![],
            spots: Vec::new(),
            label: (number + 1).to_string(),
        });
    }
    for zoom in [0.1, 0.2, 0.4, 0.6, 1.0] {
        let look = Look {
            zoom,
            marks: marks.clone(),
            ..Look::default()
        };
        let spots: Vec<Point> = marks
            .iter()
            .map(|mark| drawing::mark_spot(&layout, &look, mark.finding).unwrap_or_else(|| panic!("no spot")))
            .collect();
        // 9 pixels in radius, down to zoom 0.25.
        let apart = 1.8 * 9.0 / f64::max(zoom, 0.25);
        for (n, a) in spots.iter().enumerate() {
            for b in spots.iter().skip(n + 1) {
                assert!(a == b || a.distance(*b) >= apart, "{a} and {b} at zoom {zoom}");
            }
            // A mark that stands for others is found where it stands.
            assert!(drawing::mark_at(&layout, &look, *a, 0.0).is_some());
        }
    }
}
