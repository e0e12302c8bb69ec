//! The looks of an assortment, in `trays/*.ron`.

use super::{
    pictures::{self, Picture, Pictures},
    read_sizes::length,
};
use crate::{
    craft::{Length, Look, MOST_LOOKS},
    quoting::quoted,
    ron_tree::{Fields, Node, Reader, detail, did_you_mean, nearest, what},
};

/// The sizes that a look may have, in millimetres, as those of a drop.
const LOOKS_MM: [(&str, f64); 2] = [("width", 200.0), ("height", 300.0)];

/// What an entry says of its assortment: nothing where its pieces are all alike. `usual` is the size of a look of which the
/// file tells none; `by_outline` whether the outlines can decide whether a piece is small.
pub(super) fn assortment(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    pictures: &Pictures,
    usual: Length,
    by_outline: bool,
) -> Option<Option<Vec<Look>>> {
    let Some(node) = f.get("assortment") else { return Some(None) };
    let items = reader.list(node, what("list-looks", "looks of an assortment"))?;
    if items.len() > MOST_LOOKS {
        let found = detail!("wrong-looks", "{count} looks", count = items.len());
        reader.wrong(node.at, found, detail!("right-looks", "expected {most} at most", most = MOST_LOOKS));
        return None;
    }
    let read: Vec<_> = items.iter().map(|item| look(reader, item, pictures, usual, by_outline)).collect();
    Some(Some(read.into_iter().collect::<Option<_>>()?))
}

fn look(reader: &mut Reader<'_>, node: &Node, pictures: &Pictures, usual: Length, by_outline: bool) -> Option<Look> {
    let f = reader.fields(node, what("a-look", "a look of an assortment"), &["picture", "width", "height"])?;
    let name = reader.required(&f, "picture").and_then(|node| picture(reader, node, pictures));
    let [width, height] = LOOKS_MM.map(|(name, high)| match f.get(name) {
        Some(_) => length(reader, &f, name, 1.0, high).map(Some),
        None => Some(None),
    });
    let (name, width, height) = (name?, width?, height?);
    let shown = pictures.get(&name).and_then(|picture| picture.as_ref().ok())?;
    // Of a size that nobody told, no outline says anything.
    let told = width.zip(height).filter(|_| by_outline);
    let shape = told.and_then(|(width, height)| Some(shown.outline()?.at_size(width, height)));
    let wide = wide(shown);
    let height = height.or(width.map(|width| Length::from_mm(width.mm() / wide))).unwrap_or(usual);
    let width = width.unwrap_or(Length::from_mm(height.mm() * wide));
    Some(Look { picture: name, width, height, shape })
}

/// How many times as wide as high a picture is.
pub(super) fn wide(shown: &Picture) -> f64 {
    (f64::from(shown.width_px) / f64::from(shown.height_px.max(1))).clamp(0.1, 10.0)
}

/// The width and the height that hold each of the looks; none where there is no look.
pub(super) fn largest(looks: &[Look]) -> Option<(Length, Length)> {
    let most = |size: fn(&Look) -> Length| looks.iter().map(size).max_by(|a, b| a.mm().total_cmp(&b.mm()));
    Some((most(|look| look.width)?, most(|look| look.height)?))
}

/// The name of a picture that lies in the folder.
pub(super) fn picture(reader: &mut Reader<'_>, node: &Node, pictures: &Pictures) -> Option<String> {
    let name = reader.text(node, what("a-pictures-file-name", "a picture's file name"))?;
    match pictures.get(name) {
        Some(Ok(_)) => Some(name.to_owned()),
        Some(Err(reason)) => {
            let expected = detail!("right-picture", "expected a whole PNG or JPEG picture");
            reader.wrong(node.at, pictures::found(name, reason), expected);
            None
        }
        None => {
            let hint = match nearest(name, pictures.keys().map(String::as_str)) {
                Some(like) => did_you_mean(quoted(&like)),
                None => detail!("right-picture-there", "put the picture there or correct the name"),
            };
            reader.wrong(node.at, detail!("wrong-no-picture", "there is no pictures/{name}", name = name), hint);
            None
        }
    }
}
