//! Why the ledger refuses, in the language of whoever reads it.

#[cfg(test)]
mod tests;

use std::path::Path;

use rust_decimal::Decimal;

use super::money_words::money_words;
use crate::{
    catalog::PieceError,
    caution::CautionCode,
    lang::{Texts, say},
    ledger::{
        AboutError, CountingError, LONGEST_NAME, LONGEST_SHOW_NAME, LedgerError, MOST_HELPERS, SELLER, StaffError,
    },
    money::MAX_AMOUNT,
    quoting::excerpt,
    ticket::{NumberError, State},
    waiting::WaitingError,
};

/// The refusal as the beginning of a sentence, without a full stop.
pub(super) fn ledger_words(texts: &Texts, error: &LedgerError) -> String {
    match error {
        LedgerError::DiskFull => say!(texts, "ledger-disk-full"),
        LedgerError::Database(why) => say!(texts, "ledger-database", why = why.to_string()),
        LedgerError::Damaged(why) => say!(texts, "ledger-damaged", why = why.to_string()),
        LedgerError::Unreadable { number, why } => {
            say!(texts, "ledger-unreadable", number = number.as_str(), why = why.as_str())
        }
        LedgerError::DamagedFile { file, why } => {
            let damaged = say!(texts, "ledger-damaged-file", file = shown(file), why = why.as_str());
            format!("{damaged}\n{}", what_to_do(texts, file))
        }
        LedgerError::Emptied(file) => {
            format!("{}\n{}", say!(texts, "ledger-emptied", file = shown(file)), what_to_do(texts, file))
        }
        LedgerError::FoundDamaged => say!(texts, "ledger-found-damaged"),
        LedgerError::NotKept(why) => say!(texts, "ledger-not-kept", why = why.as_str()),
        LedgerError::Panicked => say!(texts, "ledger-panicked"),
        LedgerError::OldLibrary(version) => say!(texts, "ledger-old-library", version = *version),
        LedgerError::Newer { found, known } => say!(texts, "ledger-newer", found = *found, known = *known),
        LedgerError::Older { found, known } => say!(texts, "ledger-older", found = *found, known = *known),
        LedgerError::LastShow(show) => say!(texts, "ledger-last-show", show = show.to_string()),
        LedgerError::ShowClosed(show) => say!(texts, "ledger-show-closed", show = show.to_string()),
        LedgerError::About(error) => about_words(texts, error),
        LedgerError::SumNotConfirmed => say!(texts, "ledger-sum-not-confirmed"),
        LedgerError::SumStands => say!(texts, "ledger-sum-stands"),
        LedgerError::OtherCurrency { found, taken } => {
            say!(texts, "ledger-other-currency", found = found.code, taken = taken.code)
        }
        LedgerError::NoTicket(id) => say!(texts, "ledger-no-ticket", id = id.to_string()),
        LedgerError::NoLine => say!(texts, "ledger-no-line"),
        LedgerError::State { from, to } => {
            say!(texts, "ledger-state", from = state(texts, *from), to = state(texts, *to))
        }
        LedgerError::Closed(at) => say!(texts, "ledger-closed", state = state(texts, *at)),
        LedgerError::NotTicked(n) => say!(texts, "ledger-not-ticked", n = *n),
        LedgerError::NotTold => say!(texts, "ledger-not-told"),
        LedgerError::NotSuitable(codes) => say!(texts, "ledger-not-suitable", hazards = hazards(texts, codes)),
        LedgerError::Forbidden(codes) => say!(texts, "ledger-forbidden", hazards = hazards(texts, codes)),
        LedgerError::NoHazard => say!(texts, "ledger-no-hazard"),
        LedgerError::NoneLeft(id) => say!(texts, "ledger-none-left", name = excerpt(id)),
        LedgerError::NotSold(at) => say!(texts, "ledger-not-sold", state = state(texts, *at)),
        LedgerError::OpenedOtherwise => say!(texts, "ledger-opened-otherwise"),
        LedgerError::NoBill(id) => say!(texts, "ledger-no-bill", id = id.to_string()),
        LedgerError::NotOnBill => say!(texts, "ledger-not-on-bill"),
        LedgerError::WithOthers => say!(texts, "ledger-with-others"),
        LedgerError::LongBill(most) => say!(texts, "ledger-long-bill", most = *most),
        LedgerError::BillChanged(due) => say!(texts, "ledger-bill-changed", due = due.as_str()),
        LedgerError::NothingToPay => say!(texts, "ledger-nothing-to-pay"),
        LedgerError::NoPart { amount, due } => {
            say!(texts, "ledger-no-part", amount = texts.lang.number(*amount), due = due.as_str())
        }
        LedgerError::GivenTooLittle { given, due } => {
            say!(texts, "ledger-given-too-little", given = given.as_str(), due = due.as_str())
        }
        LedgerError::PaidAlready => say!(texts, "ledger-paid-already"),
        LedgerError::NotPaid => say!(texts, "ledger-not-paid"),
        LedgerError::RightAlready => say!(texts, "ledger-right-already"),
        LedgerError::NoReason => say!(texts, "ledger-no-reason"),
        LedgerError::NoWords(most) => say!(texts, "ledger-no-words", most = *most),
        LedgerError::Piece(error) => piece_words(texts, error),
        LedgerError::Money(error) => money_words(texts, error),
        LedgerError::NoCount(id) => say!(texts, "ledger-no-count", name = excerpt(id)),
        LedgerError::TooManyThere(most) => say!(texts, "ledger-too-many-there", most = *most),
        LedgerError::Counting(error) => counting_words(texts, error),
        LedgerError::NineKiosks => say!(texts, "ledger-nine-kiosks"),
        LedgerError::NoDigitForTheDesk => say!(texts, "ledger-no-digit-for-the-desk"),
        LedgerError::Staff(error) => staff_words(texts, error),
        LedgerError::Waiting(error) => waiting_words(texts, error),
        LedgerError::Number(error) => number_words(texts, error),
    }
}

