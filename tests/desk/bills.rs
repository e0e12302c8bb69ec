//! Bills over the seller's pages: together, in parts, with change, put right, found again.

use super::{
    bill_story::{bill_of, homes, ready},
    *,
};
use chatelaine::ledger::{Bill, BillSum, SaleQuery};
use rust_decimal::Decimal;
use uuid::Uuid;

fn ticket(table: &Table, id: Uuid) -> chatelaine::ledger::Ticket {
    table.desk.with_ledger(move |ledger| ledger.ticket(id)).unwrap().unwrap()
}

fn bill(table: &Table, id: Uuid) -> (Bill, BillSum) {
    let (bill, _, sum) = table.desk.with_ledger(move |ledger| ledger.bill(id)).unwrap().unwrap();
    (bill, sum)
}

#[test]
fn two_pieces_a_box_and_two_ways_to_pay() {
    let table = Table::new();
    let seller = table.seller();
    let homes = homes(&table);
    let (first, second) = (ready(&table, &seller, &homes[0]), ready(&table, &seller, &homes[1]));
    let id = bill_of(&seller.post(&format!("/tickets/{first}/bill"), &[]));
    assert_eq!(
        bill_of(&seller.post(&format!("/tickets/{first}/bill"), &[])),
        id,
        "one bill, however often it is asked"
    );
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("/bills/{id}/{verb}"), fields);
    let number = ticket(&table, second).number.to_string();
    assert_eq!(act("ticket", &[("number", &number)]).status, 303);
    assert_eq!(act("ticket", &[("number", "9-999-9")]).status, 400, "a slip of the finger is told");
    assert_eq!(act("goods", &[("words", "Gift <box>"), ("price", "2,50")]).status, 303);
    assert_eq!(act("goods", &[("words", "Gift box"), ("price", "free")]).status, 400);
    act("gift", &[("ticket", &second.to_string()), ("gift", "1")]);
    let page = seller.get(&format!("/bills/{id}")).text;
    assert!(page.contains("Gifts, wrapped apart") && page.contains("Gift &lt;box&gt;"), "{page}");
    let (_, sum) = bill(&table, id);
    let pieces = ticket(&table, first).quote.total + ticket(&table, second).quote.total;
    assert_eq!(sum.total, pieces + sum.goods.total);
    // The ticket's own page leads to the bill and takes no money by itself.
    let page = seller.get(&format!("/tickets/{second}")).text;
    assert!(page.contains(&format!("/bills/{id}")) && !page.contains("/ring-up"), "{page}");
    let left = sum.left.to_string();
    let part = [("tender", "card"), ("left", &*left), ("payments", "0"), ("amount", "5")];
    for _ in 0..2 {
        assert_eq!(act("pay", &part).status, 303, "two touches, one payment");
    }
    let (_, sum) = bill(&table, id);
    assert_eq!(sum.settled, Decimal::from(5));
    assert!(seller.get("/tickets").text.contains("paid in part"));
    let old = act("pay", &[("tender", "cash"), ("left", &left), ("payments", "1")]);
    assert_eq!(old.status, 409, "what was left before is not what is left now");
    let left = sum.left.to_string();
    let given = (sum.left.ceil() + Decimal::TEN).to_string();
    assert_eq!(act("pay", &[("tender", "seashells"), ("left", &left), ("payments", "1")]).status, 400);
    let paid = act("pay", &[("tender", "cash"), ("left", &left), ("payments", "1"), ("given", &given)]);
    assert_eq!(paid.status, 303, "{}", paid.text);
    let page = seller.get(&format!("/bills/{id}")).text;
    let change = given.parse::<Decimal>().unwrap() - sum.left;
    assert!(page.contains(&format!("change <strong class=\"big\">{}", money(&table, change))), "{page}");
    assert_eq!((ticket(&table, first).state, ticket(&table, second).state), (State::RungUp, State::RungUp));
}

