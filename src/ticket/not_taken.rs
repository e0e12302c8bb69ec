//! Why the desk did not take a ticket: in English for the log, and as a code with its facts, so that the desk can say it in the
//! language of whoever reads its pages. A reader of another version that does not know a code goes by the English words.

use std::fmt;

use rust_decimal::Decimal;
use serde::{Deserialize, Deserializer, Serialize};

use crate::{money::MoneyError, quoting::quoted};

/// Why a ticket was not taken, or does not get through.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "code", content = "facts", rename_all = "snake_case")]
pub enum NotTaken {
    /// Another ticket was delivered under its id.
    SameId,
    /// Another ticket of the show has its number.
    SameNumber,
    /// Its sum and its piece are of different things.
    OtherLines,
    /// A price in it is none.
    Price {
        /// Id of the part.
        id: String,
        /// The price.
        price: Decimal,
    },
    /// Its sum is larger than any.
    TooLarge,
    /// An amount in it has more decimals than its currency.
    Decimals {
        /// The amount.
        amount: Decimal,
    },
    /// Its sum is not that of its lines.
    Sum,
    /// It is of a show that the desk does not know.
    UnknownShow,
    /// Its sum is in a currency that the table never took.
    OtherCurrency {
        /// What the sum is in.
        found: String,
        /// What the table takes.
        taken: String,
    },
    /// Something in it is the id of nothing.
    OddId {
        /// What stands there.
        found: String,
    },
    /// More drops than are on any piece.
    ManyDrops {
        /// How many.
        found: usize,
        /// How many there may be.
        most: usize,
    },
    /// A length that can't be made.
    OddLength {
        /// In millimetres.
        mm: f64,
        /// The shortest, in millimetres.
        least_mm: f64,
        /// The longest, in millimetres.
        most_mm: f64,
    },
    /// A neck that is nobody's.
    OddNeck {
        /// In millimetres.
        mm: f64,
        /// The smallest, in millimetres.
        least_mm: f64,
        /// The largest, in millimetres.
        most_mm: f64,
    },
    /// Its number has the digit of another tablet.
    OtherDigit,
    /// Nobody wants it taken in any more.
    NotAsked,
    /// The desk can't read it.
    Unreadable {
        /// The status of the answer (RFC 9110).
        status: u16,
        /// What the desk said.
        said: String,
    },
    /// The desk answers others and not this one.
    NoAnswer {
        /// What the line says of it, for a technician.
        why: String,
    },
    /// The desk takes it later, and says why.
    Later {
        /// What it said.
        said: String,
    },
    /// The desk could not do it.
    DeskFailed {
        /// The status of the answer (RFC 9110).
        status: u16,
        /// What the desk said.
        said: String,
    },
}

impl NotTaken {
    /// From what is wrong with the sum.
    pub fn of_sum(error: &MoneyError) -> Self {
        match error {
            MoneyError::Price { id, price } => Self::Price { id: id.clone(), price: *price },
            MoneyError::TooLarge => Self::TooLarge,
            MoneyError::Decimals(amount) => Self::Decimals { amount: *amount },
            _ => Self::Sum,
        }
    }

    /// What is wrong with the sum, where that is it.
    pub fn sum_error(&self) -> Option<MoneyError> {
        Some(match self {
            Self::Price { id, price } => MoneyError::Price { id: id.clone(), price: *price },
            Self::TooLarge => MoneyError::TooLarge,
            Self::Decimals { amount } => MoneyError::Decimals(*amount),
            Self::Sum => MoneyError::Lines,
            _ => return None,
        })
    }

    /// Reads one that may be of a later version, of which nothing is known then.
    ///
    /// # Errors
    /// None of its own: what is no JSON at all is the outer reader's error.
    pub fn known_or_none<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Self>, D::Error> {
        let value = serde_json::Value::deserialize(from)?;
        Ok(serde_json::from_value(value).ok())
    }
}

impl fmt::Display for NotTaken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(error) = self.sum_error() {
            return write!(f, "{error}");
        }
        match self {
            Self::SameId => write!(f, "another ticket was delivered under the same id"),
            Self::SameNumber => write!(f, "another ticket of the show has the number"),
            Self::OtherLines => write!(f, "the sum and the piece do not have the same lines"),
            Self::UnknownShow => write!(f, "the ticket belongs to a show that this desk does not know"),
            Self::OtherCurrency { found, taken } => {
                write!(f, "the sum is in {found}, and this table never took that; it takes {taken}")
            }
            Self::OddId { found } => {
                write!(f, "{} is the id of nothing: ids are small letters, digits and hyphens", quoted(found))
            }
            Self::ManyDrops { found, most } => write!(f, "{found} drops are on no piece; {most} at most"),
            Self::OddLength { mm, least_mm, most_mm } => {
                write!(f, "a length of {mm:e} mm can't be made; {least_mm} mm to {most_mm} mm can")
            }
            Self::OddNeck { mm, least_mm, most_mm } => {
                write!(f, "a neck of {mm:e} mm is nobody's; they are from {least_mm} mm to {most_mm} mm")
            }
            Self::OtherDigit => write!(f, "the number has another tablet’s digit"),
            Self::NotAsked => write!(f, "nobody at the desk has asked for it"),
            Self::Unreadable { status, said } => write!(f, "the desk can't read it ({})", Answer(*status, said)),
            Self::NoAnswer { why } => write!(f, "the desk did not answer ({why})"),
            Self::Later { said } => write!(f, "{said}"),
            Self::DeskFailed { status, said } => {
                write!(f, "something is wrong at the desk ({})", Answer(*status, said))
            }
            Self::Price { .. } | Self::TooLarge | Self::Decimals { .. } | Self::Sum => Ok(()),
        }
    }
}

/// The status of an answer, with what the desk said about it.
struct Answer<'a>(u16, &'a str);

impl fmt::Display for Answer<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "answer {}", self.0)?;
        if self.1.is_empty() { Ok(()) } else { write!(f, ": {}", self.1) }
    }
}
