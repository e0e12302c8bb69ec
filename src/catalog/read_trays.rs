//! `trays/*.ron`.

use super::{
    model::Tray,
    pictures::{Picture, Pictures},
    read_bases::price_of,
    read_facts::{FACTS, body, facts},
    read_sizes::{length, ring},
};
use crate::{
    craft::{Body, Colour, DropKind, Finish, Home, Length, Mass, Material, Ring, Sort, weight_of},
    money::Currency,
    ron_tree::{Fields, Node, Reader, Value, names_of, nearest},
};

const FIELDS: &[&str] = &[
    "id", "name", "sort", "finish", "colours", "body", "width", "height", "ring", "weight", "price", "stock",
    "picture", "large",
];

/// A tray with its drops, as far as they could be read, and the places of its letter and the drops' ids.
pub(super) struct ReadTray {
    pub tray: Tray,
    pub letter_at: usize,
    pub drops: Vec<(DropKind, usize)>,
    /// What the seller should know though nothing is wrong.
    pub remarks: Vec<String>,
}

pub(super) fn read(
    reader: &mut Reader<'_>,
    node: &Node,
    currency: Option<Currency>,
    pictures: &Pictures,
) -> Option<ReadTray> {
    let f = reader.fields(node, "a tray", &["letter", "name", "rows"])?;
    let letter_node = reader.required(&f, "letter");
    let letter = letter_node.and_then(|node| {
        let text = reader.text(node, "a letter")?;
        match *text.as_bytes() {
            [letter] if letter.is_ascii_uppercase() => Some(char::from(letter)),
            _ => reader.unlike(node, "one letter from \"A\" to \"Z\""),
        }
    });
    let name = reader.name(&f, "name");
    let rows_node = reader.required(&f, "rows")?;
    let row_nodes = reader.list(rows_node, "rows")?;
    let mut drops = Vec::new();
    let mut remarks = Vec::new();
    let mut rows = Vec::new();
    let mut compartment = 0u16;
    for row_node in row_nodes {
        let Some(cells) = reader.list(row_node, "compartments") else { continue };
        let mut row = Vec::new();
        for cell in cells {
            if compartment == 999 {
                return reader.unlike(cell, "at most 999 compartments in a tray");
            }
            compartment += 1;
            if matches!(&cell.value, Value::Word(word) if word == "Empty") {
                row.push(None);
                continue;
            }
            let home = Home { tray: letter.unwrap_or('?'), compartment };
            let read = drop_kind(reader, cell, home, currency, pictures);
            row.push(read.as_ref().map(|read| read.kind.id.clone()));
            if let Some(ReadDrop { kind, at, worked_out }) = read {
                if worked_out {
                    let (id, g, of) = (&kind.id, kind.weight.g(), kind.facts.materials[0]);
                    let memory = of.density().is_some_and(|density| density.from_memory);
                    let known = if memory { " (its density from memory)" } else { "" };
                    let of = of.word();
                    let words = format!("{id:?} ({home}) has no weight; {g:.1} g follow from its size in {of}{known}");
                    remarks.push(words);
                }
                if matches!(&kind.body, Body::Outline { shape: Some(shape), .. } if !shape.cut_out) {
                    let (id, file) = (&kind.id, &kind.picture);
                    remarks.push(format!(
                        "{id:?} ({home}) goes by the outline of {file:?}, in which nothing is transparent: where it ends is \
                         not known, so it may be a small part; cut it out of its picture, or write its body otherwise"
                    ));
                }
                drops.push((kind, at));
            }
        }
        rows.push(row);
    }
    let tray = Tray { letter: letter?, name: name?, rows };
    Some(ReadTray { tray, letter_at: letter_node.map_or(0, |node| node.at), drops, remarks })
}

/// A drop as read.
struct ReadDrop {
    kind: DropKind,
    /// Where its id stands.
    at: usize,
    /// Whether its weight was worked out from its size.
    worked_out: bool,
}

