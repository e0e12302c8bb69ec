//! Printing on receipt printers. It has a thread of its own, so that no sale waits for a printer: `queue` is the line of what
//! is printed one after the other, `send` how bytes reach a printer and what comes in the way.

mod queue;
mod send;

pub(super) use queue::{Job, Printed, Printing, What};
pub(super) use send::Fault;
