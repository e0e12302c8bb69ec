//! Work on photos: off the threads that answer, and one at a time, since each may take much memory and a core for seconds.

use std::time::Duration;

use axum::http::StatusCode;
use tokio::sync::Semaphore;

use super::refusal::Refusal;
use crate::lang::message;

/// So long somebody waits for another's photo before being told.
pub(super) const PATIENCE: Duration = Duration::from_secs(12);

/// Who has it works.
static ALONE: Semaphore = Semaphore::const_new(1);

/// Does `work` once nobody else's photo is worked on. It is done to its end, also where nobody waits for it any more.
pub(super) async fn alone<T: Send + 'static>(
    patience: Duration,
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Refusal> {
    let busy = || Refusal::Said(StatusCode::SERVICE_UNAVAILABLE, message!("photo-busy"));
    let turn = tokio::time::timeout(patience, ALONE.acquire()).await.ok().and_then(Result::ok).ok_or_else(busy)?;
    let done = tokio::task::spawn_blocking(move || {
        let _turn = turn;
        work()
    });
    done.await.map_err(|_| Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("photo-unreadable")))
}

#[cfg(test)]
mod tests {
    use std::sync::mpsc;

    use super::*;

    #[tokio::test]
    async fn a_second_photo_waits_and_is_told_so() {
        let (go_on, wait) = mpsc::channel::<()>();
        let first = tokio::spawn(alone(PATIENCE, move || wait.recv().is_ok()));
        while ALONE.available_permits() > 0 {
            tokio::task::yield_now().await;
        }
        let second = alone(Duration::from_millis(20), || true).await;
        assert!(matches!(second, Err(Refusal::Said(StatusCode::SERVICE_UNAVAILABLE, _))));
        go_on.send(()).unwrap();
        assert!(first.await.unwrap().unwrap());
        assert!(alone(PATIENCE, || true).await.unwrap(), "and then it is the next one's turn");
    }
}
