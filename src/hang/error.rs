//! Why something does not hang.

/// Why there is no rest shape.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum HangError {
    /// A figure that is no length or weight.
    #[error("{what} can't be {value}; {wanted} is needed")]
    Nonsense {
        /// What the figure is.
        what: &'static str,
        /// The figure that was found.
        value: f64,
        /// What it should be, in words.
        wanted: &'static str,
    },
    /// The chain does not reach from hang point to hang point.
    #[error("a chain of {length_mm:.1} mm does not reach across {distance_mm:.1} mm")]
    TooShort {
        /// Length of the front.
        length_mm: f64,
        /// Distance of the hang points, in a straight line.
        distance_mm: f64,
    },
    /// The necklace is too short for the neck.
    #[error("a necklace of {length_mm:.0} mm is {missing_mm:.1} mm too short for a neck of {neck_mm:.0} mm")]
    TooShortForNeck {
        /// The whole necklace.
        length_mm: f64,
        /// Circumference of the neck.
        neck_mm: f64,
        /// How much is missing at least.
        missing_mm: f64,
    },
    /// The drops together are longer than what they hang on.
    #[error("the drops need {cluster_mm:.0} mm side by side and there are {room_mm:.0} mm; {fits} of them fit")]
    NoRoom {
        /// What the drops take.
        cluster_mm: f64,
        /// What there is.
        room_mm: f64,
        /// How many of them fit, from the left.
        fits: usize,
    },
    /// Gaps and loads do not go together.
    #[error("{loads} drops need {} gaps between them, not {gaps}", loads.saturating_sub(1))]
    Gaps {
        /// Number of loads.
        loads: usize,
        /// Number of gaps.
        gaps: usize,
    },
    /// No shape has tension all along: the chain has no weight and a part of it hangs slack, or the weights differ
    /// by so many orders that the search came to no end.
    #[error(
        "no rest shape was found: a part of the chain hangs slack for want of weight, or the figures lie many orders \
         apart; check the chain's weight per length and the drops' weights"
    )]
    NoShape,
}

/// `value` if it is a finite number above zero, or at zero where `zero` is allowed.
pub(super) fn sound(what: &'static str, value: f64, zero: bool) -> Result<f64, HangError> {
    if value.is_finite() && (value > 0.0 || (zero && value == 0.0)) {
        Ok(value)
    } else {
        let wanted = if zero { "zero or a finite number above it" } else { "a finite number above zero" };
        Err(HangError::Nonsense { what, value, wanted })
    }
}

/// `value` if it is a finite number, of either sign.
pub(super) fn finite(what: &'static str, value: f64) -> Result<f64, HangError> {
    if value.is_finite() { Ok(value) } else { Err(HangError::Nonsense { what, value, wanted: "a finite number" }) }
}

/// How many drops fit into `room_mm` with these gaps.
pub(super) fn fitting(gaps_mm: &[f64], room_mm: f64) -> usize {
    let mut used = 0.0;
    1 + gaps_mm
        .iter()
        .take_while(|gap| {
            used += **gap;
            used < room_mm
        })
        .count()
}
