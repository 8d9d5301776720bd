//! What is written on the board can be read under every tracing paper: on all sheets of all worked jobs, with the marks of
//! their findings, seen whole on a laptop and on a tablet, nothing that is written lies on anything else, and no number of an
//! overlay is lost.

use drawing::{DisplayList, Overlay, Owner, Shape};
use editor::{Action, Editor, Margins};
use kurbo::Rect;
use model::RunId;

/// Windows in pixels, with what frame, notes and tools take of them.
const WINDOWS: [(&str, f64, f64, Margins); 2] = [
    (
        "laptop",
        1440.0,
        900.0,
        Margins {
            left: 40.0,
            top: 58.0,
            right: 352.0,
            bottom: 66.0,
        },
    ),
    (
        "tablet",
        1024.0,
        768.0,
        Margins {
            left: 40.0,
            top: 58.0,
            right: 292.0,
            bottom: 117.0,
        },
    ),
];

const OVERLAYS: [Option<Action>; 7] = [
    None,
    Some(Action::OverlayCurrent),
    Some(Action::OverlayVoltage),
    Some(Action::OverlayHeat),
    Some(Action::OverlayProtection),
    Some(Action::OverlaySignal),
    Some(Action::OverlaySpeakers),
];

/// What is written: whose it is, the words, the box of the letters.
fn texts(list: &DisplayList) -> Vec<(Owner, &str, Rect)> {
    let of = |item: &'_ drawing::Item| item.written().map(|(_, area)| (item.owner, area));
    list.items
        .iter()
        .filter_map(|item| {
            let (owner, area) = of(item)?;
            let (text, _) = item.written()?;
            Some((owner, text, area))
        })
        .collect()
}

/// How far two boxes lie over one another, in the lesser of both directions.
fn depth(a: Rect, b: Rect) -> f64 {
    let both = a.intersect(b);
    both.width().min(both.height()).max(0.0)
}

/// Looks at every worked job's every sheet in every window under every overlay.
fn everywhere(mut look: impl FnMut(&str, &Editor, &DisplayList)) {
    for worked in lessons::WORKED_JOBS {
        let job = worked.job();
        for kind in job.sheets.keys().copied() {
            let mut editor = Editor::new(job.clone());
            let _ = editor.open_sheet(kind);
            let _ = editor.analyse();
            for (window, width, height, margins) in WINDOWS {
                editor.resize(width, height, margins);
                for action in OVERLAYS {
                    if let Some(action) = action {
                        let _ = editor.perform(action);
                    }
                    let _ = editor.perform(Action::Fit);
                    let called = format!("{} {} {window} {:?}", worked.key, kind.word(), editor.overlay());
                    look(&called, &editor, &editor.picture());
                    if let Some(action) = action {
                        let _ = editor.perform(action);
                    }
                    assert_eq!(editor.overlay(), Overlay::None, "the same key takes it away");
                }
            }
        }
    }
}

#[test]
fn nothing_written_lies_on_anything_else() {
    let (mut seen, mut faults) = (0, Vec::new());
    everywhere(|called, editor, list| {
        let written = texts(list);
        seen += written.len();
        // The shapes of marks.
        let marks: Vec<(Owner, Rect)> = list
            .items
            .iter()
            .filter(|item| {
                matches!(item.owner, Owner::Finding(_)) && matches!(item.shape, Shape::Path { .. })
            })
            .map(|item| (item.owner, item.bounds.inset(-1.0)))
            .collect();
        for (place, (owner, text, area)) in written.iter().enumerate() {
            for (other, there, box_there) in written.iter().skip(place + 1) {
                // Lines of one part lie close: the boxes leave room for tails that capitals and figures have not.
                let least = if owner == other {
                    2.0 / editor.camera().zoom
                } else {
                    0.5
                };
                if depth(*area, *box_there) > least {
                    faults.push(format!("{called}: `{text}` on `{there}`"));
                }
            }
            for (mark, shape) in &marks {
                if mark != owner && depth(*area, *shape) > 0.5 {
                    faults.push(format!("{called}: `{text}` on the mark {mark:?}"));
                }
            }
            if let Owner::Run(id) = owner {
                for (part, drawn) in editor.layout().parts() {
                    if depth(*area, drawn.outline) > 0.0 {
                        faults.push(format!(
                            "{called}: `{text}` on {}",
                            editor.sheet().parts[&part].tag
                        ));
                    }
                }
                let covered: Vec<&str> = editor
                    .layout()
                    .runs()
                    .filter(|(_, way)| {
                        way.pieces()
                            .any(|(a, b)| depth(Rect::from_points(a, b).inflate(0.5, 0.5), *area) > 0.0)
                    })
                    .map(|(other, _)| editor.sheet().runs[&other].tag.as_str())
                    .collect();
                if covered.len() > 1 {
                    faults.push(format!(
                        "{called}: `{text}` of {} on {covered:?}",
                        editor.sheet().runs[id].tag
                    ));
                }
            }
        }
    });
    assert!(seen > 4000, "{seen}");
    assert!(
        faults.is_empty(),
        "{} faults:\n{}",
        faults.len(),
        faults.join("\n")
    );
}

