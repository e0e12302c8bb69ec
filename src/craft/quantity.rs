//! Lengths, masses and masses per length, written as text with their unit: `"24in"`, `"18awg"`, `"3.4g"`.

use std::{fmt, str::FromStr};

use serde::{Deserialize, Serialize};

use super::wire::{awg_mm, swg_mm};
use crate::quoting::quoted;

/// Millimetres in an inch, exactly (international yard and pound agreement, 1959).
pub(super) const MM_PER_INCH: f64 = 25.4;
/// Grams in an avoirdupois ounce, exactly (international yard and pound agreement, 1959).
const G_PER_OUNCE: f64 = 28.349_523_125;

/// The longest length that is read, in metres: longer than any chain on a reel.
pub const LONGEST_M: f64 = 100.0;
/// The heaviest weight that is read, in kilograms: heavier than all that lies on a table.
pub const HEAVIEST_KG: f64 = 100.0;
/// The heaviest weight per length that is read, in kilograms a metre: a rod of gold as thick as a wrist weighs less.
pub const HEAVIEST_KG_PER_M: f64 = 100.0;

/// A length in millimetres.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length(f64);

/// A mass in grams.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Mass(f64);

/// A mass per length in grams per metre, as chain and wire are sold.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct LinearDensity(f64);

/// Why a text is not the quantity that was asked for.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{found} is not {wanted}; write {}", .wanted.example())]
pub struct QuantityError {
    /// The text as it stood, in quotes; the beginning of a long one.
    pub found: String,
    /// What it should have been.
    pub wanted: WantedQuantity,
}

/// What a text should have been.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum WantedQuantity {
    /// A length in one of its units.
    #[error("a length with its unit")]
    Length,
    /// No longer than any chain.
    #[error("a length up to {LONGEST_M} m")]
    LengthUpToMost,
    /// A number of the American wire gauge.
    #[error("an American wire number from 0 to 40")]
    AmericanWire,
    /// A number of the imperial wire gauge.
    #[error("an imperial wire number from 10 to 30")]
    ImperialWire,
    /// A weight in one of its units.
    #[error("a weight with its unit")]
    Weight,
    /// No heavier than a table.
    #[error("a weight up to {HEAVIEST_KG} kg")]
    WeightUpToMost,
    /// A weight per length in one of its units.
    #[error("a weight per length with its unit")]
    WeightPerLength,
    /// No heavier than gold as thick as a wrist.
    #[error("a weight per length up to {HEAVIEST_KG_PER_M} kg a metre")]
    WeightPerLengthUpToMost,
}

impl WantedQuantity {
    /// Examples of what would be right, in English.
    pub const fn example(self) -> &'static str {
        match self {
            Self::Length | Self::LengthUpToMost => "\"24in\", \"610mm\", \"2.5cm\", \"18awg\" or \"20swg\"",
            Self::AmericanWire => "\"18awg\"",
            Self::ImperialWire => "\"20swg\"",
            Self::Weight | Self::WeightUpToMost => "\"3.4g\", \"250mg\" or \"0.5oz\"",
            Self::WeightPerLength | Self::WeightPerLengthUpToMost => "\"12.5g/m\" or \"3.8g/ft\"",
        }
    }
}

impl QuantityError {
    fn new(found: &str, wanted: WantedQuantity) -> Self {
        Self { found: quoted(found), wanted }
    }
}

impl Length {
    /// A length of `mm` millimetres.
    pub const fn from_mm(mm: f64) -> Self {
        Self(mm)
    }
    /// A length of `inches` inches.
    pub fn from_inches(inches: f64) -> Self {
        Self(inches * MM_PER_INCH)
    }
    /// The length in millimetres.
    pub const fn mm(self) -> f64 {
        self.0
    }
    /// The length in inches of 25.4 mm.
    pub fn inches(self) -> f64 {
        self.0 / MM_PER_INCH
    }
}

impl Mass {
    /// A mass of `g` grams.
    pub const fn from_g(g: f64) -> Self {
        Self(g)
    }
    /// The mass in grams.
    pub const fn g(self) -> f64 {
        self.0
    }
}

impl LinearDensity {
    /// `g_per_m` grams a metre.
    pub const fn from_g_per_m(g_per_m: f64) -> Self {
        Self(g_per_m)
    }
    /// In grams per metre.
    pub const fn g_per_m(self) -> f64 {
        self.0
    }
    /// In grams per millimetre.
    pub fn g_per_mm(self) -> f64 {
        self.0 / 1000.0
    }
}

/// Splits `"12.5g/m"` into `"12.5"`, its number and `"g/m"`. Only plain decimal numbers count: no exponent, no infinity, no sign.
fn split(text: &str) -> Option<(&str, f64, &str)> {
    let text = text.trim();
    let end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    let number = &text[..end];
    let plain = number.starts_with(|c: char| c.is_ascii_digit()) && !number.ends_with('.');
    Some((number, number.parse().ok().filter(|_| plain)?, text[end..].trim_start()))
}

