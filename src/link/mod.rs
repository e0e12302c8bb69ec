//! The kiosk's line to the desk: the last good catalogue and pictures, and the outbox, kept on disk.
//!
//! With no desk in reach guests go on designing; a ticket gets its number at once and is delivered later,
//! once and only once.
//!
//! | file | look here for |
//! | --- | --- |
//! | `handle` | opening the line, sending, asking for the PIN, pairing |
//! | `shared` | what the handle and the line's threads share |
//! | `ask` | one question to the desk, and what comes of it |
//! | `follow` | following the desk's news and keeping them |
//! | `deliver` | bringing the outbox to the desk |
//! | `outbox` | tickets on their way, a file each, and the numbers already given |
//! | `report` | telling the desk what lies here, and bringing in what the seller asks for |
//! | `own_key` | the key with which the kiosk asks to be paired, also once more |
//! | `pin_memory` | the seller's PIN while the desk is away |
//! | `wire` | the messages between a kiosk and its desk |

mod ask;
mod deliver;
mod follow;
mod handle;
mod outbox;
mod own_key;
mod pin_memory;
mod report;
mod shared;
pub mod wire;

use std::{
    collections::BTreeMap,
    path::PathBuf,
    sync::{Arc, mpsc},
};

use uuid::Uuid;

use crate::{catalog::Catalog, caution::Verdict, craft::Piece, money::Quote, ticket::TicketNumber};
pub use handle::{Link, LinkError, kept_pairing};
pub use own_key::own_key;
pub use wire::{Pairing, PinAnswer, WaitingNews};

/// The port on which a desk answers unless told otherwise.
pub const DESK_PORT: u16 = 7345;

/// How a link starts.
pub struct LinkConfig {
    /// The kiosk's own folder for catalogue, pictures, outbox and pairing.
    pub dir: PathBuf,
    /// The desk this kiosk belongs to, if that was settled outside (one process with the desk);
    /// otherwise the pairing kept in `dir` is used.
    pub pairing: Option<Pairing>,
    /// Called after every piece of news, from another thread: wakes a sleeping screen.
    pub wake: Arc<dyn Fn() + Send + Sync>,
}

/// What the kiosk knows of the desk at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Snapshot {
    /// The last good catalogue.
    pub catalog: Arc<Catalog>,
    /// How many of each drop and base can still be had, by id; an id that is missing is sold out.
    pub available: BTreeMap<String, u32>,
    /// Hash of the catalogue and its pictures.
    pub revision: String,
    /// Who is called to a seat, and how long a guest waits.
    pub waiting: WaitingNews,
}

impl Snapshot {
    /// How many of `id` can still be had.
    pub fn available(&self, id: &str) -> u32 {
        self.available.get(id).copied().unwrap_or(0)
    }
}

/// A piece that a guest wants to send.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The ticket's id, a UUIDv7: ids sort by the time of sending.
    pub id: Uuid,
    /// The piece as it hangs on the screen.
    pub piece: Piece,
    /// The sum on the screen.
    pub quote: Quote,
    /// The cautions on the screen.
    pub verdict: Verdict,
    /// Whether a grown-up said that they had read them.
    pub grown_up_confirmed: bool,
}

/// A ticket that is safe on this kiosk's disk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Kept {
    /// The ticket's id.
    pub id: Uuid,
    /// The number the guest reads.
    pub number: TicketNumber,
}