#[test]
fn a_reduction_a_package_and_something_of_her_own() {
    let table = Table::new();
    let seller = table.seller();
    let homes = homes(&table);
    let id = ready(&table, &seller, &homes[..4].join(" "));
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("/tickets/{id}/{verb}"), fields);
    let full = ticket(&table, id).quote.total;
    assert_eq!(act("reduce", &[("how", "percent"), ("percent", "10"), ("reason", "a friend")]).status, 303);
    assert!(ticket(&table, id).quote.total < full);
    assert!(seller.get(&format!("/tickets/{id}")).text.contains("a friend"));
    for wrong in [
        [("how", "percent"), ("percent", "ten"), ("reason", "a friend")],
        [("how", "amount"), ("amount", "-1"), ("reason", "a friend")],
        [("how", ""), ("percent", ""), ("reason", "a friend")],
    ] {
        assert_eq!(act("reduce", &wrong).status, 400, "{wrong:?}");
    }
    assert_eq!(act("reduce", &[("to", "9999"), ("how", ""), ("reason", "a friend")]).status, 409);
    assert_eq!(act("reduce", &[("to", "20"), ("how", ""), ("reason", " ")]).status, 409, "a reason is asked for");
    assert_eq!(act("reduce", &[("how", "none"), ("reason", "")]).status, 303);
    assert_eq!(ticket(&table, id).quote.total, full);
    let catalog = table.catalog();
    let package = &catalog.table.till.packages[0];
    assert_eq!(act("package", &[("package", &package.name)]).status, 303);
    assert_eq!(ticket(&table, id).package.as_ref(), Some(package));
    assert_eq!(act("package", &[("package", "none such")]).status, 400);
    assert_eq!(act("plain", &[("words", "Her own locket"), ("price", "0")]).status, 303);
    let page = seller.get(&format!("/tickets/{id}")).text;
    assert!(page.contains("Her own locket") && page.contains("Tell the guest"), "nobody knows what it is: {page}");
    assert_eq!(act("plain/0/off", &[]).status, 303);
    assert!(ticket(&table, id).plain.is_empty());
}

#[test]
fn a_refund_and_the_wrong_way_to_pay_over_the_pages() {
    let table = Table::new();
    let seller = table.seller();
    let homes = homes(&table);
    let id = ready(&table, &seller, &homes[..3].join(" "));
    let total = ticket(&table, id).quote.total;
    let paid = seller.post(&format!("/tickets/{id}/ring-up"), &[("tender", "cash"), ("total", &total.to_string())]);
    assert_eq!(paid.status, 303, "{}", paid.text);
    let on = bill_of(&seller.post(&format!("/tickets/{id}/bill"), &[]));
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("/bills/{on}/{verb}"), fields);
    assert_eq!(act("other-way", &[("payment", "0"), ("tender", "card"), ("reason", "wrong button")]).status, 303);
    assert_eq!(ticket(&table, id).tender, Some(Tender::Card));
    let counted = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    // The page says what each would give before anything is entered.
    let before = table.desk.with_ledger(|ledger| ledger.change()).unwrap().unwrap();
    let ask = seller.get(&format!("/bills/{on}/take-back?ticket={id}"));
    assert_eq!(ask.status, 200, "{}", ask.text);
    assert!(ask.text.contains(&money(&table, total)) && ask.text.matches("type=\"radio\" name=\"what\"").count() == 4);
    assert_eq!(table.desk.with_ledger(|ledger| ledger.change()).unwrap().unwrap(), before);
    assert_eq!(seller.get(&format!("/bills/{on}/take-back")).status, 409, "what comes back has to be said");
    let line = format!("line:{id}:1");
    let fields = [("what", &*line), ("home", "1"), ("reason", "it did not suit"), ("tender", "cash")];
    assert_eq!(act("take-back", &fields).status, 303);
    assert_eq!(act("take-back", &fields).status, 409, "once");
    assert_eq!(act("take-back", &[("what", "base"), ("reason", "x"), ("tender", "")]).status, 400);
    let part = ticket(&table, id).lines[1].id.clone();
    let now = table.desk.with_ledger(|ledger| ledger.counts()).unwrap().unwrap();
    assert_eq!(now[&part].on_hand, counted[&part].on_hand + 1);
    let page = seller.get(&format!("/bills/{on}")).text;
    assert!(page.contains("it did not suit") && page.contains("paid out") && page.contains("wrong button"), "{page}");
    let history = seller.get(&format!("/tickets/{id}")).text;
    assert!(history.contains("taken back into"), "{history}");
    // Found again by what is known of it.
    let sum = ticket(&table, id).quote.total;
    let home = &homes[0];
    for query in [format!("sum={sum}"), format!("home={home}"), format!("number={}", ticket(&table, id).number)] {
        let found = seller.get(&format!("/sales?{query}"));
        assert_eq!(found.status, 200);
        assert!(found.text.contains(&format!("/bills/{on}")), "{query}: {}", found.text);
    }
    assert_eq!(seller.get("/sales?day=yesterday").status, 400);
    let all = table.desk.with_ledger(|ledger| ledger.sales(&SaleQuery::default(), 10)).unwrap().unwrap();
    assert_eq!(all.len(), 1);
}

