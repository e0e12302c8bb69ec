//! Ticket numbers that can be called across a room and typed with one mistake caught: `3-042-6`.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use crate::quoting::excerpt;

/// The kiosk's digit, a sequence of three digits, and a check digit by Damm's method, which catches every
/// single wrong digit and every swap of neighbours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct TicketNumber {
    kiosk: u8,
    sequence: u16,
}

/// Why a text is no ticket number.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NumberError {
    /// Not five digits.
    #[error("a ticket number has five digits, as in 3-042-6")]
    Shape,
    /// The check digit is wrong.
    #[error("{0} is not a ticket number: one digit is wrong or two are swapped; look at the ticket again")]
    Check(String),
    /// A kiosk's digit or sequence is out of range.
    #[error("a kiosk gives the numbers 000 to 999 in one show; close the show to begin anew")]
    Range,
}

/// The usual totally anti-symmetric quasigroup of order 10.
/// Source: H. M. Damm, Total anti-symmetrische Quasigruppen, Marburg 2004.
const DAMM: [[u8; 10]; 10] = [
    [0, 3, 1, 7, 5, 9, 8, 6, 4, 2],
    [7, 0, 9, 2, 1, 5, 4, 8, 6, 3],
    [4, 2, 0, 6, 8, 7, 1, 3, 5, 9],
    [1, 7, 5, 0, 9, 8, 3, 4, 2, 6],
    [6, 1, 2, 3, 0, 4, 5, 9, 7, 8],
    [3, 6, 7, 4, 2, 0, 9, 5, 8, 1],
    [5, 8, 6, 9, 7, 2, 0, 1, 3, 4],
    [8, 9, 4, 5, 3, 6, 2, 0, 1, 7],
    [9, 4, 3, 8, 6, 1, 7, 2, 0, 5],
    [2, 5, 8, 1, 4, 3, 6, 7, 9, 0],
];

fn damm(digits: impl IntoIterator<Item = u8>) -> u8 {
    digits.into_iter().fold(0, |interim, digit| DAMM[usize::from(interim)][usize::from(digit)])
}

impl TicketNumber {
    /// How many numbers a kiosk has in one show.
    pub const PER_KIOSK: u16 = 1000;

    /// The sequence of a show's first ticket: nobody is number nothing.
    pub const FIRST: u16 = 1;

    /// The number of kiosk `kiosk` (0 to 9) at `sequence` (0 to 999).
    ///
    /// # Errors
    /// Either is beyond its range.
    pub fn new(kiosk: u8, sequence: u16) -> Result<Self, NumberError> {
        if kiosk <= 9 && sequence < Self::PER_KIOSK { Ok(Self { kiosk, sequence }) } else { Err(NumberError::Range) }
    }

    /// The kiosk's digit.
    pub const fn kiosk(self) -> u8 {
        self.kiosk
    }

    /// The place in the kiosk's sequence.
    pub const fn sequence(self) -> u16 {
        self.sequence
    }

    fn digits(self) -> [u8; 4] {
        let s = self.sequence;
        [self.kiosk, (s / 100) as u8, (s / 10 % 10) as u8, (s % 10) as u8]
    }
}

impl fmt::Display for TicketNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{:03}-{}", self.kiosk, self.sequence, damm(self.digits()))
    }
}

impl FromStr for TicketNumber {
    type Err = NumberError;
    /// Takes the number with hyphens, spaces or neither.
    fn from_str(text: &str) -> Result<Self, NumberError> {
        let mut digits = Vec::with_capacity(5);
        for c in text.chars().filter(|c| !matches!(c, '-' | ' ' | '.' | '\u{2011}' | '\u{2013}')) {
            digits.push(c.to_digit(10).ok_or(NumberError::Shape)? as u8);
        }
        let [kiosk, a, b, c, _] = digits[..] else { return Err(NumberError::Shape) };
        if damm(digits.iter().copied()) != 0 {
            return Err(NumberError::Check(excerpt(text.trim())));
        }
        Self::new(kiosk, u16::from(a) * 100 + u16::from(b) * 10 + u16::from(c))
    }
}

impl From<TicketNumber> for String {
    fn from(number: TicketNumber) -> Self {
        number.to_string()
    }
}

impl TryFrom<String> for TicketNumber {
    type Error = NumberError;
    fn try_from(text: String) -> Result<Self, NumberError> {
        text.parse()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published example of Damm's method: 572 has the check digit 4.
    #[test]
    fn the_published_check_digit() {
        assert_eq!(damm([5, 7, 2]), 4);
    }

    #[test]
    fn every_single_mistake_and_every_swap_is_caught() {
        for sequence in 0..TicketNumber::PER_KIOSK {
            let number = TicketNumber::new(3, sequence).unwrap();
            let text: Vec<u8> = number.to_string().bytes().filter(u8::is_ascii_digit).collect();
            assert_eq!(String::from_utf8(text.clone()).unwrap().parse(), Ok(number));
            for at in 0..5 {
                for digit in b'0'..=b'9' {
                    let mut wrong = text.clone();
                    wrong[at] = digit;
                    if wrong != text {
                        assert!(String::from_utf8(wrong).unwrap().parse::<TicketNumber>().is_err());
                    }
                }
                let mut swapped = text.clone();
                swapped.swap(at, (at + 1) % 5);
                if at < 4 && swapped != text {
                    assert!(String::from_utf8(swapped).unwrap().parse::<TicketNumber>().is_err());
                }
            }
        }
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in ["", "3-042", "3-042-67", "three", "3-04x-7", "３-042-7"] {
            assert_eq!(text.parse::<TicketNumber>(), Err(NumberError::Shape), "{text}");
        }
        assert_eq!(TicketNumber::new(10, 0), Err(NumberError::Range));
        assert_eq!(TicketNumber::new(0, 1000), Err(NumberError::Range));
    }
}
