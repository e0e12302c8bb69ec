//! Soft shadows, as the stage has them: the outline of what casts them, aside, and blurred as wide as the window is.

use tiny_skia::{IntSize, Pixmap};

use crate::hang::Shadow;

/// How much of each pixel something covers, from 0 to 1.
struct Cover {
    width: usize,
    height: usize,
    there: Vec<f32>,
}

/// The shadow of what is drawn on `drawn`, as a picture of the same size; its edge is `edge_px` wide from full shadow to full
/// light.
pub(super) fn shadow_of(drawn: &Pixmap, edge_px: f32) -> Option<Pixmap> {
    let cover = Cover::softened(drawn, edge_px);
    let bytes = cover.there.iter().flat_map(|there| {
        let (color, alpha) = Shadow::veil(there.clamp(0.0, 1.0));
        let [red, green, blue] = color.map(|part| (part * alpha * 255.0 + 0.5) as u8);
        // Premultiplied, and never more colour than cover.
        [red, green, blue, (alpha * 255.0 + 0.5) as u8]
    });
    Pixmap::from_vec(bytes.collect(), IntSize::from_wh(drawn.width(), drawn.height())?)
}

impl Cover {
    /// What is drawn on `drawn`, its edges `edge_px` wide.
    fn softened(drawn: &Pixmap, edge_px: f32) -> Self {
        let there = drawn.pixels().iter().map(|pixel| f32::from(pixel.alpha()) / 255.0).collect();
        let mut cover = Self { width: drawn.width() as usize, height: drawn.height() as usize, there };
        // Two averages, each over half of the edge: together they are as wide as it, and have no corner.
        for _ in 0..2 {
            cover.average(edge_px / 2.0);
        }
        cover
    }

    /// Averages over `wide` pixels, along and across.
    fn average(&mut self, wide: f32) {
        if wide <= 1.0 {
            return;
        }
        let (width, height) = (self.width, self.height);
        for row in self.there.chunks_exact_mut(width) {
            let averaged = averaged(row, wide);
            row.copy_from_slice(&averaged);
        }
        for x in 0..width {
            let column: Vec<f32> = (0..height).map(|y| self.there[y * width + x]).collect();
            for (y, there) in averaged(&column, wide).into_iter().enumerate() {
                self.there[y * width + x] = there;
            }
        }
    }
}

/// Each value averaged with its neighbours over `wide` values, the outermost counted in part; beyond the ends there is nothing.
fn averaged(values: &[f32], wide: f32) -> Vec<f32> {
    let whole = ((wide - 1.0) / 2.0).floor();
    let (reach, part) = (whole as usize, (wide - 1.0) / 2.0 - whole);
    let mut sums = vec![0.0_f64];
    for value in values {
        sums.push(sums[sums.len() - 1] + f64::from(*value));
    }
    let at = |i: Option<usize>| i.and_then(|i| values.get(i)).copied().unwrap_or_default();
    (0..values.len())
        .map(|i| {
            let (from, to) = (i.saturating_sub(reach), (i + reach + 1).min(values.len()));
            let ends = at(i.checked_sub(reach + 1)) + at(Some(i + reach + 1));
            ((sums[to] - sums[from]) as f32 + part * ends) / wide
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use tiny_skia::{Color, Paint, Rect, Transform};

    use super::*;

    #[test]
    fn an_edge_is_as_wide_as_told_and_the_shadow_as_heavy_as_what_casts_it() {
        let mut drawn = Pixmap::new(120, 40).unwrap();
        let mut paint = Paint { anti_alias: false, ..Paint::default() };
        paint.set_color(Color::BLACK);
        drawn.fill_rect(Rect::from_xywh(40.0, 0.0, 40.0, 40.0).unwrap(), &paint, Transform::identity(), None);
        for edge in [4.0, 9.5, 20.0] {
            let soft = Cover::softened(&drawn, edge);
            let row = &soft.there[20 * 120..21 * 120];
            let changing = row[..60].iter().filter(|there| **there > 0.004 && **there < 0.996).count() as f32;
            assert!((changing - edge).abs() <= 2.0, "{edge}: {changing}");
            assert!((row.iter().sum::<f32>() - 40.0).abs() < 0.3, "{edge}: {}", row.iter().sum::<f32>());
        }
    }

    #[test]
    fn values_are_averaged_as_by_hand() {
        // Over 2 values: one whole, and half of each neighbour.
        assert_eq!(averaged(&[0.0, 1.0, 0.0, 0.0], 2.0), [0.25, 0.5, 0.25, 0.0]);
        // Over 3 values.
        assert_eq!(averaged(&[0.0, 3.0, 0.0, 3.0], 3.0), [1.0, 1.0, 2.0, 1.0]);
    }
}
