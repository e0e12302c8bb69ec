//! A tray by one photo: every compartment straightened, measured and cut out of its own floor.
//!
//! Nothing here reads a file, asks a clock or starts a thread: bytes come in, pictures and measures come out, and the same
//! photo gives the same pictures.
//!
//! | file | look here for |
//! | --- | --- |
//! | `read` | a photo from bytes, in bounded memory, upright |
//! | `corners` | the tray's four corners, where they can be found |
//! | `homography` | the map of a plane as a camera sees it |
//! | `tray` | the grid, and a compartment straightened with its millimetres |
//! | `colour`, `plane` | colours as the eye sees them; smoothing, joining |
//! | `ground` | the floor's colour in uneven light |
//! | `find`, `fine` | what is not floor, at a glance and to the pixel |
//! | `matte` | soft edges without the floor's colour |
//! | `shape`, `upright` | areas, axes, holes, outline; the ring, and which way up |
//! | `trust` | how far a cut-out is to be trusted |
//! | `looks` | a guess at size, colour and sort |
//! | `tile` | a neat tile for what is not cut out |
//! | `strokes` | mending by finger |
//! | `cut_out` | all of this for one compartment |
//! | `encode` | pictures as the bytes of files |

mod colour;
mod corners;
mod cut_out;
mod encode;
mod find;
mod fine;
mod ground;
mod homography;
mod looks;
mod matte;
mod plane;
mod read;
mod shape;
mod strokes;
mod tile;
mod tray;
mod trust;
mod upright;

pub use corners::{find_corners, usual_corners};
pub use cut_out::{Best, CutOut, MOST_PIECES, Seen, TRUSTED, look, mended};
pub use encode::{jpeg, png};
pub use homography::{Homography, Point};
pub use looks::{Looks, Size};
pub use read::{MOST_BYTES, MOST_PIXELS, Photo, PhotoRefused, read_picture};
pub use shape::{Hole, Shape};
pub use strokes::{MOST_POINTS, MOST_STROKES, Stroke};
pub use tray::{Compartment, Straightened, Tray, TrayRefused};
