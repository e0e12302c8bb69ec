//! What goes wrong over time rather than at once: holds that end, shows that close before a ticket arrives, books of
//! earlier versions, amounts that can't be right.

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
#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "desk/seller.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
mod support;

#[path = "time/arrivals.rs"]
mod arrivals;
#[path = "time/backup.rs"]
mod backup;
#[path = "time/clock.rs"]
mod clock;
#[path = "time/counts.rs"]
mod counts;
#[path = "time/damage.rs"]
mod damage;
#[path = "time/desk_late.rs"]
mod desk_late;
#[path = "time/holds.rs"]
mod holds;
#[path = "time/late.rs"]
mod late;
#[path = "time/model.rs"]
mod model;
#[path = "support/random.rs"]
mod random;
#[path = "time/rush.rs"]
mod rush;
#[path = "time/stored.rs"]
mod stored;
#[path = "support/story.rs"]
mod story;
#[path = "time/together.rs"]
mod together;
