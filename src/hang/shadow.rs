//! Where a shadow falls and how soft its edge is, from how high a thing lies over what its shadow falls on.

/// The window that gives the light: how wide it is and how far before the ground's plane, in millimetres. It is the one in whose
/// light the art is painted (`assets/art/room.py`): as wide as it is far in one direction, a little more in the other, and aside
/// by the direction below.
const WINDOW_MM: f32 = 1792.0;
const WINDOW_AWAY_MM: f32 = 960.0;
/// How far a shadow falls for each millimetre of height, to the right and down: the window stands up on the left, in the
/// direction (−0.50, 0.62, 0.60).
const FALL: [f32; 2] = [0.50 / 0.60, 0.62 / 0.60];

/// A shadow's place and edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shadow {
    /// How far it lies aside from what casts it, to the right and down, in millimetres.
    pub fall_mm: [f32; 2],
    /// How wide its edge is, from full shadow to full light, in millimetres.
    pub edge_mm: f32,
}

impl Shadow {
    /// How high a chain, a bangle or a ring hangs before the ground, in millimetres: half of a ring that is turned aside.
    pub const OF_BASE_MM: f32 = 4.2;
    /// How high a body hangs before the ground, in millimetres: below its ring.
    pub const OF_BODY_MM: f32 = 4.2;

    /// What a screen shows less of where a share `t` of the window is hidden is `t (FIRST + (ALL - FIRST) t)`, red, green and
    /// blue, as linear light. Where all of it is hidden, only the room's own light comes. The window is warmer than the room,
    /// and a bright ground is shown paler than it is, red most of all (`shown` in `assets/art/film.py`): so the edge of a
    /// shadow is warm.
    pub const FIRST_LOST: [f32; 3] = [0.135, 0.306, 0.531];
    /// See [`Self::FIRST_LOST`].
    pub const ALL_LOST: f32 = 0.64;

    /// How much higher a drop hangs than the one at the back, by its place from back to front, in millimetres: each hangs
    /// before those that it hides, and a crowd moves closer together.
    pub const fn lifted_mm(rank: usize) -> f32 {
        7.0 * rank as f32 / (rank as f32 + 2.5)
    }

    /// What something `height_mm` over the ground casts.
    ///
    /// The edge is as wide as the window seen from there through the thing's edge: similar triangles, height times width of
    /// the light over its distance. Source: any text of optics (umbra and penumbra).
    pub fn from(height_mm: f32) -> Self {
        let edge_mm = height_mm * WINDOW_MM / WINDOW_AWAY_MM;
        Self { fall_mm: FALL.map(|share| share * height_mm), edge_mm }
    }

    /// The shadow as a veil over a ground that is not known, where a share `hidden` of the window is hidden: sRGB and opacity,
    /// from 0 to 1.
    pub fn veil(hidden: f32) -> ([f32; 3], f32) {
        const COLOR: [f32; 3] = [0.2, 0.13, 0.08];
        const DARKEST: f32 = 0.44;
        // On linen, so much darkens about as much as what is lost.
        (COLOR, DARKEST * hidden * (1.0 + 2.0 * hidden) / 3.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rays from both edges of the window through the edge of a thing, met with the ground, one by one.
    #[test]
    fn the_edge_is_as_wide_as_the_rays_from_the_windows_edges_say() {
        for height in [0.5_f32, 2.0, 12.0] {
            let on_the_ground = |from: f32| from + (0.0 - from) * WINDOW_AWAY_MM / (WINDOW_AWAY_MM - height);
            let wide = (on_the_ground(-WINDOW_MM / 2.0) - on_the_ground(WINDOW_MM / 2.0)).abs();
            let shadow = Shadow::from(height);
            // The window's distance is counted from the thing there and from the ground here.
            assert!((shadow.edge_mm / wide - 1.0).abs() < 1.1 * height / WINDOW_AWAY_MM, "{wide} {shadow:?}");
        }
    }

    #[test]
    fn higher_is_softer_and_further() {
        let (low, high) = (Shadow::from(1.0), Shadow::from(12.0));
        assert!(high.edge_mm > low.edge_mm && high.fall_mm[0] > low.fall_mm[0]);
        assert_eq!(Shadow::from(0.0).edge_mm, 0.0);
        let lifted: Vec<f32> = (0..40).map(Shadow::lifted_mm).collect();
        assert!(lifted[0] == 0.0 && lifted.is_sorted() && lifted[39] < 7.0);
    }

    /// Light as a screen shows it, as in `assets/art/film.py`.
    fn shown(light: f32) -> f32 {
        if light < 0.55 { light } else { 0.55 + 0.45 * (1.0 - (-(light - 0.55) / 0.45).exp()) }
    }

    /// Linen's sRGB as linear light (IEC 61966-2-1).
    fn linear(byte: f32) -> f32 {
        ((byte / 255.0 + 0.055) / 1.055).powf(2.4)
    }

    /// What is lost of a colour where so much of the window is hidden, as told.
    fn lost(color: usize, hidden: f32) -> f32 {
        let first = Shadow::FIRST_LOST[color];
        hidden * (first + (Shadow::ALL_LOST - first) * hidden)
    }

    #[test]
    fn what_is_lost_is_what_the_windows_share_of_the_light_says() {
        // The window's share of the light on the ground: `room.py`'s light, summed over all directions by Lambert's law.
        let window = [0.722, 0.706, 0.677];
        let linen = [243.0, 235.0, 221.0].map(linear);
        for (color, (share, linen)) in window.into_iter().zip(linen).enumerate() {
            let light = 0.55 - 0.45 * (1.0 - (linen - 0.55) / 0.45_f32).ln();
            assert!((shown(light) - linen).abs() < 1e-4);
            for hidden in [0.25, 0.5, 0.75, 1.0] {
                let (seen, told) = (1.0 - shown(light * (1.0 - hidden * share)) / linen, lost(color, hidden));
                assert!((seen - told).abs() < 0.025, "{color} {hidden}: {seen} {told}");
            }
        }
    }

    #[test]
    fn the_veil_darkens_linen_as_much_as_is_lost() {
        for hidden in [0.25, 0.5, 1.0] {
            let (color, opacity) = Shadow::veil(hidden);
            let green = 235.0 / 255.0;
            let under = linear((green * (1.0 - opacity) + color[1] * opacity) * 255.0) / linear(235.0);
            assert!((1.0 - under - lost(1, hidden)).abs() < 0.03, "{hidden}: {under}");
        }
    }
}
