//! The desk as kiosks and sellers meet it: over HTTP, with a real ledger on disk.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    collections::BTreeSet,
    fs,
    io::Read,
    net::TcpStream,
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    catalog::relief_name,
    craft::{DropKind, Wearer},
    desk::{Desk, DeskError},
    lang::{Lang, Texts},
    link::{
        PinAnswer,
        wire::{PairRequest, Pairing, PinQuestion, Refused},
    },
    money::Tender,
    photo,
    ticket::{Receipt, State},
};

use maud::html;

#[path = "desk/bill_story.rs"]
mod bill_story;
#[path = "desk/bills.rs"]
mod bills;
#[path = "desk/by_hand.rs"]
mod by_hand;
#[path = "desk/helper.rs"]
mod helper;
#[path = "desk/kit.rs"]
mod kit;

#[path = "desk/base_sizes.rs"]
mod base_sizes;
#[path = "desk/colours.rs"]
mod colours;
#[path = "desk/empty_table.rs"]
mod empty_table;
#[path = "desk/kiosk_line.rs"]
mod kiosk_line;
#[path = "desk/languages.rs"]
mod languages;
#[path = "desk/mistakes.rs"]
mod mistakes;
#[path = "desk/mixes.rs"]
mod mixes;
#[path = "desk/one_device.rs"]
mod one_device;
#[path = "desk/own_table.rs"]
mod own_table;
#[path = "desk/people_pages.rs"]
mod people_pages;
#[path = "desk/queue.rs"]
mod queue;
#[path = "desk/routes.rs"]
mod routes;
#[path = "photo/scene.rs"]
#[allow(dead_code, reason = "the photos' own tests need more of it")]
mod scene;
#[path = "desk/seller.rs"]
mod seller;
#[path = "desk/sign_in.rs"]
mod sign_in;
#[path = "desk/staff.rs"]
mod staff;
mod support;
#[path = "desk/tickets.rs"]
mod tickets;
#[path = "desk/tray_kill.rs"]
mod tray_kill;
#[path = "desk/tray_photo.rs"]
mod tray_photo;
#[path = "desk/tray_scene.rs"]
mod tray_scene;
#[path = "desk/two_on_one.rs"]
mod two_on_one;
#[path = "desk/waiting.rs"]
mod waiting;
#[path = "desk/who_may.rs"]
mod who_may;

use kit::{PIN, Table, agent, config};
use seller::{Answer, Seller};

/// The words that a page shows for an amount.
fn money(table: &Table, amount: rust_decimal::Decimal) -> String {
    table.catalog().table.prices.currency.plain(amount)
}

#[test]
fn counts_are_set_and_the_show_is_closed_once() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let drop = kiosk.fitting()[0].id.clone();
    let part = format!("/parts/{drop}");
    assert_eq!(seller.post(&part, &[("free", "7")]).status, 303);
    assert!(seller.get(&part).text.contains("value=\"7\""));
    for wrong in ["-1", "a few", "", "10000"] {
        assert_eq!(seller.post(&part, &[("free", wrong)]).status, 400, "{wrong}");
    }
    assert_eq!(seller.post(&part, &[("free", "7"), ("to", "0")]).status, 303, "sold out by one touch");
    assert_eq!(kiosk.news(-1, "").available[&drop], 0);
    assert!(seller.get("/trays").text.contains("sold out"));
    seller.post(&part, &[("free", "5")]);

    let (one, two) = (kiosk.ticket(0, &[&drop], Wearer::From13), kiosk.ticket(1, &[&drop], Wearer::From13));
    kiosk.deliver(&one, true);
    kiosk.deliver(&two, true);
    let page = format!("/tickets/{}", one.id);
    for fields in [[("part", "base"), ("on", "1")], [("part", "0"), ("on", "1")]] {
        seller.post(&format!("{page}/tick"), &fields);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let total = one.quote.total.to_string();
    assert_eq!(seller.post(&format!("{page}/ring-up"), &[("tender", "cash"), ("total", &total)]).status, 303);
    let sum = money(&table, one.quote.total);
    assert!(seller.get("/show").text.contains(&sum));
    assert!(seller.get("/show/close").text.contains("1 ticket is still open"));
    assert_eq!(seller.post("/show/close", &[("show", "9")]).status, 409);
    for _ in 0..2 {
        assert_eq!(seller.post("/show/close", &[("show", "1")]).location, "/shows/1");
    }
    let sheet = seller.get("/shows/1").text;
    assert!(sheet.contains(&sum) && sheet.contains("1 of them at closing"));
    let show = table.desk.with_ledger(|ledger| ledger.show()).unwrap().unwrap();
    assert_eq!(show.id, 2, "the form sent twice closed one show");
    assert!(seller.get("/show").text.contains("/shows/1"));
    assert_eq!(seller.get("/shows/2").status, 404, "a show that still runs");
    let state = |id| table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().state;
    assert_eq!((state(one.id), state(two.id)), (State::RungUp, State::LetGo));
}

