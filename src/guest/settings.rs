//! What the seller has settled for this tablet, kept in a file.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::looks::{Looks, if_understood};
use crate::{disk::durable, lang::Lang};

/// Width of a bank card in millimetres. Source: ISO/IEC 7810, size ID-1.
pub const CARD_WIDTH_MM: f32 = 85.60;
/// Height of a bank card in millimetres. Source: ISO/IEC 7810, size ID-1.
pub const CARD_HEIGHT_MM: f32 = 53.98;
/// Radius of a bank card's corners in millimetres, the middle of 2.88 to 3.48. Source: ISO/IEC 7810, size ID-1.
pub const CARD_CORNER_MM: f32 = 3.18;
/// Logical pixels in a millimetre before anybody has measured: 150 to the inch, as on many tablets of 10 inches.
/// Common practice, no source.
pub const USUAL_PX_PER_MM: f32 = 150.0 / 25.4;
/// What a screen can have, in logical pixels a millimetre.
pub(super) const PX_PER_MM: std::ops::RangeInclusive<f32> = 1.5..=30.0;

/// The settings.
#[derive(Debug, Clone, Default)]
pub struct Settings {
    /// Language of a new guest.
    pub lang: Lang,
    /// Trays on the left.
    pub left_handed: bool,
    /// How a new guest's screens look.
    pub looks: Looks,
    /// Logical pixels in a millimetre of this screen, once a bank card has been held against it.
    pub px_per_mm: Option<f32>,
    file: Option<PathBuf>,
}

/// The file's form. Files of other versions lack some of it, or say it in words that this one does not know: each field
/// that is not understood is left at its usual value, and the others count.
#[derive(Serialize, Deserialize, Default)]
#[serde(default)]
struct Kept {
    #[serde(deserialize_with = "if_understood")]
    language: String,
    #[serde(deserialize_with = "if_understood")]
    left_handed: bool,
    #[serde(deserialize_with = "if_understood")]
    looks: Looks,
    #[serde(deserialize_with = "if_understood")]
    px_per_mm: Option<f32>,
}

/// What is kept in `file`. The first tablets kept it, in the same form, in a file whose name ended in `ron`.
fn read(file: &Path) -> Option<Kept> {
    let file = if file.exists() { file.to_owned() } else { file.with_extension("ron") };
    durable::read_json(&file)
}

impl Settings {
    /// The settings kept in `file`, with the language of `language` if that is given and known.
    pub fn open(file: Option<PathBuf>, language: Option<&str>) -> Self {
        let kept = file.as_deref().and_then(read).unwrap_or_default();
        let lang = language.and_then(Lang::from_code).or_else(|| Lang::from_code(&kept.language)).unwrap_or_default();
        let px_per_mm = kept.px_per_mm.filter(|px| PX_PER_MM.contains(px));
        Self { lang, left_handed: kept.left_handed, looks: kept.looks, px_per_mm, file }
    }

    /// Writes them: the file is the old one or the new one, never torn.
    ///
    /// # Errors
    /// The disk does not take it.
    pub fn keep(&self) -> std::io::Result<()> {
        let Some(file) = &self.file else { return Ok(()) };
        let kept = Kept {
            language: self.lang.code().to_owned(),
            left_handed: self.left_handed,
            looks: self.looks,
            px_per_mm: self.px_per_mm,
        };
        durable::write_json(file, &kept)
    }
}

#[cfg(test)]
mod tests {
    use super::{
        super::looks::{Contrast, TextSize},
        *,
    };

    #[test]
    fn settings_come_back_and_a_torn_file_does_no_harm() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("kiosk.json");
        let mut settings = Settings::open(Some(file.clone()), None);
        assert_eq!((settings.lang, settings.left_handed, settings.px_per_mm), (Lang::En, false, None));
        (settings.lang, settings.left_handed, settings.px_per_mm) = (Lang::Fr, true, Some(5.9));
        settings.looks = Looks { text: TextSize::Largest, contrast: Contrast::High, calm: true };
        settings.keep().unwrap();
        let again = Settings::open(Some(file.clone()), None);
        assert_eq!((again.lang, again.left_handed, again.px_per_mm), (Lang::Fr, true, Some(5.9)));
        assert_eq!(again.looks, settings.looks);
        assert_eq!(Settings::open(Some(file.clone()), Some("de")).lang, Lang::De);
        std::fs::write(&file, "{\"lang").unwrap();
        assert_eq!(Settings::open(Some(file), Some("xx")).lang, Lang::En);
    }

    #[test]
    fn the_first_tablets_had_a_file_of_another_name() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("settings.json");
        std::fs::write(folder.path().join("settings.ron"), r#"{"language":"fr","left_handed":true}"#).unwrap();
        let mut settings = Settings::open(Some(file.clone()), None);
        assert_eq!((settings.lang, settings.left_handed), (Lang::Fr, true));
        // Once there is one of today's name, that alone counts.
        settings.lang = Lang::De;
        settings.keep().unwrap();
        let again = Settings::open(Some(file), None);
        assert_eq!((again.lang, again.left_handed), (Lang::De, true));
    }

    #[test]
    fn an_older_file_is_read_and_a_foolish_measure_is_not() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("kiosk.json");
        std::fs::write(&file, r#"{"language":"es","left_handed":true}"#).unwrap();
        let old = Settings::open(Some(file.clone()), None);
        assert_eq!((old.lang, old.left_handed, old.looks, old.px_per_mm), (Lang::Es, true, Looks::default(), None));
        let foreign = r#"{"language":"es","left_handed":true,"looks":{"text":"Huge"},"px_per_mm":"many"}"#;
        std::fs::write(&file, foreign).unwrap();
        let some = Settings::open(Some(file.clone()), None);
        assert_eq!((some.lang, some.left_handed, some.looks, some.px_per_mm), (Lang::Es, true, Looks::default(), None));
        std::fs::write(&file, r#"{"language":"es","looks":{"calm":true,"text":"Huge","contrast":"High"}}"#).unwrap();
        let looks = Settings::open(Some(file.clone()), None).looks;
        assert!(looks.calm && looks.contrast == Contrast::High && looks.text == TextSize::Usual, "{looks:?}");
        std::fs::write(&file, r#"{"language":"es","px_per_mm":0.001}"#).unwrap();
        assert_eq!(Settings::open(Some(file), None).px_per_mm, None);
    }
}
