//! The seller's PIN while the desk is away: a slow hash of the last one that was right.

use std::{
    path::{Path, PathBuf},
    time::{Duration, Instant},
};

use argon2::Argon2;
use serde::{Deserialize, Serialize};

use super::wire::PinAnswer;
use crate::disk::durable;

/// After this many wrong tries in a row the tablet waits.
const TRIES: u32 = 5;
const WAIT: Duration = Duration::from_secs(60);

/// What is remembered.
pub(super) struct PinMemory {
    file: PathBuf,
    wrong: u32,
    locked_until: Option<Instant>,
}

#[derive(Serialize, Deserialize)]
struct Remembered {
    salt: [u8; 16],
    hash: [u8; 32],
}

fn hash(pin: &str, salt: &[u8; 16]) -> Option<[u8; 32]> {
    let mut out = [0; 32];
    // The library's defaults are Argon2id with 19 MiB and two passes.
    Argon2::default().hash_password_into(pin.as_bytes(), salt, &mut out).ok().map(|()| out)
}

impl PinMemory {
    pub(super) fn open(dir: &Path) -> Self {
        Self { file: dir.join("pin.json"), wrong: 0, locked_until: None }
    }

    /// Remembers a PIN the desk called right. Where that fails, the tablet can't be left while the desk is away.
    pub(super) fn keep(&mut self, pin: &str) {
        self.wrong = 0;
        let mut salt = [0; 16];
        let kept = getrandom::fill(&mut salt)
            .ok()
            .and_then(|()| hash(pin, &salt))
            .map(|hash| durable::write_json(&self.file, &Remembered { salt, hash }));
        if !matches!(kept, Some(Ok(()))) {
            tracing::warn!("the PIN could not be remembered for times without the desk");
        }
    }

    /// Whether `pin` is the one remembered; `None` where none is.
    pub(super) fn ask(&mut self, pin: &str, now: Instant) -> Option<PinAnswer> {
        let remembered: Remembered = durable::read_json(&self.file)?;
        if let Some(until) = self.locked_until.filter(|until| *until > now) {
            return Some(PinAnswer::Wait { seconds: (until - now).as_secs() as u32 + 1 });
        }
        if hash(pin, &remembered.salt) == Some(remembered.hash) {
            self.wrong = 0;
            return Some(PinAnswer::Right);
        }
        self.wrong += 1;
        if self.wrong >= TRIES {
            self.wrong = 0;
            self.locked_until = Some(now + WAIT);
        }
        Some(PinAnswer::Wrong)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_the_desk_the_last_right_pin_counts_and_tries_are_limited() {
        let dir = tempfile::tempdir().unwrap();
        let mut memory = PinMemory::open(dir.path());
        let now = Instant::now();
        assert_eq!(memory.ask("135790", now), None, "nothing is remembered yet");
        memory.keep("135790");
        assert_eq!(memory.ask("135790", now), Some(PinAnswer::Right));
        for _ in 0..TRIES {
            assert_eq!(memory.ask("000000", now), Some(PinAnswer::Wrong));
        }
        assert!(matches!(memory.ask("135790", now), Some(PinAnswer::Wait { .. })));
        assert_eq!(memory.ask("135790", now + WAIT), Some(PinAnswer::Right));
    }
}
