//! What `table.ron` says of the till: ways to pay, a party's packages, the host's reward, what a helper may take off.

use rust_decimal::Decimal;

use super::{
    model::Till,
    read_amounts::{percent, price},
};
use crate::{
    money::{Currency, Package, RewardRule, Tender},
    quoting::one_line,
    ron_tree::{Fields, Node, Reader, Value, What, detail, either, what},
};

/// The fields of the table that are the till's.
pub(super) const TILL_FIELDS: [&str; 4] = ["ways_to_pay", "packages", "reward", "helper_reduction"];

/// So many ways to pay fit beside each other on a phone.
const MOST_WAYS: usize = 8;
/// The longest name of a way to pay or a package.
const LONGEST_NAME: usize = 24;
/// So many drops are in a package at most.
const MOST_DROPS: u32 = 200;

/// Reads them. Without them cash and card are taken, there are no packages and no reward, and a helper takes off a tenth at
/// most.
pub(super) fn read(reader: &mut Reader<'_>, f: &Fields<'_>, currency: Currency) -> Option<Till> {
    let ways_to_pay = match f.get("ways_to_pay") {
        Some(node) => ways(reader, node),
        None => Some(vec![Tender::Cash, Tender::Card]),
    };
    let packages = match f.get("packages") {
        Some(node) => packages(reader, node, currency),
        None => Some(vec![]),
    };
    let reward = match f.get("reward") {
        Some(node) => reward(reader, node, currency).map(Some),
        None => Some(None),
    };
    let helper_reduction = match f.get("helper_reduction") {
        Some(node) => percent(reader, node),
        None => Some(Decimal::TEN),
    };
    Some(Till {
        ways_to_pay: ways_to_pay?,
        packages: packages?,
        reward: reward?,
        helper_reduction_percent: helper_reduction?,
    })
}

fn ways(reader: &mut Reader<'_>, node: &Node) -> Option<Vec<Tender>> {
    let nodes = reader.list(node, what("list-ways-to-pay", "ways to pay"))?;
    if nodes.is_empty() || nodes.len() > MOST_WAYS {
        return reader.unlike(
            node,
            detail!(
                "right-ways-to-pay",
                "one to {most} ways to pay, as in {example}",
                most = MOST_WAYS,
                example = "[\"cash\", \"card\"]"
            ),
        );
    }
    let mut ways = Some(Vec::new());
    for node in nodes {
        let Some(name) = short_name(reader, node, what("a-way-to-pay", "a way to pay")) else {
            ways = None;
            continue;
        };
        let way = Tender::called(name);
        let is_there = ways.as_ref().is_some_and(|ways: &Vec<Tender>| {
            ways.iter().any(|other| other.name().to_lowercase() == way.name().to_lowercase())
        });
        if is_there {
            reader.unlike::<()>(node, detail!("a-new-way-to-pay", "a way to pay that is not in the list yet"));
            ways = None;
        } else if let Some(ways) = &mut ways {
            ways.push(way);
        }
    }
    ways
}

fn short_name<'n>(reader: &mut Reader<'_>, node: &'n Node, of: What) -> Option<&'n str> {
    let name = reader.text(node, of)?;
    let fits =
        !name.is_empty() && name.trim() == name && name.chars().count() <= LONGEST_NAME && one_line(name) == name;
    if fits {
        Some(name)
    } else {
        reader.unlike(
            node,
            detail!("a-short-name", "a name of 1 to {longest} characters in one line", longest = LONGEST_NAME),
        )
    }
}

fn packages(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<Vec<Package>> {
    let mut packages = Some(Vec::new());
    for node in reader.list(node, what("list-packages", "packages"))? {
        match (package(reader, node, currency), &mut packages) {
            (Some(one), Some(all)) => all.push(one),
            _ => packages = None,
        }
    }
    packages
}

fn package(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<Package> {
    let f = reader.fields(node, what("a-package", "a package"), &["name", "price", "drops"])?;
    let name = reader
        .required(&f, "name")
        .and_then(|node| short_name(reader, node, what("a-name", "a name")).map(str::to_owned));
    let price = reader.required(&f, "price").and_then(|node| price(reader, node, currency));
    let drops = reader.required(&f, "drops").and_then(|node| reader.whole(node, 1, MOST_DROPS));
    Some(Package { name: name?, price: price?, drops: drops? })
}

fn reward(reader: &mut Reader<'_>, node: &Node, currency: Currency) -> Option<RewardRule> {
    match &node.value {
        Value::Tuple { name: Some(name), items } if items.len() == 1 && name == "Percent" => {
            Some(RewardRule::Percent(percent(reader, &items[0])?))
        }
        Value::Struct { name: Some(name), .. } if name == "FreePieces" => {
            let f = reader.fields(node, what("a-reward", "a reward"), &["above", "up_to"])?;
            let above = reader.required(&f, "above").and_then(|node| price(reader, node, currency));
            let up_to = match f.get("up_to") {
                Some(node) => price(reader, node, currency).map(Some),
                None => Some(None),
            };
            Some(RewardRule::FreePieces { above: above?, up_to: up_to? })
        }
        _ => reader.unlike(node, either("Percent(\"10\")", "FreePieces(above: \"150.00\", up_to: \"25.00\")")),
    }
}
