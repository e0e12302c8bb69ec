//! Parts that several screens share: the bar at the top, rows of choices, the lines of a sum, cautions, drops.

use bevy_egui::egui::{Align2, Color32, Pos2, Rect, pos2, vec2};

use super::{
    super::{
        layout::{cut_left, cut_right},
        paint::{Brush, Icon, Look},
        targets::ScrollId,
        theme::Type,
        tone::Tone,
    },
    Scene,
};
use crate::{
    catalog::Catalog,
    craft::{DropKind, Piece, Wearer},
    guest::{Contrast, Looks, Notice, Overlay, Request, Screen, Sending, TextSize, walking_order},
    money::Quote,
};

/// The bar at the top: its ground, Back on the left, the languages on the right. Gives what is between.
pub(super) fn top_bar(b: &mut Brush, s: &Scene, bar: Rect) -> Rect {
    b.bar(bar);
    let inner = bar.shrink2(vec2(b.gap() * 0.7, ((bar.height() - b.touch_px(58.0)) / 2.0).max(1.0)));
    let side = inner.height();
    let (back, rest) = cut_left(inner, side * 1.15);
    b.button(back, Look::Quiet, Some(Icon::Back), &s.t("back"), Some(Request::Back));
    let (language, rest) = cut_right(rest, side * 1.15);
    let label = format!("{}: {}", s.t("languages"), s.texts.lang.own_name());
    b.button(language, Look::Quiet, Some(Icon::Globe), &label, Some(Request::Open(Overlay::Languages)));
    let screen = s.guest.screen();
    let rest = if matches!(screen, Screen::Base | Screen::Stage | Screen::Review | Screen::Threading) {
        let (stray, rest) = cut_right(rest, side * 1.15);
        let may = s.guest.session().sending == Sending::No;
        b.button(stray, Look::Quiet, Some(Icon::Compartment), &s.t("put-back"), may.then_some(Request::PutBack));
        rest
    } else {
        rest
    };
    rest.shrink2(vec2(b.gap() * 0.6, 0.0))
}

/// A screen's name in the bar.
pub(super) fn bar_title(b: &Brush, rect: Rect, text: &str) {
    b.text(rect, Align2::LEFT_CENTER, text, Type::HEADING);
}

/// A quiet line for each thing to be told of the tablet. Gives where the next thing may begin.
pub(super) fn notices(b: &Brush, s: &Scene, at: Pos2, width: f32) -> f32 {
    s.guest.known().notices().fold(at.y, |y, one| {
        let (key, icon) = match one {
            Notice::DeskAway => ("desk-away", Icon::Away),
            Notice::LetGo => ("let-go", Icon::Away),
            Notice::DiskNearlyFull => ("disk-nearly-full", Icon::Caution),
        };
        notice(b, &s.t(key), icon, pos2(at.x, y), width)
    })
}

/// Says at the upper edge of every screen that nothing counts. It takes no touch.
pub(super) fn practice_ribbon(b: &Brush, rect: Rect, text: &str) {
    b.fill(rect, 0.0, Tone::CautionInk);
    b.text(rect, Align2::CENTER_CENTER, text, Type::SMALL.in_color(Tone::Paper));
}

fn notice(b: &Brush, text: &str, icon: Icon, at: Pos2, width: f32) -> f32 {
    let pad = b.px(10.0);
    let side = b.px(24.0);
    let room = width - side - 3.0 * pad;
    let size = b.measure(text, Type::SMALL, room);
    let rect = Rect::from_min_size(at, vec2(size.x + side + 3.0 * pad, size.y.max(side) + pad));
    b.fill(rect, b.px(12.0), Tone::Paper);
    b.outline(rect, b.px(12.0), 1.0, Tone::Seam);
    b.icon(
        Rect::from_center_size(pos2(rect.left() + pad + side / 2.0, rect.center().y), vec2(side, side)),
        icon,
        Tone::InkSoft,
    );
    let words = Rect::from_min_size(pos2(rect.left() + 2.0 * pad + side, rect.center().y - size.y / 2.0), size);
    b.text(words.expand(1.0), Align2::LEFT_CENTER, text, Type::SMALL);
    rect.bottom() + b.gap()
}

/// Choices that wrap from row to row.
pub(super) struct Flow {
    left: f32,
    right: f32,
    at: Pos2,
    height: f32,
    gap: f32,
    /// The lower edge of what is higher than a row.
    lowest: f32,
}

impl Flow {
    /// Begins at the top left of a place `width` wide.
    pub(super) fn new(b: &Brush, at: Pos2, width: f32) -> Self {
        let height = b.touch_px(54.0).max(b.line(50.0));
        Self { left: at.x, right: at.x + width, at, height, gap: b.gap() * 0.8, lowest: at.y }
    }

