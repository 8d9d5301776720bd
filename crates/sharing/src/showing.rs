//! What of a job others get to see.

use model::Job;

/// What of the private things is shown. Nothing is, unless it is chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Showing {
    /// Notes on parts, runs and readings, the title block's remark, complaints and the condition record.
    pub notes: bool,
    /// The names in the title block: the vehicle's, and who drew it.
    pub names: bool,
    /// The quote: what is offered, what it costs, what was decided; and the shop's terms.
    pub prices: bool,
    /// Pictures. A link cannot carry any; a page file can.
    pub pictures: bool,
}

/// What stays out of a shared job, counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LeftOut {
    /// Notes and remarks.
    pub notes: usize,
    /// Names in the title block.
    pub names: usize,
    /// Lines of the quote, and the shop's terms.
    pub prices: usize,
    /// Pictures.
    pub pictures: usize,
    /// Fields that this version does not know and a link cannot carry.
    pub unknown: usize,
}

/// The job as others get it, and what was left out of it.
///
/// Labels, the title and the places of parts stay, since a drawing cannot be understood without them: whoever shares it has
/// to see that they name nobody.
#[must_use]
pub fn shown(job: &Job, showing: Showing) -> (Job, LeftOut) {
    let mut out = job.clone();
    let mut left = LeftOut::default();
    if !showing.pictures {
        left.pictures = std::mem::take(&mut out.pictures).len();
    }
    let pictures = std::mem::take(&mut out.pictures);
    left.unknown = model::text::unshown(&out).len();
    if left.unknown > 0 {
        // Nobody can say whether a field that this version does not know is private; the text form cannot show it.
        out = model::text::parse_lenient(&model::text::print(&out)).0;
    }
    out.pictures = pictures;
    let note = |text: &mut String, count: &mut usize| {
        if !text.is_empty() {
            text.clear();
            *count += 1;
        }
    };
    if !showing.names {
        note(&mut out.vehicle.name, &mut left.names);
        note(&mut out.vehicle.drawn_by, &mut left.names);
    }
    if !showing.prices {
        left.prices = std::mem::take(&mut out.thread.offers).len();
        if std::mem::take(&mut out.thread.rates) != model::thread::Rates::default() {
            left.prices += 1;
        }
    }
    // What is ticked off is the shop's own business; nobody misses it.
    out.thread.done = Default::default();
    if !showing.notes {
        left.notes += std::mem::take(&mut out.thread.complaints).len();
        left.notes += std::mem::take(&mut out.thread.intake).len();
        note(&mut out.vehicle.remark, &mut left.notes);
        for sheet in out.sheets.values_mut() {
            for part in sheet.parts.values_mut() {
                note(&mut part.note, &mut left.notes);
            }
            for run in sheet.runs.values_mut() {
                note(&mut run.note, &mut left.notes);
            }
            for reading in &mut sheet.readings {
                note(&mut reading.remark, &mut left.notes);
            }
            for tuning in &mut sheet.tunings {
                note(&mut tuning.remark, &mut left.notes);
            }
        }
    }
    (out, left)
}
