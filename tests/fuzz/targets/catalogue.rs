#![no_main]

#[path = "../../corpus/checks/mod.rs"]
#[allow(dead_code, reason = "each target needs one of the checks")]
mod checks;

const FILES: [&str; 5] = ["table.ron", "bases.ron", "trays/a.ron", "names/de.ron", "rules/us.ron"];

// The first byte says which file the others are.
libfuzzer_sys::fuzz_target!(|data: &[u8]| if let [which, rest @ ..] = data {
    checks::catalogue::file(FILES[usize::from(*which) % FILES.len()], rest);
});
