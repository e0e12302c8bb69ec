//! Base: necklace or bangle, finish, length.

use bevy_egui::egui::{Align2, Rect, vec2};

use super::{
    super::{
        layout::{Layout, cut_bottom, cut_left, cut_right, cut_top},
        paint::{Brush, Icon, Look},
        targets::ScrollId,
        theme::{self, Type},
        tone::Tone,
    },
    Scene,
    base_sign::base_sign,
    lengths,
    parts::{bar_title, notices, top_bar},
    suits::{cautions_chip, who_chip},
};
use crate::{
    catalog::Catalog,
    craft::{Base, BaseKind, Length, Wearer, closes_on_mm},
    guest::{Overlay, Request},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    let title = who_chip(b, s, bar);
    bar_title(b, title, &s.t("base-title"));
    let Some(catalog) = s.catalog() else { return };
    notices(b, s, layout.stage.min + vec2(b.gap(), b.gap()), layout.stage.width() - 2.0 * b.gap());
    cautions_at(b, s, layout.foot);
    let design = s.guest.session().history.now();
    let chosen = design.base.as_ref().and_then(|id| catalog.base(id));
    let side = layout.side.shrink(b.gap());
    let (onward, rest) = cut_bottom(side, b.touch_px(theme::TOUCH_MAIN));
    let request = chosen.map(|_| Request::ToStage);
    b.button(onward, Look::Main, Some(Icon::Onward), &s.t("base-onward"), request);
    let mut rest = rest.with_max_y(rest.bottom() - b.gap());
    if let Some((base, BaseKind::Necklace(_))) = chosen.map(|base| (base, &base.kind)) {
        let (stepper, above) = cut_bottom(rest, b.px(122.0).max(b.line(112.0)).max(b.least + b.px(16.0) + 1.0));
        lengths(b, s, base, stepper);
        rest = above.with_max_y(above.bottom() - b.gap());
    }
    let gap = b.gap() * 0.8;
    let columns = if rest.width() > b.px(560.0) { 2 } else { 1 };
    let rows = catalog.bases.len().div_ceil(columns).max(1);
    let width = (rest.width() - gap * (columns - 1) as f32 - b.px(8.0)) / columns as f32;
    let fitting = (rest.height() - gap * (rows - 1) as f32) / rows as f32;
    // Names wrap and are never set smaller: the longest one makes all cards as high as it needs.
    let needed = catalog.bases.iter().map(|base| card_height(b, s.called(&base.id, &base.name), width));
    let least = needed.fold(b.touch_px(78.0), f32::max);
    let height = fitting.clamp(least, b.px(130.0).max(least));
    b.scroll(ScrollId::Bases, rest, |b, start| {
        let mut bottom = start.y;
        for (i, base) in catalog.bases.iter().enumerate() {
            let corner = start + vec2((i % columns) as f32 * (width + gap), (i / columns) as f32 * (height + gap));
            let card = Rect::from_min_size(corner, vec2(width, height));
            base_card(b, s, base, card, chosen.is_some_and(|chosen| chosen.id == base.id));
            bottom = card.bottom();
        }
        bottom
    });
}

/// What the chosen base calls for, under the stage.
fn cautions_at(b: &mut Brush, s: &Scene, foot: Rect) {
    let width = b.px(280.0).max(b.line(220.0)).min(foot.width() - 2.0 * b.gap());
    let chip = Rect::from_center_size(foot.center(), vec2(width, b.touch_px(58.0)));
    cautions_chip(b, s, chip);
}

/// How wide the sign is on a card of a base.
const SIGN_SHARE: f32 = 0.2;

/// How high a card has to be for this name and the line with the price under it.
fn card_height(b: &Brush, name: &str, width: f32) -> f32 {
    let words = (width * (1.0 - SIGN_SHARE) - b.px(24.0)).max(1.0);
    b.measure(name, Type::NAME, words).y + b.line(PRICE_LINE) + b.px(18.0)
}

/// The line with the price, and with the tick of the chosen one at its end, in pixels of the drawing.
const PRICE_LINE: f32 = 30.0;

