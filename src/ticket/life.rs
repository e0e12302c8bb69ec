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
    /// It was paid, and all of it was taken back.
    TakenBack,
}

impl State {
    /// All states in the order of a ticket's life.
    pub const ALL: [Self; 7] =
        [Self::Sent, Self::Called, Self::Checked, Self::RungUp, Self::HandedOver, Self::LetGo, Self::TakenBack];

    /// Whether a ticket may go from here to `next`.
    pub fn may_become(self, next: Self) -> bool {
        use State::{Called, Checked, HandedOver, LetGo, RungUp, Sent, TakenBack};
        matches!(
            (self, next),
            (Sent, Called | Checked)
                | (Called, Checked)
                | (Checked, Called | RungUp)
                | (RungUp, HandedOver | TakenBack)
                | (HandedOver, TakenBack)
        ) || (self.is_open() && next == LetGo)
    }

    /// Whether it is paid, and was not taken back.
    pub fn is_sold(self) -> bool {
        matches!(self, Self::RungUp | Self::HandedOver)
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
            Self::TakenBack => "taken_back",
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
            Self::TakenBack => "taken back",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ticket_only_goes_forward_and_never_out_of_an_end() {
        for end in [State::TakenBack, State::LetGo] {
            assert!(State::ALL.iter().all(|next| !end.may_become(*next)), "{end:?}");
        }
        assert!(State::ALL.iter().all(|state| !state.may_become(State::Sent)));
        assert!(!State::RungUp.may_become(State::LetGo), "what is paid can't be let go");
        assert!(
            State::ALL.iter().all(|state| state.is_sold() == state.may_become(State::TakenBack)),
            "only what is paid"
        );
        assert!(!State::Sent.may_become(State::RungUp), "nothing is rung up unchecked");
        assert!(State::ALL.iter().all(|state| State::from_code(state.code()) == Some(*state)));
    }
}
