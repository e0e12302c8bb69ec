//! The pages in every language: each says in which it is, shows no text by its key, and leaves nothing in English.
//!
//! A page is looked at by adding its address to a list, or to what a story of the seller's leads to.

use super::{bill_story, *};
use chatelaine::{lang::keys, money::Currency};
use std::cell::RefCell;

/// Pages of shows and sales that need nothing to be there.
const SHOWS_AND_SALES: &[&str] = &[
    "/show",
    "/show/about",
    "/show/about?kind=home_party",
    "/show/close",
    "/practice",
    "/sales",
    "/sales?home=Z9",
    "/sales?number=3-042",
    "/sales?number=3-042-7",
    "/sales?sum=1.000",
    "/sales?show=x",
    "/sales?day=x",
    "/sales?home=3",
    "/shows/99",
    "/shows/none",
    "/shows/99/money.csv",
    "/shows/99/none",
    "/trays/count",
    "/bench",
    "/bench?kind=home_party",
    "/bench/cuts",
    "/bench/cuts?part=cable-brass&length=18in&count=12&length=24in&count=2",
    "/bench/cuts?part=cable-brass&length=18in&count=12&better=1",
    "/bench/cuts?part=cable-brass&length=24in&count=200",
    "/bench/cuts?part=cable-brass&length=18&count=12",
    "/bench/cuts?part=cable-brass&length=18in&count=x",
    "/bench/cuts?part=cork&length=18in&count=1",
    "/bench/shows/99",
    "/bench/parts",
    "/bench/made",
    "/bench/lots",
    "/bench/lots?lot=K-26-1",
    "/bench/lots?lot=none",
    "/bench/lots?lot=K-26-1&from=100",
    "/bench/drawers",
    "/bench/drawers/new",
    "/bench/drawers/part/cable-brass",
    "/bench/drawers/part/ring-5",
    "/bench/drawers/part/none",
    "/bench/packing",
    "/bench/plans",
    "/bench/year",
    "/bench/year?year=x",
    "/bench/year?on=x",
    "/bench/backup",
    "/bench/backup/none",
];

/// The pages of the seller's own table; in B16 of the test table nothing lies.
const OWN_TABLE: &[&str] = &[
    "/table",
    "/table/facts",
    "/table/bases",
    "/table/bases/none",
    "/table/at/B16",
    "/table/at/B99",
    "/table/prices",
    "/table/prices?which=all&how=by&amount=x",
    "/table/prices?which=row-B-1&how=percent&amount=10&step=0.5",
    "/table/one-off",
    "/table/paper",
    "/table/paper?noted=1",
    "/table/paper?stale=1",
    "/table/paper/labels.pdf?columns=x",
    "/table/paper/labels.pdf?columns=99",
    "/table/paper/labels.pdf?rows=28&columns=10",
    "/table/paper/labels.pdf?above=-1",
    "/put-back",
    "/put-back?home=A1",
    "/put-back?home=B16",
    "/waiting",
];

/// What is refused at the seller's own table.
fn refused_at_her_table(readers: &Readers) {
    for fields in
        [[("typed", "x"), ("sort", "Key")], [("typed", ""), ("sort", "Key")], [("typed", "3"), ("weight", "x")]]
    {
        readers.send("/table/at/B16", &fields);
    }
    readers.send("/table/at/B16/move", &[("to", "A1")]);
    readers.send("/table/at/B16/retire", &[]);
    readers.send("/table/trays", &[("letter", "A"), ("name", "A"), ("rows", "1"), ("columns", "1")]);
    readers.send("/table/trays", &[("letter", "Z"), ("name", "Z"), ("rows", "99"), ("columns", "1")]);
    readers.send("/table/trays/row", &[("letter", "Y")]);
    readers.send("/table/bases", &[("form", "Bangle"), ("price", "x")]);
    readers.send("/table/bases/none/retire", &[]);
    readers.send("/table/facts", &[("name", ""), ("currency", "USD"), ("region", "US")]);
}

/// What the tests themselves call things, and what is called so in every language: no word of a page.
const NAMES: &[&str] = &[
    "Voucher",
    "Zoë",
    "Etui 1",
    "Etui 2",
    "Mühlgasse",
    "The Lantern Lane Table",
    "Brass cable chain",
    "Silver-coloured cable chain",
    "Silk thread",
    "12 Mill Lane",
    "Letter",
    "My table",
];

/// What the maker wrote of parts, lots and papers stays as it is in every language.
const WORKSHOP: &str = include_str!("../table/parts.ron");

