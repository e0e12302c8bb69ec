//! What has to be carried out outside: on the screen, on the line to the desk, by the window.

use crate::{
    craft::{LookNumber, Token},
    link::Draft,
    ticket::TicketNumber,
};

/// One thing to carry out, in the order in which they come.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// A drop has been hung; it may be seen coming.
    Hung {
        /// Id of its kind.
        kind: String,
        /// How it looks, of an assortment.
        look: LookNumber,
        /// Which.
        token: Token,
    },
    /// A drop has been taken off; it may be seen going home.
    TakenOff {
        /// Id of its kind.
        kind: String,
        /// How it looks, of an assortment.
        look: LookNumber,
        /// Which.
        token: Token,
    },
    /// Put this piece into the outbox and tell [`super::Guest::hear`] what becomes of it.
    Send(Box<Draft>),
    /// Ask the desk whether this is the seller's PIN.
    AskPin(String),
    /// Ask the desk for the piece of this ticket.
    LookUp(TicketNumber),
    /// Ask a desk for a pairing.
    Pair {
        /// Its address.
        desk: String,
        /// The code that it shows.
        code: String,
    },
    /// Turn to what has not been seen of the cautions.
    ReadOn,
    /// Somebody is there: time begins anew.
    Attended,
    /// The guest has gone: nothing of theirs stays on the screen.
    Cleared,
    /// Open the desk's pages on this machine.
    OpenDesk,
    /// The seller leaves the program.
    Leave,
}
