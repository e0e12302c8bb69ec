//! Late tickets at the desk's pages: a tablet was out of reach while the show was closed.

use chatelaine::{craft::Wearer, money::quote, ticket::SentTicket};

use crate::{kit::Table, seller::Seller};

fn ring_up(seller: &Seller, ticket: &SentTicket) {
    let page = format!("/tickets/{}", ticket.id);
    for part in std::iter::once("base".to_owned()).chain((0..ticket.piece.drops.len()).map(|at| at.to_string())) {
        assert_eq!(seller.post(&format!("{page}/tick"), &[("part", &part), ("on", "1")]).status, 303);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let total = ticket.quote.total.to_string();
    assert_eq!(seller.post(&format!("{page}/ring-up"), &[("tender", "card"), ("total", &total)]).status, 303);
}

#[test]
fn a_late_ticket_is_found_counted_and_told() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let fitting = kiosk.fitting();
    let (one, two) = (fitting[0].id.as_str(), fitting[1].id.as_str());
    let late = kiosk.ticket(4, &[one, two], Wearer::From13);
    let open = kiosk.ticket(5, &[one], Wearer::From13);
    assert_eq!(seller.post("/show/close", &[("show", "1")]).status, 303);
    kiosk.deliver(&late, false);
    kiosk.deliver(&open, false);
    let own = kiosk.ticket(4, &[two], Wearer::From13);
    assert_eq!((late.show, own.show, late.number), (1, 2, own.number));
    kiosk.deliver(&own, true);

    // Both wait, and both are found by the number they share.
    let list = seller.get("/tickets").text;
    assert!(list.contains(&format!("/tickets/{}", late.id)) && list.contains("of show 1"), "{list}");
    let found = seller.get(&format!("/tickets/find?number={}", own.number));
    assert_eq!(found.status, 200, "which of the two is meant, the seller sees from the piece");
    for ticket in [&late, &own] {
        assert!(found.text.contains(&format!("/tickets/{}", ticket.id)), "{}", ticket.show);
    }
    assert!(seller.get("/show/close").text.contains("3 tickets are still open"));

    ring_up(&seller, &late);
    let plain = |amount| table.catalog().table.prices.currency.plain(amount);
    let running = seller.get("/show").text;
    assert!(running.contains(&plain(late.quote.total)) && running.contains("late, from earlier shows"), "{running}");
    assert_eq!(seller.post("/show/close", &[("show", "2")]).status, 303);
    let sheet = seller.get("/shows/2").text;
    assert!(sheet.contains(&format!("1 ticket, {}", plain(late.quote.total))), "{sheet}");
    assert!(sheet.contains("2 of them at closing") && sheet.contains("Let go, from earlier shows"), "{sheet}");
    let first = seller.get("/shows/1").text;
    assert!(first.contains("Came after it was closed") && first.contains("rung up in show 2"), "{first}");
    assert!(first.contains("let go in show 2"), "{first}");
    assert!(!sheet.contains("Came after it was closed"), "{sheet}");

    // In the next show the number leads to its own ticket, and that one's page to the others.
    let next = kiosk.ticket(4, &[one], Wearer::From13);
    kiosk.deliver(&next, true);
    let page = format!("/tickets/{}", next.id);
    assert_eq!(seller.get(&format!("/tickets/find?number={}", next.number)).location, page);
    let text = seller.get(&page).text;
    for (ticket, words) in [(&late, "of show 1, rung up"), (&own, "of show 2, let go")] {
        assert!(text.contains(&format!("/tickets/{}", ticket.id)) && text.contains(words), "{words}");
    }
}

/// A tablet sends a sum that these parts never cost: the seller is asked, and nothing is charged before.
#[test]
fn the_page_asks_what_is_charged() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let catalog = table.catalog();
    let mut ticket = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    let today = ticket.quote.total;
    let mut drops = ticket.quote.drops.clone();
    drops[0].price = "0.01".parse().expect("an amount");
    ticket.quote = quote(&catalog.table.prices, ticket.quote.base.clone(), drops).expect("a quote");
    kiosk.deliver(&ticket, true);
    let page = format!("/tickets/{}", ticket.id);
    for part in ["base", "0"] {
        assert_eq!(seller.post(&format!("{page}/tick"), &[("part", part), ("on", "1")]).status, 303);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let plain = |amount| catalog.table.prices.currency.plain(amount);
    let text = seller.get(&page).text;
    for words in ["never cost at this table", "Say first what is charged", &plain(ticket.quote.total), &plain(today)] {
        assert!(text.contains(words), "{words}");
    }
    let total = ticket.quote.total.to_string();
    let early = seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &total)]);
    assert!(early.status == 409 && early.text.contains("say first what is charged"), "{}", early.status);
    assert_eq!(seller.post(&format!("{page}/sum"), &[("charge", "nothing")]).status, 400);
    assert_eq!(seller.post(&format!("{page}/sum"), &[("charge", "today")]).status, 303);
    // The form of the page from before asks for the sum that was seen then.
    let stale = seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &total)]);
    assert!(stale.status == 409 && stale.text.contains("nothing was charged"), "{}", stale.status);
    let today = today.to_string();
    assert_eq!(seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &today)]).status, 303);
    assert!(seller.get(&page).text.contains("today’s prices are charged"));
}
