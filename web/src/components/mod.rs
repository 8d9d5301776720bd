//! The components, one each in a file of its name.
