//! Rotations in space, as matrices whose rows are the room's axes.

/// A vector in millimetres, or without a unit where it is a direction.
pub(super) type V3 = [f64; 3];

pub(super) fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

pub(super) fn scaled(a: V3, by: f64) -> V3 {
    a.map(|x| x * by)
}

pub(super) fn sum(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/// A rotation of the body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Turn([V3; 3]);

impl Turn {
    /// Body z-axis towards polar angle `tilt` and azimuth `azimuth` of the room.
    pub(super) fn of_axis(tilt: f64, azimuth: f64) -> Self {
        let ((st, ct), (sa, ca)) = (tilt.sin_cos(), azimuth.sin_cos());
        Self([[ca * ct, -sa, ca * st], [sa * ct, ca, sa * st], [-st, 0.0, ct]])
    }

    /// The body's direction at `polar` and `azimuth` of its own goes straight down the cylinder, then all is turned by
    /// `spin` about the cylinder's axis.
    pub(super) fn of_depth(polar: f64, azimuth: f64, spin: f64) -> Self {
        // The inverse of of_axis is its transpose.
        Self(Self::of_axis(polar, azimuth).columns()).spun([0.0, 0.0, spin])
    }

    /// Turned further by a rotation vector of the room, in radians. Source: the formula of Rodrigues.
    pub(super) fn spun(&self, by: V3) -> Self {
        let angle = dot(by, by).sqrt();
        if angle == 0.0 {
            return *self;
        }
        let (axis, (s, c)) = (scaled(by, 1.0 / angle), angle.sin_cos());
        let columns = self.columns().map(|v| {
            let along = scaled(axis, dot(axis, v) * (1.0 - c));
            sum(sum(scaled(v, c), scaled(cross(axis, v), s)), along)
        });
        // Rounding piles up over many small turns; straightening the columns keeps the matrix a rotation.
        let unit = |v: V3| scaled(v, 1.0 / dot(v, v).sqrt());
        let x = unit(columns[0]);
        let y = unit(sum(columns[1], scaled(x, -dot(x, columns[1]))));
        Self(Self([x, y, cross(x, y)]).columns())
    }

    /// Where a body's point goes.
    pub(super) fn apply(&self, p: V3) -> V3 {
        self.0.map(|row| dot(row, p))
    }

    /// A room's direction as the body sees it.
    pub(super) fn back(&self, direction: V3) -> V3 {
        self.columns().map(|column| dot(column, direction))
    }

    /// Where the body's axes go.
    pub(super) fn columns(&self) -> [V3; 3] {
        let m = &self.0;
        [[m[0][0], m[1][0], m[2][0]], [m[0][1], m[1][1], m[2][1]], [m[0][2], m[1][2], m[2][2]]]
    }

    /// Cosine of the angle between two rotations.
    pub(super) fn nearness(&self, other: &Self) -> f64 {
        let trace: f64 = self.0.iter().zip(&other.0).map(|(a, b)| dot(*a, *b)).sum();
        (trace - 1.0) / 2.0
    }
}
