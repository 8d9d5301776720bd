//! The checks, one file each: documentation, rule, examples.

pub(crate) mod feed_unprotected;
pub(crate) mod fuse_in_return;
pub(crate) mod fuse_outsizes_wire;
pub(crate) mod fuse_too_far;
pub(crate) mod load_too_low;
pub(crate) mod no_return;
pub(crate) mod overloaded_run;
pub(crate) mod return_too_long;
pub(crate) mod reversed_speaker;
pub(crate) mod silent_speaker;
pub(crate) mod voltage_drop;