#[test]
fn pictures_stay_as_the_catalogue_knows_them_whatever_becomes_of_their_files() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let name = table.catalog().drop_kind("key-heart").expect("a drop").picture.clone();
    let file = table.catalog_file("pictures").join(&name);
    let before = fs::read(&file).unwrap();
    let fetched = |path: String, header: (&str, String)| {
        let mut answer = seller.agent.get(format!("{}{path}", seller.url)).header(header.0, header.1).call().unwrap();
        answer.body_mut().read_to_vec().unwrap()
    };
    let on_tablet = || fetched(format!("/link/picture/{name}"), ("Authorization", kiosk.bearer()));
    let on_page = || fetched(format!("/pictures/{name}"), ("Cookie", seller.cookie.clone()));
    // A page shows it small, so it gets a small one.
    let small = on_page();
    let size = image::load_from_memory(&small).map(|picture| picture.width().max(picture.height()));
    assert!(size.is_ok_and(|side| (100..=200).contains(&side)) && small.len() < before.len());
    assert!(on_tablet() == before && on_page() == small);
    fs::write(&file, "half a picture").unwrap();
    assert!(on_tablet() == before && on_page() == small, "half a picture was given out");
    fs::remove_file(&file).unwrap();
    assert!(on_tablet() == before && on_page() == small);
}

#[test]
fn a_desk_starts_on_the_last_good_catalogue_or_says_what_is_wrong() {
    let Table { desk, dir } = Table::new();
    let good = desk.url();
    assert!(good.starts_with("http://127.0.0.1:"));
    let busy = Desk::start(config(dir.path())).err().expect("one desk to a folder");
    assert!(matches!(busy, DeskError::InUse(_)), "{busy}");
    let other = tempfile::tempdir().unwrap();
    support::copy(&dir.path().join("catalog"), &other.path().join("catalog")).unwrap();
    let mut same_port = config(other.path());
    same_port.listen = desk.addr();
    let taken = Desk::start(same_port).err().expect("one desk to a port");
    assert!(matches!(taken, DeskError::Listen(..)) && taken.to_string().contains("--listen"), "{taken}");
    desk.stop();

    fs::write(dir.path().join("catalog/table.ron"), "(name: \"Half").unwrap();
    let desk = Desk::start(config(dir.path())).expect("the copy is good");
    let table = Table { desk, dir };
    let seller = table.seller();
    assert!(seller.get("/trays").text.contains("Mistakes in the catalogue"));
    assert_eq!(seller.get("/tickets").status, 200);

    fs::write(other.path().join("catalog/table.ron"), "(name: \"Half").unwrap();
    fs::remove_file(other.path().join("catalog/bases.ron")).unwrap();
    let error = Desk::start(config(other.path())).err().expect("no copy yet").to_string();
    assert!(error.contains("table.ron:1:") && error.contains("bases.ron: the file is missing"), "{error}");
}

#[test]
fn open_pages_hear_of_changes_and_do_not_keep_the_desk_from_closing() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let request = seller.agent.get(format!("{}/events", seller.url)).header("Cookie", &seller.cookie);
    let mut stream = request.call().unwrap().into_body().into_reader();
    let mut next = || {
        let mut text = Vec::new();
        let mut byte = [0];
        while !text.ends_with(b"\n\n") && stream.read(&mut byte).expect("the stream") == 1 {
            text.push(byte[0]);
        }
        String::from_utf8(text).unwrap()
    };
    let first = next();
    assert!(first.starts_with("data:"), "{first:?}");
    let started = Instant::now();
    kiosk.deliver(&kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13), true);
    assert_ne!(next(), first);
    assert!(started.elapsed() < Duration::from_secs(1));

    let addr = table.desk.addr();
    let news = kiosk.news(-1, "");
    thread::scope(|scope| {
        // A kiosk's question waits, and a client that never says anything is connected.
        let silent = TcpStream::connect(addr).unwrap();
        scope.spawn(|| kiosk.news(news.change, &news.revision));
        thread::sleep(Duration::from_millis(200));
        let started = Instant::now();
        table.desk.stop();
        assert!(started.elapsed() < Duration::from_secs(3), "closing took {:?}", started.elapsed());
        drop(silent);
    });
    assert_eq!(next(), "", "the stream has ended");
    assert!(TcpStream::connect(addr).is_err(), "nobody answers any more");
}

