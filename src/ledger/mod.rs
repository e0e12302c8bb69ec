//! The book: every ticket, every count, every change of either, in one SQLite file.
//!
//! Events are only ever added; what a page shows is kept beside them in the same transaction.
//! One [`Ledger`] owns the one writing connection. Times are shown to people and decide when a hold ends;
//! order comes from the events' own numbers.

mod access;
mod backup;
mod close;
mod confirm;
mod edit;
mod error;
mod facts;
mod holds;
mod list;
mod open;
mod prices;
mod receive;
mod reserve;
mod schema;
mod stock;
mod store;
mod sums;
mod ticket;
mod together;

pub use access::{Browser, Kiosk, Visitor};
pub use backup::{BackupError, Copied, back_up, read_through};
pub use close::ClosedShow;
pub use confirm::Charge;
pub use error::LedgerError;
pub use list::{Group, Listed};
pub use stock::Count;
pub use store::{Event, Ledger, Show};
pub use sums::{CloseOut, LateSums, SetApart, SoldLine};
pub use ticket::{Part, SumDoubt, Ticket, TicketLine};
pub use together::{AfterCommit, Work};
