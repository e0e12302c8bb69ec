//! The seller's own table: what it is, what lies in its compartments, what it costs. All of it is written into the files of
//! the catalogue, of which each entry can be changed by hand as well.
//!
//! | file | look here for |
//! | --- | --- |
//! | `overview` | what is still to be done, the trays, what is guessed, the way back |
//! | `facts` | the table itself: name, place, currency, tax, whose cautions; a table like the demo |
//! | `compartment`, `lay` | one compartment: the page, and what is done there |
//! | `trays`, `many` | trays as grids; new prices for many compartments |
//! | `bases`, `base_sizes` | what drops hang on; its sizes and weights |
//! | `labels` | price marks and other paper for the table |
//! | `form`, `refused` | forms with photos, and what a page has seen; why nothing was changed, with both sides of a conflict |
//! | `tray_photo` | a tray by one photo |
//! | `ids` | ids for what is new |
//! | `guesses` | what is guessed, in words |

mod base_sizes;
mod bases;
mod compartment;
mod facts;
pub(super) mod form;
mod guesses;
mod ids;
mod labels;
mod lay;
mod many;
mod overview;
pub(super) mod refused;
mod tray_photo;
mod trays;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .merge(overview::routes())
        .merge(facts::routes())
        .merge(compartment::routes())
        .merge(lay::routes())
        .merge(trays::routes())
        .merge(many::routes())
        .merge(bases::routes())
        .merge(tray_photo::routes())
        .merge(labels::routes())
}
