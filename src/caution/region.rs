//! Whose rules a table follows.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::quoting::quoted;

/// A region by its code: two to four capital letters, as in `US`. Which regions there are is told by the rules.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Region([u8; 4]);

impl Region {
    /// The United States.
    pub const US: Self = Self(*b"US  ");
    /// The European Union.
    pub const EU: Self = Self(*b"EU  ");
    /// The United Kingdom.
    pub const UK: Self = Self(*b"UK  ");

    /// The region written `code`, if that is two to four capital letters.
    pub fn from_code(code: &str) -> Option<Self> {
        let good = (2..=4).contains(&code.len()) && code.bytes().all(|b| b.is_ascii_uppercase());
        good.then(|| {
            let mut letters = [b' '; 4];
            letters[..code.len()].copy_from_slice(code.as_bytes());
            Self(letters)
        })
    }

    /// The code in catalogue files and in the terminal.
    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.0).unwrap_or_default().trim_end()
    }
}

impl TryFrom<String> for Region {
    type Error = String;
    fn try_from(code: String) -> Result<Self, String> {
        Self::from_code(&code)
            .ok_or_else(|| format!("{} is no region; write two to four capital letters", quoted(&code)))
    }
}

impl From<Region> for String {
    fn from(region: Region) -> Self {
        region.code().to_owned()
    }
}

impl fmt::Display for Region {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl fmt::Debug for Region {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_read_back() {
        for (region, code) in [(Region::US, "US"), (Region::EU, "EU"), (Region::UK, "UK")] {
            assert_eq!((Region::from_code(code), region.code()), (Some(region), code));
            assert_eq!(serde_json::to_string(&region).unwrap(), format!("{code:?}"));
            assert_eq!(serde_json::from_str::<Region>(&format!("{code:?}")).unwrap(), region);
        }
        for bad in ["us", "U", "", "EUROPE", "U1", "Ü"] {
            assert_eq!(Region::from_code(bad), None, "{bad}");
            assert!(serde_json::from_str::<Region>(&format!("{bad:?}")).is_err());
        }
    }
}
