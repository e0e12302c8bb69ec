#![no_main]

#[path = "../../corpus/checks/mod.rs"]
#[allow(dead_code, reason = "each target needs one of the checks")]
mod checks;

libfuzzer_sys::fuzz_target!(|data: &[u8]| checks::tablet::outbox(data));
