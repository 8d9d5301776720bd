//! Every list by its name.

use crate::becomes::what_becomes;
use crate::build::build;
use crate::cut::{cut_list, wiring_table};
use crate::fuses::fuse_table;
use crate::labels::label_sheet;
use crate::meter::{Studies, kept_readings, meter_sheet};
use crate::order::order;
use crate::places::parts_list;
use crate::price_sheet::price_sheet;
use crate::proof::proof_sheet;
use crate::quote::quote_table;
use crate::stock::return_to_stock;
use crate::strip_out::strip_out;
use crate::table::Table;
use crate::terms::Terms;
use crate::thread::thread_table;
use crate::tuning::settings_sheet;
use crate::work::Work;
use words::Saying;

macro_rules! all_lists {
    ($($name:ident, $word:literal, $doc:literal;)+) => {
        /// A list that can be asked for.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum List {
            $(#[doc = $doc] $name,)+
        }
        impl List {
            /// All of them, in the order in which a job needs them.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];
            /// The written word.
            #[must_use]
            pub fn word(self) -> &'static str { match self { $(Self::$name => $word),+ } }
            /// The list of a written word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                match word { $($word => Some(Self::$name),)+ _ => None }
            }
        }
    };
}

all_lists! {
    Thread, "thread", "Complaints with what explains, answers and proves them, and the open ends.";
    Quote, "quote", "What is offered, what it costs, what was decided.";
    Becomes, "becomes", "What becomes of every thing between two sheets.";
    Totals, "totals", "How many things become what, findings cleared and left, metal and money.";
    Findings, "findings", "Findings cleared, left and added.";
    StripOut, "strip-out", "In which order to strip out.";
    Build, "build", "In which order to build.";
    Order, "order", "What to buy.";
    Prices, "prices", "The prices that sizes are chosen by, to be filled in.";
    Cut, "cut", "What to cut from the reel.";
    Labels, "labels", "Two labels for each run.";
    Fuses, "fuses", "Every fuse, what it guards and what flows through it.";
    Settings, "settings", "How every channel is set.";
    Meter, "meter", "What to measure, and what is to be expected.";
    Readings, "readings", "Readings that were kept, beside what was to be expected.";
    Proof, "proof", "The fewest readings that expose every single fault of grade Stop, in their order.";
    Parts, "parts", "Every part of the sheet, and where it is.";
    Wiring, "wiring", "Every run of the sheet.";
    Stock, "stock", "The return to stock.";
}

impl List {
    /// What it is called.
    #[must_use]
    pub fn title(self) -> Saying {
        Saying::new(format!("paper-list-{}", self.word()))
    }
}

/// Lists of the work, in the order in which they are asked for. What several of them need is computed once.
#[must_use]
pub fn lists(work: &Work<'_>, terms: &Terms, wanted: &[List]) -> Vec<Table> {
    let mut studies = Studies::of(&work.sheet, &work.job.settings);
    let conditions = &work.job.settings.conditions;
    let (state, duty) = (conditions.state, conditions.duty);
    let mut becomes = None;
    wanted
        .iter()
        .map(|list| match list {
            List::Thread => thread_table(work.job),
            List::Quote => quote_table(&work.job.thread),
            List::Becomes => becomes.get_or_insert_with(|| what_becomes(work)).table(),
            List::Totals => becomes.get_or_insert_with(|| what_becomes(work)).totals(work),
            List::Findings => becomes.get_or_insert_with(|| what_becomes(work)).findings(),
            List::StripOut => strip_out(work).table(),
            List::Build => build(work, terms).table(),
            List::Order => order(work, terms).table(work, terms),
            List::Prices => price_sheet(work, terms),
            List::Cut => cut_list(work, terms),
            List::Labels => label_sheet(work),
            List::Fuses => fuse_table(work, studies.at(state, duty)),
            List::Settings => settings_sheet(work, studies.at(state, duty)),
            List::Meter => meter_sheet(work, &mut studies),
            List::Readings => kept_readings(work, &mut studies),
            List::Proof => proof_sheet(work),
            List::Parts => parts_list(work),
            List::Wiring => wiring_table(work),
            List::Stock => return_to_stock(work),
        })
        .collect()
}
