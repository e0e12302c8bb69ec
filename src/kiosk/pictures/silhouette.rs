//! Where a picture shows something: what a finger touches of a drop, and the line round a chosen one.

use std::collections::HashMap;

use image::RgbaImage;

/// So many cells a side: a few millimetres of a large drop, far less than a fingertip.
const SIDE: usize = 64;
/// A cell shows something if its pixel is more opaque than this.
const SHOWS: u8 = 96;

/// What of a picture is opaque, on a coarse grid that is stretched over it.
#[derive(Debug, Clone, PartialEq)]
pub struct Silhouette {
    shows: Vec<bool>,
    outlines: Vec<Vec<(f32, f32)>>,
}

impl Silhouette {
    /// The silhouette of a picture.
    pub fn of(picture: &RgbaImage) -> Self {
        let (width, height) = picture.dimensions();
        let pixel = |cell: usize, side: u32| ((2 * cell as u32 + 1) * side / (2 * SIDE as u32)).min(side.max(1) - 1);
        let shows: Vec<bool> = (0..SIDE * SIDE)
            .map(|i| {
                let (x, y) = (pixel(i % SIDE, width), pixel(i / SIDE, height));
                width > 0 && height > 0 && picture.get_pixel(x, y).0[3] > SHOWS
            })
            .collect();
        let outlines = outlines(|x, y| shows_near(&shows, x, y));
        Self { shows, outlines }
    }

    /// Whether something shows at a place of the picture, from (0, 0) at its top left to (1, 1).
    pub fn shows(&self, x: f32, y: f32) -> bool {
        let cell = |share: f32| (share * SIDE as f32).floor() as i64;
        at(&self.shows, cell(x), cell(y))
    }

    /// Closed lines just outside of what shows, in shares of the picture.
    pub fn outlines(&self) -> &[Vec<(f32, f32)>] {
        &self.outlines
    }
}

fn at(shows: &[bool], x: i64, y: i64) -> bool {
    let side = SIDE as i64;
    (0..side).contains(&x) && (0..side).contains(&y) && shows[(y * side + x) as usize]
}

/// Whether a cell or one of its neighbours shows something: the line keeps clear of the picture by one cell.
fn shows_near(shows: &[bool], x: i64, y: i64) -> bool {
    (-1..=1).any(|dy| (-1..=1).any(|dx| at(shows, x + dx, y + dy)))
}

/// The outer borders between cells that are `inside` and those that are not, each walked with the inside on its right
/// hand. Holes have none: the glass of a vial is a part of what was chosen.
fn outlines(inside: impl Fn(i64, i64) -> bool) -> Vec<Vec<(f32, f32)>> {
    type Corner = (i64, i64);
    let mut steps: HashMap<Corner, Vec<Corner>> = HashMap::new();
    let mut starts = Vec::new();
    let reach = -1..=SIDE as i64;
    for y in reach.clone() {
        for x in reach.clone().filter(|x| inside(*x, y)) {
            let sides = [
                (!inside(x, y - 1), (x, y), (x + 1, y)),
                (!inside(x + 1, y), (x + 1, y), (x + 1, y + 1)),
                (!inside(x, y + 1), (x + 1, y + 1), (x, y + 1)),
                (!inside(x - 1, y), (x, y + 1), (x, y)),
            ];
            for (_, from, to) in sides.into_iter().filter(|(border, ..)| *border) {
                steps.entry(from).or_default().push(to);
                starts.push(from);
            }
        }
    }
    let mut lines = Vec::new();
    for start in starts {
        let mut line = Vec::new();
        let mut here = start;
        while let Some(next) = steps.get_mut(&here).and_then(Vec::pop) {
            line.push(next);
            here = next;
        }
        if line.len() > 8 && is_outer(&line) {
            lines.push(smoothed(&line));
        }
    }
    lines
}

/// Whether a closed line goes round what is inside: with y downwards and the inside on the right hand, the area that it
/// goes round has a positive sign (the surveyor's formula); round a hole it is negative.
fn is_outer(line: &[(i64, i64)]) -> bool {
    let next = line.iter().cycle().skip(1);
    line.iter().zip(next).map(|((x, y), (next_x, next_y))| x * next_y - next_x * y).sum::<i64>() > 0
}

/// The steps of a line along cells, rounded, in shares of the picture.
fn smoothed(line: &[(i64, i64)]) -> Vec<(f32, f32)> {
    /// How many corners on each side are taken into the middle.
    const AROUND: usize = 2;
    let count = line.len();
    let share = |sum: i64| sum as f32 / (2 * AROUND + 1) as f32 / SIDE as f32;
    (0..count)
        .map(|i| {
            let near = (0..=2 * AROUND).map(|k| line[(i + count + k - AROUND) % count]);
            let (x, y) = near.fold((0, 0), |sum, corner| (sum.0 + corner.0, sum.1 + corner.1));
            (share(x), share(y))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use image::Rgba;

    use super::*;

    fn disc(radius: f32) -> Silhouette {
        Silhouette::of(&RgbaImage::from_fn(200, 100, |x, y| {
            let away = ((x as f32 - 99.5) / 2.0).hypot(y as f32 - 49.5);
            Rgba([9, 9, 9, if away < radius { 255 } else { 0 }])
        }))
    }

    #[test]
    fn a_disc_shows_in_its_middle_and_not_in_its_corners() {
        let disc = disc(40.0);
        assert!(disc.shows(0.5, 0.5) && disc.shows(0.15, 0.5) && disc.shows(0.5, 0.85));
        assert!(!disc.shows(0.03, 0.03) && !disc.shows(0.97, 0.03) && !disc.shows(-0.5, 0.5) && !disc.shows(0.5, 1.2));
    }

    #[test]
    fn its_outline_goes_round_it_just_outside() {
        let disc = disc(40.0);
        let [line] = disc.outlines() else { panic!("{} lines", disc.outlines().len()) };
        for (x, y) in line {
            let away = (x - 0.5).hypot(y - 0.5);
            assert!((0.40..0.45).contains(&away), "{x} {y}: {away}");
        }
    }

    #[test]
    fn a_hole_in_it_has_no_line() {
        let pane = Silhouette::of(&RgbaImage::from_fn(100, 100, |x, y| {
            let away = (x as f32 - 49.5).hypot(y as f32 - 49.5);
            Rgba([9, 9, 9, if (25.0..40.0).contains(&away) { 255 } else { 0 }])
        }));
        assert!(!pane.shows(0.5, 0.5) && pane.shows(0.5, 0.17));
        let [line] = pane.outlines() else { panic!("{} lines", pane.outlines().len()) };
        assert!(line.iter().all(|(x, y)| (x - 0.5).hypot(y - 0.5) > 0.39), "the outer one");
    }

    #[test]
    fn what_shows_to_its_edges_has_its_line_outside() {
        let whole = Silhouette::of(&RgbaImage::from_pixel(3, 3, Rgba([1, 1, 1, 255])));
        assert!(whole.shows(0.0, 0.0) && whole.shows(0.999, 0.999));
        let [line] = whole.outlines() else { panic!("no line") };
        assert!(line.iter().all(|(x, y)| !(0.0..=1.0).contains(x) || !(0.0..=1.0).contains(y)));
        assert!(Silhouette::of(&RgbaImage::new(4, 4)).outlines().is_empty());
    }
}
