//! The solid shape of a drop below its ring.

use std::f64::consts::PI;

use serde::{Deserialize, Serialize};

use super::Length;

/// A body as the maker measures it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Body {
    /// A ball.
    Ball {
        /// The same every way.
        diameter: Length,
    },
    /// A rod with hemispherical ends; `length` is overall.
    Rod {
        /// How thick it is.
        diameter: Length,
        /// From tip to tip.
        length: Length,
    },
    /// A flat disc.
    Disc {
        /// Across its face.
        diameter: Length,
        /// From face to face.
        thickness: Length,
    },
    /// A cylinder with flat ends.
    Cylinder {
        /// Across its ends.
        diameter: Length,
        /// From end to end.
        height: Length,
    },
    /// A cone; `diameter` is that of its foot.
    Cone {
        /// Across its foot.
        diameter: Length,
        /// From foot to tip.
        height: Length,
    },
    /// A box.
    Box {
        /// From left to right.
        width: Length,
        /// From front to back.
        depth: Length,
        /// From top to bottom.
        height: Length,
    },
    /// An ellipsoid, by its three full axes.
    Ellipsoid {
        /// From left to right.
        width: Length,
        /// From front to back.
        depth: Length,
        /// From top to bottom.
        height: Length,
    },
    /// The outline of its picture, `thickness` deep.
    Outline {
        /// How thick it is, from front to back.
        thickness: Length,
        /// What the picture's outline comes to; a catalogue fills it in when it has read the picture.
        #[serde(default)]
        shape: Option<OutlineShape>,
    },
    /// The hull of measured points, each x, y, z in millimetres.
    Points {
        /// x, y and z of each, in millimetres.
        points_mm: Vec<[f64; 3]>,
    },
}

/// A picture's outline at the drop's size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct OutlineShape {
    /// Corners of its convex hull, x and y in millimetres.
    pub hull_mm: Vec<(f64, f64)>,
    /// What the picture covers, holes left out, in square millimetres.
    pub area_mm2: f64,
    /// Whether the picture shows where the drop ends: something in it is transparent.
    #[serde(default)]
    pub cut_out: bool,
}

impl Body {
    /// Volume in cubic millimetres; `None` for points, and for an outline whose picture was not read.
    pub fn volume_mm3(&self) -> Option<f64> {
        let round = |diameter: Length| PI / 4.0 * diameter.mm().powi(2);
        Some(match self {
            Self::Ball { diameter } => PI / 6.0 * diameter.mm().powi(3),
            Self::Rod { diameter, length } => {
                let straight = (length.mm() - diameter.mm()).max(0.0);
                PI / 6.0 * diameter.mm().powi(3) + round(*diameter) * straight
            }
            Self::Disc { diameter, thickness: height } | Self::Cylinder { diameter, height } => {
                round(*diameter) * height.mm()
            }
            Self::Cone { diameter, height } => round(*diameter) * height.mm() / 3.0,
            Self::Box { width, depth, height } => width.mm() * depth.mm() * height.mm(),
            Self::Ellipsoid { width, depth, height } => PI / 6.0 * width.mm() * depth.mm() * height.mm(),
            Self::Outline { thickness, shape } => shape.as_ref()?.area_mm2 * thickness.mm(),
            Self::Points { .. } => return None,
        })
    }

    /// How wide and how high the body is as it hangs; none for points, and for an outline, which has its picture's size.
    pub fn width_and_height(&self) -> Option<(Length, Length)> {
        match *self {
            Self::Ball { diameter } | Self::Disc { diameter, .. } => Some((diameter, diameter)),
            Self::Rod { diameter, length } => Some((diameter, length)),
            Self::Cylinder { diameter, height } | Self::Cone { diameter, height } => Some((diameter, height)),
            Self::Box { width, height, .. } | Self::Ellipsoid { width, height, .. } => Some((width, height)),
            Self::Outline { .. } | Self::Points { .. } => None,
        }
    }

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
            ("Outline", &[thickness]) => Self::Outline { thickness, shape: None },
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Textbook volumes, worked out by hand: a ball of 10 mm has 523.599 mm³, a cone a third of its cylinder, a rod of
    /// 10 × 30 mm a ball and 20 mm of cylinder.
    #[test]
    fn volumes_of_all_forms() {
        let mm = Length::from_mm;
        let shape =
            Some(OutlineShape { hull_mm: vec![(0.0, 0.0), (9.0, 0.0), (0.0, 9.0)], area_mm2: 20.0, cut_out: true });
        for (body, wanted) in [
            (Body::Ball { diameter: mm(10.0) }, Some(523.598_776)),
            (Body::Rod { diameter: mm(10.0), length: mm(30.0) }, Some(523.598_776 + 1_570.796_327)),
            (Body::Rod { diameter: mm(10.0), length: mm(4.0) }, Some(523.598_776)),
            (Body::Disc { diameter: mm(10.0), thickness: mm(2.0) }, Some(157.079_633)),
            (Body::Cylinder { diameter: mm(10.0), height: mm(3.0) }, Some(235.619_449)),
            (Body::Cone { diameter: mm(10.0), height: mm(3.0) }, Some(78.539_816)),
            (Body::Box { width: mm(2.0), depth: mm(3.0), height: mm(4.0) }, Some(24.0)),
            (Body::Ellipsoid { width: mm(2.0), depth: mm(3.0), height: mm(4.0) }, Some(12.566_371)),
            (Body::Outline { thickness: mm(2.0), shape }, Some(40.0)),
            (Body::Outline { thickness: mm(2.0), shape: None }, None),
            (Body::Points { points_mm: vec![[0.0; 3]] }, None),
        ] {
            let found = body.volume_mm3();
            let near = found.zip(wanted).map_or(found == wanted, |(a, b)| (a - b).abs() < 1e-6);
            assert!(near, "{body:?}: {found:?}, not {wanted:?}");
        }
    }
}
