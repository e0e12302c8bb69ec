//! Packages and reductions by hand against sums worked by hand and against trying everything.

use rust_decimal::Decimal;

use super::*;

/// Tax rates of several countries and states, in thousandths of a percent, and odd ones.
const RATES: &[i64] =
    &[0, 100, 1_000, 5_000, 6_250, 6_500, 7_700, 8_875, 10_000, 17_500, 19_000, 20_000, 25_000, 100_000];

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn rules(code: &str, tax: TaxRule, rounding: Rounding) -> PriceRules {
    let currency = Currency::from_code(code).unwrap();
    PriceRules { currency, tax, rounding, cash_step: currency.cash_step(), discounts: vec![] }
}

fn base(price: Decimal) -> PricedItem {
    PricedItem { id: "base".into(), price }
}

fn drops(prices: &[Decimal]) -> Vec<PricedDrop> {
    let home = "A1".parse().unwrap();
    prices.iter().map(|price| PricedDrop { id: "x".into(), price: *price, home }).collect()
}

fn one_line(price: Decimal) -> Vec<PlainLine> {
    vec![PlainLine { words: "earrings".into(), price }]
}

fn package(price: &str, drops: u32) -> Package {
    Package { name: "party".into(), price: d(price), drops }
}

/// Sources: HMRC, VAT-exclusive examples (100 net at 20 % and 5 %); Streamlined Sales and Use Tax Agreement §324 (10.99,
/// 19.99 and 4.95 computed by its rule); Canada, Budget 2012 (4.69 at 5 % is 4.92).
#[test]
fn a_wished_total_leads_back_to_the_published_net() {
    for (code, percent, net, total) in [
        ("GBP", "20", "100", "120"),
        ("GBP", "5", "100", "105"),
        ("USD", "6.25", "10.99", "11.68"),
        ("USD", "6.5", "19.99", "21.29"),
        ("USD", "6.25", "4.95", "5.26"),
        ("CAD", "5", "4.69", "4.92"),
    ] {
        let rules = rules(code, TaxRule::Added { percent: d(percent) }, Rounding::HalfUp);
        let wish = Reduction::ToSum(d(total));
        let sum = quote_plain(&rules, &one_line(d(net) + d("3.10")), Some(&wish)).unwrap();
        assert_eq!((sum.subtotal - sum.discount, sum.total), (d(net), d(total)), "{code} {net} at {percent} %");
    }
}

/// Worked by hand: at 6.25 % half up, 0.07 net is 0.07 and 0.08 net is 0.09, so that no net gives 0.08.
#[test]
fn a_total_that_no_net_gives_is_rounded_down() {
    let rules = rules("USD", TaxRule::Added { percent: d("6.25") }, Rounding::HalfUp);
    let to = |wish: &str| quote_plain(&rules, &one_line(d("1")), Some(&Reduction::ToSum(d(wish)))).unwrap().total;
    assert_eq!([to("0.07"), to("0.08"), to("0.09"), to("0"), to("1.06")], ["0.07", "0.07", "0.09", "0", "1.06"].map(d));
}

/// A wished total against every net amount there is, in whole numbers of the minor unit.
#[test]
fn a_wished_total_is_the_best_of_all_nets() {
    const MOST: i64 = 400;
    let mut unreached = 0;
    for (code, digits) in [("JPY", 0), ("USD", 2), ("KWD", 3)] {
        for (&rate, rounding) in RATES.iter().flat_map(|rate| [(rate, Rounding::HalfUp), (rate, Rounding::HalfEven)]) {
            let total_of = |net: i64| {
                let (whole, rest) = (net * rate / 100_000, net * rate % 100_000);
                let up = match rounding {
                    Rounding::HalfUp => rest >= 50_000,
                    Rounding::HalfEven => rest > 50_000 || (rest == 50_000 && whole % 2 == 1),
                };
                net + whole + i64::from(up)
            };
            let totals: Vec<i64> = (0..=MOST).map(total_of).collect();
            let rules = rules(code, TaxRule::Added { percent: Decimal::new(rate, 3) }, rounding);
            for wish in 0..=totals[MOST as usize] {
                let best = totals.iter().rposition(|total| *total <= wish).unwrap();
                unreached += u32::from(totals[best] != wish);
                let reduction = Reduction::ToSum(Decimal::new(wish, digits));
                let sum = quote_plain(&rules, &one_line(Decimal::new(MOST, digits)), Some(&reduction)).unwrap();
                let wanted = (Decimal::new(MOST - best as i64, digits), Decimal::new(totals[best], digits));
                assert_eq!((sum.discount, sum.total), wanted, "{code}, {rate}/1000 %, to {wish}");
            }
        }
    }
    assert!(unreached > 1_000, "{unreached} totals that no net gives were tried");
}

