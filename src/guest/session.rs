//! What one guest has done so far, and the seller's part of the same tablet. All of a guest's is gone after a reset.

use std::collections::BTreeSet;

use rust_decimal::Decimal;
use uuid::Uuid;

use super::told::{SellerNote, Told};
use crate::{
    caution::Verdict,
    craft::{Colour, Finish, History, Sort, Token, Wearer},
    link::Kept,
    ticket::TicketNumber,
};

/// The screens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Screen {
    /// A sample piece sways; touch to begin.
    #[default]
    Welcome,
    /// Necklace or bangle, finish, length.
    Base,
    /// Drops onto the base.
    Stage,
    /// The piece looked over before it is sent.
    Review,
    /// The number.
    Sent,
    /// Where does this go?
    PutBack,
    /// A sent piece is collected and threaded.
    Threading,
    /// PIN and the seller's menu.
    Seller,
}

/// A sheet over a screen. It carries what it is about, not how it is said: the screens word it.
#[derive(Debug, Clone, PartialEq)]
pub enum Overlay {
    /// The lines of the tag.
    Lines,
    /// Who is it for?
    Wearer,
    /// Sort, finish, colour, budget.
    Filters,
    /// All cautions.
    Cautions,
    /// How far round is the neck?
    Neck,
    /// Start over?
    StartOver,
    /// The languages.
    Languages,
    /// Size of the text, form of the colours, more or less motion.
    Looks,
    /// Something the guest has to be told.
    Told(Told),
}

/// Which drops the trays show brightly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Filters {
    /// Only this sort.
    pub sort: Option<Sort>,
    /// Only this finish.
    pub finish: Option<Finish>,
    /// Only this colour.
    pub colour: Option<Colour>,
    /// Only what costs no more than this by itself.
    pub up_to: Option<Decimal>,
    /// Only what suits this wearer.
    pub suits: Option<Wearer>,
    /// The whole piece costs no more than this.
    pub budget: Option<Decimal>,
}

/// How far the sending has come.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum Sending {
    /// Not yet.
    #[default]
    No,
    /// On the tablet's disk; the desk is being asked.
    Asked(Uuid),
    /// The number is good.
    Given {
        /// The ticket.
        kept: Kept,
        /// The desk has it.
        delivered: bool,
        /// Parts the desk could not hold.
        short: Vec<String>,
    },
}

/// The guest's things.
#[derive(Debug, Clone, Default)]
pub struct Session {
    /// The design and its changes: the truth.
    pub history: History,
    /// What the trays show.
    pub filters: Filters,
    /// The open sheet.
    pub overlay: Option<Overlay>,
    /// The shown tray, counted from 0.
    pub tray: usize,
    /// The first row shown of it.
    pub tray_row: usize,
    /// The hung drop with buttons round it.
    pub selected: Option<Token>,
    /// The whole piece instead of the drops from near.
    pub whole_view: bool,
    /// The piece is shown as large as it is. Only where the screen has been measured.
    pub true_size: bool,
    /// The cautions that a grown-up has read. Others that arise later have not been read.
    pub read: Option<Verdict>,
    /// The sending.
    pub sending: Sending,
    /// The drop whose home is shown on the put-back screen.
    pub whereabouts: Option<String>,
    /// The screen from which somebody looks where a drop goes.
    pub put_back_from: Screen,
    /// The piece that somebody threads.
    pub threading: Threading,
}

/// A piece that somebody threads, or its number as far as it is typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Threading {
    /// The digits so far.
    pub typed: String,
    /// The number that is being looked up.
    pub asked: Option<TicketNumber>,
    /// What is said above the keypad.
    pub note: Option<ThreadingNote>,
    /// The ticket, once it is found.
    pub found: Option<TicketNumber>,
    /// What was collected already: 0 is the base, the homes follow in walking order from 1 on.
    pub collected: BTreeSet<usize>,
}

/// Why there is no piece to be seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThreadingNote {
    /// One digit is wrong, or two are swapped.
    NoNumber,
    /// No ticket has the number.
    Unknown,
    /// The desk can't be asked.
    Away,
}

/// The seller's part of the screen.
#[derive(Debug, Clone, Default)]
pub struct SellerPart {
    /// What is typed.
    pub step: SellerStep,
    /// The keys so far.
    pub typed: String,
    /// Said above the keypad and the menu.
    pub note: Option<SellerNote>,
}

/// Where the seller is.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum SellerStep {
    /// The PIN is asked.
    #[default]
    Pin,
    /// The PIN is being checked.
    Checking,
    /// The menu.
    Menu,
    /// The desk's address is asked.
    Address,
    /// The desk's code is asked for this address.
    Code {
        /// The address.
        desk: String,
    },
    /// The desk is being asked.
    Pairing,
    /// A bank card is held against the screen.
    Card {
        /// Logical pixels in a millimetre, as the drawn card now has it.
        px_per_mm: f32,
    },
}
