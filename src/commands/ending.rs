//! The orderly end: Ctrl-C, and what a system or a terminal sends when it ends a program.

use std::future::Future;

/// Waits for the end; with Ctrl-C or, where something else looks after that, without. Without a signal to wait for, a
/// program runs until it is killed, which it survives.
pub(super) fn wait(with_ctrl_c: bool) {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    let waited = runtime.and_then(|runtime| {
        runtime.block_on(async {
            let other = other_end();
            if with_ctrl_c {
                tokio::select! {
                    pressed = tokio::signal::ctrl_c() => pressed,
                    ended = other => ended,
                }
            } else {
                other.await
            }
        })
    });
    if let Err(error) = waited {
        tracing::warn!("signals can't be heard: {error}");
        loop {
            std::thread::park();
        }
    }
}

#[cfg(unix)]
fn other_end() -> impl Future<Output = std::io::Result<()>> {
    use tokio::signal::unix::{SignalKind, signal};
    async {
        let (mut terminated, mut hung_up) = (signal(SignalKind::terminate())?, signal(SignalKind::hangup())?);
        tokio::select! {
            _ = terminated.recv() => {}
            _ = hung_up.recv() => {}
        }
        Ok(())
    }
}

#[cfg(not(unix))]
fn other_end() -> impl Future<Output = std::io::Result<()>> {
    std::future::pending()
}
