//! The limits that checks hold things against: what the user set in the job wins over the profile.

use crate::explain::LimitLine;
use crate::wording::number;
use model::Settings;
use model::job::Profile;

/// A limit by its key; `None` when no profile knows it.
pub(crate) fn limit(settings: &Settings, key: &str) -> Option<f64> {
    settings
        .limits
        .get(key)
        .copied()
        .or_else(|| reference::protection::limit(settings.conditions.profile, key).map(|limit| limit.value))
}

/// A limit as it stands in a job.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitInForce {
    /// Its name in files.
    pub key: &'static str,
    /// What is limited, in words.
    pub title: &'static str,
    /// Its unit; empty for a share, a factor or a count.
    pub unit: &'static str,
    /// What the profile says.
    pub published: f64,
    /// What the user set instead.
    pub set: Option<f64>,
    /// Where the profile's figure comes from, and how that is known.
    pub source: String,
    /// A remark: exceptions, the range considered.
    pub note: &'static str,
}

/// All limits of the profile that a job is judged by, with those that the user set otherwise.
#[must_use]
pub fn limits_in_force(settings: &Settings) -> Vec<LimitInForce> {
    reference::protection::limits(settings.conditions.profile)
        .iter()
        .map(|limit| LimitInForce {
            key: limit.key,
            title: limit.title,
            unit: limit.unit,
            published: limit.value,
            set: settings.limits.get(limit.key).copied(),
            source: limit.source.to_string(),
            note: limit.note,
        })
        .collect()
}

/// A limit as the page of a check tells it.
pub(crate) fn line(key: &'static str) -> LimitLine {
    let rows: Vec<(Profile, &reference::protection::Limit)> = Profile::ALL
        .iter()
        .filter_map(|profile| reference::protection::limit(*profile, key).map(|limit| (*profile, limit)))
        .collect();
    LimitLine {
        key,
        values: rows
            .iter()
            .map(|(profile, limit)| {
                let value = number(limit.value);
                let value = if limit.unit.is_empty() {
                    value
                } else {
                    format!("{value} {}", limit.unit)
                };
                (*profile, value)
            })
            .collect(),
        what: rows
            .first()
            .map(|(_, limit)| limit.title.to_owned())
            .unwrap_or_default(),
        sources: rows
            .iter()
            .map(|(profile, limit)| format!("{}: {}", profile.title(), limit.source))
            .collect(),
    }
}
