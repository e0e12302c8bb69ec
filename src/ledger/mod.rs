//! The ledger: every ticket, every count, every change of either, in one SQLite file.
//!
//! Events are only ever added; what a page shows is kept beside them in the same transaction.
//! One [`Ledger`] owns the one writing connection. Times are shown to people and decide when a hold ends;
//! order comes from the events' own numbers.
//!
//! | file | look here for |
//! | --- | --- |
//! | `store`, `rows` | the ledger itself; its shows, entries and tickets as they are read and written |
//! | `schema`, `shared_commit` | the tables and those of earlier layouts; changes that share one commit |
//! | `open`, `reserve`, `backup`, `restore` | opening it or refusing a damaged one; room for a full disk; a copy while it is in use, and one that takes its place |
//! | `practice` | a copy to practise on |
//! | `receive`, `by_hand` | a ticket arrives; one is opened at the desk for a piece threaded by hand |
//! | `ticket`, `list` | a ticket as the desk works on it; lists in windows |
//! | `looks` | how drops of assortments look, whatever is done with the others |
//! | `edit`, `more_parts`, `confirm` | what the seller does with a ticket, and with a whole piece; a sum that no price list gives |
//! | `bill`, `sell` | what is paid together, and put right afterwards; a piece that becomes the guest's |
//! | `stock`, `holds`, `cut_to_length` | counts; how long parts are held; chains that are none of those that lie ready |
//! | `counting`, `stock_moves`, `sold_pieces` | counting by hand and why it differs; how each count moved, and was on a day; all that was sold |
//! | `workbook` | what the bench keeps: lots, checks, plans |
//! | `take_catalog` | another catalogue is taken over |
//! | `price_by_hand` | what the seller takes off, and plain lines on a piece |
//! | `prices`, `facts` | the price lists that this table had; what the catalogue last said of each part |
//! | `about_show` | what a show is, as it is told at the desk |
//! | `close`, `sums`, `show_end` | the end of a show; what it comes to; what else is noted then |
//! | `moved`, `year`, `year_tables` | what moved on each day; a year by quarter and place, also for spreadsheets |
//! | `report` | everything that is told of one show, for files |
//! | `waiting` | guests who wait for a seat |
//! | `access`, `staff`, `sessions` | paired kiosks; who works at the desk, and who is signed in |
//! | `error` | why the ledger refuses |

mod about_show;
mod access;
mod backup;
mod bill;
mod by_hand;
mod close;
mod confirm;
mod counting;
mod cut_to_length;
mod edit;
mod error;
mod facts;
mod holds;
mod list;
mod looks;
mod more_parts;
mod moved;
mod open;
mod practice;
mod price_by_hand;
mod prices;
mod receive;
mod report;
mod reserve;
mod restore;
mod rows;
mod schema;
mod sell;
mod sessions;
mod shared_commit;
mod show_end;
mod sold_pieces;
mod staff;
mod stock;
mod stock_moves;
mod store;
mod sums;
mod take_catalog;
mod ticket;
mod waiting;
mod workbook;
mod year;
mod year_tables;

pub(crate) use about_show::LONGEST_SHOW_NAME;
pub use about_show::{AboutError, AboutShow, ShowKind, ShowListed};
pub use access::Kiosk;
pub use backup::{BackupError, Copied, back_up, read_through};
pub use bill::{
    Bill, BillSum, BilledTicket, Corrected, Correction, Given, Goods, Paying, Payment, Sale, SaleId, SaleQuery, Seen,
    TakeBack, Why,
};
pub use close::ClosedShow;
pub use confirm::Charge;
pub use counting::{CountLine, Counted, CountingEntry, CountingError, LastCount, Reason, Said};
pub use error::LedgerError;
pub use list::Group;
pub use moved::Moved;
pub use report::{ReportedTicket, ShowReport, ShowTable};
pub use restore::{restore_at_next_start, restore_not_after_all, restore_now, restore_waits};
pub use rows::{Event, Listed, Show};
pub use sessions::{Browser, Session, Visitor};
pub use shared_commit::{AfterCommit, Work};
pub use show_end::{Closing, PartThen, ShowEnd, reward_of};
pub use sold_pieces::SoldTicket;
pub(crate) use staff::{LONGEST_NAME, MOST_HELPERS};
pub use staff::{Role, SELLER, Staff, StaffError};
pub use stock::Count;
pub use stock_moves::{StockMove, StockOn};
pub use store::Ledger;
pub use sums::{CloseOut, LateSums, SetApart, SoldLine, TakenBack};
pub use ticket::{Part, SumDoubt, Ticket, TicketLine};
pub use workbook::{KeptPage, written};
pub use year::{Off, PaymentLine, ReductionLine, ShowInQuarter, TaxLine, Year};
pub use year_tables::YearTable;
