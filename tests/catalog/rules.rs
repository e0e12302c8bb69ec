//! Rules files of the folder, in place of the program's or beside them.

use super::*;

#[test]
fn a_region_is_a_file_of_the_folder() {
    let dir = changed("table.ron", "region: US", "region: CA");
    let told = read_folder(dir.path()).expect_err("no such rules yet").to_string();
    assert!(told.contains("table.ron:9:13: CA is not a region with rules"), "{told}");

    let us = fs::read_to_string(test_table().join("../../assets/rules/us.ron")).expect("the rules");
    let canada = us.replace("\"US\"", "\"CA\"").replace("gauge: Inch", "gauge: Metric");
    fs::create_dir(dir.path().join("rules")).expect("a folder");
    fs::write(dir.path().join("rules/ca.ron"), &canada).expect("written");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    assert_eq!(loaded.catalog.rules.region.code(), "CA");
    assert_eq!(loaded.catalog.sizes.gauge(), Gauge::Metric);
    let codes: Vec<&str> = loaded.rules.iter().map(|rules| rules.region.code()).collect();
    assert_eq!(codes, ["US", "EU", "UK", "CA"]);

    let broken = canada.replace("code: glass", "code: glas").replace("code: sharp", "code: sharpe");
    fs::write(dir.path().join("rules/ca.ron"), broken).expect("written");
    let told = read_folder(dir.path()).expect_err("two words nobody knows").0;
    assert!(told.len() == 2 && told.iter().all(|one| one.file == "rules/ca.ron" && one.line > 0), "{told:?}");
    fs::write(dir.path().join("rules/ca.ron"), &canada).expect("written");

    fs::write(dir.path().join("rules/ca2.ron"), &canada).expect("written");
    let told = read_folder(dir.path()).expect_err("twice").to_string();
    assert!(told.contains("rules/ca2.ron: the rules of CA a second time; rules/ca.ron has them"), "{told}");

    fs::write(dir.path().join("rules/ca2.ron"), us.replace("FluxBelow(50.0)", "AtMost(50.0)")).expect("written");
    let mistakes = read_folder(dir.path()).expect_err("the wrong limit").0;
    let (line, column) = place(&us, "FluxBelow(50.0)");
    assert!(mistakes.iter().any(|m| (m.line, m.column) == (line, column) && m.to_string().contains("FluxBelow(50.0)")));
}

/// What can't be read is told, and never passed over: the program's own rules would be taken in its place.
#[test]
fn a_rules_folder_that_cannot_be_read_is_a_mistake() {
    let dir = changed("table.ron", "region: US", "region: US");
    let rules = dir.path().join("rules");
    let told =
        || read_folder(dir.path()).map(|loaded| loaded.catalog.rules.name.clone()).unwrap_or_else(|m| m.to_string());
    assert_eq!(told(), "United States", "without such a folder the program's own");
    fs::write(&rules, "no folder").expect("written");
    let said = told();
    assert!(said.starts_with("rules: the folder can't be read") && said.contains("program's own"), "{said}");
    fs::remove_file(&rules).expect("removed");
    #[cfg(unix)]
    {
        use std::{ffi::OsStr, os::unix::ffi::OsStrExt};
        std::os::unix::fs::symlink(dir.path().join("nowhere"), &rules).expect("a link");
        assert!(told().starts_with("rules: the folder can't be read"), "a link to nowhere: {}", told());
        fs::remove_file(&rules).expect("removed");
        fs::create_dir(&rules).expect("a folder");
        let odd = rules.join(OsStr::from_bytes(b"us\xff.ron"));
        fs::write(&odd, "()").expect("written");
        assert!(told().starts_with("rules/us\u{fffd}.ron: a file name that is no UTF-8"), "{}", told());
        fs::remove_file(&odd).expect("removed");
        std::os::unix::fs::symlink(dir.path().join("nowhere"), rules.join("us.ron")).expect("a link");
        assert!(told().starts_with("rules/us.ron: "), "{}", told());
        fs::remove_dir_all(&rules).expect("removed");
    }
    fs::create_dir_all(rules.join("us.ron")).expect("a folder");
    assert!(told().starts_with("rules/us.ron: the file is a folder"), "a folder in place of a file: {}", told());
}

#[test]
fn rules_of_the_folder_replace_those_of_the_program() {
    let dir = changed("table.ron", "region: US", "region: US");
    let us = fs::read_to_string(test_table().join("../../assets/rules/us.ron")).expect("the rules");
    fs::create_dir(dir.path().join("rules")).expect("a folder");
    fs::write(dir.path().join("rules/us.ron"), us.replace("\"United States\"", "\"Here\"")).expect("written");
    let loaded = read_folder(dir.path()).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    assert_eq!((loaded.catalog.rules.name.as_str(), loaded.rules.len()), ("Here", 3));
    let before = read_folder(&test_table()).expect("the catalogue").revision;
    assert_ne!(loaded.revision, before, "an edited rule is another catalogue");
}
