//! A bangle at rest: a rigid ring on a wrist, its drops touching each other at the bottom of it.
//!
//! **The drops** slide along the wire without friction, so the row of them comes to rest where Σ mᵢ sin θᵢ = 0 about the
//! vertical through the ring's middle, wherever the ring itself has turned to, as long as the row is within the free
//! arc. A row that would pass an end of the arc takes the ring with it, just as far as it needs.
//!
//! **The ring** is carried by the wrist, whose force passes through the ring's middle but for friction. Plain wire is in
//! balance however it is turned; the hook's extra mass m_h at the angle ψ from the top would turn it with
//! m_h sin ψ. A force carried without slipping is at most atan µ off the middle, so the wrist holds the ring at every
//! angle if m_h ≤ M·sin(atan µ), M being everything's mass. Then it stays as it is put on, hook up. Where the hook is
//! heavier than that, nothing holds it up: it comes down until the end of the free arc lies against the row, and ring
//! and row balance together, Σ mᵢ sin θᵢ + m_h sin θ_h = 0, with the least energy of all such places.
//!
//! Source: moments about the middle of the ring and Coulomb's friction, as in any textbook of statics; derived here.

use super::{
    HangError, Side,
    error::{fitting, sound},
};

/// Friction between a metal bangle and skin. From memory: 0.2 to 0.6 is measured on dry skin; a low value.
pub const WRIST_GRIP: f64 = 0.3;

/// A bangle with its drops.
#[derive(Debug, Clone, PartialEq)]
pub struct BangleLoad {
    /// Inside diameter in millimetres.
    pub inside_mm: f64,
    /// How much of the ring drops can hang on, in degrees, its middle opposite the hook; 360 at most.
    pub free_arc_deg: f64,
    /// Mass of the whole ring, hook included.
    pub ring_g: f64,
    /// Mass of the hook beyond plain wire; zero where it is not known.
    pub hook_g: f64,
    /// Coefficient of friction between ring and wrist; [`WRIST_GRIP`] unless known better, zero for a ring that turns freely.
    pub grip: f64,
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
    /// How far the bangle has turned: the angle of the free arc's middle from straight down, positive to the right, in
    /// degrees. The hook is opposite; zero has it at the top.
    pub turn_deg: f64,
    /// The end of the free arc that the hook's weight presses against the row.
    pub against: Option<Side>,
    /// What the drops weigh together.
    pub mass_g: f64,
}