#[test]
fn other_goods_alone_are_sold() {
    let table = Table::new();
    let seller = table.seller();
    let form = Uuid::now_v7().to_string();
    let id = bill_of(&seller.post("/bills", &[("id", &form)]));
    assert_eq!(bill_of(&seller.post("/bills", &[("id", &form)])), id, "sent twice, one bill");
    let act = |verb: &str, fields: &[(&str, &str)]| seller.post(&format!("/bills/{id}/{verb}"), fields);
    act("goods", &[("words", "Card of ear wires"), ("price", "12")]);
    act("goods", &[("words", "A line too much"), ("price", "3")]);
    assert_eq!(act("goods/1/off", &[]).status, 303);
    assert_eq!(act("reduce", &[("to", "10"), ("how", ""), ("reason", "to a round sum")]).status, 303);
    let (_, sum) = bill(&table, id);
    assert!(sum.total <= Decimal::TEN && sum.total > Decimal::new(998, 2), "{}", sum.total);
    let left = sum.left.to_string();
    assert_eq!(act("pay", &[("tender", "Voucher"), ("left", &left), ("payments", "0")]).status, 303);
    let page = seller.get(&format!("/bills/{id}")).text;
    assert!(page.contains("by Voucher") && page.contains("Paid."), "{page}");
    assert!(seller.get(&format!("/bills/{}", Uuid::now_v7())).status == 404);
}

#[test]
fn a_helper_sells_and_the_seller_gives_money_back() {
    let table = Table::new();
    let seller = table.seller();
    let (mia, _) = crate::helper::helper(&table, &seller, "Mia");
    let homes = homes(&table);
    let id = ready(&table, &mia, &homes[..3].join(" "));
    let act = |verb: &str, fields: &[(&str, &str)]| mia.post(&format!("/tickets/{id}/{verb}"), fields);
    // A tenth is a helper's to take off, by the table's file; a fifth is not, nor a round sum that comes to more.
    assert_eq!(act("reduce", &[("how", "percent"), ("percent", "10"), ("reason", "a friend")]).status, 303);
    let before = ticket(&table, id).quote.total;
    for more in [&[("how", "percent"), ("percent", "20"), ("reason", "a friend")][..], &[("to", "5"), ("reason", "x")]]
    {
        assert_eq!(act("reduce", more).status, 403, "{more:?}");
    }
    assert_eq!(ticket(&table, id).quote.total, before);
    let approved = [("how", "percent"), ("percent", "20"), ("reason", "a friend"), ("seller_pin", PIN)];
    assert_eq!(act("reduce", &approved).status, 303);
    let total = ticket(&table, id).quote.total.to_string();
    assert_eq!(act("ring-up", &[("tender", "cash"), ("total", &total)]).status, 303);
    let on = bill_of(&mia.post(&format!("/tickets/{id}/bill"), &[]));
    let what = format!("ticket:{id}");
    let fields = [("what", &*what), ("home", "1"), ("reason", "it broke"), ("tender", "cash")];
    assert_eq!(mia.post(&format!("/bills/{on}/take-back"), &fields).status, 403);
    assert_eq!(
        mia.post(&format!("/bills/{on}/other-way"), &[("payment", "0"), ("tender", "card"), ("reason", "x")]).status,
        403
    );
    assert_eq!(ticket(&table, id).state, State::RungUp);
    let with_pin: Vec<_> = fields.into_iter().chain([("seller_pin", PIN)]).collect();
    assert_eq!(mia.post(&format!("/bills/{on}/take-back"), &with_pin).status, 303);
    let (bill, _) = bill(&table, on);
    let by: Vec<_> = bill.payments.iter().map(|one| one.by.as_deref()).collect();
    assert_eq!(by, [Some("Mia"), Some("Mia, approved by the seller")]);
    assert_eq!(bill.corrections[0].by.as_deref(), Some("Mia, approved by the seller"));
}
