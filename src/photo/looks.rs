//! What a piece looks like, for a name that suggests itself: how large, which colour, and what sort it may be.

use image::RgbaImage;
use serde::{Deserialize, Serialize};

use super::{
    colour::{Lab, chroma, hue, seen},
    shape::Shape,
};
use crate::craft::{Colour, Sort};

/// How large a piece is beside others of a table. Common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Size {
    /// Below 16 mm.
    Small,
    /// From 16 mm to 32 mm.
    Middling,
    /// From 32 mm.
    Large,
}

/// What a piece looks like: a guess for the seller to change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Looks {
    /// How large it is.
    pub size: Size,
    /// The colour of most of it.
    pub colour: Colour,
    /// What it may be, by its outline.
    pub sort: Sort,
    /// Whether it shines like metal.
    pub metal: bool,
}

/// Looks at an upright picture whose `shape` was measured at `px` pixels a millimetre.
pub(super) fn looks(picture: &RgbaImage, shape: &Shape, height_mm: f64, solid: f64, px: f64) -> Looks {
    let size = match height_mm {
        mm if mm < 16.0 => Size::Small,
        mm if mm < 32.0 => Size::Middling,
        _ => Size::Large,
    };
    let step = ((picture.width() * picture.height()) / 20_000).max(1) as usize;
    let shown = picture.pixels().step_by(step).filter(|pixel| pixel.0[3] > 220);
    let colours: Vec<Lab> = shown.map(|pixel| seen([pixel.0[0], pixel.0[1], pixel.0[2]])).collect();
    let colour = colour(&colours);
    let metal = matches!(colour, Colour::Golden | Colour::Silvery | Colour::Coppery);
    Looks { size, colour, sort: sort(shape, solid, metal, px), metal }
}

/// The colour of most of it; light and shade on metal change how light it is and hardly its hue.
fn colour(colours: &[Lab]) -> Colour {
    let mut votes: Vec<(Colour, f32)> = Vec::new();
    let contrast = spread(colours);
    for lab in colours {
        let colour = named(*lab, contrast);
        match votes.iter_mut().find(|(voted, _)| *voted == colour) {
            Some((_, count)) => *count += 1.0,
            None => votes.push((colour, 1.0)),
        }
    }
    votes.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).map_or(Colour::Silvery, |(colour, _)| colour)
}

/// How much lightness differs over a piece.
fn spread(colours: &[Lab]) -> f32 {
    let n = colours.len().max(1) as f32;
    let mean = colours.iter().map(|lab| lab[0]).sum::<f32>() / n;
    (colours.iter().map(|lab| (lab[0] - mean).powi(2)).sum::<f32>() / n).sqrt()
}

/// The name of a colour; hues in degrees of Oklab, where red is at 29, yellow at 110, green at 142 and blue at 264.
fn named(lab: Lab, contrast: f32) -> Colour {
    let (light, strong, hue) = (lab[0], chroma(lab), hue(lab));
    if strong < 0.035 {
        return match light {
            l if l < 0.28 => Colour::Black,
            l if l > 0.8 && contrast < 0.12 => Colour::White,
            _ if contrast < 0.035 && light < 0.45 => Colour::Black,
            _ => Colour::Silvery,
        };
    }
    match hue {
        h if h < 12.0 => {
            if light > 0.62 {
                Colour::Pink
            } else {
                Colour::Red
            }
        }
        h if h < 38.0 && strong > 0.13 => {
            if light > 0.72 {
                Colour::Pink
            } else {
                Colour::Red
            }
        }
        h if h < 66.0 && strong > 0.15 => Colour::Orange,
        h if h < 66.0 => {
            if contrast > 0.09 || light > 0.55 {
                Colour::Coppery
            } else {
                Colour::Brown
            }
        }
        h if h < 112.0 && strong > 0.16 && light > 0.78 => Colour::Yellow,
        h if h < 112.0 => {
            if contrast > 0.07 || light > 0.55 {
                Colour::Golden
            } else {
                Colour::Brown
            }
        }
        h if h < 200.0 => Colour::Green,
        h if h < 284.0 => Colour::Blue,
        h if h < 330.0 => Colour::Violet,
        _ => {
            if light > 0.62 {
                Colour::Pink
            } else {
                Colour::Red
            }
        }
    }
}

/// What it may be, by how long it is, how full its outline is, and whether it is metal.
fn sort(shape: &Shape, solid: f64, metal: bool, px: f64) -> Sort {
    let long = shape.axes.0 / shape.axes.1.max(1.0);
    let open = shape.holes.iter().map(|hole| hole.area).sum::<f64>() / shape.area;
    let largest_hole = shape.holes.iter().map(|hole| hole.area).fold(0.0, f64::max) / (px * px);
    if metal && long > 2.4 && largest_hole > 3.0 && solid < 0.85 {
        return Sort::Key;
    }
    if !metal && long > 3.0 && open < 0.05 {
        return Sort::Tassel;
    }
    if !metal && solid > 0.82 {
        return Sort::Bead;
    }
    Sort::Charm
}
