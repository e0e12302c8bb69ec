//! Chance, repeatable by its seed: the same seed gives the same surprise.

/// Numbers that look like chance: the generator SplitMix64 of Steele, Lea and Flood (2014).
#[derive(Debug, Clone)]
pub(super) struct Chance(pub(super) u64);

impl Chance {
    /// The next number.
    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// The next number, from 0 and below `n`; 0 where `n` is 0.
    pub(super) fn below(&mut self, n: usize) -> usize {
        (self.next() % n.max(1) as u64) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first numbers from the seed 1234567, as the public domain implementation by Sebastiano Vigna gives them
    /// (splitmix64.c, prng.di.unimi.it; also the worked example of Rosetta Code, "Pseudo-random numbers/Splitmix64").
    #[test]
    fn it_gives_the_published_numbers() {
        let mut chance = Chance(1_234_567);
        let first: Vec<u64> = (0..5).map(|_| chance.next()).collect();
        assert_eq!(
            first,
            [
                6_457_827_717_110_365_317,
                3_203_168_211_198_807_973,
                9_817_491_932_198_370_423,
                4_593_380_528_125_082_431,
                16_408_922_859_458_223_821
            ]
        );
    }
}