    /// The next choice begins a row.
    pub(super) fn break_row(&mut self) {
        if self.at.x > self.left {
            self.at = pos2(self.left, self.at.y + self.height + self.gap);
        }
    }

    /// One choice that is a colour: a large disc with its name under it.
    pub(super) fn disc(&mut self, b: &mut Brush, label: &str, chosen: bool, color: Color32, request: Request) {
        let ty = Type::SMALL.sized(16.0).in_color(Tone::Ink);
        let (across, words) = (self.height * 1.1, b.line(24.0).max(17.0));
        let width = (b.measure(label, ty, f32::INFINITY).x + b.px(8.0)).max(across + b.px(16.0));
        let height = across + words + b.px(6.0);
        if self.at.x + width > self.right + 0.5 {
            self.at = pos2(self.left, self.at.y + self.row_height(height) + self.gap);
        }
        let rect = Rect::from_min_size(self.at, vec2(width, height));
        let middle = pos2(rect.center().x, rect.top() + across / 2.0);
        if chosen || b.pressed(rect) {
            b.fill(rect, b.px(14.0), Tone::PlumPale);
            b.outline(rect, b.px(14.0), 2.5, Tone::Plum);
        }
        b.painter.circle(middle, across * 0.42, color, b.stroke(2.0, Tone::InkSoft));
        if chosen {
            let sign = Rect::from_center_size(middle, vec2(across, across) * 0.5);
            b.painter.circle_filled(middle, across * 0.24, b.color(Tone::Paper));
            b.icon(sign.shrink(across * 0.06), Icon::Tick, Tone::Plum);
        }
        b.text(rect.with_min_y(rect.bottom() - words - b.px(3.0)), Align2::CENTER_CENTER, label, ty);
        b.choice_target(rect, request, label, chosen);
        self.at.x += width + self.gap * 0.6;
        self.lowest = self.lowest.max(rect.bottom());
    }

    const fn row_height(&self, of: f32) -> f32 {
        if of > self.height { of } else { self.height }
    }

    /// One choice that is asked for now and ends with a touch: words and a cross.
    pub(super) fn mark(&mut self, b: &mut Brush, label: &str, swatch: Option<Color32>, says: &str, request: Request) {
        let ty = Type::BUTTON.sized(17.0);
        let (dot, cross) = (if swatch.is_some() { b.px(26.0) } else { 0.0 }, b.px(28.0).max(18.0));
        let width = (b.measure(label, ty, f32::INFINITY).x + b.px(26.0) + dot + cross)
            .clamp(self.height, (self.right - self.left).max(self.height));
        if self.at.x + width > self.right + 0.5 {
            self.at = pos2(self.left, self.at.y + self.height + self.gap * 0.6);
        }
        let rect = Rect::from_min_size(self.at, vec2(width, self.height));
        let radius = rect.height() / 2.0;
        b.fill(rect, radius, if b.pressed(rect) { Tone::Paper } else { Tone::PlumPale });
        b.outline(rect, radius, 2.0, Tone::Plum);
        let (place, rest) = cut_left(rect.shrink2(vec2(b.px(10.0), 2.0)), dot);
        if let Some(color) = swatch {
            b.painter.circle(place.center(), b.px(10.0), color, b.stroke(1.0, Tone::InkSoft));
        }
        let (sign, words) = cut_right(rest, cross);
        b.text(words, Align2::CENTER_CENTER, label, ty.in_color(Tone::Plum));
        b.icon(Rect::from_center_size(sign.center(), vec2(cross, cross) * 0.7), Icon::Cross, Tone::Plum);
        b.button_target(rect, request, format!("{says} {label}"));
        self.at.x += width + self.gap * 0.6;
    }

    /// One choice; `swatch` is a colour shown beside the words.
    pub(super) fn choice(
        &mut self,
        b: &mut Brush,
        label: &str,
        chosen: bool,
        swatch: Option<Color32>,
        request: Request,
    ) {
        let ty = Type::BUTTON.sized(19.0);
        let mark = if swatch.is_some() { b.px(30.0) } else { 0.0 };
        let tick = if chosen { b.line(28.0) } else { 0.0 };
        let width = (b.measure(label, ty, f32::INFINITY).x + b.px(34.0) + mark + tick)
            .clamp(self.height, (self.right - self.left).max(self.height));
        if self.at.x + width > self.right + 0.5 {
            self.at = pos2(self.left, self.at.y + self.height + self.gap);
        }
        let rect = Rect::from_min_size(self.at, vec2(width, self.height));
        let radius = b.px(14.0).min(rect.height() / 2.0);
        b.fill(rect, radius, if chosen || b.pressed(rect) { Tone::PlumPale } else { Tone::Paper });
        let (line, edge) = if chosen { (2.5, Tone::Plum) } else { (1.5, Tone::PlumLine) };
        b.outline(rect, radius, line, edge);
        let (sign, rest) = cut_left(rect.shrink2(vec2(b.px(10.0), 2.0)), tick);
        if chosen {
            b.icon(sign.shrink(b.px(3.0)), Icon::Tick, Tone::Plum);
        }
        let (dot, words) = cut_left(rest, mark);
        if let Some(color) = swatch {
            b.painter.circle(dot.center(), b.px(11.0), color, b.stroke(1.0, Tone::InkSoft));
        }
        b.text(words, Align2::CENTER_CENTER, label, ty.in_color(Tone::Plum));
        b.choice_target(rect, request, label, chosen);
        self.at.x += width + self.gap;
    }

