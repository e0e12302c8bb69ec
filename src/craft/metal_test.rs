//! What a laboratory found in a part.

use serde::{Deserialize, Serialize};

use super::Substance;

/// The figures of a test report; what was not tested is `None`.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct MetalTest {
    /// Total lead in parts per million.
    pub lead_ppm: Option<f64>,
    /// Total cadmium in parts per million.
    pub cadmium_ppm: Option<f64>,
    /// Nickel given off to the skin, in µg/cm² a week.
    pub nickel_ug_cm2_week: Option<f64>,
    /// Lead in its paint or lacquer, in parts per million.
    #[serde(default)]
    pub paint_lead_ppm: Option<f64>,
}

impl MetalTest {
    /// The figure for `substance`, in its unit.
    pub const fn of(&self, substance: Substance) -> Option<f64> {
        match substance {
            Substance::Lead => self.lead_ppm,
            Substance::Cadmium => self.cadmium_ppm,
            Substance::Nickel => self.nickel_ug_cm2_week,
            Substance::Paint => self.paint_lead_ppm,
        }
    }
}
