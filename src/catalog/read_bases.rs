//! `bases.ron`.

use super::{
    read_amounts::price,
    read_facts::FACTS,
    read_guesses::{ABOUT_FIGURES, Guesses, counted, known_facts, stock},
    read_sizes::{length, quantity, ring},
};
use crate::{
    craft::{
        Bangle, Base, BaseKind, Clasp, Facts, Finish, Guess, Length, LengthRange, LinearDensity, LinkKind, Mass,
        Material, Necklace, USUAL_BANGLE, USUAL_END_RING, USUAL_FINISH, USUAL_FREE_ARC_DEG, USUAL_HOOK, USUAL_STOCK,
        UsualChain, bangle_weight,
    },
    money::Currency,
    ron_tree::{Fields, Node, Reader, Value, detail, either, names_of, what},
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
    let Some(items) = reader.list(node, what("list-bases", "bases")) else { return vec![] };
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
        _ => return reader.unlike(node, either("Necklace(…)", "Bangle(…)")),
    };
    let names: Vec<&str> = COMMON.iter().chain(own).chain(&FACTS).chain(&ABOUT_FIGURES).copied().collect();
    let f = reader.fields(node, what("a-base", "a base"), &names)?;
    let mut guesses = Guesses::of(reader, &f, &names)?;
    let id = reader.id(&f);
    let name = match f.get("name") {
        Some(_) => reader.name(&f, "name"),
        None => Some(guesses.at(Guess::Name, form.to_owned())),
    };
    let finish = match f.get("finish") {
        Some(node) => reader.word(node, what("a-finish", "a finish"), names_of!(Finish)),
        None => Some(guesses.at(Guess::Finish, USUAL_FINISH)),
    };
    let usual = || Facts { materials: vec![Material::UnknownMetal], ..Facts::default() };
    let facts = known_facts(reader, &f, finish, usual, &mut guesses);
    let price = price_of(reader, &f, currency);
    let (stock, counted) = (stock(reader, &f, USUAL_STOCK, &mut guesses), counted(reader, &f));
    let kind = match form {
        "Necklace" => necklace(reader, &f, &mut guesses).map(BaseKind::Necklace),
        _ => bangle(reader, &f, &mut guesses).map(BaseKind::Bangle),
    };
    let (id, at) = id?;
    let base = Base {
        id,
        name: name?,
        finish: finish?,
        facts: facts?,
        price: price?,
        stock: stock?,
        kind: kind?,
        counted: counted?,
        guessed: guesses.all(),
    };
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

