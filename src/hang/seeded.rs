//! Numbers from a seed, for the tests.

/// SplitMix64, a public domain algorithm.
pub(super) struct Seeded(pub u64);

impl Seeded {
    /// A number within `low..high`.
    pub(super) fn next(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        low + (high - low) * ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }
}
