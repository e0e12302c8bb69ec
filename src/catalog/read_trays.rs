//! `trays/*.ron`.

use super::{
    material_words::of_material,
    model::Tray,
    pictures::{Picture, Pictures},
    read_assortment::{assortment, largest, picture, wide},
    read_bases::price_of,
    read_facts::{FACTS, body},
    read_guesses::{ABOUT_FIGURES, Guesses, counted, known_facts, stock},
    read_sizes::{length, quantity, ring},
    remarks,
};
use crate::{
    craft::{
        Body, Colour, DropKind, Facts, Finish, Guess, Home, Length, Look, Mass, Ring, Sort, USUAL_RING, USUAL_STOCK,
        UnknownSort, heaviest_g, weight_of,
    },
    money::Currency,
    ron_tree::{Detail, Fields, Node, Reader, Value, detail, names_of, what},
};

const FIELDS: &[&str] = &[
    "id",
    "name",
    "sort",
    "finish",
    "colours",
    "body",
    "width",
    "height",
    "ring",
    "weight",
    "price",
    "stock",
    "picture",
    "large",
    "assortment",
];

/// A tray with its drops, as far as they could be read, and the places of its letter and the drops' ids.
pub(super) struct ReadTray {
    pub tray: Tray,
    pub letter_at: usize,
    pub drops: Vec<(DropKind, usize)>,
    /// What the seller should know though nothing is wrong.
    pub remarks: Vec<Detail>,
}

