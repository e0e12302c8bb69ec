//! Where a shadow falls and how soft its edge is, from how high a thing lies over what its shadow falls on.

/// The window that gives the light: how wide it is and how far away, in millimetres. It is the one in whose light the art is
/// painted (`assets/art/room.py`): half as wide as far in one direction, a little more in the other.
const WINDOW_MM: f32 = 1792.0;
const WINDOW_AWAY_MM: f32 = 1600.0;
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
    /// How dark it is where it is full.
    pub dark: f32,
}

impl Shadow {
    /// Its colour as sRGB, from 0 to 1: what linen looks like where only the room's own light comes.
    pub const COLOR: [f32; 3] = [0.2, 0.13, 0.08];
    /// How high a chain or bangle lies over the ground, in millimetres.
    pub const OF_BASE_MM: f32 = 1.6;
    /// How high a ring lies over what is behind it, in millimetres.
    pub const OF_RING_MM: f32 = 2.0;
    /// How high a body lies over what is behind it, in millimetres.
    pub const OF_BODY_MM: f32 = 2.4;

    /// How much higher a drop lies than the one at the back, by its place from back to front, in millimetres.
    pub const fn lifted_mm(rank: usize) -> f32 {
        rank as f32 * 0.8
    }

    /// What something `height_mm` over the ground casts.
    ///
    /// The edge is as wide as the window seen from there through the thing's edge: similar triangles, height times width of
    /// the light over its distance. Source: any text of optics (umbra and penumbra). The higher, the more light of the room
    /// comes in from the sides.
    pub fn from(height_mm: f32) -> Self {
        let edge_mm = height_mm * WINDOW_MM / WINDOW_AWAY_MM;
        Self { fall_mm: FALL.map(|share| share * height_mm), edge_mm, dark: 0.52 / (1.0 + 0.05 * height_mm) }
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
    fn higher_is_softer_further_and_paler() {
        let (low, high) = (Shadow::from(1.0), Shadow::from(12.0));
        assert!(high.edge_mm > low.edge_mm && high.fall_mm[0] > low.fall_mm[0] && high.dark < low.dark);
        assert_eq!(Shadow::from(0.0).edge_mm, 0.0);
    }
}