/// Where tax is in the price, or none is, every total up to the sum can be had.
#[test]
fn a_wished_total_is_met_where_no_tax_comes_on_top() {
    for tax in [TaxRule::None, TaxRule::Included { percent: d("19") }] {
        let rules = rules("EUR", tax, Rounding::HalfUp);
        for wish in 0..=300 {
            let wish = Decimal::new(wish, 2);
            let sum = quote_plain(&rules, &one_line(d("3")), Some(&Reduction::ToSum(wish))).unwrap();
            assert_eq!((sum.total, sum.discount), (wish, d("3") - wish));
        }
    }
}

#[test]
fn what_is_no_reduction_is_refused_with_what_is_wrong() {
    let rules = rules("USD", TaxRule::Added { percent: d("10") }, Rounding::HalfUp);
    let told = |reduction: Reduction| quote_plain(&rules, &one_line(d("20")), Some(&reduction)).unwrap_err();
    assert_eq!(told(Reduction::Percent(d("-1"))), MoneyError::Percent(d("-1")));
    assert_eq!(told(Reduction::Percent(d("100.01"))), MoneyError::Percent(d("100.01")));
    assert_eq!(told(Reduction::Amount(d("-0.01"))), MoneyError::BelowZero(d("-0.01")));
    assert_eq!(told(Reduction::Amount(d("0.001"))), MoneyError::Decimals(d("0.001")));
    assert_eq!(told(Reduction::ToSum(d("-5"))), MoneyError::BelowZero(d("-5")));
    assert_eq!(told(Reduction::ToSum(d("19.999"))), MoneyError::Decimals(d("19.999")));
    let above = told(Reduction::ToSum(d("22.01")));
    assert_eq!(above, MoneyError::AboveTotal { wish: d("22.01"), total: d("22.00") });
    assert_eq!(above.to_string(), "22.01 is more than the sum of 22.00; a reduction only takes off");
    let huge = d("79228162514264337593543950335");
    assert!(matches!(told(Reduction::ToSum(huge)), MoneyError::AboveTotal { .. }));
    assert_eq!(told(Reduction::Percent(huge)), MoneyError::Percent(huge));
    for price in ["0", "-1", "1000001"] {
        let made = quote_with(&rules, base(d("10")), vec![], vec![], Some(&package(price, 3)), None);
        assert_eq!(made, Err(MoneyError::Price { id: "party".into(), price: d(price) }));
    }
    let made = quote_with(&rules, base(d("10")), vec![], vec![], Some(&package("5.001", 3)), None);
    assert_eq!(made, Err(MoneyError::Decimals(d("5.001"))));
}

/// Worked by hand: 10 + 5 + 4 + 2 = 21; of three drops the cheapest is free, 19; 10 % of that off, 17.10; then by hand.
/// The plain line of 3 has no discount of the table's, but the reduction by hand is on it too: 20.10.
#[test]
fn the_reduction_by_hand_comes_after_all_else() {
    let mut r = rules("USD", TaxRule::Added { percent: d("10") }, Rounding::HalfUp);
    r.discounts = vec![Discount::EveryNth { n: 3 }, Discount::Percent(d("10"))];
    let made = |reduction: Reduction| {
        let drops = drops(&["5", "2", "4"].map(d));
        let quote = quote_with(&r, base(d("10")), drops, one_line(d("3")), None, Some(&reduction)).unwrap();
        assert_eq!((quote.subtotal, quote.check()), (d("24.00"), Ok(())));
        (quote.discount, quote.tax, quote.total)
    };
    assert_eq!(made(Reduction::Percent(d("0"))), (d("3.90"), d("2.01"), d("22.11")));
    assert_eq!(made(Reduction::Percent(d("12.5"))), (d("6.41"), d("1.76"), d("19.35")), "2.5125 is 2.51");
    assert_eq!(made(Reduction::Amount(d("0.10"))), (d("4.00"), d("2.00"), d("22.00")));
    assert_eq!(made(Reduction::ToSum(d("20"))), (d("5.82"), d("1.82"), d("20.00")), "18.18 + 1.818");
    for all in [Reduction::Percent(d("100")), Reduction::Amount(d("500")), Reduction::ToSum(d("0"))] {
        assert_eq!(made(all), (d("24.00"), d("0.00"), d("0.00")), "never more than is left");
    }
}

