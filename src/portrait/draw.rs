//! Chain, bangle, rings and bodies onto a canvas.

use std::collections::BTreeMap;

use tiny_skia::{BlendMode, FilterQuality, IntSize, Pixmap, PixmapPaint, Transform};

use super::{
    metal::{bar, half_oval, oval, wire},
    shadow::shadow_of,
};
use crate::{
    catalog::Picture,
    craft::{Base, BaseKind, DropKind, Finish, Necklace},
    hang::{PiecePlaces, Point, SeenRing, Shadow, back_to_front, seen_ring},
};

/// Millimetres to pixels.
#[derive(Clone, Copy)]
struct View {
    px_per_mm: f32,
    left: f32,
    top: f32,
}

impl View {
    fn fitting(places: &PiecePlaces, canvas: &Pixmap) -> Self {
        const MARGIN: f32 = 0.05;
        let b = &places.bounds;
        let (width_mm, height_mm) = ((b.right_mm - b.left_mm) as f32, (b.bottom_mm - b.top_mm) as f32);
        let (width, height) = (canvas.width() as f32, canvas.height() as f32);
        let room = 1.0 - 2.0 * MARGIN;
        let px_per_mm = (width * room / width_mm.max(1.0)).min(height * room / height_mm.max(1.0));
        Self {
            px_per_mm,
            left: (width - width_mm * px_per_mm) / 2.0 - b.left_mm as f32 * px_per_mm,
            top: (height - height_mm * px_per_mm) / 2.0 - b.top_mm as f32 * px_per_mm,
        }
    }

    fn at(self, p: Point) -> (f32, f32) {
        (self.left + p.x_mm as f32 * self.px_per_mm, self.top + p.y_mm as f32 * self.px_per_mm)
    }

    fn px(self, mm: f64) -> f32 {
        self.px_of(mm as f32)
    }

    fn px_of(self, mm: f32) -> f32 {
        mm * self.px_per_mm
    }
}

/// Draws a piece so that it fills the canvas.
pub(super) fn piece(
    canvas: &mut Pixmap,
    base: &Base,
    kinds: &[&DropKind],
    places: &PiecePlaces,
    pictures: &BTreeMap<String, Picture>,
) {
    let view = View::fitting(places, canvas);
    let middle_mm = (places.bounds.left_mm + places.bounds.right_mm) / 2.0;
    let hung: Vec<HungDrop> = back_to_front(kinds)
        .into_iter()
        .enumerate()
        .filter_map(|(rank, i)| {
            let (kind, ring) = (*kinds.get(i)?, places.rings.get(i)?);
            let (x, y) = view.at(Point { x_mm: ring.x_mm, y_mm: ring.y_mm });
            let at = Transform::from_rotate((-ring.lean_rad).to_degrees() as f32).post_translate(x, y);
            let seen = seen_ring(kind, ring.x_mm - middle_mm, ring.lean_rad);
            Some(HungDrop { kind, rank, at, seen, finish: kind.finish.unwrap_or(base.finish) })
        })
        .collect();
    if let Some(soft) = base_and_rings_shadow(canvas, view, base, places, &hung) {
        let paint = PixmapPaint::default();
        let [right, down] = Shadow::from(Shadow::OF_BASE_MM).fall_mm.map(|mm| view.px_of(mm));
        canvas.draw_pixmap(0, 0, soft.as_ref(), &paint, Transform::from_translate(right, down), None);
    }
    // Each ring goes round the base: one half of it is behind.
    for drop in &hung {
        half_ring(canvas, view, drop, Half::Behind);
    }
    draw_base(canvas, view, base, places);
    for drop in &hung {
        body(canvas, view, drop, pictures);
        half_ring(canvas, view, drop, Half::Before);
    }
}