/// A bangle's rest, as the module's head tells it.
///
/// # Errors
/// Figures that are no lengths or weights, a hook heavier than its bangle, or more drops than the free arc has room
/// for; the error says how many of them, from the left, it has room for.
pub fn bangle(load: &BangleLoad) -> Result<BangleRest, HangError> {
    let radius = sound("the bangle's inside", load.inside_mm, false)? / 2.0;
    let free = sound("the free arc", load.free_arc_deg, false)?.min(360.0).to_radians();
    let ring = sound("the bangle's weight", load.ring_g, false)?;
    let hook = sound("the hook's weight", load.hook_g, true)?;
    sound("the wrist's grip", load.grip, true)?;
    if hook > ring {
        let wanted = "no more than the whole bangle's weight";
        return Err(HangError::Nonsense { what: "the hook's weight", value: hook, wanted });
    }
    let (loads, gaps) = (load.masses_g.len(), load.gaps_mm.len());
    if gaps != loads.saturating_sub(1) {
        return Err(HangError::Gaps { loads, gaps });
    }
    let mut mass_g = 0.0;
    for mass in &load.masses_g {
        mass_g += sound("a drop's weight", *mass, false)?;
    }
    let mut delta = vec![0.0; loads];
    for (i, gap) in load.gaps_mm.iter().enumerate() {
        delta[i + 1] = delta[i] + sound("a gap", *gap, true)? / radius;
    }
    let taken = delta.last().copied().unwrap_or(0.0);
    // A row that just fills the arc fits, whatever the last digit says.
    let ample = 1.0 + 1e-12;
    if taken > free * ample {
        let room_mm = free * radius;
        let fits = fitting(&load.gaps_mm, room_mm * ample);
        return Err(HangError::NoRoom { cluster_mm: taken * radius, room_mm, fits });
    }
    let (pull, mut angles) = balanced(&load.masses_g, &delta);
    // How far the ring may be turned against the row, to the left and to the right.
    let half = free / 2.0;
    let (least, most) = match (angles.first(), angles.last()) {
        (Some(first), Some(last)) => (last - half, first + half),
        _ => (-std::f64::consts::PI, std::f64::consts::PI),
    };
    let holds = (ring + mass_g) * load.grip.atan().sin();
    let (lean, turn, against) = if hook <= holds {
        (0.0, 0.0f64.max(least).min(most), None)
    } else {
        // The farther the ring turns against the row, the lower the hook is.
        let (apart, side) = if most >= -least { (most, Side::Left) } else { (least, Side::Right) };
        let apart = apart.clamp(-std::f64::consts::PI, std::f64::consts::PI);
        let lean = if loads == 0 { 0.0 } else { (hook * apart.sin()).atan2(pull - hook * apart.cos()) };
        (lean, lean + apart, (loads > 0).then_some(side))
    };
    for angle in &mut angles {
        *angle = (*angle + lean).to_degrees();
    }
    Ok(BangleRest { angles_deg: angles, turn_deg: turn.to_degrees(), against, mass_g })
}

