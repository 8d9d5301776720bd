//! Sheets side by side: framed alike, so that what they share stands at the same place and at the same scale, and
//! pointed at as one.

use crate::editor::Editor;
use crate::input::Key;
use crate::selection::Thing;
use crate::walk::{towards, worth};
use drawing::Lit;
use kurbo::{Point, Rect};

/// The box around all that these sheets hold.
#[must_use]
pub fn frame_of(sheets: &[&Editor]) -> Option<Rect> {
    sheets
        .iter()
        .filter_map(|sheet| sheet.layout().bounds())
        .reduce(|a, b| a.union(b))
}

/// The box around what is lit on any of them; nothing where nothing is.
#[must_use]
pub fn frame_of_lit(sheets: &[(&Editor, &Lit)]) -> Option<Rect> {
    let areas = sheets.iter().flat_map(|(sheet, lit)| {
        let parts = lit.parts.iter().filter_map(|id| sheet.layout().part(*id));
        let runs = lit.runs.iter().filter_map(|id| sheet.layout().run(*id));
        parts
            .map(|part| part.outline)
            .chain(runs.map(drawing::RunWay::bounds))
    });
    areas.reduce(|a, b| a.union(b))
}

/// The parts and runs of all of them with a point to point at, each once: what stands on several has the point that it
/// has on the first.
#[must_use]
pub fn spots(sheets: &[&Editor]) -> Vec<(Thing, Point)> {
    let mut all: Vec<(Thing, Point)> = Vec::new();
    for sheet in sheets {
        let parts = sheet.layout().parts();
        let parts = parts.map(|(id, part)| (Thing::Part(id), part.middle()));
        let runs = sheet.layout().runs();
        let runs = runs.map(|(id, way)| (Thing::Run(id), way.label_at));
        for spot in parts.chain(runs) {
            if !all.iter().any(|(thing, _)| *thing == spot.0) {
                all.push(spot);
            }
        }
    }
    all
}

/// The spot that an arrow key leads to from a point; the nearest one where there is no point yet.
#[must_use]
pub fn spot_towards(spots: &[(Thing, Point)], from: Option<Point>, key: Key) -> Option<&(Thing, Point)> {
    let along = towards(key)?;
    let Some(from) = from else {
        return spots
            .iter()
            .min_by(|a, b| (a.1.x + a.1.y).total_cmp(&(b.1.x + b.1.y)));
    };
    let ahead = spots
        .iter()
        .filter_map(|spot| Some((worth(from, spot.1, along)?, spot)));
    ahead.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, spot)| spot)
}

#[cfg(test)]
mod tests {
    use super::*;
    use lessons::{LESSONS, Version};

    fn both(lesson: &lessons::Lesson) -> [Editor; 2] {
        Version::BOTH.map(|version| Editor::looking(lesson.version(version)))
    }

    #[test]
    fn both_versions_of_every_lesson_lie_in_one_frame_and_share_their_places() {
        // A fuse that is carried from one end of the wire to the other is what that lesson is about.
        let carried = [("fuse-far-from-battery", "F1")];
        for built_in in LESSONS {
            let [bad, good] = both(&built_in.lesson());
            let frame = frame_of(&[&bad, &good]).expect("something is drawn");
            for sheet in [&bad, &good] {
                let own = sheet.layout().bounds().expect("something is drawn");
                assert_eq!(frame.union(own), frame, "{}", built_in.key);
            }
            for (id, part) in bad.layout().parts() {
                let tag = bad.tag(id);
                if let Some(other) = good.layout().part(id)
                    && !carried.contains(&(built_in.key, tag.as_str()))
                {
                    assert_eq!(part.middle(), other.middle(), "{}: {tag}", built_in.key);
                }
            }
        }
    }

    #[test]
    fn arrows_reach_every_spot() {
        for built_in in LESSONS {
            let [bad, good] = both(&built_in.lesson());
            let spots = spots(&[&bad, &good]);
            let first = spot_towards(&spots, None, Key::Right).expect("a first spot");
            let mut reached = vec![first.0.clone()];
            let mut open = vec![first.1];
            while let Some(at) = open.pop() {
                for key in [Key::Left, Key::Right, Key::Up, Key::Down] {
                    if let Some((thing, point)) = spot_towards(&spots, Some(at), key)
                        && !reached.contains(thing)
                    {
                        reached.push(thing.clone());
                        open.push(*point);
                    }
                }
            }
            let missed: Vec<_> = spots.iter().filter(|spot| !reached.contains(&spot.0)).collect();
            assert!(missed.is_empty(), "{}: {missed:?}", built_in.key);
        }
        assert_eq!(spot_towards(&[], None, Key::Right), None);
    }

    #[test]
    fn what_is_lit_has_a_frame_of_its_own() {
        let lesson = LESSONS[0].lesson();
        let [bad, good] = both(&lesson);
        let whole = frame_of(&[&bad, &good]).expect("a frame");
        let part = bad.layout().parts().next().expect("a part").0;
        let lit = Lit {
            parts: [part].into(),
            ..Lit::default()
        };
        let close = frame_of_lit(&[(&bad, &lit), (&good, &Lit::default())]).expect("a frame");
        assert!(close.area() < whole.area() && whole.union(close) == whole);
        assert_eq!(frame_of_lit(&[(&bad, &Lit::default())]), None);
        assert_eq!(frame_of(&[]), None);
    }
}
