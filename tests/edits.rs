//! Changing files that are also written by hand: what is not changed stays byte for byte.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "edits/acts.rs"]
mod acts;
#[path = "edits/entries.rs"]
mod entries;
#[path = "edits/left_over.rs"]
mod left_over;
#[path = "edits/lots.rs"]
mod lots;
#[path = "edits/mixes.rs"]
mod mixes;
#[path = "edits/parts.rs"]
mod parts;
#[path = "support/random.rs"]
mod random;
#[path = "edits/sorts.rs"]
mod sorts;
mod support;
