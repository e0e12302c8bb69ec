//! The list of tickets: who came first is served first, and nobody is passed over between two windows.

use super::*;
use chatelaine::ticket::TicketNumber;

/// The numbers on a page, from the top.
fn numbers(text: &str) -> Vec<String> {
    text.split("<p class=\"number\">").skip(1).filter_map(|part| Some(part.split_once('<')?.0.to_owned())).collect()
}

/// Where a button with these words leads.
fn leads<'t>(text: &'t str, words: &str) -> Option<&'t str> {
    let before = text.split_once(&format!(">{words}</a>"))?.0;
    before.rsplit_once("href=\"")?.1.split_once('"').map(|(address, _)| address)
}

#[test]
fn who_came_first_stands_first_through_all_windows() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let sent: Vec<TicketNumber> = (0..130)
        .map(|sequence| {
            let ticket = kiosk.ticket(sequence, &[], Wearer::From13);
            kiosk.deliver(&ticket, false);
            ticket.number
        })
        .collect();
    let expected: Vec<String> = sent.iter().map(ToString::to_string).collect();
    let all = seller.get("/tickets").text;
    assert_eq!(numbers(&all), expected[..40], "the oldest first");
    let mut found = Vec::new();
    let mut page = leads(&all, "Show later ones").expect("more").replace("&amp;", "&");
    found.extend(numbers(&all));
    loop {
        let text = seller.get(&page).text;
        found.extend(numbers(&text));
        let Some(next) = leads(&text, "Show later ones") else { break };
        page = next.replace("&amp;", "&");
    }
    assert_eq!(found, expected, "each once, in the order in which they came");
    // What is done is looked at again soon after: there the newest stands first.
    for (n, ticket) in on_desk(&table).into_iter().enumerate().filter(|(n, _)| n % 5 == 0) {
        let done = table.desk.with_ledger(move |ledger| ledger.let_go(ticket, jiff::Timestamp::now()));
        done.expect("open").unwrap_or_else(|error| panic!("{n}: {error}"));
    }
    let done = seller.get("/tickets?group=done").text;
    let mut newest: Vec<String> = expected.iter().step_by(5).cloned().collect();
    newest.reverse();
    assert_eq!(numbers(&done), newest);
    let some = seller.get("/tickets").text;
    assert!(leads(&some, "Show older ones").is_some_and(|page| page.contains("group=done")), "{some}");
}

/// The ids of all that wait, oldest first.
fn on_desk(table: &Table) -> Vec<uuid::Uuid> {
    let waiting = table.desk.with_ledger(|ledger| ledger.window_from(chatelaine::ledger::Group::Waiting, None, 1000));
    waiting.expect("open").expect("a list").into_iter().map(|one| one.id).collect()
}

#[test]
fn a_ticket_is_read_in_four_languages() {
    let table = Table::new();
    let (mut seller, kiosk) = (table.seller(), table.kiosk());
    let ids: Vec<&str> = kiosk.fitting().iter().take(3).map(|kind| kind.id.as_str()).collect();
    let ticket = kiosk.ticket(1, &ids, Wearer::Under3);
    kiosk.deliver(&ticket, true);
    let catalog = table.catalog();
    let own = catalog.drop_kind(ids[0]).expect("a drop");
    let cookie = seller.cookie.clone();
    for (lang, tick, wearer) in [
        ("de", "Abhaken", "für unter 3"),
        ("es", "Marcar", "para menores de 3"),
        ("fr", "Cocher", "pour moins de 3 ans"),
    ] {
        seller.cookie = format!("{cookie}; language={lang}");
        let text = seller.get(&format!("/tickets/{}", ticket.id)).text;
        assert!(text.contains(tick) && text.contains(wearer), "{lang}");
        assert!(text.contains(catalog.called(lang, &own.id, "no name")), "{lang}: {}", own.id);
        // Nothing that is said in English stands there, and no key in place of a text.
        for one in &ticket.verdict.cautions {
            assert!(!text.contains(&one.text) && !text.contains(&one.seller), "{lang}: {}", one.text);
        }
        for english in ["Tick off", "Tell the guest", "sent by the guest", "Missing?", "Change the piece"] {
            assert!(!text.contains(english), "{lang}: {english}");
        }
        for page in [
            "/tickets",
            "/new",
            &format!("/tickets/{}/missing/0", ticket.id),
            &format!("/tickets/{}/let-go", ticket.id),
        ] {
            let text = seller.get(page).text;
            assert!(text.contains(&format!("<html lang=\"{lang}\"")), "{page}");
            for english in
                ["New sale", "Find by number", "Waiting", "Go back to", "Or hang", "Homes, left", "Let the ticket"]
            {
                assert!(!text.contains(english), "{lang}, {page}: {english}");
            }
        }
    }
}
