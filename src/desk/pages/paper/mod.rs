//! Receipts and slips: as PDF for whoever looks, and on the table's printer.

mod actions;
mod facts;
mod links;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;
pub(super) use actions::{as_pdf, not_made};
pub(super) use links::{banners, of_bill, of_ticket};

pub(super) fn routes() -> Router<Arc<DeskState>> {
    actions::routes()
}