/// The shadow of chain or bangle and of all rings on the ground.
fn base_and_rings_shadow(
    canvas: &Pixmap,
    view: View,
    base: &Base,
    places: &PiecePlaces,
    hung: &[HungDrop],
) -> Option<Pixmap> {
    let mut alone = Pixmap::new(canvas.width(), canvas.height())?;
    draw_base(&mut alone, view, base, places);
    for drop in hung {
        half_ring(&mut alone, view, drop, Half::Behind);
        half_ring(&mut alone, view, drop, Half::Before);
    }
    let shadow = Shadow::from(Shadow::OF_BASE_MM);
    shadow_of(&alone, view.px_of(shadow.edge_mm))
}

/// Chain or bangle.
fn draw_base(canvas: &mut Pixmap, view: View, base: &Base, places: &PiecePlaces) {
    match &base.kind {
        BaseKind::Necklace(necklace) => {
            chain(canvas, view, necklace, base.finish, &places.back, 0.55);
            chain(canvas, view, necklace, base.finish, &places.chain, 0.0);
        }
        BaseKind::Bangle(bangle) => {
            let middle = places.bangle.map_or(Point { x_mm: 0.0, y_mm: 0.0 }, |bangle| bangle.centre);
            let (x, y) = view.at(middle);
            let across = view.px(bangle.inside.mm() + bangle.wire.mm());
            if let Some(ring) = oval(across, across) {
                wire(canvas, &ring, view.px(bangle.wire.mm()), base.finish, Transform::from_translate(x, y), 0.0);
            }
            // The hook, opposite the middle of the free arc.
            let hook = view.px(bangle.hook_width.mm());
            if let Some(loop_) = oval(hook, hook * 0.8) {
                let up = across / 2.0 + hook * 0.2;
                let turned =
                    Transform::from_translate(0.0, -up).post_rotate(-places.turn_deg as f32).post_translate(x, y);
                wire(canvas, &loop_, view.px(bangle.wire.mm()) * 0.8, base.finish, turned, 0.0);
            }
        }
    }
}

/// A drop where it hangs.
struct HungDrop<'a> {
    kind: &'a DropKind,
    /// Its place from back to front.
    rank: usize,
    at: Transform,
    seen: SeenRing,
    finish: Finish,
}

/// A ring's half behind the base, or the one before it.
#[derive(Clone, Copy, PartialEq)]
enum Half {
    Behind,
    Before,
}

fn chain(canvas: &mut Pixmap, view: View, necklace: &Necklace, finish: Finish, line: &[Point], dim: f32) {
    let (long, wide) = (view.px(necklace.link_length.mm()), view.px(necklace.link_width.mm()));
    let thick = (wide * 0.24).max(0.6);
    let (Some(face), Some(side)) = (oval(long - thick, wide - thick), bar(long - thick)) else { return };
    // Links seen edge on lie under those seen from the front.
    for parity in [1, 0] {
        for (i, pair) in line.windows(2).enumerate().filter(|(i, _)| i % 2 == parity) {
            let ((x0, y0), (x1, y1)) = (view.at(pair[0]), view.at(pair[1]));
            let turned = Transform::from_rotate((y1 - y0).atan2(x1 - x0).to_degrees())
                .post_translate((x0 + x1) / 2.0, (y0 + y1) / 2.0);
            let (path, width) = if i % 2 == 0 { (&face, thick) } else { (&side, thick * 1.3) };
            wire(canvas, path, width, finish, turned, dim);
        }
    }
}

fn half_ring(canvas: &mut Pixmap, view: View, drop: &HungDrop, half: Half) {
    let (width, height) = (view.px(drop.seen.half_width_mm), view.px(drop.seen.half_height_mm));
    let ring = drop.kind.ring;
    let at = drop.at.pre_translate(0.0, view.px(ring.outside.mm() / 2.0 - ring.wire.mm()));
    let (across, dim) = if half == Half::Before { (width, 0.0) } else { (-width, 0.25) };
    if let Some(arc) = half_oval(across, height) {
        wire(canvas, &arc, view.px(drop.seen.wire_mm).max(0.8), drop.finish, at, dim);
    }
}