/// A field as it is written, or what is usual, as a guess.
fn or_usual<T>(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    guesses: &mut Guesses,
    (guess, usual): (Guess, T),
    read: impl FnOnce(&mut Reader<'_>, &Node) -> Option<T>,
) -> Option<T> {
    match f.get(guess.field()) {
        Some(node) => read(reader, node),
        None => Some(guesses.at(guess, usual)),
    }
}

/// The same for a length between two others, in millimetres.
fn length_or_usual(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    guesses: &mut Guesses,
    usual: (Guess, Length),
    (low_mm, high_mm): (f64, f64),
) -> Option<Length> {
    let name = usual.0.field();
    or_usual(reader, f, guesses, usual, |reader, _| length(reader, f, name, low_mm, high_mm))
}

fn necklace(reader: &mut Reader<'_>, f: &Fields<'_>, guesses: &mut Guesses) -> Option<Necklace> {
    let link = match f.get("link") {
        Some(node) => reader.word(node, what("a-kind-of-link", "a kind of link"), names_of!(LinkKind)),
        None => Some(LinkKind::default()),
    };
    let usual = UsualChain::of(link.unwrap_or_default());
    let link_length = length_or_usual(reader, f, guesses, (Guess::LinkLength, usual.link_length), (0.5, 60.0));
    let link_width = length_or_usual(reader, f, guesses, (Guess::LinkWidth, usual.link_width), (0.3, 40.0));
    let chain = match (f.get("chain"), link_length, link_width) {
        (Some(_), ..) => quantity(reader, f, "chain", |chain: &LinearDensity| chain.g_per_m(), (0.1, 500.0, "g/m")),
        (None, Some(link_length), Some(link_width)) => {
            let chain = UsualChain { link_length, link_width, ..usual };
            Some(guesses.at(Guess::Chain, chain.weight()))
        }
        (None, ..) => None,
    };
    let end_ring = or_usual(reader, f, guesses, (Guess::EndRing, USUAL_END_RING), ring);
    let clasp = or_usual(reader, f, guesses, (Guess::Clasp, Clasp::USUAL), clasp);
    let lengths = LengthRange::USUAL;
    let usual = length_or_usual(reader, f, guesses, (Guess::UsualLength, lengths.usual), (200.0, 2000.0))?;
    let shortest = Length::from_mm(lengths.shortest.mm().min(usual.mm()));
    let shortest = length_or_usual(reader, f, guesses, (Guess::Shortest, shortest), (200.0, 2000.0))?;
    let longest = Length::from_mm(lengths.longest.mm().max(usual.mm()));
    let longest = length_or_usual(reader, f, guesses, (Guess::Longest, longest), (200.0, 2000.0))?;
    let breakaway = match f.get("breakaway") {
        Some(node) => reader.flag(node),
        None => Some(false),
    };
    if !(shortest <= usual && usual <= longest) {
        let at = f.get("usual_length").or(f.get("shortest")).or(f.get("longest"))?;
        let (shortest, longest) = (shortest.to_string(), longest.to_string());
        let wanted = detail!(
            "right-usual-length",
            "usual_length between shortest ({shortest}) and longest ({longest})",
            shortest = shortest,
            longest = longest
        );
        return reader.unlike(at, wanted);
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
    let f = reader.fields(node, what("a-clasp", "a clasp"), &["length", "width", "thickness", "ring"])?;
    let long = length(reader, &f, "length", 3.0, 80.0);
    let width = length(reader, &f, "width", 1.0, 40.0);
    let thickness = length(reader, &f, "thickness", 0.5, 20.0);
    let ring = reader.required(&f, "ring").and_then(|node| ring(reader, node));
    Some(Clasp { length: long?, width: width?, thickness: thickness?, ring: ring? })
}

fn bangle(reader: &mut Reader<'_>, f: &Fields<'_>, guesses: &mut Guesses) -> Option<Bangle> {
    let (inside, wire) = USUAL_BANGLE;
    let inside = length_or_usual(reader, f, guesses, (Guess::Inside, inside), (30.0, 120.0));
    let wire = length_or_usual(reader, f, guesses, (Guess::Wire, wire), (0.8, 12.0));
    let (width, thickness, hook) = USUAL_HOOK;
    let hook_width = length_or_usual(reader, f, guesses, (Guess::HookWidth, width), (0.8, 30.0));
    let hook_thickness = length_or_usual(reader, f, guesses, (Guess::HookThickness, thickness), (0.8, 30.0));
    let hook_weight = or_usual(reader, f, guesses, (Guess::HookWeight, hook), |reader, _| {
        quantity(reader, f, "hook_weight", |weight: &Mass| weight.g(), (0.0, 100.0, "g"))
    });
    let (inside, wire, hook_weight) = (inside?, wire?, hook_weight?);
    let usual = (Guess::Weight, bangle_weight(inside, wire, hook_weight));
    let weight = or_usual(reader, f, guesses, usual, |reader, _| {
        quantity(reader, f, "weight", |weight: &Mass| weight.g(), (0.5, 500.0, "g"))
    });
    let free_arc = or_usual(reader, f, guesses, (Guess::FreeArc, USUAL_FREE_ARC_DEG), |reader, node| {
        reader.number(node, 10.0, 340.0)
    });
    Some(Bangle {
        inside,
        wire,
        weight: weight?,
        hook_width: hook_width?,
        hook_thickness: hook_thickness?,
        hook_weight,
        free_arc_deg: free_arc?,
    })
}
