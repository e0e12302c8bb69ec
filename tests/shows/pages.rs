//! The pages of a show: telling what it is, counting the cash, closing, reading it afterwards.

use chatelaine::{
    craft::Wearer,
    ledger::{AboutShow, ShowKind},
};

use rust_decimal::Decimal;

use crate::helper::helper;
use crate::kit::{Kiosk, Table};
use crate::seller::Seller;

/// Rings one piece up, in cash or by card.
fn sell(table: &Table, seller: &Seller, kiosk: &Kiosk, sequence: u16, tender: &str) -> Decimal {
    let drop = kiosk.fitting()[0].id.clone();
    let ticket = kiosk.ticket(sequence, &[&drop], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let page = format!("/tickets/{}", ticket.id);
    for fields in [[("part", "base"), ("on", "1")], [("part", "0"), ("on", "1")]] {
        seller.post(&format!("{page}/tick"), &fields);
    }
    seller.post(&format!("{page}/told"), &[("told", "1")]);
    let total = ticket.quote.total.to_string();
    let paid = seller.post(&format!("{page}/ring-up"), &[("tender", tender), ("total", &total)]);
    assert_eq!(paid.status, 303, "{}", paid.text);
    let id = ticket.id;
    table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap().charged.expect("charged")
}

fn about(table: &Table, show: i64) -> AboutShow {
    table.desk.with_ledger(move |ledger| ledger.about_show(show)).unwrap().unwrap()
}

#[test]
fn a_show_is_told_in_a_form_that_knows_what_was_usual() {
    let table = Table::new();
    let seller = table.seller();
    let page = seller.get("/show").text;
    assert!(page.contains("What is this show?") && page.contains("/show/about?kind=home_party"), "{page}");
    let told = [
        ("show", "1"),
        ("kind", "home_party"),
        ("place", "Mill Lane"),
        ("tax", "7"),
        ("fee", ""),
        ("host", "Host at Mill Lane"),
        ("float", "40,50"),
    ];
    assert_eq!(seller.post("/show/about", &told).status, 303);
    let kept = about(&table, 1);
    assert_eq!((kept.kind, kept.place.as_deref()), (Some(ShowKind::HomeParty), Some("Mill Lane")));
    assert_eq!((kept.fee, kept.float.map(|float| float.to_string()).as_deref()), (None, Some("40.50")));
    let page = seller.get("/show").text;
    for words in ["Show 1, Mill Lane", "Home party", "7 % tax here", "Host at Mill Lane", "float $40.50"] {
        assert!(page.contains(words), "{words}: {page}");
    }
    // What is wrong is said, and what was typed stays in the form.
    for (field, wrong, words) in [
        ("tax", "seven", "is no tax"),
        ("tax", "101", "from 0 to 100"),
        ("fee", "-5", "is no stall fee"),
        ("float", "1.005", "is no float"),
    ] {
        let mut fields = told.to_vec();
        fields.retain(|(name, _)| *name != field);
        fields.push((field, wrong));
        let answer = seller.post("/show/about", &fields);
        assert_eq!(answer.status, 400, "{field} {wrong}");
        assert!(answer.text.contains(words) && answer.text.contains(&format!("value=\"{wrong}\"")), "{}", answer.text);
    }
    assert_eq!(about(&table, 1), kept, "nothing of it was kept");

    seller.post("/show/close", &[("show", "1")]);
    assert_eq!(about(&table, 2), AboutShow::default());
    let usual = seller.get("/show/about?kind=home_party").text;
    assert!(usual.contains("value=\"Mill Lane\"") && usual.contains("value=\"7\""), "{usual}");
    assert!(!usual.contains("value=\"Host at Mill Lane\""), "another party has another host");
    assert!(!seller.get("/show/about?kind=fair").text.contains("value=\"Mill Lane\""), "a fair is elsewhere");
    assert_eq!(seller.post("/show/about", &told).status, 409, "the form of a show that is closed by now");
}

#[test]
fn closing_counts_the_cash_and_the_closed_show_can_be_read() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    seller.post(
        "/show/about",
        &[("show", "1"), ("kind", "fair"), ("place", "Mill Lane"), ("fee", "45"), ("float", "50")],
    );
    let cash = sell(&table, &seller, &kiosk, 0, "cash");
    let card = sell(&table, &seller, &kiosk, 1, "card");
    let left_open = kiosk.ticket(2, &[&kiosk.fitting()[1].id.clone()], Wearer::From13);
    kiosk.deliver(&left_open, true);
    let money = |amount| table.catalog().table.prices.currency.plain(amount);
    let float = Decimal::from(50);
    let ask = seller.get("/show/close").text;
    for words in ["1 ticket is still open", &money(float), &money(cash), &money(float + cash)] {
        assert!(ask.contains(words), "{words}: {ask}");
    }
    let wrong = seller.post("/show/close", &[("show", "1"), ("counted", "a lot")]);
    assert_eq!(wrong.status, 400);
    assert!(wrong.text.contains("is no sum of cash") && wrong.text.contains("a lot"), "{}", wrong.text);
    assert_eq!(table.desk.with_ledger(|ledger| ledger.show()).unwrap().unwrap().id, 1, "still open");
    let counted = (float + cash - Decimal::ONE).to_string();
    for _ in 0..2 {
        assert_eq!(seller.post("/show/close", &[("show", "1"), ("counted", &counted)]).location, "/shows/1");
    }
    assert_eq!(table.desk.with_ledger(|ledger| ledger.show()).unwrap().unwrap().id, 2, "closed once");
    let sheet = seller.get("/shows/1").text;
    for words in [
        "Close-out of show 1, Mill Lane",
        &money(cash),
        &money(card),
        "Missing",
        &money(Decimal::ONE),
        "Sold, by home",
        "Sold, by sort",
        "Stall fee",
        &left_open.number.to_string(),
        "Everything that was left",
    ] {
        assert!(sheet.contains(words), "{words}: {sheet}");
    }
    let list = seller.get("/show").text;
    assert!(list.contains("/shows/1") && list.contains("Show 1, Mill Lane"), "{list}");
    assert_eq!(seller.post("/show/about", &[("show", "1"), ("place", "Elsewhere")]).status, 409, "it stays as it was");
    assert_eq!(about(&table, 1).place.as_deref(), Some("Mill Lane"));
}