/// Worked by hand: base 12 and the dearest two of 3, 9, 5 are marked 26; the package makes them 20. The drop of 3 and the
/// line of 4 keep their prices, and the table's own tenth off does not count: 27.
#[test]
fn a_package_stands_for_the_tables_discounts() {
    let mut r = rules("EUR", TaxRule::Included { percent: d("19") }, Rounding::HalfUp);
    r.discounts = vec![Discount::Percent(d("10"))];
    let made = |package: &Package, reduction: Option<&Reduction>| {
        let drops = drops(&["3", "9", "5"].map(d));
        quote_with(&r, base(d("12")), drops, one_line(d("4")), Some(package), reduction).unwrap()
    };
    let quote = made(&package("20", 2), None);
    assert_eq!((quote.subtotal, quote.discount, quote.total), (d("33.00"), d("6.00"), d("27.00")));
    assert_eq!(quote.tax, d("4.31"), "27 * 19 / 119 is 4.3109");
    assert_eq!(made(&package("26.01", 2), None).discount, d("0"), "never more than as marked");
    assert_eq!(made(&package("20", 9), None).total, d("24"));
    assert_eq!(made(&package("20", 2), Some(&Reduction::Percent(d("50")))).total, d("13.50"));
    assert_eq!(made(&package("20", 2), Some(&Reduction::ToSum(d("25")))).discount, d("8"));
}

/// A package against every choice of the drops that could be in it: the guest gets the best, and never pays more than the
/// marks.
#[test]
fn a_package_is_the_best_choice_of_drops() {
    let rules = rules("JPY", TaxRule::None, Rounding::HalfUp);
    let prices = [1_i64, 2, 5, 9];
    let mut tried = 0;
    for pattern in 0..4_usize.pow(4) {
        let chosen: Vec<i64> = (0..4).map(|place| prices[pattern / 4_usize.pow(place) % 4]).collect();
        let marks: Vec<Decimal> = chosen.iter().map(|price| Decimal::from(*price)).collect();
        for (n, price) in (0..=5_u32).flat_map(|n| [1, 6, 11, 17, 40].map(|price| (n, price))) {
            let subsets = (0..16_u32).filter(|set| set.count_ones() <= n);
            let pay = |set: u32| {
                let inside: i64 = (0..4).filter(|place| set >> place & 1 == 1).map(|place| chosen[place]).sum();
                price.min(4 + inside) + chosen.iter().sum::<i64>() - inside
            };
            let best = subsets.map(pay).min().unwrap();
            let package = package(&price.to_string(), n);
            let quote = quote_with(&rules, base(d("4")), drops(&marks), vec![], Some(&package), None).unwrap();
            assert_eq!(quote.total, Decimal::from(best), "{chosen:?}, {n} for {price}");
            tried += 1;
        }
    }
    assert_eq!(tried, 256 * 30);
}

/// Whatever comes together, the sums follow from each other, and nobody pays more than the marks and their tax.
#[test]
fn the_sums_always_follow_from_each_other() {
    let mut tried = 0;
    for (code, unit) in [("JPY", "1"), ("USD", "0.01"), ("KWD", "0.001")] {
        let amount = |units: i64| Decimal::from(units) * d(unit);
        let discounts = [
            vec![],
            vec![Discount::Percent(d("33.3")), Discount::Amount(amount(40))],
            vec![Discount::EveryNth { n: 2 }, Discount::Percent(d("7.5"))],
        ];
        let packages = [None, Some((77, 1)), Some((1_250, 3))]
            .map(|package| package.map(|(price, drops)| Package { name: "party".into(), price: amount(price), drops }));
        for (rate, rounding) in RATES.iter().flat_map(|rate| [(*rate, Rounding::HalfUp), (*rate, Rounding::HalfEven)]) {
            let percent = Decimal::new(rate, 3);
            for tax in [TaxRule::None, TaxRule::Added { percent }, TaxRule::Included { percent }] {
                for (discounts, package) in discounts.iter().flat_map(|d| packages.iter().map(move |p| (d, p))) {
                    let rules = PriceRules { discounts: discounts.clone(), ..rules(code, tax, rounding) };
                    let marks = [333, 85, 999].map(amount);
                    let made = |reduction: Option<&Reduction>| {
                        let (base, drops, plain) = (base(amount(1_795)), drops(&marks), one_line(amount(107)));
                        quote_with(&rules, base, drops, plain, package.as_ref(), reduction).unwrap()
                    };
                    let full = made(None);
                    let reductions = [
                        Reduction::Percent(d("12.5")),
                        Reduction::Amount(amount(1_001)),
                        Reduction::ToSum(full.total * d("0.5") - full.total * d("0.5") % d(unit)),
                    ];
                    for quote in reductions.iter().map(|reduction| made(Some(reduction))).chain([full.clone()]) {
                        assert_eq!(quote.check(), Ok(()), "{quote:?}");
                        assert!(quote.is_plausible() && quote.total <= full.total, "{quote:?}");
                        let on_top = if matches!(tax, TaxRule::Added { .. }) { quote.tax } else { Decimal::ZERO };
                        assert_eq!(quote.subtotal - quote.discount + on_top, quote.total, "{quote:?}");
                        tried += 1;
                    }
                }
            }
        }
    }
    assert_eq!(tried, 3 * 14 * 2 * 3 * 9 * 4);
}