pub(super) fn read(
    reader: &mut Reader<'_>,
    node: &Node,
    currency: Option<Currency>,
    pictures: &Pictures,
) -> Option<ReadTray> {
    let f = reader.fields(node, what("a-tray", "a tray"), &["letter", "name", "inner_width", "rows"])?;
    let letter_node = reader.required(&f, "letter");
    let letter = letter_node.and_then(|node| {
        let text = reader.text(node, what("a-letter", "a letter"))?;
        match *text.as_bytes() {
            [letter] if letter.is_ascii_uppercase() => Some(char::from(letter)),
            _ => reader.unlike(node, detail!("a-letter-a-to-z", "one letter from \"A\" to \"Z\"")),
        }
    });
    let name = reader.name(&f, "name");
    let inner_width = match f.get("inner_width") {
        Some(_) => length(reader, &f, "inner_width", 40.0, 2000.0).map(Some),
        None => Some(None),
    };
    let rows_node = reader.required(&f, "rows")?;
    let row_nodes = reader.list(rows_node, what("list-rows", "rows"))?;
    let mut drops = Vec::new();
    let mut remarks = Vec::new();
    let mut rows = Vec::new();
    let mut compartment = 0u16;
    for row_node in row_nodes {
        let Some(cells) = reader.list(row_node, what("list-compartments", "compartments")) else { continue };
        let mut row = Vec::new();
        for cell in cells {
            if compartment == 999 {
                return reader.unlike(cell, detail!("right-compartments", "at most 999 compartments in a tray"));
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
                    remarks.push(remarks::of_weight(&kind));
                }
                if matches!(&kind.body, Body::Outline { shape: Some(shape), .. } if !shape.cut_out) {
                    remarks.push(remarks::of_outline(&kind));
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
    let f = reader.fields(node, what("a-drop", "a drop"), &names)?;
    let mut guesses = Guesses::of(reader, &f, &names)?;
    // Written by hand without an id, it is known by its home.
    let id = match f.get("id") {
        Some(_) => reader.id(&f),
        None => Some((home.to_string().to_lowercase(), node.at)),
    };
    let sort = match f.get("sort") {
        Some(node) => reader.word(node, what("a-sort-of-drop", "a sort of drop"), names_of!(Sort)),
        None => Some(guesses.at(Guess::Sort, Sort::Charm)),
    };
    let usual = sort.unwrap_or(Sort::Charm);
    let name = match f.get("name") {
        Some(_) => reader.name(&f, "name"),
        None => Some(guesses.at(Guess::Name, with_capital(usual.word()))),
    };
    let finish = match f.get("finish") {
        Some(node) => reader.word(node, what("a-finish", "a finish"), names_of!(Finish)).map(Some),
        None => Some(None),
    };
    let colours = match f.get("colours") {
        Some(node) => reader.list(node, what("list-colours", "colours")).and_then(|items| {
            let read: Vec<_> =
                items.iter().map(|item| reader.word(item, what("a-colour", "a colour"), names_of!(Colour))).collect();
            read.into_iter().collect()
        }),
        None => Some(guesses.at(Guess::Colours, vec![])),
    };
    // A guess at the sort, as from a photo, may be wrong: what is dangerous of any sort counts until somebody tells it.
    // Unlike pieces may be of any sort.
    let is_sure = !guesses.has(Guess::Sort) && f.get("assortment").is_none();
    let usual_facts = || if is_sure { usual.usual_facts() } else { UnknownSort::facts() };
    let facts = known_facts(reader, &f, finish.flatten(), usual_facts, &mut guesses);
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
    let mix = assortment(reader, &f, pictures, usual.usual_size()[1], f.get("body").is_some());
    let size = mix.as_ref().and_then(|mix| sized(reader, &f, usual, (shown, mix.as_deref()), &mut guesses));
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
        assortment: mix?,
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
/// of its sort. Of an assortment, its looks say how large the largest of its pieces is, and the body is that of the smallest.
fn sized(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    sort: Sort,
    (shown, mix): (Option<&Picture>, Option<&[Look]>),
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
    let is_sure = !guesses.has(Guess::Sort) && mix.is_none();
    let depth = if is_sure { depth } else { UnknownSort::depth() };
    let of_body = match mix {
        Some(looks) => largest(looks),
        None => told_body.as_ref().and_then(Body::width_and_height),
    };
    let wide = shown.map_or(usual_width.mm() / usual_height.mm(), wide);
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
            // The picture of an assortment is no piece's outline.
            shape: shown
                .filter(|_| mix.is_none())
                .and_then(Picture::outline)
                .map(|outline| outline.at_size(width, height)),
        },
        Some(body) => body,
        None => {
            let thickness = Length::from_mm(depth.mm().min(width.mm()));
            let usual = if is_sure { sort.usual_body(thickness) } else { UnknownSort::body(thickness) };
            guesses.at(Guess::Body, usual)
        }
    };
    // What is only usual of a body is held against nothing that somebody measured.
    let told_body = Some(&body).filter(|_| is_told && mix.is_none());
    as_large_as_its_picture(reader, f, told_body, Some((width, height)));
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
            let mm = format!("{largest:.0}");
            reader.wrong(
                node.at,
                detail!("wrong-large", "a {name} of {mm} mm", name = name, mm = mm),
                detail!(
                    "right-large",
                    "if the drop is as large as that, write {field}; else correct the size",
                    field = "large: true"
                ),
            );
        }
        if let (Some(picture), Some(of_body)) = (picture, of_body) {
            let (small, great) = (picture.mm().min(of_body.mm()), picture.mm().max(of_body.mm()));
            if great > small * ALIKE {
                let found = detail!(
                    "wrong-body-size",
                    "{name}: {picture} of the picture, but {body} of the body",
                    name = name,
                    picture = picture.to_string(),
                    body = of_body.to_string()
                );
                let expected = detail!("right-body-size", "measure it again: they may differ by a quarter at most");
                reader.wrong(node.at, found, expected);
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
        return quantity(reader, f, "weight", |weight: &Mass| weight.g(), (low, high, "g"));
    }
    let materials = &facts.materials;
    // Of unlike pieces nobody knows the heaviest by the body of the smallest.
    if guesses.has(Guess::Body) || guesses.has(Guess::Materials) || f.get("assortment").is_some() {
        return Some(guesses.at(Guess::Weight, heaviest_g(size.width, size.height, size.depth, materials, ring)));
    }
    let found = weight_of(&size.body, ring, materials);
    if found.is_none() {
        let of = materials.first().map_or(what("of-nothing", "nothing"), |first| of_material(*first));
        reader.wrong(
            f.at(),
            detail!("wrong-no-weight", "a drop of {of} without weight", of = of),
            detail!("right-weigh", "weigh it: nobody knows how heavy that is"),
        );
    }
    let found = found?;
    if !(low..=high).contains(&found.g()) {
        let g = format!("{:.4}", found.g());
        let (low, high) = (low.to_string(), high.to_string());
        reader.wrong(
            f.at(),
            detail!("wrong-weight", "a drop without weight, of {g} g by its size and material", g = g),
            detail!(
                "right-size",
                "expected {low} g to {high} g: correct the size, or weigh it",
                low = low,
                high = high
            ),
        );
        return None;
    }
    Some(found)
}
