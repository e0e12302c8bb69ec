//! A sent piece with a number, until it is rung up or let go.

mod life;
mod not_taken;
mod number;
mod receipt;
mod sent;

pub use life::State;
pub use not_taken::NotTaken;
pub use number::{NumberError, TicketNumber};
pub use receipt::Receipt;
pub use sent::SentTicket;
