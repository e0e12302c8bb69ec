//! A place or a direction in the plane, in millimetres.

use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

use crate::hang::Point;

/// x to the right, y downwards.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct V {
    pub x: f64,
    pub y: f64,
}

pub(super) const fn v(x: f64, y: f64) -> V {
    V { x, y }
}

impl V {
    pub(super) const ZERO: Self = v(0.0, 0.0);

    pub(super) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    pub(super) fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// Direction and length; straight down where there is none.
    pub(super) fn split(self) -> (Self, f64) {
        let length = self.length();
        if length > 1e-12 { (self * (1.0 / length), length) } else { (v(0.0, 1.0), length) }
    }

    /// The same direction, `most` long at most.
    pub(super) fn at_most(self, most: f64) -> Self {
        let length = self.length();
        if length > most { self * (most / length) } else { self }
    }

    pub(super) fn lerp(self, other: Self, share: f64) -> Self {
        self + (other - self) * share
    }
}

impl Add for V {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        v(self.x + other.x, self.y + other.y)
    }
}

impl Sub for V {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        v(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for V {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        v(self.x * by, self.y * by)
    }
}

impl Neg for V {
    type Output = Self;
    fn neg(self) -> Self {
        v(-self.x, -self.y)
    }
}

impl AddAssign for V {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for V {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl From<Point> for V {
    fn from(p: Point) -> Self {
        v(p.x_mm, p.y_mm)
    }
}

impl From<V> for Point {
    fn from(p: V) -> Self {
        Self { x_mm: p.x, y_mm: p.y }
    }
}
