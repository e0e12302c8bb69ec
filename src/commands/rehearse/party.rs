//! The next show: a party at a host's home, with the table's package and its reward; what came too late for the show before,
//! and the rest of a deposit.

use chatelaine::{
    ledger::{AboutShow, Given, Part, Paying, ShowKind},
    link::Kept,
    money::{Reduction, Reward, Tender, reward},
    ticket::{Receipt, SentTicket, TicketNumber},
};
use jiff::Timestamp;
use rust_decimal::Decimal;
use uuid::Uuid;

use super::{
    super::Told,
    agree,
    by_hand::Deposit,
    till::{Till, told},
};

/// Tells the desk that the running show is a party.
pub(super) fn begin(till: &Till<'_>) -> Result<(), Told> {
    let (show, currency) = (till.show, till.story.loaded.catalog.table.prices.currency);
    let about =
        AboutShow { kind: Some(ShowKind::HomeParty), host: Some("The host".to_owned()), ..AboutShow::default() };
    till.story.on_ledger(move |ledger| ledger.set_about(show, &about, currency, Timestamp::now()))?;
    say!("The next show is a party at home:");
    Ok(())
}

/// A tablet that was out of reach delivers what was sent in the show before, under the tablet's own next number.
pub(super) fn late(till: &mut Till<'_>, like: Kept) -> Result<(), Told> {
    let (catalog, before) = (till.story.loaded.catalog.clone(), till.show - 1);
    let id = Uuid::now_v7();
    let ticket = till.story.on_ledger(move |ledger| {
        let now = Timestamp::now();
        let piece = ledger.ticket(like.id)?.piece;
        let digit = like.number.kiosk();
        let sent = SentTicket {
            id,
            show: before,
            number: TicketNumber::new(digit, ledger.next_sequence(before, digit)?)?,
            quote: catalog.quote(&piece)?,
            verdict: catalog.cautions(&piece)?,
            piece,
            grown_up_confirmed: true,
            practice: false,
        };
        let stored = ledger.receive(&sent, true, &catalog, now)?;
        if stored != (Receipt::Stored { short: vec![] }) {
            return Ok(Err(stored));
        }
        let ticket = ledger.tick(id, Part::Base, true, false, now)?;
        for (at, _) in ticket.live_lines() {
            ledger.tick(id, Part::Line(at), true, false, now)?;
        }
        Ok(Ok(told(ledger, id)?))
    })?;
    let ticket = ticket.map_err(|receipt| Told(format!("the late ticket went astray: {receipt:?}")))?;
    say!("  ticket {} of the show before arrives late and is rung up here", ticket.number);
    let bill = till.bill_for(&ticket)?;
    till.pays(bill, Paying::all(Tender::Cash))?;
    Ok(())
}

/// The rest of a deposit is paid.
pub(super) fn fetched(till: &mut Till<'_>, deposit: &Deposit) -> Result<(), Told> {
    let bill = till.pays(deposit.bill, Paying::all(Tender::Cash))?;
    agree("the payments of a piece with a deposit", &bill.payments.len(), &2)?;
    say!("  {} is fetched, and its rest is paid", deposit.ticket.number);
    Ok(())
}

/// Two guests take the table's package, and the host what the table's rule gives for the evening.
pub(super) fn play(till: &mut Till<'_>) -> Result<(), Told> {
    let offered = &till.story.loaded.catalog.table.till;
    let (package, rule) = (offered.packages.first().cloned(), offered.reward.clone());
    for who in ["A guest of the party", "Another one"] {
        let drops = package.as_ref().map_or(3, |package| package.drops as usize + 1);
        let ticket = till.threads(who, drops.min(till.drops.len()))?;
        if let Some(package) = package.clone() {
            let (id, name) = (ticket.id, package.name.clone());
            let with = till.story.on_ledger(move |ledger| ledger.set_package(id, Some(package), Timestamp::now()))?;
            say!("  {name}: {}", with.quote.currency.plain(with.quote.total));
        }
        let bill = till.bill_for(&ticket)?;
        till.pays(bill, Paying::all(Tender::Card))?;
    }
    let Some(rule) = rule else { return Ok(()) };
    let earned = reward(&rule, till.account.net(), &till.story.loaded.catalog.table.prices)?;
    let ticket = till.threads("The host", 3)?;
    let marked = ticket.quote.subtotal - ticket.quote.discount;
    let reduction = match earned {
        Reward::Amount(amount) => Some(Reduction::Amount(amount.min(marked))),
        Reward::Pieces { count: 0, .. } => None,
        Reward::Pieces { up_to: None, .. } => Some(Reduction::Percent(Decimal::ONE_HUNDRED)),
        Reward::Pieces { up_to: Some(most), .. } => Some(Reduction::Amount(most.min(marked))),
    };
    if let Some(reduction) = reduction {
        let given = Given { reduction, reason: "the host's reward".to_owned() };
        let id = ticket.id;
        let less = till.story.on_ledger(move |ledger| ledger.reduce(id, Some(given), Timestamp::now()))?;
        let off = less.quote.discount - ticket.quote.discount;
        till.account.gave(off);
        say!("  the host's reward: {} less", less.quote.currency.plain(off));
    }
    let bill = till.bill_for(&ticket)?;
    till.pays(bill, Paying::all(Tender::Card))?;
    Ok(())
}
