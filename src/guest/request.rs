//! Everything a guest or the seller can ask of the tablet.

use rust_decimal::Decimal;

use super::{looks::Looks, session::Overlay};
use crate::{
    craft::{Colour, Finish, Length, Sort, Token, Wearer},
    lang::Lang,
};

/// One request. Painters attach them to what can be touched, fingers and keys write them, and
/// [`super::Guest::apply`] alone does them.
#[derive(Debug, Clone, PartialEq)]
pub enum Request {
    /// Start a piece.
    Begin,
    /// Look up where a drop lives.
    PutBack,
    /// One screen back.
    Back,
    /// Speak this language.
    Speak(Lang),
    /// Show the screens so, for this guest.
    Look(Looks),
    /// Put the trays on the left, or on the right, for this guest.
    TraysLeft(bool),
    /// Open a sheet over the screen.
    Open(Overlay),
    /// Close the sheet.
    Close,
    /// Take this base.
    ChooseBase(String),
    /// So many steps longer (shorter if negative).
    Longer(i32),
    /// From the base to the stage.
    ToStage,
    /// From wherever it was said that this base does not suit, to the bases.
    AnotherBase,
    /// Show this tray, counted from 0.
    ShowTray(usize),
    /// Show the next rows of the tray (the ones before if negative).
    TurnTray(i32),
    /// Hang a drop of this kind.
    Hang {
        /// Id of the kind.
        kind: String,
        /// Number from the left; at the end if `None`.
        at: Option<usize>,
    },
    /// Say why this drop can't be hung.
    WhyNot(String),
    /// Choose a hung drop, or let it be again.
    Select(Token),
    /// Move a hung drop by places to the right (left if negative).
    Shift {
        /// Which.
        token: Token,
        /// How far.
        by: i32,
    },
    /// Slide a hung drop so that it becomes number `to`.
    Slide {
        /// Which.
        token: Token,
        /// Number from the left.
        to: usize,
    },
    /// Take a hung drop off.
    PullOff(Token),
    /// Take the last change back.
    Undo,
    /// Make it again.
    Redo,
    /// Begin anew, without asking.
    StartOver,
    /// Put a piece together for the guest.
    Surprise,
    /// See the whole piece, or the drops from near.
    WholeView,
    /// See the piece as large as it is, or as before.
    TrueSize,
    /// Who it is for.
    For(Wearer),
    /// How far round the neck is, or that it was not measured.
    Neck(Option<Length>),
    /// Turn to the cautions on Review that have not been seen yet.
    ReadOn,
    /// Show only this sort.
    OnlySort(Option<Sort>),
    /// Show only this finish.
    OnlyFinish(Option<Finish>),
    /// Show only this colour.
    OnlyColour(Option<Colour>),
    /// Only drops that cost no more than this, or all.
    UpTo(Option<Decimal>),
    /// Show only what suits this wearer; on the way out of a piece that does not suit, this leads to the stage.
    OnlySuiting(Option<Wearer>),
    /// The guest has this much.
    Budget(Option<Decimal>),
    /// Show everything again.
    ClearFilters,
    /// Look the piece over.
    Review,
    /// A grown-up has read the cautions, or takes that back.
    GrownUp(bool),
    /// Send it to the desk.
    Send,
    /// The guest has read the number.
    Done,
    /// Show where this drop lives.
    Where(String),
    /// Somebody has a number and wants to thread its piece.
    HaveNumber,
    /// Something of the piece was collected, or was not after all: 0 is the base, the homes follow in walking order.
    Collect(usize),
    /// The guest is still there.
    StillHere,
    /// The seller's corner was held.
    AskSeller,
    /// A key of the keypad on the screen.
    Key(char),
    /// Take back the last key.
    EraseKey,
    /// What was typed is complete.
    EnterKeys,
    /// Language of the next guest.
    DefaultLanguage(Lang),
    /// Put the trays on the other side.
    LeftHanded(bool),
    /// How the screens look for the next guest.
    DefaultLooks(Looks),
    /// Begin to match a bank card.
    MatchCard,
    /// Draw the bank card larger.
    SizeCard {
        /// By so many half percents; smaller if negative.
        steps: i32,
        /// The drawn card is never wider than this, in logical pixels.
        most_px: f32,
    },
    /// Draw the bank card wider.
    WidenCard {
        /// By so many logical pixels; narrower if negative.
        by_px: f32,
        /// The drawn card is never wider than this, in logical pixels.
        most_px: f32,
    },
    /// The drawn card is as large as the real one.
    KeepCard,
    /// Begin to pair with a desk.
    StartPairing,
    /// Open the desk's pages on this machine.
    OpenDesk,
    /// Close the tablet's program.
    Leave,
}

impl Request {
    /// Whether it changes the piece or leads to where it is changed: not while it is being sent, and not after.
    pub fn changes_the_piece(&self) -> bool {
        match self {
            Self::Begin
            | Self::ChooseBase(_)
            | Self::Longer(_)
            | Self::ToStage
            | Self::AnotherBase
            | Self::Hang { .. }
            | Self::Shift { .. }
            | Self::Slide { .. }
            | Self::PullOff(_)
            | Self::Undo
            | Self::Redo
            | Self::StartOver
            | Self::Surprise
            | Self::For(_)
            | Self::Neck(_)
            | Self::OnlySuiting(_)
            | Self::Review
            | Self::GrownUp(_)
            | Self::Send => true,
            Self::PutBack
            | Self::ReadOn
            | Self::Back
            | Self::Speak(_)
            | Self::Look(_)
            | Self::TraysLeft(_)
            | Self::Open(_)
            | Self::Close
            | Self::ShowTray(_)
            | Self::TurnTray(_)
            | Self::WhyNot(_)
            | Self::Select(_)
            | Self::WholeView
            | Self::TrueSize
            | Self::OnlySort(_)
            | Self::OnlyFinish(_)
            | Self::OnlyColour(_)
            | Self::UpTo(_)
            | Self::Budget(_)
            | Self::ClearFilters
            | Self::Done
            | Self::Where(_)
            | Self::HaveNumber
            | Self::Collect(_)
            | Self::StillHere
            | Self::AskSeller
            | Self::Key(_)
            | Self::EraseKey
            | Self::EnterKeys
            | Self::DefaultLanguage(_)
            | Self::LeftHanded(_)
            | Self::DefaultLooks(_)
            | Self::MatchCard
            | Self::SizeCard { .. }
            | Self::WidenCard { .. }
            | Self::KeepCard
            | Self::StartPairing
            | Self::OpenDesk
            | Self::Leave => false,
        }
    }
}
