//! A plain search for the lowest hanging shape: the chain as straight links, walked downhill. It shares nothing with
//! the exact solution: no tension, no catenary, only the height of every mass.

use super::NecklaceLoad;

/// A chain of straight links; link mass sits at its middle, so the shape is one the real chain can take too.
pub(super) struct Links {
    /// Links per piece of chain between ends and rings.
    counts: Vec<usize>,
    gaps: Vec<f64>,
    masses: Vec<f64>,
    per_mm: f64,
    length: f64,
    span: f64,
    /// Depth of the right hang point below the left one.
    end: f64,
    /// Angle of every link below the horizontal.
    angles: Vec<f64>,
    /// Arc of the first ring.
    pub first: f64,
}

/// The moment (mass times depth), and how it grows with every angle and with the cluster's place.
struct Slope {
    moment: f64,
    angles: Vec<f64>,
    first: f64,
}

impl Links {
    /// A bow with the cluster at `first`.
    pub(super) fn bow(load: &NecklaceLoad, first: f64, per_piece: usize) -> Option<Self> {
        let pieces = load.loads.len() + 1;
        let counts: Vec<usize> =
            (0..pieces).map(|i| if i == 0 || i + 1 == pieces { 8 * per_piece } else { per_piece }).collect();
        let links = counts.iter().sum();
        let mut made = Self {
            counts,
            gaps: load.gaps_mm.clone(),
            masses: load.loads.iter().map(|one| one.mass_g).collect(),
            per_mm: load.chain_g_per_mm,
            length: load.front_length_mm,
            span: load.width_mm,
            end: -load.rise_mm,
            angles: vec![0.0; links],
            first: if load.loads.is_empty() { load.front_length_mm } else { first },
        };
        // The bow's half angle: sin α / α is the chord over L.
        let chord = made.span.hypot(made.end);
        let (mut low, mut high) = (0.0, std::f64::consts::PI);
        for _ in 0..60 {
            let mid: f64 = (low + high) / 2.0;
            if mid.sin() / mid > chord / made.length { low = mid } else { high = mid }
        }
        let mut arc = 0.0;
        for (j, length) in made.lengths().into_iter().enumerate() {
            made.angles[j] = made.end.atan2(made.span) + low * (1.0 - 2.0 * (arc + length / 2.0) / made.length);
            arc += length;
        }
        made.close().then_some(made)
    }

    fn room(&self) -> f64 {
        self.length - self.gaps.iter().sum::<f64>()
    }

    fn lengths(&self) -> Vec<f64> {
        let last = self.counts.len() - 1;
        let piece = |i: usize| match i {
            0 => self.first,
            i if i == last => self.room() - self.first,
            i => self.gaps[i - 1],
        };
        self.counts.iter().enumerate().flat_map(|(i, n)| vec![piece(i) / *n as f64; *n]).collect()
    }

    /// Turns the links as little as possible until the chain ends at its hang point again.
    fn close(&mut self) -> bool {
        let lengths = self.lengths();
        for _ in 0..30 {
            let (mut x, mut y, mut xx, mut xy, mut yy) = (-self.span, -self.end, 0.0, 0.0, 0.0);
            for (l, a) in lengths.iter().zip(&self.angles) {
                let (s, c) = a.sin_cos();
                (x, y) = (x + l * c, y + l * s);
                (xx, xy, yy) = (xx + l * s * s, xy - l * s * c, yy + l * c * c);
            }
            if x.hypot(y) < 1e-11 * self.length {
                return true;
            }
            let det = xx * yy - xy * xy;
            let (px, py) = ((x * yy - y * xy) / det, (y * xx - x * xy) / det);
            for a in &mut self.angles {
                let (s, c) = a.sin_cos();
                *a += (px * s - py * c).clamp(-0.5, 0.5);
            }
        }
        false
    }

    fn slope(&self) -> Slope {
        let lengths = self.lengths();
        let (mut moment, mut y, mut j) = (0.0, 0.0, 0);
        let mut below = self.per_mm * self.length + self.masses.iter().sum::<f64>();
        let mut slope = Slope { moment: 0.0, angles: vec![0.0; lengths.len()], first: 0.0 };
        for (i, count) in self.counts.iter().enumerate() {
            for _ in 0..*count {
                let (l, (s, c)) = (lengths[j], self.angles[j].sin_cos());
                let mass = self.per_mm * l;
                below -= mass;
                moment += mass * (y + l * s / 2.0);
                slope.angles[j] = l * c * (below + mass / 2.0);
                let longer = self.per_mm * (y + l * s) + s * below;
                if i == 0 {
                    slope.first += longer / *count as f64;
                } else if i + 1 == self.counts.len() {
                    slope.first -= longer / *count as f64;
                }
                y += l * s;
                j += 1;
            }
            if let Some(mass) = self.masses.get(i) {
                moment += mass * y;
                below -= mass;
            }
        }
        slope.moment = moment;
        slope
    }

