//! What follows from a design: its sum, its cautions, where everything hangs, and how the trays stand to it.

use std::collections::{HashMap, HashSet};

use super::{
    places::{Trouble, places_of},
    session::Filters,
    standing::{Standing, standing},
    surprise::surprise,
};
use crate::{
    catalog::Catalog,
    caution::Verdict,
    craft::{BaseKind, DropKind, Length, Piece, Wearer},
    hang::PiecePlaces,
    link::Snapshot,
    money::Quote,
};

/// What a guest can change so that the piece suits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct WaysOut {
    /// A drop speaks against the piece, and others that suit can be had.
    pub drops: bool,
    /// The base speaks against it, and another one suits, or the same one longer.
    pub base: bool,
}

/// Everything worked out from design, catalogue and counts.
#[derive(Debug, Clone, Default)]
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

impl Derived {
    /// Works everything out anew. Where the piece does not hang, the places stay as they were.
    pub(super) fn renew(&mut self, snapshot: &Snapshot, piece: Option<Piece>, filters: &Filters) {
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
            .map(|kind| {
                (
                    kind.id.clone(),
                    standing(&snapshot.catalog, |id| snapshot.available(id), piece.as_ref(), filters, kind),
                )
            })
            .collect();
        self.piece = piece;
    }

    fn ways_out_of(&self, snapshot: &Snapshot, piece: &Piece) -> WaysOut {
        let catalog = &snapshot.catalog;
        let mut grave = self.verdict.cautions.iter().filter(|caution| caution.grave);
        let any = Filters::default();
        let can_be_had = |kind: &DropKind| {
            standing(&snapshot.catalog, |id| snapshot.available(id), Some(piece), &any, kind) == Standing::Open
        };
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

/// The piece that sways on Welcome.
pub(super) fn sample(snapshot: &Snapshot) -> Option<Piece> {
    /// Any number; this one gives the demo table a handsome piece.
    const SEED: u64 = 0x5EED_0007;
    /// Inches.
    const SAMPLE_IN: f64 = 16.0;
    let bases = &snapshot.catalog.bases;
    let base = bases.iter().find(|base| matches!(base.kind, BaseKind::Necklace(_))).or(bases.first())?;
    // A short one: its drops are seen from near.
    let length = match &base.kind {
        BaseKind::Necklace(n) => {
            let near = SAMPLE_IN.clamp(n.lengths.shortest.inches(), n.lengths.longest.inches());
            Some(Length::from_inches(near))
        }
        BaseKind::Bangle(_) => None,
    };
    let bare =
        Piece { base: base.id.clone(), length, wearer: Wearer::From13, neck: None, drops: vec![], looks: vec![] };
    let drops = surprise(snapshot, &bare, &Filters::default(), SEED);
    Some(Piece { drops, ..bare })
}
