//! From one plane to another as a camera sees it: the tray's millimetres to the photo's pixels and back.

use serde::{Deserialize, Serialize};
/// A point of a plane: pixels of a photo from the middle of the first one, or millimetres of a tray.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl Point {
    /// A point.
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// How far it is to another.
    pub fn to(self, other: Self) -> f64 {
        (self.x - other.x).hypot(self.y - other.y)
    }
}

/// A projective map of the plane, row by row, the last number 1 where it was made from points.
///
/// In double precision, which the image library's own projection is not: a tray's corners at four thousand pixels are
/// squared on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Homography(pub(super) [[f64; 3]; 3]);

impl Homography {
    /// The one map that takes four points to four others; none where three of them lie on a line.
    pub fn from_points(from: [Point; 4], to: [Point; 4]) -> Option<Self> {
        let mut rows = [[0.0; 9]; 8];
        for (i, (p, q)) in from.into_iter().zip(to).enumerate() {
            rows[2 * i] = [p.x, p.y, 1.0, 0.0, 0.0, 0.0, -q.x * p.x, -q.x * p.y, q.x];
            rows[2 * i + 1] = [0.0, 0.0, 0.0, p.x, p.y, 1.0, -q.y * p.x, -q.y * p.y, q.y];
        }
        let h = solved(rows)?;
        Some(Self([[h[0], h[1], h[2]], [h[3], h[4], h[5]], [h[6], h[7], 1.0]]))
    }

    /// Where a point goes.
    pub fn at(&self, p: Point) -> Point {
        let [x, y, w] = self.0.map(|[a, b, c]| a * p.x + b * p.y + c);
        Point::new(x / w, y / w)
    }

    /// The way back.
    pub fn inverse(&self) -> Option<Self> {
        let [[a, b, c], [d, e, f], [g, h, i]] = self.0;
        let whole = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
        if !whole.is_normal() {
            return None;
        }
        let back = [
            [e * i - f * h, c * h - b * i, b * f - c * e],
            [f * g - d * i, a * i - c * g, c * d - a * f],
            [d * h - e * g, b * g - a * h, a * e - b * d],
        ];
        let last = back[2][2];
        let by = if last == 0.0 { whole } else { last };
        Some(Self(back.map(|row| row.map(|n| n / by))))
    }

    /// The nine numbers, row by row.
    pub fn rows(&self) -> [[f64; 3]; 3] {
        self.0
    }
}

/// Eight equations for eight unknowns, by elimination with the largest pivot first.
fn solved(mut rows: [[f64; 9]; 8]) -> Option<[f64; 8]> {
    for i in 0..8 {
        let pivot = (i..8).max_by(|&a, &b| rows[a][i].abs().total_cmp(&rows[b][i].abs()))?;
        rows.swap(i, pivot);
        let size = rows[i].iter().fold(0.0f64, |most, n| most.max(n.abs()));
        if rows[i][i].abs() <= 1e-12 * size.max(1e-300) {
            return None;
        }
        let above = rows[i];
        for row in rows.iter_mut().skip(i + 1) {
            let share = row[i] / above[i];
            row.iter_mut().zip(above).skip(i).for_each(|(n, of)| *n -= share * of);
        }
    }
    let mut found = [0.0; 8];
    for i in (0..8).rev() {
        let rest: f64 = (i + 1..8).map(|j| rows[i][j] * found[j]).sum();
        found[i] = (rows[i][8] - rest) / rows[i][i];
    }
    found.iter().all(|n| n.is_finite()).then_some(found)
}
