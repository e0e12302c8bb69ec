//! A request's body: small, and in time.

use std::time::{Duration, Instant};

use axum::{
    body::Body,
    extract::Request,
    http::{HeaderValue, StatusCode, header},
    middleware::Next,
    response::{IntoResponse, Response},
};
use tokio_stream::StreamExt;

use super::{caller::Caller, timed_stream::FETCH, visit::Activity};
use crate::{
    desk::refusal::Refusal,
    lang::{Message, message},
};

/// A connection on which something was asked may rest this long until the next question.
const REST: Duration = Duration::from_secs(30);
/// A request's body has to be there within this.
const BODY: Duration = Duration::from_secs(15);
/// The longest body: a ticket with every drop of a large catalogue is smaller.
const LONGEST_BODY: usize = 256 * 1024;
/// A longer body is read, and thrown away, up to this.
const READ_AT_MOST: usize = 16 * 1024 * 1024;

/// A request that may carry more than others: so many bytes, within this time. Whoever lets it in has looked who sends it.
#[derive(Debug, Clone, Copy)]
pub(in crate::desk) struct LongBody {
    pub bytes: usize,
    pub within: Duration,
}

/// Waits for the request's body, which has to be small and in time, and keeps the connection from being turned away while
/// it is answered.
pub(in crate::desk) async fn receive_body(caller: Caller, request: Request, next: Next) -> Response {
    let (parts, body) = request.into_parts();
    let usual = LongBody { bytes: LONGEST_BODY, within: BODY };
    let LongBody { bytes: most, within } = parts.extensions.get::<LongBody>().copied().unwrap_or(usual);
    // A little longer, so that whoever is too slow is told so.
    caller.visit.lock().0 = Activity::Waiting { since: Instant::now(), within: within + FETCH };
    let mut response = match tokio::time::timeout(within, collect(body, most)).await {
        Ok(Ok(Some(bytes))) => {
            caller.visit.lock().0 = Activity::Busy;
            next.run(Request::from_parts(parts, Body::from(bytes))).await
        }
        Ok(Ok(None)) => closing(StatusCode::PAYLOAD_TOO_LARGE, message!("refused-too-much")),
        Ok(Err(_)) => closing(StatusCode::BAD_REQUEST, message!("refused-broke-off")),
        Err(_) => closing(StatusCode::REQUEST_TIMEOUT, message!("refused-too-slow")),
    };
    // A stream of news ends only with its page.
    let streams = response.headers().get(header::CONTENT_TYPE).is_some_and(|kind| kind == "text/event-stream");
    if !streams {
        caller.visit.lock().0 = Activity::Waiting { since: Instant::now(), within: REST };
    }
    if caller.visit.is_turned_away() {
        response.headers_mut().insert(header::CONNECTION, HeaderValue::from_static("close"));
    }
    response
}

/// The body; `None` where it is longer than `most`. Then it is read on for a while all the same: who is still sending does not hear
/// the answer, and takes it for a broken line.
async fn collect(body: Body, most: usize) -> Result<Option<Vec<u8>>, axum::Error> {
    let mut chunks = body.into_data_stream();
    let (mut bytes, mut length) = (Vec::new(), 0);
    while let Some(chunk) = chunks.next().await {
        let chunk = chunk?;
        length += chunk.len();
        if length > READ_AT_MOST.max(most) {
            break;
        }
        if length <= most {
            bytes.extend_from_slice(&chunk);
        }
    }
    Ok((length <= most).then_some(bytes))
}

fn closing(status: StatusCode, why: Message) -> Response {
    let mut response = Refusal::Said(status, why).into_response();
    response.headers_mut().insert(header::CONNECTION, HeaderValue::from_static("close"));
    response
}