/// The card has every drop with what each wearer hears of it, each rule with how far it is known, and the deferral.
#[test]
fn the_card_of_cautions_has_everything_on_the_table() {
    let table = Table::new();
    let seller = table.seller();
    let catalog = table.catalog();
    assert!(seller.get("/trays").text.contains("href=\"/trays/cautions\""));
    for lang in Lang::ALL {
        let (texts, page) = (Texts::new(lang), seller.get(&format!("/trays/cautions?lang={}", lang.code())).text);
        let said = |words: &str| page.contains(&html! { (words) }.into_string());
        assert!(said(&texts.get("caution-deferral")) && said(&texts.region(&catalog.rules)), "{lang:?}");
        let of_drops = catalog.drops.iter().flat_map(|kind| {
            Wearer::ANSWERS.into_iter().flat_map(|wearer| catalog.drop_cautions(kind, wearer).cautions)
        });
        let of_drops: Vec<_> = of_drops.collect();
        for one in &of_drops {
            assert!(said(&texts.caution(one, &catalog)), "{lang:?}: {}", one.text);
        }
        let shown = catalog.rules.rules.iter().filter(|rule| of_drops.iter().any(|one| one.code == rule.code));
        for rule in shown {
            let word = texts.get(&format!("code-{}", rule.code.code()));
            assert!(said(&word), "{lang:?}: {word}");
            assert!(said(&texts.cited_rule(rule)), "{lang:?} {}", rule.rule);
            assert_eq!(said(&rule.figure), lang == Lang::En, "{lang:?}: figures are written in English alone");
            assert!(!said(&rule.seller), "guests read it: {}", rule.seller);
        }
        for kind in &catalog.drops {
            assert!(said(catalog.called(lang.code(), &kind.id, &kind.name)), "{lang:?} {}", kind.id);
        }
        assert!(
            !["code-", "caution-", "card-", "wearer-"].iter().any(|key| page.contains(&format!(">{key}"))),
            "{lang:?}"
        );
    }
    let english = Texts::new(Lang::En);
    let text = seller.get("/trays/cautions").text;
    let row = |name: &str| {
        let rest =
            &text[text.find(&format!("<th scope=\"row\">{name}</th>")).unwrap_or_else(|| panic!("no row {name}"))..];
        rest[..rest.find("</tr>").expect("the row's end")].to_owned()
    };
    // Drops under their trays, bases under their own heading.
    let heads: Vec<&str> = text.split("<thead>").skip(1).filter_map(|rest| rest.split("</thead>").next()).collect();
    let (of_bases, of_trays) = heads.split_last().expect("tables");
    assert!(of_bases.contains("<th>Base</th>") && !of_bases.contains("Charm"), "{of_bases}");
    assert!(
        of_trays.len() == catalog.trays.len() && of_trays.iter().all(|head| head.contains("<th>Charm or bead</th>"))
    );
    for kind in &catalog.drops {
        let cells: Vec<String> = row(&kind.name).split("<td data-band").skip(1).map(str::to_owned).collect();
        assert_eq!(cells.len(), 4, "{}", kind.name);
        for (cell, wearer) in cells.iter().zip(Wearer::ANSWERS) {
            let verdict = catalog.drop_cautions(kind, wearer);
            let word = match (verdict.suitable, verdict.cautions.is_empty()) {
                (false, _) => "Not for this age",
                (true, false) => "With care",
                (true, true) => "Nothing found",
            };
            assert!(cell.contains(word), "{} {wearer:?}: {cell}", kind.name);
            for hazard in verdict.hazards() {
                let word = english.get(&format!("code-{}", hazard.code().code()));
                assert!(cell.contains(&word), "{} {wearer:?} {word}", kind.name);
            }
            assert!(
                (1..=verdict.hazards().len()).contains(&cell.matches("<li").count()) || verdict.cautions.is_empty()
            );
        }
    }
    assert!(!row("Brass bangle").contains("class=\"home\""), "a base lies on no tray");
    assert!(
        row("Lane lantern, lights up").contains("button cell")
            && row("Antique brass cable chain").contains("round the neck")
    );
}
