//! What is said under each region's rules, kept as pages that an assessor can read.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{env, fs, path::Path};

use chatelaine::caution::{Region, Rules, table};

/// The kept pages were read line by line against the rules and their published sources, which stand beside each rule. A
/// difference has to be read again before it is kept: `CHATELAINE_CAUTIONS=write cargo test --test cautions` writes them
/// anew.
#[test]
fn the_kept_pages_are_what_is_said() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cautions");
    for region in [Region::US, Region::EU, Region::UK] {
        let page = table(Rules::of_region(region).expect("a region of the program"));
        let path = folder.join(format!("{region}.txt").to_lowercase());
        if env::var("CHATELAINE_CAUTIONS").is_ok_and(|word| word == "write") {
            fs::create_dir_all(&folder).expect("a folder");
            fs::write(&path, &page).expect("written");
        }
        let kept = fs::read_to_string(&path).expect("a kept page");
        for (n, (now, then)) in page.lines().zip(kept.lines()).enumerate() {
            assert_eq!(now, then, "{}:{}", path.display(), n + 1);
        }
        assert_eq!(page.lines().count(), kept.lines().count(), "{}", path.display());
    }
}
