//! Rings on a line, side by side: what slides keeps its order and its distance.

/// One ring on the line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Slider {
    /// Where it is, in millimetres along the line.
    pub at: f64,
    /// How hard it is to move.
    pub mass: f64,
    /// What it keeps from the ring to its left, in millimetres; nothing to the left of the first.
    pub gap: f64,
}

/// Moves the rings as little as it takes, weighed by their masses, so that all keep their gaps and stay within
/// `0..=length`. They come in their order from the left.
///
/// Less the gaps it is the nearest rising row of numbers, which pooling neighbours that are out of order finds
/// exactly: Ayer et al., "An empirical distribution function for sampling with incomplete information", Annals of
/// Mathematical Statistics 26 (1955).
pub(super) fn keep_apart(sliders: &mut [Slider], length: f64, pools: &mut Vec<(f64, f64, usize)>) {
    pools.clear();
    let mut offset = 0.0;
    for (i, slider) in sliders.iter().enumerate() {
        offset += if i == 0 { 0.0 } else { slider.gap };
        let (mut mean, mut mass, mut count) = (slider.at - offset, slider.mass, 1);
        while let Some(&(left, left_mass, left_count)) = pools.last()
            && left > mean
        {
            pools.pop();
            mean = (mean * mass + left * left_mass) / (mass + left_mass);
            (mass, count) = (mass + left_mass, count + left_count);
        }
        pools.push((mean, mass, count));
    }
    let most = (length - offset).max(0.0);
    let mut places = pools.iter().flat_map(|&(mean, _, count)| std::iter::repeat_n(mean.clamp(0.0, most), count));
    let mut offset = 0.0;
    for (i, slider) in sliders.iter_mut().enumerate() {
        offset += if i == 0 { 0.0 } else { slider.gap };
        slider.at = places.next().unwrap_or(most) + offset;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hang::seeded::Seeded;

    fn apart(rings: &[(f64, f64, f64)], length: f64) -> Vec<f64> {
        let mut sliders: Vec<Slider> = rings.iter().map(|&(at, mass, gap)| Slider { at, mass, gap }).collect();
        keep_apart(&mut sliders, length, &mut Vec::new());
        sliders.iter().map(|slider| slider.at).collect()
    }

    #[test]
    fn rings_that_keep_their_gaps_stay() {
        assert_eq!(apart(&[(1.0, 2.0, 0.0), (5.0, 1.0, 3.0), (9.5, 1.0, 4.0)], 20.0), [1.0, 5.0, 9.5]);
        assert!(apart(&[], 20.0).is_empty());
    }

    #[test]
    fn what_is_too_near_parts_about_its_centre_of_mass() {
        let found = apart(&[(10.0, 3.0, 0.0), (11.0, 1.0, 5.0)], 40.0);
        assert_eq!(found, [9.0, 14.0]);
        // 3·9 + 1·14 is 3·10 + 1·11.
        assert_eq!(apart(&[(38.0, 1.0, 0.0), (39.0, 1.0, 5.0)], 40.0), [35.0, 40.0]);
        assert_eq!(apart(&[(-8.0, 1.0, 0.0), (1.0, 1.0, 5.0)], 40.0), [0.0, 5.0]);
    }

    /// No other places that keep gaps and ends are nearer: tried at random round the answer.
    #[test]
    fn nothing_is_nearer() {
        let mut seeded = Seeded(7);
        let mut chance = || seeded.next(0.0, 1.0);
        for _ in 0..200 {
            let rings: Vec<_> = (0..7).map(|_| (chance() * 60.0, 0.2 + chance() * 5.0, 1.0 + chance() * 6.0)).collect();
            let found = apart(&rings, 50.0);
            let cost =
                |at: &[f64]| at.iter().zip(&rings).map(|(a, (from, mass, _))| mass * (a - from).powi(2)).sum::<f64>();
            let sound = |at: &[f64]| {
                at[0] >= -1e-9
                    && at[6] <= 50.0 + 1e-9
                    && at.windows(2).zip(&rings[1..]).all(|(pair, ring)| pair[1] - pair[0] >= ring.2 - 1e-9)
            };
            assert!(sound(&found), "{found:?}");
            for _ in 0..300 {
                let (from, to) = ((chance() * 7.0) as usize, (chance() * 7.0) as usize + 1);
                let shift = (chance() - 0.5) * 2.0;
                let mut other = found.clone();
                for at in &mut other[from.min(to)..to.max(from + 1)] {
                    *at += shift;
                }
                assert!(!sound(&other) || cost(&other) >= cost(&found) - 1e-9, "{found:?} {other:?}");
            }
        }
    }
}
