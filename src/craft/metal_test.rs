//! What a laboratory found in a metal.

use serde::{Deserialize, Serialize};

/// The figures of a test report; what was not tested is `None`.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct MetalTest {
    /// Total lead in parts per million.
    pub lead_ppm: Option<f64>,
    /// Total cadmium in parts per million.
    pub cadmium_ppm: Option<f64>,
    /// Nickel given off to the skin, in µg/cm² a week.
    pub nickel_ug_cm2_week: Option<f64>,
}
