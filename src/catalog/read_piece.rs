//! A piece as a file: `(base: "…", length: "24in", wearer: From6To12, drops: ["id", "id"])`.

use std::ops::RangeInclusive;

use super::read_sizes::length;
use crate::{
    craft::{Length, MOST_DROPS, NECKS_MM, PIECE_LENGTHS_MM, Piece, Wearer},
    ron_tree::{Fields, Mistake, Mistakes, Reader, detail, what},
};

/// A length between two others, in millimetres, that may be left out.
fn within(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    name: &str,
    range_mm: RangeInclusive<f64>,
) -> Option<Option<Length>> {
    match f.get(name) {
        Some(_) => length(reader, f, name, *range_mm.start(), *range_mm.end()).map(Some),
        None => Some(None),
    }
}

/// Reads a piece from `source`; `file` names it in messages. A length that is left out is the base's usual one.
///
/// # Errors
/// Every mistake in it, in the order of the places.
pub fn read_piece(file: &str, source: &str) -> Result<Piece, Mistakes> {
    let (mut reader, node) = Reader::open(file, source);
    let piece = node.and_then(|node| {
        let f = reader.fields(&node, what("a-piece", "a piece"), &["base", "length", "wearer", "neck", "drops"])?;
        let base = reader
            .required(&f, "base")
            .and_then(|node| reader.text(node, what("the-bases-id", "the base's id")))
            .map(str::to_owned);
        let whole = within(&mut reader, &f, "length", PIECE_LENGTHS_MM);
        let wearer = match f.get("wearer") {
            Some(node) => reader.word(
                node,
                what("a-wearer", "a wearer"),
                &[
                    ("Under3", Wearer::Under3),
                    ("From3To5", Wearer::From3To5),
                    ("From6To12", Wearer::From6To12),
                    ("From13", Wearer::From13),
                    ("Unknown", Wearer::Unknown),
                ],
            ),
            None => Some(Wearer::Unknown),
        };
        let neck = within(&mut reader, &f, "neck", NECKS_MM);
        let drops = reader.required(&f, "drops").and_then(|node| {
            let items = reader.list(node, what("list-the-drops-ids", "the drops' ids"))?;
            if items.len() > MOST_DROPS {
                reader.wrong(
                    node.at,
                    detail!("wrong-drops", "{count} drops", count = items.len()),
                    detail!("right-drops", "a piece has {most} at most", most = MOST_DROPS),
                );
                return None;
            }
            let read: Vec<_> = items
                .iter()
                .map(|item| reader.text(item, what("a-drops-id", "a drop's id")).map(str::to_owned))
                .collect();
            read.into_iter().collect()
        });
        Some(Piece { base: base?, length: whole?, wearer: wearer?, neck: neck?, drops: drops?, looks: vec![] })
    });
    match piece {
        Some(piece) if reader.mistakes.is_empty() => Ok(piece),
        _ => {
            if reader.mistakes.is_empty() {
                reader.mistakes.push(Mistake::of_file(
                    file,
                    detail!("wrong-no-piece", "no piece"),
                    detail!("right-piece", "write {example}", example = "(base: \"…\", drops: [\"…\"])"),
                ));
            }
            Err(Mistakes(reader.mistakes))
        }
    }
}