    /// Where the next thing may begin.
    pub(super) fn bottom(&self) -> f32 {
        self.lowest.max(self.at.y + self.height)
    }
}

/// Choices of text size, colours and motion; `asks` makes the request. Gives where they ended.
pub(super) fn looks(b: &mut Brush, s: &Scene, now: Looks, at: Pos2, width: f32, asks: fn(Looks) -> Request) -> f32 {
    let mut y = caption(b, s, at, width, "looks-text");
    let mut flow = Flow::new(b, pos2(at.x, y), width);
    for text in TextSize::ALL {
        let label = s.t(&format!("looks-{}", text.code()));
        flow.choice(b, &label, now.text == text, None, asks(Looks { text, ..now }));
    }
    y = caption(b, s, pos2(at.x, flow.bottom() + b.gap()), width, "looks-contrast");
    let mut flow = Flow::new(b, pos2(at.x, y), width);
    for (key, contrast) in [("looks-daylight", Contrast::Daylight), ("looks-high", Contrast::High)] {
        flow.choice(b, &s.t(key), now.contrast == contrast, None, asks(Looks { contrast, ..now }));
    }
    y = caption(b, s, pos2(at.x, flow.bottom() + b.gap()), width, "looks-motion");
    let mut flow = Flow::new(b, pos2(at.x, y), width);
    for (key, calm) in [("looks-lively", false), ("looks-calm", true)] {
        flow.choice(b, &s.t(key), now.calm == calm, None, asks(Looks { calm, ..now }));
    }
    flow.bottom()
}

/// Which hand the trays lie at; `asks` makes the request. Gives where it ended.
pub(super) fn hand_of(b: &mut Brush, s: &Scene, left: bool, at: Pos2, width: f32, asks: fn(bool) -> Request) -> f32 {
    let y = caption(b, s, at, width, "seller-hand");
    let mut flow = Flow::new(b, pos2(at.x, y), width);
    for (key, is_left) in [("seller-right-handed", false), ("seller-left-handed", true)] {
        flow.choice(b, &s.t(key), left == is_left, None, asks(is_left));
    }
    flow.bottom()
}

/// What a row of choices is about. Gives where the row may begin.
pub(super) fn caption(b: &Brush, s: &Scene, at: Pos2, width: f32, key: &str) -> f32 {
    b.paragraph(at, width, &s.t(key), Type::SMALL) + b.px(6.0)
}

/// "up to 5", as an amount.
pub(super) fn up_to(s: &Scene, amount: rust_decimal::Decimal) -> String {
    s.texts.with("filters-up-to", &[("sum", s.money(amount).into())])
}

/// The words for a wearer.
pub(super) fn wearer(s: &Scene, wearer: Wearer) -> String {
    s.t(&format!("wearer-{}", wearer.code()))
}

/// A drop's picture, or its name where there is none, in `rect`.
pub(super) fn drop_in(b: &Brush, s: &Scene, kind: &DropKind, rect: Rect, tint: Color32) {
    match s.pictures.small(&kind.picture) {
        Some(picture) => b.picture(rect, picture.texture, picture.size, tint),
        None => {
            b.text(rect, Align2::CENTER_CENTER, s.drop_name(kind), Type::SMALL);
        }
    }
}

/// A row of a sum: words on the left, amount on the right. Gives where the next row begins.
fn row(b: &Brush, at: Pos2, width: f32, words: &str, amount: &str, ty: Type, height: f32) -> f32 {
    let rect = Rect::from_min_size(at, vec2(width, height));
    let amount_width = (b.measure(amount, ty, f32::INFINITY).x + 2.0).min(width * 0.6);
    // A long name takes a second line.
    let needed = b.measure(words, ty, width - amount_width - b.px(8.0)).y + b.px(6.0);
    let rect = rect.with_max_y(rect.top() + needed.max(height));
    let (right, left) = cut_right(rect, amount_width);
    b.text(right, Align2::RIGHT_CENTER, amount, ty);
    b.text(left.with_max_x(left.right() - b.px(8.0)), Align2::LEFT_CENTER, words, ty);
    rect.bottom()
}

