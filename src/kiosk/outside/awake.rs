//! The system is asked to leave the screen on, as films do: by the desktop's and the system's own interfaces.

use std::thread;

use bevy::log::{info, warn};
use keepawake::{Builder, KeepAwake};

/// Keeps screen and machine awake until the program ends. Where the system can't be asked, the log says so; asking may take
/// a while, and nobody waits for it.
pub(in crate::kiosk) fn keep_awake() {
    let asked = thread::Builder::new().name("keeping awake".into()).spawn(|| {
        let locks: Vec<KeepAwake> = [(true, false), (false, true)]
            .into_iter()
            .filter_map(|(display, idle)| {
                let mut builder = Builder::default();
                builder.display(display).idle(idle).app_name("Chatelaine").reason("guests may come at any time");
                match builder.app_reverse_domain("chatelaine.kiosk").create() {
                    Ok(lock) => Some(lock),
                    Err(error) => {
                        let what = if display { "the screen saver" } else { "idle sleep" };
                        info!("{what} can't be held off here, so set it to never: {error}");
                        None
                    }
                }
            })
            .collect();
        // What was asked for is given back when the program ends.
        while !locks.is_empty() {
            thread::park();
        }
    });
    if let Err(error) = asked {
        warn!("no thread to keep the screen on: {error}");
    }
}
