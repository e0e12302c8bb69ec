//! Inputs that are one text: quantities, ticket numbers, a piece's file, a rules file.

use chatelaine::{
    catalog::read_piece,
    caution::Rules,
    craft::{Day, Home, Length, LinearDensity, Mass, NECKS_MM, PIECE_LENGTHS_MM},
    money::{Currency, MAX_AMOUNT, parse_percent, parse_price},
    ron_tree::Mistakes,
    ticket::TicketNumber,
};
use rust_decimal::Decimal;

use super::{are_told_well, is_one_line};

/// What the text is, as this kind of quantity: taken, or the message.
pub fn quantity_as(kind: &str, text: &str) -> Result<(), String> {
    let whole = |size: f64, most: f64| assert!((0.0..=most).contains(&size), "{kind} {text:?} is read as {size}");
    let usd = Currency::from_code("USD").expect("a currency");
    match kind {
        "length" => text.parse::<Length>().map(|length| whole(length.mm(), 100_000.0)).map_err(|e| e.to_string()),
        "weight" => text.parse::<Mass>().map(|mass| whole(mass.g(), 100_000.0)).map_err(|e| e.to_string()),
        "weight per length" => {
            text.parse::<LinearDensity>().map(|chain| whole(chain.g_per_m(), 100_000.0)).map_err(|e| e.to_string())
        }
        "price" => parse_price(text, usd)
            .map(|price| assert!(price > Decimal::ZERO && price <= MAX_AMOUNT && price.scale() <= 2, "{price}"))
            .map_err(|e| e.to_string()),
        "percentage" => parse_percent(text)
            .map(|percent| assert!(percent >= Decimal::ZERO && percent <= Decimal::ONE_HUNDRED, "{percent}"))
            .map_err(|e| e.to_string()),
        "home" => text
            .parse::<Home>()
            .map(|home| assert!(home.tray.is_ascii_uppercase() && home.compartment > 0))
            .map_err(|e| e.to_string()),
        "day" => Day::from_iso(text).map(|_| ()).ok_or_else(|| "no day".to_owned()),
        "currency" => Currency::from_code(text).map(|_| ()).ok_or_else(|| "no currency".to_owned()),
        other => panic!("nothing is read as {other}"),
    }
}

/// The kinds of quantities.
pub const QUANTITIES: [&str; 8] =
    ["length", "weight", "weight per length", "price", "percentage", "home", "day", "currency"];

/// Reads a text as every kind of quantity.
pub fn quantity(data: &[u8]) {
    let text = String::from_utf8_lossy(data);
    for kind in QUANTITIES {
        if let Err(message) = quantity_as(kind, &text) {
            is_one_line(&message);
        }
    }
}

/// Reads a text as a ticket's number.
pub fn ticket_number(data: &[u8]) {
    let text = String::from_utf8_lossy(data);
    match text.parse::<TicketNumber>() {
        Ok(number) => {
            assert!(number.kiosk() <= 9 && number.sequence() < TicketNumber::PER_KIOSK);
            assert_eq!(number.to_string().parse(), Ok(number));
            assert_eq!(text.chars().filter(char::is_ascii_digit).count(), 5, "{text:?} is read as {number}");
        }
        Err(error) => is_one_line(&error.to_string()),
    }
}

/// Reads a piece's file.
pub fn piece(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    match read_piece("piece.ron", text) {
        Ok(piece) => {
            let within = |length: Option<Length>, range: std::ops::RangeInclusive<f64>| {
                length.is_none_or(|length| range.contains(&length.mm()))
            };
            assert!(within(piece.length, PIECE_LENGTHS_MM) && within(piece.neck, NECKS_MM), "{piece:?}");
            super::catalogue::is_made_or_refused(&piece);
        }
        Err(mistakes) => are_told_well(&mistakes, |_| Some(data.to_vec())),
    }
}

/// Reads a region's rules file.
pub fn rules(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    match Rules::from_ron("rules/odd.ron", text) {
        Ok(rules) => assert!(!rules.name.trim().is_empty()),
        Err(mistakes) => are_told_well(&Mistakes(mistakes), |_| Some(data.to_vec())),
    }
}
