//! A tray of sixteen compartments as its maker photographs it: pieces of the demo on dark velvet, one compartment empty if
//! it is wanted so.

use std::sync::OnceLock;

use crate::{
    photo::Point,
    scene::{Dice, Floor, Lying, Scene, picture},
};

/// What lies in the compartments, row by row.
pub const PIECES: [&str; 16] = [
    "charm-moon",
    "charm-star",
    "charm-sun",
    "charm-leaf",
    "charm-feather",
    "charm-anchor",
    "charm-heart",
    "charm-acorn",
    "bead-amber",
    "bead-pearl",
    "bead-lapis",
    "key-heart",
    "locket-oval",
    "found-gear",
    "tassel-teal",
    "crystal-cube",
];

/// The tray's inner width, in millimetres.
pub const INNER_MM: f64 = 240.0;

/// The height of each piece as it lies there, in millimetres.
pub fn height_mm(name: &str) -> f64 {
    (f64::from(picture(name).height()) / 10.0).min(40.0)
}

/// The photo as a JPEG, drawn once for all tests.
pub fn sixteen() -> &'static [u8] {
    static DRAWN: OnceLock<Vec<u8>> = OnceLock::new();
    DRAWN.get_or_init(|| {
        let (w, d) = (INNER_MM, 200.0);
        let mut scene = Scene { inner_mm: (w, d), photo: (1600, 1200), ..Scene::new(Floor::Velvet) };
        let mut dice = Dice(7);
        for (i, name) in PIECES.iter().enumerate() {
            let middle = scene.middle(i as u32 / 4, i as u32 % 4);
            let at = Point::new(middle.x + dice.next() * 4.0 - 2.0, middle.y + dice.next() * 3.0 - 1.5);
            let degrees = (dice.next() - 0.5) * 20.0;
            scene.lying.push(Lying { picture: picture(name), height_mm: height_mm(name), at, degrees });
        }
        scene.taken().jpeg
    })
}

/// The same with a note of the camera's that has a place in it. Source: Exif 2.3, GPS information (from memory): an entry
/// 0x8825 that leads to latitude and longitude references.
pub fn with_a_place(jpeg: &[u8]) -> Vec<u8> {
    let mut note = b"Exif\0\0MM\0\x2a\0\0\0\x08\0\x01\x88\x25\0\x04\0\0\0\x01\0\0\0\x1a\0\0\0\0".to_vec();
    note.extend(b"\0\x01\0\x01\0\x02\0\0\0\x02N\0\0\0\0\0\0\0MILLLANE");
    let mut bytes = vec![0xff, 0xd8, 0xff, 0xe1];
    bytes.extend((note.len() as u16 + 2).to_be_bytes());
    bytes.extend(note);
    bytes.extend(&jpeg[2..]);
    bytes
}
