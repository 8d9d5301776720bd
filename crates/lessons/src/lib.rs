//! Built-in jobs: worked examples that open in the app and on the command line (`@estate`). All of them are invented.
//!
//! They are kept in the text form, one file each under `jobs/`, so that a change to one reads as a change to a drawing.

use model::Job;

/// A job that comes with the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkedJob {
    /// Short name, as in `@estate`.
    pub key: &'static str,
    /// What it shows, in one sentence.
    pub shows: &'static str,
    /// The job in the text form.
    pub text: &'static str,
}

/// The worked jobs, the one that a newcomer sees first at the front.
pub const WORKED_JOBS: &[WorkedJob] = &[
    WorkedJob {
        key: "estate",
        shows: "An estate car with front components, a rear pair and one subwoofer, all in order.",
        text: include_str!("../jobs/estate.job"),
    },
    WorkedJob {
        key: "van",
        shows: "A trades van that several hands have altered: what is wrong with it?",
        text: include_str!("../jobs/van.job"),
    },
    WorkedJob {
        key: "camper",
        shows: "A camper with a second battery, a split-charge relay, an inverter and house loads.",
        text: include_str!("../jobs/camper.job"),
    },
];

impl WorkedJob {
    /// The worked job of a short name.
    #[must_use]
    pub fn of(key: &str) -> Option<&'static Self> {
        WORKED_JOBS.iter().find(|job| job.key == key)
    }
    /// The job. The texts are part of the program and a test reads each of them; should one be damaged all the same,
    /// what could be read of it comes back.
    #[must_use]
    pub fn job(&self) -> Job {
        model::text::parse_lenient(self.text).0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_worked_job_reads_without_an_error() {
        for worked in WORKED_JOBS {
            if let Err(errors) = model::text::parse(worked.text) {
                panic!("{}:\n{errors}", worked.key);
            }
        }
    }
}
