//! Cards, buttons, badges and the tag.

use bevy_egui::egui::{Align2, Color32, Pos2, Rect, Shape, emath::Rot2, pos2, vec2};

use super::{
    super::{
        theme::{Face, Type},
        tone::Tone,
    },
    Brush, Icon,
};
use crate::guest::{Contrast, Request};

/// How a button looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Look {
    /// The way onwards: plum.
    Main,
    /// Paper with a plum edge.
    Plain,
    /// One of several, chosen.
    Chosen,
    /// Text on the ground, a plum edge when touched.
    Quiet,
}

/// What a card is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Plate {
    /// Paper.
    Paper,
    /// A caution that speaks against the piece.
    Grave,
}

impl Brush<'_> {
    /// A card with its shadow.
    pub(crate) fn card(&self, rect: Rect, plate: Plate) {
        let radius = self.px(16.0);
        self.shadow(rect, radius, self.px(20.0));
        let (fill, edge) = match plate {
            Plate::Paper => (Tone::Paper, Tone::LinenDeep),
            Plate::Grave => (Tone::Grave, Tone::CautionInk),
        };
        self.fill(rect, radius, fill);
        self.outline(rect, radius, 1.0, edge);
    }

    /// A button; without an request it is there but can't be touched, and looks so.
    pub(crate) fn button(&mut self, rect: Rect, look: Look, icon: Option<Icon>, label: &str, request: Option<Request>) {
        let radius = self.px(14.0).min(rect.height() / 2.0);
        let pressed = request.is_some() && self.pressed(rect);
        let place = if pressed { rect.shrink(1.5) } else { rect };
        let (fill, edge, ink) = match (look, request.is_some()) {
            (Look::Main, true) => (if pressed { Tone::PlumPressed } else { Tone::Plum }, Tone::Clear, Tone::Paper),
            (Look::Main, false) => (Tone::LinenDeep, Tone::Seam, Tone::InkSoft),
            (Look::Chosen, _) => (Tone::PlumPale, Tone::Plum, Tone::Plum),
            (Look::Plain, true) => (if pressed { Tone::PlumPale } else { Tone::Paper }, Tone::PlumLine, Tone::Plum),
            (Look::Quiet, true) => (if pressed { Tone::PlumPale } else { Tone::Clear }, Tone::Clear, Tone::Plum),
            (Look::Quiet, false) => (Tone::Clear, Tone::Clear, Tone::Faint),
            (Look::Plain, false) => (Tone::Clear, Tone::Seam, Tone::InkSoft),
        };
        if look == Look::Main && request.is_some() && !pressed {
            self.shadow(place, radius, self.px(12.0));
        }
        self.fill(place, radius, fill);
        if edge != Tone::Clear {
            self.outline(place, radius, if look == Look::Chosen { 2.5 } else { 1.5 }, edge);
        }
        // Chosen is told by a tick as well, not by colour alone.
        let icon = if look == Look::Chosen { icon.or(Some(Icon::Tick)) } else { icon };
        self.inside(place, icon, label, ink, look);
        if let Some(request) = request {
            self.choice_target(rect, request, label, look == Look::Chosen);
        }
    }

    /// Sign and words in the middle of `rect`; only the sign where the words would be cramped. The sign that only says
    /// that something is chosen gets little room.
    fn inside(&self, rect: Rect, icon: Option<Icon>, label: &str, ink: Tone, look: Look) {
        // A single figure, or words on a large plate, are set larger.
        let size = match (label.chars().count(), rect.height() > self.px(84.0)) {
            (1, _) => 30.0,
            (_, true) => 25.0,
            _ if look == Look::Main => 22.0,
            _ => 19.0,
        };
        let ty = Type::BUTTON.sized(size).in_color(ink);
        let inner = rect.shrink2(vec2(self.px(12.0).min(rect.width() * 0.1), self.px(5.0)));
        let Some(icon) = icon else {
            self.text(inner, Align2::CENTER_CENTER, label, ty);
            return;
        };
        let side = match icon {
            Icon::Tick if look == Look::Chosen => self.px(20.0).max(13.0),
            _ => (rect.height() * 0.46).min(self.px(32.0)).max(20.0),
        };
        let cramped = rect.width() < rect.height() * 1.6 && side >= 20.0;
        let gap = self.px(10.0).min(side * 0.4);
        if cramped || look == Look::Quiet && !self.has_room(label, ty, inner.width() - side - gap) {
            self.icon(Rect::from_center_size(rect.center(), vec2(side, side)), icon, ink);
            return;
        }
        let room = inner.width() - side - gap;
        let width = self.measure(label, ty, room).x.min(room);
        let left = rect.center().x - (width + side + gap) / 2.0;
        let words_first = icon == Icon::Onward;
        let sign_left = if words_first { left + width + gap } else { left };
        let sign = Rect::from_min_size(pos2(sign_left, rect.center().y - side / 2.0), vec2(side, side));
        self.icon(sign, icon, ink);
        let words_left = if words_first { left } else { left + side + gap };
        let words = Rect::from_min_size(pos2(words_left, inner.top()), vec2(width + 2.0, inner.height()));
        self.text(words, Align2::CENTER_CENTER, label, ty);
    }

    /// A home, as in B3, on a brass-edged plate round `middle`.
    pub(crate) fn home_badge(&self, middle: Pos2, home: &str, size: f32) {
        let ty = Type::HOME.sized(size);
        let text = self.measure(home, ty, f32::INFINITY);
        let rect = Rect::from_center_size(middle, vec2(text.x + self.px(14.0), text.y + self.px(4.0)));
        self.fill(rect, rect.height() / 2.0, Tone::Paper);
        self.outline(rect, rect.height() / 2.0, 1.5, Tone::Brass);
        self.text(rect, Align2::CENTER_CENTER, home, ty);
    }

    /// A paper tag with a hole, turned by `angle` about it; gives the place for words as if it were not turned.
    pub(crate) fn tag(&self, rect: Rect, pressed: bool, angle: f32) -> Rect {
        let (cut, mid) = (rect.height() * 0.28, rect.center().y);
        let outline = vec![
            pos2(rect.left() + cut, rect.top()),
            rect.right_top(),
            rect.right_bottom(),
            pos2(rect.left() + cut, rect.bottom()),
            pos2(rect.left(), mid + rect.height() * 0.18),
            pos2(rect.left(), mid - rect.height() * 0.18),
        ];
        let (turn, hole) = (Rot2::from_angle(angle), self.tag_hole(rect));
        let outline = outline.into_iter().map(|p: Pos2| hole + turn * (p - hole)).collect();
        self.shadow(rect, self.px(8.0), self.px(14.0));
        let fill = if pressed { Tone::PlumPale } else { Tone::Tag };
        self.painter.add(Shape::convex_polygon(outline, self.color(fill), self.stroke(1.5, Tone::Brass)));
        let radius = rect.height() * 0.085;
        self.painter.circle(hole, radius, self.color(Tone::LinenDeep), self.stroke(1.5, Tone::Brass));
        self.lay(rect, fill);
        Rect::from_min_max(pos2(rect.left() + cut * 1.35, rect.top()), rect.max)
            .shrink2(vec2(self.px(6.0), self.px(5.0)))
    }

    /// Where the hole of a tag is: it hangs from there.
    pub(crate) fn tag_hole(&self, rect: Rect) -> Pos2 {
        pos2(rect.left() + rect.height() * 0.21, rect.center().y)
    }

    /// A hollow with a floor of `floor`: its upper and left walls keep the light off.
    pub(crate) fn well(&self, rect: Rect, radius: f32, floor: Tone) {
        self.fill(rect, radius, floor);
        if self.looks.contrast == Contrast::Daylight {
            let (dark, none) = (Color32::from_black_alpha(78), Color32::TRANSPARENT);
            let inner = rect.shrink(1.0);
            self.shade(inner.with_max_y(inner.top() + (rect.height() * 0.22).min(self.px(20.0))), dark, none, true);
            self.shade(inner.with_max_x(inner.left() + self.px(7.0)), dark.gamma_multiply(0.6), none, false);
            self.painter.hline(inner.x_range().shrink(radius), inner.bottom(), self.stroke(1.5, Tone::WoodLight));
        }
        self.outline(rect, radius, if self.looks.contrast == Contrast::High { 2.0 } else { 1.0 }, Tone::WoodDark);
    }

    /// A wooden board with its rim: light from above.
    pub(crate) fn board(&self, rect: Rect, radius: f32) {
        self.shadow(rect, radius, self.px(16.0));
        self.fill(rect, radius, Tone::Wood);
        self.outline(rect, radius, 1.5, Tone::WoodDark);
        let edge = rect.shrink(2.0);
        self.painter.hline(edge.x_range().shrink(radius), edge.top(), self.stroke(2.0, Tone::WoodLight));
    }

    /// Diagonal lines over `rect`: what lies under them is set aside.
    pub(crate) fn hatch(&self, rect: Rect, tone: Tone) {
        let stroke = self.stroke(1.0, tone);
        let painter = self.painter.with_clip_rect(rect.intersect(self.painter.clip_rect()));
        let step = self.px(11.0).max(7.0);
        let mut x = rect.left() - rect.height();
        while x < rect.right() {
            painter.line_segment([pos2(x, rect.bottom()), pos2(x + rect.height(), rect.top())], stroke);
            x += step;
        }
    }

    /// A ring that empties: `left` of 1.
    pub(crate) fn countdown(&self, middle: Pos2, radius: f32, left: f32) {
        self.painter.circle_stroke(middle, radius, self.stroke(self.px(7.0), Tone::LinenDeep));
        let steps = 64;
        let points = (0..=steps)
            .map(|i| {
                -std::f32::consts::FRAC_PI_2 - std::f32::consts::TAU * left.clamp(0.0, 1.0) * i as f32 / steps as f32
            })
            .map(|angle| pos2(middle.x + radius * angle.cos(), middle.y + radius * angle.sin()))
            .collect();
        self.painter.line(points, self.stroke(self.px(7.0), Tone::Plum));
    }

    /// The ground of the bar over a screen.
    pub(crate) fn bar(&self, rect: Rect) {
        self.fill(rect, 0.0, Tone::Paper);
        self.painter.hline(rect.x_range(), rect.bottom(), self.stroke(1.0, Tone::Seam));
    }

    /// A round number of something, on plum.
    pub(crate) fn count(&self, middle: Pos2, text: &str) {
        let radius = self.px(13.0).max(10.0);
        self.painter.circle_filled(middle, radius, self.color(Tone::Plum));
        self.lay(Rect::from_center_size(middle, vec2(radius, radius)), Tone::Plum);
        let ty = Type { size: 15.0, face: Face::Bold, color: Tone::Paper };
        let rect = Rect::from_center_size(middle, vec2(radius * 2.0, radius * 2.0));
        self.text(rect, Align2::CENTER_CENTER, text, ty);
    }
}
