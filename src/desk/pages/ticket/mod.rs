//! One ticket: check the piece, tell the guest, take the money.
//!
//! | file | look here for |
//! | --- | --- |
//! | `view` | what the page shows, read at one moment; the page as a whole; the piece's picture |
//! | `piece` | changing it: wearer, length, base, a drop more |
//! | `tick_off` | the parts, each picture with its tick |
//! | `cautions` | what to tell the guest, and selling for a grown-up |
//! | `till` | the sum, and the step that comes next |
//! | `price`, `price_actions` | what is taken off by hand, packages, lines without a home |
//! | `ring_up` | taking the money for this piece alone |
//! | `bar` | the bar at the foot of the screen: what is still to do, or the ways to pay |
//! | `which_sum` | what is asked where the sum is none of this table's |
//! | `history` | what happened so far |
//! | `actions` | what the seller does: one address for each |
//! | `missing` | a drop that is not there: another in its place, or none |
//! | `together` | who else has the ticket open, and what another changed meanwhile |
//! | `unreadable` | a ticket whose entry is damaged |

mod actions;
mod bar;
mod cautions;
mod history;
mod missing;
mod piece;
mod price;
mod price_actions;
mod ring_up;
mod tick_off;
mod till;
mod together;
mod unreadable;
mod view;
mod which_sum;

pub(super) use price::reduction_form;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .merge(view::routes())
        .merge(actions::routes())
        .merge(missing::routes())
        .merge(price_actions::routes())
        .merge(ring_up::routes())
}
