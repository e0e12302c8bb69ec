//! What the desk answers to a ticket that arrives.

use serde::{Deserialize, Serialize};

/// What became of an arriving ticket: the ledger decides it, and the kiosk that sent the ticket reads it on the line. Its
/// form in JSON is part of the line; a tablet of an earlier version reads it too.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Receipt {
    /// It is in the ledger, now or since an earlier delivery.
    Stored {
        /// Ids of the parts that could not be held.
        short: Vec<String>,
    },
    /// Nothing was entered, since these parts are gone and the guest can still choose again.
    Short {
        /// Ids of the parts; one of which several are gone is named as often.
        parts: Vec<String>,
    },
    /// It can never be entered: another ticket has the number, or the message makes no sense.
    Refused {
        /// Why, in words for the log and the seller.
        reason: String,
    },
    /// It was sent to practise, and practice is over: it is thrown away. Only tablets that know practice send such tickets.
    Practice,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What tablets and desks of earlier versions write and read, letter by letter.
    #[test]
    fn its_form_on_the_line_stays() {
        for (receipt, json) in [
            (Receipt::Stored { short: vec!["key".into()] }, r#"{"Stored":{"short":["key"]}}"#),
            (Receipt::Short { parts: vec!["key".into(), "key".into()] }, r#"{"Short":{"parts":["key","key"]}}"#),
            (Receipt::Refused { reason: "no".into() }, r#"{"Refused":{"reason":"no"}}"#),
            (Receipt::Practice, r#""Practice""#),
        ] {
            assert_eq!(serde_json::to_string(&receipt).unwrap(), json);
            assert_eq!(serde_json::from_str::<Receipt>(json).unwrap(), receipt);
        }
    }
}
