//! Why the book refuses.

use rusqlite::ffi;
use uuid::Uuid;

use crate::{
    catalog::PieceError,
    money::MoneyError,
    ticket::{NumberError, State},
};

/// Why something could not be entered or read.
#[derive(Debug, thiserror::Error)]
pub enum LedgerError {
    /// The disk is full; nothing was entered, and what is stored can still be read.
    #[error(
        "the disk is full, so nothing was entered; what is stored is safe. Make room on this computer and do it again"
    )]
    DiskFull,
    /// The database refused: file damaged, file in use.
    #[error("the ledger could not be read or written: {0}")]
    Database(rusqlite::Error),
    /// A stored document does not read back.
    #[error("an entry of the ledger is damaged: {0}")]
    Damaged(#[from] serde_json::Error),
    /// The SQLite library in the program can lose a commit.
    #[error("this program was built with SQLite {0}, which can lose an acknowledged entry; 3.51.3 or later is needed")]
    OldLibrary(&'static str),
    /// The file was written by a later version of this program.
    #[error("the ledger was written by a later version of this program (layout {found}, this one knows {known})")]
    Newer {
        /// Layout in the file.
        found: i64,
        /// Newest layout this program knows.
        known: i64,
    },
    /// No such ticket.
    #[error("there is no ticket {0}")]
    NoTicket(Uuid),
    /// No such line on the ticket.
    #[error("the ticket has no such line")]
    NoLine,
    /// The ticket can't go there from where it is.
    #[error("a ticket that is {} can't become {}", from.word(), to.word())]
    State {
        /// Where it is.
        from: State,
        /// Where it was to go.
        to: State,
    },
    /// The ticket is paid or let go, so its lines stand.
    #[error("a ticket that is {} can't be changed any more", .0.word())]
    Closed(State),
    /// Not everything is ticked off.
    #[error("{0} of the piece's parts are not ticked off yet")]
    NotTicked(usize),
    /// The guest was not told.
    #[error("the piece has cautions; tick that the guest was told before ringing up")]
    NotTold,
    /// The count says that none is left.
    #[error("the count says that no {0:?} is left; if it lies before you, say that it was found")]
    NoneLeft(String),
    /// The catalogue does not have the part.
    #[error(transparent)]
    Piece(#[from] PieceError),
    /// The sum can't be made.
    #[error(transparent)]
    Money(#[from] MoneyError),
    /// The count's part is unknown.
    #[error("nothing called {0:?} is counted here")]
    NoCount(String),
    /// All ten digits are given, or rest.
    #[error(
        "all ten digits are given, or rest until the show closes since their tablet was released; close the show, or \
         pair a released tablet again"
    )]
    TenKiosks,
    /// Numbers are used up.
    #[error(transparent)]
    Number(#[from] NumberError),
}

impl From<rusqlite::Error> for LedgerError {
    fn from(error: rusqlite::Error) -> Self {
        match error.sqlite_error().map(|error| error.extended_code) {
            // The second when there is no room for the index of the write-ahead log.
            Some(ffi::SQLITE_FULL | ffi::SQLITE_IOERR_SHMSIZE) => Self::DiskFull,
            _ => Self::Database(error),
        }
    }
}
