//! `trays/*.ron`.

use super::{
    fields::{Fields, Reader, names_of},
    model::{Tray, nearest},
    pictures::{Picture, Pictures},
    read_bases::{length, materials, metal_test, price_of, ring},
    tree::{Node, Value},
};
use crate::{
    craft::{
        Allergen, Body, Colour, DropKind, Finish, Home, Length, Magnet, Mass, Material, Ring, Sort, UsualAllergen,
        weight_of,
    },
    money::Currency,
};

const FIELDS: &[&str] = &[
    "id",
    "name",
    "sort",
    "finish",
    "colours",
    "materials",
    "body",
    "width",
    "height",
    "ring",
    "weight",
    "price",
    "stock",
    "picture",
    "magnet",
    "coin_cell",
    "sharp",
    "allergens",
    "tested",
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
                    let (id, g, of) = (&kind.id, kind.weight.g(), kind.materials[0].word());
                    let words = format!("{id:?} ({home}) has no weight; {g:.1} g follow from its size in {of}");
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
    let f = reader.fields(node, "a drop", FIELDS)?;
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
    let materials = materials(reader, &f);
    let body = reader.required(&f, "body").and_then(|node| body(reader, node));
    let width = length(reader, &f, "width", 1.0, 200.0);
    let height = length(reader, &f, "height", 1.0, 300.0);
    let ring = reader.required(&f, "ring").and_then(|node| ring(reader, node));
    let price = price_of(reader, &f, currency);
    let stock = reader.required(&f, "stock").and_then(|node| reader.whole(node, 0, 100_000));
    let picture = reader.required(&f, "picture").and_then(|node| picture(reader, node, pictures));
    let magnet = match f.get("magnet") {
        Some(node) => magnet(reader, node).map(Some),
        None => Some(None),
    };
    let shown = picture.as_ref().and_then(|name| pictures.get(name)?.as_ref().ok());
    let body = match (body, width, height) {
        (Some(Body::Outline { thickness, .. }), Some(width), Some(height)) => Some(Body::Outline {
            thickness,
            shape: shown.and_then(Picture::outline).map(|outline| outline.at_size(width, height)),
        }),
        (body, ..) => body,
    };
    let weight = weight(reader, &f, body.as_ref(), ring, materials.as_deref());
    let tested = metal_test(reader, &f);
    let coin_cell = flag(reader, &f, "coin_cell");
    let sharp = flag(reader, &f, "sharp");
    let allergens = match f.get("allergens") {
        Some(node) => reader.list(node, "allergens").and_then(|items| {
            let read: Vec<_> = items.iter().map(|item| allergen(reader, item)).collect();
            read.into_iter().collect()
        }),
        None => Some(vec![]),
    };
    let (id, at) = id?;
    let kind = DropKind {
        id,
        name: name?,
        sort: sort?,
        finish: finish?,
        colours: colours?,
        materials: materials?,
        body: body?,
        width: width?,
        height: height?,
        ring: ring?,
        weight: weight?,
        price: price?,
        stock: stock?,
        home,
        picture: picture?,
        magnet: magnet?,
        coin_cell: coin_cell?,
        sharp: sharp?,
        allergens: allergens?,
        tested: tested?,
    };
    Some(ReadDrop { kind, at, worked_out: f.get("weight").is_none() })
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

/// An allergen: a usual one by its name, or the maker's own words in quotes.
fn allergen(reader: &mut Reader<'_>, node: &Node) -> Option<Allergen> {
    if let Value::Text(text) = &node.value {
        let short = text.trim().chars().count() <= 60;
        return match Allergen::from_words(text).filter(|_| short) {
            Some(allergen) => Some(allergen),
            None => reader.unlike(node, "an allergen in 1 to 60 letters, or no list where the food has none"),
        };
    }
    let what = "an allergen (other ones go in quotes)";
    reader.word(node, what, names_of!(UsualAllergen)).map(Allergen::Usual)
}

fn flag(reader: &mut Reader<'_>, f: &Fields<'_>, name: &str) -> Option<bool> {
    match f.get(name) {
        Some(node) => reader.flag(node),
        None => Some(false),
    }
}

fn body(reader: &mut Reader<'_>, node: &Node) -> Option<Body> {
    if let Value::Struct { name: Some(name), .. } = &node.value
        && let Some((_, sizes)) = Body::FORMS.iter().find(|(form, _)| form == name)
    {
        let f = reader.fields(node, "a body", sizes)?;
        let read: Vec<Option<Length>> = sizes.iter().map(|size| length(reader, &f, size, 0.1, 300.0)).collect();
        let read: Vec<Length> = read.into_iter().collect::<Option<_>>()?;
        return Body::from_form(name, &read);
    }
    let forms: Vec<String> = Body::FORMS.iter().map(|(form, sizes)| format!("{form}({})", sizes.join(", "))).collect();
    reader.unlike(node, &format!("a body: {}", forms.join(", ")))
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

fn magnet(reader: &mut Reader<'_>, node: &Node) -> Option<Magnet> {
    let f = reader.fields(node, "a magnet", &["surface_kilogauss", "pole"])?;
    let surface = reader.required(&f, "surface_kilogauss").and_then(|node| reader.number(node, 0.01, 20.0));
    let pole = length(reader, &f, "pole", 0.5, 60.0);
    Some(Magnet { surface_kilogauss: surface?, pole_diameter: pole? })
}
