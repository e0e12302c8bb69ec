//! The quote against published examples.

use rust_decimal::Decimal;

use super::*;

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn rules(code: &str, tax: TaxRule) -> PriceRules {
    let currency = Currency::from_code(code).unwrap();
    PriceRules { currency, tax, rounding: Rounding::HalfUp, cash_step: currency.cash_step(), discounts: vec![] }
}

fn drops(prices: &[&str]) -> Vec<PricedDrop> {
    let home = "A1".parse().unwrap();
    prices.iter().map(|price| PricedDrop { id: "x".into(), price: d(price), home }).collect()
}

fn base(price: &str) -> PricedItem {
    PricedItem { id: "base".into(), price: d(price) }
}

fn sums(rules: &PriceRules, first: &str, rest: &[&str]) -> (String, String) {
    let quote = quote(rules, base(first), drops(rest)).unwrap();
    (quote.tax.to_string(), quote.total.to_string())
}

/// Sources: HMRC, VAT-exclusive examples; Streamlined Sales and Use Tax Agreement §324
/// (10.99, 19.99 and 4.95 computed by its rule); Canada, Budget 2012 (1.83 + 2.86 at 5 %).
#[test]
fn tax_on_top_as_published() {
    let added = |code: &str, percent: &str| rules(code, TaxRule::Added { percent: d(percent) });
    assert_eq!(sums(&added("GBP", "20"), "100", &[]), ("20.00".into(), "120.00".into()));
    assert_eq!(sums(&added("GBP", "5"), "100", &[]), ("5.00".into(), "105.00".into()));
    assert_eq!(sums(&added("USD", "6.25"), "10.99", &[]), ("0.69".into(), "11.68".into()));
    assert_eq!(sums(&added("USD", "6.25"), "0.24", &[]).0, "0.02");
    assert_eq!(sums(&added("USD", "6.5"), "19.99", &[]).0, "1.30");
    assert_eq!(sums(&added("USD", "6.25"), "1.65", &["1.65", "1.65"]).0, "0.31", "once per ticket, not by line");
    let cad = added("CAD", "5");
    assert_eq!(sums(&cad, "1.83", &["2.86"]).1, "4.92");
    assert_eq!(cash_total(&cad, d("4.92")), Ok(d("4.90")));
}

/// Source: HMRC, VAT fractions (1/6 at 20 %, 7/47 at 17.5 %, 3/23 at 15 %).
#[test]
fn tax_inside_as_published() {
    for (gross, percent, tax) in
        [("120", "20", "20.00"), ("117.50", "17.5", "17.50"), ("115", "15", "15.00"), ("9.99", "20", "1.67")]
    {
        let included = rules("GBP", TaxRule::Included { percent: d(percent) });
        assert_eq!(sums(&included, gross, &[]).0, tax, "{gross}");
    }
    let even = PriceRules { rounding: Rounding::HalfEven, ..rules("GBP", TaxRule::Included { percent: d("20") }) };
    assert_eq!(sums(&even, "9.99", &[]).0, "1.66");
}

/// Sources: Canada, Budget 2012 rounding page; Québec consumer office; Sweden, Lag (1970:1029); Switzerland, common practice.
#[test]
fn cash_is_rounded_as_published() {
    let table = [
        ("CAD", "1.01", "1.00"),
        ("CAD", "1.02", "1.00"),
        ("CAD", "1.03", "1.05"),
        ("CAD", "1.04", "1.05"),
        ("CAD", "1.06", "1.05"),
        ("CAD", "1.07", "1.05"),
        ("CAD", "1.08", "1.10"),
        ("CAD", "1.09", "1.10"),
        ("CAD", "5.98", "6.00"),
        ("CAD", "5.97", "5.95"),
        ("CAD", "0.06", "0.05"),
        ("SEK", "223.20", "223.00"),
        ("SEK", "223.49", "223.00"),
        ("SEK", "223.50", "224.00"),
        ("CHF", "12.32", "12.30"),
        ("CHF", "12.33", "12.35"),
        ("CHF", "12.375", "12.40"),
        ("NZD", "12.34", "12.30"),
        ("NZD", "12.36", "12.40"),
        ("USD", "12.34", "12.34"),
    ];
    for (code, total, cash) in table {
        let paid = cash_total(&rules(code, TaxRule::None), d(total)).unwrap();
        assert_eq!(paid.to_string(), cash, "{code} {total}");
    }
}

