//! Who may do what: every route of the desk, as it stands in the source, asked by nobody, a helper, the seller and a tablet.
//! A route that is not in the table fails, and so does a line of the table without a route.

use std::{collections::BTreeMap, path::Path};

use chatelaine::{ledger::Visitor, link::Pairing};
use sha2::{Digest, Sha256};

use super::*;
use crate::helper::helper;

/// For whom a route is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum For {
    /// Whoever is in the network.
    Anybody,
    /// Whoever is signed in.
    Desk,
    /// The seller; on a helper's phone with the seller's PIN.
    Approved,
    /// The seller in person.
    Seller,
    /// A paired tablet.
    Tablet,
}
use For::{Anybody, Approved, Desk, Seller as Sellers, Tablet};

/// Method and address as in the source, for whom, and the fields or the message to send.
const TABLE: &[(&str, &str, For, &str)] = &[
    ("GET", "/", Anybody, ""),
    ("GET", "/assets/desk/{name}", Anybody, ""),
    ("GET", "/setup", Anybody, ""),
    ("POST", "/setup", Anybody, "pin=1&again=1"),
    ("GET", "/sign-in", Anybody, ""),
    ("POST", "/sign-in", Anybody, "pin=1"),
    ("POST", "/language", Anybody, "language=none"),
    ("POST", "/link/pair", Anybody, r#"{"code": "0", "key": null}"#),
    ("GET", "/pictures/{name}", Desk, ""),
    ("GET", "/events", Desk, ""),
    ("GET", "/events/now", Desk, ""),
    // Checking and ringing up.
    ("GET", "/tickets", Desk, ""),
    ("GET", "/tickets/find", Desk, ""),
    ("GET", "/number/{number}", Desk, ""),
    ("GET", "/answers/{key}", Desk, ""),
    ("GET", "/new", Desk, ""),
    ("POST", "/new", Desk, ""),
    ("GET", "/tickets/{id}", Desk, ""),
    ("GET", "/tickets/{id}/picture.png", Desk, ""),
    ("POST", "/tickets/{id}/call", Desk, ""),
    ("POST", "/tickets/{id}/tick", Desk, "part=0&on=1"),
    ("POST", "/tickets/{id}/all-here", Desk, ""),
    ("POST", "/tickets/{id}/add", Desk, "home=Z99"),
    ("POST", "/tickets/{id}/base", Desk, "base=none"),
    ("POST", "/tickets/{id}/length", Desk, "mm=1"),
    ("POST", "/tickets/{id}/wearer", Desk, "wearer=from13"),
    ("GET", "/tickets/{id}/missing/{line}", Desk, ""),
    ("POST", "/tickets/{id}/missing/{line}", Desk, ""),
    ("POST", "/tickets/{id}/remove", Desk, "line=9"),
    ("POST", "/tickets/{id}/told", Desk, "told=1"),
    ("POST", "/tickets/{id}/confirm", Desk, "code=magnet&on=0"),
    ("POST", "/tickets/{id}/ring-up", Desk, "tender=cash&total=1"),
    ("POST", "/tickets/{id}/sum", Desk, "charge=today"),
    ("POST", "/tickets/{id}/sum", Approved, "charge=seen"),
    ("POST", "/tickets/{id}/hand-over", Desk, ""),
    ("GET", "/tickets/{id}/let-go", Desk, ""),
    ("POST", "/tickets/{id}/let-go", Desk, ""),
    ("POST", "/tickets/{id}/bill", Desk, ""),
    ("POST", "/tickets/{id}/reduce", Desk, ""),
    ("POST", "/tickets/{id}/package", Desk, ""),
    ("POST", "/tickets/{id}/plain", Desk, ""),
    ("POST", "/tickets/{id}/plain/{at}/off", Desk, ""),
    // What is paid together, and put right.
    ("POST", "/bills", Desk, ""),
    ("GET", "/bills/{id}", Desk, ""),
    ("POST", "/bills/{id}/ticket", Desk, ""),
    ("POST", "/bills/{id}/off", Desk, ""),
    ("POST", "/bills/{id}/gift", Desk, ""),
    ("POST", "/bills/{id}/goods", Desk, ""),
    ("POST", "/bills/{id}/goods/{at}/off", Desk, ""),
    ("POST", "/bills/{id}/reduce", Desk, ""),
    ("POST", "/bills/{id}/pay", Desk, ""),
    ("POST", "/bills/{id}/other-way", Approved, "payment=0&tender=card&reason=typed"),
    ("GET", "/bills/{id}/take-back", Desk, ""),
    ("POST", "/bills/{id}/take-back", Approved, "what=goods:0&reason=typed&tender="),
    ("GET", "/sales", Desk, ""),
    // Paper.
    ("GET", "/tickets/{id}/receipt.pdf", Desk, ""),
    ("GET", "/tickets/{id}/slip.pdf", Desk, ""),
    ("GET", "/tickets/{id}/card.pdf", Desk, ""),
    ("POST", "/tickets/{id}/print-receipt", Desk, ""),
    ("POST", "/tickets/{id}/print-slip", Desk, ""),
    ("GET", "/bills/{id}/receipt.pdf", Desk, ""),
    ("POST", "/bills/{id}/print-receipt", Desk, ""),
    ("POST", "/printer/again", Desk, "print=99"),
    ("POST", "/printer/leave", Desk, "print=99"),
    // Counting what lies on the table, and looking at the day.
    ("GET", "/trays", Desk, ""),
    ("GET", "/trays/cautions", Desk, ""),
    ("GET", "/trays/count", Desk, ""),
    ("POST", "/trays/count", Desk, ""),
    ("POST", "/trays/count/reason", Desk, ""),
    ("POST", "/trays/count/change", Desk, ""),
    ("GET", "/parts/{id}", Desk, ""),
    ("POST", "/parts/{id}", Desk, "free=3"),
    ("GET", "/show", Desk, ""),
    ("GET", "/shows/{id}", Desk, ""),
    ("GET", "/shows/{id}/{table}", Desk, ""),
    ("GET", "/show/about", Desk, ""),
    ("POST", "/show/about", Approved, "show=99"),
    ("GET", "/show/close", Desk, ""),
    ("POST", "/practice/begin", Approved, ""),
    ("POST", "/practice/end", Approved, ""),
    ("POST", "/show/close", Approved, "show=99"),
    // Before and after a show.
    ("GET", "/bench", Desk, ""),
    ("GET", "/bench/parts", Sellers, ""),
    ("GET", "/bench/prices", Sellers, ""),
    ("GET", "/bench/cuts", Sellers, ""),
    ("POST", "/bench/cuts", Approved, ""),
    ("POST", "/bench/cuts/stop", Sellers, ""),
    ("GET", "/bench/cuts/{id}", Sellers, ""),
    ("POST", "/bench/cuts/{id}", Approved, "line=0&on=1"),
    ("GET", "/bench/made", Sellers, ""),
    ("POST", "/bench/made", Approved, "count=x"),
    ("GET", "/bench/lots", Sellers, ""),
    ("GET", "/bench/lots/write", Sellers, ""),
    ("POST", "/bench/lots/write", Sellers, "part=none"),
    ("GET", "/bench/lots/change", Sellers, ""),
    ("POST", "/bench/lots/change", Sellers, "part=none"),
    ("POST", "/bench/lots/strike", Sellers, "was_lot=none"),
    ("GET", "/bench/lots/recall.csv", Sellers, ""),
    ("GET", "/bench/drawers", Sellers, ""),
    ("GET", "/bench/drawers/new", Sellers, ""),
    ("POST", "/bench/drawers/new", Sellers, "name="),
    ("GET", "/bench/drawers/part/{id}", Sellers, ""),
    ("POST", "/bench/drawers/part/{id}/count", Sellers, "there=x"),
    ("POST", "/bench/drawers/part/{id}/add", Sellers, "more=x"),
    ("POST", "/bench/drawers/part/{id}/strike", Sellers, "seen=x"),
    ("GET", "/bench/packing", Sellers, ""),
    ("POST", "/bench/packing", Approved, ""),
    ("POST", "/bench/packing/{id}", Approved, "act=packed"),
    ("GET", "/bench/plans", Sellers, ""),
    ("POST", "/bench/plans/shows", Approved, ""),
    ("POST", "/bench/plans/orders", Approved, ""),
    ("POST", "/bench/plans/{kind}/{id}", Approved, "act=gone"),
    ("GET", "/bench/year", Sellers, ""),
    ("GET", "/bench/year/{file}", Sellers, ""),
    ("GET", "/bench/stock/{file}", Sellers, ""),
    ("GET", "/bench/shows/{id}", Sellers, ""),
    ("GET", "/bench/backup", Sellers, ""),
    ("POST", "/bench/backup", Sellers, ""),
    ("GET", "/bench/backup/{name}", Sellers, ""),
    ("POST", "/bench/backup/{name}", Approved, ""),
    ("POST", "/bench/restore", Approved, ""),
    // The seller's own table.
    ("GET", "/table", Sellers, ""),
    ("POST", "/table/undo", Sellers, "number=0"),
    ("GET", "/table/facts", Sellers, ""),
    ("POST", "/table/facts", Sellers, "name="),
    ("POST", "/table/demo", Sellers, ""),
    ("GET", "/table/trays", Sellers, ""),
    ("POST", "/table/trays", Sellers, "letter=A&name=A&rows=1&columns=1"),
    ("POST", "/table/trays/name", Sellers, "letter=Z&name=Z"),
    ("POST", "/table/trays/row", Sellers, "letter=Z"),
    ("GET", "/table/bases", Sellers, ""),
    ("POST", "/table/bases", Sellers, "price="),
    ("GET", "/table/bases/{id}", Sellers, ""),
    ("POST", "/table/bases/{id}", Sellers, ""),
    ("POST", "/table/bases/{id}/retire", Sellers, ""),
    ("GET", "/table/tray/{letter}/photo", Sellers, ""),
    ("POST", "/table/tray/{letter}/photo", Sellers, ""),
    ("GET", "/table/tray/{letter}/photo/{id}", Sellers, ""),
    ("POST", "/table/tray/{letter}/photo/{id}", Sellers, "x0=1"),
    ("POST", "/table/tray/{letter}/photo/{id}/throw-away", Sellers, ""),
    ("GET", "/table/tray/{letter}/photo/{id}/picture/{name}", Sellers, ""),
    ("GET", "/table/tray/{letter}/photo/{id}/pieces", Sellers, ""),
    ("GET", "/table/tray/{letter}/photo/{id}/pieces/{home}", Sellers, ""),
    ("POST", "/table/tray/{letter}/photo/{id}/pieces/{home}", Sellers, "shown=tile"),
    ("GET", "/table/tray/{letter}/photo/{id}/prices", Sellers, ""),
    ("POST", "/table/tray/{letter}/photo/{id}/prices", Sellers, "home=B1&price=3"),
    ("POST", "/table/tray/{letter}/photo/{id}/lay", Sellers, ""),
    ("GET", "/table/one-off", Sellers, ""),
    ("GET", "/table/prices", Sellers, ""),
    ("POST", "/table/prices", Sellers, "which=none&how=to&amount=1"),
    ("GET", "/table/paper", Desk, ""),
    ("GET", "/table/paper/labels.pdf", Desk, "what=prices"),
    ("POST", "/table/paper/printed", Desk, ""),
    ("GET", "/put-back", Desk, ""),
    // Guests who wait for a seat.
    ("GET", "/waiting", Desk, ""),
    ("POST", "/waiting", Desk, "step=take&seen=0"),
    ("GET", "/board", Anybody, ""),
    ("GET", "/board/now", Anybody, ""),
    ("GET", "/table/at/{home}", Sellers, ""),
    ("POST", "/table/at/{home}", Sellers, "typed=x"),
    ("POST", "/table/at/{home}/move", Sellers, "to=Z9"),
    ("POST", "/table/at/{home}/copy", Sellers, "to=Z9"),
    ("POST", "/table/at/{home}/retire", Sellers, "seen=at-B1 0"),
    ("POST", "/table/at/{home}/restock", Sellers, "more=x"),
    // Tablets, and who is signed in.
    ("GET", "/kiosks", Desk, ""),
    ("POST", "/kiosks/back", Desk, ""),
    ("POST", "/kiosks/code", Approved, ""),
    ("GET", "/kiosks/{digit}/release", Desk, ""),
    ("POST", "/kiosks/{digit}/release", Approved, ""),
    ("POST", "/kiosks/{digit}/take-in/{id}", Desk, ""),
    ("GET", "/kiosks/{digit}/put-away/{id}", Desk, ""),
    ("POST", "/kiosks/{digit}/put-away/{id}", Desk, ""),
    ("GET", "/pin", Desk, ""),
    ("POST", "/pin", Desk, "now=1&pin=1&again=1"),
    ("POST", "/sign-out", Desk, ""),
    ("POST", "/sessions/{browser}/end", Desk, ""),
    ("POST", "/sign-out-all", Sellers, ""),
    ("GET", "/staff", Sellers, ""),
    ("POST", "/staff", Sellers, "name=Mia"),
    ("GET", "/staff/pin", Sellers, "name=Nobody"),
    ("POST", "/staff/pin", Sellers, "name=Nobody"),
    ("GET", "/staff/remove", Sellers, "name=Nobody"),
    ("POST", "/staff/remove", Sellers, "name=Nobody"),
    ("GET", "/link/news", Tablet, "have=-1&revision=none"),
    ("GET", "/link/picture/{name}", Tablet, ""),
    ("GET", "/link/piece/{number}", Tablet, ""),
    ("POST", "/link/tickets", Tablet, "{}"),
    ("POST", "/link/report", Tablet, "{}"),
    ("POST", "/link/take-in", Tablet, "{}"),
    ("POST", "/link/pin", Tablet, r#"{"pin": "1"}"#),
    // At last, since nothing else is asked of the desk between the two.
    ("GET", "/practice", Desk, ""),
    ("POST", "/practice/begin", Approved, ""),
    ("POST", "/practice/end", Approved, ""),
    ("POST", "/practice/seen", Desk, ""),
];

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
