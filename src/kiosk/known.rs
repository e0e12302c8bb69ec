//! What the tablet knows of the desk, and what follows from it for the piece on the screen.

use std::{
    collections::{HashMap, HashSet},
    sync::Arc,
};

use bevy::prelude::Resource;
use rust_decimal::Decimal;

use super::session::Filters;
use crate::{
    catalog::{Catalog, PieceError},
    caution::Verdict,
    craft::{DropKind, Home, Piece, fit_on},
    hang::{HangError, PiecePlaces, place_piece, worn_neck_mm},
    link::Snapshot,
    money::Quote,
};

/// News of the desk.
#[derive(Resource, Default)]
pub struct Known {
    /// The last good catalogue and counts.
    pub snapshot: Option<Arc<Snapshot>>,
    /// Whether the desk answers; `None` before the first try.
    pub in_reach: Option<bool>,
    /// The desk does not know this tablet any more: it can give no numbers.
    pub let_go: bool,
    /// Whether this tablet's disk is nearly full.
    pub disk_nearly_full: bool,
    /// Whether this tablet belongs to a desk.
    pub paired: bool,
}

/// Something about the tablet itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notice {
    /// The desk does not answer.
    DeskAway,
    /// The desk does not know this tablet any more.
    LetGo,
    /// There is hardly room on its disk.
    DiskNearlyFull,
}

impl Known {
    /// What whoever stands before the tablet has to be told of it.
    pub fn notices(&self) -> impl Iterator<Item = Notice> {
        // Of the two the graver one: with a desk that has let the tablet go nobody can go on.
        let away = (self.in_reach == Some(false)).then_some(Notice::DeskAway);
        let line = if self.let_go { Some(Notice::LetGo) } else { away };
        let full = self.disk_nearly_full.then_some(Notice::DiskNearlyFull);
        line.into_iter().chain(full)
    }

    /// The catalogue.
    pub fn catalog(&self) -> Option<&Catalog> {
        self.snapshot.as_ref().map(|snapshot| snapshot.catalog.as_ref())
    }
}

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

/// What a guest can change so that the piece suits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct WaysOut {
    /// A drop speaks against the piece, and others that suit can be had.
    pub drops: bool,
    /// The base speaks against it, and another one suits, or the same one longer.
    pub base: bool,
}

/// Everything worked out from design, catalogue and counts.
#[derive(Resource, Default)]
pub struct Derived {
    /// The piece on the screen: the guest's, or the sample on Welcome.
    pub piece: Option<Piece>,
    /// Its sum.
    pub quote: Option<Quote>,
    /// Its cautions.
    pub verdict: Verdict,
    /// Where everything of it hangs.
    pub places: Option<PiecePlaces>,
    /// Why it does not hang, or can't be made.
    pub trouble: Option<Trouble>,
    /// What leads out of a piece that does not suit its wearer; nothing while it suits.
    pub ways_out: WaysOut,
    /// The bases that speak against themselves for this wearer, by id.
    pub unfit_bases: HashSet<String>,
    /// How every drop of the catalogue stands to it, by id.
    pub standing: HashMap<String, Standing>,
}

/// Why a piece is no piece.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Trouble {
    /// The catalogue does not make it.
    #[error(transparent)]
    Piece(#[from] PieceError),
    /// It does not hang.
    #[error(transparent)]
    Hang(#[from] HangError),
}

/// Where everything of `piece` hangs.
///
/// # Errors
/// The catalogue does not make it, or there is no room on the base.
pub fn places_of(catalog: &Catalog, piece: &Piece) -> Result<PiecePlaces, Trouble> {
    let (base, kinds) = catalog.parts(piece)?;
    Ok(place_piece(base, piece.length, &kinds, worn_neck_mm(base, piece), catalog.table.rho)?)
}

impl Derived {
    /// Works everything out anew. Where the piece does not hang, the places stay as they were.
    pub fn renew(&mut self, snapshot: &Snapshot, piece: Option<Piece>, filters: &Filters) {
        let catalog = &snapshot.catalog;
        self.quote = piece.as_ref().and_then(|piece| catalog.quote(piece).ok());
        self.verdict = piece.as_ref().and_then(|piece| catalog.cautions(piece).ok()).unwrap_or_default();
        self.unfit_bases = piece.as_ref().map(|piece| unfit_bases(catalog, piece)).unwrap_or_default();
        self.ways_out = match &piece {
            Some(piece) if !self.verdict.suitable => self.ways_out_of(snapshot, piece),
            _ => WaysOut::default(),
        };
        self.trouble = None;
        match piece.as_ref().map(|piece| places_of(catalog, piece)) {
            Some(Ok(places)) => self.places = Some(places),
            Some(Err(trouble)) => self.trouble = Some(trouble),
            None => self.places = None,
        }
        self.standing = catalog
            .drops
            .iter()
            .map(|kind| (kind.id.clone(), standing(snapshot, piece.as_ref(), filters, kind)))
            .collect();
        self.piece = piece;
    }

    fn ways_out_of(&self, snapshot: &Snapshot, piece: &Piece) -> WaysOut {
        let catalog = &snapshot.catalog;
        let mut grave = self.verdict.cautions.iter().filter(|caution| caution.grave);
        let any = Filters::default();
        let can_be_had = |kind: &DropKind| standing(snapshot, Some(piece), &any, kind) == Standing::Open;
        let drops = grave.clone().any(|caution| caution.drop.is_some())
            && catalog.drops.iter().any(|kind| catalog.suits(kind, piece.wearer) && can_be_had(kind));
        // The same base may suit in another length.
        let base = grave.any(|caution| caution.drop.is_none())
            && catalog
                .bases
                .iter()
                .filter(|base| !self.unfit_bases.contains(&base.id))
                .any(|base| base.id == piece.base && piece.length.is_some() || snapshot.available(&base.id) > 0);
        WaysOut { drops, base }
    }
}

/// The bases that are not suitable for the wearer of `piece`, bare and in whatever length they are made.
fn unfit_bases(catalog: &Catalog, piece: &Piece) -> HashSet<String> {
    let unfit = catalog.bases.iter().filter(|base| !catalog.base_suits(base, piece.wearer));
    unfit.map(|base| base.id.clone()).collect()
}

/// How `kind` stands to `piece`.
pub fn standing(snapshot: &Snapshot, piece: Option<&Piece>, filters: &Filters, kind: &DropKind) -> Standing {
    let hung = piece.map_or(0, |piece| piece.drops.iter().filter(|id| **id == kind.id).count());
    if (snapshot.available(&kind.id) as usize) <= hung {
        return Standing::SoldOut;
    }
    let base = piece.and_then(|piece| snapshot.catalog.base(&piece.base));
    if base.is_some_and(|base| !fit_on(base, kind.ring).passes) {
        return Standing::NoFit;
    }
    if let (Some(budget), Some(piece)) = (filters.budget, piece)
        && with_one_more(&snapshot.catalog, piece, &kind.id).is_none_or(|total| total > budget)
    {
        return Standing::TooDear;
    }
    if filters.suits.is_some_and(|wearer| !snapshot.catalog.suits(kind, wearer)) {
        return Standing::NotFor;
    }
    let wanted = filters.sort.is_none_or(|sort| kind.sort == sort)
        && filters.finish.is_none_or(|finish| kind.finish == Some(finish))
        && filters.colour.is_none_or(|colour| kind.colours.contains(&colour));
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
