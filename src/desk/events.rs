//! Telling open pages that something changed. Only the fact is told, a few times a second at most; the page asks what is
//! different.

use std::{convert::Infallible, sync::Arc, time::Duration};

use axum::{
    Router,
    extract::{Query, State},
    response::sse::{Event, KeepAlive, Sse},
    routing::get,
};
use serde::Deserialize;
use tokio_stream::{Stream, StreamExt, wrappers::WatchStream};
use uuid::Uuid;

use super::{company::Present, seller::Seller, state::DeskState};

/// An open page renews itself no more often than this.
pub(super) const BETWEEN_BEATS: Duration = Duration::from_millis(250);

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/events", get(events)).route("/events/now", get(now))
}

#[derive(Deserialize)]
struct From {
    /// The address of the page that listens.
    #[serde(default)]
    page: String,
}

/// The ticket on whose page somebody is.
fn ticket_of(page: &str) -> Option<Uuid> {
    page.strip_prefix("/tickets/")?.split('/').next()?.parse().ok()
}

async fn events(
    State(desk): State<Arc<DeskState>>,
    Query(from): Query<From>,
    seller: Seller,
) -> Sse<impl Stream<Item = Result<Event, Infallible>> + use<>> {
    // What happens in between is told with the next beat: only the last one counts.
    let pulse = WatchStream::new(desk.pulse.subscribe()).throttle(BETWEEN_BEATS).map(Some);
    // As long as the page listens, others know that it is open.
    let present = ticket_of(&from.page).map(|ticket| Present::on(&desk.company, &desk.pulse, ticket, &seller));
    let end = WatchStream::new(desk.closing.clone()).filter(|closed| *closed).map(|_| None);
    // The stream ends with the desk; otherwise it would keep the desk from closing.
    let news = pulse.merge(end).map_while(|beat| beat).map(move |beat| {
        let _until_the_end = &present;
        Ok(Event::default().data(beat.to_string()))
    });
    Sse::new(news).keep_alive(KeepAlive::new().interval(Duration::from_secs(15)))
}

/// The same for a page whose stream does not come through.
async fn now(State(desk): State<Arc<DeskState>>, _seller: Seller) -> String {
    desk.pulse.borrow().to_string()
}
