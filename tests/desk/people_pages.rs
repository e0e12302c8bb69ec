//! The pages of people, tablets and trays in other languages than English.

use super::*;

/// A page as a browser gets it that asks for `lang`.
fn in_language(seller: &Seller, path: &str, lang: &str) -> Answer {
    let request = seller.agent.get(format!("{}{path}", seller.url)).header("Cookie", &seller.cookie);
    request.header("Accept-Language", lang).call().unwrap().into()
}

/// What is read on a page: its words without marks, scripts and what the script says.
fn words(page: &str) -> String {
    let body = page.split_once("<main").map_or(page, |(_, body)| body).split("<footer").next().unwrap_or_default();
    body.split('<').filter_map(|part| part.split_once('>').map(|(_, words)| words)).collect::<Vec<_>>().join("\n")
}

/// Nothing that only English says is left on a page in another language. Whatever is in both, as a name or a number, is not
/// looked at.
#[test]
fn no_page_is_half_translated() {
    let table = Table::new();
    let stranger = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    let setup = |lang: &str| words(&in_language(&stranger, "/setup", lang).text);
    let mut pages: Vec<(String, [String; 4])> = vec![("/setup".into(), Lang::ALL.map(|lang| setup(lang.code())))];
    let (seller, kiosk) = (table.seller(), table.kiosk());
    seller.post("/staff", &[("name", "Mia")]);
    seller.post("/kiosks/code", &[]);
    kiosk.deliver(&kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13), true);
    let part = format!("/parts/{}", kiosk.fitting()[0].id);
    let release = format!("/kiosks/{}/release", kiosk.pairing.digit);
    let asked =
        ["/kiosks", "/staff", "/staff/pin?name=Mia", "/staff/remove?name=Mia", "/pin", "/trays", &part, &release];
    for path in asked.into_iter().chain([
        "/trays/cautions",
        "/nowhere",
        "/sign-in",
        "/kiosks/9/put-away/019aa000-0000-7000-8000-000000000000",
    ]) {
        let one = |lang: Lang| words(&in_language(&seller, path, lang.code()).text);
        pages.push((path.to_owned(), Lang::ALL.map(one)));
    }
    let named = |line: &str| line.contains("Mia") || line.chars().filter(|c| c.is_alphabetic()).count() < 6;
    // The names of things in the catalogue's own language, where it has no other, and addresses.
    let same = ["Firefox", "Chrome", "http", "SQLite", "Tablet", "Bases", "Kiosk"];
    let mut left = Vec::new();
    for (path, [english, others @ ..]) in &pages {
        let english: BTreeSet<&str> = english.lines().map(str::trim).filter(|line| !named(line)).collect();
        assert!(english.len() > 1, "{path} has no words");
        for (page, lang) in others.iter().zip(&Lang::ALL[1..]) {
            for line in page.lines().map(str::trim).filter(|line| english.contains(line)) {
                if !same.iter().any(|word| line.contains(word)) && *line != *table.catalog().table.name {
                    left.push(format!("{path} in {lang:?}: {line}"));
                }
            }
            assert!(!page.contains(['{', '}']), "{path} in {lang:?} has an open place");
        }
    }
    left.dedup();
    assert!(left.is_empty(), "{left:#?}");
}

/// A refusal is read in the reader's language, the PIN's among them, and a field is what its label says.
#[test]
fn refusals_and_labels_are_the_readers() {
    let table = Table::new();
    let stranger = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    let seller = table.seller();
    let post = |path: &str, fields: &[(&str, &str)], lang: &str| -> Answer {
        let request = seller.agent.post(format!("{}{path}", seller.url)).header("Cookie", &seller.cookie);
        request.header("Accept-Language", lang).send_form(fields.iter().copied()).unwrap().into()
    };
    for (path, fields, lang, said) in [
        ("/sign-in", vec![("pin", "000000")], "de", "Das ist nicht die PIN."),
        ("/staff", vec![("name", "a,b")], "fr", "ne peut pas être un nom"),
        ("/staff/pin", vec![("name", "Seller")], "es", "El PIN de la vendedora lo cambia quien lo sabe."),
        ("/kiosks/9/release", vec![], "de", "Tablet"),
        ("/show/close", vec![("show", "9")], "de", "Nicht ausgeführt"),
    ] {
        let answer = post(path, &fields, lang);
        assert!(answer.text.contains(said) || answer.status == 303, "{path} in {lang}: {}", words(&answer.text));
    }
    for (page, fields) in [
        (stranger.get("/sign-in").text, &["pin"][..]),
        (seller.get("/pin").text, &["now", "pin", "again"]),
        (seller.get("/staff").text, &["name"]),
    ] {
        for field in fields {
            let (label, input) = (format!("<label for=\"{field}\">"), format!("<input id=\"{field}\""));
            assert_eq!((page.matches(&label).count(), page.matches(&input).count()), (1, 1), "{field}: {page}");
        }
    }
}
