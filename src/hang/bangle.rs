//! A bangle at rest: a rigid ring on a wrist, its drops touching each other at the bottom of it.

use super::{HangError, error::sound};

/// A bangle with its drops.
#[derive(Debug, Clone, PartialEq)]
pub struct BangleLoad {
    /// Inside diameter.
    pub inside_mm: f64,
    /// How much of the ring drops can hang on, in degrees, its middle opposite the hook; 360 at most.
    pub free_arc_deg: f64,
    /// Masses of the drops, left to right.
    pub masses_g: Vec<f64>,
    /// Arc distances of neighbouring rings along the inside.
    pub gaps_mm: Vec<f64>,
}

/// Where the drops come to rest.
#[derive(Debug, Clone, PartialEq)]
pub struct BangleRest {
    /// Angle of each ring from straight down, positive to the right, in degrees.
    pub angles_deg: Vec<f64>,
    /// What the drops weigh together.
    pub mass_g: f64,
}

/// The balance Σ mᵢ sin θᵢ = 0 of a touching, frictionless cluster. With θᵢ = φ + δᵢ it has the closed form
/// tan φ = −Σ mᵢ sin δᵢ / Σ mᵢ cos δᵢ. The hook's own mass is left out.
///
/// # Errors
/// Figures that are no lengths or weights, or drops that do not rest within the free arc: too many, or so unlike that
/// they would slide past its end. The error says how many of them, from the left, would rest within it.
pub fn bangle(load: &BangleLoad) -> Result<BangleRest, HangError> {
    sound("the bangle's inside", load.inside_mm, false)?;
    sound("the free arc", load.free_arc_deg, false)?;
    let (loads, gaps) = (load.masses_g.len(), load.gaps_mm.len());
    if gaps != loads.saturating_sub(1) {
        return Err(HangError::Gaps { loads, gaps });
    }
    let mut mass_g = 0.0;
    for mass in &load.masses_g {
        mass_g += sound("a drop's weight", *mass, false)?;
    }
    let radius = load.inside_mm / 2.0;
    let mut delta = vec![0.0; loads];
    for (i, gap) in load.gaps_mm.iter().enumerate() {
        delta[i + 1] = delta[i] + sound("a gap", *gap, true)? / radius;
    }
    let free = load.free_arc_deg.min(360.0).to_radians();
    let angles = balanced(&load.masses_g, &delta);
    let taken = arc_of(&angles);
    // A row that just fills the arc fits, whatever the last digit says.
    let stays = |arc: f64| arc <= free * (1.0 + 1e-12);
    if !stays(taken) {
        let first = |n: &usize| stays(arc_of(&balanced(&load.masses_g[..*n], &delta[..*n])));
        return Err(HangError::NoRoom {
            cluster_mm: taken * radius,
            room_mm: free * radius,
            fits: (1..loads).rev().find(first).unwrap_or(0),
        });
    }
    Ok(BangleRest { angles_deg: angles.into_iter().map(f64::to_degrees).collect(), mass_g })
}

/// Angles at rest of drops whose rings keep the angles `delta` from the first one.
fn balanced(masses_g: &[f64], delta: &[f64]) -> Vec<f64> {
    let middle = delta.last().copied().unwrap_or(0.0) / 2.0;
    let moment = |f: fn(f64) -> f64| masses_g.iter().zip(delta).map(|(mass, d)| mass * f(d - middle)).sum::<f64>();
    let phi = (-moment(f64::sin)).atan2(moment(f64::cos));
    delta.iter().map(|d| phi + d - middle).collect()
}

/// The arc, its middle straight down, that holds all of these angles.
fn arc_of(angles: &[f64]) -> f64 {
    angles.iter().fold(0.0, |widest: f64, angle| widest.max(2.0 * angle.abs()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rest(masses: &[f64], gaps: &[f64]) -> BangleRest {
        let load = BangleLoad { inside_mm: 65.0, free_arc_deg: 240.0, masses_g: masses.into(), gaps_mm: gaps.into() };
        bangle(&load).unwrap()
    }

    #[test]
    fn the_cluster_is_balanced() {
        assert_eq!(rest(&[4.0], &[]).angles_deg, [0.0]);
        let even = rest(&[3.0, 3.0], &[8.0]).angles_deg;
        assert!(
            (even[0] + even[1]).abs() < 1e-12 && (even[1] - 4.0f64 / 32.5 * 180.0 / std::f64::consts::PI).abs() < 1e-9
        );
        let rest = rest(&[1.0, 7.5, 2.0, 0.4], &[9.0, 4.0, 12.0]);
        let torque: f64 =
            rest.angles_deg.iter().zip([1.0, 7.5, 2.0, 0.4]).map(|(angle, mass)| mass * angle.to_radians().sin()).sum();
        assert!(torque.abs() < 1e-12, "{torque}");
    }

    #[test]
    fn too_many_drops_are_refused_with_the_number_that_fits() {
        let load = BangleLoad { inside_mm: 60.0, free_arc_deg: 90.0, masses_g: vec![2.0; 9], gaps_mm: vec![10.0; 8] };
        assert!(matches!(bangle(&load), Err(HangError::NoRoom { fits: 5, .. })), "{:?}", bangle(&load));
        let load = BangleLoad { masses_g: vec![f64::NAN], gaps_mm: vec![], ..load };
        assert!(matches!(bangle(&load), Err(HangError::Nonsense { .. })));
    }
    /// A row that fills the free arc to the end fits; one whose heavy end pulls its light end past it does not.
    #[test]
    fn the_free_arc_is_counted_from_straight_down() {
        let gap = 60.0 * std::f64::consts::PI / 4.0 / 4.0;
        let full = BangleLoad { inside_mm: 60.0, free_arc_deg: 90.0, masses_g: vec![2.0; 5], gaps_mm: vec![gap; 4] };
        assert!((bangle(&full).unwrap().angles_deg[4] - 45.0).abs() < 1e-9);
        let uneven = BangleLoad { masses_g: vec![0.1, 0.1, 0.1, 9.0, 9.0], ..full };
        let refused = bangle(&uneven).unwrap_err();
        let HangError::NoRoom { cluster_mm, room_mm, fits } = refused else { panic!("{refused}") };
        assert!(cluster_mm > room_mm, "{refused}");
        let first = |n: usize| {
            bangle(&BangleLoad {
                masses_g: uneven.masses_g[..n].to_vec(),
                gaps_mm: uneven.gaps_mm[..n - 1].to_vec(),
                ..uneven
            })
        };
        assert!(fits < 5 && first(fits).is_ok() && first(fits + 1).is_err(), "{fits}");
    }

    #[test]
    fn an_empty_bangle_hangs() {
        assert_eq!(rest(&[], &[]), BangleRest { angles_deg: vec![], mass_g: 0.0 });
    }
}
