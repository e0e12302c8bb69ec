//! How large, how dark and how lively the screens are: the seller settles it for the tablet, a guest for themself.

use serde::{Deserialize, Deserializer, Serialize, de::DeserializeOwned};

/// The size of all text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum TextSize {
    /// As drawn.
    #[default]
    Usual,
    /// A fifth larger.
    Large,
    /// Two fifths larger.
    Largest,
}

impl TextSize {
    /// All of them, from small to large.
    pub const ALL: [Self; 3] = [Self::Usual, Self::Large, Self::Largest];

    /// How many times the usual size.
    pub const fn factor(self) -> f32 {
        match self {
            Self::Usual => 1.0,
            Self::Large => 1.2,
            Self::Largest => 1.4,
        }
    }

    /// The end of its text's key.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Usual => "usual",
            Self::Large => "large",
            Self::Largest => "largest",
        }
    }
}

/// Which form of the colours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Contrast {
    /// Linen, ink and plum.
    #[default]
    Daylight,
    /// White grounds, black text, dark edges.
    High,
}

impl Contrast {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Daylight, Self::High];
}

/// The looks of the screens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Looks {
    /// Size of the text.
    #[serde(deserialize_with = "if_understood")]
    pub text: TextSize,
    /// Form of the colours.
    #[serde(deserialize_with = "if_understood")]
    pub contrast: Contrast,
    /// Nothing sways, flies or glides: things are where they belong at once.
    #[serde(deserialize_with = "if_understood")]
    pub calm: bool,
}

/// A field's value, or the usual one where this version does not know what it says.
pub(super) fn if_understood<'de, D: Deserializer<'de>, T: DeserializeOwned + Default>(from: D) -> Result<T, D::Error> {
    let value = serde_json::Value::deserialize(from)?;
    Ok(serde_json::from_value(value).unwrap_or_default())
}