/// Somebody who reads the pages in a language.
struct Reader {
    lang: Lang,
    seller: Seller,
    /// Its texts.
    own: BTreeSet<String>,
    /// What English says and this language nowhere, in two words or more.
    phrases: BTreeSet<String>,
    /// The same for texts that stand alone.
    alone: BTreeSet<String>,
    keys: BTreeSet<String>,
}

impl Reader {
    fn new(seller: &Seller, lang: Lang) -> Self {
        let cookie = format!("{}; language={}", seller.cookie, lang.code());
        let own: BTreeSet<String> = texts(lang).iter().map(|text| plain(text)).collect();
        let words = |text: &str| text.split(' ').filter(|word| word.contains(char::is_alphabetic)).count();
        let english: Vec<String> = if lang == Lang::En { vec![] } else { texts(Lang::En) };
        let pieces = english.iter().flat_map(|text| text.split(['{', '}']).step_by(2));
        let phrases = pieces.map(|piece| plain(piece.trim_matches(|c: char| !c.is_alphanumeric())));
        let is_english = |phrase: &String| words(phrase) > 1 && !own.iter().any(|text| has_words(text, phrase));
        let alone = english.iter().map(|text| plain(text));
        Self {
            lang,
            seller: Seller { agent: agent(), url: seller.url.clone(), cookie },
            phrases: phrases.filter(is_english).collect(),
            alone: alone.filter(|text| words(text) > 0 && !own.contains(text)).collect(),
            keys: keys(lang).into_iter().filter(|key| key.contains('-')).collect(),
            own,
        }
    }

    /// What is wrong on a page that is read so, and so in English.
    fn judges(&self, read: &[String], english: &[String]) -> Vec<String> {
        let whole = read.join(" ");
        let is_part = |c: char| c.is_ascii_alphanumeric() || ['-', '_'].contains(&c);
        let raw = whole.split(|c| !is_part(c)).filter(|word| self.keys.contains(*word));
        let left = self.phrases.iter().filter(|phrase| has_words(&whole, phrase));
        let alone = read.iter().filter(|one| self.alone.contains(*one));
        // What is in no file of texts is the same in every language.
        let is_word = |one: &str| one.split(|c: char| !c.is_alphabetic()).any(|word| word.len() > 2);
        let is_name = |one: &str| {
            NAMES.contains(&one)
                || Currency::from_code(one).is_some()
                || Lang::ALL.iter().any(|lang| lang.own_name() == one)
        };
        let is_same = |one: &&String| {
            self.lang != Lang::En && english.contains(*one) && is_word(one) && !self.own.contains(*one) && !is_name(one)
        };
        let same = read.iter().filter(is_same);
        // A paper in another language is offered in that language.
        let offers = Lang::ALL.map(|lang| format!("{} (PDF)", Texts::of(lang).get("paper-link-receipt")));
        let is_offer = |words: &&str| offers.iter().any(|offer| offer == words);
        let all = raw.chain(left.chain(alone).chain(same).map(String::as_str));
        // A part may be called as a sort is in English.
        let is_makers = |words: &&str| WORKSHOP.contains(&format!("\"{words}\""));
        all.filter(|words| !is_offer(words) && !is_makers(words)).map(str::to_owned).collect()
    }
}

/// A reader of each language, English first.
pub struct Readers {
    all: Vec<Reader>,
    /// What was wrong on the pages so far.
    wrong: RefCell<BTreeSet<String>>,
}

impl Readers {
    pub fn new(seller: &Seller) -> Self {
        Self { all: Lang::ALL.map(|lang| Reader::new(seller, lang)).into(), wrong: RefCell::default() }
    }

    pub fn look_at(&self, path: &str) {
        self.judge(path, |seller| seller.get(path));
    }

    /// Every reader sends what is refused.
    pub fn send(&self, path: &str, fields: &[(&str, &str)]) {
        self.judge(&format!("{path} {fields:?}"), |seller| {
            let answer = seller.post(path, fields);
            assert!((400..500).contains(&answer.status), "{path} {fields:?}: {}", answer.status);
            answer
        });
    }

    fn judge(&self, what: &str, ask: impl Fn(&Seller) -> Answer) {
        let mut english = Vec::new();
        for reader in &self.all {
            let (lang, answer) = (reader.lang, ask(&reader.seller));
            assert!(answer.text.contains(&format!("<html lang=\"{}\">", lang.code())), "{what}: {}", answer.text);
            let read = what_is_read(&answer.text);
            assert!(read.len() > 5, "{what}: {}", answer.text);
            if lang == Lang::En {
                english.clone_from(&read);
            }
            let wrong = reader.judges(&read, &english).into_iter();
            self.wrong.borrow_mut().extend(wrong.map(|words| format!("{lang:?} “{words}” on {what}")));
        }
    }

