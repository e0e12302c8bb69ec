//! A piece as a file: `(base: "…", length: "24in", wearer: From6To12, drops: ["id", "id"])`.

use super::{
    fields::Reader,
    mistake::{Mistake, Mistakes},
};
use crate::craft::{Length, Piece, Wearer};

/// Reads a piece from `source`; `file` names it in messages. A length that is left out is the base's usual one.
pub fn read_piece(file: &str, source: &str) -> Result<Piece, Mistakes> {
    let (mut reader, node) = Reader::open(file, source);
    let piece = node.and_then(|node| {
        let f = reader.fields(&node, "a piece", &["base", "length", "wearer", "drops"])?;
        let base = reader.required(&f, "base").and_then(|node| reader.text(node, "the base's id")).map(str::to_owned);
        let length = match f.get("length") {
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
        let drops = reader.required(&f, "drops").and_then(|node| {
            let items = reader.list(node, "the drops' ids")?;
            let read: Vec<_> = items.iter().map(|item| reader.text(item, "a drop's id").map(str::to_owned)).collect();
            read.into_iter().collect()
        });
        Some(Piece { base: base?, length: length?, wearer: wearer?, drops: drops? })
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
