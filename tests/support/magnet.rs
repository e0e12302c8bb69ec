//! A drop that no table of ours sells: a strong magnet, loose enough to be swallowed.

use chatelaine::{
    catalog::Catalog,
    craft::{DropKind, Facts, Length, Magnet, Material},
};

/// Its id.
pub const MAGNET: &str = "clasp-magnet";

/// `catalog` with the magnet in it, five of them, in a compartment that is empty on the test table.
pub fn with_magnet(catalog: &Catalog) -> Catalog {
    let like = catalog.drop_kind("key-heart").expect("a drop of the test table");
    let magnet = Some(Magnet::measured(3.0, Length::from_mm(10.0)));
    let kind = DropKind {
        id: MAGNET.into(),
        name: "Magnet disc".into(),
        facts: Facts { magnet, ..Facts::of([Material::StainlessSteel, Material::Resin]) },
        stock: 5,
        home: "D13".parse().expect("a home"),
        ..like.clone()
    };
    let mut catalog = catalog.clone();
    for tray in catalog.trays.iter_mut().filter(|tray| tray.letter == 'D') {
        if let Some(cell) = tray.rows.iter_mut().flatten().nth(12) {
            *cell = Some(MAGNET.into());
        }
    }
    catalog.drops.push(kind);
    catalog.drops.sort_by_key(|kind| kind.home);
    catalog
}
