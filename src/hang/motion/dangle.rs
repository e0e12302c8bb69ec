//! A drop that hangs from a finger, or flies: its ring is led, its body swings below.

use super::{
    Feel, GRAVITY, Hanging, LONGEST_FRAME_S, STEP_S,
    vector::{V, v},
};
use crate::hang::Point;

/// A ring that is moved further than this in a frame was put there: its body goes along without a swing.
const PUT_MM: f64 = 120.0;
/// Nothing in a hand goes faster, in mm/s.
const FASTEST_MM_S: f64 = 2500.0;

/// A drop in the hand. Places are in millimetres, from anywhere.
#[derive(Debug, Clone)]
pub struct Dangle {
    length: f64,
    ring: V,
    body: V,
    speed: V,
    owed_s: f64,
}

impl Dangle {
    /// A drop that hangs still, its ring at `ring`.
    pub fn at_rest(is: &Hanging, ring: Point) -> Self {
        Self::leaning(is, ring, 0.0)
    }

    /// The same, leaning by so much to the right.
    pub fn leaning(is: &Hanging, ring: Point, lean_rad: f64) -> Self {
        let (ring, length) = (V::from(ring), is.swing_mm.max(1.0));
        let body = ring + v(lean_rad.sin(), lean_rad.cos()) * length;
        Self { length, ring, body, speed: V::ZERO, owed_s: 0.0 }
    }

    /// Leads the ring to `to` within `seconds`, evenly; the body follows.
    pub fn follow(&mut self, to: Point, seconds: f64) {
        let to = V::from(to);
        if (to - self.ring).length() > PUT_MM {
            self.body += to - self.ring;
            self.ring = to;
        }
        self.owed_s += if seconds.is_finite() { seconds.clamp(0.0, LONGEST_FRAME_S) } else { 0.0 };
        let steps = ((self.owed_s + 1e-9) / STEP_S).floor();
        self.owed_s -= steps * STEP_S;
        if steps < 1.0 {
            return;
        }
        let each = (to - self.ring) * (1.0 / steps);
        for _ in 0..steps as u32 {
            let before = self.body;
            self.ring += each;
            self.speed += v(0.0, GRAVITY * STEP_S);
            self.body += self.speed * STEP_S;
            let (along, _) = (self.body - self.ring).split();
            self.body = self.ring + along * self.length;
            let speed = (self.body - before) * (1.0 / STEP_S);
            self.speed = Feel::ROOM.slowed(speed, STEP_S).at_most(FASTEST_MM_S);
        }
    }

    /// How far it leans from hanging straight down, in radians, positive to the right.
    pub fn lean_rad(&self) -> f64 {
        let down = self.body - self.ring;
        down.x.atan2(down.y)
    }

    /// Whether it hangs still where its ring is.
    pub fn is_still(&self) -> bool {
        self.speed.length() < super::STILL_MM_S && self.lean_rad().abs() < 0.01
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drop(swing_mm: f64) -> Hanging {
        Hanging { token: 0, mass_g: 3.0, wire_mm: 1.0, width_mm: 10.0, swing_mm }
    }

    /// The pendulum's period, 2π√(l/g) times its large-angle factor. Source: NIST Digital Library of Mathematical
    /// Functions, 22.19(i); the values for 50 mm and 20 degrees are 0.4486467569 s and 1.007669025792.
    #[test]
    fn it_swings_as_a_pendulum() {
        let here = Point { x_mm: 0.0, y_mm: 0.0 };
        let mut dangle = Dangle::leaning(&drop(50.0), here, 20_f64.to_radians());
        let mut crossings = Vec::new();
        for step in 0..3000 {
            let before = dangle.lean_rad();
            dangle.follow(here, STEP_S);
            let now = dangle.lean_rad();
            if before > 0.0 && now <= 0.0 {
                crossings.push((f64::from(step) + before / (before - now)) * STEP_S);
            }
        }
        let period = crossings[1] - crossings[0];
        let wanted = 0.448_646_756_9 * 1.007_669_025_792;
        println!("period {period:.5} s, pendulum {wanted:.5} s");
        assert!((period / wanted - 1.0).abs() < 0.02);
    }

    #[test]
    fn it_trails_behind_and_comes_to_rest() {
        let mut dangle = Dangle::at_rest(&drop(30.0), Point { x_mm: 0.0, y_mm: 0.0 });
        for frame in 1..=10 {
            dangle.follow(Point { x_mm: f64::from(frame) * 8.0, y_mm: 0.0 }, 1.0 / 60.0);
        }
        assert!(dangle.lean_rad() < -0.1, "led to the right it hangs back: {}", dangle.lean_rad());
        for _ in 0..600 {
            dangle.follow(Point { x_mm: 80.0, y_mm: 0.0 }, 1.0 / 60.0);
        }
        assert!(dangle.is_still(), "{dangle:?}");
    }

    #[test]
    fn how_the_time_is_cut_up_changes_nothing_and_nonsense_does_no_harm() {
        let here = Point { x_mm: 0.0, y_mm: 0.0 };
        let (mut one, mut two) = (Dangle::leaning(&drop(30.0), here, 1.0), Dangle::leaning(&drop(30.0), here, 1.0));
        for _ in 0..60 {
            one.follow(here, 1.0 / 60.0);
            (0..4).for_each(|_| two.follow(here, 1.0 / 240.0));
        }
        assert!((one.lean_rad() - two.lean_rad()).abs() < 1e-9);
        for (to, seconds) in [(1e9, 1.0), (0.0, f64::NAN), (-1e9, f64::INFINITY), (5.0, -1.0)] {
            one.follow(Point { x_mm: to, y_mm: to }, seconds);
            assert!(one.lean_rad().is_finite());
        }
    }
}
