//! Ids for what is new on the table.

use std::collections::BTreeSet;

use crate::{
    catalog::{Catalog, fresh_id},
    desk::{refusal::Refusal, state::DeskState},
};

/// All ids that are taken: those of the catalogue, and those that a drop of earlier shows had.
pub(super) struct TakenIds(BTreeSet<String>);

impl TakenIds {
    pub(super) async fn read(desk: &DeskState, catalog: &Catalog) -> Result<Self, Refusal> {
        let counts = desk.ledger.look(|ledger| ledger.counts()).await?;
        let drops = catalog.drops.iter().map(|kind| kind.id.clone());
        let bases = catalog.bases.iter().map(|base| base.id.clone());
        Ok(Self(counts.into_keys().chain(drops).chain(bases).collect()))
    }

    /// A new one by what a thing is called; it is taken from then on.
    pub(super) fn fresh(&mut self, called: &str) -> String {
        let id = fresh_id(called, |id| self.0.contains(id));
        self.0.insert(id.clone());
        id
    }
}
