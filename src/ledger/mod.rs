//! The book: every ticket, every count, every change of either, in one SQLite file.
//!
//! Events are only ever added; what a page shows is kept beside them in the same transaction.
//! One [`Ledger`] owns the one writing connection. Times are shown to people and decide when a hold ends;
//! order comes from the events' own numbers.

mod access;
mod close;
mod edit;
mod error;
mod facts;
mod receive;
mod reserve;
mod schema;
mod stock;
mod store;
mod ticket;

pub use access::{Browser, Kiosk, Visitor};
pub use close::{CloseOut, ClosedShow, SoldLine};
pub use error::LedgerError;
pub use receive::Receipt;
pub use stock::Count;
pub use store::{Event, Ledger, Show};
pub use ticket::{Part, Ticket, TicketLine};
