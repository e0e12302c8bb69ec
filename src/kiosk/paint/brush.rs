//! The brush: draws in logical pixels, writes text that fits, and notes what can be touched.

use std::{cell::RefCell, sync::Arc};

use bevy_egui::egui::{
    Align, Align2, Color32, CornerRadius, Galley, Mesh, Painter, Pos2, Rect, Stroke, StrokeKind, TextureId, Vec2,
    emath::Rot2,
    epaint::{RectShape, TextShape},
    pos2,
    text::LayoutJob,
    vec2,
};

use super::{
    super::{
        layout::Layout,
        targets::{ScrollArea, ScrollId, Scrolls, Target, TargetKind, Targets},
        theme::{self, Face, Type},
        tone::Tone,
    },
    Icon,
    proof::{Proof, Written},
};
use crate::guest::{Looks, Request};

/// A finger that is down: where it began and where it is.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Touch {
    /// Where it came down.
    pub from: Pos2,
    /// Where it is.
    pub now: Pos2,
}

/// What painting leaves for the next frame.
pub(crate) struct Kept<'a> {
    /// What can be touched.
    pub targets: &'a mut Targets,
    /// How far things are scrolled.
    pub scrolls: &'a mut Scrolls,
    /// What is written.
    pub proof: &'a mut Proof,
}

/// Paints one frame.
pub(crate) struct Brush<'a> {
    /// egui's painter, for what the brush has no word for.
    pub painter: Painter,
    /// The whole window.
    pub window: Rect,
    /// The scale of everything.
    pub u: f32,
    /// What can be touched.
    pub targets: &'a mut Targets,
    /// How far things are scrolled.
    pub scrolls: &'a mut Scrolls,
    /// The fingers that are down.
    pub touches: &'a [Touch],
    /// Size of the text, form of the colours.
    pub looks: Looks,
    /// Smallest side of anything to touch.
    pub least: f32,
    /// Smallest side of what small children touch.
    pub least_small_hands: f32,
    /// How far what is painted now has still to go: it can be touched where it will be.
    pub shift: Vec2,
    proof: RefCell<&'a mut Proof>,
}

/// The piece of `text` that was too long ends in this.
const ELLIPSIS: char = '…';

/// A quarter of a line is air above the letters and below them.
fn air(galley: &Galley) -> f32 {
    galley.rows.first().map_or(0.0, |row| row.height() * 0.25)
}

impl<'a> Brush<'a> {
    /// A brush for one frame on a screen laid out so.
    pub(crate) fn new(painter: Painter, layout: &Layout, looks: Looks, touches: &'a [Touch], kept: Kept<'a>) -> Self {
        let Kept { targets, scrolls, proof } = kept;
        proof.clear();
        Self {
            painter,
            window: layout.window,
            u: layout.u,
            targets,
            scrolls,
            touches,
            looks,
            least: layout.least,
            least_small_hands: layout.least_small_hands,
            shift: Vec2::ZERO,
            proof: RefCell::new(proof),
        }
    }

    /// `n` pixels at scale 1.
    pub(crate) fn px(&self, n: f32) -> f32 {
        n * self.u
    }

    /// A side for something to touch: `n` at scale 1, never below the least.
    pub(crate) fn touch_px(&self, n: f32) -> f32 {
        (n * self.u).max(self.least)
    }

    /// The same for what small children touch.
    pub(crate) fn small_hands_px(&self, n: f32) -> f32 {
        (n * self.u).max(self.least_small_hands)
    }

    /// A height for a line of text: `n` at scale 1, more with larger text.
    pub(crate) fn line(&self, n: f32) -> f32 {
        n * self.text_u()
    }

    fn text_u(&self) -> f32 {
        self.u * self.looks.text.factor()
    }

    /// A colour in its form.
    pub(crate) fn color(&self, tone: Tone) -> Color32 {
        tone.color(self.looks.contrast)
    }

    /// A line's look.
    pub(crate) fn stroke(&self, width: f32, tone: Tone) -> Stroke {
        Stroke::new(width, self.color(tone))
    }

    /// Says that what was painted at `rect` is a ground of this colour.
    pub(crate) fn lay(&self, rect: Rect, tone: Tone) {
        self.proof.borrow_mut().lay(rect, tone);
    }

    /// Takes note of a sign.
    pub(super) fn note_sign(&self, rect: Rect, icon: Icon) {
        let mut proof = self.proof.borrow_mut();
        if proof.on {
            proof.signs.push((rect, icon));
        }
    }

    /// Takes note of a text that has been written at `rect`.
    fn note(&self, text: &str, rect: Rect, whole: bool, ty: Type, u: f32) {
        let mut proof = self.proof.borrow_mut();
        if proof.on && !text.trim().is_empty() {
            let ground = proof.ground_at(rect.center());
            let (size, clip) = (ty.font(u).size, self.painter.clip_rect().intersect(self.window));
            let bold = ty.face == Face::Bold;
            let after = self.targets.all.len();
            let text = text.to_owned();
            proof.texts.push(Written { text, rect, clip, whole, size, bold, ink: ty.color, ground, after });
        }
    }