#[test]
fn discounts_come_off_before_tax_and_never_below_zero() {
    let mut r = rules("USD", TaxRule::Added { percent: d("10") });
    r.discounts = vec![Discount::EveryNth { n: 3 }, Discount::Percent(d("10"))];
    let q = quote(&r, base("10"), drops(&["5", "2", "4"])).unwrap();
    assert_eq!((q.subtotal, q.discount, q.tax, q.total), (d("21.00"), d("3.90"), d("1.71"), d("18.81")));
    r.discounts = vec![Discount::Amount(d("50"))];
    assert_eq!(quote(&r, base("10"), vec![]).unwrap().total, Decimal::ZERO);
}

#[test]
fn what_can_be_no_quote_is_told() {
    let r = rules("USD", TaxRule::Added { percent: d("10") });
    let good = quote(&r, base("10"), drops(&["5", "2.50"])).unwrap();
    assert_eq!(good.check(), Ok(()));
    let included = rules("USD", TaxRule::Included { percent: d("10") });
    assert_eq!(quote(&included, base("10"), drops(&["5"])).unwrap().check(), Ok(()));
    let with = |change: &dyn Fn(&mut Quote)| {
        let mut other = good.clone();
        change(&mut other);
        other.check()
    };
    let huge = d("79228162514264337593543950335");
    for amount in [huge, -huge] {
        assert!(with(&|q| q.total = amount).is_err() && with(&|q| q.tax = amount).is_err());
        assert!(with(&|q| q.subtotal = amount).is_err() && with(&|q| q.base.price = amount).is_err());
        assert!(with(&|q| q.discount = amount).is_err() && with(&|q| q.drops[0].price = amount).is_err());
    }
    assert_eq!(with(&|q| q.total = d("0.01")), Err(MoneyError::Lines));
    assert_eq!(with(&|q| q.total = d("-50")), Err(MoneyError::Lines));
    assert_eq!(with(&|q| q.discount = d("-1")), Err(MoneyError::Lines));
    assert!(matches!(with(&|q| q.drops[1].price = d("0")), Err(MoneyError::Price { .. })));
    assert_eq!(with(&|q| (q.tax, q.total) = (d("1.751"), d("19.251"))), Err(MoneyError::Decimals(d("1.751"))));
    let gift = rules("USD", TaxRule::None);
    let gift = PriceRules { discounts: vec![Discount::Amount(d("50"))], ..gift };
    assert_eq!(quote(&gift, base("10"), vec![]).unwrap().check(), Ok(()), "a piece that is free");
    assert_eq!(cash_total(&r, huge), Err(MoneyError::TooLarge));
}

#[test]
fn absurd_amounts_are_refused() {
    let r = rules("USD", TaxRule::None);
    for price in ["0", "-1", "1000001", "79228162514264337593543950335"] {
        assert!(matches!(quote(&r, base(price), vec![]), Err(MoneyError::Price { .. })), "{price}");
    }
    assert_eq!(quote(&r, base("1000000"), drops(&["1"])), Err(MoneyError::TooLarge));
}