fn shown(file: &Path) -> String {
    file.display().to_string()
}

/// The ways on from a ledger that can't be used, with what each of them costs.
fn what_to_do(texts: &Texts, file: &Path) -> String {
    let folder = shown(file.parent().unwrap_or(file));
    let ways = [say!(texts, "ledger-put-backup"), say!(texts, "ledger-begin-anew")];
    format!("{}\n{}", say!(texts, "ledger-what-to-do", folder = folder), ways.join("\n"))
}

fn state(texts: &Texts, state: State) -> String {
    texts.get(&format!("state-{}", state.code()))
}

/// The hazards by name.
fn hazards(texts: &Texts, codes: &[CautionCode]) -> String {
    codes.iter().map(|code| texts.get(&format!("hazard-{}", code.code()))).collect::<Vec<_>>().join(", ")
}

/// Why nothing of the kind can be said of a show.
fn about_words(texts: &Texts, error: &AboutError) -> String {
    let number = |amount: &Decimal| texts.lang.number(*amount);
    let most = number(&MAX_AMOUNT);
    match error {
        AboutError::Place(found) => {
            say!(texts, "ledger-no-place-name", found = excerpt(found), most = LONGEST_SHOW_NAME)
        }
        AboutError::Host(found) => say!(texts, "ledger-no-host-name", found = excerpt(found), most = LONGEST_SHOW_NAME),
        AboutError::Fee { found, digits } => {
            say!(texts, "ledger-no-fee", found = number(found), most = most, digits = *digits)
        }
        AboutError::Float { found, digits } => {
            say!(texts, "ledger-no-float", found = number(found), most = most, digits = *digits)
        }
        AboutError::Tax(found) => say!(texts, "ledger-no-tax", found = number(found)),
    }
}

