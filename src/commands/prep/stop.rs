//! Ctrl-C while something takes long: what was found so far is told.

use std::sync::{
    Arc,
    atomic::{AtomicBool, Ordering},
};

/// Whether somebody has pressed Ctrl-C.
pub(super) struct Stop(Arc<AtomicBool>);

impl Stop {
    /// Listens from now on. A system that tells no signals ends the program instead.
    pub(super) fn listen() -> Self {
        let pressed = Arc::new(AtomicBool::new(false));
        let told = Arc::clone(&pressed);
        std::thread::spawn(move || {
            let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
            if runtime.and_then(|runtime| runtime.block_on(tokio::signal::ctrl_c())).is_ok() {
                told.store(true, Ordering::Relaxed);
            }
        });
        Self(pressed)
    }

    pub(super) fn is_pressed(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}
