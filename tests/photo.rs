//! A tray by one photo: decoding, corners, homography, shapes, cut-outs and their sizes, against published values and against
//! photos drawn from known shapes.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use chatelaine::photo;

#[path = "photo/cut_outs.rs"]
mod cut_outs;
#[path = "photo/hostile.rs"]
mod hostile;
#[path = "photo/references.rs"]
mod references;
#[path = "photo/scene.rs"]
mod scene;
#[path = "photo/terminal.rs"]
mod terminal;
