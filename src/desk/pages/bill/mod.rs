//! One bill: what is paid together, in which ways, and what is put right afterwards.
//!
//! | file | look here for |
//! | --- | --- |
//! | `view` | what the page shows, read at one moment; the page as a whole |
//! | `items` | pieces and goods on it, gifts apart |
//! | `counter` | the sum, ways to pay, parts, cash given |
//! | `past` | money that moved, and what was put right |
//! | `actions` | what the seller does: one address for each |
//! | `take_back` | refunds: what is taken back, why, and how it is paid out |

mod actions;
mod counter;
mod items;
mod past;
mod take_back;
mod view;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().merge(view::routes()).merge(actions::routes()).merge(take_back::routes())
}
