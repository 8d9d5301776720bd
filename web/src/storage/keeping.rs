//! How the job on the table is kept, for the line of the page that tells it.

/// How the job on the table is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) enum Keeping {
    /// Not tried yet.
    #[default]
    Opening,
    /// Kept here, as of the last edit.
    Kept,
    /// Being written.
    Writing,
    /// It cannot be kept here, and why, in words.
    Failed(String),
    /// Another tab has this job; this one only looks on.
    Elsewhere,
}
