//! The till: what is paid together, in which ways, and what is put right afterwards.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "support/book.rs"]
mod book;
#[path = "till/corrections.rs"]
mod corrections;
#[path = "till/counter.rs"]
mod counter;
#[path = "till/evening.rs"]
mod evening;
#[path = "till/later.rs"]
mod later;
#[path = "till/paying.rs"]
mod paying;
#[path = "till/prices.rs"]
mod prices;
#[path = "till/sales.rs"]
mod sales;
