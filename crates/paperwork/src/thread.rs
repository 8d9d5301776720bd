//! The thread of a job with its open ends: complaint → finding → offer → decision → proof. Whatever hangs in the air is told.

use crate::table::{Cell, Column, Table};
use checks::Finding;
use model::thread::{Decision, FindingRef, Offer, Thread};
use model::{Job, Sheet, SheetKind};
use ordered::OrderedSet;
use words::{Saying, say};

/// What hangs in the air.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenEnd {
    /// A complaint that no finding explains.
    Unexplained {
        /// The complaint.
        complaint: String,
    },
    /// A complaint that no offer answers.
    Unanswered {
        /// The complaint.
        complaint: String,
    },
    /// A finding that explains a complaint, or is of grade Stop, and that no offer clears.
    NotOffered {
        /// The finding.
        finding: FindingRef,
        /// The complaint, where it explains one.
        complaint: Option<String>,
    },
    /// An offer that nobody has decided on.
    Undecided {
        /// The offer.
        offer: String,
    },
    /// An approved offer that is not done.
    NotDone {
        /// The offer.
        offer: String,
    },
    /// An offer that is done, whose finding the last sheet still has.
    StillFound {
        /// The offer.
        offer: String,
        /// The finding.
        finding: FindingRef,
    },
    /// A complaint whose offers are done, without a reading that proves it.
    Unproven {
        /// The complaint.
        complaint: String,
    },
    /// A complaint that is mended and proven, but not closed.
    NotClosed {
        /// The complaint.
        complaint: String,
    },
}

impl OpenEnd {
    /// In a sentence.
    #[must_use]
    pub fn said(&self) -> Saying {
        match self {
            Self::Unexplained { complaint } => say!("paper-open-unexplained", complaint = complaint),
            Self::Unanswered { complaint } => say!("paper-open-unanswered", complaint = complaint),
            Self::NotOffered {
                finding,
                complaint: Some(complaint),
            } => say!(
                "paper-open-not-offered-for",
                finding = finding_said(finding),
                complaint = complaint
            ),
            Self::NotOffered {
                finding,
                complaint: None,
            } => say!("paper-open-not-offered", finding = finding_said(finding)),
            Self::Undecided { offer } => say!("paper-open-undecided", offer = offer),
            Self::NotDone { offer } => say!("paper-open-not-done", offer = offer),
            Self::StillFound { offer, finding } => say!(
                "paper-open-still-found",
                offer = offer,
                finding = finding_said(finding)
            ),
            Self::Unproven { complaint } => say!("paper-open-unproven", complaint = complaint),
            Self::NotClosed { complaint } => say!("paper-open-not-closed", complaint = complaint),
        }
    }
}

/// A finding as the thread names it: what the check is called, and its things.
fn finding_said(finding: &FindingRef) -> Saying {
    let title: Saying = match checks::check_named(&finding.check) {
        Some(check) => Saying::new(format!("check-{}-title", check.name)),
        None => finding.check.as_str().into(),
    };
    if finding.things.is_empty() {
        title
    } else {
        say!("paper-finding", title = title, things = finding.things.join(" "))
    }
}

/// A finding of an analysis as the thread names it.
#[must_use]
pub fn reference(sheet: &Sheet, finding: &Finding) -> FindingRef {
    let parts = finding.parts.iter().filter_map(|id| sheet.parts.get(id));
    let runs = finding.runs.iter().filter_map(|id| sheet.runs.get(id));
    FindingRef {
        check: finding.check.to_owned(),
        things: parts
            .map(|part| part.tag.clone())
            .chain(runs.map(|run| run.tag.clone()))
            .collect(),
    }
}

/// Whether two name the same finding: the same check, and at least one thing alike. A finding is kept by what it marked when it was
/// tied to its complaint; later it may mark a thing more or less.
fn same(one: &FindingRef, other: &FindingRef) -> bool {
    one.check == other.check
        && (one.things.is_empty()
            || other.things.is_empty()
            || one.things.iter().any(|thing| other.things.contains(thing)))
}

fn findings(job: &Job, kind: SheetKind) -> Vec<(checks::Grade, FindingRef)> {
    let Some(sheet) = job.sheet(kind) else {
        return Vec::new();
    };
    let sheet = body::lay(sheet, &job.settings);
    checks::analyse(&sheet, &job.settings)
        .findings
        .iter()
        .map(|finding| (finding.grade, reference(&sheet, finding)))
        .collect()
}