    /// Everything that was wrong is told at once.
    pub fn are_content(&self) {
        let wrong = self.wrong.borrow();
        assert!(wrong.is_empty(), "{} times: {wrong:#?}", wrong.len());
    }
}

/// The texts of a language, a form of a plural by itself.
fn texts(lang: Lang) -> Vec<String> {
    let lines = lang.sources().iter().flat_map(|source| source.lines()).filter(|line| !line.starts_with('#'));
    let text = |line: &str| match line.split_once(" = ") {
        Some((_, text)) if !line.starts_with(' ') => Some(text.to_owned()),
        _ => line.trim_start().strip_prefix(['*', '[']).and_then(|form| Some(form.split_once("] ")?.1.to_owned())),
    };
    lines.filter_map(text).filter(|text| !text.ends_with("->")).collect()
}

/// With plain spaces, one at a time.
fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether `words` stand in `text`, as whole words.
fn has_words(text: &str, words: &str) -> bool {
    let is_letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    text.match_indices(words).any(|(at, _)| {
        !is_letter(text[..at].chars().next_back()) && !is_letter(text[at + words.len()..].chars().next())
    })
}

/// What somebody reads on a page or has read out to them, each run by itself.
fn what_is_read(page: &str) -> Vec<String> {
    let mut read = Vec::new();
    let mut rest = page;
    while let Some(at) = rest.find('<') {
        read.push(rest[..at].to_owned());
        let mut quoted = false;
        let is_end = |c: char| {
            quoted ^= c == '"';
            c == '>' && !quoted
        };
        let end = rest[at..].find(is_end).expect("a tag ends") + at;
        let tag = &rest[at + 1..end];
        rest = &rest[end + 1..];
        let name = tag.split(' ').next().unwrap_or_default();
        if ["script", "style"].contains(&name) {
            rest = &rest[rest.find("</").expect("it ends")..];
        }
        let value = |name: &str| {
            let (_, after) = tag.split_once(&format!(" {name}=\""))?;
            after.split('"').next().map(str::to_owned)
        };
        // The value of a choice is read where there is nothing else to it.
        let is_choice = name == "option" && rest.starts_with("</");
        let is_hidden = tag.ends_with(" hidden");
        let is_typed = is_choice || !is_hidden && name == "input" && value("type").is_none_or(|kind| kind == "text");
        let attributes = ["aria-label", "alt", "title", "placeholder"].into_iter().chain(is_typed.then_some("value"));
        read.extend(attributes.filter_map(value));
    }
    let signs = [("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&amp;", "&")];
    let seen = |run: String| signs.iter().fold(plain(&run), |run, (code, sign)| run.replace(code, sign));
    read.into_iter().map(seen).filter(|run| !run.is_empty()).collect()
}

/// What is refused of a bill that has nothing on it.
fn refused_of_bills(readers: &Readers, bill: &str) {
    let act = |verb: &str, fields: &[(&str, &str)]| readers.send(&format!("{bill}/{verb}"), fields);
    for number in ["3-042", "3-042-7", "9-999-9", "0-000-0"] {
        act("ticket", &[("number", number)]);
    }
    for price in ["x", "8.505", "1000001", ""] {
        act("goods", &[("words", "Etui"), ("price", price)]);
    }
    act("goods", &[("words", ""), ("price", "1")]);
    for (how, percent) in [("percent", "x"), ("percent", "101"), ("", "")] {
        act("reduce", &[("how", how), ("percent", percent), ("reason", "Zoë")]);
    }
    act("reduce", &[("how", "percent"), ("percent", "5"), ("reason", "")]);
    let pay = |tender: &str, left: &str, amount: &str| {
        act("pay", &[("tender", tender), ("left", left), ("payments", "0"), ("amount", amount)]);
    };
    for (tender, left, amount) in [("seashells", "0", ""), ("cash", "0", "x"), ("cash", "0", ""), ("cash", "7", "7")] {
        pay(tender, left, amount);
    }
    act("goods/7/off", &[]);
    act("other-way", &[("payment", "9"), ("tender", "cash"), ("reason", "Zoë")]);
    act("take-back", &[("what", "x"), ("reason", "Zoë"), ("tender", "")]);
    act("take-back", &[("what", "goods:9"), ("reason", "Zoë"), ("tender", "")]);
}

