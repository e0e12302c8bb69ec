#![no_main]

#[path = "../../corpus/checks/mod.rs"]
#[allow(dead_code, reason = "each target needs one of the checks")]
mod checks;

use std::sync::LazyLock;

use checks::desk::{AskedDesk, Who, asked};

static DESK: LazyLock<AskedDesk> = LazyLock::new(AskedDesk::start);
static ASKED: LazyLock<Vec<(Who, String, Vec<u8>)>> = LazyLock::new(asked);

// The first byte says which form or message the others are.
libfuzzer_sys::fuzz_target!(|data: &[u8]| if let [which, rest @ ..] = data {
    let (who, line, _) = &ASKED[usize::from(*which) % ASKED.len()];
    DESK.ask(*who, line, rest);
});
