//! An evening of a helper and a seller on one phone: the helper sells, the seller puts right what went wrong, and every touch
//! is counted.

use std::cell::Cell;

use super::{
    people::{add_helpers, sign_out},
    *,
};
use chatelaine::{
    lang::{Lang, Texts},
    ledger::Ticket,
};
use uuid::Uuid;

/// Touches for a sale of two drops with cash and change, told and handed over.
const MOST_FOR_A_SALE: u32 = 9;
/// Touches for another way to pay, or for a drop that comes back: from the ticket, with the seller's PIN as one.
const MOST_TO_PUT_RIGHT: u32 = 6;

struct Phone<'a> {
    browser: &'a Browser,
    table: &'a Table,
    touches: Cell<u32>,
    /// What its pages say.
    texts: &'static Texts,
}

impl Phone<'_> {
    /// Waits until the page says the text called `key`.
    fn says(&self, key: &str) {
        self.browser.wait_for(&self.texts.get(key));
    }

    fn touch(&self, css: &str) {
        self.touches.set(self.touches.get() + 1);
        self.browser.click(css);
    }

    /// How many touches it took since it was asked last.
    fn touched(&self) -> u32 {
        self.touches.take()
    }

    fn ticket(&self, id: Uuid) -> Ticket {
        self.table.desk.with_ledger(move |ledger| ledger.ticket(id)).expect("open").expect("the ticket")
    }

    /// A piece for a grown-up, threaded by hand, is paid with a note and handed over.
    fn sell(&self, homes: &[String]) -> Uuid {
        let browser = self.browser;
        self.touch("a[href='/new']");
        self.says("sale-homes");
        self.touch("button[name='for'][value=from13]");
        for home in homes {
            self.touch(&format!("button[name=add][value={home}]"));
        }
        browser.wait(&format!("return document.querySelectorAll('.chosen-drops li').length === {}", homes.len()));
        self.touch("button.bar");
        self.says("tick-title");
        let path = browser.run("return location.pathname");
        let id: Uuid = path.as_str().expect("a path").trim_start_matches("/tickets/").parse().expect("a ticket");
        if !self.ticket(id).verdict.cautions.is_empty() {
            self.touch("#told button[name=told]");
            browser.wait("return document.querySelectorAll('.pay button:disabled').length === 0");
        }
        self.touch("form.given button:last-of-type");
        browser.wait("return document.querySelector('[data-change]') !== null");
        self.touch("#till button.main");
        self.says("state-handed_over");
        id
    }

    /// The seller types the PIN on the helper's phone, for this one act.
    fn seller_approves(&self) {
        self.says("needs-sellers-pin");
        self.browser.fill("input[name=seller_pin]", PIN);
        self.touch("form.stack button.main");
        self.says("bill-put-right");
    }
}

#[test]
fn a_helper_sells_and_the_seller_puts_right() {
    an_evening(Lang::En);
}

#[test]
fn a_helper_who_reads_german_sells_and_the_seller_puts_right() {
    an_evening(Lang::De);
}

fn an_evening(lang: Lang) {
    let Some(browser) = browser() else { return };
    let table = Table::new();
    let kiosk = table.kiosk();
    let catalog = table.catalog();
    let pin = add_helpers(&browser, &table, &|| {});
    sign_out(&browser);
    browser.click(&format!("button[name=language][value={}]", lang.code()));
    browser.wait(&format!("return document.documentElement.lang === '{}'", lang.code()));
    let texts = Texts::of(lang);
    browser.click("input[name=who][value=Mia]");
    browser.fill("input[name=pin]", &pin);
    browser.click("button.main");
    browser.wait_for(&texts.get("queue-waiting-none"));
    let fitting = kiosk.fitting();
    let suits = fitting.iter().filter(|kind| catalog.suits(kind, Wearer::From13));
    let homes: Vec<String> = suits.step_by(2).take(2).map(|kind| kind.home.to_string()).collect();
    let phone = Phone { browser: &browser, table: &table, touches: Cell::new(0), texts };

    let id = phone.sell(&homes);
    look(&browser, &format!("evening-sold-{}", lang.code()));
    let for_a_sale = phone.touched();
    let sold = phone.ticket(id);
    assert_eq!((sold.state, sold.tender.clone()), (State::HandedOver, Some(chatelaine::money::Tender::Cash)));

    // It was a card after all.
    phone.touch("form[action$='/bill'] button");
    phone.says("bill-other-way");
    phone.touch("details:has(form[action$='/other-way']) summary");
    phone.touch("form[action$='/other-way'] button[value=card]");
    phone.seller_approves();
    look(&browser, &format!("evening-other-way-{}", lang.code()));
    let for_a_way = phone.touched();
    assert_eq!(phone.ticket(id).tender, Some(chatelaine::money::Tender::Card));

    // One drop comes back broken.
    phone.touch("a[href*='take-back']");
    phone.says("back-what");
    phone.touch("input[name=what][value^='line:']");
    phone.touch("input[name=home][value='0']");
    browser.fill("#reason", "it broke");
    phone.touch("button[name=tender][value=card]");
    phone.seller_approves();
    browser.wait_for("it broke");
    look(&browser, &format!("evening-taken-back-{}", lang.code()));
    let for_a_drop = phone.touched();
    let left = phone.ticket(id);
    assert_eq!((left.live_lines().count(), left.state), (1, State::HandedOver));
    let sums = table.desk.with_ledger(|ledger| ledger.so_far()).expect("open").expect("sums");
    assert_eq!((sums.cash, sums.card), (Decimal::ZERO, left.quote.total), "the seller's sums are right again");

    println!(
        "{lang:?}: {for_a_sale} touches for a sale, {for_a_way} for another way to pay, {for_a_drop} for a drop that comes back"
    );
    assert!(for_a_sale <= MOST_FOR_A_SALE && for_a_way.max(for_a_drop) <= MOST_TO_PUT_RIGHT);
}
