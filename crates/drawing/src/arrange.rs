//! Automatic arrangement of a sheet.

use crate::part_box::PartBox;
use model::{BoardPoint, PartId, Sheet};
use std::collections::BTreeMap;

/// Places for all parts of a sheet.
#[must_use]
pub fn arrange(sheet: &Sheet) -> BTreeMap<PartId, BoardPoint> {
    let mut places = BTreeMap::new();
    let mut column: BTreeMap<model::Group, i32> = BTreeMap::new();
    for (id, part) in &sheet.parts {
        let size = PartBox::size_of(part);
        let group = part.is.group();
        let y = column.entry(group).or_insert(0);
        let half = (size.height / 2.0) as i32;
        places.insert(
            *id,
            BoardPoint {
                x: group as i32 * 320,
                y: *y + half,
            },
        );
        *y += 2 * half + 60;
    }
    places
}

/// Places for the parts of a sheet that have none, beside those that have.
pub(crate) fn arrange_unplaced(sheet: &Sheet) -> BTreeMap<PartId, BoardPoint> {
    let mut places = arrange(sheet);
    places.retain(|id, _| sheet.parts.get(id).is_some_and(|part| part.at.is_none()));
    places
}
