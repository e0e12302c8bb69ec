//! The evenings before and after a show: the year by quarter, a lot that is recalled, cuts that are ticked off, packing and
//! plans, a backup that takes the ledger's place.

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
#[path = "evenings/card.rs"]
mod card;
#[path = "evenings/drawers.rs"]
mod drawers;
#[path = "evenings/figures.rs"]
mod figures;
#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "evenings/lots.rs"]
mod lots;
#[path = "evenings/many.rs"]
mod many;
#[path = "evenings/pages.rs"]
mod pages;
#[path = "support/random.rs"]
#[allow(dead_code, reason = "other tests need more of it")]
mod random;
#[path = "evenings/recalled.rs"]
mod recalled;
#[path = "evenings/restored.rs"]
mod restored;
#[path = "desk/seller.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;
#[path = "evenings/table_cuts.rs"]
mod table_cuts;
#[path = "evenings/year.rs"]
mod year;
