//! A piece as a file: `(base: "…", length: "24in", wearer: From6To12, drops: ["id", "id"])`.

use super::read_sizes::length;
use crate::{
    craft::{Length, Piece, Wearer},
    ron_tree::{Mistake, Mistakes, Reader},
};

/// Necks of people from the smallest child to the stoutest grown-up, in millimetres, wide enough for everybody.
const NECKS_MM: (f64, f64) = (150.0, 700.0);

/// Reads a piece from `source`; `file` names it in messages. A length that is left out is the base's usual one.
///
/// # Errors
/// Every mistake in it, in the order of the places.
pub fn read_piece(file: &str, source: &str) -> Result<Piece, Mistakes> {
    let (mut reader, node) = Reader::open(file, source);
    let piece = node.and_then(|node| {
        let f = reader.fields(&node, "a piece", &["base", "length", "wearer", "neck", "drops"])?;
        let base = reader.required(&f, "base").and_then(|node| reader.text(node, "the base's id")).map(str::to_owned);
        let whole = match f.get("length") {
            Some(node) => reader.parsed::<Length>(node, "a length").map(Some),
            None => Some(None),
        };
        let wearer = match f.get("wearer") {
            Some(node) => reader.word(
                node,
                "a wearer",
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
        let neck = match f.get("neck") {
            Some(_) => length(&mut reader, &f, "neck", NECKS_MM.0, NECKS_MM.1).map(Some),
            None => Some(None),
        };
        let drops = reader.required(&f, "drops").and_then(|node| {
            let items = reader.list(node, "the drops' ids")?;
            let read: Vec<_> = items.iter().map(|item| reader.text(item, "a drop's id").map(str::to_owned)).collect();
            read.into_iter().collect()
        });
        Some(Piece { base: base?, length: whole?, wearer: wearer?, neck: neck?, drops: drops? })
    });
    match piece {
        Some(piece) if reader.mistakes.is_empty() => Ok(piece),
        _ => {
            if reader.mistakes.is_empty() {
                reader.mistakes.push(Mistake::of_file(file, "no piece", "write (base: \"…\", drops: [\"…\"])"));
            }
            Err(Mistakes(reader.mistakes))
        }
    }
}
