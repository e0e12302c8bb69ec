//! What may stand as the seller's PIN.

use crate::lang::{Message, message};

/// Favourites that no rule below catches: ways over the keypad, round numbers. From memory, no source.
const FAVOURITES: &[&str] = &[
    "102030", "123654", "123789", "147258", "147852", "159357", "159753", "258456", "258369", "321654", "369258",
    "456123", "456789", "520131", "741852", "753951", "789456", "852456", "951753", "963852", "987321",
];

/// Why `pin` may not be the PIN, as it is told to the seller.
pub(super) fn fault_of(pin: &str) -> Option<Message> {
    if !has_shape(pin) {
        return Some(message!("pin-not-a-pin"));
    }
    let digits: Vec<u8> = pin.bytes().map(|b| b - b'0').collect();
    let is_easy = has_one_step(&digits)
        || repeats(&digits)
        || is_mirrored(&digits)
        || in_runs(&digits)
        || FAVOURITES.contains(&pin);
    is_easy.then_some(message!("pin-too-easy"))
}

/// Whether it can be a PIN at all.
pub(super) fn has_shape(pin: &str) -> bool {
    (6..=12).contains(&pin.len()) && pin.bytes().all(|b| b.is_ascii_digit())
}

/// 000000, 123456, 987654, 246802.
fn has_one_step(digits: &[u8]) -> bool {
    let step = |pair: &[u8]| (pair[1] + 10 - pair[0]) % 10;
    digits.windows(2).all(|pair| step(pair) == step(&digits[..2]))
}

/// 121212, 123123.
fn repeats(digits: &[u8]) -> bool {
    (1..=digits.len() / 2)
        .any(|part| digits.len().is_multiple_of(part) && digits.chunks(part).all(|chunk| chunk == &digits[..part]))
}

/// 123321.
fn is_mirrored(digits: &[u8]) -> bool {
    digits.iter().eq(digits.iter().rev())
}

/// 112233, 111222.
fn in_runs(digits: &[u8]) -> bool {
    let runs: Vec<&[u8]> = digits.chunk_by(|a, b| a == b).collect();
    let firsts: Vec<u8> = runs.iter().map(|run| run[0]).collect();
    runs.len() > 1 && runs.iter().all(|run| run.len() > 1 && run.len() == runs[0].len()) && has_one_step(&firsts)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::{Lang, Texts};

    fn told(pin: &str) -> String {
        fault_of(pin).map(|fault| Texts::of(Lang::En).say(&fault)).unwrap_or_default()
    }

    #[test]
    fn what_everybody_tries_first_is_refused() {
        let easy = [
            "000000",
            "111111",
            "123456",
            "654321",
            "012345",
            "567890",
            "890123",
            "98765432",
            "121212",
            "123123",
            "112233",
            "111222",
            "123321",
            "147258",
            "159753",
            "246802",
            "1234567890",
            "1212121212",
        ];
        for pin in easy {
            assert!(told(pin).contains("pattern"), "{pin}");
        }
        for pin in ["", "12345", "1234567890123", "48291x", "４８２９１３"] {
            assert!(told(pin).contains("6 to 12 digits"), "{pin}");
        }
    }

    /// Hardly any of the million is refused: guessing is no easier for it.
    #[test]
    fn nearly_every_pin_may_stand() {
        let refused = (0..1_000_000).filter(|n| fault_of(&format!("{n:06}")).is_some()).count();
        assert!((1_000..4_000).contains(&refused), "{refused}");
        assert_eq!(["482913", "718204", "40917266"].map(fault_of), [const { None }; 3]);
    }
}
