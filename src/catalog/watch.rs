//! Watching the folder, so that an edit reaches every screen without a restart.

use std::{path::Path, sync::mpsc, thread, time::Duration};

use notify::{RecommendedWatcher, RecursiveMode, Watcher};

/// Keeps the folder watched while it lives.
pub struct Watch {
    _watcher: RecommendedWatcher,
}

/// Editors write in several steps; a change counts once nothing has moved for this long.
const QUIET: Duration = Duration::from_millis(120);

/// Calls `changed` from another thread after every burst of changes below `folder`.
///
/// # Errors
/// The system can't watch the folder: it is missing, or no more watches are to be had.
pub fn watch(folder: &Path, changed: impl Fn() + Send + 'static) -> Result<Watch, notify::Error> {
    let (tell, told) = mpsc::channel();
    let mut watcher = notify::recommended_watcher(move |event: Result<notify::Event, notify::Error>| {
        // Reading a file is an event too; answering it with another reading would never end.
        if event.is_ok_and(|event| !event.kind.is_access()) {
            let _ = tell.send(());
        }
    })?;
    watcher.watch(folder, RecursiveMode::Recursive)?;
    thread::Builder::new().name("catalogue watch".into()).spawn(move || {
        // Ends when the watcher, and with it the sender, is gone.
        while told.recv().is_ok() {
            while told.recv_timeout(QUIET).is_ok() {}
            changed();
        }
    })?;
    Ok(Watch { _watcher: watcher })
}
