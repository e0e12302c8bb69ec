//! What a compartment is laid out with: its colour over the whole floor, light and shade included, and how even it is.
//!
//! The floor's colour is one polynomial of second order for each of the three numbers of a colour, fitted to what belongs to
//! it: first what is most common near the walls, then whatever lies near the fit, until that changes no more.

use super::colour::Lab;

/// Numbers of the polynomial: 1, x, y, x², xy, y².
const TERMS: usize = 6;

/// Fits of the floor, each to what lies near the last one.
const ROUNDS: usize = 6;

/// The least spread of a colour that is reckoned with: noise of a good phone.
const LEAST_SPREAD: Lab = [0.012, 0.004, 0.004];

/// The floor of a compartment.
#[derive(Debug, Clone)]
pub(super) struct Ground {
    terms: [[f32; TERMS]; 3],
    /// The usual distance from the fit, for each number of a colour.
    pub spread: Lab,
    /// Share of the compartment's pixels that lie near the fit.
    pub cover: f32,
    width: usize,
    height: usize,
}

impl Ground {
    /// Finds the floor in the seen colours of a compartment; `begin` says which pixels may begin it. None where hardly
    /// anything has one colour.
    pub(super) fn find(lab: &[Lab], width: usize, height: usize, begin: impl Fn(usize, usize) -> bool) -> Option<Self> {
        let step = ((width * height / 9_000) as f64).sqrt().max(1.0) as usize;
        let mut samples = Vec::new();
        for y in (0..height).step_by(step) {
            for x in (0..width).step_by(step) {
                samples.push((place(x, y, width, height), lab[y * width + x], begin(x, y)));
            }
        }
        let common = most_common(samples.iter().filter(|sample| sample.2).map(|sample| sample.1))?;
        let mut ground = Self {
            terms: common.map(|n| [n, 0.0, 0.0, 0.0, 0.0, 0.0]),
            spread: [0.05, 0.03, 0.03],
            cover: 0.0,
            width,
            height,
        };
        for round in 0..ROUNDS {
            let reach = if round == 0 { 2.0 } else { 3.0 };
            let near: Vec<_> = samples.iter().filter(|(at, lab, _)| ground.off(*at, *lab) < reach).collect();
            if near.len() < 40 {
                return None;
            }
            // A plane first: a curve that begins with few pixels runs away at the other end.
            let terms = if round < 2 { 3 } else { TERMS };
            ground.terms = fitted(near.iter().map(|(at, lab, _)| (*at, *lab)), terms)?;
            let mut rests: [Vec<f32>; 3] = Default::default();
            for (at, lab, _) in &near {
                let mean = ground.mean(*at);
                (0..3).for_each(|c| rests[c].push((lab[c] - mean[c]).abs()));
            }
            ground.spread = std::array::from_fn(|c| (1.4826 * median(&mut rests[c])).clamp(LEAST_SPREAD[c], 0.08));
            ground.cover = near.len() as f32 / samples.len() as f32;
        }
        Some(ground)
    }

    /// The floor's colour at a pixel.
    pub(super) fn at(&self, x: usize, y: usize) -> Lab {
        self.mean(place(x, y, self.width, self.height))
    }

    fn mean(&self, at: [f32; TERMS]) -> Lab {
        self.terms.map(|terms| terms.iter().zip(at).map(|(term, of)| term * of).sum())
    }

    /// How far a colour is from the floor's in usual distances, whatever the reason.
    fn off(&self, at: [f32; TERMS], lab: Lab) -> f32 {
        let mean = self.mean(at);
        (0..3).map(|c| ((lab[c] - mean[c]) / self.spread[c]).powi(2)).sum::<f32>().sqrt()
    }

    /// How far a colour is from the floor's when the floor may lie in shade: what is darker in all colours alike counts
    /// for less, down to half the light.
    pub(super) fn off_in_shade(&self, x: usize, y: usize, lab: Lab) -> f32 {
        // Half the light makes Oklab's numbers 0.79 times theirs: the cube root of a half.
        self.off_shaded(x, y, lab, 0.79, SHADE_COUNTS)
    }

    /// The same where the floor may lie in deep shade, a fifth of the light, that does not count at all: what is far from
    /// that has another colour than the floor.
    pub(super) fn off_in_deep_shade(&self, x: usize, y: usize, lab: Lab) -> f32 {
        self.off_shaded(x, y, lab, 0.585, 0.0)
    }

