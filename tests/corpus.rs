//! Odd input: a kept set of it, and good input that is spoiled step by step. Whatever comes in, nothing panics or waits for
//! good, a message of one line says what is wrong and where, and nothing is changed.
//!
//! `CHATELAINE_ODD=minutes` spoils each target for so long. The targets of `tests/fuzz` are held to the same checks.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "corpus/checks/mod.rs"]
mod checks;
#[path = "corpus/desk_asked.rs"]
mod desk_asked;
#[path = "corpus/folders.rs"]
mod folders;
#[path = "corpus/kept.rs"]
mod kept;
#[path = "corpus/last_show.rs"]
mod last_show;
#[cfg(unix)]
#[path = "corpus/pipes.rs"]
mod pipes;
#[path = "support/random.rs"]
mod random;
#[path = "corpus/spoiled.rs"]
mod spoiled;
#[path = "corpus/spoiler.rs"]
mod spoiler;
#[path = "corpus/tablet_line.rs"]
mod tablet_line;