/// What one brass chain with a key costs by the test table's `parts.ron`: 24 inches of 10 m at 24.00, a clasp of 26.00/97, rings of
/// 3.90/200 and 4.20/198; a key of 40.00/50 and its ring of 19.00/494.
fn chain_and_key() -> Decimal {
    let each = |price: (i64, u32), count: u32| Decimal::new(price.0, price.1) / Decimal::from(count);
    let chain = Decimal::new(6096, 1) * each((24, 0), 10_000);
    chain + each((26, 0), 97) + each((390, 2), 200) + each((420, 2), 198) + each((40, 0), 50) + each((19, 0), 494)
}

#[test]
fn the_profit_stands_on_the_close_out_where_all_costs_are_known_and_for_the_seller_alone() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    seller.post("/show/about", &[("show", "1"), ("kind", "fair"), ("fee", "45")]);
    let totals = sell(&table, &seller, &kiosk, 0, "cash") + sell(&table, &seller, &kiosk, 1, "card");
    assert_eq!(kiosk.fitting()[0].id, "key-heart", "the piece that is reckoned below");
    let tax = table.desk.with_ledger(|ledger| ledger.so_far()).unwrap().unwrap().tax;
    let currency = table.catalog().table.prices.currency;
    let left = totals - tax - Decimal::TWO * chain_and_key() - Decimal::from(45);
    let profit = currency.plain(left.round_dp(2)).replace('-', "\u{2212}");
    let (mia, _) = helper(&table, &seller, "Mia");
    seller.post("/show/close", &[("show", "1"), ("counted", "")]);
    let sheet = seller.get("/shows/1").text;
    let earned = |page: &str| {
        page.split("data-key=\"earned\"").nth(1).map(|rest| rest.split("</section>").next().unwrap().to_owned())
    };
    let told = earned(&sheet).expect("the profit");
    assert!(told.contains("Profit, before your hours") && !told.contains("not the profit"), "{told}");
    assert!(told.replace('-', "\u{2212}").contains(&profit), "{profit}: {told}");
    // A helper sees the fee, but neither costs nor profit.
    let told = earned(&mia.get("/shows/1").text).expect("the fee");
    assert!(!told.contains("Profit") && !told.contains("Parts in it") && told.contains("not the profit"), "{told}");
    // Without the workshop's file nothing is called a profit; nor with a price-only line, whose cost nobody knows.
    std::fs::remove_file(table.catalog_file("parts.ron")).expect("removed");
    let told = earned(&seller.get("/shows/1").text).expect("the fee");
    assert!(told.contains("not the profit") && !told.contains("Profit,"), "{told}");
}