/// What is refused of a show.
fn refused_of_shows(readers: &Readers) {
    let told = |field: &str, typed: &str| {
        readers.send("/show/about", &[("show", "1"), ("kind", "fair"), (field, typed)]);
    };
    for (field, typed) in [("tax", "x"), ("fee", "-1"), ("float", "1.005"), ("place", "\u{7}"), ("host", "\u{7}")] {
        told(field, typed);
    }
    readers.send("/show/about", &[("show", "99")]);
    for counted in [("counted", "x"), ("n20", "x")] {
        readers.send("/show/close", &[("show", "1"), counted]);
    }
    readers.send("/show/close", &[("show", "1"), ("counted", "21"), ("n20", "1")]);
    readers.send("/show/close", &[("show", "99")]);
}

#[test]
fn bills_sales_and_shows_are_in_the_readers_language() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let readers = Readers::new(&seller);
    let look = |pages: &[String]| pages.iter().for_each(|page| readers.look_at(page));
    let alone: Vec<String> = SHOWS_AND_SALES.iter().map(|page| (*page).to_owned()).collect();
    look(&alone);
    let bills = bill_story::pages(&table, &seller, &kiosk, |page| readers.look_at(page));
    look(&bills);
    let told =
        [("kind", "home_party"), ("place", "Mühlgasse"), ("tax", "7"), ("fee", "45"), ("host", "Zoë"), ("float", "50")];
    let told: Vec<(&str, &str)> = [("show", "1")].into_iter().chain(told).collect();
    assert_eq!(seller.post("/show/about", &told).status, 303);
    look(&alone);
    refused_of_bills(&readers, &bills[5]);
    refused_of_shows(&readers);
    let late = kiosk.ticket(2, &[&kiosk.fitting()[0].id], Wearer::From13);
    assert_eq!(seller.post("/show/close", &[("show", "1"), ("counted", "1")]).location, "/shows/1");
    kiosk.deliver(&late, true);
    look(&["/shows/1".to_owned(), "/show".to_owned(), "/sales?show=1".to_owned(), bills[0].clone()]);
    // Each closes a show of its own with what agrees, and one with too much.
    assert_eq!(seller.post("/show/close", &[("show", "2"), ("counted", "0")]).location, "/shows/2");
    assert_eq!(seller.post("/show/close", &[("show", "3"), ("counted", "9")]).location, "/shows/3");
    assert_eq!(seller.post("/show/close", &[("show", "4")]).location, "/shows/4");
    look(&["/shows/2".to_owned(), "/shows/3".to_owned(), "/shows/4".to_owned()]);
    assert_eq!(seller.post("/practice/begin", &[]).status, 303);
    look(&["/show".to_owned(), "/show/close".to_owned()]);
    readers.are_content();
}

#[test]
fn the_sellers_own_table_is_in_the_readers_language() {
    let table = Table::new();
    let readers = Readers::new(&table.seller());
    OWN_TABLE.iter().for_each(|page| readers.look_at(page));
    refused_at_her_table(&readers);
    readers.are_content();
    let bare = Table::empty();
    let readers = Readers::new(&bare.seller());
    ["/table", "/table/trays", "/table/bases", "/table/one-off"].iter().for_each(|page| readers.look_at(page));
    readers.are_content();
}

/// The judge itself: it finds what is left, in words, in attributes, and alone.
#[test]
fn what_is_left_in_english_is_found() {
    let page = "<!DOCTYPE html><html lang=\"de\"><style>p > a {}</style><p title=\"a > b\">Left&nbsp;to <b>pay</b></p>\
                <input type=\"hidden\" value=\"no\"><input placeholder=\"Gift box\" value=\"8 &amp; 9\">";
    let read = what_is_read(&page.replace("&nbsp;", "\u{a0}"));
    assert_eq!(read, ["a > b", "Left to", "pay", "Gift box", "8 & 9"]);
    assert!(has_words(&read.join(" "), "Left to pay") && !has_words("Left to payment", "Left to pay"));
    let seller = Seller { agent: agent(), url: String::new(), cookie: String::new() };
    for reader in Readers::new(&seller).all {
        let is_english = reader.lang == Lang::En;
        assert_eq!(reader.phrases.contains("Left to pay"), !is_english, "{:?}", reader.lang);
        assert_eq!(reader.alone.contains("Next guest"), !is_english);
        assert!(reader.keys.contains("bill-left") && is_english == (reader.phrases.len() < 300));
        assert!(!reader.alone.contains("Total") || reader.lang == Lang::De);
        // Hard-coded words, a text that was forgotten, and a key.
        let read = ["So hard-coded", "Left to pay", "Voucher", "bill-left", "3-042-6"].map(str::to_owned);
        let found: &[&str] = if is_english { &["bill-left"] } else { &["bill-left", "Left to pay", "So hard-coded"] };
        let wrong: BTreeSet<String> = reader.judges(&read, &read).into_iter().collect();
        assert_eq!(wrong, found.iter().map(|one| (*one).to_owned()).collect());
    }
}
