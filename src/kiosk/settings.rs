//! What the seller has settled for this tablet, kept in a file.

use std::path::PathBuf;

use bevy::prelude::*;
use serde::{Deserialize, Serialize};

use super::i18n::Lang;
use crate::link::files;

/// The settings.
#[derive(Resource, Debug, Clone, Default)]
pub struct Settings {
    /// Language of a new guest.
    pub lang: Lang,
    /// Trays on the left.
    pub left_handed: bool,
    file: Option<PathBuf>,
}

/// The file's form.
#[derive(Serialize, Deserialize)]
#[serde(default)]
struct Kept {
    language: String,
    left_handed: bool,
}

impl Default for Kept {
    fn default() -> Self {
        Self { language: Lang::En.code().to_owned(), left_handed: false }
    }
}

impl Settings {
    /// The settings kept in `file`, with the language of `language` if that is given and known.
    pub fn open(file: Option<PathBuf>, language: Option<&str>) -> Self {
        let kept: Kept = file.as_deref().and_then(files::read_json).unwrap_or_default();
        let lang = language.and_then(Lang::from_code).or_else(|| Lang::from_code(&kept.language)).unwrap_or_default();
        Self { lang, left_handed: kept.left_handed, file }
    }

    /// Writes them: the file is the old one or the new one, never torn.
    ///
    /// # Errors
    /// The disk does not take it.
    pub fn keep(&self) -> std::io::Result<()> {
        let Some(file) = &self.file else { return Ok(()) };
        let kept = Kept { language: self.lang.code().to_owned(), left_handed: self.left_handed };
        files::write_json(file, &kept)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn settings_come_back_and_a_torn_file_does_no_harm() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("kiosk.json");
        let mut settings = Settings::open(Some(file.clone()), None);
        assert_eq!((settings.lang, settings.left_handed), (Lang::En, false));
        (settings.lang, settings.left_handed) = (Lang::Fr, true);
        settings.keep().unwrap();
        let again = Settings::open(Some(file.clone()), None);
        assert_eq!((again.lang, again.left_handed), (Lang::Fr, true));
        assert_eq!(Settings::open(Some(file.clone()), Some("de")).lang, Lang::De);
        std::fs::write(&file, "{\"lang").unwrap();
        assert_eq!(Settings::open(Some(file), Some("xx")).lang, Lang::En);
    }
}
