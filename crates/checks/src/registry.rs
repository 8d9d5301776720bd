//! What a check is, and the list of all of them. A new check touches two places: its own file under `checks/`, and
//! one line in [`CHECKS`].

use crate::checks::*;
use crate::context::Ctx;
use crate::finding::Grade;
use crate::findings::Findings;
use words::{Saying, say};

/// What a check is about; the headings of the list of checks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CheckGroup {
    /// Fuses and breakers, and what they guard.
    Protection,
    /// Wires, joints and terminals.
    Conductors,
    /// Returns and ground points.
    Ground,
    /// Speakers and what drives them.
    Speakers,
    /// Signal leads and turn-on leads.
    SignalAndControl,
    /// How it is fixed, finished and led through the body.
    Workmanship,
    /// Charging and standing.
    Energy,
    /// What is not known.
    Data,
}

impl CheckGroup {
    /// All groups, in the order of the list.
    pub const ALL: &'static [Self] = &[
        Self::Protection,
        Self::Conductors,
        Self::Ground,
        Self::Speakers,
        Self::SignalAndControl,
        Self::Workmanship,
        Self::Energy,
        Self::Data,
    ];
    /// The words on screen.
    #[must_use]
    pub fn said(self) -> Saying {
        match self {
            Self::Protection => say!("check-group-protection"),
            Self::Conductors => say!("check-group-conductors"),
            Self::Ground => say!("check-group-ground"),
            Self::Speakers => say!("check-group-speakers"),
            Self::SignalAndControl => say!("check-group-signal"),
            Self::Workmanship => say!("check-group-workmanship"),
            Self::Energy => say!("check-group-energy"),
            Self::Data => say!("check-group-data"),
        }
    }
}

/// One check: what it is, its examples, and the rule.
///
/// Its texts are messages named after it (`check-NAME-title`, `-holds`, `-looks`, `-why`, `-source`, and `-unmended` where [`crate::Explanation::unmended`] tells something), beside those of its
/// findings; [`crate::explain`] makes a page of them, the same on screen, in `docs/checks` and on the command line. `example`
/// and `instead` are jobs in the text form; in the example, `#~ name …` at the end of a line names the checks that mark the
/// part or run of that line. Both are run as tests.
pub struct Check {
    /// Its name: the fault, in kebab-case.
    pub name: &'static str,
    /// Its grade; some findings are graver or lighter, and then [`Check::looks_for`] says when.
    pub grade: Grade,
    /// What it is about.
    pub group: CheckGroup,
    /// A job that fails it, marked.
    pub example: &'static str,
    /// The same job put right: nothing of grade Stop or Fix fires on it.
    pub instead: &'static str,
    /// Names of the limits it reads from the profile.
    pub limits: &'static [&'static str],
    /// First version that has it.
    pub since: &'static str,
    /// The rule.
    pub(crate) run: fn(&Ctx<'_>, &mut Findings),
}

impl Check {
    /// Its name as words.
    #[must_use]
    pub fn title(&self) -> Saying {
        self.says("title")
    }
    /// When the check holds: the rest of a sentence.
    #[must_use]
    pub fn holds_when(&self) -> Saying {
        self.says("holds")
    }
    /// What it looks for.
    #[must_use]
    pub fn looks_for(&self) -> Saying {
        self.says("looks")
    }
    /// Why it matters.
    #[must_use]
    pub fn why(&self) -> Saying {
        self.says("why")
    }
    /// Where the rule comes from.
    #[must_use]
    pub fn source(&self) -> Saying {
        self.says("source")
    }
    /// Which of its findings no mend is proposed for, and why; asked only of those that have such.
    pub(crate) fn unmended(&self) -> Saying {
        self.says("unmended")
    }
    fn says(&self, what: &str) -> Saying {
        Saying::new(format!("check-{}-{what}", self.name))
    }
}

impl std::fmt::Debug for Check {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_tuple("Check").field(&self.name).finish()
    }
}

