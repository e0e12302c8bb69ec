//! Lengths and rings, as they stand in the files of bases and drops.

use crate::{
    craft::{Length, Ring},
    ron_tree::{Fields, Node, Reader},
};

/// A required length between two others, in millimetres.
pub(super) fn length(reader: &mut Reader<'_>, f: &Fields<'_>, name: &str, low_mm: f64, high_mm: f64) -> Option<Length> {
    reader.quantity(f, name, |length: &Length| length.mm(), (low_mm, high_mm, "mm"))
}

/// A ring by its outside diameter and its wire.
pub(super) fn ring(reader: &mut Reader<'_>, node: &Node) -> Option<Ring> {
    let f = reader.fields(node, "a ring", &["outside", "wire"])?;
    let outside = length(reader, &f, "outside", 1.0, 60.0);
    let wire = length(reader, &f, "wire", 0.2, 6.0);
    match Ring::new(outside?, wire?) {
        Ok(ring) => Some(ring),
        Err(error) => {
            reader.wrong(node.at, error.to_string(), "give outside and wire as measured");
            None
        }
    }
}