fn drop_kind(
    reader: &mut Reader<'_>,
    node: &Node,
    home: Home,
    currency: Option<Currency>,
    pictures: &Pictures,
) -> Option<ReadDrop> {
    let names: Vec<&str> = FIELDS.iter().chain(&FACTS).copied().collect();
    let f = reader.fields(node, "a drop", &names)?;
    let id = reader.id(&f);
    let name = reader.name(&f, "name");
    let sort = reader.required(&f, "sort").and_then(|node| reader.word(node, "a sort of drop", names_of!(Sort)));
    let finish = match f.get("finish") {
        Some(node) => reader.word(node, "a finish", names_of!(Finish)).map(Some),
        None => Some(None),
    };
    let colours = reader.required(&f, "colours").and_then(|node| {
        let items = reader.list(node, "colours")?;
        let read: Vec<_> = items.iter().map(|item| reader.word(item, "a colour", names_of!(Colour))).collect();
        read.into_iter().collect()
    });
    let facts = facts(reader, &f, finish.flatten());
    let body = reader.required(&f, "body").and_then(|node| body(reader, node));
    let width = length(reader, &f, "width", 1.0, 200.0);
    let height = length(reader, &f, "height", 1.0, 300.0);
    let ring = reader.required(&f, "ring").and_then(|node| ring(reader, node));
    let price = price_of(reader, &f, currency);
    let stock = reader.required(&f, "stock").and_then(|node| reader.whole(node, 0, 100_000));
    let picture = reader.required(&f, "picture").and_then(|node| picture(reader, node, pictures));
    let shown = picture.as_ref().and_then(|name| pictures.get(name)?.as_ref().ok());
    let body = match (body, width, height) {
        (Some(Body::Outline { thickness, .. }), Some(width), Some(height)) => Some(Body::Outline {
            thickness,
            shape: shown.and_then(Picture::outline).map(|outline| outline.at_size(width, height)),
        }),
        (body, ..) => body,
    };
    let weight = weight(reader, &f, body.as_ref(), ring, facts.as_ref().map(|facts| facts.materials.as_slice()));
    as_large_as_its_picture(reader, &f, body.as_ref(), width.zip(height));
    let (id, at) = id?;
    let kind = DropKind {
        id,
        name: name?,
        sort: sort?,
        finish: finish?,
        colours: colours?,
        facts: facts?,
        body: body?,
        width: width?,
        height: height?,
        ring: ring?,
        weight: weight?,
        price: price?,
        stock: stock?,
        home,
        picture: picture?,
    };
    Some(ReadDrop { kind, at, worked_out: f.get("weight").is_none() })
}

/// The size beyond which the maker has to say that it is meant, in millimetres. Common practice, no source: a slip of the
/// unit makes a charm of 16 mm one of 16 cm.
const LARGE_MM: f64 = 150.0;

/// How far a body and its picture may differ: one of them is a slip beyond a quarter. Common practice, no source.
const ALIKE: f64 = 1.25;

/// Holds a body against the size of its picture, and both against what a drop usually is. A body that is larger than it is
/// said to be, or much smaller, is judged wrongly by the test cylinder.
fn as_large_as_its_picture(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    body: Option<&Body>,
    shown: Option<(Length, Length)>,
) {
    let meant = f.get("large").is_some_and(|node| reader.flag(node) == Some(true));
    let sizes = body.and_then(Body::width_and_height);
    for (name, i) in [("width", 0), ("height", 1)] {
        let Some(node) = f.get(name) else { continue };
        let picture = shown.map(|(width, height)| [width, height][i]);
        let of_body = sizes.map(|(width, height)| [width, height][i]);
        let largest = picture.into_iter().chain(of_body).map(Length::mm).fold(0.0, f64::max);
        if largest > LARGE_MM && !meant {
            let found = format!("a {name} of {largest:.0} mm");
            reader.wrong(node.at, found, "if the drop is as large as that, write large: true; else correct the size");
        }
        if let (Some(picture), Some(of_body)) = (picture, of_body) {
            let (small, great) = (picture.mm().min(of_body.mm()), picture.mm().max(of_body.mm()));
            if great > small * ALIKE {
                let found = format!("{name}: {picture} of the picture, but {of_body} of the body");
                reader.wrong(node.at, found, "measure it again: they may differ by a quarter at most");
            }
        }
    }
}

/// The least and the greatest weight of a drop, given or worked out, in grams. Common practice, no source.
const WEIGHTS_G: (f64, f64) = (0.01, 500.0);

/// The weight as written; without one, what follows from the drop's size and material.
fn weight(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    body: Option<&Body>,
    ring: Option<Ring>,
    materials: Option<&[Material]>,
) -> Option<Mass> {
    let (low, high) = WEIGHTS_G;
    if f.get("weight").is_some() {
        return reader.quantity(f, "weight", |weight: &Mass| weight.g(), (low, high, "g"));
    }
    let (body, ring, materials) = (body?, ring?, materials?);
    let found = weight_of(body, ring, materials);
    if found.is_none() {
        let of = materials.first().map_or("nothing", |first| first.word());
        reader.wrong(f.at(), format!("a drop of {of} without weight"), "weigh it: nobody knows how heavy that is");
    }
    let found = found?;
    if !(low..=high).contains(&found.g()) {
        let words = format!("a drop without weight, of {:.4} g by its size and material", found.g());
        reader.wrong(f.at(), words, format!("expected {low} g to {high} g: correct the size, or weigh it"));
        return None;
    }
    Some(found)
}

fn picture(reader: &mut Reader<'_>, node: &Node, pictures: &Pictures) -> Option<String> {
    let name = reader.text(node, "a picture's file name")?;
    match pictures.get(name) {
        Some(Ok(_)) => Some(name.to_owned()),
        Some(Err(reason)) => {
            reader.wrong(node.at, format!("pictures/{name} {reason}"), "expected a whole PNG or JPEG picture");
            None
        }
        None => {
            let hint = match nearest(name, pictures.keys().map(String::as_str)) {
                Some(like) => format!("did you mean {like:?}?"),
                None => "put the picture there or correct the name".into(),
            };
            reader.wrong(node.at, format!("there is no pictures/{name}"), hint);
            None
        }
    }
}
