//! The handover: what the customer gets, in plain words, and what the next installer will be glad of, as one printable
//! document without any resource from outside.

mod customer;
mod installer;
pub(crate) mod page;
mod picture;

use crate::work::Work;
use checks::Analysis;
use model::thread::Rates;
use model::{Fact, Job, Sheet, SheetKind};
use page::Page;
use sharing::{LeftOut, Showing, shown};
use words::{Saying, Words, say};

/// For whom the document is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Readers {
    /// For both: the customer's part comes first.
    #[default]
    Both,
    /// For the customer alone.
    Customer,
    /// For the next installer alone.
    Installer,
}

impl Readers {
    /// All of them, by their written words.
    pub const WORDS: &'static [&'static str] = &["both", "customer", "installer"];
    /// Those of a written word.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        match word {
            "both" => Some(Self::Both),
            "customer" => Some(Self::Customer),
            "installer" => Some(Self::Installer),
            _ => None,
        }
    }
}

/// What is asked for.
#[derive(Clone, Copy, Debug, Default)]
pub struct Asked {
    /// The sheet that is handed over; the last one without it.
    pub kind: Option<SheetKind>,
    /// What of the private things is shown. Of the quote without its prices only the words are: what was done, and what was
    /// declined.
    pub showing: Showing,
    /// For whom.
    pub readers: Readers,
}

/// Everything that both parts of the document are made of.
pub(crate) struct Told<'a> {
    pub(crate) job: &'a Job,
    pub(crate) work: &'a Work<'a>,
    pub(crate) showing: Showing,
    /// The sheet after, every part at its place.
    pub(crate) after: Sheet,
    pub(crate) after_analysis: Analysis,
    /// The sheet before, where there is one.
    pub(crate) before: Option<(SheetKind, Sheet, Analysis)>,
    pub(crate) words: &'a Words,
}

impl Told<'_> {
    /// What stands above everything.
    pub(crate) fn title(&self) -> Saying {
        if self.job.title.is_empty() {
            say!("paper-untitled")
        } else {
            self.job.title.as_str().into()
        }
    }
    /// What the title block says.
    pub(crate) fn title_block(&self) -> Vec<(Saying, String)> {
        let vehicle = &self.job.vehicle;
        vec![
            (say!("handover-vehicle"), vehicle.name.clone()),
            (say!("handover-sheet"), self.words.say(&self.work.kind.said())),
            (say!("handover-drawn-by"), vehicle.drawn_by.clone()),
            (say!("handover-date"), vehicle.date.clone()),
            (say!("handover-revision"), vehicle.revision.clone()),
            (say!("paper-column-remark"), vehicle.remark.clone()),
        ]
    }
}

/// The job as the document shows it. Without prices the lines of the quote stay: it says what was done and what was
/// declined, which has to be handed over.
fn shown_in(job: &Job, showing: Showing) -> (Job, LeftOut) {
    let all_words = Showing {
        prices: true,
        ..showing
    };
    let (mut out, mut left) = shown(job, all_words);
    if !showing.prices {
        for offer in &mut out.thread.offers {
            left.prices += usize::from(!offer.parts.is_unknown() || !offer.hours.is_unknown());
            (offer.parts, offer.hours) = (Fact::Unknown, Fact::Unknown);
        }
        out.thread.rates = Rates::default();
    }
    (out, left)
}

/// The document as HTML, and what was left out of it. `None` when the job has no such sheet.
#[must_use]
pub fn handover(job: &Job, asked: Asked, words: &Words) -> Option<(String, LeftOut)> {
    let (job, left) = shown_in(job, asked.showing);
    let kind = asked.kind.or_else(|| job.sheets.keys().next_back().copied())?;
    let work = Work::of(&job, kind, None)?;
    let after = picture::placed(&work.sheet, words);
    let before = work.before.as_ref().map(|(kind, sheet)| {
        let sheet = picture::placed_as(sheet, &after);
        let analysis = checks::analyse(&sheet, &job.settings);
        (*kind, picture::placed(&sheet, words), analysis)
    });
    let told = Told {
        job: &job,
        work: &work,
        showing: asked.showing,
        after_analysis: checks::analyse(&after, &job.settings),
        after,
        before,
        words,
    };
    let mut page = Page::of(words);
    if asked.readers != Readers::Installer {
        page.part("customer", |page| customer::write(page, &told));
    }
    if asked.readers != Readers::Customer {
        page.part("installer", |page| installer::write(page, &told));
    }
    Some((page.finish(&told.title()), left))
}
