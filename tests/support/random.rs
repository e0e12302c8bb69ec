//! Numbers that are the same in every run.

/// A generator with the constants of Knuth's MMIX.
pub struct Random(pub u64);

impl Random {
    /// A number below `below`.
    pub fn below(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }

    /// One of `len` places.
    pub fn of(&mut self, len: usize) -> usize {
        self.below(len as u64) as usize
    }
}