    /// The part of `way` that leaves the chain's end where it is. Links count by their length.
    fn tangent(&self, way: &mut [f64], first: f64) {
        let lengths = self.lengths();
        let (mut x, mut y, mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        let n = lengths.len();
        let head = self.counts[0];
        let tail = n - self.counts[self.counts.len() - 1];
        for j in 0..n {
            let (l, (s, c)) = (lengths[j], self.angles[j].sin_cos());
            let grows = if j < head {
                first / head as f64
            } else if j >= tail {
                -first / (n - tail) as f64
            } else {
                0.0
            };
            (x, y) = (x - l * s * way[j] + c * grows, y + l * c * way[j] + s * grows);
            (xx, xy, yy) = (xx + l * s * s, xy - l * s * c, yy + l * c * c);
        }
        let det = xx * yy - xy * xy;
        let (px, py) = ((x * yy - y * xy) / det, (y * xx - x * xy) / det);
        for (a, d) in self.angles.iter().zip(way) {
            let (s, c) = a.sin_cos();
            *d += px * s - py * c;
        }
    }

    /// Conjugate directions, downhill only, until `rounds` are over or nothing moves.
    /// Returns the moment, mass times depth.
    pub(super) fn settle(&mut self, rounds: usize) -> f64 {
        let weight = self.per_mm * self.length + self.masses.iter().sum::<f64>();
        let mut now = self.slope();
        let mut way = vec![0.0; self.angles.len()];
        let (mut slide, mut before) = (0.0, 0.0);
        let mut step = 0.1;
        for round in 0..rounds {
            let lengths = self.lengths();
            // Steepest in the metric where a link weighs its length and the cluster 1/L.
            let mut up: Vec<f64> =
                now.angles.iter().zip(&lengths).map(|(g, l)| g / (l.max(1e-9 * self.length) * weight)).collect();
            let up_slide = self.reduced(&now, weight);
            self.tangent(&mut up, up_slide);
            let size = self.dot(&up, up_slide, &up, up_slide, &lengths);
            if size < 1e-22 {
                break;
            }
            let keep = if round % 40 == 0 { 0.0 } else { size / before };
            before = size;
            for (d, u) in way.iter_mut().zip(&up) {
                *d = u + keep * *d;
            }
            slide = up_slide + keep * slide;
            if (self.first <= 0.0 && slide < 0.0) || (self.first >= self.room() && slide > 0.0) {
                slide = 0.0;
            }
            self.tangent(&mut way, slide);
            if self.dot(&way, slide, &up, up_slide, &lengths) <= 0.0 {
                (way, slide) = (up, up_slide);
            }
            let (angles, first) = (self.angles.clone(), self.first);
            step *= 2.0;
            let mut moved = false;
            for _ in 0..50 {
                for ((a, old), d) in self.angles.iter_mut().zip(&angles).zip(&way) {
                    *a = old + step * d;
                }
                self.first = (first + step * slide).clamp(0.0, self.room());
                if self.close() {
                    let next = self.slope();
                    if next.moment > now.moment {
                        (now, moved) = (next, true);
                        break;
                    }
                }
                step *= 0.5;
            }
            if !moved {
                (self.angles, self.first) = (angles, first);
                if keep == 0.0 {
                    break;
                }
                before = f64::INFINITY;
                step = 0.1;
            }
        }
        now.moment
    }

    /// How the moment grows when the cluster slides and the links turn to stay closed; scaled by the metric.
    fn reduced(&self, now: &Slope, weight: f64) -> f64 {
        // Turn needed per slide: the tangent way of (0, 1).
        let mut turn = vec![0.0; self.angles.len()];
        self.tangent(&mut turn, 1.0);
        let g = now.first + now.angles.iter().zip(&turn).map(|(g, t)| g * t).sum::<f64>();
        let g = g * self.length / weight;
        if (self.first <= 0.0 && g < 0.0) || (self.first >= self.room() && g > 0.0) { 0.0 } else { g }
    }

    fn dot(&self, a: &[f64], fa: f64, b: &[f64], fb: f64, lengths: &[f64]) -> f64 {
        a.iter().zip(b).zip(lengths).map(|((x, y), l)| x * y * l).sum::<f64>() + fa * fb / self.length
    }
}
