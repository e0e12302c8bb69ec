//! The seller's side: the server that owns the truth, its pages, and the interface for kiosks.
//!
//! One thread owns the ledger and one answers requests; the catalogue's folder is watched. Every page works by plain forms;
//! the script only keeps open pages up to date. Pages name the state, and the state names no page.
//!
//! | file | look here for |
//! | --- | --- |
//! | `server` | starting and stopping; which request goes where |
//! | `state` | what every request works with |
//! | `ledger_thread`, `ledger_queue` | the threads of the ledger, and who only reads; what waits to be entered, and what is entered together |
//! | `books`, `practice`, `practising` | the real ledger or a copy to practise on; keeping the two apart |
//! | `live_catalog` | the catalogue as it is now, also while the folder is broken |
//! | `editing`, `photos` | the editor of the table's files at work; photos as they come in |
//! | `cut_search` | the search for a better plan of cuts, which tells how far it is and can be stopped |
//! | `table_cuts` | which bases come off a spool, and what a sale takes off it |
//! | `photo_work`, `tray_drafts`, `tray_cutting` | one photo at a time; photos of trays that are being worked on, and the work on them |
//! | `connections` | who may be connected, and for how long without asking anything |
//! | `guard` | what every request has to pass, and what every answer carries |
//! | `refusal`, `refusal_forms`, `ledger_words`, `money_words`, `not_taken_words` | why a request is refused; as a page for the seller, in JSON for a tablet; why the ledger refuses, why an amount is none and why a tablet's ticket was not taken, in the reader's language |
//! | `language` | in which language a request is answered |
//! | `signed_in`, `seller`, `cookies`, `return_page` | who is signed in, how a request says so, what a browser keeps, and where signing in leads back to |
//! | `approval` | what needs the seller, on a helper's phone |
//! | `answers`, `kept_answers` | answers to forms with a PIN in them, which a browser must not send again |
//! | `auth`, `check_pin`, `pin_rules`, `guess_budgets` | PINs, setup code and pairing code; which PIN may be set; how often somebody may guess |
//! | `alarms` | lines in the log about who tries to get in |
//! | `pages` | the seller's pages, a file for each |
//! | `events` | telling open pages that something changed |
//! | `company` | who has which ticket open, and what each has seen of it |
//! | `fragments` | what of a page is different for an open one that says what it has |
//! | `assets`, `gallery`, `qr` | style, script and typefaces; portraits and small pictures; addresses as a camera reads them |
//! | `printing` | the line to the printer: what waits, what became of it |
//! | `kiosk_interface` | what kiosks ask |
//! | `tablets` | what lies on the tablets, and what the seller wants done with it |
//! | `clock` | the time that the desk goes by, and whether it was set |
//! | `end_holds` | ends holds whose time is over |
//! | `outward` | under which number others in the network reach this machine |
//! | `error` | why the desk does not start |

mod alarms;
mod answers;
mod approval;
mod assets;
mod auth;
mod books;
mod check_pin;
mod clock;
mod company;
mod connections;
mod cookies;
mod cut_search;
mod editing;
mod end_holds;
mod error;
mod events;
mod fragments;
mod gallery;
mod guard;
mod guess_budgets;
mod kept_answers;
mod kiosk_interface;
mod language;
mod ledger_queue;
mod ledger_thread;
mod ledger_words;
mod live_catalog;
mod money_words;
mod not_taken_words;
mod outward;
mod pages;
mod photo_work;
mod photos;
mod pin_rules;
mod practice;
mod practising;
mod printing;
mod qr;
mod refusal;
mod refusal_forms;
mod return_page;
mod seller;
mod server;
mod signed_in;
mod state;
mod table_cuts;
mod tablets;
mod tray_cutting;
mod tray_drafts;

pub use clock::Clock;
pub use error::DeskError;
pub use server::{Desk, DeskConfig};
