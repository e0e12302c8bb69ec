//! Who may do what: every route of the desk, as it stands in the source, asked by nobody, a helper, the seller and a tablet.
//! A route that is not in the table fails, and so does a line of the table without a route.

use std::{collections::BTreeMap, path::Path};

use chatelaine::{ledger::Visitor, link::Pairing};
use sha2::{Digest, Sha256};

use super::*;
use crate::{
    helper::helper,
    routes::{
        For::{self, Anybody, Approved, Desk, Seller as Sellers, Tablet},
        TABLE,
    },
};

/// Every route in the source, as method and address.
fn routes() -> BTreeSet<(String, String)> {
    let (mut found, mut folders) = (BTreeSet::new(), vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("src/desk")]);
    while let Some(folder) = folders.pop() {
        for path in fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()) {
            if path.is_dir() {
                folders.push(path);
            } else {
                routes_of(&fs::read_to_string(&path).unwrap(), &mut found);
            }
        }
    }
    found
}

fn routes_of(source: &str, found: &mut BTreeSet<(String, String)>) {
    for other in [".nest(", ".route_service(", ".nest_service(", "MethodRouter"] {
        assert!(!source.contains(other), "{other} adds routes in a way that this test does not read");
    }
    for uses in source.split("routing::").skip(1).map(|rest| rest.split([';', '\n']).next().unwrap_or_default()) {
        let names = uses.trim_matches(['{', '}', ',']).split(", ");
        assert!(names.clone().all(|name| ["get", "post"].contains(&name)), "routing::{uses}");
    }
    for rest in source.split(".route(").skip(1) {
        let address = rest.split('"').nth(1).unwrap();
        let mut depth = 1;
        let end = rest.find(|c| {
            depth += i32::from(c == '(') - i32::from(c == ')');
            depth == 0
        });
        let handlers = &rest[..end.unwrap()];
        for (word, method) in [("get(", "GET"), ("post(", "POST")] {
            let is_own = |at: usize| !handlers[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
            if handlers.match_indices(word).any(|(at, _)| is_own(at)) {
                assert!(found.insert((method.to_owned(), address.to_owned())), "{method} {address} is there twice");
            }
        }
    }
}

/// What became of a request, as far as it tells who may.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Outcome {
    LedToSignIn,
    PairFirst,
    AskedForTheSeller,
    SellersOnly,
    /// It was looked at, whatever is said to it.
    LookedAt,
}

/// A desk with something at each address.
struct Scene {
    table: Table,
    mia: Seller,
    places: BTreeMap<&'static str, String>,
    pairing: Pairing,
    sessions: u32,
}

impl Scene {
    fn new() -> Self {
        let table = Table::new();
        let (seller, kiosk) = (table.seller(), table.kiosk());
        let (mia, _) = helper(&table, &seller, "Mia");
        let drop = kiosk.fitting()[0].id.clone();
        let ticket = kiosk.ticket(0, &[&drop], Wearer::From13);
        kiosk.deliver(&ticket, true);
        let places = BTreeMap::from([
            ("/tickets/{id}", format!("/tickets/{}", ticket.id)),
            ("/parts/{id}", format!("/parts/{drop}")),
            ("/shows/{id}", "/shows/1".to_owned()),
            ("{table}", "tax.csv".to_owned()),
            ("{home}", "B1".to_owned()),
            ("{letter}", "B".to_owned()),
            ("/photo/{id}", "/photo/none".to_owned()),
            ("/bases/{id}", "/bases/none".to_owned()),
            ("{line}", "0".to_owned()),
            ("{at}", "0".to_owned()),
            ("{digit}", "9".to_owned()),
            ("{browser}", "0".repeat(16)),
            ("/assets/desk/{name}", "/assets/desk/desk.css".to_owned()),
            ("picture/{name}", "picture/key-heart.png".to_owned()),
            ("pictures/{name}", "pictures/key-heart.png".to_owned()),
            ("/{id}", format!("/{}", ticket.id)),
        ]);
        Self { table, mia, places, pairing: kiosk.pairing, sessions: 0 }
    }

    fn address(&self, route: &str) -> String {
        // The longest first, so that an id is one of what stands before it.
        let mut places: Vec<_> = self.places.iter().collect();
        places.sort_by_key(|(part, _)| std::cmp::Reverse(part.len()));
        places.into_iter().fold(route.to_owned(), |address, (part, place)| address.replace(part, place))
    }

