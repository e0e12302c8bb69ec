//! The solid shape of a drop below its ring.

use serde::{Deserialize, Serialize};

use super::Length;

/// A body as the maker measures it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Body {
    /// A ball.
    Ball { diameter: Length },
    /// A rod with hemispherical ends; `length` is overall.
    Rod { diameter: Length, length: Length },
    /// A flat disc.
    Disc { diameter: Length, thickness: Length },
    /// A cylinder with flat ends.
    Cylinder { diameter: Length, height: Length },
    /// A cone; `diameter` is that of its foot.
    Cone { diameter: Length, height: Length },
    /// A box.
    Box { width: Length, depth: Length, height: Length },
    /// An ellipsoid, by its three full axes.
    Ellipsoid { width: Length, depth: Length, height: Length },
    /// The outline of its picture, `thickness` deep.
    Outline { thickness: Length },
    /// The hull of measured points, each x, y, z in millimetres.
    Points { points_mm: Vec<[f64; 3]> },
}

impl Body {
    /// The names and fields as a catalogue file writes them, without `Points`, which only the terminal takes.
    pub const FORMS: &'static [(&'static str, &'static [&'static str])] = &[
        ("Ball", &["diameter"]),
        ("Rod", &["diameter", "length"]),
        ("Disc", &["diameter", "thickness"]),
        ("Cylinder", &["diameter", "height"]),
        ("Cone", &["diameter", "height"]),
        ("Box", &["width", "depth", "height"]),
        ("Ellipsoid", &["width", "depth", "height"]),
        ("Outline", &["thickness"]),
    ];

    /// The form called `name` with its sizes in the order of [`Body::FORMS`].
    pub fn from_form(name: &str, sizes: &[Length]) -> Option<Self> {
        Some(match (name, sizes) {
            ("Ball", &[diameter]) => Self::Ball { diameter },
            ("Rod", &[diameter, length]) => Self::Rod { diameter, length },
            ("Disc", &[diameter, thickness]) => Self::Disc { diameter, thickness },
            ("Cylinder", &[diameter, height]) => Self::Cylinder { diameter, height },
            ("Cone", &[diameter, height]) => Self::Cone { diameter, height },
            ("Box", &[width, depth, height]) => Self::Box { width, depth, height },
            ("Ellipsoid", &[width, depth, height]) => Self::Ellipsoid { width, depth, height },
            ("Outline", &[thickness]) => Self::Outline { thickness },
            _ => return None,
        })
    }
}
