//! The command line.

#![allow(clippy::print_stdout, clippy::print_stderr, reason = "the command line answers in the terminal")]

mod commands;

use std::process::ExitCode;

fn main() -> ExitCode {
    commands::run()
}
