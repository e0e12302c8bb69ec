//! Wire in a finish: every stroke is drawn dark, then narrower and lighter towards the light.

use tiny_skia::{Color, LineCap, LineJoin, Paint, Path, PathBuilder, Pixmap, Rect, Stroke, Transform};

use crate::craft::Finish;

/// A round wire along `path`, `width` wide, lit from the upper left.
pub(super) fn wire(canvas: &mut Pixmap, path: &Path, width: f32, finish: Finish, transform: Transform, dim: f32) {
    let tones = finish.tones();
    let layers = [(tones.shade, 1.0, 0.0), (tones.body, 0.72, -0.06), (tones.shine, 0.22, -0.16)];
    for (colour, share, shift) in layers {
        let mut paint = Paint { anti_alias: true, ..Paint::default() };
        paint.set_color(faded(colour, dim));
        let stroke =
            Stroke { width: width * share, line_cap: LineCap::Round, line_join: LineJoin::Round, ..Stroke::default() };
        // The light falls from the upper left of the picture, whatever the wire's own direction.
        let shifted = transform.post_translate(width * shift, width * shift);
        canvas.stroke_path(path, &paint, &stroke, shifted, None);
    }
}

/// Towards the linen ground by `dim`, 0 for not at all.
fn faded(colour: [u8; 3], dim: f32) -> Color {
    const GROUND: [f32; 3] = [243.0, 235.0, 221.0];
    let mix = |i: usize| ((f32::from(colour[i]) * (1.0 - dim) + GROUND[i] * dim) / 255.0).clamp(0.0, 1.0);
    Color::from_rgba(mix(0), mix(1), mix(2), 1.0).unwrap_or(Color::BLACK)
}

/// An oval loop round the origin.
pub(super) fn oval(width: f32, height: f32) -> Option<Path> {
    PathBuilder::from_oval(Rect::from_xywh(-width / 2.0, -height / 2.0, width, height)?)
}

/// The half of an upright oval round the origin that is on the side of `half_width`'s sign, from its top to its foot.
pub(super) fn half_oval(half_width: f32, half_height: f32) -> Option<Path> {
    // Two cubic curves, each a quarter. Source: the usual constant 4/3 · (√2 − 1), off by 0.03 % of the radius at most.
    const QUARTER: f32 = 0.552_284_8;
    let (a, b) = (half_width, half_height);
    let mut path = PathBuilder::new();
    path.move_to(0.0, -b);
    path.cubic_to(a * QUARTER, -b, a, -b * QUARTER, a, 0.0);
    path.cubic_to(a, b * QUARTER, a * QUARTER, b, 0.0, b);
    path.finish()
}

/// A straight piece along x, round the origin.
pub(super) fn bar(length: f32) -> Option<Path> {
    let mut path = PathBuilder::new();
    path.move_to(-length / 2.0, 0.0);
    path.line_to(length / 2.0, 0.0);
    path.finish()
}
