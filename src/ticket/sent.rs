//! What a kiosk sends.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::TicketNumber;
use crate::{caution::Verdict, craft::Piece, money::Quote};

/// A piece as the guest sent it, with the sum and the cautions that were on the screen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SentTicket {
    /// Makes every delivery of it the same one (UUID version 7, RFC 9562).
    pub id: Uuid,
    /// The show it belongs to.
    pub show: i64,
    /// The number the guest reads.
    pub number: TicketNumber,
    /// The piece as the guest made it.
    pub piece: Piece,
    /// The sum the guest saw; it is the sum charged.
    pub quote: Quote,
    /// The cautions the guest saw.
    pub verdict: Verdict,
    /// Whether a grown-up said that they had read them.
    pub grown_up_confirmed: bool,
    /// It was sent to practise: no desk ever counts it, and one that does not practise throws it away.
    #[serde(default, skip_serializing_if = "is_real")]
    pub practice: bool,
}

/// What is real is written as it always was.
#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde asks for a reference")]
fn is_real(practice: &bool) -> bool {
    !practice
}