    /// The cookie of a session that begins now, since what was asked before may have ended the last one.
    fn session(&mut self, who: Option<&str>) -> String {
        self.sessions += 1;
        let token = format!("session-{}", self.sessions);
        let hash: String = Sha256::digest(token.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect();
        let who = who.map(str::to_owned);
        let visitor =
            Visitor { key_hash: format!("{who:?}"), name: "Phone".into(), address: "192.168.4.2".into(), who };
        let begun =
            self.table.desk.with_ledger(move |ledger| ledger.begin_session(&hash, &visitor, jiff::Timestamp::now()));
        begun.unwrap().unwrap();
        format!("seller={token}")
    }

    fn ask(&self, (method, route, _, fields): (&str, &str, For, &str), header: (&str, &str), more: &str) -> Outcome {
        let (agent, mut url) = (&self.mia.agent, format!("{}{}", self.mia.url, self.address(route)));
        let fields = [fields, more].iter().filter(|part| !part.is_empty()).copied().collect::<Vec<_>>().join("&");
        let answer = if method == "GET" {
            if !fields.is_empty() {
                url = format!("{url}?{fields}");
            }
            agent.get(url).header(header.0, header.1).call().unwrap()
        } else {
            let is_message = route.starts_with("/link/");
            let form = if is_message { "application/json" } else { "application/x-www-form-urlencoded" };
            agent.post(url).header(header.0, header.1).header("Content-Type", form).send(fields).unwrap()
        };
        // What never ends is no more than begun.
        if answer.headers().get("content-type").is_some_and(|form| form == "text/event-stream") {
            return Outcome::LookedAt;
        }
        let answer = Answer::from(answer);
        let leads_nowhere = answer.status == 405 || answer.text.to_lowercase().contains("there is no page");
        assert!(!leads_nowhere, "{method} {route}: {}", answer.text);
        assert!(answer.status < 500, "{method} {route}: {}", answer.text);
        let leads_away = answer.location.starts_with("/sign-in") && route != "/setup";
        match answer.status {
            303 if leads_away && (method == "GET" || answer.location.contains("lost=1")) => Outcome::LedToSignIn,
            401 => Outcome::PairFirst,
            403 if answer.text.contains("name=\"seller_pin\"") => Outcome::AskedForTheSeller,
            403 if answer.text.contains("is the seller’s to do") => Outcome::SellersOnly,
            _ => Outcome::LookedAt,
        }
    }
}

#[test]
fn every_route_answers_those_it_is_for_and_no_others() {
    let in_the_table: BTreeSet<_> =
        TABLE.iter().map(|(method, address, ..)| ((*method).into(), (*address).into())).collect();
    let in_the_source = routes();
    assert!(in_the_source.len() > 60, "only {} routes are read", in_the_source.len());
    let differ: Vec<_> = in_the_source.symmetric_difference(&in_the_table).collect();
    assert!(differ.is_empty(), "say in the table for whom these are, or take them out of it: {differ:?}");

    let mut scene = Scene::new();
    let bearer = format!("Bearer {}", scene.pairing.key);
    let pin = format!("seller_pin={PIN}");
    for &one in TABLE {
        use Outcome::{AskedForTheSeller, LedToSignIn, LookedAt, PairFirst, SellersOnly};
        // A message has no fields.
        let more = if one.1.starts_with("/link/") { "" } else { pin.as_str() };
        let mut told = vec![scene.ask(one, ("Cookie", ""), "")];
        for (who, more) in [(Some("Mia"), ""), (Some("Mia"), more), (None, "")] {
            let cookie = scene.session(who);
            told.push(scene.ask(one, ("Cookie", &cookie), more));
        }
        told.push(scene.ask(one, ("Authorization", &bearer), ""));
        let wanted = match one.2 {
            Anybody => [LookedAt; 5],
            Desk => [LedToSignIn, LookedAt, LookedAt, LookedAt, LedToSignIn],
            Approved => [LedToSignIn, AskedForTheSeller, LookedAt, LookedAt, LedToSignIn],
            Sellers => [LedToSignIn, SellersOnly, SellersOnly, LookedAt, LedToSignIn],
            Tablet => [PairFirst, PairFirst, PairFirst, PairFirst, LookedAt],
        };
        assert_eq!(told, wanted, "{} {}: nobody, a helper, with the seller's PIN, the seller, a tablet", one.0, one.1);
    }
}