    /// The gap between neighbours.
    pub(crate) fn gap(&self) -> f32 {
        self.px(theme::GAP)
    }

    fn laid_out(&self, text: &str, ty: Type, u: f32, width: f32, align: Align) -> Arc<Galley> {
        let mut job = LayoutJob::simple(text.to_owned(), ty.font(u), self.color(ty.color), width.max(1.0));
        job.halign = align;
        self.painter.layout_job(job)
    }

    /// The size of `text` when wrapped at `width`.
    pub(crate) fn measure(&self, text: &str, ty: Type, width: f32) -> Vec2 {
        self.laid_out(text, ty, self.text_u(), width, Align::LEFT).size()
    }

    /// Writes `text` into `rect`, wrapped; what does not fit is set smaller, and at the least size cut with an ellipsis.
    /// Gives the place it took.
    pub(crate) fn text(&self, rect: Rect, align: Align2, text: &str, ty: Type) -> Rect {
        let fits = |galley: &Galley| {
            galley.size().y - air(galley) <= rect.height() + 1.0 && galley.size().x <= rect.width() + 1.0
        };
        // A word broken in the middle reads badly: the longest word has to fit as well.
        let longest = text.split_whitespace().max_by_key(|word| word.chars().count()).unwrap_or_default();
        let whole = |u: f32| self.laid_out(longest, ty, u, f32::INFINITY, Align::LEFT).size().x <= rect.width() + 1.0;
        let mut u = self.text_u();
        let mut galley = self.laid_out(text, ty, u, rect.width(), align.x());
        while !(fits(&galley) && whole(u)) && ty.font(u).size > ty.font(0.0).size {
            u *= 0.94;
            galley = self.laid_out(text, ty, u, rect.width(), align.x());
        }
        let all_there = fits(&galley) && whole(u);
        if !fits(&galley) {
            let mut job = LayoutJob::simple(text.to_owned(), ty.font(u), self.color(ty.color), rect.width().max(1.0));
            let row = galley.rows.first().map_or(1.0, |row| row.height()).max(1.0);
            job.halign = align.x();
            job.wrap.max_rows = ((rect.height() / row).floor() as usize).max(1);
            job.wrap.overflow_character = Some(ELLIPSIS);
            job.wrap.break_anywhere = job.wrap.max_rows == 1;
            galley = self.painter.layout_job(job);
        }
        let place = align.align_size_within_rect(galley.size(), rect);
        let x = match align.x() {
            Align::Min => rect.left(),
            Align::Center => rect.center().x,
            Align::Max => rect.right(),
        };
        let air = air(&galley);
        self.painter.galley(pos2(x, place.top()), galley, self.color(ty.color));
        let ink = place.shrink2(vec2(0.0, air / 2.0));
        self.note(text, ink, all_there, ty, u);
        place
    }

    /// Whether `text` has room in one line of `width`, at the least size.
    pub(crate) fn has_room(&self, text: &str, ty: Type, width: f32) -> bool {
        self.laid_out(text, ty, 0.0, f32::INFINITY, Align::LEFT).size().x <= width
    }

    /// Writes `text` from the top left of `at`, wrapped at `width`, and gives where the next line may begin.
    pub(crate) fn paragraph(&self, at: Pos2, width: f32, text: &str, ty: Type) -> f32 {
        let u = self.text_u();
        let galley = self.laid_out(text, ty, u, width, Align::LEFT);
        let place = Rect::from_min_size(at, galley.size());
        // Only looked into for tests: it lays out every word once more.
        let unbroken = !self.proof.borrow().on
            || text
                .split_whitespace()
                .all(|word| self.laid_out(word, ty, u, f32::INFINITY, Align::LEFT).size().x <= width + 1.0);
        self.painter.galley(at, galley, self.color(ty.color));
        self.note(text, place, unbroken, ty, u);
        place.bottom()
    }

    /// A filled rectangle with round corners.
    pub(crate) fn fill(&self, rect: Rect, radius: f32, tone: Tone) {
        self.painter.rect_filled(rect, CornerRadius::from(radius), self.color(tone));
        self.lay(rect, tone);
    }

    /// A rectangle whose colour changes from top to bottom, or from left to right.
    pub(crate) fn shade(&self, rect: Rect, from: Color32, to: Color32, downwards: bool) {
        let mut mesh = Mesh::default();
        let (right_top, left_bottom) = if downwards { (from, to) } else { (to, from) };
        mesh.colored_vertex(rect.left_top(), from);
        mesh.colored_vertex(rect.right_top(), right_top);
        mesh.colored_vertex(rect.right_bottom(), to);
        mesh.colored_vertex(rect.left_bottom(), left_bottom);
        mesh.add_triangle(0, 1, 2);
        mesh.add_triangle(0, 2, 3);
        self.painter.add(mesh);
    }

