//! Bases and drops in one list.

use rust_decimal::Decimal;

use crate::{
    catalog::Catalog,
    craft::{Home, Sort},
};

/// A base or a drop, as far as it matters here.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part<'a> {
    pub(super) id: &'a str,
    pub(super) name: &'a str,
    pub(super) home: Option<Home>,
    pub(super) sort: Option<Sort>,
    pub(super) price: Decimal,
    pub(super) stock: u32,
}

/// Bases and drops in the catalogue's order.
pub(super) fn parts(catalog: &Catalog) -> impl Iterator<Item = Part<'_>> {
    let bases = catalog.bases.iter().map(|base| Part {
        id: &base.id,
        name: &base.name,
        home: None,
        sort: None,
        price: base.price,
        stock: base.stock,
    });
    bases.chain(catalog.drops.iter().map(|kind| Part {
        id: &kind.id,
        name: &kind.name,
        home: Some(kind.home),
        sort: Some(kind.sort),
        price: kind.price,
        stock: kind.stock,
    }))
}
