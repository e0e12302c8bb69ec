//! Why the ledger refuses.

use std::path::{Path, PathBuf};

use rusqlite::ffi;
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{AboutError, CountingError, StaffError};
use crate::{
    catalog::PieceError,
    caution::CautionCode,
    money::{Currency, MoneyError},
    quoting::quoted,
    ticket::{NumberError, State},
    waiting::WaitingError,
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
    /// The document of one ticket does not read back.
    #[error("ticket {number} can't be read ({why}); what else is in the ledger is not touched by that")]
    Unreadable {
        /// The number that the guest has.
        number: String,
        /// What is wrong with it.
        why: String,
    },
    /// The file is no ledger any more. Where and what is wrong, and the file's folder.
    #[error(
        "the ledger {} is damaged ({why}), so the desk did not start; nothing in it was changed.\n{}",
        file.display(),
        what_to_do(file)
    )]
    DamagedFile {
        /// The ledger's file.
        file: PathBuf,
        /// What is wrong with it.
        why: String,
    },
    /// The file is empty or gone, though there was a ledger in the folder.
    #[error(
        "the ledger {} is empty or gone, though this folder had one, so the desk did not start. Was it copied without \
         ledger.sqlite-wal beside it, while a desk was running?\n{}",
        .0.display(),
        what_to_do(.0)
    )]
    Emptied(PathBuf),
    /// The file was found damaged while the desk was running.
    #[error("the ledger's file is damaged; end the desk and start it again: it then says what can be done")]
    FoundDamaged,
    /// What was entered together with other things could not be kept.
    #[error("this could not be kept, and nothing of it was entered ({0}); do it again")]
    NotKept(String),
    /// Something in the program went wrong in the middle of it.
    #[error("something went wrong at the desk, and nothing of this was entered; what was entered before is safe")]
    Panicked,
    /// The sum is none of this table's, and the seller did not say yet what is charged.
    #[error("the sum on the ticket is none of this table's; say first what is charged")]
    SumNotConfirmed,
    /// No show can come after the running one.
    #[error(
        "show {0} has the last number that a ledger has, so no other can follow it; nothing was closed. Begin a new ledger"
    )]
    LastShow(i64),
    /// A closed show stays as it was.
    #[error("show {0} is closed, and what it was can't be changed any more")]
    ShowClosed(i64),
    /// Nothing of the kind can be said of a show.
    #[error(transparent)]
    About(#[from] AboutError),
    /// Nothing has to be said about the sum.
    #[error("the sum on the ticket is one of this table's; it is charged as the guest saw it")]
    SumStands,
    /// The sum can't be charged as it was seen.
    #[error("the sum is in {}, and this table takes {}; charge today's prices or let the ticket go", .found.code, .taken.code)]
    OtherCurrency {
        /// The sum's currency.
        found: Currency,
        /// The currency that the table takes.
        taken: Currency,
    },
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
    /// The file was written by an earlier version of this program, and is only looked at.
    #[error("the ledger is of an earlier version (layout {found}, this one has {known}); start the desk on it once")]
    Older {
        /// Layout in the file.
        found: i64,
        /// The layout that this program writes.
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
    /// The piece is not for its wearer, and the seller did not confirm these hazards by name.
    #[error(
        "the piece is not for this wearer ({}); change the piece or the wearer, or confirm each of these as sold for a \
         grown-up", names(.0)
    )]
    NotSuitable(Vec<CautionCode>),
    /// Something in the piece may not be sold to anybody.
    #[error("a part of the piece may not be sold to anybody ({}); take it off the piece", names(.0))]
    Forbidden(Vec<CautionCode>),
    /// The ticket has no such hazard to confirm.
    #[error("nothing of this kind speaks against the piece as it is now")]
    NoHazard,
    /// The count says that none is left.
    #[error("the count says that no {} is left; if it lies before you, say that it was found", quoted(.0))]
    NoneLeft(String),
    /// No such bill.
    #[error("there is no bill {0}")]
    NoBill(Uuid),
    /// The ticket stands on another bill, or on none.
    #[error("the ticket does not stand on this bill")]
    NotOnBill,
    /// The ticket is to be paid together with other things.
    #[error("the ticket is on a bill with other things, or a part of it is paid; take the money on the bill")]
    WithOthers,
    /// The bill is as long as bills get.
    #[error("a bill has {0} tickets and {0} lines at most; begin another")]
    LongBill(usize),
    /// Somebody else changed the bill. What is left to pay now.
    #[error("the bill has changed meanwhile, {0} is left to pay; look at it again, nothing was taken")]
    BillChanged(String),
    /// Everything is paid.
    #[error("everything on the bill is paid")]
    NothingToPay,
    /// No part of what is due can be that much.
    #[error("{amount} is no part of what is due: say an amount above 0 and up to {due}, in coins that there are")]
    NoPart {
        /// The amount.
        amount: Decimal,
        /// What is due.
        due: String,
    },
    /// Less was given than is due.
    #[error("{given} was given and {due} is due; say what was given, or take a part")]
    GivenTooLittle {
        /// What was given.
        given: String,
        /// What is due.
        due: String,
    },
    /// It is paid, so it is taken back and not taken off.
    #[error("this is paid, or a part of it is; take it back with its reason")]
    PaidAlready,
    /// It is not paid, so it is taken off and not taken back.
    #[error("this is not paid yet; take it off")]
    NotPaid,
    /// The piece was not sold.
    #[error("a ticket that is {} was not sold, so nothing of it can be taken back", .0.word())]
    NotSold(State),
    /// The entry is right, or was put right before.
    #[error("this payment is noted in that way already, or was put right before")]
    RightAlready,
    /// There is no reason.
    #[error("say why; a few words are enough")]
    NoReason,
    /// No words, or too many.
    #[error("write a few words in one line, {0} characters at most")]
    NoWords(usize),
    /// The catalogue does not have the part.
    #[error(transparent)]
    Piece(#[from] PieceError),
    /// The sum can't be made.
    #[error(transparent)]
    Money(#[from] MoneyError),
    /// The count's part is unknown.
    #[error("nothing called {} is counted here", quoted(.0))]
    NoCount(String),
    /// So many of a part can't be there.
    #[error("there would be more than {0} of it, which no compartment holds")]
    TooManyThere(u32),
    /// What was counted can't be entered.
    #[error(transparent)]
    Counting(#[from] CountingError),
    /// All digits but the desk's own are given, or rest.
    #[error(
        "nine digits are given, or rest until the show closes since their tablet was released, and one is the desk's own; \
         close the show, or pair a released tablet again"
    )]
    NineKiosks,
    /// Another piece was opened with the same form.
    #[error("another piece was opened with this form already; begin a new sale for this one")]
    OpenedOtherwise,
    /// Tablets have all ten digits, as earlier versions gave them.
    #[error(
        "tablets have all ten digits, so the desk has none for numbers of its own; release a tablet, then close the show"
    )]
    NoDigitForTheDesk,
    /// Somebody can't be entered as working here.
    #[error(transparent)]
    Staff(#[from] StaffError),
    /// The line of those who wait does not stand so.
    #[error(transparent)]
    Waiting(#[from] WaitingError),
    /// Numbers are used up.
    #[error(transparent)]
    Number(#[from] NumberError),
}

fn names(codes: &[CautionCode]) -> String {
    codes.iter().map(|code| code.words()).collect::<Vec<_>>().join(", ")
}

/// The ways on from a ledger that can't be used, with what each of them costs.
fn what_to_do(file: &Path) -> String {
    let folder = file.parent().unwrap_or(file).display();
    format!(
        "What you can do: move every file whose name begins with \"ledger.\" out of {folder} and keep them. Then either\n\
         - put a backup there under the name ledger.sqlite (made by `chatelaine backup`) and start again: what was \
         entered since that backup is lost, apart from tickets that still wait on a tablet; or\n\
         - start again without one: a new ledger begins. Tickets, sums and counts of the old one are not in it; the PIN is \
         chosen anew and the tablets are paired anew."
    )
}

impl LedgerError {
    /// The same for another who waited for the same commit.
    pub(super) fn told_again(&self) -> Self {
        match self {
            Self::DiskFull => Self::DiskFull,
            Self::FoundDamaged => Self::FoundDamaged,
            other => Self::NotKept(other.to_string()),
        }
    }
}

impl From<rusqlite::Error> for LedgerError {
    fn from(error: rusqlite::Error) -> Self {
        match error.sqlite_error().map(|error| error.extended_code) {
            // The second when there is no room for the index of the write-ahead log.
            Some(ffi::SQLITE_FULL | ffi::SQLITE_IOERR_SHMSIZE) => Self::DiskFull,
            Some(code) if matches!(code & 0xff, ffi::SQLITE_CORRUPT | ffi::SQLITE_NOTADB) => Self::FoundDamaged,
            _ => Self::Database(error),
        }
    }
}
