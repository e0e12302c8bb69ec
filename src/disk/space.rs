//! Whether a disk has room left: said before it is full.

use std::path::Path;

/// Below this a disk counts as nearly full. Tickets are small: there is time to make room.
const NEARLY_FULL_BYTES: u64 = 500_000_000;

/// Whether the disk that holds `folder` is nearly full. A disk that does not say counts as having room.
pub fn is_nearly_full(folder: &Path) -> bool {
    fs4::available_space(folder).is_ok_and(|free| free < NEARLY_FULL_BYTES)
}
