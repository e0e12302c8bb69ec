//! A sent piece with a number, until it is rung up or let go.

mod life;
mod number;
mod sent;

pub use life::{State, Tender};
pub use number::{NumberError, TicketNumber};
pub use sent::SentTicket;
