//! Receipts, slips and the cards that go along with pieces: as PDF for whoever looks, and on the table's printer.

mod actions;
mod card;
mod facts;
mod links;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;
pub(super) use actions::{as_pdf, not_made};
pub(super) use links::{banners, of_bill, of_ticket};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    actions::routes().merge(card::routes())
}
