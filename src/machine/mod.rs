//! What the computer says of itself.

mod battery;

pub use battery::Battery;
