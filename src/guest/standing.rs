//! How the drops of the trays stand to the piece in hand.

use rust_decimal::Decimal;

use super::session::Filters;
use crate::{
    catalog::Catalog,
    craft::{DropKind, Home, Piece, fit_on},
};

/// How a compartment stands to the piece in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// Touch it and it hangs.
    Open,
    /// Not what the filters ask for.
    Aside,
    /// It does not suit the wearer the filters ask for.
    NotFor,
    /// The piece would cost more than the guest has.
    TooDear,
    /// Its ring does not go onto the base.
    NoFit,
    /// None left.
    SoldOut,
}

/// How `kind` stands to `piece`, of which `available` tells how many there are, those on the piece among them.
pub fn standing(
    catalog: &Catalog,
    available: impl Fn(&str) -> u32,
    piece: Option<&Piece>,
    filters: &Filters,
    kind: &DropKind,
) -> Standing {
    let hung = piece.map_or(0, |piece| piece.drops.iter().filter(|id| **id == kind.id).count());
    if (available(&kind.id) as usize) <= hung {
        return Standing::SoldOut;
    }
    let base = piece.and_then(|piece| catalog.base(&piece.base));
    if base.is_some_and(|base| !fit_on(base, kind.ring).passes) {
        return Standing::NoFit;
    }
    if let (Some(budget), Some(piece)) = (filters.budget, piece)
        && with_one_more(catalog, piece, &kind.id).is_none_or(|total| total > budget)
    {
        return Standing::TooDear;
    }
    if filters.suits.is_some_and(|wearer| !catalog.suits(kind, wearer)) {
        return Standing::NotFor;
    }
    let wanted = filters.sort.is_none_or(|sort| kind.sort == sort)
        && filters.finish.is_none_or(|finish| kind.finish == Some(finish))
        && filters.colour.is_none_or(|colour| kind.colours.contains(&colour))
        && filters.up_to.is_none_or(|most| kind.price <= most);
    if wanted { Standing::Open } else { Standing::Aside }
}

fn with_one_more(catalog: &Catalog, piece: &Piece, kind: &str) -> Option<Decimal> {
    let mut more = piece.clone();
    more.drops.push(kind.to_owned());
    catalog.quote(&more).ok().map(|quote| quote.total)
}

/// The drops of `piece` with their homes, in walking order, each home once with its count.
pub fn walking_order<'a>(catalog: &'a Catalog, piece: &Piece) -> Vec<(Home, &'a DropKind, usize)> {
    let mut stops: Vec<(Home, &DropKind, usize)> = Vec::new();
    for kind in piece.drops.iter().filter_map(|id| catalog.drop_kind(id)) {
        match stops.iter_mut().find(|(home, ..)| *home == kind.home) {
            Some((.., count)) => *count += 1,
            None => stops.push((kind.home, kind, 1)),
        }
    }
    stops.sort_by_key(|(home, ..)| *home);
    stops
}