/// Every check. The order is that of running: what is a cause stands before what may be no more than its symptom, so
/// that a check can see what was already found (one finding for each cause, not for each symptom).
pub static CHECKS: &[&Check] = &[
    // What is wrong with a thing by itself.
    &damaged_run::CHECK,
    &intermittent::CHECK,
    &hot_place::CHECK,
    &false_size::CHECK,
    &poor_ending::CHECK,
    &fuse_in_return::CHECK,
    &ground_forbidden::CHECK,
    &ground_surface::CHECK,
    &sensor_bypassed::CHECK,
    &terminal_overfull::CHECK,
    &self_resetting_main::CHECK,
    &fuse_breaking_capacity::CHECK,
    // How far protection reaches.
    &feed_unprotected::CHECK,
    &second_source::CHECK,
    &fuse_too_far::CHECK,
    // What wires and devices carry.
    &overloaded_run::CHECK,
    &fuse_outsizes_wire::CHECK,
    &wire_before_fuse::CHECK,
    &short_never_clears::CHECK,
    &uneven_parallel::CHECK,
    &fuse_undersized::CHECK,
    &fuse_order::CHECK,
    &clad_feed::CHECK,
    &hot_joint::CHECK,
    // Ways there and back.
    &no_feed::CHECK,
    &return_through_shield::CHECK,
    &no_return::CHECK,
    &return_too_thin::CHECK,
    &return_too_long::CHECK,
    // Speakers.
    &silent_speaker::CHECK,
    &output_touches_chassis::CHECK,
    &coils_oppose::CHECK,
    &uneven_coils::CHECK,
    &reversed_speaker::CHECK,
    &load_too_low::CHECK,
    &speaker_overpowered::CHECK,
    &no_high_pass::CHECK,
    &lead_loss::CHECK,
    // Signal and control.
    &no_signal::CHECK,
    &crossed_signal::CHECK,
    &wrong_level::CHECK,
    &no_turn_on::CHECK,
    &turn_on_overloaded::CHECK,
    &always_on::CHECK,
    // What may follow from any of the above.
    &supply_collapse::CHECK,
    &voltage_drop::CHECK,
    &ground_offset::CHECK,
    &over_budget::CHECK,
    &standing_drain::CHECK,
    &loose_end::CHECK,
    &not_known::CHECK,
    // How it is fixed and led through the body, from which nothing else follows.
    &airbag_way::CHECK,
    &blind_fixing::CHECK,
    &mounted_on_moving::CHECK,
    &mounting_loose::CHECK,
    &loose_metal::CHECK,
    &moving_joint::CHECK,
    &crush::CHECK,
    &bare_edge::CHECK,
    &water_way::CHECK,
    &signal_beside_feed::CHECK,
    &signal_scattered::CHECK,
    &unsupported::CHECK,
];

/// Checks that run first on a large sheet, each list beside the other: none looks at what the other list finds, nor at what
/// any check that stands in neither does. So they find what they would in their places in [`CHECKS`]. Here stand those that
/// take longest, as evenly as may be.
pub(crate) static BESIDE: [&[&Check]; 2] = [
    &[
        &damaged_run::CHECK,
        &hot_place::CHECK,
        &feed_unprotected::CHECK,
        &overloaded_run::CHECK,
        &fuse_outsizes_wire::CHECK,
        &wire_before_fuse::CHECK,
        &fuse_undersized::CHECK,
        &fuse_order::CHECK,
    ],
    &[
        &false_size::CHECK,
        &poor_ending::CHECK,
        &terminal_overfull::CHECK,
        &clad_feed::CHECK,
        &no_feed::CHECK,
        &no_signal::CHECK,
        &crossed_signal::CHECK,
    ],
];

/// The check of a name.
#[must_use]
pub fn check_named(name: &str) -> Option<&'static Check> {
    CHECKS.iter().find(|check| check.name == name).copied()
}
