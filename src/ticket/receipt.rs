//! What the desk answers to a ticket that arrives.

use serde::{Deserialize, Serialize};

use super::not_taken::NotTaken;

/// What became of an arriving ticket: the ledger decides it, and the kiosk that sent the ticket reads it on the line. Its
/// form in JSON is part of the line; a tablet of an earlier version reads it too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
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
        /// Why, in English words for the log and a technician.
        reason: String,
        /// The same as a code with its facts; desks of earlier versions say none.
        #[serde(default, deserialize_with = "NotTaken::known_or_none", skip_serializing_if = "Option::is_none")]
        why: Option<NotTaken>,
    },
    /// It was sent to practise, and practice is over: it is thrown away. Only tablets that know practice send such tickets.
    Practice,
}

impl Receipt {
    /// A ticket that can never be entered, with the words and the code.
    pub fn refused(why: NotTaken) -> Self {
        Self::Refused { reason: why.to_string(), why: Some(why) }
    }
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
            (Receipt::Refused { reason: "no".into(), why: None }, r#"{"Refused":{"reason":"no"}}"#),
            (
                Receipt::refused(NotTaken::ManyDrops { found: 1001, most: 1000 }),
                r#"{"Refused":{"reason":"1001 drops are on no piece; 1000 at most","why":{"code":"many_drops","facts":{"found":1001,"most":1000}}}}"#,
            ),
            (
                Receipt::refused(NotTaken::SameNumber),
                r#"{"Refused":{"reason":"another ticket of the show has the number","why":{"code":"same_number"}}}"#,
            ),
            (Receipt::Practice, r#""Practice""#),
        ] {
            assert_eq!(serde_json::to_string(&receipt).unwrap(), json);
            assert_eq!(serde_json::from_str::<Receipt>(json).unwrap(), receipt);
        }
    }

    /// A tablet that does not know a desk's newer code, or a code with other facts, goes by the words.
    #[test]
    fn a_code_of_another_version_is_left_out() {
        for why in [r#"{"code":"eaten_by_a_dragon"}"#, r#"{"code":"many_drops","facts":"x"}"#, "7", "null", "{}"] {
            let json = format!(r#"{{"Refused":{{"reason":"no","why":{why}}}}}"#);
            let read: Receipt = serde_json::from_str(&json).unwrap();
            assert_eq!(read, Receipt::Refused { reason: "no".into(), why: None }, "{why}");
        }
    }
}
