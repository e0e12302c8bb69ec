//! The messages between a kiosk and its desk, as JSON over HTTP.
//!
//! | request | body | answer |
//! | --- | --- | --- |
//! | `POST /link/pair` | [`PairRequest`] | [`Pairing`], or 403 with a [`PairRefusal`] |
//! | `GET /link/news?have=N&revision=R&practice=P` | – | [`DeskNews`]; waits some seconds while nothing is newer than change `N` |
//! | `GET /link/picture/NAME` | – | the picture's bytes; the name is written as [`in_address`] has it |
//! | `POST /link/tickets` | [`Delivery`] | [`Receipt`](crate::ticket::Receipt) |
//! | `POST /link/report` | [`KioskReport`] | nothing |
//! | `POST /link/take-in` | [`SentTicket`], one that the news asked for | [`Receipt`](crate::ticket::Receipt) |
//! | `POST /link/pin` | [`PinQuestion`] | [`PinAnswer`] |
//! | `GET /link/piece/NUMBER` | – | [`PieceToThread`]: the piece of a ticket of this show, or 404 |
//!
//! `P` is `true` or `false`: whether the tablet practises, as far as it knows. A tablet of an earlier version does not say
//! it, and waits with 503 until a desk that practises is real again.
//!
//! What is refused has a status of 400 or more and, but for pairing, a [`Refused`] that says why.
//!
//! All carry the kiosk's key as `Authorization: Bearer KEY`; a wrong key is 401. For `/link/pair` it is the key that the
//! kiosk had before, if any: with it, it gets its own digit back.

use std::{collections::BTreeMap, fmt::Write};

use serde::{Deserialize, Deserializer, Serialize, de::Error};
use uuid::Uuid;

use crate::{
    catalog::Catalog,
    craft::Piece,
    machine::Battery,
    quoting::quoted,
    ticket::{NotTaken, SentTicket, TicketNumber},
};

/// `text` as one part of an address: letters, digits and the four signs that need no coding stand for themselves, every other
/// byte is written `%XX`. Source: RFC 3986, sections 2.1 and 2.3 (from memory).
pub fn in_address(text: &str) -> String {
    text.bytes().fold(String::with_capacity(text.len()), |mut part, byte| {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            part.push(char::from(byte));
        } else {
            // Writing to a String can't fail.
            let _ = write!(part, "%{byte:02X}");
        }
        part
    })
}

/// A kiosk asks to belong to the desk.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct PairRequest {
    /// The one-time code shown at the desk.
    pub code: String,
    /// The key by which the kiosk wants to be known, as 64 hexadecimal digits. A desk that knows it already has paired the
    /// kiosk, which has not heard the answer, and answers the same once more. Kiosks of earlier versions send none, and
    /// desks of earlier versions give one of their own.
    #[serde(default)]
    pub key: Option<String>,
}

/// Why a kiosk is not paired.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PairRefusal {
    /// The desk shows another code.
    WrongCode,
    /// The desk shows no code: none was asked for, or it was used, or its ten minutes are over.
    NoCode,
    /// Too many wrong codes; wait.
    Wait {
        /// How many seconds until the next try.
        seconds: u32,
    },
    /// All digits but the desk's own are given, or rest until the show closes.
    NoDigit,
    /// The desk could not write it down.
    DeskFailed,
}

/// What a kiosk keeps from being paired.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pairing {
    /// The desk's address, as in `http://192.168.4.1:7345`.
    #[serde(deserialize_with = "word")]
    pub desk: String,
    /// The kiosk's secret key.
    #[serde(deserialize_with = "word")]
    pub key: String,
    /// The kiosk's digit, 0 to 9, first in its ticket numbers.
    #[serde(deserialize_with = "digit")]
    pub digit: u8,
}

/// Longest address or key of a pairing, in bytes.
const LONGEST_WORD: usize = 300;

/// What can stand in a request's head: without blanks and control characters, and not without end.
fn word<'de, D: Deserializer<'de>>(from: D) -> Result<String, D::Error> {
    let text = String::deserialize(from)?;
    if !text.is_empty() && text.len() <= LONGEST_WORD && text.bytes().all(|b| b.is_ascii_graphic()) {
        Ok(text)
    } else {
        Err(D::Error::custom(format!("{} is no address and no key of a pairing", quoted(&text))))
    }
}

fn digit<'de, D: Deserializer<'de>>(from: D) -> Result<u8, D::Error> {
    let digit = u8::deserialize(from)?;
    if digit <= 9 { Ok(digit) } else { Err(D::Error::custom(format!("a tablet's digit is 0 to 9, not {digit}"))) }
}