#[test]
fn no_number_is_lost() {
    let (mut wanted, mut lost) = (0, Vec::new());
    everywhere(|called, editor, list| {
        let written = texts(list);
        let study = &editor.analysis().study;
        let has = |runs: &[RunId], is_it: &dyn Fn(&str) -> bool| {
            written
                .iter()
                .any(|(owner, text, _)| matches!(owner, Owner::Run(id) if runs.contains(id)) && is_it(text))
        };
        let is_number = |text: &str| text.chars().any(|letter| letter.is_ascii_digit()) && text.contains(' ');
        match editor.overlay() {
            Overlay::Current | Overlay::Heat => {
                for (id, flow) in &study.runs {
                    let is_told = if editor.overlay() == Overlay::Current {
                        flow.current.mean.0.abs() > 0.0005
                    } else {
                        // What is hardly warmed by its current is as warm as what is around it.
                        let hardly = |bears: model::quantity::Amps| flow.current.rms.0.abs() <= 0.1 * bears.0;
                        flow.purpose != circuit::Purpose::Nothing && !flow.allowable.is_some_and(hardly)
                    };
                    if is_told {
                        wanted += 1;
                        if !has(&[*id], &is_number) {
                            lost.push(format!("{called}: of {}", editor.sheet().runs[id].tag));
                        }
                    }
                }
            }
            Overlay::Speakers => {
                for load in study.channels.iter().filter(|load| !load.runs.is_empty()) {
                    wanted += 1;
                    let ohms = load.nominal.is_some();
                    if !has(&load.runs.iter().copied().collect::<Vec<_>>(), &|text| {
                        !ohms || text.ends_with('Ω')
                    }) {
                        let tag = &editor.sheet().parts[&load.part].tag;
                        lost.push(format!("{called}: of {tag} channel {}", load.channel));
                    }
                }
            }
            Overlay::Protection => {
                for device in study.devices.iter().filter(|device| !device.guards.is_empty()) {
                    let tag = &editor.sheet().parts[&device.device.part].tag;
                    let guards: Vec<RunId> = device.guards.iter().copied().collect();
                    let first = study
                        .devices
                        .iter()
                        .find(|other| other.guards.contains(&guards[0]));
                    if first.is_some_and(|first| first.device == device.device) {
                        wanted += 1;
                        if !has(&guards, &|text| text.starts_with(tag.as_str())) {
                            lost.push(format!("{called}: of {tag}"));
                        }
                    }
                }
            }
            Overlay::Voltage => {
                // Studs that are joined by a run without a drop say the same; each number stands somewhere.
                for (at, volts) in &study.voltages {
                    let text = drawing::numbers::volts(editor.words(), volts.0);
                    wanted += 1;
                    if !written.iter().any(|(_, there, _)| *there == text) {
                        lost.push(format!("{called}: {text} of {at:?}"));
                    }
                }
            }
            Overlay::None | Overlay::Signal => {}
        }
    });
    assert!(wanted > 500, "{wanted}");
    assert!(
        lost.is_empty(),
        "{} of {wanted} lost:\n{}",
        lost.len(),
        lost.join("\n")
    );
}
