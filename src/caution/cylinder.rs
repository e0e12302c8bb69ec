//! The small-parts test cylinder, as each drawing has it.

use serde::{Deserialize, Serialize};

/// Which drawing of the cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Gauge {
    /// 1.25 in across, 1.00 to 2.25 in deep. Source: 16 CFR 1501.4, figure 1; inch figures govern.
    Inch,
    /// 31.7 mm across, 25.4 to 57.1 mm deep. Source: Canada Toys Regulations SOR/2011-17, Schedule 1; EN 71-1 (clause
    /// 8.2) and ISO 8124-1 from memory.
    Metric,
}

/// The inside of a cylinder, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    /// Radius of the wall.
    pub radius: f64,
    /// Depth on the axis; the floor slopes at 45°.
    pub depth: f64,
}

impl Gauge {
    /// The inside of the cylinder by this drawing.
    pub(super) const fn room(self) -> Room {
        match self {
            Self::Inch => Room { radius: 15.875, depth: 41.275 },
            Self::Metric => Room { radius: 15.85, depth: 41.25 },
        }
    }
}
