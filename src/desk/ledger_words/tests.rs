//! Every refusal of the ledger in four languages.

use std::path::PathBuf;

use rust_decimal::Decimal;
use uuid::Uuid;

use super::*;
use crate::{
    craft::Fit,
    lang::Lang,
    money::{Currency, MoneyError},
};

/// A refusal of each kind. One that is new does not compile before it has an example here.
macro_rules! every {
    ($kind:ty: $($pattern:pat => $example:expr,)+) => {{
        let is_known = |error: &$kind| match error {
            $($pattern => (),)+
        };
        let every: Vec<$kind> = vec![$($example),+];
        every.iter().for_each(is_known);
        $(assert!(every.iter().any(|error| matches!(error, $pattern)), "no example: {}", stringify!($pattern));)+
        every
    }};
}

fn number(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn pieces() -> Vec<PieceError> {
    let (id, base) = (|| "key-hart".to_owned(), || "curb-gold".to_owned());
    let like = || Some("key-heart".to_owned());
    let fit = Fit { passes: false, clearance_mm: -8.345, opening_mm: 4.0, needs_mm: 12.345 };
    every!(PieceError:
        PieceError::NoBase { like: None, .. } => PieceError::NoBase { id: id(), like: None },
        PieceError::NoBase { like: Some(_), .. } => PieceError::NoBase { id: id(), like: like() },
        PieceError::NoDrop { like: None, .. } => PieceError::NoDrop { id: id(), like: None },
        PieceError::NoDrop { like: Some(_), .. } => PieceError::NoDrop { id: id(), like: like() },
        PieceError::Fit { .. } => PieceError::Fit { id: id(), base: base(), fit },
        PieceError::Length { .. } =>
            PieceError::Length { base: base(), length_mm: 1500.2, shortest_mm: 400.0, longest_mm: 900.0 },
        PieceError::BangleLength { .. } => PieceError::BangleLength { base: base() },
        PieceError::Money(_) => PieceError::Money(MoneyError::TooLarge),
    )
}

fn abouts() -> Vec<AboutError> {
    every!(AboutError:
        AboutError::Place(_) => AboutError::Place("a\nb".into()),
        AboutError::Host(_) => AboutError::Host(String::new()),
        AboutError::Fee { .. } => AboutError::Fee { found: number("0.005"), digits: 2 },
        AboutError::Float { .. } => AboutError::Float { found: number("12.5"), digits: 0 },
        AboutError::Tax(_) => AboutError::Tax(number("100.5")),
    )
}

fn staff() -> Vec<StaffError> {
    every!(StaffError:
        StaffError::Name(_) => StaffError::Name("Mia, Jo".into()),
        StaffError::Taken(_) => StaffError::Taken("Mia".into()),
        StaffError::Sellers => StaffError::Sellers,
        StaffError::Full => StaffError::Full,
        StaffError::Unknown(_) => StaffError::Unknown("Jo".into()),
    )
}

fn numbers() -> Vec<NumberError> {
    every!(NumberError:
        NumberError::Shape => NumberError::Shape,
        NumberError::Check(_) => NumberError::Check("3-042-5".into()),
        NumberError::Range => NumberError::Range,
    )
}

fn counting() -> Vec<CountingError> {
    every!(CountingError:
        CountingError::EnteredOtherwise => CountingError::EnteredOtherwise,
        CountingError::TooMany { .. } => CountingError::TooMany { found: 99_999, most: 9999 },
        CountingError::NotSoMany { .. } => CountingError::NotSoMany { found: 3, open: 2 },
        CountingError::None => CountingError::None,
    )
}

fn refusals() -> Vec<LedgerError> {
    let file = || PathBuf::from("tables/one/ledger.sqlite");
    let codes = || vec![CautionCode::SmallPart, CautionCode::CoinCell];
    let damaged = || serde_json::from_str::<u8>("[").unwrap_err();
    let [dollars, euros] = ["USD", "EUR"].map(|code| Currency::from_code(code).unwrap());
    let id = Uuid::from_u128(7);
    let mut all = every!(LedgerError:
        LedgerError::DiskFull => LedgerError::DiskFull,
        LedgerError::Database(_) => LedgerError::Database(rusqlite::Error::InvalidQuery),
        LedgerError::Damaged(_) => LedgerError::Damaged(damaged()),
        LedgerError::Unreadable { .. } => LedgerError::Unreadable { number: "3-042-6".into(), why: "cut short".into() },
        LedgerError::DamagedFile { .. } => LedgerError::DamagedFile { file: file(), why: "page 3".into() },
        LedgerError::Emptied(_) => LedgerError::Emptied(file()),
        LedgerError::FoundDamaged => LedgerError::FoundDamaged,
        LedgerError::NotKept(_) => LedgerError::NotKept("disk I/O error".into()),
        LedgerError::Panicked => LedgerError::Panicked,
        LedgerError::SumNotConfirmed => LedgerError::SumNotConfirmed,
        LedgerError::LastShow(_) => LedgerError::LastShow(i64::MAX),
        LedgerError::ShowClosed(_) => LedgerError::ShowClosed(3),
        LedgerError::About(_) => LedgerError::About(AboutError::Tax(number("-1"))),
        LedgerError::SumStands => LedgerError::SumStands,
        LedgerError::OtherCurrency { .. } => LedgerError::OtherCurrency { found: dollars, taken: euros },
        LedgerError::OldLibrary(_) => LedgerError::OldLibrary("3.51.2"),
        LedgerError::Newer { .. } => LedgerError::Newer { found: 9, known: 5 },
        LedgerError::Older { .. } => LedgerError::Older { found: 2, known: 5 },
        LedgerError::NoTicket(_) => LedgerError::NoTicket(id),
        LedgerError::NoLine => LedgerError::NoLine,
        LedgerError::State { .. } => LedgerError::State { from: State::LetGo, to: State::RungUp },
        LedgerError::Closed(_) => LedgerError::Closed(State::HandedOver),
        LedgerError::NotTicked(_) => LedgerError::NotTicked(3),
        LedgerError::NotTold => LedgerError::NotTold,
        LedgerError::NotSuitable(_) => LedgerError::NotSuitable(codes()),
        LedgerError::Forbidden(_) => LedgerError::Forbidden(codes()),
        LedgerError::NoHazard => LedgerError::NoHazard,
        LedgerError::NoneLeft(_) => LedgerError::NoneLeft("key-heart".into()),
        LedgerError::NoBill(_) => LedgerError::NoBill(id),
        LedgerError::NotOnBill => LedgerError::NotOnBill,
        LedgerError::WithOthers => LedgerError::WithOthers,
        LedgerError::LongBill(_) => LedgerError::LongBill(40),
        LedgerError::BillChanged(_) => LedgerError::BillChanged("$8.50".into()),
        LedgerError::NothingToPay => LedgerError::NothingToPay,
        LedgerError::NoPart { .. } => LedgerError::NoPart { amount: number("12.345"), due: "$8.50".into() },
        LedgerError::GivenTooLittle { .. } => LedgerError::GivenTooLittle { given: "$5.00".into(), due: "$8.50".into() },
        LedgerError::PaidAlready => LedgerError::PaidAlready,
        LedgerError::NotPaid => LedgerError::NotPaid,
        LedgerError::NotSold(_) => LedgerError::NotSold(State::Sent),
        LedgerError::RightAlready => LedgerError::RightAlready,
        LedgerError::NoReason => LedgerError::NoReason,
        LedgerError::NoWords(_) => LedgerError::NoWords(80),
        LedgerError::Piece(_) => LedgerError::Piece(PieceError::BangleLength { base: "hook".into() }),
        LedgerError::Money(_) => LedgerError::Money(MoneyError::Lines),
        LedgerError::NoCount(_) => LedgerError::NoCount("key-heart".into()),
        LedgerError::TooManyThere(_) => LedgerError::TooManyThere(100_000),
        LedgerError::Counting(_) => LedgerError::Counting(CountingError::None),
        LedgerError::NineKiosks => LedgerError::NineKiosks,
        LedgerError::OpenedOtherwise => LedgerError::OpenedOtherwise,
        LedgerError::NoDigitForTheDesk => LedgerError::NoDigitForTheDesk,
        LedgerError::Staff(_) => LedgerError::Staff(StaffError::Full),
        LedgerError::Waiting(_) => LedgerError::Waiting(WaitingError::NoSeat),
        LedgerError::Number(_) => LedgerError::Number(NumberError::Range),
    );
    all.extend(State::ALL.map(LedgerError::Closed));
    all.extend(CautionCode::ALL.map(|code| LedgerError::Forbidden(vec![code])));
    all.extend(pieces().into_iter().map(LedgerError::from));
    all.extend(abouts().into_iter().map(LedgerError::from));
    all.extend(staff().into_iter().map(LedgerError::from));
    all.extend(counting().into_iter().map(LedgerError::from));
    all.extend(numbers().into_iter().map(LedgerError::from));
    all
}

/// What the terminal writes, and the page in English, apart from no-break spaces and marks in large numbers.
fn plain(words: &str) -> String {
    words.replace('\u{a0}', " ").replace("1,000,000", "1000000").replace("1,500", "1500").replace('\u{2212}', "-")
}

#[test]
fn every_refusal_is_said_in_every_language() {
    for error in refusals() {
        let [english, others @ ..] = Lang::ALL.map(|lang| ledger_words(Texts::of(lang), &error));
        assert_eq!(plain(&english), error.to_string());
        for (words, lang) in others.iter().zip(&Lang::ALL[1..]) {
            assert_ne!(*words, english, "{lang:?}");
            assert!(!words.contains(['{', '$', '}']) || english.contains('$'), "{lang:?}: {words}");
            let keys = ["ledger-", "state-", "hazard-", "money-"];
            assert!(
                !keys.iter().any(|key| words.split([' ', '“', '«', '\u{a0}']).any(|word| word.starts_with(key))),
                "{lang:?}: {words}"
            );
            // Each begins a sentence and gets its stop where it is shown; what to do with a whole file is told in full.
            assert!(!words.ends_with('.') || error.to_string().ends_with('.'), "{lang:?}: {words}");
        }
    }
}

/// Figures as the language writes them. Source: CLDR, decimal marks of en and de.
#[test]
fn figures_in_a_refusal_are_the_languages_own() {
    let fit = Fit { passes: false, clearance_mm: -8.345, opening_mm: 4.0, needs_mm: 12.345 };
    let error = LedgerError::Piece(PieceError::Fit { id: "a".into(), base: "b".into(), fit });
    let said = [Lang::En, Lang::De].map(|lang| ledger_words(Texts::of(lang), &error));
    assert!(said[0].contains("4.00\u{a0}mm") && said[0].contains("12.35\u{a0}mm"), "{}", said[0]);
    assert!(said[1].contains("4,00\u{a0}mm") && said[1].contains("12,35\u{a0}mm"), "{}", said[1]);
}
