//! Shows: the running one, what it is, its end, all that are closed, and practice.
//!
//! | file | look here for |
//! | --- | --- |
//! | `running` | the running show, and the list of all |
//! | `about` | what the running show is: place, kind, tax, fee, host, float |
//! | `close` | counting the cash and closing |
//! | `closed` | what is read of a closed show |
//! | `files` | a show in files, for spreadsheets and other programs |
//! | `sheet` | the sums, what was sold, the cash: what the pages of a running and a closed show share |
//! | `practice` | beginning and ending practice |

mod about;
mod close;
mod closed;
mod files;
mod practice;
mod running;
mod sheet;

use std::sync::Arc;

use axum::Router;

use crate::desk::state::DeskState;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new()
        .merge(running::routes())
        .merge(about::routes())
        .merge(close::routes())
        .merge(closed::routes())
        .merge(practice::routes())
}
