//! What guest and seller have to be told, as facts. The screens word them in the language of whoever stands there.

use crate::{
    caution::Caution,
    craft::Wearer,
    link::{PairError, SendError},
};

/// Something a guest has to be told.
#[derive(Debug, Clone, PartialEq)]
pub enum Told {
    /// On the base that was chosen some drops had to be left off.
    LeftOff {
        /// How many.
        drops: usize,
    },
    /// Another drop finds no room on the base.
    NoRoom {
        /// How many of the drops find room.
        fits: usize,
        /// The base can be made longer.
        longer: bool,
    },
    /// Why a drop can't be hung.
    WhyNot {
        /// Id of its kind.
        kind: String,
        /// Why.
        why: WhyNot,
    },
    /// No drop in stock goes with what the guest asks for.
    NoSurprise,
    /// The piece was not sent, and can be sent again.
    NotSent(NotSent),
    /// The desk does not take the piece whose number is shown already.
    RefusedAfterAll,
    /// Somebody else was first; the piece stays, without what is gone.
    Short {
        /// Ids of the parts that are gone, each once with its count.
        parts: Vec<(String, usize)>,
    },
}

/// Why a drop can't be hung.
#[derive(Debug, Clone, PartialEq)]
pub enum WhyNot {
    /// None is left.
    SoldOut,
    /// The piece would cost more than the guest has.
    TooDear,
    /// It does not suit the wearer that is asked for.
    NotFor {
        /// Who.
        wearer: Wearer,
        /// What speaks against it, one caution for each hazard.
        hazards: Vec<Caution>,
    },
    /// Its ring does not go onto the base.
    NoFit {
        /// What the ring leaves open, in millimetres.
        opening_mm: f64,
        /// What the base needs, in millimetres.
        needs_mm: f64,
    },
}

/// Why a piece was not sent.
#[derive(Debug, Clone, PartialEq)]
pub enum NotSent {
    /// The desk refuses it.
    Refused,
    /// It could not be kept on this tablet.
    NotKept(SendError),
}

/// What is said to the seller above keypad and menu.
#[derive(Debug, Clone, PartialEq)]
pub enum SellerNote {
    /// The PIN is wrong.
    PinWrong,
    /// No PIN was chosen at the desk yet: its setup code opens the menu, or choosing a PIN there.
    PinNotSet,
    /// Too many wrong ones.
    PinWait {
        /// How long to wait.
        seconds: u32,
    },
    /// The desk is away, and this tablet has never seen the right PIN.
    PinAway,
    /// The tablet belongs to the desk now.
    Paired {
        /// Its digit.
        digit: u8,
    },
    /// It does not.
    NotPaired(PairError),
    /// No browser could be started on this machine.
    DeskNotOpened,
    /// The settings could not be written.
    SettingsNotKept,
}

/// Each id once, with how often it stands in `parts`, in the order of its first place.
pub(super) fn counted(parts: &[String]) -> Vec<(String, usize)> {
    let mut counted: Vec<(String, usize)> = Vec::new();
    for part in parts {
        match counted.iter_mut().find(|(id, _)| id == part) {
            Some((_, count)) => *count += 1,
            None => counted.push((part.clone(), 1)),
        }
    }
    counted
}
