//! Chatelaine, the house: rooms whose arrows all point one way.
//!
//! ```text
//! quoting   what others wrote, fit for a message       (imports nothing of the house; every room may use it)
//! qr        codes that a camera reads              (imports nothing of the house)
//! disk      durable files, locks, room left, hashes     (imports nothing of the house)
//! machine   what the computer says of itself          (imports nothing of the house)
//! ron_tree  files written by hand, with places         (imports nothing of the house)
//! craft     what a piece is made of                    (imports nothing of the house)
//! waiting   guests who wait for a seat                 (imports nothing of the house)
//! money     amounts, quote, tax                        (craft)
//! export    tables for spreadsheets                    (craft)
//! hang      how it hangs                               (craft)
//! prep      how many to make, costs, shopping, cuts     (craft, money)
//! caution   the small-parts gauge, rules, what to say  (ron_tree, craft)
//! catalog   files: read, check, report, watch          (disk and the pure rooms)
//! photo     a tray by one photo: straightened, cut out  (craft)
//! portrait  a piece's picture on the CPU               (craft, hang, catalog)
//! ticket    numbers, life of a ticket                  (craft, money, caution)
//! ledger    tickets, counts, entries, in SQLite          (ticket and above; no HTTP)
//! bench     before and after a show, from the ledger (prep, catalog, ledger)
//! lang      the four languages: texts, numbers, money  (ron_tree, caution, catalog)
//! paper     receipts and slips, as PDF and for printers (lang, catalog, qr; no HTTP, no clock)
//! link      the kiosk's line to the desk               (machine, ticket, catalog; no Bevy)
//! guest     the guest's session without an engine        (link, lang and the pure rooms; no Bevy)
//! desk      the server: pages and kiosk interface      (ledger, lang, paper, link's messages; no Bevy)
//! kiosk     the guest's tablet, in Bevy                (guest, link, lang and the pure rooms)
//! ```
//!
//! `quoting`, `qr`, `ron_tree`, `waiting`, `craft`, `money`, `export`, `hang`, `photo`, `prep` and `caution` are pure: no files, no clock, no engine. A test
//! reads every `use` line and refuses an arrow that is not listed.

pub mod bench;
pub mod catalog;
pub mod caution;
pub mod craft;
pub mod desk;
pub mod disk;
pub mod export;
pub mod guest;
pub mod hang;
#[cfg(feature = "kiosk")]
pub mod kiosk;
pub mod lang;
pub mod ledger;
pub mod link;
pub mod machine;
pub mod money;
pub mod paper;
pub mod photo;
pub mod portrait;
pub mod prep;
pub mod qr;
pub mod quoting;
pub mod ron_tree;
pub mod ticket;
pub mod waiting;