    fn off_shaded(&self, x: usize, y: usize, lab: Lab, deepest: f32, counts: f32) -> f32 {
        let mean = self.at(x, y);
        let along =
            (0..3).map(|c| lab[c] * mean[c]).sum::<f32>() / (0..3).map(|c| mean[c] * mean[c]).sum::<f32>().max(1e-6);
        let shade = along.clamp(deepest, 1.0);
        let lost = (1.0 - shade) * mean[0] * counts;
        let rest = |c: usize| ((lab[c] - mean[c] * shade) / self.spread[c]).powi(2);
        (rest(0) + rest(1) + rest(2) + (lost / self.spread[0]).powi(2)).sqrt()
    }
}

/// What darkening counts that a shadow could be.
const SHADE_COUNTS: f32 = 0.25;

fn place(x: usize, y: usize, width: usize, height: usize) -> [f32; TERMS] {
    let x = 2.0 * x as f32 / width as f32 - 1.0;
    let y = 2.0 * y as f32 / height as f32 - 1.0;
    [1.0, x, y, x * x, x * y, y * y]
}

/// The colour of which there is most, of cells as large as a floor's own unevenness, refined to their middle.
fn most_common(colours: impl Iterator<Item = Lab>) -> Option<Lab> {
    const CELL: Lab = [0.05, 0.025, 0.025];
    let colours: Vec<Lab> = colours.collect();
    let mut counts = std::collections::BTreeMap::<[i32; 3], u32>::new();
    for lab in &colours {
        let cell: [i32; 3] = std::array::from_fn(|c| (lab[c] / CELL[c]).floor() as i32);
        // Into the neighbours as well, so that a floor on a border between cells is not halved.
        for d in 0..8 {
            let to = std::array::from_fn(|c| cell[c] + ((d >> c) & 1));
            *counts.entry(to).or_default() += 1;
        }
    }
    let (cell, _) = counts.into_iter().max_by_key(|(_, count)| *count)?;
    let near = colours.iter().filter(|lab| (0..3).all(|c| (lab[c] / CELL[c] - cell[c] as f32).abs() <= 1.0));
    let mut numbers: [Vec<f32>; 3] = Default::default();
    near.for_each(|lab| (0..3).for_each(|c| numbers[c].push(lab[c])));
    if numbers[0].is_empty() {
        return None;
    }
    Some(std::array::from_fn(|c| median(&mut numbers[c])))
}

pub(super) fn median(numbers: &mut [f32]) -> f32 {
    if numbers.is_empty() {
        return 0.0;
    }
    let middle = numbers.len() / 2;
    *numbers.select_nth_unstable_by(middle, f32::total_cmp).1
}

/// Least squares for the first `terms` of the polynomial.
fn fitted(samples: impl Iterator<Item = ([f32; TERMS], Lab)>, terms: usize) -> Option<[[f32; TERMS]; 3]> {
    let mut squares = [[0.0f64; TERMS]; TERMS];
    let mut sums = [[0.0f64; 3]; TERMS];
    for (at, lab) in samples {
        for i in 0..terms {
            (0..terms).for_each(|j| squares[i][j] += f64::from(at[i] * at[j]));
            (0..3).for_each(|c| sums[i][c] += f64::from(at[i] * lab[c]));
        }
    }
    for i in 0..terms {
        // A touch towards flat, so that a floor seen only in a corner does not run away.
        squares[i][i] *= if i == 0 { 1.0 } else { 1.002 };
        let pivot = squares[i][i];
        if pivot < 1e-9 {
            return None;
        }
        for k in i + 1..terms {
            let share = squares[k][i] / pivot;
            (i..terms).for_each(|j| squares[k][j] -= share * squares[i][j]);
            (0..3).for_each(|c| sums[k][c] -= share * sums[i][c]);
        }
    }
    let mut found = [[0.0f32; TERMS]; 3];
    for (c, found) in found.iter_mut().enumerate() {
        for i in (0..terms).rev() {
            let rest: f64 = (i + 1..terms).map(|j| squares[i][j] * f64::from(found[j])).sum();
            found[i] = ((sums[i][c] - rest) / squares[i][i]) as f32;
        }
    }
    Some(found)
}