    /// Writes one line in the middle of `rect`, all turned by `angle` about `pivot`.
    pub(crate) fn text_turned(&self, rect: Rect, text: &str, ty: Type, pivot: Pos2, angle: f32) {
        if angle == 0.0 {
            self.text(rect, Align2::CENTER_CENTER, text, ty);
            return;
        }
        let mut u = self.text_u();
        let mut galley = self.laid_out(text, ty, u, f32::INFINITY, Align::LEFT);
        while galley.size().x > rect.width() && ty.font(u).size > ty.font(0.0).size {
            u *= 0.94;
            galley = self.laid_out(text, ty, u, f32::INFINITY, Align::LEFT);
        }
        let corner = rect.center() - galley.size() / 2.0;
        let at = pivot + Rot2::from_angle(angle) * (corner - pivot);
        self.painter.add(TextShape::new(at, galley, self.color(ty.color)).with_angle(angle));
    }

    /// The outline of a rectangle with round corners.
    pub(crate) fn outline(&self, rect: Rect, radius: f32, width: f32, tone: Tone) {
        let stroke = self.stroke(width, tone);
        self.painter.rect_stroke(rect, CornerRadius::from(radius), stroke, StrokeKind::Inside);
    }

    /// A soft shadow under `rect`.
    pub(crate) fn shadow(&self, rect: Rect, radius: f32, blur: f32) {
        let under = rect.translate(vec2(0.0, blur * 0.25)).shrink(blur * 0.15);
        let shape =
            RectShape::filled(under, CornerRadius::from(radius), self.color(Tone::Shadow)).with_blur_width(blur);
        self.painter.add(shape);
    }

    /// A picture that fills `rect` as far as its proportions allow.
    pub(crate) fn picture(&self, rect: Rect, texture: TextureId, size: Vec2, tint: Color32) {
        let k = (rect.width() / size.x.max(1.0)).min(rect.height() / size.y.max(1.0));
        let place = Rect::from_center_size(rect.center(), size * k);
        self.painter.image(texture, place, Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0)), tint);
    }

    /// Whether a finger that came down in `rect` is still there.
    pub(crate) fn pressed(&self, rect: Rect) -> bool {
        self.touches.iter().any(|touch| rect.contains(touch.from) && rect.expand(theme::SLOP_PX).contains(touch.now))
    }

    /// Notes that `rect` can be touched. Of what is partly scrolled away only the visible part counts.
    pub(crate) fn target(&mut self, rect: Rect, request: Request, label: impl Into<String>, kind: TargetKind) {
        let rect = rect.translate(-self.shift);
        let seen = rect.intersect(self.painter.clip_rect()).intersect(self.window);
        let enough = seen.is_positive() && seen.area() >= 0.4 * rect.area() && seen.height() >= 24.0;
        if enough {
            self.targets.all.push(Target { rect: seen, request, label: label.into(), kind, chosen: false });
        }
    }

    /// Notes a button.
    pub(crate) fn button_target(&mut self, rect: Rect, request: Request, label: impl Into<String>) {
        self.target(rect, request, label, TargetKind::Button);
    }

    /// Notes a button that is one of several or a box to tick, and whether it is the chosen one or ticked.
    pub(crate) fn choice_target(&mut self, rect: Rect, request: Request, label: impl Into<String>, chosen: bool) {
        let before = self.targets.all.len();
        self.button_target(rect, request, label);
        if let Some(noted) = self.targets.all.get_mut(before) {
            noted.chosen = chosen;
        }
    }

    /// Paints `content` into `rect`, scrolled; `content` gets where to begin and gives where it ended.
    pub(crate) fn scroll(&mut self, id: ScrollId, rect: Rect, content: impl FnOnce(&mut Self, Pos2) -> f32) {
        let offset = self.scrolls.0.entry(id).or_default().offset;
        let before = self.painter.clip_rect();
        self.painter.set_clip_rect(before.intersect(rect));
        let bottom = content(self, rect.min - vec2(0.0, offset));
        self.painter.set_clip_rect(before);
        let most = (bottom + offset - rect.bottom()).max(0.0);
        let scroll = self.scrolls.0.entry(id).or_default();
        scroll.most = most;
        scroll.by(0.0);
        if most > 1.0 {
            self.targets.scrolls.push(ScrollArea { id, rect, most });
            let height = rect.height() * rect.height() / (rect.height() + most);
            let top = rect.top() + (rect.height() - height) * (offset / most).clamp(0.0, 1.0);
            let bar = Rect::from_min_size(pos2(rect.right() - self.px(5.0), top), vec2(self.px(5.0), height));
            self.fill(bar, self.px(2.5), Tone::BrassLight);
        }
    }

    /// From here on everything lies over what was painted, which can't be touched any more.
    pub(crate) fn over_all(&mut self) {
        self.targets.all.clear();
        self.targets.hung.clear();
        self.targets.scrolls.clear();
        (self.targets.elsewhere, self.targets.sheet) = (None, None);
        (self.targets.stage, self.targets.corner) = (None, None);
        self.painter.rect_filled(self.window, CornerRadius::ZERO, self.color(Tone::Scrim));
        self.proof.get_mut().clear();
    }
}