/// Something that happened on the line.
#[derive(Debug, Clone, PartialEq)]
pub enum News {
    /// Another catalogue, other pictures, or other counts.
    Snapshot(Arc<Snapshot>),
    /// A picture has arrived or changed.
    Picture {
        /// Its name in the catalogue.
        name: String,
        /// Where it is kept on this device, as it is (PNG or JPEG).
        file: PathBuf,
    },
    /// The desk can be reached, or no longer.
    DeskInReach(bool),
    /// The desk does not know this kiosk's key any more, or knows it again: without it no ticket arrives.
    LetGo(bool),
    /// The desk practises, or no longer: nothing that is sent meanwhile counts.
    Practice(bool),
    /// This device's disk is nearly full, or has room again.
    DiskNearlyFull(bool),
    /// The ticket is in the desk's ledger; `short` names parts the desk could not hold.
    Delivered {
        /// Id and number of the ticket.
        kept: Kept,
        /// Ids of parts that could not be held (only when the number was given with the desk away).
        short: Vec<String>,
    },
    /// The ticket is safe here and will be delivered when the desk is back: its number is good.
    Waiting(Kept),
    /// Somebody else took the last of these parts first; nothing was sent, the guest can choose again.
    Short {
        /// The ticket that was taken back.
        kept: Kept,
        /// Ids of the parts that are gone.
        parts: Vec<String>,
    },
    /// The desk will never take this ticket; it is kept aside for the seller.
    Refused {
        /// Id and number of the ticket.
        kept: Kept,
        /// Why, in the desk's words.
        reason: String,
    },
    /// What [`Link::send_aside`] could not keep; nothing was sent.
    NotKept {
        /// The draft's id.
        id: Uuid,
        /// Why it could not be kept.
        error: SendError,
    },
    /// The answer to [`Link::ask_pin`]; `None` when the desk is away and this device has never seen the right PIN.
    Pin(Option<PinAnswer>),
    /// The answer to [`Link::look_up`].
    LookedUp {
        /// The number that was asked for.
        number: TicketNumber,
        /// What there is of it.
        found: LookedUp,
    },
    /// The answer to [`Link::pair`]: the kiosk's digit, or what went wrong.
    Paired(Result<u8, PairError>),
}

/// What there is of a ticket's number.
#[derive(Debug, Clone, PartialEq)]
pub enum LookedUp {
    /// The piece to be threaded.
    Piece(Piece),
    /// No ticket of this show has the number.
    Unknown,
    /// The desk is away, and the ticket does not lie on this device.
    Away,
}

/// Why a ticket could not be kept.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SendError {
    /// The kiosk does not belong to a desk yet.
    #[error("this tablet is not paired with a desk yet")]
    NotPaired,
    /// The desk does not know this kiosk any more.
    #[error("the desk has let this tablet go; pair it again")]
    LetGo,
    /// All numbers of this kiosk are used up.
    #[error(transparent)]
    Numbers(#[from] crate::ticket::NumberError),
    /// It was sent to practise, and practice ended meanwhile.
    #[error("practice has ended; what is sent counts from now on")]
    PracticeOver,
    /// The disk did not take it: full, gone, or read-only.
    #[error("the ticket could not be written to this tablet's disk ({0})")]
    Disk(String),
}

impl From<std::io::Error> for SendError {
    fn from(error: std::io::Error) -> Self {
        Self::Disk(error.to_string())
    }
}

/// Why a kiosk was not paired.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PairError {
    /// Nobody answers at the address.
    #[error("no desk answers at {desk} ({reason}); compare the address with the desk's Kiosks page")]
    NotReached {
        /// The address that was tried.
        desk: String,
        /// Why, for the log.
        reason: String,
    },
    /// Somebody else answers there.
    #[error("what answers at {desk} is no desk; compare the address with the desk's Kiosks page")]
    NotADesk {
        /// The address that was tried.
        desk: String,
    },
    /// The desk shows another code.
    #[error("the desk shows another code; compare it with the Kiosks page")]
    WrongCode,
    /// The desk shows none.
    #[error("the desk shows no code now; ask for a new one on its Kiosks page")]
    NoCode,
    /// Too many wrong codes.
    #[error("too many wrong codes; wait {seconds} seconds")]
    Wait {
        /// How many seconds until the next try.
        seconds: u32,
    },
    /// No digit is free.
    #[error("the desk has no digit left for another tablet; release one and close the show")]
    NoDigit,
    /// The desk could not write it down.
    #[error("the desk could not write the pairing down; look at the desk")]
    DeskFailed,
    /// This kiosk could not.
    #[error("the pairing could not be written to this tablet's disk ({0})")]
    Disk(String),
}

/// The receiving end for [`News`].
pub type NewsReceiver = mpsc::Receiver<News>;