fn body(canvas: &mut Pixmap, view: View, drop: &HungDrop, pictures: &BTreeMap<String, Picture>) {
    let (kind, hung) = (drop.kind, drop.at);
    let body_top = view.px(kind.ring.hangs_mm());
    let (width, height) = (view.px(kind.width.mm()), view.px(kind.height.mm()));
    if let Some(picture) = pictures.get(&kind.picture).and_then(decoded) {
        let small = shrunk(picture, width, height);
        body_shadow(canvas, view, drop, &small, (width, height));
        let placed = hung
            .pre_translate(-width / 2.0, body_top)
            .pre_scale(width / small.width() as f32, height / small.height() as f32);
        let paint = PixmapPaint { quality: FilterQuality::Bilinear, blend_mode: BlendMode::SourceOver, opacity: 1.0 };
        canvas.draw_pixmap(0, 0, small.as_ref(), &paint, placed, None);
    }
}

/// The shadow of a body onto whatever is behind it.
fn body_shadow(canvas: &mut Pixmap, view: View, drop: &HungDrop, picture: &Pixmap, (width, height): (f32, f32)) {
    let shadow = Shadow::from(Shadow::OF_BODY_MM + Shadow::lifted_mm(drop.rank));
    let (edge, [right, down]) = (view.px_of(shadow.edge_mm), shadow.fall_mm.map(|mm| view.px_of(mm)));
    let room = edge.ceil() + 1.0;
    let size = |side: f32| (side + 2.0 * room).ceil().clamp(1.0, f32::from(u16::MAX)) as u32;
    let Some(mut alone) = Pixmap::new(size(width), size(height)) else { return };
    let paint = PixmapPaint { quality: FilterQuality::Bilinear, blend_mode: BlendMode::SourceOver, opacity: 1.0 };
    let scaled = Transform::from_scale(width / picture.width() as f32, height / picture.height() as f32);
    alone.draw_pixmap(0, 0, picture.as_ref(), &paint, scaled.post_translate(room, room), None);
    if let Some(soft) = shadow_of(&alone, edge) {
        let top = view.px(drop.kind.ring.hangs_mm()) - room;
        let placed = drop.at.pre_translate(-width / 2.0 - room, top).post_translate(right, down);
        canvas.draw_pixmap(0, 0, soft.as_ref(), &paint, placed, None);
    }
}

/// The picture's pixels, premultiplied as the canvas wants them.
fn decoded(picture: &Picture) -> Option<Pixmap> {
    let rgba = image::load_from_memory(&picture.read().ok()?).ok()?.to_rgba8();
    let size = IntSize::from_wh(rgba.width(), rgba.height())?;
    let mut bytes = rgba.into_raw();
    for pixel in bytes.chunks_exact_mut(4) {
        let alpha = u16::from(pixel[3]);
        for channel in &mut pixel[..3] {
            *channel = ((u16::from(*channel) * alpha + 127) / 255) as u8;
        }
    }
    Pixmap::from_vec(bytes, size)
}

/// The picture reduced by whole halvings to at most twice its size on the canvas: bilinear sampling alone would
/// skip pixels and glitter.
fn shrunk(mut picture: Pixmap, width: f32, height: f32) -> Pixmap {
    while picture.width() as f32 > 2.0 * width.max(1.0) && picture.height() as f32 > 2.0 * height.max(1.0) {
        match halved(&picture) {
            Some(half) => picture = half,
            None => break,
        }
    }
    picture
}

fn halved(picture: &Pixmap) -> Option<Pixmap> {
    let (w, h) = (picture.width() / 2, picture.height() / 2);
    let mut half = Pixmap::new(w, h)?;
    let (from, stride) = (picture.data(), picture.width() as usize * 4);
    for (i, to) in half.data_mut().chunks_exact_mut(4).enumerate() {
        let (x, y) = (i % w as usize, i / w as usize);
        let start = 2 * y * stride + 8 * x;
        for (c, channel) in to.iter_mut().enumerate() {
            let sum: u16 =
                [start, start + 4, start + stride, start + stride + 4].iter().map(|at| u16::from(from[at + c])).sum();
            *channel = ((sum + 2) / 4) as u8;
        }
    }
    Some(half)
}
