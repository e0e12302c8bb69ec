//! Receipts and slips: as PDF read back by poppler, as what a receipt printer gets read back by a reader of its own, and on
//! printers that do what they should not; and the paper for the table, measured with scissors in mind.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

#[path = "desk/kit.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "paper/labels.rs"]
mod labels;
#[path = "paper/labels_made.rs"]
mod labels_made;
#[path = "paper/pdf_reader.rs"]
mod pdf_reader;
#[path = "paper/printers.rs"]
mod printers;
#[path = "paper/receipts.rs"]
mod receipts;
#[path = "paper/roll_reader.rs"]
mod roll_reader;
#[path = "paper/scene.rs"]
mod scene;
#[path = "desk/seller.rs"]
#[allow(dead_code, reason = "the desk's own tests need more of it")]
mod seller;
#[path = "paper/slips.rs"]
mod slips;
mod support;
