//! The settings of a tablet. The first had them in a file that ended in `ron` and was JSON all the same.

use chatelaine::{
    guest::{Contrast, Looks, Settings, TextSize},
    lang::Lang,
};

use super::{copied, fixture, json};

#[test]
fn settings_of_every_version_are_read() {
    let high = Looks { text: TextSize::Largest, contrast: Contrast::High, calm: true };
    let usual = Looks::default();
    for (version, looks, px_per_mm) in [("first", usual, None), ("second", usual, None), ("today", high, Some(5.5))] {
        let dir = copied(&format!("settings/{version}"));
        // All are opened under the name of today.
        let settings = Settings::open(Some(dir.path().join("settings.json")), None);
        assert_eq!((settings.lang, settings.left_handed), (Lang::Fr, true), "{version}");
        assert_eq!((settings.looks, settings.px_per_mm), (looks, px_per_mm), "{version}");
        // Kept again, they are the same in the form of today, which alone counts from then on.
        settings.keep().expect("written");
        let again = Settings::open(Some(dir.path().join("settings.json")), None);
        assert_eq!((again.lang, again.left_handed, again.looks, again.px_per_mm), (Lang::Fr, true, looks, px_per_mm));
    }
}

#[test]
fn settings_are_written_in_the_form_of_their_fixture() {
    let dir = copied("settings/today");
    let file = dir.path().join("settings.json");
    Settings::open(Some(file.clone()), None).keep().expect("written");
    assert_eq!(json(&file), json(&fixture("settings/today/settings.json")));
}