fn answering<'t>(thread: &'t Thread, complaint: &'t str) -> impl Iterator<Item = &'t Offer> {
    thread
        .offers
        .iter()
        .filter(move |offer| offer.answers.0.iter().any(|tag| tag == complaint))
}

/// Tags of the complaints that some kept reading proves.
fn proven(job: &Job) -> OrderedSet<&str> {
    job.sheets
        .values()
        .flat_map(|sheet| &sheet.readings)
        .flat_map(|reading| &reading.proves.0)
        .map(String::as_str)
        .collect()
}

/// What hangs in the air: first what the complaints lack, then the offers.
#[must_use]
pub fn open_ends(job: &Job) -> Vec<OpenEnd> {
    let thread = &job.thread;
    let proven = proven(job);
    let mut open = Vec::new();
    let offered = |finding: &FindingRef| {
        thread
            .offers
            .iter()
            .flat_map(|offer| &offer.clears.0)
            .any(|cleared| same(cleared, finding))
    };
    for complaint in thread.complaints.iter().filter(|complaint| !complaint.closed) {
        let tag = &complaint.tag;
        if complaint.explained_by.0.is_empty() {
            open.push(OpenEnd::Unexplained {
                complaint: tag.clone(),
            });
        }
        for finding in &complaint.explained_by.0 {
            if !offered(finding) {
                open.push(OpenEnd::NotOffered {
                    finding: finding.clone(),
                    complaint: Some(tag.clone()),
                });
            }
        }
        let mut offers = answering(thread, tag).peekable();
        if offers.peek().is_none() {
            open.push(OpenEnd::Unanswered {
                complaint: tag.clone(),
            });
            continue;
        }
        // A refused answer settles nothing, and leaves nothing to be done.
        let mut alive = offers
            .filter(|offer| offer.decision != Decision::Declined)
            .peekable();
        if alive.peek().is_some() && alive.all(|offer| offer.done) {
            open.push(if proven.contains(tag.as_str()) {
                OpenEnd::NotClosed {
                    complaint: tag.clone(),
                }
            } else {
                OpenEnd::Unproven {
                    complaint: tag.clone(),
                }
            });
        }
    }
    let first = job.sheets.keys().next().copied();
    let last = job.sheets.keys().next_back().copied();
    if first == Some(SheetKind::Found) {
        let explained = |finding: &FindingRef| {
            let mut all = thread.complaints.iter().flat_map(|it| &it.explained_by.0);
            all.any(|known| same(known, finding))
        };
        for (grade, finding) in findings(job, SheetKind::Found) {
            if grade == checks::Grade::Stop && !offered(&finding) && !explained(&finding) {
                open.push(OpenEnd::NotOffered {
                    finding,
                    complaint: None,
                });
            }
        }
    }
    let now = match last {
        Some(SheetKind::Built) => findings(job, SheetKind::Built),
        _ => Vec::new(),
    };
    for offer in &thread.offers {
        let tag = offer.tag.clone();
        match offer.decision {
            Decision::Open => open.push(OpenEnd::Undecided { offer: tag }),
            Decision::Approved if !offer.done => open.push(OpenEnd::NotDone { offer: tag }),
            Decision::Approved => {
                for cleared in &offer.clears.0 {
                    if now.iter().any(|(_, finding)| same(finding, cleared)) {
                        open.push(OpenEnd::StillFound {
                            offer: tag.clone(),
                            finding: cleared.clone(),
                        });
                    }
                }
            }
            Decision::Declined => {}
        }
    }
    open
}