/// The row alone: the mass that would pull as much in its middle, and the angles at rest of drops whose rings keep the
/// angles `delta` from the first one. With θᵢ = φ + δᵢ, Σ mᵢ sin θᵢ = 0 has the closed form
/// tan φ = −Σ mᵢ sin δᵢ / Σ mᵢ cos δᵢ.
fn balanced(masses_g: &[f64], delta: &[f64]) -> (f64, Vec<f64>) {
    let middle = delta.last().copied().unwrap_or(0.0) / 2.0;
    let moment = |f: fn(f64) -> f64| masses_g.iter().zip(delta).map(|(mass, d)| mass * f(d - middle)).sum::<f64>();
    let (sines, cosines) = (moment(f64::sin), moment(f64::cos));
    let phi = (-sines).atan2(cosines);
    (sines.hypot(cosines), delta.iter().map(|d| phi + d - middle).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn load(masses: &[f64], gaps: &[f64]) -> BangleLoad {
        BangleLoad {
            inside_mm: 65.0,
            free_arc_deg: 240.0,
            ring_g: 9.0,
            hook_g: 0.0,
            grip: WRIST_GRIP,
            masses_g: masses.into(),
            gaps_mm: gaps.into(),
        }
    }

    fn rest(masses: &[f64], gaps: &[f64]) -> BangleRest {
        bangle(&load(masses, gaps)).unwrap()
    }

    /// Σ mᵢ sin θᵢ, with the hook's share opposite the free arc's middle.
    fn moment(load: &BangleLoad, rest: &BangleRest) -> f64 {
        let sine = |angle: f64| angle.to_radians().sin();
        let drops: f64 = rest.angles_deg.iter().zip(&load.masses_g).map(|(angle, mass)| mass * sine(*angle)).sum();
        drops + load.hook_g * sine(rest.turn_deg + 180.0)
    }

    #[test]
    fn the_row_is_balanced() {
        assert_eq!(rest(&[4.0], &[]).angles_deg, [0.0]);
        let even = rest(&[3.0, 3.0], &[8.0]).angles_deg;
        assert!(
            (even[0] + even[1]).abs() < 1e-12 && (even[1] - 4.0f64 / 32.5 * 180.0 / std::f64::consts::PI).abs() < 1e-9
        );
        let four = load(&[1.0, 7.5, 2.0, 0.4], &[9.0, 4.0, 12.0]);
        let rest = bangle(&four).unwrap();
        assert!(moment(&four, &rest).abs() < 1e-12 && rest.turn_deg == 0.0, "{rest:?}");
        // A hook of a usual weight is held by the wrist and changes nothing.
        assert_eq!(bangle(&BangleLoad { hook_g: 1.2, ..four }), Ok(rest));
    }

    #[test]
    fn too_many_drops_are_refused_with_the_number_that_fits() {
        // 60 mm across, 90°: 47.1 mm of arc, room for four gaps of 10 mm.
        let many = BangleLoad { inside_mm: 60.0, free_arc_deg: 90.0, ..load(&[2.0; 9], &[10.0; 8]) };
        let refused = bangle(&many).unwrap_err();
        assert!(matches!(refused, HangError::NoRoom { fits: 5, .. }), "{refused}");
        let five = BangleLoad { masses_g: vec![2.0; 5], gaps_mm: vec![10.0; 4], ..many };
        assert!(bangle(&five).is_ok());
    }

    #[test]
    fn nonsense_is_refused() {
        let good = load(&[2.0], &[]);
        for bad in [
            BangleLoad { masses_g: vec![f64::NAN], ..good.clone() },
            BangleLoad { inside_mm: 0.0, ..good.clone() },
            BangleLoad { free_arc_deg: -1.0, ..good.clone() },
            BangleLoad { ring_g: f64::INFINITY, ..good.clone() },
            BangleLoad { hook_g: -0.1, ..good.clone() },
            BangleLoad { hook_g: 9.1, ..good.clone() },
            BangleLoad { grip: f64::NAN, ..good.clone() },
        ] {
            assert!(matches!(bangle(&bad), Err(HangError::Nonsense { .. })), "{bad:?}");
        }
        assert!(matches!(bangle(&BangleLoad { gaps_mm: vec![3.0], ..good }), Err(HangError::Gaps { .. })));
    }

    /// A row that fills the free arc to the end fits; one whose heavy end would pull its light end past it turns the
    /// ring, and is in balance all the same.
    #[test]
    fn an_uneven_row_takes_the_ring_along() {
        let gap = 60.0 * std::f64::consts::PI / 4.0 / 4.0;
        let full = BangleLoad { inside_mm: 60.0, free_arc_deg: 90.0, ..load(&[2.0; 5], &[gap; 4]) };
        let even = bangle(&full).unwrap();
        assert!((even.angles_deg[4] - 45.0).abs() < 1e-9 && even.turn_deg.abs() < 1e-9);
        let six = BangleLoad { masses_g: vec![2.0; 6], gaps_mm: vec![gap; 5], ..full.clone() };
        assert!(matches!(bangle(&six), Err(HangError::NoRoom { fits: 5, .. })), "{:?}", bangle(&six));
        let uneven = BangleLoad { masses_g: vec![0.1, 0.1, 0.1, 9.0, 9.0], ..full };
        let rest = bangle(&uneven).unwrap();
        assert!(moment(&uneven, &rest).abs() < 1e-12, "{rest:?}");
        assert!((rest.angles_deg[0] - rest.turn_deg + 45.0).abs() < 1e-9 && rest.turn_deg < -30.0, "{rest:?}");
    }

    /// The wrist holds m_h = M·sin(atan µ), and not a hair more.
    #[test]
    fn the_wrist_holds_so_much_and_no_more() {
        let piece = BangleLoad { grip: 0.4, ..load(&[3.0, 3.0], &[8.0]) };
        let holds = 15.0 * 0.4 / 1.16f64.sqrt();
        let turn = |hook_g: f64| bangle(&BangleLoad { hook_g, ..piece.clone() }).unwrap().turn_deg;
        assert!(turn(holds * 0.999) == 0.0 && turn(holds * 1.001).abs() > 90.0);
    }

    /// One drop of mass m and a hook of m_h with the arc's end between them: with the arc's half h, the drop leans by
    /// tan α = m_h sin h / (m − m_h cos h), the closed form for two masses at a fixed angle.
    #[test]
    fn a_heavy_hook_comes_down_to_the_drop() {
        let piece = BangleLoad { hook_g: 4.0, grip: 0.0, ..load(&[5.0], &[]) };
        let rest = bangle(&piece).unwrap();
        let h = 120f64.to_radians();
        assert!((rest.angles_deg[0].to_radians() - (4.0 * h.sin()).atan2(5.0 - 4.0 * h.cos())).abs() < 1e-12);
        assert!((rest.turn_deg - rest.angles_deg[0] - 120.0).abs() < 1e-9 && rest.against == Some(Side::Left));
        // The hook is to the left of the bottom, the drop to the right of it.
        assert!(rest.turn_deg + 180.0 > 270.0 && rest.angles_deg[0] > 0.0, "{rest:?}");
        // Without a drop it hangs at the bottom.
        let bare = bangle(&BangleLoad { hook_g: 4.0, grip: 0.0, ..load(&[], &[]) }).unwrap();
        assert_eq!((bare.turn_deg.abs(), bare.against), (180.0, None));
    }

    /// A plain scan over turn and place finds no lower place and none as low far from the one found, except the mirror
    /// image's.
    #[test]
    fn nothing_lies_lower_on_a_free_wrist() {
        for (masses, gaps, hook_g, free_arc_deg) in [
            (vec![5.0], vec![], 1.2, 240.0),
            (vec![1.0, 7.5, 2.0, 0.4], vec![9.0, 4.0, 12.0], 1.2, 240.0),
            (vec![9.0, 0.2, 0.2, 0.2], vec![20.0; 3], 3.0, 200.0),
            (vec![0.2, 0.2, 9.0], vec![20.0; 2], 3.0, 120.0),
            (vec![0.3, 0.4], vec![6.0], 6.0, 300.0),
        ] {
            let piece = BangleLoad { hook_g, free_arc_deg, grip: 0.0, ..load(&masses, &gaps) };
            let rest = bangle(&piece).unwrap();
            assert!(moment(&piece, &rest).abs() < 1e-12, "{rest:?}");
            let mut delta = vec![0.0];
            for gap in &gaps {
                delta.push(delta[delta.len() - 1] + (gap / 32.5f64).to_degrees());
            }
            // Mass times depth below the ring's middle, in ring radii, with the first drop at `first`.
            let depth = |first: f64, turn: f64| -> f64 {
                let drops: f64 = masses.iter().zip(&delta).map(|(mass, d)| mass * (first + d).to_radians().cos()).sum();
                drops + hook_g * (turn + 180.0).to_radians().cos()
            };
            let found = depth(rest.angles_deg[0], rest.turn_deg);
            let last = delta[delta.len() - 1];
            let mut deepest = f64::NEG_INFINITY;
            for turn in 0..720 {
                let turn = f64::from(turn) / 2.0 - 180.0;
                for place in 0..=400 {
                    let first = turn - free_arc_deg / 2.0 + (free_arc_deg - last) * f64::from(place) / 400.0;
                    deepest = deepest.max(depth(first, turn));
                }
            }
            assert!(deepest <= found + 1e-9, "{deepest} is deeper than {found}: {rest:?}");
            assert!(deepest > found - 1e-3, "{deepest} is as deep as it gets, not {found}: {rest:?}");
            let ring_sees = |angle: f64| (angle - rest.turn_deg).abs() <= free_arc_deg / 2.0 + 1e-9;
            assert!(rest.angles_deg.iter().all(|angle| ring_sees(*angle)), "{rest:?}");
        }
    }

    #[test]
    fn an_empty_bangle_hangs() {
        let empty = BangleRest { angles_deg: vec![], turn_deg: 0.0, against: None, mass_g: 0.0 };
        assert_eq!(rest(&[], &[]), empty);
    }
}