/// Sources: Streamlined Sales and Use Tax Agreement §324 (three of 1.65 by invoice); HMRC, VAT fractions; Canada, Budget
/// 2012 (1.83 + 2.86 at 5 %, and the endings 5 and 6 in cash).
#[test]
fn plain_lines_are_taxed_as_published_with_a_piece_and_without() {
    let plain = |prices: &[&str]| -> Vec<PlainLine> {
        prices.iter().map(|price| PlainLine { words: "earrings".into(), price: d(price) }).collect()
    };
    let alone = |rules: &PriceRules, prices: &[&str]| {
        let sum = quote_plain(rules, &plain(prices), None).unwrap();
        (sum.tax.to_string(), sum.total.to_string())
    };
    let usd = rules("USD", TaxRule::Added { percent: d("6.25") });
    assert_eq!(alone(&usd, &["1.65", "1.65", "1.65"]), ("0.31".into(), "5.26".into()), "once, not by line");
    let gbp = rules("GBP", TaxRule::Included { percent: d("20") });
    assert_eq!(alone(&gbp, &["100", "0", "20"]), ("20.00".into(), "120.00".into()));
    let cad = rules("CAD", TaxRule::Added { percent: d("5") });
    assert_eq!(alone(&cad, &["1.83", "2.86"]).1, "4.92");
    let with = quote_with(&cad, base("1.83"), vec![], plain(&["2.86"]), None, None).unwrap();
    assert_eq!((with.subtotal, with.tax, with.total), (d("4.69"), d("0.23"), d("4.92")));
    assert_eq!(alone(&usd, &[]), ("0.00".into(), "0.00".into()));
    let three = alone(&rules("CAD", TaxRule::None), &["0.02", "0.02", "0.02"]).1;
    assert_eq!(cash_total(&cad, d(&three)), Ok(d("0.05")), "the total in coins, never the lines");
}

#[test]
fn plain_lines_may_be_free_but_no_slip_of_the_finger() {
    let r = rules("USD", TaxRule::Added { percent: d("10") });
    let line = |price: &str| vec![PlainLine { words: "own pendant".into(), price: d(price) }];
    let free = quote_with(&r, base("10"), drops(&["5"]), line("0"), None, None).unwrap();
    assert_eq!((free.total, free.check(), free.is_plausible()), (d("16.50"), Ok(()), true));
    for (price, decimals) in [("-0.01", false), ("1000001", false), ("0.001", true)] {
        let told = quote_with(&r, base("10"), vec![], line(price), None, None).unwrap_err();
        let wanted = if decimals {
            MoneyError::Decimals(d(price))
        } else {
            MoneyError::Price { id: "own pendant".into(), price: d(price) }
        };
        assert_eq!(told, wanted);
        assert_eq!(quote_plain(&r, &line(price), None), Err(told.clone()));
        let other = Quote { plain: line(price), ..free.clone() };
        assert_eq!((other.check(), other.is_plausible()), (Err(told), decimals), "{price}");
    }
    assert_eq!(Quote { plain: line("1"), ..free.clone() }.check(), Err(MoneyError::Lines));
    assert_eq!(quote_with(&r, base("1000000"), vec![], line("1"), None, None), Err(MoneyError::TooLarge));
}

/// A quote without plain lines is written as it was before there were any, and one from then is read.
#[test]
fn a_quote_without_plain_lines_is_written_as_ever() {
    let r = rules("USD", TaxRule::Added { percent: d("10") });
    let earlier = r#"{"currency":"USD","base":{"id":"base","price":"10"},"drops":[{"id":"x","price":"5","home":"A1"}],"subtotal":"15.00","discount":"0.00","tax":"1.50","total":"16.50"}"#;
    let quote = quote(&r, base("10"), drops(&["5"])).unwrap();
    assert_eq!(serde_json::to_string(&quote).unwrap(), earlier);
    assert_eq!(serde_json::from_str::<Quote>(earlier).unwrap(), quote);
    let plain = vec![PlainLine { words: "cord".into(), price: d("2") }];
    let more = quote_with(&r, base("10"), drops(&["5"]), plain, None, None).unwrap();
    let text = serde_json::to_string(&more).unwrap();
    assert_eq!(serde_json::from_str::<Quote>(&text).unwrap(), more);
}