fn base_card(b: &mut Brush, s: &Scene, base: &Base, card: Rect, chosen: bool) {
    let left = s.guest.known().snapshot.as_ref().map_or(0, |snapshot| snapshot.available(&base.id));
    let radius = b.px(14.0);
    if chosen {
        b.shadow(card, radius, b.px(14.0));
    }
    let fill = if chosen || b.pressed(card) && left > 0 { Tone::PlumPale } else { Tone::Paper };
    b.fill(card, radius, fill);
    let (line, edge) = if chosen { (3.0, Tone::Plum) } else { (1.0, Tone::Seam) };
    b.outline(card, radius, line, edge);
    let (sign, words) = cut_left(card.shrink(b.px(8.0)), card.width() * SIGN_SHARE);
    base_sign(b, s, base, sign);
    let words = words.with_min_x(words.left() + b.px(8.0));
    let (under, top) = cut_bottom(words, b.line(PRICE_LINE));
    let (tick, under) = cut_right(under, b.px(30.0));
    let name = s.called(&base.id, &base.name);
    b.text(top, Align2::LEFT_CENTER, name, Type::NAME);
    let price = s.money(base.price);
    if left > 0 {
        let unfit = s.guest.derived().unfit_bases.contains(&base.id)
            && s.guest.session().history.now().wearer != Wearer::Unknown;
        let mut label = format!("{name}, {price}");
        let soft = Type::BODY.sized(19.0).in_color(Tone::InkSoft);
        if unfit {
            let grown_up = s.guest.session().history.now().wearer == Wearer::From13;
            let words = s.t(if grown_up { "not-to-be-worn" } else { "base-unfit" });
            let side = under.height().min(b.px(26.0)).max(18.0);
            let (amount, rest) = cut_left(under, b.measure(&price, soft, f32::INFINITY).x + b.px(12.0));
            let (sign, rest) = cut_left(rest, side + b.px(6.0));
            b.text(amount, Align2::LEFT_CENTER, &price, soft);
            b.icon(Rect::from_center_size(sign.center(), vec2(side, side)), Icon::NotFor, Tone::CautionInk);
            b.text(rest, Align2::LEFT_CENTER, &words, Type::SMALL.in_color(Tone::CautionInk));
            label = format!("{label}, {words}");
        } else {
            b.text(under, Align2::LEFT_CENTER, &price, soft);
        }
        b.choice_target(card, Request::ChooseBase(base.id.clone()), label, chosen);
    } else {
        b.text(under, Align2::LEFT_CENTER, &s.t("sold-out"), Type::BODY.sized(19.0).in_color(Tone::InkSoft));
        b.hatch(card, Tone::Seam);
    }
    if chosen {
        let side = b.px(26.0);
        b.icon(Rect::from_center_size(tick.center(), vec2(side, side)), Icon::Tick, Tone::Plum);
    }
}

/// Shorter, the length with where it falls, longer.
fn lengths(b: &mut Brush, s: &Scene, base: &Base, rect: Rect) {
    let BaseKind::Necklace(necklace) = &base.kind else { return };
    let Some(catalog) = s.catalog() else { return };
    let now = s.guest.session().history.now().length.unwrap_or(necklace.lengths.usual);
    let radius = b.px(14.0);
    b.fill(rect, radius, Tone::Paper);
    b.outline(rect, radius, 1.0, Tone::Seam);
    let inner = rect.shrink(b.px(8.0));
    let side = inner.height().max(b.least).min(b.touch_px(82.0));
    let (shorter, rest) = cut_left(inner, side);
    let (longer, words) = cut_right(rest, side);
    let can = |yes: bool, request: Request| yes.then_some(request);
    let (least, most) = (necklace.lengths.shortest.mm() + 0.1, necklace.lengths.longest.mm() - 0.1);
    b.button(shorter, Look::Plain, Some(Icon::Minus), &s.t("base-shorter"), can(now.mm() > least, Request::Longer(-1)));
    b.button(longer, Look::Plain, Some(Icon::Plus), &s.t("base-longer"), can(now.mm() < most, Request::Longer(1)));
    let (top, under) = cut_top(words.shrink2(vec2(b.px(8.0), 0.0)), words.height() * 0.46);
    let written = lengths::written(now, catalog.table.region, s.texts.lang);
    b.text(top, Align2::CENTER_CENTER, &written, Type::FIGURE);
    let (falls, neck) = cut_top(under, under.height() * 0.5);
    b.text(falls, Align2::CENTER_CENTER, &lengths::falls_at(s.guest.derived(), catalog, &s.texts), Type::SMALL);
    closes(b, s, catalog, now, neck, words);
}

/// The largest neck that a necklace of this length closes on, or the guest's own where they said it; touching the words
/// between shorter and longer asks for it.
fn closes(b: &mut Brush, s: &Scene, catalog: &Catalog, length: Length, rect: Rect, touch: Rect) {
    let written = |neck: Length| lengths::written(neck, catalog.table.region, s.texts.lang);
    let largest = Length::from_mm(closes_on_mm(length).floor().max(0.0));
    let mut words = s.texts.with("base-closes", &[("neck", written(largest).into())]);
    if let Some(neck) = s.guest.session().history.now().neck {
        words = format!("{} · {words}", s.texts.with("base-neck", &[("neck", written(neck).into())]));
    }
    b.text(rect, Align2::CENTER_CENTER, &words, Type::SMALL.in_color(Tone::Plum));
    let label = format!("{}. {words}", s.t("base-neck-ask"));
    b.button_target(touch, Request::Open(Overlay::Neck), label);
}
