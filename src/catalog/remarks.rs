//! What the seller should know of a folder in which nothing is wrong.

use super::material_words::of_material;
use crate::{
    caution::Region,
    craft::{Base, DropKind, fit_on},
    quoting::quoted,
    ron_tree::{Detail, detail},
};

/// A region's rules in the folder count, and not those of the program.
pub(super) fn of_own_rules(region: Region, file: &str) -> Detail {
    detail!(
        "remark-own-rules",
        "{file} stands in place of the program's own rules of {region}",
        file = file,
        region = region.code()
    )
}

/// Says which drops go onto no base, with the sizes.
pub(super) fn of_rings(bases: &[Base], drops: &[DropKind]) -> Vec<Detail> {
    let easiest = |kind: &DropKind| {
        bases.iter().map(|base| fit_on(base, kind.ring)).max_by(|a, b| a.clearance_mm.total_cmp(&b.clearance_mm))
    };
    let alone = |kind: &DropKind| {
        easiest(kind).filter(|fit| !fit.passes).map(|fit| {
            detail!(
                "remark-fits-nowhere",
                "the ring of {id} ({home}) goes onto no base: it opens {opening} mm, and more than {needs} mm are needed at \
                 the easiest end",
                id = quoted(&kind.id),
                home = kind.home.to_string(),
                opening = format!("{:.2}", fit.opening_mm),
                needs = format!("{:.2}", fit.needs_mm)
            )
        })
    };
    drops.iter().filter_map(alone).collect()
}

/// Its weight follows from its size.
pub(super) fn of_weight(kind: &DropKind) -> Detail {
    let of = kind.facts.materials[0];
    let (id, home, g) = (quoted(&kind.id), kind.home.to_string(), format!("{:.1}", kind.weight.g()));
    if of.density().is_some_and(|density| density.from_memory) {
        detail!(
            "remark-weight-from-memory",
            "{id} ({home}) has no weight; {g} g follow from its size in {of} (its density from memory)",
            id = id,
            home = home,
            g = g,
            of = of_material(of)
        )
    } else {
        detail!(
            "remark-weight",
            "{id} ({home}) has no weight; {g} g follow from its size in {of}",
            id = id,
            home = home,
            g = g,
            of = of_material(of)
        )
    }
}

/// Where it ends is not to be seen in its picture.
pub(super) fn of_outline(kind: &DropKind) -> Detail {
    detail!(
        "remark-not-cut-out",
        "{id} ({home}) goes by the outline of {file}, in which nothing is transparent: where it ends is not known, so it may \
         be a small part; cut it out of its picture, or write its body otherwise",
        id = quoted(&kind.id),
        home = kind.home.to_string(),
        file = quoted(&kind.picture)
    )
}