/// What it all comes to, under the lines. Gives where it ended.
pub(super) fn sum_line(b: &Brush, s: &Scene, quote: &Quote, at: Pos2, width: f32) -> f32 {
    let height = b.line(46.0).max(34.0);
    row(b, at, width, &s.t("lines-total"), &s.money(quote.total), Type::FIGURE.sized(26.0), height)
}

/// Every line of the quote: base, drops in walking order with their homes, discount, tax. Gives where it ended.
pub(super) fn lines(
    b: &mut Brush,
    s: &Scene,
    catalog: &Catalog,
    piece: &Piece,
    quote: &Quote,
    at: Pos2,
    width: f32,
) -> f32 {
    let height = b.line(46.0).max(34.0);
    let mut y = at.y;
    if let Some(base) = catalog.base(&quote.base.id) {
        let length = piece.length.map(|length| {
            let region = catalog.table.region;
            format!(" · {}", super::lengths::written(length, region, s.texts.lang))
        });
        let words = format!("{}{}", s.called(&base.id, &base.name), length.unwrap_or_default());
        y = row(b, pos2(at.x, y), width, &words, &s.money(quote.base.price), Type::BODY, height);
    }
    for (home, kind, count) in walking_order(catalog, piece) {
        let (badge, rest) = cut_left(Rect::from_min_size(pos2(at.x, y), vec2(width, height)), b.px(62.0));
        b.home_badge(badge.center() - vec2(b.px(6.0), 0.0), &home.to_string(), 17.0);
        let (picture, words) = cut_left(rest, height);
        drop_in(b, s, kind, picture.shrink(2.0), Color32::WHITE);
        let times = if count > 1 { format!(" × {count}") } else { String::new() };
        let price = kind.price * rust_decimal::Decimal::from(count as u64);
        let words = words.with_min_x(words.left() + b.px(6.0));
        let name = format!("{}{times}", s.piece_name(kind));
        y = row(b, words.min, words.width(), &name, &s.money(price), Type::BODY, height);
    }
    if let Some(note) = s.texts.mix_note(walking_order(catalog, piece).into_iter().map(|(_, kind, _)| kind)) {
        y = b.paragraph(pos2(at.x, y + b.px(4.0)), width, &note, Type::SMALL);
    }
    b.painter.hline(at.x..=at.x + width, y + b.px(4.0), b.stroke(1.0, Tone::Seam));
    y += b.px(8.0);
    let small = height * 0.8;
    let soft = Type::BODY.sized(19.0).in_color(Tone::InkSoft);
    let nothing = rust_decimal::Decimal::ZERO;
    if quote.discount > nothing {
        y = row(b, pos2(at.x, y), width, &s.t("lines-subtotal"), &s.money(quote.subtotal), soft, small);
        y = row(b, pos2(at.x, y), width, &s.t("lines-discount"), &s.money(-quote.discount), soft, small);
    }
    if quote.tax > nothing {
        let inside = matches!(catalog.table.prices.tax, crate::money::TaxRule::Included { .. });
        let words = s.t(if inside { "lines-tax-inside" } else { "lines-tax" });
        y = row(b, pos2(at.x, y), width, &words, &s.money(quote.tax), soft, small);
    }
    y
}

/// The homes of a piece in walking order, as a grid of cards that scrolls.
pub(super) fn homes(b: &mut Brush, s: &Scene, catalog: &Catalog, piece: &Piece, rect: Rect) {
    let stops = walking_order(catalog, piece);
    let (height, gap) = (b.line(74.0).max(50.0), b.gap() * 0.7);
    let columns = ((rect.width() / b.px(300.0).max(250.0)).floor() as usize).clamp(1, stops.len().max(1));
    let width = (rect.width() - gap * (columns - 1) as f32 - b.px(10.0)) / columns as f32;
    b.scroll(ScrollId::Homes, rect, |b, start| {
        let mut bottom = start.y;
        for (i, (home, kind, count)) in stops.iter().enumerate() {
            let corner = start + vec2((i % columns) as f32 * (width + gap), (i / columns) as f32 * (height + gap));
            let card = Rect::from_min_size(corner, vec2(width, height));
            b.fill(card, b.px(12.0), Tone::Paper);
            b.outline(card, b.px(12.0), 1.0, Tone::Seam);
            let (badge, rest) = cut_left(card.shrink(b.px(8.0)), b.px(64.0));
            b.home_badge(badge.center(), &home.to_string(), 24.0);
            let (picture, words) = cut_left(rest, height * 0.8);
            drop_in(b, s, kind, picture.shrink(2.0), Color32::WHITE);
            let times = if *count > 1 { format!(" × {count}") } else { String::new() };
            b.text(words, Align2::LEFT_CENTER, &format!("{}{times}", s.piece_name(kind)), Type::BODY.sized(19.0));
            bottom = card.bottom();
        }
        bottom
    });
}