/// What a kiosk has to know of the desk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct DeskNews {
    /// Counts the desk's changes; the next question gives it back.
    pub change: i64,
    /// The running show.
    pub show: i64,
    /// The first sequence number this kiosk has not used in the show, as far as the desk knows.
    pub next_sequence: u16,
    /// Hash of the catalogue and its pictures.
    pub revision: String,
    /// How many of each drop and base can still be had, by id.
    pub available: BTreeMap<String, u32>,
    /// The catalogue, when the question's revision was another.
    pub content: Option<CatalogContent>,
    /// Tickets set aside on this kiosk which the seller takes in all the same.
    #[serde(default)]
    pub wanted: Vec<Uuid>,
    /// Tickets set aside on this kiosk of which the seller does not want to hear any more.
    #[serde(default)]
    pub put_away: Vec<Uuid>,
    /// The desk practises: what is sent counts for nothing, and says so itself.
    #[serde(default)]
    pub practice: bool,
    /// Who is called to a seat; a desk of an earlier version does not tell.
    #[serde(default)]
    pub waiting: WaitingNews,
}

/// What lies on a kiosk, for the seller.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct KioskReport {
    /// Tickets on their way, oldest first.
    pub waiting: Vec<TicketReport>,
    /// Tickets that the desk did not take.
    pub aside: Vec<TicketReport>,
    /// Files that should be tickets and do not read.
    pub unreadable: usize,
    /// How full the tablet's battery is; none where it has none, or is of an earlier version.
    #[serde(default)]
    pub battery: Option<Battery>,
    /// Which version of the program the tablet is; none of an earlier one, which does not say so.
    #[serde(default)]
    pub version: Option<String>,
}

/// One ticket that lies on a kiosk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TicketReport {
    /// Id of the ticket.
    pub id: Uuid,
    /// The number the guest has.
    pub number: TicketNumber,
    /// How many drops it has.
    pub drops: usize,
    /// The sum, in words.
    pub sum: String,
    /// What is in the way, in English; empty while nothing is.
    pub trouble: String,
    /// The same as a code with its facts; tablets of earlier versions say none.
    #[serde(default, deserialize_with = "NotTaken::known_or_none", skip_serializing_if = "Option::is_none")]
    pub why: Option<NotTaken>,
}

/// The catalogue with what tells one picture from another.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CatalogContent {
    /// The whole catalogue, without its pictures.
    pub catalog: Catalog,
    /// SHA-256 of each picture, by file name, in hexadecimal.
    pub pictures: BTreeMap<String, String>,
}

/// One delivery of a ticket; may be repeated.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Delivery {
    /// The ticket as the guest sent it.
    pub ticket: SentTicket,
    /// True while the guest still waits and can choose something else: with a part gone, nothing is stored.
    /// False once the number has been given: the ticket is stored in any case, and its lines say what is short.
    pub refuse_if_short: bool,
}

/// Why a question was refused. Desks of earlier versions sent a page in its place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Refused {
    /// Plain words for the log and the seller.
    pub reason: String,
}

/// A kiosk asks whether this is the seller's PIN.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct PinQuestion {
    /// What was typed.
    pub pin: String,
}

/// What the desk says to a PIN.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PinAnswer {
    /// It is the seller's PIN.
    Right,
    /// It is another.
    Wrong,
    /// Too many tries; wait.
    Wait {
        /// How many seconds until the next try.
        seconds: u32,
    },
    /// No PIN has been set at the desk yet, and this is not the setup code.
    NotSet,
    /// No PIN has been set yet, and this is the setup code that the desk's terminal shows.
    SetupCode,
}

/// Who is called to a seat at the table, and how long a guest waits who takes a number now. Numbers of this line are no
/// ticket's.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct WaitingNews {
    /// Seats at the table; 0 where nobody has said how many, and no line is kept.
    pub seats: usize,
    /// Seats that can be taken at once.
    pub free: usize,
    /// The numbers that are called, the first called first.
    pub called: Vec<u32>,
    /// How many wait.
    pub waiting: usize,
    /// From and to how many minutes a guest waits who takes a number now, as it is told to guests: nine of ten wait longer
    /// than the one, nine of ten less than the other.
    pub minutes: Option<(u32, u32)>,
}

/// The piece of a ticket, for whoever collects and threads it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PieceToThread {
    /// As it is now: the seller may have changed it since it was sent.
    pub piece: Piece,
}
