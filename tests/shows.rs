//! Shows: what they are, what their place asks for, how they end, what is read of them afterwards, and practice, which counts
//! for nothing.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "shows/about.rs"]
mod about;
#[path = "support/book.rs"]
mod book;
#[path = "shows/files.rs"]
mod files;
#[path = "desk/helper.rs"]
mod helper;
#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "shows/pages.rs"]
mod pages;
#[path = "shows/practice.rs"]
mod practice;
#[path = "shows/practice_line.rs"]
mod practice_line;
#[path = "desk/seller.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;
#[path = "shows/tax.rs"]
mod tax;