impl FromStr for Length {
    type Err = QuantityError;
    fn from_str(text: &str) -> Result<Self, QuantityError> {
        let error = || QuantityError::new(text, WantedQuantity::Length);
        let (digits, number, unit) = split(text).ok_or_else(error)?;
        // A number of wire is written without a point, and no zero before it: 00 and 000 are other wires than 0.
        let gauge = |read: fn(i32) -> Option<f64>, wanted| {
            let whole = digits == "0" || !digits.starts_with('0') && !digits.contains('.');
            let read = digits.parse().ok().filter(|_| whole).and_then(read);
            read.map(Some).ok_or_else(|| QuantityError::new(text, wanted))
        };
        let mm = match unit {
            "mm" => Some(number),
            "cm" => Some(number * 10.0),
            "m" => Some(number * 1000.0),
            "in" => Some(number * MM_PER_INCH),
            "ft" => Some(number * 12.0 * MM_PER_INCH),
            "awg" => gauge(awg_mm, WantedQuantity::AmericanWire)?,
            "swg" => gauge(swg_mm, WantedQuantity::ImperialWire)?,
            _ => None,
        };
        let mm = mm.ok_or_else(error)?;
        if mm <= LONGEST_M * 1000.0 {
            Ok(Self(mm))
        } else {
            Err(QuantityError::new(text, WantedQuantity::LengthUpToMost))
        }
    }
}

impl FromStr for Mass {
    type Err = QuantityError;
    fn from_str(text: &str) -> Result<Self, QuantityError> {
        let error = || QuantityError::new(text, WantedQuantity::Weight);
        let (_, number, unit) = split(text).ok_or_else(error)?;
        let g = match unit {
            "g" => number,
            "mg" => number / 1000.0,
            "kg" => number * 1000.0,
            "oz" => number * G_PER_OUNCE,
            _ => return Err(error()),
        };
        if g <= HEAVIEST_KG * 1000.0 {
            Ok(Self(g))
        } else {
            Err(QuantityError::new(text, WantedQuantity::WeightUpToMost))
        }
    }
}

impl FromStr for LinearDensity {
    type Err = QuantityError;
    fn from_str(text: &str) -> Result<Self, QuantityError> {
        let error = || QuantityError::new(text, WantedQuantity::WeightPerLength);
        let (_, number, unit) = split(text).ok_or_else(error)?;
        let g_per_m = match unit {
            "g/m" => number,
            "g/ft" => number * 1000.0 / (12.0 * MM_PER_INCH),
            "g/in" => number * 1000.0 / MM_PER_INCH,
            _ => return Err(error()),
        };
        if g_per_m <= HEAVIEST_KG_PER_M * 1000.0 {
            Ok(Self(g_per_m))
        } else {
            Err(QuantityError::new(text, WantedQuantity::WeightPerLengthUpToMost))
        }
    }
}

impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", trimmed(self.0))
    }
}

impl fmt::Display for Mass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} g", trimmed(self.0))
    }
}

/// At most two decimals, none of them a trailing zero.
fn trimmed(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantities_carry_their_unit() {
        assert!(("24in".parse::<Length>().unwrap().mm() - 609.6).abs() < 1e-9);
        assert_eq!("2.5 cm".parse::<Length>().unwrap().mm(), 25.0);
        assert_eq!("250mg".parse::<Mass>().unwrap().g(), 0.25);
        assert!(("3.81g/ft".parse::<LinearDensity>().unwrap().g_per_m() - 12.5).abs() < 1e-12);
    }

    #[test]
    fn what_is_no_quantity_is_refused_with_an_example() {
        for text in ["24", "in", "", "-3mm", "1e3mm", "infmm", "NaNmm", "3.mm", ".5mm", "24 parsecs"] {
            let error = text.parse::<Length>().expect_err(text);
            assert!(error.to_string().contains("24in"), "{error}");
        }
        for text in ["99awg", "41awg", "2.5awg", "18.0awg", "018awg", "00awg", "000awg", "5swg", "9swg", "31swg"] {
            let error = text.parse::<Length>().expect_err(text).to_string();
            let range = if text.ends_with("awg") { "from 0 to 40" } else { "from 10 to 30" };
            assert!(error.contains(range), "{error}");
        }
        assert_eq!("0awg".parse::<Length>().unwrap().mm(), awg_mm(0).unwrap());
        assert_eq!(" 18 awg".parse::<Length>().unwrap().mm(), awg_mm(18).unwrap());
        assert!("3.4".parse::<Mass>().is_err());
        assert!("3.4g".parse::<LinearDensity>().is_err());
    }
}
