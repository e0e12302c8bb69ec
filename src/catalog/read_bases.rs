//! `bases.ron`.

use super::{
    read_amounts::price,
    read_facts::{FACTS, facts},
    read_sizes::{length, ring},
};
use crate::{
    craft::{Bangle, Base, BaseKind, Clasp, Finish, LengthRange, LinearDensity, LinkKind, Mass, Necklace},
    money::Currency,
    ron_tree::{Fields, Node, Reader, Value, names_of},
};

const COMMON: [&str; 5] = ["id", "name", "finish", "price", "stock"];
const NECKLACE: [&str; 10] = [
    "chain",
    "link",
    "link_length",
    "link_width",
    "end_ring",
    "clasp",
    "usual_length",
    "shortest",
    "longest",
    "breakaway",
];
const BANGLE: [&str; 7] = ["inside", "wire", "weight", "hook_width", "hook_thickness", "hook_weight", "free_arc_deg"];

/// Every base that could be read, with the place of its id.
pub(super) fn read(reader: &mut Reader<'_>, node: &Node, currency: Option<Currency>) -> Vec<(Base, usize)> {
    let Some(items) = reader.list(node, "bases") else { return vec![] };
    items.iter().filter_map(|item| base(reader, item, currency)).collect()
}

fn base(reader: &mut Reader<'_>, node: &Node, currency: Option<Currency>) -> Option<(Base, usize)> {
    let form = match &node.value {
        Value::Struct { name: Some(name), .. } => name.as_str(),
        _ => "",
    };
    let own: &[&str] = match form {
        "Necklace" => &NECKLACE,
        "Bangle" => &BANGLE,
        _ => return reader.unlike(node, "Necklace(…) or Bangle(…)"),
    };
    let names: Vec<&str> = COMMON.iter().chain(own).chain(&FACTS).copied().collect();
    let f = reader.fields(node, "a base", &names)?;
    let id = reader.id(&f);
    let name = reader.name(&f, "name");
    let finish = reader.required(&f, "finish").and_then(|node| reader.word(node, "a finish", names_of!(Finish)));
    let facts = facts(reader, &f, finish);
    let price = price_of(reader, &f, currency);
    let stock = reader.required(&f, "stock").and_then(|node| reader.whole(node, 0, 100_000));
    let kind = match form {
        "Necklace" => necklace(reader, &f).map(BaseKind::Necklace),
        _ => bangle(reader, &f).map(BaseKind::Bangle),
    };
    let (id, at) = id?;
    let base = Base { id, name: name?, finish: finish?, facts: facts?, price: price?, stock: stock?, kind: kind? };
    Some((base, at))
}

/// The price, as far as the table's currency is known.
pub(super) fn price_of(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    currency: Option<Currency>,
) -> Option<rust_decimal::Decimal> {
    let node = reader.required(f, "price")?;
    price(reader, node, currency?)
}

fn necklace(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Necklace> {
    let chain = reader.quantity(f, "chain", |chain: &LinearDensity| chain.g_per_m(), (0.1, 500.0, "g/m"));
    let link = match f.get("link") {
        Some(node) => reader.word(node, "a kind of link", names_of!(LinkKind)),
        None => Some(LinkKind::default()),
    };
    let link_length = length(reader, f, "link_length", 0.5, 60.0);
    let link_width = length(reader, f, "link_width", 0.3, 40.0);
    let end_ring = reader.required(f, "end_ring").and_then(|node| ring(reader, node));
    let clasp = reader.required(f, "clasp").and_then(|node| clasp(reader, node));
    let usual = length(reader, f, "usual_length", 200.0, 2000.0);
    let shortest = length(reader, f, "shortest", 200.0, 2000.0);
    let longest = length(reader, f, "longest", 200.0, 2000.0);
    let breakaway = match f.get("breakaway") {
        Some(node) => reader.flag(node),
        None => Some(false),
    };
    let (usual, shortest, longest) = (usual?, shortest?, longest?);
    if !(shortest <= usual && usual <= longest) {
        let node = reader.required(f, "usual_length")?;
        return reader.unlike(node, &format!("usual_length between shortest ({shortest}) and longest ({longest})"));
    }
    Some(Necklace {
        chain: chain?,
        link: link?,
        link_length: link_length?,
        link_width: link_width?,
        end_ring: end_ring?,
        clasp: clasp?,
        lengths: LengthRange { usual, shortest, longest },
        breakaway: breakaway?,
    })
}

fn clasp(reader: &mut Reader<'_>, node: &Node) -> Option<Clasp> {
    let f = reader.fields(node, "a clasp", &["length", "width", "thickness", "ring"])?;
    let long = length(reader, &f, "length", 3.0, 80.0);
    let width = length(reader, &f, "width", 1.0, 40.0);
    let thickness = length(reader, &f, "thickness", 0.5, 20.0);
    let ring = reader.required(&f, "ring").and_then(|node| ring(reader, node));
    Some(Clasp { length: long?, width: width?, thickness: thickness?, ring: ring? })
}

fn bangle(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Bangle> {
    let inside = length(reader, f, "inside", 30.0, 120.0);
    let wire = length(reader, f, "wire", 0.8, 12.0);
    let weight = reader.quantity(f, "weight", |weight: &Mass| weight.g(), (0.5, 500.0, "g"));
    let hook_width = length(reader, f, "hook_width", 0.8, 30.0);
    let hook_thickness = length(reader, f, "hook_thickness", 0.8, 30.0);
    let hook_weight = reader.quantity(f, "hook_weight", |weight: &Mass| weight.g(), (0.0, 100.0, "g"));
    let free_arc_deg = reader.required(f, "free_arc_deg").and_then(|node| reader.number(node, 10.0, 340.0));
    Some(Bangle {
        inside: inside?,
        wire: wire?,
        weight: weight?,
        hook_width: hook_width?,
        hook_thickness: hook_thickness?,
        hook_weight: hook_weight?,
        free_arc_deg: free_arc_deg?,
    })
}
