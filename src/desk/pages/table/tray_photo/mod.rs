//! A tray by one photo: taken, its corners set, every compartment cut out, priced and counted, and laid on the table as one
//! act that can be undone.
//!
//! | file | look here for |
//! | --- | --- |
//! | `take` | the photo as it comes in |
//! | `corners` | the tray's corners in it |
//! | `pieces` | what was cut out, to be taken as it is |
//! | `mend` | one compartment: strokes of a finger, a tile, the whole of it |
//! | `prices` | price, count and name, one compartment after the other |
//! | `lay` | all of it into the table's files |
//! | `work` | the photo that a page is about, and the tray as it is now |
//! | `suggested` | a name by size, colour and sort |

mod corners;
mod lay;
mod mend;
mod pieces;
mod prices;
mod suggested;
mod take;
mod work;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .merge(take::routes())
        .merge(corners::routes())
        .merge(pieces::routes())
        .merge(mend::routes())
        .merge(prices::routes())
        .merge(lay::routes())
}
