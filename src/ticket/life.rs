//! The life of a ticket.

use serde::{Deserialize, Serialize};

/// Where a ticket is in its life.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum State {
    /// The guest has sent it.
    Sent,
    /// The seller has called its number.
    Called,
    /// Every drop has been ticked off against the piece.
    Checked,
    /// It is paid.
    RungUp,
    /// The piece is in the guest's hands.
    HandedOver,
    /// It came to nothing; its drops are free again.
    LetGo,
}

impl State {
    /// All states in the order of a ticket's life.
    pub const ALL: [Self; 6] = [Self::Sent, Self::Called, Self::Checked, Self::RungUp, Self::HandedOver, Self::LetGo];

    /// Whether a ticket may go from here to `next`.
    pub fn may_become(self, next: Self) -> bool {
        use State::{Called, Checked, HandedOver, LetGo, RungUp, Sent};
        matches!(
            (self, next),
            (Sent, Called | Checked) | (Called, Checked) | (Checked, Called | RungUp) | (RungUp, HandedOver)
        ) || (self.is_open() && next == LetGo)
    }

    /// Whether it still waits to be rung up.
    pub fn is_open(self) -> bool {
        matches!(self, Self::Sent | Self::Called | Self::Checked)
    }

    /// The name in the ledger and in addresses.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Sent => "sent",
            Self::Called => "called",
            Self::Checked => "checked",
            Self::RungUp => "rung_up",
            Self::HandedOver => "handed_over",
            Self::LetGo => "let_go",
        }
    }

    /// The state called `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|state| state.code() == code)
    }

    /// Plain words for the desk.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sent => "sent",
            Self::Called => "called",
            Self::Checked => "checked",
            Self::RungUp => "rung up",
            Self::HandedOver => "handed over",
            Self::LetGo => "let go",
        }
    }
}

/// How a ticket was paid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Tender {
    /// Notes and coins; the total goes to the nearest cash step.
    Cash,
    /// A card, to the exact total.
    Card,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ticket_only_goes_forward_and_never_out_of_an_end() {
        for end in [State::HandedOver, State::LetGo] {
            assert!(State::ALL.iter().all(|next| !end.may_become(*next)), "{end:?}");
        }
        assert!(State::ALL.iter().all(|state| !state.may_become(State::Sent)));
        assert!(!State::RungUp.may_become(State::LetGo), "what is paid can't be let go");
        assert!(!State::Sent.may_become(State::RungUp), "nothing is rung up unchecked");
        assert!(State::ALL.iter().all(|state| State::from_code(state.code()) == Some(*state)));
    }
}
