//! What a window may be, and what happens when it fails: nothing in it may end the desk.
#![cfg_attr(not(feature = "kiosk"), allow(dead_code, reason = "the window belongs to the kiosk"))]

use std::panic::{AssertUnwindSafe, catch_unwind};

/// The shorter and the longer side of the smallest window on which the screens have room, in logical pixels.
pub(super) const SMALLEST: (u32, u32) = (400, 640);
const LARGEST: u32 = 8192;

/// How a kiosk's window ended.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Ended {
    /// The seller left it.
    Left,
    /// There was none to be had; what is missing, in a sentence.
    Missing(String),
    /// It failed while it was open.
    Failed,
}

/// Runs a window and takes up its panics; what they said stands in the log.
pub(super) fn run_guarded(window: impl FnOnce() -> Result<(), String>) -> Ended {
    match catch_unwind(AssertUnwindSafe(window)) {
        Ok(Ok(())) => Ended::Left,
        Ok(Err(missing)) => Ended::Missing(missing),
        Err(_) => Ended::Failed,
    }
}

/// A window's size as it is typed.
pub(super) fn size(text: &str) -> Result<(u32, u32), String> {
    let sides = text.split_once('x').and_then(|(w, h)| Some((w.parse::<u32>().ok()?, h.parse::<u32>().ok()?)));
    let (width, height) = sides.ok_or_else(|| format!("{text:?} is no size; write it as in 1280x800"))?;
    let (short, long) = (width.min(height), width.max(height));
    if short < SMALLEST.0 || long < SMALLEST.1 {
        let (short, long) = SMALLEST;
        return Err(format!(
            "a window of {width}x{height} has no room for the tablet's screens; it needs {long}x{short}, or {short}x{long}"
        ));
    }
    if long > LARGEST {
        return Err(format!("a window of {width}x{height} is larger than any screen; {LARGEST} is the most"));
    }
    Ok((width, height))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read_and_small_ones_refused_in_words() {
        for (text, wanted) in [("1280x800", (1280, 800)), ("640x400", (640, 400)), ("400x640", (400, 640))] {
            assert_eq!(size(text), Ok(wanted));
        }
        for text in ["320x240", "240x320", "0x0", "399x9000", "639x639"] {
            let words = size(text).unwrap_err();
            assert!(words.contains(text) && words.contains("needs 640x400, or 400x640"), "{words}");
        }
        for text in ["", "x", "1280", "1280X800", "-1x5", "99999999999x2", "1280x800x2", "１280x800"] {
            assert!(size(text).unwrap_err().contains("as in 1280x800"), "{text}");
        }
        assert!(size("9000x9000").unwrap_err().contains("8192"));
    }

    #[test]
    fn a_window_that_fails_is_taken_up() {
        assert_eq!(run_guarded(|| Ok(())), Ended::Left);
        assert_eq!(run_guarded(|| Err("There is no display.".into())), Ended::Missing("There is no display.".into()));
        assert_eq!(run_guarded(|| panic!("a fault of the screens")), Ended::Failed);
    }
}