/// Why a count can't be entered.
fn counting_words(texts: &Texts, error: &CountingError) -> String {
    match error {
        CountingError::EnteredOtherwise => say!(texts, "ledger-counted-otherwise"),
        CountingError::TooMany { found, most } => say!(texts, "ledger-counted-too-many", found = *found, most = *most),
        CountingError::NotSoMany { found, open } => say!(texts, "ledger-not-so-many", found = *found, open = *open),
        CountingError::None => say!(texts, "ledger-counted-none"),
    }
}

/// Why a piece can't be made.
fn piece_words(texts: &Texts, error: &PieceError) -> String {
    match error {
        PieceError::NoBase { id, like: None } => say!(texts, "ledger-no-base", name = excerpt(id)),
        PieceError::NoBase { id, like: Some(like) } => {
            say!(texts, "ledger-no-base-like", name = excerpt(id), like = excerpt(like))
        }
        PieceError::NoDrop { id, like: None } => say!(texts, "ledger-no-drop", name = excerpt(id)),
        PieceError::NoDrop { id, like: Some(like) } => {
            say!(texts, "ledger-no-drop-like", name = excerpt(id), like = excerpt(like))
        }
        PieceError::Fit { id, base, fit } => {
            let (opens, needs) = (fixed(texts, fit.opening_mm, 2), fixed(texts, fit.needs_mm, 2));
            say!(texts, "ledger-no-fit", name = excerpt(id), base = excerpt(base), opens = opens, needs = needs)
        }
        PieceError::Length { base, length_mm, shortest_mm, longest_mm } => {
            let [length, shortest, longest] = [length_mm, shortest_mm, longest_mm].map(|mm| fixed(texts, *mm, 0));
            let base = excerpt(base);
            say!(texts, "ledger-no-length", base = base, length = length, shortest = shortest, longest = longest)
        }
        PieceError::BangleLength { base } => say!(texts, "ledger-bangle-length", base = excerpt(base)),
        PieceError::Money(error) => money_words(texts, error),
    }
}

/// A figure with so many decimals, as the language writes it.
fn fixed(texts: &Texts, figure: f64, decimals: usize) -> String {
    let plain = format!("{figure:.decimals$}");
    // What is no number at all is shown as it is.
    plain.parse().map_or(plain, |number| texts.lang.number(number))
}

/// Why somebody can't be entered as working here.
pub(super) fn staff_words(texts: &Texts, error: &StaffError) -> String {
    match error {
        StaffError::Name(name) => say!(texts, "ledger-no-name", name = excerpt(name), most = LONGEST_NAME),
        StaffError::Taken(name) => say!(texts, "ledger-name-taken", name = excerpt(name)),
        StaffError::Sellers => say!(texts, "ledger-sellers-name", name = SELLER),
        StaffError::Full => say!(texts, "ledger-staff-full", most = MOST_HELPERS),
        StaffError::Unknown(name) => say!(texts, "ledger-nobody", name = excerpt(name)),
    }
}

/// Why a step in the line of those who wait is none.
fn waiting_words(texts: &Texts, error: &WaitingError) -> String {
    match error {
        WaitingError::Elsewhere(number) => say!(texts, "waiting-elsewhere", number = *number),
        WaitingError::NoSeat => say!(texts, "waiting-no-seat"),
        WaitingError::NobodySits => say!(texts, "waiting-nobody-sits"),
        WaitingError::OthersWait => say!(texts, "waiting-others-wait"),
        WaitingError::Seats(seats) => say!(texts, "waiting-no-seats", seats = *seats),
        WaitingError::Full => say!(texts, "waiting-full"),
    }
}

/// Why a number is no ticket's.
pub(super) fn number_words(texts: &Texts, error: &NumberError) -> String {
    match error {
        NumberError::Shape => say!(texts, "ledger-number-shape"),
        NumberError::Check(number) => say!(texts, "ledger-number-check", number = number.as_str()),
        NumberError::Range => say!(texts, "ledger-number-range"),
    }
}