/// The thread as a list: a row for every complaint, with what explains, answers and proves it.
#[must_use]
pub fn thread_table(job: &Job) -> Table {
    let mut table = Table::new(
        "thread",
        &[
            Column::words("tag"),
            Column::words("complaint"),
            Column::words("with"),
            Column::words("explained"),
            Column::words("answered"),
            Column::words("proven"),
            Column::words("closed"),
        ],
    );
    for complaint in &job.thread.complaints {
        let explained = complaint.explained_by.0.iter().map(finding_said).collect();
        let answered = answering(&job.thread, &complaint.tag).map(|offer| {
            say!(
                "paper-answer",
                offer = &offer.tag,
                decision = if offer.done {
                    say!("paper-done")
                } else {
                    model::said::choice(offer.decision.title())
                }
            )
        });
        let readings = job
            .sheets
            .values()
            .flat_map(|sheet| &sheet.readings)
            .filter(|reading| reading.proves.0.contains(&complaint.tag));
        let proofs = readings.map(|reading| -> Saying {
            if reading.against.is_empty() {
                reading.at.as_str().into()
            } else {
                say!("paper-against", at = &reading.at, against = &reading.against)
            }
        });
        let cell = |all: Vec<Saying>| {
            if all.is_empty() {
                Cell::Empty
            } else {
                Cell::Said(crate::articles::joined(all, "paper-semicolon"))
            }
        };
        table.rows.push(vec![
            Cell::text(&complaint.tag),
            Cell::text(&complaint.words),
            complaint.moved.value().map_or(Cell::Empty, |moved| {
                Cell::Said(model::said::choice(moved.title()))
            }),
            cell(explained),
            cell(answered.collect()),
            cell(proofs.collect()),
            match (complaint.closed, complaint.remark.is_empty()) {
                (true, true) => Cell::Said(say!("paper-closed")),
                (true, false) => Cell::text(&complaint.remark),
                (false, _) => Cell::Empty,
            },
        ]);
    }
    table.notes.extend(open_ends(job).iter().map(OpenEnd::said));
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    fn open(text: &str) -> Vec<OpenEnd> {
        open_ends(&model::text::parse(text).unwrap_or_else(|errors| panic!("{errors}")))
    }

    const COMPLAINT: &str = "complaint C1 \"Rear left is silent\" explained-by=\"silent-speaker LS4\"\n";

    #[test]
    fn a_complaint_is_followed_from_its_words_to_its_proof() {
        let c1 = || "C1".to_owned();
        let q1 = || "Q1".to_owned();
        assert_eq!(
            open("complaint C1 \"Hum\"\n"),
            [
                OpenEnd::Unexplained { complaint: c1() },
                OpenEnd::Unanswered { complaint: c1() }
            ]
        );
        let finding = FindingRef {
            check: "silent-speaker".to_owned(),
            things: vec!["LS4".to_owned()],
        };
        assert_eq!(
            open(COMPLAINT),
            [
                OpenEnd::NotOffered {
                    finding,
                    complaint: Some(c1())
                },
                OpenEnd::Unanswered { complaint: c1() }
            ]
        );
        let offer = "offer Q1 \"Mate the plug\" clears=\"silent-speaker LS4 P2\" answers=C1";
        assert_eq!(
            open(&format!("{COMPLAINT}{offer}\n")),
            [OpenEnd::Undecided { offer: q1() }]
        );
        assert_eq!(
            open(&format!("{COMPLAINT}{offer} decision=approved\n")),
            [OpenEnd::NotDone { offer: q1() }]
        );
        let done = format!("{COMPLAINT}{offer} decision=approved done=yes\n");
        assert_eq!(open(&done), [OpenEnd::Unproven { complaint: c1() }]);
        let reading =
            "sheet built\nreading at=A1.out1+ against=A1.out1- measured=ohms ohms=3.2ohm proves=C1\n";
        assert_eq!(
            open(&format!("{done}{reading}")),
            [OpenEnd::NotClosed { complaint: c1() }]
        );
        let closed = done.replace("explained-by", "closed=yes explained-by");
        assert_eq!(open(&format!("{closed}{reading}")), []);
        assert_eq!(
            open(&format!("{COMPLAINT}{offer} decision=declined\n")),
            [],
            "what is refused hangs no more"
        );
    }

    #[test]
    fn a_stop_that_nobody_offered_to_mend_is_told() {
        let bare =
            "sheet found\nbattery B1\nload L1\nrun W1 B1.+ L1.+ 2.5mm2 1m\nrun W2 L1.- B1.- 2.5mm2 1m BK\n";
        assert!(
            open(bare)
                .iter()
                .any(|it| matches!(it, OpenEnd::NotOffered { finding, complaint: None } if finding.check == "feed-unprotected")),
            "{:?}",
            open(bare)
        );
        let offered = format!("offer Q1 \"Fuse\" clears=\"feed-unprotected W1\" decision=declined\n{bare}");
        assert!(!open(&offered).iter().any(
            |it| matches!(it, OpenEnd::NotOffered { finding, .. } if finding.check == "feed-unprotected")
        ));
    }
}
