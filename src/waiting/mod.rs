//! Guests who wait for a seat at the table: who has which number and where they stand (`line`), and how long a guest is going
//! to wait, as far as the day has shown (`estimate`). Nothing is known of a guest but the number.

mod estimate;
mod line;

pub use estimate::{Seen, WaitRange, minutes_shown, wait_range};
pub use line::{Line, Place, Step, WaitingError};
