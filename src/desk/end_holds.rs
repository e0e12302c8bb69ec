//! Ends holds whose time is over, for as long as the desk runs.

use std::{sync::Arc, time::Duration};

use super::state::DeskState;

/// Holds end within this of their time.
const EVERY: Duration = Duration::from_secs(20);

/// Frees the parts of tickets whose time is over.
pub(super) async fn end_holds(desk: Arc<DeskState>) {
    loop {
        desk.clock.sleep(EVERY).await;
        if let Err(refusal) = desk.ledger.run(|ledger, now| ledger.end_holds(now)).await {
            tracing::error!("holds could not be ended: {refusal:?}");
        }
    }
}
