//! `trays/*.ron`.

use super::{
    model::Tray,
    pictures::{Picture, Pictures},
    read_bases::price_of,
    read_facts::{FACTS, body},
    read_guesses::{ABOUT_FIGURES, Guesses, counted, known_facts, stock},
    read_sizes::{length, ring},
};
use crate::{
    craft::{
        Body, Colour, DropKind, Facts, Finish, Guess, Home, Length, Mass, Ring, Sort, USUAL_RING, USUAL_STOCK,
        heaviest_g, weight_of,
    },
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
    let f = reader.fields(node, "a tray", &["letter", "name", "inner_width", "rows"])?;
    let letter_node = reader.required(&f, "letter");
    let letter = letter_node.and_then(|node| {
        let text = reader.text(node, "a letter")?;
        match *text.as_bytes() {
            [letter] if letter.is_ascii_uppercase() => Some(char::from(letter)),
            _ => reader.unlike(node, "one letter from \"A\" to \"Z\""),
        }
    });
    let name = reader.name(&f, "name");
    let inner_width = match f.get("inner_width") {
        Some(_) => length(reader, &f, "inner_width", 40.0, 2000.0).map(Some),
        None => Some(None),
    };
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
    let tray = Tray { letter: letter?, name: name?, rows, inner_width: inner_width? };
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
    let names: Vec<&str> = FIELDS.iter().chain(&FACTS).chain(&ABOUT_FIGURES).copied().collect();
    let f = reader.fields(node, "a drop", &names)?;
    let mut guesses = Guesses::of(reader, &f, &names)?;
    // Written by hand without an id, it is known by its home.
    let id = match f.get("id") {
        Some(_) => reader.id(&f),
        None => Some((home.to_string().to_lowercase(), node.at)),
    };
    let sort = match f.get("sort") {
        Some(node) => reader.word(node, "a sort of drop", names_of!(Sort)),
        None => Some(guesses.at(Guess::Sort, Sort::Charm)),
    };
    let usual = sort.unwrap_or(Sort::Charm);
    let name = match f.get("name") {
        Some(_) => reader.name(&f, "name"),
        None => Some(guesses.at(Guess::Name, with_capital(usual.word()))),
    };
    let finish = match f.get("finish") {
        Some(node) => reader.word(node, "a finish", names_of!(Finish)).map(Some),
        None => Some(None),
    };
    let colours = match f.get("colours") {
        Some(node) => reader.list(node, "colours").and_then(|items| {
            let read: Vec<_> = items.iter().map(|item| reader.word(item, "a colour", names_of!(Colour))).collect();
            read.into_iter().collect()
        }),
        None => Some(guesses.at(Guess::Colours, vec![])),
    };
    let facts = known_facts(reader, &f, finish.flatten(), || usual.usual_facts(), &mut guesses);
    let ring = match f.get("ring") {
        Some(node) => ring(reader, node),
        None => Some(guesses.at(Guess::Ring, USUAL_RING)),
    };
    let price = price_of(reader, &f, currency);
    let (stock, counted) = (stock(reader, &f, usual_stock(usual), &mut guesses), counted(reader, &f));
    let picture = match f.get("picture") {
        Some(node) => picture(reader, node, pictures),
        None => Some(guesses.at(Guess::Picture, String::new())),
    };
    let shown = picture.as_ref().and_then(|name| pictures.get(name)?.as_ref().ok());
    let size = sized(reader, &f, usual, shown, &mut guesses);
    let of = size.as_ref().zip(ring).zip(facts.as_ref());
    let weight = of.and_then(|((size, ring), facts)| weight(reader, &f, size, ring, facts, &mut guesses));
    let (id, at) = id?;
    let Sized { body, width, height, .. } = size?;
    let kind = DropKind {
        id,
        name: name?,
        sort: sort?,
        finish: finish?,
        colours: colours?,
        facts: facts?,
        body,
        width,
        height,
        ring: ring?,
        weight: weight?,
        price: price?,
        stock: stock?,
        home,
        picture: picture?,
        counted: counted?,
        guessed: guesses.all(),
    };
    let worked_out = f.get("weight").is_none() && !kind.guessed.contains(&Guess::Weight);
    Some(ReadDrop { kind, at, worked_out })
}

/// One of a kind is there once.
const fn usual_stock(sort: Sort) -> u32 {
    match sort {
        Sort::Found => 1,
        _ => USUAL_STOCK,
    }
}

fn with_capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// A drop's shape and sizes, told or guessed.
struct Sized {
    body: Body,
    width: Length,
    height: Length,
    /// What is taken for its depth where nobody told its body.
    depth: Length,
}

/// Its body, width and height as written; what is missing follows from the others, from its picture, or from what is usual
/// of its sort.
fn sized(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    sort: Sort,
    shown: Option<&Picture>,
    guesses: &mut Guesses,
) -> Option<Sized> {
    let told_body = match f.get("body") {
        Some(node) => Some(body(reader, node)?),
        None => None,
    };
    let mut told = |name, high| match f.get(name) {
        Some(_) => length(reader, f, name, 1.0, high).map(Some),
        None => Some(None),
    };
    let (width, height) = (told("width", 200.0), told("height", 300.0));
    let (told_width, told_height) = (width?, height?);
    let [usual_width, usual_height, depth] = sort.usual_size();
    let of_body = told_body.as_ref().and_then(Body::width_and_height);
    let wide = shown.map_or(usual_width.mm() / usual_height.mm(), |shown| {
        (f64::from(shown.width_px) / f64::from(shown.height_px.max(1))).clamp(0.1, 10.0)
    });
    let width = told_width.or(of_body.map(|sizes| sizes.0)).unwrap_or_else(|| {
        let height = told_height.unwrap_or(usual_height).mm();
        guesses.at(Guess::Width, Length::from_mm((height * wide).clamp(2.0, 60.0)))
    });
    let height = told_height.or(of_body.map(|sizes| sizes.1)).unwrap_or_else(|| {
        let high = if told_width.is_some() { width.mm() / wide } else { usual_height.mm() };
        guesses.at(Guess::Height, Length::from_mm(high.clamp(2.0, 120.0)))
    });
    let is_told = told_body.is_some();
    let body = match told_body {
        Some(Body::Outline { thickness, .. }) => Body::Outline {
            thickness,
            shape: shown.and_then(Picture::outline).map(|outline| outline.at_size(width, height)),
        },
        Some(body) => body,
        None => guesses.at(Guess::Body, sort.usual_body(Length::from_mm(depth.mm().min(width.mm())))),
    };
    // What is only usual of a body is held against nothing that somebody measured.
    as_large_as_its_picture(reader, f, Some(&body).filter(|_| is_told), Some((width, height)));
    Some(Sized { body, width, height, depth })
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

/// The weight as written; without one, what follows from the drop's size and material, or the heaviest that it may have
/// where those are guesses.
fn weight(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    size: &Sized,
    ring: Ring,
    facts: &Facts,
    guesses: &mut Guesses,
) -> Option<Mass> {
    let (low, high) = WEIGHTS_G;
    if f.get("weight").is_some() {
        return reader.quantity(f, "weight", |weight: &Mass| weight.g(), (low, high, "g"));
    }
    let materials = &facts.materials;
    if guesses.has(Guess::Body) || guesses.has(Guess::Materials) {
        return Some(guesses.at(Guess::Weight, heaviest_g(size.width, size.height, size.depth, materials, ring)));
    }
    let found = weight_of(&size.body, ring, materials);
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
