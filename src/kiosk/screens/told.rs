//! What guest and seller are told, in words.

use rust_decimal::Decimal;

use super::Scene;
use crate::{
    craft::Wearer,
    guest::{NotSent, SellerNote, Told, WhyNot},
    link::{PairError, SendError},
};

/// Heading and words of what the guest is told.
pub(super) fn worded(s: &Scene, told: &Told) -> (String, String) {
    let (title, text) = match told {
        Told::LeftOff { drops } => {
            ("base-left-off-title", s.texts.with("base-left-off", &[("n", (*drops as i64).into())]))
        }
        Told::NoRoom { fits, longer } => {
            let key = if *longer { "stage-no-room" } else { "stage-no-room-at-all" };
            ("stage-no-room-title", s.texts.with(key, &[("n", (*fits as i64).into())]))
        }
        Told::WhyNot { kind, why } => return why_not(s, kind, why),
        Told::NoSurprise => ("stage-surprise", s.t("stage-no-surprise")),
        Told::NotSent(why) => ("send-failed-title", s.t(not_sent(why))),
        Told::RefusedAfterAll => ("send-failed-title", s.t("sent-refused")),
        Told::Short { parts } => {
            let named = parts.iter().map(|(id, count)| match count {
                1 => part_name(s, id),
                count => format!("{count}\u{a0}×\u{a0}{}", part_name(s, id)),
            });
            let names = named.collect::<Vec<_>>().join(", ");
            ("send-short-title", s.texts.with("send-short", &[("names", names.into())]))
        }
    };
    (s.t(title), text)
}

/// What a drop or base is called in the guest's language; its id where the catalogue has it no more.
fn part_name(s: &Scene, id: &str) -> String {
    let own = s.catalog().and_then(|catalog| {
        catalog.drop_kind(id).map(|kind| kind.name.as_str()).or(catalog.base(id).map(|base| base.name.as_str()))
    });
    s.called(id, own.unwrap_or(id)).to_owned()
}

fn why_not(s: &Scene, kind: &str, why: &WhyNot) -> (String, String) {
    let name = part_name(s, kind);
    let place = ("name", name.as_str().into());
    match why {
        WhyNot::SoldOut => (s.t("why-sold-out-title"), s.texts.with("why-sold-out", &[place])),
        WhyNot::TooDear => (s.t("why-too-dear-title"), s.texts.with("why-too-dear", &[place])),
        WhyNot::NotFor { wearer, hazards } => {
            let said = hazards.iter().filter_map(|hazard| Some(s.texts.caution(hazard, s.catalog()?)));
            let said = said.collect::<Vec<_>>().join(" ");
            let title = if *wearer == Wearer::From13 { "not-to-be-worn" } else { "why-not-for-title" };
            (s.t(title), format!("{name}\n\n{said}\n\n{}", s.t("caution-deferral")))
        }
        WhyNot::NoFit { opening_mm, needs_mm } => {
            let mm = |mm: f64| s.texts.lang.number(Decimal::try_from(mm).unwrap_or_default().round_dp(2));
            let places = [place, ("opens", mm(*opening_mm).into()), ("needs", mm(*needs_mm).into())];
            (s.t("why-no-fit-title"), s.texts.with("why-no-fit", &places))
        }
    }
}

fn not_sent(why: &NotSent) -> &'static str {
    match why {
        NotSent::Refused => "send-refused",
        NotSent::NotKept(SendError::NotPaired) => "send-not-paired",
        NotSent::NotKept(SendError::LetGo) => "send-let-go",
        NotSent::NotKept(SendError::PracticeOver) => "send-practice-over",
        NotSent::NotKept(SendError::Numbers(_)) => "send-no-numbers",
        NotSent::NotKept(SendError::Disk(_)) => "send-disk",
    }
}

/// What the seller is told above keypad and menu.
pub(super) fn noted(s: &Scene, note: &SellerNote) -> String {
    let wait = |seconds: u32| s.texts.with("pin-wait", &[("seconds", i64::from(seconds).into())]);
    match note {
        SellerNote::PinWrong => s.t("pin-wrong"),
        SellerNote::PinNotSet => s.t("pin-not-set"),
        SellerNote::PinWait { seconds } => wait(*seconds),
        SellerNote::PinAway => s.t("pin-away"),
        SellerNote::Paired { digit } => s.texts.with("pair-done", &[("digit", i64::from(*digit).into())]),
        SellerNote::NotPaired(error) => match error {
            PairError::NotReached { desk, .. } => s.texts.with("pair-not-reached", &[("desk", desk.clone().into())]),
            PairError::NotADesk { desk } => s.texts.with("pair-not-a-desk", &[("desk", desk.clone().into())]),
            PairError::WrongCode => s.t("pair-wrong-code"),
            PairError::NoCode => s.t("pair-no-code"),
            PairError::Wait { seconds } => wait(*seconds),
            PairError::NoDigit => s.t("pair-no-digit"),
            PairError::DeskFailed => s.t("pair-desk-failed"),
            PairError::Disk(_) => s.t("pair-disk"),
        },
        SellerNote::DeskNotOpened => s.t("seller-desk-not-opened"),
        SellerNote::SettingsNotKept => s.t("seller-not-kept"),
    }
}
